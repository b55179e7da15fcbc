/**
 * The built server over its real streams, spoken to byte by byte: for what no well-behaved client sends.
 */
import { type ChildProcessByStdio, spawn } from "node:child_process";
import { once } from "node:events";
import process from "node:process";
import type { Readable, Writable } from "node:stream";
import { fileURLToPath } from "node:url";

export const SERVER = fileURLToPath(new URL("../../server/dist/server.cjs", import.meta.url));

export interface RawMessage {
  readonly id?: string | number | null;
  readonly method?: string;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

export interface RawServer {
  readonly process: ChildProcessByStdio<Writable, Readable, Readable>;
  /** Sends a value as a message, whatever it is. */
  send(message: unknown): void;
  /** Sends these bytes. */
  write(bytes: string): void;
  /** The next answer with this id. */
  answer(id: string | number | null): Promise<RawMessage>;
  /** Code and signal with which the process ended. */
  readonly ended: Promise<readonly [number | null, NodeJS.Signals | null]>;
  /** What it said on standard error so far. */
  log(): string;
}

export const framed = (message: unknown): string => {
  const body = JSON.stringify(message);
  return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
};

export function startRaw(args: readonly string[] = ["--stdio"]): RawServer {
  const child = spawn(process.execPath, [SERVER, ...args], { stdio: ["pipe", "pipe", "pipe"] });
  const answers: RawMessage[] = [];
  const waiting: (() => void)[] = [];
  let buffer = Buffer.alloc(0);
  let log = "";
  child.stderr.on("data", (chunk: Buffer) => {
    log += chunk.toString();
  });
  // A server that has ended reads nothing any more.
  child.stdin.on("error", () => {});
  child.stdout.on("data", (chunk: Buffer) => {
    buffer = Buffer.concat([buffer, chunk]);
    for (;;) {
      const header = /^Content-Length: (\d+)\r\n\r\n/.exec(buffer.toString("latin1"));
      const end = header ? header[0].length + Number(header[1]) : Number.POSITIVE_INFINITY;
      if (!header || buffer.length < end) break;
      answers.push(JSON.parse(buffer.subarray(header[0].length, end).toString("utf8")));
      buffer = buffer.subarray(end);
    }
    for (const wake of waiting.splice(0)) wake();
  });
  const server: RawServer = {
    process: child,
    send: (message) => server.write(framed(message)),
    write: (bytes) => void child.stdin.write(bytes),
    async answer(id) {
      for (;;) {
        const index = answers.findIndex((message) => message.id === id && message.method === undefined);
        const [found] = index < 0 ? [] : answers.splice(index, 1);
        if (found) return found;
        await new Promise<void>((resolve) => waiting.push(resolve));
      }
    },
    ended: once(child, "exit") as Promise<[number | null, NodeJS.Signals | null]>,
    log: () => log,
  };
  return server;
}
