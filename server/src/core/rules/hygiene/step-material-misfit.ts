/**
 * A step with a material that cannot do it: cleaning with a stain, filling with soap.
 */

import { lookUp } from "../../../../../grammar/src/look-up.ts";
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { leavesLayer } from "../../knowledge/families.ts";
import type { Family, Role } from "../../knowledge/family-schema.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

/** What stays where it is put. */
const cannotWash = (family: Family): boolean => leavesLayer(family) || isOneOf(family, "glue", "hardener");

const isOneOf = (family: Family, ...roles: readonly Role[]): boolean => roles.includes(family.role);

interface Verb {
  readonly cannot: (family: Family) => boolean;
  readonly headline: (material: string) => string;
  readonly can: () => string;
}

/** By verb: what cannot do it, and what can. Verbs that are not listed take anything. */
const VERBS: Readonly<Record<string, Verb>> = {
  clean: {
    cannot: cannotWash,
    headline: (material) => t`${material} cannot be used to clean`,
    can: () => t`a cleaner, water or a solvent`,
  },
  dewax: {
    cannot: (family) => cannotWash(family) || family.name === "water",
    headline: (material) => t`${material} cannot be used to dewax`,
    can: () => t`a solvent such as mineral spirits`,
  },
  strip: {
    cannot: (family) => cannotWash(family) || family.name === "water",
    headline: (material) => t`${material} cannot be used to strip`,
    can: () => t`a stripper or the solvent of the old film`,
  },
  bleach: {
    cannot: (family) => cannotWash(family) || isOneOf(family, "solvent", "stripper"),
    headline: (material) => t`${material} cannot be used to bleach`,
    can: () => t`a wood bleach`,
  },
  fill: {
    cannot: (family) => !leavesLayer(family) || isOneOf(family, "stain", "glaze"),
    headline: (material) => t`${material} cannot be used to fill`,
    can: () => t`a filler`,
  },
  glue: {
    cannot: (family) => !isOneOf(family, "glue", "filler"),
    headline: (material) => t`${material} cannot be used to glue`,
    can: () => t`a glue`,
  },
  buff: {
    cannot: (family) => isOneOf(family, "stain", "paint", "primer", "stripper", "bleach"),
    headline: (material) => t`${material} cannot be used to buff`,
    can: () => t`a wax or a polish`,
  },
};

export const stepMaterialMisfit: TradeRule = {
  id: "step-material-misfit",
  group: "hygiene",
  severity: "warning",
  docs: {
    summary: "A step names a material that cannot do it: cleaning with a finish, filling with a solvent.",
    why: "Most likely another material is meant; what the step is thought to take or to fill would still be there.",
    remedy: "Name a material that fits the verb, or take the verb that fits the material.",
    sources: ["common practice, no source"],
  },
  failing: [
    {
      title: "Cleaned with a clear",
      text: `recipe wash {
  for  wood
  step clean with waterborne_polyurethane #! step-material-misfit
}
`,
    },
    {
      title: "Filled with soap",
      text: `recipe mend {
  for  wood
  step fill with soap, uses 5 mL #! step-material-misfit
}
`,
    },
    {
      title: "Glued with a clear, and cleaned with a glue",
      text: `recipe mend {
  for  wood
  step glue "loose joint" with waterborne_polyurethane #! step-material-misfit
  step clean with wood_glue #! step-material-misfit
}
`,
    },
  ],
  passing: [
    {
      title: "Shellac taken off with its own solvent, and what is left cleaned",
      text: `recipe take_off {
  for    wood
  safety gloves, ventilate, no_ignition
  step   strip with alcohol
  step   clean with mineral_spirits
}
`,
    },
  ],
  checks: {
    onStep: ({ action, report }) => {
      const material = action.use?.material;
      const verb = lookUp(VERBS, action.verb);
      if (!action.use || !material?.family || !verb?.cannot(material.family)) return;
      report({
        headline: verb.headline(`\`${action.use.name}\``),
        why: t`Its family is ${translated(material.family.name)}, so what this line should do would not be done when the next line comes.`,
        remedy: t`Name ${verb.can()}, or use another verb.`,
        at: action.use.place,
        related: material.familyPlace ? [related(material.familyPlace, t`What it is made of`)] : [],
      });
    },
  },
};
