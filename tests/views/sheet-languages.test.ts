/** A sheet printed in one language is ticked and recorded in another: its job and its steps keep their names. */
import { readFileSync } from "node:fs";
import { afterEach, expect, test } from "vitest";
import { speak } from "../../grammar/src/translate.ts";
import { languageOf } from "../../server/src/lsp/language.ts";
import { packedTexts } from "../../server/tools/texts.ts";
import { analyse } from "../harness/check-text.ts";

afterEach(() => speak(undefined));

const sample = (name: string): string =>
  readFileSync(new URL(`../../samples/${name}`, import.meta.url), "utf8");
const NAMES = ["reading-tables.finish", "recipes.finish", "stock.finish", "shop.finish"];

const rows = () =>
  analyse(Object.fromEntries(NAMES.map((name) => [name, sample(name)])))
    .sheets("reading-tables.finish")
    .flatMap(({ bench }) => [
      { name: bench.fingerprint, title: "" },
      ...bench.groups.flatMap((group) =>
        group.rows.map(({ fingerprint, title }) => ({ name: fingerprint, title })),
      ),
    ]);

test("job and steps have the same fingerprints in German, whose titles are others", () => {
  const english = rows();
  speak(languageOf("de", JSON.parse(packedTexts("de"))));
  const german = rows();
  expect(german.map(({ name }) => name)).toEqual(english.map(({ name }) => name));
  expect(english.map(({ title }) => title)).toContain("Take the dust off");
  expect(german.map(({ title }) => title)).toContain("Entstauben");
});
