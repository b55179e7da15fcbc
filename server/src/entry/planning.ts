/** The thread that makes plans beside the language server, bundled into `planning.cjs`; see `plan-thread.ts`. */
import { parentPort } from "node:worker_threads";
import { planWork } from "../core/schedule/plan.ts";
import type { ScheduleInput } from "../core/schedule/types.ts";
import type { FromPlanner } from "./plan-thread.ts";

parentPort?.on("message", (input: ScheduleInput) => {
  parentPort?.postMessage(answerTo(input));
});

function answerTo(input: ScheduleInput): FromPlanner {
  try {
    return { plan: planWork(input) };
  } catch (error) {
    return { error: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}
