/** A line of the record stands for a coat that no line tells of. */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { jobWith } from "../recorded-coats.ts";
import type { TradeRule } from "../rule.ts";
import { useName } from "../texts.ts";

export const recordSkipsCoat: TradeRule = {
  id: "record-skips-coat",
  group: "record",
  severity: "warning",
  docs: {
    summary: "A `done` line comes after a coat that no line tells of.",
    why: "All before a recorded step counts as done, so the coat between counts, too, with a time and an amount that nobody wrote down.",
    remedy: "Add a line for that coat, or correct the number of this one.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "The second coat without the first",
      text: jobWith(["done  2027-03-08 14:00 coat 2 of hall_clear on top #! record-skips-coat"]),
    },
  ],
  passing: [
    {
      title: "Sanding need not be told of",
      text: jobWith([
        "done  2027-03-08 10:00 coat 1 of hall_clear on top",
        "done  2027-03-08 14:00 coat 2 of hall_clear on top",
      ]),
    },
  ],
  checks: {
    onJob: ({ runs, reportAt }) => {
      const seen = new Set<object>();
      for (const run of runs) {
        for (const [index, { record, isNamed, leftOut }] of (run.record?.done ?? []).flatMap((done) => [
          ...done,
        ])) {
          const { action } = run.moments[index]!;
          if (isNamed || leftOut || action.op !== "layer" || seen.has(record)) continue;
          seen.add(record);
          const name = useName(action.use);
          reportAt(record.place, {
            headline: t`A coat before this one is not recorded`,
            why:
              action.coats > 1
                ? t`This line counts coat ${action.coat} of ${name} as done as well, at the same time and with the amount of the plan.`
                : t`This line counts ${name} as done as well, at the same time and with the amount of the plan.`,
            remedy: t`Add a \`done\` line for that coat, or correct the number of this one.`,
          });
        }
      }
    },
  },
};
