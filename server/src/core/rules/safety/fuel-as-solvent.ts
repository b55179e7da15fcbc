/**
 * Petrol as a cleaner or thinner: a spark metres away is enough.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { chemicalsIn } from "../../knowledge/chemical-words.ts";
import { chemical, isA } from "../../knowledge/chemicals.ts";
import { mentionsOfLine, type NamedChemical, reportChemicals } from "../chemical-uses.ts";
import type { TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine } from "../spoken-words.ts";
import { toldLines } from "../told-lines.ts";

export const fuelAsSolvent: TradeRule = {
  id: "fuel-as-solvent",
  group: "safety",
  severity: "error",
  docs: {
    summary: "A recipe uses, or says to use, petrol (gasoline) to clean or to thin.",
    why: "It gives off vapour that catches fire far below freezing, creeps along the floor and flashes back from a pilot light or a switch metres away. It also holds benzene.",
    remedy: "Use mineral spirits, and keep fuel out of the shop.",
    sources: [
      "NIOSH Pocket Guide to Chemical Hazards (from memory, confidence high)",
      "flash point of gasoline about -43 °C, from memory, confidence high",
    ],
  },
  failing: [
    {
      title: "Wiped down with petrol",
      text: `recipe wiped {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "Wipe the top down with petrol before the first coat." #! fuel-as-solvent
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Petrol is the colour of a paint",
      text: `material petrol "Petrol enamel" {
  family acrylic paint
  covers 10 m2/L
}

recipe blue_legs {
  for   wood
  layer petrol
  wait  until cured
}
`,
    },
    {
      title: "A generator, and a shop rule",
      text: `recipe wiped {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "The petrol generator stands outside. No gasoline in the shop."
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ namesChemicals, isSpoken }) => namesChemicals || isSpoken,
  checks: {
    onRun: (ctx) => {
      reportChemicals(
        ctx,
        (row, named) => isA(row, "motor fuel") && !isColour(named),
        ({ row }) => ({ why: translated(row.harm), remedy: `${translated(row.instead!)}.` }),
      );
      for (const action of toldLines(ctx.run)) {
        const isNamed = mentionsOfLine(action).some((it) => isA(chemical(it.chemical), "motor fuel"));
        if (isNamed || saidOnLine(action, FUEL) === undefined) continue;
        const { harm, instead } = chemical("petrol");
        ctx.report(action, {
          headline: t`This line says to use motor fuel`,
          why: translated(harm),
          remedy: `${translated(instead!)}.`,
        });
      }
    },
  },
};

/** Petrol is a blue as well: in the name and title of what builds a film it says the colour. */
const isColour = ({ use }: NamedChemical): boolean =>
  use?.material.family?.buildsFilm === true &&
  !chemicalsIn(use.material.docs, "label").some((it) => isA(chemical(it.chemical), "motor fuel"));

/** "Gas" is petrol where it is on a rag or in a can, and may be what burns in a heater elsewhere. */
const FUEL = phrases(
  "wipe|wash|clean|degrease|thin|rinse|soak|scrub|dip|strip|rub ... with|in|of|using .. gas|fuel !ring !stove !heater !lamp !mask !bottle !torch",
  "gas|fuel .. on|from|out .. rag|cloth|mower|tank|chainsaw|car|pump|tin|can|lawnmower|jerrycan|motorbike|boat !leak !bottle",
  "rag|cloth|brush|pan|bowl|splash|drop|cup|bit of|with .. gas|fuel on|from|takes|gets|does|cleans|to",
  "gas|fuel takes|cleans|cuts|removes|strips|loosens",
);
