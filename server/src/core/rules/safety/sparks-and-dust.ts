/**
 * Words that bring dust, mist and sparks together: a dust collector for spray mist, grinding into it, a stove for its dust;
 * and dry dust of nitrocellulose lacquer in a shop with a source of ignition.
 */

import { lowerFirst, t, translated } from "../../../../../grammar/src/translate.ts";
import { ignitionSource } from "../../knowledge/ignition.ts";
import { sentence } from "../../sentence.ts";
import type { StepAction } from "../../surface/actions.ts";
import { burnsDry } from "../coat-queries.ts";
import { tellingSentences } from "../hazard-words.ts";
import { coatsReached } from "../lead-caution.ts";
import { wetStep, wetWork } from "../lead-work.ts";
import { ABRADING_VERBS } from "../queries.ts";
import type { Report, RunContext, TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine } from "../spoken-words.ts";
import { coatName, layerBelow, related } from "../texts.ts";
import { toldLines } from "../told-lines.ts";
import { saysWet } from "../work-words.ts";

export const sparksAndDust: TradeRule = {
  id: "sparks-and-dust",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A note or a step takes up vapour or spray mist with a dust collector or vacuum cleaner, sends sparks into one, burns dust in a stove, blows dust about near a flame, or blows it off indoors with compressed air; or, as an error, nitrocellulose lacquer is sanded dry in a shop with a flame, a heater or sparks.",
    why: "Fine dust of wood and of finishes explodes when it is stirred up and lit, and so does spray mist. The motor of an ordinary dust collector or vacuum cleaner is the spark. Dust of nitrocellulose lacquer flares up by itself at a glowing element.",
    remedy:
      "Keep dust collectors off while there is vapour or mist, grind metal elsewhere, and put dust into a closed metal bin outdoors. The machine's own instructions and local fire codes decide.",
    sources: [
      "OSHA CPL 03-00-008, Combustible Dust National Emphasis Program (2008; from memory, confidence high)",
      "NFPA 664, wood processing, since 2025 part of NFPA 660 (from memory, confidence medium)",
      "29 CFR 1910.242(b) on compressed air for cleaning (from memory, confidence medium)",
      "that dry dust of nitrocellulose lacquer flares up: common practice, no source; 29 CFR 1910.107(g)(3) has its residues taken away wet (from memory, confidence medium)",
      "29 CFR 1910.107(c) on spark-producing equipment near spraying (from memory, confidence high)",
    ],
  },
  failing: [
    {
      title: "Old lacquer sanded dry beside a heater",
      text: `recipe take_off {
  for    wood
  safety dust_mask
  step   clean with soap
  step   sand 80, 120, 180 #! sparks-and-dust
  step   dust
}

piece table {
  built 2015
  surface top {
    shape    panel 600 mm x 400 mm
    wood     beech
    existing nitrocellulose lacquer
  }
}

shop shed {
  country  US
  ignition heater
}

job tables {
  piece table
  in    shed
  apply take_off to top
}
`,
    },
    {
      title: "Told in the description of the recipe",
      text: `## Four hours of sanding, then give the whole place a blast with the air line.
recipe sanded { #! sparks-and-dust
  for    wood
  safety dust_mask, eye_protection
  step   sand 120, 150, 180
  step   dust
}
`,
    },
    {
      title: "A dust collector for the overspray",
      text: `recipe lacquered {
  for    wood
  safety vapour_respirator, gloves, eye_protection, no_ignition, ventilate 100 air changes/h
  note   "Let the dust collector run to draw off the overspray." #! sparks-and-dust
  layer  nitrocellulose_lacquer, by hvlp
  wait   until cured
}
`,
    },
    {
      title: "Sparks into the collector, dust into the stove",
      text: `recipe sanded {
  for    wood
  safety dust_mask, eye_protection
  step   sand 120, 150, 180
  note   "Grind the screw heads off with the dust collector running." #! sparks-and-dust
  note   "Burn the sanding dust in the stove." #! sparks-and-dust
  note   "Blow the chairs clean with the air gun, here in the room." #! sparks-and-dust
  step   dust
  layer  waterborne_polyurethane, by pad
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "The motor has stopped when the spirits come",
      text: `recipe steel_frame {
  for    metal
  safety dust_mask, gloves, eye_protection, ventilate, no_ignition, wet_rags
  step   scuff 120
  step   dust "vacuum, then a cloth with spirits"
}
`,
    },
    {
      title: "A description that says how it is kept out of the air",
      text: `## The dust is taken up with the fine filter; the air line stays on its hook.
recipe sanded {
  for    wood
  safety dust_mask, eye_protection
  step   sand 120, 150, 180
  step   dust
}
`,
    },
    {
      title: "What it is for, and what is forbidden",
      text: `recipe sanded {
  for    wood
  safety dust_mask, eye_protection
  note   "Sand with the dust collector running, and empty its bag into the metal bin outdoors."
  step   sand 120, 150, 180
  note   "Never draw spray mist into the dust collector."
  note   "Blow the mouldings clean with the air gun, outdoors."
  step   dust
  layer  waterborne_polyurethane, by pad
  wait   until cured
}
`,
    },
  ],
  checks: { onRun: check },
};

const COLLECTOR =
  /\b(?:dust[\s-]+(?:collect(?:or|ion)|extract(?:or|ion))|collector|extractor|shop[\s-]?vac\w*|vacuum(?:\s+cleaner)?|hoover)\b/iu;
const VAPOUR =
  /\b(?:overspray|spray\s+mist|mist|vapou?rs?|fumes|lacquer|thinners?|spirits?|acetone|alcohol|solvents?|spraying|wet\s+stripper|stripper)\b/iu;
const SPARKS =
  /\b(?:grind(?:ing|er)?|weld(?:ing|er)?|sparks?|cut\s+(?:the\s+)?(?:metal|steel|screws?|nails?))\b/iu;
const DUST = /\b(?:dust|sawdust|shavings)\b/iu;
const FLAME = /\b(?:stove|fire|furnace|flame|burn|boiler|fireplace)\b/iu;
const INTO_FLAME =
  /\b(?:burn|into\s+the\s+(?:stove|fire|furnace|fireplace)|in\s+the\s+(?:stove|furnace|fireplace))\b/iu;
const STIRRED = /\b(?:blow\w*|compressed\s+air)\b/iu;

const BLOW = /\bblow\w*\b/iu;
const AIR_JET = /\b(?:air[\s-]?(?:guns?|lines?|hoses?)|compressed\s+air|compressor)\b/iu;
/** Blowing pores out is common, with goggles and a mask; to fill the room that others breathe in with it is not. */
const INDOORS =
  /\b(?:indoors|inside|in\s+(?:here|(?:the|this)\s+(?:room|shop|workshop|reading[\s-]room|hall)))\b/iu;

/** What dust was sanded off, and lies dry by then: `vacuum the dust of the old lacquer` takes up no vapour. */
const ONLY_DUST = /\b(?:dust|sand\w*|flakes|shavings)\b/iu;

/** "Vacuum, then a cloth with spirits": the motor has stopped when the vapour comes. */
function isVapourLater(sentence: string): boolean {
  const then = sentence.search(/\bthen\b/iu);
  return then >= 0 && !VAPOUR.test(sentence.slice(0, then)) && !COLLECTOR.test(sentence.slice(then));
}

const SWITCHED_OFF = /\b(?:is|are|stays?|switched|turned|kept|shut)\s+off\b/iu;

const JET =
  "air_gun|air_hose|air_line|airline|airgun|compressed_air|compressor|leaf_blower|blow_gun|blower|air_jet";
const OUTDOORS = "!outdoors !outside !yard !open_air !before_the_day";
/** People, rooms and rafters blown clean. Pores and mouldings are blown out in many a shop. */
const BLOWN = phrases(
  `${JET} ... blow|blast|puff|dust|clear|clean|do ... bench|benches|stools|room|shop|floor|jersey|jumper|clothes|hair|overalls|apron|sleeves|trousers|everything|yourself|themselves ${OUTDOORS}`,
  `blow|blast|puff|dust ... jersey|jumper|clothes|hair|overalls|apron|trousers|yourself|ourselves|each_other|one_another ... ${JET} ${OUTDOORS}`,
  `give|gives|gets|get ... place|room|shop|workshop|bench|everything|floor|clothes|overalls|hair|hall|lot|rafters .. blast|blow|puff|going-over|squirt ... ${JET} ${OUTDOORS}`,
  `blast|blow|puff|squirt of|from|with .. ${JET} ... overalls|clothes|hair|room|shop|bench|floor|jersey|jumper|apron ${OUTDOORS}`,
  `blow|blast|dust|clean|clear ... yourself|clothes|hair|overalls|trousers|sleeves|jacket|each_other|one_another|arms|hands ... with|using|by .. ${JET} !outdoors !outside !yard`,
  `blow|blast|dust|clean|clear|use ... rafters|room|shop|workshop|floor|shelves|beams|bench|hall|ceiling|walls ... with|using|by|from .. ${JET} !outdoors !outside !yard !before_the_day`,
  `use|run|take|with .. leaf_blower|blower ... dust|clear|shop|room|floor`,
  `blow|blast|clear|clean ... ${JET} ... indoors|inside|in_here|here|room|shop|windows_shut !outdoors !outside !yard`,
);
/** Something wet or steaming with solvent drawn through a motor. */
const SUCKED_UP = phrases(
  "vacuum|hoover|suck|shop_vac .. up .. spilled|spilt|spill|wet|thinner|lacquer|overspray|puddle|spirits|solvent !wet-and-dry_rated",
  "vacuum|hoover .. spilled|spilt|wet|puddle .. thinner|lacquer|spirits|varnish|solvent|overspray|stripper",
);
const SPARKING = phrases(
  "weld|welding|grind|grinding|braze|solder .. bracket|metal|steel|nails|screws|hinge|it|hardware ... beside|near|over|into|next .. dust_bag|dust|sawdust|shavings|collector|bag !away !outside !never",
);
const ON_THE_FIRE = phrases(
  "throw|toss|chuck|put|tip|shovel|feed|sling|empty ... dust|sawdust|dust_bag ... on|into|in|onto .. fire|stove|furnace|fireplace|boiler|woodburner",
  "dust|sawdust|dust_bag .. goes|go on|into|in|onto .. fire|stove|furnace|fireplace|boiler|woodburner",
);

function check(ctx: RunContext): void {
  checkWords(ctx);
  checkLacquerDust(ctx);
}

/** Dust of nitrocellulose lacquer in a shop with something that lights it: said once a run. */
function checkLacquerDust({ run, report }: RunContext): void {
  const { shop } = run;
  if (!shop || !ignitionSource(shop.ignition.value)?.lights) return;
  for (const { action, before } of run.moments) {
    if (action.op !== "step" || action.wet || !ABRADING_VERBS.has(action.verb) || saysWet(action.what ?? ""))
      continue;
    const coat = coatsReached(action, before).findLast(burnsDry);
    if (!coat) continue;
    const source = shop.ignition.value;
    const wet = wetWork(action, "paint");
    const putOut = translated(ignitionSource(source)!.putOut);
    report(action, {
      severity: "error",
      headline: t`Dust of nitrocellulose lacquer flares up at the shop's ${translated(source)}`,
      why: t`Dry dust of ${coatName(coat)} burns far faster than wood dust, and a flame, a spark or a glowing element is enough to light it.`,
      remedy: `${wet ? t`${sentence(wet)}, or ${lowerFirst(putOut)} before you make dust.` : t`${putOut} before you make dust.`} ${motors()} ${bin()}`,
      damp: `${t`${putOut}${beforeWork(action)}, and state \`ignition none\` in the shop only if it stays off for the whole job.`} ${drying()} ${motors()} ${bin()}`,
      abrades: "surface",
      related: [
        ...(shop.ignition.place ? [related(shop.ignition.place, t`The source of ignition`)] : []),
        layerBelow(coat),
      ],
    });
    return;
  }
}

function beforeWork(step: StepAction): string {
  if (step.verb === "sand") return t` before you sand (${wetStep(step)})`;
  return step.verb === "scuff" ? t` before you scuff (${wetStep(step)})` : "";
}

const drying = (): string => t`Dry the cleaned piece in the room where you will coat it.`;
const motors = (): string =>
  t`The motor of a sander or vacuum cleaner, with a HEPA filter too, is a spark to this dust.`;
const bin = (): string =>
  t`Keep dust, slurry, cloths and used paper under water in a closed metal bin outdoors. Local fire codes decide.`;

function checkWords({ run, report }: RunContext): void {
  for (const action of toldLines(run)) {
    const mist =
      saidOnLine(action, SUCKED_UP) !== undefined ||
      tellingSentences(action, COLLECTOR, VAPOUR).some(
        (each) =>
          !SWITCHED_OFF.test(each) &&
          !isVapourLater(each) &&
          !ONLY_DUST.test(each.replace(new RegExp(COLLECTOR, "giu"), "")),
      );
    const sparks =
      saidOnLine(action, SPARKING) !== undefined ||
      tellingSentences(action, COLLECTOR, SPARKS).some((each) => !SWITCHED_OFF.test(each));
    const flame =
      saidOnLine(action, ON_THE_FIRE) !== undefined || tellingSentences(action, DUST, INTO_FLAME).length > 0;
    const cloud = tellingSentences(action, DUST, STIRRED, FLAME).length > 0;
    const blown =
      saidOnLine(action, BLOWN) !== undefined || tellingSentences(action, BLOW, AIR_JET, INDOORS).length > 0;
    if (blown && !mist && !sparks && !flame && !cloud) {
      report(action, blownAround());
      continue;
    }
    if (!mist && !sparks && !flame && !cloud) continue;
    report(action, {
      headline: mist
        ? t`A dust collector's motor can light vapour and mist`
        : t`Sparks and dust together can explode`,
      why: mist
        ? t`Its motor sparks, and the dust in it feeds the fire.`
        : t`Fine dust of wood and finishes burns like powder once it is stirred up and lit.`,
      remedy: mist
        ? t`Switch it off while there is vapour, and take the mist away with an exhaust made for spraying.`
        : t`Grind metal elsewhere, keep flames away from dust, and put it into a closed metal bin outdoors; local fire codes decide.`,
    });
  }
}

const blownAround = (): Report => ({
  headline: t`Compressed air blows the dust into the air that all breathe`,
  why: t`Fine wood dust hangs in the room for hours, irritates and sensitises, and can burn as a cloud.`,
  remedy: t`Vacuum it off with a fine filter or wipe it off; blow only outdoors, with mask and goggles.`,
});
