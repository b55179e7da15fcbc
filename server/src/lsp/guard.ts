/**
 * The wall between what a client sends and what the server does with it.
 *
 * Every handler goes through here: an exception is logged and answered with a fallback instead of ending the server or
 * showing an error to somebody who was only typing, and a cancelled request is answered as cancelled, at once.
 */

import type { CancellationToken } from "vscode-languageserver";
import { errorText } from "../core/error-text.ts";
import { LSPErrorCodes, ResponseError } from "./protocol.ts";

export type Log = (message: string) => void;

export type RequestHandler<P, R> = (params: P, token: CancellationToken) => R | Promise<R>;

/** A request handler that never throws and answers `fallback`, which may be an error, where `handler` fails. */
export const guardRequest =
  <P, R>(name: string, fallback: R | ResponseError<unknown>, handler: RequestHandler<P, R>, log: Log) =>
  async (params: P, token: CancellationToken): Promise<R | ResponseError<unknown>> => {
    try {
      throwIfCancelled(token);
      return await handler(params, token);
    } catch (error) {
      if (error instanceof ResponseError) return error;
      log(`${name} failed: ${errorText(error)}`);
      return fallback;
    }
  };

/** A notification handler that never throws. */
export const guardNotification =
  <P>(name: string, handler: (params: P) => void | Promise<void>, log: Log) =>
  async (params: P): Promise<void> => {
    try {
      await handler(params);
    } catch (error) {
      log(`${name} failed: ${errorText(error)}`);
    }
  };

/** To be called between the parts of long work. */
export const throwIfCancelled = (token: CancellationToken): void => {
  if (token.isCancellationRequested) {
    throw new ResponseError(LSPErrorCodes.RequestCancelled, "The request was cancelled.");
  }
};

/** Lets waiting messages, cancellations among them, come in before the work goes on. */
export const yieldToMessages = (): Promise<void> =>
  new Promise((resolve) => {
    if (typeof setImmediate === "function") setImmediate(resolve);
    else postToOneself(resolve);
  });

/** For browsers, which have no `setImmediate`, and make timers in a row wait. */
const postToOneself = (wake: () => void): void => {
  const { port1, port2 } = new MessageChannel();
  const take = (): void => {
    port1.close();
    wake();
  };
  port1.addEventListener("message", take);
  port1.start();
  port2.postMessage(undefined);
};
