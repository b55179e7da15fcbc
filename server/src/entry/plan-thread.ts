/** Plans made in a thread of Node's (see `plan-elsewhere.ts`). */
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import type { PlanMaker } from "../lsp/planning.ts";
import { planElsewhere } from "./plan-elsewhere.ts";
import { YOUNG_HEAP } from "./young-heap.ts";

export const planInThread = (
  bundle: string = fileURLToPath(new URL("planning.cjs", import.meta.url)),
): PlanMaker =>
  planElsewhere(({ answered, failed }) => {
    const worker = new Worker(bundle, { resourceLimits: YOUNG_HEAP });
    worker.unref();
    worker.on("message", answered);
    worker.on("error", (error) => failed(error instanceof Error ? error : new Error(String(error))));
    worker.on("exit", () => failed(new Error("The thread that plans has ended.")));
    return {
      post: (input) => worker.postMessage(input),
      end: () => void worker.terminate(),
    };
  });
