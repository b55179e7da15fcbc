/**
 * What the tool calculates, part of `core/computations.ts`. Air, waits and fumes.
 */
import { MASS_BALANCE, PRACTICE } from "../knowledge/sources.ts";
import type { Computation } from "./computation.ts";

const TOTALS = "`totals`, hover of the job";
const MAGNUS =
  "O. A. Alduchov and R. E. Eskridge, Improved Magnus form approximation of saturation vapor pressure, J. Appl. Meteor. 35 (1996)";

export const COMPUTATIONS_OF_AIR: readonly Computation[] = [
  {
    topic: "Air and waits",
    name: "Saturation pressure and deficit",
    seen: "hover of the wait",
    formula: "e(T) = 0.61094 · exp(17.625 T / (T + 243.04)) kPa; deficit = e(T)(1 − RH)",
    source: MAGNUS,
    file: "air/psychrometrics.ts",
    functions: ["saturationPressureKPa", "vapourPressureDeficitKPa"],
    tests: ["core/air/psychrometrics.test.ts"],
  },
  {
    topic: "Air and waits",
    name: "Dew point and its margin",
    seen: "hover of the shop, `near-dew-point`",
    formula:
      "γ = ln RH + 17.625 T / (243.04 + T); dew point = 243.04 γ / (17.625 − γ); margin = surface − dew point, 3 C at least",
    source: `${MAGNUS}; ISO 8502-4 by way of UFC 3-190-06 §9.6.6`,
    file: "air/condensation.ts",
    functions: ["condensation"],
    tests: ["core/air/psychrometrics.test.ts"],
  },
  {
    topic: "Air and waits",
    name: "Dew point of air",
    seen: "hover of the shop",
    formula: "as above",
    source: `${MAGNUS}; checked against an independent library of ASHRAE's equations`,
    file: "air/psychrometrics.ts",
    functions: ["dewPointC"],
    tests: ["core/air/psychrometrics.test.ts"],
  },
  {
    topic: "Air and waits",
    name: "Wait factor",
    seen: "hover of the wait and the layer, messages on waits, the plan",
    formula:
      "waterborne: deficit rated / deficit in the shop; oxidising and reacting: 2^((rated − shop)/10); solvent release: exp(4700 (1/T shop − 1/T rated)), kelvin; never below 1, and 1 at 19 C or more and 55 % RH or less where the label states no air of its own",
    source:
      "the rule of J. H. van 't Hoff (Études de dynamique chimique, 1884), factor 2 per 10 C, from memory; solvents: Clausius and Clapeyron with a typical enthalpy, common practice, no source; ordinary air: 23 ± 2 C and 50 ± 5 % RH of ISO 3270:1984 and ASTM D1640, 20 C of ISO 554:1976, from memory, confidence high",
    file: "air/wait-factor.ts",
    functions: ["waitFactor", "ordinaryWaitFactor"],
    tests: ["core/air/wait-factor.test.ts", "core/properties/schedules.test.ts"],
  },

  {
    topic: "Fumes",
    name: "VOC given off",
    seen: TOTALS,
    formula:
      "Σ litres (spare, thinner, overspray and what is wiped off included) · material VOC in g/L: all that leaves the can evaporates",
    source: `40 CFR 59.406(a) for what material VOC is; ${MASS_BALANCE}`,
    file: "fumes/voc.ts",
    functions: ["vocGrams"],
    tests: ["core/fumes/voc.test.ts", "core/totals/materials.test.ts"],
  },
  {
    topic: "Fumes",
    name: "Vapour and dilution air",
    seen: "`totals` as text, hover of layer and job, `ventilation-too-weak`",
    formula: "vapour m3/h = g/h / MW · molar volume; for fire Q = vapour · 100 · S / LEL",
    source:
      "ACGIH, Industrial Ventilation (edition not named); checked by its US form with 403 ft3 a pint and a textbook example",
    file: "fumes/dilution-air.ts",
    functions: ["vapourM3PerH", "fireDilutionM3PerH"],
    tests: ["core/fumes/dilution-air.test.ts"],
  },
  {
    topic: "Fumes",
    name: "Air that vapours need",
    seen: "`totals` as text, hover of layer and job, `ventilation-too-weak`",
    formula:
      "m3 of air to the limit = 1000 · g / (mg/m3), for fire vapour · 100 · 10 / LEL, of several vapours added; m3/h = m3 / hours · K, K = 5 for breathing and 1 for fire; air changes/h = m3/h / room",
    source:
      "ACGIH, Industrial Ventilation; 29 CFR 1910.1000(d)(2)(i): vapours that act alike add up; a tenth of the LEL: 29 CFR 1910.146 (from memory)",
    file: "fumes/room-air.ts",
    functions: ["airToLimitM3", "airNeededM3PerH", "airChangesPerH"],
    tests: ["core/fumes/dilution-air.test.ts"],
  },
  {
    topic: "Fumes",
    name: "What the air of a room keeps",
    seen: "hover of the shop",
    formula: "g/h = m3/h of fresh air · limit mg/m3 / K / 1000, K = 5; times 8 h for a shift",
    source: "29 CFR 1910.1000(d)(2)(i), the sum of exposures, solved for the air",
    file: "fumes/room-air.ts",
    functions: ["gramsKeptPerH"],
    tests: ["core/fumes/dilution-air.test.ts"],
  },
  {
    topic: "Fumes",
    name: "Fumes of a coat",
    seen: "`totals` as text, hover of layer and step, `ventilation-too-weak`",
    formula:
      "grams of a coat on all pieces (VOC; of acetone, exempt from that, its weight); its solvent leaves evenly from the first stroke to half of touch dry, that of a step until half an hour after it",
    source: PRACTICE,
    file: "fumes/job-fumes.ts",
    functions: ["coatFumes", "liquidFumes", "releaseHours"],
    tests: ["core/fumes/job-fumes.test.ts", "core/properties/quantities.test.ts"],
  },
  {
    topic: "Fumes",
    name: "Fumes by hour",
    seen: "`totals` as text, hover of the job, the layer and the shop",
    formula: "the coats at their planned times, hours counted from the start of the job",
    source: PRACTICE,
    file: "fumes/job-fumes.ts",
    functions: ["jobFumes", "hourlyFumes", "releasesOf", "share"],
    tests: ["core/fumes/job-fumes.test.ts", "core/properties/quantities.test.ts", "cli/estimates.test.ts"],
  },
  {
    topic: "Fumes",
    name: "The worst hours of a room",
    seen: "`totals` as text, sheets, hover of layer, job and shop, `ventilation-too-weak`",
    formula:
      "of all stretches of 8 h and of 15 min that begin while the shop is open, and of all moments, the one in which all jobs in the room together need most air",
    source:
      "29 CFR 1910.1000: limits are averages of 8 h; NIOSH Pocket Guide: short-term limits are averages of 15 minutes",
    file: "fumes/worst-air.ts",
    functions: ["roomAir", "solventOf", "greaterNeed", "stretchesOf"],
    tests: ["core/fumes/job-air.test.ts"],
  },
  {
    topic: "Fumes",
    name: "The air of a room by the hour",
    seen: "the bench view",
    formula:
      "of each hour of a job the greatest need among the stretches that end in it; one of a shift begins no earlier than the shop opens and still counts as a mean of 8 h",
    source: "29 CFR 1910.1000: limits are averages of 8 h",
    file: "fumes/air-by-hour.ts",
    functions: ["airByHour"],
    tests: ["core/fumes/air-by-hour.test.ts"],
  },
  {
    topic: "Fumes",
    name: "The hours of a room that are judged together",
    seen: "`totals` as text, sheets, hover of layer, job and shop, `ventilation-too-weak`",
    formula:
      "stretches without a break of more than 9 h in which no job gives off anything: a mean of 8 h never reaches over such a break",
    source: "29 CFR 1910.1000: limits are averages of 8 h",
    file: "fumes/room-of-jobs.ts",
    functions: ["roomOfJobs", "timesNear", "sharedAir", "openingOf"],
    tests: ["core/fumes/room-of-jobs.test.ts"],
  },
  {
    topic: "Fumes",
    name: "The verdict on the air of a job",
    seen: "`totals` as text, sheets, hover of layer, job and shop, `ventilation-too-weak`",
    formula:
      "for each coat the worst hours in which it gives off something, against its air: room · the greater of the room's own air changes and the `ventilate N` in force; `ventilate` alone counts as no certain amount and may bring up to 10; a respirator covers 10 times the limit, supplied air 25",
    source: `29 CFR 1910.134(d)(3)(i)(A), table 1 (from memory); 10 for windows and a fan: ${PRACTICE}`,
    file: "fumes/job-air.ts",
    functions: [
      "airThere",
      "airVerdict",
      "protectionOf",
      "ownAir",
      "datedReleases",
      "isSameInRoom",
      "timesOf",
      "jobAir",
    ],
    tests: ["core/fumes/job-air.test.ts"],
  },
  {
    topic: "Fumes",
    name: "The air that a plan keeps",
    seen: "`schedule`: `held_by_air`, and a line of its text",
    formula:
      "of each task the air that its vapour asks for in 8 h, in 15 min and in a moment / the fresh air that there is; where the parts of all tasks in such a stretch add up to more than 1, sessions become smaller or later",
    source: "29 CFR 1910.1000: limits are averages of 8 h, and vapours that act alike add up",
    file: "fumes/task-vapour.ts",
    functions: ["vapoursOf"],
    tests: ["core/fumes/job-air.test.ts", "core/schedule/sessions.test.ts"],
  },
  {
    topic: "Fumes",
    name: "Exposure limits",
    seen: "`ventilation-too-weak`",
    formula:
      "the lower of PEL and REL, and the limit of 15 minutes; mg/m3 = ppm · MW / 24.45; a mole has 24.45 L at 25 C, in proportion to the absolute temperature; where no solvent is named, the strictest of its kind",
    source:
      "29 CFR 1910.1000; NIOSH Pocket Guide (from memory); which solvents products hold: common practice, no source",
    file: "knowledge/solvents.ts",
    functions: [
      "exposureLimitPpm",
      "exposureLimitMgM3",
      "shortLimitMgM3",
      "mgM3FromPpm",
      "ppmFromMgM3",
      "molarVolumeL",
      "standInOf",
      "standInFor",
    ],
    tests: ["core/knowledge/solvents.test.ts"],
  },
  {
    topic: "Air and waits",
    name: "Needed time",
    seen: "findings and hints on waits, the plan, hover, sheets",
    formula:
      "the label's time (or its family's) · wait factor; a filler that states none: a night of 12 h at least",
    source: PRACTICE,
    file: "surface/drying-time.ts",
    functions: ["dryingTimes", "familyTimes"],
    tests: ["core/surface/drying-time.test.ts"],
  },
];
