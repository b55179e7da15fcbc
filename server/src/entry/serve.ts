/**
 * Starts the language server in this process, for the editor that started it.
 *
 * The editor says on the command line how it wants to talk (`--node-ipc`, `--stdio`, `--pipe=…`, `--socket=…`), as is
 * usual for language servers; without a word it is standard input and output. An accident outside of any request is
 * logged and outlived: the next change is checked as if nothing had happened.
 */
import process from "node:process";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { shownLines } from "../escape/shown-text.ts";
import { runServer } from "../lsp/server.ts";
import { nodeHost } from "./node-host.ts";

const TRANSPORT = /^--(?:node-ipc|stdio|pipe|socket)(?:=|$)/;

export const serve = (): void => {
  if (!process.argv.some((argument) => TRANSPORT.test(argument))) process.argv.push("--stdio");
  const connection = createConnection(ProposedFeatures.all);
  const survive = (error: unknown): void => {
    // Nobody listens any more, so there is nothing to live for and nobody to tell.
    if (error instanceof Error && Reflect.get(error, "code") === "EPIPE") process.exit(1);
    const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
    connection.console.error(shownLines(`Unexpected: ${text}`));
  };
  process.on("uncaughtException", survive);
  process.on("unhandledRejection", survive);
  runServer(connection, nodeHost());
};
