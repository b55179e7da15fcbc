/**
 * Water-carried material over an oil that has not cured: the commonest peeling clear coat there is.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { Fix } from "../../findings.ts";
import { family } from "../../knowledge/families.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { relation } from "../../knowledge/layer-relation.ts";
import { sentence } from "../../sentence.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { DryingTime } from "../../surface/drying-time.ts";
import { type Coat, hasReached, type SurfaceState, topCoat } from "../../surface/state.ts";
import { barrierLines } from "../coat-queries.ts";
import type { TradeRule } from "../rule.ts";
import {
  briefCoatName,
  missingTo,
  namedByParameter,
  neededIn,
  shortWait,
  timePlaces,
  waitBefore,
  waitLonger,
} from "../short-wait.ts";
import { insertAbove, layerBelow } from "../texts.ts";

/** Oil that must be hard before water goes over it; primers are made to be painted over at their recoat time. */
export const mustCureFirst = (family: Family): boolean =>
  (family.drying === "oxidising" || family.binder === "oil and wax") &&
  family.role !== "primer" &&
  family.role !== "filler";

export const waterborneOverUncuredOil: TradeRule = {
  id: "waterborne-over-uncured-oil",
  group: "layers",
  severity: "error",
  voids: "the oil below has not cured",
  docs: {
    summary: "A waterborne layer goes on before the oil or oil stain below has cured.",
    why: "Oil that is still soft repels water and goes on shrinking, so the film beads, wrinkles or peels off in sheets days later.",
    remedy:
      "Wait until the oil has cured (an oil gel stain about 72 h at 21 C, longer in cold air), or put dewaxed shellac between the two once the oil is dry enough for a coat.",
    sources: [
      "common practice, no source: an oil gel stain waits 72 h before a waterborne clear",
      "UFC 3-190-06 section 2.4: topcoats of the same curing mechanism as the undercoat",
    ],
  },
  failing: [
    {
      title: "A day is too short for a gel stain",
      text: `recipe top_coats {
  for   wood
  safety gloves, ventilate, no_ignition, wet_rags
  layer gel_stain, wiped off
  wait  24 h
  layer waterborne_polyurethane #! waterborne-over-uncured-oil
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Three days at the label's air",
      text: `recipe top_coats {
  for   wood
  safety gloves, ventilate, no_ignition, wet_rags
  layer gel_stain, wiped off
  wait  72 h
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
    {
      title: "Dewaxed shellac between the two",
      text: `recipe top_coats {
  for   wood
  safety gloves, ventilate, no_ignition, wet_rags
  layer gel_stain, wiped off
  wait  24 h
  layer dewaxed_shellac
  wait  2 h
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, index, units, report }) => {
      const over = action.use.material?.family;
      const below = topCoat(before);
      if (over?.drying !== "waterborne" || !below?.family || !mustCureFirst(below.family)) return;
      const missing = missingTo(before, below, "cured");
      if (!missing) return;
      const { needed, had } = missing;
      const name = briefCoatName(below);
      report(
        shortWait(
          neededIn({ run, units }, needed, had),
          {
            headlines: (after, need) => {
              const coat = `\`${action.use.name}\``;
              return [
                after
                  ? t`${sentence(name)} needs ${need}, not ${after}, before ${coat}`
                  : t`${sentence(name)} needs ${need} before ${coat}`,
                ...(after
                  ? [t`${sentence(name)} needs ${need}, not ${after}, before a waterborne coat`]
                  : []),
                t`${sentence(name)} needs ${need} before a waterborne coat`,
                t`The oil needs ${need} before a waterborne coat`,
              ];
            },
            why: t`Over oil that is still soft a waterborne film beads, wrinkles or peels.`,
            instead: "wait until cured",
            tooShort: waitBefore(run, index),
            otherwise: t`put dewaxed shellac between the two once the oil is dry (\`wait until recoat\`)`,
            ...namedByParameter(below),
            level: "error",
          },
          {
            related: [layerBelow(below), ...timePlaces(run, needed, below.material)],
            fixes: [
              waitLonger(t`Wait until the oil has cured`, { run, index, action }, "wait  until cured"),
              ...barriers(action, before, below, needed),
            ],
          },
        ),
      );
    },
  },
};

/** Dewaxed shellac between the two, once the oil is dry; none where the cold keeps it from that. */
function barriers(
  action: LayerAction,
  before: SurfaceState,
  oil: Coat,
  { tooCold }: DryingTime,
): readonly Fix[] {
  if (tooCold || action.coat > 1 || !oil.family) return [];
  if (
    ["no", "needs a barrier", "fine after cure"].includes(
      relation(family("dewaxed shellac"), oil.family).verdict,
    )
  )
    return [];
  const isDry = hasReached(before, oil, "recoat") !== "no";
  return [
    insertAbove("undertaking", action, t`Put dewaxed shellac between the two`, [
      ...(isDry ? [] : ["wait  until recoat"]),
      ...barrierLines(action),
    ]),
  ];
}
