/**
 * A joint that is sanded or coated before its glue has set: it creeps open, and damp glue swells the wood beside it.
 *
 * Only glue that a step names by its material counts, since its figure says how long; in the shop's air, as for a coat.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE, TEXTBOOK } from "../../knowledge/sources.ts";
import type { LayerAction, StepAction } from "../../surface/actions.ts";
import { type Filling, hasWaited, sureHours, waitedOf } from "../../surface/state.ts";
import { ABRADING_VERBS } from "../queries.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { neededIn, shortWait, timePlaces } from "../short-wait.ts";
import { coatedTooSoon, insertAbove, related } from "../texts.ts";

export const glueNotSet: TradeRule = {
  id: "glue-not-set",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: "A surface is sanded, scraped or coated before the glue of a joint in it has set.",
    why: "Glue that has not set lets the joint creep when it is worked on, and its water has swollen the wood beside it: sanded now, the joint is a groove once it has dried.",
    remedy: "Wait as long as the glue's label says before the clamps come off: `wait until recoat`.",
    sources: [`${TEXTBOOK}: joints sanded too soon sink`, PRACTICE],
  },
  failing: [
    {
      title: "Sanded half an hour after gluing",
      text: `recipe mended {
  for    wood
  safety dust_mask
  step   glue "loose joint" with wood_glue
  wait   30 min
  step   sand 120, 180 #! glue-not-set
  step   dust
}
`,
    },
    {
      title: "Painted two hours before the label lets the clamps off",
      text: `material slow_glue "Slow joiner's glue" {
  family wood glue
  recoat 4 h
}
recipe mended {
  for    wood
  safety dust_mask
  step   clean with soap
  step   scuff 220
  step   dust
  step   glue "moulding" with slow_glue
  wait   2 h
  layer  acrylic_paint #! glue-not-set
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A night in the clamps, or until the glue's own time",
      text: `recipe mended {
  for    wood
  safety dust_mask
  step   glue "loose joint" with hide_glue
  wait   overnight
  step   sand 120, 180
  step   dust
}
recipe mended_by_label {
  for    wood
  safety dust_mask
  step   glue "loose joint" with wood_glue, uses 20 mL
  wait   until recoat
  step   sand 120, 180
  step   dust
}
`,
    },
  ],
  looksAt: ({ isFilled }) => isFilled,
  checks: {
    onStep: (ctx) => {
      if (ABRADING_VERBS.has(ctx.action.verb)) checkJoints(ctx);
    },
    onLayer: (ctx) => checkJoints(ctx),
  },
};

function checkJoints(ctx: MomentContext<StepAction | LayerAction>): void {
  for (const joint of ctx.before.fillings) {
    // No layer and no sanding touched it before.
    if (!joint.sanded && joint.from === ctx.before.nextSerial) checkJoint(ctx, joint);
  }
}

function checkJoint(
  { action, before, run, units, report }: MomentContext<StepAction | LayerAction>,
  joint: Filling,
): void {
  const material = joint.use.material;
  if (material?.family?.role !== "glue") return;
  const needed = joint.drying.recoat;
  const waited = waitedOf(before, joint);
  if (!needed || waited.reached.includes("cured") || hasWaited(waited, needed.hours, "recoat") !== "no")
    return;
  report(
    shortWait(
      neededIn({ run, units }, needed, sureHours(waited)),
      {
        headlines: (after, need) =>
          [t`The joint with \`${joint.use.name}\``, t`A joint`].map((name) =>
            headline(name, action.op === "layer", after, need),
          ),
        why: t`It creeps open, and the wood that the glue has swollen sinks once it dries.`,
        instead: "wait until recoat",
        level: "warning",
      },
      {
        related: [related(joint.place, t`Glued here`), ...timePlaces(run, needed, material)],
        fixes: [insertAbove("undertaking", action, t`Wait until the glue has set`, ["wait  until recoat"])],
      },
    ),
  );
}

function headline(name: string, isCoated: boolean, after: string, need: string): string {
  if (isCoated) return coatedTooSoon(name, after, need);
  return after
    ? t`${name} is worked on after ${after}: needs ${need}`
    : t`${name} is worked on without a wait: needs ${need}`;
}
