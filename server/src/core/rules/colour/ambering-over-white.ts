/**
 * A clear that yellows over white: within a year the paint looks like old piano keys.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { shadeOf, shadeOfMaterial } from "../../colour.ts";
import { TEXTBOOK } from "../../knowledge/sources.ts";
import type { Material } from "../../model/model.ts";
import type { Coat } from "../../surface/state.ts";
import { colouredCoats } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, fitting, layerBelow } from "../texts.ts";

const FILE = (colour: string, layers: string) => `material trim "Trim enamel" {
  family acrylic paint
  colour ${colour}
}
material slate "Slate enamel" {
  family acrylic paint
  colour "#2b3a42"
}
recipe painted {
  for    any
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  layer  trim
  wait   until cured
  step   sand 320
  step   dust
${layers}  wait   until cured
}
`;

export const amberingOverWhite: TradeRule = {
  id: "ambering-over-white",
  group: "colour",
  severity: "warning",
  docs: {
    summary: "A clear that yellows goes over white or light paint.",
    why: "Oil and alkyd clears, nitrocellulose and waxed shellac are amber or become so, and over white every trace of it shows.",
    remedy: "Use a waterborne clear, or leave a hard paint without one.",
    sources: [TEXTBOOK],
  },
  failing: [
    {
      title: "White stain, through which the wood shows: a hint",
      text: `material whitener "White oil stain" {
  family oil stain
  colour white
}
recipe pale_oak {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  whitener, wiped off
  wait   until cured
  layer  hardwax_oil x 2, wiped off { #! ambering-over-white
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "Oil polyurethane over white",
      text: FILE("white", "  layer  oil_polyurethane #! ambering-over-white\n"),
    },
    {
      title: "A waterborne clear that is amber by its own words, over cream",
      text: `material warm_clear "Warm satin clear" {
  family waterborne polyurethane
  colour amber
}
${FILE('"#f3ead3"', "  layer  warm_clear #! ambering-over-white\n")}`,
    },
    {
      title: "White stripes that were masked while the slate went on",
      text: FILE(
        "white",
        `  step   mask "the stripes"
  layer  slate
  wait   until touch
  step   unmask
  wait   until cured
  step   sand 320
  step   dust
  layer  oil_polyurethane #! ambering-over-white
`,
      ),
    },
  ],
  passing: [
    { title: "A waterborne clear over white", text: FILE("white", "  layer  waterborne_polyurethane\n") },
    { title: "Oil polyurethane over slate", text: FILE('"#2b3a42"', "  layer  oil_polyurethane\n") },
    {
      title: "The colour of the paint is not stated",
      text: `recipe painted {
  for    any
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  layer  acrylic_paint
  wait   until cured
  step   sand 320
  step   dust
  layer  oil_polyurethane
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ roles, isCoated }) =>
    isCoated || roles.has("paint") || roles.has("stain") || roles.has("glaze"),
  checks: {
    onLayer: ({ action, before, report }) => {
      const material = action.use.material;
      if (!material?.family || !ambers(material)) return;
      const below = colouredCoats(before).find(
        (coat) => showsYellow(coat) && !isSaidBefore(before.layers, coat),
      );
      if (!below) return;
      report({
        // The wood shows through a white stain, and is itself no whiter than the clear.
        ...(below.family?.role === "stain" ? { severity: "hint" as const } : {}),
        headline: fitting(
          [coatName(below), `\`${below.material!.name}\``, t`the pale coat below`].map(
            (what) => t`\`${action.use.name}\` will turn ${what} yellow`,
          ),
        ),
        why:
          below.material!.colour!.value === "white"
            ? t`The clear is amber or turns so within months, and over a white colour all of it shows.`
            : t`The clear is amber or turns so within months, and over a light colour all of it shows.`,
        remedy: t`Use a waterborne clear that stays pale, and try it on a painted offcut.`,
        replaces: true,
        related: [layerBelow(below)],
      });
    },
  },
};

/** White pigment in it makes it no clear. */
const ambers = ({ family, colour }: Material): boolean =>
  family?.group === "clear" &&
  (colour?.value === "amber" || (family.ambering && shadeOf(colour?.value) !== "light"));

/** White and light paint; of stains only those that are white by name, since pale wood tones take amber well. */
const showsYellow = ({ family, material, toner }: Coat): boolean =>
  family?.role === "paint"
    ? shadeOfMaterial(material) === "light"
    : (family?.role === "stain" || family?.role === "glaze") && !toner && material?.colour?.value === "white";

/** A coat that ambers lies over the colour already. */
const isSaidBefore = (layers: readonly Coat[], below: Coat): boolean =>
  layers.some((coat) => coat.serial > below.serial && coat.material !== undefined && ambers(coat.material));
