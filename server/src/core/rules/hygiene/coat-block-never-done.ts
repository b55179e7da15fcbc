/**
 * A coat block is done between coats; on one coat it is never done.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { Action } from "../../surface/actions.ts";
import type { TradeRule } from "../rule.ts";

export const coatBlockNeverDone: TradeRule = {
  id: "coat-block-never-done",
  group: "hygiene",
  severity: "hint",
  docs: {
    summary: "A layer of one coat has a block of steps between coats.",
    why: "The block is done coats − 1 times: with one coat its waits and sandings never happen.",
    remedy: "Say how many coats, such as `x 3`, or put the lines after the layer.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "No number of coats",
      text: `recipe clear_coat {
  for    wood
  safety dust_mask
  layer  waterborne_polyurethane { #! coat-block-never-done
    wait until recoat
    step sand 220
    step dust
  }
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Three coats; and a number that a call may change",
      text: `recipe clear_coat(coats: number = 1) {
  for    wood
  safety dust_mask
  layer  waterborne_polyurethane x coats {
    wait until recoat
    step sand 220
    step dust
  }
  wait   until cured
}

recipe three_coats {
  for    wood
  safety dust_mask
  layer  waterborne_polyurethane x 3 {
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
    onLayer: ({ action, report }) => {
      const { block, coats } = action.syntax;
      const isFixed = coats === undefined || coats.kind === "quantity";
      if (!block || block.length === 0 || !isFixed || action.coats !== 1) return;
      report({
        headline: t`This layer has one coat, and its block is done between coats`,
        why: t`So its waits and sandings never happen.`,
        remedy: t`Say how many coats, such as \`x 3\`, or put the lines after the layer.`,
        ...(coats ? { at: placeOf(action, coats.span) } : {}),
      });
    },
  },
};

const placeOf = (action: Action, span: { readonly start: number; readonly end: number }) => ({
  ...action.place,
  span,
});
