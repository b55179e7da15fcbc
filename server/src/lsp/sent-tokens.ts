/**
 * The semantic tokens that a client has of each open file, so that after an edit it gets what changed and not all again.
 */
import type { SemanticTokens, SemanticTokensDelta } from "vscode-languageserver";
import type { FileId } from "../core/place.ts";
import { fileIdOf } from "./uri.ts";

export interface SentTokens {
  /** What to send: the data, or, for a client that has what was sent last, the change from that. */
  send(file: FileId, data: number[], previousId?: string): SemanticTokens | SemanticTokensDelta;
  forget(uri: string): void;
}

export const createSentTokens = (): SentTokens => {
  const sent = new Map<FileId, { readonly id: string; readonly data: readonly number[] }>();
  let count = 0;
  return {
    send(file, data, previousId) {
      const before = sent.get(file);
      count += 1;
      const resultId = String(count);
      sent.set(file, { id: resultId, data });
      if (before === undefined || before.id !== previousId) return { resultId, data };
      return { resultId, edits: editsBetween(before.data, data) };
    },
    forget(uri) {
      sent.delete(fileIdOf(uri));
    },
  };
};

/** One edit, without what is the same at both ends. */
const editsBetween = (before: readonly number[], after: readonly number[]): SemanticTokensDelta["edits"] => {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head += 1;
  let tail = 0;
  while (tail < most - head && before.at(-1 - tail) === after.at(-1 - tail)) tail += 1;
  const deleteCount = before.length - head - tail;
  const data = after.slice(head, after.length - tail);
  return deleteCount === 0 && data.length === 0 ? [] : [{ start: head, deleteCount, data }];
};
