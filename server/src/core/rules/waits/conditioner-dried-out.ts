/**
 * A stain on a conditioner that has dried: the stain follows while the wood is still damp with it, so its window is an
 * upper bound, and no air lengthens it.
 *
 * A waterborne conditioner that was sanded once it was dry is a washcoat and takes a stain. Water over oil has to wait
 * for its cure instead, which `waterborne-over-uncured-oil` says.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { exactDuration, formatDuration } from "../../measure/format-amount.ts";
import { sameDeclaration } from "../../place.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { putOnAt } from "../../surface/run-index.ts";
import { type Coat, isAbradedSince, topCoat, waitedOf } from "../../surface/state.ts";
import type { TradeRule } from "../rule.ts";
import { waitsIn } from "../short-wait.ts";
import { fitting, layerBelow, related, replaceAt } from "../texts.ts";

export const conditionerDriedOut: TradeRule = {
  id: "conditioner-dried-out",
  group: "waits",
  severity: "warning",
  docs: {
    summary: "A stain goes on a conditioner that has dried, past the latest time for it.",
    why: "A conditioner evens the colour while it fills the thirsty spots of the wood. Dry, it is a thin seal: the stain takes poorly and comes out pale and patchy.",
    remedy:
      "Stain within 2 h of the conditioner, or as its label says; put it on again where more time has passed.",
    sources: [`the stain follows within 2 h: ${PRACTICE}`],
  },
  failing: [
    {
      title: "Five days between the two",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_conditioner, wiped off
  wait   5 days
  layer  oil_stain, wiped off #! conditioner-dried-out
  wait   until recoat
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "A night, where the label says an hour",
      text: `material even "Wood conditioner" {
  family waterborne conditioner
  recoat 15 min to 1 h
}
recipe coloured {
  for    wood
  safety dust_mask
  layer  even, wiped off
  wait   overnight
  layer  waterborne_stain, wiped off #! conditioner-dried-out
  wait   until recoat
  layer  waterborne_polyurethane x 2 {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Within the two hours; at once; a waterborne one dried and sanded",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_conditioner, wiped off after 10 min
  layer  oil_stain, wiped off
  wait   until recoat
  layer  oil_varnish
  wait   until cured
}
recipe coloured_later {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_conditioner, wiped off
  wait   2 h
  layer  gel_stain, wiped off
  wait   until recoat
  layer  oil_varnish
  wait   until cured
}
recipe coloured_on_water {
  for    wood
  safety dust_mask
  layer  waterborne_conditioner, wiped off
  wait   overnight
  step   sand 220
  step   dust
  layer  waterborne_stain, wiped off
  wait   until recoat
  layer  waterborne_polyurethane x 2 {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ roles }) => roles.has("stain"),
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const over = action.use.material?.family;
      const below = topCoat(before);
      if (over?.role !== "stain" || action.toner || below?.origin !== "new") return;
      if (below.family?.role !== "conditioner") return;
      const inWater = below.family.carrier === "water";
      if (inWater ? isAbradedSince(below) : over.carrier === "water") return;
      const latest = latestHours(below);
      const { hours } = waitedOf(before, below);
      if (latest === undefined || hours <= latest + 1e-6) return;
      const wait = onlyWait(run, below, action, index);
      const place = below.material?.recoat?.place;
      report({
        headline: fitting([
          t`\`${action.use.name}\` ${exactDuration(hours)} after \`${below.what}\`: ${formatDuration(latest)} at most`,
          t`Stain ${exactDuration(hours)} after the conditioner: ${formatDuration(latest)} at most`,
        ]),
        why: t`The conditioner has dried and seals the wood in spots, so the stain comes out pale and patchy.`,
        remedy: inWater
          ? t`Stain within ${formatDuration(latest)}, sand the dry conditioner lightly first, or put the conditioner on again right before the stain.`
          : t`Stain within ${formatDuration(latest)} or put the conditioner on again right before the stain.`,
        ...(inWater ? { abrades: "surface" as const } : {}),
        related: [layerBelow(below), ...(place ? [related(place, t`The label's latest time`)] : [])],
        fixes: wait
          ? [
              replaceAt(
                "undertaking",
                wait.place,
                t`Stain while the conditioner is damp`,
                "wait  until recoat",
              ),
            ]
          : [],
      });
    },
  },
};

/** Where a label states an earliest time alone, a day is allowed: hours. */
const WITHOUT_END_H = 24;

function latestHours({ material, family }: Coat): number | undefined {
  const recoat = material?.recoat;
  if (!recoat) return family?.recoat?.[1] ?? undefined;
  return recoat.value.latest ?? Math.max(WITHOUT_END_H, recoat.value.earliest);
}

/** The wait between the two, where it is the only one and stands in the same declaration. */
function onlyWait(run: SurfaceRun, below: Coat, action: LayerAction, index: number) {
  const [wait, ...others] = waitsIn(run.moments, putOnAt(run, below) + 1, index);
  return wait && others.length === 0 && sameDeclaration(wait.place, action.place) ? wait : undefined;
}
