/**
 * Words that the notation has no line for.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const keptAsNote: LanguageRule = {
  id: "kept-as-note",
  group: "language",
  severity: "hint",
  docs: {
    summary: "A line says something that the notation has no line for; it is kept as a note.",
    why: "It stands on the sheet, and rules read its words for dangers, but no figure is worked out from it. The formatter puts it in quotes.",
    remedy: "Leave it as it is, or write the line that the message names.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "What a shop has beside air and hours",
      text: `shop mill_room {
  air   18 C, 55 % RH
  light from the north #! kept-as-note
}
`,
    },
  ],
  passing: [
    {
      title: "The same as a note",
      text: `shop mill_room {
  air  18 C, 55 % RH
  note "light from the north"
}
`,
    },
  ],
};
