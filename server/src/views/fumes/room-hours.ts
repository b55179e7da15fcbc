/** The air of a job's room hour by hour, for a chart: what each hour asks for beside what there is, in figures and in words. */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { type AirHour, airByHour } from "../../core/fumes/air-by-hour.ts";
import { type AirVerdict, datedReleases, VERDICTS_BY_GRAVITY } from "../../core/fumes/job-air.ts";
import { jobFumes } from "../../core/fumes/job-fumes.ts";
import { type LimitKind, SHIFT_H } from "../../core/fumes/room-air.ts";
import { airChangesText, gramsText, roomText } from "../../core/measure/figures.ts";
import { hoursBetween } from "../../core/measure/iso-dates.ts";
import type { Shop } from "../../core/model/model.ts";
import { andList } from "../../core/model/suggest.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { awaitsRoomAir, gapsOf } from "../missing-inputs.ts";
import { momentAfterStart } from "../schedule/job-plan.ts";
import { actionTitle } from "../sheet/action-title.ts";
import { titleOf } from "../sheet/words.ts";
import { changes, thereText, VERDICT_WORDS } from "./fumes-facts.ts";

export interface RoomHours {
  /** `no room`: how much leaves is known, and not into how much air. `none`: nothing leaves, or not while it is planned. */
  readonly state: "known" | "being planned" | "no room" | "none";
  readonly hours: readonly RoomHour[];
  /** The hour that asks for most, in a sentence; where there is no room, the hour in which most leaves. Empty without one. */
  readonly worst: string;
  /** What keeps it from being known, names in backticks. */
  readonly missing: readonly string[];
  /** What is taken of the air by night, where the shop is shut then and does not say; absent where nothing is taken. */
  readonly night?: string;
}

export interface RoomHour {
  /** From so many hours after the start, for an hour. */
  readonly hour: number;
  /** What leaves of this job in it. */
  readonly grams: number;
  /** Air changes an hour, of the stretch that ends in this hour, and what there is for certain; absent without a room. */
  readonly needs?: number;
  readonly has?: number;
  readonly verdict?: AirVerdict;
  /** What is said of it, without its time, by titles. */
  readonly text: string;
  /** Of the job's own doings the one that gives off most. */
  readonly mostBy?: Action;
}

/** `others`: all other jobs of the shop. */
export function roomHours(result: JobResult, others: readonly JobResult[]): RoomHours {
  const missing = gapsOf(result, "voc_g");
  if (awaitsRoomAir(result)) return { state: "being planned", hours: [], worst: "", missing };
  const { shop, air, job } = result;
  const byHour = new Map(jobFumes(result).byHour?.map(({ hour, grams }) => [hour, grams]));
  if (!shop?.room || !air) return withoutRoom(result, byHour, missing);
  const releases = others
    .filter((other) => isNear(result, other))
    .flatMap((other) => datedReleases({ ...other, name: titleOf(other.job) }));
  const needed = airByHour(
    { ...result, name: titleOf(job), shop, air, isShared: job.start !== undefined },
    releases,
  );
  const hours = needed.map((each) => roomHour(each, byHour.get(each.hour) ?? 0));
  const worst = needed.toSorted(byGravity)[0];
  return {
    state: hours.length === 0 ? "none" : "known",
    hours,
    worst: worst === undefined ? "" : worstSentence(result, worst),
    missing,
    ...(isNightTaken(shop) ? { night: nightText() } : {}),
  };
}

const isNightTaken = ({ air, nightAir, hours }: Shop): boolean =>
  air !== undefined && nightAir === undefined && hours !== undefined;

const nightText = (): string =>
  t`Warmth and damp of the room are taken to be the same by night as by day; say in the shop with \`night_air\` where they are not.`;

/** So long after its last item a job may still give off something, h; days, so that none is missed. */
const AFTER_H = 200;

/** Of many jobs in a shop few are done at the same time. */
function isNear({ schedule }: JobResult, { schedule: other }: JobResult): boolean {
  if (schedule.startAt === undefined || other.startAt === undefined) return false;
  const from = hoursBetween(schedule.startAt, other.startAt);
  return from < schedule.elapsedHours + AFTER_H && from + other.elapsedHours + AFTER_H > 0;
}

const byGravity = (a: AirHour, b: AirHour): number =>
  VERDICTS_BY_GRAVITY.indexOf(b.verdict) - VERDICTS_BY_GRAVITY.indexOf(a.verdict) ||
  b.need.m3PerH - a.need.m3PerH;

function roomHour({ hour, need, there, verdict, mostBy, others }: AirHour, grams: number): RoomHour {
  const { airChangesPerH: needs } = need;
  return {
    hour,
    grams,
    needs,
    has: there.airChangesPerH,
    verdict,
    text: [
      t`needs ${changes(needs)}${besides(others)}, ${thereText(there)}: ${translated(VERDICT_WORDS[verdict])}`,
      grams < 0.5 ? "" : t`${gramsText(grams)} leave, most by “${actionTitle(mostBy)}”`,
    ]
      .filter(Boolean)
      .join(". "),
    mostBy,
  };
}

const besides = (others: readonly string[]): string =>
  others.length > 0 ? t` with ${andList(others.map((name) => t`“${name}”`))}` : "";

function worstSentence(result: JobResult, { hour, need, there, verdict, others }: AirHour): string {
  const room = roomText(result.shop!.room!.value.m3);
  const asked = t`${changes(need.airChangesPerH)} in ${room}${besides(others)}`;
  return t`Worst hour: ${momentAfterStart(result, hour)}, ${MEANS[need.limit ?? "shift"]()}: ${asked}. ${capital(thereText(there))}. ${VERDICTS[verdict]()}`;
}

/** The same as `VERDICT_WORDS`, as a sentence. */
const VERDICTS: Readonly<Record<AirVerdict, () => string>> = {
  enough: () => t`The estimate finds that enough; it cannot show that the room is safe.`,
  unnamed: () => t`That is enough only if the solvent is a mild one.`,
  unmeasured: () => t`Whether that is enough is not known.`,
  masked: () => t`Without the respirator that is too little.`,
  short: () => t`That is too little.`,
};

/** What the figure of an hour is a mean of, by the limit that asks for most. */
const MEANS: Readonly<Record<LimitKind, () => string>> = {
  shift: () => t`by the mean of the ${SHIFT_H} h up to its end`,
  short: () => t`by the mean of 15 min in it`,
  fire: () => t`in its worst moment, against fire`,
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function withoutRoom(
  result: JobResult,
  byHour: ReadonlyMap<number, number>,
  missing: readonly string[],
): RoomHours {
  const hours = [...byHour].flatMap(([hour, grams]): readonly RoomHour[] =>
    grams < 0.5 ? [] : [{ hour, grams, text: t`${gramsText(grams)} leave` }],
  );
  const most = hours.toSorted((a, b) => b.grams - a.grams)[0];
  return {
    state: most === undefined ? "none" : "no room",
    hours,
    worst:
      most === undefined
        ? ""
        : t`Most leaves in the hour from ${momentAfterStart(result, most.hour)}: ${gramsText(most.grams)}.`,
    missing,
  };
}

/** `16 air changes/h in 145 m3`; empty where no room is stated. */
export function roomInWords({ shop }: JobResult): string {
  if (!shop?.room) return "";
  const { m3, airChanges } = shop.room.value;
  return airChanges === undefined ? roomText(m3) : t`${airChangesText(airChanges)} in ${roomText(m3)}`;
}
