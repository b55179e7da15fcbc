/** Judging a room in its busy times, one by one, comes to what judging all its hours at once comes to. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type JobRelease,
  roomOfJobs,
  sharedAir,
  timesNear,
} from "../../../server/src/core/fumes/room-of-jobs.ts";
import { type AirNeed, greaterNeed, NO_NEED } from "../../../server/src/core/fumes/worst-air.ts";
import type { Shop } from "../../../server/src/core/model/model.ts";
import { solventByName } from "../../harness/solvents.ts";

const SHOP = { closed: [], room: { value: { m3: 50 }, origin: "stated" } } as unknown as Shop;
const TOLUENE = solventByName("toluene")!;
const standIn = { cautious: TOLUENE, usual: TOLUENE, isNamed: true };

const release = (from: number, hours: number, grams = 100, job = "it"): JobRelease =>
  ({ from, to: from + hours, grams, job, standIn, action: { op: "step" } }) as unknown as JobRelease;

describe("busy times", () => {
  test("end where nothing is given off for more than nine hours", () => {
    const at = (second: number): number =>
      roomOfJobs(SHOP, [[release(0, 2), release(second, 1)]]).times.length;
    // The first has left at 2 h.
    expect([at(1), at(10.9), at(11.1)]).toEqual([1, 1, 2]);
  });

  test("begin and end with what is given off in them, whichever job it is of", () => {
    const { times } = roomOfJobs(SHOP, [
      [release(30, 4), release(0, 2)],
      [release(31, 1, 100, "other"), release(1, 6, 100, "other")],
    ]);
    expect(times.map(({ fromH, toH }) => [fromH, toH])).toEqual([
      [0, 7],
      [30, 34],
    ]);
    expect(times.map(({ releases }) => releases.map(({ job }) => job))).toEqual([
      ["it", "other"],
      ["it", "other"],
    ]);
  });

  test("are kept while what is given off in them stays", () => {
    const [first, second, moved] = [
      release(0, 2),
      release(40, 2, 100, "other"),
      release(41, 2, 100, "other"),
    ];
    const before = roomOfJobs(SHOP, [[first], [second]]).times;
    const after = roomOfJobs(SHOP, [[first], [moved]]).times;
    expect(after[0]).toBe(before[0]);
    expect(after[1]).not.toBe(before[1]);
  });

  test("have the greatest need of all hours, for any releases", () => {
    const releases = fc.array(
      fc.record({
        from: fc.double({ min: 0, max: 200, noNaN: true }),
        hours: fc.double({ min: 0.02, max: 20, noNaN: true }),
        grams: fc.integer({ min: 1, max: 500 }),
      }),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(releases, (given) => {
        const all = given.map(({ from, hours, grams }) => release(from, hours, grams));
        const room = roomOfJobs(SHOP, [all]);
        const whole = sharedAir(SHOP, all).cautious;
        for (const { from, to } of all) {
          const expected = whole.needBetween(from, to);
          const needs = timesNear(room, from, to).map((time) => time.cautious.needBetween(from, to));
          const found = needs.reduce<AirNeed>(greaterNeed, NO_NEED);
          expect(found.m3PerH).toBeCloseTo(expected.m3PerH, 6);
          expect(found.limit).toBe(expected.limit);
        }
      }),
      { numRuns: 200, seed: 9 },
    );
  });
});
