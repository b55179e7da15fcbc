/**
 * Drying oil or hardwax oil over a film: it cannot soak in, and what stays on top remains tacky.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { Fix } from "../../findings.ts";
import { COMPATIBILITY_LIST } from "../../knowledge/sources.ts";
import type { LayerAction } from "../../surface/actions.ts";
import { type Coat, isFilm } from "../../surface/state.ts";
import { isPorousPaint, slickName, slickSubstrate } from "../coat-queries.ts";
import { putOnInstead, takeOldFinishOff } from "../remedy-fixes.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { coatName, layerBelow, useName } from "../texts.ts";

export const oilOverFilm: TradeRule = {
  id: "oil-over-film",
  group: "layers",
  severity: "warning",
  docs: {
    summary:
      "A drying oil, a hardwax oil or a soap finish goes over a film or laminate that it cannot soak into.",
    why: "Oil hardens in the wood; on a sealed surface it stays a soft, tacky skin that gathers dust and wipes off.",
    remedy: "Strip or sand to bare wood before oiling, or put wax or another coat of a clear on the film.",
    sources: [
      "finishing textbooks, from memory: oil has to soak in",
      `${COMPATIBILITY_LIST}: oil goes over shellac, so shellac is left out here`,
      "a thin coat of oil on clean metal keeps rust away: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Hardwax oil over old varnish",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
}
recipe oiled {
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  step   clean with soap
  step   scuff 220
  step   dust
  layer  hardwax_oil, wiped off #! oil-over-film
  wait   until cured
}
job boxes {
  piece box
  apply oiled to lid
}
`,
    },
    {
      title: "Soap over varnish",
      text: `recipe soaped {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  layer  oil_varnish
  wait   until cured
  step   scuff 320
  step   dust
  layer  soap_finish, wiped off #! oil-over-film
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Resin in the cracks alone leaves the wood to the oil",
      text: `recipe slab {
  for    wood
  safety dust_mask, gloves, eye_protection, ventilate, no_ignition, wet_rags
  layer  epoxy_coating, only "cracks"
  wait   7 days
  step   sand 80, 120, 180
  step   dust
  layer  hardwax_oil x 2, wiped off {
    wait 24 h
  }
  wait   until cured
}
`,
    },
    {
      title: "A thin coat of oil on clean metal",
      text: `piece hinge "Strap hinge" {
  surface strap {
    shape panel 300 mm x 40 mm
    wood  iron
  }
}
recipe oiled {
  for    metal
  safety ventilate, no_ignition, wet_rags, gloves
  step   clean with mineral_spirits
  layer  drying_oil, wiped off
  wait   until cured
}
job hinges {
  piece hinge
  apply oiled to strap
}
`,
    },
    {
      title: "Sanded to bare wood; over milk paint; over shellac",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
}
recipe oiled {
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  step   clean with soap
  step   sand 100, 150
  step   dust
  layer  hardwax_oil, wiped off
  wait   until cured
}
recipe over_paint {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  milk_paint
  wait   until recoat
  layer  hardwax_oil, wiped off
  wait   until cured
}
recipe over_shellac {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  dewaxed_shellac
  wait   until recoat
  layer  drying_oil, wiped off
  wait   until cured
}
job boxes {
  piece box
  apply oiled to lid
}
`,
    },
  ],
  looksAt: ({ roles }) => roles.has("oil"),
  checks: {
    onLayer: (ctx) => {
      const { action, before, run, report } = ctx;
      const over = action.use.material?.family;
      if (over?.role !== "oil" || !over.penetrating || action.part) return;
      // Oil over oil that lies on a film already: the first of them was the mistake.
      if (before.layers.at(-1)?.family?.role === "oil") return;
      // Where a coat lies on a part alone, such as resin in a crack, the rest of the wood takes the oil.
      const film = before.layers.findLast((coat) => isFilm(coat) && !coat.action?.part);
      const isOnLaminate = before.layers.length === 0 && slickSubstrate(run) === "laminate";
      const slick = isOnLaminate ? slickName(run) : undefined;
      if (!slick && (!film || isPorousPaint(film) || isShellac(film))) return;
      report({
        headline: slick
          ? t`${useName(action.use)} does not soak into ${translated(slick)}`
          : t`${useName(action.use)} does not soak through ${coatName(film!)}`,
        why:
          over.binder === "soap"
            ? t`Soap that cannot soak in stays a smeary skin that water takes off again.`
            : t`Oil that cannot soak in stays a soft, tacky skin that gathers dust and wipes off.`,
        ...(slick
          ? { remedy: t`Put wax or a clear that builds a film on instead.` }
          : {
              remedy: t`Strip or sand to bare wood first, or put wax or another clear on instead.`,
              abrades: "to the wood" as const,
            }),
        related: film && !slick ? [layerBelow(film)] : [],
        fixes: instead(ctx),
      });
    },
  },
};

/** The wood made bare under the oil; else, on what is none or over a new film, a clear that needs no wood. */
function instead({ action, before, run }: MomentContext<LayerAction>): readonly Fix[] {
  const off = takeOldFinishOff(run, before, action);
  if (off.length > 0 || action.coat > 1) return off;
  return [putOnInstead(action, t`Put waterborne polyurethane on instead`, "waterborne polyurethane", 2)];
}

const isShellac = ({ family }: Coat): boolean => family?.role === "clear" && family.binder === "shellac";
