/**
 * Findings: what the checker has to say about a text, as plain data in offsets relative to declarations.
 */
import type { Place } from "./place.ts";

export type Severity = "error" | "warning" | "information" | "hint";

export interface RelatedPlace {
  readonly place: Place;
  readonly message: string;
}

export interface TextEdit {
  readonly place: Place;
  readonly text: string;
  /** `text` is one or more whole lines, to be put above the line of `place` and indented like it. */
  readonly linesAbove?: true;
}

/** A change that removes the finding. `safe` ones change no other meaning and may be applied without a look. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly TextEdit[];
  readonly safe: boolean;
}

export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  readonly place: Place;
  /** What is wrong, why it matters at the bench, and what to do: one sentence each, in this order. */
  readonly message: string;
  readonly related: readonly RelatedPlace[];
  readonly fixes: readonly Fix[];
  /** The job whose piece, shop or arguments bring the finding; absent where it holds whatever the job. */
  readonly job?: string;
  /** The surfaces of that job that it concerns, by their labels; absent where it concerns the job as a whole. */
  readonly surfaces?: readonly string[];
}
