/** Whether a job is worth it: what is kept, redone, bought new, or redone and sold, by hand beside each figure. */
import { describe, expect, test } from "vitest";
import type { JobResult } from "../../../server/src/core/totals/job-totals.ts";
import { soldPerHour, waysOf } from "../../../server/src/core/totals/worth.ts";
import { worthTable } from "../../../server/src/views/worth.ts";
import { analyse } from "../../harness/check-text.ts";
import { board, clear, job, recipe } from "./job-text.ts";

const SHOP = "shop room {\nlabour 18.00 per h\ncurrency EUR\n}\n";
const CAN = "packs 946 mL for 28.00";
const WORK = recipe("step sand 120, takes 1 h", "step dust, takes 15 min", "layer clear x 2, takes 30 min");

function resultOf(...parts: readonly string[]): JobResult {
  return analyse({ "test.finish": parts.join("") }).jobs("test.finish")[0]!;
}

const TWO = job("board x 2", "face", "in room", "supplies 18.50");
const priced = (...lines: readonly string[]): JobResult =>
  resultOf(clear(CAN), board(...lines), SHOP, WORK, TWO);

describe("each way with the pieces", () => {
  const result = priced("bought 60.00", "new_price 400.00", "sell_price 175.00");
  const [keep, redo, buyNew, sell] = waysOf(result);

  test("as they are, they cost what was paid for them", () => {
    expect(keep).toEqual({ way: "keep", moneyOut: 120, hours: 0, hoursWorth: 0, moneyIn: 0, left: -120 });
  });

  test("redone, they cost materials, supplies and hours besides", () => {
    // 2 m2 · 2 pieces · 2 coats / 10 · 1.1 = 0.88 L: one can, 28.00; 28 + 18.50 + 2 · 60 = 166.50
    // (1 h + 15 min + 2 · 30 min) · 2 = 4.5 h, at 18.00: 81.00; 166.50 + 81 = 247.50
    expect(redo).toEqual({
      way: "redo",
      moneyOut: 166.5,
      hours: 4.5,
      hoursWorth: 81,
      moneyIn: 0,
      left: -247.5,
    });
  });

  test("new ones cost their price, and redoing leaves more by the saving of the job", () => {
    expect(buyNew).toEqual({
      way: "buy_new",
      moneyOut: 800,
      hours: 0,
      hoursWorth: 0,
      moneyIn: 0,
      left: -800,
    });
    expect(redo!.left! - buyNew!.left!).toBe(result.totals.saving);
  });

  test("redone and sold, they bring their price less all of that", () => {
    // 2 · 175 = 350; 350 − 166.50 − 81 = 102.50; an hour (350 − 166.50) / 4.5 = 40.777…
    expect(sell).toEqual({
      way: "sell",
      moneyOut: 166.5,
      hours: 4.5,
      hoursWorth: 81,
      moneyIn: 350,
      left: 102.5,
    });
    expect(soldPerHour(sell!)).toBeCloseTo(183.5 / 4.5, 9);
  });
});

describe("what is not stated", () => {
  test("a price is not known, and never nothing", () => {
    const [, , buyNew, sell] = waysOf(priced());
    expect(buyNew).toMatchObject({ moneyOut: null, left: null });
    expect(sell).toMatchObject({ moneyIn: null, left: null });
    expect(soldPerHour(sell!)).toBeNull();
  });

  test("without a price of an hour, the worth of hours and what is left are not known", () => {
    const ways = waysOf(resultOf(clear(CAN), board("sell_price 175.00"), WORK, job("board", "face")));
    expect(ways[1]).toMatchObject({ moneyOut: 28, hours: 2.25, hoursWorth: null, left: null });
    expect(ways[3]).toMatchObject({ moneyIn: 175, left: null });
    // An hour is known without: (175 − 28) / 2.25
    expect(soldPerHour(ways[3]!)).toBeCloseTo(147 / 2.25, 9);
  });

  test("what materials cost is not known without their cans", () => {
    const ways = waysOf(resultOf(clear(), board("sell_price 175.00"), SHOP, WORK, TWO));
    expect(ways[1]).toMatchObject({ moneyOut: null, hours: 4.5, hoursWorth: 81, left: null });
  });

  test("the price of one piece of several keeps that of all from being known", () => {
    const other = board("bought 5.00").replace("piece board", "piece shelf");
    const result = resultOf(
      clear(CAN),
      board("new_price 400.00", "sell_price 90.00"),
      other,
      SHOP,
      WORK,
      "job both {\npiece board\npiece shelf\nin room\napply work to board.face\n}\n",
    );
    expect(result.prices).toEqual({
      bought: 5,
      forNew: null,
      forSale: null,
      withoutNew: ["shelf"],
      withoutSale: ["shelf"],
    });
    expect(worthTable(result)!.notes).toEqual([
      "Left over is what you get less what you pay and the hours in money. What you pay has the 5.00 EUR for the pieces in it.",
      "Not known for `buy new`: no `new_price` for `shelf`.",
      "Not known for `redo and sell`: no `sell_price` for `shelf`.",
    ]);
  });

  test("where no price is stated, there is nothing to weigh", () => {
    expect(worthTable(priced("bought 60.00"))).toBeUndefined();
    expect(worthTable(priced("sell_price 80.00"))).toBeDefined();
    expect(worthTable(priced("new_price 80.00"))).toBeDefined();
  });
});

test("pieces that an earlier job paid for are not paid for again", () => {
  const text = [
    clear(CAN),
    board("bought 60.00", "sell_price 175.00"),
    SHOP,
    WORK,
    job("board", "face", "in room"),
    "job again {\npiece board\nin room\nafter it\napply work to face\n}\n",
  ].join("");
  const [first, again] = analyse({ "test.finish": text }).jobs("test.finish");
  expect(waysOf(first!)[0]).toMatchObject({ moneyOut: 60 });
  expect(waysOf(again!)[0]).toMatchObject({ moneyOut: 0, left: 0 });
});

test("as a table: no figure in the place of nothing, and what it comes to in sentences", () => {
  expect(worthTable(priced("bought 60.00", "new_price 400.00", "sell_price 50.00"))).toEqual({
    basis: "an hour of work at 18.00 EUR",
    rows: [
      { way: "keep", name: "keep as it is", figures: ["120.00", "none", "none", "none", "-120.00"] },
      { way: "redo", name: "redo", figures: ["166.50", "4 h 30 min", "81.00", "none", "-247.50"] },
      { way: "buy_new", name: "buy new", figures: ["800.00", "none", "none", "none", "-800.00"] },
      {
        way: "sell",
        name: "redo and sell",
        // 100 − 166.50 − 81
        figures: ["166.50", "4 h 30 min", "81.00", "100.00", "-147.50"],
      },
    ],
    notes: [
      "Left over is what you get less what you pay and the hours in money. What you pay has the 120.00 EUR for the pieces in it.",
      "Redoing costs 552.50 EUR less than buying new.",
      // (100 − 166.50) / 4.5 = −14.777…
      "Redone and sold, an hour of work brings -14.78 EUR.",
    ],
  });
});
