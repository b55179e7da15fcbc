/**
 * A coarser grit after a finer one, with nothing between: it undoes the work of the finer.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { medianUm } from "../../knowledge/abrasives.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import type { StepAction } from "../../surface/actions.ts";
import { isBare } from "../../surface/state.ts";
import { lastGrit, sandingJustBefore } from "../queries.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const sandedBackToCoarser: TradeRule = {
  id: "sanded-back-to-coarser",
  group: "preparation",
  severity: "hint",
  docs: {
    summary: "A coarser grit follows a finer one on the same surface, with nothing between.",
    why: "The coarse scratches come back, so the sanding with the finer grit was for nothing, or the grits stand in the wrong order.",
    remedy: "Put the grits in order from coarse to fine.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "Back to 120 in one line, and in the next",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   sand 80, 120, 180, 120 #! sanded-back-to-coarser
  step   dust
}
recipe prepare_twice {
  for    wood
  safety dust_mask
  step   sand 120, 180
  step   dust
  step   sand 150, 220 #! sanded-back-to-coarser
  step   dust
}
`,
    },
  ],
  passing: [
    {
      title: "A filling is levelled with a coarser grit",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   sand 80, 120, 180
  step   dust
  step   fill with wood_filler
  wait   overnight
  step   sand 120, 180
  step   dust
}
`,
    },
    {
      title: "A scuff, and then all of the film off",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   scuff 220
  step   sand 80, 120, 180
  step   dust
}
`,
    },
  ],
  looksAt: ({ verbs }) => verbs.has("sand") || verbs.has("scuff"),
  checks: {
    onStep: (ctx) => {
      const { action, run, index } = ctx;
      if ((action.verb !== "sand" && action.verb !== "scuff") || !action.gritsKnown) return;
      const before = sandingJustBefore(run, index);
      const first = lastGrit(before);
      if (before && first !== undefined && !takesFilm(ctx)) check(ctx, first, 0, before);
      for (let at = 1; at < action.grits.length; at += 1) check(ctx, action.grits[at - 1]!, at);
    },
  },
};

/** Coarse sanding that goes through a film begins a surface of its own. */
const takesFilm = ({ before, after }: MomentContext<StepAction>): boolean => !isBare(before) && isBare(after);

function check(
  { action, report }: MomentContext<StepAction>,
  from: number,
  at: number,
  earlier?: StepAction,
): void {
  const to = action.grits[at]!;
  const [fromUm, toUm] = [medianUm(from), medianUm(to)];
  if (fromUm === undefined || toUm === undefined || toUm <= fromUm) return;
  report({
    headline: t`Grit ${to} follows the finer grit ${from} with nothing between`,
    why: t`The scratches of ${to} come back, and the work of ${from} is undone.`,
    remedy: t`Put the grits in order from coarse to fine.`,
    at: { ...action.place, span: action.syntax.grits[at]!.span },
    ...(earlier ? { related: [related(earlier.place, t`Sanded to ${from} here`)] } : {}),
  });
}
