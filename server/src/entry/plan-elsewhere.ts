/**
 * Plans made in a thread of their own, so that the server's goes on answering. The thread is started for the first plan,
 * and ended when one is given up, since it cannot be told anything while it plans, or when none was wanted for a while.
 */
import { errorText } from "../core/error-text.ts";
import { planWork } from "../core/schedule/plan.ts";
import type { Schedule, ScheduleInput } from "../core/schedule/types.ts";
import type { PlanMaker } from "../lsp/planning.ts";

/** What the thread answers to an input. */
export type FromPlanner = { readonly plan: Schedule } | { readonly error: string };

/** In the thread: the answer to an input. Never throws. */
export function answerTo(input: ScheduleInput): FromPlanner {
  try {
    return { plan: planWork(input) };
  } catch (error) {
    return { error: errorText(error) };
  }
}

export interface PlannerThread {
  post(input: ScheduleInput): void;
  /** At once, whatever it is doing. */
  end(): void;
}

/** What a thread tells of itself. */
export interface ThreadNews {
  answered(answer: FromPlanner): void;
  /** It is not there any more, or never was. */
  failed(error: Error): void;
}

interface Waiting {
  readonly resolve: (plan: Schedule) => void;
  readonly reject: (error: Error) => void;
}

/** A thread that has nothing to do keeps its memory for so long. */
const IDLE_MS = 2000;

/** Where `start` throws, so does `make`. */
export function planElsewhere(start: (news: ThreadNews) => PlannerThread): PlanMaker {
  let thread: PlannerThread | undefined;
  let waiting: Waiting | undefined;
  let idle: ReturnType<typeof setTimeout> | undefined;

  const end = (why: Error): void => {
    const ending = thread;
    const left = waiting;
    thread = undefined;
    waiting = undefined;
    ending?.end();
    left?.reject(why);
  };

  const started = (): PlannerThread => {
    const fresh: PlannerThread = start({
      answered(answer) {
        if (fresh !== thread) return;
        const asked = waiting;
        waiting = undefined;
        idle = setTimeout(() => end(new Error("The thread was not needed any more.")), IDLE_MS);
        // In a browser a timer is a number, and holds nothing open.
        if (typeof idle === "object") idle.unref();
        if ("plan" in answer) asked?.resolve(answer.plan);
        else asked?.reject(new Error(answer.error));
      },
      failed(error) {
        if (fresh === thread) end(error);
      },
    });
    return fresh;
  };

  return {
    make: (input) =>
      new Promise((resolve, reject) => {
        clearTimeout(idle);
        thread ??= started();
        waiting = { resolve, reject };
        thread.post(input);
      }),
    abandon: () => end(new Error("The plan was given up.")),
  };
}
