/**
 * A schedule's input made ready for planning: whole milliseconds, items by index, the calendar beside them.
 *
 * What the input leaves open is settled here, once: which item a wait counts from, whether a task in one go fits any
 * opening span, which chains are alike. References to items that are not earlier in their chain are dropped, windows
 * that count from anything but a task as well, and durations that are no positive numbers count as nothing, because the checker reports those elsewhere.
 */

import { timeIn } from "../measure/iso-dates.ts";
import {
  dayMs,
  dayNumber,
  fitsSomeSpan,
  hourMs,
  makeShopTime,
  nextOpening,
  type ShopTime,
} from "./calendar.ts";
import { NIGHT_H, NIGHT_WITHOUT_SHOP_H } from "./night.ts";
import type { Chain, ChainItem, ScheduleInput } from "./types.ts";

/** One item of a chain. `of` is the index of the item that a wait counts from, −1 for the start, or of a window's task. */
export type Step =
  | {
      readonly kind: "hands";
      readonly id: string;
      readonly work: number;
      /** In one go, and there is a span to hold it. */
      readonly nonPreemptive: boolean;
      readonly window?: { readonly of: number; readonly within: number };
    }
  | { readonly kind: "wait"; readonly id: string; readonly time: number; readonly of: number }
  | { readonly kind: "overnight"; readonly id: string };

export interface ProblemChain {
  readonly key: string;
  readonly steps: readonly Step[];
  /** Indexes of the hands steps. */
  readonly hands: readonly number[];
  /** Chains of the same kind are alike in everything but key and ids. */
  readonly chainClass: number;
  readonly hasWindows: boolean;
  /** First and last step of each stretch of tasks that windows tie together; what no window ties stands alone. */
  readonly blocks: readonly (readonly [number, number])[];
  /** By step: a task that begins a block whose waits count from nothing before. */
  readonly begins: readonly boolean[];
}

export interface Problem {
  readonly shop: ShopTime;
  /** With calendar and start: hours and crew count. Without: day and night, everybody at once. */
  readonly inShop: boolean;
  /** Infinity without a shop. */
  readonly crew: number;
  /** Milliseconds of the schedule's start on the shop's time. */
  readonly start: number;
  /** Whether moments can be told as dates. */
  readonly dated: boolean;
  readonly chains: readonly ProblemChain[];
  readonly nSteps: number;
  readonly nHands: number;
}

export const overnightMs = NIGHT_H * hourMs;
export const overnightWithoutShopMs = NIGHT_WITHOUT_SHOP_H * hourMs;

/** The problem, or undefined when `start` is no date or date-time. */
export function makeProblem(input: ScheduleInput): Problem | undefined {
  const start = input.start === undefined ? undefined : readStart(input.start);
  if (input.start !== undefined && start === undefined) return undefined;
  const calendar = start === undefined ? undefined : input.calendar;
  const shop = makeShopTime(calendar ?? { closed: [] }, start?.day ?? 0);
  const chains = makeChains(input.chains, shop);
  const opening = nextOpening(shop, 0);
  const began = start?.time ?? (calendar !== undefined && Number.isFinite(opening) ? opening : 0);
  return {
    shop,
    inShop: calendar !== undefined,
    crew: calendar === undefined ? Number.POSITIVE_INFINITY : Math.max(1, Math.floor(calendar.crew) || 1),
    start: began,
    dated: start !== undefined && (start.time !== undefined || calendar !== undefined),
    chains,
    nSteps: chains.reduce((sum, chain) => sum + chain.steps.length, 0),
    nHands: chains.reduce((sum, chain) => sum + chain.hands.length, 0),
  };
}

/** The local date-time of a moment, to the nearest second; undefined without dates or far beyond them. */
export function localDateTime(problem: Problem, time: number): string | undefined {
  if (!problem.dated || !Number.isFinite(time)) return undefined;
  const seconds = problem.shop.firstDay * 86_400 + Math.round(time / 1000);
  if (Math.abs(seconds) > 100_000_000 * 86_400) return undefined;
  // Read as if it were UTC, which knows no summer time.
  return new Date(seconds * 1000).toISOString().slice(0, -5);
}

/** A date (its opening, or midnight where it has none) or a date-time on the shop's time; undefined when it is neither. */
export function momentIn(shop: ShopTime, text: string): number | undefined {
  const read = readStart(text);
  if (read === undefined) return undefined;
  const midnight = (read.day - shop.firstDay) * dayMs;
  if (read.time !== undefined) return midnight + read.time;
  const opening = nextOpening(shop, midnight);
  return Number.isFinite(opening) ? opening : midnight;
}

function readStart(text: string): { readonly day: number; readonly time?: number } | undefined {
  const day = dayNumber(text);
  if (day === undefined) return undefined;
  if (/^\S{10}$/.test(text.trim())) return { day };
  return { day, time: timeIn(text.trim()) };
}

function makeChains(chains: readonly Chain[], shop: ShopTime): readonly ProblemChain[] {
  const classes = new Map<string, number>();
  return chains.map((chain) => {
    const earlier = new Map<string, number>();
    const tasks = new Map<string, number>();
    const steps = chain.items.map((item, index) => {
      const step = makeStep(item, index, { earlier, tasks }, shop);
      earlier.set(item.id, index);
      if (item.kind === "hands") tasks.set(item.id, index);
      return step;
    });
    const signature = JSON.stringify(steps.map((step) => ({ ...step, id: "" })));
    const chainClass = classes.get(signature) ?? classes.size;
    classes.set(signature, chainClass);
    return makeChain(chain.key, chainClass, steps);
  });
}

export function makeChain(key: string, chainClass: number, steps: readonly Step[]): ProblemChain {
  const hands = steps.flatMap((step, index) => (step.kind === "hands" ? [index] : []));
  const blocks = blocksOf(steps, hands);
  const hasWindows = steps.some((step) => step.kind === "hands" && step.window !== undefined);
  return { key, steps, hands, chainClass, hasWindows, blocks, begins: beginsOf(steps, blocks) };
}

function blocksOf(steps: readonly Step[], hands: readonly number[]): readonly (readonly [number, number])[] {
  if (steps.length === 0) return [];
  const reaches = steps.map(() => -1);
  for (const index of hands) {
    const step = steps[index]!;
    if (step.kind === "hands" && step.window !== undefined)
      reaches[step.window.of] = Math.max(reaches[step.window.of]!, index);
  }
  const begins = [0];
  let tiedTo = -1; // the last task so far that a window reaches back from
  for (const [place, index] of hands.entries()) {
    if (place > 0 && index > tiedTo) begins.push(index);
    tiedTo = Math.max(tiedTo, reaches[index]!);
  }
  return begins.map((first, place) => [first, (begins[place + 1] ?? steps.length) - 1]);
}

function beginsOf(
  steps: readonly Step[],
  blocks: readonly (readonly [number, number])[],
): readonly boolean[] {
  const begins = steps.map(() => false);
  for (const [first, last] of blocks) {
    const task = steps.findIndex((step, index) => index >= first && step.kind === "hands");
    if (task < 0 || task > last) continue;
    const inside = steps.slice(task, last + 1);
    begins[task] = inside.every((step) => step.kind !== "wait" || step.of >= task);
  }
  return begins;
}

function makeStep(
  item: ChainItem,
  index: number,
  {
    earlier,
    tasks,
  }: { readonly earlier: ReadonlyMap<string, number>; readonly tasks: ReadonlyMap<string, number> },
  shop: ShopTime,
): Step {
  switch (item.kind) {
    case "hands": {
      const work = inMs(item.hours);
      const of = item.maxLag === undefined ? undefined : tasks.get(item.maxLag.of);
      return {
        kind: "hands",
        id: item.id,
        work,
        nonPreemptive: item.nonPreemptive && fitsSomeSpan(shop, work),
        ...(of === undefined ? {} : { window: { of, within: inMs(item.maxLag!.hours) } }),
      };
    }
    case "wait": {
      const of = item.of === undefined ? undefined : earlier.get(item.of);
      return { kind: "wait", id: item.id, time: inMs(item.hours), of: of ?? index - 1 };
    }
    case "overnight":
      return { kind: "overnight", id: item.id };
  }
}

/** Whole milliseconds; a hundred years at most, so that slips of the pen stay cheap. */
function inMs(hours: number): number {
  return hours > 0 ? Math.min(Math.round(hours * hourMs), 36_525 * dayMs) : 0;
}
