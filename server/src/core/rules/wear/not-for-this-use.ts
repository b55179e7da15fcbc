/**
 * A finish that no number of coats makes fit for its use: wax or oil alone on hard wear, shellac where alcohol or heat is
 * expected. The remedy is another finish, so it names some.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { STANDS_ALCOHOL_AND_HEAT, spoiltBy, WEARS_HARD } from "../../knowledge/wear.ts";
import { andList, orList } from "../../model/suggest.ts";
import { sentence } from "../../sentence.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { Coat } from "../../surface/state.ts";
import { actionOf } from "../coat-queries.ts";
import type { TradeRule } from "../rule.ts";
import { uncured } from "../short-wait.ts";
import { plainlySays } from "../spoken-words.ts";
import { coatName, related } from "../texts.ts";
import { wearingCoats } from "../wear-queries.ts";

export const notForThisUse: TradeRule = {
  id: "not-for-this-use",
  group: "wear",
  severity: "warning",
  secondaryTo: ["unprotected-layer"],
  docs: {
    summary:
      "A finish that is not made for its use: wax, oil, shellac or a primer last on hard wear, a finish for rooms in rain or sun, shellac last where alcohol or heat is expected.",
    why: "Wax and oil keep no water out for long and wear off under hands and cups, alcohol dissolves shellac, and heat marks it. More coats do not change that.",
    remedy:
      "Choose another finish: for hard wear a polyurethane, a conversion varnish or a hardwax oil. Shellac may stay as the sealer below it.",
    sources: [
      "Wood Handbook, FPL-GTR-190 (2010), table 16-3: linseed oil keeps out far less moisture than varnish",
      "shellac against alcohol and heat: finishing textbooks, from memory",
      "Wood Handbook, FPL-GTR-190 (2010), chapter 16: ultraviolet light and water break clear finishes down outdoors, pigmented ones last longest; from memory, confidence high",
      "which finishes bear hard wear: common practice, no source",
      "boards and bowls for food are oiled or waxed and renewed, since knives chip a film: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Shellac on a table top, however many coats",
      text: `piece table {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  walnut
    wear  hard
  }
}
recipe polished {
  for    wood
  safety ventilate, no_ignition, gloves, dust_mask
  layer  dewaxed_shellac x 4, between wait 2 h and sand 400 #! not-for-this-use
  wait   until cured
}
job tables {
  piece table
  apply polished to top
}
`,
    },
    {
      title: "An interior clear on a garden bench",
      text: `piece bench {
  surface seat {
    shape    area 1 m2
    wood     beech
    outdoors rain, sun
  }
}
recipe cleared {
  for    wood
  safety dust_mask
  step   sand 120, 180
  step   dust
  layer  waterborne_polyurethane x 3, between sand 220 #! not-for-this-use
  wait   until cured
}
job benches {
  piece bench
  apply cleared
}
`,
    },
    {
      title: "Oil alone on a table top; it stands on the last layer",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe oiled {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  drying_oil x 3, wiped off {
    wait until recoat
  }
  wait   until cured
  layer  paste_wax #! not-for-this-use
  wait   until cured
}
job tables {
  piece table
  apply oiled to top
}
`,
    },
    {
      title: "French polish on a drinks cabinet",
      text: `piece cabinet "Drinks cabinet" {
  surface top {
    shape panel 900 mm x 400 mm
    wood  beech
  }
}
recipe polished {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac x 3 { #! not-for-this-use
    wait until recoat
  }
  wait   until cured
}
job cabinets {
  piece cabinet
  apply polished to top
}
`,
    },
    {
      title: "Shellac on a tray, where the recipe itself speaks of hot cups",
      text: `piece tray "Tea tray" {
  surface face {
    shape panel 450 mm x 300 mm
    wood  beech
  }
}
recipe polished {
  for    wood
  safety ventilate, no_ignition
  note   "Hot cups stand on it all day."
  layer  dewaxed_shellac x 3 { #! not-for-this-use
    wait until recoat
  }
  wait   until cured
}
job trays {
  piece tray
  apply polished to face
}
`,
    },
  ],
  passing: [
    {
      title: "Oiled because it is oiled again: a garden bench, a workbench, a toy-safe tray, a sauna",
      text: `material tray_oil "Walnut oil, food safe once cured" {
  family drying oil
}
piece garden_bench {
  surface slats {
    shape    area 1 m2
    wood     teak
    outdoors rain, sun
    wear     hard
  }
}
piece workbench {
  surface top {
    shape panel 1800 mm x 600 mm
    wood  beech
    wear  hard
  }
}
piece high_chair {
  meant_for children
  surface tray {
    shape panel 400 mm x 300 mm
    wood  beech
    wear  hard
  }
}
piece bench "Upper bench of the sauna" {
  surface boards {
    shape area 1 m2
    wood  aspen
    wear  hard
  }
}
recipe oiled(oil: material) {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 150
  step   dust
  layer  oil x 2, by cloth, wiped off, between wait 24 h
  wait   until cured
}
job oiling {
  piece garden_bench
  piece workbench
  piece high_chair
  piece bench
  apply oiled(oil: exterior_oil) to garden_bench.slats
  apply oiled(oil: drying_oil) to workbench.top
  apply oiled(oil: tray_oil) to high_chair.tray
  apply oiled(oil: mineral_oil) to bench.boards
}
`,
    },
    {
      title: "Old French polish is renewed in its own kind, and a note names the alcohol of the rubber",
      text: `piece table {
  built 2001
  surface top {
    shape    panel 1200 mm x 700 mm
    wood     mahogany
    existing waxed shellac
    wear     hard
  }
}
shop bench {
  country US
}
recipe polished {
  for    wood
  safety ventilate, no_ignition, gloves, dust_mask
  step   clean with soap
  wait   3 h
  step   scuff 400
  step   dust
  layer  waxed_shellac x 3 sessions, by rubber
  note   "Lift the oil with a rubber that is hardly damp with alcohol."
  wait   until cured
}
job tables {
  piece table
  in    bench
  apply polished to top
}
`,
    },
    {
      title: "Spar varnish on a garden bench, and a clear under the porch",
      text: `piece bench {
  surface seat {
    shape    area 1 m2
    wood     beech
    outdoors rain, sun
  }
}
piece porch_bench {
  surface seat {
    shape    area 1 m2
    wood     beech
    outdoors sheltered
  }
}
recipe varnished {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   dust
  layer  spar_varnish x 3, between sand 220
  wait   until cured
}
recipe cleared {
  for    wood
  safety dust_mask
  step   sand 120, 180
  step   dust
  layer  waterborne_polyurethane x 3, between sand 220
  wait   until cured
}
job benches {
  piece bench
  apply varnished
}
job porch {
  piece porch_bench
  apply cleared
}
`,
    },
    {
      title: "Shellac where the words keep drinks and heat away",
      text: `## Never put hot cups on it.
piece box "Sewing box" {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}
recipe polished {
  for    wood
  safety ventilate, no_ignition
  note   "Keep hot cups and spilt drinks off it, or use coasters."
  layer  dewaxed_shellac x 3 {
    wait until recoat
  }
  wait   until cured
}
job boxes {
  piece box
  apply polished to lid
}
`,
    },
    {
      title: "Mineral oil on a board that food is cut on: it is renewed, and a film would chip",
      text: `piece board "Cutting board" {
  meant_for food
  surface face {
    shape panel 450 mm x 300 mm
    wood  hard maple
    wear  hard
  }
}
recipe oiled {
  for    wood
  safety dust_mask
  step   sand 120, 180, 220
  step   dust
  layer  mineral_oil x 2, wiped off, between wait 12 h
  wait   until cured
}
job boards {
  piece board
  apply oiled to face
}
`,
    },
    {
      title: "Hardwax oil on hard wear, oil where wear is normal, shellac below a polyurethane",
      text: `piece cabinet "Drinks cabinet" {
  surface top {
    shape panel 900 mm x 400 mm
    wood  beech
    wear  hard
  }
  surface door {
    shape panel 600 mm x 400 mm
    wood  beech
    wear  hard
  }
  surface sides {
    shape panel 600 mm x 400 mm
    wood  beech
  }
}
recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  dewaxed_shellac
  wait   until recoat
  layer  oil_polyurethane x 3 {
    wait until recoat
  }
  wait   until cured
}
recipe hard_oiled {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  hardwax_oil x 2, wiped off {
    wait until recoat
  }
  wait   until cured
}
recipe oiled {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  drying_oil, wiped off
  wait   until cured
}
job cabinets {
  piece cabinet
  apply varnished to top
  apply hard_oiled to door
  apply oiled to sides
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      const wearing = wearingCoats(run);
      const top = run.final.layers.findLast((coat) => coat.origin === "new");
      const unfit =
        wearing &&
        top &&
        (tooSoft(run, wearing.worth, top) ??
          shellacWorn(run, wearing.last) ??
          weathered(run, top) ??
          spoilt(run, top));
      const action = top && actionOf(run, top);
      if (!unfit || !action) return;
      report(action, { ...unfit, replaces: true, causes: [uncured(top)] });
    },
  },
};

/** Nothing on this surface bears hard wear, however many coats there are. What needs a clear is told to have one. */
function tooSoft(run: SurfaceRun, worth: number, top: Coat) {
  const wear = run.surface?.wear;
  if (wear?.value !== "hard" || worth > 0 || !top.family || top.family.needsClear) return undefined;
  if (top.family.role === "oil" && isOiledByUse(run, top)) return undefined;
  return {
    headline: t`${coatName(top)} does not bear hard wear`,
    why: t`It is the last layer of \`${run.label}\`, and heat, water and scratches soon get through where hands and cups go.`,
    remedy: t`Finish this surface with ${orList(WEARS_HARD.map(translated))} instead.`,
    related: wear.place ? [related(wear.place, t`The wear of the surface`)] : [],
  };
}

/**
 * What is oiled and oiled again whenever it looks dry, since a film would chip, peel or burn there: boards for food,
 * furniture in the weather, workbenches, sauna benches, and what the words say is renewed.
 */
function isOiledByUse(run: SurfaceRun, { material }: Coat): boolean {
  const users = run.piece?.useBy?.value;
  if (users === "food" || run.surface?.outdoors !== undefined) return true;
  const label = material === undefined ? "" : `${material.title ?? ""}. ${material.docs}`;
  if (users === "children" && FOR_FOOD_OR_TOYS.test(label)) return true;
  return [...textsOn(run), label].some((text) => OILED_AND_RENEWED.test(text));
}

const FOR_FOOD_OR_TOYS = /\b(?:food|toys?|children|treen|bowls?|EN\s?71)\b/iu;
const OILED_AND_RENEWED =
  /\b(?:work[\s-]?bench(?:es)?|joiner['’]?s['’]?\s+bench|bench\s+with\s+(?:a\s+)?(?:\w+\s+)?vice|tail\s+vice|sauna|steam\s+room|(?:chopping|cutting|bread|carving|butcher['’]?s?)[\s-]+(?:board|block)s?|tool\s+handles?|gun\s?stocks?|re-?oil(?:ed|ing|s)?|oil(?:ed)?\s+(?:it\s+)?again|renew(?:ed|s|al)?|once\s+a\s+(?:year|month)|(?:each|every)\s+(?:year|spring|autumn|month|season|few\s+(?:months|weeks)|six\s+months))\b/iu;

/**
 * Shellac builds a film, and any number of coats of it is marked by wet glasses, hot cups and spilt drinks. An old polish
 * may be renewed in its own kind.
 */
function shellacWorn({ surface, label, final }: SurfaceRun, last: Coat) {
  const wear = surface?.wear;
  if (wear?.value !== "hard" || !isShellac(last)) return undefined;
  if (final.layers.some((coat) => coat.origin !== "new" && isShellac(coat))) return undefined;
  return {
    headline: t`${coatName(last)} does not bear hard wear`,
    why: t`Water, heat and spilt drinks soon mark the shellac of \`${label}\`, and more coats do not change that.`,
    remedy: t`Put ${orList(WEARS_HARD.filter((name) => name !== "hardwax oil").map(translated))} over dewaxed shellac, or finish this surface without shellac.`,
    related: wear.place ? [related(wear.place, t`The wear of the surface`)] : [],
  };
}

const isShellac = ({ family }: Coat): boolean => family?.role === "clear" && family.binder === "shellac";

/** Films and oils made for weather, and paints, whose pigments keep the sun from the wood. */
const LASTS_OUTDOORS: readonly string[] = [
  "spar varnish",
  "exterior oil",
  "alkyd paint",
  "acrylic paint",
  "two part polyurethane",
  "waterborne two part polyurethane",
];

/** Rain or sun takes a finish that is made for rooms. */
function weathered({ surface, label }: SurfaceRun, top: Coat) {
  const outdoors = surface?.outdoors;
  if (!outdoors || !top.family || LASTS_OUTDOORS.includes(top.family.name)) return undefined;
  const reaching = outdoors.value.filter((word) => word !== "sheltered");
  if (reaching.length === 0) return undefined;
  return {
    headline: t`${coatName(top)} does not last outdoors`,
    why:
      reaching.length > 1
        ? t`${sentence(andList(reaching.map(translated)))} reach \`${label}\`, and a finish that is made for rooms cracks, peels or washes out there.`
        : reaching[0] === "rain"
          ? t`Rain reaches \`${label}\`, and a finish that is made for rooms cracks, peels or washes out there.`
          : t`Sun reaches \`${label}\`, and a finish that is made for rooms cracks, peels or washes out there.`,
    remedy: t`Finish it with spar varnish, exterior oil or a paint made for outdoors, and renew it as its label says.`,
    related: outdoors.place ? [related(outdoors.place, t`What reaches it`)] : [],
  };
}

const WORDS = {
  alcohol:
    /\b(?:bar[\s-]+(?:top|counter|table|cabinet|trolley|cart)|(?:drinks?|cocktail|wine|liquor|whisk(?:e)?y)[\s-]+(?:table|tray|trolley|cart|cabinet|counter|bar)|alcohol|(?:spilt|spilled)\s+(?:drinks?|wine|beer|spirits)|(?:drinks?|wine|beer|spirits|cocktails?)\s+(?:is|are|gets?|may\s+be|will\s+be)\s+(?:poured|served|mixed|spilt|spilled))\b/iu,
  heat: /\bhot\s+(?:cups?|mugs?|dish(?:es)?|plates?|pans?|pots?|drinks?|things|coffee|tea|soup|food|meals)\b|\btea[\s-]?pots?\b|\bkettles?\b/iu,
} as const;

/** The last layer, or under wax the one that the wax only polishes, is spoilt by what the words say of its use. */
function spoilt(run: SurfaceRun, top: Coat) {
  const expected = textsOn(run);
  const underWax =
    top.family?.role === "wax"
      ? run.final.layers.findLast(({ origin, family }) => origin === "new" && family?.role !== "wax")
      : undefined;
  for (const coat of [top, underWax]) {
    const by = coat?.family && spoiltBy(coat.family).find((cause) => says(expected, cause));
    if (by) return spoiltText(coat, coat === top, by);
  }
  return undefined;
}

/** Words that keep drinks and heat from the surface. */
const KEEPS_OFF = /\b(?:off|away|coasters?|mats?|trivets?|saucers?|protect(?:s|ed)?)\b/iu;

const says = (texts: readonly string[], cause: keyof typeof WORDS): boolean =>
  texts
    .flatMap((text) => text.split(/[.;!?]\s|\n/u))
    .some((part) => plainlySays(part, WORDS[cause]) && !KEEPS_OFF.test(part));

function spoiltHeadline(coat: string, isLast: boolean, by: keyof typeof WORDS): string {
  if (by === "alcohol")
    return isLast
      ? t`${coat} is the last layer where alcohol is expected`
      : t`${coat} is the last layer under wax where alcohol is expected`;
  return isLast
    ? t`${coat} is the last layer where heat is expected`
    : t`${coat} is the last layer under wax where heat is expected`;
}

function spoiltText(coat: Coat, isLast: boolean, by: keyof typeof WORDS) {
  return {
    headline: spoiltHeadline(coatName(coat), isLast, by),
    why:
      by === "alcohol"
        ? t`Alcohol dissolves it: every spilt drink leaves a mark.`
        : t`Heat softens it and leaves white rings.`,
    remedy: t`Finish with ${orList(STANDS_ALCOHOL_AND_HEAT.map(translated))} instead; dewaxed shellac may stay as the sealer below it.`,
  };
}

/** What the piece, its surface and the recipe are called and say, and the notes of the recipe. */
function textsOn({ piece, surface, recipe, moments }: SurfaceRun): readonly string[] {
  if (!piece || !surface) return [];
  const names = [piece.name, surface.name, recipe?.name].map((name) => name?.replaceAll("_", " "));
  const notes = moments.flatMap(({ action }) => (action.op === "note" ? [withoutAlcohol(action.text)] : []));
  const docs = recipe && withoutAlcohol(recipe.docs);
  return [...names, piece.title, piece.docs, surface.docs, recipe?.title, docs, ...notes].filter(
    (text): text is string => text !== undefined && text !== "",
  );
}

/** Where the words of a recipe name alcohol, it is what the shellac is thinned or spirited off with. */
const withoutAlcohol = (text: string): string => text.replaceAll(/\balcohol\b/giu, "");
