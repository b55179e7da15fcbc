/**
 * A grit that is too fine after the one before: its particles cannot take the old scratches out.
 *
 * The size of the particles counts, not the number: the ratio of median sizes on the P scale. A sanding goes on from
 * the last grit of the one before it; water and solvent between them take no scratch out. A wash raises the grain
 * though, and who only knocks that down again may leave scratches that a coat may lie over.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import {
  GRIT_JUMP_HINT_RATIO,
  GRIT_JUMP_WARNING_RATIO,
  GRIT_THRESHOLDS_SOURCE,
  gritRatio,
  gritsBetween,
  LAST_GRITS,
  P_GRADES_SOURCE,
} from "../../knowledge/abrasives.ts";
import type { StepAction } from "../../surface/actions.ts";
import { lastGrit, sandingFound, sandingJustBefore } from "../queries.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { related, replaceAt } from "../texts.ts";

export const gritJump: TradeRule = {
  id: "grit-jump",
  group: "preparation",
  severity: "warning",
  docs: {
    summary:
      "From one grit to the next the particles become more than 2 times (hint) or 3 times (warning) smaller.",
    why: "The finer paper rides over the scratches of the coarser one and only polishes their edges; stain and gloss show them afterwards.",
    remedy: "Put the grits between in: 80, 120, 180 instead of 80, 180.",
    sources: [P_GRADES_SOURCE, GRIT_THRESHOLDS_SOURCE],
  },
  failing: [
    {
      title: "80 to 150 is a hint, 80 to 220 a warning",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   sand 80, 150 #! grit-jump
  step   dust
}
recipe prepare_fine {
  for    wood
  safety dust_mask
  step   sand 80, 220 #! grit-jump
  step   dust
}
`,
    },
    {
      title: "From one line to the next",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   sand 80
  step   dust
  step   sand 180, 220 #! grit-jump
  step   dust
}
`,
    },
    {
      title: "Washing takes no scratches out",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   sand 80
  step   clean with soap
  wait   overnight
  step   sand 220 #! grit-jump
  step   dust
}
`,
    },
  ],
  passing: [
    {
      title: "No step of more than twice",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   sand 80, 120, 180, 240
  step   dust
}
`,
    },
    {
      title: "Raised grain is knocked down with a fine paper, over scratches that may stay",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   sand 80, 120
  step   dampen
  wait   overnight
  step   sand 320
  step   dust
}
`,
    },
    {
      title: "A coat came between",
      text: `recipe prepare {
  for    wood
  safety dust_mask, ventilate, no_ignition
  step   sand 80, 120
  step   dust
  layer  dewaxed_shellac
  wait   until recoat
  step   sand 320
  step   dust
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ verbs }) => verbs.has("sand") || verbs.has("scuff"),
  checks: {
    onStep: (ctx) => {
      const { action, run, index } = ctx;
      if ((action.verb !== "sand" && action.verb !== "scuff") || !action.gritsKnown) return;
      const before = sandingFound(run, index);
      const first = lastGrit(before);
      const onlyKnocksDown =
        before !== sandingJustBefore(run, index) &&
        first !== undefined &&
        first >= LAST_GRITS.beforePaint.quietFrom;
      if (before && first !== undefined && !onlyKnocksDown) check(ctx, first, 0, before);
      for (let at = 1; at < action.grits.length; at += 1) check(ctx, action.grits[at - 1]!, at);
    },
  },
};

function check(
  { action, report }: MomentContext<StepAction>,
  from: number,
  at: number,
  earlier?: StepAction,
): void {
  const to = action.grits[at]!;
  const ratio = gritRatio(from, to);
  if (ratio === undefined || ratio <= GRIT_JUMP_HINT_RATIO) return;
  const place = { ...action.place, span: action.syntax.grits[at]!.span };
  const missing = gritsBetween(from, to);
  const between = missing.map(String).reduce((all, grit) => t`${all} and ${grit}`);
  report({
    headline: t`From grit ${from} to ${to} is too big a jump`,
    why: t`${to} grit is too fine to take out the scratches of ${from} grit: they show through stain and gloss.`,
    remedy: t`Sand with ${between} in between.`,
    abrades: "surface",
    severity: ratio > GRIT_JUMP_WARNING_RATIO ? "warning" : "hint",
    at: place,
    ...(earlier ? { related: [related(earlier.place, t`Grit ${from} is the last one here`)] } : {}),
    fixes: [replaceAt("change", place, t`Put ${between} between`, [...missing, to].join(", "))],
  });
}
