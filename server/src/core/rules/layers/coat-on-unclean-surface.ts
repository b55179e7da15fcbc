/**
 * A coat on dirt: the grease of a used surface, what a stripper leaves, or sanding dust.
 */

import { lookUp } from "../../../../../grammar/src/look-up.ts";
import { t } from "../../../../../grammar/src/translate.ts";
import type { Fix, RelatedPlace } from "../../findings.ts";
import { leavesLayer } from "../../knowledge/families.ts";
import { andList } from "../../model/suggest.ts";
import { sameDeclaration } from "../../place.ts";
import type { StepAction } from "../../surface/actions.ts";
import { type SurfaceState, topCoat } from "../../surface/state.ts";
import type { Report, TradeRule } from "../rule.ts";
import { fitting, fixOf, insertAbove, linesAbove, related, replaceAt, useName } from "../texts.ts";

export const coatOnUncleanSurface: TradeRule = {
  id: "coat-on-unclean-surface",
  group: "layers",
  // Taking the wax off cleans as well.
  secondaryTo: ["coat-over-wax"],
  severity: "warning",
  docs: {
    summary:
      "A coat goes on a used surface that was never cleaned, on what a stripper left, or on sanding dust.",
    why: "Grease and stripper make a coat crawl, dry badly or peel, and dust stays in the film as grit.",
    remedy:
      "Clean a used or stripped surface (`step clean with soap`) and let it dry before anything else goes on, and take off dust with `step dust`. Wax that is renewed with wax need only be dusted.",
    sources: [
      "UFC 3-190-06 section 2.4: clean, dull and sound before recoating",
      "common practice, no source",
    ],
  },
  failing: [
    {
      title: "No dusting after the sanding between coats",
      text: `recipe clear_coats {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  layer  oil_polyurethane x 3 { #! coat-on-unclean-surface
    wait until recoat
    step sand 320
  }
  wait   until cured
}
`,
    },
    {
      title: "A stripped surface that was not cleaned",
      text: `recipe bare_again {
  for    wood
  safety gloves, eye_protection, vapour_respirator, ventilate, no_ignition
  step   strip with paint_stripper
  layer  dewaxed_shellac #! coat-on-unclean-surface
  wait   until cured
}
`,
    },
    {
      title: "A used surface; the second coat is not blamed again",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing dewaxed shellac
  }
}
recipe renew {
  safety ventilate, no_ignition
  layer  dewaxed_shellac #! coat-on-unclean-surface
  wait   until recoat
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
      title: "Old wax renewed without dusting, a hint",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing paste wax
  }
}
recipe renew {
  safety no_ignition
  layer  paste_wax #! coat-on-unclean-surface
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
      title: "Scuffed between coats that dry first, however the two are told; the dust comes off with it",
      text: `recipe enamelled {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  layer  alkyd_paint x 2, between scuff 320 and wait 24 h
  wait   until cured
}
`,
    },
    {
      title: "Flakes that the scraper leaves go with sanding and dusting",
      text: `recipe door {
  for    wood
  safety dust_mask, ventilate, no_ignition
  step   scrape "shave hook"
  step   sand 80, 120, 150
  step   dust
  layer  shellac_primer
  wait   until cured
}
`,
    },
    {
      title: "Oil sanded in while it is wet leaves a paste in the pores and no dust",
      text: `recipe slurry {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  wiping_varnish, by cloth
  step   sand wet 400
  wait   until recoat
  layer  wiping_varnish, by cloth, wiped off
  wait   until cured
}
`,
    },
    {
      title: "Dusted between coats",
      text: `recipe clear_coats {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  layer  oil_polyurethane x 3 {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
`,
    },
    {
      title: "Stripped and cleaned; and a surface that was bare has no grease",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
  surface inside {
    shape    panel 300 mm x 200 mm
    wood     beech
  }
}
recipe bare_again {
  safety gloves, eye_protection, vapour_respirator, ventilate, no_ignition
  step   strip with paint_stripper
  step   clean with mineral_spirits
  layer  dewaxed_shellac
  wait   until cured
}
recipe sealed {
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   until cured
}
job boxes {
  piece box
  apply bare_again to lid
  apply sealed to inside
}
`,
    },
    {
      title: "Wax renewed after two years of use: dusted, no more",
      text: `shop mill {
  country US
  hours   Mon to Fri 08:00 to 16:00
}
piece box "Box" {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}
recipe waxed {
  for    wood
  safety no_ignition, dust_mask
  step   sand 120, 180
  step   dust
  layer  paste_wax
  wait   until cured
}
recipe renewed {
  for    wood
  safety no_ignition
  step   dust
  layer  paste_wax
  wait   until cured
}
job boxes {
  piece box
  in    mill
  start 2027-03-01
  apply waxed to lid
}
job boxes_again {
  piece box
  in    mill
  after boxes
  start 2029-03-05
  apply renewed to lid
}
`,
    },
  ],
  checks: {
    onLayer: (ctx) => {
      const { action, before, report } = ctx;
      const over = action.use.material?.family;
      if (over && !leavesLayer(over)) return;
      if (isSameWax(action, before)) {
        reportUndustedWax(ctx);
        return;
      }
      const dirt = dirtOn(before);
      if (dirt.length === 0) return;
      const onlyDust = !before.grease && !before.residue;
      const rubbing = before.grease && !before.residue ? rubbingIn(ctx) : undefined;
      report({
        headline: fitting(
          [useName(action.use), `\`${action.use.name}\``, t`This layer`].map(
            (coat) => t`${coat} goes on ${dirtText(before)}`,
          ),
        ),
        why: onlyDust
          ? t`The dust stays in the film as grit and keeps it from taking hold.`
          : t`The coat crawls, dries badly or peels where dirt lies under it.`,
        ...(rubbing ? remedyBefore(rubbing, before) : { remedy: remedyOf(before), ...dampOf(before) }),
        ...(before.grease ? { ofPiece: true as const } : {}),
        related: dirt,
        fixes: fixes(action, onlyDust, before, rubbing),
      });
    },
  },
};

/** The first sanding or scuffing that found the surface as it was used; it drives the grease in. */
function rubbingIn({ run, index }: LayerContext): StepAction | undefined {
  const first = run.moments
    .slice(0, index)
    .find(({ action, before }) => action.op === "step" && before.grease && lookUp(RUBBING, action.verb));
  return first?.action.op === "step" ? first.action : undefined;
}

const RUBBING: Readonly<Record<string, () => string>> = {
  sand: () =>
    t`Clean before the sanding, which rubs the grease in: \`step clean with soap\`, \`step clean with water\`, \`wait overnight\``,
  scuff: () =>
    t`Clean before the scuffing, which rubs the grease in: \`step clean with soap\`, \`step clean with water\`, \`wait overnight\``,
};

/** Grease comes off before it is rubbed in, and the dust after. */
function remedyBefore(
  { verb }: StepAction,
  { dust }: SurfaceState,
): Pick<Report, "remedy" | "damp" | "dustFrom"> {
  const clean = lookUp(RUBBING, verb)!();
  if (!dust) return { remedy: `${clean}.` };
  return {
    remedy: t`${clean}. Dust after it: \`step dust\`.`,
    damp: t`${clean}. Then take the dust up damp, never brush it, and let the surface dry again (\`step clean with water\`, \`wait overnight\`).`,
    dustFrom: dust.place,
  };
}

function remedyOf({ grease, residue }: SurfaceState): string {
  if (residue?.dry) return t`Sand and dust the surface before the coat (\`step dust\`).`;
  if (residue)
    return t`Wash the residue off with what the label names (\`step clean with mineral_spirits\`, or \`step clean with water\`) and let it dry (\`wait overnight\`).`;
  return grease
    ? t`Clean the surface first (\`step clean with soap\`), wipe it dry and let it dry through (\`wait overnight\`).`
    : t`Dust the surface before the coat (\`step dust\`).`;
}

/** The same where what lies there may hold lead. */
function dampOf({ grease, residue, dust }: SurfaceState): Pick<Report, "damp" | "dustFrom"> {
  if (residue?.dry)
    return {
      damp: t`Wipe it up damp, rub the surface wet by hand, wash it (\`step clean with water\`) and let it dry.`,
      dustFrom: residue.place,
    };
  if (!dust || residue) return {};
  return {
    damp: grease
      ? t`Take the dust up damp by cleaning (\`step clean with soap\`), never brush it, and let the surface dry (\`wait overnight\`).`
      : t`Wipe the dust up damp (\`step clean with water\`), never brush it, and let the surface dry (\`wait overnight\`).`,
    dustFrom: dust.place,
  };
}

type LayerContext = Parameters<NonNullable<typeof coatOnUncleanSurface.checks.onLayer>>[0];

/**
 * Wax over the same wax, on a surface that is dirty with nothing but use: its solvent takes the old film up, with what
 * little lies in it, so that dusting or wiping is enough. Common practice, no source.
 */
const isSameWax = ({ use }: LayerContext["action"], before: SurfaceState): boolean =>
  use.material?.family?.role === "wax" &&
  topCoat(before)?.family?.name === use.material.family.name &&
  before.grease !== undefined &&
  !before.residue &&
  !before.dust;

function reportUndustedWax({ action, before, run, index, report }: LayerContext): void {
  const isWiped = ({ action: done }: (typeof run.moments)[number]): boolean =>
    done.op === "step" && (done.verb === "dust" || done.verb === "buff");
  if (run.moments.slice(0, index).some(isWiped)) return;
  report({
    severity: "hint",
    headline: t`${useName(action.use)} goes on a used surface that was not dusted`,
    why: t`The dust of the room is rubbed into the wax and greys it.`,
    remedy: t`Dust or wipe the surface before the wax.`,
    related: dirtOn(before),
    fixes: [insertAbove("change", action, t`Dust the surface first`, ["step  dust"])],
  });
}

/** What lies on the surface: "sanding dust, on a used surface that was never cleaned". */
function dirtText({ grease, residue, dust }: SurfaceState): string {
  const left = residue && (residue.dry ? t`what the scraping left` : t`what the stripping left`);
  const loose = [...(left ? [left] : []), ...(dust ? [t`sanding dust`] : [])];
  if (!grease) return andList(loose);
  return loose.length === 0
    ? t`a used surface that was never cleaned`
    : t`${andList(loose)}, on a surface that was never cleaned`;
}

const dirtOn = ({ grease, residue, dust }: SurfaceState): readonly RelatedPlace[] => [
  ...(grease ? [related(grease.place, t`A used surface may have grease on it`)] : []),
  ...(residue ? [related(residue.place, t`This leaves the surface to be cleaned`)] : []),
  ...(dust ? [related(dust.place, t`This leaves the dust`)] : []),
];

/** Water raises the grain of stripped wood, so only dust and the grease on a film have a fix. */
function fixes(
  action: LayerContext["action"],
  onlyDust: boolean,
  before: SurfaceState,
  rubbing: StepAction | undefined,
): readonly Fix[] {
  if (action.coat > 1) {
    const last = action.syntax.block?.at(-1);
    if (!last || !onlyDust || last.kind === "layer") return [];
    const end = last.span.end;
    const place = { ...action.place, span: { start: end, end } };
    return [replaceAt("change", place, t`Dust before the next coat`, "\n    step dust")];
  }
  if (onlyDust) return [insertAbove("change", action, t`Dust the surface first`, ["step  dust"])];
  if (rubbing) return cleanBefore(rubbing, action, before);
  return before.residue || before.layers.length === 0
    ? []
    : [
        insertAbove("undertaking", action, t`Clean the surface first and let it dry overnight`, [
          "step  clean with soap",
          "wait  overnight",
        ]),
      ];
}

/** Both lines in one: the cleaning above what would rub the grease in, the dusting above the coat. */
function cleanBefore(
  rubbing: StepAction,
  action: LayerContext["action"],
  { dust, layers }: SurfaceState,
): readonly Fix[] {
  if (!sameDeclaration(rubbing.place, action.place) || layers.length === 0) return [];
  return [
    fixOf("undertaking", t`Clean before the surface is rubbed down, and let it dry overnight`, [
      linesAbove(rubbing.place, ["step  clean with soap", "step  clean with water", "wait  overnight"]),
      ...(dust ? [linesAbove(action.place, ["step  dust"])] : []),
    ]),
  ];
}
