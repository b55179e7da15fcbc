/**
 * Measures how the cost of every shape grows as it doubles, part by part, and finds the exponents. A part whose exponent
 * is over the limit is measured anew before it counts, and of every size the least counts that it was measured at: other
 * programs and a collection of garbage make a figure worse and never better.
 */
import { type ChildProcess, fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import { exponentOf, type Point } from "./growth-fit.ts";
import { SHAPES } from "./growth-shapes.ts";
import type { Cost } from "./growth-work.ts";
import { firstMessage, watch } from "./processes.ts";

export const MOST_EXPONENT = 1.2;

export interface Growth {
  readonly shape: string;
  /** The stated limit, and the largest size that was measured. */
  readonly limit: number;
  readonly reached: number;
  /** The part that grows worst, and what it costs at the largest size. */
  readonly part: string;
  readonly seconds: number;
  /** Undefined where nothing costs enough to be measured. */
  readonly exponent: number | undefined;
  /** In words, where a size was too much. */
  readonly ended?: string;
  /** There was no time for the larger sizes, or for any. */
  readonly isUnmeasured?: true;
}

const MAIN = fileURLToPath(new URL("growth-main.ts", import.meta.url));
/** One size may cost so much; more is a failure, whatever the exponent. */
const CPU_SECONDS = 30;
/** A size that costs so much in all is the last, once three are measured: it tells the exponent as well as any larger one. */
const ENOUGH_SECONDS = 4;
/** Two sizes alone tell the step between them, so a third is measured, whatever it costs: so many times the first. */
const THIRD_SIZE = 4;
/** Further looks at what seems to grow too fast. */
const LOOKS = 9;

export async function measureGrowth(
  shapes: readonly number[],
  isOver: () => boolean,
): Promise<readonly Growth[]> {
  const looks = new Map<number, Look>();
  const measurer = new Measurer();
  for (const shape of shapes) looks.set(shape, await measureShape(measurer, shape, isOver));
  // Each round comes after all the others of the round before, since other programs may be at work for minutes.
  for (let count = 1; count < LOOKS && !isOver(); count += 1) {
    const again = [...looks].filter(([, look]) => isInDoubt(rowOf(look)));
    for (const [shape, look] of again) {
      // In a process of its own, since what earlier shapes left on the heap costs collections at the larger sizes.
      measurer.stop();
      looks.set(shape, leastOf(look, await measureShape(measurer, shape, isOver, look)));
    }
  }
  measurer.stop();
  const rows = [...looks.values()].map(rowOf);
  for (const row of rows) if (isTooFast(row) || row.ended) console.log(`  growth: ${lineOf(row)}`);
  return rows;
}

const isInDoubt = (row: Growth): boolean => isTooFast(row) && !row.ended;

export const isTooFast = ({ exponent, seconds }: Growth): boolean =>
  (exponent ?? 0) > MOST_EXPONENT && seconds > 0.2;

const lineOf = ({ shape, part, reached, seconds, exponent, ended }: Growth): string =>
  `${shape}: ${part}, ${seconds.toFixed(1)} s at ${reached}, exponent ${exponent?.toFixed(2) ?? "–"}${ended ? `, ${ended}` : ""}`;

/** What the parts of one shape cost. */
export interface Look extends Pick<Growth, "limit" | "reached" | "ended" | "isUnmeasured"> {
  readonly shape: string;
  /** By part, in the order of the sizes. */
  readonly points: ReadonlyMap<string, readonly Point[]>;
}

/** Two looks at one shape, each part at each size at its least; how far both went together. */
export function leastOf(one: Look, other: Look): Look {
  if (other.isUnmeasured) return one;
  const points = [...one.points].map(([part, before]) => {
    const again = new Map(other.points.get(part)?.map(({ size, seconds }) => [size, seconds]));
    return [
      part,
      before.map(({ size, seconds }) => ({ size, seconds: Math.min(seconds, again.get(size) ?? seconds) })),
    ] as const;
  });
  return { ...one, points: new Map(points), ...(other.ended ? { ended: other.ended } : {}) };
}

/** Sizes that were measured `before` are measured whatever they cost, so that every size has as many looks as the others. */
async function measureShape(
  measurer: Measurer,
  index: number,
  isOver: () => boolean,
  before?: Look,
): Promise<Look> {
  const shape = SHAPES[index]!;
  const points = new Map<string, Point[]>();
  let reached = 0;
  let ended: string | undefined;
  let isUnmeasured = isOver();
  // The first run is for warmth: the compiler works as much as the program.
  if (!isUnmeasured) await measurer.costsOf(index, shape.from);
  for (let size = shape.from; size <= shape.to * 1.01; size *= 2) {
    isUnmeasured = isOver();
    if (isUnmeasured) break;
    const { costs, unfinished } = await measurer.costsOf(index, size);
    for (const { part, seconds } of costs) points.set(part, [...(points.get(part) ?? []), { size, seconds }]);
    reached = size;
    if (unfinished) ended = `${unfinished} in the part after ${costs.at(-1)?.part ?? "the start"}`;
    const isEnough = costs.reduce((sum, { seconds }) => sum + seconds, 0) > ENOUGH_SECONDS;
    if (unfinished || size >= (before?.reached ?? Number.POSITIVE_INFINITY)) break;
    if (isEnough && before === undefined && size >= THIRD_SIZE * shape.from) break;
  }
  return {
    shape: shape.name,
    limit: shape.to,
    reached,
    points,
    ...(ended ? { ended } : {}),
    ...(isUnmeasured ? { isUnmeasured } : {}),
  };
}

/** The part that grows worst. */
export function rowOf({ points, ...look }: Look): Growth {
  const parts = [...points].map(([part, all]) => ({
    part,
    seconds: all.at(-1)?.seconds ?? 0,
    exponent: exponentOf(all),
  }));
  const costly = parts.filter(({ seconds }) => seconds > 0.2);
  const worst = (costly.length > 0 ? costly : parts).toSorted(
    (a, b) => (b.exponent ?? 0) - (a.exponent ?? 0),
  )[0];
  return {
    ...look,
    part: worst?.part ?? "–",
    seconds: worst?.seconds ?? 0,
    exponent: worst?.exponent,
  };
}

interface Costs {
  readonly costs: readonly Cost[];
  /** Why not all parts are there. */
  readonly unfinished?: string;
}

/** The process that does the work, started anew when it was stopped. */
class Measurer {
  #child: ChildProcess | undefined;

  async costsOf(shape: number, size: number): Promise<Costs> {
    this.#child ??= await startChild();
    const child = this.#child;
    const costs: Cost[] = [];
    let isDone = false;
    const ended = new Promise<void>((resolve) => {
      child.on("message", (message) => {
        if (message === "done") {
          isDone = true;
          resolve();
        } else costs.push(message as Cost);
      });
      child.once("exit", () => resolve());
    });
    child.send({ shape, size });
    const verdict = await watch({ pid: child.pid!, cpuSeconds: CPU_SECONDS, asleepSeconds: 60 }, ended);
    child.removeAllListeners();
    if (isDone) return { costs };
    this.stop();
    return {
      costs,
      unfinished: verdict === "ended" ? "an end of the process" : `more than ${CPU_SECONDS} s`,
    };
  }

  stop(): void {
    this.#child?.kill("SIGKILL");
    this.#child = undefined;
  }
}

async function startChild(): Promise<ChildProcess> {
  const child = fork(MAIN, [], {
    execArgv: ["--max-old-space-size=3072"],
    stdio: ["ignore", "ignore", "ignore", "ipc"],
  });
  await firstMessage(child);
  return child;
}
