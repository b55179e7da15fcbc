/**
 * All texts for people that the grammar and the server tell in the language of the client, and their translations.
 *
 * A text is a template that is tagged with `t`, the word that `translated` is given, or one of a table (`tableTexts`). The
 * translations lie in `server/l10n/TAG/*.json`, `{ template: text }`, a file for each part of the program.
 */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { textKey } from "../../grammar/src/translate.ts";
import { tableTexts } from "./table-texts.ts";

const ROOT = path.resolve(import.meta.dirname, "..", "..");
const SOURCES = ["grammar/src/**/*.ts", "server/src/**/*.ts"];

/** A text and the files that tell it, by their paths below the project's folder. */
export type Told = ReadonlyMap<string, readonly string[]>;

/** Every text that is told somewhere. */
export function toldTexts(): Told {
  const told = new Map<string, string[]>();
  const add = (text: string, file: string): void => {
    const files = told.get(text);
    if (files === undefined) told.set(text, [file]);
    else if (!files.includes(file)) files.push(file);
  };
  for (const file of globSync(SOURCES, { cwd: ROOT }).toSorted())
    for (const text of textsIn(file, readFileSync(path.join(ROOT, file), "utf8")))
      add(text, file.replaceAll("\\", "/"));
  for (const [table, texts] of Object.entries(tableTexts())) for (const text of texts) add(text, table);
  return told;
}

/** The templates in a source, `{0}` for the first part. */
export function textsIn(file: string, source: string): readonly string[] {
  if (!/\bt`|\btranslated\(/u.test(source)) return [];
  const texts: string[] = [];
  const look = (node: ts.Node): void => {
    if (ts.isTaggedTemplateExpression(node) && node.tag.getText() === "t")
      texts.push(templateOf(node.template));
    if (ts.isCallExpression(node) && node.expression.getText() === "translated") {
      const [first] = node.arguments;
      if (first && ts.isStringLiteralLike(first)) texts.push(first.text);
    }
    node.forEachChild(look);
  };
  look(ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true));
  return texts;
}

const templateOf = (template: ts.TemplateLiteral): string =>
  ts.isNoSubstitutionTemplateLiteral(template)
    ? template.text
    : template.head.text + template.templateSpans.map(({ literal }, at) => `{${at}}${literal.text}`).join("");

/** The translations by the file that they stand in, below `server/l10n/TAG`. */
export function translations(tag: string): Readonly<Record<string, Readonly<Record<string, string>>>> {
  const folder = path.join(ROOT, "server", "l10n", tag);
  const files = globSync("*.json", { cwd: folder }).toSorted();
  return Object.fromEntries(
    files.map((file) => [file, JSON.parse(readFileSync(path.join(folder, file), "utf8"))]),
  );
}

/** The languages that there are translations of. */
export const LANGUAGES: readonly string[] = ["de"];

/** The packed table of a language. */
export const packedTexts = (tag: string): string =>
  packed(Object.values(translations(tag)).flatMap((texts) => Object.entries(texts)));

/** Templates with their texts in another language, by `textKey`. Throws where two templates would have one key. */
export function packed(texts: Iterable<readonly [template: string, text: string]>): string {
  const byKey = new Map<string, { readonly template: string; readonly text: string }>();
  for (const [template, text] of texts) {
    const key = textKey(template);
    const other = byKey.get(key);
    if (other !== undefined && other.template !== template)
      throw new Error(`“${template}” and “${other.template}” have one key: word one of them otherwise.`);
    byKey.set(key, { template, text });
  }
  // Like beside like packs smaller in a zip, and so do keys and texts apart.
  const keys = [...byKey.keys()].join("");
  return JSON.stringify({ keys, texts: [...byKey.values()].map(({ text }) => text) });
}
