/**
 * What the server and the project's own extension say to each other beyond the protocol.
 *
 * Names and plain types, for both ends: this is the only module of the server that the extension imports. Whatever is
 * asked for here a client may leave unanswered; it says in `initializationOptions` what it answers.
 */
import type { ReadFailure } from "../reading/reasons.ts";

/** What a client may say of itself when it starts the server. */
export interface InitializationOptions {
  /** It answers `FIND_FILES`. */
  readonly findFiles?: boolean;
  /** It answers `READ_FILE`. */
  readonly readFile?: boolean;
  /** A URI such that `/RULE.md` behind it is the page of a rule, for a server that lies beside no pages. */
  readonly rulePages?: string;
}

/** Server to client: the recipes of the open folders, as a list of URIs. */
export const FIND_FILES = "finishwright/findFiles";

export interface FindFilesParams {
  /** No more than so many are of use. */
  readonly limit: number;
}

/** Server to client: the bytes of a file that the server cannot read by itself, such as one of a virtual folder. */
export const READ_FILE = "finishwright/readFile";

export interface ReadFileParams {
  readonly uri: string;
  /** A larger file is not sent. */
  readonly maxBytes: number;
}

export type ReadFileResult =
  | { readonly base64: string }
  | { readonly failure: Exclude<ReadFailure, "silent">; readonly detail?: string };

/** A server in a Web Worker posts this word, outside of the protocol, when it is loaded and listens. */
export const WORKER_IS_READY = "finishwright/ready";
