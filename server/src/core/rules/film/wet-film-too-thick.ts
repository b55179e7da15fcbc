/**
 * A wet film far above the label's spreading rate: it runs on uprights and sags on edges, and skins over before the
 * solvent below has left. Silent where the dry film is too thick as well, which `film-too-thick` says.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { filmText } from "../../measure/figures.ts";
import { wetFilmUm } from "../../quantities/film.ts";
import { stackOf } from "../film-stack.ts";
import type { TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

/** How many times the label's wet film a coat may have. */
const MOST_TIMES = 2;

/** What has no carrier, such as epoxy, loses nothing and hardens through: it is poured as thick as its film may be. */
const mostUm = (labelUm: number, { carrier, filmRangeUm }: Family): number =>
  Math.max(labelUm * MOST_TIMES, carrier === "none" ? (filmRangeUm?.[1] ?? 0) : 0);

export const wetFilmTooThick: TradeRule = {
  id: "wet-film-too-thick",
  group: "film",
  severity: "warning",
  docs: {
    summary: "A coat is put on wet at more than twice the thickness of the label's spreading rate.",
    why: "So thick a wet film runs and sags, and skins over before what is below has dried.",
    remedy: "Put it on in two coats, each near the label's rate.",
    sources: ["common practice, no source"],
  },
  failing: [
    {
      title: "Three times the label's film",
      text: `material hall_clear {
  family waterborne polyurethane
  covers 10 m2/L
}

recipe flooded {
  layer hall_clear, wet 300 um #! wet-film-too-thick
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Twice the label's film",
      text: `material hall_clear {
  family waterborne polyurethane
  covers 10 m2/L
}

recipe generous {
  layer hall_clear, wet 200 um
  wait  until cured
}
`,
    },
    {
      title: "A flood coat of epoxy over a thin one that sealed the pores",
      text: `material bar_resin {
  family epoxy coating
  covers 8 m2/L
}

recipe poured {
  safety dust_mask, gloves, eye_protection, ventilate
  layer  bar_resin, wet 125 um
  wait   until recoat
  step   sand 220
  step   dust
  layer  bar_resin, wet 1000 um
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, after, report }) => {
      const material = action.use.material;
      const covers = material?.covers;
      const thickest = material?.family?.filmRangeUm?.[1];
      if (!material?.family?.buildsFilm || action.wiped || !covers || action.wetUm === undefined) return;
      const label = wetFilmUm(covers.value);
      if (action.wetUm <= mostUm(label, material.family) + 1e-6) return;
      if (thickest !== undefined && (stackOf(after)?.um ?? 0) > thickest) return;
      const tail = action.syntax.tails.find((t) => t.kind === "wet");
      report({
        headline: t`${useName(action.use)} goes on too thick: ${filmText(action.wetUm)} wet`,
        why: t`Its coverage makes ${filmText(label)}; a wet film that thick runs and sags, and skins over before it has dried below.`,
        remedy: t`Put it on in two or more coats, each near the label's rate.`,
        ...(tail ? { at: { ...action.place, span: tail.span } } : {}),
        related: covers.place ? [related(covers.place, t`The label's spreading rate`)] : [],
      });
    },
  },
};
