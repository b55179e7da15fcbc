/** The texts in tables of families, woods, duties and other tables of the trade, and of figures. */
import { WEEKDAYS } from "../../../grammar/src/vocabulary.ts";
import { FAMILY_NAMES } from "../../src/core/knowledge/family-names.ts";
import { carrierSchema } from "../../src/core/knowledge/family-schema.ts";
import { SOLVENTS } from "../../src/core/knowledge/solvents.ts";
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
];
