/**
 * What the bench view of every job of the samples costs after a keystroke, in processor time of the server's own thread: the
 * cut through its surfaces, its shopping list, its totals and all else of the answer. Plans are made beside that thread and are
 * not counted: once the answer that comes while the job is being planned, and once the one with its plan at hand.
 */
import process from "node:process";
import { PlanQueue } from "../../server/src/core/schedule/plan-queue.ts";
import { schedule } from "../../server/src/core/schedule/schedule.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { sampleNames, sampleText } from "../harness/samples.ts";
import { median, type Table } from "./suites.ts";

/** The figure that is typed: the first length of a piece in the text. */
const LENGTH = /(shape\s+\D*?)(\d+)( mm)/u;

interface Times {
  readonly planned: number[];
  readonly planning: number[];
}

function timesOf(file: string, name: string, keystrokes: number): Times {
  const queue = new PlanQueue(100, () => {});
  const analyst = createAnalyst({ resolve: (_, path) => path, plan: queue.plan });
  for (const each of sampleNames) analyst.setFile(each, sampleText(each));
  const cpuOf = (work: () => void): number => {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  };
  const answer = (): void => void analyst.analysis().bench(file, name);
  const makePlans = (): void => {
    for (let request = queue.next(file); request !== undefined; request = queue.next(file))
      queue.done(request, { plan: schedule(request.input) });
  };
  const text = sampleText(file);
  const typed = (length: number): string => text.replace(LENGTH, `$1${length}$3`);
  const length = Number(LENGTH.exec(text)![2]);
  const times: Times = { planned: [], planning: [] };
  // The first round warms up, and each text but the first two is another than all before.
  for (let key = 0; key <= keystrokes; key += 1) {
    const planning = cpuOf(() => {
      analyst.setFile(file, typed(length + key));
      answer();
    });
    makePlans();
    const planned = cpuOf(answer);
    if (key === 0) continue;
    times.planning.push(planning);
    times.planned.push(planned);
  }
  return times;
}

const SERVER = "Finishwright";

export function benchViews(keystrokes: number, table: Table): void {
  const analyst = createAnalyst({ resolve: (_, path) => path, plan: new PlanQueue(100, () => {}).plan });
  for (const each of sampleNames) analyst.setFile(each, sampleText(each));
  for (const file of sampleNames)
    for (const { job } of analyst.analysis().jobs(file)) {
      const { planning, planned } = timesOf(file, job.name, keystrokes);
      const set = (what: string, all: readonly number[]): void =>
        table.set(`bench view of \`${job.name}\` after a keystroke, ${what}`, SERVER, {
          cpuMs: median(all),
        });
      set("while it is planned", planning);
      set("with its plan", planned);
      set("the dearest of both", [Math.max(...planning, ...planned)]);
    }
}
