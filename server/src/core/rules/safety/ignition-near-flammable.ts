/**
 * A flammable liquid in a shop with a flame, a glowing heater or sparks.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { canLight, IGNITION_RULE_SOURCE, ignitionSource } from "../../knowledge/ignition.ts";
import { figuresIn, type UnitSystem } from "../../measure/shown-figures.ts";
import { placeKey, sameDeclaration } from "../../place.ts";
import type { Action, MaterialUse } from "../../surface/actions.ts";
import { materialsInTheCold } from "../../surface/cold-layers.ts";
import { asOtherShop, safeRoom } from "../group-bad-air.ts";
import { MISSING_DUTIES } from "../group-missing-duties.ts";
import { freesLead, leadReached } from "../lead-caution.ts";
import { usesOf } from "../material-uses.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { fitting, related, useName } from "../texts.ts";

export const ignitionNearFlammable: TradeRule = {
  id: "ignition-near-flammable",
  group: "safety",
  severity: "error",
  docs: {
    summary: "A flammable liquid is used in a shop that has a source of ignition.",
    why: "The vapour of a liquid of category 1 to 3 can be lit at the air of a shop; it is heavier than air and creeps along the floor to a pilot light or a heater.",
    remedy:
      "Put the flame or heater out and let it cool before the can is opened, or do this part elsewhere, and say `ignition none` once that is so. Stating `no_ignition` does not take the heater out of the shop. Distances and quantities are for the safety data sheet and local fire codes.",
    sources: [IGNITION_RULE_SOURCE, "29 CFR 1910.107(c)(2) near spraying (from memory, confidence high)"],
  },
  failing: [
    {
      title: "Wax taken off with mineral spirits beside a heater",
      text: `recipe take_wax_off {
  for    wood
  safety gloves, ventilate, no_ignition
  step   dewax with mineral_spirits #! ignition-near-flammable
  step   clean with soap
}

piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing paste wax
  }
}

shop shed {
  air      21 C, 50 % RH
  ignition heater
}

job lid {
  piece box
  in    shed
  apply take_wax_off to lid
}
`,
    },
    {
      title: "A flash point of 60 C is category 3 still",
      text: `material low_odour {
  family mineral spirits
  flash  60 C
}

recipe take_wax_off {
  for    wood
  safety gloves, ventilate, no_ignition
  step   dewax with low_odour #! ignition-near-flammable
  step   clean with soap
}

piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing paste wax
  }
}

shop cellar {
  air      21 C, 50 % RH
  ignition pilot light
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
      title: "No source of ignition",
      text: `recipe take_wax_off {
  for    wood
  safety gloves, ventilate, no_ignition
  step   dewax with mineral_spirits
  step   clean with soap
}

piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing paste wax
  }
}

shop shed {
  air      21 C, 50 % RH
  ignition none
}

job lid {
  piece box
  in    shed
  apply take_wax_off to lid
}
`,
    },
    {
      title: "A flash point above 60 C, and a waterborne clear, beside a heater",
      text: `material high_flash {
  family mineral spirits
  flash  61 C
}

recipe finish {
  for    wood
  safety gloves, ventilate, no_ignition, dust_mask
  step   dewax with high_flash
  step   clean with soap
  step   sand 150, 220
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}

piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing waterborne polyurethane, paste wax
  }
}

shop shed {
  air      21 C, 50 % RH
  ignition heater
}

job lid {
  piece box
  in    shed
  apply finish to lid
}
`,
    },
  ],
  looksAt: ({ kind }) => kind === "job",
  checks: { onStep: check, onLayer: check },
};

function check({ action, before, run, units, report }: MomentContext): void {
  const shop = run.shop;
  if (!shop) return;
  const use = usesOf(action).find(({ material }) =>
    canLight(shop.ignition.value, flashOf(material), material?.family?.boils),
  );
  if (!use) return;
  const { ignition } = shop;
  const place = ignition.place;
  const putOut = translated(ignitionSource(ignition.value)!.putOut);
  const source = translated(ignition.value);
  const there = asOtherShop(freesLead(run));
  // What a step takes off may hold lead, so it is not carried to another room.
  const stays = action.op === "step" && leadReached(run, action, before) !== undefined;
  const away = stays
    ? t`${putOut} before a can is opened. Do not take this work to a room that people use: what it takes off may hold lead`
    : // Putting out the heater of a shop that must be warmed for this work is no way.
      materialsInTheCold(run).length > 0
      ? t`Do this in ${safeRoom()}${there}`
      : t`${putOut} before a can is opened, or work in ${safeRoom()}${there}`;
  const inShop = t`The shop's ${source} can light the vapour`;
  const briefly = t`The ${source} can light vapour`;
  report({
    headline: fitting([t`The shop's ${source} can light the vapour of \`${use.name}\``, inShop]),
    why: t`${flashText(use, units)}. Its vapour is heavier than air and can creep along the floor of \`${shop.name}\` to the flame or the spark.`,
    part: {
      group: MISSING_DUTIES,
      names: ["no_ignition"],
      reason: t`${flashText(use, units)}, and its vapour can creep along the floor of \`${shop.name}\` to the ${source}`,
      joinsEveryJob: true,
      briefly,
    },
    remedy: t`${away}. The safety data sheet and local fire codes say how far from a flame is far enough.`,
    ...(stays ? {} : { tellsRoom: placeKey(shop.namePlace) }),
    again: {
      key: `fire in shop ${shop.name} of ${shop.namePlace.file}${stays ? ", not to be carried" : ""}`,
      of: `\`${use.name}\``,
      remedy: t`keep it from the ${source} as well.`,
      why: `${flashPoint(use, units)}.`,
    },
    ...(atOf(action, use) ? { at: use.place } : {}),
    related: place ? [related(place, t`The source of ignition`)] : [],
  });
}

/** The label's figure is a fact of this material, its family's only a typical one. */
const flashPoint = (use: MaterialUse, units: UnitSystem): string =>
  use.material?.flash?.origin === "stated"
    ? t`${useName(use)} can be lit from ${figuresIn(units).degrees(flashOf(use.material)!)} on (its flash point)`
    : t`${useName(use)} can be lit from about ${figuresIn(units).degrees(flashOf(use.material)!)} on (a typical flash point; see its safety data sheet)`;

const flashText = (use: MaterialUse, units: UnitSystem): string =>
  t`${flashPoint(use, units)}, as on a warmed rag or spill`;

const flashOf = (material: MaterialUse["material"]): number | undefined => material?.flash?.value;

/** A hardener is named by its material's declaration, not by this line. */
const atOf = (action: Action, use: MaterialUse): boolean => sameDeclaration(action.place, use.place);
