/**
 * The connection to the client: requests and notifications over `vscode-jsonrpc`, and of the protocol what a server owes
 * whatever it is asked for (`initialize`, `shutdown`, `exit`, the log).
 *
 * Handlers are registered by method, so nothing is needed of the features that `vscode-languageserver` puts around the
 * same connection; they were an eighth of what a start had to load. What may come when is decided before, in `lifecycle.ts`.
 */
import {
  createMessageConnection,
  type Logger,
  type MessageConnection,
  type MessageReader,
  type MessageWriter,
} from "vscode-jsonrpc";
import type {
  ConfigurationParams,
  InitializeParams,
  InitializeResult,
  LogMessageParams,
  PublishDiagnosticsParams,
  RegistrationParams,
} from "vscode-languageserver";
import { METHODS, MessageType } from "./protocol.ts";

export interface Connection {
  /** A handler is given the parameters as they came, and a token behind them. */
  onRequest(method: string, handle: (...given: readonly unknown[]) => unknown): void;
  onNotification(method: string, handle: (...given: readonly unknown[]) => void): void;
  onInitialize(answer: (params: InitializeParams) => InitializeResult): void;
  onInitialized(take: () => void): void;
  sendRequest(method: string, params?: object): Promise<unknown>;
  sendNotification(method: string, params?: object): Promise<void>;
  sendDiagnostics(params: PublishDiagnosticsParams): Promise<void>;
  /** The client's settings of a section; null where it answers nothing. */
  configuration(section: string): Promise<unknown>;
  /** Asks the client for notifications that it does not send by itself. */
  register(method: string, registerOptions: object): Promise<void>;
  /** Into the client's log. What cannot be sent any more is lost: there is nobody to tell. */
  error(message: string): void;
  warn(message: string): void;
  listen(): void;
}

/** `onExit` is called when the client tells the server to end. Import `vscode-jsonrpc` for Node or for browsers before. */
export const createConnection = (
  reader: MessageReader,
  writer: MessageWriter,
  onExit: () => void,
): Connection => {
  const toLog =
    (type: LogMessageParams["type"]) =>
    (message: string): void => {
      messages.sendNotification(METHODS.log, { type, message }).catch(() => {});
    };
  const logger: Logger = {
    error: toLog(MessageType.Error),
    warn: toLog(MessageType.Warning),
    info: toLog(MessageType.Info),
    log: toLog(MessageType.Log),
  };
  const messages: MessageConnection = createMessageConnection(reader, writer, logger);
  messages.onRequest(METHODS.shutdown, () => null);
  messages.onNotification(METHODS.exit, onExit);
  let registered = 0;
  const sendRequest = (method: string, params?: object): Promise<unknown> =>
    params === undefined ? messages.sendRequest(method) : messages.sendRequest(method, params);
  const sendNotification = (method: string, params?: object): Promise<void> =>
    params === undefined ? messages.sendNotification(method) : messages.sendNotification(method, params);
  return {
    onRequest: (method, handle) => void messages.onRequest(method, handle),
    onNotification: (method, handle) => void messages.onNotification(method, handle),
    onInitialize: (answer) =>
      void messages.onRequest(METHODS.initialize, (params: InitializeParams) => answer(params)),
    onInitialized: (take) => void messages.onNotification(METHODS.initialized, take),
    sendRequest,
    sendNotification,
    sendDiagnostics: (params) => sendNotification(METHODS.publish, params),
    async configuration(section) {
      const params: ConfigurationParams = { items: [{ section }] };
      const answer = await sendRequest(METHODS.configuration, params);
      return Array.isArray(answer) ? answer[0] : null;
    },
    async register(method, registerOptions) {
      registered += 1;
      const params: RegistrationParams = {
        registrations: [{ id: `${method} ${registered}`, method, registerOptions }],
      };
      await sendRequest(METHODS.register, params);
    },
    error: logger.error,
    warn: logger.warn,
    listen: () => messages.listen(),
  };
};
