/** The texts in tables of the what the editor, the sheets and New Recipe show. */
import { SHAPES, TROUBLES, VERBS } from "../../../grammar/src/vocabulary.ts";
import { CARES, GENTLEST } from "../../src/core/knowledge/care.ts";
import { CHEMICALS } from "../../src/core/knowledge/chemicals.ts";
import { DUTIES } from "../../src/core/knowledge/duties.ts";
import { binderSchema, roleSchema } from "../../src/core/knowledge/family-schema.ts";
import { troubleOf } from "../../src/core/knowledge/troubles.ts";
import { type VocabularyName, vocabulary } from "../../src/core/knowledge/vocabularies.ts";
import { DIMENSIONS } from "../../src/core/measure/read-quantity.ts";
import { LAYDOWNS } from "../../src/core/quantities/laydown.ts";
import { FULL_DAYS } from "../../src/features/completion/fields.ts";
import { DRYING } from "../../src/features/hover/material-card.ts";
import { KINDS as DECLARED } from "../../src/features/hover/use-card.ts";
import { OTHER_WORDS } from "../../src/features/hover/word-cards.ts";
import { NO_NAME, TOO_MANY } from "../../src/features/rename/rename.ts";
import { KINDS } from "../../src/features/signatures.ts";
import { FULL, LEAD, LEAD_REPAIR, LIGHT, RAGS, REPAIRS, WET } from "../../src/views/care-card.ts";
import { VERDICT_WORDS } from "../../src/views/fumes/fumes-facts.ts";
import { LABELS } from "../../src/views/sheet/duties.ts";
import { GISTS, NOT_ALL_COUNTED } from "../../src/views/sheet/fumes-line.ts";
import { STRIPPER_VAPOUR, THIN_VENEER } from "../../src/views/sheet/gear.ts";
import { DATES, GAP_FIGURES } from "../../src/views/sheet/sheet.ts";
import { UNTIL } from "../../src/views/sheet/waits.ts";
import { capital, LAID, words } from "../../src/views/sheet/words.ts";
import { WAY_NAMES, WORTH_COLUMNS } from "../../src/views/worth.ts";

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
  "colour",
  "for",
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
  // What an unknown word stands for.
  ...["verb", "application method", "toner", "stage of a wait", "safety duty", "layer role"],
  ...roleSchema.options,
  ...binderSchema.options,
  "volume",
  "weight",
  ...Object.keys(DATES),
  ...Object.values(DATES),
  ...GAP_FIGURES.map(({ figure }) => figure),
  ...DUTIES.map(({ word }) => LABELS[word] ?? capital(words(word))),
  ...[STRIPPER_VAPOUR, THIN_VENEER].map(capital),
  ...Object.keys(VERBS).map(capital),
  ...Object.values(UNTIL),
  ...Object.values(LAID),
  ...Object.values(LAYDOWNS).map(({ name }) => name),
  ...Object.values(VERDICT_WORDS),
  ...Object.values(GISTS),
  NOT_ALL_COUNTED,
  ...Object.values(WAY_NAMES),
  ...WORTH_COLUMNS,
  ...[FULL, LEAD, LEAD_REPAIR, LIGHT, RAGS, REPAIRS, WET],
  ...CARES.map(({ name }) => name),
  ...[...CARES, GENTLEST].flatMap(({ clean, avoid, repair, source }) => [clean, avoid, repair, source]),
  "not stated",
  "wood not stated",
  "family not stated",
  "touch-dry",
  "recoat",
  "stackable",
  "cured",
  ...Object.values(SHAPES).flatMap(({ sizes }) => sizes.map((size) => size.replace(/[?~]$/u, ""))),
  ...TROUBLES.flatMap((word) => {
    const { looks, causes, remedy } = troubleOf(word)!;
    return [looks, ...causes, remedy];
  }),
  ...Object.values(DIMENSIONS).map(({ noun }) => noun),
  ...DECLARED.map((kind) => `${kind}s`),
  "from memory, confidence high",
  "from memory, confidence medium",
  NO_NAME,
  TOO_MANY,
];
