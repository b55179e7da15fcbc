/**
 * The sum of industrial ventilation for one coat, or for one step with a solvent: grams that evaporate, the exposure
 * limit, the room, its air. A step counts where the litres of its solvent are stated or follow from its `covers`.
 *
 * A warning where the mean of the room over a shift would pass the limit even if its air mixed perfectly; a hint from
 * half of the limit on, the action level of hygienists. `ventilate` without a number is taken at what windows open on
 * two sides bring, and then only the warning is left. Waterborne materials are not looked at.
 */
import { DEFAULT_MIXING_FACTOR, vapourM3PerH } from "../../fumes/dilution-air.ts";
import {
  type AirThere,
  airForCoat,
  airThere,
  type CoatFumes,
  coatFumes,
  type LiquidFumes,
  SHIFT_H,
} from "../../fumes/job-fumes.ts";
import type { AirNeeded } from "../../fumes/room-air.ts";
import { exposureLimitMgM3 } from "../../knowledge/solvents.ts";
import { VENTILATION_SOURCE } from "../../knowledge/sources.ts";
import { formatNumber } from "../../measure/format-amount.ts";
import { andList } from "../../model/suggest.ts";
import type { LayerAction, StepAction } from "../../surface/actions.ts";
import { isStated, needFor } from "../duty-check.ts";
import type { Report, TradeRule } from "../rule.ts";
import { hoursText, litresText, related, useName } from "../texts.ts";

const RECIPE = (air: string) => `recipe oiled {
  for    wood
  safety wet_rags, no_ignition, ventilate${air}
  layer  oil_varnish`;

/** The boards are dewaxed; a litre of the spirits goes as far as `covers` says, and `step` is done with it. */
const DEWAXED = (air: string, covers: string, step: string) => `material spirits {
  family mineral spirits
  ${covers}
}

recipe dewaxed {
  for    wood
  safety gloves, no_ignition, ventilate${air}
  ${step}
  layer  waterborne_polyurethane`;

const JOB = (room: string) => `  wait   until cured
}

piece wall_of_shelves {
  built 2015
  surface boards {
    shape area 30 m2
    wood  beech
    wear  light
  }
}

shop shed {
  air  21 C, 50 % RH
  room ${room}
}

job shelves {
  piece wall_of_shelves
  in    shed
  apply oiled to boards
}
`;

export const ventilationTooWeak: TradeRule = {
  id: "ventilation-too-weak",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "One coat of a solvent-borne material, or one step with a solvent, gives off more vapour than the fresh air of the job's shop can keep under the exposure limit.",
    why: "What evaporates faster than the room loses it gathers: heads ache and hands grow clumsy, and far beyond that the vapour can burn.",
    remedy:
      "Bring in more fresh air, do fewer pieces in a day, or work under an exhaust or outdoors; if there is more air than the text says, state it as `ventilate N air changes/h`. The safety data sheet and local codes decide; no sum like this makes a room safe.",
    sources: [
      "ACGIH, Industrial Ventilation: dilution air from the rate of evaporation, the exposure limit and a mixing factor of 1 to 10 (formula read in course notes)",
      "29 CFR 1910.1000 and NIOSH recommended limits, the stricter of the two, averaged over a shift of 8 h",
      VENTILATION_SOURCE,
      "half of a limit as the level from which to act: NIOSH 77-173, Occupational Exposure Sampling Strategy Manual (from memory, confidence high)",
      "a mixing factor of 5, a tenth of the explosive limit, and 10 air changes an hour for windows open on two sides: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Two air changes an hour, stated, for 30 m2 of varnish in a small room",
      text: `${RECIPE(" 2 air changes/h")} #! ventilation-too-weak
${JOB("45 m3, 1 air changes/h")}`,
    },
    {
      title: "The room's own air counts where it is more, and is not enough either",
      text: `${RECIPE(" 1 air changes/h")} #! ventilation-too-weak
${JOB("30 m3, 4 air changes/h")}`,
    },
    {
      title: "A hint: under the limit, and over the half of it at which hygienists begin to measure",
      text: `${RECIPE(" 20 air changes/h")} #! ventilation-too-weak
${JOB("45 m3, 1 air changes/h")}`,
    },
    {
      title: "Windows bring too little for lacquer sprayed on all of it",
      text: `recipe lacquered {
  for    wood
  safety vapour_respirator, gloves, eye_protection, no_ignition, ventilate
  layer  nitrocellulose_lacquer, by hvlp #! ventilation-too-weak
${JOB("45 m3, 1 air changes/h").replace("apply oiled", "apply lacquered")}`,
    },
    {
      title: "A step: 30 m2 dewaxed with a solvent whose `covers` says how much that takes",
      text: `${DEWAXED(" 4 air changes/h", "covers 12 m2/L", "step   dewax with spirits #! ventilation-too-weak")}
${JOB("45 m3, 1 air changes/h").replace("apply oiled", "apply dewaxed")}`,
    },
    {
      title: "A step that states what it uses",
      text: `${DEWAXED(" 4 air changes/h", "", "step   clean with spirits, uses 1.5 L #! ventilation-too-weak")}
${JOB("45 m3, 1 air changes/h").replace("apply oiled", "apply dewaxed")}`,
    },
  ],
  passing: [
    {
      title: "Enough is stated",
      text: `${RECIPE(" 21 air changes/h")}
${JOB("45 m3, 1 air changes/h")}`,
    },
    {
      title: "Windows are open, how wide nobody knows",
      text: `${RECIPE("")}
${JOB("60 m3, 1 air changes/h")}`,
    },
    {
      title: "A table top wiped with oil stain in a small shop",
      text: `recipe stained {
  for    wood
  safety gloves, wet_rags, no_ignition, ventilate 4 air changes/h
  layer  oil_stain, wiped
  wait   until cured
  layer  waterborne_polyurethane, by pad
  wait   until cured
}

piece table {
  built 2015
  surface top {
    shape panel 1400 mm x 800 mm x 25 mm
    wood  oak
    wear  light
  }
}

shop garage {
  air  21 C, 50 % RH
  room 45 m3, 2 air changes/h
}

job table {
  piece table
  in    garage
  apply stained to top
}
`,
    },
    {
      title: "The room is not stated",
      text: `${RECIPE(" 2 air changes/h")}
${JOB("45 m3, 1 air changes/h").replace("  room 45 m3, 1 air changes/h\n", "")}`,
    },
    {
      title: "Waterborne",
      text: `recipe clear {
  for    wood
  layer  waterborne_polyurethane
${JOB("20 m3, 0.5 air changes/h").replace("apply oiled", "apply clear")}`,
    },
    {
      title: "How much solvent the step takes is not known",
      text: `${DEWAXED(" 1 air changes/h", "", "step   dewax with spirits")}
${JOB("45 m3, 1 air changes/h").replace("apply oiled", "apply dewaxed")}`,
    },
    {
      title: "A stripper: what its vapour is made of differs from one to the next, so none is assumed",
      text: `${DEWAXED(
        " 1 air changes/h",
        "",
        "step   strip with gel_stripper\n  step   clean with mineral_spirits",
      )
        .replace("family mineral spirits", "family paint stripper\n  covers 3 m2/L")
        .replace("material spirits", "material gel_stripper")
        .replace("safety gloves", "safety gloves, eye_protection, vapour_respirator")}
${JOB("45 m3, 1 air changes/h").replace("apply oiled", "apply dewaxed")}`,
    },
  ],
  checks: {
    onJob: ({ runs, needs, report }) => {
      if (!runs.some((run) => run.shop?.room)) return;
      const draws = [...needs.values()].flatMap(({ material, draws: list }) =>
        list.map((draw) => ({ material, ...draw })),
      );
      for (const coat of coatFumes(draws)) {
        const said = judge(coat);
        if (said) for (const { run, action } of coat.parts) report(run, action, said);
      }
    },
  },
};

/** A hint from this part of the limit on. */
const ACTION_LEVEL = 0.5;

function judge(coat: CoatFumes): Report | undefined {
  const { action, run } = coat.parts[0]!;
  const room = run.shop?.room;
  const liquids = coat.liquids.filter(
    ({ material, solvent, grams }) => grams > 0 && solvent && material.family?.carrier !== "water",
  );
  if (!room || coat.grams === undefined || liquids.length === 0) return undefined;
  // Where `ventilate` is not stated at all, `no-ventilation` asks for it first.
  const there = lacksDuty(action) ? undefined : airThere(run.shop, action.duties);
  if (!there) return undefined;
  const strong = { ...coat, liquids };
  const least = airForCoat(strong, room.value.m3, 1);
  const isTooWeak = there.m3PerH < least.m3PerH * (1 - 1e-9);
  const wanted = airForCoat(strong, room.value.m3, 1 / ACTION_LEVEL);
  const isNear = there.by !== "windows" && there.m3PerH < wanted.m3PerH * (1 - 1e-9);
  if (!isTooWeak && !isNear) return undefined;
  const duty = action.duties.get("ventilate");
  return {
    severity: isTooWeak ? "warning" : "hint",
    headline: whatText(action, strong, room.value.m3, there, least),
    why: isTooWeak
      ? "Vapour that gathers faster than the room loses it makes heads ache and hands clumsy, and far beyond that it can burn."
      : "That is more than half of the limit, and air never mixes evenly: who stands over the piece breathes the most of it.",
    remedy:
      "Bring in more fresh air, do fewer pieces in a day, or work under an exhaust or outdoors; the safety data sheet and local codes decide, and no sum makes a room safe.",
    related: [
      ...(room.place ? [related(room.place, "The room and its own change of air")] : []),
      ...(duty ? [related(duty.place, "The ventilation that the recipe states")] : []),
    ],
  };
}

const lacksDuty = (action: LayerAction | StepAction): boolean =>
  !isStated(action, "ventilate") && needFor(action, "ventilate") !== undefined;

/** The sum with its numbers, so that it can be done again with a pencil. */
function whatText(
  action: LayerAction | StepAction,
  { liquids, applicationH, dryingH }: Pick<CoatFumes, "liquids" | "applicationH" | "dryingH">,
  roomM3: number,
  there: AirThere,
  least: AirNeeded,
): string {
  const hours = applicationH + dryingH;
  const kept =
    least.limit === "exposure"
      ? `spread over ${hoursText(Math.max(SHIFT_H, hours))} and kept under ${andList(liquids.map(limitText))}, that takes ${formatNumber(least.m3PerH, 0)} m3/h of fresh air if it mixes perfectly (and ${DEFAULT_MIXING_FACTOR} times that by the usual allowance)`
      : `released in ${hoursText(hours)} as ${formatNumber(vapourRate(liquids, hours), 3)} m3/h of vapour and kept under a tenth of the lower explosive limit, that takes ${formatNumber(least.m3PerH, 0)} m3/h of fresh air`;
  return (
    `${sourceText(action)} gives off ${liquids.length === 1 ? gramsText(liquids[0]!) : andList(liquids.map(gramsOfText))}; ${kept}, ` +
    `and ${thereText(there)} in ${formatNumber(roomM3, 1)} m3 bring ${formatNumber(there.m3PerH, 0)} m3/h.`
  );
}

/** `One coat of …`, or the step as it is written. */
const sourceText = (action: LayerAction | StepAction): string =>
  action.op === "layer"
    ? `One coat of ${useName(action.use)}`
    : `This \`${action.verb}\`${action.use ? ` with ${useName(action.use)}` : ""}`;

const gramsText = ({ litres, vapourGPerL, grams }: LiquidFumes): string =>
  `${formatNumber(grams, 0)} g of vapour (${litresText(litres)} × ${formatNumber(vapourGPerL, 0)} g/L)`;

const gramsOfText = ({ material, litres, vapourGPerL, grams }: LiquidFumes): string =>
  `${formatNumber(grams, 0)} g (${litresText(litres)} of \`${material.name}\` × ${formatNumber(vapourGPerL, 0)} g/L)`;

const limitText = ({ solvent }: LiquidFumes): string =>
  `the ${formatNumber(exposureLimitMgM3(solvent!) ?? 0, 0)} mg/m3 of ${solvent!.name}`;

const vapourRate = (liquids: readonly LiquidFumes[], hours: number): number =>
  liquids.reduce(
    (sum, { solvent, grams }) =>
      sum +
      vapourM3PerH({ gramsPerH: grams / hours, molecularWeight: solvent!.molecularWeight, temperatureC: 25 }),
    0,
  );

function thereText({ by, airChangesPerH }: AirThere): string {
  const changes = `${formatNumber(airChangesPerH, 1)} air changes/h`;
  if (by === "room") return `the room's own ${changes}`;
  return by === "stated" ? `the stated ${changes}` : `open windows, taken at ${changes}`;
}
