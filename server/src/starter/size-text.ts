/** The size of a piece as a person writes it. */
import type { PieceSize, PieceWord, UnitSystem } from "./answers.ts";
import { usualSize } from "./piece-text.ts";

/** A size in the units that it was written in, or what is wrong with it, as a sentence. */
export type ReadSize =
  | { readonly size: PieceSize; readonly units: UnitSystem }
  | { readonly problem: string };

/** Units in millimetres, and to which system they belong. */
const UNITS: Readonly<Record<string, readonly [millimetres: number, system: UnitSystem]>> = {
  mm: [1, "metric"],
  cm: [10, "metric"],
  m: [1000, "metric"],
  in: [25.4, "inches"],
  inch: [25.4, "inches"],
  inches: [25.4, "inches"],
  '"': [25.4, "inches"],
  ft: [304.8, "inches"],
  feet: [304.8, "inches"],
  "'": [304.8, "inches"],
};

const MOST_METRES = 20;

/**
 * `1200 x 700 x 740 mm`, `48 x 28 x 29 in`, `4 ft x 28" x 29"`: three sizes; one without a unit has that of the next
 * that has one.
 */
export function readSize(text: string, piece: PieceWord): ReadSize {
  const sizes = text
    .trim()
    .split(/[x×*]/iu)
    .map((size) => sizeOf(size.trim()));
  const last = sizes.at(-1);
  if (sizes.length !== 3 || sizes.some((size) => size === undefined) || last?.unit === undefined) {
    return { problem: `Write ${sizeExample(piece)}.` };
  }
  const { unit: shared } = last;
  const units = sizes.map((size) => UNITS[size?.unit ?? shared]);
  if (units.some((unit) => unit === undefined)) {
    return { problem: `Units are mm, cm, m, in and ft. Write ${sizeExample(piece)}.` };
  }
  const system = UNITS[shared]![1];
  const millimetres = sizes.map((size, i) => size!.value * units[i]![0]);
  if (millimetres.some((size) => size <= 0 || size > MOST_METRES * 1000)) {
    return {
      problem: `Each size is more than nothing and at most ${MOST_METRES} m. Write ${sizeExample(piece)}.`,
    };
  }
  const [length, width, height] = millimetres.map((size) => (system === "inches" ? size / 25.4 : size));
  return { size: [length!, width!, height!], units: system };
}

interface OneSize {
  readonly value: number;
  readonly unit?: string;
}

function sizeOf(text: string): OneSize | undefined {
  const [, figure, unit] = /^(\d{1,6}(?:[.,]\d{1,3})?) ?([a-z]{1,6}|["'])?$/iu.exec(text) ?? [];
  if (figure === undefined) return undefined;
  return { value: Number(figure.replace(",", ".")), ...(unit ? { unit: unit.toLowerCase() } : {}) };
}

/** `1200 x 700 x 740 mm`, length, width and height of a usual piece. */
export const sizeText = (piece: PieceWord, units: UnitSystem): string =>
  `${usualSize(piece, units).join(" x ")} ${units === "metric" ? "mm" : "in"}`;

/** What is asked for, with an example in either unit. */
export function sizeExample(piece: PieceWord): string {
  const what = piece === "board" ? "length x width x thickness" : "length x depth x height";
  return `${what}, such as ${sizeText(piece, "metric")} or ${sizeText(piece, "inches")}`;
}
