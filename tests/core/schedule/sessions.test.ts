/** Plans in sessions: every rule of random shops by an independent verifier, and cases worked out by hand. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planSessions } from "../../../server/src/core/schedule/sessions/plan-sessions.ts";
import type {
  Chain,
  ChainItem,
  ScheduleInput,
  SessionRule,
} from "../../../server/src/core/schedule/types.ts";
import { randomShop, randomShopOfJobs } from "./random-shops.ts";
import { sessionWrongsOf } from "./session-verifier.ts";

describe("every rule is kept", () => {
  test("in shops with one job", () => {
    let planned = 0;
    fc.assert(
      fc.property(randomShop(16), (input) => {
        const result = planSessions(input);
        if (result === undefined) return;
        planned++;
        expect(sessionWrongsOf(input, result)).toEqual([]);
      }),
      { numRuns: 30, seed: 21 },
    );
    expect(planned).toBeGreaterThan(20);
  }, 120_000);

  test("in shops with several jobs", () => {
    let planned = 0;
    fc.assert(
      fc.property(randomShopOfJobs(12), (input) => {
        const result = planSessions(input);
        if (result === undefined) return;
        planned++;
        expect(sessionWrongsOf(input, result)).toEqual([]);
      }),
      { numRuns: 20, seed: 22 },
    );
    expect(planned).toBeGreaterThan(13);
  }, 120_000);
});

const WEEK = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: 540, closes: 1020 }));

/** A task in minutes. */
const task = (
  id: string,
  minutes: number,
  session: SessionRule,
  maxLag?: { of: string; minutes: number },
): ChainItem => ({
  kind: "hands",
  id,
  hours: minutes / 60,
  nonPreemptive: true,
  session,
  ...(maxLag === undefined ? {} : { maxLag: { of: maxLag.of, hours: maxLag.minutes / 60 } }),
});

const wait = (id: string, minutes: number): ChainItem => ({ kind: "wait", id, hours: minutes / 60 });

/** Mon 2027-03-08 09:00, one at work, 09:00 to 17:00. */
const shop = (chains: readonly Chain[], more: Partial<ScheduleInput> = {}): ScheduleInput => ({
  calendar: { hours: WEEK, closed: [], crew: 1 },
  start: "2027-03-08T09:00",
  chains,
  ...more,
});

const alike = (
  count: number,
  itemsOf: (key: string) => readonly ChainItem[],
  job?: string,
): readonly Chain[] =>
  Array.from({ length: count }, (_, place) => {
    const key = `${job ?? "c"}${place}`;
    return { key, items: itemsOf(key), ...(job === undefined ? {} : { job }) };
  });

/** `09:00-09:25 coat 2` for each session. */
function sessionsOf(input: ScheduleInput): readonly string[] {
  const result = planSessions(input)!;
  expect(sessionWrongsOf(input, result)).toEqual([]);
  const zero = Date.parse(`${result.startAt}Z`);
  const clock = (hours: number): string =>
    new Date(zero + hours * 3_600_000).toISOString().slice(8, 16).replace("T", " ");
  return result.sessions!.map(
    ({ start, end, kind, items }) => `${clock(start)}-${clock(end)} ${kind} ${items.length}`,
  );
}

const coat: SessionRule = { kind: "coat", fixedHours: 5 / 60, material: "varnish" };
const sand: SessionRule = { kind: "sand", fixedHours: 0 };

describe("by hand", () => {
  test("what is fixed is done once a session", () => {
    // 5 + 3 · 10 = 35 min, not 3 · 15.
    expect(sessionsOf(shop(alike(3, (key) => [task(key, 10, coat)])))).toEqual(["08 09:00-08 09:35 coat 3"]);
  });

  test("sand all, then coat all", () => {
    const chains = alike(3, (key) => [task(`${key}s`, 20, sand), task(`${key}c`, 10, coat)]);
    expect(sessionsOf(shop(chains))).toEqual(["08 09:00-08 10:00 sand 3", "08 10:00-08 10:35 coat 3"]);
  });

  test("what does not fit before closing waits for the next opening", () => {
    // From 16:00: 5 + 40 min fit, 5 + 80 do not.
    const chains = alike(2, (key) => [task(key, 40, coat)]);
    expect(sessionsOf(shop(chains, { start: "2027-03-08T16:00" }))).toEqual([
      "08 16:00-08 16:45 coat 1",
      "09 09:00-09 09:45 coat 1",
    ]);
  });

  test("a task longer than every opening goes on in the next, by itself", () => {
    // 9 h of 8: to 10:00 on Tuesday; the other after it, as an opening holds no more of both.
    const chains = [
      { key: "a", items: [task("a", 540, sand)] },
      { key: "b", items: [task("b", 30, sand)] },
    ];
    const result = planSessions(shop(chains))!;
    expect(sessionWrongsOf(shop(chains), result)).toEqual([]);
    expect(result.lastWorkHours).toBe(25.5);
  });

  test("no more goes into a session than pot life allows, rounded down", () => {
    // 20 + 20 min are more than 39.
    const short: SessionRule = { ...coat, mostHours: 39 / 60 };
    expect(sessionsOf(shop(alike(3, (key) => [task(key, 20, short)])))).toHaveLength(3);
    const long: SessionRule = { ...coat, mostHours: 40 / 60 };
    expect(sessionsOf(shop(alike(4, (key) => [task(key, 20, long)])))).toHaveLength(2);
  });

  test("waits end on five minutes, rounded up; windows close on them, rounded down", () => {
    const items = (window: number): readonly ChainItem[] => [
      task("a", 10, sand),
      wait("w", 7),
      task("b", 10, { ...sand, kind: "again" }, { of: "a", minutes: window }),
    ];
    // To 09:10; 7 min to 09:17, so 09:20. A window of 12 min closes at 09:22, so 09:20; one of 9 at 09:19, so 09:15.
    expect(sessionsOf(shop([{ key: "c", items: items(12) }]))).toEqual([
      "08 09:00-08 09:10 sand 1",
      "08 09:20-08 09:30 again 1",
    ]);
    expect(planSessions(shop([{ key: "c", items: items(9) }]))).toBeUndefined();
  });

  test("a job begins after another has ended, and no earlier than its start", () => {
    const chains = [
      ...alike(1, (key) => [task(key, 60, sand), wait(`${key}w`, 30)], "first"),
      ...alike(1, (key) => [task(key, 60, sand)], "second"),
      ...alike(1, (key) => [task(key, 60, sand)], "third"),
    ];
    const jobs = [
      { key: "first" },
      { key: "second", after: "first" },
      { key: "third", start: "2027-03-08T15:00" },
    ];
    // First to 10:00, dry at 10:30; second then.
    expect(sessionsOf(shop(chains, { jobs }))).toEqual([
      "08 09:00-08 10:00 sand 1",
      "08 10:30-08 11:30 sand 1",
      "08 15:00-08 16:00 sand 1",
    ]);
  });

  test("days late count before the last work", () => {
    // One person, two jobs of 6 h: whichever is first is in time for Monday 17:00.
    const chains = [
      ...alike(1, (key) => [task(key, 360, { ...sand, kind: "x" })], "free"),
      ...alike(1, (key) => [task(key, 360, { ...sand, kind: "y" })], "wanted"),
    ];
    const jobs = [{ key: "free" }, { key: "wanted", due: "2027-03-08T17:00" }];
    expect(sessionsOf(shop(chains, { jobs }))).toEqual(["08 09:00-08 15:00 y 1", "09 09:00-09 15:00 x 1"]);
  });

  test("proven best where all hours are full", () => {
    // 24 doors of 20 min: 8 h.
    const result = planSessions(shop(alike(24, (key) => [task(key, 20, sand)])))!;
    expect(result).toMatchObject({ exact: true, gap: 0, lastWorkHours: 8, lowerBound: 8 });
  });
});
