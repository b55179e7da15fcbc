/**
 * Wax sanded into the wood and dissolved only afterwards. Where it is never dissolved, `coat-over-wax` says so at the
 * coat that suffers, and this rule stays silent.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import type { Action } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isBare } from "../../surface/state.ts";
import { dewaxLines } from "../coat-queries.ts";
import { nextMoment } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { insertAbove, related } from "../texts.ts";

const FILE = (steps: string) => `piece box {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish, paste wax
  }
}
recipe renew {
  safety dust_mask, ventilate, no_ignition, gloves
${steps}  step   clean with mineral_spirits
  layer  dewaxed_shellac
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
}
`;

export const waxSandedIn: TradeRule = {
  id: "wax-sanded-in",
  group: "preparation",
  severity: "hint",
  docs: {
    summary: "A waxed surface is sanded to the wood first, and dewaxed only afterwards.",
    why: "Sanding melts the wax into the bare pores, and a later wash seldom gets all of it out again.",
    remedy: "Dewax before the first sanding.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "Dewaxed after the sanding",
      text: FILE(`  step   sand 80, 120, 150 #! wax-sanded-in
  step   dewax with mineral_spirits
`),
    },
  ],
  passing: [
    {
      title: "Dewaxed first",
      text: FILE(`  step   dewax with mineral_spirits
  step   sand 80, 120, 150
`),
    },
    {
      title: "A light sanding does not reach the wood",
      text: FILE(`  step   sand 180
  step   dewax with mineral_spirits
`),
    },
  ],
  looksAt: ({ verbs }) => verbs.has("dewax"),
  checks: {
    onStep: ({ action, before, after, run, index, report }) => {
      if (action.verb !== "sand" || !before.wax || before.wax.drivenIn) return;
      if (!after.wax?.drivenIn || !isBare(after) || !isDewaxedLater(run, index)) return;
      report({
        headline: t`The wax is sanded into the wood before it is dissolved`,
        why: t`Sanding drives the wax into the pores, and a later wash seldom gets all of it out.`,
        remedy: t`Dewax before you sand.`,
        related: [related(before.wax.place, t`The wax is here`)],
        fixes: [insertAbove("undertaking", action, t`Dewax before the sanding`, dewaxLines(action))],
      });
    },
  },
};

/** The next thing that touches the wax is a `dewax`, before any coat. */
function isDewaxedLater(run: SurfaceRun, index: number): boolean {
  const next = nextMoment(run, index, endsWax)?.action;
  return next?.op === "step" && next.verb === "dewax";
}

const endsWax = (action: Action): boolean =>
  action.op === "layer" ||
  action.op === "open" ||
  (action.op === "step" && ["dewax", "strip", "scrape"].includes(action.verb));
