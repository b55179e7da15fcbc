/**
 * Plans made in a Web Worker below the server's own (see `plan-elsewhere.ts`): the same script, started under another name.
 * Where a worker may not start one, the plans are made between two messages.
 */
import { type PlanMaker, planHere } from "../lsp/planning.ts";
import { type FromPlanner, planElsewhere } from "./plan-elsewhere.ts";

/** A worker of this name makes plans, and is no server. */
export const PLANNER = "Finishwright planner";

/** As much of the browser's own as is used here; the project's types are those of Node. */
declare class Worker {
  constructor(script: string, options: { readonly name: string });
  onmessage: ((event: { readonly data: unknown }) => void) | null;
  onerror: ((event: { readonly message?: string; preventDefault?(): void }) => void) | null;
  postMessage(message: unknown): void;
  terminate(): void;
}

class NoThread extends Error {}

export function planInWorker(script: string): PlanMaker {
  let hasThreads = typeof Worker === "function";
  const elsewhere = planElsewhere(({ answered, failed }) => {
    const worker = startWorker(script);
    worker.onmessage = ({ data }) => {
      // Where the script cannot see its name, what has been started is a server.
      if (typeof data === "object" && data !== null) answered(data as FromPlanner);
      else failed(new NoThread("It is no planner."));
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      failed(new NoThread(event.message));
    };
    return {
      post: (input) => worker.postMessage(input),
      end: () => worker.terminate(),
    };
  });
  return {
    async make(input) {
      if (hasThreads)
        try {
          return await elsewhere.make(input);
        } catch (error) {
          if (!(error instanceof NoThread)) throw error;
          hasThreads = false;
        }
      return planHere.make(input);
    },
    abandon: () => elsewhere.abandon?.(),
  };
}

function startWorker(script: string): Worker {
  try {
    return new Worker(script, { name: PLANNER });
  } catch (error) {
    throw new NoThread(String(error));
  }
}
