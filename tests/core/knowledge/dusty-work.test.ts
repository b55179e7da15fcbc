/** Which steps throw dust. */
import { expect, test } from "vitest";
import { makesDust } from "../../../server/src/core/knowledge/dusty-work.ts";

const step = (verb: string, what?: string, more: { wet?: boolean; use?: string } = {}) =>
  makesDust({ verb, wet: false, ...(what ? { what } : {}), ...more });

test("dry work with grit or a blade, and dust that is blown off", () => {
  for (const verb of ["sand", "scuff", "scrape", "strip", "distress"]) expect(step(verb), verb).toBe(true);
  expect(step("dust", "blow off")).toBe(true);
});

test("not what is wet, bound by a liquid, caught at the tool or no such work", () => {
  expect(step("sand", undefined, { wet: true })).toBe(false);
  expect(step("strip", undefined, { use: "stripper" })).toBe(false);
  expect(step("sand", "orbital sander, HEPA vacuum")).toBe(false);
  expect(step("sand", "with extraction")).toBe(false);
  expect(step("scrape", "misted with water")).toBe(false);
  for (const verb of ["dust", "clean", "fill", "mask", "buff", "glue"]) expect(step(verb), verb).toBe(false);
  expect(step("dust", "vacuum")).toBe(false);
});
