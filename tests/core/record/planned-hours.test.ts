/**
 * The hours that were planned of a job in sessions, once it has a record: those of its plan, which sets up once a session.
 *
 * Four doors of 1 m2 and one person. Dusting takes 2 min, and 2 min a square metre: 2 + 4 · 2 = 10 min. A coat by brush takes
 * 5 min, and 10 min a square metre: 5 + 4 · 10 = 45 min. Dust and two coats are 100 min, at 20.00 per h 33.33. Task by task,
 * each with its own set-up and rounded up to five minutes, they would be 4 · (5 + 15 + 15) = 140 min.
 */
import { expect, test } from "vitest";
import { PlanQueue } from "../../../server/src/core/schedule/plan-queue.ts";
import { createAnalyst } from "../../../server/src/features/analyst.ts";
import { handsOnSum } from "../../../server/src/views/sums/time-sums.ts";
import { plan } from "../../harness/planner.ts";

const DOORS = `material clear_coat "Clear" {
  family waterborne polyurethane
  covers 10 m2/L
  solids 30 %
  recoat 2 h to 24 h
  cure   1 day
  rated  20 C, 50 % RH
  packs  1 L for 16.00
}
piece door {
  surface board {
    shape area 1 m2
    wood  beech
    wear  light
  }
}
shop room {
  air      20 C, 50 % RH
  hours    Mon to Fri 09:00 to 17:00
  labour   20.00 per h
  currency EUR
}
recipe clearing(clear: material) {
  for  wood
  step dust
  layer clear x 2 {
    wait until recoat
  }
  wait until recoat
}
job doors {
  piece door x 4
  in    room
  start 2027-03-08 09:00
  apply clearing(clear: clear_coat) to board
}
`;

const withRecord = (line: string): string => DOORS.replace("to board\n", `to board\n  done  ${line}\n`);

function jobOf(text: string) {
  const analyst = createAnalyst({ resolve: (specifier) => specifier, plan });
  analyst.setFile("doors.finish", text);
  return analyst.analysis().jobs("doors.finish")[0]!;
}

const minutes = (hours: number | null): number => Math.round(hours! * 60 * 100) / 100;

test("without a record a job has the hours of its plan", () => {
  const { totals } = jobOf(DOORS);
  expect(minutes(totals.hands_on_h)).toBe(100);
  expect(totals.labour_cost).toBe(33.33);
});

test("what is done without stated hours has those of the plan, and so has what was planned", () => {
  const result = jobOf(withRecord("2027-03-08 09:10 dust on board"));
  const { totals, record } = result;
  expect(minutes(record!.planned.hands_on_h)).toBe(100);
  expect(record!.planned.labour_cost).toBe(33.33);
  // Material 16.00: 2 coats of 4 m2 at 10 m2/L with 10 % spare are 0.88 L, one can.
  expect(record!.planned.total_cost).toBe(49.33);
  expect(minutes(record!.doneHours)).toBe(10);
  expect(minutes(totals.hands_on_h)).toBe(100);
  expect(handsOnSum(result)).toBe("10 min done + 1 h 30 min still to do");
});

test("stated hours stand in place of those that were planned, and the rest has those of its plan", () => {
  // 50 min for dust and the first coat, which were planned to take 55; the second coat is left: 45 min.
  const { totals, record } = jobOf(withRecord("2027-03-08 10:30 coat 1 of clear_coat on board, took 50 min"));
  expect(minutes(record!.planned.hands_on_h)).toBe(100);
  expect(minutes(record!.doneHours)).toBe(50);
  expect(minutes(totals.hands_on_h)).toBe(95);
  // 95 min at 20.00 per h.
  expect(totals.labour_cost).toBe(31.67);
  expect(totals.total_cost).toBe(47.67);
});

test("a planner that answers later makes both plans, one after the other", () => {
  const text = withRecord("2027-03-08 09:10 dust on board");
  const queue = new PlanQueue(10, () => {});
  const analyst = createAnalyst({ resolve: (specifier) => specifier, plan: queue.plan });
  analyst.setFile("doors.finish", text);
  const totals = () => analyst.analysis().jobs("doors.finish")[0]!.totals;
  let made = 0;
  totals();
  for (let request = queue.next(); request; request = queue.next()) {
    queue.done(request, { plan: plan(request.input) });
    made += 1;
    analyst.plansChanged();
    totals();
  }
  expect(made).toBe(2);
  expect(totals()).toEqual(jobOf(text).totals);
});
