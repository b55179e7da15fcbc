/**
 * From the runs of a job to what the scheduler plans: one chain for every piece's surface.
 */
import { makesDust } from "../knowledge/dusty-work.ts";
import { dayAfter } from "../measure/iso-dates.ts";
import type { Job, Shop } from "../model/model.ts";
import { defaultTaskHours, defaultTaskParts, type TaskHoursInput } from "../quantities/abrasives.ts";
import type {
  Chain,
  ChainItem,
  Schedule,
  ScheduleInput,
  SessionRule,
  TaskVapour,
} from "../schedule/types.ts";
import type { Action, LayerAction, MaterialUse, StepAction, WaitAction } from "../surface/actions.ts";
import { workedAreaM2 } from "../surface/part-of-surface.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { putOnAt } from "../surface/run-index.ts";
import {
  type Coat,
  type Moment,
  materialOf,
  type SurfaceState,
  stageHours,
  topCoat,
  waitedOf,
} from "../surface/state.ts";
import { methodOf } from "./needs.ts";
import { chainKey, taskId, tasksById } from "./planned-tasks.ts";

/** Hands-on hours of an action on one piece's surface: as stated, else by the tool's own table. */
export function actionHours(run: SurfaceRun, action: Action): number {
  if (action.op !== "step" && action.op !== "layer") return 0;
  const areaM2 = workedAreaM2(run.surface, action.part);
  if (action.takes) return "hours" in action.takes ? action.takes.hours : action.takes.hoursPerM2 * areaM2;
  return wholeFiveMinutes(estimatedHours(action, areaM2));
}

/** Estimates are no better than to five minutes; stated times stand as they are. */
const wholeFiveMinutes = (hours: number): number => Math.ceil(hours * 12 - 1e-9) / 12;

const estimatedHours = (action: StepAction | LayerAction, areaM2: number): number =>
  defaultTaskHours(estimateOf(action, areaM2));

const estimateOf = (action: StepAction | LayerAction, areaM2: number): TaskHoursInput =>
  action.op === "step"
    ? { verb: action.verb, areaM2, grits: action.grits.length }
    : { verb: "layer", method: methodOf(action.method), areaM2, wiped: action.wiped };

/** What a task takes of a session, hours: once for all that is done in it, and for this piece, to the minute. */
function sessionHours(
  run: SurfaceRun,
  action: StepAction | LayerAction,
): { readonly fixed: number; readonly each: number } {
  if (action.takes) return { fixed: 0, each: actionHours(run, action) };
  const { fixed, each } = defaultTaskParts(estimateOf(action, workedAreaM2(run.surface, action.part)));
  return { fixed, each: Math.ceil(each * 60 - 1e-9) / 60 };
}

/**
 * Hours in which a coat is on all pieces of a run, one after another by as many people as there are pieces and people
 * for: what is stated for each piece, or an estimate in which a gun is set up once for all of them.
 */
export function coatHoursOnAll(run: SurfaceRun, action: LayerAction): number {
  const rounds = Math.ceil(run.pieces / Math.min(run.pieces, run.shop?.crew ?? 1));
  const { fixed, each } = sessionHours(run, action);
  return action.takes ? rounds * each : wholeFiveMinutes(fixed + rounds * each);
}

/** Whether the hours of every task are known: as stated, or by an area that can be read. */
export const hoursAreKnown = (runs: readonly SurfaceRun[]): boolean =>
  runs.every(
    ({ surface, moments }) =>
      surface?.areaGap === undefined ||
      moments.every(
        ({ action }) =>
          (action.op !== "step" && action.op !== "layer") ||
          (action.takes !== undefined && "hours" in action.takes),
      ),
  );

/** Hands-on hours of a job, all pieces, each set up for by itself. */
export const handsOnHours = (runs: readonly SurfaceRun[]): number =>
  runs.reduce(
    (sum, run) => sum + run.pieces * run.moments.reduce((hours, m) => hours + actionHours(run, m.action), 0),
    0,
  );

/** What a job's hands do in its plan, hours. */
export interface SessionWork {
  /** Of each task by its id, with its share of what is set up and rounded up in its session. */
  readonly tasks: ReadonlyMap<string, number>;
  /** On the pieces. */
  readonly each: number;
  /** Setting up once a session, and rounding up. */
  readonly more: number;
}

/**
 * Hands-on hours of a job that is done in sessions; what is set up for several jobs counts to the first of them. What is
 * estimated of a session is rounded up to whole five minutes. Undefined where its plan has no sessions.
 */
export function workInSessions(runs: readonly SurfaceRun[], { sessions }: Schedule): SessionWork | undefined {
  if (sessions === undefined) return undefined;
  const tasks = tasksById(runs);
  const shares = new Map<string, number>();
  let each = 0;
  let more = 0;
  for (const { items, fixed } of sessions) {
    const estimates = new Map<string, number>();
    let estimated = 0;
    for (const id of items) {
      const task = tasks.get(id);
      if (task === undefined || !isWork(task.action)) continue;
      const hours = sessionHours(task.run, task.action).each;
      each += hours;
      shares.set(id, hours);
      if (task.action.takes !== undefined) continue;
      estimated += hours;
      estimates.set(id, hours);
    }
    const all = wholeFiveMinutes(fixed + estimated);
    more += all - estimated;
    if (estimated > 0) for (const [id, hours] of estimates) shares.set(id, (hours * all) / estimated);
  }
  return { tasks: shares, each, more };
}

const isWork = (action: Action): action is StepAction | LayerAction =>
  action.op === "step" || action.op === "layer";

/** What is done on one piece's surface, hours, without setting up. */
export const hoursOnPiece = (run: SurfaceRun): number =>
  run.moments.reduce((sum, { action }) => sum + (isWork(action) ? sessionHours(run, action).each : 0), 0);

/** Whether hands-on hours depend on which sessions there are, because some are not stated. */
export const areHoursEstimated = (runs: readonly SurfaceRun[]): boolean =>
  runs.some(({ moments }) => moments.some(({ action }) => isWork(action) && action.takes === undefined));

/** Whether every wait of the job is known, so that its length can be. */
export const waitsAreKnown = (runs: readonly SurfaceRun[]): boolean =>
  runs.every((run) => {
    const putOn = run.moments.every(
      ({ action }) => action.op !== "layer" || action.use.material?.family !== undefined,
    );
    return run.moments.every(({ action }) => {
      if (action.op === "open") return false;
      return (
        action.op !== "wait" ||
        action.overnight ||
        action.hours !== undefined ||
        (action.until !== undefined && putOn)
      );
    });
  });

/** What the tasks of a job give off; see `TaskVapour`. */
export interface TaskVapours {
  /** Hours. */
  readonly stretches: readonly number[];
  /** By the index of the action, for one piece. */
  readonly of: (run: SurfaceRun, index: number) => TaskVapour | undefined;
}

/** `vapours`: where the shop's room is known. */
export function scheduleInput(
  job: Job,
  shop: Shop | undefined,
  runs: readonly SurfaceRun[],
  vapours?: TaskVapours,
): ScheduleInput {
  const isInShop = shop !== undefined && job.start !== undefined;
  const chains = runs
    .flatMap((run) =>
      Array.from({ length: run.pieces }, (_, piece) => chainOf(run, piece, isInShop, vapours)),
    )
    .filter((chain) => chain.items.length > 0);
  if (!shop || !job.start) return { chains };
  return {
    calendar: { closed: shop.closed, crew: shop.crew, ...(shop.hours ? { hours: shop.hours } : {}) },
    start: startOf(job.start),
    chains,
    ...(vapours ? { stretches: vapours.stretches } : {}),
  };
}

/** A start without a time is that day's opening; 24:00 is the midnight that begins the next day. */
function startOf(start: NonNullable<Job["start"]>): string {
  if (start.time === undefined) return start.date;
  if (start.time !== "24:00") return `${start.date}T${start.time}`;
  return `${dayAfter(start.date)}T00:00`;
}

/** In a shop tasks are done in sessions, which set up once for all that they do. */
function chainOf(
  run: SurfaceRun,
  piece: number,
  inSessions: boolean,
  vapours: TaskVapours | undefined,
): Chain {
  const items: ChainItem[] = [];
  let anchor: string | undefined;
  run.moments.forEach((moment, index) => {
    const { action, before } = moment;
    const id = taskId({ run, piece, index });
    const vapour = inSessions ? vapours?.of(run, index) : undefined;
    const air = vapour ? { vapour } : {};
    if (action.op === "step") {
      items.push({
        kind: "hands",
        id,
        nonPreemptive: false,
        ...timeOf(run, piece, action, inSessions ? moment.after : undefined),
        ...air,
      });
      if ((action.verb === "fill" || action.verb === "glue") && action.use) anchor = id;
    } else if (action.op === "layer") {
      const window = recoatWindow(run, before, action);
      items.push({
        kind: "hands",
        id,
        nonPreemptive: true,
        ...timeOf(run, piece, action, inSessions ? moment.after : undefined),
        ...air,
        ...(window
          ? { maxLag: { of: taskId({ run, piece, index: window.index }), hours: window.hours } }
          : {}),
      });
      anchor = id;
    } else if (action.op === "wait") {
      items.push(waitItem(id, action, moment, anchor));
    }
  });
  return { key: chainKey(run, piece), items };
}

/** `after` is the surface when it is done, where that is in sessions. */
function timeOf(
  run: SurfaceRun,
  piece: number,
  action: StepAction | LayerAction,
  after: SurfaceState | undefined,
): { readonly hours: number; readonly session?: SessionRule } {
  if (!after) return { hours: actionHours(run, action) };
  const { fixed, each } = sessionHours(run, action);
  const session =
    action.op === "step" ? stepSession(action, fixed) : layerSession(action, fixed, topCoat(after));
  return { hours: each, session: inBatch(session, run, piece, action) };
}

/** A kind of its own for what is done together, all pieces of a line, or apart, each piece. */
function inBatch(
  session: SessionRule,
  run: SurfaceRun,
  piece: number,
  { batch, index }: StepAction | LayerAction,
): SessionRule {
  if (batch === undefined) return session;
  const whose = batch === "together" ? [run.label, index] : [run.label, index, piece];
  return { ...session, kind: JSON.stringify([batch, whose, session.kind]), batch };
}

/** Steps alike in all that is stated are done in one session. */
function stepSession(step: StepAction, fixedHours: number): SessionRule {
  const { verb, wet, grits, what, use, part } = step;
  const alike = [verb, wet, grits, what, use && materialKey(use), ...(part ? [part] : []), fixedHours];
  return { kind: JSON.stringify(alike), fixedHours, ...(makesDust(step) ? { makesDust: true } : {}) };
}

/**
 * Coats of one mix, put on the same way; the first and the second coat may share a session. What is dry to the touch is
 * free of dust (common practice, no source).
 */
function layerSession(layer: LayerAction, fixedHours: number, coat: Coat | undefined): SessionRule {
  const { use, method, wiped, thinned, tinted, hardener, toner } = layer;
  const material = materialKey(use);
  const wetHours = coat?.action === layer && stageHours(coat, "touch");
  const mix = [thinned, tinted, hardener].map((part) =>
    part === undefined ? null : { ...part, thinner: null, tint: null, use: null, of: mixedKey(part) },
  );
  const family = use.material?.family;
  const potLife = use.material?.potLife?.value ?? (family?.twoPart ? family.potLife : undefined);
  return {
    kind: JSON.stringify(["layer", material, method, wiped, mix, toner, fixedHours]),
    fixedHours,
    material,
    ...(potLife === undefined ? {} : { mostHours: potLife }),
    ...(wetHours ? { wetHours } : {}),
  };
}

type MixedIn = NonNullable<LayerAction["thinned"] | LayerAction["tinted"] | LayerAction["hardener"]>;

const mixedKey = (part: MixedIn): string =>
  materialKey("thinner" in part ? part.thinner : "tint" in part ? part.tint : part.use);

/** Tells materials of the same name apart. */
const materialKey = ({ name, material }: MaterialUse): string =>
  material === undefined ? name : JSON.stringify([material.file, material.declaration, material.name]);

/** `anchor` is the task of this job that puts on what the wait counts from. */
function waitItem(
  id: string,
  wait: WaitAction,
  { dries, before, after }: Moment<Action>,
  anchor: string | undefined,
): ChainItem {
  if (wait.overnight) return { kind: "overnight", id };
  if (!wait.until) return { kind: "wait", id, hours: wait.hours ?? 0 };
  // What an earlier job put on is in no plan of this one.
  if (anchor === undefined) return { kind: "wait", id, hours: after.clock.hours - before.clock.hours };
  if (!dries || !materialOf(dries.of)) return { kind: "wait", id, hours: 0 };
  return { kind: "wait", id, hours: dries.time?.hours ?? 0, of: anchor };
}

/**
 * A coat goes on before the window of the coat below ends, unless that was sanded. Where the recipe itself waits
 * longer, `recoat-too-late` says so, and the plan follows the recipe. `index` is that of the coat below.
 */
export function recoatWindow(
  run: SurfaceRun,
  before: SurfaceState,
  layer: LayerAction,
): { readonly index: number; readonly hours: number } | undefined {
  const below = topCoat(before);
  const latest = below?.material?.recoat?.value.latest;
  if (below?.origin !== "new" || latest === undefined || below.abrasions.length > 0) return undefined;
  if (layer.use.material?.family?.role === "wax" || waitedOf(before, below).hours > latest + 1e-6)
    return undefined;
  return { index: putOnAt(run, below), hours: latest };
}
