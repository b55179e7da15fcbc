/**
 * The verdict on the air of a job: what its coats and steps need, together with all that other jobs give off in the same
 * room at the same hours, and whether the air that is there is enough by this sum. Check, totals, sheets and hovers all
 * say what is worked out here.
 *
 * A sum that comes out well proves nothing: who stands over the piece breathes more than the room's mean, and the safety
 * data sheet decides.
 */

import type { DutyWord } from "../knowledge/duties.ts";
import type { Solvent, StandIn } from "../knowledge/solvents.ts";
import { hourOf } from "../measure/iso-dates.ts";
import type { Shop } from "../model/model.ts";
import type { Schedule } from "../schedule/types.ts";
import type { Action, Duties } from "../surface/actions.ts";
import {
  type CoatFumes,
  coatFumes,
  type FumesDraw,
  LEAST_RELEASE_H,
  type Release,
  releasesOf,
  share,
} from "./job-fumes.ts";
import {
  type BusyTime,
  type JobRelease,
  openingOf,
  type RoomOfJobs,
  type SharedAir,
  sharedAir,
  timesNear,
} from "./room-of-jobs.ts";
import { type AirNeed, greaterNeed, NO_NEED, type Stance, solventOf } from "./worst-air.ts";

/**
 * Air changes an hour that open windows or a fan may bring beyond the room's own. What needs more than both together has too
 * little where `ventilate` states no number. Open windows alone brought up to 3 an hour more in two houses (Howard-Reed, Wallace and Ott,
 * Journal of the Air & Waste Management Association 52, 2002, pages 147 to 159; from memory); 10 for windows on two sides
 * with a fan: common practice, no source.
 */
export const MOST_UNMEASURED_PER_H = 10;

/**
 * - `enough`: by this sum, for the cautious solvent.
 * - `unnamed`: enough for the usual solvent of such a product, not for the cautious one that stands for it.
 * - `unmeasured`: more than the room's own air, and nobody says how much `ventilate` brings.
 * - `masked`: too little to breathe, but what whoever works there wears is made for as much; others in the room wear none.
 * - `short`: the air that is stated is too little.
 */
export type AirVerdict = "enough" | "unnamed" | "unmeasured" | "masked" | "short";

export interface AirThere {
  readonly m3PerH: number;
  readonly airChangesPerH: number;
  /** The room by itself, a stated `ventilate N`; `unmeasured`: at least the room's own, if that is known. */
  readonly by: "room" | "stated" | "unmeasured";
}

/** What is given off in a stretch of hours, by the solvents that stand for it. */
export interface Vapour {
  readonly solvent: Solvent;
  readonly grams: number;
  /** Nobody names the solvent: the cautious one of its kind stands for it. */
  readonly isAssumed: boolean;
}

/** One coat or one doing of a step. */
export interface CoatAir {
  readonly coat: CoatFumes;
  /** What it needs by itself, and what it gives off in that stretch. */
  readonly alone: AirNeed;
  readonly vapours: readonly Vapour[];
  /** What its hours need with all that is given off in the room. */
  readonly together: AirNeed;
  readonly there: AirThere;
  readonly verdict: AirVerdict;
}

/** The stretch that asks for most air. */
export interface WorstAir {
  readonly need: AirNeed;
  readonly coat: CoatAir;
  readonly grams: number;
  /** Of the grams, those of vapours with a solvent to stand for them. */
  readonly vapours: readonly Vapour[];
  /** Lines of this job that give off something in it. */
  readonly coats: readonly CoatAir[];
  /** Other jobs that do, by name. */
  readonly others: readonly string[];
}

export interface JobAir {
  readonly roomM3: number;
  /** Coats whose grams are known, in the order of the job's lines. */
  readonly coats: readonly CoatAir[];
  /** Undefined where nothing is given off that has a limit. */
  readonly worst?: WorstAir;
}

/** What one job puts into the air of a room. */
export interface JobInRoom {
  readonly name: string;
  readonly draws: readonly FumesDraw[];
  readonly schedule: Schedule;
}

/** Fresh air that a line has for certain: the room's own change, or what its `ventilate N` brings if that is more. */
export function airThere(shop: Shop, duties: Duties): AirThere {
  const { m3, airChanges } = shop.room!.value;
  const duty = duties.get("ventilate");
  const stated = duty?.airChanges;
  const airChangesPerH = Math.max(airChanges ?? 0, stated ?? 0);
  const by =
    stated !== undefined
      ? stated > (airChanges ?? 0)
        ? "stated"
        : "room"
      : duty || airChanges === undefined
        ? "unmeasured"
        : "room";
  return { m3PerH: airChangesPerH * m3, airChangesPerH, by };
}

/**
 * Times the limit up to which a respirator protects who wears it: 10 for a half mask with cartridges, 25 for a hood with
 * supplied air (29 CFR 1910.134(d)(3)(i)(A), table 1, from memory, confidence high; the lowest of each kind).
 */
const PROTECTION: readonly (readonly [duty: DutyWord, factor: number])[] = [
  ["supplied_air", 25],
  ["vapour_respirator", 10],
];

/** Times the limit up to which what is worn protects, 1 where nothing is. */
export const protectionOf = (duties: Duties): number =>
  PROTECTION.find(([duty]) => duties.has(duty))?.[1] ?? 1;

/** Whether the air that is there covers a need, for the cautious and for the usual solvent. */
export function airVerdict(
  need: { readonly cautious: AirNeed; readonly usual: AirNeed },
  there: AirThere,
  duties: Duties,
): AirVerdict {
  const lacks = (m3PerH: number): boolean => there.m3PerH < m3PerH * (1 - 1e-9);
  if (!lacks(need.cautious.m3PerH)) return "enough";
  if (!lacks(need.usual.m3PerH)) return "unnamed";
  // Half of what a solvent that nobody named would take is within the doubt about which one it is.
  const isUnnamed = need.cautious.m3PerH > need.usual.m3PerH * (1 + 1e-9);
  if (isUnnamed && !lacks(need.usual.m3PerH / 2) && !lacks(need.usual.fireM3PerH)) return "unnamed";
  const factor = protectionOf(duties);
  if (factor > 1 && !lacks(need.usual.fireM3PerH) && !lacks(need.usual.m3PerH / factor)) return "masked";
  const doubt = isUnnamed ? 2 : 1;
  const most = (there.airChangesPerH + MOST_UNMEASURED_PER_H) * doubt;
  return there.by === "unmeasured" && need.usual.airChangesPerH <= most ? "unmeasured" : "short";
}

/** What a job gives off by itself, whatever others do in the room. */
export interface OwnAir {
  readonly name: string;
  readonly shop: Shop;
  /** Hours since 1970 at which its plan begins; undefined where it is judged without the dates of others. */
  readonly startH: number | undefined;
  readonly coats: readonly OwnCoat[];
  /** Without dates: all of its own releases together. */
  readonly undated: SharedAir | undefined;
}

interface OwnCoat {
  readonly coat: CoatFumes;
  readonly releases: readonly JobRelease[];
  readonly alone: SharedAir;
}

/** A job's own part of its air; undefined without a shop whose room is stated. `isDated`: it may share its room. */
export function ownAir(job: JobInRoom, shop: Shop | undefined, isDated: boolean): OwnAir | undefined {
  if (!shop?.room) return undefined;
  const planned = releasesOfJob(job);
  const startH = isDated ? startHour(job.schedule) : undefined;
  const coats = coatFumes(job.draws).flatMap((coat): readonly OwnCoat[] => {
    if (coat.grams === undefined) return [];
    const releases = later(releasesOfCoat(coat, planned, job.name), startH ?? 0);
    const opening = startH === undefined ? undefined : openingOf(shop, releases);
    return [{ coat, releases, alone: sharedAir(shop, releases, opening) }];
  });
  const undated = startH === undefined && planned.length > 0 ? sharedAir(shop, planned) : undefined;
  return { name: job.name, shop, startH, coats, undated };
}

/** All that a job puts into the air of its room, in hours since 1970; nothing where its plan has no dates. */
export function datedReleases(job: JobInRoom): readonly JobRelease[] {
  const startH = startHour(job.schedule);
  return startH === undefined ? [] : later(releasesOfJob(job), startH);
}

/** Whether two jobs give off the same at the same hours; which of their actions does so is another matter. */
export const isSameInRoom = (a: readonly JobRelease[], b: readonly JobRelease[]): boolean =>
  a.length === b.length &&
  a.every((release, index) => {
    const other = b[index]!;
    return (
      release.from === other.from &&
      release.to === other.to &&
      release.grams === other.grams &&
      release.job === other.job &&
      isSameStandIn(release.standIn, other.standIn)
    );
  });

const isSameStandIn = (a: StandIn | undefined, b: StandIn | undefined): boolean =>
  a?.cautious === b?.cautious && a?.usual === b?.usual && a?.isNamed === b?.isNamed;

/** The times of a room on which a job's air depends. */
export function timesOf(own: OwnAir, room: RoomOfJobs): readonly BusyTime[] {
  const releases = own.coats.flatMap((coat) => coat.releases);
  return [...new Set(releases.flatMap(({ from, to }) => timesNear(room, from, to)))];
}

/** The verdict on a job in its room; `times` are those of `timesOf`, none where it does not share its room. */
export function jobAir(own: OwnAir, times: readonly BusyTime[]): JobAir {
  const { name, shop, startH, undated } = own;
  const room: RoomOfJobs = { times: times.toSorted((a, b) => a.fromH - b.fromH) };
  const seen = own.coats.map((coat): CoatInRoom => {
    const shared = (release: Release): readonly SharedAir[] =>
      startH === undefined ? [undated ?? coat.alone] : timesNear(room, release.from, release.to);
    return judged(shop, coat, shared);
  });
  const worst = worstOf(seen, name, startH ?? 0);
  return {
    roomM3: shop.room!.value.m3,
    coats: seen.map(({ air }) => air),
    ...(worst ? { worst } : {}),
  };
}

const releasesOfJob = ({ name, draws, schedule }: JobInRoom): readonly JobRelease[] =>
  releasesOf(draws, schedule).map((release) => ({ ...release, job: name }));

const later = (releases: readonly JobRelease[], hours: number): readonly JobRelease[] =>
  releases.map((release) => ({ ...release, from: release.from + hours, to: release.to + hours }));

/** Hours since 1970 at which a plan begins; undefined where it has no dates. */
function startHour({ status, startAt }: Schedule): number | undefined {
  return status === "planned" && startAt !== undefined ? hourOf(startAt) : undefined;
}

/** Of a coat that is not planned, all at once from its first stroke on. */
function releasesOfCoat(coat: CoatFumes, planned: readonly JobRelease[], job: string): readonly JobRelease[] {
  const actions = new Set<Action>(coat.parts.map(({ action }) => action));
  if (planned.length > 0) return planned.filter(({ action }) => actions.has(action));
  const to = Math.max(coat.applicationH + coat.dryingH, LEAST_RELEASE_H);
  const { action } = coat.parts[0]!;
  return coat.liquids.flatMap(({ grams, standIn }) =>
    grams > 0 ? [{ from: 0, to, grams, action, job, ...(standIn ? { standIn } : {}) }] : [],
  );
}

/** A coat with what else is in the room in its hours. */
interface CoatInRoom {
  readonly air: CoatAir;
  readonly own: readonly JobRelease[];
  readonly room: readonly SharedAir[];
}

/** `shared`: what a release has to do with. */
function judged(
  shop: Shop,
  { coat, releases, alone }: OwnCoat,
  shared: (release: Release) => readonly SharedAir[],
): CoatInRoom {
  const worst = (stance: Stance): AirNeed =>
    releases
      .flatMap((release) =>
        shared(release).map((times) => times[stance].needBetween(release.from, release.to)),
      )
      .reduce(greaterNeed, NO_NEED);
  const together = worst("cautious");
  const { duties } = coat.parts[0]!.action;
  const there = airThere(shop, duties);
  const verdict = airVerdict({ cautious: together, usual: worst("usual") }, there, duties);
  const by = releases
    .map(({ from, to }) => alone.cautious.needBetween(from, to))
    .reduce(greaterNeed, NO_NEED);
  return {
    air: { coat, alone: by, vapours: vapoursIn(releases, by), together, there, verdict },
    own: releases,
    room: [...new Set(releases.flatMap(shared))],
  };
}

/** The least grave first. */
export const VERDICTS_BY_GRAVITY: readonly AirVerdict[] = [
  "enough",
  "unnamed",
  "unmeasured",
  "masked",
  "short",
];

/** The gravest, of those the one that lacks most, of those the coat that needs most by itself. */
function worstOf(coats: readonly CoatInRoom[], job: string, startH: number): WorstAir | undefined {
  const rank = ({ air }: CoatInRoom): number => VERDICTS_BY_GRAVITY.indexOf(air.verdict);
  const lack = ({ air }: CoatInRoom): number => air.together.m3PerH - air.there.m3PerH;
  const [worst] = coats
    .filter(({ air }) => air.together.m3PerH > 0)
    .toSorted((a, b) => {
      const more = lack(b) - lack(a);
      const isSame = Math.abs(more) <= 1e-9 * Math.max(1, b.air.together.m3PerH);
      return rank(b) - rank(a) || (isSame ? b.air.alone.m3PerH - a.air.alone.m3PerH : more);
    });
  if (!worst) return undefined;
  const { air, room } = worst;
  const isInIt = (release: JobRelease): boolean => gramsIn(release, air.together) > 0;
  const inIt = room.flatMap(({ releases }) => releases.filter(isInIt));
  const actions = new Set(coats.flatMap(({ own }) => own.filter(isInIt).map(({ action }) => action)));
  return {
    need: { ...air.together, fromH: air.together.fromH - startH },
    coat: air,
    grams: inIt.reduce((sum, release) => sum + gramsIn(release, air.together), 0),
    vapours: vapoursIn(inIt, air.together),
    coats: coats.flatMap((each) =>
      each.air.coat.parts.some(({ action }) => actions.has(action)) ? [each.air] : [],
    ),
    others: [...new Set(inIt.map((release) => release.job))].filter((name) => name !== job),
  };
}

const gramsIn = (release: Release, { fromH, hours }: AirNeed): number =>
  release.grams * share(release, fromH, fromH + hours);

function vapoursIn(releases: readonly Release[], need: AirNeed): readonly Vapour[] {
  const found = new Map<Solvent, Vapour>();
  for (const release of releases) {
    const solvent = solventOf(release, "cautious");
    const grams = gramsIn(release, need);
    if (!solvent || grams <= 0) continue;
    const before = found.get(solvent);
    const isAssumed = before?.isAssumed === true || release.standIn?.isNamed === false;
    found.set(solvent, { solvent, grams: (before?.grams ?? 0) + grams, isAssumed });
  }
  return [...found.values()];
}
