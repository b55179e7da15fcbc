/**
 * Whether any plan at all finishes by a given hour: tries every choice at every full hour.
 *
 * Shares no code with the scheduler. At each hour of the shop, every set of ready tasks that the crew can begin is
 * tried, the empty set too. Only for small jobs whose times are whole hours.
 */
import type { Chain, ChainItem, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { makeOpenMinute, minuteOf, morningAfter } from "./open-hours.ts";
import { longestSpan } from "./verifier.ts";

interface State {
  /** By chain, the ends of the items placed so far, hours after the start. */
  readonly ends: readonly (readonly number[])[];
}

/** `input` must have a calendar and a date-time to start. */
export function canFinishBy(input: ScheduleInput, limit: number): boolean {
  const zero = minuteOf(input.start!);
  const openMinute = makeOpenMinute(input.calendar!);
  const isOpen = (hour: number): boolean => openMinute(zero + hour * 60);
  const longest = longestSpan(input) / 60;
  const leastLeft = input.chains.map(leastHoursLeft);
  const seen = new Set<string>();

  const workedUntil = (start: number, item: Extract<ChainItem, { kind: "hands" }>): number | undefined => {
    let hour = start;
    for (let left = item.hours; left > 0; hour++) {
      if (hour > limit) return undefined;
      if (isOpen(hour)) left--;
      else if (item.nonPreemptive && item.hours <= longest) return undefined;
    }
    return hour;
  };
  const waitOn = (chain: Chain, ends: number[]): void => {
    for (let index = ends.length; index < chain.items.length; index++) {
      const item = chain.items[index]!;
      const previous = ends.at(-1) ?? 0;
      if (item.kind === "hands") return;
      if (item.kind === "wait") {
        const from = item.of === undefined ? previous : ends[indexOf(chain, item.of)]!;
        ends.push(Math.max(previous, from + item.hours));
      } else {
        ends.push((morningAfter(input.calendar!, openMinute, zero + previous * 60) - zero) / 60);
      }
    }
  };

  const explore = (hour: number, state: State): boolean => {
    if (state.ends.every((ends, place) => ends.length === input.chains[place]!.items.length)) {
      return state.ends.every((ends) => (ends.at(-1) ?? 0) <= limit);
    }
    if (hour >= limit || state.ends.some((ends, place) => hour + leastLeft[place]![ends.length]! > limit))
      return false;
    if (state.ends.some((ends, place) => isWindowMissed(input.chains[place]!, ends, hour))) return false;
    const key = `${hour}|${state.ends.map((ends, place) => shortKey(input.chains[place]!, ends, hour)).join("|")}`;
    if (seen.has(key)) return false;
    seen.add(key);
    const choose = (place: number, current: State, busy: number): boolean => {
      if (place === input.chains.length) return explore(hour + 1, current);
      if (choose(place + 1, current, busy)) return true; // this chain begins nothing now
      const chain = input.chains[place]!;
      const ends = current.ends[place]!;
      const item = chain.items[ends.length];
      if (item?.kind !== "hands" || (ends.at(-1) ?? 0) > hour || !isOpen(hour)) return false;
      if (busy >= input.calendar!.crew) return false;
      if (item.maxLag !== undefined && hour > ends[indexOf(chain, item.maxLag.of)]! + item.maxLag.hours) {
        return false;
      }
      const end = workedUntil(hour, item);
      if (end === undefined) return false;
      const longer = [...ends, end];
      waitOn(chain, longer);
      const next = current.ends.map((other, index) => (index === place ? longer : other));
      return choose(place + 1, { ends: next }, busy + 1);
    };
    return choose(0, state, atWork(input.chains, state, hour));
  };
  const first = input.chains.map((chain) => {
    const ends: number[] = [];
    waitOn(chain, ends);
    return ends;
  });
  return explore(0, { ends: first });
}

/** By number of items placed, the hours that the chain still takes at the least once its next task can begin. */
function leastHoursLeft(chain: Chain): readonly number[] {
  const left = [0];
  for (const item of [...chain.items].reverse()) {
    const own =
      item.kind === "hands" ? item.hours : item.kind === "overnight" ? 12 : item.of ? 0 : item.hours;
    left.unshift(left[0]! + own);
  }
  return left;
}

/** A task not yet begun should have begun before `hour`. */
function isWindowMissed(chain: Chain, ends: readonly number[], hour: number): boolean {
  return chain.items.slice(ends.length).some((item) => {
    if (item.kind !== "hands" || item.maxLag === undefined) return false;
    const from = ends[indexOf(chain, item.maxLag.of)];
    return from !== undefined && hour > from + item.maxLag.hours;
  });
}

/** How many are still at the task they began before `hour`. */
function atWork(chains: readonly Chain[], state: State, hour: number): number {
  let busy = 0;
  for (const [place, ends] of state.ends.entries()) {
    for (const [index, end] of ends.entries()) {
      if (chains[place]!.items[index]!.kind === "hands" && end > hour) busy++;
    }
  }
  return busy;
}

/** What of a chain's past can still matter: ends that later items count from, and ends to come. */
function shortKey(chain: Chain, ends: readonly number[], hour: number): string {
  const later = chain.items.slice(ends.length);
  const counted = new Set(
    later.flatMap((item) =>
      item.kind === "hands" && item.maxLag
        ? [item.maxLag.of]
        : item.kind === "wait" && item.of
          ? [item.of]
          : [],
    ),
  );
  const kept = ends.map((end, index) => (end > hour || counted.has(chain.items[index]!.id) ? end : 0));
  return `${ends.length}:${kept.join()}`;
}

function indexOf(chain: Chain, id: string): number {
  return chain.items.findIndex((item) => item.id === id);
}
