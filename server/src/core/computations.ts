/**
 * Everything that the tool calculates, as one table: what it is, where a reader meets it, its formula, where the formula
 * is from, the code that does it and the test that holds it to an outside value.
 *
 * `server/docs/computations.md` is written from it. A test holds that files, functions and tests named here exist, and
 * that no function of the folders that calculate is left out. Nothing is computed from this table.
 */
import { BY_DEFINITION, PRACTICE } from "./knowledge/sources.ts";

export interface Computation {
  readonly topic: Topic;
  readonly name: string;
  /** Where a reader meets it. */
  readonly seen: string;
  readonly formula: string;
  /** Published source, `by definition, no outside source`, or `common practice, no source`. */
  readonly source: string;
  /** Under `server/src/core/`. */
  readonly file: string;
  /** Exported there. */
  readonly functions: readonly string[];
  /** Under `tests/`. */
  readonly tests: readonly string[];
}

export const TOPICS = [
  "Areas",
  "Amounts and cans",
  "Film",
  "Air and waits",
  "Hands and paper",
  "Schedule",
  "Money",
  "Fumes",
  "Materials and wood",
  "Units and numbers",
] as const;
export type Topic = (typeof TOPICS)[number];

const GEOMETRY = "plane geometry";
const TOTALS = "`totals`, hover of the job";
const NOT_SHOWN = "not shown: a check on the others";

const SHAPE = {
  topic: "Areas",
  seen: "`totals`, hover of the surface with the sum filled in",
  source: GEOMETRY,
  file: "geometry/shape-area.ts",
  functions: ["shapeArea"],
  tests: ["core/geometry/shape-area.test.ts"],
} as const;

const BY_TOPIC: readonly Computation[] = [
  { ...SHAPE, name: "Panel", formula: "L·W; with T also 2(L + W)·T; both faces: L·W twice" },
  { ...SHAPE, name: "Disc", formula: "πD²/4; with T also πD·T; both faces: πD²/4 twice" },
  {
    ...SHAPE,
    name: "Oval",
    formula:
      "πAB/4; with T also the perimeter · T, by Ramanujan's second formula π(a + b)(1 + 3h/(10 + √(4 − 3h))), a and b the half axes, h = ((a − b)/(a + b))²",
    source: "S. Ramanujan, Modular equations and approximations to pi, 1914",
    functions: ["shapeArea", "ellipsePerimeter"],
  },
  { ...SHAPE, name: "Band", formula: "2(L + W)·H; inside too: twice" },
  { ...SHAPE, name: "Post", formula: "4·(S + S2)/2·√(H² + ((S − S2)/2)²): four faces of a square frustum" },
  { ...SHAPE, name: "Round", formula: "π(D + D2)/2·√(H² + ((D − D2)/2)²): the side of a frustum of a cone" },
  {
    ...SHAPE,
    name: "Box",
    formula: "2(LW + LH + WH); no bottom: less LW; open: less LW, and the inside as well",
  },
  {
    ...SHAPE,
    name: "Several, and mouldings",
    formula:
      "N of: times N; plus P %: times 1 + P/100; the lines of a surface add up; times the pieces of the job",
    source: BY_DEFINITION,
    tests: ["core/geometry/shape-area.test.ts", "core/properties/quantities.test.ts"],
  },

  {
    topic: "Amounts and cans",
    name: "Litres of a layer",
    seen: "`totals`, `shopping`, hover of the layer with the sum filled in",
    formula:
      "area · pieces · coats · (1 / spreading rate, or the wet film in mm) / transfer efficiency · (1 + spare)",
    source: BY_DEFINITION,
    file: "quantities/litres.ts",
    functions: ["layerLitres"],
    tests: [
      "core/quantities/litres.test.ts",
      "core/totals/materials.test.ts",
      "core/properties/quantities.test.ts",
    ],
  },
  {
    topic: "Amounts and cans",
    name: "Thinning and tint",
    seen: TOTALS,
    formula:
      "tint: P % of the mix; thinned a:b: the rest · a/(a + b) of the material, · b/(a + b) of the thinner",
    source: BY_DEFINITION,
    file: "quantities/litres.ts",
    functions: ["layerLitres"],
    tests: ["core/quantities/litres.test.ts", "core/totals/materials.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Two-part mix",
    seen: TOTALS,
    formula: "mix a:b: · a/(a + b) of the material, · b/(a + b) of the hardener",
    source: BY_DEFINITION,
    file: "quantities/litres.ts",
    functions: ["mixLitres"],
    tests: ["core/quantities/litres.test.ts", "core/totals/materials.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Transfer efficiency",
    seen: TOTALS,
    formula: "litres / efficiency: 1 by hand, 0.65 HVLP, 0.50 airless",
    source:
      "65 %: South Coast Air Quality Management District, rule 1136, definition of high-volume, low-pressure spray; 50 % for airless: common practice, no source",
    file: "quantities/litres.ts",
    functions: ["layerLitres"],
    tests: ["core/quantities/litres.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Litres of a step",
    seen: TOTALS,
    formula:
      "area · pieces / spreading rate · (1 + spare) where the material itself states a rate; `uses`: that, times the pieces",
    source: BY_DEFINITION,
    file: "quantities/litres.ts",
    functions: ["stepLitres"],
    tests: ["core/quantities/litres.test.ts", "core/totals/materials.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Mix for a coat",
    seen: "`sheet`",
    formula:
      "the litres of one coat on all pieces, divided into the material, its hardener, the thinner (water included) and the tint",
    source: BY_DEFINITION,
    file: "totals/needs.ts",
    functions: ["coatMix"],
    tests: ["features/sheet.test.ts", "core/totals/materials.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Needs of a job",
    seen: "`totals`, `not-enough-on-hand`",
    formula: "litres of all lines of a material added up before cans are chosen; unknown if one of them is",
    source: BY_DEFINITION,
    file: "totals/needs.ts",
    functions: ["jobDraws", "jobNeeds"],
    tests: ["core/totals/materials.test.ts", "core/properties/quantities.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Containers",
    seen: "`totals`, `shopping`",
    formula:
      "the cheapest whole numbers of the sizes sold that hold the need less what is on hand; at equal cost least left over, then fewest (covering form of the unbounded knapsack, solved exactly)",
    source: `${BY_DEFINITION}; checked against an integer program`,
    file: "quantities/containers.ts",
    functions: ["cheapestContainers"],
    tests: ["core/quantities/containers.test.ts", "core/properties/quantities.test.ts"],
  },

  {
    topic: "Film",
    name: "Wet film",
    seen: "hover of the layer, `wet-film-too-thick`",
    formula: "µm = 1000 / spreading rate in m2/L, or the stated `wet`; and back",
    source: "a litre on a square metre stands a millimetre high",
    file: "quantities/film.ts",
    functions: ["wetFilmUm", "spreadingRateM2PerL"],
    tests: ["core/quantities/film.test.ts"],
  },
  {
    topic: "Film",
    name: "Dry film",
    seen: "`totals`, hover of the layer, `film-too-thick`, `film-too-thin`",
    formula: "wet · solids of the mix by volume; the new coats that build a film add up",
    source: "UFC 3-190-06, procedure 13",
    file: "quantities/film.ts",
    functions: ["dryFilmUm", "wetFilmForDry"],
    tests: ["core/quantities/film.test.ts", "core/totals/film.test.ts"],
  },
  {
    topic: "Film",
    name: "Solids of a mix",
    seen: "hover of the layer",
    formula:
      "each liquid's solids by its share of the volume; a part of paint with t of thinner: S / (1 + t)",
    source: "volumes taken to add up: common practice, no source",
    file: "quantities/film.ts",
    functions: ["mixSolids"],
    tests: ["core/quantities/film.test.ts", "core/totals/film.test.ts"],
  },
  {
    topic: "Film",
    name: "Coverage in US measures",
    seen: NOT_SHOWN,
    formula: "ft2/gal = 1604.1666… · solids / dry film in mil; gallons = area / (that · efficiency)",
    source: "231 in3 (NIST Handbook 44, appendix C) / 0.001 in / 144 in2",
    file: "quantities/film.ts",
    functions: ["coverageFt2PerGallon", "gallonsForFilm"],
    tests: ["core/quantities/film.test.ts"],
  },

  {
    topic: "Air and waits",
    name: "Saturation pressure and deficit",
    seen: "hover of the wait",
    formula: "e(T) = 0.61094 · exp(17.625 T / (T + 243.04)) kPa; deficit = e(T)(1 − RH)",
    source: "O. A. Alduchov and R. E. Eskridge, J. Appl. Meteor. 35 (1996)",
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
    source: "Alduchov and Eskridge; ISO 8502-4 by way of UFC 3-190-06 §9.6.6",
    file: "air/condensation.ts",
    functions: ["condensation"],
    tests: ["core/air/psychrometrics.test.ts"],
  },
  {
    topic: "Air and waits",
    name: "Dew point of air",
    seen: "hover of the shop",
    formula: "as above",
    source: "Alduchov and Eskridge; checked against an independent library of ASHRAE's equations",
    file: "air/psychrometrics.ts",
    functions: ["dewPointC"],
    tests: ["core/air/psychrometrics.test.ts"],
  },
  {
    topic: "Air and waits",
    name: "Wait factor",
    seen: "hover of the wait and the layer, messages on waits, the plan",
    formula:
      "waterborne: deficit rated / deficit in the shop; oxidising and reacting: 2^((rated − shop)/10); solvent release: exp(4700 (1/T shop − 1/T rated)), kelvin; never below 1",
    source:
      "the rule of J. H. van 't Hoff (Études de dynamique chimique, 1884), factor 2 per 10 C, from memory; solvents: Clausius and Clapeyron with a typical enthalpy, common practice, no source",
    file: "air/wait-factor.ts",
    functions: ["waitFactor"],
    tests: ["core/air/wait-factor.test.ts", "core/properties/schedules.test.ts"],
  },

  {
    topic: "Hands and paper",
    name: "Hands-on time",
    seen: "`totals`, `schedule`; the figures in [hands-on times](hands-on-times.md)",
    formula:
      "as stated (`takes`, for a piece's surface and a coat, or by area); else fixed minutes + minutes by m2, by verb or method, rounded up to five minutes",
    source: PRACTICE,
    file: "quantities/abrasives.ts",
    functions: ["defaultTaskHours", "taskTime"],
    tests: ["core/quantities/abrasives.test.ts"],
  },
  {
    topic: "Hands and paper",
    name: "Hands-on hours of a job",
    seen: TOTALS,
    formula: "the hours of all steps and layers · pieces",
    source: BY_DEFINITION,
    file: "totals/task-plan.ts",
    functions: ["actionHours", "handsOnHours"],
    tests: ["core/totals/time.test.ts", "core/totals/money.test.ts"],
  },
  {
    topic: "Hands and paper",
    name: "Abrasive paper",
    seen: "`totals` and `shopping` as text, an estimate",
    formula:
      "passes of a grit · area · pieces / m2 a sheet sands at that grit, rounded up; a 125 mm disc is 0.19 of a sheet",
    source: PRACTICE,
    file: "quantities/abrasives.ts",
    functions: ["abrasiveUse", "m2PerSheet"],
    tests: ["core/quantities/abrasives.test.ts"],
  },
  {
    topic: "Hands and paper",
    name: "Paper and sanding hours of a job",
    seen: "`totals` and `shopping` as text, an estimate",
    formula: "by grit over all steps and coat blocks; a step's hours are divided evenly among its grits",
    source: PRACTICE,
    file: "totals/paper.ts",
    functions: ["jobPaper"],
    tests: ["core/totals/paper.test.ts", "cli/estimates.test.ts"],
  },

  {
    topic: "Schedule",
    name: "What is planned",
    seen: "`schedule`, `totals`",
    formula:
      "one chain for every surface of every piece: steps, layers, waits; a wait counts from the last layer or filling; a coat within the window of the coat below",
    source: BY_DEFINITION,
    file: "totals/task-plan.ts",
    functions: ["scheduleInput", "waitsAreKnown"],
    tests: ["core/totals/time.test.ts", "core/properties/schedules.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Earliest finish",
    seen: "`schedule`, `totals`: `elapsed_h`, `finish`",
    formula:
      "hands within opening hours and crew, layers in one go where they fit, drying day and night; rules, plans from the mixture of the prices, then a bounded search that proves or betters the plan",
    source:
      "resource-constrained project scheduling (Kolisch and Hartmann, 1999, from memory), checked against brute force",
    file: "schedule/schedule.ts",
    functions: ["schedule"],
    tests: [
      "core/schedule/schedule.test.ts",
      "core/schedule/properties.test.ts",
      "core/properties/schedules.test.ts",
    ],
  },
  {
    topic: "Schedule",
    name: "Lower bound and gap",
    seen: "`schedule`",
    formula:
      "no plan beats each chain alone, nor the crew's work that must lie between two moments: all of it, tasks in one go opening by opening, long ones by number; gap = (elapsed − bound) / bound",
    source: "energetic reasoning of resource-constrained scheduling, checked against brute force",
    file: "schedule/energy.ts",
    functions: ["lowestFinish", "hasRoom"],
    tests: ["core/schedule/bounds.test.ts", "core/schedule/properties.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Lower bound by prices",
    seen: "`schedule`",
    formula:
      "a finish is too early when, at some prices for the parts of the openings, the cheapest ways of all chains cost more than all there is; windows tie a chain's tasks to openings that lie near enough",
    source:
      "duality of linear programs (Farkas), Dantzig–Wolfe column generation; checked against brute force and a solver",
    file: "schedule/spread.ts",
    functions: ["spreadWork"],
    tests: ["core/schedule/bounds.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Slack and the critical path",
    seen: "`schedule`",
    formula:
      "the latest times that keep the finish and the crew's order, less the planned ones; critical where none is left",
    source: "critical path method, checked against textbook networks",
    file: "schedule/slack.ts",
    functions: ["slackOf"],
    tests: ["core/schedule/properties.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Network floats",
    seen: NOT_SHOWN,
    formula: "early and late times forwards and backwards; total and free float",
    source: "critical path method; Heizer & Render and Taylor, exercises with their printed answers",
    file: "schedule/network.ts",
    functions: ["reckonNetwork"],
    tests: ["core/schedule/network.test.ts"],
  },
  {
    topic: "Schedule",
    name: "Opening hours and overnight",
    seen: "`schedule`",
    formula:
      "overnight: the first moment 12 h or more away at which the shop opens; open day and night 12 h; without a shop 16 h",
    source: BY_DEFINITION,
    file: "schedule/calendar.ts",
    functions: ["firstOpeningAtLeast", "minimumOvernightHours", "addWorkingTime", "pausesBetween"],
    tests: ["core/schedule/calendar.test.ts", "core/totals/time.test.ts"],
  },
  {
    topic: "Schedule",
    name: "In service",
    seen: "`totals`, `in-service-before-cure`",
    formula:
      "the latest, over surfaces and pieces, of the end of the last layer + its full cure · wait factor",
    source: BY_DEFINITION,
    file: "totals/job-totals.ts",
    functions: ["createTotaller"],
    tests: ["core/totals/time.test.ts"],
  },

  {
    topic: "Money",
    name: "Cost of materials",
    seen: "`totals`, `shopping`",
    formula:
      "containers · price; null where one is not known; a job after another starts from what that left",
    source: BY_DEFINITION,
    file: "totals/job-totals.ts",
    functions: ["createTotaller"],
    tests: ["core/totals/materials.test.ts", "core/totals/money.test.ts"],
  },
  {
    topic: "Money",
    name: "Labour, total and saving",
    seen: "`totals`, `over-budget`",
    formula:
      "labour = hands-on · rate; total = materials + labour + supplies + pieces as bought; saving = new ones − total",
    source: BY_DEFINITION,
    file: "totals/job-totals.ts",
    functions: ["createTotaller"],
    tests: ["core/totals/money.test.ts"],
  },
  {
    topic: "Money",
    name: "Materials by what is used",
    seen: "`totals` as text, hover of the job",
    formula:
      "Σ litres · price of a litre in the containers bought; where all is on hand, in the size cheapest by the litre",
    source: "cost accounting's usage at purchase price",
    file: "totals/piece-costs.ts",
    functions: ["usedMaterialCost"],
    tests: ["core/totals/piece-costs.test.ts"],
  },
  {
    topic: "Money",
    name: "Cost of one piece",
    seen: "`totals` as text, hover of the job",
    formula:
      "materials by its share of the litres + its hands-on hours · rate + an even share of the supplies + what it cost; times the pieces these add up to the total",
    source: "our own choice of shares",
    file: "totals/piece-costs.ts",
    functions: ["pieceCosts"],
    tests: ["core/totals/piece-costs.test.ts"],
  },
  {
    topic: "Money",
    name: "Rounding for print",
    seen: "`totals --format json`",
    formula: "lengths, litres, hours and grams to six decimals, money to cents",
    source: "our own choice",
    file: "totals/print.ts",
    functions: ["printedTotals"],
    tests: ["core/totals/money.test.ts"],
  },

  {
    topic: "Fumes",
    name: "VOC given off",
    seen: TOTALS,
    formula: "Σ litres (spare and thinner included) · material VOC in g/L",
    source: "40 CFR 59.406(a) for what material VOC is",
    file: "fumes/voc.ts",
    functions: ["vocGrams", "mixVocGrams"],
    tests: ["core/fumes/voc.test.ts", "core/totals/materials.test.ts"],
  },
  {
    topic: "Fumes",
    name: "The two VOC figures of a label",
    seen: NOT_SHOWN,
    formula:
      "material: (Wv − Ww − We)/V; regulatory: the same / (V − Vw − Ve); by solids: S = C/(1 − C/7.36) lb/gal",
    source: "40 CFR 59.406(a); EPA Method 24; 30 TAC 115.423",
    file: "fumes/voc.ts",
    functions: ["materialVoc", "regulatoryVoc", "vocPerSolids"],
    tests: ["core/fumes/voc.test.ts"],
  },
  {
    topic: "Fumes",
    name: "Vapour and dilution air",
    seen: "`totals` as text, hover of layer and job, `ventilation-too-weak`",
    formula:
      "vapour m3/h = g/h / MW · molar volume; for breathing Q = vapour · 10⁶ · K / ppm; for fire Q = vapour · 100 · S / LEL",
    source:
      "ACGIH, Industrial Ventilation; checked by its US form with 403 ft3 a pint and a textbook example",
    file: "fumes/dilution-air.ts",
    functions: ["vapourM3PerH", "healthDilutionM3PerH", "fireDilutionM3PerH"],
    tests: ["core/fumes/dilution-air.test.ts"],
  },
  {
    topic: "Fumes",
    name: "Dilution air in US measures",
    seen: NOT_SHOWN,
    formula:
      "cfm = 403 · 10⁶ · SG · ER · K / (MW · ppm); 403 · 100 · SG · ER · S / (MW · LEL · B); 4(100 − LEL) · vapour / LEL a gallon; · (460 + T)/530 at T in F",
    source: "ACGIH, Industrial Ventilation; 29 CFR 1910.94(c)(6)(ii)",
    file: "fumes/dilution-air.ts",
    functions: ["healthDilutionCfm", "fireDilutionCfm", "cfmAtTemperature", "dilutionFt3PerGallon"],
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
    source: "the exposure sum of ACGIH, Industrial Ventilation, turned round",
    file: "fumes/room-air.ts",
    functions: ["gramsKeptPerH"],
    tests: ["core/fumes/dilution-air.test.ts"],
  },
  {
    topic: "Fumes",
    name: "Mixtures and clearing",
    seen: NOT_SHOWN,
    formula: "Σ C/L; t = V/(Q/K) · ln(C1/C2)",
    source: "29 CFR 1910.1000(d)(2); decay of a mixed room",
    file: "fumes/room-air.ts",
    functions: ["mixtureExposure", "clearingTimeH"],
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
    functions: ["coatFumes"],
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
    functions: ["roomAir", "solventOf", "greaterNeed"],
    tests: ["core/fumes/job-air.test.ts"],
  },
  {
    topic: "Fumes",
    name: "The verdict on the air of a job",
    seen: "`totals` as text, sheets, hover of layer, job and shop, `ventilation-too-weak`",
    formula:
      "for each coat the worst hours in which it gives off something, against its air: room · the greater of the room's own air changes and the `ventilate N` in force; `ventilate` alone counts as no certain amount and may bring up to 10; a respirator covers 10 times the limit, supplied air 25",
    source: `29 CFR 1910.134(d)(3)(i)(A), table 1 (from memory); 10 for windows and a fan: ${PRACTICE}`,
    file: "fumes/job-air.ts",
    functions: ["airThere", "airVerdict", "roomOfJobs", "jobAir"],
    tests: ["core/fumes/job-air.test.ts"],
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
    topic: "Materials and wood",
    name: "Wood that a grit takes",
    seen: "`sand-through`, hover of the step",
    formula: "10/G mm for each grit G on bare wood; at most 0.8 of a veneer",
    source: BY_DEFINITION,
    file: "knowledge/abrasives.ts",
    functions: ["materialTakenMm"],
    tests: ["core/knowledge/abrasives.test.ts", "rules/examples.test.ts"],
  },
  {
    topic: "Materials and wood",
    name: "Grit ratio",
    seen: "`grit-jump`",
    formula: "median grain of one grit over that of the next; a hint above 2, a warning above 3",
    source:
      "medians of ISO 6344-2 and 6344-3 from memory, confidence medium; thresholds: common practice, no source",
    file: "knowledge/abrasives.ts",
    functions: ["medianUm", "gritRatio", "gradesBetween"],
    tests: ["core/knowledge/abrasives.test.ts"],
  },
  {
    topic: "Materials and wood",
    name: "Category of a flammable liquid",
    seen: "`ignition-near-flammable`, `spraying-flammables-indoors`",
    formula: "by flash and boiling point: 1 to 4",
    source: "29 CFR 1910.106(a)(19)",
    file: "knowledge/flammable.ts",
    functions: ["flammableCategory", "vapourCanIgnite"],
    tests: ["core/knowledge/flammable.test.ts"],
  },
  {
    topic: "Materials and wood",
    name: "Lightness of a colour",
    seen: "`ambering-over-white`, `tannin-bleed`, `haze-over-dark`",
    formula: "CIE L* of the number: 116 ∛Y − 16, Y from linear sRGB; light from 70, dark up to 40",
    source: `CIE 1976 and IEC 61966-2-1; thresholds: ${PRACTICE}`,
    file: "colour.ts",
    functions: ["lightnessOf", "shadeOf"],
    tests: ["core/colour.test.ts"],
  },
  {
    topic: "Materials and wood",
    name: "Dryness of a coat",
    seen: "rules on waits and layers",
    formula: "hours since it went on, by stated times and waits, against the label's time · wait factor",
    source: BY_DEFINITION,
    file: "surface/state.ts",
    functions: ["hasWaited", "hasReached", "stageHours"],
    tests: ["rules/waits.test.ts", "rules/layers-and-wear.test.ts"],
  },
  {
    topic: "Air and waits",
    name: "Needed time",
    seen: "findings and hints on waits, the plan, hover, sheets",
    formula:
      "the label's time (or its family's) · wait factor; a filler that states none: a night of 12 h at least",
    source: PRACTICE,
    file: "surface/drying-time.ts",
    functions: ["dryingTime", "dryingTimeOf"],
    tests: ["core/surface/drying-time.test.ts"],
  },

  {
    topic: "Units and numbers",
    name: "Conversion",
    seen: "every quantity",
    formula:
      "exact ratios of whole numbers to one canonical unit a dimension; differences of temperature by themselves",
    source: "NIST SP 811 appendix B.8, NIST Handbook 44 appendix C, 16 CFR 500.19",
    file: "measure/units.ts",
    functions: ["toCanonical", "fromCanonical", "differenceToCanonical", "temperatureDifference"],
    tests: ["core/measure/units.test.ts", "core/properties/quantities.test.ts"],
  },
  {
    topic: "Units and numbers",
    name: "Weights as volumes",
    seen: "`sold`, `on_hand`, `covers` and `uses` by weight",
    formula: "L = g / density; m2/L = density / (g/m2)",
    source: BY_DEFINITION,
    file: "measure/units.ts",
    functions: ["litresOfGrams", "spreadingRateOfWeight"],
    tests: ["core/measure/units.test.ts", "core/totals/materials.test.ts"],
  },
];

/** The table, by topic. */
export const COMPUTATIONS: readonly Computation[] = TOPICS.flatMap((topic) =>
  BY_TOPIC.filter((row) => row.topic === topic),
);
