/**
 * A filling that is sanded or coated before it is dry: it tears out, or shrinks under the finish.
 *
 * The filler's own recoat time counts, in the shop's air; a filler whose text states none goes by its family's
 * figure, and by a night at least. A filler that is laid on as a layer and states its time is coated by the label: there `recoat-too-early` speaks.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { LayerAction, StepAction } from "../../surface/actions.ts";
import { statesTime } from "../../surface/drying-time.ts";
import { type Coat, type Filling, hasWaited, sureHours, topCoat, waitedOf } from "../../surface/state.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { neededIn, shortWait, timePlaces } from "../short-wait.ts";
import { coatedTooSoon, insertAbove, related } from "../texts.ts";

export const fillerNotDry: TradeRule = {
  id: "filler-not-dry",
  group: "preparation",
  severity: "warning",
  docs: {
    summary:
      "A filling is sanded or coated before the filler's recoat time, or by its family's figure if it states none, a night at least.",
    why: "Filler that is damp inside tears out under the paper, and under a finish it goes on shrinking and leaves a dimple.",
    remedy:
      "Wait for the filler's recoat time: `wait until recoat`; a night at least where the label states none, a day for a grain filler.",
    sources: [
      "NAVEDTRA 14044, Builder, chapter 8: filler dries 24 h before finish coats",
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
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   dust
  layer  grain_filler, wiped off
  wait   4 h
  step   sand 220 #! filler-not-dry
  step   dust
}
recipe filled_and_varnished {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   dust
  layer  grain_filler, wiped off
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
    {
      title: "A grain filler takes a day of its own, not a night",
      text: `recipe filled {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   dust
  layer  grain_filler, wiped off
  wait   overnight
  step   sand 220 #! filler-not-dry
  step   dust
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A filler of polyester, which sets in minutes",
      text: `recipe prepare_quickly {
  for    wood
  safety dust_mask, gloves, eye_protection, ventilate, no_ignition
  step   fill with polyester_filler
  wait   30 min
  step   sand 120, 180
  step   dust
}
`,
    },
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
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   dust
  layer  grain_filler, wiped off
  wait   24 h
  step   sand 220
  step   dust
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ isFilled, roles }) => isFilled || roles.has("filler"),
  checks: {
    onStep: (ctx) => {
      if (ctx.action.verb === "sand" || ctx.action.verb === "scuff") checkFillings(ctx);
    },
    onLayer: (ctx) => checkFillings(ctx),
  },
};

/** Filler that is put into holes, or wiped over the pores of the whole surface. */
type Filled = Pick<Filling, "use" | "place" | "since" | "reached" | "drying">;

function checkFillings(ctx: MomentContext<StepAction | LayerAction>): void {
  for (const filling of ctx.before.fillings) {
    // No layer and no sanding touched it before.
    if (!filling.sanded && filling.from === ctx.before.nextSerial) checkFilling(ctx, filling);
  }
  const layer = layerOfFiller(topCoat(ctx.before));
  if (layer && !(ctx.action.op === "layer" && statesTime(layer.use.material, "recoat")))
    checkFilling(ctx, layer);
}

/** A layer of filler of this work that lies on top and was not sanded yet. */
const layerOfFiller = (coat: Coat | undefined): Filled | undefined =>
  coat?.action && coat.origin === "new" && coat.abrasions.length === 0 && coat.family?.role === "filler"
    ? { ...coat, use: coat.action.use }
    : undefined;

function checkFilling(
  { action, before, run, units, report }: MomentContext<StepAction | LayerAction>,
  filling: Filled,
): void {
  const material = filling.use.material;
  if (material?.family?.role !== "filler") return;
  const needed = filling.drying.recoat;
  const waited = waitedOf(before, filling);
  if (!needed || waited.reached.includes("cured") || hasWaited(waited, needed.hours, "recoat") !== "no")
    return;
  const isCoated = action.op === "layer";
  const isNight = needed.cause.law === "a night";
  report(
    shortWait(
      neededIn({ run, units }, needed, sureHours(waited)),
      {
        headlines: (after, need) =>
          [`\`${filling.use.name}\``, t`Filler`].map((name) =>
            headline(name, isCoated, after, isNight ? t`a night` : need),
          ),
        why: isCoated
          ? t`Filler that is damp inside goes on shrinking under the coat and leaves a dimple.`
          : t`Filler that is damp inside tears out under the paper and sinks afterwards.`,
        instead: isNight ? "wait overnight" : "wait until recoat",
        level: "warning",
      },
      {
        related: [related(filling.place, t`Filled here`), ...timePlaces(run, needed, material)],
        fixes: [
          insertAbove("undertaking", action, t`Wait until the filler is dry`, [
            isNight ? "wait  overnight" : "wait  until recoat",
          ]),
        ],
      },
    ),
  );
}

function headline(name: string, isCoated: boolean, after: string, need: string): string {
  if (isCoated) return coatedTooSoon(name, after, need);
  return after
    ? t`${name} is sanded after ${after}: needs ${need}`
    : t`${name} is sanded without a wait: needs ${need}`;
}
