/**
 * Oily rags in a heap: the commonest way in which a finishing shop burns down.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { OSHA_RAGS } from "../../knowledge/sources.ts";
import { dutyChecks } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";

export const ragsNotWetted: TradeRule = {
  id: "rags-not-wetted",
  group: "safety",
  severity: "error",
  docs: {
    summary: "A material whose rags heat up by themselves is used, and the recipe does not state `wet_rags`.",
    why: "Drying oils take up oxygen and give off heat while they harden; in a crumpled rag the heat cannot get away, and the rag catches fire hours later, when nobody is there. Brushed and sprayed coats leave such rags too.",
    remedy:
      "State `safety wet_rags`: rags go into water in a closed metal can, or are spread flat outdoors, at once. The label and local codes say how to get rid of them.",
    sources: [
      OSHA_RAGS,
      "ASTM D6801 on self-heating of oil-based liquids; which binders: from memory, confidence high",
    ],
  },
  failing: [
    {
      title: "Oil wiped on",
      text: `recipe oiled {
  for   wood
  layer drying_oil, wiped off #! rags-not-wetted
  wait  until cured
}
`,
    },
    {
      title: "A brushed varnish leaves rags as well",
      text: `recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves
  layer  oil_varnish #! rags-not-wetted
  wait   until cured
}
`,
    },
    {
      title: "The label says so",
      text: `material house_clear {
  family waterborne polyurethane
  rags   self-heating
}

recipe clear_coat {
  for   wood
  layer house_clear #! rags-not-wetted
  wait  until cured
}
`,
    },
    {
      title: "An oil for outdoors",
      text: `recipe oiled {
  for    wood
  safety gloves, ventilate, no_ignition
  layer  exterior_oil, wiped off #! rags-not-wetted
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Rags into water",
      text: `recipe oiled {
  for    wood
  safety wet_rags
  layer  drying_oil, wiped off
  wait   until cured
}
`,
    },
    {
      title: "Rags of a waterborne clear do not heat up",
      text: `recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
  checks: dutyChecks(
    "wet_rags",
    () => t`Crumpled in a heap such rags burst into flame hours later, when nobody is there.`,
  ),
};
