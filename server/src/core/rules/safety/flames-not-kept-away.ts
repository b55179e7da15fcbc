/**
 * A liquid whose vapour can be lit, and not a word on flames and sparks.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { OSHA_FLAMMABLE } from "../../knowledge/sources.ts";
import { dutyChecks, needFor } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";
import { isSprayed } from "../two-part.ts";

export const flamesNotKeptAway: TradeRule = {
  id: "flames-not-kept-away",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A liquid whose vapour can be lit is put on, wiped with or thinned with, and the recipe does not state `no_ignition`.",
    why: "The vapour of thinners, spirits, shellac, lacquer and most oil finishes burns. It is heavier than air and creeps along the floor to a pilot light, a heater, a cigarette or the motor of a sander, a fan or a vacuum cleaner.",
    remedy:
      "Put out or switch off whatever burns, glows or sparks, and state `safety no_ignition` above the first such line. A flash point above 60 C on the label (`flash 61 C`) lifts this. Distances and quantities are for the safety data sheet and local fire codes.",
    sources: [
      `${OSHA_FLAMMABLE}: flammable liquids of category 1 to 3, flash point up to 60 C`,
      "29 CFR 1910.106(e)(6)(i): precautions against open flames, smoking, hot surfaces, static and sparks where flammable vapour may be present (from memory, confidence high)",
    ],
  },
  failing: [
    {
      title: "Wiped with mineral spirits",
      text: `recipe take_wax_off {
  for    wood
  safety gloves, ventilate
  step   dewax with mineral_spirits #! flames-not-kept-away
  step   clean with soap
}
`,
    },
    {
      title: "Shellac, put on with a brush",
      text: `recipe sealed {
  for    wood
  safety ventilate
  layer  dewaxed_shellac #! flames-not-kept-away
  wait   2 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "The oil would not burn so easily; its thinner does",
      text: `recipe oiled {
  for    wood
  safety wet_rags, ventilate
  layer  drying_oil, wiped off, thinned 1:1 with mineral_spirits #! flames-not-kept-away
  wait   until cured
}
`,
    },
    {
      title: "The label states a flash point",
      text: `material quick_clear {
  family waterborne acrylic
  flash  38 C
}

recipe clear_coat {
  for   wood
  layer quick_clear #! flames-not-kept-away
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Stated, once for all that follows",
      text: `recipe take_wax_off {
  for    wood
  safety gloves, ventilate, no_ignition
  step   dewax with mineral_spirits
  step   clean with soap
}
`,
    },
    {
      title: "A flash point above 60 C, and an oil of which nothing evaporates",
      text: `material high_flash {
  family mineral spirits
  flash  61 C
}

material bare_oil {
  family hardwax oil
  voc    5 g/L
}

recipe oiled {
  for    wood
  safety gloves, ventilate, wet_rags
  step   dewax with high_flash
  layer  bare_oil, wiped off
  wait   until cured
}
`,
    },
  ],
  // What is sprayed is told by `spraying-flammables-indoors`.
  checks: dutyChecks(
    "no_ignition",
    () =>
      t`It is heavier than air and creeps along the floor to a pilot light, a heater or the spark of a motor.`,
    ({ action }) => (isSprayed(action) ? undefined : needFor(action, "no_ignition")),
  ),
};
