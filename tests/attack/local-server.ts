/** A language server in this process with the real analysis and an empty disk, and a plain client of it. */
import { PassThrough } from "node:stream";
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { createConnection } from "../../server/src/lsp/connection.ts";
import type { Host } from "../../server/src/lsp/host.ts";
import { runServer } from "../../server/src/lsp/server.ts";

export interface LocalServer {
  readonly client: MessageConnection;
  /** What it said on its log as an error. */
  readonly logged: readonly string[];
  /** Methods of the notifications and requests that it sent. */
  stop(): void;
}

export const CAPABILITIES = {
  workspace: {
    workspaceFolders: true,
    workspaceEdit: { documentChanges: true },
    fileOperations: { willRename: true },
  },
  textDocument: {
    diagnostic: { relatedInformation: true },
    hover: { contentFormat: ["markdown"] },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix"] } } },
    rename: { prepareSupport: true },
  },
};

export async function startLocalServer(readFromDisk: Host["readFromDisk"] = nothing): Promise<LocalServer> {
  const [toServer, toClient] = [new PassThrough(), new PassThrough()];
  const server = createConnection(
    new StreamMessageReader(toServer),
    new StreamMessageWriter(toClient),
    () => {},
  );
  runServer(server, { version: "0.0.0", createAnalyst, readFromDisk, rulePage: () => undefined });
  const client = createMessageConnection(
    new StreamMessageReader(toClient),
    new StreamMessageWriter(toServer),
  );
  const logged: string[] = [];
  client.onNotification("window/logMessage", ({ message, type }) => {
    if (type === 1) logged.push(message);
  });
  client.onRequest(() => null);
  client.listen();
  await client.sendRequest("initialize", { processId: null, rootUri: null, capabilities: CAPABILITIES });
  await client.sendNotification("initialized", {});
  return {
    client,
    logged,
    stop() {
      client.dispose();
      toServer.destroy();
      toClient.destroy();
    },
  };
}

const nothing = async (): Promise<{ readonly reason: string }> => ({ reason: "it does not exist" });
