/**
 * Programs with far too much of one thing: what is worked out and told of them takes little more than in proportion, or is
 * cut off. Measured as exponents (see `growth.ts`), never as seconds.
 */
import { expect, test } from "vitest";
import { cheapestContainers, type SoldSize } from "../../server/src/core/quantities/containers.ts";
import { onePerLine } from "../../server/src/reports/reported.ts";
import { SHEET_FORMATS, sheetReport } from "../../server/src/reports/sheet-report.ts";
import { analyseAnew as analyse } from "../harness/check-text.ts";
import { growth, MOST_GROWTH } from "../harness/growth.ts";

const times = (size: number, unit: (index: number) => string): string =>
  Array.from({ length: size }, (_, index) => unit(index)).join("");

/** Making is not measured, but it takes its time. */
const once = <T>(make: (size: number) => T): ((size: number) => T) => {
  const known = new Map<number, T>();
  return (size) => {
    const made = known.get(size) ?? make(size);
    known.set(size, made);
    return made;
  };
};

test("sheets of many recipes, each with its finding", () => {
  const make = (size: number) => {
    const analysis = analyse({
      "a.finish": times(size, (i) => `recipe r${i} {\n  layer nobody_knows_${i}\n}\n`),
    });
    analysis.findings("a.finish");
    return analysis;
  };
  const work = (analysis: ReturnType<typeof make>): void => {
    const sheets = analysis.sheets("a.finish");
    for (const format of SHEET_FORMATS) sheetReport(analysis, sheets, format, (file) => file);
  };
  expect(growth(make, work, { from: 64, to: 512 })).toBeLessThan(MOST_GROWTH);
});

test("findings of one line, told as one", () => {
  const make = once((size) => {
    const wrong = times(size, (i) => `paramter_${i}x: 1, `);
    const text = `recipe q {\n  step dust\n}\nrecipe r {\n  follow q(${wrong}z: 1)\n}\n`;
    const findings = analyse({ "a.finish": text }).findings("a.finish");
    expect(findings.length).toBeGreaterThan(size);
    return { files: [{ label: "a.finish", text, findings }], other: () => ({ label: "", text: "" }) };
  });
  expect(growth(make, onePerLine, { from: 256, to: 4096 })).toBeLessThan(MOST_GROWTH);
});

test("all of many findings of one line are told", () => {
  const wrong = [...Array.from({ length: 120 }, (_, i) => `p${i}: 1`), "p7: 1"].join(", ");
  const text = `recipe q {\n  step dust\n}\nrecipe r {\n  follow q(${wrong})\n}\n`;
  const findings = analyse({ "a.finish": text }).findings("a.finish");
  const [file] = onePerLine({
    files: [{ label: "a.finish", text, findings }],
    other: () => ({ label: "", text: "" }),
  }).files;
  const told = file!.findings.find(({ rule }) => rule === "wrong-argument");
  for (let i = 0; i < 120; i += 1) expect(told?.message).toContain(`\`p${i}\``);
});

test("a material sold in thousands of sizes", () => {
  const make = (size: number): readonly SoldSize[] =>
    Array.from({ length: size }, (_, i) => ({ litres: 0.1 + i / 1000, price: 10 + i }));
  // Up to a thousand sizes each is tried with each, which is quick; from there on a million looks are the most.
  expect(growth(make, (sizes) => cheapestContainers(3.3, sizes), { from: 8192, to: 65_536 })).toBeLessThan(
    MOST_GROWTH,
  );
});

test("files in a ring of uses", () => {
  const make = (size: number) => {
    const name = (i: number): string => `f${i % size}.finish`;
    const analysis = analyse(
      Object.fromEntries(
        Array.from({ length: size }, (_, i) => [
          name(i),
          `use "${name(i + 1)}"\nmaterial m${i} {\n  family acrylic paint\n}\n`,
        ]),
      ),
    );
    return { analysis, names: Array.from({ length: size }, (_, i) => name(i)) };
  };
  const work = ({ analysis, names }: ReturnType<typeof make>): unknown =>
    names.map((name) => analysis.findings(name));
  // Each sees the names of all, the square of them; were what is worked out of them worked out for each, it would be a cube.
  expect(growth(make, work, { from: 56, to: 896 })).toBeLessThan(MOST_GROWTH + 1);
});
