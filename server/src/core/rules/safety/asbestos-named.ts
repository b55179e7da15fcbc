/**
 * Asbestos in old fillers and boards: sanded or scraped, its fibres are in the air for days.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { isA } from "../../knowledge/chemicals.ts";
import { reportChemicals } from "../chemical-uses.ts";
import type { TradeRule } from "../rule.ts";

export const asbestosNamed: TradeRule = {
  id: "asbestos-named",
  group: "safety",
  severity: "error",
  voids: "settle the asbestos first",
  docs: {
    summary: "The words of a recipe or of a material it uses name asbestos as something that is there.",
    why: "Old fillers, patching compounds and heat boards can hold it. Sanding, scraping and sweeping throw fibres that cause cancer decades later, and no household vacuum cleaner holds them.",
    remedy:
      "Leave it alone, keep others out and have it tested. Local codes say who may take it off. Consumer patching compounds with it are banned (16 CFR 1304).",
    sources: ["16 CFR 1304", "29 CFR 1926.1101"],
  },
  failing: [
    {
      title: "An old filler, filled and sanded",
      text: `## Old stock, with asbestos fibre.
material old_filler "Patching powder" {
  family wood filler
}

recipe patched {
  for    wood
  safety dust_mask
  step   fill with old_filler, uses 30 mL #! asbestos-named
  wait   24 h
  step   sand 120, 150, 180
  step   dust
  layer  waterborne_acrylic
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A filler without it",
      text: `## Asbestos-free.
material filler "Patching powder" {
  family wood filler
}

recipe patched {
  for    wood
  safety dust_mask
  step   fill with filler, uses 30 mL
  wait   24 h
  step   sand 120, 150, 180
  step   dust
  layer  waterborne_acrylic
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ namesChemicals }) => namesChemicals,
  checks: {
    onRun: (ctx) =>
      reportChemicals(
        ctx,
        (row) => isA(row, "asbestos"),
        ({ row, by }) => ({
          ...(by === "line" ? { headline: t`Asbestos is named here` } : {}),
          why: translated(row.harm),
          remedy: `${translated(row.instead!)}.`,
        }),
      ),
  },
};
