/**
 * The model: what the declarations of a set of files mean, as immutable plain data in canonical units.
 *
 * Canonical units: mm for lengths, m2, L, m2/L, hours, degrees C, percent as 0…100, g/L (density too), money in the shop's
 * currency. A `Fact` says whether a figure was stated in the text or supplied by the family, so that hover can tell.
 * References between declarations are by name; `Program` resolves them.
 */
import type {
  ApplyStatement,
  Declaration,
  DoneStatement,
  Parameter,
  RecipeStatement,
  Span,
  SyntaxProblem,
} from "../../../../grammar/src/tree.ts";
import type { TROUBLES } from "../../../../grammar/src/vocabulary.ts";
import type { FamilyName } from "../knowledge/family-names.ts";
import type { Family } from "../knowledge/family-schema.ts";
import type { LeadResult } from "../knowledge/lead.ts";
import type { SpotTestWord } from "../knowledge/spot-tests.ts";
import type { FileId, Place } from "../place.ts";

export type TroubleWord = (typeof TROUBLES)[number];

export interface Fact<T> {
  readonly value: T;
  readonly origin: "stated" | "family" | "default";
  /** Where it is stated. */
  readonly place?: Place;
}

export interface Named {
  readonly file: FileId;
  /** Declaration key in its file; empty for built-in materials. */
  readonly declaration: string;
  readonly name: string;
  readonly title?: string;
  readonly docs: string;
  readonly namePlace: Place;
  readonly headPlace: Place;
}

export interface ContainerSize {
  readonly litres: number;
  readonly price: number;
  /** As written: `946 mL`. */
  readonly label: string;
}

export interface Material extends Named {
  readonly kind: "material";
  readonly builtIn: boolean;
  /** Undefined when the family is missing or unknown; everything that depends on it stays silent. */
  readonly family?: Family;
  /** The family as it is written: a word that may be several stays as it is. */
  readonly familyName?: string;
  readonly familyPlace?: Place;
  readonly covers?: Fact<number>;
  readonly solids?: Fact<number>;
  readonly touch?: Fact<number>;
  readonly recoat?: Fact<{ readonly earliest: number; readonly latest?: number }>;
  /** Hours until coated pieces can be stacked. */
  readonly stackable?: Fact<number>;
  /** Hours until it can be sanded. */
  readonly sandable?: Fact<number>;
  readonly cure?: Fact<number>;
  readonly rated: Fact<{ readonly temperature: number; readonly humidity: number }>;
  readonly limits?: Fact<{ readonly low?: number; readonly high?: number; readonly humidity?: number }>;
  readonly voc?: Fact<number>;
  readonly sheen?: Fact<string>;
  /** `clear`, `amber`, `white`, or a colour such as `#2b3a42` or a title. */
  readonly colour?: Fact<string>;
  readonly thin?: Fact<{ readonly thinner: string; readonly upTo?: number }>;
  /** Empty when the text does not say how it is sold. */
  readonly sold: readonly ContainerSize[];
  readonly soldPlace?: Place;
  readonly onHand: number;
  readonly onHandPlace?: Place;
  readonly flash?: Fact<number>;
  readonly potLife?: Fact<number>;
  readonly selfHeatingRags: Fact<boolean>;
  readonly mix?: Fact<{
    readonly a: number;
    readonly b: number;
    /** Absent where both parts come in one pack. */
    readonly hardener?: string;
    readonly by: "volume" | "weight";
  }>;
  readonly density?: Fact<number>;
  /** Of shellac: g of flakes to a litre of alcohol. */
  readonly cut?: Fact<number>;
  readonly batch?: Fact<string>;
  /** Lines that are stated by weight and are not known in litres, since no density is stated. */
  readonly weighed: readonly ("covers" | "packs" | "counted")[];
}

export interface ShapePart {
  readonly place: Place;
  readonly areaM2: number;
  /** The formula with its numbers filled in, for hover: `1.8 m × 0.9 m + 2 (1.8 m + 0.9 m) × 0.03 m = 1.782 m2`. */
  readonly working: string;
  /** States a thickness, so its edges are coated too: end grain on solid wood, the open core on a board. */
  readonly edges: boolean;
  /** The area of its edges; 0 where the shape has none, undefined where its thickness is not stated. */
  readonly edgesM2?: number;
  /** The shape, where it has a thickness and its line does not say how many faces are meant. */
  readonly openFaces?: string;
  /** What is taken of its faces where the line does not say, and what to write. */
  readonly taken?: string;
}

export interface Substrate {
  /** `red oak`, `plywood`, `MDF`, `laminate`, `metal` … */
  readonly name: string;
  readonly kind: "species" | "plywood" | "MDF" | "particleboard" | "laminate" | "metal" | "unknown";
  readonly veneerMm?: number;
  readonly place?: Place;
}

export interface ExistingCoat {
  /** A family name, or `unknown clear`, `unknown paint`. */
  readonly what: FamilyName | "unknown clear" | "unknown paint";
  readonly coats: number;
  readonly place: Place;
}

export type OutdoorsWord = "rain" | "sun" | "sheltered";

export interface Surface {
  readonly name: string;
  readonly title?: string;
  readonly namePlace: Place;
  readonly headPlace: Place;
  readonly docs: string;
  readonly shapes: readonly ShapePart[];
  /** For one piece; of the shapes that can be read. */
  readonly areaM2: number;
  /** Why that is not its area: there is no shape, or one that cannot be read. */
  readonly areaGap?: "no shape" | "unreadable shape";
  readonly substrate: Substrate;
  readonly existing: readonly ExistingCoat[];
  readonly existingPlace?: Place;
  /** `existing as left by JOB` */
  readonly asLeftBy?: { readonly job: string; readonly place: Place };
  /** What spot tests showed of the finish on top. */
  readonly tested?: readonly Fact<SpotTestWord>[];
  /** What a lead test came to, as stated. */
  readonly lead?: Fact<LeadResult>;
  readonly wear: Fact<"hard" | "normal" | "light">;
  /** What reaches it outdoors; absent indoors. */
  readonly outdoors?: Fact<readonly OutdoorsWord[]>;
  /** Moisture content of the wood, percent of its dry weight. */
  readonly moisture?: Fact<number>;
  readonly notes: readonly string[];
}

export interface Piece extends Named {
  readonly kind: "piece";
  readonly built?: Fact<number>;
  readonly bought?: number;
  readonly newPrice?: number;
  /** When it is done. */
  readonly sellPrice?: number;
  readonly useBy: Fact<"adults" | "children" | "food">;
  readonly surfaces: readonly Surface[];
  readonly notes: readonly string[];
}

/** Opening hours: minutes after midnight, by weekday 1 (Monday) … 7 (Sunday). */
export interface OpeningSpan {
  readonly weekday: number;
  readonly opens: number;
  readonly closes: number;
}

export interface Shop extends Named {
  readonly kind: "shop";
  /** ISO 3166-1 alpha-2. */
  readonly country?: Fact<string>;
  readonly air?: Fact<{ readonly temperature: number; readonly humidity?: number }>;
  /** What reaches the work outdoors; absent indoors. */
  readonly outdoors?: Fact<readonly OutdoorsWord[]>;
  /** While the shop is closed; undefined where it is the same as by day, or not stated. */
  readonly nightAir?: Fact<{ readonly temperature: number; readonly humidity?: number }>;
  readonly room?: Fact<{ readonly m3: number; readonly airChanges?: number }>;
  /** Undefined: no hours stated, hands can work at any time. */
  readonly hours?: readonly OpeningSpan[];
  readonly hoursPlace?: Place;
  readonly closed: readonly { readonly from: string; readonly to: string }[];
  readonly crew: number;
  /** Undefined: not stated. */
  readonly labourPerH?: number;
  readonly currency?: string;
  readonly ignition: Fact<"none" | "pilot light" | "heater" | "welding">;
  readonly notes: readonly string[];
}

export type ParameterType =
  | "material"
  | "number"
  | "duration"
  | "recipe"
  | "method"
  | "grits"
  | "ratio"
  | "sheen";

export interface RecipeParameter {
  readonly name: string;
  readonly type: ParameterType;
  readonly place: Place;
  readonly hasDefault: boolean;
}

export type ForKind = "wood" | "veneer" | "laminate" | "metal" | "any";

export interface Recipe extends Named {
  readonly kind: "recipe";
  readonly parameters: readonly RecipeParameter[];
  /** The parameters as written, with their defaults. */
  readonly parameterSyntax: readonly Parameter[];
  readonly forKinds: readonly ForKind[];
  readonly forPlace?: Place;
  /** The statements as parsed; `expand` resolves their names against the scope of `file`. */
  readonly statements: readonly RecipeStatement[];
}

export interface JobPiece {
  readonly piece: string;
  readonly count: number;
  readonly place: Place;
}

export interface JobApply {
  readonly syntax: ApplyStatement;
  readonly place: Place;
}

/** What was really done: a `done` line of a job. */
export interface JobRecord {
  readonly syntax: DoneStatement;
  readonly place: Place;
  /** When it was finished, local ISO to the minute; without a time the midnight that ends the day. */
  readonly at: string;
  readonly facts: {
    /** Hands-on hours of all that the line says. */
    readonly tookHours?: number;
    readonly used?: { readonly dimension: "volume" | "mass"; readonly value: number };
    readonly paid?: number;
    readonly air?: { readonly temperature: number; readonly humidity?: number };
    /** From 1. */
    readonly pieces?: readonly number[];
    readonly trouble?: { readonly word: TroubleWord; readonly place: Place };
    readonly by?: string;
    readonly photo?: string;
    readonly note?: string;
  };
}

export interface Job extends Named {
  readonly kind: "job";
  /** In the order of time. */
  readonly records: readonly JobRecord[];
  /** Where a record begins of which no line is counted. */
  readonly uncounted?: Place;
  readonly pieces: readonly JobPiece[];
  readonly shop?: { readonly name: string; readonly place: Place };
  /** `date` is ISO `2027-03-08`, `time` `09:00`. */
  readonly start?: { readonly date: string; readonly time?: string; readonly place: Place };
  readonly ready?: { readonly date: string; readonly time?: string; readonly place: Place };
  readonly budget?: { readonly amount: number; readonly place: Place };
  readonly applies: readonly JobApply[];
  readonly spare: Fact<number>;
  readonly supplies?: Fact<number>;
  readonly after?: { readonly job: string; readonly place: Place };
  /** Whose the pieces are. */
  readonly owner?: string;
  /** How and where they are handed over. */
  readonly delivery?: string;
  readonly notes: readonly string[];
}

export type ModelDeclaration = Material | Piece | Shop | Recipe | Job;

/** One declaration's meaning, from its own text alone (names inside are not yet resolved). */
export interface LoweredDeclaration {
  readonly syntax: Declaration;
  readonly model?: ModelDeclaration;
  readonly findings: readonly LocalFinding[];
}

/** A language error found while reading or resolving one declaration; spans relative to it, as in `SyntaxProblem`. */
export interface LocalFinding extends SyntaxProblem {
  readonly rule: string;
  readonly related?: readonly { readonly span: Span; readonly message: string }[];
}
