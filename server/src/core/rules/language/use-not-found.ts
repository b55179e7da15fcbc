/**
 * A used file that is not there.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const useNotFound: LanguageRule = {
  id: "use-not-found",
  group: "language",
  severity: "error",
  alwaysShown: true,
  docs: {
    summary: "A file named by `use` cannot be found, or may not be read.",
    why: "Nothing that it declares can be named here, so other errors may follow from this one, and what depends on it is not checked.",
    remedy: "Fix the path, which is relative to this file, or add the file; of a package, install it.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "No such file",
      text: `use "missing.finish" #! use-not-found

recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Nothing is used",
      text: `recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
};
