/**
 * A layer in air that its label forbids. Outside the limits a film does not dry more slowly, it fails: waterborne
 * binders do not flow together in the cold, lacquer and shellac turn white in the damp.
 */
import { formatNumber } from "../../measure/format-amount.ts";
import type { Material, Shop } from "../../model/model.ts";
import type { TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

export const airOutsideLimits: TradeRule = {
  id: "air-outside-limits",
  group: "waits",
  severity: "warning",
  docs: {
    summary: "The shop's air is colder, warmer or damper than the material's label allows.",
    why: "Below its lowest temperature a film does not form at all, in the heat it dries before it has flowed, and in damp air lacquer and shellac turn white.",
    remedy: "Warm or dry the room, or choose a material that is made for this air.",
    sources: [
      "Wood Handbook FPL-GTR-190, chapter 16: latex at 10 C (50 F) or warmer, and for 24 h after",
      "common practice, no source: the label's limits",
    ],
  },
  failing: [
    {
      title: "Too cold for a waterborne clear",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop porch {
  air 8 C, 60 % RH
}

recipe one_coat {
  layer waterborne_polyurethane #! air-outside-limits
  wait  until cured
}

job shelves {
  piece shelf
  in    porch
  apply one_coat to top
}
`,
    },
    {
      title: "Too damp by the label",
      text: `material fussy_clear {
  family waterborne polyurethane
  limits 15 C to 25 C, 65 % RH
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop cellar {
  air 20 C, 70 % RH
}

recipe one_coat {
  layer fussy_clear #! air-outside-limits
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
      title: "Just at the limits",
      text: `material fussy_clear {
  family waterborne polyurethane
  limits 15 C to 25 C, 65 % RH
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop cellar {
  air 15 C, 65 % RH
}

recipe one_coat {
  layer fussy_clear
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
      title: "A shop that does not state its air",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop porch {
  crew 1
}

recipe one_coat {
  layer waterborne_polyurethane
  wait  until cured
}

job shelves {
  piece shelf
  in    porch
  apply one_coat to top
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, run, report }) => {
      const air = run.shop?.air;
      const material = action.use.material;
      if (!air || !material) return;
      const broken = brokenLimits(material, air.value);
      if (broken.length === 0) return;
      const place = material.limits?.place;
      report({
        headline: `The shop's air, ${airText(air.value)}, is ${broken.join(" and ")} for ${useName(action.use)}`,
        why: "Outside its limits a film does not only dry slowly: it may not form, or it clouds, or it dries before it has flowed.",
        remedy:
          "Bring the room within the limits, without a flame or a glowing heater near vapours, and keep it there until the film is dry, or choose a material for this air.",
        related: [
          ...(air.place ? [related(air.place, "The air of the shop")] : []),
          ...(place ? [related(place, "The limits of the label")] : []),
        ],
      });
    },
  },
};

type Air = NonNullable<Shop["air"]>["value"];

const airText = (air: Air): string =>
  air.humidity === undefined
    ? `${formatNumber(air.temperature, 1)} C`
    : `${formatNumber(air.temperature, 1)} C and ${formatNumber(air.humidity, 1)} % RH`;

function brokenLimits(material: Material, air: Air): readonly string[] {
  const limits = material.limits?.value;
  if (!limits) return [];
  const broken: string[] = [];
  if (limits.low !== undefined && air.temperature < limits.low)
    broken.push(`too cold (${formatNumber(limits.low, 1)} C at least)`);
  if (limits.high !== undefined && air.temperature > limits.high)
    broken.push(`too warm (${formatNumber(limits.high, 1)} C at most)`);
  if (limits.humidity !== undefined && air.humidity !== undefined && air.humidity > limits.humidity)
    broken.push(`too damp (${formatNumber(limits.humidity, 1)} % RH at most)`);
  return broken;
}
