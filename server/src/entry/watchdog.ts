/**
 * A thread that watches over the server's own, which cannot look up while it computes.
 *
 * It sees that the editor has ended or has closed the server's input and ends the process, with a little time for it to
 * end by itself; and it names in the log (standard error) what takes too long while it still does. Standard input is read
 * there, since only who reads a pipe sees it close. No clock has a say in what is found: what is named goes on.
 */
import { fstatSync } from "node:fs";
import process from "node:process";
import { PassThrough, type Readable } from "node:stream";
import { Worker } from "node:worker_threads";
import { shownText } from "../escape/shown-text.ts";
import { createInHand } from "./in-hand.ts";
import { type FromWatcher, type ToWatcher, type WatcherOptions, watch } from "./watcher.ts";

export interface Watchdog {
  /** Standard input; undefined where it is not read here. */
  readonly input?: Readable;
  /** The process of the editor, without which the server ends. */
  watchClient(pid: number): void;
  /** Something begins; to be called when it is done. */
  begin(what: string): () => void;
}

export interface WatchdogOptions {
  /** Whether messages come over standard input. */
  readonly overStdin: boolean;
  /** Whether the process that started this one is the client. */
  readonly parentIsClient: boolean;
  /** The client is gone. */
  readonly onEnd: () => void;
  readonly times?: Partial<Pick<WatcherOptions, "pollMs" | "graceMs" | "budgetMs">>;
}

const TIMES = { pollMs: 500, graceMs: 2000, budgetMs: 5000 };

const MOST_WAITING = 64 * 1024 * 1024;

const CODE = `
const { parentPort: port, workerData: options } = require("node:worker_threads");
(${watch})({ port, options, fs: require("node:fs"), net: require("node:net") });
`;

/** Starts the thread. It does not keep the process from ending. */
export const startWatchdog = ({ overStdin, parentIsClient, onEnd, times }: WatchdogOptions): Watchdog => {
  const takesInput = overStdin && isPipe(0);
  const inHand = createInHand();
  const options: WatcherOptions = {
    own: process.pid,
    inHand: inHand.shared,
    ...(parentIsClient ? { parent: process.ppid } : {}),
    takesInput,
    mostWaiting: MOST_WAITING,
    ...TIMES,
    ...times,
  };
  const worker = new Worker(CODE, { eval: true, workerData: options });
  const input = takesInput ? new PassThrough() : undefined;
  const post = (message: ToWatcher): void => worker.postMessage(message);
  worker.on("message", (message: FromWatcher) => {
    if (message.kind === "chunk") {
      input?.write(message.bytes);
      post({ kind: "took", bytes: message.bytes.length });
    } else if (message.kind === "input ended") input?.end();
    else if (message.kind === "awake?") post({ kind: "awake" });
    else onEnd();
  });
  // Without the thread nothing is read any more; an editor starts a server that has ended again.
  worker.on("error", onEnd);
  if (!takesInput) worker.unref();
  return {
    ...(input ? { input } : {}),
    watchClient: (pid) => post({ kind: "client", pid }),
    // The thread has no means of its own to make a text harmless on a terminal.
    begin: (what) => inHand.begin(shownText(what)),
  };
};

const isPipe = (descriptor: number): boolean => {
  try {
    const stat = fstatSync(descriptor);
    return stat.isFIFO() || stat.isSocket();
  } catch {
    return false;
  }
};
