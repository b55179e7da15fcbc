/** A few files by themselves to look into, and what is found in them, as plain data that goes from thread to thread. */
import type { Fault } from "../core/internal-error.ts";
import type { ProjectConfig } from "../features/config.ts";
import type { FileFinding } from "../views/places/file-finding.ts";

export interface CheckTask {
  readonly files: readonly { readonly path: string; readonly text: string }[];
  /** What the project says, for each of them. */
  readonly configs: readonly ProjectConfig[];
  readonly today?: string;
}

export interface CheckAnswer {
  /** For each of the files; null where it uses another after all, so that it is to be looked into with that. */
  readonly found: readonly (readonly FileFinding[] | null)[];
  readonly faults: readonly Fault[];
}
