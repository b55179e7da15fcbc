/**
 * A flammable liquid sprayed in a room of which nothing says that its air or its sparks were thought of.
 */

import { vapourCanIgnite } from "../../knowledge/flammable.ts";
import { IGNITION_RULE_SOURCE } from "../../knowledge/ignition.ts";
import type { TradeRule } from "../rule.ts";
import { related, undertakeDuties, useName } from "../texts.ts";

/** Air changes an hour from which a stated ventilation counts as an exhaust made for spraying. */
const STRONG_AIR_CHANGES = 10;

export const sprayingFlammablesIndoors: TradeRule = {
  id: "spraying-flammables-indoors",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A flammable liquid is sprayed in a shop, and neither the recipe nor the shop says anything of ignition or strong ventilation.",
    why: "Spray mist burns far more readily than the liquid in the can, and fills a room in minutes.",
    remedy:
      "State `safety no_ignition`, or an exhaust such as `ventilate 10 air changes/h`, or say `ignition none` in the shop if that is so. Local fire codes say whether spraying is allowed there at all.",
    sources: [
      IGNITION_RULE_SOURCE,
      "29 CFR 1910.94(c) and 1910.107 on spraying",
      "10 air changes an hour as strong: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Lacquer sprayed in a shop that says nothing of ignition",
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
    {
      title: "The recipe states an exhaust",
      text: `recipe lacquered {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate 10 air changes/h
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
  checks: {
    onLayer: ({ action, run, report }) => {
      const { shop } = run;
      const material = action.use.material;
      if (!shop || (action.method !== "hvlp" && action.method !== "airless")) return;
      if (!vapourCanIgnite(material?.flash?.value, material?.family?.boils)) return;
      // A source that is named has its own finding, and `ignition none` in so many words is an answer.
      if (shop.ignition.origin === "stated" || action.duties.has("no_ignition")) return;
      if ((action.duties.get("ventilate")?.airChanges ?? 0) >= STRONG_AIR_CHANGES) return;
      const by = action.syntax.tails.find((tail) => tail.kind === "by");
      report({
        headline: `${useName(action.use)} (flash point ${material?.flash?.value} C) is sprayed in \`${shop.name}\`, and nothing says that flames and sparks are kept away`,
        why: "Spray mist burns far more readily than the liquid in the can, and fills a room in minutes.",
        remedy:
          "State `safety no_ignition` or an exhaust such as `ventilate 10 air changes/h`, or put it on by hand; local fire codes say whether spraying is allowed there at all.",
        ...(by ? { at: { ...action.place, span: by.span } } : {}),
        related: [related(shop.headPlace, "The shop says nothing of ignition")],
        fixes: [undertakeDuties(action.place, ["no_ignition"])],
      });
    },
  },
};
