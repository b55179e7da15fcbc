/**
 * Checks a schedule against its input by looking at every minute; returns what is wrong, one line each.
 *
 * Shares no code with the scheduler. Works for inputs whose times are whole minutes.
 */
import type { Chain, PlannedItem, Schedule, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { makeOpenMinute, minuteOf, morningAfter } from "./open-hours.ts";

export function wrongsOf(input: ScheduleInput, result: Schedule): readonly string[] {
  const wrongs: string[] = [];
  const check = (isRight: boolean, text: string): void => {
    if (!isRight) wrongs.push(text);
  };
  const { calendar } = input;
  const isInShop = calendar !== undefined && input.start !== undefined;
  const isOpen = isInShop ? makeOpenMinute(calendar) : () => true;
  const zero = isInShop ? minuteOf(result.startAt!) : 0;
  const at = (hours: number): number => zero + Math.round(hours * 60);
  const nightEnd = (minute: number): number =>
    isInShop ? morningAfter(calendar, isOpen, minute) : minute + 960;

  if (isInShop) {
    let expected = minuteOf(input.start!);
    if (input.start!.length === 10) while (!isOpen(expected)) expected++;
    check(zero === expected, `starts at ${result.startAt}`);
  }
  const ends = result.items.map((item) => item.end);
  check(Math.abs(result.elapsedHours - Math.max(0, ...ends)) < 1e-9, "elapsed is not the last end");
  check(result.lowerBound <= result.elapsedHours + 1e-9, "bound above the finish");
  if (isInShop)
    check(minuteOf(result.finishAt!) === at(result.elapsedHours), "finish is not start plus elapsed");

  let place = 0;
  for (const chain of input.chains) {
    const items = result.items.slice(place, place + chain.items.length);
    place += chain.items.length;
    checkChain(chain, items, { check, at, isOpen, nightEnd, zero, longest: longestSpan(input) });
    if (isInShop) {
      for (const item of items)
        check(minuteOf(item.startAt!) === at(item.start), `${item.id}: date and hours differ`);
    }
  }
  check(place === result.items.length, "items left over");
  if (isInShop) check(mostAtOnce(input, result) <= calendar.crew, "more at work than there are people");
  return wrongs;
}

interface Tools {
  readonly check: (isRight: boolean, text: string) => void;
  readonly at: (hours: number) => number;
  readonly isOpen: (minute: number) => boolean;
  readonly nightEnd: (minute: number) => number;
  readonly zero: number;
  readonly longest: number;
}

function checkChain(chain: Chain, planned: readonly PlannedItem[], tools: Tools): void {
  const { check, at, isOpen } = tools;
  const endOf = new Map<string, number>();
  let previous = tools.zero;
  for (const [index, item] of chain.items.entries()) {
    const plan = planned[index]!;
    const start = at(plan.start);
    const end = at(plan.end);
    check(plan.id === item.id && plan.chain === chain.key, `${item.id}: out of place`);
    check(start >= previous, `${item.id}: begins before the item before has ended`);
    check(plan.slack >= 0, `${item.id}: slack ${plan.slack}`);
    if (plan.critical) check(plan.slack < 1e-6, `${item.id}: critical with slack ${plan.slack}`);
    if (item.kind === "hands") {
      const minutes = Math.round(item.hours * 60);
      let worked = 0;
      let closed = 0;
      for (let minute = start; minute < end; minute++) {
        if (isOpen(minute)) worked++;
        else closed++;
      }
      check(worked === minutes, `${item.id}: ${worked} minutes worked of ${minutes}`);
      if (minutes > 0) check(isOpen(start) && isOpen(end - 1), `${item.id}: begins or ends in closed hours`);
      if (item.nonPreemptive && minutes <= tools.longest) check(closed === 0, `${item.id}: pauses`);
      const paused = plan.pauses.reduce((sum, pause) => sum + (pause.end - pause.start), 0);
      check(Math.abs(paused * 60 - closed) < 1e-6, `${item.id}: pauses of ${paused} h`);
      if (item.maxLag !== undefined) {
        const last = endOf.get(item.maxLag.of)! + item.maxLag.hours * 60;
        check(start <= last, `${item.id}: ${start - last} minutes after its window`);
      }
    } else if (item.kind === "wait") {
      const from = item.of === undefined ? previous : endOf.get(item.of)!;
      check(end === Math.max(previous, from + Math.round(item.hours * 60)), `${item.id}: ends at ${end}`);
    } else {
      const morning = tools.nightEnd(previous);
      check(end === morning, `${item.id}: night ends at ${end}, not ${morning}`);
    }
    endOf.set(item.id, end);
    previous = end;
  }
}

/** The longest opening span of an ordinary week, in minutes. */
export function longestSpan(input: ScheduleInput): number {
  if (input.calendar?.hours === undefined || input.start === undefined) return Number.POSITIVE_INFINITY;
  const isOpen = makeOpenMinute({ ...input.calendar, closed: [] });
  let longest = 0;
  let run = 0;
  for (let minute = 0; minute < 15 * 1440; minute++) {
    run = isOpen(minute) ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest >= 14 * 1440 ? Number.POSITIVE_INFINITY : longest;
}

function mostAtOnce(input: ScheduleInput, result: Schedule): number {
  const kinds = input.chains.flatMap((chain) => chain.items.map((item) => item.kind));
  const events = result.items.flatMap((item, place) =>
    kinds[place] === "hands" && item.end > item.start
      ? [
          { time: item.start, change: 1 },
          { time: item.end, change: -1 },
        ]
      : [],
  );
  events.sort((a, b) => a.time - b.time || a.change - b.change);
  let now = 0;
  let most = 0;
  for (const { change } of events) {
    now += change;
    most = Math.max(most, now);
  }
  return most;
}
