/** The thread that makes plans beside the language server, bundled into `planning.cjs`; see `plan-thread.ts`. */
import { parentPort } from "node:worker_threads";
import type { ScheduleInput } from "../core/schedule/types.ts";
import { answerTo } from "./plan-elsewhere.ts";

parentPort?.on("message", (input: ScheduleInput) => {
  parentPort?.postMessage(answerTo(input));
});
