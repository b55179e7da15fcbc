/**
 * Scrapings, painted wood, rags and tins put on a fire.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { TradeRule } from "../rule.ts";
import { reportOnLines } from "../told-lines.ts";
import { BURNED_WASTE } from "../work-words.ts";

export const wasteBurned: TradeRule = {
  id: "waste-burned",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A note or a step tells to burn scrapings, painted or varnished wood, rags, tins or other waste of finishing.",
    why: "Old paint gives off lead and other poisons as fume and leaves them in the ash; rags and tins flare up or burst.",
    remedy: "Collect it in closed, labelled cans, and take it where your local waste service says.",
    sources: [
      "US EPA, Burn Wise: never burn painted or treated wood (from memory, confidence high)",
      "40 CFR 745.85(a)(5) on waste of work on lead paint, for housing, by analogy (from memory)",
    ],
  },
  failing: [
    {
      title: "Scrapings and old boards for the stove",
      text: `recipe scraped {
  for  wood
  note "Burn the scrapings in the stove." #! waste-burned
  note "The old painted boards make good firewood." #! waste-burned
  step scrape
  step clean with soap
}
`,
    },
  ],
  passing: [
    {
      title: "Forbidden, and clean wood",
      text: `recipe scraped {
  for  wood
  note "Never burn the scrapings: they go to the depot in a sealed bag."
  note "Offcuts of bare beech are kindling."
  step scrape
  step clean with soap
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onRun: (ctx) =>
      reportOnLines(ctx, BURNED_WASTE, {
        headline: t`Waste of finishing does not belong on a fire`,
        why: t`Old paint goes up as poisonous fume, lead included, and stays in the ash; rags and tins flare up or burst.`,
        remedy: t`Collect it in closed, labelled cans, and take it where your local waste service says.`,
      }),
  },
};
