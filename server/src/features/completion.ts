/** Completion. */
import type { Checker } from "../core/check.ts";
import type { FileId } from "../core/place.ts";
import type { CompletionEntry } from "./types.ts";

export function completionsAt(_checker: Checker, _file: FileId, _offset: number): readonly CompletionEntry[] {
  return [];
}
