/**
 * A film on an old or slick surface that gives it no hold: an old finish, laminate, metal. A fresh coat in its recoat
 * window needs no scuffing, and what is past its window is the business of `recoat-too-late`.
 *
 * Paint straight on a slick surface lacks a primer as well, which `slick-surface-without-primer` says together. A clear
 * on bare metal keeps that bright, so it goes on clean and unscuffed.
 */
import { lowerFirst, t, translated } from "../../../../../grammar/src/translate.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { sentence } from "../../sentence.ts";
import {
  type Coat,
  hasReached,
  isAbradedSince,
  isFilm,
  type SurfaceState,
  topCoat,
  waitedOf,
} from "../../surface/state.ts";
import { isPorousPaint, meltsInto, scuffLines, slickName, slickSubstrate } from "../coat-queries.ts";
import { leadIn } from "../lead-caution.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, insertAbove, layerBelow, related, useName } from "../texts.ts";

export const coatOnUnscuffedSurface: TradeRule = {
  id: "coat-on-unscuffed-surface",
  group: "layers",
  severity: "warning",
  docs: {
    summary: "A film goes on an old or slick film, on laminate or on metal that was not abraded.",
    why: "A hardened, smooth surface gives the new film nothing to hold on, and it scratches off with a fingernail.",
    remedy:
      "Scuff with 220 to 320 grit and dust before the coat. Shellac over shellac and lacquer over lacquer melt together and need no scuffing. Paint that may hold lead is better left unbroken, so a bonding or shellac primer on it, washed, is a hint.",
    sources: [
      "UFC 3-190-06 section 2.4: smooth, fully cured enamel is sanded lightly before it is painted",
      "laminate and metal: common practice, no source",
      "a clear on bright metal without scuffing: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Paint on an old finish",
      text: `piece box "Box" {
  built 1995
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil polyurethane
  }
}
recipe painted {
  step  clean with soap
  layer acrylic_paint x 2 { #! coat-on-unscuffed-surface
    wait until recoat
  }
  wait  until cured
}
job boxes {
  piece box
  apply painted to lid
}
`,
    },
    {
      title: "Primer on laminate, in a recipe for laminate",
      text: `recipe painted {
  for   laminate
  step  clean with soap
  layer bonding_primer #! coat-on-unscuffed-surface
  wait  until recoat
  layer acrylic_paint
  wait  until cured
}
`,
    },
    {
      title: "A toner on an old finish",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing nitrocellulose lacquer
  }
}
recipe darker {
  safety ventilate, no_ignition, gloves, wet_rags
  step   clean with soap
  layer  gel_stain, as toner #! coat-on-unscuffed-surface
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
job boxes {
  piece box
  apply darker to lid
}
`,
    },
    {
      title: "What an earlier job left years ago is an old finish",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
  }
}
piece same_box "The same box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing as left by first
  }
}
recipe varnished {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_varnish
  wait   until cured
}
recipe again {
  safety ventilate, no_ignition, gloves, wet_rags
  step   clean with soap
  layer  oil_varnish #! coat-on-unscuffed-surface
  wait   until cured
}
job first {
  piece box
  apply varnished to lid
}
job second {
  piece same_box
  apply again to lid
}
`,
    },
  ],
  passing: [
    {
      title: "Scuffed, and a fresh coat within its window",
      text: `piece box "Box" {
  built 1995
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil polyurethane
  }
}
recipe painted {
  safety dust_mask
  step  clean with soap
  step  scuff 220
  step  dust
  layer acrylic_paint x 2 {
    wait until recoat
  }
  wait  until cured
}
job boxes {
  piece box
  apply painted to lid
}
`,
    },
    {
      title: "Shellac melts into old shellac, and bare wood has no film",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing waxed shellac
  }
  surface inside {
    shape    panel 300 mm x 200 mm
    wood     beech
  }
}
recipe renew {
  safety ventilate, no_ignition, gloves
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
  apply renew to lid
  apply sealed to inside
}
`,
    },
    {
      title: "Clear lacquer, shellac and wax on bright, clean metal",
      text: `piece lamp "Reading lamp" {
  surface stem {
    shape round 20 mm x 400 mm
    wood  brass
  }
  surface foot {
    shape disc 180 mm
    wood  copper
  }
}
recipe bright {
  for    metal
  safety ventilate, no_ignition, gloves, eye_protection, vapour_respirator
  step   clean with acetone
  layer  nitrocellulose_lacquer, by hvlp
  wait   until cured
}
recipe polished {
  for    metal
  safety ventilate, no_ignition, gloves
  step   clean with alcohol
  layer  dewaxed_shellac x 2 {
    wait until recoat
  }
  wait   until cured
  layer  paste_wax
  wait   until cured
}
job lamps {
  piece lamp
  apply bright to stem
  apply polished to foot
}
`,
    },
    {
      title: "Scuffed laminate, with the primer that bonds",
      text: `recipe painted {
  for    laminate
  safety dust_mask
  step   clean with soap
  step   scuff 220
  step   dust
  layer  bonding_primer
  wait   until recoat
  layer  acrylic_paint
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, report }) => {
      const over = action.use.material?.family;
      const isFilmLike = over?.buildsFilm || isHardFiller(over) || action.toner;
      if (!over || !(isFilmLike || isHardFiller(topCoat(before)?.family))) return;
      const name = useName(action.use);
      const why = t`Such a smooth, hard surface gives a film no hold, and it scratches or peels off.`;
      const slick = slickSubstrate(run);
      const slickWord = translated(slickName(run) ?? "");
      if (before.layers.length === 0) {
        if (!slick || before.abrasions.length > 0 || over.role === "paint") return;
        if (slick === "metal" && over.role === "clear") return;
        const wood = run.surface?.substrate.place;
        report({
          headline: t`${name} goes on ${slickWord} that was not scuffed`,
          why,
          remedy: t`Scuff it lightly with 220 grit and dust it off first.`,
          damp: t`Scuff it wet by hand with 220 grit and wipe it clean with a damp cloth.`,
          abrades: "surface",
          related: wood ? [related(wood, t`What the surface is made of`)] : [],
          fixes: [
            insertAbove("undertaking", action, t`Scuff and dust the surface first`, scuffLines(action)),
          ],
        });
        return;
      }
      const below = before.layers.findLast((coat) => coat.family?.role !== "wax");
      if (!below || !isOldFilm(before, below) || isAbradedSince(below) || isPorousPaint(below)) return;
      if (below.family && meltsInto(over, below.family)) return;
      report({
        headline: t`${sentence(name)} goes on ${coatName(below)} without scuffing`,
        why,
        remedy: t`Scuff with 220 to 320 grit and dust it off first.${trial(over, below)}`,
        damp: `${unbroken(over)}${over.role === "paint" ? "" : trial(over, below)}`,
        // A primer that is made for it holds on most washed paint, and what holds lead is better left unbroken.
        ...(isBonding(over) && leadIn(run, [below]) ? { severity: "hint" as const } : {}),
        abrades: "surface",
        related: [layerBelow(below)],
        // Where it may hold lead, the engine takes this away.
        fixes: [
          insertAbove("undertaking", action, t`Scuff and dust the old finish first`, scuffLines(action)),
        ],
      });
    },
  },
};

const wetScuff = (): string =>
  t`Scuff wet by hand with 220 to 320 grit (\`step scuff wet 220\`) and wipe it clean with a damp cloth.`;

const isBonding = ({ name }: Family): boolean => name === "bonding primer" || name === "shellac primer";

/** What spares the rubbing of paint that may hold lead: common practice, no source; the primer's label decides. */
function unbroken(over: Family): string {
  const scuffing = wetScuff();
  if (isBonding(over))
    return t`If its label asks for no sanding, only wash the old coat and try on a small spot whether it holds (tape pressed on a cut and pulled off). Else ${lowerFirst(scuffing)}`;
  return over.role === "paint"
    ? t`Best leave the old coat unbroken: wash it and put a bonding primer on first (\`layer bonding_primer\`, \`wait until recoat\`) whose label asks for no sanding. Else ${lowerFirst(scuffing)}`
    : scuffing;
}

/**
 * Water over an old oil film holds less surely than oil does, also where it was scuffed: common practice, no source; the
 * trial with a cut and tape is that of ASTM D3359 (from memory).
 */
const trial = (over: Family, below: Coat): string =>
  over.drying === "waterborne" && over.role === "paint" && below.family?.drying === "oxidising"
    ? t` Then try whether the paint holds on a small spot (tape pressed on a cut and pulled off), or put a bonding primer on first (\`layer bonding_primer\`).`
    : "";

/** A film from before this work that has had time to harden; on a film that has not, the label's window decides. */
function isOldFilm(state: SurfaceState, coat: Coat): boolean {
  if (isHardFiller(coat.family)) return hasReached(state, coat, "cured") === "yes";
  if (!isFilm(coat) || coat.origin === "new") return false;
  if (hasReached(state, coat, "cured") === "yes") return true;
  const latest = coat.material?.recoat?.value.latest;
  return latest !== undefined && waitedOf(state, coat).hours > latest;
}

/** They cure hard, one slick and one with a sticky skin, so even a new one is abraded. */
const isHardFiller = (row: Family | undefined): boolean =>
  row?.name === "epoxy filler" || row?.name === "polyester filler";
