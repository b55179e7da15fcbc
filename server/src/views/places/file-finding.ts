/** Findings, their fixes and places at absolute UTF-16 offsets: plain data for whoever shows them. */
import type { Span } from "../../../../grammar/src/tree.ts";
import type { FindingText, FixKind, Severity } from "../../core/findings.ts";
import type { FileId } from "../../core/place.ts";

export interface FileSpan {
  readonly file: FileId;
  readonly span: Span;
}

export interface FileEdit {
  readonly file: FileId;
  readonly span: Span;
  readonly text: string;
}

export interface FileFix {
  readonly title: string;
  readonly edits: readonly FileEdit[];
  readonly kind: FixKind;
}

/** A place that a finding has to do with. */
export interface FileRelated extends FileSpan {
  readonly message: string;
  /** Where the finding stands on a line that leads to the recipe, the line of the recipe that it is about. */
  readonly isCause?: true;
}

/** A finding at absolute offsets. */
export interface FileFinding extends FileSpan, FindingText {
  readonly rule: string;
  readonly severity: Severity;
  /** Headline, why, remedy, what follows, and where, a line each. */
  readonly message: string;
  readonly related: readonly FileRelated[];
  readonly fixes: readonly FileFix[];
  readonly job?: string;
  /** Surfaces of the job, by their labels. */
  readonly surfaces?: readonly string[];
  /** All findings that this one stands for, itself among them; absent where it stands for itself alone. */
  readonly parts?: readonly FileFindingPart[];
}

export interface FileFindingPart extends FileSpan {
  readonly rule: string;
  readonly severity: Severity;
  readonly headline: string;
}
