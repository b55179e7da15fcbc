/**
 * What becomes of a plan's finish when one of its items is held up, by going through the minutes.
 *
 * The order stays: each chain's own, and who of the crew does what after what, given out again as the plan does, to
 * somebody who has done nothing yet or else to whoever has been free the longest. Windows are not looked at.
 */
import type { ChainItem, Schedule, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { makeOpenMinute, minuteOf, morningAfter } from "./open-hours.ts";
import { longestSpan } from "./verifier.ts";

interface Placed {
  readonly item: ChainItem;
  readonly chain: string;
  /** Places of the items that must have ended. */
  readonly after: number[];
  readonly place: number;
}

/** The finish in hours when the item at `place` starts (a wait: ends) `slip` hours later than planned. */
export function finishWithSlip(input: ScheduleInput, plan: Schedule, place: number, slip: number): number {
  const isOpenMinute = makeOpenMinute(input.calendar!);
  const zero = minuteOf(plan.startAt!);
  const isOpen = (minute: number): boolean => isOpenMinute(zero + minute);
  const longest = longestSpan(input);
  const ends: number[] = [];
  let finish = 0;
  for (const placed of inOrder(input, plan)) {
    const before = Math.max(0, ...placed.after.map((other) => ends[other]!));
    const { item } = placed;
    const planned = plan.items[placed.place]!;
    const isHeld = placed.place === place;
    let end = before;
    if (item.kind === "hands") {
      const held = Math.round((planned.start + slip) * 60);
      end = workFrom(Math.max(before, isHeld ? held : 0), item, isOpen, longest);
    } else if (item.kind === "wait") {
      const from = item.of === undefined ? before : ends[placeOf(input, placed.chain, item.of)]!;
      end = Math.max(before, from + item.hours * 60);
    } else {
      end = morningAfter(input.calendar!, isOpenMinute, zero + before) - zero;
    }
    if (isHeld && item.kind !== "hands") end = Math.max(end, Math.round((planned.end + slip) * 60));
    ends[placed.place] = end;
    finish = Math.max(finish, end);
  }
  return finish / 60;
}

function workFrom(
  ready: number,
  item: Extract<ChainItem, { kind: "hands" }>,
  isOpen: (minute: number) => boolean,
  longest: number,
): number {
  const minutes = item.hours * 60;
  for (let start = ready; ; start++) {
    if (!isOpen(start)) continue;
    let end = start;
    let isBroken = false;
    for (let left = minutes; left > 0; end++) {
      if (isOpen(end)) left--;
      else isBroken = true;
    }
    if (!isBroken || !item.nonPreemptive || minutes > longest) return end;
  }
}

function placeOf(input: ScheduleInput, chain: string, id: string): number {
  let place = 0;
  for (const { key, items } of input.chains) {
    if (key === chain) return place + items.findIndex((item) => item.id === id);
    place += items.length;
  }
  return -1;
}

/** The items with what they come after, every one behind those. */
function inOrder(input: ScheduleInput, plan: Schedule): readonly Placed[] {
  const placed = input.chains.flatMap(({ key, items }) =>
    items.map((item, index) => ({ item, chain: key, index })),
  );
  const all: Placed[] = placed.map(({ item, chain, index }, place) => ({
    item,
    chain,
    place,
    after: index > 0 ? [place - 1] : [],
  }));
  const byStart = [...all].sort(
    (a, b) => plan.items[a.place]!.start - plan.items[b.place]!.start || a.place - b.place,
  );
  const people: Placed[] = [];
  for (const task of byStart.filter(({ item }) => item.kind === "hands")) {
    if (people.length < input.calendar!.crew) {
      people.push(task);
      continue;
    }
    const freeSince = people.map((last) => plan.items[last.place]!.end);
    const person = freeSince.indexOf(Math.min(...freeSince));
    task.after.push(people[person]!.place);
    people[person] = task;
  }
  return byStart.sort((a, b) => plan.items[a.place]!.start - plan.items[b.place]!.start || a.place - b.place);
}
