/**
 * What the server says to its client and hears from it: messages by their methods, over JSON-RPC (`vscode-jsonrpc`).
 *
 * It answers `initialize` and `shutdown` and tells of `exit`; all other methods are registered by name. What may come when
 * is judged before it, in `lifecycle.ts`.
 */
import { createMessageConnection, type MessageReader, type MessageWriter } from "vscode-jsonrpc";
import {
  CONFIGURATION,
  type Diagnostic,
  type InitializeParams,
  type InitializeResult,
  LOG_MESSAGE,
  MessageType,
  PUBLISH_DIAGNOSTICS,
  REGISTER_CAPABILITY,
} from "./protocol.ts";

/** Gets the parameters, of which there may be none or a list, and for a request a token behind them. */
type Listener = (...given: readonly unknown[]) => unknown;
/** The same; nobody waits for what comes of it. */
type Taker = (...given: readonly unknown[]) => void | Promise<void>;

export interface Connection {
  onInitialize(answer: (params: InitializeParams) => InitializeResult): void;
  onInitialized(take: Taker): void;
  onExit(take: () => void): void;
  onRequest(method: string, answer: Listener): void;
  onNotification(method: string, take: Taker): void;
  /** Resolves with the client's answer, and rejects where it refuses. */
  sendRequest<T>(method: string, params?: object): Promise<T>;
  sendNotification(method: string, params?: object): Promise<void>;
  sendDiagnostics(params: {
    readonly uri: string;
    readonly version?: number;
    readonly diagnostics: readonly Diagnostic[];
  }): Promise<void>;
  /** Asks the client to tell of something from now on; it is never taken back. */
  register(method: string, registerOptions: object): Promise<void>;
  /** The client's settings of a section. */
  settings(section: string): Promise<unknown>;
  /** Into the client's log. */
  readonly console: {
    error(message: string): void;
    warn(message: string): void;
  };
  /** From here on messages are taken. */
  listen(): void;
}

export function createConnection(reader: MessageReader, writer: MessageWriter): Connection {
  const logging =
    (type: MessageType) =>
    (message: string): void => {
      // Where nothing can be written any more there is nobody to tell.
      rpc.sendNotification(LOG_MESSAGE, { type, message }).catch(() => {});
    };
  const console = {
    error: logging(MessageType.Error),
    warn: logging(MessageType.Warning),
    info: logging(MessageType.Info),
    log: logging(MessageType.Log),
  };
  const rpc = createMessageConnection(reader, writer, console);
  let registered = 0;
  const connection: Connection = {
    onInitialize: (answer) => void rpc.onRequest("initialize", answer),
    onInitialized: (take) => void rpc.onNotification("initialized", take),
    onExit: (take) => void rpc.onNotification("exit", take),
    onRequest: (method, answer) => void rpc.onRequest(method, answer),
    onNotification: (method, take) => void rpc.onNotification(method, take),
    sendRequest: (method, params) =>
      params === undefined ? rpc.sendRequest(method) : rpc.sendRequest(method, params),
    sendNotification: (method, params) =>
      params === undefined ? rpc.sendNotification(method) : rpc.sendNotification(method, params),
    sendDiagnostics: (params) => connection.sendNotification(PUBLISH_DIAGNOSTICS, params),
    async register(method, registerOptions) {
      registered += 1;
      const registrations = [{ id: `${method} ${registered}`, method, registerOptions }];
      await connection.sendRequest(REGISTER_CAPABILITY, { registrations });
    },
    async settings(section) {
      const answers = await connection.sendRequest<unknown>(CONFIGURATION, { items: [{ section }] });
      return Array.isArray(answers) ? answers[0] : undefined;
    },
    console,
    listen: () => rpc.listen(),
  };
  rpc.onRequest("shutdown", () => null);
  return connection;
}
