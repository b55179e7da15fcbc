/**
 * An argument that does not fit its parameter.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const wrongArgument: LanguageRule = {
  id: "wrong-argument",
  group: "language",
  severity: "error",
  docs: {
    summary:
      "An argument has no name, names no parameter of the recipe, is given twice, or is of another type.",
    why: "The recipe would run without it, or with something that it cannot use.",
    remedy: "Name the argument and give what its parameter takes.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "No name, another name, another type",
      text: `recipe rest(time: duration) {
  for  wood
  wait time
}

recipe twice {
  for    wood
  follow rest(3 h, time: 2 h) #! wrong-argument
  follow rest(time: 2 h, coats: 2) #! wrong-argument
  follow rest(time: dewaxed_shellac) #! wrong-argument
}
`,
    },
    {
      title: "A number where a length is needed",
      text: `recipe clear_coat(film: number) {
  for   wood
  layer waterborne_polyurethane, wet film #! wrong-argument
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Named, and of its type",
      text: `recipe clear_coat(clear: material) {
  for   wood
  layer clear
  wait  until cured
}

recipe once {
  for    wood
  follow clear_coat(clear: waterborne_polyurethane)
}
`,
    },
  ],
};
