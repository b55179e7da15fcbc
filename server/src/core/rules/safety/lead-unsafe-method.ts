/**
 * Ways of working on old coatings that throw lead about: too much heat, machines without a HEPA filter, blasting, dry
 * sanding and scraping, and volatile strippers without air. Flames are `open-flame`'s.
 */

import { lookUp } from "../../../../../grammar/src/look-up.ts";
import { t } from "../../../../../grammar/src/translate.ts";
import type { Severity } from "../../findings.ts";
import { LEAD_METHODS_SOURCE, leadNote } from "../../knowledge/lead.ts";
import { saidIn } from "../../knowledge/phrases.ts";
import { degreesText } from "../../measure/figures.ts";
import { sentence } from "../../sentence.ts";
import type { Action, NoteAction, StepAction } from "../../surface/actions.ts";
import { leadFactsOf } from "../../surface/lead.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { Moment } from "../../surface/state.ts";
import { burnsDry } from "../coat-queries.ts";
import {
  isOldClear,
  type LeadMatter,
  leadIn,
  leadReached,
  notedAs,
  promisesTest,
  takesOff,
  testsInAStep,
  waitsForLaboratory,
} from "../lead-caution.ts";
import { testIt, wetWork, wetWorkInOrder } from "../lead-work.ts";
import type { Report, RunContext, TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine, textOf } from "../spoken-words.ts";
import { related } from "../texts.ts";
import {
  BLASTING,
  clauseNaming,
  HEAT_GUN,
  hottestC,
  SANDING_MACHINE,
  SMOKED,
  saysHepa,
  saysWet,
} from "../work-words.ts";

const VERBS: ReadonlySet<string> = new Set(["sand", "scuff", "scrape", "strip", "distress"]);

/** Above it the advice of the United Kingdom's environment department on lead paint tells to turn a hot-air gun down. */
const HOT_C = 450;

/** 1100 F, the limit of 24 CFR 35.140(c): (1100 − 32) × 5/9. */
const HOTTEST_C = ((1100 - 32) * 5) / 9;

const OLD_TABLE = `
piece table {
  built 1936
  surface legs {
    shape    4 of post 50 mm x 700 mm
    wood     beech
    existing alkyd paint, 2 coats
  }
}

job legs {
  piece table
  apply prepare to legs
}
`;

const FOUND_TABLE = OLD_TABLE.replace(
  "    existing alkyd paint, 2 coats\n",
  "    existing alkyd paint, 2 coats\n    lead     found by swab 2026-11-03\n",
);

export const leadUnsafeMethod: TradeRule = {
  id: "lead-unsafe-method",
  group: "safety",
  severity: "error",
  voids: "make the work on lead safe first",
  speaksOfLead: true,
  secondaryTo: ["lead-not-tested"],
  docs: {
    summary:
      "A coating that holds lead, or may hold it, is worked on by a heat gun above 1100 F (593 C) or of unstated heat, or until it smokes, by a machine or by blasting without a HEPA filter, by dry sanding or scraping, or with a volatile stripper without stated ventilation; or its dust is dusted dry, swept, blown or carried about. That dust by `lead_safe` is to be taken up wet is information. Above 450 C a heat gun draws a warning.",
    why: "Heat turns lead into fume, dry work and machines into dust. Neither can be seen, and both stay in the room.",
    remedy:
      'Work wet (`sand wet 180`, `scrape "misted with water"`), by a machine whose words name a HEPA filter, by a heat gun whose words name its temperature, or with a stripper and `ventilate`; and state `safety lead_safe`. Or have a laboratory test every layer, and state its result at the surface. Better still, leave sound old paint where it is.',
    sources: [
      LEAD_METHODS_SOURCE,
      "29 CFR 1926.62 on lead in construction",
      "Department for Environment, Food and Rural Affairs (United Kingdom), Advice on lead paint in older homes: a hot-air gun below 450 C, with a dust mask (undated; by way of a secondary page)",
    ],
  },
  failing: [
    {
      title: "To be tested, but sanded dry",
      text: `recipe prepare {
  for    wood
  safety lead_test, dust_mask
  step   clean with soap
  step   sand 120 #! lead-unsafe-method
  step   dust #! lead-unsafe-method
}
${OLD_TABLE}`,
    },
    {
      title: "An old clear, to be tested, but sanded off dry",
      text: `recipe take_off {
  for    wood
  safety lead_test, dust_mask
  step   clean with soap
  step   sand 80, 120, 180 #! lead-unsafe-method
  step   dust #! lead-unsafe-method
}

piece table {
  built 1952
  surface top {
    shape    panel 600 mm x 400 mm
    wood     beech
    existing nitrocellulose lacquer
  }
}

job tables {
  piece table
  apply take_off to top
}
`,
    },
    {
      title: "A step that tests is not a result either",
      text: `recipe prepare {
  for    wood
  safety lead_safe
  step   test "lead swab on the old paint"
  step   clean with soap
  step   scrape #! lead-unsafe-method
  step   clean with water
}
${OLD_TABLE}`,
    },
    {
      title: "Scuffed wet, and then dusted as if it were any dust",
      text: `recipe prepare {
  for    wood
  safety lead_test, lead_safe
  step   clean with soap
  step   scuff wet 180
  step   dust #! lead-unsafe-method
}
${OLD_TABLE}`,
    },
    {
      title: "A heat gun of unstated heat on paint in which a swab found lead",
      text: `recipe prepare {
  for    wood
  safety lead_safe
  step   scrape "heat gun" #! lead-unsafe-method
  step   clean with water
}
${FOUND_TABLE}`,
    },
    {
      title: "Too hot",
      text: `recipe prepare {
  for    wood
  safety lead_safe
  step   scrape "heat gun at 600 C" #! lead-unsafe-method
  step   clean with water
}
${FOUND_TABLE}`,
    },
    {
      title: "Hot, until it smokes, and swept up: in notes",
      text: `recipe prepare {
  for    wood
  safety lead_safe, dust_mask
  note   "The heat gun at 500 C softens it." #! lead-unsafe-method
  note   "Leave the heat gun at 400 C on one spot until it smokes." #! lead-unsafe-method, paint-heated-to-smoke
  note   "Sweep the flakes up with the broom." #! lead-unsafe-method
  step   scrape "misted with water"
  step   clean with water
}
${FOUND_TABLE}`,
    },
    {
      title: "Scraped wet, and swept up dry or with the vacuum cleaner of the house",
      text: `recipe prepare {
  for    wood
  safety lead_test, lead_safe, eye_protection
  step   scrape "misted with water"
  step   dust "dry brush and dustpan" #! lead-unsafe-method
  step   dust "compressed air" #! lead-unsafe-method
  step   dust "household vacuum" #! lead-unsafe-method
  step   clean with water
}
${OLD_TABLE}`,
    },
    {
      title: "An orbital sander without a HEPA filter; the recipe's own words say that lead was found",
      text: `recipe prepare {
  for    wood
  safety dust_mask, hearing, lead_safe
  step   test "swab of the old paint: positive for lead"
  step   sand 80, 120 "orbital sander with a dust bag" #! lead-unsafe-method
  step   dust #! lead-unsafe-method
}
`,
    },
    {
      title: "A stripper, and no fresh air is stated",
      text: `recipe prepare {
  for    wood
  safety lead_test, lead_safe, gloves, eye_protection, vapour_respirator
  step   strip with paint_stripper #! lead-unsafe-method, no-ventilation
  step   clean with water
}
${FOUND_TABLE}`,
    },
    {
      title: "Sandblasted",
      text: `recipe prepare {
  for    wood
  safety lead_test, hearing
  note   "The joiner has the legs sandblasted." #! lead-unsafe-method
  step   clean with water
}
${OLD_TABLE}`,
    },
  ],
  passing: [
    {
      title: "Scuffed wet and taken up with a HEPA vacuum",
      text: `recipe prepare {
  for    wood
  safety lead_test, lead_safe
  step   clean with soap
  step   scuff wet 180
  step   dust "HEPA vacuum"
}
${OLD_TABLE}`,
    },
    {
      title: "A heat gun below 593 C, and then wet work",
      text: `recipe prepare {
  for    wood
  safety lead_safe
  step   scrape "heat gun at 350 C"
  step   clean with water
}
${FOUND_TABLE}`,
    },
    {
      title: "A sander with a HEPA vacuum",
      text: `recipe prepare {
  for    wood
  safety lead_test, lead_safe, hearing
  step   clean with soap
  step   sand 80, 120 "orbital sander, shrouded, on a HEPA vacuum"
  step   dust
}
${OLD_TABLE}`,
    },
    {
      title: "No lead found by a laboratory: sanded dry, with the mask on",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   clean with soap
  step   sand 120
  step   dust
}
${OLD_TABLE.replace(
  "    existing alkyd paint, 2 coats\n",
  "    existing alkyd paint, 2 coats\n    lead     none_found by laboratory 2026-11-03\n",
)}`,
    },
  ],
  checks: { onRun: check },
};

type Method =
  | "heat"
  | "too hot"
  | "charred"
  | "hot"
  | "blast"
  | "machine"
  | "stripper"
  | "dry"
  | "spread"
  | "carried";

function check({ run, report }: RunContext): void {
  let lastNote: Method | undefined;
  let dust: LeadMatter | undefined;
  let dryDust: { readonly matter: LeadMatter; readonly work: StepAction } | undefined;
  /** What dust may lie there, though the coat itself is gone. */
  let dusty: LeadMatter | undefined;
  for (const [index, moment] of run.moments.entries()) {
    const { action, before } = moment;
    if (!before.certain) continue;
    if (action.op === "note") {
      const matter = leadIn(run, before.layers);
      const method = matter && (methodOfText(action.text, action.text) ?? spokenMethod(action));
      if (method && isPlain(run, matter, method)) {
        if (!OF_DUST.has(method)) lastNote = method;
        report(action, reportOf(run, action, matter, method, method === "hot" ? "warning" : "error"));
      }
      continue;
    }
    if (action.op !== "step") continue;
    if (!VERBS.has(action.verb)) {
      if (action.verb === "dust") {
        const swept = sweptMatter(run, action, dusty ?? leadReached(run, action, before));
        if (swept) report(action, reportOf(run, action, swept, "spread", "error"));
        else if (dust && isDry(action)) report(action, dustedDry(run, dust));
        else if (dryDust && isDry(action)) report(action, takenUpDry(dryDust.matter, dryDust.work));
      }
      if (action.verb === "dust" || action.verb === "clean") dust = dryDust = undefined;
      continue;
    }
    dusty = leadReached(run, action, before) ?? dusty;
    // The note above has said it.
    const isSaid = lastNote !== undefined;
    lastNote = undefined;
    if (isSaid) continue;
    const matter = leadReached(run, action, before);
    const method = matter && methodOf(run, moment as Moment<StepAction>, index);
    const severity = matter && method && severityOf(run, matter, method, action);
    if (severity) report(action, reportOf(run, action, matter, method, severity));
    dust = severity === undefined && matter && leavesLeadDust(matter, action) ? matter : undefined;
    dryDust = matter && isWorkedDry(run, matter, method, action) ? { matter, work: action } : undefined;
  }
}

/** The lead that the words of a `dust` step throw about, if there is some. */
function sweptMatter(
  run: SurfaceRun,
  action: StepAction,
  matter: LeadMatter | undefined,
): LeadMatter | undefined {
  const isMeant = matter !== undefined && matter.status !== "possible" && isPlain(run, matter, "spread");
  return isMeant && saidOnLine(action, SWEPT) !== undefined ? matter : undefined;
}

const isDry = ({ what = "" }: StepAction): boolean => !saysHepa(what) && !saysWet(what);

/**
 * Work that is itself done wet and by `lead_safe`, and whose dust is then only "dusted": what is not done so has graver
 * findings of its own.
 */
const leavesLeadDust = ({ kind, status }: LeadMatter, step: StepAction): boolean =>
  kind === "paint" && status !== "possible" && step.duties.has("lead_safe") && !saysHepa(step.what ?? "");

const dustedDry = (run: SurfaceRun, { status, coat }: LeadMatter): Report => ({
  headline:
    status === "found"
      ? t`Dust that holds lead is not said to be taken up wet`
      : t`Dust that may hold lead is not said to be taken up wet`,
  why: t`${leadNote(leadFactsOf(run))} A brush or a household vacuum throws its dust about the room again.`,
  remedy: t`Take it up wet or with a HEPA vacuum, and say so: \`step dust "HEPA vacuum"\`, or \`step clean with water\` in its place.`,
  severity: "information",
  related: coat ? [related(coat.place, t`The old coating`)] : [],
});

/** Work that has an error of its own, here or by `lead-not-tested`, and leaves its dust dry. */
const isWorkedDry = (
  run: SurfaceRun,
  matter: LeadMatter,
  method: Method | undefined,
  step: StepAction,
): boolean =>
  (method === "dry" || method === "machine") &&
  !waitsForLaboratory(run) &&
  (matter.status === "found" ||
    (matter.status === "presumed" && (matter.kind === "paint" || isOldClear(run, matter, step))));

/** Told short: how lead is worked on stands at the line that makes the dust. */
const takenUpDry = ({ status, coat }: LeadMatter, work: StepAction): Report => {
  const flaresUp = coat !== undefined && burnsDry(coat);
  return {
    headline:
      status === "found"
        ? t`Dust that holds lead is taken up dry`
        : t`Dust that may hold lead is taken up dry`,
    why: flaresUp
      ? t`A brush or a household vacuum throws it about the room again, and the motor of any vacuum can light dust of nitrocellulose.`
      : t`A brush or a household vacuum throws it about the room again.`,
    remedy: flaresUp
      ? status === "found"
        ? t`Take it up damp: write \`step clean with water\` and \`wait overnight\` in place of \`step dust\`.`
        : t`Wait for the lead test, and then take it up damp: write \`step clean with water\` and \`wait overnight\` in place of \`step dust\`.`
      : status === "found"
        ? t`Take it up with a HEPA vacuum (\`step dust "HEPA vacuum"\`), or wipe it up damp (\`step clean with water\` and \`wait overnight\` in place of \`step dust\`).`
        : t`Wait for the lead test. If it finds lead, take it up with a HEPA vacuum (\`step dust "HEPA vacuum"\`), or wipe it up damp (\`step clean with water\` and \`wait overnight\` in place of \`step dust\`).`,
    severity: "warning",
    related: [
      related(work.place, t`This work leaves it; what to do about its lead is told there`),
      ...(coat ? [related(coat.place, t`The old coating`)] : []),
    ],
  };
};

/** What a step does, by its words and the notes beside it, and by its verb. */
function methodOf(run: SurfaceRun, { action }: Moment<StepAction>, index: number): Method | undefined {
  const own = action.what ?? "";
  const text = [own, ...notesBeside(run, index)].join(". ");
  const named = methodOfText(text, text);
  if (named) return named;
  if (action.verb === "strip")
    return isVolatile(action) && !action.duties.has("ventilate") ? "stripper" : undefined;
  const isDusty = !action.wet && !saysWet(text) && !saysHepa(text);
  // Paint that was softened by heat comes off in strips: 24 CFR 35.140(e) lets it be scraped dry.
  return isDusty && clauseNaming(text, HEAT_GUN) === undefined ? "dry" : undefined;
}

function methodOfText(text: string, near: string): Method | undefined {
  const gun = clauseNaming(text, HEAT_GUN);
  if (gun !== undefined) {
    const heat = hottestC(gun) ?? hottestC(near);
    if (heat === undefined) return "heat";
    if (heat > HOTTEST_C) return "too hot";
    if (saidIn(CHARRED, gun) !== undefined) return "charred";
    if (heat > HOT_C) return "hot";
  }
  if (clauseNaming(text, BLASTING) && !saysHepa(near)) return "blast";
  if (saysHepa(near)) return undefined;
  return clauseNaming(text, SANDING_MACHINE) || saidIn(MACHINES, text) !== undefined ? "machine" : undefined;
}

const CHARRED = phrases("smoke|smoking|char|charred|brown|scorch*|burn|blister_and_smoke !stop !before");

const OLD =
  "paint|old_coat|coating|finish|old_varnish|it|flakes|primer|layers|rest|left|everything|off|undercoat";
const DUST = "dust|flakes|chips|scrapings|paint|crumbs|debris|bits";
const CONTAINED = "!wet !wetted !water !damp !mist !misted !misting !hepa !h-class !sponge !soaked";

const MACHINES = phrases(
  `flap_wheel|flap_disc|flap_disk|wire_wheel|wire_cup|cup_brush|wire_brush_in|orbital|grinder|rotary_stripper|strip_disc|stripping_disc|rotary_tool|planer|power_plane`,
  `grind|grinding|plane .. ${OLD} ... off|down|away`,
);
/** Words of a note alone: what a step does its verb says. */
const DRY = phrases(
  "sanded|scraped|scuffed dry !is_dry !until_dry",
  `sand|sanded|sanding|scrape|scraped|scraping|scuff|rub|rubbed ... dry ${CONTAINED} !is_dry !until_dry !when_dry !once_dry !dry_cloth`,
  `dry sand|sanded|sanding|scrape|scraping|scuff ${CONTAINED} !is_dry !paint_is`,
  `sand|sanded|sanding .. paint|old_coat|old_primer|flaking|flakes|lead ${CONTAINED} !between_coats !new_paint !new_coat`,
  `grit .. dry|off ${CONTAINED} !until`,
  `dry ... grit ${CONTAINED} !is_dry !until_dry !when_dry !once_dry`,
  `scrape|scraping .. paint .. off|away .. dry|by_hand|indoors ${CONTAINED}`,
);
const SPREAD = phrases(
  `sweep|sweeping|broom|brush|dustpan|brushes .. ${DUST}|floor|bench|room|up ${CONTAINED} !sweeping_compound !paint_the !paint_on !brush_on`,
  `${DUST} ... swept|brushed .. up|out|off|away ${CONTAINED}`,
  `blow|blast|compressed_air|air_line|leaf_blower ... ${DUST} ${CONTAINED} !outdoors_only`,
  `vacuum|hoover|shop_vac|household_vacuum|household_hoover|vacuum_cleaner|wet_vac ... ${DUST} ${CONTAINED} !class`,
  `${DUST} ... household_vacuum|household_hoover|ordinary_vacuum|normal_vacuum|shop_vac ${CONTAINED}`,
  `power-wash|pressure-wash|pressure_washer|jet-wash|jet_washer|hose .. ${DUST}|off|down|it|away`,
  `${DUST} ... fall|drop|land|lie ... garden|lawn|grass|carpet|soil|sandpit|floor !sheet !plastic !tarp*`,
);
/** Words of a `dust` step: what is swept, brushed or blown, or taken up by a vacuum cleaner that lets lead through. */
const SWEPT = phrases(
  `sweep|sweeping|swept|broom|dustpan|feather_duster|duster ${CONTAINED} !sweeping_compound`,
  `brush|brushed|brushing ${CONTAINED} !vacuum !attachment`,
  `compressed_air|air_line|air_gun|air_hose|blow|blown|blowing|blower|compressor ${CONTAINED}`,
  `household|ordinary|normal|domestic|kitchen .. vacuum|hoover|vacuum_cleaner ${CONTAINED}`,
  `shop_vac|shop_vacuum|workshop_vacuum|hoover|wet_vac ${CONTAINED} !class`,
  `dry cloth|rag|duster ${CONTAINED}`,
);
const CARRIED = phrases(
  "shake|beat|knock|brush .. overalls|clothes|coat|dust_sheet|jacket|trousers|drop_cloth|apron ... out|off|clean|yard|outside !never",
  "wash|launder .. overalls|clothes|them|shirt ... with_the_rest|with_other|family|household|kitchen|with_the_children's|together !own !separately !alone",
  "take|wear|carry|bring .. overalls|dust|boots|shoes|clothes|work_clothes .. home|indoors|upstairs|kitchen|car",
  "ignore|forget|skip|omit|spare|never_mind .. lead_test|lead|test|swab ... paint|only|nothing|old|harm|worry|money|time|it",
  "lead|dust ... does_no_harm|do_no_harm|harmless|exaggerated|never_hurt|not_dangerous|hurts_nobody|no_harm|fuss|won't_hurt",
);

/** What a note tells to do with old paint by hand, and with its dust. */
function spokenMethod(action: NoteAction): Method | undefined {
  if (saidOnLine(action, SMOKED) !== undefined) return "charred";
  if (saidOnLine(action, SPREAD) !== undefined) return "spread";
  if (saidOnLine(action, DRY) !== undefined) return "dry";
  return saidOnLine(action, CARRIED) === undefined ? undefined : "carried";
}

/** The notes directly above and below a line. */
function notesBeside({ moments }: SurfaceRun, index: number): readonly string[] {
  const texts: string[] = [];
  for (let at = index - 1; at >= 0 && isNote(moments[at]!.action); at -= 1)
    texts.push(textOf(moments[at]!.action)!);
  for (let at = index + 1; at < moments.length && isNote(moments[at]!.action); at += 1)
    texts.push(textOf(moments[at]!.action)!);
  return texts;
}

const isNote = (action: Action): action is NoteAction => action.op === "note";

/** A stripper by its family; one whose label says that it gives off next to nothing is not meant. */
function isVolatile({ use }: StepAction): boolean {
  const material = use?.material;
  if (!material?.family || material.family.carrier === "water") return false;
  return material.voc?.origin !== "stated" || material.voc.value > 50;
}

const GRAVE: ReadonlySet<Method> = new Set(["heat", "too hot", "charred", "blast", "machine"]);
const OF_DUST: ReadonlySet<Method> = new Set(["spread", "carried"]);

/** Whether a note by itself is enough: a machine may be meant for other wood, and a clear of late years holds no lead. */
const isPlain = (run: SurfaceRun, { status, kind }: LeadMatter, method: Method): boolean =>
  (method !== "machine" || (kind === "paint" && status !== "possible")) &&
  (status === "found" || !["dry", "spread", "carried"].includes(method) || kind === "paint") &&
  !(method === "dry" && waitsForLaboratory(run));

/**
 * Heat, machines and blasting are errors whatever the doubt. Dry work by hand and strippers are errors on lead
 * that was found and on paint of which it is presumed, and a warning on an old clear; that a test is promised changes
 * nothing before its result stands at the surface. Where the recipe makes it all depend on a laboratory, or tests an old
 * clear in a step before the work, it lacks the result alone. What is not tested at all `lead-not-tested` says.
 */
function severityOf(
  run: SurfaceRun,
  matter: LeadMatter,
  method: Method,
  step: StepAction,
): Severity | undefined {
  const { status, kind } = matter;
  if (method === "hot") return kind === "clear" && status === "possible" ? undefined : "warning";
  if (GRAVE.has(method)) return kind === "clear" && status === "possible" ? "warning" : "error";
  if (status === "found") return "error";
  if (kind === "clear" && !(method === "dry" && isOldClear(run, matter, step))) return undefined;
  if (waitsForLaboratory(run)) return "information";
  if (!promisesTest(run, step)) return undefined;
  if (kind === "clear") return testsInAStep(run, step) ? "information" : "warning";
  if (status === "presumed") return "error";
  return takesOff(step) ? "warning" : undefined;
}

/** With what is worked on in between, at most 70 characters. */
const HEADLINES: Readonly<Record<Method, (what: string) => string>> = {
  heat: (what) => t`A heat gun of unstated heat on ${what}`,
  "too hot": (what) => t`A heat gun above 593 C on ${what}`,
  charred: (what) => t`A heat gun that chars or smokes ${what}`,
  hot: (what) => t`A heat gun above 450 C on ${what}`,
  spread: (what) => t`Dust thrown about from ${what}`,
  carried: (what) => t`Too lightly taken: ${what}`,
  blast: (what) => t`Blasting without a HEPA filter on ${what}`,
  machine: (what) => t`A sander without a HEPA filter on ${what}`,
  stripper: (what) => t`${sentence(what)} is stripped without air`,
  dry: (what) => t`${sentence(what)} is worked on dry`,
};

const DRY_VERBS: Readonly<Record<string, (what: string) => string>> = {
  sand: (what) => t`${sentence(what)} is sanded dry`,
  scuff: (what) => t`${sentence(what)} is scuffed dry`,
  scrape: (what) => t`${sentence(what)} is scraped dry`,
  distress: (what) => t`${sentence(what)} is rubbed through dry`,
};

function headline(what: string, method: Method, action: Action): string {
  const verb = action.op === "step" && method === "dry" ? lookUp(DRY_VERBS, action.verb) : undefined;
  return (verb ?? HEADLINES[method])(what);
}

const REMEDIES: Readonly<Record<Method, () => string>> = {
  heat: () =>
    t`State the heat, at most ${degreesText(Math.floor(HOTTEST_C))} (\`step scrape "heat gun at 350 C"\`), or put the gun away and scrape wet; never wet work under an electric gun`,
  "too hot": () =>
    t`Keep the gun below ${degreesText(Math.floor(HOTTEST_C))} (1100 F), or put it away and scrape wet; never wet work under an electric gun`,
  charred: () =>
    t`Keep the gun so cool that the paint softens and never smokes or browns, or put it away and scrape wet`,
  hot: () =>
    t`Turn it down to where the paint just softens, at most 450 C, wear a respirator against dust and vapour, and stop as soon as it smokes`,
  spread: () => t`Take dust and flakes up wet or with a HEPA vacuum; never sweep, blow or hose them`,
  carried: () =>
    t`Have it tested, keep work clothes and dust at the work, and wash such clothes by themselves`,
  blast: () =>
    t`Do not have it blasted without a HEPA filter and containment; take the paint off wet, or leave it`,
  machine: () =>
    t`Name a HEPA shroud and vacuum on the line (\`step sand 80 "orbital sander, HEPA vacuum"\`), or sand wet by hand`,
  stripper: () => t`State \`safety ventilate\` with the air that the stripper's label asks for`,
  dry: () =>
    t`Work wet (\`step sand wet 180\`, \`step scrape "misted with water"\`) and take the dust up wet or with a HEPA vacuum, never dry`,
};

/** With the line to write where the recipe has one, and without a motor where that lights the dust. */
function remedyOf(method: Method, action: Action, { kind, coat }: LeadMatter): string {
  const hasSpark = coat !== undefined && burnsDry(coat);
  if (hasSpark && method === "machine")
    return t`Sand wet by hand: the motor of a sander or HEPA vacuum can light dust of nitrocellulose`;
  const wet = method === "dry" ? wetWork(action, kind) : undefined;
  if (!wet) return REMEDIES[method]();
  const up = hasSpark ? t`take the dust up wet` : t`take the dust up wet or with a HEPA vacuum`;
  return t`${sentence(wet)}; ${up}, never dry`;
}

/** 29 CFR 1926.62 and 40 CFR 745.85: a P100 (HEPA) filter, where only the dust mask of clean wood is stated or nothing. */
const filter = ({ duties }: Action): string => {
  if (duties.has("lead_safe") || duties.has("supplied_air")) return "";
  return duties.has("dust_mask") && !duties.has("vapour_respirator")
    ? t`wear a P100 respirator, as the \`dust_mask\` stated here is not enough for lead; `
    : t`wear a P100 respirator (a dust mask is not enough); `;
};

/** Nobody is told to state what is stated. */
const stateLeadSafe = ({ duties }: Action): string =>
  duties.has("lead_safe") ? "" : t`state \`safety lead_safe\`, and `;

function whatMayHold(kind: LeadMatter["kind"], status: LeadMatter["status"]): string {
  if (kind === "paint")
    return status === "found" ? t`old paint that holds lead` : t`old paint that may hold lead`;
  return status === "found" ? t`an old clear that holds lead` : t`an old clear that may hold lead`;
}

/** "Test promised" is not yet "safe": `lead_test` alone, or a step that tests, gives no result. */
function untestedNote(run: SurfaceRun, action: Action, status: LeadMatter["status"]): string {
  if (status === "found" || !promisesTest(run, action) || !run.surface) return "";
  const stated = leadFactsOf(run).result;
  return stated
    ? ""
    : t` A test that is planned is not a result: none is stated for \`${run.surface.name}\`.`;
}

function reportOf(
  run: SurfaceRun,
  action: Action,
  matter: LeadMatter,
  method: Method,
  severity: Severity,
): Report {
  const { status, kind, coat } = matter;
  const facts = leadFactsOf(run);
  const isFact = status === "found" && facts.result?.finding === "found";
  const note =
    isFact || status !== "found"
      ? leadNote(facts, notedAs(matter))
      : t`The recipe's own words say that lead was found.`;
  const waiting = severity === "information";
  const isSettled = isFact && facts.result?.method === "laboratory";
  return {
    headline: waiting
      ? t`The laboratory's result is not stated at the surface`
      : headline(whatMayHold(kind, status), method, action),
    why: t`${note}${untestedNote(run, action, status)} Lead dust and lead fume poison whoever breathes or swallows them, children above all.`,
    remedy: waiting
      ? t`Once the laboratory has found none, state that at the surface with the date from its report (\`lead none_found by laboratory YYYY-MM-DD\`); until then, work wet and by \`safety lead_safe\`.`
      : method === "dry" && action.op === "step"
        ? wetWorkInOrder(action, matter, isSettled)
        : t`${remedyOf(method, action, matter)}${method === "dry" && !isSettled ? t`, or ${testIt()}` : ""}; ${filter(action)}${stateLeadSafe(action)}ask the local authority who may do this work.`,
    // What else lead asks for is said by the finding on it.
    ...(waiting ? {} : { brief: `${remedyOf(method, action, matter)}.` }),
    severity,
    related: coat ? [related(coat.place, t`The old coating`)] : [],
  };
}
