/**
 * One coat of light paint over a dark colour, and nothing else that hides it. Two coats may do, primer counts as one,
 * and what is meant to let the wood show is not meant here: thinned, wiped, porous and distressed paint.
 *
 * Where dark wood bleeds into waterborne paint, `tannin-bleed` says what comes first.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { shadeOfMaterial } from "../../colour.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { SurfaceState } from "../../surface/state.ts";
import { colouredCoats, woodOf } from "../queries.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { coatName, layerBelow, related } from "../texts.ts";

const FILE = (layers: string, wood = "wenge") => `material trim "Trim enamel" {
  family alkyd paint
  colour white
}
piece box {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  ${wood}
  }
}
recipe painted {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
${layers}  wait   until cured
}
job boxes {
  piece box
  apply painted to lid
}
`;

export const colourShowsThrough: TradeRule = {
  id: "colour-shows-through",
  group: "colour",
  severity: "hint",
  docs: {
    summary: "A single coat of light paint goes over dark wood or a dark colour, without a primer.",
    why: "One coat of a light paint does not hide what is dark: it looks grey and streaked, more where the brush was drawn out thin.",
    remedy: "Prime first, and plan two or three coats; white over dark often needs three.",
    sources: [PRACTICE],
  },
  failing: [
    { title: "White on a dark wood", text: FILE("  layer  trim #! colour-shows-through\n") },
    {
      title: "Cream over black",
      text: `material black "Black enamel" {
  family acrylic paint
  colour "#101010"
}
material cream {
  family acrylic paint
  colour "#f3ead3"
}
recipe painted {
  for    any
  layer  black
  wait   until recoat
  layer  cream #! colour-shows-through
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Two coats, or a primer and one",
      text: FILE(`  layer  trim x 2 {
    wait until recoat
    step sand 240
    step dust
  }
`),
    },
    {
      title: "A primer, and one coat",
      text: FILE(`  layer  alkyd_primer
  wait   until recoat
  layer  trim
`),
    },
    { title: "A pale wood", text: FILE("  layer  trim\n", "beech") },
    {
      title: "Thinned to let the wood show",
      text: FILE("  layer  trim, thinned 10:1 with mineral_spirits, wiped off\n"),
    },
  ],
  looksAt: ({ roles }) => roles.has("paint"),
  checks: {
    onLayer: (ctx) => {
      const { action, before, run, index, report } = ctx;
      if (!isLightCoat(action) || !isOnlyOne(run, index) || run.continued) return;
      const dark = darkBelow(ctx, before);
      if (!dark) return;
      report({
        headline: t`One coat of \`${action.use.name}\` will not hide ${dark.what}`,
        why: t`A single light coat over a dark colour dries grey and streaked.`,
        remedy: t`Prime first, or plan two or three coats.`,
        related: dark.related,
      });
    },
  },
};

function isLightCoat({ use: { material }, coats, thinned, wiped, toner }: LayerAction): boolean {
  const family = material?.family;
  if (family?.role !== "paint" || family.needsClear || coats > 1 || thinned || wiped || toner) return false;
  return (
    shadeOfMaterial(material) === "light" && !SHEER.test(`${material?.title ?? ""} ${material?.docs ?? ""}`)
  );
}

/** Paints that are sold to let the wood show. */
const SHEER =
  /\b(?:wash|whitewash|lim(?:e|ed|ing)|pickl(?:e|es|ed|ing)|translucent|transparent|sheer|glaze)\b/iu;

/** No other coat of the job hides anything, and the one is not worn through on purpose. */
const isOnlyOne = (run: SurfaceRun, index: number): boolean =>
  !run.moments
    .slice(index + 1)
    .some(({ action }) =>
      action.op === "layer"
        ? !["clear", "wax", "oil"].includes(action.use.material?.family?.role ?? "")
        : action.op === "open" || (action.op === "step" && action.verb === "distress"),
    );

function darkBelow({ action, run }: MomentContext<LayerAction>, before: SurfaceState) {
  const [top] = colouredCoats(before);
  if (top) {
    const isDark = top.family?.role !== "primer" && shadeOfMaterial(top.material) === "dark";
    return isDark ? { what: coatName(top), related: [layerBelow(top)] } : undefined;
  }
  const wood = woodOf(run);
  const place = run.surface?.substrate.place;
  if (!wood?.colours.every((colour) => /\b(?:dark|black)\b/u.test(colour)) || before.openBelow)
    return undefined;
  if (before.layers.some((coat) => !coat.family && coat.unknown !== "clear")) return undefined;
  if (wood.tannin === "rich" && action.use.material?.family?.drying === "waterborne") return undefined;
  return { what: t`dark ${translated(wood.name)}`, related: place ? [related(place, t`The wood`)] : [] };
}
