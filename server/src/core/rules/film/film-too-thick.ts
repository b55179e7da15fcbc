/**
 * More coats of one family on each other than its film bears: lacquer checks, conversion varnish cracks, paint stays
 * soft underneath. Only the new coats count; how thick an old film is nobody knows. What is called a primer is made to
 * fill and to be sanded, so it counts apart from the coats above it, whatever family it is written with.
 */

import { t, translated } from "../../../../../grammar/src/translate.ts";
import { filmText } from "../../measure/figures.ts";
import type { Material } from "../../model/model.ts";
import { onceFor } from "../../once.ts";
import { isPolished } from "../../quantities/laydown.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { Coat } from "../../surface/state.ts";
import { type FilmStack, stackOf } from "../film-stack.ts";
import { onlyCoats } from "../remedy-fixes.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const filmTooThick: TradeRule = {
  id: "film-too-thick",
  group: "film",
  severity: "warning",
  docs: {
    summary: "The new coats of one family together are thicker than a sound film of that family.",
    why: "A film that is too thick dries on top and stays soft below, and a brittle one cracks as it shrinks.",
    remedy: "Leave coats out, put them on thinner, or sand back between them.",
    sources: [
      "common practice, no source: the film range of each family, and that a polisher's pad stays below it",
      "conversion varnish: about 5 mil of dry film in all, from memory, confidence medium",
      "a primer that fills is sanded back and counts apart from the coats above it: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Three coats of primer and undercoat, known by typical solids: a hint",
      text: `recipe built_up {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  alkyd_primer x 3 { #! film-too-thick
    wait until recoat
  }
  wait   until recoat
  layer  alkyd_paint
  wait   until cured
}
`,
    },
    {
      title: "Five coats of varnish by typical figures: a hint",
      text: `recipe built_up {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_varnish x 5 { #! film-too-thick
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "A hint: by a label's figures a twentieth too much",
      text: `material cabinet_clear "Conversion varnish" {
  family conversion varnish
  covers 7.2 m2/L
  solids 32 %
}

recipe cabinets {
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  cabinet_clear x 3 { #! film-too-thick
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "Six coats of conversion varnish",
      text: `recipe heavy {
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  conversion_varnish x 6 { #! film-too-thick
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "Up to six coats, if they turn out to be needed",
      text: `recipe heavy {
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  conversion_varnish x 2 to 6 #! film-too-thick
  wait   until cured
}
`,
    },
    {
      title: "Five thick coats of one two-part paint",
      text: `material two_part_white "Two-part topcoat" {
  family   two part polyurethane
  pot_life 4 h
  covers   8 m2/L
}

recipe piled {
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  two_part_white x 5, by roller { #! film-too-thick
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "One flood coat",
      text: `material thick_clear {
  family waterborne polyurethane
  covers 2 m2/L
}

recipe flooded {
  layer thick_clear #! film-too-thick
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Six brushed coats of shellac",
      text: `recipe built_up {
  safety ventilate, no_ignition, gloves
  layer  dewaxed_shellac x 6, by brush, between wait 3 h
  wait   until cured
}
`,
    },
    {
      title: "A French polish, padded on in a dozen coats",
      text: `recipe french_polish {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition
  step   sand 120, 150, 180, 220
  step   dust
  layer  dewaxed_shellac x 12, by pad {
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "A two-part primer that is sanded, and two coats of the paint of the same family",
      text: `material filler_primer "Two-part filler primer" {
  family   two part polyurethane
  pot_life 2 h
  covers   8 m2/L
}

material two_part_white "Two-part topcoat" {
  family   two part polyurethane
  pot_life 4 h
  covers   8 m2/L
}

recipe painted {
  safety dust_mask, vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  filler_primer x 2, by roller, between sand 320
  wait   until recoat
  step   sand 320
  step   dust
  layer  two_part_white x 2, by roller, between sand 400
  wait   until cured
}
`,
    },
    {
      title: "Three coats of each of three families",
      text: `recipe painted {
  safety dust_mask
  layer  acrylic_primer x 3 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   overnight
  step   sand 220
  step   dust
  layer  acrylic_paint x 3 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   until recoat
  layer  waterborne_polyurethane x 3 {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, after, run, report }) => {
      const family = action.use.material?.family;
      const thickest = family?.filmRangeUm?.[1];
      const stack = stackOf(after);
      if (!family || thickest === undefined || stack?.family !== family) return;
      // A polisher cuts back between the coats of a great many.
      if (isPolished(family, action.method)) return;
      const coats = coatsLike(stack, isPrimer(stack.coats.at(-1)!));
      const um = thicknessOf(coats);
      // Said once, on the coat with which it becomes too thick.
      const earlier = stackOf(before);
      const had =
        earlier?.family === family ? thicknessOf(coatsLike(earlier, isPrimer(stack.coats.at(-1)!))) : 0;
      if (um <= thickest + 1e-6 || had > thickest + 1e-6) return;
      const first = coats[0]!;
      const name = translated(family.name);
      report({
        ...(isWithinDoubt(first, run, thickest) ? { severity: "hint" as const } : {}),
        headline: t`The film of ${name} gets too thick: ${filmText(um)}`,
        why:
          coats.length === 1
            ? t`One coat makes that much dry film, and ${name} bears about ${filmText(thickest)}; thicker, it stays soft below or cracks as it shrinks.`
            : t`${coats.length} coats make that much dry film, and ${name} bears about ${filmText(thickest)}; thicker, it stays soft below or cracks as it shrinks.`,
        remedy: t`Leave coats out, or put them on thinner.`,
        related: first.place === action.place ? [] : [related(first.place, t`The first of these coats`)],
        fixes: onlyCoats(action, action.coat - 1),
      });
    },
  },
};

/**
 * What a coat leaves by its family's typical figures is known that roughly, and sanding between coats takes some of it:
 * common practice, no source.
 */
const TYPICAL_DOUBT = 0.25;
/** The same by the coverage and the solids of a label, whose coverage is a round figure. */
const LABEL_DOUBT = 0.1;

/** Whether the whole film, from this coat up, is too thick by no more than the figures are in doubt. */
function isWithinDoubt(first: Coat, { final: { layers } }: SurfaceRun, thickest: number): boolean {
  const above = layers.slice(layers.findIndex(({ serial }) => serial === first.serial));
  const end = above.findIndex((coat) => coat.family !== first.family || isPrimer(coat) !== isPrimer(first));
  const coats = end < 0 ? above : above.slice(0, end);
  if (coats.length < 2 || coats.some(({ action }) => action?.wetUm !== undefined)) return false;
  const doubt = coats.every(isTypical) ? TYPICAL_DOUBT : LABEL_DOUBT;
  return thicknessOf(coats) <= thickest * (1 + doubt) + 1e-6;
}

/** Without the coverage or the solids of a label. */
const isTypical = ({ material }: Coat): boolean =>
  material?.covers?.origin !== "stated" || material.solids?.origin !== "stated";

/** The uppermost coats of a film that are primers, or that are none. */
function coatsLike({ coats }: FilmStack, primer: boolean): readonly Coat[] {
  const below = coats.findLastIndex((coat) => isPrimer(coat) !== primer);
  return coats.slice(below + 1);
}

/** Dry film of the coats together, micrometres. */
const thicknessOf = (coats: readonly Coat[]): number =>
  coats.reduce((sum, { filmUm }) => sum + (filmUm ?? 0), 0);

/** By its role, or by its name and title: two-part and alkyd primers are often written with the family of their paint. */
const isPrimer = ({ family, material }: Coat): boolean =>
  family?.role === "primer" || (material !== undefined && isCalledPrimer(material));

const isCalledPrimer = onceFor(({ name, title }: Material): boolean =>
  /\b(?:primer|undercoat|surfacer)\b/iu.test(`${name.replaceAll("_", " ")} ${title ?? ""}`),
);
