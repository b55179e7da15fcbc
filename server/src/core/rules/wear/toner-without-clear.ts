/**
 * A toner lies on the film as a thin colour and needs a clear above it; wax or oil does not hold it. A toner with
 * nothing above it at all is an `unprotected-layer`.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { actionOf } from "../coat-queries.ts";
import { clearBetween } from "../remedy-fixes.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, layerBelow } from "../texts.ts";

export const tonerWithoutClear: TradeRule = {
  id: "toner-without-clear",
  group: "wear",
  severity: "warning",
  docs: {
    summary: "A toner gets wax or oil over it but no clear.",
    why: "A toner lies on the film and not in the wood: wax dissolves or drags it, and it rubs through at the edges.",
    remedy: "Put at least one coat of a clear over the toner, and wax over that.",
    sources: ["common practice, no source"],
  },
  failing: [
    {
      title: "Wax straight over the toner",
      text: `recipe darker {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_varnish
  wait   until recoat
  layer  oil_stain, as toner #! toner-without-clear
  wait   until cured
  layer  paste_wax
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A clear between the toner and the wax",
      text: `recipe darker {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_varnish
  wait   until recoat
  layer  oil_stain, as toner
  wait   until recoat
  layer  oil_varnish
  wait   until cured
  layer  paste_wax
  wait   until cured
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      if (run.continued || !run.final.certain) return;
      const { layers } = run.final;
      const index = layers.findLastIndex((coat) => coat.toner);
      const toner = layers[index];
      const above = layers.slice(index + 1);
      const action = toner && actionOf(run, toner);
      if (toner?.origin !== "new" || !action || above.some((coat) => !coat.family)) return;
      const soft = above.find(({ family }) => family?.role === "wax" || family?.role === "oil");
      const holds = above.some(({ family }) => family?.role === "clear" || family?.role === "paint");
      if (!soft || holds) return;
      report(action, {
        headline: t`The toner ${coatName(toner)} gets no clear over it`,
        why: t`A toner lies on the film and not in the wood: ${coatName(soft)} drags it, and it soon rubs through.`,
        remedy: t`Put a coat of a clear over the toner first.`,
        related: [layerBelow(soft)],
        fixes:
          toner.family && above[0] === soft && soft.action ? clearBetween(toner.family, soft.action) : [],
      });
    },
  },
};
