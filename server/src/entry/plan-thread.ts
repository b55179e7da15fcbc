/**
 * Plans made in a thread of their own, so that the server's goes on answering. The thread is started for the first plan,
 * and ended when one is given up, since it cannot be told anything while it plans, or when none was wanted for a while.
 */
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import type { Schedule } from "../core/schedule/types.ts";
import type { PlanMaker } from "../lsp/planning.ts";

/** What the thread answers to an input. */
export type FromPlanner = { readonly plan: Schedule } | { readonly error: string };

interface Waiting {
  readonly resolve: (plan: Schedule) => void;
  readonly reject: (error: Error) => void;
}

/** A thread that has nothing to do keeps its memory for so long. */
const IDLE_MS = 2000;

export function planInThread(
  bundle: string = fileURLToPath(new URL("planning.cjs", import.meta.url)),
): PlanMaker {
  let worker: Worker | undefined;
  let waiting: Waiting | undefined;
  let idle: NodeJS.Timeout | undefined;

  const end = (why: Error): void => {
    const ending = worker;
    const left = waiting;
    worker = undefined;
    waiting = undefined;
    void ending?.terminate();
    left?.reject(why);
  };

  const start = (): Worker => {
    const started = new Worker(bundle);
    started.unref();
    started.on("message", (answer: FromPlanner) => {
      if (started !== worker) return;
      const asked = waiting;
      waiting = undefined;
      idle = setTimeout(() => end(new Error("The thread was not needed any more.")), IDLE_MS);
      idle.unref();
      if ("plan" in answer) asked?.resolve(answer.plan);
      else asked?.reject(new Error(answer.error));
    });
    started.on("error", (error) => {
      if (started === worker) end(error instanceof Error ? error : new Error(String(error)));
    });
    started.on("exit", () => {
      if (started === worker) end(new Error("The thread that plans has ended."));
    });
    return started;
  };

  return {
    make: (input) =>
      new Promise((resolve, reject) => {
        clearTimeout(idle);
        worker ??= start();
        waiting = { resolve, reject };
        worker.postMessage(input);
      }),
    abandon: () => end(new Error("The plan was given up.")),
  };
}
