/**
 * A penetrating stain where it cannot soak in: on a film, on laminate or metal, on a filler that takes none. A stain
 * laid thin `as toner` is meant for a film, and a thin washcoat lets a stain through.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { Fix, RelatedPlace } from "../../findings.ts";
import { onceFor } from "../../once.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { type Coat, hasReached, isAbradedSince, isFilm, type SurfaceState } from "../../surface/state.ts";
import { isPorousPaint, slickName } from "../coat-queries.ts";
import { layAsToner, putOnInstead, takeOldFinishOff } from "../remedy-fixes.ts";
import type { MomentContext, Report, TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine } from "../spoken-words.ts";
import { coatName, layerBelow, useName } from "../texts.ts";
import { toldLines } from "../told-lines.ts";

export const stainOnSealedSurface: TradeRule = {
  id: "stain-on-sealed-surface",
  group: "layers",
  severity: "error",
  voids: "the stain cannot soak in",
  docs: {
    summary:
      "A penetrating stain goes on a film, on laminate or metal, or on a filler that does not take it.",
    why: "The stain cannot soak in: it lies on top, stays tacky, wipes off in streaks and lets the next coat peel.",
    remedy:
      "Strip or sand to bare wood before the stain, or lay the stain thin on the scuffed film `as toner` and put a clear over it.",
    sources: [
      "Wood Handbook, FPL-GTR-190, chapter 16: thinned shellac or lacquer limits how much stain soaks in",
      "that a film keeps a stain out: finishing textbooks, from memory",
    ],
  },
  failing: [
    {
      title: "Gel wiped thin over a scuffed film: a hint",
      text: `recipe darker {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  layer  oil_polyurethane
  wait   until cured
  step   scuff 320
  step   dust
  layer  gel_stain, wiped off #! stain-on-sealed-surface
  wait   72 h
  layer  oil_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "Stain over a full coat of shellac",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  layer  dewaxed_shellac
  wait   until recoat
  step   sand 220
  step   dust
  layer  oil_stain, wiped off #! stain-on-sealed-surface
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "An old finish that was only scuffed",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing nitrocellulose lacquer, 2 coats
  }
}
recipe darker {
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  step   clean with soap
  step   sand 120, 150
  step   dust
  layer  gel_stain, wiped off #! stain-on-sealed-surface
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
job boxes {
  piece box
  apply darker to lid
}
`,
    },
    {
      title: "Stain on a soap finish",
      text: `recipe darker {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  soap_finish, wiped off
  wait   until recoat
  layer  oil_stain, wiped off #! stain-on-sealed-surface
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "A recipe for laminate, even without a job",
      text: `recipe darker {
  for    laminate
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  step   scuff 220
  step   dust
  layer  gel_stain, wiped off #! stain-on-sealed-surface
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Dye on the places where the film is rubbed through",
      text: `recipe touched_in {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  layer  oil_varnish
  wait   until cured
  step   scuff 320
  step   dust
  layer  alcohol_dye, only "rubbed-through arms"
  wait   2 h
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "Grain drawn with gel stain on a ground of paint",
      text: `recipe grained {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  layer  alkyd_primer
  wait   until recoat
  layer  alkyd_paint
  wait   until cured
  step   scuff 320
  step   dust
  note   "Comb and flogger while the stain is wet."
  layer  gel_stain, by brush
  wait   until cured
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "As a toner on the scuffed film, under a clear",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing nitrocellulose lacquer, 2 coats
  }
}
recipe darker {
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  step   clean with soap
  step   scuff 220
  step   dust
  layer  gel_stain, as toner
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
job boxes {
  piece box
  apply darker to lid
}
`,
    },
    {
      title: "Over a thinned washcoat, over a conditioner and over another stain",
      text: `recipe over_washcoat {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  layer  dewaxed_shellac, thinned 1:1 with alcohol
  wait   until recoat
  step   sand 220
  step   dust
  layer  gel_stain, wiped off
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
recipe over_conditioner {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_conditioner, wiped off
  wait   until recoat
  layer  oil_stain, wiped off
  wait   24 h
  layer  oil_stain, wiped off
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "Gel stain on one coat of shellac that was scuffed",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  layer  dewaxed_shellac
  wait   until recoat
  step   scuff 320
  step   dust
  layer  gel_stain, wiped off
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "Sanded to bare wood",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing nitrocellulose lacquer, 2 coats
  }
}
recipe darker {
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  step   clean with soap
  step   sand 100, 150
  step   dust
  layer  gel_stain, wiped off
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
job boxes {
  piece box
  apply darker to lid
}
`,
    },
  ],
  looksAt: ({ roles }) => roles.has("stain"),
  checks: {
    onLayer: (ctx) => {
      const { action, before, run, report } = ctx;
      const over = action.use.material?.family;
      if (!over?.penetrating || over.role !== "stain" || action.toner) return;
      // Where the film is rubbed through, colour takes: that is what is touched in.
      if (action.part) return;
      if (over.name === "gel stain" && isGrained(before, run)) return;
      const sealed = sealedBy(before, over.name === "gel stain") ?? substrateSeals(before, slickName(run));
      if (!sealed) return;
      report({
        headline: sealed.headline(useName(action.use)),
        why: t`It lies on top, stays tacky, wipes off in streaks and lets the next coat peel.`,
        remedy: sealed.remedy,
        ...(sealed.abrades ? { abrades: sealed.abrades } : {}),
        ...(over.name === "gel stain" && action.wiped && isOnScuffedFilm(before)
          ? { severity: "hint" as const }
          : {}),
        related: sealed.related,
        fixes: instead(ctx),
      });
    },
  },
};

/** A gel wiped thin over a scuffed, sound film darkens it as a glaze does, under a clear: common practice, no source. */
function isOnScuffedFilm(before: SurfaceState): boolean {
  const film = before.layers.findLast(isFilm);
  return film !== undefined && film === before.layers.at(-1) && isAbradedSince(film);
}

/** Gel stain drawn over a scuffed, dry ground of paint with a comb is meant to lie on it: common practice, no source. */
function isGrained(before: SurfaceState, run: SurfaceRun): boolean {
  const ground = before.layers.at(-1);
  const isGround = ground?.family?.role === "paint" && isAbradedSince(ground);
  return isGround && hasReached(before, ground, "recoat") !== "no" && saysGraining(run);
}

const saysGraining = onceFor((run: SurfaceRun): boolean =>
  toldLines(run).some((action) => saidOnLine(action, GRAINING) !== undefined),
);
const GRAINING = phrases(
  "comb|flogger|graining|grainer|graining_comb|graining_brush|grained|heart_grain|false_grain",
);

/** The wood made bare under the stain; on what has none a paint, and on a new film a toner. */
function instead({ action, before, run }: MomentContext<LayerAction>): readonly Fix[] {
  if (action.coat > 1) return [];
  if (substrateSeals(before, slickName(run)))
    return [putOnInstead(action, t`Paint it instead`, "acrylic paint", 2)];
  const off = takeOldFinishOff(run, before, action);
  return off.length > 0 ? off : layAsToner(action);
}

interface Sealed {
  /** By the name of the stain. */
  readonly headline: (name: string) => string;
  readonly remedy: string;
  readonly abrades?: Report["abrades"];
  readonly related: readonly RelatedPlace[];
}

/** The coat that keeps a stain out. Under a stain that is there already the trouble was that one's. */
function sealedBy(state: SurfaceState, isGel: boolean): Sealed | undefined {
  // Rubbed over a distressed finish, a stain takes where the wood shows, which is what it is for.
  if (state.distressed) return undefined;
  const top = state.layers.findLast((coat) => !(coat.toner && coat.family?.role === "stain"));
  if (top?.family?.role === "filler" && top.family.takesStain !== true) {
    return {
      headline: (name) => t`${name} does not soak into ${coatName(top)}`,
      remedy: t`Use a filler that takes stain, or colour the surface with a paint or a glaze.`,
      related: [layerBelow(top)],
    };
  }
  if (top?.family?.role === "oil") {
    return {
      headline: (name) => t`${name} does not soak through ${coatName(top)}`,
      remedy:
        top.family.binder === "soap"
          ? t`Stain before you soap; where the soap is on already, wash it out, let the wood dry and sand it first.`
          : t`Stain before you oil; sand to bare wood first where the oil is on already.`,
      abrades: "to the wood",
      related: [layerBelow(top)],
    };
  }
  const coat = top && !isFilm(top) && top.family?.role !== "stain" ? state.layers.findLast(isFilm) : top;
  // On the rest of the surface the wood is bare, as around sealed knots.
  if (!coat || coat.action?.part || isPorousPaint(coat) || isWashcoat(state, coat)) return undefined;
  if (isGel && isOneScuffedSealer(state, coat)) return undefined;
  if (!isFilm(coat)) return undefined;
  return {
    headline: (name) => t`${name} does not soak through ${coatName(coat)}`,
    remedy: t`Strip or sand to bare wood first, or lay it thin \`as toner\` on the scuffed film and put a clear over it.`,
    abrades: "to the wood",
    related: [layerBelow(coat)],
  };
}

/**
 * Thinned shellac or sealer under a stain evens its colour and lets it through, in two coats at most; so does one coat
 * of sanding sealer that was sanded back.
 */
function isWashcoat(state: SurfaceState, top: Coat): boolean {
  const films = state.layers.filter(isFilm);
  const thin = films.every((coat) => coat.family?.evensStain && coat.action?.thinned);
  const sandedSealer = top.family?.role === "sealer" && films.length === 1 && isAbradedSince(top);
  return (thin && films.length <= 2) || sandedSealer;
}

/** Gel stain stays near the surface, so one coat of shellac or sealer that was scuffed holds it: common practice, no source. */
const isOneScuffedSealer = (state: SurfaceState, top: Coat): boolean =>
  top.family?.evensStain === true && state.layers.filter(isFilm).length === 1 && isAbradedSince(top);

function substrateSeals(state: SurfaceState, slick: string | undefined): Sealed | undefined {
  if (!slick || state.layers.some((coat) => coat.family?.role !== "wax")) return undefined;
  return {
    headline: (name) => t`${name} does not soak into ${translated(slick)}`,
    remedy: t`Scuff and prime the surface and paint it instead.`,
    abrades: "surface",
    related: [],
  };
}
