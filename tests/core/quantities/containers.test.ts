/**
 * Containers against a published-style fixture, a brute force that tries every basket, and an independent MIP solver.
 *
 * The fixture (half-pint $9, pint $14, quart $22, gallon $60) was solved by hand and by HiGHS before this code existed.
 */
import fc from "fast-check";
import highsLoader from "highs";
import { beforeAll, describe, expect, test } from "vitest";
import {
  type BoughtContainers,
  cheapestContainers,
  type SoldSize,
} from "../../../server/src/core/quantities/containers.ts";

const FLOZ = 0.0295735295625;
const US_SIZES: readonly SoldSize[] = [
  { litres: 8 * FLOZ, price: 9 },
  { litres: 16 * FLOZ, price: 14 },
  { litres: 32 * FLOZ, price: 22 },
  { litres: 128 * FLOZ, price: 60 },
];

const costOf = (bought: readonly BoughtContainers[]): number =>
  bought.reduce((sum, { count, price }) => sum + count * price, 0);
const litresOf = (bought: readonly BoughtContainers[]): number =>
  bought.reduce((sum, { count, litres }) => sum + count * litres, 0);
const countOf = (bought: readonly BoughtContainers[]): number =>
  bought.reduce((sum, { count }) => sum + count, 0);

describe("the fixture in fluid ounces", () => {
  test.each([
    [8, 9, "1×8"],
    [9, 14, "1×16"],
    [17, 22, "1×32"], // not pint + half-pint at 23
    [33, 31, "1×32 1×8"],
    [48, 36, "1×32 1×16"],
    [64, 44, "2×32"],
    [70, 53, "2×32 1×8"], // rounding up to quarts would be 66
    [95, 60, "1×128"], // three quarts are 66
    [96, 60, "1×128"],
    [128, 60, "1×128"],
    [129, 69, "1×128 1×8"],
    [150, 82, "1×128 1×32"],
    [161, 91, "1×128 1×32 1×8"],
    [200, 113, "1×128 2×32 1×8"],
    [256, 120, "2×128"],
    [300, 156, "2×128 1×32 1×16"],
  ])("%d fl oz cost %d", (need, cost, basket) => {
    const bought = cheapestContainers(need * FLOZ, US_SIZES);
    expect(costOf(bought)).toBe(cost);
    expect(bought.map(({ litres, count }) => `${count}×${Math.round(litres / FLOZ)}`).join(" ")).toBe(basket);
  });
});

describe("edges", () => {
  const cans: readonly SoldSize[] = [
    { litres: 0.946, price: 28 },
    { litres: 3.785, price: 84 },
  ];
  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY, 5e-17])("a need of %d buys nothing", (need) => {
    expect(cheapestContainers(need, cans)).toEqual([]);
  });
  test("no sizes, no containers", () => {
    expect(cheapestContainers(1, [])).toEqual([]);
    expect(
      cheapestContainers(1, [
        { litres: 0, price: 3 },
        { litres: 1, price: -1 },
      ]),
    ).toEqual([]);
  });
  test("a need equal to a container takes one, also after rounding", () => {
    expect(cheapestContainers(0.946, cans)).toEqual([{ litres: 0.946, count: 1, price: 28 }]);
    expect(cheapestContainers(0.3 * 3, [{ litres: 0.9, price: 5 }])).toEqual([
      { litres: 0.9, count: 1, price: 5 },
    ]);
    expect(countOf(cheapestContainers(0.1 + 0.2, [{ litres: 0.3, price: 5 }]))).toBe(1);
    expect(countOf(cheapestContainers(0.9461, [{ litres: 0.946, price: 5 }]))).toBe(2);
  });
  test("of equal costs the least left over, then the fewest", () => {
    // Need 3: 2 × 1.5 at 20 leaves nothing, 1 × 4 at 20 leaves one.
    expect(
      cheapestContainers(3, [
        { litres: 1.5, price: 10 },
        { litres: 4, price: 20 },
      ]),
    ).toEqual([{ litres: 1.5, count: 2, price: 10 }]);
    // Need 4: 4 × 1, 2 × 2 and 1 × 4 all cost 20 and leave nothing.
    expect(
      cheapestContainers(
        4,
        [1, 2, 4].map((litres) => ({ litres, price: litres * 5 })),
      ),
    ).toEqual([{ litres: 4, count: 1, price: 20 }]);
  });
  test("of two prices for one size the lower", () => {
    expect(
      cheapestContainers(1, [
        { litres: 1, price: 9 },
        { litres: 1, price: 8 },
      ]),
    ).toEqual([{ litres: 1, count: 1, price: 8 }]);
  });
  test("containers for nothing are taken before others", () => {
    expect(
      costOf(
        cheapestContainers(10, [
          { litres: 1, price: 0 },
          { litres: 10, price: 1 },
        ]),
      ),
    ).toBe(0);
  });
  test("the order of the sizes does not matter", () => {
    const reversed = [...US_SIZES].reverse();
    for (let need = 1; need < 400; need += 7) {
      expect(cheapestContainers(need * FLOZ, reversed)).toEqual(cheapestContainers(need * FLOZ, US_SIZES));
    }
  });
});

const size = fc.record({ litres: fc.integer({ min: 1, max: 12 }), price: fc.integer({ min: 1, max: 30 }) });
const sizeList = fc.uniqueArray(size, { minLength: 1, maxLength: 5, selector: (entry) => entry.litres });

describe("against trying every basket", () => {
  test("same cost, same left over, same number", () => {
    fc.assert(
      fc.property(sizeList, fc.integer({ min: 1, max: 40 }), (sizes, need) => {
        const bought = cheapestContainers(need, sizes);
        expect([costOf(bought), litresOf(bought), countOf(bought)]).toEqual(tryEveryBasket(need, sizes));
      }),
      { numRuns: 100 },
    );
  });
});

describe("sizes without a common measure", () => {
  test("thirds, sevenths and elevenths of a litre, against trying every basket", () => {
    const odd = fc.record({
      litres: fc.tuple(fc.integer({ min: 1, max: 40 }), fc.constantFrom(3, 7, 11)).map(([a, b]) => a / b),
      price: fc.integer({ min: 1, max: 30 }),
    });
    const oddList = fc.uniqueArray(odd, { minLength: 1, maxLength: 4, selector: (entry) => entry.litres });
    fc.assert(
      fc.property(oddList, fc.integer({ min: 1, max: 9 }), (sizes, need) => {
        const bought = cheapestContainers(need, sizes);
        // The brute force allows for the rounding of sums of fractions, as the search does.
        const [cost, litres] = tryEveryBasket(need - 1e-8, sizes);
        expect(costOf(bought)).toBe(cost);
        expect(litresOf(bought)).toBeCloseTo(litres, 6);
      }),
      { numRuns: 100 },
    );
  });
});

describe("against a MIP solver", () => {
  let highs: Awaited<ReturnType<typeof highsLoader>>;
  beforeAll(async () => {
    highs = await highsLoader();
  });

  test("random needs and price lists cost the same", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(
          fc.record({
            litres: fc.integer({ min: 100, max: 20_000 }),
            price: fc.integer({ min: 200, max: 40_000 }),
          }),
          { minLength: 1, maxLength: 6, selector: (entry) => entry.litres },
        ),
        fc.integer({ min: 1, max: 400_000 }),
        (sizes, need) => {
          // In millilitres and cents for the solver, in litres and money for us.
          const bought = cheapestContainers(
            need / 1000,
            sizes.map(({ litres, price }) => ({ litres: litres / 1000, price: price / 100 })),
          );
          expect(litresOf(bought)).toBeGreaterThanOrEqual(need / 1000 - 1e-9);
          expect(Math.round(costOf(bought) * 100)).toBe(solve(need, sizes));
        },
      ),
      { numRuns: 60, seed: 20_270_308 },
    );
  });

  function solve(need: number, sizes: readonly SoldSize[]): number {
    const sum = (of: (entry: SoldSize) => number): string =>
      sizes.map((entry, index) => `${of(entry)} n${index}`).join(" + ");
    const names = sizes.map((_, index) => `n${index}`).join(" ");
    const text = `Minimize\n cost: ${sum((entry) => entry.price)}\nSubject To\n need: ${sum((entry) => entry.litres)} >= ${need}\nGeneral\n ${names}\nEnd`;
    return Math.round(highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: 0 }).ObjectiveValue);
  }
});

/** Milliseconds that this thread spends on the processor; the least of three, since the first is compiled as it runs. */
const cpuMs = (run: () => unknown): number =>
  Math.min(
    ...[1, 2, 3].map(() => {
      const { user, system } = process.threadCpuUsage();
      run();
      const after = process.threadCpuUsage();
      return (after.user + after.system - user - system) / 1000;
    }),
  );

describe("large needs are quick", () => {
  const near = (litres: readonly number[], perLitre: number): SoldSize[] =>
    litres.map((entry) => ({ litres: entry, price: Math.round(entry * perLitre * 100) / 100 }));
  test.each([
    ["two sizes", near([0.946, 3.785], 22)],
    ["three without a common measure, at one price a millilitre", near([0.946, 3.785, 18.927], 10)],
    [
      "US, metric and by weight together",
      near([0.946352946, 3.785411784, 18.927, 2.5 / 1.03, 0.7 / 1.07], 10),
    ],
    ["ten sizes", near([0.1, 0.25, 0.375, 0.5, 0.75, 1, 2.5, 5, 10, 20], 15)],
  ])("%s", (_, sizes) => {
    for (const need of [12_345.678, 4_321.1, 999.99]) {
      const bought = cheapestContainers(need, sizes);
      expect(litresOf(bought)).toBeGreaterThanOrEqual(need - 1e-5);
      const lowest = Math.min(...sizes.map(({ litres, price }) => price / litres));
      expect(costOf(bought)).toBeGreaterThanOrEqual(lowest * need - 1e-6);
    }
    // Time on the processor, which a busy machine changes little, and a hundred times the need: were the work in
    // proportion to it, it would be a hundred times as much.
    const small = cpuMs(() => cheapestContainers(1_234.5, sizes));
    const large = cpuMs(() => cheapestContainers(123_456.78, sizes));
    expect(large).toBeLessThan(10 * small + 20);
  });
});

describe("properties", () => {
  test("covers the need, costs no more than any basket that does, and never falls with the need", () => {
    fc.assert(
      fc.property(
        sizeList,
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 5, maxLength: 5 }),
        fc.double({ min: 0.01, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (sizes, counts, need, more) => {
          const bought = cheapestContainers(need, sizes);
          expect(litresOf(bought)).toBeGreaterThanOrEqual(need - 1e-6);
          const basket = sizes.map((entry, index) => ({ ...entry, count: counts[index]! }));
          if (litresOf(basket) >= need) expect(costOf(bought)).toBeLessThanOrEqual(costOf(basket));
          expect(costOf(cheapestContainers(need + more, sizes))).toBeGreaterThanOrEqual(costOf(bought));
        },
      ),
    );
  });
});

/** Cost, litres and number of the best basket, by trying all that could be best. */
function tryEveryBasket(need: number, sizes: readonly SoldSize[]): readonly [number, number, number] {
  let best: readonly [number, number, number] = [Infinity, Infinity, Infinity];
  const go = (index: number, cost: number, litres: number, count: number): void => {
    if (cost > best[0]) return;
    if (litres >= need) {
      const found = [cost, litres, count] as const;
      const place = found.findIndex((value, at) => value !== best[at]);
      if (place >= 0 && found[place]! < best[place]!) best = found;
      return;
    }
    for (let at = index; at < sizes.length; at++) {
      go(at, cost + sizes[at]!.price, litres + sizes[at]!.litres, count + 1);
    }
  };
  go(0, 0, 0, 0);
  return best;
}
