/**
 * An applicator that the wet material spoils: foam in lacquer thinner or acetone, natural bristle in water.
 *
 * What a brush is made of only a note can say, and only one that stands right above the layer and says it plainly.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { TEXTBOOK } from "../../knowledge/sources.ts";
import type { LayerAction, NoteAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { plainlySays } from "../spoken-words.ts";
import { related, replaceAt, useName } from "../texts.ts";

const NATURAL_BRISTLE = /\b(?:natural|china|hog['’]?s?|boar)[\s-]+(?:hair[\s-]+)?bristles?\b/iu;
const SYNTHETIC = /\b(?:synthetic|nylon|polyester)\b/iu;

export const applicatorAgainstCarrier: TradeRule = {
  id: "applicator-against-carrier",
  group: "layers",
  severity: "warning",
  docs: {
    summary:
      "A lacquer goes on by foam, which it dissolves, or a waterborne coat with natural bristle, which swells.",
    why: "Foam melts in lacquer thinner and acetone and leaves its crumbs in the film. Natural bristle takes up water, goes limp and leaves streaks.",
    remedy:
      "Take a bristle brush or a gun for lacquer, and synthetic bristle, foam or a pad for waterborne materials.",
    sources: [TEXTBOOK],
  },
  failing: [
    {
      title: "Lacquer by foam",
      text: `recipe lacquered {
  for    wood
  safety vapour_respirator, gloves, ventilate, no_ignition
  layer  nitrocellulose_lacquer, by foam #! applicator-against-carrier
  wait   until cured
}
`,
    },
    {
      title: "A waterborne clear with a China bristle brush",
      text: `recipe clear_coat {
  for   wood
  note  "Lay it off with a soft China bristle brush."
  layer waterborne_polyurethane #! applicator-against-carrier
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Foam for water, a brush for lacquer, and a warning",
      text: `recipe clear_coat {
  for    wood
  safety vapour_respirator, gloves, ventilate, no_ignition
  note   "Use no natural bristle here: it swells."
  layer  waterborne_polyurethane
  wait   until recoat
  layer  waterborne_polyurethane, by foam
  wait   until cured
}
recipe lacquered {
  for    wood
  safety vapour_respirator, gloves, ventilate, no_ignition
  note   "A natural bristle brush, quick strokes."
  layer  nitrocellulose_lacquer, by brush
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: (ctx) => {
      if (ctx.action.method === "foam") checkFoam(ctx);
      if (ctx.action.method === "brush") checkBristle(ctx);
    },
  },
};

function checkFoam({ action, report }: MomentContext<LayerAction>): void {
  const solvent = [action.use, action.thinned?.thinner]
    .map((use) => use?.material?.family?.carrier)
    .find((carrier) => carrier === "lacquer thinner" || carrier === "acetone");
  const by = action.syntax.tails.find((tail) => tail.kind === "by");
  if (!solvent || !by?.method) return;
  report({
    headline: t`${useName(action.use)} dissolves a foam applicator`,
    why: t`Foam melts in its ${translated(solvent)} and leaves crumbs and streaks in the film.`,
    remedy: t`Put it on by brush with natural bristle, or spray it.`,
    at: { ...action.place, span: by.span },
    fixes: [replaceAt("change", { ...action.place, span: by.method.span }, t`Put it on by brush`, "brush")],
  });
}

function checkBristle({ action, run, index, report }: MomentContext<LayerAction>): void {
  if (action.use.material?.family?.drying !== "waterborne" || action.coat > 1) return;
  const note = notesAbove(run, index).find(
    ({ text }) => plainlySays(text, NATURAL_BRISTLE) && !SYNTHETIC.test(text),
  );
  if (!note) return;
  report({
    headline: t`${useName(action.use)} goes on with natural bristle`,
    why: t`It is waterborne: natural bristle takes up water, goes limp and leaves streaks.`,
    remedy: t`Use a brush with synthetic bristle, foam or a pad.`,
    related: [related(note.place, t`The brush is named here`)],
  });
}

/** The notes that stand right above a line. */
function notesAbove(run: SurfaceRun, index: number) {
  const notes: NoteAction[] = [];
  for (let at = index - 1; at >= 0; at -= 1) {
    const { action } = run.moments[at]!;
    if (action.op !== "note") break;
    notes.unshift(action);
  }
  return notes;
}
