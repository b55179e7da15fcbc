/** What an hour of the work brings, and what is left over. */
import { expect, test } from "vitest";
import { earnedPerHour, litresLeftOver } from "../../../server/src/core/totals/earned.ts";

test("an hour earns what new ones cost less all costs but labour", () => {
  // New 400, materials 28, supplies 12, four hours at 15: saved 400 − 28 − 12 − 60 = 300; (300 + 60) / 4
  expect(earnedPerHour({ saving: 300, labour_cost: 60, hands_on_h: 4 })).toBe(90);
  // Without a rate no labour is among the costs: 360 / 4.
  expect(earnedPerHour({ saving: 360, labour_cost: null, hands_on_h: 4 })).toBe(90);
  expect(earnedPerHour({ saving: -20, labour_cost: null, hands_on_h: 5 })).toBe(-4);
});

test("nothing is told where something is not known, or nothing is done by hand", () => {
  expect(earnedPerHour({ saving: null, labour_cost: 60, hands_on_h: 4 })).toBeNull();
  expect(earnedPerHour({ saving: 300, labour_cost: 60, hands_on_h: null })).toBeNull();
  expect(earnedPerHour({ saving: 300, labour_cost: null, hands_on_h: 0 })).toBeNull();
});

test("what is left is what is on hand and bought less what is used", () => {
  const cans = [
    { litres: 0.5, count: 2, price: 10 },
    { litres: 1, count: 1, price: 16 },
  ];
  // 0.2 + 2 · 0.5 + 1 − 1.75
  expect(litresLeftOver({ onHand: 0.2, totals: { litres: 1.75, cost: 36, containers: cans } })).toBeCloseTo(
    0.45,
  );
  expect(litresLeftOver({ onHand: 1, totals: { litres: 0.4, cost: 0, containers: [] } })).toBeCloseTo(0.6);
  expect(litresLeftOver({ onHand: 1, totals: { litres: null, cost: null, containers: [] } })).toBeNull();
  expect(litresLeftOver({ onHand: 0, totals: { litres: 0.4, cost: null, containers: [] } })).toBeNull();
});
