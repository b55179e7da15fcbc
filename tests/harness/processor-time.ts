/** How long processors have worked, for whoever reads the end of a test run. */
import { readFileSync } from "node:fs";
import process from "node:process";

/** Linux counts in hundredths of a second wherever it tells programs. */
const TICKS_PER_SECOND = 100;

/**
 * Seconds of the processor that this process has used, and those that it started and waited for; undefined where the system
 * has no `/proc` (proc_pid_stat(5): utime, stime, cutime and cstime are the fields 14 to 17).
 */
export function processorSeconds(): number | undefined {
  try {
    const stat = readFileSync("/proc/self/stat", "utf8");
    // The name of the program stands in parentheses, and may have blanks in it; the third field follows it.
    const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    return fields.slice(11, 15).reduce((sum, ticks) => sum + Number(ticks), 0) / TICKS_PER_SECOND;
  } catch {
    return undefined;
  }
}

/** What earlier programs of the same run have used, as `usedBefore` says it to the next. */
const BEFORE = "PROCESSOR_SECONDS_BEFORE";

/** For the environment of a program that tells what it and all before it have used. */
export const usedBefore = (): Readonly<Record<string, string>> => {
  const seconds = processorSeconds();
  return seconds === undefined ? {} : { [BEFORE]: String(seconds) };
};

/** `11.3 minutes of the processor`, or nothing where the system does not tell. */
export function processorLine(): string {
  const seconds = processorSeconds();
  if (seconds === undefined) return "";
  const minutes = (seconds + Number(process.env[BEFORE] ?? 0)) / 60;
  return `${minutes.toFixed(1)} minutes of the processor\n`;
}
