/**
 * Paint heated until it smokes or chars, by whatever gun: bad air and a fire whatever its year. Where the piece tells of
 * old paint that may hold lead, `lead-unsafe-method` says so as an error.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { TradeRule } from "../rule.ts";
import { reportOnLines } from "../told-lines.ts";
import { SMOKED } from "../work-words.ts";

export const paintHeatedToSmoke: TradeRule = {
  id: "paint-heated-to-smoke",
  group: "safety",
  severity: "warning",
  secondaryTo: ["lead-unsafe-method", "open-flame"],
  docs: {
    summary: "A note or a step has paint or varnish heated until it smokes, browns or chars.",
    why: "What smokes is burning: the binder turns into fume that bites eyes and lungs, lead in old paint goes up with it, and dust and shavings behind a moulding catch fire.",
    remedy:
      "Heat only until the coat softens and wrinkles, keep the gun moving and below 450 C, and stop before it smokes; take the rest off with a stripper.",
    sources: [
      "24 CFR 35.140(c): no heat guns that char the paint, for housing, by analogy",
      "40 CFR 745.85(a)(3): heat guns at 1100 F or more are prohibited on lead paint, for housing, by analogy",
    ],
  },
  failing: [
    {
      title: "Held there till it smokes; nobody says how old the paint is",
      text: `recipe taken_off {
  for    wood
  safety gloves, ventilate, no_ignition, dust_mask
  step   scrape "hot-air gun, held in one place till the paint smokes" #! paint-heated-to-smoke
  note   "Heat the corners until they char, then it comes off easily." #! paint-heated-to-smoke
  step   clean with soap
}
`,
    },
  ],
  passing: [
    {
      title: "Until it softens, and never until it smokes",
      text: `recipe taken_off {
  for    wood
  safety gloves, ventilate, no_ignition, dust_mask
  step   scrape "heat gun at 350 C, until the paint wrinkles"
  note   "Stop long before the paint smokes. Never heat it until it chars."
  step   clean with soap
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onRun: (ctx) =>
      reportOnLines(ctx, SMOKED, {
        headline: t`The paint is heated until it smokes or chars`,
        why: t`What smokes is burning: its fume bites eyes and lungs, carries lead where the paint is old, and can catch fire.`,
        remedy: t`Heat only until the coat softens, keep the gun moving and below 450 C, and stop before it smokes.`,
      }),
  },
};
