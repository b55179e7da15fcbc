/**
 * A layer in air so damp that water is about to condense: a piece a little cooler than the room is already wet.
 * A shop that does not state its humidity is silent.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { condensation } from "../../air/condensation.ts";
import type { AirNeed } from "../../findings.ts";
import { figuresIn } from "../../measure/shown-figures.ts";
import { placeKey } from "../../place.ts";
import { type AirKind, airAdvice, airOf, BAD_AIR } from "../group-bad-air.ts";
import { freesLead } from "../lead-caution.ts";
import type { TradeRule } from "../rule.ts";
import { fitting, related, useName } from "../texts.ts";

const NEAR_DEW_POINT: AirKind = "near its dew point";

export const nearDewPoint: TradeRule = {
  id: "near-dew-point",
  group: "waits",
  severity: "warning",
  docs: {
    summary: "The shop's air is within 3 C of its dew point when a layer goes on.",
    why: "A piece that is a little cooler than the room has water on it that nobody sees: films cloud, blush or let go.",
    remedy:
      "Warm the room or dry its air until it is 3 C or more above the dew point, and keep the piece in it overnight.",
    sources: [
      "UFC 3-190-06 paragraph 9.6.6: 5 F (3 C) above the dew point",
      "ISO 8502-4 estimates the same risk",
    ],
  },
  failing: [
    {
      title: "Air at 84 % has its dew point near",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop cellar {
  air 18 C, 84 % RH
}

recipe one_coat {
  layer waterborne_polyurethane #! near-dew-point
  wait  until cured
}

job shelves {
  piece shelf
  in    cellar
  apply one_coat to top
}
`,
    },
  ],
  passing: [
    {
      title: "Air at 80 %",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop cellar {
  air 18 C, 80 % RH
}

recipe one_coat {
  layer waterborne_polyurethane
  wait  until cured
}

job shelves {
  piece shelf
  in    cellar
  apply one_coat to top
}
`,
    },
    {
      title: "A shop that does not state its humidity",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop cellar {
  air 18 C
}

recipe one_coat {
  layer waterborne_polyurethane
  wait  until cured
}

job shelves {
  piece shelf
  in    cellar
  apply one_coat to top
}
`,
    },
  ],
  looksAt: ({ kind }) => kind === "job",
  checks: {
    onLayer: ({ action, run, units, report }) => {
      const air = run.shop?.air;
      if (air?.value.humidity === undefined) return;
      const { temperature, humidity } = air.value;
      const found = condensation({ temperature, humidity });
      if (!found.isNear) return;
      const say = figuresIn(units);
      const limits = action.use.material?.limits?.value;
      const need: AirNeed = {
        units,
        air: { temperature, humidity },
        ...(limits ? { limits } : {}),
        ignition: run.shop!.ignition.value !== "none",
        shop: placeKey(run.shop!.namePlace),
        lead: freesLead(run),
      };
      const reason = t`The dew point of \`${run.shop!.name}\` is ${say.degrees(found.dewPointC)}: a piece only ${say.degreesApart(found.marginC)} cooler than its air gets wet, and the film clouds or does not hold`;
      report({
        headline: fitting(
          [useName(action.use), t`this layer`].map(
            (what) => t`Air only ${say.degreesApart(found.marginC)} above its dew point for ${what}`,
          ),
        ),
        why: `${reason}.`,
        ...airAdvice([NEAR_DEW_POINT], [need]),
        causes: [airOf(run.job?.name)],
        part: { group: BAD_AIR, names: [NEAR_DEW_POINT], reason, air: need },
        related: air.place ? [related(air.place, t`The air of the shop`)] : [],
      });
    },
  },
};
