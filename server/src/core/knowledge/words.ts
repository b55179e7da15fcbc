/**
 * Words that stand as values, one sentence a word: sheens, colours, wear and the like. Families, woods, duties and what
 * else has a table of its own stand there; `vocabularies.ts` has all of them together.
 */
export interface WordDoc {
  readonly word: string;
  readonly doc: string;
}

/** Gloss at 60° and, where it is defined so, sheen at 85°, in gloss units. */
export interface SheenWord extends WordDoc {
  readonly gloss60: readonly [number, number];
  readonly source: string;
}

const GLOSS_LEVELS = "MPI gloss levels, 60° gloss units (undated), by way of a secondary table";

export const SHEENS = [
  { word: "dead flat", doc: "No shine from any side.", gloss60: [0, 5], source: GLOSS_LEVELS },
  { word: "matte", doc: "A low, velvet shine seen from the side.", gloss60: [0, 10], source: GLOSS_LEVELS },
  { word: "eggshell", doc: "A soft shine, as of an egg.", gloss60: [10, 25], source: GLOSS_LEVELS },
  { word: "satin", doc: "A clear shine without reflections.", gloss60: [20, 35], source: GLOSS_LEVELS },
  {
    word: "semi-gloss",
    doc: "Shiny; shapes reflect blurred.",
    gloss60: [35, 70],
    source: GLOSS_LEVELS,
  },
  { word: "gloss", doc: "Shapes reflect sharply.", gloss60: [70, 100], source: GLOSS_LEVELS },
] as const satisfies readonly SheenWord[];

/** The sheen that so many gloss units at 60° are, by the upper ends of the levels; of two that meet the duller one. */
export const sheenOfGloss = (units: number): string =>
  SHEENS.find(({ gloss60: [low, high] }) => units <= Math.max((low + high) / 2, high - 5))?.word ?? "gloss";

/** The bare words of a table, in its order, for whoever reads them from a text. */
export const wordList = <W extends string>(rows: readonly { readonly word: W }[]): readonly W[] =>
  rows.map(({ word }) => word);

/** Sheens that haze over a dark colour. Satin holds less of the flatting powder, and most shops use it there as it is. */
export const DULL_SHEENS: readonly string[] = ["dead flat", "matte", "eggshell"];

export const COLOURS = [
  { word: "clear", doc: "Without colour; stays pale." },
  { word: "amber", doc: "Warm in tone from the first, and warmer with the years." },
  { word: "white", doc: "White; clears that amber yellow over it." },
] as const satisfies readonly WordDoc[];

export const WEAR = [
  { word: "hard", doc: "Table tops, seats, floors: three film-forming coats at least." },
  { word: "normal", doc: "Legs, cases and doors; taken where nothing is said." },
  { word: "light", doc: "Frames, mouldings and what is only looked at." },
] as const satisfies readonly WordDoc[];

export const OUTDOORS = [
  { word: "rain", doc: "Rain wets it: only finishes made for outdoors last." },
  { word: "sun", doc: "Sun falls on it: ultraviolet light breaks clear films down, pigments keep it off." },
  { word: "sheltered", doc: "Under a roof: damp air and cold, no rain and little sun." },
] as const satisfies readonly WordDoc[];

export const MEANT_FOR = [
  { word: "adults", doc: "Taken where nothing is said." },
  {
    word: "children",
    doc: "Chewed and licked: wait for the full cure, and let the label say that it is meant for it.",
  },
  {
    word: "food",
    doc: "Food lies on it: wait for the full cure, and let the label say that it is meant for it.",
  },
] as const satisfies readonly WordDoc[];

export const RAGS = [
  {
    word: "self-heating",
    doc: "Its rags can heat up and catch fire by themselves, as those of drying oils do.",
  },
] as const satisfies readonly WordDoc[];

export const FOR_KINDS = [
  { word: "wood", doc: "Wood with or without veneer, and sheet goods." },
  { word: "veneer", doc: "Veneered wood and plywood, where sanding may go through." },
  { word: "laminate", doc: "Printed plastic sheet." },
  { word: "metal", doc: "Metal parts." },
  { word: "any", doc: "Any of them; taken where nothing is said." },
] as const satisfies readonly WordDoc[];

export const EXISTING_STATES = [
  { word: "bare", doc: "Nothing on it; taken where nothing is said." },
  { word: "unknown clear", doc: "An old clear finish of unknown kind; rules take the worst it may be." },
  { word: "unknown paint", doc: "Old paint of unknown kind; rules take the worst it may be, lead included." },
] as const satisfies readonly WordDoc[];
