/** The piece of a new recipe: its surfaces with shapes from three outer sizes, the wood, and what is on it. */
import type {
  Answers,
  CoatingWord,
  LookWord,
  PieceSize,
  PieceWord,
  UnitSystem,
  WoodWord,
} from "./answers.ts";
import { block, type Line } from "./block-text.ts";

export interface StarterPiece {
  /** As a job names it. */
  readonly name: string;
  readonly title: string;
  readonly surfaces: readonly StarterSurface[];
}

interface StarterSurface {
  readonly name: string;
  readonly shapes: readonly string[];
  /** Whether it has the wear that the look is for; else one step less. */
  readonly isWorn: boolean;
}

/** Sizes of usual furniture, in millimetres and inches. */
const USUAL: Readonly<Record<PieceWord, Readonly<Record<UnitSystem, PieceSize>>>> = {
  table: { metric: [1200, 700, 740], inches: [48, 28, 29] },
  chair: { metric: [450, 450, 860], inches: [18, 18, 34] },
  bench: { metric: [1000, 350, 450], inches: [40, 14, 18] },
  cabinet: { metric: [900, 450, 1200], inches: [36, 18, 48] },
  bookcase: { metric: [900, 300, 1800], inches: [36, 12, 72] },
  chest: { metric: [900, 500, 500], inches: [36, 20, 20] },
  board: { metric: [1000, 300, 22], inches: [40, 12, 0.75] },
};

/** Length, width and height of a usual piece. */
export const usualSize = (piece: PieceWord, units: UnitSystem): PieceSize => USUAL[piece][units];

const SURFACES: Readonly<Record<PieceWord, (size: PieceSize, by: Sizing) => readonly StarterSurface[]>> = {
  table: ([l, w, h], { by, thin }) => [
    { name: "top", shapes: [`panel ${by(l, w, thin(25))}`], isWorn: true },
    {
      name: "base",
      shapes: [`band ${by(l * 0.85, w * 0.75, thin(90))}`, `4 of post ${by(thin(60), h - thin(25))}`],
      isWorn: false,
    },
  ],
  chair: ([l, w, h], { by, thin }) => [
    {
      name: "frame",
      shapes: [
        `2 of post ${by(thin(35), h * 0.5)}`,
        `2 of post ${by(thin(35), h)}`,
        `4 of round ${by(thin(20), w * 0.9)}`,
        `panel ${by(l, w, thin(20))}, both faces`,
        `panel ${by(l * 0.9, h * 0.2, thin(15))}, both faces`,
      ],
      isWorn: true,
    },
  ],
  bench: ([l, w, h], { by, thin }) => [
    { name: "seat", shapes: [`panel ${by(l, w, thin(30))}`], isWorn: true },
    { name: "legs", shapes: [`4 of post ${by(thin(45), h - thin(30))}`], isWorn: false },
  ],
  cabinet: ([l, w, h], { by, thin }) => [
    { name: "case", shapes: [`box ${by(l, w, h)}, no bottom`], isWorn: true },
    { name: "doors", shapes: [`2 of panel ${by(h * 0.9, l * 0.48, thin(20))}, both faces`], isWorn: true },
  ],
  bookcase: ([l, w, h], { by, thin }) => [
    {
      name: "case",
      shapes: [`box ${by(l, w, h)}, open front`, `4 of panel ${by(l * 0.96, w, thin(20))}, both faces`],
      isWorn: true,
    },
  ],
  chest: ([l, w, h], { by }) => [
    { name: "outside", shapes: [`box ${by(l, w, h)}, no bottom`], isWorn: true },
  ],
  board: ([l, w, h], { by }) => [
    { name: "faces", shapes: [`panel ${by(l, w, h)}, both faces`], isWorn: true },
  ],
};

interface Sizing {
  /** Sizes as a shape writes them. */
  readonly by: (...sizes: readonly number[]) => string;
  /** A usual thickness, given in millimetres, in the units of the sizes. */
  readonly thin: (millimetres: number) => number;
}

const SIZING: Readonly<Record<UnitSystem, Sizing>> = {
  metric: sizing("mm", 1, 1),
  inches: sizing("in", 25.4, 0.25),
};

/** Rounded to a step, of which no size is less than one. */
function sizing(unit: string, millimetresPerUnit: number, step: number): Sizing {
  return {
    by: (...sizes) =>
      sizes.map((size) => `${Math.max(step, Math.round(size / step) * step)} ${unit}`).join(" x "),
    thin: (millimetres) => millimetres / millimetresPerUnit,
  };
}

const TITLES: Readonly<Record<PieceWord, string>> = {
  table: "Table",
  chair: "Chair",
  bench: "Bench",
  cabinet: "Cabinet",
  bookcase: "Bookcase",
  chest: "Chest",
  board: "Board",
};

export function starterPiece({ piece, size, units }: Answers): StarterPiece {
  const surfaces = SURFACES[piece](size ?? usualSize(piece, units), SIZING[units]);
  return { name: `my_${piece}`, title: TITLES[piece], surfaces };
}

const WOOD: Readonly<Record<WoodWord, string>> = {
  oak: "oak",
  ash: "ash",
  beech: "beech",
  birch: "birch",
  maple: "maple",
  cherry: "cherry",
  walnut: "walnut",
  mahogany: "mahogany",
  teak: "teak",
  pine: "pine",
  veneer: "unknown, veneer 0.6 mm",
  plywood: "plywood",
  mdf: "MDF",
  laminate: "laminate",
  unknown: "unknown",
};

const EXISTING: Readonly<Record<CoatingWord, string>> = {
  bare: "bare",
  varnish: "oil varnish",
  lacquer: "nitrocellulose lacquer",
  shellac: "shellac",
  oil: "drying oil",
  wax: "paste wax",
  paint: "unknown paint",
  unknown: "unknown clear",
};

const WEAR: Readonly<Record<LookWord, readonly [worn: string, other: string]>> = {
  clear: ["hard", "normal"],
  warm: ["hard", "normal"],
  stained: ["hard", "normal"],
  oiled: ["normal", "normal"],
  painted: ["normal", "normal"],
  outdoors: ["normal", "normal"],
  kept: ["normal", "normal"],
  shellac: ["light", "light"],
  waxed: ["light", "light"],
};

/** The declaration of a piece. */
export function pieceText(answers: Answers, { name, title, surfaces }: StarterPiece): string {
  const { wood, now, look } = answers;
  return block(
    `piece ${name} "${title}"`,
    surfaces.map(({ name: surface, shapes, isWorn }) => [
      `surface ${surface}`,
      [
        ...shapes.map((shape): Line => ["shape", shape]),
        ["wood", WOOD[wood]],
        ["existing", EXISTING[now]],
        ["wear", WEAR[look][isWorn ? 0 : 1]],
        ...(look === "outdoors" ? [["outdoors", "rain, sun"] as const] : []),
      ],
    ]),
  );
}
