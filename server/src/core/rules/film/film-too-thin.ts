/**
 * A last film that is thinner, all its coats together, than the thinnest coat of its family that closes: thinned too
 * far, or spread too far. Washcoats and sealers under other layers are meant to be thin and stay silent, and so does
 * a thin coat that freshens an old film of its kind.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { filmText } from "../../measure/figures.ts";
import { isPolished, LAYDOWNS } from "../../quantities/laydown.ts";
import { isFilm } from "../../surface/state.ts";
import { type FilmStack, stackOf } from "../film-stack.ts";
import type { TradeRule } from "../rule.ts";
import { coatName } from "../texts.ts";

export const filmTooThin: TradeRule = {
  id: "film-too-thin",
  group: "film",
  severity: "warning",
  docs: {
    summary: "The last film is thinner than a single sound coat of its family.",
    why: "A film that thin does not close: water gets through it, and it wears off at the first rubbing.",
    remedy: "Add coats, thin less, or spread less far.",
    sources: [
      "common practice, no source: the film range of each family, and that a padded coat of shellac closes at a quarter of a brushed one",
    ],
  },
  failing: [
    {
      title: "One coat, spread far too thin",
      text: `recipe misted {
  layer waterborne_polyurethane, wet 30 um #! film-too-thin
  wait  until cured
}
`,
    },
    {
      title: "One coat of varnish with three parts of spirits",
      text: `recipe thin_varnish {
  safety ventilate, no_ignition, wet_rags, gloves
  layer  oil_varnish, thinned 1:3 with mineral_spirits #! film-too-thin
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A coat on a part alone need not close a film",
      text: `recipe spots {
  for    wood
  safety ventilate, no_ignition, gloves
  layer  dewaxed_shellac, only "knots"
  wait   until cured
}
`,
    },
    {
      title: "A thinned first coat under full ones",
      text: `recipe varnished {
  safety ventilate, no_ignition, wet_rags, gloves, dust_mask
  layer  oil_varnish, thinned 1:3 with mineral_spirits
  wait   until recoat
  step   sand 220
  step   dust
  layer  oil_varnish x 2 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   until cured
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      // What another recipe or job goes on from is not the last film yet.
      if (run.continued) return;
      const stack = stackOf(run.final);
      const thinnest = stack && thinnestUm(stack);
      if (!run.final.certain || !stack || stack.open || thinnest === undefined) return;
      // What goes on where it is needed, or on a part, is no film that must close.
      if (stack.coats.every(({ action }) => action?.ifNeeded)) return;
      if (!["clear", "paint"].includes(stack.family.role) || sureUm(stack) >= thinnest - 1e-6) return;
      const below = run.final.layers[run.final.layers.indexOf(stack.coats[0]!) - 1];
      if (below && below.origin !== "new" && isFilm(below)) return;
      const coat = stack.coats.at(-1)!;
      report(coat.action!, {
        headline: t`The film of ${coatName(coat)} is too thin: ${filmText(sureUm(stack))}`,
        why: t`One sound coat of ${translated(stack.family.name)} has about ${filmText(thinnest)}; a thinner film does not close and wears through at the first rubbing.`,
        remedy: t`Add another coat, thin it less, or do not spread it so far.`,
      });
    },
  },
};

/** Dry film of one sound coat. A coat that is rubbed on closes at the share that a polisher's pad lays. */
function thinnestUm({ family, coats }: FilmStack): number | undefined {
  const brushed = family.filmRangeUm?.[0];
  const polished = coats.every(({ action }) => action && isPolished(family, action.method));
  return brushed !== undefined && polished ? brushed * LAYDOWNS.padded.share : brushed;
}

/** Of `x 2 to 3` only two coats are sure to go on. */
const sureUm = ({ um, coats }: FilmStack): number =>
  coats.reduce((sure, { action, filmUm = 0 }) => sure - (action?.ifNeeded ? filmUm : 0), um);
