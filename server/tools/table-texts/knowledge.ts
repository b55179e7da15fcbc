/** The texts in tables of families, woods, duties and other tables of the trade, and of figures. */
import { WEEKDAYS } from "../../../grammar/src/vocabulary.ts";
import { possibleFinishes } from "../../src/core/knowledge/existing.ts";
import { FAMILY_NAMES } from "../../src/core/knowledge/family-names.ts";
import { carrierSchema } from "../../src/core/knowledge/family-schema.ts";
import { SOLVENTS } from "../../src/core/knowledge/solvents.ts";
import { type VocabularyName, vocabulary } from "../../src/core/knowledge/vocabularies.ts";
import { SUBSTRATES, WOODS } from "../../src/core/knowledge/woods.ts";
import { OUTDOORS, SHEENS } from "../../src/core/knowledge/words.ts";
import { MONTHS } from "../../src/core/measure/figures.ts";

export const knowledgeTexts = (): readonly string[] => [
  ...WEEKDAYS,
  ...MONTHS,
  "D MMM",
  ...FAMILY_NAMES,
  ...WOODS.map(({ name }) => name),
  ...SUBSTRATES.keys(),
  ...carrierSchema.options,
  ...[...SHEENS, ...OUTDOORS].map(({ word }) => word),
  // What a recipe is for, and the shapes whose faces its line leaves open.
  "wood",
  "veneer",
  "panel",
  "disc",
  "oval",
  ...SOLVENTS.map(({ name }) => name),
  ...TOLD.flatMap((name) => vocabulary(name).map(({ doc }) => doc)),
  ...[...SUBSTRATES.values()].map(({ note }) => note),
  ...WOODS.flatMap(({ colours, texture }) => [...colours, texture]),
  ...(["unknown clear", "unknown paint"] as const).flatMap((what) =>
    possibleFinishes(what).map(({ reason }) => reason),
  ),
];

/** The vocabularies with a sentence on each word; those on woods are put together of parts. */
const TOLD: readonly VocabularyName[] = [
  "family",
  "sheen",
  "colour",
  "wear",
  "outdoors",
  "meant_for",
  "ignition",
  "rags",
  "for",
  "existing",
  "tested",
  "lead",
  "lead_method",
  "duty",
];
