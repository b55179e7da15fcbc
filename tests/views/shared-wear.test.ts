/** What is worn because of another surface: the same can, and a stripper that is left on beside the work. */
import { expect, test } from "vitest";
import { wornTogether } from "../../server/src/views/sheet/gear.ts";
import { only, STOCK } from "../harness/bench-sheets.ts";
import { sampleAnalyst } from "../harness/samples.ts";

const hallTables = () => sampleAnalyst().analysis().sheets("reading-tables.finish")[0]!;
const rowsOf = ({ bench }: ReturnType<typeof only>) => bench.groups.flatMap(({ rows }) => rows);

test("the same can asks for the same on every surface", () => {
  const coats = rowsOf(hallTables()).filter(({ title }) => title.startsWith("Waterborne satin clear"));
  // Three on the top, whose recipe states what to wear, and two on the base, whose recipe states a dust mask alone.
  expect(coats).toHaveLength(5);
  for (const { wear, dangers } of coats) {
    expect(wear).toEqual(["respirator", "gloves", "goggles"]);
    expect(dangers).toEqual(["fumes", "fire"]);
  }
});

test("while a stripper is left on, its vapour is kept away at all other work of the room, and no longer", () => {
  const rows = rowsOf(hallTables()).filter(({ startAt }) => startAt?.startsWith("2027-03-08"));
  const strip = rows.find(({ title }) => title.startsWith("Strip"))!;
  const washed = rows.find(({ title }) => title.startsWith("Clean with Mineral"))!;
  const wear = (title: string): readonly string[] =>
    rows.filter((row) => row.title.startsWith(title)).flatMap((row) => [...row.wear, ...row.dangers]);
  // The label alone knows how long it is left on: until the next step on that surface, at the latest.
  const primed = rows.find(({ title }) => title.startsWith("Grip primer"))!;
  expect([strip.startAt, primed.startAt, washed.startAt].toSorted()).toEqual([
    strip.startAt,
    primed.startAt,
    washed.startAt,
  ]);
  expect(wear("Scuff")).toEqual(["respirator (vapour and dust)", "stripper’s vapour"]);
  expect(wear("Take the dust off")).toEqual(["respirator (vapour and dust)", "stripper’s vapour"]);
  expect(wear("Grip primer")).toEqual(["respirator", "gloves", "stripper’s vapour"]);
  expect(wear("Slate trim paint")).toEqual(["gloves"]);
  expect(strip.dangers).not.toContain("stripper’s vapour");
});

test("the cautions name every surface on which something is worn", () => {
  const { duties } = hallTables();
  expect(duties.find(({ word }) => word === "vapour_respirator")?.surfaces).toEqual(["Top", "Base"]);
});

test("of what is worn before the mouth one thing stands there, that which keeps off most", () => {
  expect(wornTogether(["dust mask", "gloves", "respirator"])).toEqual([
    "respirator (vapour and dust)",
    "gloves",
  ]);
  expect(wornTogether(["respirator", "respirator (vapour and dust)"])).toEqual([
    "respirator (vapour and dust)",
  ]);
  expect(wornTogether(["dust mask", "supplied air", "respirator"])).toEqual(["supplied air"]);
  expect(wornTogether(["goggles", "dust mask", "goggles"])).toEqual(["dust mask", "goggles"]);
});

test("a can of which nothing is stated anywhere leaves it to its label, once", () => {
  const sheet = only(`${STOCK}piece box {
  surface lid {
    shape area 1 m2
    wood  beech
  }
}
recipe work {
  layer bench_clear x 2, by pad
}
job it {
  piece box
  apply work to lid
}
`);
  for (const { wear } of rowsOf(sheet))
    expect(wear).toEqual(["what the can’s label says (gloves? goggles? mask?)"]);
});
