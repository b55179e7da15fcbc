/** The texts in tables of families, woods, duties and other tables of the trade, and of figures. */
import { WEEKDAYS } from "../../../grammar/src/vocabulary.ts";
import { MONTHS } from "../../src/core/measure/figures.ts";

export const knowledgeTexts = (): readonly string[] => [...WEEKDAYS, ...MONTHS, "D MMM"];
