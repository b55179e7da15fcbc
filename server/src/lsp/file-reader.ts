/**
 * The texts of files that are not open, by whichever way leads to them.
 *
 * Files on disk are read by the host, where it has a disk. All others (those of a virtual folder; in a browser every
 * one) are asked of the client, if it said that it hands them out. What cannot be had is an answer in words, also where
 * the client refuses, answers nonsense, or not at all.
 */
import type { Connection } from "vscode-languageserver";
import * as z from "zod";
import { decodeText } from "../reading/decode-text.ts";
import { MAX_FILE_BYTES, reasonOf } from "../reading/reasons.ts";
import type { ClientFacts } from "./client-facts.ts";
import { READ_FILE, type ReadFileParams } from "./custom-requests.ts";
import type { Host, ReadResult } from "./host.ts";
import { isDiskFile, isUnsaved } from "./uri.ts";

/** Findings wait for the used files, so nobody waits longer for one of them than this. */
const PATIENCE_MS = 20_000;

export interface FileReader {
  /** Why there is no way at all to a file; undefined where one can try. */
  outOfReach(uri: string): string | undefined;
  read(uri: string): Promise<ReadResult>;
}

/** `facts` are asked each time, since the client introduces itself only after the server has been put together. */
export const createFileReader = (
  host: Host,
  connection: Connection,
  facts: () => ClientFacts,
  patienceMs = PATIENCE_MS,
): FileReader => {
  const fromDisk = (uri: string) => (isDiskFile(uri) ? host.readFromDisk : undefined);

  const outOfReach = (uri: string): string | undefined => {
    if (fromDisk(uri) !== undefined) return undefined;
    if (isUnsaved(uri)) return "this text has not been saved yet, so it lies in no folder. Save it first";
    return facts().readsFiles ? undefined : "it is not on this machine's disk";
  };

  return {
    outOfReach,
    async read(uri) {
      const reason = outOfReach(uri);
      if (reason !== undefined) return { reason };
      return (await fromDisk(uri)?.(uri)) ?? askClient(connection, uri, patienceMs);
    },
  };
};

const FAILURES = ["missing", "folder", "special", "too-large", "forbidden", "unavailable", "other"] as const;

const ANSWER = z.union([
  z.object({ base64: z.base64().max(Math.ceil(MAX_FILE_BYTES / 3) * 4) }),
  z.object({ failure: z.enum(FAILURES), detail: z.string().optional() }),
]);

const askClient = async (connection: Connection, uri: string, patienceMs: number): Promise<ReadResult> => {
  const params: ReadFileParams = { uri, maxBytes: MAX_FILE_BYTES };
  const result = await within(patienceMs, connection.sendRequest<unknown>(READ_FILE, params));
  if ("failed" in result) return sentence(reasonOf("other", result.failed));
  if ("late" in result) return sentence(reasonOf("silent"));
  const answer = ANSWER.safeParse(result.value);
  if (!answer.success) return sentence(reasonOf("other", "the editor's answer is not understood"));
  if ("failure" in answer.data) return sentence(reasonOf(answer.data.failure, answer.data.detail));
  const read = decodeText(Uint8Array.from(atob(answer.data.base64), (letter) => letter.charCodeAt(0)));
  return "text" in read ? read : sentence(read.reason);
};

const sentence = (end: string): ReadResult => ({ reason: `it ${end}` });

type Outcome = { readonly value: unknown } | { readonly failed: string } | { readonly late: true };

const within = async (ms: number, work: Promise<unknown>): Promise<Outcome> => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<Outcome>((resolve) => {
    timer = setTimeout(() => resolve({ late: true }), ms);
  });
  const done = work.then(
    (value) => ({ value }),
    (error: unknown) => ({ failed: error instanceof Error ? error.message : String(error) }),
  );
  try {
    return await Promise.race([done, late]);
  } finally {
    clearTimeout(timer);
  }
};
