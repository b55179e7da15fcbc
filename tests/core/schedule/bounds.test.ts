/**
 * What no plan can beat: by hand, never above the best that brute force finds, prices against the cost of whole plans
 * by the minute, and the linear master against a solver of other people.
 */
import fc from "fast-check";
import highsLoader from "highs";
import { beforeAll, describe, expect, test } from "vitest";
import { latestEnds, timeAlone } from "../../../server/src/core/schedule/bounds/chain-bounds.ts";
import {
  chainClassesOf,
  energeticBound,
  subsetSumsOf,
} from "../../../server/src/core/schedule/bounds/energetic-bound.ts";
import { makeSubsetSums } from "../../../server/src/core/schedule/bounds/subset-sum-bound.ts";
import { dayNumber, hourMs, makeShopTime } from "../../../server/src/core/schedule/calendar.ts";
import type { Times } from "../../../server/src/core/schedule/chain-timing.ts";
import {
  makeChainPricing,
  type Part,
  type Prices,
} from "../../../server/src/core/schedule/optimise/chain-pricing.ts";
import { improveByColumns } from "../../../server/src/core/schedule/optimise/improve-plan.ts";
import { type Column, startMaster } from "../../../server/src/core/schedule/optimise/simplex.ts";
import { scheduleByPriorityRules } from "../../../server/src/core/schedule/priority-rules.ts";
import { makeProblem, type Problem } from "../../../server/src/core/schedule/problem.ts";
import { schedule } from "../../../server/src/core/schedule/schedule.ts";
import type { Chain, ChainItem, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { canFinishBy } from "./brute-force.ts";
import { coatsJob, mediumJob, smallJob } from "./random-jobs.ts";
import { wrongsOf } from "./verifier.ts";

const weekdays = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: 540, closes: 1020 }));

interface Ready {
  readonly problem: Problem;
  readonly alone: ReadonlyMap<number, Times>;
}

/** The problem with each sort's times by itself; undefined where a chain cannot be done at all. */
function ready(input: ScheduleInput): Ready | undefined {
  const problem = makeProblem(input)!;
  const alone = new Map<number, Times>();
  for (const chain of problem.chains) {
    const times = timeAlone(problem, chain);
    if (typeof times === "number") return undefined;
    alone.set(chain.chainClass, times);
  }
  return { problem, alone };
}

const shop = (chains: readonly Chain[], crew = 1): ScheduleInput => ({
  calendar: { hours: weekdays, closed: [], crew },
  start: "2027-03-08T09:00", // a Monday
  chains,
});

const coats = (count: number, hours: number, dry: number, window: number): readonly ChainItem[] =>
  Array.from({ length: count }, (_, coat): readonly ChainItem[] => {
    const hands: ChainItem = { kind: "hands", id: `h${coat}`, hours, nonPreemptive: true };
    return [
      coat > 0 ? { ...hands, maxLag: { of: `h${coat - 1}`, hours: window } } : hands,
      { kind: "wait", id: `w${coat}`, hours: dry },
    ];
  }).flat();

const alike = (count: number, items: readonly ChainItem[]): readonly Chain[] =>
  Array.from({ length: count }, (_, place) => ({ key: `c${place}`, items }));

describe("what fits into an opening of eight hours", () => {
  const eight = makeShopTime({ hours: weekdays, closed: [] }, dayNumber("2027-03-08")!);
  const most = (...hours: readonly number[]) =>
    makeSubsetSums(
      eight,
      hours.map((each) => each * hourMs),
    ).most(8 * hourMs) / hourMs;

  test("tasks in one go leave time over", () => {
    expect(most(3)).toBe(6); // two of them
    expect(most(5)).toBe(5);
    expect(most(3, 2)).toBe(8); // 3 + 3 + 2
    expect(most(2.5)).toBe(7.5);
    expect(most(4.5, 3.25)).toBe(7.75);
    expect(most(1 / 3, 3)).toBeCloseTo(8, 9); // 3 + 15 thirds
  });

  test("long ones are counted", () => {
    // Two of three hours, though one-hour tasks would fill the rest; ones leave nothing over.
    expect(makeSubsetSums(eight, [3 * hourMs, hourMs]).counted).toEqual([3 * hourMs]);
  });

  test("lengths without a common measure count in full", () => {
    expect(makeSubsetSums(eight, [3 * hourMs + 1, 2 * hourMs + 7]).most(8 * hourMs)).toBe(8 * hourMs);
  });
});

describe("by hand", () => {
  const lowest = (input: ScheduleInput): number => {
    const { problem, alone } = ready(input)!;
    return (energeticBound(problem, alone) - problem.start) / hourMs;
  };

  test("the crew's work in opening hours", () => {
    // 20 h of sanding are two days of eight and four hours: Wednesday 13:00.
    const sanding: ChainItem = { kind: "hands", id: "s", hours: 2, nonPreemptive: false };
    expect(lowest(shop(alike(10, [sanding])))).toBe(52);
    expect(lowest(shop(alike(10, [sanding]), 2))).toBe(26); // 10 h each: Tuesday 11:00
  });

  test("coats of three hours go in two a day, whatever else would fill the day", () => {
    // Five coats: two on Monday, two on Tuesday, one by Wednesday 12:00. By hours alone it were Tuesday 16:00.
    const coat: ChainItem = { kind: "hands", id: "h", hours: 3, nonPreemptive: true };
    expect(lowest(shop(alike(5, [coat])))).toBe(51);
    const filling: ChainItem = { kind: "hands", id: "f", hours: 1, nonPreemptive: true };
    expect(lowest(shop([...alike(5, [coat]), { key: "x", items: [filling] }]))).toBe(51);
  });

  test("what must still dry counts, in the calendar", () => {
    // Four sandings of 4 h, each with a coat of 1 h after the night: the last sanding ends on Tuesday 17:00, and its
    // coat is on from Wednesday 09:00 to 10:00.
    const items: readonly ChainItem[] = [
      { kind: "hands", id: "s", hours: 4, nonPreemptive: false },
      { kind: "overnight", id: "n" },
      { kind: "hands", id: "h", hours: 1, nonPreemptive: true },
    ];
    // 16 h of sanding and 3 of the 4 coats come before the last coat, which begins after a night.
    expect(lowest(shop(alike(4, items)))).toBeGreaterThanOrEqual(49);
  });

  test("coats tied over three days cross a Wednesday, two of them a week", () => {
    // Coats of 3 h that dry 4 h go on one a day, so three within 24 h each need three days in a row, from Monday to
    // Friday always with the Wednesday; on it are two. Eight chains take four weeks, to the fourth Wednesday at 15:00,
    // and 4 h to dry: 3 · 168 + 48 + 6 + 4.
    const plan = schedule(shop(alike(8, coats(3, 3, 4, 24))));
    expect(plan.elapsedHours).toBe(562);
    expect(plan.gap).toBeLessThan(0.01);
  });
});

describe("never above the best", () => {
  const check = (input: ScheduleInput): void => {
    const made = ready(input);
    if (made === undefined) return;
    const { problem, alone } = made;
    const best = schedule(input);
    expect(best.exact).toBe(true);
    const lowest = energeticBound(problem, alone);
    const plan = scheduleByPriorityRules(problem, Number.POSITIVE_INFINITY)!;
    // Asked of a plan that is far too late, with nothing known: prices alone must find the bound.
    const late = { ...plan, finish: plan.finish + 60 * hourMs };
    const found = improveByColumns(problem, alone, late, problem.start);
    for (const bound of [lowest, found.bound]) {
      const hours = (bound - problem.start) / hourMs;
      expect(hours).toBeLessThanOrEqual(best.elapsedHours + 1e-9);
      expect(canFinishBy(input, Math.ceil(hours - 1e-9) - 1)).toBe(false);
    }
    expect(canFinishBy(input, best.elapsedHours)).toBe(true);
  };

  test.each([false, true])("in small jobs of any kind, windows %s", (windows) => {
    fc.assert(fc.property(smallJob(fc.integer({ min: 1, max: 2 }), windows), check), {
      numRuns: 8,
      seed: 21,
    });
  });

  test("in small jobs of coats that are tied", () => {
    fc.assert(fc.property(coatsJob(3, 3, 1), check), { numRuns: 6, seed: 22 });
  });
});

test("larger jobs of tied coats keep every rule, and their bound is below their finish", () => {
  fc.assert(
    fc.property(coatsJob(9, 5, 0.25), (input) => {
      const result = schedule(input);
      if (result.status === "impossible") {
        expect(result.conflicts.length).toBeGreaterThan(0);
        return;
      }
      expect(wrongsOf(input, result)).toEqual([]);
      expect(schedule(input)).toEqual(result);
    }),
    { numRuns: 6, seed: 23 },
  );
});

describe("prices", () => {
  /** What a plan's chain pays, looking at every minute of it. */
  function costOf(
    items: readonly { readonly start: number; readonly end: number; readonly id: string }[],
    chain: Chain,
    zero: number,
    parts: readonly Part[],
    prices: Prices,
    counted: readonly number[],
    longest: number,
  ): number {
    const minute = hourMs / 60;
    let cost = 0;
    for (const [place, item] of chain.items.entries()) {
      if (item.kind !== "hands") continue;
      const from = zero + Math.round(items[place]!.start * 60) * minute;
      const to = zero + Math.round(items[place]!.end * 60) * minute;
      const touched = parts.flatMap((part, index) => (part.opens < to && part.closes > from ? [index] : []));
      for (let time = from; time < to; time += minute) {
        const part = parts.findIndex(({ opens, closes }) => opens <= time && time < closes);
        if (part >= 0) cost += minute * prices.work[part]!;
      }
      for (const part of touched.slice(0, -1)) cost += prices.across[part]!;
      const isWhole = item.nonPreemptive && item.hours * hourMs <= longest;
      if (!isWhole || touched.length === 0) continue;
      const { opening } = parts[touched[0]!]!;
      cost += item.hours * hourMs * prices.nonPreemptive[opening]!;
      for (const [rank, length] of counted.entries())
        if (item.hours * hourMs >= length) cost += prices.counted[rank]![opening]!;
    }
    return cost;
  }

  const check = (input: ScheduleInput, seed: number): void => {
    const result = schedule(input);
    if (result.status === "impossible" || input.calendar!.hours === undefined) return;
    const { problem, alone } = ready(input)!;
    const finish = problem.start + result.elapsedHours * hourMs;
    // Openings from the calendar's own spans, cut in two.
    const parts: Part[] = [];
    const openings = openMinutes(problem, finish);
    for (const [opening, { opens, closes }] of openings.entries()) {
      const middle = opens + Math.floor((closes - opens) / 2 / 60_000) * 60_000;
      if (middle > opens) parts.push({ opens, closes: middle, opening });
      parts.push({ opens: middle, closes, opening });
    }
    let state = seed;
    const next = (): number => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return Math.max(0, state / 2 ** 31 - 0.7); // many are free
    };
    const draw = (length: number): Float64Array => Float64Array.from({ length }, next);
    const { counted } = subsetSumsOf(problem);
    const prices: Prices = {
      work: draw(parts.length),
      across: draw(parts.length),
      nonPreemptive: draw(openings.length),
      counted: counted.map(() => draw(openings.length)),
    };
    for (const chainClass of chainClassesOf(problem, alone)) {
      const due = latestEnds(problem, chainClass.chain, finish)!;
      const ways = makeChainPricing(problem, parts, chainClass, due, counted);
      let place = 0;
      for (const chain of input.chains) {
        const items = result.items.slice(place, place + chain.items.length);
        place += chain.items.length;
        if (problem.chains.find(({ key }) => key === chain.key)!.chainClass !== chainClass.chain.chainClass)
          continue;
        // At prices drawn, and at prices that are made for this very chain.
        for (const asked of [
          prices,
          pricesFor(problem, items, parts, openings.length, counted.length, next),
        ]) {
          const paid = costOf(items, chain, problem.start, parts, asked, counted, problem.shop.longest);
          expect(ways.cheapest(asked)!.cost).toBeLessThanOrEqual(paid * (1 + 1e-9) + 1e-6);
        }
      }
    }
  };

  /** Work costs nothing in one of the parts that each task touches, and something everywhere else. */
  function pricesFor(
    problem: Problem,
    items: readonly { readonly start: number; readonly end: number }[],
    parts: readonly Part[],
    nOpenings: number,
    nCounted: number,
    next: () => number,
  ): Prices {
    const work = new Float64Array(parts.length).fill(1);
    for (const { start, end } of items) {
      const touched = parts.flatMap(({ opens, closes }, index) =>
        opens < problem.start + end * hourMs && closes > problem.start + start * hourMs ? [index] : [],
      );
      if (touched.length > 0) work[touched[Math.floor(next() * 3) % touched.length]!] = 0;
    }
    const none = (length: number): Float64Array => new Float64Array(length);
    return {
      work,
      across: none(parts.length),
      nonPreemptive: none(nOpenings),
      counted: Array.from({ length: nCounted }, () => none(nOpenings)),
    };
  }

  /** The opening hours between start and finish, minute by minute. */
  function openMinutes(problem: Problem, finish: number): { opens: number; closes: number }[] {
    const all = [...problem.shop.spans];
    for (let week = 0; week < 60; week++)
      for (const span of problem.shop.week)
        all.push({
          opens: span.opens + week * 168 * hourMs,
          closes: span.closes + week * 168 * hourMs,
          before: 0,
        });
    return all
      .map(({ opens, closes }) => ({
        opens: Math.max(opens, problem.start),
        closes: Math.min(closes, finish),
      }))
      .filter(({ opens, closes }) => closes > opens);
  }

  test.each([
    ["any chains", mediumJob(fc.integer({ min: 1, max: 2 }), true), 31],
    ["tied coats", coatsJob(6, 5, 0.25), 32],
  ] as const)("no plan's chain pays less than the cheapest way, %s", (_, jobs, seed) => {
    fc.assert(fc.property(jobs, fc.integer({ min: 1, max: 1e9 }), check), { numRuns: 8, seed });
  });
});

describe("the linear master", () => {
  let highs: Awaited<ReturnType<typeof highsLoader>>;
  beforeAll(async () => {
    highs = await highsLoader();
  });

  /** The least scale over all columns at once. */
  function solve(nRows: number, columns: readonly Column[]): number {
    const load = (row: number): string =>
      columns
        .flatMap(({ rows, loads }, index) =>
          rows.includes(row) ? [`${loads[rows.indexOf(row)]} x${index}`] : [],
        )
        .join(" + ");
    const rows = Array.from({ length: nRows }, (_, row) => ` r${row}: ${load(row) || "0 x0"} - s <= 0`);
    const groups = [...new Set(columns.map(({ group }) => group))].map(
      (group) =>
        ` g${group}: ${columns.flatMap((column, index) => (column.group === group ? [`x${index}`] : [])).join(" + ")} = 1`,
    );
    return highs.solve(`Minimize\n s\nSubject To\n${[...rows, ...groups].join("\n")}\nEnd`).ObjectiveValue;
  }

  test("ends at the least scale, and its prices prove it", () => {
    const anyColumn = (nRows: number) =>
      fc
        .uniqueArray(fc.integer({ min: 0, max: nRows - 1 }), { minLength: 1, maxLength: nRows })
        .chain((rows) =>
          fc
            .array(fc.integer({ min: 1, max: 40 }), { minLength: rows.length, maxLength: rows.length })
            .map((loads) => ({ rows, loads: loads.map((load) => load / 10) })),
        );
    const problems = fc
      .tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 4 }))
      .chain(([nRows, nGroups]) =>
        fc.record({
          nRows: fc.constant(nRows),
          groups: fc.array(fc.array(anyColumn(nRows), { minLength: 1, maxLength: 6 }), {
            minLength: nGroups,
            maxLength: nGroups,
          }),
        }),
      );
    fc.assert(
      fc.property(problems, ({ nRows, groups }) => {
        const columns = groups.flatMap((each, group) => each.map((column): Column => ({ group, ...column })));
        const first = groups.map((each, group): Column => ({ group, ...each[0]! }));
        const master = startMaster(nRows, first);
        for (let round = 0; round < 60; round++) {
          master.prices();
          for (const column of columns) master.offer(column);
        }
        const least = solve(nRows, columns);
        expect(master.scale()).toBeCloseTo(least, 6);
        // At these prices every group's cheapest columns together cost the scale.
        const { rows } = master.prices();
        const cost = groups.reduce(
          (sum, each) =>
            sum +
            Math.min(
              ...each.map((column) =>
                column.rows.reduce((paid, row, at) => paid + rows[row]! * column.loads[at]!, 0),
              ),
            ),
          0,
        );
        expect(cost).toBeCloseTo(least, 6);
        const mixed = master.mixture();
        for (const group of groups.keys()) {
          const weights = mixed.filter(({ column }) => column.group === group).map(({ weight }) => weight);
          expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 6);
        }
      }),
      { numRuns: 80, seed: 41 },
    );
  });
});
