/**
 * Dangers in people's own words, each beside words that forbid it or mean something else: found by the rule that is named
 * with them, and not cried wolf over. The sentences are in `free-text`, by kind.
 */
import { describe, expect, test } from "vitest";
import { BASES, type BaseName } from "./free-text/kinds.ts";
import { criedWolf, gravely, KINDS, missedIn } from "./free-text/verdicts.ts";

test.each(Object.keys(BASES) as BaseName[])("the recipe `%s` has no finding of its own", (base) => {
  expect(gravely(base, "The second coat goes on in the yard.")).toEqual([]);
});

describe.each(KINDS.map((kind) => [kind.kind, kind] as const))("%s", (_, kind) => {
  test("dangers are found by their rule", () => expect(missedIn(kind)).toEqual([]));
  test("words that forbid, deny or mean something else are quiet", () => expect(criedWolf(kind)).toEqual([]));
});
