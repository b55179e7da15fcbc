/**
 * Schedules worked out by hand, drawn as one line a task.
 *
 * The shop is open Monday to Friday 09:00 to 17:00 with one at work, unless a test says otherwise; 2027-03-08 is a
 * Monday.
 */

import { describe, expect, test } from "vitest";
import { conflictText } from "../../../server/src/core/schedule/conflict-text.ts";
import { schedule } from "../../../server/src/core/schedule/schedule.ts";
import type { Calendar, Chain, ChainItem, Schedule } from "../../../server/src/core/schedule/types.ts";
import { wrongsOf } from "./verifier.ts";

const shop: Calendar = {
  hours: [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: 540, closes: 1020 })),
  closed: [],
  crew: 1,
};

function layer(id: string, hours: number, window?: { of: string; hours: number }): ChainItem {
  return { kind: "hands", id, hours, nonPreemptive: true, ...(window ? { maxLag: window } : {}) };
}

function sanding(id: string, hours: number): ChainItem {
  return { kind: "hands", id, hours, nonPreemptive: false };
}

function wait(id: string, hours: number, of?: string): ChainItem {
  return { kind: "wait", id, hours, ...(of ? { of } : {}) };
}

const night: ChainItem = { kind: "overnight", id: "night" };

/** Plans and draws: hands items by start, `A paint 03-08 09:00-10:00`. Every plan goes past the verifier. */
function plan(
  chains: Record<string, readonly ChainItem[]>,
  start = "2027-03-08 09:00",
  calendar = shop,
): Schedule {
  const input = { calendar, start, chains: toChains(chains) };
  const result = schedule(input);
  if (result.status === "planned") expect(wrongsOf(input, result)).toEqual([]);
  return result;
}

function toChains(chains: Record<string, readonly ChainItem[]>): readonly Chain[] {
  return Object.entries(chains).map(([key, items]) => ({ key, items }));
}

function draw(result: Schedule, ids: RegExp = /./): readonly string[] {
  return [...result.items]
    .filter(({ id }) => ids.test(id))
    .sort((a, b) => a.start - b.start || (a.chain < b.chain ? -1 : 1))
    .map((item) => {
      const [from = "", to = ""] = [item.startAt!.slice(5, 16), item.endAt!.slice(5, 16)];
      const end = from.slice(0, 5) === to.slice(0, 5) ? to.slice(6) : to.replace("T", " ");
      return `${item.chain} ${item.id} ${from.replace("T", " ")}-${end}`;
    });
}

describe("one surface", () => {
  test("layer 1 h, wait 2 h, layer 1 h: 09-10, 12-13", () => {
    const result = plan({ A: [layer("one", 1), wait("dry", 2), layer("two", 1)] });
    expect(draw(result)).toEqual([
      "A one 03-08 09:00-10:00",
      "A dry 03-08 10:00-12:00",
      "A two 03-08 12:00-13:00",
    ]);
    expect(result).toMatchObject({
      status: "planned",
      startAt: "2027-03-08T09:00:00",
      finishAt: "2027-03-08T13:00:00",
      elapsedHours: 4,
      lowerBound: 4,
      exact: true,
      gap: 0,
    });
    expect(result.items.every(({ critical, slack }) => critical && slack === 0)).toBe(true);
  });

  test("overnight from Friday 16:00 is Monday 09:00, and the Friday layer has an hour to spare", () => {
    const result = plan({ A: [layer("one", 1), night, layer("two", 1)] }, "2027-03-12 15:00");
    expect(draw(result)).toEqual([
      "A one 03-12 15:00-16:00",
      "A night 03-12 16:00-03-15 09:00",
      "A two 03-15 09:00-10:00",
    ]);
    expect(result.elapsedHours).toBe(67); // 9 to midnight Friday, 48, and 10
    // It may end at 17:00 as well: closing is what limits it, for 12 h before Monday 09:00 is Sunday evening.
    expect(result.items[0]).toMatchObject({ slack: 1, critical: false });
  });

  test("a layer of 1 h ready at 16:30 starts at the next opening; a sanding starts and pauses", () => {
    expect(draw(plan({ A: [sanding("scuff", 7.5), layer("coat", 1)] }), /coat/)).toEqual([
      "A coat 03-09 09:00-10:00",
    ]);
    const result = plan({ A: [sanding("scuff", 7.5), sanding("sand", 1)] });
    expect(draw(result, /sand/)).toEqual(["A sand 03-08 16:30-03-09 09:30"]);
    expect(result.items[1]!.pauses).toEqual([{ start: 8, end: 24 }]);
  });

  test("a sanding of 10 h pauses at 17:00 and ends the day after at 11:00", () => {
    const result = plan({ A: [sanding("sand", 10)] });
    expect(result.finishAt).toBe("2027-03-09T11:00:00");
    expect(result.elapsedHours).toBe(26);
  });

  test("a layer too long for any day may pause, one that just fits may not", () => {
    expect(plan({ A: [layer("long", 9)] }).finishAt).toBe("2027-03-09T10:00:00");
    expect(plan({ A: [sanding("first", 1), layer("day", 8)] }).finishAt).toBe("2027-03-09T17:00:00");
  });

  test("a wait may count from an earlier item, and is over when that is long enough ago", () => {
    const result = plan({
      A: [
        layer("one", 1),
        sanding("sand", 3),
        wait("dry", 2, "one"),
        wait("cure", 5, "one"),
        layer("two", 1),
      ],
    });
    expect(result.items.map(({ id, end }) => [id, end])).toEqual([
      ["one", 1],
      ["sand", 4],
      ["dry", 4], // was over after 3 h
      ["cure", 6], // 5 h after the end of the first
      ["two", 7],
    ]);
  });

  test("a last wait counts, closed or not", () => {
    const result = plan({ A: [layer("one", 1), wait("cure", 100)] });
    expect(result).toMatchObject({ elapsedHours: 101, finishAt: "2027-03-12T14:00:00" });
  });
});

describe("several surfaces", () => {
  test("two alike, one at work: 09 A, 10 B, 12 A, 13 B", () => {
    const items = [layer("one", 1), wait("dry", 2), layer("two", 1)];
    const result = plan({ A: items, B: items });
    expect(draw(result, /one|two/)).toEqual([
      "A one 03-08 09:00-10:00",
      "B one 03-08 10:00-11:00",
      "A two 03-08 12:00-13:00",
      "B two 03-08 13:00-14:00",
    ]);
    expect(result).toMatchObject({ elapsedHours: 5, exact: true });
  });

  test("two at work do both at once", () => {
    const items = [layer("one", 1), wait("dry", 2), layer("two", 1)];
    expect(plan({ A: items, B: items }, "2027-03-08", { ...shop, crew: 2 }).elapsedHours).toBe(4);
  });

  test("the one with the long wait goes first", () => {
    // B first: 09-10, then A 10-12, B's wait ends at 16:00. A first would end at 18:00.
    const result = plan({ A: [sanding("sand", 2)], B: [layer("coat", 1), wait("dry", 6)] });
    expect(draw(result, /sand|coat/)).toEqual(["B coat 03-08 09:00-10:00", "A sand 03-08 10:00-12:00"]);
    expect(result).toMatchObject({ elapsedHours: 7, exact: true });
  });

  test("what is not critical has its slack", () => {
    const result = plan({ A: [sanding("sand", 2)], B: [layer("coat", 1), wait("dry", 6)] }, "2027-03-08", {
      ...shop,
      crew: 2,
    });
    // B takes 09:00 to 16:00; A's two hours may start as late as 14:00.
    expect(result.items.map(({ id, slack, critical }) => [id, slack, critical])).toEqual([
      ["sand", 5, false],
      ["coat", 0, true],
      ["dry", 0, true],
    ]);
  });
});

describe("recoat windows", () => {
  test("a layer is put off so that the window does not close overnight", () => {
    // Done at 09:00 it would be dry at 18:00, and the window of 16 h shut at 02:00. So: 16:00, and the next at 09:00.
    const result = plan({ A: [layer("one", 1), wait("dry", 8), layer("two", 1, { of: "one", hours: 16 })] });
    expect(draw(result, /one|two/)).toEqual(["A one 03-08 16:00-17:00", "A two 03-09 09:00-10:00"]);
    expect(result.exact).toBe(true);
  });

  test("on a Friday it waits for Monday", () => {
    // From any end on Friday to Monday 09:00 are 64 h or more. Monday's from 10:00 is open until Tuesday 10:00.
    const result = plan(
      { A: [layer("one", 1), wait("dry", 8), layer("two", 1, { of: "one", hours: 24 })] },
      "2027-03-12 09:00",
    );
    expect(draw(result, /one|two/)).toEqual(["A one 03-15 09:00-10:00", "A two 03-16 09:00-10:00"]);
  });

  test("other work gives way to a window", () => {
    // A's coats are at most 2.5 h apart, so B's five hours do not fit between, nor after them before 17:00. A first:
    // B ends on Tuesday at 14:00. B first, 09:00 to 14:00: A's second coat would fall after closing, so A has Tuesday
    // from 09:00 to 13:00, 28 h after the start.
    const result = plan({
      A: [layer("one", 1), wait("dry", 2), layer("two", 1, { of: "one", hours: 2.5 })],
      B: [layer("long", 5)],
    });
    expect(result).toMatchObject({ status: "planned", exact: true, elapsedHours: 28 });
  });

  test("a wait longer than the window is impossible, and both are named", () => {
    const result = plan({ A: [layer("one", 1), wait("dry", 30), layer("two", 1, { of: "one", hours: 24 })] });
    expect(result.status).toBe("impossible");
    expect(result.items).toEqual([]);
    expect(result.conflicts).toEqual([
      { items: ["one", "dry", "two"], reason: { why: "window", within: 24, needed: 30 } },
    ]);
    expect(conflictText(result.conflicts[0]!.reason)).toBe(
      "the window closes after 1 day, but 1 day 6 h of waits and work lie between",
    );
  });

  test("a window that opening hours never meet is impossible", () => {
    // Dry after 8 h is after closing for any start; the next opening is 16 h or more after the end.
    const result = plan({ A: [layer("one", 1), wait("dry", 8), layer("two", 1, { of: "one", hours: 12 })] });
    expect(result.conflicts).toMatchObject([{ items: ["one", "dry", "two"] }]);
    expect(result.status).toBe("impossible");
  });
});

describe("start and calendar", () => {
  test("a date without a time is that day's opening, or the next", () => {
    expect(plan({ A: [layer("one", 1)] }, "2027-03-08")).toMatchObject({
      startAt: "2027-03-08T09:00:00",
      elapsedHours: 1,
    });
    expect(plan({ A: [layer("one", 1)] }, "2027-03-13")).toMatchObject({
      startAt: "2027-03-15T09:00:00",
      elapsedHours: 1,
    });
  });

  test("a time outside hours counts as given, though hands begin at the opening", () => {
    expect(plan({ A: [layer("one", 1)] }, "2027-03-08 06:00")).toMatchObject({
      startAt: "2027-03-08T06:00:00",
      finishAt: "2027-03-08T10:00:00",
      elapsedHours: 4,
    });
  });

  test("without shop or start: the longest chain, day and night, and a night is 16 h", () => {
    const chains = toChains({
      A: [layer("one", 9), wait("dry", 30)],
      B: [layer("two", 1), night, sanding("sand", 30)],
    });
    for (const input of [{ chains }, { chains, calendar: shop }, { chains, start: "2027-03-08" }]) {
      const result = schedule(input);
      expect(result).toMatchObject({ status: "planned", elapsedHours: 47, exact: true }); // 1 + 16 + 30
      expect(result.finishAt).toBeUndefined();
      expect(wrongsOf(input, result)).toEqual([]);
    }
  });

  test("nothing to do takes no time; a shop that never opens and a start that is no date are told", () => {
    expect(schedule({ chains: [] })).toMatchObject({
      status: "planned",
      elapsedHours: 0,
      gap: 0,
      exact: true,
    });
    expect(plan({ A: [layer("one", 1)] }, "2027-03-08", { ...shop, hours: [] }).conflicts).toEqual([
      { items: ["one"], reason: { why: "never open" } },
    ]);
    expect(plan({ A: [layer("one", 1)] }, "2027-02-30").status).toBe("impossible");
  });

  test("durations that cannot be are taken as nothing or as very long, and never throw", () => {
    for (const hours of [Number.NaN, -1, 0, 1e12, Number.POSITIVE_INFINITY]) {
      expect(plan({ A: [wait("dry", 1)] }).status).toBe("planned");
      const chains = toChains({
        A: [sanding("sand", hours), wait("dry", hours), layer("one", 1, { of: "none", hours })],
      });
      expect(schedule({ calendar: shop, start: "2027-03-08", chains }).status).toBe("planned");
    }
  });
});
