/**
 * The next layer before the label's earliest recoat time: the most common haste in finishing.
 *
 * Only stated waits and stated hands-on times count as drying. A night counts with the least that it is sure to bring,
 * or with what the job's own plan gives it. Where oil under water or wax below is the matter, their rules say so.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import type { Fix } from "../../findings.ts";
import { typedDuration } from "../../measure/format-amount.ts";
import { sameDeclaration } from "../../place.ts";
import { isBeingPlanned } from "../../schedule/being-planned.ts";
import { closedHoursAt } from "../../schedule/calendar.ts";
import { sentence } from "../../sentence.ts";
import type { Action, LayerAction } from "../../surface/actions.ts";
import { type DryingTime, statesTime } from "../../surface/drying-time.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { putOnAt } from "../../surface/run-index.ts";
import { type Coat, hasReached, type SurfaceState, topCoat, waitedOf } from "../../surface/state.ts";
import { isWithinMargin, shortfallOf } from "../../surface/wait-margin.ts";
import { itemOf } from "../../totals/planned-tasks.ts";
import { mustFillerCure } from "../layers/layers-at-odds.ts";
import { mustCureFirst } from "../layers/waterborne-over-uncured-oil.ts";
import type { JobContext, Report, RunContext, TradeRule } from "../rule.ts";
import {
  briefCoatName,
  inPlaceOf,
  missingTo,
  namedByParameter,
  neededIn,
  shortWait,
  timePlaces,
  waitBefore,
  waitsIn,
} from "../short-wait.ts";
import { fixOf, insertAbove, layerBelow, linesAbove, replaceAt } from "../texts.ts";

interface Haste {
  readonly action: LayerAction;
  readonly index: number;
  readonly below: Coat;
  readonly needed: DryingTime;
  readonly had: number;
}

export const recoatTooEarly: TradeRule = {
  id: "recoat-too-early",
  group: "waits",
  severity: "warning",
  secondaryTo: ["ambering-over-white"],
  docs: {
    summary:
      "A layer goes on before the recoat time of the layer below, in the shop's air. A hint where the label's own hours are kept, the label names no air, and the shop's asks for no more than a quarter longer.",
    why: "A coat that still gives off its water or solvent is sealed in: the film stays soft, turns cloudy, wrinkles or drags under the brush.",
    remedy:
      "Wait for the label's earliest recoat time, longer in cold or damp air: `wait until recoat` calculates it for the shop.",
    sources: [
      "common practice, no source: the label's recoat time",
      "common practice, no source: a quarter, since a label that names no air may mean that of the shop",
      "ASTM D1640: dry-to-recoat is a stage of its own, after dry-to-touch",
      "Wood Handbook, FPL-GTR-190 (2010), chapter 16: the second coat of a penetrating stain before the first is dry, after 20 to 60 minutes, and the excess wiped off",
    ],
  },
  failing: [
    {
      title: "Oil stain on a conditioner whose water is still in the wood",
      text: `recipe stained {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  waterborne_conditioner, wiped off
  layer  oil_stain, wiped off #! recoat-too-early
  wait   until cured
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "An hour where the label asks for two",
      text: `material hall_clear {
  family waterborne polyurethane
  recoat 2 h to 24 h
}

recipe two_coats {
  layer hall_clear
  wait  1 h
  layer hall_clear #! recoat-too-early
  wait  until cured
}
`,
    },
    {
      title: "Three coats with twenty minutes between them",
      text: `recipe three_coats {
  layer waterborne_polyurethane x 3, between wait 20 min #! recoat-too-early
  wait  until cured
}
`,
    },
    {
      title: "The wait between coats is too short",
      text: `recipe three_coats {
  layer waterborne_polyurethane x 3 { #! recoat-too-early
    wait 2 h
  }
  wait  until cured
}
`,
    },
    {
      title: "A night is too short for an oil varnish",
      text: `recipe varnished {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_varnish
  wait   overnight
  layer  oil_varnish #! recoat-too-early
  wait   until cured
}
`,
    },
    {
      title: "Shellac over shellac has a recoat time too",
      text: `recipe sealed {
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   30 min
  layer  dewaxed_shellac #! recoat-too-early
  wait   until cured
}
`,
    },
    {
      title: "Oil on oil after six hours, neither wet nor dry",
      text: `recipe oiled {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  drying_oil, wiped off
  wait   6 h
  layer  drying_oil, wiped off #! recoat-too-early
  wait   until cured
}
`,
    },
    {
      title: "A stain-blocking primer holds tannin back once it has dried a day",
      text: `recipe painted {
  for    wood
  safety dust_mask
  step   sand 120, 150
  step   dust
  layer  stain_blocking_primer
  wait   4 h
  step   sand 220
  step   dust
  layer  acrylic_paint #! recoat-too-early
  wait   until cured
}
`,
    },
    {
      title: "Long enough on the label, too short in a cold shop",
      text: `material hall_clear {
  family waterborne polyurethane
  recoat 2 h to 24 h
  rated  21 C, 50 % RH
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop cold_room {
  air 15 C, 60 % RH
}

recipe two_coats {
  safety dust_mask
  layer  hall_clear
  wait   3 h
  step   sand 220
  step   dust
  layer  hall_clear #! recoat-too-early
  wait   until cured
}

job shelves {
  piece shelf
  in    cold_room
  apply two_coats to top
}
`,
    },
    {
      title: "A hint: the label's own day, where the label names no air and 18 C asks for a quarter more",
      text: `material bench_oil {
  family exterior oil
  recoat 24 h
}

piece bench {
  surface slats {
    shape area 2 m2
    wood  larch
  }
}

shop shed {
  air 18 C, 55 % RH
}

recipe oiled {
  for    wood
  safety gloves, no_ignition, ventilate, wet_rags
  layer  bench_oil x 2, wiped off, between wait 24 h #! recoat-too-early
  wait   until cured
}

job benches {
  piece bench
  in    shed
  apply oiled to slats
}
`,
    },
    {
      title: "A cold night is too short for what dries overnight",
      text: `material hall_varnish {
  family oil varnish
  recoat 12 h
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop unheated {
  air       21 C, 50 % RH
  night_air 11 C, 50 % RH
  hours     Mon to Fri 09:00 to 17:00
}

recipe two_coats {
  safety dust_mask, gloves, no_ignition, ventilate, wet_rags
  layer  hall_varnish
  wait   overnight
  step   sand 220
  step   dust
  layer  hall_varnish #! recoat-too-early
  wait   until cured
}

job shelves {
  piece shelf
  in    unheated
  apply two_coats to top
}
`,
    },
  ],
  passing: [
    {
      title: "Two hours where the label asks for two",
      text: `material hall_clear {
  family waterborne polyurethane
  recoat 2 h to 24 h
}

recipe two_coats {
  layer hall_clear
  wait  2 h
  layer hall_clear
  wait  until cured
}
`,
    },
    {
      title: "Stated hands-on time counts",
      text: `material hall_clear {
  family waterborne polyurethane
  recoat 2 h to 24 h
}

recipe two_coats {
  safety dust_mask
  layer  hall_clear
  wait   90 min
  step   sand 220, takes 20 min
  step   dust, takes 10 min
  layer  hall_clear
  wait   until cured
}
`,
    },
    {
      title: "Oil on wet oil within the hour, and wiped off",
      text: `recipe oiled {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  drying_oil
  wait   30 min
  layer  drying_oil, wiped off after 15 min
  wait   until cured
}
`,
    },
    {
      title: "A stain on a conditioner that is still damp",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_conditioner, wiped off after 5 min
  wait   5 min
  layer  oil_stain, wiped off
  wait   until recoat
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "What is not known stays silent",
      text: `recipe two_coats(clear: material, pause: duration) {
  layer clear
  wait  10 min
  layer clear
  wait  until cured
  layer waterborne_polyurethane
  wait  pause
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
    {
      title: "`until recoat` waits longer in a cold shop",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop cold_room {
  air 15 C, 60 % RH
}

recipe two_coats {
  safety dust_mask
  layer  waterborne_polyurethane
  wait   until recoat
  step   sand 220
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}

job shelves {
  piece shelf
  in    cold_room
  apply two_coats to top
}
`,
    },
    {
      title: "Nobody goes on before the morning, so a wait of 9 h is a night",
      text: `material slow_clear {
  family waterborne polyurethane
  recoat 8 h to 24 h
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop short_days {
  air   18 C, 60 % RH
  hours Mon to Fri 09:00 to 17:00
}

recipe two_coats {
  safety dust_mask
  layer  slow_clear
  wait   9 h
  step   sand 220
  step   dust
  layer  slow_clear
  wait   until cured
}

job shelves {
  piece shelf
  in    short_days
  apply two_coats to top
}
`,
    },
    {
      title: "A night of the shop's hours, as the plan has it",
      text: `material slow_clear {
  family waterborne polyurethane
  recoat 16 h to 24 h
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop long_days {
  air   21 C, 50 % RH
  hours Mon to Sat 07:00 to 20:00
}

recipe two_coats {
  safety dust_mask
  layer  slow_clear
  wait   overnight
  step   sand 220
  step   dust
  layer  slow_clear
  wait   until cured
}

job shelves {
  piece shelf
  in    long_days
  start 2027-03-08 08:00
  apply two_coats to top
}
`,
    },
  ],
  readsPlan: true,
  checks: {
    onRun: ({ run, units, report }) => {
      if (run.kind !== "assumed") return;
      for (const haste of hastes(run)) report(haste.action, words({ run, units }, haste));
    },
    onJob: (ctx) => {
      for (const run of ctx.runs) {
        for (const haste of hastes(run)) {
          if (mayBeLonger(ctx, run, haste)) continue;
          const had = haste.had + longerNights(ctx, run, haste);
          if (had < haste.needed.hours - 1e-6)
            ctx.report(run, haste.action, words({ run, units: ctx.units }, { ...haste, had }));
        }
      }
    },
  },
};

/** Layers that go over a coat which for certain has not reached its recoat time. */
function hastes(run: SurfaceRun): readonly Haste[] {
  return run.moments.flatMap(({ action, before }, index): readonly Haste[] => {
    if (action.op !== "layer" || !before.certain) return [];
    const below = topCoat(before);
    if (!below || below.origin === "existing" || saidBetter(action, before, below)) return [];
    const missing = missingTo(before, below, "recoat");
    if (!missing || isWetOnWet(action, before, below) || isDryMist(below, missing.needed, missing.had))
      return [];
    return [{ action, index, below, ...missing }];
  });
}

/** Water over oil and anything over wax have rules that say more than "wait longer". */
function saidBetter(action: LayerAction, before: SurfaceState, below: Coat): boolean {
  const over = action.use.material?.family;
  if (below.family?.role === "wax") return over?.role !== "wax";
  // A filler that states no time needs a night, whatever its family's figure: `filler-not-dry` knows fillers.
  if (below.family?.role === "filler" && below.material?.recoat?.origin !== "stated") return true;
  if (mustFillerCure(over, below.family)) return hasReached(before, below, "cured") === "no";
  // A stain follows a conditioner of its own carrier while that is damp, so only a label can ask for an earliest time; oil
  // does not go into wood that is wet with water.
  if (
    below.family?.role === "conditioner" &&
    over?.role === "stain" &&
    over.carrier === below.family.carrier &&
    !statesTime(below.material, "recoat")
  )
    return true;
  return (
    over?.drying === "waterborne" &&
    below.family !== undefined &&
    mustCureFirst(below.family) &&
    hasReached(before, below, "cured") === "no"
  );
}

/** A second flood of oil or oil stain follows the first within this time, hours. */
const WET_ON_WET_H = 1;

/**
 * Oil or oil stain laid on once more while the first coat is still wet, and then wiped off: it goes on soaking in, and no
 * film is sealed in. A second coat without any wait between is a forgotten wait.
 */
function isWetOnWet(action: LayerAction, before: SurfaceState, below: Coat): boolean {
  if (action.wetOnWet) return true;
  const over = action.use.material?.family;
  const { hours, open } = waitedOf(before, below);
  const soaksIn = over?.name === "drying oil" || over?.name === "oil stain";
  return (
    soaksIn && over.name === below.family?.name && action.wiped && !open && hours > 0 && hours <= WET_ON_WET_H
  );
}

/**
 * A mist of what dries by its solvent is dry in a part of the time that its label states for a coat: common practice, no
 * source.
 */
const isDryMist = ({ action, family }: Coat, needed: DryingTime, had: number): boolean =>
  action?.laid === "mist" && family?.drying === "solvent release" && had >= needed.hours / 4;

/** While the job is being planned, how long it is closed between the two coats is not known. */
const mayBeLonger = ({ schedule }: JobContext, run: SurfaceRun, { below, index }: Haste): boolean =>
  isBeingPlanned(schedule) &&
  run.moments
    .slice(putOnAt(run, below) + 1, index)
    .some(({ action }) => action.op === "wait" && (action.overnight || run.shop?.hours !== undefined));

/**
 * Hours that the nights between the two coats bring in the plan above the least that they are sure to bring: of those that
 * a recipe waits through, and of those that come after a shorter wait, in which nobody can go on.
 */
function longerNights(ctx: JobContext, run: SurfaceRun, { below, index }: Haste): number {
  if (ctx.schedule.status !== "planned" || !run.shop || !ctx.job.start) return 0;
  const from = putOnAt(run, below) + 1;
  const more = Array.from({ length: run.pieces }, (_, piece) =>
    run.moments.slice(from, index).reduce((sum, { action, before, after }, at) => {
      const item = action.op === "wait" ? itemOf(ctx.schedule, run, piece, from + at) : undefined;
      if (action.op !== "wait" || !item) return sum;
      const night = action.overnight ? item.end - item.start - (after.clock.hours - before.clock.hours) : 0;
      return sum + night + longerClosed(run, from + at, item.endAt);
    }, 0),
  );
  return Math.min(...more);
}

/** Hours for which the shop is closed after a planned wait, above those that it is surely closed there. */
function longerClosed({ shop, moments }: SurfaceRun, index: number, endAt: string | undefined): number {
  const next = moments[index + 1]!;
  if (!shop?.hours || endAt === undefined || (next.action.op !== "step" && next.action.op !== "layer"))
    return 0;
  const sure = next.before.clock.closed - moments[index]!.after.clock.closed;
  return closedHoursAt({ hours: shop.hours, closed: shop.closed }, endAt) - sure;
}

/**
 * An oil film over a waterborne one whose label states no time is given a day, not the hours that water over it needs: common
 * practice, no source. It is what is advised where the hours are too few; nobody is warned who kept to those.
 */
const OIL_OVER_WATER_H = 24;

const isOilOverWater = ({ action, below, needed, had }: Haste): boolean =>
  action.use.material?.family?.drying === "oxidising" &&
  action.use.material.family.buildsFilm &&
  below.family?.drying === "waterborne" &&
  below.family.buildsFilm &&
  needed.isTypical &&
  needed.label < OIL_OVER_WATER_H &&
  !isWithinMargin(shortfallOf(needed, had));

/** How much longer the air may ask for than a label that names none, before whoever keeps to the label is warned. */
const MOST_FACTOR = 1.25;

const isInLabelsTime = ({ below: { material }, needed, had }: Haste): boolean =>
  !needed.isTypical &&
  material?.rated.origin !== "stated" &&
  needed.tooCold === undefined &&
  needed.factor <= MOST_FACTOR &&
  had >= needed.label - 1e-6;

function words({ run, units }: Pick<RunContext, "run" | "units">, haste: Haste): Report {
  const { action, below, had } = haste;
  const oil = isOilOverWater(haste);
  const needed = oil
    ? { ...haste.needed, label: OIL_OVER_WATER_H, hours: OIL_OVER_WATER_H * haste.needed.factor }
    : haste.needed;
  const instead = oil
    ? `wait ${typedDuration(needed.tooCold ? needed.label : Math.ceil(needed.hours))}`
    : "wait until recoat";
  const over = `\`${action.use.name}\``;
  const between = below.action?.syntax === action.syntax && action.coat > 1;
  const near = firstWait(run, below, action, haste.index);
  const tooShort = between && near?.op === "wait" ? near : between ? undefined : waitBefore(run, haste.index);
  const isItself = below.what === action.use.name && below.material === action.use.material;
  return shortWait(
    neededIn({ run, units }, needed, had),
    {
      headlines: (after, need) => {
        const gap = after === "" ? t`no wait` : after;
        return [
          between || isItself
            ? t`${gap} between coats of ${over}: needs ${need}`
            : t`${gap} between ${briefCoatName(below)} and ${over}: needs ${need}`,
          ...(between || isItself ? [t`${gap} between its coats: needs ${need}`] : []),
          t`${gap} before ${over}: needs ${need}`,
          t`${gap} before this coat: needs ${need}`,
        ].map(sentence);
      },
      why: t`A coat that still gives off its water or solvent is sealed in, and the film stays soft, turns cloudy, wrinkles or drags.`,
      instead,
      tooShort,
      ...(near ? {} : { where: between ? t`between its coats` : t`above \`${action.use.name}\`` }),
      ...namedByParameter(below),
      ifReplaced: t`the coat below must dry first, so whatever goes on here, write \`wait until recoat\`${inPlaceOf(tooShort) || (between ? t` between its coats` : t` above it`)}`,
      ...(oil ? { of: t`oil over a waterborne coat` } : {}),
      level: isInLabelsTime(haste) ? "hint" : "warning",
    },
    {
      related: [...(between ? [] : [layerBelow(below)]), ...timePlaces(run, needed, below.material)],
      fixes: fixes(run, haste, between, instead.replace("wait", "wait ")),
    },
  );
}

function fixes(
  run: SurfaceRun,
  { action, index, below }: Haste,
  between: boolean,
  line: string,
): readonly Fix[] {
  const title = t`Wait until the coat below is dry enough to coat`;
  const wait = firstWait(run, below, action, index);
  if (wait) return [replaceAt("undertaking", wait.place, title, line)];
  if (!between) return [insertAbove("undertaking", action, title, [line])];
  const block = action.syntax.block;
  const first = block?.[0];
  if (first) {
    const place = { ...action.place, span: first.span };
    return [fixOf("undertaking", title, [linesAbove(place, [line])])];
  }
  if (block) return [];
  const end = action.place.span.end;
  const place = { ...action.place, span: { start: end, end } };
  return [replaceAt("undertaking", place, title, ` {\n    ${line}\n  }`)];
}

/** The wait between the two coats that is too short, if it stands in the same declaration. */
const firstWait = (run: SurfaceRun, below: Coat, action: Action, index: number): Action | undefined =>
  waitsIn(run.moments, putOnAt(run, below) + 1, index).find(({ place }) =>
    sameDeclaration(place, action.place),
  );
