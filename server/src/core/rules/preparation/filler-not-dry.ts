/**
 * A filling that is sanded or coated before it is dry: it tears out, or shrinks under the finish.
 *
 * The filler's own recoat time counts, in the shop's air; a filler whose text states none dries overnight. A filler
 * that is laid on as a layer and states its time is coated by the label: there `recoat-too-early` speaks.
 */
import { formatDuration } from "../../measure/format-amount.ts";
import type { LayerAction, StepAction } from "../../surface/actions.ts";
import { type Coat, type Filling, hasWaited, topCoat, waitedOf } from "../../surface/state.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { insertAbove, related, useName } from "../texts.ts";

/** The least that a night brings, hours. */
const OVERNIGHT_H = 12;

export const fillerNotDry: TradeRule = {
  id: "filler-not-dry",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: "A filling is sanded or coated before the filler's recoat time, or overnight if it states none.",
    why: "Filler that is damp inside tears out under the paper, and under a finish it goes on shrinking and leaves a dimple.",
    remedy: "Wait for the filler's recoat time, or overnight; longer in cold or damp air.",
    sources: [
      "the language reference, thresholds",
      "common practice, no source: deep fillings dry overnight",
    ],
  },
  failing: [
    {
      title: "Sanded after four hours, with no time stated",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   fill with wood_filler
  wait   4 h
  step   sand 120, 180 #! filler-not-dry
  step   dust
}
`,
    },
    {
      title: "Painted an hour before the stated time",
      text: `material putty "Fine putty" {
  family wood filler
  recoat 3 h
}
recipe painted {
  for    wood
  safety dust_mask
  step   clean with soap
  step   scuff 220
  step   dust
  step   fill with putty
  wait   2 h
  layer  acrylic_paint #! filler-not-dry
  wait   until cured
}
`,
    },
    {
      title: "A filler for the pores, laid on and sanded after four hours, or coated after them",
      text: `recipe filled {
  for    wood
  safety dust_mask, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  grain_filler, wiped
  wait   4 h
  step   sand 220 #! filler-not-dry
  step   dust
}
recipe filled_and_varnished {
  for    wood
  safety dust_mask, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  grain_filler, wiped
  wait   4 h
  layer  oil_varnish #! filler-not-dry
  wait   until cured
}
`,
    },
    {
      title: "The stated time is too short in a cold shop",
      text: `material putty "Fine putty" {
  family wood filler
  recoat 3 h
}
piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}
shop shed {
  air 12 C, 60 % RH
}
recipe prepare {
  for    wood
  safety dust_mask
  step   fill with putty
  wait   3 h
  step   sand 120, 180 #! filler-not-dry
  step   dust
}
job shelves {
  piece shelf
  in    shed
  apply prepare to top
}
`,
    },
  ],
  passing: [
    {
      title: "Overnight, or the stated time, or until recoat",
      text: `material putty "Fine putty" {
  family wood filler
  recoat 3 h
}
recipe prepare {
  for    wood
  safety dust_mask
  step   fill with wood_filler
  wait   overnight
  step   sand 120, 180
  step   dust
}
recipe prepare_fast {
  for    wood
  safety dust_mask
  step   fill with putty
  wait   3 h
  step   sand 120, 180
  step   dust
}
recipe prepare_by_label {
  for    wood
  safety dust_mask
  step   fill with wood_filler
  wait   until recoat
  step   sand 120, 180
  step   dust
}
recipe filled {
  for    wood
  safety dust_mask, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  grain_filler, wiped
  wait   overnight
  step   sand 220
  step   dust
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  checks: {
    onStep: (ctx) => {
      if (ctx.action.verb === "sand" || ctx.action.verb === "scuff") checkFillings(ctx);
    },
    onLayer: (ctx) => checkFillings(ctx),
  },
};

/** Filler that is put into holes, or wiped over the pores of the whole surface. */
type Filled = Pick<Filling, "use" | "place" | "since" | "reached" | "factor">;

function checkFillings(ctx: MomentContext<StepAction | LayerAction>): void {
  for (const filling of ctx.before.fillings) {
    // No layer and no sanding touched it before.
    if (!filling.sanded && filling.from === ctx.before.nextSerial) checkFilling(ctx, filling);
  }
  const layer = layerOfFiller(topCoat(ctx.before));
  if (layer && !(ctx.action.op === "layer" && statedHours(layer) !== undefined)) checkFilling(ctx, layer);
}

/** A layer of filler of this work that lies on top and was not sanded yet. */
const layerOfFiller = (coat: Coat | undefined): Filled | undefined =>
  coat?.action && coat.origin === "new" && coat.abrasions.length === 0 && coat.family?.role === "filler"
    ? { ...coat, use: coat.action.use }
    : undefined;

/** The recoat time that the filler's own text states. */
const statedHours = ({ use: { material } }: Filled): number | undefined =>
  material?.recoat?.origin === "stated" ? material.recoat.value.earliest : undefined;

function checkFilling(
  { action, before, report }: MomentContext<StepAction | LayerAction>,
  filling: Filled,
): void {
  const material = filling.use.material;
  if (material?.family?.role !== "filler") return;
  const stated = statedHours(filling);
  const needed = stated === undefined ? OVERNIGHT_H : stated * filling.factor;
  const waited = waitedOf(before, filling);
  if (waited.reached.includes("cured") || hasWaited(waited, needed, "recoat") !== "no") return;
  const had = formatDuration(waited.hours);
  const need = stated === undefined ? "a night, 12 h at least" : formatDuration(needed);
  const cold =
    stated !== undefined && filling.factor > 1.005
      ? ` (the label's ${formatDuration(stated)} × ${filling.factor.toFixed(2)} in this air)`
      : "";
  const work = action.op === "layer" ? "coated" : "sanded";
  report({
    headline: `The filling with ${useName(filling.use)} is ${work} after ${had}, and it needs ${need}${cold}`,
    why:
      work === "sanded"
        ? "Filler that is damp inside tears out under the paper and sinks afterwards."
        : "Filler that is damp inside goes on shrinking under the coat and leaves a dimple.",
    remedy: `Wait ${formatDuration(needed - waited.hours)} longer before this ${action.op === "layer" ? "layer" : "step"}.`,
    related: [related(filling.place, "Filled here")],
    fixes: [
      insertAbove("undertaking", action, "Wait until the filler is dry", [
        stated === undefined ? "wait  overnight" : "wait  until recoat",
      ]),
    ],
  });
}
