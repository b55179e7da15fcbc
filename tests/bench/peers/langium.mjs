/** A minimal Langium server: its defaults, one check of its own, formatting and semantic colours. */
import { AbstractAstReflection, inject } from "langium";
import {
  AbstractFormatter,
  AbstractSemanticTokenProvider,
  createDefaultModule,
  createDefaultSharedModule,
  Formatting,
  startLanguageServer,
} from "langium/lsp";
import { NodeFileSystem } from "langium/node";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { keptGrammar } from "./langium-grammar.mjs";

const property = (name, more = {}) => ({ name, ...more });
const type = (name, properties, superTypes = []) => ({
  name,
  properties: Object.fromEntries(properties.map((each) => [each.name, each])),
  superTypes,
});

class PartsReflection extends AbstractAstReflection {
  types = {
    Model: type("Model", [property("parts", { defaultValue: [] })]),
    Part: type("Part", [
      property("fields", { defaultValue: [], optional: true }),
      property("kind"),
      property("name"),
      property("parts", { defaultValue: [], optional: true }),
    ]),
    Field: type("Field", []),
    Use: type("Use", [property("target", { referenceType: "Part" })], ["Field"]),
    Figure: type(
      "Figure",
      ["key", "number", "text", "unit"].map((name) => property(name, { optional: name !== "key" })),
      ["Field"],
    ),
  };
}

class PartsFormatter extends AbstractFormatter {
  format(node) {
    if (node.$type !== "Part") return;
    const part = this.getNodeFormatter(node);
    const [open, close] = [part.keyword("{"), part.keyword("}")];
    open.prepend(Formatting.oneSpace());
    part.interior(open, close).prepend(Formatting.indent());
    close.prepend(Formatting.newLine());
  }
}

class PartsColours extends AbstractSemanticTokenProvider {
  highlightElement(node, accept) {
    if (node.$type === "Part") {
      accept({ node, property: "kind", type: "keyword" });
      accept({ node, property: "name", type: "class" });
    } else if (node.$type === "Use") accept({ node, property: "target", type: "class" });
    else if (node.$type === "Figure") {
      accept({ node, property: "key", type: "property" });
      if (node.unit) accept({ node, property: "unit", type: "enumMember" });
    }
  }
}

function findRepeated(part, accept) {
  const seen = new Set();
  for (const field of part.fields) {
    if (field.key && seen.has(field.key))
      accept("warning", `Repeated key ${field.key}.`, { node: field, property: "key" });
    seen.add(field.key);
  }
}

const grammar = keptGrammar();
const connection = createConnection(ProposedFeatures.all);
const shared = inject(createDefaultSharedModule({ connection, ...NodeFileSystem }), {
  AstReflection: () => new PartsReflection(),
});
const services = inject(
  createDefaultModule({ shared }),
  {
    Grammar: () => grammar,
    LanguageMetaData: () => ({
      languageId: "parts",
      fileExtensions: [".parts"],
      caseInsensitive: false,
      mode: "production",
    }),
    parser: {},
  },
  { lsp: { Formatter: () => new PartsFormatter(), SemanticTokenProvider: (own) => new PartsColours(own) } },
);
shared.ServiceRegistry.register(services);
services.validation.ValidationRegistry.register({ Part: findRepeated });
startLanguageServer(shared);
