/**
 * Stain straight on a wood that drinks it unevenly.
 *
 * Gel stain stays near the surface and blotches far less; many lay it on bare pine, so there this is a hint. So is dye on
 * bare maple, which is how its figure is brought out. Whatever
 * lies below the stain already evens it, or is another rule's matter.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { TEXTBOOK } from "../../knowledge/sources.ts";
import { sentence } from "../../sentence.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isStated } from "../duty-check.ts";
import { blotches, sandingLines, woodOf } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { textOf } from "../spoken-words.ts";
import { insertAbove, related } from "../texts.ts";
import { isSprayed } from "../two-part.ts";

const SHELF = (wood: string) => `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  ${wood}
  }
}
`;

export const blotchyStain: TradeRule = {
  id: "blotchy-stain",
  group: "colour",
  severity: "warning",
  secondaryTo: ["coat-over-wax"],
  docs: {
    summary:
      "A stain goes on blotch-prone wood without conditioner or sealer below it (a hint for gel stain).",
    why: "Pine, birch, maple, cherry and their like drink stain unevenly, and the colour comes out in dark clouds.",
    remedy:
      "Put a conditioner (`layer oil_conditioner, wiped off`) or a thin washcoat (`layer dewaxed_shellac, thinned 1:2 with alcohol`) on first, and try it on an offcut.",
    sources: ["Wood Handbook FPL-GTR-190 chapter 16: sealers limit absorption", TEXTBOOK],
  },
  failing: [
    {
      title: "Dye that brings out the figure of maple: a hint",
      text: `${SHELF("maple")}
recipe curly {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  alcohol_dye, wiped off #! blotchy-stain
  wait   until recoat
  layer  oil_varnish
  wait   until cured
}
job shelves {
  piece shelf
  apply curly to top
}
`,
    },
    {
      title: "Oil stain on pine",
      text: `${SHELF("pine")}recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  oil_stain, wiped off #! blotchy-stain
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
job shelves {
  piece shelf
  apply stained to top
}
`,
    },
    {
      title: "Gel stain on pine may blotch",
      text: `${SHELF("pine")}recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  gel_stain, wiped off #! blotchy-stain
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
job shelves {
  piece shelf
  apply stained to top
}
`,
    },
    {
      title: "Waterborne stain on a cherry veneer",
      text: `${SHELF("cherry, veneer 0.9 mm")}recipe stained {
  for    wood
  safety dust_mask
  step   dampen
  wait   overnight
  step   sand 150, 220
  step   dust
  layer  waterborne_stain, wiped off #! blotchy-stain
  wait   until recoat
  layer  waterborne_polyurethane
  wait   until cured
}
job shelves {
  piece shelf
  apply stained to top
}
`,
    },
  ],
  passing: [
    {
      title: "A conditioner first",
      text: `${SHELF("pine")}recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  oil_conditioner, wiped off
  wait   until recoat
  layer  oil_stain, wiped off
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
job shelves {
  piece shelf
  apply stained to top
}
`,
    },
    {
      title: "A washcoat of thinned shellac first, scuffed",
      text: `${SHELF("pine")}recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  dewaxed_shellac, thinned 1:2 with alcohol
  wait   until recoat
  step   sand 320
  step   dust
  layer  oil_stain, wiped off
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
job shelves {
  piece shelf
  apply stained to top
}
`,
    },
    {
      title: "A dye misted on from the gun and left there",
      text: `${SHELF("hard maple")}recipe dyed {
  for    wood
  safety dust_mask, vapour_respirator, gloves, eye_protection
  safety ventilate 20 air changes/h, no_ignition, keep_out
  step   sand 120, 180
  step   dust
  layer  dye_stain, by hvlp
  wait   until cured
  layer  waterborne_polyurethane
  wait   until cured
}
job shelves {
  piece shelf
  apply dyed to top
}
`,
    },
    {
      title: "Beech and oak take it evenly",
      text: `${SHELF("beech")}recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  oil_stain, wiped off
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
job shelves {
  piece shelf
  apply stained to top
}
`,
    },
  ],
  looksAt: ({ roles }) => roles.has("stain"),
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const over = action.use.material?.family;
      const wood = woodOf(run);
      const isGel = over?.name === "gel stain";
      const bringsOutFigure = over?.binder === "dye" && wood !== undefined && FIGURED.has(wood.name);
      if (!over || !wood || !blotches(action, before, run)) return;
      // A dye that was tried on the same wood is known to come out even enough, or the recipe would not go on.
      const isTried = over.binder === "dye" && wasTried(run, index);
      if (isMist(action)) return;
      report({
        ...(isGel || bringsOutFigure || isTried ? { severity: "hint" as const } : {}),
        headline:
          isGel || bringsOutFigure
            ? t`\`${action.use.name}\` may come out blotchy on bare ${translated(wood.name)}`
            : t`\`${action.use.name}\` comes out blotchy on bare ${translated(wood.name)}`,
        why: isGel
          ? t`Dense and open spots drink different amounts, and the colour comes out in dark clouds, though less with a gel.`
          : t`Dense and open spots drink different amounts, and the colour comes out in dark clouds.`,
        remedy: isGel
          ? t`Try the colour on an offcut or a hidden spot: a gel often needs no conditioner. If it comes out blotchy, ${evenedBy(over)}.`
          : t`${sentence(evenedBy(over))}, and try the colour on an offcut.`,
        ...(isGel
          ? {
              brief: t`A gel does so least: try it on an offcut or a hidden spot, and put a conditioner on first only if that comes out blotchy.`,
            }
          : {}),
        abrades: "surface",
        ...(run.surface?.substrate.place
          ? { related: [related(run.surface.substrate.place, t`The surface is ${translated(wood.name)}`)] }
          : {}),
        fixes: action.coat === 1 ? [conditionerFix(action, over.drying === "oxidising")] : [],
      });
    },
  },
};

/**
 * Lines that can be copied: the conditioner that goes with the stain, or a washcoat that its carrier does not dissolve. A
 * washcoat of one part of shellac as it comes from the can (a 2-pound cut or so) to two of alcohol: common practice, no source.
 */
function evenedBy({ drying, carrier }: Family): string {
  const conditioner =
    drying === "oxidising"
      ? t`put a conditioner on first (\`layer oil_conditioner, wiped off\`, then \`wait until recoat\`)`
      : t`put a conditioner on first (\`layer waterborne_conditioner, wiped off\`, then \`wait until recoat\`, \`step sand 220\` and \`step dust\`)`;
  if (carrier === "alcohol") return conditioner;
  return t`${conditioner} or a thin washcoat (\`layer dewaxed_shellac, thinned 1:2 with alcohol\`, then \`wait until recoat\`, \`step sand 320\` and \`step dust\`)`;
}

/** Woods whose curl and birdseye are dyed on the bare wood to make them show: common practice, no source. */
const FIGURED: ReadonlySet<string> = new Set(["maple", "hard maple", "soft maple"]);

/** A step above that tries it on an offcut or a board of the same wood. */
const wasTried = ({ moments }: SurfaceRun, index: number): boolean =>
  moments
    .slice(0, index)
    .some(
      ({ action }) =>
        action.op === "step" &&
        action.verb === "test" &&
        /\b(?:off-?cut|scrap|sample|test\s+(?:board|piece)|same\s+(?:board|wood))/iu.test(
          textOf(action) ?? "",
        ),
    );

/** What is sprayed on and left there dries where it falls, and is not drunk unevenly; common practice, no source. */
const isMist = (layer: LayerAction): boolean => isSprayed(layer) && !layer.wiped;

/** An oil conditioner under an oil stain, which brings the same duties; else the waterborne one and a light sanding. */
function conditionerFix(action: LayerAction, oil: boolean) {
  if (!oil) {
    return insertAbove("undertaking", action, t`Put a waterborne conditioner on first`, [
      "layer waterborne_conditioner, wiped off",
      "wait  until recoat",
      ...sandingLines(action, 220),
    ]);
  }
  const missing = (["ventilate", "no_ignition", "wet_rags"] as const).filter(
    (duty) => !isStated(action, duty),
  );
  return insertAbove("undertaking", action, t`Put an oil conditioner on first`, [
    ...(missing.length > 0 ? [`safety ${missing.join(", ")}`] : []),
    "layer oil_conditioner, wiped off",
    "wait  until recoat",
  ]);
}
