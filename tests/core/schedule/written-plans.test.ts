/**
 * The plans of all jobs that are written in samples and corpora, held to hours, crew, windows, precedence, the rules of
 * sessions and the room's air by verifiers that share no code with the planner and look at every minute.
 */
import { expect, test } from "vitest";
import { planWork } from "../../../server/src/core/schedule/plan.ts";
import type { ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { IS_LONG_RUN } from "../../harness/share.ts";
import { sessionWrongsOf } from "./session-verifier.ts";
import { wrongsOf } from "./verifier.ts";
import { writtenJobs, writtenShops } from "./written-jobs.ts";

/** The verifiers count minutes, so tasks that take a part of one are rounded up to it; waits without sessions as well. */
function inWholeMinutes(input: ScheduleInput): ScheduleInput {
  const whole = (hours: number): number => Math.ceil(hours * 60 - 1e-6) / 60;
  return {
    ...input,
    chains: input.chains.map((chain) => ({
      ...chain,
      items: chain.items.map((item) => {
        if (item.kind === "overnight") return item;
        if (item.kind === "wait") return { ...item, hours: whole(item.hours) };
        const { session, maxLag, vapour } = item;
        return {
          ...item,
          hours: whole(item.hours),
          ...(vapour === undefined ? {} : { vapour: { ...vapour, afterHours: whole(vapour.afterHours) } }),
          ...(session === undefined
            ? {}
            : { session: { ...session, fixedHours: whole(session.fixedHours) } }),
          ...(maxLag === undefined
            ? {}
            : { maxLag: { ...maxLag, hours: Math.floor(maxLag.hours * 60 + 1e-6) / 60 } }),
        };
      }),
    })),
  };
}

test("of the jobs that share a shop, in one plan, keep every rule", () => {
  let jobs = 0;
  const corpus = IS_LONG_RUN ? [["../../corpus/"] as const] : [];
  for (const [place, shop] of writtenShops(["../../../samples/"], ...corpus)) {
    const input = inWholeMinutes(shop);
    const result = planWork(input);
    expect(sessionWrongsOf(input, result), place).toEqual([]);
    jobs += shop.jobs!.length;
  }
  // The reading room's four, and two each of two files of the corpus.
  expect(jobs).toBe(IS_LONG_RUN ? 8 : 4);
});

test("of written jobs keep every rule", () => {
  let inSessions = 0;
  let others = 0;
  for (const [place, job] of writtenJobs(undefined, 70)) {
    const input = inWholeMinutes(job);
    const result = planWork(input);
    if (result.status !== "planned") continue;
    if (result.sessions === undefined) others++;
    else inSessions++;
    const wrongs = result.sessions === undefined ? wrongsOf(input, result) : sessionWrongsOf(input, result);
    expect(wrongs, place).toEqual([]);
  }
  // A verifier that sees no plan finds nothing wrong.
  expect(inSessions).toBeGreaterThan(4);
  expect(others).toBeGreaterThan(0);
});
