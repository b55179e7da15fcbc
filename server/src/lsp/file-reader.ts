/**
 * The texts of files that are not open, by whichever way leads to them.
 *
 * Files on disk are read by the host, where it has a disk. All others (those of a virtual folder; in a browser every
 * one) are asked of the client, if it said that it hands them out. What cannot be had is an answer in words, also where
 * the client refuses, answers nonsense, or not at all; and so is what may not be read.
 */

import * as z from "zod/mini";
import { t } from "../../../grammar/src/translate.ts";
import { decodeText } from "../reading/decode-text.ts";
import { type Purpose, refusalOf } from "../reading/may-read.ts";
import { within } from "../reading/patience.ts";
import { maxBytesOf, reasonOf, tooLarge } from "../reading/reasons.ts";
import type { AllowedFolders } from "./allowed-folders.ts";
import type { ClientFacts } from "./client-facts.ts";
import type { Connection } from "./connection.ts";
import { READ_FILE, type ReadFileParams } from "./custom-requests.ts";
import type { Host, ReadBytes, ReadResult } from "./host.ts";
import { isDiskFile, isUnsaved } from "./uri.ts";

/** Findings wait for the used files, so nobody waits longer for one of them than this. */
const PATIENCE_MS = { disk: 10_000, client: 20_000 } as const;

export interface FileReader {
  /** Why a file is not read at all; undefined where one can try. */
  outOfReach(uri: string, purpose: Purpose): string | undefined;
  read(uri: string, purpose: Purpose): Promise<ReadResult>;
  /** The bytes of a picture, or why there are none, as the end of a sentence. */
  readPicture(uri: string): Promise<ReadBytes>;
}

/** `facts` are asked each time, since the client introduces itself only after the server has been put together. */
export const createFileReader = (
  host: Host,
  connection: Connection,
  facts: () => ClientFacts,
  allowed: AllowedFolders,
  patienceMs: { readonly disk: number; readonly client: number } = PATIENCE_MS,
): FileReader => {
  const fromDisk = (uri: string) => (isDiskFile(uri) ? host.readFromDisk : undefined);

  const outOfReach = (uri: string, purpose: Purpose): string | undefined => {
    if (isUnsaved(uri)) return t`this text has not been saved yet, so it lies in no folder. Save it first`;
    const refusal = refusalOf(uri, allowed.permit(purpose));
    if (refusal !== undefined) return t`it ${refusal}`;
    return fromDisk(uri) !== undefined || facts().readsFiles
      ? undefined
      : t`it is not on this machine's disk`;
  };

  return {
    outOfReach,
    async read(uri, purpose) {
      const reason = outOfReach(uri, purpose);
      if (reason !== undefined) return { reason };
      const read = fromDisk(uri);
      if (read === undefined) return askClient(connection, uri, purpose, patienceMs.client);
      const result = await within(patienceMs.disk, read(uri, allowed.permit(purpose)));
      if ("late" in result) return withSubject(reasonOf("late"));
      return "failed" in result ? withSubject(reasonOf("other", result.failed)) : result.value;
    },
    async readPicture(uri) {
      if (isUnsaved(uri)) return { reason: t`has no place, as this text has not been saved yet` };
      const permit = allowed.permit("picture");
      const refusal = refusalOf(uri, permit);
      if (refusal !== undefined) return { reason: refusal };
      if (isDiskFile(uri) && host.readPicture) {
        const result = await within(patienceMs.disk, host.readPicture(uri, permit));
        if ("late" in result) return { reason: reasonOf("late") };
        return "failed" in result ? { reason: reasonOf("other", result.failed) } : result.value;
      }
      if (!facts().readsFiles) return { reason: t`is not on this machine's disk` };
      const read = await bytesOfClient(connection, uri, "picture", patienceMs.client);
      return "bytes" in read ? read : { reason: read.reason };
    },
  };
};

const FAILURES = [
  "missing",
  "link",
  "linked",
  "folder",
  "special",
  "too-large",
  "forbidden",
  "unavailable",
  "other",
] as const;

/** Base64 has four letters for three bytes. */
const answerOf = (maxBytes: number) =>
  z.union([
    z.object({ base64: z.base64().check(z.maxLength(Math.ceil(maxBytes / 3) * 4)) }),
    z.object({ failure: z.enum(FAILURES), detail: z.optional(z.string()) }),
  ]);

const askClient = async (
  connection: Connection,
  uri: string,
  purpose: Purpose,
  patienceMs: number,
): Promise<ReadResult> => {
  const read = await bytesOfClient(connection, uri, purpose, patienceMs);
  if (!("bytes" in read)) return { ...withSubject(read.reason), isThere: read.isThere };
  const text = decodeText(read.bytes);
  return "text" in text ? text : withSubject(text.reason);
};

type ClientBytes =
  | { readonly bytes: Uint8Array }
  | {
      readonly reason: string;
      readonly isThere: boolean;
    };

const bytesOfClient = async (
  connection: Connection,
  uri: string,
  purpose: Purpose,
  patienceMs: number,
): Promise<ClientBytes> => {
  const unread = (reason: string): ClientBytes => ({ reason, isThere: true });
  const params: ReadFileParams = { uri, maxBytes: maxBytesOf(purpose) };
  const result = await within(patienceMs, connection.sendRequest(READ_FILE, params));
  if ("failed" in result) return unread(reasonOf("other", result.failed));
  if ("late" in result) return unread(reasonOf("silent"));
  const answer = answerOf(params.maxBytes).safeParse(result.value);
  if (!answer.success) return unread(reasonOf("other", t`the editor's answer is not understood`));
  if ("failure" in answer.data) {
    const { failure, detail } = answer.data;
    if (failure === "missing") return { reason: reasonOf("missing"), isThere: false };
    return unread(failure === "too-large" ? tooLarge(purpose) : reasonOf(failure, detail));
  }
  return { bytes: Uint8Array.from(atob(answer.data.base64), (letter) => letter.charCodeAt(0)) };
};

const withSubject = (end: string): ReadResult & { readonly reason: string } => ({
  reason: t`it ${end}`,
  isThere: true,
});
