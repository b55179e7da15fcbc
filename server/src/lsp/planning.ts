/**
 * Has the plans of jobs made beside everything else, and tells when there are new ones.
 *
 * A plan whose job has been edited meanwhile is given up, if it has been in the making for a while: one that is nearly
 * done is cheaper to finish than to begin again. Each time that happens the next one gets twice as long, until one is
 * finished, so that somebody who goes on typing sees plans as well. Nothing runs while no plan is wanted.
 */

import type { FileId } from "../core/place.ts";
import { planWork } from "../core/schedule/plan.ts";
import type { Planner } from "../core/schedule/plan-cache.ts";
import { isFor, PlanQueue, type PlanRequest } from "../core/schedule/plan-queue.ts";
import type { Schedule, ScheduleInput } from "../core/schedule/types.ts";
import { yieldToMessages } from "./guard.ts";

/** Makes plans, one at a time. */
export interface PlanMaker {
  /** Rejects with what the planner threw, or where it was given up. */
  make(input: ScheduleInput): Promise<Schedule>;
  /** Gives up what is being made, where that is possible. */
  abandon?(): void;
}

/** For where there is no thread to plan in: one plan between two messages. */
export const planHere: PlanMaker = {
  async make(input) {
    await yieldToMessages();
    return planWork(input);
  },
};

export interface Planning {
  readonly plan: Planner;
  /** Its plans come first. */
  prefer(file: FileId): void;
  /** Its plans are not wanted any more. */
  forget(file: FileId): void;
}

export interface PlanningOptions {
  readonly maker: PlanMaker;
  /** There are new plans, for jobs of these files. */
  readonly onNews: (files: ReadonlySet<FileId>) => void;
  /** Plans are being made until that is settled. */
  readonly onBusy?: (done: Promise<void>) => void;
  /** Whether more jobs may come to be known at any moment, so that it is too early to plan. */
  readonly isEarly?: () => boolean;
  /** In milliseconds. */
  readonly now?: () => number;
}

/** Equal inputs of so many plans are known, enough for the jobs of a large folder. */
const MOST_PLANS = 200;
/** What one edit asks for is asked within this time. */
const PAUSE_MS = 30;
/** While there is more to plan, news is told so often. */
const NEWS_MS = 2000;
/** A plan is not given up before it has taken this long. */
const PATIENCE_MS = 250;

export function createPlanning({
  maker,
  onNews,
  onBusy,
  isEarly = () => false,
  now = () => performance.now(),
}: PlanningOptions): Planning {
  let preferred: FileId | undefined;
  let isRunning = false;
  let making: { readonly request: PlanRequest; readonly since: number } | undefined;
  let patienceMs = PATIENCE_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const queue = new PlanQueue(MOST_PLANS, () => {
    if (!isRunning) start();
    else if (making && !queue.isWanted(making.request)) giveUpInTime();
  });

  const start = (): void => {
    const done = run();
    onBusy?.(done);
  };

  const giveUpInTime = (): void => {
    if (!maker.abandon || !making || timer !== undefined) return;
    const { request, since } = making;
    const left = Math.max(0, patienceMs - (now() - since));
    timer = setTimeout(() => {
      timer = undefined;
      if (making?.request !== request || queue.isWanted(request)) return;
      patienceMs *= 2;
      maker.abandon?.();
    }, left);
  };

  /** Whether something came of it that is to be kept. */
  const make = async (request: PlanRequest): Promise<boolean> => {
    making = { request, since: now() };
    try {
      queue.done(request, { plan: await maker.make(request.input) });
      patienceMs = PATIENCE_MS;
      return true;
    } catch (error) {
      // What was given up is no answer, but what fails once fails again.
      if (!queue.isWanted(request)) return false;
      queue.done(request, { error });
      return true;
    } finally {
      making = undefined;
      clearTimeout(timer);
      timer = undefined;
    }
  };

  const run = async (): Promise<void> => {
    isRunning = true;
    do await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
    while (isEarly());
    let told = now();
    let news = new Set<FileId>();
    const tell = (): void => {
      const files = news;
      news = new Set();
      onNews(files);
    };
    for (;;) {
      const request = queue.next(preferred);
      if (!request) break;
      const isVisible = preferred !== undefined && isFor(request, preferred);
      if (await make(request)) for (const file of filesOf(request)) news.add(file);
      const isVisibleDone = isVisible && preferred !== undefined && !queue.isWaiting(preferred);
      if (news.size > 0 && queue.isWaiting() && (isVisibleDone || now() - told >= NEWS_MS)) {
        told = now();
        tell();
      }
    }
    isRunning = false;
    if (news.size > 0) tell();
  };

  return {
    plan: queue.plan,
    prefer(file) {
      preferred = file;
    },
    forget: (file) => queue.forget(file),
  };
}

const filesOf = ({ owner }: PlanRequest): readonly FileId[] => [owner.file, ...(owner.alsoFor ?? [])];
