/** Where the findings of a job sit in the drawing of the bench view. */
import { expect, test } from "vitest";
import type { Bench, BenchSurface } from "../../server/src/views/bench/model.ts";
import type { FileSpan } from "../../server/src/views/places/file-finding.ts";
import { sampleAnalyst, sampleText } from "../harness/samples.ts";

const drawn = (file: string, job: string): Bench<FileSpan> => sampleAnalyst().analysis().bench(file, job)!;

const headlines = (bench: Bench<unknown>, numbers: readonly number[]): readonly string[] =>
  numbers.map((number) => bench.findings[number]!.headline);

const coatOf = ({ section, coats }: BenchSurface, title: string) =>
  coats[section.coats.findIndex((coat) => coat.title === title)]!;

test("on the coat whose line they stand on, or on the surface, the gravest first, and each leads to its line", () => {
  const bench = drawn("mistakes.finish", "attic_table");
  const [top] = bench.surfaces;
  expect(headlines(bench, coatOf(top!, "gel stain").findings).slice(0, 2)).toEqual([
    expect.stringMatching(/^The heater can light vapour/),
    expect.stringMatching(/goes over wax/),
  ]);
  expect(headlines(bench, top!.findings)).toContainEqual(expect.stringMatching(/^From grit 60 to 180/));
  const text = sampleText("mistakes.finish");
  const grit = bench.findings.find(({ headline }) => headline.startsWith("From grit"))!;
  const { start } = bench.places[grit.at]!.span;
  const line = text.slice(text.lastIndexOf("\n", start) + 1, text.indexOf("\n", start));
  expect(line).toMatch(/sand +60, 180/);
  const gravity = ["error", "warning", "information", "hint"];
  for (const { coats, findings } of bench.surfaces) {
    for (const found of [findings, ...coats.map((coat) => coat.findings)]) {
      const ranks = found.map((number) => gravity.indexOf(bench.findings[number]!.severity));
      expect(ranks).toEqual(ranks.toSorted());
    }
    const onCoats = new Set(coats.flatMap((coat) => coat.findings));
    expect(findings.filter((number) => onCoats.has(number))).toEqual([]);
  }
});

test("a sound job has none", () => {
  const bench = drawn("reading-tables.finish", "hall_tables");
  expect(bench.findings.filter(({ severity }) => severity === "error")).toEqual([]);
});

test("of findings as grave as each other lead comes first, then what else harms people, then what spoils the work", () => {
  const errors = drawn("mistakes.finish", "attic_table").findings.filter(
    ({ severity }) => severity === "error",
  );
  const first = (what: RegExp): number => errors.findIndex(({ headline }) => what.test(headline));
  const last = (what: RegExp): number => errors.findLastIndex(({ headline }) => what.test(headline));
  expect(first(/lead/)).toBe(0);
  expect(last(/may hold lead/)).toBeLessThan(first(/heater/));
  expect(last(/heater/)).toBeLessThan(first(/over wax/));
});
