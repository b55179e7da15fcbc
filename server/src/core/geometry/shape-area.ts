/**
 * The area of a shape as the piece states it, with the working that hover shows.
 *
 * One function for each shape of the notation; sizes arrive in metres. Everything that can be wrong with a shape is
 * collected and reported at its own place, so that one bad size does not hide another. Formulas are plane geometry,
 * except the edge of an oval: S. Ramanujan's second approximation of an ellipse's perimeter (Modular equations and
 * approximations to pi, 1914), exact to about 3·h^5/2^17 and far below what a tape measure shows.
 */

import { closestWord } from "../../../../grammar/src/closest-word.ts";
import { gist } from "../../../../grammar/src/gist.ts";
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Range, ShapeSyntax, Span, Value, Words } from "../../../../grammar/src/tree.ts";
import { SHAPES, type ShapeWord } from "../../../../grammar/src/vocabulary.ts";
import { exactArea } from "../measure/figures.ts";
import { formatNumber } from "../measure/format-amount.ts";
import { describeDimension, readQuantity } from "../measure/read-quantity.ts";

export interface ShapeProblem {
  readonly rule: "wrong-unit" | "bad-number" | "unknown-word" | "not-counted" | "syntax";
  readonly span: Span;
  readonly message: string;
}

export type ShapeArea =
  | {
      readonly ok: true;
      readonly areaM2: number;
      /** Of its edges, within that; 0 for a shape that has none, undefined where its thickness is not stated. */
      readonly edgesM2?: number;
      readonly working: string;
    }
  | { readonly ok: false; readonly problems: readonly ShapeProblem[] };

/** A size in metres (for `area` in m2), with its second end where it tapers. */
interface Size {
  readonly from: number;
  readonly to?: number;
}

interface Face {
  readonly areaM2: number;
  readonly rimM2?: number;
  readonly working: string;
}

type Has = (option: string) => boolean;

/** No size of a piece of furniture is a kilometre; the bound also keeps sums finite. */
const LARGEST_MM = 1e6;
const LARGEST_M2 = 1e6;
const MOST_OF = 100_000;

/** The area of all that one `shape` line states, in m2, or everything that is wrong with the line. */
export function shapeArea(shape: ShapeSyntax): ShapeArea {
  const word = lookUp(SHAPES, shape.name.text);
  if (word === undefined) return { ok: false, problems: [unknownShape(shape)] };

  const problems: ShapeProblem[] = [];
  const count = readCount(shape, problems);
  const sizes = readSizes(shape, word, problems);
  const options = readOptions(shape.options, shape.name.text, word, problems);
  const plus = readPlus(shape, problems);
  if (problems.length > 0) return { ok: false, problems };

  const face = FACES[shape.name.text]!(sizes, (option) => options.has(option));
  const areaM2 = count * face.areaM2 * (1 + plus / 100);
  const rimM2 = word.sizes.includes("thickness?") ? face.rimM2 : shape.name.text === "area" ? undefined : 0;
  return {
    ok: true,
    areaM2,
    ...(rimM2 === undefined ? {} : { edgesM2: count * rimM2 * (1 + plus / 100) }),
    working: fillIn(face.working, count, plus, areaM2, shape.name.text === "area"),
  };
}

// ---------------------------------------------------------------------------------------------------------------
// The shapes

const FACES: Readonly<Record<string, (sizes: readonly Size[], has: Has) => Face>> = {
  panel: ([length, width, thickness], has) => {
    const [l, w] = [length!.from, width!.from];
    const face = `${m(l)} × ${m(w)}`;
    return withEdge(
      l * w,
      face,
      has("both faces"),
      thickness && !has("no edges") ? edge(2 * (l + w), `2 × (${m(l)} + ${m(w)})`, thickness) : undefined,
    );
  },
  disc: ([diameter, thickness], has) => {
    const d = diameter!.from;
    const face = `π × (${m(d)})² / 4`;
    return withEdge(
      (Math.PI * d * d) / 4,
      face,
      has("both faces"),
      thickness && !has("no edges") ? edge(Math.PI * d, `π × ${m(d)}`, thickness) : undefined,
    );
  },
  oval: ([length, width, thickness], has) => {
    const [a, b] = [length!.from, width!.from];
    const face = `π × ${m(a)} × ${m(b)} / 4`;
    const around = ellipsePerimeter(a / 2, b / 2);
    return withEdge(
      (Math.PI * a * b) / 4,
      face,
      has("both faces"),
      thickness && !has("no edges") ? edge(around, t`edge of ${m(around)}`, thickness) : undefined,
    );
  },
  band: ([length, width, height], has) => {
    const [l, w, h] = [length!.from, width!.from, height!.from];
    const outside: Face = { areaM2: 2 * (l + w) * h, working: `2 × (${m(l)} + ${m(w)}) × ${m(h)}` };
    return has("inside too") ? { areaM2: 2 * outside.areaM2, working: `2 × ${outside.working}` } : outside;
  },
  post: ([side, height]) => legSide(4, "4", side!, height!.from),
  round: ([diameter, height]) => legSide(Math.PI, "π", diameter!, height!.from),
  box: ([length, width, height], has) => {
    const [l, w, h] = [length!.from, width!.from, height!.from];
    // `no bottom` and `open` together leave two faces out: a sleeve, seen from both sides.
    const count = (...left: readonly string[]): number =>
      Math.max(0, 2 - left.filter((option) => has(option)).length);
    const [ends, longs, sides] = [
      count("no bottom", "no top", "open"),
      count("no back", "no front", "open front"),
      has("no ends") ? 0 : 2,
    ];
    const faces = ends * l * w + longs * l * h + sides * w * h;
    const times = (n: number, text: string): readonly string[] =>
      n === 0 ? [] : [n === 1 ? text : `${n} × ${text}`];
    const around =
      longs === 2 && sides === 2
        ? [`2 × (${m(l)} + ${m(w)}) × ${m(h)}`]
        : [...times(longs, `${m(l)} × ${m(h)}`), ...times(sides, `${m(w)} × ${m(h)}`)];
    const text = [...times(ends, `${m(l)} × ${m(w)}`), ...around].join(" + ");
    const isSeenInside = has("open") || has("open front");
    return isSeenInside ? { areaM2: 2 * faces, working: `2 × (${text})` } : { areaM2: faces, working: text };
  },
  frame: ([length, width, border, thickness], has) => {
    const [l, w, b] = [length!.from, width!.from, border!.from];
    // A border of half the width and more closes the frame: what is left inside is nothing.
    const [innerL, innerW] = [Math.max(0, l - 2 * b), Math.max(0, w - 2 * b)];
    const isOpen = innerL > 0 && innerW > 0;
    const inner = isOpen ? innerL * innerW : 0;
    const around = 2 * (l + w) + (isOpen ? 2 * (innerL + innerW) : 0);
    return withEdge(
      l * w - inner,
      isOpen ? `(${m(l)} × ${m(w)} − ${m(innerL)} × ${m(innerW)})` : `${m(l)} × ${m(w)}`,
      has("both faces"),
      thickness && !has("no edges") ? edge(around, t`edges of ${m(around)}`, thickness) : undefined,
    );
  },
  area: ([area]) => ({ areaM2: area!.from, working: `${formatNumber(area!.from, 6)} m2` }),
};

/**
 * Perimeter of an ellipse with half axes a and b, Ramanujan's second formula:
 * π(a+b)(1 + 3h / (10 + √(4 − 3h))), h = ((a−b)/(a+b))². Any one unit; a and b above 0.
 */
export function ellipsePerimeter(a: number, b: number): number {
  const h = ((a - b) / (a + b)) ** 2;
  return Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
}

/** The sides of a leg, square (`around` 4) or round (π), straight or tapered: mean girth times slant height. */
function legSide(around: number, aroundText: string, across: Size, height: number): Face {
  const top = across.from;
  const foot = across.to ?? top;
  if (foot === top)
    return { areaM2: around * top * height, working: `${aroundText} × ${m(top)} × ${m(height)}` };
  const slant = Math.sqrt(height ** 2 + ((top - foot) / 2) ** 2);
  const [wide, narrow] = top > foot ? [top, foot] : [foot, top];
  return {
    areaM2: ((around * (top + foot)) / 2) * slant,
    working: `${aroundText} × (${m(top)} + ${m(foot)}) / 2 × √((${m(height)})² + ((${m(wide)} − ${m(narrow)}) / 2)²)`,
  };
}

function edge(around: number, aroundText: string, thickness: Size): Face {
  return { areaM2: around * thickness.from, working: `${aroundText} × ${m(thickness.from)}` };
}

function withEdge(faceM2: number, face: string, bothFaces: boolean, rim: Face | undefined): Face {
  const faces = bothFaces ? `2 × ${face}` : face;
  return {
    areaM2: (bothFaces ? 2 : 1) * faceM2 + (rim?.areaM2 ?? 0),
    ...(rim ? { rimM2: rim.areaM2 } : {}),
    working: rim === undefined ? faces : `${faces} + ${rim.working}`,
  };
}

function fillIn(face: string, count: number, plus: number, areaM2: number, measured: boolean): string {
  const result = `${exactArea(areaM2)}`;
  if (count === 1 && plus === 0) return measured ? face : `${face} = ${result}`;
  const many = count === 1 ? "" : `${count} × `;
  const more = plus === 0 ? "" : ` × ${formatNumber(1 + plus / 100, 4)}`;
  return `${many}${measured ? face : `(${face})`}${more} = ${result}`;
}

/** Metres to a hundredth of a millimetre. */
const m = (metres: number): string => `${formatNumber(metres, 5)} m`;

// ---------------------------------------------------------------------------------------------------------------
// Reading and refusing

function readCount(shape: ShapeSyntax, problems: ShapeProblem[]): number {
  if (shape.count === undefined) return 1;
  const { value, text, span } = shape.count;
  if (Number.isInteger(value) && value >= 1 && value <= MOST_OF) return value;
  problems.push({
    rule: "bad-number",
    span,
    message: t`\`${text} of\` says how many there are; expected a whole number from 1 to ${MOST_OF}.`,
  });
  return 1;
}

function readSizes(shape: ShapeSyntax, word: ShapeWord, problems: ShapeProblem[]): readonly Size[] {
  const least = word.sizes.filter((size) => !size.endsWith("?")).length;
  if (shape.sizes.length < least) problems.push(tooFew(shape, word));
  const extra = shape.sizes[word.sizes.length];
  if (extra !== undefined) problems.push(tooMany(shape, word, extra));
  return shape.sizes
    .slice(0, word.sizes.length)
    .map((size, index) => readSize(size, shape, word, index, problems));
}

function readSize(
  size: Range,
  shape: ShapeSyntax,
  word: ShapeWord,
  index: number,
  problems: ShapeProblem[],
): Size {
  const from = readLength(size.from, shape.name.text, problems);
  if (size.to === undefined) return { from };
  if (!word.sizes[index]!.endsWith("~")) {
    const part = sizeName(word.sizes[index]!);
    const message = t`The ${translated(part)} of a ${shape.name.text} cannot taper; only the first size of \`post\` and \`round\` takes \`to\`.`;
    problems.push({ rule: "syntax", span: size.span, message });
    return { from };
  }
  return { from, to: readLength(size.to, shape.name.text, problems) };
}

/** Metres, or for `area` square metres; 0 once a problem has been noted. */
function readLength(value: Value, shapeName: string, problems: ShapeProblem[]): number {
  const dimension = shapeName === "area" ? "area" : "length";
  if (value.kind === "name") {
    const message = gist(
      (suchAs) =>
        t`Expected ${describeDimension(dimension, suchAs)}, found the name \`${value.text}\`; sizes of a piece are stated.`,
    );
    problems.push({ rule: "wrong-unit", span: value.span, message });
    return 0;
  }
  const read = readQuantity(value, [dimension], {
    above: 0,
    atMost: dimension === "area" ? LARGEST_M2 : LARGEST_MM,
  });
  if (!read.ok) {
    problems.push({ rule: read.rule, span: read.span, message: read.message });
    return 0;
  }
  return dimension === "area" ? read.amount.value : read.amount.value / 1000;
}

function readOptions(
  options: readonly Words[],
  shapeName: string,
  word: ShapeWord,
  problems: ShapeProblem[],
): ReadonlySet<string> {
  for (const option of options) {
    if (word.options.includes(option.text)) continue;
    problems.push({
      rule: "unknown-word",
      span: option.span,
      message: unknownOption(option.text, shapeName, word),
    });
  }
  return new Set(options.map((option) => option.text));
}

function unknownOption(text: string, shapeName: string, word: ShapeWord): string {
  const near = closestWord(text, word.options);
  if (near !== undefined) return t`\`${text}\` is not said of \`${shapeName}\`; did you mean \`${near}\`?`;
  if (word.options.length === 0)
    return t`\`${text}\` is not said of \`${shapeName}\`, which takes no options but \`plus 10 %\`.`;
  return t`\`${text}\` is not said of \`${shapeName}\`; it takes ${orList(word.options.map((option) => `\`${option}\``))}.`;
}

const orList = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : t`${words.slice(0, -1).join(", ")} or ${words.at(-1)!}`;

function readPlus(shape: ShapeSyntax, problems: ShapeProblem[]): number {
  if (shape.plus === undefined) return 0;
  const read = readQuantity(shape.plus, ["share"], { atLeast: 0, atMost: 1000 });
  if (read.ok) return read.amount.value;
  problems.push({ rule: read.rule, span: read.span, message: read.message });
  return 0;
}

function unknownShape(shape: ShapeSyntax): ShapeProblem {
  const names = Object.keys(SHAPES);
  const near = closestWord(shape.name.text, names);
  return {
    rule: near === undefined ? "not-counted" : "unknown-word",
    span: shape.name.span,
    message:
      near === undefined
        ? t`Nothing is counted of \`${shape.name.text}\`: the shapes are ${names.map((name) => `\`${name}\``).join(", ")}\nWrite what you measured where none fits, such as \`shape area 1.2 m2\`.`
        : t`Unknown shape \`${shape.name.text}\`; did you mean \`${near}\`?`,
  };
}

function tooFew(shape: ShapeSyntax, word: ShapeWord): ShapeProblem {
  const missing = word.sizes
    .filter((size) => !size.endsWith("?"))
    .slice(shape.sizes.length)
    .map(sizeName);
  return {
    rule: "syntax",
    span: shape.span,
    message: gist(
      (suchAs) =>
        t`\`${shape.name.text}\` also needs its ${missing.map(translated).join(t` and `)}${suchAs(word.example)}.`,
    ),
  };
}

function tooMany(shape: ShapeSyntax, word: ShapeWord, extra: Range): ShapeProblem {
  const sizes = word.sizes.map((size) => translated(sizeName(size))).join(", ");
  return {
    rule: "syntax",
    span: extra.span,
    message: gist((suchAs) => t`\`${shape.name.text}\` takes ${sizes} and no more${suchAs(word.example)}.`),
  };
}

const sizeName = (size: string): string => size.replace(/[?~]$/, "");
