/**
 * The code of the watching thread (see `watchdog.ts`).
 *
 * It is handed to the thread as text, so that every bundle stays one file. So the function may use nothing but its
 * arguments and what every thread has; types fall away.
 */
import type fs from "node:fs";
import type net from "node:net";
import type { MessagePort } from "node:worker_threads";
import type { SharedInHand } from "./in-hand.ts";

export interface WatcherOptions {
  /** The process that is watched over. */
  readonly own: number;
  /** The process that started it, where the server cannot live on without that; ids change when it ends (not on Windows). */
  readonly parent?: number;
  /** Whether standard input is a pipe or a socket, which is then read here. */
  readonly takesInput: boolean;
  readonly pollMs: number;
  /** What the watched thread has to end by itself before it is ended. */
  readonly graceMs: number;
  /** A thread that answers nothing for so long is named as busy, with what it has in hand. */
  readonly budgetMs: number;
  /** What the watched thread has in hand. */
  readonly inHand: SharedInHand;
  /** Bytes that may wait for the watched thread; beyond them reading rests. */
  readonly mostWaiting: number;
}

/** From the watched thread. */
export type ToWatcher =
  | { readonly kind: "awake" }
  | { readonly kind: "took"; readonly bytes: number }
  | { readonly kind: "client"; readonly pid: number };

/** To the watched thread. */
export type FromWatcher =
  | { readonly kind: "chunk"; readonly bytes: Uint8Array }
  | { readonly kind: "input ended" }
  | { readonly kind: "end" }
  | { readonly kind: "awake?" };

export interface WatcherWorld {
  readonly port: MessagePort;
  readonly options: WatcherOptions;
  readonly fs: typeof fs;
  readonly net: typeof net;
}

export function watch({ port, options, fs, net }: WatcherWorld): void {
  const { own, parent, takesInput, pollMs, graceMs, budgetMs, mostWaiting } = options;
  const { memory, slotBytes, slotHeadBytes, startBytes } = options.inHand;
  const whole = new Int32Array(memory);
  const times = new Float64Array(memory);
  let client: number | undefined;
  let askedAt: number | undefined;
  let isNamed = false;
  let isEnding = false;
  let waiting = 0;
  const post = (message: FromWatcher, transfer: ArrayBuffer[] = []): void =>
    port.postMessage(message, transfer);
  const say = (text: string): void => {
    try {
      fs.writeSync(2, `finishwright: ${text}\n`);
    } catch {
      // Nobody reads it any more.
    }
  };
  const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;

  const end = (message: FromWatcher, why: string): void => {
    if (isEnding) return;
    isEnding = true;
    post(message);
    setTimeout(() => {
      say(`${why}, and the server is still busy, so it is ended.`);
      process.kill(own, "SIGKILL");
    }, graceMs);
  };

  const isAlive = (pid: number): boolean => {
    try {
      process.kill(pid, 0);
      return true;
    } catch (error) {
      // Somebody else's process cannot be signalled, and lives.
      return error instanceof Error && Reflect.get(error, "code") === "EPERM";
    }
  };

  /** The newest first. */
  const newestInHand = (most: number): readonly { readonly what: string; readonly since: number }[] => {
    const slots: { readonly id: number; readonly at: number }[] = [];
    for (let at = startBytes; at < memory.byteLength; at += slotBytes) {
      const id = Atomics.load(whole, at / 4 + 2);
      if (id !== 0) slots.push({ id, at });
    }
    slots.sort((a, b) => b.id - a.id);
    return slots.slice(0, most).map(({ at }) => {
      const start = at + slotHeadBytes;
      // A copy, since what is shared cannot be decoded where it lies.
      const bytes = new Uint8Array(memory).slice(start, start + whole[at / 4 + 3]!);
      return { what: new TextDecoder().decode(bytes), since: times[at / 8]! };
    });
  };

  const lookAfterBusy = (now: number): void => {
    if (askedAt === undefined) {
      if (Atomics.load(whole, 0) === 0) return;
      askedAt = now;
      post({ kind: "awake?" });
    } else if (!isNamed && now - askedAt >= budgetMs) {
      isNamed = true;
      const present = performance.timeOrigin + now;
      const named = newestInHand(3)
        .map(({ what, since }) => `${what} (since ${seconds(present - since)})`)
        .join(", ");
      say(`Busy for more than ${seconds(budgetMs)}; in hand: ${named}.`);
    }
  };

  setInterval(() => {
    if (parent !== undefined && (process.ppid !== parent || !isAlive(parent)))
      end({ kind: "end" }, "The process that started the server has ended");
    if (client !== undefined && !isAlive(client)) end({ kind: "end" }, "The editor has ended");
    lookAfterBusy(performance.now());
  }, pollMs);

  const input = takesInput ? new net.Socket({ fd: 0, readable: true, writable: false }) : undefined;
  input?.on("data", (chunk) => {
    const bytes = Uint8Array.from(chunk);
    waiting += bytes.length;
    if (waiting > mostWaiting) input.pause();
    post({ kind: "chunk", bytes }, [bytes.buffer]);
  });
  const inputEnded = (): void => end({ kind: "input ended" }, "The input was closed");
  input?.on("end", inputEnded);
  input?.on("error", inputEnded);
  input?.on("close", inputEnded);

  port.on("message", (message: ToWatcher) => {
    switch (message.kind) {
      case "awake":
        if (isNamed && askedAt !== undefined) say(`Back after ${seconds(performance.now() - askedAt)}.`);
        isNamed = false;
        askedAt = undefined;
        break;
      case "took":
        waiting -= message.bytes;
        if (waiting <= mostWaiting && input?.isPaused()) input.resume();
        break;
      case "client":
        client = message.pid;
    }
  });
}
