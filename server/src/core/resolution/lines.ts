/**
 * The lines of a recipe, resolved: quantities in canonical units, and names with what they mean. Only what a parameter
 * stands for is left open; `surface/expand.ts` puts that in for every call.
 */
import type {
  Call,
  LayerStatement,
  NoteStatement,
  RecipeStatement,
  Span,
  StepStatement,
  WaitStatement,
} from "../../../../grammar/src/tree.ts";
import { METHODS, type WAIT_STAGES } from "../../../../grammar/src/vocabulary.ts";
import type { Material, Recipe, RecipeParameter } from "../model/model.ts";
import type { Place } from "../place.ts";

/** What a parameter stands for in one call. Undefined content: not known (a parameter without argument or default). */
export type Bound =
  | { readonly type: "material"; readonly material?: Material }
  | { readonly type: "number"; readonly value?: number }
  | { readonly type: "duration"; readonly hours?: number }
  | { readonly type: "recipe"; readonly recipe?: Recipe }
  | { readonly type: "method"; readonly method?: string }
  | { readonly type: "grits"; readonly grits?: readonly number[] }
  | { readonly type: "ratio"; readonly ratio?: Parts }
  | { readonly type: "sheen"; readonly sheen?: string };

/** Parts of one thing to parts of another. */
export interface Parts {
  readonly a: number;
  readonly b: number;
}

export type Bindings = ReadonlyMap<string, Bound>;

/** A figure: stated, in the canonical unit of its dimension, or what a parameter stands for. */
export type Figure = { readonly value: number } | { readonly parameter: string };

/** A material as named on a line; of a parameter, each call says which it is. */
export interface MaterialName {
  readonly name: string;
  readonly place: Place;
  readonly isParameter: boolean;
  /** Absent where it is not known. */
  readonly material?: Material;
}

/** All pieces of a surface in one go, or each by itself. */
export type Batch = "together" | "apart";

/** `takes 20 min`, in hours, or `takes 15 min/m2`, in hours a square metre. */
export interface TakesTail {
  readonly per: "piece" | "m2";
  readonly time: Figure;
}

/** `uses 50 mL`, in litres, or `uses 50 g`. */
export interface UsesTail {
  readonly unit: "L" | "g";
  readonly amount: number;
}

/** `only 20 % "where it is worn"`: the part of the surface that a line is done on. */
export interface PartTail {
  readonly where?: string;
  /** 0 to 1 of the surface. */
  readonly share?: number;
  readonly areaM2?: number;
}

export interface StepLine {
  readonly kind: "step";
  readonly syntax: StepStatement;
  /** The one that was probably meant, where it is misspelt; absent where none is near, and where the work is said in words of one's own. */
  readonly verb?: string;
  readonly use?: MaterialName;
  /** In order; undefined for one that cannot be read. */
  readonly grits: readonly (Figure | undefined)[];
  readonly takes?: TakesTail;
  readonly uses?: UsesTail;
  readonly batch?: Batch;
  readonly part?: PartTail;
  /** In money, for each piece. */
  readonly costs?: number;
  /** How often it is done. */
  readonly times?: Figure;
  /** Hours that it is left to act. */
  readonly leave?: Figure;
  /** What else is said of it, in words. */
  readonly said?: string;
}

export interface LayerLine {
  readonly kind: "layer";
  readonly syntax: LayerStatement;
  /** Absent where the line names none. */
  readonly use?: MaterialName;
  /** Absent where the line states none, or none that can be. */
  readonly coats?: Figure;
  /** Added to the coats: -1 of `x coats - 1`. */
  readonly coatsMore?: number;
  /** The most of `x 2 to 3`. */
  readonly coatsTo?: Figure;
  /** The coats are sessions of French polishing. */
  readonly sessions?: true;
  readonly method: string | { readonly parameter: string };
  readonly wiped?: { readonly after?: Figure };
  readonly thinned?: {
    readonly ratio: Parts | { readonly parameter: string };
    /** Absent where the material's own `thin` names it. */
    readonly thinner?: MaterialName;
  };
  readonly tinted?: { readonly percent: Figure; readonly tint: MaterialName };
  readonly toner: boolean;
  /** Whether it goes on is decided at the bench. */
  readonly optional?: true;
  /** What that depends on, in words. */
  readonly when?: string;
  readonly part?: PartTail;
  /** Passes of one coat, and the hours between them. */
  readonly passes?: Figure;
  readonly flash?: Figure;
  /** In millimetres. */
  readonly wet?: Figure;
  /** What goes on by weight, in g/m2, in place of `wet`. */
  readonly wetGrams?: Figure;
  /** Percent of what leaves the gun that lands. */
  readonly transfer?: Figure;
  /** Every coat is buffed, after so many hours, on the tail that says so. */
  readonly buffed?: { readonly after?: Figure; readonly step: StepLine };
  /** Coats laid on one another while they are wet. */
  readonly wetOnWet?: true;
  /** What else is said of it, in words. */
  readonly said?: string;
  /** The sheen that it is to have. */
  readonly sheen?: string | { readonly parameter: string };
  /** How heavily it is laid, where the line says so. */
  readonly laid?: "thin" | "mist" | "full" | "flooded";
  readonly takes?: TakesTail;
  readonly batch?: Batch;
  /** Done between coats. */
  readonly block?: readonly RecipeLine[];
}

export interface WaitLine {
  readonly kind: "wait";
  readonly syntax: WaitStatement;
  readonly until?: (typeof WAIT_STAGES)[number];
  readonly overnight: boolean;
  /** In hours. */
  readonly time?: Figure;
}

export interface SafetyLine {
  readonly kind: "safety";
  readonly syntax: RecipeStatement;
  readonly duties: readonly { readonly name: string; readonly span: Span; readonly airChanges?: number }[];
  /** What is said of the duties, and what is worn besides: a note each. */
  readonly said: readonly string[];
}

export interface FollowLine {
  readonly kind: "follow";
  readonly syntax: RecipeStatement;
  readonly call?: ResolvedCall;
}

export interface NoteLine {
  readonly kind: "note";
  readonly syntax: NoteStatement;
}

/** A field, or a line that cannot be read. */
export interface OtherLine {
  readonly kind: "other";
  readonly syntax: RecipeStatement;
}

export type RecipeLine = StepLine | LayerLine | WaitLine | SafetyLine | FollowLine | NoteLine | OtherLine;

/** `apply R(…)` or `follow R(…)`. */
export interface ResolvedCall {
  readonly syntax: Call;
  /** The recipe that is called; absent where it is not known, and for a parameter. */
  readonly recipe?: Recipe;
  /** The parameter that is called. */
  readonly parameter?: RecipeParameter;
  /** Those with a name and a value, in order. */
  readonly arguments: readonly ResolvedArgument[];
}

export interface ResolvedArgument {
  readonly name: string;
  readonly value: ArgumentValue;
}

/** What is given to a parameter, as far as it can be read without its type, which may depend on who calls. */
export type ArgumentValue =
  | { readonly kind: "parameter"; readonly parameter: string }
  | { readonly kind: "name"; readonly text: string; readonly material?: Material; readonly recipe?: Recipe }
  | { readonly kind: "figure"; readonly number?: number; readonly hours?: number }
  | { readonly kind: "ratio"; readonly ratio: Parts }
  | { readonly kind: "grits"; readonly grits: readonly number[] }
  | { readonly kind: "text" };

/** What a figure comes to with these bindings. */
export function figureIn(figure: Figure | undefined, bindings: Bindings): number | undefined {
  if (!figure) return undefined;
  if ("value" in figure) return figure.value;
  const bound = bindings.get(figure.parameter);
  if (bound?.type === "number") return bound.value;
  return bound?.type === "duration" ? bound.hours : undefined;
}

const isMethod = (word: string): boolean => (METHODS as readonly string[]).includes(word);

/** The grits that a figure comes to: one, or all that a parameter stands for. */
export function gritsIn(figure: Figure | undefined, bindings: Bindings): readonly number[] | undefined {
  if (figure && "parameter" in figure) {
    const bound = bindings.get(figure.parameter);
    if (bound?.type === "grits") return bound.grits;
  }
  const grit = figureIn(figure, bindings);
  return grit === undefined ? undefined : [grit];
}

/** How a coat is put on; `brush` where that is not known. */
export function methodIn(method: LayerLine["method"], bindings: Bindings): string {
  if (typeof method === "string") return method;
  const bound = bindings.get(method.parameter);
  return (bound?.type === "method" ? bound.method : undefined) ?? "brush";
}

/** The sheen that a coat is to have; undefined where none is said, or it is not known. */
export function sheenIn(sheen: LayerLine["sheen"], bindings: Bindings): string | undefined {
  if (sheen === undefined || typeof sheen === "string") return sheen;
  const bound = bindings.get(sheen.parameter);
  return bound?.type === "sheen" ? bound.sheen : undefined;
}

/** Parts to parts; undefined where they are not known. */
export function partsIn(
  ratio: NonNullable<LayerLine["thinned"]>["ratio"],
  bindings: Bindings,
): Parts | undefined {
  if (!("parameter" in ratio)) return ratio;
  const bound = bindings.get(ratio.parameter);
  return bound?.type === "ratio" ? bound.ratio : undefined;
}

/** The material of a line with these bindings; undefined where it is not known. */
export function materialIn(
  { name, isParameter, material }: MaterialName,
  bindings: Bindings,
): Material | undefined {
  if (!isParameter) return material;
  const bound = bindings.get(name);
  return bound?.type === "material" ? bound.material : undefined;
}

/** The recipe that a call means with these bindings; undefined where it is not known. */
export function recipeIn({ recipe, parameter }: ResolvedCall, bindings: Bindings): Recipe | undefined {
  const bound = parameter && bindings.get(parameter.name);
  return bound?.type === "recipe" ? bound.recipe : recipe;
}

/** What an argument stands for, given to a parameter of this type; undefined where it can be none. */
export function boundOf(
  type: RecipeParameter["type"],
  value: ArgumentValue,
  bindings: Bindings,
): Bound | undefined {
  switch (value.kind) {
    case "text":
      return undefined;
    case "parameter":
      return bindings.get(value.parameter);
    case "name":
      if (type === "material") return { type, material: value.material };
      if (type === "sheen") return { type, sheen: value.text };
      if (type === "method") return isMethod(value.text) ? { type, method: value.text } : { type };
      return type === "recipe" ? { type, recipe: value.recipe } : { type };
    case "ratio":
      return type === "ratio" ? { type, ratio: value.ratio } : undefined;
    case "grits":
      return type === "grits" ? { type, grits: value.grits } : undefined;
    case "figure":
      if (type === "number") return { type, value: value.number };
      if (type === "grits") return value.number === undefined ? { type } : { type, grits: [value.number] };
      return type === "duration" ? { type, hours: value.hours } : undefined;
  }
}
