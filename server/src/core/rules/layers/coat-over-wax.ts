/**
 * Wax is the last layer: nothing but wax holds on it, and sanding only drives it into the wood.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { leavesLayer } from "../../knowledge/families.ts";
import { COMPATIBILITY_LIST } from "../../knowledge/sources.ts";
import type { Action, LayerAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { SurfaceState } from "../../surface/state.ts";
import { burnsDry, dewaxLines } from "../coat-queries.ts";
import { blotches } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { insertAbove, related, useName } from "../texts.ts";

export const coatOverWax: TradeRule = {
  id: "coat-over-wax",
  group: "layers",
  severity: "error",
  voids: "nothing holds on wax",
  docs: {
    summary: "Anything but wax goes over wax that was not removed.",
    why: "Wax stays soft for ever: a coat over it does not wet out, does not dry or peels, and sanding only drives the wax into the wood.",
    remedy:
      "Take the wax off with `step dewax with mineral_spirits` and fresh cloths, every heater and flame off and cold, or strip the surface, before anything else goes on.",
    sources: [
      `${COMPATIBILITY_LIST}: wax takes none`,
      "that sanding only drives wax in: common practice, no source",
    ],
  },
  failing: [
    {
      title: "A clear over the wax of the same recipe",
      text: `recipe polish {
  for    wood
  safety no_ignition, ventilate
  layer  dewaxed_shellac
  wait   until recoat
  layer  paste_wax
  wait   24 h
  layer  dewaxed_shellac #! coat-over-wax
  wait   until cured
}
`,
    },
    {
      title: "Buffing with wax leaves wax",
      text: `recipe polish {
  for    wood
  safety no_ignition, ventilate
  layer  dewaxed_shellac
  wait   until cured
  step   buff with paste_wax
  layer  dewaxed_shellac #! coat-over-wax
  wait   until cured
}
`,
    },
    {
      title: "Cleaning takes no wax off",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing dewaxed shellac, paste wax
  }
}
recipe renew {
  safety dust_mask, ventilate, no_ignition
  step   clean with soap
  step   scuff 320
  step   dust
  layer  dewaxed_shellac x 2 { #! coat-over-wax
    wait until recoat
  }
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
}
`,
    },
    {
      title: "Sanding to the wood drives the wax in; only the first layer suffers",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish, paste wax
  }
}
recipe renew {
  safety dust_mask, ventilate, no_ignition, gloves
  step   clean with soap
  step   sand 80, 120, 150
  step   dust
  layer  dye_stain, wiped off #! coat-over-wax
  wait   until cured
  layer  dewaxed_shellac
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
}
`,
    },
  ],
  passing: [
    {
      title: "Dewaxed first",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing dewaxed shellac, paste wax
  }
}
recipe renew {
  safety dust_mask, ventilate, no_ignition, gloves
  step   dewax with mineral_spirits
  step   clean with soap
  step   scuff 320
  step   dust
  layer  dewaxed_shellac
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
}
`,
    },
    {
      title: "Wax over wax",
      text: `recipe polish {
  for    wood
  safety no_ignition, ventilate
  layer  dewaxed_shellac
  wait   until recoat
  layer  paste_wax x 2 {
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "What lies on the surface is not known without a job",
      text: `recipe renew {
  for    wood
  safety ventilate, no_ignition
  step   clean with soap
  layer  dewaxed_shellac
  wait   until cured
}
`,
    },
    {
      title: "A material that is not known may be wax",
      text: `recipe polish(last: material) {
  for    wood
  safety no_ignition
  layer  paste_wax
  wait   24 h
  layer  last
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const over = action.use.material?.family;
      if (!over || !before.wax || over.role === "wax" || !leavesLayer(over)) return;
      const sanding = before.wax.drivenIn ? drivingIn(run, index) : undefined;
      report({
        headline: sanding
          ? t`${useName(action.use)} goes over wax that sanding has driven into the wood`
          : t`${useName(action.use)} goes over wax that was not taken off`,
        why: t`Nothing but wax holds on wax: the coat crawls, stays soft or peels off.`,
        remedy: sanding
          ? wantsConditioner(action, before, run)
            ? t`Before the sanding: ${dewaxing()}. Once it is dry: ${WASH}. Cleaning and sanding take no wax off. Then sand and dust (\`step dust\`), and put a conditioner on before the stain.`
            : t`Before the sanding: ${dewaxing()}. Once it is dry: ${WASH}. Cleaning and sanding take no wax off. Then sand and dust (\`step dust\`).`
          : t`Take the wax off first: ${dewaxing()}. Cleaning and sanding take no wax off.`,
        ...(sanding
          ? {
              abrades: "surface" as const,
              dustFrom: sanding.place,
              damp: isSandedWet(before, run)
                ? t`Before the sanding: ${dewaxing()}. Once it is dry: ${WASH}. Then sand wet, wipe the slurry up with a damp cloth and let the wood dry where you will coat it (\`wait overnight\` at least).`
                : t`Before the sanding: ${dewaxing()}. Once it is dry: ${WASH}. Then sand, and take the dust up.`,
            }
          : {}),
        related: [
          related(before.wax.place, t`The wax is here`),
          ...(sanding ? [related(sanding.place, t`The sanding that drives it in`)] : []),
        ],
        fixes: [
          insertAbove(
            "undertaking",
            sanding ?? action,
            t`Take the wax off first`,
            dewaxLines(sanding ?? action),
          ),
        ],
      });
    },
  },
};

/** Soap that is left in the pores lifts a coat without solvent: common practice, no source. */
const dewaxing = (): string =>
  t`\`step dewax with mineral_spirits\`, with gloves, fresh air, every heater and flame off and cold and no switch used until it is dry; go on until a fresh cloth picks up no more wax, and lay the cloths in water in a closed metal can outdoors`;
const WASH = "`step clean with soap`, `step clean with water`, `wait overnight`";

/** An old lacquer, also one that the sanding has taken off by now, is sanded wet whatever a test for lead finds. */
const isSandedWet = (before: SurfaceState, { moments: [first] }: SurfaceRun): boolean =>
  [...before.layers, ...(first?.before.layers ?? [])].some(burnsDry);

/** So that nothing new comes up once the wax is off. A gel is a cure for blotching itself. */
const wantsConditioner = (action: LayerAction, before: SurfaceState, run: SurfaceRun): boolean =>
  action.use.material?.family?.name !== "gel stain" && blotches(action, before, run);

/** The sanding that reached the wood while the wax was still on. */
const drivingIn = (run: SurfaceRun, index: number): Action | undefined =>
  run.moments.find(({ before, after }, at) => at < index && after.wax?.drivenIn && !before.wax?.drivenIn)
    ?.action;
