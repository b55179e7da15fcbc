/**
 * Files looked into in threads of Node's, each of which has this program once more. Each takes one task after the other, so that
 * none waits while there is work; where a thread fails, what it had is looked into here.
 */
import { parentPort, Worker, workerData } from "node:worker_threads";
import type { CheckAnswer, CheckTask } from "../cli/check-model.ts";
import { checkTask } from "../cli/check-task.ts";
import { createAnalyst } from "../features/analyst.ts";
import { createTidying } from "./idle-memory.ts";
import { optimiseLater } from "./late-optimising.ts";
import { YOUNG_HEAP } from "./young-heap.ts";

/** What such a thread is told that it is. */
const ROLE = "finishwright check";

interface Asked {
  readonly index: number;
  readonly task: CheckTask;
}

interface Answered {
  readonly index: number;
  readonly answer: CheckAnswer;
}

/** In the order of the tasks. `program` is the file of this program. */
export async function checkInThreads(
  program: string,
  tasks: readonly CheckTask[],
  threads: number,
): Promise<readonly CheckAnswer[]> {
  optimiseLater();
  const answers = new Map<number, CheckAnswer>();
  const open = tasks.map((task, index): Asked => ({ index, task })).reverse();
  const one = (): Promise<void> =>
    new Promise((resolve) => {
      const worker = new Worker(program, { workerData: ROLE, resourceLimits: YOUNG_HEAP });
      const end = (): void => void worker.terminate().then(() => resolve(), resolve);
      const give = (): void => {
        const next = open.pop();
        if (next === undefined) end();
        else worker.postMessage(next);
      };
      worker.on("message", ({ index, answer }: Answered) => {
        answers.set(index, answer);
        give();
      });
      worker.on("error", end);
      worker.on("exit", () => resolve());
      give();
    });
  await Promise.all(Array.from({ length: Math.min(threads, tasks.length) }, one));
  return tasks.map((task, index) => answers.get(index) ?? checkTask(task, createAnalyst));
}

/** Whether this is such a thread; then it answers from now on. */
export function servesChecks(): boolean {
  if (workerData !== ROLE || parentPort === null) return false;
  const port = parentPort;
  const tidy = createTidying();
  port.on("message", ({ index, task }: Asked) => {
    port.postMessage({ index, answer: checkTask(task, createAnalyst) } satisfies Answered);
    tidy();
  });
  return true;
}
