/**
 * What the air of a room is asked for hour by hour while a job gives off vapour in it: the need by the mean of the hours
 * before, which is how limits are set, beside the air that is there. The greatest of these hours is the worst stretch of
 * `job-air.ts`, and the gravest verdict of them is that of the job.
 *
 * An hour has the stretches that end in it. One of a shift begins no earlier than the shop opens, as nobody is there
 * before; what has left since then still counts as a mean of the whole shift.
 */
import { firstIndex } from "../../../../grammar/src/binary-search.ts";
import { hourOf } from "../measure/iso-dates.ts";
import type { Shop } from "../model/model.ts";
import type { Action } from "../surface/actions.ts";
import {
  type AirThere,
  type AirVerdict,
  type CoatAir,
  type JobAir,
  type JobInRoom,
  VERDICTS_BY_GRAVITY,
} from "./job-air.ts";
import { type Release, releasesOf, share } from "./job-fumes.ts";
import { airChangesPerH, airNeededM3PerH, LIMIT_KINDS, type LimitKind, SHIFT_H } from "./room-air.ts";
import { type JobRelease, openingOf } from "./room-of-jobs.ts";
import { type AirNeed, greaterNeed, NO_NEED, STRETCH_H, stretchesOf } from "./worst-air.ts";

export interface AirHour {
  /** From so many hours after the start of the job, for an hour. */
  readonly hour: number;
  /** With the cautious solvent; its stretch ends in this hour. */
  readonly need: AirNeed;
  /** The air of the line that lacks most, of those that have a part in the stretch. */
  readonly there: AirThere;
  readonly verdict: AirVerdict;
  /** What gives off most in this hour of the job's own doings, or in the stretch where none does. */
  readonly mostBy: Action;
  /** Other jobs with a part in the stretch, by name. */
  readonly others: readonly string[];
}

/** What it takes to know the air of a job's hours. */
export interface JobWithAir extends JobInRoom {
  readonly shop: Shop;
  readonly air: JobAir;
  /** It shares its room with others on known dates, whose `others` count. */
  readonly isShared: boolean;
}

/** More hours are a slip of the pen, or nothing for an eye. */
const MOST_HOURS = 1000;

/** In order; hours without vapour in the room are left out. `others`: what other jobs give off there, in hours since 1970. */
export function airByHour(job: JobWithAir, others: readonly JobRelease[]): readonly AirHour[] {
  const { name, draws, schedule, shop, air, isShared } = job;
  const own: readonly JobRelease[] = releasesOf(draws, schedule).map((each) => ({ ...each, job: name }));
  if (own.length === 0) return [];
  const startH = isShared && schedule.startAt !== undefined ? hourOf(schedule.startAt) : 0;
  const firstH = own.reduce((least, { from }) => Math.min(least, from), Number.POSITIVE_INFINITY);
  const lastH = own.reduce((most, { to }) => Math.max(most, to), 0) + SHIFT_H;
  const near = others
    .map((each) => ({ ...each, from: each.from - startH, to: each.to - startH }))
    .filter(({ from, to }) => to > firstH - SHIFT_H && from < lastH);
  const releases = [...own, ...(isShared ? near : [])];
  const opens = isShared ? openingOf(shop, later(releases, startH)) : (hour: number) => hour;
  const opening = (hour: number): number => opens(hour + startH) - startH;
  const hours = hoursWith(releases, Math.floor(firstH), lastH);
  const needs = needsByHour(releases, hours, opening, shop.room!.value.m3);
  const coats = air.coats.map((coat) => ({ coat, releases: own.filter(isOf(coat)) }));
  return hours.flatMap((hour, i): readonly AirHour[] => {
    const need = needs[i]!;
    if (need.m3PerH <= 0) return [];
    const isInIt = ({ from, to }: Release): boolean => to > Math.min(hour, need.fromH) && from < hour + 1;
    const judged = coats.flatMap(({ coat, releases: given }) =>
      given.some(isInIt) ? [judgedIn(coat, need)] : [],
    );
    const worst = judged.toSorted(byLack)[0];
    const mostBy = mostIn(own, hour, hour + 1) ?? mostIn(own, Math.min(hour, need.fromH), hour + 1);
    if (worst === undefined || mostBy === undefined) return [];
    const beside = releases.filter((each) => each.job !== name && isInIt(each)).map((each) => each.job);
    return [{ hour, need, ...worst, mostBy, others: [...new Set(beside)] }];
  });
}

const later = (releases: readonly JobRelease[], hours: number): readonly JobRelease[] =>
  releases.map((each) => ({ ...each, from: each.from + hours, to: each.to + hours }));

/** Whole hours from `firstH` on in which anything leaves. */
function hoursWith(releases: readonly Release[], firstH: number, lastH: number): readonly number[] {
  const hours = new Set<number>();
  for (const { from, to } of releases) {
    const end = Math.min(to - 1e-9, lastH, firstH + MOST_HOURS);
    for (let hour = Math.max(firstH, Math.floor(from)); hour < end; hour += 1) hours.add(hour);
  }
  return [...hours].sort((a, b) => a - b);
}

const isOf = ({ coat }: CoatAir): ((release: Release) => boolean) => {
  const actions = new Set<Action>(coat.parts.map(({ action }) => action));
  return ({ action }) => actions.has(action);
};

/** Where it asks for more than there is, the verdict on the line stands, which knows how sure its solvents are. */
const judgedIn = ({ there, verdict }: CoatAir, { m3PerH }: AirNeed): Pick<AirHour, "there" | "verdict"> => ({
  there,
  verdict: there.m3PerH < m3PerH * (1 - 1e-9) ? verdict : "enough",
});

/** The gravest first, of those the one with the least air. */
const byLack = (a: Pick<AirHour, "there" | "verdict">, b: Pick<AirHour, "there" | "verdict">): number =>
  VERDICTS_BY_GRAVITY.indexOf(b.verdict) - VERDICTS_BY_GRAVITY.indexOf(a.verdict) ||
  a.there.m3PerH - b.there.m3PerH;

function mostIn(releases: readonly Release[], fromH: number, toH: number): Action | undefined {
  const grams = new Map<Action, number>();
  for (const release of releases) {
    const part = release.grams * share(release, fromH, toH);
    if (part > 0) grams.set(release.action, (grams.get(release.action) ?? 0) + part);
  }
  let most: Action | undefined;
  for (const [action, sum] of grams) if (most === undefined || sum > grams.get(most)!) most = action;
  return most;
}

/** Of each hour the greatest need among the stretches that end in it. */
function needsByHour(
  releases: readonly Release[],
  hours: readonly number[],
  opening: (hour: number) => number,
  roomM3: number,
): readonly AirNeed[] {
  const kinds = LIMIT_KINDS.map((kind) => mostByHour(kind, releases, hours, opening));
  return hours.map((hour, i) => {
    const needs = kinds.flatMap(({ kind, most }): readonly AirNeed[] => {
      const { from, m3 } = most[i]!;
      if (m3 <= 0) return [];
      const m3PerH = airNeededM3PerH(m3, STRETCH_H[kind], kind);
      const perH = airChangesPerH(m3PerH, roomM3);
      const length = STRETCH_H[kind];
      return [{ m3PerH, airChangesPerH: perH, limit: kind, fromH: from, hours: length, fireM3PerH: 0 }];
    });
    const fireM3PerH = needs.find(({ limit }) => limit === "fire")?.m3PerH ?? 0;
    return { ...needs.reduce(greaterNeed, { ...NO_NEED, fromH: hour }), fireM3PerH };
  });
}

function mostByHour(
  kind: LimitKind,
  releases: readonly Release[],
  hours: readonly number[],
  opening: (hour: number) => number,
) {
  const length = STRETCH_H[kind];
  const { stretches, left } = stretchesOf(kind, releases, "cautious", opening);
  const most = hours.map((hour) => {
    const after = firstIndex(stretches, ({ from }) => from + length > hour + 1e-9);
    const end = firstIndex(stretches, ({ from }) => from + length > hour + 1 + 1e-9);
    const begin = kind === "fire" ? hour + 1 - length : opening(hour + 1 - length);
    const ending = begin < hour + 1 ? [{ from: begin, m3: left(hour + 1) - left(begin) }] : [];
    return [...stretches.slice(after, end), ...ending].reduce(
      (best, each) => (each.m3 > best.m3 * (1 + 1e-9) ? each : best),
      { from: hour, m3: 0 },
    );
  });
  return { kind, most };
}
