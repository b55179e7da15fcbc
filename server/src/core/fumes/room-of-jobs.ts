/**
 * A room with all that its jobs give off, in the stretches of time in which anything is given off.
 *
 * No limit is a mean of more than a shift, so what is given off on one side of a longer break says nothing about the
 * other. Each stretch is judged by itself, and kept as long as what is given off in it stays the same: a job that changes
 * costs the stretches that it has a part in.
 */

import { firstIndex } from "../../../../grammar/src/binary-search.ts";
import type { Shop } from "../model/model.ts";
import { memo, onceFor, onceForList } from "../once.ts";
import { hourMs, makeShopTime, nextOpening, type ShopTime } from "../schedule/calendar.ts";
import type { Release } from "./job-fumes.ts";
import { SHIFT_H } from "./room-air.ts";
import { type RoomAir, roomAir } from "./worst-air.ts";

export type JobRelease = Release & { readonly job: string };

/** What is given off in a room together, and what that asks for. Hours are counted as those of the releases. */
export interface SharedAir {
  readonly cautious: RoomAir;
  readonly usual: RoomAir;
  readonly releases: readonly JobRelease[];
}

/** A stretch of time without a break of more than a shift in which nothing is given off. */
export interface BusyTime extends SharedAir {
  readonly fromH: number;
  readonly toH: number;
}

/** In the order of time. */
export interface RoomOfJobs {
  readonly times: readonly BusyTime[];
}

/** The room of a shop with what jobs in it give off, in hours since 1970, job by job. The shop must state its room. */
export function roomOfJobs(shop: Shop, jobs: readonly (readonly JobRelease[])[]): RoomOfJobs {
  return { times: busyTimes(jobs.flat()).map(busyTimeIn(shop)) };
}

/** The times with which something given off between two hours has to do. */
export function timesNear({ times }: RoomOfJobs, fromH: number, toH: number): readonly BusyTime[] {
  const first = firstIndex(times, (time) => time.toH > fromH - SHIFT_H);
  let end = first;
  while (end < times.length && times[end]!.fromH < toH + SHIFT_H) end += 1;
  return times.slice(first, end);
}

/** Longer than a shift by so much that roundings do not count. */
const BREAK_H = SHIFT_H + 1;

/** The releases of each stretch, in the order in which they were given. */
function busyTimes(releases: readonly JobRelease[]): readonly (readonly JobRelease[])[] {
  const sorted = [...releases.entries()].sort(([, a], [, b]) => a.from - b.from);
  const times: (readonly [number, JobRelease])[][] = [];
  let until = Number.NEGATIVE_INFINITY;
  for (const entry of sorted) {
    if (times.length === 0 || entry[1].from > until + BREAK_H) times.push([]);
    times.at(-1)!.push(entry);
    until = Math.max(until, entry[1].to);
  }
  return times.map((time) => time.sort(([a], [b]) => a - b).map(([, release]) => release));
}

/** By the shop and the releases in it. */
const busyTimeIn = onceFor((shop: Shop) =>
  onceForList(
    (releases: readonly JobRelease[]): BusyTime => ({
      ...sharedAir(shop, releases, openingOf(shop, releases)),
      fromH: releases.reduce((least, { from }) => Math.min(least, from), Number.POSITIVE_INFINITY),
      toH: releases.reduce((most, { to }) => Math.max(most, to), Number.NEGATIVE_INFINITY),
    }),
  ),
);

export function sharedAir(
  shop: Shop,
  releases: readonly JobRelease[],
  opening: (hour: number) => number = (hour) => hour,
): SharedAir {
  const roomM3 = shop.room!.value.m3;
  return {
    cautious: roomAir({ releases, roomM3, stance: "cautious", opening }),
    usual: roomAir({ releases, roomM3, stance: "usual", opening }),
    releases,
  };
}

/** When the shop is open next, in hours since 1970. */
export function openingOf(shop: Shop, releases: readonly Release[]): (hour: number) => number {
  const first = releases.reduce((least, { from }) => Math.min(least, from), Number.POSITIVE_INFINITY);
  if (!shop.hours || !Number.isFinite(first)) return (hour) => hour;
  const firstDay = Math.floor(first / 24) - 2;
  const time = shopTimesOf(shop)(firstDay);
  return (hour) => nextOpening(time, (hour - firstDay * 24) * hourMs) / hourMs + firstDay * 24;
}

/** Coats of many jobs begin on one day. */
const shopTimesOf = onceFor((shop: Shop) =>
  memo((firstDay: number): ShopTime => makeShopTime({ hours: shop.hours, closed: shop.closed }, firstDay)),
);
