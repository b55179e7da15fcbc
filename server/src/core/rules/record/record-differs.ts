/** What was done differs from the recipe: a coat more, or another material. */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { jobWith } from "../recorded-coats.ts";
import type { TradeRule } from "../rule.ts";
import { useName } from "../texts.ts";

export const recordDiffers: TradeRule = {
  id: "record-differs",
  group: "record",
  severity: "information",
  docs: {
    summary: "A coat was recorded that the recipe does not have, or of another material.",
    why: "Film, times, stock and cost go by what was really put on, and the other rules judge it; this only says where it differs from the recipe.",
    remedy: "Nothing, where it is meant; otherwise correct the line.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "A third coat where the recipe has two",
      text: jobWith([
        "done  2027-03-08 10:00 coat of hall_clear on top",
        "done  2027-03-08 13:00 coat of hall_clear on top",
        "done  2027-03-08 16:00 coat of hall_clear on top #! record-differs",
      ]),
    },
    {
      title: "Out of another can",
      text: jobWith(["done  2027-03-08 10:00 coat 1 of floor_clear on top #! record-differs"]),
    },
  ],
  passing: [
    { title: "As the recipe has it", text: jobWith(["done  2027-03-08 10:00 coat 1 of hall_clear on top"]) },
  ],
  checks: {
    onJob: ({ runs, reportAt }) => {
      const seen = new Set<object>();
      for (const each of runs.flatMap(({ record }) => record?.differences ?? [])) {
        if (seen.has(each.record)) continue;
        seen.add(each.record);
        if (each.kind === "extra coat") {
          reportAt(each.record.place, {
            headline: t`A coat more than in the recipe: number ${each.coat.coat}`,
            why: t`It counts for film, drying, stock and cost like the others; the plan goes on after it.`,
            remedy: t`Nothing, where it was put on; otherwise correct the line.`,
          });
        } else if (each.kind === "another material") {
          reportAt(each.record.place, {
            headline: t`The recipe has ${useName(each.planned.use)} here`,
            why: t`What was put on is ${useName({ name: each.material.name, material: each.material })}: its own times, film and stock count from here, and its fit with the layers is judged.`,
            remedy: t`Nothing, where this can was used; otherwise correct the material.`,
          });
        }
      }
    },
  },
};
