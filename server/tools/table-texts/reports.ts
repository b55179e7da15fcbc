/** The texts in tables of what is shown of jobs: sheets, lists, drawings and changes. */
import { readFileSync } from "node:fs";
import { METHODS } from "../../../grammar/src/vocabulary.ts";
import { SEVERITIES } from "../../src/core/findings.ts";
import { FINDING_WORDS } from "../../src/reports/changes-markdown.ts";
import { STAGES, STATUS_WORDS } from "../../src/reports/changes-rows.ts";
import { FIGURES, NOT_KNOWN } from "../../src/reports/comparison-text.ts";
import { NOT_SAFE } from "../../src/reports/findings-text.ts";
import {
  BY_ITS_LABEL,
  FOR_BOTH,
  GEAR_WORDS,
  STRIPPER_VAPOUR,
  THIN_VENEER,
} from "../../src/views/sheet/gear.ts";

/** What the lines of a sheet name in a word each: what to have on, and what can hurt. */
export const lineTexts = (): readonly string[] => [
  ...Object.values(GEAR_WORDS),
  FOR_BOTH,
  BY_ITS_LABEL,
  STRIPPER_VAPOUR,
  THIN_VENEER,
  "fumes",
  "fire",
  "oily rags",
  "solvent rags",
  "lead in old paint",
  "lead",
  "others in the room",
];

/** A drawing says its words by what it is handed, as `say("…")`. */
const sectionTexts = (): readonly string[] =>
  [
    ...readFileSync(new URL("../../src/reports/section-svg.ts", import.meta.url), "utf8").matchAll(
      /\bsay\("([^"]+)"/gu,
    ),
  ].map(([, text]) => text!);

/** How a coat goes on, as a line of a sheet says it. */
const byTexts = (): readonly string[] =>
  [...METHODS, "HVLP spray", "airless spray", "a rubber"].map((method) => `by ${method}`);

export const reportTexts = (): readonly string[] => [
  ...lineTexts(),
  ...byTexts(),
  ...sectionTexts(),
  ...SEVERITIES,
  ...Object.values(STATUS_WORDS),
  ...Object.values(FINDING_WORDS),
  ...Object.values(STAGES),
  ...Object.values(FIGURES).map(({ name }) => name),
  NOT_KNOWN,
  NOT_SAFE,
  // What a recipe declares, as it is named where it changes.
  "job",
  "piece",
  "recipe",
  "material",
  "shop",
  "stock",
];
