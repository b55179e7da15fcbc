/**
 * A stain, a glaze or a porous paint that is left as the last layer, though it needs a clear, oil or wax above it.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { Role } from "../../knowledge/family-schema.ts";
import { sentence } from "../../sentence.ts";
import type { Coat } from "../../surface/state.ts";
import { actionOf } from "../coat-queries.ts";
import { clearOnTop } from "../remedy-fixes.ts";
import type { TradeRule } from "../rule.ts";
import { coatName } from "../texts.ts";

/** Roles whose layers cover what is below: they protect it, or are judged themselves. */
const COVERS: ReadonlySet<Role> = new Set(["clear", "oil", "wax", "paint", "primer"]);

export const unprotectedLayer: TradeRule = {
  id: "unprotected-layer",
  group: "wear",
  severity: "warning",
  secondaryTo: ["stain-on-sealed-surface"],
  docs: {
    summary: "A paint or stain that needs a clear or wax over it gets none.",
    why: "A stain alone rubs off and takes every drop of water, and a chalky or milk paint marks, stains and powders.",
    remedy: "Put a clear over it; wax or oil will do where wear is light.",
    sources: [
      "common practice, no source",
      "labels of stains, chalky and milk paints ask for a topcoat, from memory",
      "Wood Handbook, FPL-GTR-190 (2010), chapter 16: a semitransparent penetrating stain is a finish of its own outdoors",
    ],
  },
  failing: [
    {
      title: "A stain as the last layer",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, wiped off #! unprotected-layer
  wait   until cured
}
`,
    },
    {
      title: "Chalky paint over a primer, without wax",
      text: `piece box "Box" {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  MDF
  }
}
recipe painted {
  safety ventilate, no_ignition
  layer  shellac_primer
  wait   until recoat
  layer  chalky_paint x 2 { #! unprotected-layer
    wait until recoat
  }
  wait   until cured
}
job boxes {
  piece box
  apply painted to lid
}
`,
    },
    {
      title: "A dye has no binder at all",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves
  layer  alcohol_dye, by cloth #! unprotected-layer
  wait   until cured
}
`,
    },
    {
      title: "A sealer is not a topcoat",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags, vapour_respirator
  layer  oil_stain, wiped off #! unprotected-layer
  wait   until cured
  layer  sanding_sealer
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A clear over the stain; wax over chalky paint; enamel needs neither",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, wiped off
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
recipe chalky {
  for    any
  safety no_ignition
  layer  chalky_paint
  wait   until recoat
  layer  paste_wax
  wait   until cured
}
recipe enamelled {
  for    any
  layer  acrylic_paint
  wait   until cured
}
`,
    },
    {
      title: "A semi-transparent stain for outdoors is a finish of its own",
      text: `material fence_stain "Semi-transparent penetrating stain" {
  family oil stain
}
recipe stained {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  fence_stain, wiped off
  wait   until cured
}
`,
    },
    {
      title: "A recipe that another goes on with, and a material that is not known",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, wiped off
  wait   72 h
}
recipe finished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  follow coloured
  layer  oil_varnish
  wait   until cured
}
recipe with_any(last: material) {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, wiped off
  wait   72 h
  layer  last
  wait   until cured
}
`,
    },
    {
      title: "The same job puts the clear on with another recipe",
      text: `piece box "Box" {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}
recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, wiped off
  wait   72 h
}
recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_varnish
  wait   until cured
}
job boxes {
  piece box
  apply coloured to lid
  apply varnished to lid
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      if (run.continued || !run.final.certain) return;
      const { layers } = run.final;
      const top = layers.findLastIndex(
        (coat) => !coat.family || COVERS.has(coat.family.role) || coat.family.needsClear,
      );
      const coat = layers[top];
      const action = coat && actionOf(run, coat);
      if (!coat?.family?.needsClear || coat.origin !== "new" || !action || isFinishOutdoors(coat)) return;
      const paint = coat.family.role === "paint";
      report(action, {
        headline: t`${sentence(coatName(coat))} is left without a clear or wax over it`,
        why: paint
          ? t`Such porous paint marks, takes up grease and water and powders where it is touched.`
          : t`A stain by itself rubs off, fades and takes every drop of water.`,
        remedy: paint
          ? t`Put a clear, oil or wax over it; a clear where wear is hard.`
          : t`Put a clear over it, or wax where wear is light.`,
        fixes: clearOnTop(run),
      });
    },
  },
};

/**
 * A semi-transparent or exterior stain holds its own water repellent and gets no film over it outdoors: Wood Handbook,
 * FPL-GTR-190 (2010), chapter 16, semitransparent penetrating stains.
 */
function isFinishOutdoors({ family, material }: Coat): boolean {
  if (family?.role !== "stain" || !material) return false;
  const words = [material.name.replaceAll("_", " "), material.title ?? "", material.docs].join("\n");
  return MADE_FOR_OUTDOORS.test(words);
}

const MADE_FOR_OUTDOORS =
  /\bsemi[\s-]?transparent\b|\b(?:exterior|outdoor|deck(?:ing)?|fence|shingle|siding)[\s-]+(?:wood[\s-]*)?(?:stain|oil)\b|\bwater[\s-]repellent\b/iu;
