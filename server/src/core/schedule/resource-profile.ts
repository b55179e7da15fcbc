/**
 * The resource profile: how many of the crew are taken when, and where another task fits beside them.
 *
 * It stands on the axis of working time, where closed hours have no length, so a task that pauses overnight is one
 * interval and holds its person across the pause of itself. Only tasks placed one by one are kept here; order and
 * priority are for the caller.
 */
import {
  type ShopTime,
  spanAroundWork,
  startAfterWork,
  touchOpening,
  workingTimeBefore,
} from "./calendar.ts";
import type { FindStart } from "./chain-timing.ts";

export interface ResourceProfile {
  /** The earliest start with one of the crew free throughout. */
  readonly findStart: FindStart;
  /** Takes one of the crew from `start` on for `work`. */
  readonly take: (start: number, work: number) => void;
  /** With the same taken; what is taken of one is free in the other. */
  readonly copy: () => ResourceProfile;
}

export function makeResourceProfile(shop: ShopTime, crew: number): ResourceProfile {
  return profileOf(shop, crew, [0, Number.POSITIVE_INFINITY], [0]);
}

/** From points[i] to points[i + 1] taken[i] people are at work. */
function profileOf(shop: ShopTime, crew: number, points: number[], taken: number[]): ResourceProfile {
  const segmentAt = (done: number): number => {
    let low = 0;
    let high = taken.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (points[middle]! <= done) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  const freeFrom = (done: number, work: number): number => {
    let start = done;
    for (let index = segmentAt(done); index < taken.length; index++) {
      if (taken[index]! >= crew) start = points[index + 1]!;
      else if (points[index + 1]! >= start + work) return start;
    }
    return start;
  };
  const split = (done: number): number => {
    const index = segmentAt(done);
    if (points[index] === done) return index;
    points.splice(index + 1, 0, done);
    taken.splice(index, 0, taken[index]!);
    return index + 1;
  };
  const join = (index: number): void => {
    if (index <= 0 || index >= taken.length || taken[index - 1] !== taken[index]) return;
    points.splice(index, 1);
    taken.splice(index, 1);
  };

  return {
    findStart: (time, work, nonPreemptive) => {
      if (work === 0) return touchOpening(shop, time);
      let done = workingTimeBefore(shop, time);
      for (;;) {
        done = freeFrom(done, work);
        if (!nonPreemptive) return startAfterWork(shop, done);
        const span = spanAroundWork(shop, done);
        if (span === undefined) return Number.POSITIVE_INFINITY;
        if (done + work <= span.to) return startAfterWork(shop, done);
        done = span.to;
      }
    },
    take: (start, work) => {
      if (work === 0) return;
      const done = workingTimeBefore(shop, start);
      const from = split(done);
      const to = split(done + work);
      for (let index = from; index < to; index++) taken[index]!++;
      join(to);
      join(from);
    },
    copy: () => profileOf(shop, crew, [...points], [...taken]),
  };
}
