/**
 * A cleaner, a solvent, water or a stripper laid on as a layer: none of them stays.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { leavesLayer } from "../../knowledge/families.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

export const materialCannotBeLayer: TradeRule = {
  id: "material-cannot-be-layer",
  group: "hygiene",
  severity: "warning",
  docs: {
    summary: "A `layer` line names a cleaner, a solvent, water, a stripper or a bleach.",
    why: "A layer is what stays on the surface; these evaporate or are rinsed off, and what comes after would be judged as if they were there.",
    remedy:
      "Say it as a step: `step clean with soap`, `step strip with paint_stripper`, `step bleach with wood_bleach`, `step dampen`.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "Soap as a layer",
      text: `recipe wash {
  for   wood
  layer soap, wiped off #! material-cannot-be-layer
}
`,
    },
  ],
  passing: [
    {
      title: "Soap as a step",
      text: `recipe wash {
  for  wood
  step clean with soap
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, report }) => {
      const material = action.use.material;
      if (!material?.family || leavesLayer(material.family)) return;
      report({
        headline: t`${useName(action.use)} leaves no layer`,
        why: t`A layer is what stays on the surface, and this evaporates or is rinsed off.`,
        remedy: t`Say it as a step, such as \`${stepFor(material.family, action.use.name)}\`${orElse(material.family)}.`,
        at: action.use.place,
        related: material.familyPlace ? [related(material.familyPlace, t`What it is made of`)] : [],
      });
    },
  },
};

/** `soap` on a label is read as what washes, and it may be what stays. */
const orElse = ({ name }: Family): string =>
  name === "cleaner" ? t`; soap that stays on the wood is \`family soap finish\`` : "";

function stepFor(family: Family, name: string): string {
  if (family.name === "water") return "step dampen";
  if (family.role === "stripper") return `step strip with ${name}`;
  return `step ${family.role === "bleach" ? "bleach" : "clean"} with ${name}`;
}
