/**
 * Recipes in fenced blocks of Markdown, coloured by the editor's own engine and its own grammar of Markdown.
 *
 * Both come with the editor that `setup.sh` has laid out; `run.ts` runs this before it opens the editor.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { ok, same } from "./assert.ts";
import { CACHE, ROOT } from "./editor.ts";
import { runTests, type Test } from "./report.ts";

const VSCODE = path.join(CACHE, "node_modules/code-server/lib/vscode");

/** As much of the two libraries as is used. */
interface Grammar {
  tokenizeLine(
    line: string,
    state: unknown,
  ): {
    readonly ruleStack: unknown;
    readonly tokens: readonly {
      readonly startIndex: number;
      readonly endIndex: number;
      readonly scopes: readonly string[];
    }[];
  };
}
interface TextMate {
  readonly INITIAL: unknown;
  readonly Registry: new (options: unknown) => { loadGrammar(scope: string): Promise<Grammar | null> };
  parseRawGrammar(text: string, file: string): unknown;
}
interface Oniguruma {
  loadWASM(bytes: Uint8Array): Promise<void>;
  createOnigScanner(patterns: readonly string[]): unknown;
  createOnigString(text: string): unknown;
}

const manifest = JSON.parse(readFileSync(path.join(ROOT, "package.json"), "utf8"));
const MARKDOWN = "text.html.markdown";

const files: Readonly<Record<string, string>> = {
  [MARKDOWN]: path.join(VSCODE, "extensions/markdown-basics/syntaxes/markdown.tmLanguage.json"),
  ...Object.fromEntries(
    manifest.contributes.grammars.map((each: { scopeName: string; path: string }) => [
      each.scopeName,
      path.join(ROOT, each.path),
    ]),
  ),
};

const injectedInto = (scope: string): readonly string[] =>
  manifest.contributes.grammars
    .filter(({ injectTo }: { injectTo?: readonly string[] }) => injectTo?.includes(scope))
    .map(({ scopeName }: { scopeName: string }) => scopeName);

const loadMarkdown = async (): Promise<Grammar> => {
  const require = createRequire(path.join(VSCODE, "package.json"));
  const textMate: TextMate = require("vscode-textmate");
  const oniguruma: Oniguruma = require("vscode-oniguruma");
  await oniguruma.loadWASM(readFileSync(require.resolve("vscode-oniguruma/release/onig.wasm")));
  const registry = new textMate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: oniguruma.createOnigScanner,
      createOnigString: oniguruma.createOnigString,
    }),
    getInjections: injectedInto,
    loadGrammar: async (scope: string) => {
      const file = files[scope];
      return file === undefined ? null : textMate.parseRawGrammar(readFileSync(file, "utf8"), file);
    },
  });
  const grammar = await registry.loadGrammar(MARKDOWN);
  ok(grammar);
  return grammar;
};

/** What is coloured as part of a recipe, each word with the last of its scopes; `embedded` where it is a recipe at all. */
const coloured = (grammar: Grammar, text: string): readonly string[] => {
  let state: unknown = null;
  return text.split("\n").flatMap((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    state = ruleStack;
    return tokens
      .filter(({ scopes }) => scopes.includes("meta.embedded.block.finish"))
      .map(
        ({ startIndex, endIndex, scopes }) => `${line.slice(startIndex, endIndex).trim()} ${scopes.at(-1)}`,
      )
      .filter((token) => /^\S+ \S+\.finish$/u.test(token) && !token.endsWith("block.finish"));
  });
};

const LAYER = [
  "layer keyword.control.finish",
  "clear variable.other.finish",
  "x keyword.operator.word.finish",
  "3 constant.numeric.finish",
];

export const testMarkdownColours = async (): Promise<void> => {
  const grammar = await loadMarkdown();
  const blocks = (name: string, text: string, wanted: readonly string[]): Test => ({
    name: `Markdown: ${name}`,
    run: async () => same(coloured(grammar, text), wanted),
  });
  const tests = [
    blocks(
      "a recipe in a fenced block is coloured, and nothing behind it",
      "```finish\nlayer clear x 3\n```\nlayer clear x 3",
      LAYER,
    ),
    blocks(
      "with tildes, and with more behind the name of the language",
      "~~~ finish {numbers}\nlayer clear x 3\n~~~",
      LAYER,
    ),
    blocks("in a list", "- so:\n\n  ```finish\n  layer clear x 3\n  ```\n- layer x", LAYER),
    blocks(
      "a title that is not closed ends with its line, and the block where it ends",
      '```finish\nnote "open\nlayer clear x 3\n```\nlayer x',
      [
        "note keyword.control.finish",
        '" string.quoted.double.finish',
        "open string.quoted.double.finish",
        ...LAYER,
      ],
    ),
    blocks("other languages are left alone", "```finished\nlayer clear x 3\n```\n```js\nlayer(3)\n```", []),
  ];
  await runTests(tests, console.log);
};
