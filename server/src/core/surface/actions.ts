/**
 * Actions: a recipe unrolled for one call, with every name resolved. The list is what the simulation runs, what
 * quantities are added up from and what the schedule is made of.
 */
import type {
  LayerStatement,
  NoteStatement,
  RecipeStatement,
  StepStatement,
  WaitStatement,
} from "../../../../grammar/src/tree.ts";
import type { ShopAir } from "../air/wait-factor.ts";
import type { Material } from "../model/model.ts";
import type { Place } from "../place.ts";
import type { MixParts } from "../quantities/litres.ts";
import type { PartTail } from "../resolution/lines.ts";
import type { Stage } from "./drying-time.ts";

/** A material as named on a line. `material` is undefined where it is not known (open parameter, unknown name). */
export interface MaterialUse {
  readonly name: string;
  readonly place: Place;
  readonly material?: Material;
}

/** A safety duty in force: where it was stated, and for `ventilate` how strongly. */
export interface DutyInForce {
  readonly place: Place;
  readonly airChanges?: number;
}

export type Duties = ReadonlyMap<string, DutyInForce>;

interface ActionBase {
  /** Position in the list. */
  readonly index: number;
  /** Outermost call first (`apply`, then every `follow`), the statement itself last. */
  readonly frames: readonly Place[];
  readonly place: Place;
  readonly duties: Duties;
  /** Set for actions of a coat block: which layer statement, and after which coat (1 …). */
  readonly between?: { readonly layer: Place; readonly afterCoat: number; readonly coats: number };
  /** Stated hands-on time. */
  readonly takes?: Takes;
  /** All pieces of the surface in one go, or each by itself. */
  readonly batch?: "together" | "apart";
  /** The part of the surface that it is done on; absent: the whole. */
  readonly part?: PartTail;
}

export type Takes = { readonly hours: number } | { readonly hoursPerM2: number };

/** The verb of a step that is said in words of one's own, `step "lift the loose veneer"`; `what` has them. */
export const OTHER_WORK = "other work";

export interface StepAction extends ActionBase {
  readonly op: "step";
  readonly syntax: StepStatement;
  readonly verb: string;
  readonly use?: MaterialUse;
  /** Grits in order; an open parameter leaves a gap out and sets `gritsKnown` to false. */
  readonly grits: readonly number[];
  readonly gritsKnown: boolean;
  readonly wet: boolean;
  /** `mask "what"`, or how it is done, as in `scrape "heat gun at 300 C"`. */
  readonly what?: string;
  /** `uses 50 mL`, litres (a weight is turned by the material's density; undefined without). */
  readonly usesLitres?: number;
  /** What else it takes on one piece, in money. */
  readonly costs?: number;
}

export interface LayerAction extends ActionBase {
  readonly op: "layer";
  readonly syntax: LayerStatement;
  readonly use: MaterialUse;
  /** 1 … `coats`. */
  readonly coat: number;
  readonly coats: number;
  /** A coat beyond the fewest of `x 2 to 3`: it is planned and bought for, and nothing may depend on it. */
  readonly ifNeeded?: true;
  /** What that depends on, in words. */
  readonly when?: string;
  /** A session of French polishing, of many thin passes: what film it leaves is not known. */
  readonly session?: true;
  readonly method: string;
  readonly wiped: boolean;
  readonly wipedAfterHours?: number;
  readonly thinned?: { readonly a: number; readonly b: number; readonly thinner: MaterialUse };
  readonly tinted?: { readonly percent: number; readonly tint: MaterialUse };
  readonly hardener?: Hardener;
  readonly toner: boolean;
  /** Share of what leaves the gun that lands, 0 to 1, where the line says so. */
  readonly transfer?: number;
  /** Laid on the coat below while that is wet. */
  readonly wetOnWet?: true;
  /** Passes that the coat is laid in, wet on wet, and the hours between two of them. */
  readonly passes?: { readonly count: number; readonly flashHours?: number };
  readonly laid?: "thin" | "mist" | "full" | "flooded";
  readonly wetUm?: number;
  /** The sheen that it is to have. */
  readonly sheen?: string;
  /** By the record: the air in which it was put on and dried, and the hours since the coat before, of a coat more. */
  readonly measuredAir?: ShopAir;
  readonly restedHours?: number;
}

/** The second part of a two-part material: parts of the material to parts of this. */
export interface Hardener {
  readonly a: number;
  readonly b: number;
  readonly by: "volume" | "weight";
  /** By volume; undefined where the parts are weighed and a density is not stated. */
  readonly volumes?: MixParts;
  readonly use: MaterialUse;
}

export interface WaitAction extends ActionBase {
  readonly op: "wait";
  readonly syntax: WaitStatement;
  readonly until?: Stage;
  readonly overnight: boolean;
  /** Stated hours; undefined for `until`, `overnight` and open parameters. */
  readonly hours?: number;
}

export interface NoteAction extends ActionBase {
  readonly op: "note";
  readonly syntax: NoteStatement;
  readonly text: string;
}

/**
 * A part of the recipe that is not known: a recipe parameter without argument, or the rest of a recipe that goes on
 * without end. Nothing after it is certain.
 */
export interface OpenAction extends ActionBase {
  readonly op: "open";
  readonly syntax: RecipeStatement;
  /** Name of the recipe that is not known; absent where the rest of a recipe is left out. */
  readonly missing?: string;
}

export type Action = StepAction | LayerAction | WaitAction | NoteAction | OpenAction;

/**
 * Whether an action is what its line says first of all: neither words behind it nor the time that passes on it, nor all that
 * is left out from there on.
 */
export const isItsLine = ({ op, syntax, place }: Action): boolean =>
  op !== "open" && syntax.span.start === place.span.start;

/** `follow` lines that go round: from a recipe by way of others back to itself. */
export type Cycle = readonly {
  readonly place: Place;
  /** The line follows whatever recipe its own recipe was given. */
  readonly isParameter: boolean;
}[];

export interface Expansion {
  readonly actions: readonly Action[];
  /** Found while unrolling. */
  readonly cycles: readonly Cycle[];
}
