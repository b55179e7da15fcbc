/**
 * Solvents and oily rags near a stove, a boiler or a radiator, where only the recipe's words tell of it.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { Action } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { burns, firstBurning } from "../flammable-uses.ts";
import type { RunContext, TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine, textOf } from "../spoken-words.ts";
import { useName } from "../texts.ts";
import { toldLines } from "../told-lines.ts";
import {
  BURNED_WASTE,
  clauseNaming,
  clauseNearHeat,
  HOT_PLACE,
  warmsSomethingFlammable,
} from "../work-words.ts";

export const heatNearVapour: TradeRule = {
  id: "heat-near-vapour",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A note puts the work near a stove, heater, radiator, boiler or pilot light, or the shop's own words name one while its `ignition` is not stated, and a flammable liquid or an oil with self-heating rags is used.",
    why: "Vapour is heavier than air and creeps to the flame; cloths and fresh oil near a radiator heat up faster.",
    remedy:
      "Let it dry away from anything hot, or put that out and let it cool first. Where the shop has a flame or a heater, state it as `ignition`; where there is none, state `ignition none`.",
    sources: [
      "29 CFR 1910.106(a)(19) on flammable liquids; 29 CFR 1910.107(c)(2) on flames near spraying (from memory)",
      "common practice, no source, for radiators and oily cloths",
    ],
  },
  failing: [
    {
      title: "Dried beside the stove",
      text: `recipe table {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "Stand the table beside the stove so that it dries faster." #! heat-near-vapour
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "The shop's title names a boiler, and nothing is said of ignition",
      text: `piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing paste wax
  }
}

shop cellar "Cellar with the gas boiler" {
  air 21 C, 50 % RH
}

recipe take_wax_off {
  for    wood
  safety gloves, ventilate, no_ignition
  step   dewax with mineral_spirits #! heat-near-vapour
  step   clean with soap
}

job lid {
  piece box
  in    cellar
  apply take_wax_off to lid
}
`,
    },
  ],
  passing: [
    {
      title: "A radiator that does not glow",
      text: `recipe rods {
  for    metal
  safety ventilate, no_ignition
  note   "Warm the rods on a radiator that isn't glowing; no torch near the wax."
  layer  paste_wax, by cloth
  wait   until cured
}
`,
    },
    {
      title: "A waterborne clear by the radiator, and words that forbid it",
      text: `recipe table {
  for   wood
  note  "Never dry it by the stove."
  note  "Leave the radiator on low and the table near the radiator."
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
    {
      title: "The shop says that it has no source of ignition",
      text: `piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing paste wax
  }
}

shop cellar "Cellar beside the boiler room" {
  air      21 C, 50 % RH
  ignition none
}

recipe take_wax_off {
  for    wood
  safety gloves, ventilate, no_ignition
  step   dewax with mineral_spirits
  step   clean with soap
}

job lid {
  piece box
  in    cellar
  apply take_wax_off to lid
}
`,
    },
  ],
  looksAt: ({ kind, isSpoken }) => isSpoken || kind === "job",
  checks: { onRun: check },
};

function check({ run, report }: RunContext): void {
  const burning = firstBurning(run);
  if (!burning) return;
  for (const action of toldLines(run)) {
    const text = textOf(action) ?? "";
    // What is warmed on a stove is `open-flame`'s, what is burned in one `waste-burned`'s.
    if (warmsSomethingFlammable(text) || saidOnLine(action, BURNED_WASTE) !== undefined) continue;
    if (saidOnLine(action, SPARKS) !== undefined) report(action, sparking());
    if (clauseNearHeat(text) === undefined && saidOnLine(action, HEATED) === undefined) continue;
    // What a step in water is dried with is put away before the first can is opened.
    if (isWaterStep(action) && action.index < burning.action.index) continue;
    report(action, {
      headline: t`Near something hot while a flammable material is used`,
      why:
        burns(burning.use) === "vapour"
          ? t`The vapour of ${useName(burning.use)} can be lit.`
          : t`Cloths with ${useName(burning.use)} heat up by themselves, and warmth helps them.`,
      remedy: dryElsewhere(),
    });
  }
  const hot = hotPlaceOf(run);
  if (hot)
    report(burning.action, {
      headline: t`The shop's own words name something hot`,
      why:
        burns(burning.use) === "vapour"
          ? t`\`${run.shop!.name}\` says "${hot}" and states no \`ignition\`; ${useName(burning.use)} gives off a vapour that can be lit.`
          : t`\`${run.shop!.name}\` says "${hot}" and states no \`ignition\`; ${useName(burning.use)} leaves cloths that heat up by themselves.`,
      remedy: t`Put it out and let it cool before the can is opened, and state the shop's \`ignition\`, also where it is none.`,
    });
}

const isWaterStep = (action: Action): boolean =>
  action.op === "step" &&
  ["clean", "dampen"].includes(action.verb) &&
  ["water", "none"].includes(action.use?.material?.family?.carrier ?? "water");

const dryElsewhere = (): string =>
  t`Let it dry in warm moving air, away from anything that glows, burns or is hot to the hand, and change this note.`;

/** Something that glows or burns is kept going in the room, or the work is dried by it. */
const HEATED = phrases(
  "keep|leave|run|turn|switch|start|light|stoke|have|let|stay .. HEATER ... on|going|running|lit|burning|full|overnight|up|low|high|alight|in|dries|dry !off !out !cool !cold !down !shut !outdoors !another !next",
  "keep|leave .. stove|HEATER|fire lit|on|in|going|burning|alight !off !out !another",
  "pilot|pilot_light ... stay|on|lit|burning|burns !off !out !another",
  "leave .. pilot|pilot_light .. on|lit|burning|alone !off",
  "dry|dries|dried|drying|speed*|blow|cure*|bake|baked|baking|force|forced|harden|set|hurry|warm|flash ... HEATER !off !out",
  "aim|point|direct|turn|blow .. HEATER .. at|on|onto|towards .. top|it|piece|coat|table|chair|door|wet|surface !off",
  "HEATER ... hurry|hurries|along|speed* !off !out !no !another !shut",
  "HEATER ... dries|dry|drying|set|cure*|bake*|speed*|faster|quicker|harden* !off !out !no !another !shut",
  "run|running|fire|stoke|light|turn_on|switch_on HEATER ... dry|dries|drying|coat|varnish*|lacquer*|booth|room|shop|brush|spray* !off !out !before !another !first",
  "hang|prop|stand|put|set|place|lean|pull|move|bring|lay|pile|rest|park|push .. on|over|near|by|beside|against|round|around|before|next|close|front|in|above|into .. HEATER !cured !off !out !cold !away !tin !can",
  "bake|baked|baking .. oven|kiln|sun_bed",
  "freezer|fridge|clothes_dryer|tumble_dryer|furnace|boiler|water_heater ... run|running|hum*|kick*|stay|keep|stands|little_flame|same_corner|same_room !off !out !not !another !next",
  "little|small|open flame ... stands|same|corner|room|near|matter|mind|harm",
);

/** Motors, lamps and leads near wet lacquer, spray mist or thinner: each can throw the spark. */
const SPARKS = phrases(
  "box_fan|desk_fan|floor_fan|table_fan|ordinary_fan|household_fan|house_fan|window_fan|kitchen_fan|bathroom_fan|ceiling_fan|cooker_hood|range_hood|old_fan|stand_fan|pedestal_fan ... spray*|overspray|mist|fumes|vapour|lacquer|thinner !proof !rated !off !brush*",
  "spray* ... into|past|towards|through|beside|behind|before|at .. fan|fan_motor|extractor_fan !proof !rated",
  "fan .. beside|next|near|close|behind .. you|gun|piece|work ... spray*|overspray|mist|lacquer !proof !rated",
  "halogen|work_light|work_lamp|inspection_lamp|bare_bulb|lead_lamp|floodlight|flood_light|desk_lamp|spotlight|hot_lamp|lamp|bulb ... close|near|over|beside|next|right|inches .. wet|lacquer|varnish|spray*|thinner|coat|fumes|stripper !led !away !never !look",
  "extension_cord|extension_lead|extension_cable|extension|power_strip|cable_drum|multi-plug|adaptor .. wet|lacquer|thinner|drips|puddle|spray*|stripper|under|over !unplug* !outside !away !proof",
  "stir|mix|beat|whip .. lacquer|varnish|thinner|oil|spirits|shellac|paint ... drill|mixer|whisk !air",
  "grinder|angle_grinder|welder|welding|soldering|soldering_iron|cut-off_saw ... beside|near|next|same|while|close !away !another !not !before",
);

const sparking = () => ({
  headline: t`A motor, lamp or lead near vapour or mist can light it`,
  why: t`The motor of an ordinary fan, drill or tool sparks, a hot bulb breaks, and a plug pulled out arcs.`,
  remedy: t`Keep them out of the room while it is open and wet, or use ones that are approved for flammable vapour; air the room by open windows.`,
});

/** What the shop's title or description names, where its `ignition` is not stated. */
function hotPlaceOf({ shop }: SurfaceRun): string | undefined {
  if (!shop || shop.ignition.origin === "stated") return undefined;
  return [shop.title ?? "", shop.docs].find((text) => clauseNaming(text, HOT_PLACE) !== undefined);
}
