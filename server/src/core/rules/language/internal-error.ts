/**
 * A fault in Finishwright itself. No text is known that brings it, so it has no examples; tests put failing parts in.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const internalError: LanguageRule = {
  id: "internal-error",
  group: "language",
  severity: "error",
  alwaysShown: true,
  docs: {
    summary:
      "A part of Finishwright failed, so something was not checked: a bug in the program, not in the recipe.",
    why: "A rule that fails finds nothing, and that must not look as if nothing were wrong. All other findings of the file stand.",
    remedy:
      "Check by hand what the message names, and report the bug with the recipe that brings it. The command line ends with status 2.",
    sources: [BY_DEFINITION],
  },
  failing: [],
  passing: [],
};
