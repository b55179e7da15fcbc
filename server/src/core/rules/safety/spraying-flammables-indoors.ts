/**
 * A flammable liquid that is sprayed, and not a word on flames and sparks.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { IGNITION_RULE_SOURCE } from "../../knowledge/ignition.ts";
import { dutyChecks, needFor } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";
import { isSprayed } from "../two-part.ts";

export const sprayingFlammablesIndoors: TradeRule = {
  id: "spraying-flammables-indoors",
  group: "safety",
  severity: "warning",
  docs: {
    summary: "A flammable liquid is sprayed, and the recipe does not state `no_ignition`.",
    why: "Spray mist burns far more readily than the liquid in the can, and fills a room in minutes. The residue in booth, filters and ducts burns as well.",
    remedy:
      "Put out whatever burns or glows, switch off what sparks (dust collectors, sanders, fans with open motors), earth the gun's metal parts, and state `safety no_ignition`; or put it on by hand. An exhaust does not make this needless. Local fire codes say whether spraying is allowed there at all.",
    sources: [
      IGNITION_RULE_SOURCE,
      "29 CFR 1910.107(c)(2): no open flame or spark-producing equipment in a spraying area or within 20 feet of it (from memory, confidence high)",
      "29 CFR 1910.94(c) and 1910.107(d) on the exhaust of spraying areas",
    ],
  },
  failing: [
    {
      title: "Lacquer sprayed, and not a word on sparks",
      text: `recipe lacquered {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  layer  nitrocellulose_lacquer, by hvlp #! spraying-flammables-indoors
  wait   until cured
}

piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
    wear  light
  }
}

shop shed {
  air 21 C, 50 % RH
}

job lid {
  piece box
  in    shed
  apply lacquered to lid
}
`,
    },
    {
      title: "An exhaust takes the mist away and lights it, if its motor sparks",
      text: `recipe lacquered {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate 10 air changes/h
  layer  nitrocellulose_lacquer, by hvlp #! spraying-flammables-indoors
  wait   until cured
}

piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
    wear  light
  }
}

shop shed {
  air 21 C, 50 % RH
}

job lid {
  piece box
  in    shed
  apply lacquered to lid
}
`,
    },
  ],
  passing: [
    {
      title: "The recipe keeps sparks away",
      text: `recipe lacquered {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  nitrocellulose_lacquer, by hvlp
  wait   until cured
}

piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
    wear  light
  }
}

shop shed {
  air 21 C, 50 % RH
}

job lid {
  piece box
  in    shed
  apply lacquered to lid
}
`,
    },
  ],
  checks: dutyChecks(
    "no_ignition",
    () => t`Sprayed, it burns far more readily than from the can, and fills a room in minutes.`,
    ({ action }) => (isSprayed(action) ? needFor(action, "no_ignition") : undefined),
  ),
};
