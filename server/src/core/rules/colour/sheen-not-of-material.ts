/**
 * A line that asks for one sheen, and a material whose label states another: the sheen is in the can, and nothing that is
 * done with it makes a matte clear glossy.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

const FILE = (sheen: string, asked: string, mark: string): string => `material hall_clear "Hall clear" {
  family waterborne polyurethane
  sheen  ${sheen}
}

recipe clear_top(clear: material, shine: sheen = satin) {
  for    wood
  safety dust_mask
  step   sand 120, 180
  step   dust
  layer  clear x 3, sheen shine, between sand 320${mark}
  wait   until cured
}

piece shelf {
  built 2015
  surface top {
    shape panel 800 mm x 300 mm, one face
    wood  beech
  }
}

job shelves {
  piece shelf
  apply clear_top(clear: hall_clear${asked}) to top
}
`;

export const sheenNotOfMaterial: TradeRule = {
  id: "sheen-not-of-material",
  group: "colour",
  severity: "warning",
  docs: {
    summary: "A layer asks for a sheen, and its material states another.",
    why: "The sheen comes out of the can: flatting powder makes it dull, and no way of putting it on makes it glossy again.",
    remedy: "Buy the material in the sheen that is asked for, or ask for the one that it has.",
    sources: ["common practice, no source"],
  },
  failing: [
    {
      title: "Satin is asked for where nothing else is said, and the can is matte",
      text: FILE("matte", "", " #! sheen-not-of-material"),
    },
    {
      title: "In gloss units: 80 is gloss, and the can is satin",
      text: FILE("satin", ", shine: 80", " #! sheen-not-of-material"),
    },
  ],
  passing: [
    { title: "The can has the sheen that the job asks for", text: FILE("gloss", ", shine: gloss", "") },
  ],
  checks: {
    onLayer: ({ action, report }) => {
      const { sheen, use } = action;
      const stated = use.material?.sheen;
      if (action.coat > 1 || sheen === undefined || !stated || stated.value === sheen) return;
      report({
        headline: t`\`${use.name}\` is ${translated(stated.value)}, and ${translated(sheen)} is asked for`,
        why: t`The sheen comes out of the can; no way of putting it on changes it much.`,
        remedy: t`Buy it in ${translated(sheen)}, or ask for \`sheen ${stated.value}\` here.`,
        related: stated.place ? [related(stated.place, t`The sheen on the label`)] : [],
      });
    },
  },
};
