/** What one piece costs, and what the materials are worth by what is used of them. */
import { describe, expect, test } from "vitest";
import type { JobResult } from "../../../server/src/core/totals/job-totals.ts";
import { pieceCosts, usedMaterialCost } from "../../../server/src/core/totals/piece-costs.ts";
import { analyse } from "../../harness/check-text.ts";
import { clear, recipe } from "./job-text.ts";

const resultsOf = (text: string): readonly JobResult[] => analyse({ "a.finish": text }).jobs("a.finish");
const onlyResult = (text: string): JobResult => resultsOf(text)[0]!;

/** A board of 2 m2 and a shelf of 6 m2, at 60.00 and 10.00. */
const PIECES = `piece board {
  bought 60.00
  new_price 400.00
  surface face {
    shape area 2 m2
    wood  beech
  }
}
piece shelf {
  bought 10.00
  surface face {
    shape area 6 m2
    wood  beech
  }
}
`;
const SHOP = "shop room {\nlabour 18.00 per h\n}\n";
const WORK = recipe("step dust, takes 15 min", "layer clear x 2, takes 10 min/m2");
const job = (...lines: readonly string[]): string =>
  ["job it {", "in room", "supplies 20.00", "spare 0 %", ...lines, "apply work to all", "}", ""].join("\n");

describe("the cost of one piece", () => {
  const mixed =
    clear("packs 1 L for 30.00") + PIECES + SHOP + WORK + job("piece board x 2", "piece shelf x 2");

  test("materials by litres, labour by hours, supplies evenly, the piece as bought", () => {
    const result = onlyResult(mixed);
    // Boards: 2 m2 · 2 · 2 coats / 10 = 0.8 L; shelves: 6 · 2 · 2 / 10 = 2.4 L; together 3.2 L, 4 cans for 120.00.
    expect(result.totals.material_cost).toBe(120);
    const [board, shelf] = pieceCosts(result);
    // A quarter of 120.00 for two boards. Hours of one: 0.25 + 2 · 10 min · 2 = 11/12 h, at 18.00.
    expect(board).toMatchObject({ piece: "board", count: 2, supplies: 5, bought: 60, newPrice: 400 });
    expect(board!.materials).toBeCloseTo(15, 9);
    expect(board!.labour).toBeCloseTo(16.5, 9);
    expect(board!.total).toBeCloseTo(15 + 16.5 + 5 + 60, 9);
    expect(board!.saving).toBeCloseTo(400 - 96.5, 9);
    // Three quarters for two shelves; 0.25 + 2 · 10 min · 6 = 2.25 h.
    expect(shelf!.materials).toBeCloseTo(45, 9);
    expect(shelf!.labour).toBeCloseTo(40.5, 9);
    expect(shelf!.total).toBeCloseTo(45 + 40.5 + 5 + 10, 9);
    expect(shelf!.saving).toBeNull();
  });

  test("times their counts the pieces add up to the total", () => {
    const result = onlyResult(mixed);
    const whole = pieceCosts(result).reduce((total, { count, total: each }) => total + count * each!, 0);
    expect(whole).toBeCloseTo(result.totals.total_cost!, 9);
  });

  test("is not known where a price is not", () => {
    const result = onlyResult(clear() + PIECES + SHOP + WORK + job("piece board"));
    expect(pieceCosts(result)[0]).toMatchObject({ materials: null, total: null, saving: null, bought: 60 });
  });

  test("a job after another did not buy the piece again", () => {
    const text = `${clear("packs 1 L for 30.00") + PIECES + WORK}job first {\npiece board\napply work to face\n}
job second {\npiece board\nafter first\napply work to face\n}\n`;
    const [first, second] = resultsOf(text).map((result) => pieceCosts(result)[0]!);
    expect(first!.bought).toBe(60);
    expect(second!.bought).toBe(0);
  });
});

describe("materials by what is used", () => {
  test("litres at the price of a litre in the cans bought", () => {
    const result = onlyResult(clear("packs 1 L for 30.00") + PIECES + SHOP + WORK + job("piece board"));
    // 2 m2 · 2 coats / 10 = 0.4 L of a can of 1 L for 30.00.
    expect(result.totals.material_cost).toBe(30);
    expect(usedMaterialCost(result)).toBeCloseTo(12, 9);
  });

  test("all on hand: at the size that is cheapest by the litre; without a price not known", () => {
    const used = (...lines: readonly string[]) =>
      usedMaterialCost(
        onlyResult(clear("on_hand 3 L", ...lines) + PIECES + SHOP + WORK + job("piece board")),
      );
    expect(used("packs 0.5 L for 20.00, 2 L for 60.00")).toBeCloseTo(12, 9);
    expect(used()).toBeNull();
  });
});
