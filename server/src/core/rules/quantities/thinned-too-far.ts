/**
 * More thinner than the label allows. Labels leave open whether `up to 10 %` is a share of the material (10:1) or of
 * the mix (9:1); the rule takes the wider reading, so that it speaks only where both are exceeded.
 */
import { formatNumber } from "../../measure/format-amount.ts";
import type { TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

export const thinnedTooFar: TradeRule = {
  id: "thinned-too-far",
  group: "quantities",
  severity: "warning",
  docs: {
    summary: "A layer is thinned further than the material's label allows.",
    why: "Past its limit the binder no longer closes into a film: waterborne clears turn weak and cloudy, lacquers run, and the sheen changes.",
    remedy: "Thin no further than the label says. 10 % is 100 mL to a litre, or 10:1.",
    sources: ["common practice, no source: the label's limit, by volume of thinner to volume of material"],
  },
  failing: [
    {
      title: "One part of water to four",
      text: `material hall_clear {
  family waterborne polyurethane
  thin   water, up to 10 %
}

recipe two_coats {
  layer hall_clear, thinned 4:1 with water #! thinned-too-far
  wait  until recoat
  layer hall_clear
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A tenth of the mix at most",
      text: `material hall_clear {
  family waterborne polyurethane
  thin   water, up to 10 %
}

recipe two_coats {
  layer hall_clear x 2, thinned 9:1 with water {
    wait until recoat
  }
  wait  until cured
}
`,
    },
    {
      title: "A label without a limit",
      text: `recipe sealed {
  safety ventilate, no_ignition, gloves
  layer  dewaxed_shellac, thinned 1:1 with alcohol
  wait   until recoat
  layer  dewaxed_shellac
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, report }) => {
      const material = action.use.material;
      const limit = material?.thin?.value.upTo;
      if (!action.thinned || limit === undefined) return;
      const { a, b } = action.thinned;
      if ((100 * b) / (a + b) <= limit + 1e-6) return;
      const percent = (100 * b) / a;
      const tail = action.syntax.tails.find((t) => t.kind === "thinned");
      const ratio = tail?.kind === "thinned" ? tail.ratio : undefined;
      report({
        headline: `Thinned by ${formatNumber(percent, 0)} %, and ${formatNumber(limit, 1)} % is the most it takes`,
        why: `${useName(action.use)} is thinned ${action.thinned.a}:${action.thinned.b}. Thinned past its limit it runs, dries weak or cloudy, and leaves hardly any film.`,
        remedy: `Use at most ${formatNumber(limit * 10, 0)} mL of thinner to a litre.`,
        related: material?.thin?.place
          ? [related(material.thin.place, "How far the label lets it be thinned")]
          : [],
        ...(ratio ? { at: { ...action.place, span: ratio.span } } : {}),
      });
    },
  },
};
