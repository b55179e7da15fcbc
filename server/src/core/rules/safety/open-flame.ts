/**
 * Flames in a finisher's own words: burning off, blowlamps, oil warmed on the gas ring.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { Action } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { firstBurning } from "../flammable-uses.ts";
import { leadIn } from "../lead-caution.ts";
import type { Report, RunContext, TradeRule } from "../rule.ts";
import { saidOnLine, textOf } from "../spoken-words.ts";
import { related } from "../texts.ts";
import { toldLines } from "../told-lines.ts";
import {
  BURNED_OFF,
  CHARRING,
  clauseNaming,
  FLAME_ON_BUBBLES,
  OPEN_FLAME,
  SMALL_FLAME,
  warmsSomethingFlammable,
} from "../work-words.ts";

export const openFlame: TradeRule = {
  id: "open-flame",
  group: "safety",
  severity: "error",
  docs: {
    summary:
      "A note, or the words of a step, call for an open flame: old paint is burned off, somebody smokes, a candle or a lighter is lit, or oil, wax, spirits or varnish are warmed over a flame or on a stove. Charring bare wood on purpose is a warning.",
    why: "A flame turns the lead of old paint into fume, lights vapour and dust, and smoulders on behind mouldings for hours. Warm oil and solvents take fire at once.",
    remedy:
      "Take old paint off with a stripper or a heat gun of stated heat; let oil and varnish warm up in the room, or in a bath of hot water away from any flame. Words that forbid a flame draw nothing.",
    sources: [
      "24 CFR 35.140(a) and 40 CFR 745.85(a)(3)(i): no open flame on lead paint, for housing, by analogy",
      "29 CFR 1910.106(a)(19) on flammable liquids; 29 CFR 1926.352 on fire prevention where a flame is used (from memory)",
    ],
  },
  failing: [
    {
      title: "Burned off, in a recipe that also says to test for lead",
      text: `recipe burned_off {
  for    wood
  safety lead_test, keep_out, gloves, eye_protection, dust_mask, ventilate
  step   test "old paint for lead, by a laboratory"
  note   "Burn the old paint off with the gas torch and push it away with the scraper." #! open-flame
  step   scrape
  step   clean with soap
}
`,
    },
    {
      title: "In the words of a step",
      text: `recipe burned_off {
  for  wood
  step scrape "blowlamp" #! open-flame
  step clean with soap
}
`,
    },
    {
      title: "Oil and turpentine on the gas ring",
      text: `recipe warm_oil {
  for    wood
  safety gloves, wet_rags, ventilate, no_ignition
  note   "Warm the oil and turpentine in a pan on the gas ring until it smokes." #! open-flame
  layer  drying_oil x 2, by cloth, wiped off after 30 min {
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "Varnish heated on the stove",
      text: `recipe warm_varnish {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "Heat the varnish on the stove so that it flows." #! open-flame
  layer  oil_varnish x 3 {
    wait until recoat
    step sand wet 320
    step clean with water
  }
  wait   until cured
}
`,
    },
    {
      title: "A cigarette while the coat dries",
      text: `recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "Have a cigarette at the bench between the coats." #! open-flame
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "Charred on purpose",
      text: `recipe charred {
  for  wood
  note "Char the boards with a propane torch, outdoors." #! open-flame
}
`,
    },
  ],
  passing: [
    {
      title: "A cold candle on the runners of a drawer",
      text: `recipe drawers {
  for    wood
  safety ventilate, no_ignition, gloves
  layer  dewaxed_shellac
  wait   until cured
  step   "rub the runners with a candle stub, cold"
}
`,
    },
    {
      title: "Words that forbid it, a lamp to look with, and a figure of the wood",
      text: `recipe careful {
  for   wood
  note  "No blowlamp: never burn old paint off. Keep naked flames away."
  note  "The flame birch is looked over with a torch."
  note  "Warm the tin in a bath of hot water, away from the stove."
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: { onRun: check },
};

function check({ run, report }: RunContext): void {
  for (const action of toldLines(run)) {
    const text = textOf(action);
    if (text === undefined) continue;
    const said = smallFlameOn(run, action) ?? flameIn(action, text);
    if (!said) continue;
    const matter = leadIn(run, run.moments[action.index]!.before.layers);
    report(action, {
      ...said,
      ...(matter?.coat
        ? { related: [related(matter.coat.place, t`The old coating, which may hold lead`)] }
        : {}),
    });
  }
}

/** Tobacco, a candle, a lighter; over bubbles only where what is wet can burn. */
function smallFlameOn(run: SurfaceRun, action: Action): Report | undefined {
  if (saidOnLine(action, BURNED_OFF) !== undefined) return burned();
  if (saidOnLine(action, SMALL_FLAME) !== undefined)
    return warmsSomethingFlammable(textOf(action) ?? "") ? warmed() : lit();
  if (action.op === "step" && TAKES_OFF.has(action.verb)) return undefined;
  return saidOnLine(action, FLAME_ON_BUBBLES) !== undefined && firstBurning(run) ? lit() : undefined;
}

function flameIn(action: Action, text: string): Report | undefined {
  // Paint that is warmed till it blisters is burned off, not thinned.
  if (warmsSomethingFlammable(text) && !/\b(?:blister\w*|scrap\w*|peel\w*)\b/iu.test(text)) return warmed();
  if (clauseNaming(text, OPEN_FLAME) === undefined) return undefined;
  if (clauseNaming(text, CHARRING) !== undefined && !/\b(?:paint|varnish|finish|coats?)\b/iu.test(text))
    return charred();
  const takesOff =
    action.op === "step" ? TAKES_OFF.has(action.verb) : !DRIES.test(text) || REMOVES.test(text);
  return takesOff ? burned() : beside();
}

const TAKES_OFF: ReadonlySet<string> = new Set(["scrape", "strip", "sand", "distress"]);

/** A flame that only warms what stands beside it. */
const DRIES = /\b(?:dry|dries|dried|drying|warm|rack|beside|next\s+to)\b/iu;
const REMOVES = /\b(?:off|blister\w*|bubbl\w*|strip\w*|scrap\w*|burn\w*|push\w*|peel\w*|remov\w*)\b/iu;

const warmed = (): Report => ({
  headline: t`Something flammable is warmed over a flame or on a stove`,
  why: t`Oil, wax, varnish and solvents give off vapour when they are warm, and the flame or the hot plate lights it.`,
  remedy: t`Let it warm up in the room, or stand the closed tin in hot water away from any flame.`,
});

const burned = (): Report => ({
  headline: t`These words call for an open flame`,
  why: t`A flame turns lead in old paint into fume, lights vapour and dust, and smoulders on out of sight for hours.`,
  remedy: t`Use no flame: take the coating off with a stripper, or with a heat gun whose heat is stated (\`scrape "heat gun at 350 C"\`).`,
  abrades: "to the wood",
});

const lit = (): Report => ({
  headline: t`A flame or something that glows is lit where finishing is done`,
  why: t`A cigarette, candle or match lights vapour, fine dust and oily cloths, and vapour creeps to it across the room.`,
  remedy: t`Let nobody smoke or light anything here; smoke outdoors, away from rags and tins, with clean hands.`,
});

const beside = (): Report => ({
  headline: t`A flame burns where finishing is done`,
  why: t`A flame lights vapour, fine dust and oily cloths, and vapour creeps to it across the room.`,
  remedy: t`Put the flame out before you open a can, and light none in this room until the vapour is gone; local fire codes decide.`,
});

const charred = (): Report => ({
  severity: "warning",
  headline: t`Wood is charred with an open flame`,
  why: t`The wood smoulders on out of sight, and the flame lights any vapour, dust or old coating near it.`,
  remedy: t`Char bare wood only, outdoors and away from all solvents, with water and an extinguisher at hand; watch it for an hour after, as local fire codes ask.`,
});
