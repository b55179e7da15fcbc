/**
 * For clients that cannot be told to ask again: what depends on plans is answered when those are there.
 */
import type { CancellationToken } from "vscode-languageserver";
import type { FileId } from "../core/place.ts";
import { throwIfCancelled } from "./guard.ts";
import type { Session } from "./session.ts";

/** Waits for news while a job of the file is being planned; whether it has waited, so that the answer may be another. */
export const awaitPlans = async (
  { changes, files }: Pick<Session, "changes" | "files">,
  file: FileId,
  token: CancellationToken,
): Promise<boolean> => {
  if (!files.snapshot(file).analysis.awaitsPlans(file)) return false;
  await changes.after(changes.generation, token);
  throwIfCancelled(token);
  return true;
};

/** Resolves when no job of the file is being planned, at once for a client that can be told of plans. */
export const wholePlans = async (
  session: Pick<Session, "changes" | "files">,
  file: FileId,
  canBeTold: boolean,
  token: CancellationToken,
): Promise<void> => {
  if (canBeTold) return;
  while (await awaitPlans(session, file, token));
};
