/**
 * A brittle film over a soft or flexible one: the lower one gives, and the upper one cracks.
 *
 * Of an unknown finish only a difference of hardness counts that is plain: not every old paint is acrylic.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { cracksOver, HARD_OVER_SOFT_STEPS, relation } from "../../knowledge/layer-relation.ts";
import { familiesOf, primerLines, reachedCoats } from "../coat-queries.ts";
import { takeOldFinishOff } from "../remedy-fixes.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, insertAbove, layerBelow, useName } from "../texts.ts";

export const hardOverSoft: TradeRule = {
  id: "hard-over-soft",
  group: "layers",
  severity: "warning",
  docs: {
    summary: "A brittle film goes over a soft or flexible one.",
    why: "The lower film moves with the wood and with warmth, the upper one cannot follow, and it checks and cracks.",
    remedy: "Choose a clear as flexible as the layer below, or strip that layer first.",
    sources: [
      "UFC 3-190-06 section 2.4: a rigid topcoat over a flexible undercoat checks",
      "the order of hardness of the families is from memory",
      "polyurethane over spar varnish and alkyd over acrylic paint: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Conversion varnish over shellac",
      text: `material hardener "Acid hardener" {
  family alcohol
}
material bar_top "Bar top clear" {
  family conversion varnish
  mix    10:1 with hardener
}
recipe clear_coats {
  for    wood
  safety ventilate, no_ignition, vapour_respirator, gloves, eye_protection
  layer  dewaxed_shellac
  wait   until recoat
  layer  bar_top, by hvlp #! hard-over-soft
  wait   until cured
}
`,
    },
    {
      title: "Lacquer over a flexible spar varnish, which it lifts as well",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing spar varnish
  }
}
recipe renew {
  safety ventilate, no_ignition, dust_mask, vapour_respirator, eye_protection, gloves
  step   clean with soap
  step   scuff 320
  step   dust
  layer  nitrocellulose_lacquer, by hvlp #! hard-over-soft, solvent-lifts-layer
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
}
`,
    },
    {
      title: "Polyurethane over spar varnish, and oil enamel over acrylic",
      text: `piece box "Box" {
  built 1995
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing spar varnish
  }
  surface sides {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing acrylic paint
    lead     none_found by laboratory 2026-11-03
  }
}
recipe prepare {
  safety ventilate, no_ignition, gloves, dust_mask, wet_rags
  step   clean with soap
  step   scuff 220
  step   dust
}
recipe renew {
  safety ventilate, no_ignition, gloves, dust_mask, wet_rags
  follow prepare
  layer  oil_polyurethane #! hard-over-soft
  wait   until cured
}
recipe enamelled {
  safety ventilate, no_ignition, gloves, dust_mask, wet_rags
  follow prepare
  layer  alkyd_paint #! hard-over-soft
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
  apply enamelled to sides
}
`,
    },
  ],
  passing: [
    {
      title: "Varnish over spar varnish, and lacquer over shellac, are near enough",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing spar varnish
  }
  surface inside {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing dewaxed shellac
  }
}
recipe renew {
  safety ventilate, no_ignition, gloves, dust_mask, wet_rags
  step   clean with soap
  step   scuff 320
  step   dust
  layer  oil_varnish
  wait   until cured
}
recipe lacquered {
  safety ventilate, no_ignition, dust_mask, vapour_respirator, eye_protection, gloves
  step   clean with soap
  step   scuff 320
  step   dust
  layer  nitrocellulose_lacquer, by hvlp
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
  apply lacquered to inside
}
`,
    },
    {
      title: "A primer between enamel and acrylic, and waterborne films among themselves",
      text: `recipe painted {
  for    any
  safety ventilate, no_ignition, gloves, dust_mask, wet_rags
  layer  acrylic_paint
  wait   until cured
  step   sand 220
  step   dust
  layer  bonding_primer
  wait   until recoat
  layer  alkyd_paint
  wait   until cured
}
recipe cleared {
  for    any
  layer  acrylic_paint
  wait   until recoat
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, report }) => {
      const over = action.use.material?.family;
      if (!over?.buildsFilm) return;
      for (const coat of reachedCoats(before.layers)) {
        const worst = familiesOf(coat).find((below) => isTooHard(over, below, coat.unknown !== undefined));
        if (!worst) continue;
        if (worst.binder === "mineral oil") {
          report({
            headline: t`${useName(action.use)} does not hold on ${coatName(coat)}`,
            why: t`Mineral oil never dries: a film over it stays soft, cracks or peels.`,
            remedy: coat.action
              ? t`Leave the mineral oil out, or go on with mineral oil or wax.`
              : t`Renew it with mineral oil or wax instead, which hold on it.`,
            replaces: true,
            related: [layerBelow(coat)],
            fixes: coat.action ? takeOldFinishOff(run, before, action) : [],
          });
          return;
        }
        const brittle = isBrittle(over, worst);
        const [name, below] = [useName(action.use), coatName(coat)];
        report({
          headline: brittle ? t`${name} is too brittle over ${below}` : t`${name} is too stiff over ${below}`,
          why: coat.unknown
            ? t`The layer below may be ${translated(worst.name)} and softer and moves with the wood; the film above cannot follow and cracks.`
            : brittle
              ? t`The layer below is softer and moves with the wood; the film above cannot follow and cracks.`
              : t`The layer below stays flexible and moves with the wood; the film above cannot follow and cracks.`,
          remedy:
            over.role === "paint"
              ? t`Choose a paint as flexible as the layer below, or put a bonding primer between the two.`
              : coat.action
                ? t`Choose a clear as flexible as the layer below, or leave that layer out.`
                : t`Choose a clear as flexible as the layer below, or strip that layer first.`,
          ...(over.role === "paint" || coat.action ? {} : { abrades: "to the wood" }),
          related: [layerBelow(coat)],
          fixes:
            over.role === "paint"
              ? [
                  insertAbove(
                    "undertaking",
                    action,
                    t`Put a bonding primer between the two`,
                    primerLines(action),
                  ),
                ]
              : takeOldFinishOff(run, before, action),
        });
        return;
      }
    },
  },
};

/** A thin glaze moves with what is above it and counts for nothing; oil comes up under the most brittle of clears; soap is `layers-at-odds`'s. */
function isTooHard(over: Family, below: Family, unknown: boolean): boolean {
  if (below.role === "glaze" || below.binder === "soap") return false;
  if (below.role === "oil") return relation(over, below).verdict === "no";
  return cracksOver(over, below) && (!unknown || isBrittle(over, below));
}

const isBrittle = (over: Family, below: Family): boolean =>
  below.role === "oil" || over.hardness - below.hardness >= HARD_OVER_SOFT_STEPS;
