/** The texts in tables of the what the editor, the sheets and New Recipe show. */
import { TROUBLES } from "../../../grammar/src/vocabulary.ts";
import { CHEMICALS } from "../../src/core/knowledge/chemicals.ts";
import { binderSchema, roleSchema } from "../../src/core/knowledge/family-schema.ts";
import { type VocabularyName, vocabulary } from "../../src/core/knowledge/vocabularies.ts";
import { FULL_DAYS } from "../../src/features/completion/fields.ts";
import { DRYING } from "../../src/features/hover/material-card.ts";
import { OTHER_WORDS } from "../../src/features/hover/word-cards.ts";
import { NO_NAME, TOO_MANY } from "../../src/features/rename/rename.ts";
import { KINDS } from "../../src/features/signatures.ts";

/** What a name names, as a refusal to rename and an outline say it. */
const NAMED = ["material", "piece", "surface", "shop", "recipe", "job", "parameter", "use"];

/** Words of the notation that stand in sentences for people, too. */
const VOCABULARIES: readonly VocabularyName[] = [
  "wear",
  "meant_for",
  "ignition",
  "lead_method",
  "tested",
  "existing",
];

export const viewTexts = (): readonly string[] => [
  ...NAMED,
  ...FULL_DAYS,
  ...Object.values(DRYING),
  ...Object.values(OTHER_WORDS),
  ...Object.values(KINDS),
  ...VOCABULARIES.flatMap((name) => vocabulary(name).map(({ word }) => word)),
  ...TROUBLES,
  ...CHEMICALS.map(({ name }) => name),
  "silicone",
  ...roleSchema.options,
  ...binderSchema.options,
  "volume",
  "weight",
  NO_NAME,
  TOO_MANY,
];
