/**
 * A small language for the Langium server, about as rich in words, numbers and references as a recipe. Its grammar is
 * read once and kept as JSON beside the installed packages, as Langium's own tools would do, so that no start pays for it.
 */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { loadGrammarFromJson } from "langium";

const KEPT = new URL("node_modules/.bench-grammar.json", import.meta.url);

const GRAMMAR = `grammar Parts

entry Model: parts+=Part*;

Part: kind=Kind name=ID '{' (fields+=Field | parts+=Part)* '}';
Kind returns string: 'block' | 'table' | 'step';
Field: Use | Figure;
Use: 'use' target=[Part:ID] ';';
Figure: key=ID (number=NUMBER | text=STRING) (unit=ID)? ';';

hidden terminal SPACE: /\\s+/;
terminal ID: /[_a-zA-Z][\\w_]*/;
terminal NUMBER returns number: /[0-9]+(\\.[0-9]+)?/;
terminal STRING: /"(\\\\.|[^"\\\\])*"/;
hidden terminal COMMENT: /\\/\\/[^\\n\\r]*/;
`;

/** Writes the grammar as JSON, where that has not been done. */
export async function keepGrammar() {
  if (existsSync(KEPT)) return;
  const { createLangiumGrammarServices, EmptyFileSystem, URI } = await import("langium").then(
    async (core) => ({
      ...core,
      ...(await import("langium/grammar")),
    }),
  );
  const { grammar: services, shared } = createLangiumGrammarServices(EmptyFileSystem);
  const document = shared.workspace.LangiumDocumentFactory.fromString(
    GRAMMAR,
    URI.parse("memory:///parts.langium"),
  );
  shared.workspace.LangiumDocuments.addDocument(document);
  await shared.workspace.DocumentBuilder.build([document], { validation: true });
  const errors = (document.diagnostics ?? []).filter(({ severity }) => severity === 1);
  if (errors.length > 0) throw new Error(`The grammar is wrong: ${errors[0].message}`);
  writeFileSync(KEPT, services.serializer.JsonSerializer.serialize(document.parseResult.value));
}

export const keptGrammar = () => loadGrammarFromJson(readFileSync(KEPT, "utf8"));
