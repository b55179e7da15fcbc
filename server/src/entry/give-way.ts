/** How a thread leaves the processor to whoever answers a person. */
import { readlinkSync } from "node:fs";
import { setPriority } from "node:os";
import process from "node:process";

/** As `nice` has it: with so much a thread gets a tenth of what another wants that runs on the same processor. */
const LOWER = 10;

/**
 * The thread that calls it comes after those of usual priority, on a machine whose processors are all at work. Only Linux
 * knows priorities of threads; elsewhere, and where it is forbidden, nothing changes.
 */
export function giveWay(): void {
  if (process.platform !== "linux") return;
  try {
    // `1234/task/1240`
    const thread = Number(readlinkSync("/proc/thread-self").split("/").at(-1));
    if (thread !== process.pid) setPriority(thread, LOWER);
  } catch {
    // It plans all the same.
  }
}
