/**
 * A bench sheet as plain data: what a finisher pins above the bench to do a job, or hands on so that others can.
 *
 * Texts are plain: nothing in them is markup, whatever stands in them. Two kinds say more: `Prose` has names in
 * backticks, `Docs` is the Markdown of a doc comment. How they are shown, escaped and broken is the reports' business.
 */

import type { Severity } from "../../core/findings.ts";
import type { DutyWord } from "../../core/knowledge/duties.ts";
import type { UnitSystem } from "../../core/measure/shown-figures.ts";
import type { FileId } from "../../core/place.ts";
import type { Stage } from "../../core/surface/state.ts";
import type { FileSpan } from "../places/file-finding.ts";
import type { Section } from "../section/model.ts";

/** A text in which names stand in backticks, as findings have it. */
export type Prose = string;
/** A doc comment: Markdown by somebody else. */
export interface Docs {
  readonly text: string;
  /** The file that it stands in: pictures are named from there. */
  readonly file: FileId;
}

/** More of a piece than these are not followed one by one: they have one box and one line a day. */
export const MOST_PIECES = 12;

export interface Sheet {
  /** What its figures are told in; the drawings and the lists as well. */
  readonly units: UnitSystem;
  /** A recipe by itself has no pieces, amounts and dates. */
  readonly kind: "job" | "recipe";
  readonly name: string;
  readonly file: FileId;
  readonly title: string;
  readonly docs: Docs;
  /** The gravest first. */
  readonly findings: readonly SheetFinding[];
  readonly facts: readonly SheetFact[];
  /** Figures that are not computed, with what is missing for each. */
  readonly gaps: readonly SheetGap[];
  /** What is left open and has to be chosen before the work: parameters without an argument. */
  readonly choices: readonly SheetFact[];
  /** Every duty of the sheet once, with the surfaces on whose work it holds. */
  readonly duties: readonly SheetDuty[];
  /** The air that the fumes ask for; absent where none is computed. */
  readonly fumes?: SheetFumes;
  readonly shopDocs: Docs;
  readonly pieces: readonly SheetPiece[];
  readonly surfaces: readonly SheetSurface[];
  readonly materials: readonly SheetMaterial[];
  /** In the amounts of a job; 0 without amounts. */
  readonly sparePercent: number;
  /** `grit 120`, `3 sheets, or 13 discs`: an estimate. */
  readonly paper: readonly SheetFact[];
  /** Who does what on which day; empty without dates. */
  readonly days: readonly SheetDay[];
  /** One for every surface; of a recipe the only one. */
  readonly procedures: readonly SheetProcedure[];
  readonly bench: BenchList;
  readonly service: SheetService;
  /** When hands can work; absent where the shop states no hours. */
  readonly opening?: SheetOpening;
  /** `18 C`, for which all times are calculated; absent where the shop states none. */
  readonly keptAt?: string;
}

export interface SheetOpening {
  /** By weekday, 1 (Monday) to 7; times of day: `09:00`. */
  readonly spans: readonly { readonly weekday: number; readonly opens: string; readonly closes: string }[];
  /** Closed days, ISO dates, both ends included. */
  readonly closed: readonly { readonly from: string; readonly to: string }[];
}

export interface SheetFact {
  readonly name: string;
  readonly text: string;
}

export interface SheetFumes {
  /** Whether the air can be relied on, in one blunt line. */
  readonly gist: string;
  /** The figures behind it. */
  readonly text: Prose;
}

export interface SheetGap {
  readonly figure: string;
  readonly missing: readonly Prose[];
}

export interface SheetFinding {
  /** From 1; steps refer to it. */
  readonly number: number;
  readonly rule: string;
  readonly severity: Severity;
  readonly message: Prose;
  readonly headline: Prose;
  /** The headline and the rest of the message, with the titles of materials. */
  readonly gist: string;
  readonly rest: Prose;
  /** The same a line each, the headline first, without the last that names job and surfaces. */
  readonly lines: readonly Prose[];
  /** What to do about it at the bench, and why, in plain words without names of the text. */
  readonly order: string;
  readonly why: string;
  readonly at: FileSpan;
  /** Labels of the surfaces that it is about; absent where it is about the job. */
  readonly surfaces?: readonly string[];
}

export interface SheetDuty {
  /** Absent for what no duty of the notation says. */
  readonly word?: DutyWord;
  /** `Fumes, 4 air changes/h`: in the word of the lines where they have one. */
  readonly label: string;
  /** What to do. */
  readonly doc: string;
  /** Who decides what the sheet cannot know. */
  readonly defer: string;
  /** Titles of the surfaces on whose work it holds. */
  readonly surfaces: readonly string[];
  /** False where a step brings it and the recipe does not state it. */
  readonly stated: boolean;
}

export interface SheetPiece {
  readonly title: string;
  readonly count: number;
  readonly docs: Docs;
  readonly facts: readonly string[];
  readonly cautions: readonly string[];
}

export interface SheetSurface {
  readonly title: string;
  readonly substrate: string;
  /** From the wood up; `bare`. */
  readonly existing: string;
  readonly wear: string;
  /** `1.78 m2`, or `2 × 1.78 = 3.56 m2`. */
  readonly area: string;
  /** Dry film of the job's coats; empty where there is none. */
  readonly film: string;
  readonly docs: Docs;
  /** The cut through it when the job is done. */
  readonly section: Section;
}

export interface SheetMaterial {
  readonly title: string;
  /** The name in the file, where the title says something else. */
  readonly name?: string;
  /** Family, sheen, colour. */
  readonly sort: string;
  /** Litres of the job, spare included. */
  readonly takes: string;
  readonly onHand: string;
  /** New cans, to be bought or opened. */
  readonly open: string;
  readonly docs: Docs;
  readonly notes: readonly string[];
}

export interface SheetDay {
  /** `Mon 8 Mar 2027` */
  readonly day: string;
  readonly tasks: readonly SheetDayTask[];
}

export interface SheetDayTask {
  /** `09:00 to 11:35` */
  readonly time: string;
  /** `Top, piece 1` */
  readonly where: string;
  /** `1 to 4` */
  readonly steps: string;
}

export interface SheetProcedure {
  readonly title: string;
  readonly pieces: number;
  /** What a line of several pieces or kinds of pieces names them by: `Reading table`; absent for a single piece. */
  readonly piece?: string;
  /** `top`; empty for a recipe. */
  readonly surface: string;
  readonly entries: readonly SheetEntry[];
}

export type SheetEntry = SheetPart | SheetNote | SheetOpen | SheetStep;

/** Where another recipe begins. */
export interface SheetPart {
  readonly kind: "part";
  readonly title: string;
  readonly docs: Docs;
}

export interface SheetNote {
  readonly kind: "note";
  readonly text: string;
}

/** A part of the recipe that is not known. */
export interface SheetOpen {
  readonly kind: "open";
  readonly text: string;
}

export interface SheetStep {
  readonly kind: "step";
  readonly op: "step" | "layer" | "wait";
  /** Position in the run's list of actions. */
  readonly index: number;
  /** From 1, over the work on the whole surface; a wait has none. */
  readonly number?: number;
  readonly title: string;
  /** Where the title is in another language: a step is known by it from one language to the other. */
  readonly englishTitle?: string;
  readonly details: readonly string[];
  /** Those of the details that are to be read while it is done: how it is mixed, how long it is left on. */
  readonly atHand?: readonly string[];
  /** Cautions that belong to this very step. */
  readonly cautions: readonly string[];
  /** What to have on at this step: `gloves`. */
  readonly wear: readonly string[];
  /** What can hurt at this step, in a word or two each: `fumes`, `oily rags`. */
  readonly dangers: readonly string[];
  /** By piece, those together that are done at the same time; empty without dates. */
  readonly planned: readonly PlannedTime[];
  /** Numbers of the findings that stand on its line. */
  readonly findings: readonly number[];
  /** Of a coat, for a line of a list, which has its own place for the method. */
  readonly short?: string;
  readonly by?: string;
  /** Of a coat: the same for all that comes out of the same can. */
  readonly can?: string;
  /** Which of the coats of its line, from 1. */
  readonly coat?: number;
  readonly coats?: CoatsOfLine;
  /** Litres for all pieces, of the whole mix; undefined where nothing is measured out or it is not known. */
  readonly litres?: number;
  /** By the record of the job; absent where nothing of it is done. */
  readonly done?: readonly DonePiece[];
  /**
   * Of a wait: what for, and how many hours in this air, where that is known, or how many at least where it ends with the
   * next opening; the end of the window of what was put on.
   */
  readonly wait?: {
    readonly until?: Stage;
    readonly hours?: number;
    readonly leastHours?: number;
    readonly latestHours?: number;
  };
  /** Of a step that takes an old finish off with a stripper. */
  readonly strip?: StripStep;
  /** Of a coat, in hours after it: when the surface may be worked on again, used with care and used fully. */
  readonly after?: { readonly touch?: number; readonly light?: number; readonly full?: number };
}

/** All coats of a line: of what, how many, and what one of them is called. */
export interface CoatsOfLine {
  readonly material: string;
  readonly count: number;
  readonly each: "coat" | "session";
}

export interface StripStep {
  /** For which it is left on; absent where its label alone says it. */
  readonly hours?: number;
  /** False where another step takes it off. */
  readonly takesOff: boolean;
  /** Share of the hands-on time in which it is laid on, 0 to 0.5. */
  readonly layShare: number;
}

/** Lay it on, leave it alone, take it off: a line each, with times where they are known. */
export interface StripParts {
  readonly lines: readonly string[];
  readonly takesOff: boolean;
  readonly hours?: number;
  /** Local ISO date-time at which it is taken off by the plan. */
  readonly offFrom?: string;
}

export interface DonePiece {
  /** From 1. */
  readonly piece: number;
  /** Local ISO date-time. */
  readonly at: string;
}

/** The work on all surfaces in the order of time; without dates surface by surface. */
export interface BenchList {
  /** Names the job on a device, so that ticks of another one are never taken for its own. */
  readonly fingerprint: string;
  readonly groups: readonly BenchGroup[];
}

export interface BenchGroup {
  /** `Mon 8 Mar 2027`; without dates the surface. */
  readonly title: string;
  /** ISO date. */
  readonly date?: string;
  readonly rows: readonly BenchRow[];
}

/** One thing to do, on all surfaces and pieces on which it is done in one go. */
export interface BenchRow {
  /** The same as long as what is done, where and how often before is the same. */
  readonly fingerprint: string;
  readonly op: "step" | "layer";
  /** Surfaces with the number of the step there, `Top`, 4, and its key, see `stepKeys`. */
  readonly steps: readonly { readonly surface: string; readonly number: number; readonly key: string }[];
  /** On what it is done, as it stands in the line. */
  readonly places: readonly BenchPlace[];
  readonly title: string;
  /** What a coat goes on with: `pad`. */
  readonly by?: string;
  /** Which of the coats of its line, from 1. */
  readonly coat?: number;
  readonly coats?: CoatsOfLine;
  readonly details: readonly string[];
  /** Those of the details that are to be read while it is done: how it is mixed, how long it is left on. */
  readonly atHand?: readonly string[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  /** What to have on, in a word each: `gloves`. */
  readonly wear: readonly string[];
  /** What can hurt, in a word or two each: `fumes`. */
  readonly dangers: readonly string[];
  readonly litres?: number;
  /** Of a step with a stripper. */
  readonly strip?: StripParts;
  readonly findings: readonly number[];
  /** From 1; empty where there are too many to be followed one by one. */
  readonly pieces: readonly number[];
  /** How many pieces there are. */
  readonly of: number;
  /** Those on which it is done, on all of its surfaces; absent where there are none. */
  readonly done?: readonly DonePiece[];
  /** Local ISO date-times. */
  readonly startAt?: string;
  readonly endAt?: string;
  /**
   * Until when it is not touched: the end of the wait, and its hours in this air, or the least of them where it ends with
   * the next opening. `firstAt` is that of the piece that is free first where they end one after the other; `latestHours`
   * after the coat, the next one needs sanding first.
   */
  readonly then?: {
    readonly until?: Stage;
    readonly hours?: number;
    readonly leastHours?: number;
    readonly at?: string;
    readonly firstAt?: string;
    readonly firstPiece?: number;
    readonly latestHours?: number;
  };
  /** Of the last coat of a surface: from when it may be used, with care and fully. */
  readonly light?: UseFrom;
  readonly full?: UseFrom;
}

export interface BenchPlace {
  /** `Reading table`; absent where there is a single piece. */
  readonly piece?: string;
  /** Which of them, from 1; empty where there is one of the kind, or where there are too many to be named. */
  readonly pieces: readonly number[];
  /** `top` */
  readonly surface: string;
}

export interface UseFrom {
  /** After the coat, in this air. */
  readonly hours: number;
  /** Local ISO date-time; absent without dates. */
  readonly at?: string;
}

/** Local ISO date-times. */
export interface PlannedTime {
  /** From 1. */
  readonly pieces: readonly number[];
  readonly startAt: string;
  readonly endAt: string;
  /** The end of the first piece, and which it is, where they end one after the other. */
  readonly firstEndAt?: string;
  readonly firstPiece?: number;
}

export interface SheetService {
  /** `Tue 16 Mar 2027 09:55`: used with care. */
  readonly light?: string;
  /** `Mon 12 Apr 2027 12:45`: used fully. */
  readonly date?: string;
  /** Surface by surface: the full cure of its last coat. */
  readonly cures: readonly SheetFact[];
  readonly cautions: readonly string[];
}
