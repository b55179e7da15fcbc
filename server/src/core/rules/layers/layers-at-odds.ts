/**
 * Two layers that do not go together by the table of layers (`knowledge/layer-relation.ts`), where no other rule knows the
 * pair better: lacquer over oil, filler or glaze that has not cured, a glaze over bare stain, filler or conditioner over a
 * film.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { type Relation, relation } from "../../knowledge/layer-relation.ts";
import { COMPATIBILITY_LIST, HANDBOOK_16, TEXTBOOK } from "../../knowledge/sources.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import {
  hasReached,
  hasWaited,
  type SurfaceState,
  stageHours,
  sureHours,
  topCoat,
  waitedOf,
} from "../../surface/state.ts";
import { barrierLines } from "../coat-queries.ts";
import { takeOldFinishOff } from "../remedy-fixes.ts";
import type { Report, TradeRule } from "../rule.ts";
import { coatName, fitting, insertAbove, layerBelow, related, useName } from "../texts.ts";

export const layersAtOdds: TradeRule = {
  id: "layers-at-odds",
  group: "layers",
  severity: "warning",
  secondaryTo: ["filler-not-dry", "layer-against-for"],
  docs: {
    summary:
      "Two layers that do not go together: lacquer over oil, or over filler or glaze that has not cured, a glaze over bare stain, filler or conditioner over a film, anything but soap over a soap finish.",
    why: "What is below still gives off oil or solvent, or is closed already: the layer above wrinkles, turns cloudy, looks patchy or peels.",
    remedy:
      "Wait until the layer below has cured, put dewaxed shellac between the two, or do the lines in their usual order: conditioner, stain, filler, sealer, glaze, clear.",
    sources: [
      COMPATIBILITY_LIST,
      `${HANDBOOK_16}: stain, fill and seal`,
      TEXTBOOK,
      "wax over varnish that has not cured, and lacquer over oil stain after a day: hints, common practice, no source",
    ],
  },
  failing: [
    {
      title: "Shellac brushed over an alcohol dye, and a waterborne clear over a water dye",
      text: `recipe in_alcohol {
  for    wood
  safety ventilate, no_ignition, gloves
  layer  alcohol_dye, by cloth, wiped off
  wait   until cured
  layer  dewaxed_shellac, by brush #! layers-at-odds
  wait   until cured
}
recipe in_water {
  for    wood
  layer  water_dye, by cloth, wiped off
  wait   until cured
  layer  waterborne_acrylic, by brush #! layers-at-odds
  wait   until cured
}
`,
    },
    {
      title: "Oil over a soap finish",
      text: `recipe soaped {
  for    wood
  safety dust_mask, wet_rags
  step   sand 120, 180
  step   dust
  layer  soap_finish, wiped off
  wait   until cured
  layer  drying_oil, wiped off #! layers-at-odds
  wait   until cured
}
`,
    },
    {
      title: "Lacquer over grain filler after a day; it needs three",
      text: `recipe filled {
  for    wood
  safety dust_mask, ventilate, no_ignition, wet_rags, vapour_respirator, gloves, eye_protection
  step   sand 120, 150
  step   dust
  step   fill with grain_filler
  wait   24 h
  step   sand 220
  step   dust
  layer  nitrocellulose_lacquer, by hvlp #! layers-at-odds
  wait   until cured
}
`,
    },
    {
      title: "A glaze over bare stain, and lacquer over the glaze after a day",
      text: `recipe glazed {
  for    wood
  safety ventilate, no_ignition, wet_rags, vapour_respirator, gloves, eye_protection
  layer  oil_stain, wiped off
  wait   24 h
  layer  glaze, wiped off #! layers-at-odds
  wait   24 h
  layer  nitrocellulose_lacquer, by hvlp #! layers-at-odds
  wait   until cured
}
`,
    },
    {
      title: "A glaze straight over a dye",
      text: `recipe glazed {
  for    wood
  safety ventilate, no_ignition, wet_rags, gloves
  layer  alcohol_dye, wiped off
  wait   until recoat
  layer  glaze, wiped off #! layers-at-odds
  wait   until cured
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "Lacquer over oil, which comes up under it",
      text: `recipe oiled {
  for    wood
  safety ventilate, no_ignition, wet_rags, vapour_respirator, gloves, eye_protection
  layer  drying_oil, wiped off
  wait   until cured
  layer  nitrocellulose_lacquer, by hvlp #! layers-at-odds
  wait   until cured
}
`,
    },
    {
      title: "Grain filler over a varnish has no pores to fill",
      text: `recipe filled_too_late {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  layer  oil_varnish
  wait   until recoat
  layer  grain_filler, wiped off #! layers-at-odds
  wait   24 h
  step   sand 220
  step   dust
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A thin first coat, a padded one and another carrier leave a dye where it is",
      text: `recipe in_alcohol {
  for    wood
  safety ventilate, no_ignition, gloves
  layer  alcohol_dye, by cloth, wiped off
  wait   until cured
  layer  dewaxed_shellac, by pad
  wait   until recoat
  layer  dewaxed_shellac, by brush
  wait   until cured
}
recipe in_water {
  for    wood
  layer  water_dye, by cloth, wiped off
  wait   until cured
  layer  waterborne_acrylic, by brush, thin
  wait   until recoat
  layer  waterborne_acrylic, by brush
  wait   until cured
}
recipe on_water {
  for    wood
  safety ventilate, no_ignition, gloves
  layer  water_dye, by cloth, wiped off
  wait   until cured
  layer  dewaxed_shellac, by brush
  wait   until cured
}
`,
    },
    {
      title: "A dye sealed under the glaze",
      text: `recipe glazed {
  for    wood
  safety ventilate, no_ignition, wet_rags, gloves
  layer  alcohol_dye, wiped off
  wait   until recoat
  layer  dewaxed_shellac
  wait   until recoat
  layer  glaze, wiped off
  wait   until cured
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "Soap renewed over soap",
      text: `recipe soaped {
  for    wood
  safety dust_mask
  step   sand 120, 180
  step   dust
  layer  soap_finish x 2, wiped off {
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "Three days for the filler, and shellac between oil and lacquer, and between stain and glaze",
      text: `recipe filled {
  for    wood
  safety dust_mask, ventilate, no_ignition, wet_rags, vapour_respirator, gloves, eye_protection
  step   sand 120, 150
  step   dust
  step   fill with grain_filler
  wait   72 h
  step   sand 220
  step   dust
  layer  nitrocellulose_lacquer, by hvlp
  wait   until cured
}
recipe oiled {
  for    wood
  safety ventilate, no_ignition, wet_rags, vapour_respirator, gloves, eye_protection
  layer  drying_oil, wiped off
  wait   until cured
  layer  dewaxed_shellac
  wait   until recoat
  layer  nitrocellulose_lacquer, by hvlp
  wait   until cured
}
recipe glazed {
  for    wood
  safety ventilate, no_ignition, wet_rags, vapour_respirator, gloves, eye_protection
  layer  oil_stain, wiped off
  wait   24 h
  layer  dewaxed_shellac
  wait   until recoat
  layer  glaze, wiped off
  wait   until cured
  layer  nitrocellulose_lacquer, by hvlp
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, report }) => {
      const over = action.use.material?.family;
      if (!over) return;
      const found =
        overFilling(action, over, before) ??
        overCoat(run, action, over, before) ??
        movedDye(action, over, before);
      if (found) report(found);
    },
  },
};

function overCoat(
  run: SurfaceRun,
  action: LayerAction,
  over: Family,
  before: SurfaceState,
): Report | undefined {
  const coat = topCoat(before);
  const below = coat?.family;
  if (!coat || !below) return undefined;
  const found = relation(over, below);
  const place = layerBelow(coat);
  const name = coatName(coat);
  if (found.verdict === "no" && isTooLate(over, below)) {
    const report = tooLate(action, over, below, name, found, place);
    return { ...report, fixes: takeOldFinishOff(run, before, action) };
  }
  if (found.verdict === "needs a barrier" && needsItsOwnBarrier(over, below)) {
    // Until the oil has cured, `solvent-lifts-layer` says that it has to, and what comes then.
    if (below.role === "oil" && hasReached(before, coat, "cured") === "no") return undefined;
    return needsBarrier(action, name, found, place);
  }
  if (found.verdict !== "fine after cure" || !mustCure(over, below)) return undefined;
  // Before its recoat time `recoat-too-early` tells to wait.
  if (hasReached(before, coat, "cured") !== "no") return undefined;
  if (below.role !== "filler" && hasReached(before, coat, "recoat") === "no") return undefined;
  const left = stageHours(coat, "cured")! - sureHours(waitedOf(before, coat));
  return tooFresh(action, over, below, name, place, isSlight(left, stageHours(coat, "cured")!));
}

/**
 * A dye has no binder, so what is brushed over it in the same carrier drags it about: the families' own words, common
 * practice, no source. Only where the line says that it is brushed: a thin coat or one from the gun leaves it where it is.
 */
function movedDye(action: LayerAction, over: Family, before: SurfaceState): Report | undefined {
  const coat = topCoat(before);
  const below = coat?.family;
  if (!coat || below?.binder !== "dye" || !MOVED_DYES.has(below.name)) return undefined;
  if (over.carrier !== below.carrier || !["clear", "sealer"].includes(over.role)) return undefined;
  const isLight = action.laid === "thin" || action.laid === "mist" || action.thinned !== undefined;
  const saysHow = action.syntax.tails.some(({ kind }) => kind === "by");
  if (isLight || !saysHow || !DRAGS.has(action.method) || action.wiped) return undefined;
  return {
    headline: fitting([
      t`${useName(action.use)} drags the dye ${coatName(coat)} about`,
      t`${useName(action.use)} drags the dye below about`,
      t`This coat drags the dye below about`,
    ]),
    why: t`Both are in ${translated(below.carrier)}, which dissolves the dye again, and the brush draws it into streaks.`,
    remedy: t`Spray the first coat, lay it \`thin\`, or seal the dye with a clear that is not in ${translated(below.carrier)}.`,
    related: [layerBelow(coat)],
  };
}

/** A pad or a cloth that is hardly wet leaves the dye where it is. */
const DRAGS: ReadonlySet<string> = new Set(["brush", "roller", "foam"]);

/** `dye stain` may be in either carrier. */
const MOVED_DYES: ReadonlySet<string> = new Set(["water stain", "water dye", "alcohol dye"]);

/** The filling with which nothing but sanding has been done since. */
function overFilling(action: LayerAction, over: Family, before: SurfaceState): Report | undefined {
  for (const filling of before.fillings) {
    const material = filling.use.material;
    const below = material?.family;
    if (!below || filling.from !== before.nextSerial || !mustCure(over, below)) continue;
    if (relation(over, below).verdict !== "fine after cure") continue;
    const cure = filling.drying.cured?.hours;
    const waited = waitedOf(before, filling);
    if (cure === undefined || hasWaited(waited, cure, "cured") !== "no") continue;
    const place = related(filling.place, t`Filled here`);
    return tooFresh(
      action,
      over,
      below,
      useName(filling.use),
      place,
      isSlight(cure - sureHours(waited), cure),
    );
  }
  return undefined;
}

/** A shortfall of 5 % at most, and 4 h at most, is no more than a hint. */
const isSlight = (left: number, needed: number): boolean => left <= Math.min(needed * 0.05, 4) + 1e-6;

const isLacquer = ({ carrier }: Family): boolean => carrier === "lacquer thinner";

/** What works in open wood, over a layer that has closed it; lacquer on cured conversion varnish; anything on soap; what soaks in or fills on mineral oil. */
const isTooLate = (over: Family, below: Family): boolean =>
  (below.binder === "soap" && over.role !== "stain") ||
  (below.binder === "mineral oil" && over.role !== "stain" && (!over.buildsFilm || over.role === "filler")) ||
  ((over.role === "conditioner" || over.name === "grain filler" || below.name === "conversion varnish") &&
    over.role !== "stain" &&
    over.role !== "oil" &&
    below.role !== "wax");

/** The others dissolve what is below, or shun its wax, and have rules of their own. */
const needsItsOwnBarrier = (over: Family, below: Family): boolean =>
  over.role === "glaze" || (below.role === "oil" && isLacquer(over));

/** Water over oil, stain and glaze is `waterborne-over-uncured-oil`'s, and lacquer over clear and paint `solvent-lifts-layer`'s. */
function mustCure(over: Family, below: Family): boolean {
  if (over.role === "wax") return below.buildsFilm;
  if (below.role === "filler") return true;
  return isLacquer(over) && ["stain", "glaze", "conditioner"].includes(below.role);
}

/** A filler that must cure before such a coat: its recoat time is then not the time that counts. */
export const mustFillerCure = (over: Family | undefined, below: Family | undefined): boolean =>
  over !== undefined &&
  below?.role === "filler" &&
  mustCure(over, below) &&
  relation(over, below).verdict === "fine after cure";

function tooLate(
  action: LayerAction,
  over: Family,
  below: Family,
  name: string,
  { reason }: Relation,
  place: ReturnType<typeof layerBelow>,
): Report {
  return {
    headline: t`${useName(action.use)} does not go over ${name}`,
    why: `${reason}.`,
    ...remedyFor(below, over),
    related: [place],
  };
}

function remedyFor(below: Family, over: Family): Pick<Report, "remedy" | "abrades"> {
  if (below.binder === "soap")
    return {
      remedy: t`Wash the soap out with water, let the wood dry and sand it first.`,
      abrades: "surface",
    };
  if (over.role === "conditioner")
    return {
      remedy: t`Strip or sand to bare wood first and put the conditioner right under the stain, or leave it out.`,
      abrades: "to the wood",
    };
  if (over.name === "grain filler")
    return {
      remedy: t`Strip or sand to bare or thinly sealed wood first, or leave the filler out.`,
      abrades: "to the wood",
    };
  return {
    remedy: t`Strip the layer below first, or go on with the same conversion varnish.`,
    abrades: "to the wood",
  };
}

function needsBarrier(
  action: LayerAction,
  name: string,
  { reason }: Relation,
  place: ReturnType<typeof layerBelow>,
): Report {
  return {
    headline: t`${useName(action.use)} needs a barrier over ${name}`,
    why: `${reason}.`,
    remedy: t`Put a coat of dewaxed shellac between the two, once the layer below has dried.`,
    related: [place],
    fixes: [insertAbove("undertaking", action, t`Put dewaxed shellac between the two`, barrierLines(action))],
  };
}

function tooFresh(
  action: LayerAction,
  over: Family,
  below: Family,
  name: string,
  place: ReturnType<typeof layerBelow>,
  isShort: boolean,
): Report {
  const isUsual = isShort || over.role === "wax" || below.role === "stain" || below.role === "conditioner";
  return {
    headline: t`${useName(action.use)} goes over ${name} before it has cured`,
    why:
      over.role === "wax"
        ? t`Wax keeps the air from a film that has not hardened, and it stays soft for longer.`
        : t`Oil that has not hardened keeps the film from holding: it wrinkles, turns cloudy or peels.`,
    remedy:
      over.role === "wax"
        ? t`Wait until the film has cured; its label says how long.`
        : t`Wait until it has cured, or put a coat of dewaxed shellac between the two.`,
    related: [place],
    ...(isUsual ? { severity: "hint" as const } : {}),
    fixes: [
      insertAbove("undertaking", action, t`Wait until the layer below has cured`, ["wait  until cured"]),
    ],
  };
}
