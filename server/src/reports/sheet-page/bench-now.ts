/**
 * What is now, what is next and what is to be minded meanwhile, from the steps of a sheet and the times of their ticks.
 * Plain data in and out; the page only shows it. Times are local, see `local-times.ts`.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { THIN_VENEER } from "../../views/sheet/gear.ts";
import { clockOf, dayOf, hoursFrom, isSameDay, later } from "./local-times.ts";
import { type Opening, openAt } from "./opening.ts";

/** A line of the list of steps. */
export interface PageStep {
  readonly title: string;
  /** `Reading table 1 and 2, top`; empty where there is one surface alone. */
  readonly where: string;
  readonly surfaces: readonly string[];
  /** Of its boxes; `0` is the one box of all pieces. */
  readonly pieces: readonly string[];
  readonly isCoat: boolean;
  /** How much, and how: `Use 1.31 L, by brush`; may be empty. */
  readonly use: string;
  /** What to have on, in a word each: `gloves`. */
  readonly wear: readonly string[];
  /** In a word or two each: `fumes`. */
  readonly dangers: readonly string[];
  /** What is to be done before it, and why: what was found on its line. */
  readonly checks: readonly { readonly order: string; readonly why: string }[];
  /** By the plan. */
  readonly start?: string;
  readonly end?: string;
  /** For so many hours it is left alone once it is done, or, where that is not known, until then by the plan. */
  readonly waitH?: number;
  readonly until?: string;
  /** Of a wait that ends with the next opening: hours that it takes at least. */
  readonly leastH?: number;
  /** It is left alone until it has cured, so that it is not soft when the wait is over. */
  readonly isCured: boolean;
  /** How long it is left alone is known to its label alone. */
  readonly isUnknown: boolean;
  /** What somebody has read there, in hours. */
  readonly labelH?: number;
  /** It is laid on, left alone and taken off: for so many hours, where its label is not alone to know that. */
  readonly isLeftOn: boolean;
  readonly leaveH?: number;
  /** Hours after it: the latest moment for the next coat without sanding; when it may be used with care, and fully. */
  readonly latestH?: number;
  readonly lightH?: number;
  readonly fullH?: number;
}

/** A step with what somebody has read on its label: for how many hours it is left alone. */
export function withLabel(step: PageStep, hours: number | undefined): PageStep {
  if (hours === undefined) return step;
  if (!asksLabel(step)) return step;
  const known = step.isLeftOn ? { leaveH: hours } : { isUnknown: false, waitH: hours };
  return { ...step, ...known, labelH: hours };
}

/** Whether its label alone knows for how long it is left alone. */
export const asksLabel = ({ isLeftOn, leaveH, isUnknown }: PageStep): boolean =>
  isUnknown || (isLeftOn && leaveH === undefined);

/** When a box of a step was ticked; under `LAID`, when it was laid on. */
export type Ticked = (step: PageStep, piece: string) => string | undefined;

export const LAID = "laid";

/** When a step was laid on that is still to be taken off. */
export const laidAt = (step: PageStep, ticked: Ticked): string | undefined =>
  step.isLeftOn && doneAt(step, ticked) === undefined ? ticked(step, LAID) : undefined;

/** What goes before each step and what follows it, on a surface of the same piece. */
export interface Order {
  readonly steps: readonly PageStep[];
  readonly before: ReadonlyMap<PageStep, readonly PageStep[]>;
  readonly after: ReadonlyMap<PageStep, readonly PageStep[]>;
  /** Between which times of day the plan has anybody at work: `09:00`, `16:35`; absent without dates. */
  readonly hours?: { readonly from: string; readonly to: string };
  /** Of the shop; absent where none is stated. */
  readonly opening?: Opening;
}

export function orderOf(steps: readonly PageStep[], opening?: Opening): Order {
  const before = new Map<PageStep, readonly PageStep[]>();
  const after = new Map<PageStep, PageStep[]>(steps.map((step) => [step, []]));
  const lastOn = new Map<string, Map<string, PageStep>>();
  for (const step of steps) {
    const found = new Set<PageStep>();
    for (const surface of step.surfaces) {
      const last = lastOn.get(surface) ?? new Map<string, PageStep>();
      lastOn.set(surface, last);
      const pieces = step.pieces.includes("0") ? [...last.keys()] : [...step.pieces, "0"];
      for (const piece of pieces) {
        const earlier = last.get(piece);
        if (earlier) found.add(earlier);
      }
      for (const piece of step.pieces) last.set(piece, step);
    }
    before.set(step, [...found]);
    for (const earlier of found) after.get(earlier)!.push(step);
  }
  const starts = steps.flatMap(({ start }) => (start ? [clockOf(start)] : [])).toSorted();
  const ends = steps.flatMap(({ end }) => (end ? [clockOf(end)] : []));
  const [from] = starts;
  return {
    steps,
    before,
    after,
    ...(from ? { hours: { from, to: [...starts, ...ends].toSorted().at(-1)! } } : {}),
    ...(opening ? { opening } : {}),
  };
}

/** A time, or the next one at which somebody may be there: by the opening hours, else by the plan's times of day. */
function atWork({ hours, opening }: Order, time: string): string {
  if (opening !== undefined && time !== "") return openAt(opening, time);
  if (hours === undefined || time === "") return time;
  if (clockOf(time) < hours.from) return `${dayOf(time)}T${hours.from}`;
  return clockOf(time) > hours.to ? `${dayOf(later(`${dayOf(time)}T12:00`, 24))}T${hours.from}` : time;
}

/** The last tick of a step of which every box is ticked, or every one of these pieces. */
export function doneAt(step: PageStep, ticked: Ticked, pieces = step.pieces): string | undefined {
  const times = pieces.map((piece) => ticked(step, piece));
  return times.every((time) => time !== undefined) ? times.toSorted().at(-1) : undefined;
}

/** The pieces of an earlier step that a later one on the same surface goes on with. */
function sharedPieces(earlier: PageStep, step: PageStep): readonly string[] {
  if (earlier.pieces.includes("0") || step.pieces.includes("0")) return earlier.pieces;
  return earlier.pieces.filter((piece) => step.pieces.includes(piece));
}

/** The end of the wait behind a step: from its tick on, and else as planned. */
export function freeAt(step: PageStep, ticked: Ticked, pieces = step.pieces): string | undefined {
  const { waitH, until, leastH } = step;
  const done = doneAt(step, ticked, pieces);
  if (done !== undefined && waitH !== undefined) return later(done, waitH);
  if (done === undefined || leastH === undefined) return until;
  return [until ?? "", later(done, leastH)].toSorted()[1];
}

// ---------------------------------------------------------------------------------------------------------------
// When a step may begin

export interface Start {
  readonly step: PageStep;
  /** From then on what is below is dry; empty where nothing has to dry or nobody knows how long. */
  readonly dry: string;
  /** The same, and what goes before it is done; absent where nothing goes before, or is not done. */
  readonly ready?: string;
  /** The time of the plan; empty without dates. */
  readonly planned: string;
  /** What it waits for: a wait, one that the label alone knows, the step before it, or nothing but the plan. */
  readonly why: "wait" | "label" | "step" | "plan";
  /** When it was laid on, where it is to be taken off. */
  readonly laid?: string;
  /** The step before it that is not done. */
  readonly last?: PageStep;
}

export function startOf(order: Order, step: PageStep, ticked: Ticked): Start {
  const planned = step.start ?? "";
  const laid = laidAt(step, ticked);
  if (laid !== undefined) {
    const { leaveH } = step;
    return leaveH === undefined
      ? { step, dry: "", planned: "", why: "label", laid }
      : { step, dry: later(laid, leaveH), planned: "", why: "wait", laid };
  }
  const earlier = order.before.get(step) ?? [];
  const last = earlier.find((each) => doneAt(each, ticked, sharedPieces(each, step)) === undefined);
  if (last) return { step, dry: "", planned, why: "step", last };
  if (earlier.some(({ isUnknown }) => isUnknown)) return { step, dry: "", planned, why: "label" };
  const frees = earlier.flatMap((each) => freeAt(each, ticked, sharedPieces(each, step)) ?? []);
  const ends = earlier.flatMap((each) => doneAt(each, ticked, sharedPieces(each, step)) ?? []);
  const [dry = "", ready] = [frees, [...frees, ...ends]].map((times) => times.toSorted().at(-1));
  return { step, dry, ...(ready === undefined ? {} : { ready }), planned, why: dry === "" ? "plan" : "wait" };
}

/**
 * When somebody has to be there for it. On the day of the plan that is when it is dry and its turn has come: the sooner the
 * better. What is dry before, or in the night, waits for the time of the plan, or for the morning; only what is to be taken
 * off does not wait.
 */
export function dueAt(order: Order, { dry, ready = "", planned, laid }: Start): string {
  if (laid !== undefined) return dry;
  if (planned <= dry) return atWork(order, dry);
  const isOnTheDay = ready !== "" && atWork(order, ready) === ready && isSameDay(ready, planned);
  return isOnTheDay && ready < planned ? ready : planned;
}

/** Nobody keeps a plan to the minute: where nothing has to dry, a step may be begun so much before its time. */
const EARLY_H = 1;

export const isSoon = (time: string, now: string): boolean => later(now, EARLY_H) >= time;

export const isDue = (order: Order, start: Start, now: string): boolean =>
  start.dry <= now && isSoon(dueAt(order, start), now);

/** In the order of time, by the plan and by when it is dry. */
const placeInTime = ({ dry, planned }: Start): string => (planned > dry ? planned : dry);

/** What is laid on is taken off before anything else is begun. */
const rank = (start: Start): string => (start.laid === undefined ? placeInTime(start) : "");

/** Steps that are not done and that nothing but time goes before, in the order of time. */
function openSteps(order: Order, ticked: Ticked): readonly Start[] {
  // What was ticked before its turn opens nothing.
  const blocked = new Set<PageStep>();
  const open = order.steps.flatMap((step) => {
    const earlier = order.before.get(step) ?? [];
    const isOpen = (each: PageStep): boolean =>
      doneAt(each, ticked, sharedPieces(each, step)) !== undefined && !blocked.has(each);
    if (!earlier.every(isOpen)) blocked.add(step);
    return doneAt(step, ticked) !== undefined || blocked.has(step) ? [] : [startOf(order, step, ticked)];
  });
  return open.toSorted(byText(rank));
}

const byText =
  <T>(text: (of: T) => string) =>
  (a: T, b: T): number =>
    text(a) < text(b) ? -1 : text(a) > text(b) ? 1 : 0;

// ---------------------------------------------------------------------------------------------------------------
// Now and next

export interface BenchNow {
  /** `now`: something is to be done; `wait`: what is wet dries; `later`: the plan has nothing yet; `done`: all is done. */
  readonly is: "now" | "wait" | "later" | "done";
  /** What is to be done now, or first once somebody has to be there. */
  readonly current?: Start;
  /** What comes after it, from when on, and whether that is as soon as the current step is done. */
  readonly next?: {
    readonly step: PageStep;
    readonly from: string;
    readonly isLaid: boolean;
    readonly isRightAfter: boolean;
  };
}

export function benchNow(order: Order, ticked: Ticked, now: string): BenchNow {
  const open = openSteps(order, ticked);
  const due = open.find((start) => isDue(order, start, now));
  const current = due ?? open.toSorted(byText((start) => dueAt(order, start)))[0];
  if (current === undefined) return { is: "done" };
  const next = nextAfter(order, ticked, now, current);
  if (due) return { is: "now", current, next };
  const isWaiting = current.dry > now || waitsRunning(order, ticked, now).length > 0;
  return { is: isWaiting ? "wait" : "later", current, next };
}

/** The first of what is left once the current step is done, or laid on, which takes as long as in the plan. */
function nextAfter(order: Order, ticked: Ticked, now: string, current: Start): BenchNow["next"] {
  const { step } = current;
  const { start, end } = step;
  const begins = [now, dueAt(order, current)].toSorted()[1]!;
  const ends = start && end ? later(begins, hoursFrom(start, end)) : begins;
  const isToLay = step.isLeftOn && current.laid === undefined;
  const isThen = (each: PageStep, piece: string): boolean => each === step && isToLay === (piece === LAID);
  const [next] = openSteps(
    order,
    (each, piece) => ticked(each, piece) ?? (isThen(each, piece) ? ends : undefined),
  ).toSorted(byText(placeInTime));
  if (next === undefined) return undefined;
  const from = placeInTime(next);
  const isLaid = next.laid !== undefined;
  // What is laid on comes off when its time is up, whatever the hours.
  const opens = order.opening === undefined || isLaid || from === "" ? from : openAt(order.opening, from);
  return { step: next.step, from: opens, isLaid, isRightAfter: !isLaid && isDue(order, next, ends) };
}

/** What is not to be touched, one for each place: until when. */
export interface RunningWait {
  readonly step: PageStep;
  readonly on: string;
  /** When it was done, or laid on. */
  readonly done: string;
  /** Empty where the label alone knows it. */
  readonly free: string;
  /** It is to be taken off then. */
  readonly isLaid: boolean;
}

/** In the order in which they end; what the label alone knows goes before. */
export function waitsRunning(order: Order, ticked: Ticked, now: string): readonly RunningWait[] {
  const running = new Map<string, RunningWait>();
  for (const step of order.steps) {
    const found = leftOn(step, ticked, now) ?? drying(order, step, ticked, now);
    if (found && (found.isLaid || found.free >= (running.get(found.on)?.free ?? "")))
      running.set(found.on, found);
  }
  return [...running.values()].toSorted(byText(({ free }) => free));
}

function leftOn(step: PageStep, ticked: Ticked, now: string): RunningWait | undefined {
  const laid = laidAt(step, ticked);
  if (laid === undefined) return undefined;
  const free = step.leaveH === undefined ? "" : later(laid, step.leaveH);
  return free === "" || free > now ? { step, on: placeOf(step), done: laid, free, isLaid: true } : undefined;
}

/** Of pieces that are done before the others of their row, the wait has begun. */
function drying(order: Order, step: PageStep, ticked: Ticked, now: string): RunningWait | undefined {
  const pieces = step.pieces.filter((piece) => ticked(step, piece) !== undefined);
  const done = pieces.length === 0 ? undefined : doneAt(step, ticked, pieces);
  if (done === undefined) return undefined;
  const isAll = pieces.length === step.pieces.length;
  const on = isAll ? placeOf(step) : t`${placeOf(step)}, only piece ${pieces.join(", ")}`;
  const free = step.isUnknown ? "" : freeAt(step, ticked, pieces);
  const isOver = free === undefined || (free !== "" && free <= now);
  // Nobody knows when that of the label alone is over, but whoever goes on has looked.
  const isGoneOn =
    free === "" && (order.after.get(step) ?? []).some((each) => doneAt(each, ticked) !== undefined);
  return isOver || isGoneOn ? undefined : { step, on, done, free: free!, isLaid: false };
}

const placeOf = ({ where, title }: PageStep): string => (where === "" ? title : where);

// ---------------------------------------------------------------------------------------------------------------
// What is to be minded

export interface Hazards {
  /** In the words of the lines: `fumes`, `oily rags`. */
  readonly dangers: readonly string[];
  /** Where a coat is dry, and still soft. */
  readonly soft: readonly string[];
}

/**
 * Rags with drying oil heat up for hours after the work (29 CFR 1910.106(e)(9)(iii) has waste taken away daily), and so
 * they are named for a day, or as long as what they wiped dries.
 */
const RAGS = /rags$/u;
export const isRags = (danger: string): boolean => RAGS.test(danger);
const DAY_H = 24;

/**
 * What earlier steps have left behind. What they give off is there until their wait ends; where no end is known, until the
 * next step there is done, for a day at most (common practice, no source).
 */
export function hazardsAt(order: Order, ticked: Ticked, now: string): Hazards {
  const dangers = new Set<string>();
  const soft = new Set<string>();
  for (const step of order.steps) {
    const laid = laidAt(step, ticked);
    const done = laid ?? doneAt(step, ticked);
    if (done === undefined || done > now) continue;
    const free = laid === undefined ? freeAt(step, ticked) : undefined;
    const aDay = later(done, DAY_H);
    const followers = order.after.get(step) ?? [];
    const isOver = followers.length > 0 && followers.every((each) => doneAt(each, ticked) !== undefined);
    for (const danger of step.dangers.filter((each) => each !== THIN_VENEER)) {
      const end = isRags(danger) ? [free ?? "", aDay].toSorted()[1]! : isOver ? "" : (free ?? aDay);
      if (now < end) dangers.add(danger);
    }
    const isSoft = followers.length > 0 || (step.fullH !== undefined && now < later(done, step.fullH));
    if (step.isCoat && !step.isCured && !isOver && isSoft && free !== undefined && free <= now)
      soft.add(placeOf(step));
  }
  const rags = [...dangers].filter(isRags);
  return { dangers: [...[...dangers].filter((danger) => !isRags(danger)), ...rags], soft: [...soft] };
}
