/**
 * A language client for tests, joined to the server in this process by two streams.
 *
 * It keeps every message that the server sends. A test takes those that it expects, waiting for them by name, and
 * `end` fails on any that nobody took: a message too many is a mistake just as one too few.
 */
import { PassThrough } from "node:stream";
import { expect } from "vitest";
import {
  type ClientCapabilities,
  createMessageConnection,
  type Diagnostic,
  type DocumentDiagnosticReport,
  type InitializeParams,
  type InitializeResult,
  type MessageReader,
  type MessageWriter,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { createConnection } from "../../server/src/lsp/connection.ts";
import type { Host } from "../../server/src/lsp/host.ts";
import { withLifecycle } from "../../server/src/lsp/lifecycle.ts";
import { runServer } from "../../server/src/lsp/server.ts";
import { fakeAnalyst } from "./fake-analyst.ts";

/** What VS Code says that matters to this server. */
export const VSCODE: ClientCapabilities = {
  workspace: {
    configuration: true,
    workspaceFolders: true,
    didChangeConfiguration: { dynamicRegistration: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
    diagnostics: { refreshSupport: true },
    workspaceEdit: { documentChanges: true },
    fileOperations: { willRename: true },
  },
  textDocument: {
    diagnostic: {
      dynamicRegistration: true,
      relatedInformation: true,
      codeDescriptionSupport: true,
      tagSupport: { valueSet: [1, 2] },
    },
    publishDiagnostics: { relatedInformation: true, codeDescriptionSupport: true },
    hover: { contentFormat: ["markdown", "plaintext"] },
    completion: {
      completionItem: { snippetSupport: true, labelDetailsSupport: true, documentationFormat: ["markdown"] },
    },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    definition: { linkSupport: true },
    rename: { prepareSupport: true },
    documentLink: { tooltipSupport: true },
    codeAction: {
      codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix"] } },
      isPreferredSupport: true,
    },
  },
};

/** A client that says nothing about itself. */
export const MINIMAL: ClientCapabilities = {};

const MILL = ["file:///shop", "vscode-vfs://github/mill"];

export interface Setup {
  readonly capabilities?: ClientCapabilities;
  /** The disk, by URI. Tests change it. */
  readonly disk?: Map<string, string>;
  readonly settings?: unknown;
  /** The folders that are open; without it the mill's, on disk and elsewhere. */
  readonly openFolders?: readonly string[];
  /** The answer to `finishwright/findFiles`; without it the client does not say that it answers. */
  readonly folderFiles?: readonly string[] | Promise<readonly string[]>;
  /** The answer to `finishwright/readFile` for a URI; without it the client does not say that it answers. */
  readonly handOut?: (uri: string) => unknown;
  /** Where the client shows the pages of the rules. */
  readonly rulePages?: string;
  readonly pageTitles?: boolean;
  /** What else the client says of itself. */
  readonly initializationOptions?: Readonly<Record<string, unknown>>;
  readonly host?: Partial<Host>;
  /** The language of the client; without it the client says none. */
  readonly locale?: string;
  /** The server is a process of its own, and is told to exit at the end. */
  readonly hasOwnProcess?: true;
}

interface Message {
  readonly method: string;
  readonly params: unknown;
}

export interface Client {
  readonly initialized: InitializeResult;
  request<R>(method: string, params: unknown): Promise<R>;
  notify(method: string, params: unknown): Promise<void>;
  /** The next message of the server with this method, waiting for it if need be. */
  take<P>(method: string): Promise<P>;
  open(uri: string, text: string): Promise<void>;
  /** Replaces the whole text. */
  change(uri: string, version: number, text: string): Promise<void>;
  close(uri: string): Promise<void>;
  pull(uri: string, previousResultId?: string): Promise<DocumentDiagnosticReport>;
  /** Pulls, and draws every finding as `line:column-line:column rule: message`, from 0 as the protocol counts. */
  findings(uri: string): Promise<readonly string[]>;
  pushed(): Promise<PublishDiagnosticsParams>;
  setSettings(settings: unknown): void;
  /** Fails if the server sent anything that no test took. */
  end(): Promise<void>;
}

/** A client of a server in this process. */
export const startClient = (setup: Setup = {}): Promise<Client> => {
  const toServer = new PassThrough();
  const toClient = new PassThrough();
  const disk = setup.disk ?? new Map<string, string>();
  const writer = new StreamMessageWriter(toClient);
  const { reader } = withLifecycle(new StreamMessageReader(toServer), writer);
  runServer(
    createConnection(reader, writer, () => {}),
    {
      ...memoryHost(disk),
      ...setup.host,
    },
  );
  return joinServer(new StreamMessageReader(toClient), new StreamMessageWriter(toServer), setup);
};

/** A client of a server that listens at the other end of these. */
export const joinServer = async (
  reader: MessageReader,
  writer: MessageWriter,
  setup: Omit<Setup, "disk" | "host">,
): Promise<Client> => {
  const connection = createMessageConnection(reader, writer);
  const inbox = createInbox();
  let settings = setup.settings;
  connection.onNotification((method, params) => inbox.put({ method, params }));
  connection.onUnhandledProgress((params) => inbox.put({ method: "$/progress", params }));
  connection.onRequest((method, params) => {
    if (method === "workspace/configuration") return [settings];
    if (method === "finishwright/findFiles") return setup.folderFiles;
    if (method === "finishwright/readFile") return setup.handOut?.(Reflect.get(params ?? {}, "uri"));
    inbox.put({ method, params });
    return null;
  });
  connection.listen();

  const capabilities = setup.capabilities ?? VSCODE;
  const params: InitializeParams = {
    processId: null,
    rootUri: null,
    workspaceFolders: (setup.openFolders ?? MILL).map((uri) => ({ uri, name: "mill" })),
    capabilities,
    ...(setup.locale !== undefined && { locale: setup.locale }),
    initializationOptions: {
      ...setup.initializationOptions,
      findFiles: setup.folderFiles !== undefined,
      readFile: setup.handOut !== undefined,
      ...(setup.rulePages !== undefined && { rulePages: setup.rulePages }),
      ...(setup.pageTitles !== undefined && { pageTitles: setup.pageTitles }),
    },
  };
  const initialized: InitializeResult = await connection.sendRequest("initialize", params);
  await connection.sendNotification("initialized", {});
  const client: Client = {
    initialized,
    request: (method, requestParams) => connection.sendRequest(method, requestParams),
    notify: (method, notificationParams) => connection.sendNotification(method, notificationParams),
    take: (method) => inbox.take(method),
    open: (uri, text) =>
      client.notify("textDocument/didOpen", {
        textDocument: { uri, languageId: "finish", version: 1, text },
      }),
    change: (uri, version, text) =>
      client.notify("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges: [{ text }],
      }),
    close: (uri) => client.notify("textDocument/didClose", { textDocument: { uri } }),
    pull: (uri, previousResultId) =>
      client.request("textDocument/diagnostic", { textDocument: { uri }, previousResultId }),
    async findings(uri) {
      const report = await client.pull(uri);
      return report.kind === "full" ? report.items.map(drawDiagnostic) : ["unchanged"];
    },
    pushed: () => client.take("textDocument/publishDiagnostics"),
    setSettings(value) {
      settings = value;
    },
    async end() {
      await connection.sendRequest("shutdown");
      // A server in this process would take the tests with it.
      if (setup.hasOwnProcess) await connection.sendNotification("exit");
      connection.dispose();
      expect(inbox.rest()).toEqual([]);
    },
  };
  if (capabilities.workspace?.didChangeConfiguration?.dynamicRegistration) {
    await client.take("client/registerCapability");
    await client.take("client/registerCapability");
  }
  return client;
};

export const drawDiagnostic = ({ range: { start, end }, code, message }: Diagnostic): string =>
  `${start.line}:${start.character}-${end.line}:${end.character} ${code}: ${message}`;

const memoryHost = (disk: ReadonlyMap<string, string>): Host => ({
  version: "0.0.0-test",
  createAnalyst: fakeAnalyst,
  async readFromDisk(uri) {
    const text = disk.get(uri);
    return text === undefined ? { reason: "there is no such file" } : { text };
  },
  rulePage: (rule) => `https://example.org/${rule}`,
});

interface Inbox {
  put(message: Message): void;
  take<P>(method: string): Promise<P>;
  rest(): readonly Message[];
}

const createInbox = (): Inbox => {
  const messages: Message[] = [];
  const waiting: { readonly method: string; readonly wake: (params: unknown) => void }[] = [];
  return {
    put(message) {
      const index = waiting.findIndex(({ method }) => method === message.method);
      if (index < 0) messages.push(message);
      else waiting.splice(index, 1)[0]?.wake(message.params);
    },
    take<P>(method: string) {
      const index = messages.findIndex((message) => message.method === method);
      const [found] = index < 0 ? [] : messages.splice(index, 1);
      if (found !== undefined) return Promise.resolve(found.params as P);
      return new Promise<P>((resolve) => {
        waiting.push({ method, wake: (params) => resolve(params as P) });
      });
    },
    rest: () => messages,
  };
};
