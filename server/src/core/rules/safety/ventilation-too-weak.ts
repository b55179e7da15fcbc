/**
 * The air of the job's room against all that its coats and steps, and those of other jobs in it, give off.
 *
 * The verdict is that of `core/fumes/job-air.ts`, which totals, sheets and hovers show as well: one finding a job, on the
 * coat or step that lacks most. A warning where the stated air is too little; a hint where nobody says how much
 * `ventilate` brings, or where only the cautious solvent that stands for an unnamed one is over its limit.
 */

import { t, translated } from "../../../../../grammar/src/translate.ts";
import { DEFAULT_MIXING_FACTOR } from "../../fumes/dilution-air.ts";
import type { AirThere, JobAir, Vapour, WorstAir } from "../../fumes/job-air.ts";
import type { CoatPart } from "../../fumes/job-fumes.ts";
import { SHIFT_H } from "../../fumes/room-air.ts";
import { exposureLimitMgM3, shortLimitMgM3 } from "../../knowledge/solvents.ts";
import { VENTILATION_SOURCE } from "../../knowledge/sources.ts";
import {
  airChangesNumber,
  airChangesText,
  airFlowText,
  gramsText,
  momentText,
  roomText,
} from "../../measure/figures.ts";
import { formatDuration, formatNumber } from "../../measure/format-amount.ts";
import { andList } from "../../model/suggest.ts";
import { placeKey } from "../../place.ts";
import { isoAfter } from "../../schedule/iso-after.ts";
import type { Schedule } from "../../schedule/types.ts";
import type { LayerAction, StepAction } from "../../surface/actions.ts";
import { isStated, needFor } from "../duty-check.ts";
import type { Report, TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

const RECIPE = (air: string) => `recipe oiled {
  for    wood
  safety wet_rags, no_ignition, gloves, ventilate${air}
  layer  oil_varnish`;

/** The boards are dewaxed; a litre of the spirits goes as far as `covers` says, and `step` is done with it. */
const DEWAXED = (air: string, covers: string, step: string) => `material spirits {
  family mineral spirits
  ${covers}
}

## Solvent: dipropylene glycol methyl ether.
material clear {
  family waterborne polyurethane
}

recipe dewaxed {
  for    wood
  safety gloves, no_ignition, ventilate${air}
  ${step}
  layer  clear`;

const JOB = (room: string) => `  wait   until cured
}

piece wall_of_shelves {
  built 2015
  surface boards {
    shape    area 30 m2
    wood     beech
    existing bare
    wear     light
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

const OILED = JOB("45 m3, 1 air changes/h");

/** Two jobs on one day, each with what the room keeps up with alone. */
const TWO_JOBS = `## Solvent: dipropylene glycol methyl ether.
material clear {
  family waterborne acrylic
  voc    20 g/L
}

recipe stained {
  for    wood
  safety gloves, wet_rags, no_ignition, ventilate 6 air changes/h
  layer  oil_stain, wiped off
  wait   until cured
  layer  clear, by pad
  wait   until cured
}

piece table {
  built 2015
  surface top {
    shape panel 2000 mm x 1000 mm
    wood  oak
    wear  light
  }
}

shop garage {
  air   21 C, 50 % RH
  room  45 m3, 1 air changes/h
  hours Mon to Fri 08:00 to 16:00
}
`;

const TABLE_JOB = (name: string, date: string, ready = "") => `
job ${name} {
  piece table
  in    garage
  start ${date}
${ready}  apply stained to top
}
`;

/** So that nothing may be put off for the sake of the air. */
const IN_HASTE = "  ready 2027-04-01 12:00\n";

export const ventilationTooWeak: TradeRule = {
  id: "ventilation-too-weak",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "The coats and steps of a job, with those of other jobs in the same room, give off more vapour than the fresh air can keep under the exposure limits.",
    why: "Vapour that leaves faster than the room loses it builds up: it causes headaches and clumsiness, and at higher levels it can ignite. All that is given off within 8 h and within 15 min counts together, as totals and sheets show it. Air never mixes evenly, so five times the air is asked for.",
    remedy:
      "Bring in more fresh air, coat fewer pieces in a day, or work under an exhaust or outdoors, and state what there is as `ventilate N air changes/h`. `ventilate` without a number counts as no certain amount. Where no label names a solvent, the strictest one of its kind stands for it: write the name from the safety data sheet as `## Solvent: NAME.` above the material. The safety data sheet and local codes decide; no calculation can show that a room is safe.",
    sources: [
      "ACGIH, Industrial Ventilation: dilution air from the rate of evaporation, the exposure limit and a mixing factor of 1 to 10 (edition not named; the formula as course notes quote it)",
      "29 CFR 1910.1000 and NIOSH Pocket Guide to Chemical Hazards: limits of a working day, the stricter of the two, and short-term limits of 15 minutes (NIOSH from memory, confidence high)",
      "29 CFR 1910.1000(d)(2)(i): vapours that act alike add up",
      "29 CFR 1910.134(d)(3)(i)(A), table 1: a half mask protects up to 10 times the limit, a hood with supplied air up to 25 (from memory, confidence high)",
      "Howard-Reed, Wallace and Ott, The Effect of Opening Windows on Air Change Rates in Two Homes, Journal of the Air & Waste Management Association 52 (2002): up to 3 air changes an hour more (from memory)",
      VENTILATION_SOURCE,
      "a mixing factor of 5, a tenth of the explosive limit, and 10 air changes an hour as the most that windows and a fan bring beyond the room's own: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Two air changes an hour, stated, for 30 m2 of varnish in a small room",
      text: `${RECIPE(" 2 air changes/h")} #! ventilation-too-weak
${OILED}`,
    },
    {
      title: "The room's own air counts where it is more, and is not enough either",
      text: `${RECIPE(" 1 air changes/h")} #! ventilation-too-weak
${JOB("30 m3, 4 air changes/h")}`,
    },
    {
      title: "More than windows and a fan are known to bring",
      text: `${RECIPE("")} #! ventilation-too-weak
${OILED}`,
    },
    {
      title: "A hint: nobody says how much `ventilate` brings",
      text: `${TWO_JOBS.replace(" 6 air changes/h", "").replace("oil_stain, wiped off", "oil_stain, wiped off #! ventilation-too-weak")}${TABLE_JOB("first", "2027-03-08")}`,
    },
    {
      title: "Two coats within one shift count together",
      text: `recipe sealed {
  for    wood
  safety gloves, no_ignition, ventilate 3 air changes/h
  layer  quick_seal x 2, by pad { #! ventilation-too-weak
    wait until recoat
  }
  wait   until cured
}

## Solvent: ethanol.
material quick_seal {
  family dewaxed shellac
  voc    500 g/L
  touch  4 h
}

piece panels {
  built 2015
  surface boards {
    shape area 18 m2
    wood  beech
    wear  light
  }
}

shop shed {
  air  21 C, 50 % RH
  room 45 m3, 1 air changes/h
}

job shelves {
  piece panels
  in    shed
  apply sealed to boards
}
`,
    },
    {
      title: "Two jobs on one day, both in haste, share the air of their shop",
      text: `${TWO_JOBS.replace("oil_stain, wiped off", "oil_stain, wiped off #! ventilation-too-weak, ventilation-too-weak")}${TABLE_JOB("first", "2027-03-08", IN_HASTE)}${TABLE_JOB("second", "2027-03-08", IN_HASTE)}`,
    },
    {
      title: "A step: 30 m2 dewaxed with a solvent whose `covers` says how much that takes",
      text: `${DEWAXED(" 4 air changes/h", "covers 12 m2/L", "step   dewax with spirits #! ventilation-too-weak")}
${OILED.replace("apply oiled", "apply dewaxed")}`,
    },
    {
      title: "A step that states what it uses: its vapour passes the limit of 15 minutes",
      text: `${DEWAXED(" 30 air changes/h", "", "step   clean with spirits, uses 0.5 L, takes 10 min #! ventilation-too-weak")}
${OILED.replace("apply oiled", "apply dewaxed")}`,
    },
    {
      title: "A hint: a waterborne clear whose solvent nobody names, in little air",
      text: `recipe clear {
  for    wood
  layer  waterborne_acrylic #! ventilation-too-weak
${JOB("60 m3, 4 air changes/h").replace("apply oiled", "apply clear").replace("30 m2", "3 m2")}`,
    },
    {
      title: "A hint: the respirator covers whoever sprays, and nobody else",
      text: `recipe lacquered {
  for    wood
  safety vapour_respirator, gloves, eye_protection, no_ignition, ventilate 80 air changes/h
  layer  nitrocellulose_lacquer, by hvlp #! ventilation-too-weak
${OILED.replace("apply oiled", "apply lacquered").replace("30 m2", "6 m2")}`,
    },
  ],
  passing: [
    {
      title: "Enough is stated",
      text: `${RECIPE(" 120 air changes/h")}
${OILED}`,
    },
    {
      title: "A table top wiped with oil stain in a small shop",
      text: `${TWO_JOBS}${TABLE_JOB("first", "2027-03-08")}`,
    },
    {
      title: "Two jobs on one day, which the plan of the shop keeps apart",
      text: `${TWO_JOBS}${TABLE_JOB("first", "2027-03-08")}${TABLE_JOB("second", "2027-03-08")}`,
    },
    {
      title: "Two jobs on different days",
      text: `${TWO_JOBS}${TABLE_JOB("first", "2027-03-08")}${TABLE_JOB("second", "2027-03-15")}`,
    },
    {
      title: "The room is not stated",
      text: `${RECIPE(" 2 air changes/h")}
${OILED.replace("  room 45 m3, 1 air changes/h\n", "")}`,
    },
    {
      title: "A waterborne clear whose solvent is named after its safety data sheet",
      text: `## Solvent: dipropylene glycol methyl ether.
material clear {
  family waterborne acrylic
}

recipe cleared {
  for    wood
  layer  clear
${JOB("60 m3, 4 air changes/h").replace("apply oiled", "apply cleared").replace("30 m2", "3 m2")}`,
    },
    {
      title: "How much solvent the step takes is not known",
      text: `${DEWAXED(" 1 air changes/h", "", "step   dewax with spirits").replace("family waterborne polyurethane", "family waterborne polyurethane\n  voc    1 g/L")}
${OILED.replace("apply oiled", "apply dewaxed")}`,
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
        .replace("safety gloves", "safety gloves, eye_protection, vapour_respirator")
        .replace("family waterborne polyurethane", "family waterborne polyurethane\n  voc    1 g/L")}
${OILED.replace("apply oiled", "apply dewaxed")}`,
    },
  ],
  readsPlan: true,
  checks: {
    onJob: ({ air, schedule, report }) => {
      const worst = air?.worst;
      const { action } = worst?.coat.coat.parts[0] ?? {};
      if (!air || !worst || !action || worst.coat.verdict === "enough") return;
      // Where `ventilate` is not stated at all, `no-ventilation` asks for it first.
      if (lacksDuty(action)) return;
      // Whoever sprays is covered, and the others are kept out: that is all that could be asked for.
      if (worst.coat.verdict === "masked" && isStated(action, "keep_out")) return;
      for (const part of worst.coat.coat.parts)
        report(part.run, part.action, reportOf(air, worst, part, schedule));
    },
  },
};

const lacksDuty = (action: LayerAction | StepAction): boolean =>
  !isStated(action, "ventilate") && needFor(action, "ventilate") !== undefined;

function reportOf(air: JobAir, worst: WorstAir, { run, action }: CoatPart, schedule: Schedule): Report {
  const { verdict, there } = worst.coat;
  const room = run.shop?.room;
  const duty = action.duties.get("ventilate");
  const needed = `${airChangesText(worst.need.airChangesPerH)}`;
  return {
    severity: verdict === "short" ? "warning" : "hint",
    headline:
      verdict === "unnamed"
        ? t`The vapour may need ${needed}; ${thereText(there)}`
        : t`The vapour needs ${needed}; ${thereText(there)}`,
    why: whyText(air, worst, schedule),
    remedy: remedyOf(worst),
    related: [
      ...(room?.place ? [related(room.place, t`The room and its own change of air`)] : []),
      ...(duty ? [related(duty.place, t`The ventilation that the recipe states`)] : []),
      ...otherLines(worst, action),
    ],
  };
}

function thereText({ by, airChangesPerH }: AirThere): string {
  const number = airChangesNumber(airChangesPerH);
  if (by === "room") return t`the room has ${number}`;
  if (by === "stated") return t`${number} stated`;
  return airChangesPerH > 0 ? t`only ${number} known` : t`none stated`;
}

/** The sum with its numbers, so that it can be done again with a pencil, and what it matters for. */
function whyText(air: JobAir, worst: WorstAir, schedule: Schedule): string {
  return `${sumText(air, worst, schedule)} ${harmOf(worst)}`;
}

function sumText({ roomM3 }: JobAir, { need, grams, vapours, others }: WorstAir, schedule: Schedule): string {
  const jobs = others.length > 0 ? t`, with ${andList(others.map((name) => `\`${name}\``))}` : "";
  const when = `${fromText(schedule, need.fromH)}${jobs}`;
  const air = t`${airFlowText(need.m3PerH)} in ${roomText(roomM3)}`;
  if (need.limit === "fire")
    return t`At the worst moment${when}, ${formatNumber(grams / need.hours, 0)} g/h of vapour leave; a tenth of the explosive limit takes ${air}.`;
  const limits = andList(
    vapours.map((vapour) => limitText(vapour, need.limit)).filter((text) => text !== ""),
  );
  const stretch = need.limit === "short" ? "15 min" : formatDuration(SHIFT_H);
  return t`In the worst ${stretch}${when}, ${gramsText(grams)} of vapour leave; under ${limits} that takes ${air}, with a mixing factor of ${DEFAULT_MIXING_FACTOR}.`;
}

function harmOf({ need, coat }: WorstAir): string {
  if (need.limit === "fire") return t`Above that, a spark can light it.`;
  return coat.verdict === "masked"
    ? t`The respirator covers whoever wears it, and nobody else in the room.`
    : t`Vapour that builds up causes headaches and clumsiness, and at higher levels can ignite.`;
}

/** `the 350 mg/m3 of mineral spirits`; of a solvent that is not named, that it is assumed. */
function limitText({ solvent, isAssumed }: Vapour, limit: WorstAir["need"]["limit"]): string {
  const value = limit === "short" ? shortLimitMgM3(solvent) : exposureLimitMgM3(solvent);
  if (value === undefined) return "";
  const figure = formatNumber(value, 0);
  const name = translated(solvent.name);
  return isAssumed
    ? t`the ${figure} mg/m3 of ${name} (assumed, as no label names it)`
    : t`the ${figure} mg/m3 of ${name}`;
}

/** ` from Mon 8 Mar 2027 09:00`; nothing where the plan has no dates. */
function fromText(schedule: Schedule, hours: number): string {
  const at = isoAfter(schedule, hours);
  return at === undefined ? "" : t` from ${momentText(at)}`;
}

const defer = (): string =>
  t`The safety data sheet and local codes decide; no calculation can show that a room is safe.`;

function remedyOf({ coat, need, vapours }: WorstAir): string {
  const enough = `\`ventilate ${Math.max(1, Math.ceil(need.airChangesPerH - 1e-9))} air changes/h\``;
  if (coat.verdict === "unmeasured")
    return t`Measure what the windows or the fan bring and state it; ${enough} is enough by this estimate. ${defer()}`;
  if (coat.verdict === "unnamed") {
    const assumed = translated(vapours.find(({ isAssumed }) => isAssumed)?.solvent.name ?? "");
    return t`Look up the solvent in the safety data sheet and write its name above the material's declaration (\`## Solvent: ...\`), since ${assumed} is the strictest, or bring in and state ${enough}. ${defer()}`;
  }
  if (coat.verdict === "masked")
    return t`Keep others out until the air is clear, or bring in and state ${enough}. ${defer()}`;
  return t`Work under an exhaust or outdoors, coat fewer pieces in a day, or bring in and state ${enough}. ${defer()}`;
}

/** Other lines of the job that give off something in the same hours, the first few. */
function otherLines({ coats }: WorstAir, action: LayerAction | StepAction): NonNullable<Report["related"]> {
  const seen = new Set([placeKey(action.place)]);
  return coats
    .flatMap(({ coat }) => {
      const [part] = coat.parts;
      const key = placeKey(part!.action.place);
      if (seen.has(key)) return [];
      seen.add(key);
      return [related(part!.action.place, t`${sourceText(part!.action)} gives off vapour in the same hours`)];
    })
    .slice(0, 4);
}

const sourceText = (action: LayerAction | StepAction): string =>
  action.op === "layer"
    ? useName(action.use)
    : action.use
      ? t`This \`${action.verb}\` with ${useName(action.use)}`
      : t`This \`${action.verb}\``;
