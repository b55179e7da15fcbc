/** The air of a record is outside of what the can allows. */
import { t } from "../../../../../grammar/src/translate.ts";
import { LABEL_TIMES, PRACTICE } from "../../knowledge/sources.ts";
import { figuresIn } from "../../measure/shown-figures.ts";
import { jobWith, recordedCoats } from "../recorded-coats.ts";
import type { TradeRule } from "../rule.ts";
import { useName } from "../texts.ts";

export const recordAirOutsideLimits: TradeRule = {
  id: "record-air-outside-limits",
  group: "record",
  severity: "warning",
  docs: {
    summary: "A coat was recorded in air that its label does not allow.",
    why: "In the cold a film does not form, in the heat it dries before it has flowed, and in damp air it clouds or stays soft.",
    remedy:
      "Bring the room to air that the label allows, look at the coat again when it is cured, and sand it off if it is soft or cloudy.",
    sources: [PRACTICE, LABEL_TIMES],
  },
  failing: [
    {
      title: "At 7 C where the label asks for 10",
      text: jobWith([
        "done  2027-03-08 10:00 coat 1 of hall_clear on top, air 7 C, 60 % RH #! record-air-outside-limits",
      ]),
    },
  ],
  passing: [
    {
      title: "At 17 C",
      text: jobWith(["done  2027-03-08 10:00 coat 1 of hall_clear on top, air 17 C, 60 % RH"]),
    },
  ],
  checks: {
    onJob: ({ runs, units, reportAt }) => {
      for (const { record, moment } of recordedCoats(runs)) {
        const { air } = record.facts;
        const limits = moment.action.use.material?.limits?.value;
        if (!air || !limits) continue;
        const isCold = limits.low !== undefined && air.temperature < limits.low;
        const isWarm = limits.high !== undefined && air.temperature > limits.high;
        const isDamp = limits.humidity !== undefined && (air.humidity ?? 0) > limits.humidity;
        if (!isCold && !isWarm && !isDamp) continue;
        reportAt(record.place, {
          headline: isCold
            ? t`Recorded in air that is too cold for this label`
            : isWarm
              ? t`Recorded in air that is too warm for this label`
              : t`Recorded in air that is too damp for this label`,
          why: t`It was put on at ${figuresIn(units).air(air)}, outside of the limits of ${useName(moment.action.use)}.`,
          remedy: t`Bring the room within the limits, and look at the coat again before the next one.`,
        });
      }
    },
  },
};
