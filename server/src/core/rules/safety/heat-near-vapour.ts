/**
 * Solvents and oily rags near a stove, a boiler or a radiator, where only the recipe's words tell of it.
 */
import { canLight } from "../../knowledge/ignition.ts";
import { labelSays } from "../../knowledge/label-words.ts";
import type { MaterialUse } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { hasSelfHeatingRags } from "../duty-check.ts";
import { usesOf } from "../material-uses.ts";
import type { RunContext, TradeRule } from "../rule.ts";
import { textOf } from "../spoken-words.ts";
import { useName } from "../texts.ts";
import { clauseNaming, clauseNearHeat, HOT_PLACE, warmsSomethingFlammable } from "../work-words.ts";

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
  checks: { onRun: check },
};

function check({ run, report }: RunContext): void {
  const burning = run.moments.flatMap(({ action }) => {
    const use = usesOf(action).find(burns);
    return use ? [{ action, use }] : [];
  })[0];
  if (!burning) return;
  for (const { action } of run.moments) {
    const text = textOf(action) ?? "";
    // What is warmed on a stove is `open-flame`'s.
    if (clauseNearHeat(text) === undefined || warmsSomethingFlammable(text)) continue;
    report(action, {
      headline: "Near something hot while a flammable material is used",
      why: `${burns(burning.use) === "vapour" ? `The vapour of ${useName(burning.use)} can be lit` : `Cloths with ${useName(burning.use)} heat up by themselves, and warmth helps them`}.`,
      remedy: REMEDY,
    });
  }
  const hot = hotPlaceOf(run);
  if (hot)
    report(burning.action, {
      headline: "The shop's own words name something hot",
      why: `\`${run.shop!.name}\` says "${hot}" and states no \`ignition\`; ${useName(burning.use)} ${burns(burning.use) === "vapour" ? "gives off a vapour that can be lit" : "leaves cloths that heat up by themselves"}.`,
      remedy:
        "Put it out and let it cool before the can is opened, and state the shop's `ignition`, also where it is none.",
    });
}

const REMEDY =
  "Let it dry in warm moving air, away from anything that glows, burns or is hot to the hand, and change this note.";

/** A liquid whose vapour can be lit, or an oil whose cloths heat up. */
function burns({ material }: MaterialUse): "vapour" | "cloths" | undefined {
  if (!material?.family) return undefined;
  const lights = canLight("heater", material.flash?.value, material.family.boils);
  if (lights || labelSays(material, "flammable") !== undefined) return "vapour";
  return hasSelfHeatingRags(material) ? "cloths" : undefined;
}

/** What the shop's title or description names, where its `ignition` is not stated. */
function hotPlaceOf({ shop }: SurfaceRun): string | undefined {
  if (!shop || shop.ignition.origin === "stated") return undefined;
  return [shop.title ?? "", shop.docs].find((text) => clauseNaming(text, HOT_PLACE) !== undefined);
}
