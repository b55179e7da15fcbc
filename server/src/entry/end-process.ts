/**
 * Ends a process that may still be reading from a disk or a pipe that never answers.
 *
 * A read that hangs in the system keeps a thread, and Node waits for its threads when a process exits by itself or by
 * `process.exit`: what was given up long ago would hold the process for ever. So such a process is killed.
 */
import process from "node:process";

/** What an honest read needs at most to come back once everything else is done. */
const GRACE_MS = 2000;
const POLL_MS = 50;

/** Node's own names of what is under way: reads of files begin so. */
const isReading = (): boolean => process.getActiveResourcesInfo().some((kind) => kind.startsWith("FSReq"));

/** What still has to get out: bytes written to a pipe, a terminal or a socket. */
const isWriting = (): boolean => process.getActiveResourcesInfo().some((kind) => kind.includes("Write"));

/** Exits with `code`; with a signal where a read does not come back. */
export function endProcess(code: number): void {
  process.exitCode = code;
  afterReads(
    () => process.exit(code),
    () => false,
  );
}

/** Lets the process end by itself with `code`, once all is written; with a signal where a read does not come back. */
export function letProcessEnd(code: number): void {
  process.exitCode = code;
  if (isReading()) afterReads(() => {}, isWriting);
}

function afterReads(done: () => void, mayWait: () => boolean): void {
  let left = GRACE_MS / POLL_MS;
  const look = (): void => {
    if (!isReading()) {
      done();
      return;
    }
    if (!mayWait()) left -= 1;
    if (left <= 0) process.kill(process.pid, "SIGKILL");
    else setTimeout(look, POLL_MS);
  };
  look();
}
