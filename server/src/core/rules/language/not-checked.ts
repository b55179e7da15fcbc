/**
 * What goes beyond the bounds of what is worked out. Its texts are too long for examples; `tests/robustness/budgets.test.ts`
 * has them.
 */

import {
  MOST_FILE_JOB_ACTIONS,
  MOST_FINDINGS,
  MOST_JOB_ACTIONS,
  MOST_PLANNED,
  MOST_RECIPE_ACTIONS,
} from "../../budget.ts";
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const notChecked: LanguageRule = {
  id: "not-checked",
  group: "language",
  severity: "error",
  alwaysShown: true,
  docs: {
    summary: "A file, job or recipe is larger than what is worked out, and what lies beyond is left out.",
    why: `Recipes that follow each other again and again grow without end, and the check has to come to one. The bounds are counted, so they are the same on every machine: 5000 steps, coats and waits for one surface, ${MOST_JOB_ACTIONS} for one job, ${MOST_FILE_JOB_ACTIONS} for the jobs and ${MOST_RECIPE_ACTIONS} for the recipes of a file, ${MOST_PLANNED} with all pieces for the plan of a job, ${MOST_FINDINGS} findings a file. A text of more than 4 MB is not read at all.`,
    remedy: "Divide the work into smaller jobs, recipes or files.",
    sources: [BY_DEFINITION],
  },
  failing: [],
  passing: [],
};
