/**
 * The plan of a job that has been begun: what the record says is done is taken out of what is planned, the rest goes on from
 * the last record or a later day, and what was done is put in front of the plan again, with the times of the record.
 *
 * A wait counts from the end of what was really done, and so does the time within which a coat must follow.
 */
import { hoursBetween, momentAfter } from "../measure/iso-dates.ts";
import type { Job, JobRecord } from "../model/model.ts";
import { NIGHT_H } from "../schedule/night.ts";
import type { Chain, ChainItem, PlannedItem, Schedule, ScheduleInput } from "../schedule/types.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { chainKey, taskId } from "./planned-tasks.ts";
import { hoursTaken } from "./recorded-amounts.ts";
import { onFiveMinutes } from "./use-dates.ts";

/** What was done, in local ISO date-times. */
export interface Begun {
  /** When the first work began. */
  readonly startAt: string;
  /** When the plan goes on: the end of the last work, or a later day. */
  readonly from: string;
  readonly items: ReadonlyMap<string, readonly DoneItem[]>;
  /** By chain: what was not done of it on this piece. */
  readonly leftOut: ReadonlySet<string>;
}

interface DoneItem {
  readonly id: string;
  readonly startAt: string;
  readonly endAt: string;
}

/** Undefined where nothing is done. `today`: a local ISO date, or date-time, before which nothing more is done. */
export function begunOf(job: Job, runs: readonly SurfaceRun[], today?: string): Begun | undefined {
  const items = new Map<string, readonly DoneItem[]>();
  const leftOut = new Set<string>();
  for (const run of runs) {
    const hours = hoursInTurn(run);
    run.record?.reached.forEach((reached, piece) => {
      if (reached > 0) items.set(chainKey(run, piece), doneItems(run, piece, reached, hours));
      for (const [index, { leftOut: isLeftOut }] of run.record!.done[piece]!)
        if (isLeftOut) leftOut.add(taskId({ run, piece, index }));
    });
  }
  const all = [...items.values()].flat();
  if (all.length === 0) return undefined;
  const least = all.map(({ startAt }) => startAt).toSorted()[0]!;
  const last = [...all.map(({ endAt }) => endAt), ...job.records.map(({ at }) => at)];
  const from = [...last, withTime(today ?? "")].toSorted().at(-1)!;
  return { startAt: least, from: onFiveMinutes(from).slice(0, MINUTE), items, leftOut };
}

/** Characters of a moment to the minute. */
const MINUTE = "2027-03-08T09:00".length;

const withTime = (moment: string): string => (moment.length === 10 ? `${moment}T00:00` : moment);

/**
 * From the start of what a line tells of to its end: pieces of one line were worked on in turn, so that a step lasts on
 * each of them as long as its hours on all of them, by all who work.
 */
function hoursInTurn(run: SurfaceRun): (record: JobRecord, index: number) => number {
  const ofLine = new Map<JobRecord, Map<number, { hours: number; pieces: number }>>();
  run.record?.done.forEach((done, piece) => {
    const taken = hoursTaken(run, piece);
    for (const [index, { record }] of done) {
      const ofIndex = ofLine.get(record) ?? new Map<number, { hours: number; pieces: number }>();
      const { hours, pieces } = ofIndex.get(index) ?? { hours: 0, pieces: 0 };
      ofIndex.set(index, { hours: hours + (taken.get(index) ?? 0), pieces: pieces + 1 });
      ofLine.set(record, ofIndex);
    }
  });
  return (record, index) => {
    const whole = ofLine.get(record)?.get(index);
    return whole ? whole.hours / Math.min(run.shop?.crew ?? 1, whole.pieces) : 0;
  };
}

/**
 * All that is behind a piece, waits too. What a line stands for ended one after the other, its last at the time of the
 * line, and took the hours that are told or planned; but no sooner than what the line before tells of.
 */
function doneItems(
  run: SurfaceRun,
  piece: number,
  reached: number,
  hoursOf: (record: JobRecord, index: number) => number,
): readonly DoneItem[] {
  const done = run.record!.done[piece]!;
  const items: DoneItem[] = [];
  let next: string | undefined;
  for (let index = reached - 1; index >= 0; index -= 1) {
    const { action } = run.moments[index]!;
    const each = done.get(index);
    if (!each || each.leftOut || action.op === "note" || action.op === "open") continue;
    const id = taskId({ run, piece, index });
    const endAt: string = next !== undefined && next < each.record.at ? next : each.record.at;
    if (action.op === "wait") items.push({ id, startAt: "", endAt: next ?? endAt });
    else {
      const startAt = before(endAt, hoursOf(each.record, index));
      items.push({ id, startAt, endAt });
      next = startAt;
    }
  }
  return withWaits(items.reverse());
}

const before = (moment: string, hours: number): string =>
  momentAfter(moment, -Math.round(hours * 60) * 60, "minute");

/** Nothing begins before what was done before it has ended, and a wait lasts from then on. */
function withWaits(items: readonly DoneItem[]): readonly DoneItem[] {
  let end = "";
  return items.map((item) => {
    const startAt = item.startAt > end ? item.startAt : end || item.endAt;
    const endAt = [item.endAt, startAt].toSorted()[1]!;
    end = endAt;
    return { ...item, startAt, endAt };
  });
}

/** What is left to plan; the ends of what was done are known. */
export function leftToPlan(input: ScheduleInput, begun: Begun): ScheduleInput {
  const chains = input.chains.flatMap((chain): readonly Chain[] => {
    const done = begun.items.get(chain.key) ?? [];
    const items = leftItems(
      chain.items.filter(({ id }) => !begun.leftOut.has(id)),
      new Map(done.map(({ id, endAt }) => [id, hoursBetween(begun.from, endAt)])),
    );
    return items.length > 0 ? [{ ...chain, items }] : [];
  });
  return { ...input, chains, ...(input.start === undefined ? {} : { start: begun.from }) };
}

/** `ends`: of what is done, hours after the plan goes on, 0 or below. */
function leftItems(items: readonly ChainItem[], ends: ReadonlyMap<string, number>): readonly ChainItem[] {
  const last = [...ends.values()].at(-1);
  if (last === undefined) return items;
  /** Of the waits before the first task: when they are over, and when the one before ends in the plan. */
  let over = last;
  let before = 0;
  let isFirst = true;
  return items
    .filter(({ id }) => !ends.has(id))
    .map((item): ChainItem => {
      if (item.kind === "hands") {
        isFirst = false;
        // How long ago it was is not for the planner to change; a time that is over is told as a finding.
        const { maxLag, ...plain } = item;
        return maxLag && ends.has(maxLag.of) ? plain : item;
      }
      const counted = item.kind === "wait" && item.of !== undefined ? ends.get(item.of) : undefined;
      if (!isFirst) {
        if (item.kind === "overnight" || counted === undefined) return item;
        return { kind: "wait", id: item.id, hours: Math.max(0, counted + item.hours) };
      }
      // The shop opens when it does, so that the least of a night is enough to say here.
      over = Math.max(over, (counted ?? over) + (item.kind === "overnight" ? NIGHT_H : item.hours));
      const hours = Math.max(0, over - before);
      before = Math.max(before, over);
      return { kind: "wait", id: item.id, hours };
    });
}

/**
 * The plan with what was done in front, in hours after the first work. `plan`: of what is left; `chains`: of the whole job,
 * in order.
 */
export function withDone(plan: Schedule, begun: Begun, chains: readonly string[]): Schedule {
  if (plan.status !== "planned") return plan;
  const { startAt } = begun;
  const at = (moment: string): number => hoursBetween(startAt, moment);
  const later = plan.startAt === undefined ? at(begun.from) : at(plan.startAt);
  const planned = new Map<string, PlannedItem[]>();
  for (const item of plan.items) {
    const shifted = {
      ...item,
      start: item.start + later,
      end: item.end + later,
      ...(item.workEnd === undefined ? {} : { workEnd: item.workEnd + later }),
      pauses: item.pauses.map((pause) => ({ start: pause.start + later, end: pause.end + later })),
    };
    const ofChain = planned.get(item.chain);
    if (ofChain) ofChain.push(shifted);
    else planned.set(item.chain, [shifted]);
  }
  const items = chains.flatMap((chain) => [
    ...(begun.items.get(chain) ?? []).map(
      (done): PlannedItem => ({
        id: done.id,
        chain,
        start: at(done.startAt),
        end: at(done.endAt),
        startAt: withSeconds(done.startAt),
        endAt: withSeconds(done.endAt),
        slack: 0,
        critical: false,
        pauses: [],
        done: true,
      }),
    ),
    ...(planned.get(chain) ?? []),
  ]);
  const hasRest = plan.items.length > 0;
  const lastDone = [...begun.items.values()]
    .flatMap((done) => done.map(({ endAt }) => endAt))
    .toSorted()
    .at(-1)!;
  const { lastWorkHours, lastWorkAt, finishAt } = plan;
  const hasWork = hasRest && lastWorkHours !== undefined && lastWorkHours > 0;
  return {
    ...plan,
    items,
    startAt: withSeconds(startAt),
    finishAt: hasRest ? (finishAt ?? withSeconds(lastDone)) : withSeconds(lastDone),
    elapsedHours: hasRest ? plan.elapsedHours + later : at(lastDone),
    lowerBound: hasRest ? plan.lowerBound + later : at(lastDone),
    ...(plan.sessions
      ? {
          lastWorkHours: hasWork ? lastWorkHours + later : at(lastDone),
          lastWorkAt: hasWork ? lastWorkAt! : withSeconds(lastDone),
          sessions: plan.sessions.map((session) => ({
            ...session,
            start: session.start + later,
            end: session.end + later,
          })),
        }
      : {}),
  };
}

const withSeconds = (moment: string): string => (moment.length === 16 ? `${moment}:00` : moment);
