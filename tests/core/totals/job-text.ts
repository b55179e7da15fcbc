/**
 * Jobs as text and their totals: what the tests of this folder share.
 */
import type { JobTotals } from "../../../server/src/core/totals/types.ts";
import { analyse, findingsOf } from "../../harness/check-text.ts";

const LANGUAGE_RULES = [
  "syntax",
  "wrong-unit",
  "bad-number",
  "missing-field",
  "unknown-field",
  "unknown-word",
];

/** The totals of every job of a text; the text must be in the notation. */
export function totalsOf(text: string): readonly JobTotals[] {
  const wrong = findingsOf(text).filter((finding) => LANGUAGE_RULES.includes(finding.rule));
  if (wrong.length > 0) throw new Error(wrong.map((finding) => finding.message).join("\n"));
  return analyse({ "test.finish": text }).totals("test.finish");
}

/** The totals of the only job of a text. */
export function onlyJob(text: string): JobTotals {
  const jobs = totalsOf(text);
  if (jobs.length !== 1) throw new Error(`expected one job, found ${jobs.length}`);
  return jobs[0]!;
}

export const litresOf = (totals: JobTotals): Readonly<Record<string, number | null>> =>
  Object.fromEntries(totals.materials.map(({ name, litres }) => [name, litres]));

/** A waterborne clear of 10 m2/L and 33 % with the given further lines. */
export const clear = (...lines: readonly string[]): string =>
  [
    "material clear {",
    "family waterborne polyurethane",
    "covers 10 m2/L",
    "solids 33 %",
    ...lines,
    "}",
    "",
  ].join("\n");

/** Two table tops of 1.8 m × 0.9 m × 30 mm: 1.62 + 2 · 2.7 · 0.03 = 1.782 m2 each. */
export const TABLES = `piece table {
  surface top {
    shape panel 1800 mm x 900 mm x 30 mm
    wood  red oak
  }
}
`;

/** A piece of one surface of 2 m2. */
export const board = (...lines: readonly string[]): string =>
  ["piece board {", ...lines, "surface face {", "shape area 2 m2", "wood beech", "}", "}", ""].join("\n");

export const recipe = (...lines: readonly string[]): string =>
  ["recipe work {", ...lines, "}", ""].join("\n");

export const job = (piece: string, surface: string, ...lines: readonly string[]): string =>
  ["job it {", `piece ${piece}`, ...lines, `apply work to ${surface}`, "}", ""].join("\n");
