/**
 * The built server as a process, spoken to in bare bytes, so that whatever goes wrong on a wire can be sent to it. What it
 * sends is read as messages; what it says on standard error is kept.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";
import process from "node:process";
import { fileURLToPath } from "node:url";

const SERVER = fileURLToPath(new URL("../../server/dist/server.cjs", import.meta.url));

export interface Message {
  readonly id?: number | string | null;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

export interface Wire {
  readonly pid: number;
  readonly received: readonly Message[];
  /** What came on standard error, and as a word on the log. */
  said(): string;
  readonly exited: Promise<void>;
  hasExited(): boolean;
  send(bytes: string | Uint8Array): void;
  /** Resolves when a message like this has come. */
  waitFor(isMeant: (message: Message) => boolean): Promise<void>;
  closeInput(): void;
  kill(): void;
}

/** A message with its header, as it should be. */
export const framed = (message: unknown): string => {
  const body = JSON.stringify(message);
  return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
};

export function startWire(cwd?: string): Wire {
  if (!existsSync(SERVER)) throw new Error("There is no built server: run `npm run build` first.");
  const child: ChildProcess = spawn(process.execPath, ["--max-old-space-size=2048", SERVER, "--stdio"], {
    stdio: ["pipe", "pipe", "pipe"],
    ...(cwd === undefined ? {} : { cwd }),
  });
  const received: Message[] = [];
  const waiting = new Set<{ isMeant: (message: Message) => boolean; wake: () => void }>();
  let stderr = "";
  let buffer = Buffer.alloc(0);
  child.stderr!.on("data", (chunk: Buffer) => {
    stderr += chunk.toString();
  });
  child.stdout!.on("data", (chunk: Buffer) => {
    buffer = Buffer.concat([buffer, chunk]);
    for (;;) {
      const header = buffer.indexOf("\r\n\r\n");
      if (header < 0) return;
      const length = Number(/Content-Length: (\d+)/i.exec(buffer.subarray(0, header).toString())?.[1]);
      if (buffer.length < header + 4 + length) return;
      const message: Message = JSON.parse(buffer.subarray(header + 4, header + 4 + length).toString());
      buffer = buffer.subarray(header + 4 + length);
      received.push(message);
      for (const one of waiting) {
        if (!one.isMeant(message)) continue;
        waiting.delete(one);
        one.wake();
      }
    }
  });
  // Whoever has gone reads no more; that it went is seen elsewhere.
  child.stdin!.on("error", () => {});
  const exited = once(child, "exit").then(() => {});
  const logged = (): string =>
    received
      .filter(({ method }) => method === "window/logMessage")
      .map(({ params }) => String((params as { message?: unknown } | undefined)?.message))
      .join("\n");
  return {
    pid: child.pid!,
    received,
    said: () => `${stderr}${logged()}`,
    exited,
    hasExited: () => child.exitCode !== null || child.signalCode !== null,
    send: (bytes) => {
      if (child.stdin!.writable) child.stdin!.write(bytes);
    },
    waitFor: (isMeant) =>
      new Promise((resolve) => {
        if (received.some(isMeant)) resolve();
        else waiting.add({ isMeant, wake: resolve });
      }),
    closeInput: () => child.stdin!.end(),
    kill: () => child.kill("SIGKILL"),
  };
}
