/**
 * The editor features' vocabulary: plain data in editor terms (files and absolute UTF-16 offsets), no protocol.
 *
 * An `Analyst` holds the texts it was given and hands out immutable `Analysis` snapshots; it never reads a file.
 * `missingFiles` names used files that it has not been given, so that the adapter can load them and call `setFile`.
 */
import type { TextChange } from "../../../grammar/src/format.ts";
import type { ChangedPart } from "../../../grammar/src/parse.ts";
import type { Span } from "../../../grammar/src/tree.ts";
import type { ColourChannels } from "../core/colour.ts";
import type { Severity } from "../core/findings.ts";
import type { UnitSystem } from "../core/measure/shown-figures.ts";
import type { Shop } from "../core/model/model.ts";
import type { Program } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { ShopPlans } from "../core/schedule/shop/plan-shop.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import type { JobInShop } from "../core/totals/shop-plans.ts";
import type { JobTotals } from "../core/totals/types.ts";
import type { Bench } from "../views/bench/model.ts";
import type { FileEdit, FileFinding, FileFix, FileSpan } from "../views/places/file-finding.ts";
import type { Section } from "../views/section/model.ts";
import type { Sheet } from "../views/sheet/model.ts";

export interface HoverInfo {
  readonly span: Span;
  readonly markdown: string;
  /** Of the surface, or as the layer leaves it on the first surface that it comes to; for a picture. */
  readonly section?: Section;
  /** The recipe of a package that a `use` line names. */
  readonly fromPackage?: { readonly target: FileId; readonly path: string };
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

export interface InlayHintPart {
  readonly kind: InlayHintKind;
  readonly text: string;
  /** The reason and the sums. */
  readonly markdown: string;
}

/** All that is shown behind one line. */
export interface InlayHintInfo {
  /** Behind the content of the line. */
  readonly offset: number;
  /** In the order of the kinds that were asked for; never empty. */
  readonly parts: readonly InlayHintPart[];
}

/** What a part of a lens leads to: the plan, the totals, or the findings. */
export type JobLensKind = "schedule" | "totals" | "findings";

export interface JobLensPart {
  readonly kind: JobLensKind;
  readonly text: string;
  /** Of `findings`: where the first of the gravest stands in the file. */
  readonly first?: Span;
}

/** A line of a record that lacks its time: the text at an offset is `before`, `2027-03-08 10:10`, `after`. */
export interface NextRecord {
  /** `Record as done now: coat 2 of hall_clear on top` */
  readonly title: string;
  readonly offset: number;
  readonly before: string;
  readonly after: string;
}

/** What a job comes to, for the line above it. */
export interface JobLens {
  readonly job: string;
  readonly span: Span;
  readonly parts: readonly JobLensPart[];
}

/** A declaration as a workshop has it: a job, a piece, a recipe, or a material of which some is in stock. */
export interface WorkshopEntry {
  readonly kind: "job" | "piece" | "recipe" | "stock";
  readonly name: string;
  readonly title: string;
  readonly file: FileId;
  /** Of its name. */
  readonly span: Span;
  /** What a job comes to, a piece has, a recipe is used for, or is left of a material. */
  readonly detail: string;
  /** Of a job: the same where there is little room, the gist first. */
  readonly brief?: string;
  /** Of a job: what its neighbours in the shop do to it; sentences with names in backticks. */
  readonly notes?: readonly string[];
  /** Of a job: how many, as a text, and the first of the gravest. */
  readonly findings?: { readonly text: string; readonly severity: Severity; readonly first: Span };
}

/** A colour that the text gives as a number: its place, quotes included, and its channels. */
export interface TextColour extends ColourChannels {
  readonly span: Span;
}

/** In the order of the protocol's numbers: new ones go to the end, and none is ever taken out. */
export const TOKEN_TYPES = [
  "keyword",
  "property",
  "method",
  "enumMember",
  "type",
  "operator",
  "number",
  "string",
  "comment",
  "variable",
  "parameter",
  "function",
  "class",
  "struct",
  "namespace",
  "event",
] as const;
export const TOKEN_MODIFIERS = ["declaration", "readonly", "documentation", "defaultLibrary"] as const;
export type TokenType = (typeof TOKEN_TYPES)[number];
export type TokenModifier = (typeof TOKEN_MODIFIERS)[number];

export interface SemanticToken {
  readonly span: Span;
  readonly type: TokenType;
  readonly modifiers: readonly TokenModifier[];
}

export interface FoldingInfo {
  readonly kind: "block" | "statement" | "comment" | "uses" | "region";
  /** What is hidden; of a block, what stands between its braces. */
  readonly span: Span;
}

export interface SignatureInfo {
  /** `hard_clear(clear: material, coats: number = 3)` */
  readonly label: string;
  readonly markdown: string;
  readonly parameters: readonly {
    /** In the label. */
    readonly span: Span;
    readonly markdown: string;
  }[];
  /** The parameter that is being given; undefined where it is none of them. */
  readonly active?: number;
}

export interface TokenPiece {
  readonly offset: number;
  readonly tokens: readonly SemanticToken[];
}

/** What a text looks like, from what it means. */
export interface TextViews {
  /**
   * In order and apart, where `part` touches them. `words` leaves out what an editor's own grammar colours as well:
   * numbers, texts and comments.
   */
  semanticTokens(file: FileId, which: "all" | "words", part?: Span): readonly SemanticToken[];
  /**
   * The same in pieces, in order: what stands in one declaration, at offsets in it, is the same object as long as neither
   * its text nor what its names mean changes.
   */
  tokenPieces(file: FileId, which: "all" | "words"): readonly TokenPiece[];
  foldings(file: FileId): readonly FoldingInfo[];
  textColours(file: FileId): readonly TextColour[];
  /** From the word outwards to the whole file; each holds the one before it and more. */
  selections(file: FileId, offset: number): readonly Span[];
  /** For the call in whose parentheses an offset is; several where it depends on who calls. */
  signatures(file: FileId, offset: number): readonly SignatureInfo[];
}

/** Where a name leads to; several places where a recipe is handed on that is not the same every time. */
export interface DefinitionInfo {
  /** The name that was asked about. */
  readonly origin: Span;
  readonly targets: readonly TargetInfo[];
}

export interface TargetInfo {
  readonly file: FileId;
  /** The whole declaration, surface or parameter. */
  readonly span: Span;
  readonly nameSpan: Span;
}

/** `write` where the name is declared. */
export interface HighlightInfo {
  readonly span: Span;
  readonly kind: "read" | "write";
}

/** Why something cannot be done, as one or two sentences to the user. */
export interface Refusal {
  readonly refusal: string;
}

export interface RenameTarget {
  readonly span: Span;
  readonly name: string;
}

export interface Renaming {
  readonly edits: readonly FileEdit[];
}

export interface WorkspaceSymbolInfo {
  readonly name: string;
  readonly kind: SymbolKind;
  /** The piece of a surface. */
  readonly container?: string;
  readonly file: FileId;
  readonly nameSpan: Span;
}

/** The path in a `use` line, without its quotes. */
export interface UseLinkInfo {
  readonly span: Span;
  readonly target: FileId;
  readonly tooltip: string;
}

/** A recipe, or a job, which is what begins the work. */
export interface CallItem extends TargetInfo {
  readonly kind: "recipe" | "job";
  readonly name: string;
  readonly title: string;
}

/** The other end of a call, and the names in the lines that call. */
export interface CallInfo {
  readonly item: CallItem;
  /** In the file of the caller. */
  readonly spans: readonly Span[];
}

/** Ways through the files by what their names mean. */
export interface Navigation {
  definition(file: FileId, offset: number): DefinitionInfo | undefined;
  /** In all files, in the order of `files` and of the text. */
  references(file: FileId, offset: number, withDeclaration: boolean): readonly FileSpan[];
  highlights(file: FileId, offset: number): readonly HighlightInfo[];
  renameTarget(file: FileId, offset: number): RenameTarget | Refusal;
  /** The edits change no meaning: a new name that would is refused. */
  rename(file: FileId, offset: number, newName: string): Renaming | Refusal;
  /** The best matches first. */
  workspaceSymbols(query: string): readonly WorkspaceSymbolInfo[];
  useLinks(file: FileId): readonly UseLinkInfo[];
  /** Edits, in the files as they stand now, that keep every `use` line's meaning when `movedTo` says where files go. */
  editsForMoves(movedTo: (file: FileId) => FileId): readonly FileEdit[];
  /** The recipes and jobs that the name at an offset may mean. */
  callItems(file: FileId, offset: number): readonly CallItem[];
  /** Who follows or applies the recipe whose name stands at an offset. */
  incomingCalls(file: FileId, offset: number): readonly CallInfo[];
  /** What the recipe or job whose name stands at an offset follows or applies. */
  outgoingCalls(file: FileId, offset: number): readonly CallInfo[];
}

/** An immutable snapshot. No method throws, for any text and any offset. */
export interface Analysis extends Navigation, TextViews {
  readonly files: readonly FileId[];
  text(file: FileId): string | undefined;
  /**
   * The work for `findings` in small parts, between which others may be let in. It may be given up, and what is asked
   * without it is worked out in one go.
   */
  steps(file: FileId): Iterable<void>;
  /**
   * Whether a job of the file is still being planned: what depends on that is left out of the findings, and figures say
   * that they are being planned. Never where the analyst plans at once.
   */
  awaitsPlans(file: FileId): boolean;
  findings(file: FileId): readonly FileFinding[];
  hover(file: FileId, offset: number): HoverInfo | undefined;
  symbols(file: FileId): readonly DocumentSymbolInfo[];
  completions(file: FileId, offset: number): readonly CompletionEntry[];
  /** One for every line that has something to say. */
  inlayHints(file: FileId, span: Span, kinds: readonly InlayHintKind[]): readonly InlayHintInfo[];
  /** One for every job; findings of other levels than these are not counted. */
  jobLenses(file: FileId, levels: readonly Severity[]): readonly JobLens[];
  /** What these files declare, in their order; findings of other levels than these are not counted. */
  workshop(files: readonly FileId[], levels: readonly Severity[]): readonly WorkshopEntry[];
  /** What applies all safe fixes of the findings of these levels in a file; fixes that reach into others are left out. */
  fixAll(file: FileId, levels: readonly Severity[]): readonly FileEdit[];
  /** The job that the recipe at a span lacks, where it is clear what the recipe is for. */
  jobToWrite(file: FileId, span: Span): FileFix | undefined;
  /** The recipe that repairs the trouble which a record names at a span; undefined where there is none. */
  repairToWrite(file: FileId, span: Span): FileFix | undefined;
  /** What is next in the job at a span, to be recorded; the time is still to be said. */
  nextToRecord(file: FileId, span: Span): readonly NextRecord[];
  /** The changes that bring a file, or the lines that the spans touch, to the one layout; in order. */
  formatting(file: FileId, spans?: readonly Span[]): readonly TextChange[];
  totals(file: FileId): readonly JobTotals[];
  /** What the totals come from: every line's litres, the plan, what is missing. In the order of `totals`. */
  jobs(file: FileId): readonly JobResult[];
  /** A job as if no other were done in its shop. */
  alone(result: JobResult): JobResult;
  /** What all of this is about, for who works out something else of it. */
  readonly program: Program;
  /** What the figures of a file are told in. */
  units(file: FileId): UnitSystem;
  /** The plans of the jobs that share a shop. */
  shopPlans(shop: Shop): ShopPlans<JobInShop>;
  /** Bench sheets: of every job of the file, then of every recipe that none of them goes through. */
  sheets(file: FileId): readonly Sheet[];
  /** A job of the file as an editor draws it; undefined where it has none of this name, or no sheet of it can be made. */
  bench(file: FileId, job: string): Bench<FileSpan> | undefined;
  /** Files that `file` uses, directly or not, itself included. */
  usedBy(file: FileId): readonly FileId[];
}

export interface Analyst {
  /** `changed` since the text that was given last, where that is known; a text is given as a whole all the same. */
  setFile(file: FileId, text: string, changed?: ChangedPart): void;
  removeFile(file: FileId): void;
  /** Used files that were not given and are not known to be absent. */
  missingFiles(): readonly FileId[];
  /** Whether a file that was given uses this one. */
  isUsed(file: FileId): boolean;
  /** Tells that a used file does not exist or cannot be read. */
  setAbsent(file: FileId, reason: string): void;
  /** Tells that the planner has plans that it did not have before. */
  plansChanged(): void;
  /** Tells that a project has other settings than it had before. */
  settingsChanged(): void;
  /** See `CheckerParts.today`. Everything is worked out anew. */
  setToday(today: string | undefined): void;
  analysis(): Analysis;
}
