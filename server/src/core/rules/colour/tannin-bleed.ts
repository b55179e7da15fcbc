/**
 * Light waterborne paint on wood whose tannin or knots come through it.
 *
 * A wash or another thin, sheer coat stains as much, but there a colour of the wood is hardly a fault: a hint.
 * A shellac, or a primer or paint in oil, holds them back; so does old paint that stays on. A dark paint, or one whose
 * colour is not stated, shows nothing that is certain.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { shadeOfMaterial } from "../../colour.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { HANDBOOK_TANNIN, TEXTBOOK } from "../../knowledge/sources.ts";
import type { Wood } from "../../knowledge/wood-schema.ts";
import { EXTRACTIVES_SOURCE } from "../../knowledge/woods.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { Coat } from "../../surface/state.ts";
import { stainBlockLines } from "../coat-queries.ts";
import { woodOf } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { insertAbove, related } from "../texts.ts";

const FILE = (
  wood: string,
  colour: string,
  steps: string,
  gloves = "",
) => `material milk_white "Trim enamel" {
  family acrylic paint
  colour ${colour}
}
piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  ${wood}
  }
}
recipe painted {
  for    wood
  safety ${gloves}dust_mask, ventilate, no_ignition
  step   sand 120, 150
  step   dust
${steps}  wait   until cured
}
job shelves {
  piece shelf
  apply painted to top
}
`;

export const tanninBleed: TradeRule = {
  id: "tannin-bleed",
  group: "colour",
  severity: "warning",
  docs: {
    summary:
      "Light waterborne paint goes on wood that bleeds (tannin, knots, coloured extractives) without a stain-blocking primer or shellac; a hint for a wash, and for milk paint on raw softwood.",
    why: "The water of the paint draws tannin, resin and coloured extractives out of the wood, and they dry as yellow or brown stains in the paint, often weeks later.",
    remedy: "Prime with shellac primer (knots above all), a stain-blocking primer or an alkyd primer first.",
    sources: [HANDBOOK_TANNIN, EXTRACTIVES_SOURCE, TEXTBOOK],
  },
  failing: [
    {
      title: "White on oak",
      text: FILE("white oak", "white", "  layer  milk_white #! tannin-bleed\n"),
    },
    {
      title: "Cypress bleeds without tannin, too",
      text: FILE("cypress", "white", "  layer  milk_white #! tannin-bleed\n"),
    },
    {
      title: "So do sapele and iroko",
      text: ["sapele", "iroko"]
        .map((wood) =>
          FILE(
            wood,
            "white",
            `  layer  milk_white #! tannin-bleed${wood === "sapele" ? "" : ", sealer-missing"}\n`,
            "gloves, ",
          ),
        )
        .map((text, at) =>
          at === 0
            ? text
            : text
                .slice(text.indexOf("piece shelf"))
                .replaceAll(/\b(shelf|painted|shelves)\b/gu, `$1_${at + 1}`),
        )
        .join("\n"),
    },
    {
      title: "A thinned wash on oak, as a hint",
      text: FILE(
        "white oak",
        "white",
        "  layer  milk_white, wiped off after 2 min, thinned 1:1 with water #! tannin-bleed\n",
      ),
    },
    {
      title: "Milk paint on raw spruce, as a hint",
      text: FILE("spruce", "white", "  layer  milk_white #! tannin-bleed, unprotected-layer\n").replace(
        "acrylic",
        "milk",
      ),
    },
    {
      title: "An acrylic primer does not hold knots back",
      text: FILE(
        "pine",
        '"#f1ede2"',
        `  layer  acrylic_primer
  wait   until recoat
  step   sand 220
  step   dust
  layer  milk_white #! tannin-bleed
`,
      ),
    },
  ],
  passing: [
    {
      title: "Shellac primer first",
      text: FILE(
        "white oak",
        "white",
        `  layer  shellac_primer
  wait   until recoat
  layer  milk_white
`,
      ),
    },
    {
      title: "A stain-blocking primer in water, a day dry",
      text: FILE(
        "white oak",
        "white",
        `  layer  stain_blocking_primer
  wait   until recoat
  step   sand 220
  step   dust
  layer  milk_white
`,
      ),
    },
    { title: "A dark paint", text: FILE("white oak", '"#2b3a42"', "  layer  milk_white\n") },
    { title: "Wood with neither", text: FILE("beech", "white", "  layer  milk_white\n") },
  ],
  looksAt: ({ roles }) => roles.has("paint"),
  checks: {
    onLayer: ({ action, before, run, report }) => {
      const over = action.use.material?.family;
      const wood = woodOf(run);
      const bleeds = wood && bleedOf(wood);
      if (!bleeds || !over || !isLightWaterPaint(over.role, over.drying, action)) return;
      if (before.openBelow || before.layers.some(holdsBack) || before.layers.some(isSuchPaint)) return;
      report({
        ...(isWash(action) || isOldCustom(over, wood) ? { severity: "hint" as const } : {}),
        headline: bleeds.headline(translated(wood.name), `\`${action.use.name}\``),
        why: bleeds.why(),
        remedy: wood.knotty
          ? t`Apply shellac primer or an alkyd primer between the wood and the paint.`
          : t`Apply shellac primer, a stain-blocking primer or an alkyd primer between the wood and the paint.`,
        ...(run.surface?.substrate.place
          ? { related: [related(run.surface.substrate.place, t`The surface is ${translated(wood.name)}`)] }
          : {}),
        fixes:
          action.coat === 1
            ? [insertAbove("undertaking", action, t`Prime with shellac primer`, stainBlockLines(action))]
            : [],
      });
    },
  },
};

interface Bleed {
  readonly headline: (wood: string, paint: string) => string;
  readonly why: () => string;
}

const TANNIN: Bleed = {
  headline: (wood, paint) => t`Tannin from the ${wood} will show through ${paint}`,
  why: () => t`The water in it draws out the tannin, which dries as yellow or brown stains in the paint.`,
};
const RESIN: Bleed = {
  headline: (wood, paint) => t`Resin from the ${wood} will show through ${paint}`,
  why: () => t`The water in it draws out the resin, which dries as yellow or brown stains in the paint.`,
};
const COLOUR: Bleed = {
  headline: (wood, paint) => t`Colour from the ${wood} will show through ${paint}`,
  why: () => t`The water in it draws out the colour, which dries as yellow or brown stains in the paint.`,
};

/** What comes out of the wood. */
function bleedOf(wood: Wood): Bleed | undefined {
  if (wood.tannin === "rich") return TANNIN;
  if (wood.knotty) return RESIN;
  return wood.bleeds ? COLOUR : undefined;
}

/** Thinned by a third or more, or wiped off: the wood is meant to be seen. */
const isWash = ({ thinned, wiped }: LayerAction): boolean =>
  Boolean(wiped) || (thinned !== undefined && thinned.b / thinned.a >= 1 / 3);

/** Milk paint on raw softwood, whose resin may come through and is put up with: common practice, no source. */
const isOldCustom = ({ name }: Family, wood: Wood): boolean =>
  name === "milk paint" && wood.tannin !== "rich" && wood.knotty;

const isLightWaterPaint = (role: string, drying: string, layer: LayerAction): boolean =>
  role === "paint" && drying === "waterborne" && shadeOfMaterial(layer.use.material) === "light";

/** A coat that keeps the stains back, or of which one cannot say that it does not. */
const holdsBack = ({ family, unknown, origin }: Coat): boolean =>
  family === undefined
    ? unknown !== "clear"
    : family.blocksTannin === true ||
      family.binder === "alkyd" ||
      (family.role === "paint" && origin === "existing");

/** The same trouble was said of the paint below. */
const isSuchPaint = ({ action, family }: Coat): boolean =>
  action !== undefined && family !== undefined && isLightWaterPaint(family.role, family.drying, action);
