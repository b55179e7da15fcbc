/**
 * A wet layer whose solvent dissolves or wrinkles the dry one below: lacquer over paint or varnish above all. What is
 * of one kind with the layer below melts into it and is fine.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { family } from "../../knowledge/families.ts";
import type { Carrier, Family } from "../../knowledge/family-schema.ts";
import { HARD_OVER_SOFT_STEPS, isQuickOver, takesShellac } from "../../knowledge/layer-relation.ts";
import { sentence } from "../../sentence.ts";
import {
  type Coat,
  hasReached,
  isFilm,
  type SurfaceState,
  stageHours,
  waitedOf,
} from "../../surface/state.ts";
import { barrierLines, familiesOf, meltsInto, reachedCoats } from "../coat-queries.ts";
import { inWaterInstead, takeOldFinishOff } from "../remedy-fixes.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, insertAbove, layerBelow, shareText, useName } from "../texts.ts";
import { isSprayed } from "../two-part.ts";

export const solventLiftsLayer: TradeRule = {
  id: "solvent-lifts-layer",
  group: "layers",
  severity: "error",
  voids: "a coat attacks the one below",
  docs: {
    summary: "A strong solvent goes over a layer that it dissolves or wrinkles.",
    why: "The solvent of the wet coat softens the dry one below, which swells, wrinkles, lifts or smears.",
    remedy:
      "Put dewaxed shellac between the two, wait for the full cure where that is enough, or choose a coat with a milder solvent.",
    sources: [
      "UFC 3-190-06 section 2.4: solvent-sensitive coatings do not go with strong-solvent topcoats",
      "finishing textbooks, from memory: lacquer lifts oil paint, oil varnish and latex",
      "alcohol softens acrylic and latex paint, and a quick coat of shellac primer holds on it: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Lacquer over alkyd paint, cured or not",
      text: `recipe glossy {
  for    wood
  safety ventilate, no_ignition, wet_rags, vapour_respirator, eye_protection, gloves
  layer  alkyd_paint
  wait   until cured
  layer  nitrocellulose_lacquer x 2, by hvlp { #! solvent-lifts-layer
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "Lacquer over an oil finish that has not cured",
      text: `recipe glossy {
  for    wood
  safety ventilate, no_ignition, wet_rags, vapour_respirator, eye_protection, gloves
  layer  drying_oil, wiped off
  wait   5 days
  layer  nitrocellulose_lacquer, by hvlp #! solvent-lifts-layer
  wait   until cured
}
`,
    },
    {
      title: "Shellac over acrylic paint, and alcohol to clean it",
      text: `recipe glossy {
  for    wood
  safety ventilate, no_ignition, gloves, dust_mask
  layer  acrylic_paint
  wait   until cured
  step   scuff 320
  step   dust
  layer  dewaxed_shellac #! solvent-lifts-layer
  wait   until cured
}
recipe wiped {
  for    wood
  safety ventilate, no_ignition, gloves
  layer  acrylic_paint
  wait   until cured
  step   clean with alcohol #! solvent-lifts-layer
}
`,
    },
    {
      title: "An unknown clear counts as the worst it may be",
      text: `piece box "Box" {
  built 1995
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing unknown clear
  }
}
recipe renew {
  safety ventilate, no_ignition, dust_mask, vapour_respirator, eye_protection, gloves
  step   clean with soap
  step   scuff 320
  step   dust
  layer  precatalyzed_lacquer, by hvlp #! solvent-lifts-layer
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
}
`,
    },
    {
      title: "Alcohol dissolves the shellac that it should clean",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing dewaxed shellac
  }
}
recipe renew {
  safety ventilate, no_ignition, gloves
  step   clean with alcohol #! solvent-lifts-layer
  layer  dewaxed_shellac
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
}
`,
    },
  ],
  passing: [
    {
      title: "Alcohol that is to take the old shellac off",
      text: `recipe patch {
  for    wood
  safety gloves, ventilate, no_ignition
  layer  dewaxed_shellac
  wait   until cured
  step   clean with alcohol "lift the shellac up to the stiles, fresh pads"
}
`,
    },
    {
      title: "Dewaxed shellac between the two",
      text: `recipe glossy {
  for    wood
  safety ventilate, no_ignition, wet_rags, vapour_respirator, eye_protection, gloves
  layer  alkyd_paint
  wait   until cured
  layer  dewaxed_shellac
  wait   until recoat
  layer  nitrocellulose_lacquer, by hvlp
  wait   until cured
}
`,
    },
    {
      title: "A waterborne clear over acrylic paint, or shellac primer in one quick coat",
      text: `recipe cleared {
  for    wood
  safety dust_mask
  layer  acrylic_paint
  wait   until cured
  step   clean with soap
  step   scuff 320
  step   dust
  layer  waterborne_acrylic
  wait   until cured
}
recipe repainted {
  for    wood
  safety ventilate, no_ignition, gloves, dust_mask
  layer  acrylic_paint
  wait   until cured
  step   scuff 220
  step   dust
  layer  shellac_primer
  wait   until recoat
  layer  acrylic_paint
  wait   until cured
}
`,
    },
    {
      title: "Lacquer melts into lacquer, and over shellac and an oil finish that has cured",
      text: `recipe glossy {
  for    wood
  safety ventilate, no_ignition, wet_rags, vapour_respirator, eye_protection, gloves
  layer  drying_oil, wiped off
  wait   30 days
  layer  dewaxed_shellac
  wait   until recoat
  layer  nitrocellulose_lacquer x 3, by hvlp {
    wait until recoat
  }
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, report }) => {
      const over = action.use.material?.family;
      // A toner is misted on, and dries before it can soften anything.
      if (!over || (action.toner && isSprayed(action))) return;
      const found = reachedCoats(before.layers)
        .map((coat) => lifting(before, over, coat))
        .find((lift) => lift !== undefined);
      if (!found) return;
      const { coat, worst, untilCured } = found;
      const window = coat.material?.recoat?.value.latest;
      // Oil comes up under lacquer even when it has cured, so waiting alone does not help.
      const comesUp = untilCured && worst.role === "oil";
      const mayWait =
        untilCured && !comesUp && coat.serial === before.layers.at(-1)?.serial && window === undefined;
      const barrier = family("dewaxed shellac");
      const holdsOnBarrier = takesShellac(worst) && over.hardness - barrier.hardness < HARD_OVER_SOFT_STEPS;
      // What the recipe itself puts on need not be stripped.
      const solvent = sentence(translated(over.carrier));
      report({
        ...(isSoftened(worst, over.carrier) ? { severity: "warning" as const } : {}),
        headline: t`${useName(action.use)} attacks ${coatName(coat)} below`,
        why: `${coat.unknown ? t`The old finish may be ${translated(worst.name)}. ` : ""}${
          untilCured
            ? t`${solvent} softens the layer below, which wrinkles, lifts or smears: that has had ${shareText(waitedOf(before, coat).hours, stageHours(coat, "cured")!)} it needs to cure.`
            : t`${solvent} softens the layer below, which wrinkles, lifts or smears.`
        }`,
        remedy: comesUp
          ? t`Wait until it has cured, and then put a coat of dewaxed shellac between the two.`
          : untilCured
            ? t`Wait until it has cured, or put a coat of dewaxed shellac between the two.`
            : holdsOnBarrier
              ? t`Put a coat of dewaxed shellac between the two, or choose a coat with a milder solvent.`
              : takesShellac(worst)
                ? coat.action
                  ? t`Leave out the layer below, or choose a coat with a milder solvent.`
                  : t`Strip the layer below, or choose a coat with a milder solvent.`
                : coat.action
                  ? t`Leave out the layer below, or choose a waterborne clear as flexible as it is.`
                  : t`Strip the layer below, or choose a waterborne clear as flexible as it is.`,
        ...(untilCured || holdsOnBarrier || coat.action ? {} : { abrades: "to the wood" }),
        related: [layerBelow(coat)],
        fixes: mayWait
          ? [
              insertAbove("undertaking", action, t`Wait until the layer below has cured`, [
                "wait  until cured",
              ]),
            ]
          : holdsOnBarrier && !untilCured
            ? [
                insertAbove(
                  "undertaking",
                  action,
                  t`Put dewaxed shellac between the two`,
                  barrierLines(action),
                ),
              ]
            : untilCured
              ? []
              : [...takeOldFinishOff(run, before, action), ...inWaterInstead(action, worst)],
      });
    },
    onStep: ({ action, before, report }) => {
      const solvent = action.use?.material?.family;
      if (solvent?.role !== "solvent" || (action.verb !== "clean" && action.verb !== "dewax")) return;
      const film = before.layers.findLast(isFilm);
      const worst =
        film &&
        familiesOf(film).find(
          (below) =>
            below.dissolvedBy.includes(solvent.carrier) &&
            !(film.unknown && isSoftened(below, solvent.carrier)),
        );
      if (!film || !worst || takesFilmOff(action.what ?? "")) return;
      report({
        ...(isSoftened(worst, solvent.carrier) ? { severity: "warning" as const } : {}),
        headline: t`${sentence(useName(action.use!))} dissolves ${coatName(film)}`,
        why: film.unknown
          ? t`It may be ${translated(worst.name)}, which softens, smears and loses its surface under the cloth.`
          : t`The film softens, smears and loses its surface under the cloth.`,
        remedy: t`Use soap and water, or mineral spirits; to take the film off, write \`step strip with paint_stripper\`.`,
        abrades: "to the wood",
        related: [layerBelow(film)],
      });
    },
  },
};

/** Words that say that the film is meant to come off, or to flow anew: common practice, no source. */
const takesFilmOff = (text: string): boolean => COMES_OFF.test(text) && FILM.test(text);

const COMES_OFF =
  /\b(?:lift|take|wash|wipe|strip|clean|melt|soften|dissolve|remove|flow|reflow|re-?amalgamate|amalgamate)s?\b/iu;
const FILM = /\b(?:shellac|polish|lacquer|finish|film|varnish|coat|craz(?:e|ed|es|ing))\b/iu;

/** Alcohol softens acrylic paint and drags it, rather than dissolving it; paint of which nothing is known is seldom that. */
const isSoftened = (below: Family, carrier: Carrier): boolean =>
  below.name === "acrylic paint" && carrier === "alcohol";

interface Lift {
  readonly coat: Coat;
  readonly worst: Family;
  /** Only because it has not cured yet. */
  readonly untilCured: boolean;
}

/** Whether the carrier of a wet coat attacks this one; wax and thin colour have rules and times of their own. */
function lifting(state: SurfaceState, over: Family, coat: Coat): Lift | undefined {
  const attacked = familiesOf(coat).filter(
    (below) =>
      below.role !== "wax" &&
      !meltsInto(over, below) &&
      !isQuickOver(over, below) &&
      !(isSoftened(below, over.carrier) && (coat.unknown || coat !== state.layers.at(-1))),
  );
  const worst = attacked.find((below) => below.dissolvedBy.includes(over.carrier));
  if (worst) return { coat, worst, untilCured: false };
  const soft = attacked.find(
    (below) =>
      ["clear", "oil", "paint"].includes(below.role) &&
      below.binder !== over.binder &&
      below.dissolvedUncuredBy.includes(over.carrier),
  );
  return soft && hasReached(state, coat, "cured") === "no"
    ? { coat, worst: soft, untilCured: true }
    : undefined;
}
