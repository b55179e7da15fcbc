/**
 * What may come when, by the protocol: nothing before `initialize`, `initialize` once, nothing but `exit` after `shutdown`.
 *
 * It stands before the connection, which leaves all of this to the server. A request out of turn is answered with the
 * code that the protocol has for it, a notification out of turn is dropped, and what is no message at all is answered as
 * such; the rest is handed on.
 */
import type { DataCallback, Message, MessageReader, MessageWriter } from "vscode-languageserver";
import * as z from "zod/mini";
import { ErrorCodes } from "./protocol.ts";

/** What a reader hands on in the place of a message that is not JSON. */
export class UnreadableMessage implements Message {
  readonly jsonrpc = "2.0";
}

export interface Lifecycle {
  /** To be listened to in the place of the reader that was given. */
  readonly reader: MessageReader;
  /** The status that the process ends with: 0 once the client has asked for the shutdown, else 1. */
  exitCode(): 0 | 1;
}

/** `reader` without the messages that have no place; `writer` answers the requests among them. */
export const withLifecycle = (reader: MessageReader, writer: MessageWriter): Lifecycle => {
  let state: State = "new";
  const take = (message: unknown): Refused | "pass" | "drop" => {
    const verdict = judge(state, message);
    if (verdict === "pass") state = stateAfter(state, message);
    return verdict;
  };
  return {
    reader: {
      onError: reader.onError,
      onClose: reader.onClose,
      onPartialMessage: reader.onPartialMessage,
      dispose: () => reader.dispose(),
      listen: (callback: DataCallback) =>
        reader.listen((message) => {
          const verdict = take(message);
          if (verdict === "pass") callback(message);
          // Where nothing can be written any more, the reader ends as well, and the process with it.
          else if (verdict !== "drop")
            writer.write({ jsonrpc: "2.0", ...verdict } as Message).catch(() => {});
        }),
    },
    exitCode: () => (state === "shut down" ? 0 : 1),
  };
};

type State = "new" | "running" | "shut down";

interface Refused {
  readonly id: string | number | null;
  readonly error: { readonly code: number; readonly message: string };
}

const REQUEST = z.looseObject({ method: z.string(), id: z.union([z.string(), z.number()]) });
const NOTIFICATION = z.looseObject({ method: z.string(), id: z.optional(z.undefined()) });
const RESPONSE = z.looseObject({
  method: z.optional(z.undefined()),
  id: z.union([z.string(), z.number(), z.null()]),
});

const INITIALIZE = z.looseObject({
  processId: z.optional(z.union([z.number(), z.null()])),
  capabilities: z.looseObject({}),
});

/** Notifications that the connection itself takes, and for which it wants these. */
const TAKEN_BY_THE_CONNECTION: Readonly<Record<string, z.ZodMiniType>> = {
  "$/cancelRequest": z.looseObject({ id: z.union([z.string(), z.number()]) }),
  "$/progress": z.looseObject({ token: z.union([z.string(), z.number()]) }),
  "$/setTrace": z.looseObject({ value: z.string() }),
  "window/workDoneProgress/cancel": z.looseObject({ token: z.union([z.string(), z.number()]) }),
};

const refused = (id: Refused["id"], code: number, message: string): Refused => ({
  id,
  error: { code, message },
});

function judge(state: State, message: unknown): Refused | "pass" | "drop" {
  if (message instanceof UnreadableMessage)
    return refused(null, ErrorCodes.ParseError, "The message is not JSON.");
  const request = REQUEST.safeParse(message).data;
  if (request) return judgeRequest(state, request);
  const notification = NOTIFICATION.safeParse(message).data;
  if (notification) return judgeNotification(state, notification);
  if (RESPONSE.safeParse(message).success) return "pass";
  return refused(
    null,
    ErrorCodes.InvalidRequest,
    "This is neither a request, a notification nor a response.",
  );
}

function judgeRequest(state: State, { id, method, params }: z.infer<typeof REQUEST>): Refused | "pass" {
  if (state === "shut down")
    return refused(id, ErrorCodes.InvalidRequest, "The server was shut down; only `exit` may follow.");
  if (method === "initialize") {
    if (state !== "new") return refused(id, ErrorCodes.InvalidRequest, "`initialize` may be sent only once.");
    return INITIALIZE.safeParse(params).success
      ? "pass"
      : refused(id, ErrorCodes.InvalidParams, "`initialize` needs an object with `capabilities`.");
  }
  return state === "new"
    ? refused(id, ErrorCodes.ServerNotInitialized, "`initialize` has to come first.")
    : "pass";
}

function judgeNotification(state: State, { method, params }: z.infer<typeof NOTIFICATION>): "pass" | "drop" {
  if (method === "exit") return "pass";
  if (state !== "running") return "drop";
  const wanted = Object.hasOwn(TAKEN_BY_THE_CONNECTION, method) && TAKEN_BY_THE_CONNECTION[method];
  return wanted && !wanted.safeParse(params).success ? "drop" : "pass";
}

function stateAfter(state: State, message: unknown): State {
  const method = REQUEST.safeParse(message).data?.method;
  if (method === "initialize") return "running";
  return method === "shutdown" ? "shut down" : state;
}
