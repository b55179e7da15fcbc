/** The thread that makes plans beside the language server, bundled into `planning.cjs`; see `plan-thread.ts`. */
import { isMainThread, parentPort } from "node:worker_threads";
import { planWork } from "../core/schedule/plan.ts";
import type { ScheduleInput } from "../core/schedule/types.ts";
import { giveWay } from "./give-way.ts";
import { answerTo } from "./plan-elsewhere.ts";

// Plans are made while somebody types, and may come later; an answer may not.
if (!isMainThread) giveWay();

parentPort?.on("message", (input: ScheduleInput) => {
  parentPort?.postMessage(answerTo(input));
});

/** For the server's own thread, whose bundle has no planner (`client/bundles.ts`). */
export { planWork };
