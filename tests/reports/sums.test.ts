/** Printed lines add up to the printed totals, and what cannot be read is not counted as nothing. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { JobResult } from "../../server/src/core/totals/job-totals.ts";
import { pieceCosts } from "../../server/src/core/totals/piece-costs.ts";
import { printedTotals } from "../../server/src/core/totals/print.ts";
import { coloursFor } from "../../server/src/reports/colours.ts";
import { shoppingCsv, shoppingJson, shoppingText } from "../../server/src/reports/shopping-report.ts";
import { totalsText } from "../../server/src/reports/totals-text.ts";
import { gapsOf } from "../../server/src/views/missing-inputs.ts";
import { shoppingList } from "../../server/src/views/shopping-list.ts";
import { analyse } from "../harness/check-text.ts";
import { unbroken } from "../harness/unbroken.ts";

interface Numbers {
  readonly count: number;
  /** Cents, except minutes and square millimetres × 100. */
  readonly labour: number;
  readonly supplies: number;
  readonly price: number;
  readonly minutes: number;
  readonly areas: readonly [number, number];
}

const shapes = (area: number, more = ""): string => `    shape area ${(area / 1e4).toFixed(4)} m2\n${more}`;

/** 0: as long as such work usually takes. */
const takes = (minutes: number): string => (minutes > 0 ? `, takes ${minutes} min` : "");

const jobOf = ({ count, labour, supplies, price, minutes, areas }: Numbers, more = ""): JobResult => {
  const money = (cents: number): string => (cents / 100).toFixed(2);
  const analysis = analyse({
    "test.finish": `material clear {
  family waterborne acrylic
  covers 10 m2/L
  cure   7 days
  voc    120 g/L
  packs  1 L for ${money(price)}
}
material colour {
  family acrylic paint
  covers 9 m2/L
  cure   7 days
  voc    77 g/L
  packs  750 mL for ${money(price + 33)}
}
piece chair {
  bought 12.34
  new    199.99
  surface seat {
${shapes(areas[0], more)}    wood beech
  }
  surface frame {
${shapes(areas[1])}    wood beech
  }
}
shop mill {
  room     100 m3, 8 air changes/h
  hours    Mon to Fri 09:00 to 17:00
  labour   ${money(labour)} per h
  currency EUR
}
recipe work {
  layer clear${takes(minutes)}
  wait until recoat
  layer colour${takes(minutes && minutes + 1)}
}
job it {
  piece chair x ${count}
  in    mill
  start 2027-03-08 09:00
  supplies ${money(supplies)}
  apply work to all
}
`,
  });
  return analysis.jobs("test.finish")[0]!;
};

const PLAIN = coloursFor({ isTTY: false, env: {} });
const textOf = (result: JobResult): string => totalsText([{ label: "test.finish", result }], PLAIN);

/** The figure of the row of that name, times 100 and whole. */
const hundredths = (text: string, name: string): number => {
  const found = new RegExp(`^    ${name} +(-?[0-9.]+) `, "mu").exec(text);
  return Math.round(Number(found?.[1] ?? Number.NaN) * 100);
};

const anyNumbers: fc.Arbitrary<Numbers> = fc.record({
  count: fc.integer({ min: 1, max: 7 }),
  labour: fc.integer({ min: 1, max: 9999 }),
  supplies: fc.integer({ min: 1, max: 9999 }),
  price: fc.integer({ min: 1, max: 9999 }),
  minutes: fc.oneof(fc.integer({ min: 1, max: 59 }), fc.constant(0)),
  areas: fc.tuple(fc.integer({ min: 2500, max: 90_000 }), fc.integer({ min: 2500, max: 90_000 })),
});

test("by hand: three chairs", () => {
  // 2 surfaces × 3 × (7 + 8) min = 1.5 h at 10.01 are 15.015, so 15.02; supplies 1.00; chairs 3 × 12.34 = 37.02.
  // clear 6 m2 / 10 × 1.1 = 0.66 L: 1 can for 9.99; colour 6 / 9 × 1.1 = 0.7333 L: 1 can for 10.32; 20.31 together.
  const result = jobOf({
    count: 3,
    labour: 1001,
    supplies: 100,
    price: 999,
    minutes: 7,
    areas: [10_000, 10_000],
  });
  // 20.31 + 15.02 + 1.00 + 37.02 = 73.35, of which each of three is 24.45; new ones 599.97 − 73.35 = 526.62.
  expect(printedTotals(result.totals)).toMatchObject({
    material_cost: 20.31,
    labour_cost: 15.02,
    total_cost: 73.35,
    saving: 526.62,
  });
  expect(pieceCosts(result)).toMatchObject([{ total: 24.45, centMore: 0, saving: 175.54 }]);
  const [each] = pieceCosts(
    jobOf({ count: 3, labour: 1001, supplies: 101, price: 999, minutes: 7, areas: [10_000, 10_000] }),
  );
  // A cent more is 73.36: 24.45 × 3 and a cent.
  expect(each).toMatchObject({ total: 24.45, centMore: 1 });
});

test("setting up is paid once a session, not once for each piece", () => {
  const result = jobOf({
    count: 3,
    labour: 6000,
    supplies: 1,
    price: 100,
    minutes: 0,
    areas: [10_000, 10_000],
  });
  // Brushed, 5 min to set up and 10 min a m2: 6 m2 of either coat are 60 min and one setting up, so 2 h 10 min at 60.00; set
  // up for each surface of each chair it would be 12 × 15 min, 3 h.
  expect(printedTotals(result.totals)).toMatchObject({ hands_on_h: 2.166667, labour_cost: 130 });
  expect(textOf(result)).toMatch(/^ {4}hands-on +2 h 10 min$/mu);
  // Each chair has a third of it: 43.33, and 43.34.
  expect(pieceCosts(result)[0]!.labour).toBeCloseTo(130 / 3, 1);
});

test("for any shopping list: the lines of text, JSON and CSV add up to the one total", () => {
  fc.assert(
    fc.property(anyNumbers, (numbers) => {
      const report = { baskets: shoppingList([jobOf(numbers)]) };
      const cents = (text: string): number => Math.round(Number(text) * 100);
      const add = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
      const json = JSON.parse(shoppingJson(report)) as {
        materials: { cost: number; containers: { count: number; price: number }[] }[];
        total_cost: number;
      };
      const total = Math.round(json.total_cost * 100);
      expect(add(json.materials.map(({ cost }) => Math.round(cost * 100)))).toBe(total);
      for (const { cost, containers } of json.materials)
        expect(add(containers.map(({ count, price }) => count * Math.round(price * 100)))).toBe(
          Math.round(cost * 100),
        );
      const [head, ...rows] = shoppingCsv(report)
        .trim()
        .split("\r\n")
        .map((line) => line.split(","));
      expect(add(rows.map((row) => cents(row[head!.indexOf("cost")]!)))).toBe(total);
      const lines = [...shoppingText(report).matchAll(/(\d+\.\d\d) EUR$/gmu)].map(([, amount]) =>
        cents(amount!),
      );
      expect(lines.at(-1)).toBe(total);
      expect(add(lines.slice(0, -1))).toBe(total);
    }),
    { numRuns: 10 },
  );
});

test("for any job: cost lines, pieces, areas and grams add up, and JSON says the same as the text", () => {
  fc.assert(
    fc.property(anyNumbers, (numbers) => {
      const result = jobOf(numbers);
      const text = textOf(result);
      const json = printedTotals(result.totals);
      const row = (name: string): number => hundredths(text, name);
      expect(row("materials") + row("supplies") + row("labour") + row("pieces")).toBe(row("total"));
      expect(row("total")).toBe(Math.round(json.total_cost! * 100));
      expect(row("labour")).toBe(Math.round(json.labour_cost! * 100));
      expect(json.materials.reduce((sum, { cost }) => sum + Math.round(cost! * 100), 0)).toBe(
        Math.round(json.material_cost! * 100),
      );
      const [each] = pieceCosts(result);
      expect(Math.round(each!.total! * 100) * numbers.count + each!.centMore).toBe(row("total"));
      const parts = [each!.materials, each!.labour, each!.supplies, each!.bought];
      expect(parts.reduce<number>((sum, part) => sum + Math.round(part! * 100), 0)).toBe(
        Math.round(each!.total! * 100),
      );
      expect(row("seat") + row("frame")).toBe(row("together"));
      const fumes = text.slice(text.indexOf("  Fumes ("));
      const lines = hundredths(fumes, "clear(?:, 2 coats)?") + hundredths(fumes, "colour(?:, 2 coats)?");
      expect(lines).toBe(row("VOC"));
    }),
    { numRuns: 30 },
  );
});

describe("a second shape that cannot be read", () => {
  const numbers: Numbers = {
    count: 1,
    labour: 2000,
    supplies: 100,
    price: 999,
    minutes: 7,
    areas: [10_000, 10_000],
  };
  const broken = jobOf(numbers, "    shape panel 400 mm x twenty\n");

  test("makes the area, the litres, the cost and the saving unknown, not smaller", () => {
    expect(printedTotals(broken.totals)).toMatchObject({
      area_m2: null,
      surfaces: [{ area_m2: null }, { area_m2: 1 }],
      materials: [
        { litres: null, cost: null },
        { litres: null, cost: null },
      ],
      material_cost: null,
      total_cost: null,
      saving: null,
      // Their times are stated.
      hands_on_h: 0.5,
      labour_cost: 10,
    });
  });

  test("says which shape is missing", () => {
    for (const field of ["area_m2", "material_cost", "total_cost", "saving"] as const)
      expect(gapsOf(broken, field)).toEqual(["a `shape` of `seat` that cannot be read"]);
    expect(unbroken(textOf(broken))).toMatch(
      /together +not known {2}a `shape` of `seat` that cannot be read/u,
    );
  });
});
