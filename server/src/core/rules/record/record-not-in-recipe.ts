/** A line of the record tells of something that the recipe does not have, or has no more. */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { jobWith } from "../recorded-coats.ts";
import type { TradeRule } from "../rule.ts";

export const recordNotInRecipe: TradeRule = {
  id: "record-not-in-recipe",
  group: "record",
  severity: "warning",
  docs: {
    summary: "A `done` line tells of something that the job does not have.",
    why: "The plan goes on from what was done; a line that fits no step is left out, so plan, stock and hours are as if it had not been done.",
    remedy: "Name the step as the recipe does, or leave the line out and write a note.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "The recipe strips nothing",
      text: jobWith(["done  2027-03-08 10:00 strip on top #! record-not-in-recipe"]),
    },
    {
      title: "There is one shelf",
      text: jobWith(["done  2027-03-08 10:00 dust on top, piece 2 #! record-not-in-recipe"]),
    },
  ],
  passing: [{ title: "A step of the recipe", text: jobWith(["done  2027-03-08 10:00 dust on top"]) }],
  checks: {
    onJob: ({ job, runs, reportAt }) => {
      if (!runs.some(({ record }) => record)) return;
      const told = new Set(
        runs.flatMap(({ record }) =>
          (record?.done ?? []).flatMap((done) => [...done.values()].map((it) => it.record)),
        ),
      );
      const differences = runs.flatMap(({ record }) => record?.differences ?? []);
      for (const record of job.records) {
        const found = differences.find((each) => each.record === record);
        if (found?.kind === "no such piece") {
          reportAt(record.place, {
            headline: t`There is no such piece in this job`,
            why:
              found.pieces === 1
                ? t`The job has one piece with this surface, so the rest of the line tells of none.`
                : t`The job has ${found.pieces} pieces with this surface, so the rest of the line tells of none.`,
            remedy: t`Correct the number behind \`piece\`.`,
          });
        } else if (!told.has(record)) {
          const isKnown = found?.kind === "no such step" && found.isKnown;
          reportAt(record.place, {
            headline: isKnown ? t`This is recorded already` : t`No recipe of this job has such a step here`,
            why: isKnown
              ? t`The record is behind this step already, and the recipe has no other one like it. The line is left out of plan, stock and hours.`
              : t`The line names a step that none of the recipes on this surface has, so it is left out of plan, stock and hours.`,
            remedy: isKnown
              ? t`Delete the line, or correct its date or its step.`
              : t`Name the step as the recipe does, or a surface that a recipe is applied to.`,
          });
        }
      }
    },
  },
};
