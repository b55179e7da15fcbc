/** Offsets in a piece and those in its file are put together in one place, so that no reader can mistake one for the other. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

const ROOT = new URL("../../server/src/", import.meta.url);

/** `tree.offset + start`, `start + piece.offset`: by whoever has the piece, under whatever name. */
const ADDS = /\b(?:tree|piece|declaration)!?\.offset \+|\+ (?:tree|piece|declaration)!?\.offset\b/u;

test("where a piece begins is added to an offset in it by `absoluteOffset` of the grammar alone", () => {
  const files = readdirSync(ROOT, { recursive: true, encoding: "utf8" }).filter((name) =>
    name.endsWith(".ts"),
  );
  expect(files.length).toBeGreaterThan(100);
  const adding = files.flatMap((name) =>
    readFileSync(new URL(name, ROOT), "utf8")
      .split("\n")
      // How far a piece reaches is no offset in it.
      .filter((line) => ADDS.test(line.replaceAll(/\.offset \+ \w+\.length/gu, "")))
      .map((line) => `${name}: ${line.trim()}`),
  );
  expect(adding).toEqual([]);
});
