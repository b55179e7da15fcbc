/**
 * A layer in air that its label forbids. Outside the limits a film does not dry more slowly, it fails: waterborne
 * binders do not flow together in the cold, lacquer and shellac turn white in the damp.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { AirNeed } from "../../findings.ts";
import { humidityText } from "../../measure/figures.ts";
import { figuresIn, type ShownFigures } from "../../measure/shown-figures.ts";
import type { Material, Shop } from "../../model/model.ts";
import { andList } from "../../model/suggest.ts";
import { placeKey } from "../../place.ts";
import { type AirKind, airAdvice, airOf, BAD_AIR, outsideLimits } from "../group-bad-air.ts";
import { freesLead } from "../lead-caution.ts";
import type { TradeRule } from "../rule.ts";
import { fitting, related, useName } from "../texts.ts";

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
    {
      title: "Warm enough by day, and not by night",
      text: `material fussy_clear {
  family waterborne polyurethane
  limits 15 C to 25 C
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop unheated {
  air       18 C, 55 % RH
  night_air 8 C, 55 % RH
}

recipe one_coat {
  layer fussy_clear #! air-outside-limits
  wait  until cured
}

job shelves {
  piece shelf
  in    unheated
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
  looksAt: ({ kind }) => kind === "job",
  checks: {
    onLayer: ({ action, run, units, report }) => {
      const say = figuresIn(units);
      const { air: byDay, nightAir } = run.shop ?? {};
      const material = action.use.material;
      if (!byDay || !material) return;
      const inDay = brokenLimits(material, byDay.value, say);
      // What dries overnight forms its film in the night's air.
      const isNight = inDay.length === 0 && nightAir !== undefined;
      const air = isNight ? nightAir : byDay;
      const broken = isNight ? brokenLimits(material, air.value, say) : inDay;
      if (broken.length === 0) return;
      const place = material.limits?.place;
      const kinds = broken.map(({ kind }) => kind);
      const asked = andList(broken.map((each) => each.asked));
      const need: AirNeed = {
        units,
        air: air.value,
        ...(material.limits ? { limits: material.limits.value } : {}),
        ignition: run.shop!.ignition.value !== "none",
        shop: placeKey(run.shop!.namePlace),
        lead: freesLead(run),
      };
      const needs = isNight
        ? t`${asked}; \`${run.shop!.name}\` has ${say.air(air.value)} by night`
        : t`${asked}; \`${run.shop!.name}\` has ${say.air(air.value)}`;
      const told = andList(kinds.map(translated));
      report({
        headline: fitting(
          [useName(action.use), `\`${action.use.name}\``, t`this layer`].map((what) =>
            isNight ? t`The night's air is ${told} for ${what}` : t`The shop's air is ${told} for ${what}`,
          ),
        ),
        why: t`\`${action.use.name}\` needs ${needs}. ${outsideLimits(kinds)}`,
        ...airAdvice(kinds, [need]),
        ...(kinds.includes("too cold") && !isNight
          ? { voids: { reason: t`too cold for \`${material.name}\` to dry`, brief: t`too cold to dry` } }
          : {}),
        causes: [airOf(run.job?.name)],
        part: {
          group: BAD_AIR,
          names: kinds,
          reason: needs,
          who: `\`${material.name}\``,
          air: need,
        },
        related: [
          ...(air.place
            ? [related(air.place, isNight ? t`The air of the shop by night` : t`The air of the shop`)]
            : []),
          ...(place ? [related(place, t`The limits of the label`)] : []),
        ],
      });
    },
  },
};

type Air = NonNullable<Shop["air"]>["value"];

interface Broken {
  readonly kind: AirKind;
  /** What is asked for instead: `10 C or more`. */
  readonly asked: string;
}

function brokenLimits(material: Material, air: Air, say: ShownFigures): readonly Broken[] {
  const limits = material.limits?.value;
  if (!limits) return [];
  const broken: Broken[] = [];
  if (limits.low !== undefined && air.temperature < limits.low)
    broken.push({ kind: "too cold", asked: t`${say.degrees(limits.low)} or more` });
  if (limits.high !== undefined && air.temperature > limits.high)
    broken.push({ kind: "too warm", asked: t`${say.degrees(limits.high)} or less` });
  if (limits.humidity !== undefined && air.humidity !== undefined && air.humidity > limits.humidity)
    broken.push({ kind: "too damp", asked: t`${humidityText(limits.humidity)} or less` });
  return broken;
}
