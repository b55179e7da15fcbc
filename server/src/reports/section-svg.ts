/**
 * The cut through a surface as an SVG drawing: new films to scale, old coats and wood not, and a zigzag says so. It
 * needs no style sheet, loads nothing, draws text in the colour around it, and names no id, so that several can stand
 * on one page. Every coat is a group with its step and its place in the run, for whoever wants to point at it.
 */

import { translated } from "../../../grammar/src/translate.ts";
import { filmText, litresText } from "../core/measure/figures.ts";
import { htmlText } from "../escape/html.ts";
import type { OldCoats, Section, SectionCoat } from "../views/section/model.ts";

/** In px of the drawing. */
const AXIS = 34;
const BLOCK = 112;
const GAP = 10;
const LABEL = 27;
const THIN = 4;
const UNKNOWN_FILM = 30;
const OLD = 11;
const WOOD = 30;
const VENEER = 14;
const SOAKED = 7;
const TALLEST = 170;
const FONT = 'font-family="inherit" font-size="12"';

export interface SectionLook {
  /** Of the whole drawing; labels take what the block leaves. */
  readonly width: number;
  /** px for a micrometre, see `sectionScale`. */
  readonly scale: number;
  /** How litres are told. */
  readonly litres?: (litres: number) => string;
  /** Of the surface, before the numbers of its steps. */
  readonly letter?: string;
  /** The drawing alone, for where a list beside it says what it shows; `width` is then that of the drawing. */
  readonly isBare?: boolean;
  /** With the micrometres at its left; not given: yes. */
  readonly hasAxis?: boolean;
  /** Of each coat, whether it is on; the others are outlined where they will be. Not given: all are. */
  readonly isOn?: readonly boolean[];
  /** How its few words are said; not given: in the language of the process. */
  readonly say?: Say;
}

/** Says a text in the language of who reads it, with `{0}` and so on filled. */
export type Say = (text: string, ...args: readonly (string | number)[]) => string;

const spoken: Say = (text, ...args) =>
  translated(text).replace(/\{(\d)\}/gu, (_, at: string) => String(args[Number(at)]));

/** Of a drawing without labels. */
export const BARE_WIDTH = AXIS + BLOCK + 4;

/** One scale for surfaces that stand side by side, such that the thickest of them is no taller than 170 px. */
export function sectionScale(sections: readonly Section[]): number {
  const thickest = Math.max(1, ...sections.map(({ coats }) => thicknessUm(coats)));
  return Math.min(1.2, Math.max(0.2, TALLEST / thickest));
}

const thicknessUm = (coats: readonly SectionCoat[]): number =>
  coats.reduce((sum, { dryUm }) => sum + (dryUm ?? 0), 0);

export const sectionSvg = (section: Section, look: SectionLook): string => sectionDrawing(section, look).svg;

/** Of outlines, and of what cuts the wood short as if the paper showed through. */
const OUTLINE = "#3a3a3a";
const PAPER = "#ffffff";

/** How tall the new films are at most in a small picture, px. */
const SMALL = 90;
/** Around a small picture, px: it has nothing else around it. */
const MARGIN = 6;
/** Lines that show on a light ground and on a dark one: 3.9 on white, 4.1 on #202020, by WCAG 2.1. */
const ON_ANY_GROUND = "#808080";

/**
 * A small drawing as the address of a picture that stands by itself. Nobody knows on which ground, so that it has none, its
 * lines hold on any, and it has no text, which no colour could make easy to read on all: `sectionLines` says what it shows.
 */
export function sectionPicture(section: Section): string {
  const scale = (sectionScale([section]) * SMALL) / TALLEST;
  const { svg, width, height, from, to } = sectionDrawing(section, {
    width: BARE_WIDTH,
    scale,
    isBare: true,
    hasAxis: false,
  });
  const [left, wide, tall] = [from - MARGIN, to - from + 2 * MARGIN, round(height + 2 * MARGIN)];
  const framed = svg
    .replace(
      `<svg class="section" role="img"`,
      `<svg xmlns="http://www.w3.org/2000/svg" style="color:${ON_ANY_GROUND}"`,
    )
    .replace(
      `viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"`,
      `viewBox="${left} ${-MARGIN} ${wide} ${tall}" width="${wide}" height="${tall}"`,
    )
    .replaceAll(`stroke="${OUTLINE}"`, `stroke="${ON_ANY_GROUND}"`)
    .replaceAll(`stroke="${PAPER}" stroke-width="5"`, 'stroke="none"');
  return `data:image/svg+xml;base64,${btoa(String.fromCharCode(...new TextEncoder().encode(framed)))}`;
}

/** What the drawing shows from the top down, a line for each material: `Hall clear, 3 coats, 33 µm each`. */
export function sectionLines({ wood, old, coats }: Section, say: Say = spoken): readonly string[] {
  const rows: { readonly coat: SectionCoat; count: number }[] = [];
  for (const coat of coats) {
    const below = rows.at(-1);
    const isSame = below?.coat.title === coat.title && filmOf(below.coat, say) === filmOf(coat, say);
    if (isSame) below!.count += 1;
    else rows.push({ coat, count: 1 });
  }
  const lines = [
    [wood.name, wood.assumed ?? ""],
    ...old.map((each) => [oldText(each, say), keptText(each, "", say)]),
    ...rows.map(({ coat, count }) =>
      count === 1
        ? [coat.title, coatNumber(coat, say), filmOf(coat, say)]
        : [
            coat.title,
            say("{0} coats", count),
            coat.isFilm && coat.dryUm !== undefined ? say("{0} each", filmOf(coat, say)) : filmOf(coat, say),
          ],
    ),
  ];
  return lines.toReversed().map((parts) => parts.filter(Boolean).join(", "));
}

/** A drawing, and where its parts stand in it, for whoever lays something over it. All in px of the drawing. */
export interface SectionDrawing {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
  /** Left and right edge of the block. */
  readonly from: number;
  readonly to: number;
  /** Of the middle of each coat, by its position among the coats of the section. */
  readonly coats: readonly number[];
  /** Of the middle of each of the old coats; undefined where they are gone. */
  readonly old: readonly (number | undefined)[];
  /** Of the face of the wood, or of the old coats on it. */
  readonly face: number;
  /** Of the middle of the wood, below all that is in it or on it. */
  readonly wood: number;
}

export function sectionDrawing(
  section: Section,
  {
    width: wide,
    scale,
    litres = litresText,
    letter = "",
    isBare = false,
    hasAxis = true,
    isOn = section.coats.map(() => true),
    say = spoken,
  }: SectionLook,
): SectionDrawing {
  const width = isBare ? BARE_WIDTH : wide;
  const { soaked, films } = parted(section);
  const drawn: readonly Film[] = films.map((coat, i) => ({
    coat,
    height: heightOf(coat, scale),
    isOn: isOn[soaked.length + i] ?? true,
  }));
  const stack = drawn.reduce((sum, { height }) => sum + height, 0);
  const rows = labelRows(
    drawn.map(({ coat }) => coat),
    litres,
    say,
  );
  const labels = isBare ? [] : placed(rows, drawn);
  const top = Math.max(stack, -(labels.at(-1)?.y ?? 0) + LABEL / 2) + (hasAxis ? 16 : 2);
  const below = belowZero(section, soaked, { width, litres, letter, isBare, isOn, say });
  const height = top + below.height + 4;
  const parts = [
    hasAxis ? axis(stack, scale, films) : "",
    ...stacked(drawn, say),
    below.svg,
    ...labels.map(({ y, mid, text }) => label(text, y, mid, width)),
  ].join("\n");
  const svg = [
    `<svg class="section" role="img" aria-label="${htmlText(sectionInWords(asItIs(section, isOn), say))}" viewBox="0 0 ${width} ${round(height)}" width="${width}" height="${round(height)}" ${FONT} fill="currentColor">`,
    `<g transform="translate(0 ${round(top)})">`,
    parts,
    "</g>",
    "</svg>",
  ].join("\n");
  const middles = middlesOf(drawn);
  return {
    svg,
    width,
    height: round(height),
    from: AXIS,
    to: AXIS + BLOCK,
    coats: [...soaked.map(() => top + below.face + SOAKED / 2), ...middles.map((y) => top - y)].map(round),
    old: below.old.map((y) => (y === undefined ? undefined : round(top + y))),
    face: round(top + below.face),
    wood: round(top + below.face + WOOD / 2 + SOAKED / 2),
  };
}

/** With the coats that are on alone. */
function asItIs(section: Section, isOn: readonly boolean[]): Section {
  if (isOn.every((each) => each)) return section;
  const { filmUm: _, ...rest } = section;
  return { ...rest, coats: section.coats.filter((_coat, i) => isOn[i]) };
}

/** Heights of the middles of films above the face that the first is on. */
function middlesOf(films: readonly Film[]): readonly number[] {
  let stack = 0;
  return films.map(({ height }) => {
    stack += height;
    return stack - height / 2;
  });
}

/** What the drawing shows, for those who hear it. */
export function sectionInWords({ title, wood, old, coats, filmUm }: Section, say: Say = spoken): string {
  const before = old.map((each) => `${oldText(each, say)} ${keptText(each, "", say)}`);
  const after = coats.map((coat) => {
    const { isFilm, dryUm, title: name } = coat;
    const film = isFilm ? (dryUm === undefined ? say("film not known") : filmText(dryUm)) : say("no film");
    return `${[name, coatNumber(coat, say)].filter(Boolean).join(" ")} (${film})`;
  });
  const all = [wood.name, ...before, ...after].join(", ");
  return filmUm
    ? say("{0}, from the wood up: {1}; {2} in all.", title, all, filmText(filmUm))
    : say("{0}, from the wood up: {1}.", title, all);
}

// ---------------------------------------------------------------------------------------------------------------
// Coats

interface Film {
  readonly coat: SectionCoat;
  readonly height: number;
  /** False for one that is still to come. */
  readonly isOn: boolean;
}

/** Coats that colour the bare wood are drawn in it; what lies thinly on a film is a line on top of it. */
function parted({ coats, old }: Section): {
  readonly soaked: readonly SectionCoat[];
  readonly films: readonly SectionCoat[];
} {
  const first = coats.findIndex(({ isFilm }) => isFilm);
  const end = old.some(({ isKept }) => isKept) ? 0 : first < 0 ? coats.length : first;
  return { soaked: coats.slice(0, end), films: coats.slice(end) };
}

const heightOf = ({ isFilm, dryUm }: SectionCoat, scale: number): number =>
  isFilm ? (dryUm === undefined ? UNKNOWN_FILM : Math.max(THIN, dryUm * scale)) : THIN;

function stacked(films: readonly Film[], say: Say): readonly string[] {
  let y = 0;
  return films.map(({ coat, height, isOn }) => {
    y -= height;
    if (!isOn)
      return `<rect x="${AXIS}" y="${round(y)}" width="${BLOCK}" height="${round(height)}" fill="none" stroke="currentColor" stroke-opacity="0.75" stroke-width="1" stroke-dasharray="4 3"/>`;
    const isUnknown = coat.isFilm && coat.dryUm === undefined;
    const gleam =
      coat.gleam > 0 && height >= 14
        ? `<rect x="${AXIS + 4}" y="${round(y + 3)}" width="${round((BLOCK - 8) * coat.gleam)}" height="4" rx="2" fill="#ffffff" stroke="#000000" stroke-opacity="0.45" stroke-width="0.7"/>`
        : "";
    return [
      `<g data-step="${coat.step}" data-index="${coat.index}"><title>${htmlText(titleText(coat, say))}</title>`,
      `<rect x="${AXIS}" y="${round(y)}" width="${BLOCK}" height="${round(height)}" fill="${coat.fill}" stroke="${OUTLINE}" stroke-width="1"${isUnknown ? ' stroke-dasharray="2 3"' : ""}/>`,
      gleam,
      isUnknown
        ? `<text x="${AXIS + BLOCK / 2}" y="${round(y + height / 2 + 4)}" text-anchor="middle" fill="#000000">?</text>`
        : "",
      "</g>",
    ].join("");
  });
}

const titleText = (coat: SectionCoat, say: Say): string =>
  [coat.title, coatNumber(coat, say), filmOf(coat, say), coat.sheen].filter(Boolean).join(", ");

/** `coat 1 of 3`; empty for a single one. */
export const coatNumber = ({ coat, coats }: SectionCoat, say: Say): string =>
  coats > 1 ? say("coat {0} of {1}", coat, coats) : "";

export const micro = (um: number): string => filmText(um).replace("um", "µm");

/** `33 µm` */
export const filmOf = ({ isFilm, dryUm }: SectionCoat, say: Say): string =>
  isFilm ? (dryUm === undefined ? say("film not known") : micro(dryUm)) : say("no film");

function axis(stack: number, scale: number, films: readonly SectionCoat[]): string {
  // Films that are drawn without a scale would make every mark wrong.
  if (stack === 0 || films.some(({ isFilm, dryUm }) => isFilm && dryUm === undefined)) return "";
  const step = scale * 50 >= 28 ? 50 : scale * 100 >= 28 ? 100 : 200;
  const marks: string[] = [];
  for (let um = 0; um * scale <= stack + 0.5; um += step) {
    const y = round(-um * scale);
    marks.push(
      `<path d="M${AXIS - 5} ${y}h5" stroke="currentColor"/><text x="${AXIS - 8}" y="${y + 4}" text-anchor="end" font-size="10.5">${um}</text>`,
    );
  }
  const unit = `<text x="${AXIS - 8}" y="${round(-stack - 8)}" text-anchor="end" font-size="10.5">µm</text>`;
  return `<g><path d="M${AXIS} 0V${round(-stack)}" stroke="currentColor"/>${marks.join("")}${unit}</g>`;
}

// ---------------------------------------------------------------------------------------------------------------
// Labels

interface Row {
  /** Indices of the films that it stands for. */
  readonly first: number;
  readonly last: number;
  readonly text: LabelText;
}

interface LabelText {
  readonly title: string;
  readonly detail: string;
  readonly figure: string;
}

/** More films than this are named by the line that puts them on. */
const MOST_LABELS = 8;

function labelRows(
  films: readonly SectionCoat[],
  litres: (litres: number) => string,
  say: Say,
): readonly Row[] {
  if (films.length <= MOST_LABELS)
    return films.map((coat, i) => ({ first: i, last: i, text: coatLabel(coat, litres, say) }));
  const rows: Row[] = [];
  for (const [i, coat] of films.entries()) {
    const before = rows.at(-1);
    if (before && films[before.first]!.title === coat.title) {
      rows[rows.length - 1] = {
        first: before.first,
        last: i,
        text: {
          title: coat.title,
          detail: say("{0} coats", i - before.first + 1),
          figure: say("{0} each", filmOf(coat, say)),
        },
      };
    } else rows.push({ first: i, last: i, text: coatLabel(coat, litres, say) });
  }
  return rows;
}

function coatLabel(coat: SectionCoat, told: (litres: number) => string, say: Say): LabelText {
  const { title, litres, wetUm, sheen, isOptional } = coat;
  return {
    title,
    detail: [
      coatNumber(coat, say),
      litres === undefined ? "" : told(litres),
      wetUm === undefined ? "" : say("wet {0}", micro(wetUm)),
      coat.coat === coat.coats ? (sheen ?? "") : "",
      isOptional ? say("if needed") : "",
    ]
      .filter(Boolean)
      .join(", "),
    figure: filmOf(coat, say),
  };
}

interface Placed {
  /** Of the middle of its two lines; up is negative. */
  readonly y: number;
  /** Of the middle of what it names. */
  readonly mid: number;
  readonly text: LabelText;
}

/** From the bottom up, beside what it names where there is room, and above the label below it in any case. */
function placed(rows: readonly Row[], films: readonly Film[]): readonly Placed[] {
  const bottoms: number[] = [0];
  for (const { height } of films) bottoms.push(bottoms.at(-1)! + height);
  let next = LABEL / 2;
  return rows.map(({ first, last, text }) => {
    const mid = (bottoms[first]! + bottoms[last + 1]!) / 2;
    const up = Math.max(mid, next);
    next = up + LABEL;
    return { y: -up, mid: -mid, text };
  });
}

/** About so wide is a letter of the labels, px. */
const LETTER = 6.6;
const FIGURE = 62;

function label({ title, detail, figure }: LabelText, y: number, mid: number, width: number): string {
  const x = AXIS + BLOCK + GAP;
  const leader =
    Math.abs(y - mid) > 6
      ? `<path d="M${AXIS + BLOCK} ${round(mid)}L${x - 2} ${round(y)}" stroke="currentColor" stroke-width="0.7" fill="none"/>`
      : "";
  const room = (width - x - FIGURE) / LETTER;
  const first = detail === "" ? y + 4 : y - 2;
  return [
    leader,
    `<text x="${x}" y="${round(first)}" font-weight="700">${htmlText(cut(title, room))}</text>`,
    `<text x="${width}" y="${round(first)}" text-anchor="end">${htmlText(figure)}</text>`,
    detail === "" ? "" : `<text x="${x}" y="${round(y + 11)}" font-size="10.5">${htmlText(detail)}</text>`,
  ].join("");
}

const cut = (text: string, most: number): string => {
  const letters = [...text];
  return letters.length <= most ? text : `${letters.slice(0, Math.max(1, Math.floor(most) - 1)).join("")}…`;
};

// ---------------------------------------------------------------------------------------------------------------
// Below zero: soaked in, old coats, wood

/** `alkyd paint, 2 coats` */
export const oldText = ({ title, count }: OldCoats, say: Say): string =>
  count === 1 ? title : say("{0}, {1} coats", title, count);

/** `off in step 3`; `off in step A3` where its surface has a letter. */
export const keptText = ({ isKept, isAbraded, removedBy }: OldCoats, letter: string, say: Say): string =>
  isKept
    ? isAbraded
      ? say("stays, abraded")
      : say("stays")
    : removedBy === undefined
      ? say("comes off")
      : say("off in step {0}", `${letter}${removedBy}`);

function belowZero(
  section: Section,
  soaked: readonly SectionCoat[],
  { width, litres, letter, isBare, isOn, say }: Required<Omit<SectionLook, "scale" | "hasAxis">>,
): {
  readonly svg: string;
  readonly height: number;
  readonly face: number;
  readonly old: readonly (number | undefined)[];
} {
  const { wood, old } = section;
  const x = AXIS + BLOCK + GAP;
  const room = (width - x - 84) / 6.2;
  const lines: string[] = [];
  const parts: string[] = [];
  let y = 0;
  let text = 0;
  const write = (name: string, figure: string, strong = false): void => {
    text += 15;
    lines.push(
      `<text x="${x}" y="${text}"${strong ? ' font-weight="700"' : ""}>${htmlText(cut(name, room))}</text><text x="${width}" y="${text}" text-anchor="end" font-size="10.5">${htmlText(figure)}</text>`,
    );
  };
  for (const each of soaked.toReversed()) {
    const name = [each.title, coatNumber(each, say)].filter(Boolean).join(", ");
    write(name, each.litres === undefined ? say("no film") : say("{0}, no film", litres(each.litres)), true);
  }
  const middles = new Map<OldCoats, number>();
  for (const each of old.toReversed()) {
    write(oldText(each, say), keptText(each, letter, say));
    if (!each.isKept) continue;
    middles.set(each, y + OLD / 2);
    parts.push(
      `<rect x="${AXIS}" y="${y}" width="${BLOCK}" height="${OLD}" fill="${each.fill}" stroke="${OUTLINE}"/>`,
    );
    y += OLD;
  }
  write(wood.name, "");
  if (wood.assumed !== undefined) write(wood.assumed, "");
  const stain = isOn[0] === false ? undefined : soaked[0]?.fill;
  parts.push(woodBlock(section, y, stain));
  const height = y + WOOD + 22;
  const places = { face: y, old: old.map((each) => middles.get(each)) };
  return isBare
    ? { svg: `<g>${parts.join("")}</g>`, height, ...places }
    : { svg: `<g>${parts.join("")}${lines.join("")}</g>`, height: Math.max(height, text + 6), ...places };
}

function woodBlock({ wood }: Section, y: number, stain: string | undefined): string {
  const whole = WOOD + 18;
  const face = wood.veneerMm === undefined ? whole : VENEER;
  const edge = y + WOOD + 3;
  const teeth = Array.from(
    { length: 14 },
    (_, i) => `l4 ${i % 2 === 0 ? -6 : 6}l4 ${i % 2 === 0 ? 6 : -6}`,
  ).join("");
  return [
    `<rect x="${AXIS}" y="${y}" width="${BLOCK}" height="${whole}" fill="${wood.veneerMm === undefined ? wood.fill : "#b99a6d"}"/>`,
    wood.veneerMm === undefined
      ? ""
      : `<rect x="${AXIS}" y="${y}" width="${BLOCK}" height="${VENEER}" fill="${wood.fill}"/><path d="M${AXIS} ${y + VENEER}h${BLOCK}" stroke="${OUTLINE}" stroke-width="1.5"/>`,
    stain === undefined
      ? ""
      : `<rect x="${AXIS}" y="${y}" width="${BLOCK}" height="${SOAKED}" fill="${stain}" fill-opacity="0.85"/>`,
    grainMarks(wood.grain, y, face, stain),
    `<path d="M${AXIS - 4} ${edge}${teeth}l8 0" fill="none" stroke="${PAPER}" stroke-width="5"/>`,
    `<path d="M${AXIS - 4} ${edge}${teeth}l8 0" fill="none" stroke="${OUTLINE}" stroke-width="1"/>`,
    `<path d="M${AXIS} ${y}h${BLOCK}" stroke="${OUTLINE}" stroke-width="1.5"/>`,
  ].join("");
}

/** Rows of pores, scattered pores, lines of late wood or layers: which it is can be seen without reading. */
function grainMarks(
  grain: Section["wood"]["grain"],
  y: number,
  depth: number,
  stain: string | undefined,
): string {
  const dark = "#000000";
  const marks = (path: string, stroke = dark, opacity = 0.45, width = 1.4): string =>
    `<path d="${path}" stroke="${stroke}" stroke-opacity="${opacity}" stroke-width="${width}" fill="none"/>`;
  const rows = Array.from({ length: Math.max(1, Math.floor(depth / 9)) }, (_, row) => y + 4 + row * 9);
  switch (grain) {
    case "ring-porous":
      return marks(
        rows
          .map((at) => scattered(18, (i) => `M${AXIS + 4 + i * 6 + (i % 3)} ${at + (i % 2)}v${3 + (i % 3)}`))
          .join(""),
        stain ?? dark,
        stain ? 1 : 0.5,
        2,
      );
    case "diffuse-porous":
      return marks(
        rows
          .map((at, r) => scattered(9, (i) => `M${AXIS + 6 + i * 12 + (r % 2) * 5} ${at + (i % 3)}h3`))
          .join(""),
      );
    case "softwood":
      return marks(rows.map((at) => `M${AXIS} ${at + 2}h${BLOCK}`).join(""), dark, 0.3, 2);
    case "board":
      return marks(
        rows
          .map((at, r) => scattered(14, (i) => `M${AXIS + 3 + i * 8 + (r % 2) * 4} ${at + (i % 4)}l3 2`))
          .join(""),
        dark,
        0.3,
      );
    case "slick":
    case "metal":
      return marks(`M${AXIS + 8} ${y + 20}l14 -14M${AXIS + 18} ${y + 20}l14 -14`, "#ffffff", 0.9, 2);
    case "unknown":
      return "";
  }
}

const scattered = (count: number, mark: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => mark(i)).join("");

const round = (value: number): number => Math.round(value * 10) / 10;
