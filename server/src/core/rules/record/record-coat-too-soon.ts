/** By the record a coat went on before the one below was ready for it. */

import { t } from "../../../../../grammar/src/translate.ts";
import { momentText } from "../../measure/figures.ts";
import { formatDuration } from "../../measure/format-amount.ts";
import { stageHours } from "../../surface/state.ts";
import { hoursApart, jobWith, recordedCoats } from "../recorded-coats.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, related, shareText } from "../texts.ts";

export const recordCoatTooSoon: TradeRule = {
  id: "record-coat-too-soon",
  group: "record",
  severity: "warning",
  docs: {
    summary: "By the record, a coat went on before the one below was ready.",
    why: "What is closed in too soon dries slowly from below: the film stays soft, wrinkles, clouds or cracks later.",
    remedy:
      "Leave it alone until both coats have had their time, try a hidden spot with a fingernail, and go on only then.",
    sources: ["the label's own time to the next coat; common practice, no source"],
  },
  failing: [
    {
      title: "An hour after a coat that asks for two",
      text: jobWith([
        "done  2027-03-08 10:00 coat 1 of hall_clear on top, took 15 min",
        "done  2027-03-08 11:15 coat 2 of hall_clear on top, took 15 min #! record-coat-too-soon",
      ]),
    },
  ],
  passing: [
    {
      title: "Two hours after it",
      text: jobWith([
        "done  2027-03-08 10:00 coat 1 of hall_clear on top, took 15 min",
        "done  2027-03-08 12:15 coat 2 of hall_clear on top, took 15 min",
      ]),
    },
    {
      title: "On one day, of which no hours are told",
      text: jobWith([
        "done  2027-03-08 coat 1 of hall_clear on top",
        "done  2027-03-08 coat 2 of hall_clear on top",
      ]),
    },
  ],
  checks: {
    onJob: ({ runs, reportAt }) => {
      for (const { record, below } of recordedCoats(runs)) {
        const needed = below && stageHours(below.coat, "recoat");
        if (!below || needed === undefined) continue;
        const { most } = hoursApart(below.record, record);
        if (most >= needed - TOLERANCE_H) continue;
        reportAt(record.place, {
          headline: t`Recorded ${formatDuration(needed - Math.max(0, most))} too soon after the coat below`,
          why: t`${coatName(below.coat)} had ${shareText(Math.max(0, most), needed)} that it needs before the next coat in this air (put on ${momentText(below.record.at)}). What it still holds can no longer leave.`,
          remedy: t`Correct the time if it is wrong; otherwise let both coats harden at least twice as long, and test a hidden spot before going on.`,
          related: [related(below.record.place, t`The coat below is recorded here`)],
        });
      }
    },
  },
};

/** Nobody looks at the clock more closely than to five minutes. */
const TOLERANCE_H = 5 / 60 + 1e-6;
