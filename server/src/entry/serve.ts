/**
 * Starts the language server in this process, for the editor that started it.
 *
 * The editor says on the command line how it wants to talk (`--node-ipc`, `--stdio`, `--pipe=…`, `--socket=…`), as is
 * usual for language servers; without a word it is standard input and output. An accident outside of any request is
 * logged and outlived: the next change is checked as if nothing had happened. A stream that cannot be read any more is
 * named, and ends the server.
 */

import { writeSync } from "node:fs";
import { createConnection as connect, type Socket } from "node:net";
import process from "node:process";
import { PassThrough, type Readable } from "node:stream";
import { parseArgs } from "node:util";
import {
  IPCMessageReader,
  IPCMessageWriter,
  type Message,
  type MessageReader,
  type MessageWriter,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import { errorText } from "../core/error-text.ts";
import { shownLines } from "../escape/shown-text.ts";
import { createConnection } from "../lsp/connection.ts";
import { createFraming } from "../lsp/framing.ts";
import { UnreadableMessage, withLifecycle } from "../lsp/lifecycle.ts";
import { runServer } from "../lsp/server.ts";
import { endProcess } from "./end-process.ts";
import { createIdleMemory } from "./idle-memory.ts";
import { nodeHost } from "./node-host.ts";
import { startWatchdog, type Watchdog } from "./watchdog.ts";

export const serve = (): void => {
  const way = wayOf(process.argv.slice(2));
  let exitCode = (): 0 | 1 => 1;
  const end = (): void => endProcess(exitCode());
  const watchdog = startWatchdog({
    overStdin: way.kind === "stdio",
    parentIsClient: way.kind === "ipc",
    onEnd: end,
  });
  const { reader, writer } = transportsOf(way, watchdog, (problem) => {
    say(`The messages cannot be read any more: ${problem} The server ends.`);
    process.exit(1);
  });
  const memory = createIdleMemory();
  const lifecycle = withLifecycle(reader, writer);
  const { listen } = lifecycle.reader;
  const touching: MessageReader = {
    ...lifecycle.reader,
    listen: (callback) =>
      listen((message) => {
        memory.touch();
        callback(message);
      }),
  };
  exitCode = lifecycle.exitCode;
  reader.onClose(end);
  process.on("disconnect", end);
  const connection = createConnection(touching, writer, () => process.exit(exitCode()));
  const survive = (error: unknown): void => {
    // Nobody listens any more, so there is nothing to live for and nobody to tell.
    if (error instanceof Error && Reflect.get(error, "code") === "EPIPE") process.exit(1);
    const text = errorText(error);
    connection.error(shownLines(`Unexpected: ${text}`));
  };
  process.on("uncaughtException", survive);
  process.on("unhandledRejection", survive);
  runServer(connection, {
    ...nodeHost(),
    watch: watchdog.begin,
    watchClient: watchdog.watchClient,
  });
};

type Way =
  | { readonly kind: "stdio" }
  | { readonly kind: "ipc" }
  | { readonly kind: "socket"; readonly port: number }
  | { readonly kind: "pipe"; readonly path: string };

function wayOf(args: readonly string[]): Way {
  const { values } = parseArgs({
    args: [...args],
    options: { "node-ipc": { type: "boolean" }, pipe: { type: "string" }, socket: { type: "string" } },
    strict: false,
  });
  if (values["node-ipc"] === true) return { kind: "ipc" };
  if (typeof values.pipe === "string") return { kind: "pipe", path: values.pipe };
  if (typeof values.socket === "string") return { kind: "socket", port: Number(values.socket) };
  return { kind: "stdio" };
}

interface Transports {
  readonly reader: MessageReader;
  readonly writer: MessageWriter;
}

function transportsOf(way: Way, watchdog: Watchdog, unreadable: (problem: string) => void): Transports {
  switch (way.kind) {
    case "ipc":
      return { reader: new IPCMessageReader(process), writer: new IPCMessageWriter(process) };
    case "stdio":
      return {
        reader: streamReader(watchdog.input ?? process.stdin, unreadable),
        writer: new StreamMessageWriter(process.stdout),
      };
    case "pipe":
      return overSocket(connect(way.path), unreadable);
    case "socket":
      return overSocket(connect(way.port, "127.0.0.1"), unreadable);
  }
}

const overSocket = (socket: Socket, unreadable: (problem: string) => void): Transports => ({
  reader: streamReader(socket, unreadable),
  writer: new StreamMessageWriter(socket),
});

function streamReader(input: Readable, unreadable: (problem: string) => void): MessageReader {
  const check = createFraming();
  const sound = new PassThrough();
  input.on("data", (chunk: Uint8Array) => {
    const problem = check(chunk);
    if (problem === undefined) sound.write(chunk);
    else unreadable(problem);
  });
  input.on("end", () => sound.end());
  input.on("close", () => sound.end());
  input.on("error", (error) => unreadable(`${error.message}.`));
  return new StreamMessageReader(sound, { contentTypeDecoder: { name: "application/json", decode } });
}

/** A body that is not JSON is answered by the protocol's code for it, and the next one may be. */
async function decode(bytes: Uint8Array): Promise<Message> {
  try {
    return JSON.parse(new TextDecoder().decode(bytes)) as Message;
  } catch {
    return new UnreadableMessage();
  }
}

function say(text: string): void {
  try {
    writeSync(2, `finishwright: ${shownLines(text)}\n`);
  } catch {
    // Nobody reads it any more.
  }
}
