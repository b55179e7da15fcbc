/**
 * A plan that somebody keeps: where each task stood, under names that hold while lines above it come and go, and what has
 * moved in a later plan, with the reason.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { momentText } from "../../core/measure/figures.ts";
import type { Job } from "../../core/model/model.ts";
import { hoursSinceOpen } from "../../core/schedule/calendar.ts";
import { isoAfter } from "../../core/schedule/iso-after.ts";
import type { KeptTask } from "../../core/schedule/types.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { JobResult, KeptNotes } from "../../core/totals/job-totals.ts";
import { tasksById } from "../../core/totals/planned-tasks.ts";
import { markdownCode as code } from "../../escape/markdown.ts";
import { actionText } from "../action-text.ts";
import { isDated, type PlanLine, planLines, rowsOf, surfacesText } from "./job-plan.ts";

export interface KeptPlan {
  readonly jobs: readonly KeptJob[];
}

export interface KeptJob {
  readonly file: string;
  readonly job: string;
  readonly sessions: readonly KeptSession[];
}

/** What one person does of a job in one go. Local ISO date-times to the minute. */
export interface KeptSession {
  /** When the session began, perhaps with tasks of another job, and who does it, from 1. */
  readonly begun: string;
  readonly person: number;
  readonly does: readonly KeptLine[];
}

export interface KeptLine {
  readonly surface: string;
  /** From 1. */
  readonly piece: number;
  readonly what: string;
  /** The how many-th time that this is done to the surface, from 1. */
  readonly time: number;
  readonly start: string;
  readonly end: string;
}

/** What has changed since a plan was kept. */
export interface SinceKept {
  /** A plan near the kept one would have made a job late. */
  readonly isLetGo: boolean;
  readonly moved: readonly Moved[];
  readonly added: readonly Changed[];
  readonly gone: readonly Changed[];
}

export interface Changed {
  readonly job: string;
  readonly what: string;
  /** As people read it. */
  readonly where: string;
  /** Local ISO date-time at which it begins, or began. */
  readonly at: string;
}

export interface Moved extends Changed {
  readonly from: string;
  /** A clause. */
  readonly why: string;
}

/** A file as the kept plan names it. */
type NameOfFile = (file: string) => string;

const taskName = ({ surface, piece, what, time }: Omit<KeptLine, "start" | "end">): string =>
  JSON.stringify([surface, piece, what, time]);

/** Coats are counted by when they are done: that there is one more of them makes the first no other. */
const plainWhat = (what: string): string => what.replace(/(?:, coat)? \d+ of \d+/u, "");

/** Names one task after the other, those of a surface in the order of its lines. */
function namer(): (surface: string, piece: number, what: string) => Omit<KeptLine, "start" | "end"> {
  const times = new Map<string, number>();
  return (surface, piece, whole) => {
    const what = plainWhat(whole);
    const key = JSON.stringify([surface, piece, what]);
    const time = (times.get(key) ?? 0) + 1;
    times.set(key, time);
    return { surface, piece, what, time };
  };
}

interface NamedLine {
  readonly line: PlanLine;
  readonly name: Omit<KeptLine, "start" | "end">;
}

function namedLines(result: JobResult): readonly NamedLine[] {
  const name = namer();
  return planLines(result)
    .filter(({ kind, startAt, endAt }) => kind !== "wait" && startAt !== undefined && endAt !== undefined)
    .toSorted((a, b) => a.place - b.place)
    .map((line) => ({ line, name: name(line.surface, line.piece, line.what) }));
}

/** The plan of these jobs, to be kept; jobs without dates are not in it. */
export function keptPlanOf(results: readonly JobResult[], nameOfFile: NameOfFile): KeptPlan {
  return {
    jobs: results.filter(isPlanned).map((result) => {
      const sessions = result.schedule.sessions ?? [];
      const does = sessions.map((): KeptLine[] => []);
      for (const { line, name } of namedLines(result))
        if (line.session !== undefined)
          does[line.session]!.push({ ...name, start: toMinute(line.startAt!), end: toMinute(line.endAt!) });
      return {
        file: nameOfFile(result.job.file),
        job: result.job.name,
        sessions: sessions.map(({ start, since = start, person }, at) => ({
          begun: toMinute(isoAfter(result.schedule, since)!),
          person: person + 1,
          does: does[at]!,
        })),
      };
    }),
  };
}

/** Plans come in steps of five minutes. */
const toMinute = (moment: string): string => moment.slice(0, 16);

const isPlanned = (result: JobResult): boolean => isDated(result) && result.schedule.status === "planned";

/** Notes where a kept plan has the tasks of a job on what is to be planned of it. */
export function keptNotes(kept: KeptPlan, nameOfFile: NameOfFile): KeptNotes {
  return (job, runs, input) => {
    const tasks = keptTasks(kept, nameOfFile(job.file), job, runs);
    const chains = input.chains.map((chain) => ({
      ...chain,
      items: chain.items.map((item) => {
        const task = item.kind === "hands" ? tasks.get(item.id) : undefined;
        return task ? { ...item, kept: task } : item;
      }),
    }));
    return { ...input, chains };
  };
}

/** By the ids of the tasks. */
function keptTasks(
  kept: KeptPlan,
  file: string,
  { name: job }: Job,
  runs: readonly SurfaceRun[],
): ReadonlyMap<string, KeptTask> {
  const lines = linesOf(kept, file, job);
  const name = namer();
  const found = new Map<string, KeptTask>();
  for (const [id, { run, piece, action }] of tasksById(runs)) {
    if (action.op === "wait") continue;
    const line = lines.get(taskName(name(run.label, piece + 1, actionText(action))));
    if (line) found.set(id, { at: line.start, begun: line.begun, session: line.session });
  }
  return found;
}

/** By their names. */
function linesOf(
  { jobs }: KeptPlan,
  file: string,
  job: string,
): ReadonlyMap<string, KeptLine & { readonly begun: string; readonly session: string }> {
  const own = jobs.find((each) => each.file === file && each.job === job);
  return new Map(
    (own?.sessions ?? []).flatMap(({ begun, person, does }) =>
      does.map((line) => [taskName(line), { ...line, begun, session: `${begun} ${person}` }] as const),
    ),
  );
}

/** What these jobs do at other times than in the kept plan, what is new, and what is not done any more. */
export function sinceKept(kept: KeptPlan, results: readonly JobResult[], nameOfFile: NameOfFile): SinceKept {
  const all = results.filter(isPlanned);
  const moved: Moved[] = [];
  const added: Changed[] = [];
  const gone: Changed[] = [];
  for (const result of all) {
    const { name: job, file } = result.job;
    const before = linesOf(kept, nameOfFile(file), job);
    const seen = new Set<string>();
    const groups = new Map<string, { line: PlanLine; was: KeptLine | undefined }[]>();
    for (const { line, name } of namedLines(result)) {
      const was = before.get(taskName(name));
      seen.add(taskName(name));
      const key = JSON.stringify([line.session ?? line.id, was?.session ?? null, line.what]);
      const others = groups.get(key);
      if (others) others.push({ line, was });
      else groups.set(key, [{ line, was }]);
    }
    for (const group of groups.values()) {
      const [row] = rowsOf(group.map(({ line }) => line));
      const found = { job, what: row!.what, where: surfacesText(row!), at: toMinute(row!.startAt!) };
      const from = group.flatMap(({ was }) => was?.start ?? []).toSorted()[0];
      if (from === undefined) added.push(found);
      else if (from !== found.at)
        moved.push({ ...found, from, why: whyMoved(result, row!, { from, at: found.at }, all) });
    }
    for (const [name, line] of before) {
      if (seen.has(name)) continue;
      const { surface, piece, what, start } = line;
      const isOne = [...before.values()].every((other) => other.surface !== surface || other.piece === 1);
      gone.push({ job, what, where: isOne ? surface : `${surface} ${piece}`, at: start });
    }
  }
  const byTime = (a: Changed, b: Changed): number => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0);
  return {
    isLetGo: all.some(({ schedule }) => schedule.kept === "let go"),
    moved: moved.toSorted(byTime),
    added: added.toSorted(byTime),
    gone: gone.toSorted(byTime),
  };
}

/** What is in the way of what began then, up to when it begins now; a clause. */
function whyMoved(
  result: JobResult,
  row: PlanLine,
  { from, at }: Pick<Moved, "from" | "at">,
  all: readonly JobResult[],
): string {
  const { schedule, shop } = result;
  if (schedule.kept === "let go") return t`near the kept plan a job would be late`;
  if (schedule.startAt !== undefined && from < toMinute(schedule.startAt))
    return t`the job begins ${momentText(schedule.startAt)}`;
  if (shop?.hours && hoursSinceOpen({ hours: shop.hours, closed: shop.closed }, from) > 0)
    return t`the shop is closed then`;
  const lines = planLines(result);
  const before = lines
    .filter(
      ({ surface, piece, place }) => surface === row.surface && piece === row.piece && place < row.place,
    )
    .toSorted((a, b) => b.place - a.place)[0];
  const isReady = before?.endAt === undefined || toMinute(before.endAt) <= from;
  const busy = all
    .flatMap((other) => planLines(other).map((line) => ({ job: other.job.name, line })))
    .filter(({ line }) => line.kind !== "wait" && !(line.session === row.session && lines.includes(line)))
    .filter(({ line }) => toMinute(line.startAt!) < at && toMinute(line.endAt!) > from)
    .toSorted((a, b) => (a.line.endAt! < b.line.endAt! ? 1 : -1))
    .find(({ line }) => toMinute(line.endAt!) <= at || toMinute(line.startAt!) <= from);
  if (!isReady && (busy === undefined || toMinute(before.endAt!) >= toMinute(busy.line.endAt!)))
    return t`${code(before.what)} before it ends ${momentText(before.endAt!)}`;
  if (busy) return t`people are at work on ${code(busy.line.what)} of ${code(busy.job)} until then`;
  if (schedule.heldByAir) return t`the room's air has to carry away what is given off before`;
  return t`what it goes with has moved`;
}
