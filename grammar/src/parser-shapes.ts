/** The entry rule for shapes: `4 of post 75 mm to 50 mm x 700 mm, plus 10 %`. */
import { type Draft, type LineRule, NO_SPAN } from "./line-reader.ts";
import * as make from "./literals.ts";
import { lookUp } from "./look-up.ts";
import { withUnitOf } from "./parser-parts.ts";
import { SheenParser } from "./parser-sheens.ts";
import type { TokenType } from "./tokens.ts";
import * as t from "./tokens.ts";
import type * as tree from "./tree.ts";
import { SHAPES } from "./vocabulary.ts";

type ShapeValue = Draft<Extract<tree.FieldValue, { readonly form: "shape" }>>;

/** Where what follows the sizes or an option can begin, besides at a comma. */
const AT_OPTION: readonly TokenType[] = [t.Comma, t.Plus, t.Word];

export class ShapeParser extends SheenParser {
  protected readonly shape: LineRule<ShapeValue> = this.line(
    (): ShapeValue => ({ form: "shape" }),
    (line) => {
      const sizes: tree.Range[] = [];
      const options: tree.Words[] = [];
      const shape: Draft<tree.ShapeSyntax> = { name: undefined as never, sizes, options, span: NO_SPAN };
      this.spanned(shape, () => {
        if (!this.bareArea(shape, sizes, line)) {
          this.shapeSizes(shape, sizes, line);
        }
        this.many(
          () => this.isNext(t.Comma, t.Plus),
          () => {
            this.commaBefore();
            this.shapeOption(shape, options);
          },
        );
      });
    },
  );

  /** `shape 0.9 m2`: an area needs no word before it. */
  private bareArea(shape: Draft<tree.ShapeSyntax>, sizes: tree.Range[], line: ShapeValue): boolean {
    const unit = this.peek(2);
    if (!this.at(t.NumberToken) || unit.type !== t.Unit || t.unitGroup(unit.text) !== "area") {
      return false;
    }
    const at = { start: this.peek(1).start, end: this.peek(1).start };
    this.respell(at, "area");
    shape.name = { kind: "name", text: "area", span: at };
    line.shape = shape;
    this.useExample(SHAPES.area!.example);
    sizes.push(this.range(sizeName("area", 0)));
    return true;
  }

  protected readonly shapeSizes = this.part(
    AT_OPTION,
    (shape: Draft<tree.ShapeSyntax>, sizes: tree.Range[], line: ShapeValue): void => {
      if (this.at(t.NumberToken)) {
        const count = make.makeNumber(this.take(t.NumberToken));
        this.take(t.Of, "`of` and a shape");
        shape.count = count;
        if (this.bareArea(shape, sizes, line)) {
          this.endOfPart(undefined, (next) => next === t.Plus);
          return;
        }
      }
      const name = this.take(t.Word, "a shape");
      shape.name = make.makeName(name);
      if (SLATS.has(name.text)) {
        this.respell(shape.name.span, "box");
        shape.name = { ...shape.name, text: "box" };
      }
      line.shape = shape;
      const { text } = shape.name;
      this.useExample(lookUp(SHAPES, text)?.example);
      sizes.push(this.range(sizeName(text, 0)));
      while (this.at(t.X)) {
        this.take(t.X);
        sizes.push(this.range(sizeName(text, sizes.length)));
      }
      this.shareUnits(sizes);
      this.checkSizes(shape);
      this.endOfPart(undefined, (next) => next === t.Plus);
    },
  );

  protected readonly shapeOption = this.part(
    AT_OPTION,
    (shape: Draft<tree.ShapeSyntax>, options: tree.Words[]): void => {
      if (this.at(t.Plus)) {
        const word = this.take(t.Plus);
        this.keepPlus(shape, this.quantity("a share in %"), word.start);
      } else if (this.saidEdges() || (shape.name?.text === "box" && this.leftOut(ALL_FACES))) {
        // The edges count wherever a thickness is stated, and all faces of a box that leaves none out.
      } else {
        options.push(
          make.makeWords(
            this.wordRun((suchAs) => `\`plus\` and a share, or an option${suchAs("both faces", "")}`, t.Plus),
          ),
        );
      }
      this.endOfPart(undefined, (next) => next === t.Plus);
    },
  );

  private saidEdges(): boolean {
    return this.leftOut(EDGES);
  }

  /** `both faces, edges`: said of what counts anyway, and left out with its comma. */
  private leftOut(words: Readonly<Record<string, true>>): boolean {
    const found = this.longestIn(words);
    const next = this.peek((found?.length ?? 0) + 1).type;
    if (found === undefined || (next !== t.End && next !== t.Comma)) {
      return false;
    }
    const comma = this.peek(0);
    this.skip(found.length);
    const start = comma.type === t.Comma ? comma.start : found.span.start;
    this.respell({ start, end: found.span.end }, "");
    return true;
  }

  /** `600 x 720 x 18 mm`: a size without a unit has that of the next one. */
  private shareUnits(sizes: tree.Range[]): void {
    for (let idx = sizes.length - 2; idx >= 0; idx -= 1) {
      const { from, to } = sizes[idx]!;
      const after = sizes[idx + 1]!.from;
      const [own, ownTo] = [withUnitOf(from, after), to && withUnitOf(to, after)];
      for (const [before, value] of [[from, own] as const, [to, ownTo] as const]) {
        if (before !== undefined && value !== before && value?.kind === "quantity") {
          this.respell({ start: before.span.end, end: before.span.end }, value.parts[0]!.unit!.text);
        }
      }
      sizes[idx] = { ...sizes[idx]!, from: own, ...(ownTo && { to: ownTo }) };
    }
  }

  protected isNext(...types: readonly TokenType[]): boolean {
    return types.includes(this.peek(1).type);
  }

  private keepPlus(shape: Draft<tree.ShapeSyntax>, plus: tree.Quantity, start: number): void {
    if (shape.plus !== undefined) {
      const span = { start, end: plus.span.end };
      this.report({ message: "expected `plus` only once: add the shares up", span });
    }
    shape.plus ??= plus;
  }

  /** A known shape has as many sizes as it needs, and tapers only where it may. */
  private checkSizes(shape: tree.ShapeSyntax): void {
    const name = shape.name.text;
    const known = lookUp(SHAPES, name);
    if (known === undefined) {
      return;
    }
    const missing = known.sizes[shape.sizes.length];
    if (missing !== undefined && !missing.endsWith("?")) {
      this.report(this.expectedNext(`\`x\` and ${sizeName(name, shape.sizes.length)}`));
    }
    for (const [idx, size] of shape.sizes.entries()) {
      const slot = known.sizes[idx];
      if (slot === undefined) {
        const count = known.sizes.length === 1 ? "one size" : `${known.sizes.length} sizes`;
        this.report({ message: `expected the end: \`${name}\` has ${count}`, span: size.span });
      } else if (size.to !== undefined && !slot.endsWith("~")) {
        const message = `expected one size: the ${plainSize(slot)} of \`${name}\` does not taper`;
        this.report({ message, span: size.span });
      }
    }
  }
}

/** Long pieces with four sides and two ends, which are a box. */
const SLATS: ReadonlySet<string> = new Set(["bar", "slat", "slats", "batten", "lath", "strip"]);
const ALL_FACES: Readonly<Record<string, true>> = { "all faces": true, "all sides": true, "all round": true };

const EDGES: Readonly<Record<string, true>> = {
  edges: true,
  "the edges": true,
  "all edges": true,
  "and edges": true,
  "with edges": true,
};

function sizeName(shape: string, idx: number): string {
  const size = lookUp(SHAPES, shape)?.sizes[idx];
  return size === undefined ? "a size" : `the ${plainSize(size)}`;
}

function plainSize(size: string): string {
  return size.replace(/[?~]$/u, "");
}
