/** What went wrong by the record, what it came of, and how it is put right. */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { troubleOf } from "../../knowledge/troubles.ts";
import { sentence } from "../../sentence.ts";
import { jobWith, recordedCoats } from "../recorded-coats.ts";
import type { TradeRule } from "../rule.ts";
import { fitting, useName } from "../texts.ts";
import { rankedCauses } from "../trouble-causes.ts";

export const recordTrouble: TradeRule = {
  id: "record-trouble",
  group: "record",
  severity: "warning",
  docs: {
    summary: "A `done` line names a trouble: its causes, those seen here first, and what to do.",
    why: "The same coat goes wrong again while its cause is there. What the record and the recipe show of it comes first; the rest is what it comes of elsewhere.",
    remedy: "Look at the first cause, try the repair on a hidden spot, and only then go on.",
    sources: [
      "ISO 4618, terms and definitions of paints and varnishes (from memory)",
      "UFC 3-190-06 (MIL-HDBK-1110)",
      "common practice, no source",
    ],
  },
  failing: [
    {
      title: "White in damp air",
      text: jobWith([
        "done  2027-03-08 10:00 coat 1 of hall_clear on top, air 18 C, 78 % RH, trouble blush #! record-trouble",
      ]),
    },
    {
      title: "Wrinkles after a coat that came too soon",
      text: jobWith([
        "done  2027-03-08 10:00 coat 1 of hall_clear on top, took 15 min",
        "done  2027-03-08 11:00 coat 2 of hall_clear on top, took 15 min, trouble wrinkles #! record-coat-too-soon, record-trouble",
      ]),
    },
  ],
  passing: [
    {
      title: "Nothing went wrong",
      text: jobWith(["done  2027-03-08 10:00 coat 1 of hall_clear on top, air 18 C, 78 % RH"]),
    },
  ],
  checks: {
    onJob: ({ runs, units, reportAt }) => {
      for (const coat of recordedCoats(runs)) {
        const { record, run, moment } = coat;
        const said = record.facts.trouble;
        const trouble = said && troubleOf(said.word);
        if (!said || !trouble) continue;
        const { action } = moment;
        const covers = action.use.material?.covers?.value;
        const areaM2 = run.surface?.areaM2 ?? 0;
        const planned = covers === undefined || areaM2 <= 0 ? undefined : (areaM2 * run.pieces) / covers;
        const causes = rankedCauses(trouble, coat, units, planned);
        const [first] = causes;
        const seen = causes.flatMap((cause) => cause.seen ?? []);
        const others = causes.filter((cause) => cause.seen === undefined).map(({ id }) => translated(id));
        const looks = translated(trouble.looks);
        const likely =
          seen.length > 0
            ? t`Most likely because ${seen.reduce((all, each) => t`${all}; then because ${each}`)}.`
            : t`The record shows none of its usual causes.`;
        const elsewhere =
          others.length > 0 ? t` Elsewhere it also comes of ${others.slice(0, 4).join(", ")}.` : "";
        const name = sentence(translated(trouble.word));
        const lookAt = seen.length > 0 ? t`look at ${translated(first!.id)} first` : looks;
        reportAt(said.place, {
          headline: fitting([t`${name} on ${useName(action.use)}: ${lookAt}`, `${name}: ${lookAt}`]),
          why: `${sentence(looks).replace(/\.$/u, "")}. ${likely}${elsewhere}`,
          remedy: t`${translated(trouble.remedy)}. Try it on a hidden spot; the label and the data sheet come first.`,
          abrades: "surface",
        });
      }
    },
  },
};
