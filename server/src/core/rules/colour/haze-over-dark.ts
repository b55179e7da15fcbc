/**
 * A dull clear over a dark colour: its flatting agent shows as a milky haze.
 *
 * Satin, the sheen of most furniture, hazes little and stays silent, and so does one dull coat over glossier ones, which
 * is the usual cure.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { shadeOfMaterial } from "../../colour.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { DULL_SHEENS } from "../../knowledge/words.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { Coat } from "../../surface/state.ts";
import { colouredCoats } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, layerBelow } from "../texts.ts";

const FILE = (sheen: string, layer: string) => `material slate "Slate enamel" {
  family acrylic paint
  colour "#2b3a42"
}
material top_clear "Waterborne clear" {
  family waterborne polyurethane
  sheen  ${sheen}
}
recipe painted {
  for    any
  safety dust_mask
  layer  slate
  wait   until cured
  step   sand 320
  step   dust
${layer}  wait   until cured
}
`;

export const hazeOverDark: TradeRule = {
  id: "haze-over-dark",
  group: "colour",
  severity: "hint",
  docs: {
    summary: "A dull clear goes untinted over a dark colour.",
    why: "The powder that makes a clear dull scatters light, and over a dark colour that looks like a milky haze, more with every coat.",
    remedy:
      "Tint the clear with a little of the colour below, or build with gloss and leave only the last coat dull.",
    sources: [PRACTICE],
  },
  failing: [
    { title: "Matte over slate", text: FILE("matte", "  layer  top_clear #! haze-over-dark\n") },
    { title: "Eggshell over slate", text: FILE("eggshell", "  layer  top_clear #! haze-over-dark\n") },
  ],
  passing: [
    { title: "Satin over slate", text: FILE("satin", "  layer  top_clear\n") },
    { title: "Gloss over slate", text: FILE("gloss", "  layer  top_clear\n") },
    { title: "Tinted with the paint", text: FILE("matte", "  layer  top_clear, tinted 5 % with slate\n") },
    {
      title: "The colour of the stain is not dark",
      text: `material walnut "Walnut stain" {
  family waterborne stain
  colour "#a07a50"
}
material top_clear "Waterborne clear" {
  family waterborne polyurethane
  sheen  matte
}
recipe stained {
  for   wood
  layer walnut, wiped off
  wait  until recoat
  layer top_clear
  wait  until cured
}
`,
    },
  ],
  looksAt: ({ roles, isCoated }) =>
    isCoated || roles.has("paint") || roles.has("primer") || roles.has("stain") || roles.has("glaze"),
  checks: {
    onLayer: ({ action, before, report }) => {
      if (!isDull(action)) return;
      const below = colouredCoats(before).find(
        (coat) => isDark(coat) && !coat.toner && !isHidden(before.layers, coat),
      );
      if (!below) return;
      const { sheen } = action.use.material!;
      report({
        headline: t`\`${action.use.name}\` will look hazy over ${coatName(below)}`,
        why: t`It is ${translated(sheen!.value)}, and the powder that makes it dull looks milky over a dark colour, more with every coat.`,
        remedy: t`Tint it with a little of the colour below, or build with gloss and leave only the last coat dull.`,
        related: [layerBelow(below)],
      });
    },
  },
};

const isDark = ({ family, material }: Coat): boolean =>
  family?.role !== "primer" && shadeOfMaterial(material) === "dark";

function isDull({ use, tinted }: LayerAction): boolean {
  const { family, sheen } = use.material ?? {};
  return family?.role === "clear" && !tinted && sheen !== undefined && DULL_SHEENS.includes(sheen.value);
}

/** A glossy clear, or a dull one of which it was said, lies over the colour already. */
const isHidden = (layers: readonly Coat[], below: Coat): boolean =>
  layers.some((coat) => coat.serial > below.serial && coat.family?.role === "clear" && coat.material?.sheen);
