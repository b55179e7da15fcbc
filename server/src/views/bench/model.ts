/**
 * A job as an editor draws it beside its text: what is put on which surface and when, what it takes and costs, and what
 * is found. Plain data; times are hours after the start of the job.
 *
 * Whatever has a line of its own names it by its position in `places`, so that an editor turns offsets into lines once.
 */
import type { Severity } from "../../core/findings.ts";
import type { AlsoNeeded } from "../also-needed.ts";
import type { RoomHour, RoomHours } from "../fumes/room-hours.ts";
import type { Section } from "../section/model.ts";

export interface Bench<Place> {
  readonly name: string;
  readonly title: string;
  /** Of the job's own line. */
  readonly at?: number;
  readonly facts: readonly BenchFact[];
  /** Last work, light use, full use; `reason` says what each waits for or lacks. */
  readonly dates: readonly (BenchFact & { readonly reason: string })[];
  /** What can hurt in what is still to be done, in a word or two each: `oily rags`. */
  readonly dangers: readonly string[];
  /** What is to be done next and what after it; empty where all is done. */
  readonly next: readonly BenchWork[];
  /** The last that is done by its record. */
  readonly lastDone?: BenchWork;
  /** No error is found, and nothing keeps a date from being promised: what is drawn may be worked by. */
  readonly isSound: boolean;
  readonly plan: "planned" | "being planned" | "none";
  /** Local ISO date-time; undefined where the job has no dates. */
  readonly startAt?: string;
  /** Of the last item of the plan. */
  readonly endHours: number;
  readonly surfaces: readonly BenchSurface[];
  /** The other jobs of the shop, in the order in which they begin; those without dates last. */
  readonly others: readonly BenchOther[];
  /** How many more there are, which are not drawn. */
  readonly othersLeft: number;
  /** The days on which the jobs of the shop are worked on, in order; empty without dates, or where there are too many. */
  readonly days: readonly BenchDay[];
  /**
   * When the shop is shut, in order, as far as its jobs that are drawn reach; empty where no hours are stated, or there are
   * too many to draw.
   */
  readonly shut: readonly { readonly from: number; readonly to: number }[];
  readonly air: BenchAir;
  readonly materials: readonly BenchMaterial[];
  /** What is needed beside them, as the lines name it: sandpaper, brushes, gloves. */
  readonly alsoNeeded: readonly AlsoNeeded[];
  /** Of every sum of money; empty where the shop states none. */
  readonly currency: string;
  /** What it costs, part by part, the total, and what stands beside it. */
  readonly costs: readonly BenchCost[];
  /** Each way with the pieces; undefined where the text states no price to weigh. */
  readonly worth?: BenchWorth;
  readonly gaps: readonly { readonly figure: string; readonly missing: readonly string[] }[];
  readonly findings: readonly BenchFinding[];
  readonly places: readonly Place[];
}

export interface BenchFact {
  readonly name: string;
  readonly text: string;
}

/** What is done in one go. */
export interface BenchWork {
  /** As its sheet says it: `Sand with grit 120, then 150`. */
  readonly what: string;
  /** Titles of its surfaces. */
  readonly where: readonly string[];
  /** Hours after the start of the job; of what is done, when it was. Undefined without dates. */
  readonly start?: number;
  readonly end?: number;
  /** What to have on, in a word each: `gloves`. */
  readonly wear: readonly string[];
}

/** A day of the shop with all of its jobs, in hours after the start of the job that is drawn. */
export interface BenchDay {
  readonly from: number;
  readonly to: number;
  /** Of work, of all people together. */
  readonly hours: number;
  /** In which its people are there, of all together; undefined where no hours are stated. */
  readonly has?: number;
  readonly crew: number;
  /** The first time at which more is to be done at once than there are people. */
  readonly clash?: {
    readonly from: number;
    readonly to: number;
    readonly needs: number;
    /** Titles of the jobs. */
    readonly jobs: readonly string[];
  };
}

export interface BenchSurface {
  readonly title: string;
  /** `3.56 m2`, and other things that are said beside its name. */
  readonly about: readonly string[];
  readonly section: Section;
  /** In the order of `section.coats`. */
  readonly coats: readonly BenchCoat[];
  /** In the order of time; without a plan empty. */
  readonly bars: readonly BenchBar[];
  /** Of every step, in order, also without a plan. */
  readonly steps: readonly BenchStep[];
  /** Positions in the findings of the job: those on this surface or on work that leaves no coat in the drawing. */
  readonly findings: readonly number[];
}

export interface BenchStep {
  /** Position in the run's list of actions, which a bar has as well. */
  readonly index: number;
  /** Of its surface, from 1; a wait has none. */
  readonly number?: number;
  readonly kind: "step" | "layer" | "wait";
  readonly what: string;
  readonly at?: number;
  readonly gravest?: Severity;
}

export interface BenchCoat {
  readonly at?: number;
  /** `0.39 L`, for all pieces; empty where it is not known. */
  readonly takes: string;
  /** When it is on all pieces; undefined without a plan. */
  readonly onAt?: number;
  /** Hours that it needs from then on; undefined where not known. */
  readonly touchH?: number;
  readonly recoatH?: number;
  readonly curedH?: number;
  /** Why it does not cure, however long it is left: `too cold to dry`. */
  readonly never?: string;
  /** Positions in the findings of the job: those on its line, the gravest first. */
  readonly findings: readonly number[];
}

export interface BenchBar {
  /** See `BenchStep`. */
  readonly index: number;
  readonly step?: number;
  readonly kind: "step" | "layer" | "wait";
  readonly start: number;
  readonly end: number;
  /** From 1: the pieces that it is done on. */
  readonly pieces: readonly number[];
  /** When its recoat window ends. */
  readonly closes?: number;
  /** Hours by which it can be later. */
  readonly slack: number;
}

/** Another job of the shop. */
export interface BenchOther {
  readonly name: string;
  readonly title: string;
  /** Of its own line. */
  readonly at?: number;
  readonly plan: "planned" | "being planned" | "none";
  /** `last work Mon 15 Mar 2027 15:50`, or why it has no dates; names in backticks. */
  readonly note: string;
  /** One for each kind of piece; empty without a plan. */
  readonly rows: readonly BenchOtherRow[];
}

export interface BenchOtherRow {
  /** `Chair × 6` */
  readonly title: string;
  /** In the order of time; hours after the start of the job that is drawn. */
  readonly bars: readonly BenchOtherBar[];
}

export interface BenchOtherBar {
  readonly kind: "work" | "wait";
  readonly start: number;
  readonly end: number;
  readonly what: string;
  /** Of the first thing done in it. */
  readonly at?: number;
}

/** The air of the room by the hour; see `views/fumes/room-hours.ts`. */
export interface BenchAir extends Pick<RoomHours, "state" | "worst" | "missing" | "night"> {
  /** Of the line that states the room, or the shop. */
  readonly at?: number;
  /** `16 air changes/h in 145 m3`; empty where no room is stated. */
  readonly room: string;
  readonly hours: readonly BenchAirHour[];
  /** The sums behind the worst stretch, and what they are made by; empty without a room. */
  readonly said: readonly string[];
}

export interface BenchAirHour extends Omit<RoomHour, "mostBy"> {
  /** Of the line that gives off most in it. */
  readonly at?: number;
}

export interface BenchMaterial {
  readonly title: string;
  readonly at?: number;
  readonly takes: string;
  readonly onHand: string;
  /** A text for every can that is to be bought: `0.946 L`. */
  readonly cans: readonly string[];
  /** Money without its currency; empty where nothing is to be bought, or its price is not known. */
  readonly price: string;
  readonly gaps: readonly string[];
}

/** A row of the costs. The parts come to the total, as they are shown. */
export interface BenchCost {
  readonly kind: "part" | "total" | "beside";
  readonly name: string;
  /** `266.67`, `not known`, `not counted` or `being planned`. */
  readonly text: string;
  /** `16 h 40 min × 16.00`; empty where there is nothing to calculate. */
  readonly sum: string;
  /** The lines that are missing for it; names in backticks. */
  readonly missing: readonly string[];
}

/** `columns` stand above the figures of each row. */
export interface BenchWorth {
  readonly basis: string;
  readonly columns: readonly string[];
  readonly rows: readonly { readonly name: string; readonly figures: readonly string[] }[];
  readonly notes: readonly string[];
}

export interface BenchFinding {
  readonly severity: Severity;
  readonly headline: string;
  /** Why, and what to do: a sentence or more each; what is written in the text in backticks. */
  readonly lines: readonly string[];
  /** Titles of the surfaces that it is about; empty where it is about the job. */
  readonly where: readonly string[];
  readonly at: number;
}
