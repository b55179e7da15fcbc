/**
 * The editor features' vocabulary: plain data in editor terms (files and absolute UTF-16 offsets), no protocol.
 *
 * An `Analyst` holds the texts it was given and hands out immutable `Analysis` snapshots; it never reads a file.
 * `missingFiles` names used files that it has not been given, so that the adapter can load them and call `setFile`.
 */
import type { Span } from "../../../grammar/src/tree.ts";
import type { Severity } from "../core/findings.ts";
import type { FileId } from "../core/place.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import type { JobTotals } from "../core/totals/types.ts";

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
  readonly safe: boolean;
}

/** A finding at absolute offsets. */
export interface FileFinding {
  readonly rule: string;
  readonly severity: Severity;
  readonly file: FileId;
  readonly span: Span;
  readonly message: string;
  readonly related: readonly (FileSpan & { readonly message: string })[];
  readonly fixes: readonly FileFix[];
  readonly job?: string;
}

export interface HoverInfo {
  readonly span: Span;
  readonly markdown: string;
}

export type SymbolKind =
  | "material"
  | "piece"
  | "surface"
  | "shop"
  | "recipe"
  | "job"
  | "use"
  | "layer"
  | "step"
  | "wait";

export interface DocumentSymbolInfo {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly span: Span;
  readonly nameSpan: Span;
  readonly children: readonly DocumentSymbolInfo[];
}

export type CompletionKind =
  | "keyword"
  | "field"
  | "verb"
  | "word"
  | "unit"
  | "material"
  | "piece"
  | "surface"
  | "shop"
  | "recipe"
  | "job"
  | "parameter"
  | "file";

export interface CompletionEntry {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail?: string;
  readonly documentation?: string;
  /** Snippet syntax (`$0`, `${1:name}`) when `snippet` is set. */
  readonly insert: string;
  readonly snippet: boolean;
  readonly replace: Span;
  readonly sort: string;
}

export const INLAY_HINT_KINDS = ["litres", "waits", "elapsed"] as const;
export type InlayHintKind = (typeof INLAY_HINT_KINDS)[number];

export interface InlayHintInfo {
  readonly kind: InlayHintKind;
  /** Behind the content of the line. */
  readonly offset: number;
  readonly text: string;
  /** The reason and the sums. */
  readonly markdown: string;
}

/** What a job comes to, for the line above it. */
export interface JobLens {
  readonly span: Span;
  readonly title: string;
}

/** An immutable snapshot. No method throws, for any text and any offset. */
export interface Analysis {
  readonly files: readonly FileId[];
  text(file: FileId): string | undefined;
  findings(file: FileId): readonly FileFinding[];
  hover(file: FileId, offset: number): HoverInfo | undefined;
  symbols(file: FileId): readonly DocumentSymbolInfo[];
  completions(file: FileId, offset: number): readonly CompletionEntry[];
  /** In the order of `kinds` where several stand at one place. */
  inlayHints(file: FileId, span: Span, kinds: readonly InlayHintKind[]): readonly InlayHintInfo[];
  /** One for every job; findings of other levels than these are not counted. */
  jobLenses(file: FileId, levels: readonly Severity[]): readonly JobLens[];
  totals(file: FileId): readonly JobTotals[];
  /** What the totals come from: every line's litres, the plan, what is missing. In the order of `totals`. */
  jobs(file: FileId): readonly JobResult[];
  /** Files that `file` uses, directly or not, itself included. */
  usedBy(file: FileId): readonly FileId[];
}

export interface Analyst {
  setFile(file: FileId, text: string): void;
  removeFile(file: FileId): void;
  /** Used files that were not given and are not known to be absent. */
  missingFiles(): readonly FileId[];
  /** Tells that a used file does not exist or cannot be read. */
  setAbsent(file: FileId, reason: string): void;
  analysis(): Analysis;
}
