/**
 * A thinner that does not mix with the material: spirits in a waterborne clear, water in an oil. What the label names
 * counts, else what the family takes. Acetone passes where lacquer thinner is named.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { Material } from "../../model/model.ts";
import type { TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

export const wrongThinner: TradeRule = {
  id: "wrong-thinner",
  group: "quantities",
  severity: "warning",
  docs: {
    summary: "A layer is thinned with something that its label or its family does not take.",
    why: "The wrong thinner curdles the material or throws its binder out, and the can is spoilt with the coat.",
    remedy:
      "Thin with what the label names: water for waterborne materials, mineral spirits for oils, alcohol for shellac, lacquer thinner for lacquers.",
    sources: ["common practice, no source: like thins like; the label decides"],
  },
  failing: [
    {
      title: "Spirits in a waterborne clear",
      text: `recipe one_coat {
  safety ventilate, no_ignition, gloves
  layer  waterborne_polyurethane, thinned 20:1 with mineral_spirits #! wrong-thinner
  wait   until cured
}
`,
    },
    {
      title: "The label says water",
      text: `material white_trim {
  family alkyd paint
  thin   water, up to 10 %
}

recipe one_coat {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  white_trim, thinned 20:1 with mineral_spirits #! wrong-thinner
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Each with its own",
      text: `recipe layers {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  dewaxed_shellac, thinned 2:1 with alcohol
  wait   until recoat
  layer  oil_varnish, thinned 4:1 with mineral_spirits
  wait   until cured
}
`,
    },
    {
      title: "A thinner that is not known",
      text: `recipe thinned_coat(thinner: material) {
  layer waterborne_polyurethane, thinned 20:1 with thinner
  wait  until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, report }) => {
      const material = action.use.material;
      const thinner = action.thinned?.thinner;
      const family = thinner?.material?.family;
      if (!material?.family || !thinner || !family) return;
      const taken = thinnersOf(material);
      if (taken.length === 0 || taken.some((word) => word === family.name || word === family.carrier)) return;
      const stated = material.thin?.origin === "stated" ? material.thin : undefined;
      const wanted = translated(
        stated?.value.thinner ?? material.family.thinners[0] ?? material.family.carrier,
      );
      const name = useName(action.use);
      report({
        headline: t`\`${thinner.name}\` does not thin this material: it takes ${wanted}`,
        why: stated
          ? t`${name} takes ${wanted} by its label. The wrong thinner curdles it or lets its binder fall out, and spoils what is in the pot.`
          : t`${name} takes ${wanted} by its family. The wrong thinner curdles it or lets its binder fall out, and spoils what is in the pot.`,
        remedy: stated
          ? t`Thin it with ${wanted}.`
          : t`Thin it with ${wanted}, or with what its label names.`,
        related: stated?.place ? [related(stated.place, t`What the label thins it with`)] : [],
        at: thinner.place,
      });
    },
  },
};

/** Words of the label, else of the family, with what stands for them; nothing where none is known. */
function thinnersOf(material: Material): readonly string[] {
  const family = material.family!;
  const named =
    material.thin?.origin === "stated"
      ? [material.thin.value.thinner]
      : family.thinners.length > 0
        ? family.thinners
        : family.carrier === "none"
          ? []
          : [family.carrier];
  return named.includes("lacquer thinner") ? [...named, "acetone"] : named;
}
