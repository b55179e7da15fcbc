/** Words that deny, for all readers of free text; sentences of labels and of the bench, no source. */
import { describe, expect, test } from "vitest";
import { isNegatedJustBefore, negates, withoutOrders } from "../../../server/src/core/knowledge/denials.ts";
import { family } from "../../../server/src/core/knowledge/families.ts";
import { labelSays } from "../../../server/src/core/knowledge/label-words.ts";
import { standInFor } from "../../../server/src/core/knowledge/solvents.ts";
import { findingsOf } from "../../harness/check-text.ts";

describe("a plain denial", () => {
  test.each([
    "free of silicone",
    "free from lead",
    "contains no lead",
    "without linseed oil",
    "never use a torch",
    "it isn't in there",
    "it isn’t in there",
    "neither lead nor tin",
    "nothing of the sort",
    "soap instead of spirits",
    "soap rather than spirits",
    "none was found",
    "cannot burn",
  ])("denies: %s", (text) => expect(negates(text)).toBe(true));
  test.each([
    "contains lead",
    "the knot is sealed",
    "a note on it",
    "nonetheless it burns",
    "free samples",
    "a northern shop",
    "and another coat",
  ])("does not: %s", (text) => expect(negates(text)).toBe(false));
});

test.each([
  ["non-", true],
  ["This is not a ", true],
  ["not highly ", true],
  ["Do not inhale, ", false],
  ["highly ", false],
] as const)("before a name: %s", (before, denied) => expect(isNegatedJustBefore(before)).toBe(denied));

test.each([
  ["Never leave rags in a heap, they ignite", "they ignite"],
  ["Rags ignite if they are not laid flat", "Rags ignite"],
  ["It does not heat up", "It does not heat up"],
])("what is ordered and what is conditional is left out: %s", (text, rest) =>
  expect(
    withoutOrders(text)
      .replace(/^[\s,]+/u, "")
      .trim(),
  ).toBe(rest),
);

describe("the same words deny for every reader", () => {
  // Each reader with a sentence that says the thing, and one frame of a denial for all of them.
  const material = (docs: string) => ({ title: "A tin", docs });
  const note = (text: string) =>
    findingsOf(`recipe sanded {
  for    oak
  for    wood
  safety dust_mask
  note   "${text}"
  step   sand 120, 150
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
`).map(({ rule }) => rule);
  const READERS: readonly (readonly [string, (docs: string) => boolean, string])[] = [
    ["labels", (docs) => labelSays(material(docs), "holds lead") !== undefined, "contains lead"],
    [
      "labels on rags",
      (docs) => labelSays(material(docs), "self-heating rags") !== undefined,
      "contains linseed oil",
    ],
    [
      "solvents",
      (docs) =>
        standInFor({ ...material(docs), family: family("waterborne polyurethane") })?.cautious.name ===
        "acetone",
      "solvent acetone",
    ],
    ["steel wool", (docs) => note(docs).includes("steel-wool-under-waterborne"), "rub with steel wool"],
  ];
  test.each(READERS)("%s: said", (_, reads, words) => expect(reads(`It is ${words}.`)).toBe(true));
  test.each(
    READERS.flatMap(([name, reads, words]) =>
      ["never", "not", "neither", "without", "by no means"].map(
        (denial) => [name, denial, reads, words] as const,
      ),
    ),
  )("%s: %s", (_, denial, reads, words) => expect(reads(`It is ${denial} ${words}.`)).toBe(false));
});
