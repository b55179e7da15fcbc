/**
 * The closed vocabularies of meaning, for completion, hover and the language reference.
 *
 * The grammar owns the words of fields, verbs, shapes and tails; here are the words that stand as values: families,
 * woods, sheens, colours, wear and the like. Every list is in the order in which it is offered.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { sentence } from "../sentence.ts";
import { DUTIES } from "./duties.ts";
import { FAMILIES } from "./families.ts";
import type { Family } from "./family-schema.ts";
import { IGNITION_SOURCES } from "./ignition.ts";
import { LEAD_FINDINGS, LEAD_METHODS } from "./lead.ts";
import { SPOT_TESTS } from "./spot-tests.ts";
import type { Wood } from "./wood-schema.ts";
import { SUBSTRATES, WOODS } from "./woods.ts";
import {
  COLOURS,
  EXISTING_STATES,
  FOR_KINDS,
  MEANT_FOR,
  OUTDOORS,
  RAGS,
  SHEENS,
  WEAR,
  type WordDoc,
} from "./words.ts";

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

const FAMILY_WORDS: readonly WordDoc[] = [...FAMILIES.values()].map(familyWord);

const VOCABULARIES: Readonly<Record<VocabularyName, readonly WordDoc[]>> = {
  family: FAMILY_WORDS,
  wood: [
    ...WOODS.map((wood) => ({
      word: wood.name,
      // Put together of parts, in the language that is spoken when it is asked for.
      get doc() {
        return woodDoc(wood);
      },
    })),
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
    ...(wood.needsFiller ? [t`open pores that want a grain filler for a smooth gloss`] : []),
    ...(wood.tannin === "rich" ? [t`tannin that bleeds through pale waterborne paint`] : []),
    ...(wood.blotchProne ? [t`blotches under stain unless conditioned`] : []),
    ...(wood.bleeds ? [t`colour that bleeds through pale waterborne paint`] : []),
    ...(wood.oily ? [t`oil that hinders drying and adhesion`] : []),
    ...(wood.knotty ? [t`knots that bleed through paint`] : []),
  ];
  const colour = wood.colours.map(translated).reduce((from, to) => t`${from} to ${to}`);
  const look = t`${sentence(colour)}, ${translated(wood.texture)} in texture, about ${wood.density} kg/m3`;
  return traits.length === 0 ? `${look}.` : `${look}: ${traits.join("; ")}.`;
}

function familyWord(row: Family): WordDoc {
  return { word: row.name, doc: row.doc ?? row.name };
}
