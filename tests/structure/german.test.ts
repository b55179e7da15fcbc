/**
 * The texts of grammar and server in the second language: each that is told has its German, each German text is told, and both
 * have the same places and the same words of the notation.
 */
import { describe, expect, test } from "vitest";
import { KEY_LENGTH } from "../../grammar/src/translate.ts";
import { languageOf } from "../../server/src/lsp/language.ts";
import { LANGUAGES, packedTexts, toldTexts, translations } from "../../server/tools/texts.ts";

const told = toldTexts();

describe.each(LANGUAGES)("%s", (tag) => {
  const files = Object.entries(translations(tag));
  const all = new Map(files.flatMap(([, texts]) => Object.entries(texts)));

  test("has every text that is told, and no other", () => {
    expect([...told.keys()].filter((text) => !all.has(text))).toEqual([]);
    expect([...all.keys()].filter((text) => !told.has(text))).toEqual([]);
  });

  test("has each text in one file", () => {
    const names = files.flatMap(([, texts]) => Object.keys(texts));
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  });

  test("fills the same places", () => {
    const placesOf = (text: string) => (text.match(/\{\d+\}/gu) ?? []).toSorted();
    const others = [...all].filter(([text, said]) => placesOf(text).join() !== placesOf(said).join());
    expect(others).toEqual([]);
  });

  test("leaves what stands in backticks as it is, for that is typed", () => {
    const typedIn = (text: string) => (text.match(/`[^`]+`/gu) ?? []).toSorted();
    const others = [...all].filter(([text, said]) => typedIn(text).join() !== typedIn(said).join());
    expect(others).toEqual([]);
  });

  test("begins and ends with the same blanks, so that texts join", () => {
    const edgesOf = (text: string) => [/^\s*/u.exec(text)![0], /\s*$/u.exec(text)![0]];
    const others = [...all].filter(([text, said]) => edgesOf(text).join() !== edgesOf(said).join());
    expect(others).toEqual([]);
  });

  test("packs into a table with a key for each", () => {
    const { keys, texts } = JSON.parse(packedTexts(tag));
    expect(texts).toHaveLength(all.size);
    expect(keys).toHaveLength(all.size * KEY_LENGTH);
    const language = languageOf(tag, { keys, texts });
    for (const [text, said] of all) expect(language?.template(text)).toBe(said);
    expect(language?.template("no text of ours")).toBeUndefined();
  });
});
