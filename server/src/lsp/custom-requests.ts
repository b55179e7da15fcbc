/**
 * What the server and the project's own extension say to each other beyond the protocol.
 *
 * Names and plain types, for both ends: this is the only module of the server that the extension imports. Whatever is
 * asked for here a client may leave unanswered; it says in `initializationOptions` what it answers.
 */
import type { Severity } from "../core/findings.ts";
import type { ReadFailure } from "../reading/reasons.ts";
import type { Bench } from "../views/bench/model.ts";
import type { HandedOn } from "../views/handed-on.ts";

export { HANDED_ON, type HandedOn } from "../views/handed-on.ts";

/** What a client may say of itself when it starts the server. */
export interface InitializationOptions {
  /** It answers `FIND_FILES`. */
  readonly findFiles?: boolean;
  /** It answers `READ_FILE`. */
  readonly readFile?: boolean;
  /** It has these of the `LENS_COMMANDS`, without which lenses are only read, `EXPLAIN_COMMAND` and `RECORD_COMMAND`. */
  readonly commands?: readonly string[];
  /** It shows what `REPORT` answers, and wants to hear `REPORTS_CHANGED`. */
  readonly reports?: boolean;
  /** All findings of a line are to stand at the words of the gravest, so that the line has one mark. */
  readonly marksLines?: boolean;
  /** It draws pictures in hovers, and folds away what is in `details`, which is HTML in Markdown. */
  readonly hoverHtml?: boolean;
  /** The person trusts the open folders. Not said means that they do not. */
  readonly trusted?: boolean;
  /** A URI such that `/RULE.md` behind it is the page of a rule, for a server that lies beside no pages. */
  readonly rulePages?: string;
  /** Behind that URI pages are named by their titles, `/Wrong unit`: see `pageTitle`. */
  readonly pageTitles?: boolean;
  /** The packed table of texts in its language, for a server that lies beside none. */
  readonly texts?: { readonly keys: string; readonly texts: readonly string[] } | undefined;
}

/** Server to client: the recipes of the open folders, as a list of URIs. */
export const FIND_FILES = "finishwright/findFiles";

export interface FindFilesParams {
  /** No more than so many are of use. */
  readonly limit: number;
  /** Patterns, as in a `.gitignore` file at the top of each folder, of what the person excludes. */
  readonly exclude: readonly string[];
}

/** Server to client: the bytes of a file that the server cannot read by itself, such as one of a virtual folder. */
export const READ_FILE = "finishwright/readFile";

export interface ReadFileParams {
  readonly uri: string;
  /** A larger file is not sent. */
  readonly maxBytes: number;
}

export type ReadFileResult =
  | { readonly base64: string }
  | { readonly failure: Exclude<ReadFailure, "silent" | "late">; readonly detail?: string };

/**
 * Client to server: the plan, the totals or the shopping list of a file's jobs as text, or its bench sheets as Markdown.
 * The answer is null for a file that is not known.
 */
export const REPORT = "finishwright/report";

export type ReportKind = "schedule" | "totals" | "shopping" | "sheet";

export interface ReportParams {
  readonly kind: ReportKind;
  readonly textDocument: { readonly uri: string };
  /** Without it all jobs of the file, or, where it has none itself, of the files that use it. */
  readonly job?: string;
}

/** Client to server: a job as it is drawn beside its text. The answer is a `BenchAnswer`, null for a file that is not known. */
export const BENCH = "finishwright/bench";

export interface BenchParams {
  readonly textDocument: { readonly uri: string };
  /** Without it the job at `line`, else `before`, else the first. */
  readonly job?: string;
  /** The job that was drawn before: it stays while the line is in none. */
  readonly before?: string;
  /** Of the caret, from 0. */
  readonly line?: number;
}

export interface BenchAnswer {
  /** All jobs that can be chosen. */
  readonly jobs: readonly { readonly name: string; readonly title: string }[];
  /** Absent where there is no job, or it cannot be worked out. */
  readonly bench?: Bench<BenchPlace>;
  /** Why there is nothing, or less than there might be. */
  readonly notes: readonly string[];
}

/** As the protocol counts. */
export interface BenchPlace {
  readonly uri: string;
  readonly line: number;
  readonly character: number;
  readonly endLine: number;
}

/**
 * Client to server: a job's sheet as a page or as Markdown, its shopping list for a spreadsheet, its plan for a calendar, the
 * care cards of its pieces as a page, or a short recipe to publish as Markdown.
 */
export const BENCH_EXPORT = "finishwright/benchExport";

export const BENCH_EXPORTS = ["html", "csv", "ics", "markdown", "care", "recipe"] as const;

export interface BenchExportParams {
  readonly textDocument: { readonly uri: string };
  readonly job: string;
  readonly as: (typeof BENCH_EXPORTS)[number];
  /** What a care card or a short recipe tells besides; without it, nothing of this. */
  readonly with?: readonly HandedOn[];
}

/**
 * Client to server, with an empty object as its parameters: jobs, pieces, recipes and stock of all files that are known, as
 * a list of `WorkshopItem`, jobs by their dates, all else by file. `REPORTS_CHANGED` says when it may be another.
 */
export const WORKSHOP = "finishwright/workshop";

export interface WorkshopItem {
  readonly kind: "job" | "piece" | "recipe" | "stock";
  readonly name: string;
  readonly title: string;
  /** What a job comes to, a piece has, a recipe is used for, or is left of a material. */
  readonly detail: string;
  /** Of a job: the same where there is little room, the gist first. */
  readonly brief?: string;
  /** Of a job: what its neighbours in the shop do to it, a sentence each. */
  readonly notes?: readonly string[];
  readonly uri: string;
  /** The file's name without its folders. */
  readonly file: string;
  /** Of its name, as the protocol counts. */
  readonly start: { readonly line: number; readonly character: number };
  /** Of a job: how many as a text, and where the first of the gravest begins. */
  readonly findings?: {
    readonly text: string;
    readonly severity: Severity;
    readonly start: { readonly line: number; readonly character: number };
  };
}

/** Client to server: which recipes, jobs, pieces and surfaces of all files that are known are what is looked for. */
export const FIND = "finishwright/find";

export interface FindParams {
  /** As a person types it: `oak flat clear`. */
  readonly said: string;
}

export interface FindAnswer {
  /** What was understood: `wood oak`. */
  readonly understood: readonly string[];
  /** Why nothing is looked for. */
  readonly refusal?: string;
  readonly found: readonly FoundPlace[];
  /** How many there are besides. */
  readonly more: number;
}

export interface FoundPlace {
  readonly kind: "recipe" | "job" | "piece" | "surface";
  readonly title: string;
  /** What it has of what was asked for, and what a job comes to. */
  readonly detail: string;
  readonly uri: string;
  /** The file's name without its folders. */
  readonly file: string;
  /** Of its name, as the protocol counts. */
  readonly start: { readonly line: number; readonly character: number };
}

/**
 * Client to server: what changed in meaning since an earlier state of a folder, as Markdown. What `before` does not name was
 * as it is now.
 */
export const CHANGED = "finishwright/changed";

export interface ChangedParams {
  readonly folder: string;
  /** Texts of that state; null for a file that it has not. */
  readonly before: readonly { readonly uri: string; readonly text: string | null }[];
  /** Files that had another name. */
  readonly renamed: readonly { readonly from: string; readonly to: string }[];
}

/** Server to client, a notification: reports that were asked for may be others now. */
export const REPORTS_CHANGED = "finishwright/reportsChanged";

/** The client's command that shows the page of the rule that is its argument. */
export const EXPLAIN_COMMAND = "finishwright.explainFinding";

/** The client's command that writes a line of a record with the present time; it gets a `RecordTarget`. */
export const RECORD_COMMAND = "finishwright.recordDone";

export interface RecordTarget {
  readonly uri: string;
  /** Of the document; another one is asked for anew. */
  readonly version: number | null;
  /** Where the line goes, as the protocol counts. */
  readonly at: { readonly line: number; readonly character: number };
  /** What stands before the time, and behind it. */
  readonly before: string;
  readonly after: string;
}

/**
 * Commands of the client that the lens over a job calls, since none of the protocol opens a report or walks to a finding.
 * The first two get a `ReportTarget` and show that job's plan and totals, the third gets a `FindingTarget`.
 */
export const LENS_COMMANDS = {
  schedule: "finishwright.showSchedule",
  totals: "finishwright.showTotals",
  findings: "finishwright.showFinding",
} as const;

export interface ReportTarget {
  readonly uri: string;
  readonly job?: string;
}

export interface FindingTarget {
  readonly uri: string;
  /** Where the finding begins, as the protocol counts. */
  readonly start: { readonly line: number; readonly character: number };
}

/** Client to server, with an empty object as its parameters: all rules as a list of `RuleEntry`, group by group. */
export const RULES = "finishwright/rules";

export interface RuleEntry {
  readonly id: string;
  /** What it is about: `Layer over layer`. */
  readonly group: string;
  /** One sentence. */
  readonly summary: string;
  /** The address of its page, where there is one. */
  readonly page?: string;
}

/**
 * Client to server: a page on rules, as it comes with the extension in English and without what is found in its examples, whole
 * and in the language of the client, as a `Page`.
 */
export const PAGE = "finishwright/page";

export { withoutMarks } from "../core/rules/found-here.ts";

export interface Page {
  /** Markdown. */
  readonly text: string;
  /** That it is told in. */
  readonly language: string;
}

export interface PageParams {
  readonly text: string;
}

/** Client to server: what the words of a recipe mean that is shown and not edited, in order, as a list of `ColouredWord`. */
export const COLOURED = "finishwright/coloured";

export interface ColouredParams {
  readonly text: string;
}

export interface ColouredWord {
  /** In the text, in code units. */
  readonly start: number;
  readonly end: number;
  /** A type of the protocol's semantic tokens, such as `keyword`. */
  readonly type: string;
}

/** A server in a Web Worker posts this word, outside of the protocol, when it is loaded and listens. */
export const WORKER_IS_READY = "finishwright/ready";

/**
 * Pages by their titles, as the tab of an editor names what it shows by the end of its address: `Wrong unit` of the rule
 * `wrong-unit`.
 */
export const pageTitle = (name: string): string =>
  `${name.charAt(0).toUpperCase()}${name.slice(1).replaceAll("-", " ")}`;

/** And back. */
export const pageNamed = (title: string): string => title.toLowerCase().replaceAll(" ", "-");
