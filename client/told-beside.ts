/**
 * The sentence on each word of the grammar (`doc` in `vocabulary.ts`), and those on each family with the sources of its figures,
 * are told in hover and completion alone, so the server's bundle leaves them out. The answers bring copies of the tables: with
 * one they complete that of the server when they are loaded, in the other they look families up by their names.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { Plugin } from "esbuild";
import ts from "typescript";

const VOCABULARY = /[\\/]grammar[\\/]src[\\/]vocabulary\.ts$/;
const ANSWERS = /[\\/]entry[\\/]answers\.ts$/;
const FAMILIES = /[\\/]core[\\/]knowledge[\\/](?:families(?:-[a-z-]+)?|family-fragments|sources)\.ts$/;
const FAMILY_TOLD = /[\\/]features[\\/]family-told\.ts$/;
const WHOLE = "?whole";

/** What a module of a whole table says to what it imports. */
const IN_WHOLE = { isWhole: true };
/** Whether what a module of a whole table imports is another part of that table. */
export const staysWhole = (pluginData: unknown, file: string): boolean =>
  pluginData === IN_WHOLE && FAMILIES.test(file);

/** The tables whose rows have a sentence. */
const TABLES = [
  "DECLARATION_WORDS",
  "DONE_FACTS",
  "FIELDS",
  "SHAPES",
  "STATEMENTS",
  "TAILS",
  "VERBS",
] as const;

/** For the server: the table without its sentences. */
export const untold: Plugin = {
  name: "untold",
  setup({ onLoad }) {
    onLoad({ filter: VOCABULARY }, ({ path: file, suffix }) =>
      suffix === WHOLE ? undefined : { contents: without(file, isDoc), loader: "ts" },
    );
    onLoad({ filter: FAMILIES }, ({ path: file }) => ({
      contents: without(file, isDoc, isSources),
      loader: "ts",
    }));
  },
};

/** For the answers: they complete the server's table before anything in them runs. */
export const telling: Plugin = {
  name: "telling",
  setup({ onLoad, onResolve }) {
    onResolve({ filter: /\.ts\?whole$/ }, ({ path: name, resolveDir }) => ({
      path: path.resolve(resolveDir, name.slice(0, -WHOLE.length)),
      suffix: WHOLE,
    }));
    onResolve({ filter: /^\.\/.*\.ts$/ }, ({ path: name, resolveDir, pluginData }) => {
      const file = path.resolve(resolveDir, name);
      return staysWhole(pluginData, file) ? { path: file, suffix: WHOLE } : undefined;
    });
    for (const filter of [VOCABULARY, FAMILIES])
      onLoad({ filter }, ({ path: file, suffix }) =>
        suffix === WHOLE
          ? { contents: readFileSync(file, "utf8"), loader: "ts", pluginData: IN_WHOLE }
          : undefined,
      );
    onLoad({ filter: FAMILY_TOLD }, () => ({
      contents: [
        `import { FAMILIES } from "../core/knowledge/families.ts${WHOLE}";`,
        "export const familyTold = (family) => FAMILIES.get(family.name) ?? family;",
      ].join("\n"),
      loader: "js",
    }));
    onLoad({ filter: ANSWERS }, ({ path: file }) => {
      const where = "../../../grammar/src/vocabulary.ts";
      const shared = TABLES.map((name) => `${name} as shared_${name}`).join(", ");
      const whole = TABLES.map((name) => `${name} as whole_${name}`).join(", ");
      const pairs = TABLES.map((name) => `[shared_${name}, whole_${name}]`).join(", ");
      const completed = [
        `import { ${shared} } from "${where}";`,
        `import { ${whole} } from "${where}${WHOLE}";`,
        "const complete = (to, from) => { for (const name in from) {",
        '  if (name === "doc") to.doc = from.doc;',
        '  else if (from[name] !== null && typeof from[name] === "object") complete(to[name], from[name]);',
        "} };",
        `for (const [to, from] of [${pairs}]) complete(to, from);`,
      ];
      return { contents: [...completed, readFileSync(file, "utf8")].join("\n"), loader: "ts" };
    });
  },
};

type Test = (node: ts.Node) => boolean;

const isProperty = (node: ts.Node, name: string): node is ts.PropertyAssignment =>
  ts.isPropertyAssignment(node) && node.name.getText() === name;
const isDoc: Test = (node) => isProperty(node, "doc");
/** The value alone: a family without sources has none, and still is a family. */
const isSources: Test = (node) =>
  node.parent !== undefined &&
  isProperty(node.parent, "sources") &&
  node === (node.parent as ts.PropertyAssignment).initializer;

/** The text of a file without some nodes, and with `{}` in the place of others. */
function without(file: string, isLeftOut: Test, isEmptied: Test = () => false): string {
  const text = readFileSync(file, "utf8");
  const found: { readonly node: ts.Node; readonly instead?: string }[] = [];
  const look = (node: ts.Node): void => {
    if (isLeftOut(node)) found.push({ node });
    else if (isEmptied(node)) found.push({ node, instead: "{}" });
    else node.forEachChild(look);
  };
  look(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  return found.reduceRight((rest, { node, instead }) => {
    const behind = rest.slice(node.end);
    return (
      rest.slice(0, node.getStart()) +
      (instead ?? "") +
      (instead === undefined ? behind.replace(/^\s*,/, "") : behind)
    );
  }, text);
}
