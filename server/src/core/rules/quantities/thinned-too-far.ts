/**
 * A limit that the label does not state is only common practice for its family, and makes a hint.
 *
 * More thinner than the label allows. Labels leave open whether `up to 10 %` is a share of the material (10:1) or of
 * the mix (9:1); the rule takes the wider reading, so that it speaks only where both are exceeded.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { percentText } from "../../measure/figures.ts";
import { figuresIn } from "../../measure/shown-figures.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const thinnedTooFar: TradeRule = {
  id: "thinned-too-far",
  group: "quantities",
  severity: "warning",
  docs: {
    summary:
      "A layer is thinned further than the material's label allows (or, a hint, than is usual for its family).",
    why: "Past its limit the binder no longer closes into a film: waterborne clears turn weak and cloudy, lacquers run, and the sheen changes.",
    remedy: "Thin no further than the label says. 10 % is 100 mL to a litre, or 10:1.",
    sources: [
      "the label's limit, by volume of thinner to volume of material; the usual limit of a family: common practice, no source",
    ],
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
    {
      title: "The label states no limit: a hint from common practice",
      text: `recipe two_coats {
  layer waterborne_polyurethane, thinned 4:1 with water #! thinned-too-far
  wait  until recoat
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
    {
      title: "Paint with as much water in every coat, which makes it more than a wash: a hint",
      text: `recipe slats {
  layer acrylic_paint x 2, thinned 1:1 with water { #! thinned-too-far
    wait until recoat
  }
  wait until cured
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
    onLayer: ({ action, units, report }) => {
      const material = action.use.material;
      const limit = material?.thin?.value.upTo;
      if (!action.thinned || limit === undefined) return;
      const { a, b } = action.thinned;
      const percent = (100 * b) / a;
      // Labels mean the material or the mixture, and seldom say which; above 100 % it can only be the material.
      const counted = limit < 100 ? (100 * b) / (a + b) : percent;
      if (counted <= limit + 1e-6) return;
      const tail = action.syntax.tails.find((t) => t.kind === "thinned");
      const ratio = tail?.kind === "thinned" ? tail.ratio : undefined;
      const stated = material?.thin?.place !== undefined;
      if (!stated && isWash(action)) return;
      const { part, whole } = figuresIn(units).mixedIn(limit / 100);
      report({
        ...(stated ? {} : { severity: "hint" as const }),
        headline: stated
          ? t`\`${action.use.name}\` is thinned ${percentText(percent)}; its label allows ${percentText(limit)}`
          : t`\`${action.use.name}\` is thinned ${percentText(percent)}, and ${percentText(limit)} is usual`,
        why: t`Thinned past its limit it runs, dries weak or cloudy, and leaves hardly any film.`,
        remedy: stated
          ? t`Use at most ${part} of thinner to ${whole}.`
          : t`Keep to the label; where it states no limit, use at most ${part} to ${whole}.`,
        related: material?.thin?.place
          ? [related(material.thin.place, t`How far the label lets it be thinned`)]
          : [],
        ...(ratio ? { at: { ...action.place, span: ratio.span } } : {}),
      });
    },
  },
};

/**
 * Paint that is wiped off, or let down with half its volume or more, is a wash on purpose; not so when it goes on coat
 * after coat.
 */
const isWash = ({ use, wiped, thinned, coat }: LayerAction): boolean =>
  use.material?.family?.role === "paint" &&
  (Boolean(wiped) || (thinned !== undefined && thinned.b / thinned.a >= 1 / 2 && coat === 1));
