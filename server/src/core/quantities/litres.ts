/**
 * How many litres a layer or a step takes, of each of the liquids in its mix.
 *
 * Arithmetic: mix = area · pieces · coats · (1 / spreading rate · laydown, or the wet film) / transfer
 * efficiency · (1 + spare). The tint is a share of the mix; what is left is divided between material and thinner in the
 * stated parts. Nothing of a hand method misses the piece, so its efficiency counts as 1; that a pad or a cloth lays less than a
 * brush is its laydown.
 *
 * Transfer efficiencies of sprayers: 65 % is the bar that air-quality rules set for HVLP (South Coast AQMD, spray
 * equipment transfer efficiency); 50 % for airless is common practice, no source. Both are the
 * notation's own round figures. `spray` alone says neither, and counts as the less efficient one.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { METHODS } from "../../../../grammar/src/vocabulary.ts";
import { exactArea, exactFilm, exactLitres } from "../measure/figures.ts";
import { formatNumber } from "../measure/format-amount.ts";
import type { Laydown } from "./laydown.ts";

export type Method = (typeof METHODS)[number];

/** Share of what leaves the can that ends on the piece, above what a label's rate already allows for; 0 to 1. */
export const TRANSFER_EFFICIENCY: Readonly<Record<Method, number>> = {
  brush: 1,
  roller: 1,
  pad: 1,
  foam: 1,
  cloth: 1,
  rubber: 1,
  spray: 0.5,
  hvlp: 0.65,
  airless: 0.5,
};

export interface LayerLitresInput {
  /** Of one piece. */
  readonly areaM2: number;
  readonly pieces: number;
  readonly coats: number;
  readonly coversM2PerL?: number;
  /** Wet film as measured, in micrometres; in place of the spreading rate. */
  readonly wetUm?: number;
  readonly method: Method;
  /** Share of what leaves the gun that lands, 0 to 1, in place of the method's own. */
  readonly transfer?: number;
  /** Share of a brushed coat that is laid; a whole one where nothing is said. Not for a stated wet film. */
  readonly laydown?: Laydown;
  readonly sparePercent: number;
  /** Parts of the material to parts of thinner. */
  readonly thinned?: { readonly a: number; readonly b: number };
  /** Share of the tint in the mix, 0 to 100. */
  readonly tintPercent?: number;
}

/** All in litres, for all pieces and coats, spare included. `mixL` is the sum of the others. */
export interface LayerLitres {
  readonly mixL: number;
  readonly materialL: number;
  readonly thinnerL: number;
  readonly tintL: number;
  readonly working: string;
}

/** The litres of a layer. With neither a spreading rate nor a wet film nothing is known, and all are 0. */
export function layerLitres(input: LayerLitresInput): LayerLitres {
  const rate = litresPerM2(input.coversM2PerL, input.wetUm, input.laydown);
  if (rate === undefined) {
    return { mixL: 0, materialL: 0, thinnerL: 0, tintL: 0, working: t`no spreading rate is known` };
  }
  const efficiency = input.transfer ?? TRANSFER_EFFICIENCY[input.method];
  const { areaM2, pieces, coats, sparePercent } = input;
  const mixL = ((areaM2 * pieces * coats * rate.litres) / efficiency) * (1 + sparePercent / 100);
  const working = [
    `${exactArea(areaM2)}`,
    pieces === 1 ? "" : t` × ${formatNumber(pieces, 2)} pieces`,
    coats === 1 ? "" : t` × ${formatNumber(coats, 2)} coats`,
    rate.working,
    efficiency === 1 ? "" : ` / ${efficiency} (${input.method})`,
    sparePercent === 0 ? "" : ` × ${formatNumber(1 + sparePercent / 100, 4)}`,
    ` = ${exactLitres(mixL)}`,
  ].join("");
  return { mixL, ...splitMix(mixL, input.thinned, input.tintPercent), working };
}

export interface StepLitresInput {
  /** Of one piece. */
  readonly areaM2: number;
  readonly pieces: number;
  readonly coversM2PerL?: number;
  /** `uses 50 mL`, in litres, for one piece's surface; it stands as it is, without spare. */
  readonly usesL?: number;
  readonly sparePercent: number;
  /** `fill` uses what the step says and nothing else. */
  readonly onlyAsStated?: boolean;
}

/** The litres of a step `with M`; 0 where neither the step nor the material says how much. */
export function stepLitres(input: StepLitresInput): { readonly litres: number; readonly working: string } {
  const { areaM2, pieces, coversM2PerL, usesL, sparePercent } = input;
  const many = pieces === 1 ? "" : t` × ${formatNumber(pieces, 2)} pieces`;
  if (usesL !== undefined) {
    const litres = usesL * pieces;
    return {
      litres,
      working: `${exactLitres(usesL)}${many}${many && ` = ${exactLitres(litres)}`}`,
    };
  }
  if (input.onlyAsStated || coversM2PerL === undefined || coversM2PerL <= 0) {
    return { litres: 0, working: t`the amount is not stated` };
  }
  const litres = ((areaM2 * pieces) / coversM2PerL) * (1 + sparePercent / 100);
  const spare = sparePercent === 0 ? "" : ` × ${formatNumber(1 + sparePercent / 100, 4)}`;
  const rate = `${formatNumber(coversM2PerL, 3)} m2/L`;
  return {
    litres,
    working: `${exactArea(areaM2)}${many} / ${rate}${spare} = ${exactLitres(litres)}`,
  };
}

/** The two parts of a mixed material, `mix 10:1 with hardener`: `litres` of the two together in parts a to b. */
export function mixLitres(
  litres: number,
  a: number,
  b: number,
): { readonly materialL: number; readonly hardenerL: number } {
  const hardenerL = (litres * b) / (a + b);
  return { materialL: litres - hardenerL, hardenerL };
}

/** Parts of the material to parts of its hardener. */
export interface MixParts {
  readonly a: number;
  readonly b: number;
}

/** Parts by volume of parts by weight: weight / density. Unknown without the density of both; g/L, above 0. */
export function volumesOfWeights(
  { a, b }: MixParts,
  densityA: number | undefined,
  densityB: number | undefined,
): MixParts | undefined {
  return densityA === undefined || densityB === undefined ? undefined : { a: a / densityA, b: b / densityB };
}

function litresPerM2(
  coversM2PerL: number | undefined,
  wetUm: number | undefined,
  laydown: Laydown | undefined,
): { readonly litres: number; readonly working: string } | undefined {
  // One micrometre on a square metre is one millilitre.
  if (wetUm !== undefined) return { litres: wetUm / 1000, working: t` × ${exactFilm(wetUm)} wet` };
  if (coversM2PerL === undefined || coversM2PerL <= 0) return undefined;
  const full = ` / ${formatNumber(coversM2PerL, 3)} m2/L`;
  if (laydown === undefined || laydown.share === 1) return { litres: 1 / coversM2PerL, working: full };
  return {
    litres: laydown.share / coversM2PerL,
    working: `${full} × ${formatNumber(laydown.share, 2)} (${laydown.name})`,
  };
}

function splitMix(
  mixL: number,
  thinned: { readonly a: number; readonly b: number } | undefined,
  tintPercent = 0,
): { readonly materialL: number; readonly thinnerL: number; readonly tintL: number } {
  const tintL = (mixL * tintPercent) / 100;
  const rest = mixL - tintL;
  const thinnerL = thinned === undefined ? 0 : (rest * thinned.b) / (thinned.a + thinned.b);
  return { materialL: rest - thinnerL, thinnerL, tintL };
}
