/**
 * A wet coat over the silicone of a polish. The notation states silicone nowhere; only a material whose own words leave
 * no doubt that it holds some counts, and only until something may have taken it off.
 *
 * Shellac is the usual seal against it and is not blamed itself. Wax with silicone in it is `coat-over-wax`'s first.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { negates } from "../../knowledge/denials.ts";
import { family } from "../../knowledge/families.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { cracksOver } from "../../knowledge/layer-relation.ts";
import { PRACTICE, TEXTBOOK } from "../../knowledge/sources.ts";
import type { Place } from "../../place.ts";
import type { Action, LayerAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { barrierLines, dewaxLines } from "../coat-queries.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { textOf } from "../spoken-words.ts";
import { insertAbove, related, useName } from "../texts.ts";

const POLISH = `material shine "Spray polish with silicone" {
  family cleaner
}
`;

const FILE = (steps: string, note = "") => `${POLISH}piece box "Box" {
  built 1995
${note}  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
}
recipe renew {
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
${steps}  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
}
`;

export const siliconeBelow: TradeRule = {
  id: "silicone-below",
  group: "layers",
  severity: "warning",
  docs: {
    summary: "A coat goes over the silicone that a polish left.",
    why: "No wet coat stays on silicone: it draws back in round craters, which finishers call fisheyes, and further coats crater over them.",
    remedy:
      "Wipe a film with solvent on clean rags before it is sanded; where silicone has got into bare wood, seal it with a coat of dewaxed shellac.",
    sources: [
      `${TEXTBOOK}: silicone makes fisheyes, and shellac isolates it once the surface is cleaned`,
      PRACTICE,
    ],
  },
  failing: [
    {
      title: "A note tells of years of silicone polish, and only soap was at it",
      text: FILE(`  note   "It was sprayed with silicone polish for years."
  step   clean with soap
  wait   overnight
  step   scuff 220
  step   dust
  layer  oil_varnish #! silicone-below
`),
    },
    {
      title: "A note of the piece tells of it",
      text: FILE(
        `  step   clean with soap
  wait   overnight
  step   scuff 220
  step   dust
  layer  oil_varnish #! silicone-below
`,
        '  note  "Sprayed with silicone polish every week for years."\n',
      ),
    },
    {
      title: "Washed with a polish, scuffed and varnished",
      text: FILE(`  step   clean with shine
  step   scuff 220
  step   dust
  layer  oil_varnish x 2 { #! silicone-below
    wait until recoat
  }
`),
    },
    {
      title: "Soap takes no silicone off; without a job as well",
      text: `${POLISH}recipe polished {
  for    any
  safety dust_mask
  layer  waterborne_polyurethane
  wait   until cured
  step   buff with shine
  step   clean with soap
  step   scuff 320
  step   dust
  layer  waterborne_polyurethane #! silicone-below
  wait   until cured
}
`,
    },
    {
      title: "Sanded into the wood: a wash comes too late",
      text: FILE(`  step   clean with shine
  step   sand 100, 150, 180
  step   clean with mineral_spirits
  layer  oil_varnish #! silicone-below
`),
    },
  ],
  passing: [
    {
      title: "The silicone polish that words speak of is wiped off with spirits, or kept away",
      text: FILE(`  note   "It was sprayed with silicone polish for years."
  note   "Never use silicone polish on it again."
  step   clean with mineral_spirits
  wait   overnight
  step   scuff 220
  step   dust
  layer  oil_varnish
`),
    },
    {
      title: "Wiped off with solvent before the scuffing",
      text: FILE(`  step   clean with shine
  step   dewax with mineral_spirits
  step   scuff 220
  step   dust
  layer  oil_varnish
`),
    },
    {
      title: "In the wood, and sealed with shellac",
      text: FILE(`  step   clean with shine
  step   sand 100, 150, 180
  step   clean with mineral_spirits
  layer  dewaxed_shellac
  wait   until recoat
  layer  oil_varnish
`),
    },
    {
      title: "A remover, a polish that is free of it, and a paint that holds some",
      text: `material wash "Wax and silicone remover" {
  family degreaser
}
material dry_shine "Silicone-free polish" {
  family cleaner
}
## Alkyd with silicone resin, for what gets warm.
material warm_white {
  family alkyd paint
}
recipe renew {
  for    any
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   clean with wash
  step   buff with dry_shine
  layer  warm_white x 2 {
    wait until recoat
    step sand 240
    step dust
  }
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: (ctx) => {
      const { action, before, run, index, report } = ctx;
      const over = action.use.material?.family;
      const { silicone } = before;
      if (!over?.buildsFilm || over.binder === "shellac") return;
      if (!silicone) reportSpoken(ctx);
      if (!silicone || before.wax) return;
      const sanding = silicone.inWood ? drivingIn(run, index) : undefined;
      report({
        headline: silicone.inWood
          ? t`${useName(action.use)} goes over silicone that is in the wood`
          : t`${useName(action.use)} goes over silicone`,
        why: t`${useName(silicone.use)} left it there. The wet coat draws back from it in round craters, fisheyes, and no further coat closes them.`,
        remedy: silicone.inWood
          ? t`Seal the wood with a coat of dewaxed shellac first; a wash no longer gets all of it out.`
          : t`Wipe the surface with a solvent on clean rags first; soap and water do not take it.`,
        related: [
          related(silicone.place, t`The silicone comes on here`),
          ...(sanding ? [related(sanding.place, t`This sanding carries it into the wood`)] : []),
        ],
        fixes: silicone.inWood
          ? isSealable(over)
            ? [insertAbove("undertaking", action, t`Seal it with dewaxed shellac`, barrierLines(action))]
            : []
          : [insertAbove("undertaking", action, t`Wipe the silicone off first`, dewaxLines(action))],
      });
    },
  },
};

/**
 * Silicone that only words speak of: an old finish was polished with it, and nothing but soap and water has been at it.
 * Told once, at the first coat.
 */
function reportSpoken({ action, before, run, index, report }: MomentContext<LayerAction>): void {
  const isFirst = !run.moments.slice(0, index).some((earlier) => earlier.action.op === "layer");
  if (!isFirst || !before.layers.some((coat) => coat.origin !== "new")) return;
  const inRecipe = run.moments.find((moment) => speaksOfSilicone(textOf(moment.action) ?? ""));
  const spoken = inRecipe?.action.place ?? spokenOfPiece(run);
  if (!spoken || run.moments.slice(0, index).some((moment) => takesSilicone(moment.action))) return;
  report({
    headline: t`${useName(action.use)} goes over the silicone of an old polish`,
    why: t`The wet coat draws back from silicone in round craters, fisheyes, and no further coat closes them.`,
    remedy: t`Wipe the surface with a solvent on clean rags first; soap and water do not take it.`,
    related: [
      related(
        spoken,
        inRecipe ? t`These words speak of the silicone` : t`The notes here speak of the silicone`,
      ),
    ],
    fixes: [insertAbove("undertaking", action, t`Wipe the silicone off first`, dewaxLines(action))],
  });
}

/** The piece, or in another file the job, where what is said of them speaks of silicone. */
function spokenOfPiece({ owner, job, piece, surface }: SurfaceRun): Place | undefined {
  const said = [piece, surface, job].flatMap((named) => (named ? [named.docs, ...named.notes] : []));
  if (!said.some(speaksOfSilicone)) return undefined;
  return piece?.file === owner.file ? piece.namePlace : job?.namePlace;
}

/** "Sprayed with silicone polish": what was put on, and not what is kept away or has been taken off. */
const speaksOfSilicone = (text: string): boolean =>
  text
    .split(/[.;!?]/u)
    .some(
      (sentence) =>
        /\bsilicone\b/iu.test(sentence) &&
        /\b(?:polish\w*|spray\w*|waxed|wiped|furniture\s+care)\b/iu.test(sentence) &&
        !negates(sentence) &&
        !NOT_THERE.test(sentence),
    );

/** Beside plain denials: what was kept or taken away, or is only asked for. */
const NOT_THERE = /\b(?:free|avoid|removed?|took|taken\s+off|if|whether|test\w*)\b/iu;

const takesSilicone = (action: Action): boolean =>
  action.op === "step" &&
  (action.verb === "dewax" ||
    action.verb === "strip" ||
    (action.verb === "clean" && action.use?.material?.family?.role === "solvent"));

const isSealable = (over: Family): boolean => !cracksOver(over, family("dewaxed shellac"));

const drivingIn = (run: SurfaceRun, index: number) =>
  run.moments
    .slice(0, index)
    .find(
      ({ action, before, after }) =>
        action.op === "step" && before.silicone?.inWood === false && after.silicone?.inWood,
    )?.action;
