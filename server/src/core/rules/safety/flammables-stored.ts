/**
 * More flammable liquid for one job than a cabinet, or a room without one, may hold.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { flammableCategory } from "../../knowledge/flammable.ts";
import { formatNumber } from "../../measure/format-amount.ts";
import { figuresIn } from "../../measure/shown-figures.ts";
import { andList } from "../../model/suggest.ts";
import type { JobContext, TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

/** Litres in a US gallon (231 in3, exact). */
const GALLON_L = 3.785411784;
/** Category 1 to 3 in one storage cabinet, gallons: 29 CFR 1910.106(d)(3)(i). */
const CABINET_GAL = 60;
/** Outside a cabinet or storage room in one fire area, gallons: 29 CFR 1910.106(e)(2)(ii)(b). */
const OUTSIDE_GAL = 120;
const OUTSIDE_CATEGORY_1_GAL = 25;

const JOB = (litres: string) => `material lacquer {
  family  nitrocellulose lacquer
  on_hand ${litres}
  packs   20 L for 140.00
}

recipe lacquered {
  for    wood
  safety vapour_respirator, gloves, eye_protection, no_ignition, ventilate 100 air changes/h
  layer  lacquer, by hvlp
  wait   until cured
}

piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
    wear  light
  }
}
`;

export const flammablesStored: TradeRule = {
  id: "flammables-stored",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "The cans of a job, those on hand and those to buy, hold more flammable liquid than a room may have outside a storage cabinet (a warning), or than one cabinet may hold (a hint).",
    why: "In a fire the cans burst and feed it. The less stands in the shop, the more time there is to get out.",
    remedy:
      "Buy what the next days take, and keep the rest in a flammable-liquid storage cabinet or room. Local fire codes decide, and most allow far less in a home or a public building.",
    sources: [
      "29 CFR 1910.106(d)(3)(i): at most 60 gal of category 1 to 3 in one storage cabinet",
      "29 CFR 1910.106(e)(2)(ii)(b): outside a cabinet or storage room at most 25 gal of category 1, and 120 gal of category 2 to 4 in containers",
    ],
  },
  failing: [
    {
      title: "500 L of lacquer in the shop",
      text: `${JOB("500 L")}
job lid { #! flammables-stored
  piece box
  apply lacquered to lid
}
`,
    },
    {
      title: "A hint: more than one cabinet holds",
      text: `${JOB("240 L")}
job lid { #! flammables-stored
  piece box
  apply lacquered to lid
}
`,
    },
  ],
  passing: [
    {
      title: "What one cabinet holds",
      text: `${JOB("200 L")}
job lid {
  piece box
  apply lacquered to lid
}
`,
    },
  ],
  checks: { onJob: check },
};

function check({ job, needs, totals, units, reportAt }: JobContext): void {
  const say = figuresIn(units);
  const bought = totals.materials.map(({ containers }) =>
    containers.reduce((sum, { litres, count }) => sum + litres * count, 0),
  );
  const stored = [...needs.values()].flatMap(({ material, onHand, litres }, index) => {
    const category = flammableCategory(material.flash?.value, material.family?.boils);
    const there = Math.max(litres, onHand + (bought[index] ?? 0));
    return category !== undefined && category <= 3 && there > 0 ? [{ material, category, there }] : [];
  });
  const sum = (rows: typeof stored): number => rows.reduce((all, { there }) => all + there, 0);
  const first = sum(stored.filter(({ category }) => category === 1));
  const all = sum(stored);
  const isOver = all > OUTSIDE_GAL * GALLON_L || first > OUTSIDE_CATEGORY_1_GAL * GALLON_L;
  if (!isOver && all <= CABINET_GAL * GALLON_L) return;
  const limit = first > OUTSIDE_CATEGORY_1_GAL * GALLON_L ? OUTSIDE_CATEGORY_1_GAL : OUTSIDE_GAL;
  const most = stored.toSorted((a, b) => b.there - a.there).slice(0, 3);
  reportAt(job.namePlace, {
    severity: isOver ? "warning" : "hint",
    headline: isOver
      ? t`${say.litres(all)} of flammable liquid is too much for a room`
      : t`${say.litres(all)} of flammable liquid is more than one cabinet holds`,
    why: `${andList(most.map(({ material, there }) => `\`${material.name}\` ${say.litres(there)}`))}. ${isOver ? t`Outside a cabinet or storage room, 29 CFR 1910.106 allows ${limit} gal (${formatNumber(limit * GALLON_L, 0)} L)` : t`One storage cabinet may hold ${CABINET_GAL} gal (${formatNumber(CABINET_GAL * GALLON_L, 0)} L) by 29 CFR 1910.106`}.`,
    remedy: t`Buy what the next days take, and keep the rest in flammable-liquid cabinets or a storage room; local fire codes decide, and most allow far less in a home or a public building.`,
    related: most.flatMap(({ material }) =>
      material.builtIn ? [] : [related(material.namePlace, t`One of these liquids`)],
    ),
  });
}
