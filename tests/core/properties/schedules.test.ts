/**
 * What must hold of the plan of a whole program: every constraint, by the independent verifier; warmth, crew and waits
 * in the right direction.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { scheduleInput } from "../../../server/src/core/totals/task-plan.ts";
import { sessionWrongsOf } from "../schedule/session-verifier.ts";
import { wrongsOf } from "../schedule/verifier.ts";
import { anyProgram, elapsedOf, type LineSpec, type ProgramSpec, RATED, reckon } from "./programs.ts";

/** Without latest ends of windows, whose place in a plan is not monotone by itself. */
const withoutWindows = (program: ProgramSpec): ProgramSpec => ({
  ...program,
  materials: program.materials.map((material) => ({ ...material, latest: undefined })),
});

/** Counts plans that were compared and those that differed, so that a property cannot hold for want of cases. */
function comparisons() {
  let compared = 0;
  let differing = 0;
  return {
    note: (a: number, b: number): void => {
      compared++;
      if (Math.abs(a - b) > 1e-6) differing++;
    },
    check: (least: number, leastDiffering: number): void => {
      expect(compared).toBeGreaterThanOrEqual(least);
      expect(differing).toBeGreaterThanOrEqual(leastDiffering);
    },
  };
}

test("every constraint is kept", () => {
  fc.assert(
    fc.property(anyProgram, (program) => {
      // In the rated air all times are whole minutes, as the verifier wants them.
      const { job, shop, runs, schedule } = reckon({ ...program, ...RATED });
      if (schedule.status === "impossible") {
        expect(schedule.conflicts.length).toBeGreaterThan(0);
        return;
      }
      const input = scheduleInput(job, shop, runs);
      const wrongs = schedule.sessions ? sessionWrongsOf(input, schedule) : wrongsOf(input, schedule);
      expect(wrongs).toEqual([]);
    }),
    { numRuns: 7, seed: 11 },
  );
});

test("a warmer shop never lengthens a plan, a colder one never shortens it", () => {
  const seen = comparisons();
  fc.assert(
    fc.property(anyProgram, fc.integer({ min: 1, max: 15 }), (drawn, warmer) => {
      const program = withoutWindows(drawn);
      const cold = reckon(program);
      const warm = reckon({ ...program, airC: program.airC + warmer });
      // A plan that is not proven best says nothing of how early one could be.
      if (!cold.schedule.exact || !warm.schedule.exact) return;
      // Most waits come after the last work, so that it is their end that differs.
      seen.note(cold.schedule.elapsedHours, warm.schedule.elapsedHours);
      expect(elapsedOf(warm)).toBeLessThanOrEqual(elapsedOf(cold) + 1e-6);
    }),
    { numRuns: 10, seed: 105 },
  );
  seen.check(3, 1);
});

test("damper air never shortens a plan", () => {
  const seen = comparisons();
  fc.assert(
    fc.property(anyProgram, fc.integer({ min: 1, max: 9 }), (drawn, damper) => {
      const program = withoutWindows(drawn);
      const dry = reckon(program);
      const damp = reckon({ ...program, humidity: program.humidity + damper });
      if (!dry.schedule.exact || !damp.schedule.exact) return;
      seen.note(dry.schedule.elapsedHours, damp.schedule.elapsedHours);
      expect(elapsedOf(damp)).toBeGreaterThanOrEqual(elapsedOf(dry) - 1e-6);
    }),
    { numRuns: 18, seed: 13 },
  );
  seen.check(6, 1);
});

test("one more at work never makes the finish later", () => {
  fc.assert(
    fc.property(anyProgram, (program) => {
      const more = reckon({ ...program, crew: program.crew + 1 });
      expect(elapsedOf(more)).toBeLessThanOrEqual(elapsedOf(reckon(program)) + 1e-9);
    }),
    { numRuns: 7, seed: 14 },
  );
});

test("a longer stated wait never makes the finish of a proven plan earlier", () => {
  const seen = comparisons();
  fc.assert(
    fc.property(anyProgram, fc.nat(), fc.integer({ min: 1, max: 600 }), (drawn, which, more) => {
      const program = withoutWindows(drawn);
      const waits = program.lines.filter(({ kind }) => kind === "wait");
      fc.pre(waits.length > 0);
      const chosen = waits[which % waits.length]!;
      const lines = program.lines.map(
        (line): LineSpec => (line === chosen ? { ...line, minutes: Math.max(1, line.minutes) + more } : line),
      );
      const short = reckon(program);
      const long = reckon({ ...program, lines });
      if (!short.schedule.exact || !long.schedule.exact) return;
      seen.note(elapsedOf(short), elapsedOf(long));
      expect(elapsedOf(long)).toBeGreaterThanOrEqual(elapsedOf(short) - 1e-9);
    }),
    { numRuns: 7, seed: 15 },
  );
  seen.check(2, 1);
});

describe("what is told of a plan", () => {
  test("is between its bound and its finish, and no date goes back", () => {
    fc.assert(
      fc.property(anyProgram, (program) => {
        const { schedule, totals } = reckon(program);
        if (schedule.status === "impossible") return;
        expect(schedule.lowerBound).toBeLessThanOrEqual(elapsedOf({ schedule }) + 1e-9);
        expect(elapsedOf({ schedule })).toBeLessThanOrEqual(schedule.elapsedHours + 1e-9);
        expect(totals.elapsed_h).toBe(schedule.elapsedHours);
        if (totals.in_service !== null && program.lines.some(({ kind }) => kind === "layer")) {
          const lastCoat = Math.max(...schedule.items.map(({ start }) => start));
          expect(lastCoat).toBeLessThanOrEqual(schedule.elapsedHours);
          expect(totals.in_service > schedule.startAt!).toBe(true);
        }
      }),
      { numRuns: 6, seed: 16 },
    );
  });
});
