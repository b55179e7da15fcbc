/**
 * The closed vocabularies of meaning, one sentence a word, for completion, hover and the language reference.
 *
 * The grammar owns the words of fields, verbs, shapes and tails; here are the words that stand as values: families,
 * woods, sheens, colours, wear and the like. Every list is in the order in which it is offered.
 */
import { sentence } from "../sentence.ts";
import { DUTIES } from "./duties.ts";
import { FAMILIES } from "./families.ts";
import type { Family } from "./family-schema.ts";
import { IGNITION_SOURCES } from "./ignition.ts";
import { LEAD_FINDINGS, LEAD_METHODS } from "./lead.ts";
import { SPOT_TESTS } from "./spot-tests.ts";
import type { Wood } from "./wood-schema.ts";
import { SUBSTRATES, WOODS } from "./woods.ts";

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

export type VocabularyName =
  | "family"
  | "wood"
  | "sheen"
  | "colour"
  | "wear"
  | "outdoors"
  | "meant_for"
  | "ignition"
  | "rags"
  | "for"
  | "existing"
  | "tested"
  | "lead"
  | "lead_method"
  | "duty";

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

const FAMILY_WORDS: readonly WordDoc[] = [...FAMILIES.values()].map(familyWord);

const VOCABULARIES: Readonly<Record<VocabularyName, readonly WordDoc[]>> = {
  family: FAMILY_WORDS,
  wood: [
    ...WOODS.map((wood) => ({ word: wood.name, doc: woodDoc(wood) })),
    ...[...SUBSTRATES.values()].map((row) => ({ word: row.name, doc: row.note })),
  ],
  sheen: SHEENS,
  colour: COLOURS,
  wear: WEAR,
  outdoors: OUTDOORS,
  meant_for: MEANT_FOR,
  ignition: IGNITION_SOURCES,
  rags: RAGS,
  for: FOR_KINDS,
  existing: [
    ...EXISTING_STATES,
    ...[...FAMILIES.values()].filter((row) => row.group !== "auxiliary").map(familyWord),
  ],
  tested: SPOT_TESTS,
  lead: LEAD_FINDINGS,
  lead_method: LEAD_METHODS,
  duty: DUTIES,
};

/** Fields whose value is a word of one vocabulary and nothing else. */
export const VOCABULARY_OF_FIELD: Readonly<Record<string, VocabularyName>> = {
  family: "family",
  sheen: "sheen",
  colour: "colour",
  meant_for: "meant_for",
  wear: "wear",
  outdoors: "outdoors",
  tested: "tested",
  ignition: "ignition",
  rags: "rags",
  for: "for",
};

/** The words of a closed vocabulary, in the order in which they are offered. */
export function vocabulary(name: VocabularyName): readonly WordDoc[] {
  return VOCABULARIES[name];
}

/** The sentence for a word of a vocabulary, however it is capitalised. */
export function docOf(name: VocabularyName, word: string): string | undefined {
  const key = word.trim().toLowerCase().replace(/\s+/gu, " ");
  return VOCABULARIES[name].find((row) => row.word.toLowerCase() === key)?.doc;
}

const GROUP_TITLES: Readonly<Record<Family["group"], string>> = {
  clear: "clears",
  colour: "colour",
  paint: "paints",
  preparatory: "preparatory",
  auxiliary: "auxiliaries",
};

/** The families by group, with the title of the group as the language reference has it. */
export function familyGroups(): readonly { readonly title: string; readonly words: readonly WordDoc[] }[] {
  return Object.entries(GROUP_TITLES).map(([group, title]) => ({
    title,
    words: [...FAMILIES.values()].filter((row) => row.group === group).map(familyWord),
  }));
}

/** What a wood asks of the finisher, in one sentence. */
export function woodDoc(wood: Wood): string {
  const traits = [
    ...(wood.needsFiller ? ["open pores that want a grain filler for a smooth gloss"] : []),
    ...(wood.tannin === "rich" ? ["tannin that bleeds through pale waterborne paint"] : []),
    ...(wood.blotchProne ? ["blotches under stain unless conditioned"] : []),
    ...(wood.bleeds ? ["colour that bleeds through pale waterborne paint"] : []),
    ...(wood.oily ? ["oil that hinders drying and adhesion"] : []),
    ...(wood.knotty ? ["knots that bleed through paint"] : []),
  ];
  const colour = wood.colours.join(" to ");
  const look = `${sentence(colour)}, ${wood.texture} in texture, about ${wood.density} kg/m3`;
  return traits.length === 0 ? `${look}.` : `${look}: ${traits.join("; ")}.`;
}

function familyWord(row: Family): WordDoc {
  return { word: row.name, doc: row.doc ?? row.name };
}
