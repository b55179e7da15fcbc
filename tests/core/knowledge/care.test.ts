/** How finishes are looked after: every finish that can be on top has a row, and no row contradicts the families. */
import { expect, test } from "vitest";
import { CARES, careOf } from "../../../server/src/core/knowledge/care.ts";
import { FAMILIES } from "../../../server/src/core/knowledge/families.ts";

test("every clear, oil, wax and paint has one row, and nothing else has any", () => {
  const listed = CARES.flatMap(({ families }) => families);
  expect(new Set(listed).size).toBe(listed.length);
  const lasting = [...FAMILIES.values()].filter(({ role }) =>
    ["clear", "oil", "wax", "paint"].includes(role),
  );
  expect(listed.toSorted()).toEqual(lasting.map(({ name }) => name).toSorted());
});

test("every row is whole sentences with a source", () => {
  for (const { name, clean, avoid, repair, source } of CARES) {
    for (const text of [clean, avoid, repair]) expect(text, name).toMatch(/^[A-Z].*\.$/u);
    expect(source, name).toMatch(/common practice|textbooks/u);
  }
});

test("a repair that throws dust says so with the mask for it", () => {
  const dusty = CARES.filter(({ repair }) => /\bsand|\bgrit\b|\bdull the/u.test(repair));
  expect(dusty.length).toBeGreaterThanOrEqual(6);
  for (const { name, repair } of dusty) expect(repair, name).toContain("dust mask (N95 or better)");
});

test("what alcohol dissolves is kept away from alcohol", () => {
  const dissolved = [...FAMILIES.values()].filter(
    ({ name, dissolvedBy }) => dissolvedBy.includes("alcohol") && careOf(name),
  );
  expect(dissolved.map(({ name }) => name)).toContain("dewaxed shellac");
  for (const { name } of dissolved) expect(careOf(name)!.avoid, name).toMatch(/alcohol|solvents/iu);
});

test("only two-part and catalysed films are left to a finisher where a hardener may hold isocyanate", () => {
  for (const name of ["two part polyurethane", "waterborne two part polyurethane"] as const) {
    expect(careOf(name)!.repair).toContain("work for a finisher");
  }
});
