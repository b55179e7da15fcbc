/**
 * By the record a coat went on after the one below had become too hard for it, without a sanding; or the next one can only go
 * on so late.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { formatDuration } from "../../measure/format-amount.ts";
import { hoursBetween } from "../../measure/iso-dates.ts";
import { hoursApart, jobWith, nextCoats, recordedCoats } from "../recorded-coats.ts";
import type { TradeRule } from "../rule.ts";
import { isAuxiliaryOrWax } from "../short-wait.ts";
import { coatName, related } from "../texts.ts";

export const recordCoatTooLate: TradeRule = {
  id: "record-coat-too-late",
  group: "record",
  severity: "warning",
  docs: {
    summary:
      "By the record, a coat went on too late over one that was not sanded, or the next one now would.",
    why: "A film that has hardened gives the next coat nothing to hold on to: it may peel off in sheets.",
    remedy:
      "Scratch a hidden spot crosswise when it is cured and pull tape off it; sand and coat again if it lifts.",
    sources: ["the label's own latest time; tape on a cut as in ASTM D3359 (from memory)"],
  },
  failing: [
    {
      title: "Three days after a coat that asks for the next within one, and nothing sanded",
      text: jobWith([
        "done  2027-03-08 10:00 coat 1 of hall_clear on top",
        "done  2027-03-11 10:00 coat 2 of hall_clear on top #! record-coat-too-late",
      ])
        .replace(", between sand 220", "")
        .replace("120, 150\n", "120, 150\n  step   dampen\n  wait   overnight\n  step   scuff 220\n"),
    },
    {
      title: "The next coat waits for three days already, where it is to follow within one",
      text: jobWith([
        "done  2027-03-08 10:00 coat 1 of hall_clear on top",
        "done  2027-03-11 10:00 dust on top",
      ])
        .replace("120, 150\n", "120, 150\n  step   dampen\n  wait   overnight\n  step   scuff 220\n")
        .replace(
          "layer  hall_clear x 2, between sand 220\n",
          "layer  hall_clear\n  wait   until recoat\n  step   dust\n  layer  hall_clear #! record-coat-too-late\n",
        ),
    },
  ],
  passing: [
    {
      title: "The recipe sands between the coats",
      text: jobWith([
        "done  2027-03-08 10:00 coat 1 of hall_clear on top",
        "done  2027-03-11 10:00 coat 2 of hall_clear on top",
      ]),
    },
  ],
  checks: {
    onJob: ({ runs, goesOnAt, report, reportAt }) => {
      for (const { record, below } of recordedCoats(runs)) {
        const latest = below?.coat.material?.recoat?.value.latest;
        if (!below || latest === undefined || below.coat.abrasions.length > 0) continue;
        const { least } = hoursApart(below.record, record);
        if (least <= latest + 1e-6) continue;
        reportAt(record.place, {
          headline: t`Recorded after the latest time for this coat, without sanding`,
          why: t`${coatName(below.coat)} takes the next coat unsanded for ${formatDuration(latest)}, and this one came ${formatDuration(least)} after it.`,
          remedy: t`When it is cured, cut a cross into a hidden spot and pull tape off it; where it lifts, sand and coat again.`,
          related: [related(below.record.place, t`The coat below is recorded here`)],
        });
      }
      for (const { run, next, below, record } of goesOnAt === undefined ? [] : nextCoats(runs)) {
        const latest = below.material?.recoat?.value.latest;
        if (latest === undefined || below.abrasions.length > 0 || isAuxiliaryOrWax(next)) continue;
        const waited = hoursBetween(record.at, goesOnAt!);
        if (waited <= latest + 1e-6) continue;
        report(run, next, {
          headline: t`The latest time for this coat is over, and nothing is sanded`,
          why: t`${coatName(below)} takes the next coat unsanded for ${formatDuration(latest)}, and ${formatDuration(waited)} are over.`,
          remedy: t`Scuff the film and dust it before this coat goes on.`,
          abrades: "surface",
          related: [related(record.place, t`The coat below is recorded here`)],
        });
      }
    },
  },
};
