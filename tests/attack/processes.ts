/**
 * What another process has used and does, asked of the system: a machine under load is slow, so only the processor's
 * seconds say whether somebody works too long, and only sleep says that nobody works at all.
 */
import { type ChildProcess, spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";

const HAS_PROC = existsSync("/proc/self/stat");
/** Linux counts in hundredths of a second for whoever reads `/proc`, on all machines that Node runs on. */
const TICKS_PER_SECOND = 100;

/** Seconds of the processor so far; undefined when the process is gone. */
export function cpuSecondsOf(pid: number): number | undefined {
  if (HAS_PROC) {
    const fields = statOf(pid);
    return fields && (Number(fields[11]) + Number(fields[12])) / TICKS_PER_SECOND;
  }
  const { status, stdout } = spawnSync("ps", ["-o", "cputime=", "-p", String(pid)], { encoding: "utf8" });
  if (status !== 0) return undefined;
  return stdout
    .trim()
    .split(/[:-]/)
    .reduce((sum, part) => sum * 60 + Number(part), 0);
}

/** Whether it waits for something; where the system does not say, it is taken to. */
export function isAsleep(pid: number): boolean {
  return HAS_PROC ? statOf(pid)?.[0] === "S" : true;
}

export function isAlive(pid: number): boolean {
  if (HAS_PROC) return ![undefined, "Z", "X"].includes(statOf(pid)?.[0]);
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

/** The most memory that it has had, in megabytes; undefined where the system does not say. */
export function peakMegabytesOf(pid: number): number | undefined {
  try {
    const peak = /^VmHWM:\s*(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1];
    return peak === undefined ? undefined : Number(peak) / 1024;
  } catch {
    return undefined;
  }
}

/** The fields behind the name of the program, which may have blanks and brackets in it: state first. */
function statOf(pid: number): readonly string[] | undefined {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, "utf8");
    return text.slice(text.lastIndexOf(")") + 2).split(" ");
  } catch {
    return undefined;
  }
}

export interface Watch {
  readonly pid: number;
  /** More than so much of the processor from now on is a hang. */
  readonly cpuSeconds: number;
  /** So long asleep without an end is one, too: nothing is going to wake it. */
  readonly asleepSeconds: number;
}

export type Verdict = "ended" | "too much work" | "asleep";

const POLL_MS = 100;

/** Waits until `ended` says so, or the process goes on for too long. */
export async function watch(
  { pid, cpuSeconds, asleepSeconds }: Watch,
  ended: Promise<unknown>,
): Promise<Verdict> {
  let isOver = false;
  const over = ended.then(
    () => {
      isOver = true;
    },
    () => {
      isOver = true;
    },
  );
  const before = cpuSecondsOf(pid) ?? 0;
  let last = before;
  let asleep = 0;
  while (!isOver) {
    await Promise.race([over, pause(POLL_MS)]);
    if (isOver) break;
    const now = cpuSecondsOf(pid);
    // Gone: whoever waits for the end is about to hear of it.
    if (now === undefined) continue;
    if (now - before > cpuSeconds) return "too much work";
    asleep = isAsleep(pid) && now - last < 0.02 ? asleep + POLL_MS / 1000 : 0;
    last = now;
    if (asleep > asleepSeconds) return "asleep";
  }
  return "ended";
}

/** Waits for the first message of a child; fails where it ends instead. */
export const firstMessage = (child: ChildProcess): Promise<void> =>
  new Promise((resolve, reject) => {
    const ended = (): void => reject(new Error("A process of the attack ended before it began."));
    child.once("exit", ended);
    child.once("message", () => {
      child.off("exit", ended);
      resolve();
    });
  });

export const pause = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });
