/**
 * What a rule is. One rule is one file: metadata, documentation, failing and passing examples, and one check.
 *
 * The examples are run by the tests and printed on the rule's page. A rule only looks and reports; which severity the
 * project gives it, where the finding stands and whether it was said already is the engine's business (`engine.ts`).
 */
import type { Caution, Eased, FindingText, Fix, GroupPart, RelatedPlace, Severity } from "../findings.ts";
import type { JobAir } from "../fumes/job-air.ts";
import type { Role } from "../knowledge/family-schema.ts";
import type { UnitSystem } from "../measure/shown-figures.ts";
import type { Job, Material } from "../model/model.ts";
import type { Place } from "../place.ts";
import type { Schedule } from "../schedule/types.ts";
import type { Action, LayerAction, StepAction, WaitAction } from "../surface/actions.ts";
import type { DryingTime } from "../surface/drying-time.ts";
import type { SurfaceRun } from "../surface/run.ts";
import type { Moment, SurfaceState } from "../surface/state.ts";
import type { JobTotals } from "../totals/types.ts";

export type RuleGroup =
  | "language"
  | "layers"
  | "preparation"
  | "waits"
  | "colour"
  | "film"
  | "wear"
  | "safety"
  | "quantities"
  | "schedule"
  | "record"
  | "hygiene";

/** An example is a whole file; in failing ones the comment `#! RULE` at the end of a line marks where it must fire. */
export interface RuleExample {
  readonly title: string;
  readonly text: string;
}

export interface RuleDocs {
  /** One line: what the rule reports. */
  readonly summary: string;
  /** What goes wrong at the bench. */
  readonly why: string;
  /** What to do instead. */
  readonly remedy: string;
  /** Published sources by name, or `common practice, no source`. */
  readonly sources: readonly string[];
}

export interface RuleMeta {
  readonly id: string;
  readonly group: RuleGroup;
  readonly severity: Severity;
  /** No comment allows it and no project sets it to another level. */
  readonly alwaysShown?: true;
  readonly docs: RuleDocs;
  readonly failing: readonly RuleExample[];
  readonly passing: readonly RuleExample[];
}

/** What a rule says: headline, why and remedy (see `FindingText`), and what goes with them. */
export interface Report extends Omit<FindingText, "where"> {
  readonly related?: readonly RelatedPlace[];
  readonly fixes?: readonly Fix[];
  /** Only where one rule has findings of two severities. */
  readonly severity?: Severity;
  /** A narrower place inside the statement (a word, a quantity); default: the whole statement. */
  readonly at?: Place;
  /** It is about a time that is too short: told once for the label and the air of every job, see `short-wait.ts`. */
  readonly wait?: ShortWait;
  /** It is a hint only because of the margin for waits. */
  readonly eased?: Eased;
  /** Told together with its like on one recipe. */
  readonly part?: GroupPart;
  /**
   * Its remedy sands, scuffs, scrapes or strips what lies on the surface, or everything down to the wood: where that may
   * hold lead, the engine says so first (`lead-caution.ts`).
   */
  readonly abrades?: "surface" | "to the wood";
  /** The same remedy where the dust may hold lead: wet, by hand, wiped up damp; the engine puts it in place of `remedy`. */
  readonly damp?: string;
  /** The remedy puts another material in the place of the one on this line. */
  readonly replaces?: true;
  /** Says more than of the recipe by itself, as the lead or the dirt of a job's piece asks for. */
  readonly ofPiece?: true;
  /** What the engine put before a remedy that `abrades`. */
  readonly caution?: Caution;
  /** The line that left the dust which the remedy takes up. */
  readonly dustFrom?: Place;
  /** Why no date holds until this is mended, where it is graver than its level or the rule's own words do not fit. */
  readonly voids?: VoidedBy;
  /** What brings the finding, where another rule's finding elsewhere may come of the same: see `secondaryTo`. */
  readonly causes?: readonly string[];
}

/**
 * Why no date of a job can be promised, as a clause that is said in the place of the date. `brief` names nothing of the
 * text, for where there is little room.
 */
export interface VoidedBy {
  readonly reason: string;
  readonly brief: string;
}

/** A time that something needed and did not have. */
export interface NeededWait extends Told {
  readonly needed: DryingTime;
  /** Hours that it had. */
  readonly had: number;
  /** The job whose shop's air counts, and the shop; absent for a recipe by itself. */
  readonly job?: string;
  readonly shop?: string;
}

export interface ShortWait extends NeededWait {
  /** The report for all times that one line has: by the label, and in the air of each job's shop. */
  readonly sayAll: (waits: readonly NeededWait[]) => Report;
}

/** What every rule is told. */
interface Told {
  /** What figures are told in. */
  readonly units: UnitSystem;
}

/** One action on one surface. `before` is the surface as the action finds it. */
export interface MomentContext<A extends Action = Action> extends Moment<A>, Told {
  readonly run: SurfaceRun;
  readonly index: number;
  report(report: Report): void;
}

/** A whole run, once it is over. */
export interface RunContext extends Told {
  readonly run: SurfaceRun;
  /** Reports on an action of the run. */
  report(action: Action, report: Report): void;
  /** Reports on a line of the job or of its piece, shop or material (only for jobs; `place` must be in the job's file). */
  reportAt(place: Place, report: Report): void;
}

/** A job as a whole. */
export interface JobContext extends Told {
  readonly job: Job;
  readonly runs: readonly SurfaceRun[];
  readonly totals: JobTotals;
  readonly schedule: Schedule;
  /** The verdict on its air, where its shop states a room. */
  readonly air?: JobAir;
  /** Of a job that has been begun: nothing more is done before then; local ISO. */
  readonly goesOnAt?: string;
  /** The job that this one comes after, with the end of its last step, layer or wait (local ISO), where that is known. */
  readonly earlier?: { readonly job: Job; readonly finish: string | null };
  /**
   * Litres needed of every material of the job, spare included. By the material itself: two of one name (a declared one
   * and the built-in one that it shadows, or those of two files) are two.
   */
  readonly needs: ReadonlyMap<
    Material,
    {
      readonly material: Material;
      readonly litres: number;
      readonly onHand: number;
      /** Where it is used, in the order of surfaces and actions. */
      readonly draws: readonly {
        readonly litres?: number;
        readonly run: SurfaceRun;
        readonly action: Action;
      }[];
    }
  >;
  /** Reports on an action; it stands on the recipe's line or the job's `apply` line as usual. */
  report(run: SurfaceRun, action: Action, report: Report): void;
  reportAt(place: Place, report: Report): void;
}

/** A rule of the trade has one or more of these. */
export interface RuleChecks {
  readonly onStep?: (ctx: MomentContext<StepAction>) => void;
  readonly onLayer?: (ctx: MomentContext<LayerAction>) => void;
  readonly onWait?: (ctx: MomentContext<WaitAction>) => void;
  readonly onRun?: (ctx: RunContext) => void;
  readonly onJob?: (ctx: JobContext) => void;
}

/** What a run is made of, see `run-traits.ts`. */
export interface RunTraits {
  readonly kind: SurfaceRun["kind"];
  /** Of its steps. */
  readonly verbs: ReadonlySet<string>;
  /** Of the materials that its layers put on, as far as these are known. */
  readonly roles: ReadonlySet<Role>;
  /** A line, or what describes its recipes and materials, says something in words. */
  readonly isSpoken: boolean;
  /** Words of it, of its materials or of its piece name a chemical of the table. */
  readonly namesChemicals: boolean;
  /** Something lies on the surface at the start. */
  readonly isCoated: boolean;
  /** Holes, pores or joints of the surface hold a filler or glue, or come to. */
  readonly isFilled: boolean;
}

export interface TradeRule extends RuleMeta {
  readonly checks: RuleChecks;
  /**
   * Whether its checks of steps, layers, waits and runs may say anything of a run that is made of these; where not, they are
   * not asked. Without it they always are. Whatever it leaves out, the checks must be silent on.
   */
  readonly looksAt?: (run: RunTraits) => boolean;
  /** It looks at the plan of a job, or at the air by its hours, and so may still find something when that is made. */
  readonly readsPlan?: true;
  /** Its own words are about lead, so the caution that remedies on old coats begin with is not added. */
  readonly speaksOfLead?: true;
  /** Why no date of the job holds while the rule finds an error, as a clause: "test for lead first". */
  readonly voids?: string;
  /** It is about work between walls: not said of a recipe by itself that jobs of its file do in the open air alone. */
  readonly underRoofs?: true;
  /**
   * Rules whose findings say the same, or what comes before it. Where one of them has a finding of the same cause (one in
   * common of the `causes` of both reports; without any, the same line), this rule's finding becomes a related place of
   * that one.
   */
  readonly secondaryTo?: readonly string[];
}

/** A rule whose findings come from reading the text (names, units, fields): metadata only. */
export interface LanguageRule extends RuleMeta {
  readonly group: "language";
}

export type Rule = TradeRule | LanguageRule;

export const isTradeRule = (rule: Rule): rule is TradeRule => "checks" in rule;

export type { SurfaceState };
