/** The entry rule for shapes: `4 of post 75 mm to 50 mm x 700 mm, plus 10 %`. */
import { endOf } from "./lexer.ts";
import { type Draft, type LineRule, NO_SPAN } from "./line-reader.ts";
import * as make from "./literals.ts";
import { lookUp } from "./look-up.ts";
import { isNear } from "./own-words.ts";
import { NUMBER_WORDS, withUnitOf } from "./parser-parts.ts";
import { SheenParser } from "./parser-sheens.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import { t, translated } from "./translate.ts";
import type * as tree from "./tree.ts";
import { plainUnit } from "./units.ts";
import { SHAPES } from "./vocabulary.ts";

type ShapeValue = Draft<Extract<tree.FieldValue, { readonly form: "shape" }>>;

/** Where what follows the sizes or an option can begin, besides at a comma. */
const AT_OPTION: readonly TokenType[] = [Token.Comma, Token.Plus, Token.Word];

export class ShapeParser extends SheenParser {
  /** Words before the value of a field, or in it, that say more of it. */
  protected saidBefore: string | undefined;

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
          () => this.isNext(Token.Comma, Token.Plus),
          () => {
            this.commaBefore();
            this.shapeOption(shape, options);
          },
        );
      });
    },
  );

  /** `shape 0.9 m2`, `shape chair, 0.9 m2 each`: an area needs no word before it, and what it is of is kept in words. */
  private bareArea(shape: Draft<tree.ShapeSyntax>, sizes: tree.Range[], line: ShapeValue): boolean {
    let words = 0;
    while (this.at(Token.Word, words + 1) && words < MOST_WORDS) words += 1;
    const before = words > 0 && this.at(Token.Comma, words + 1) ? words + 1 : words;
    const unit = this.peek(before + 2);
    const isArea =
      this.at(Token.NumberToken, before + 1) && Token.unitGroup(plainUnit(unit.text) ?? "") === "area";
    if (!isArea || (words > 0 && Object.hasOwn(SHAPES, this.peek(1).text))) {
      return false;
    }
    const { start } = this.peek(1);
    const at = { start, end: words > 0 ? endOf(this.peek(before)) : start };
    const said = Array.from({ length: words }, (_, idx) => this.peek(idx + 1).text).join(" ");
    this.skip(before);
    this.respell(at, "area");
    shape.name = { kind: "name", text: "area", span: at };
    line.shape = shape;
    this.useExample(SHAPES.area!.example);
    sizes.push(this.range(sizeName("area", 0)));
    this.say(said);
    this.eachBehind();
    return true;
  }

  /** `each`, `per chair` */
  private eachBehind(): void {
    const said = /^,? ?(each|(?:a|per) \p{L}{3,20})$/iu.exec(this.rest());
    const { start } = this.peek(1);
    const span = said && this.takeText(said[0]);
    if (said && span) {
      this.respell({ start, end: span.end }, "");
      this.say(said[1]!);
    }
  }

  /** Keeps words, which the plain form puts in quotes behind the value. */
  private say(words: string): void {
    if (words !== "") {
      this.saidBefore = this.saidBefore === undefined ? words : `${this.saidBefore}, ${words}`;
    }
  }

  /** `four of panel` */
  private countSaid(value: number): tree.NumberLiteral {
    const { span } = make.makeName(this.take(Token.Word));
    const text = String(value);
    this.respell(span, text);
    return { kind: "number", text, value, span };
  }

  protected readonly shapeSizes = this.part(
    AT_OPTION,
    (shape: Draft<tree.ShapeSyntax>, sizes: tree.Range[], line: ShapeValue): void => {
      const inWords = this.at(Token.Of, 2) ? NUMBER_WORDS[this.peek(1).text.toLowerCase()] : undefined;
      if (this.at(Token.NumberToken) || inWords !== undefined) {
        const count =
          inWords === undefined ? make.makeNumber(this.take(Token.NumberToken)) : this.countSaid(inWords);
        if (this.at(Token.Word)) {
          // `4 legs`
          this.respell({ start: count.span.end, end: count.span.end }, "of");
        } else {
          this.take(Token.Of, "`of` and a shape");
        }
        shape.count = count;
        if (this.bareArea(shape, sizes, line)) {
          this.endOfPart(undefined, (next) => next === Token.Plus);
          return;
        }
      }
      shape.name = this.shapeName();
      line.shape = shape;
      const { text } = shape.name;
      this.useExample(lookUp(SHAPES, text)?.example);
      sizes.push(this.range(sizeName(text, 0)));
      while (this.at(Token.X) || (this.at(Token.By) && this.at(Token.NumberToken, 2))) {
        if (this.at(Token.By)) {
          this.respell(make.tokenSpan(this.peek(1)), "x");
        }
        this.skip(1);
        sizes.push(this.range(sizeName(text, sizes.length)));
      }
      this.sizeBehind(text, sizes);
      this.shareUnits(sizes);
      this.fitName(shape);
      this.checkSizes(shape);
      this.endOfPart(undefined, (next) => next === Token.Plus);
    },
  );

  protected readonly shapeOption = this.part(
    AT_OPTION,
    (shape: Draft<tree.ShapeSyntax>, options: tree.Words[]): void => {
      if (this.at(Token.Plus)) {
        const word = this.take(Token.Plus);
        this.keepPlus(shape, this.quantity("a share in %"), word.start);
      } else if (this.optionInWords(shape, options)) {
        // Read.
      } else if (this.saidEdges() || (shape.name?.text === "box" && this.leftOut(ALL_FACES))) {
        // The edges count wherever a thickness is stated, and all faces of a box that leaves none out.
      } else {
        options.push(
          make.makeWords(
            this.wordRun(
              (suchAs) => t`\`plus\` and a share, or an option${suchAs("both faces", "")}`,
              Token.Plus,
            ),
          ),
        );
      }
      this.endOfPart(undefined, (next) => next === Token.Plus);
    },
  );

  /** A shape, or what is of one, in the words of the trade: `leg`, `round legs`, `drawer front`. */
  private shapeName(): tree.Name {
    let length = 1;
    while (this.at(Token.Word, length + 1) && length < MOST_WORDS) length += 1;
    const said = Array.from({ length }, (_, idx) => this.peek(idx + 1).text).join(" ");
    const first = this.peek(1);
    const plain = this.at(Token.Word) && !Object.hasOwn(SHAPES, first.text) ? shapeOf(said) : undefined;
    if (plain === undefined) {
      return make.makeName(this.take(Token.Word, "a shape"));
    }
    const span = { start: first.start, end: endOf(this.peek(length)) };
    this.skip(length);
    this.respell(span, plain);
    if (!SLATS.has(said)) {
      this.say(said);
    }
    return { kind: "name", text: plain, span };
  }

  /** `, 60 mm wide`, `, 30 mm thick`: the last size of a shape, said behind a comma. */
  private sizeBehind(shape: string, sizes: tree.Range[]): void {
    const isSize =
      this.at(Token.Comma) &&
      this.at(Token.NumberToken, 2) &&
      /^(?:wide|thick|high|deep|long)$/iu.test(this.peek(4).text) &&
      sizes.length < (lookUp(SHAPES, shape)?.sizes.length ?? 0);
    if (!isSize) {
      return;
    }
    this.respell(make.tokenSpan(this.take(Token.Comma)), "x");
    sizes.push(this.range(sizeName(shape, sizes.length)));
    this.respell(make.tokenSpan(this.peek(1)), "");
    this.skip(1);
  }

  /** A leg of two sides and a height is a box without its ends, and a round of one size a disc. */
  private fitName(shape: Draft<tree.ShapeSyntax>): void {
    const { name, sizes } = shape;
    const plain =
      name.text === "post" && sizes.length === 3
        ? "box"
        : name.text === "round" && sizes.length === 1
          ? "disc"
          : undefined;
    if (plain === undefined) {
      return;
    }
    this.dropName(name.span);
    this.respell(name.span, plain);
    shape.name = { ...name, text: plain };
    if (plain === "box") {
      const end = endOf(this.peek(0));
      this.respell({ start: end, end }, ", no bottom, no top");
      const at = { start: end, end };
      (shape.options as tree.Words[]).push(
        ...["no bottom", "no top"].map((text): tree.Words => optionAs(text, at)),
      );
    }
  }

  /** `both sides`, `top only`, `without back and bottom`, `open at the front`; what else is said stays in words. */
  private optionInWords(shape: Draft<tree.ShapeSyntax>, options: tree.Words[]): boolean {
    const known = lookUp(SHAPES, shape.name?.text ?? "")?.options ?? [];
    const text = this.restOfPart();
    if (known.length === 0 || known.includes(text) || !/^\p{L}/u.test(text)) {
      return false;
    }
    const meant = optionsIn(text, known);
    if (meant === undefined) {
      // `front edge`, `with mouldings`; a slip of the pen is told.
      const isSlip = OPTIONS.some((option) => isNear(text, [option])) || !/^(?!plus)\p{L}+ \p{L}/u.test(text);
      const comma = this.peek(0);
      if (isSlip || EDGES[text] || ALL_FACES[text] || comma.type !== Token.Comma) {
        return false;
      }
      const span = this.takeText(text);
      if (span === undefined) {
        return false;
      }
      this.respell({ start: comma.start, end: span.end }, "");
      this.say(text);
      return true;
    }
    const span = this.takeText(text);
    if (span === undefined) {
      return false;
    }
    this.respell(span, meant.join(", "));
    options.push(...meant.map((option): tree.Words => optionAs(option, span)));
    return true;
  }

  private saidEdges(): boolean {
    return this.leftOut(EDGES);
  }

  /** `both faces, edges`: said of what counts anyway, and left out with its comma. */
  private leftOut(words: Readonly<Record<string, true>>): boolean {
    const found = this.longestIn(words);
    const next = this.peek((found?.length ?? 0) + 1).type;
    if (found === undefined || (next !== Token.End && next !== Token.Comma)) {
      return false;
    }
    const comma = this.peek(0);
    this.skip(found.length);
    const start = comma.type === Token.Comma ? comma.start : found.span.start;
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
      this.report({ message: t`expected \`plus\` only once: add the shares up`, span });
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
      this.report(this.expectedNext(() => t`\`x\` and ${translated(sizeName(name, shape.sizes.length))}`));
    }
    for (const [idx, size] of shape.sizes.entries()) {
      const slot = known.sizes[idx];
      if (slot === undefined) {
        const count = known.sizes.length === 1 ? t`one size` : t`${known.sizes.length} sizes`;
        this.report({ message: t`expected the end: \`${name}\` has ${count}`, span: size.span });
      } else if (size.to !== undefined && !slot.endsWith("~")) {
        const which = translated(`the ${plainSize(slot)}`);
        const message = t`expected one size: ${which} of \`${name}\` does not taper`;
        this.report({ message, span: size.span });
      }
    }
  }
}

/** Long pieces with four sides and two ends, which are a box. */
const SLATS: ReadonlySet<string> = new Set(["bar", "slat", "slats", "batten", "lath", "strip"]);

const OPTIONS: readonly string[] = Object.values(SHAPES).flatMap(({ options }) => options);

/** So many words may name a shape. */
const MOST_WORDS = 4;

/** What pieces are made of, by the shape that has its faces. */
const SHAPES_SAID: readonly (readonly [RegExp, string])[] = [
  [/^(?:round|turned) .+|(?:cylinder|spindle|dowel|rod|pole|baluster|turning)s?$/iu, "round"],
  [
    /(?:bar|slat|batten|lath|strip|rail|stretcher|beam|stile|rung|cabinet|case|chest|carcass|carcase|drawer|crate)s?$/iu,
    "box",
  ],
  [/(?:leg|pillar|post|upright|foot|feet)s?$/iu, "post"],
  [/(?:circle|disk|disc)s?$/iu, "disc"],
  [/(?:ellipse|oval)s?$/iu, "oval"],
  [/frames?$/iu, "frame"],
  [
    /(?:board|plank|table|door|rectangle|slab|sheet|front|back|side|lid|leaf|plate|top|panel|tread|seat|worktop)s?$|(?:shelf|shelves|leaves)$/iu,
    "panel",
  ],
];

/** An option as it is read where it is written plainly. */
const optionAs = (text: string, span: tree.Span): tree.Words => ({
  kind: "words",
  words: text.split(" ").map((word) => ({ kind: "name", text: word, span })),
  text,
  span,
});

const shapeOf = (said: string): string | undefined =>
  SHAPES_SAID.find(([pattern]) => pattern.test(said))?.[1];

/** Options as they are said, each as the shape has it; undefined where one of them is none. */
function optionsIn(text: string, known: readonly string[]): readonly string[] | undefined {
  const plain = text.toLowerCase().replace(/^(?:without|no) (?:a |the )?/u, "no ");
  const isLeftOut = plain.startsWith("no ");
  const parts = isLeftOut
    ? plain
        .slice(3)
        .split(/ (?:and|or|nor) (?:no |without )?(?:a |the )?/u)
        .map((part) => `no ${part}`)
    : [OPTIONS_SAID.find(([pattern]) => pattern.test(plain))?.[1] ?? plain];
  return parts.every((part) => known.includes(part)) ? parts : undefined;
}

const OPTIONS_SAID: readonly (readonly [RegExp, string])[] = [
  [/^(?:both|two|all|2) (?:faces|sides)$|^front and back$|^top and (?:bottom|underside)$/u, "both faces"],
  [
    /^(?:(?:the )?(?:top|front|upper|visible|one|outer) (?:side |face |surface )?only|only (?:the )?(?:top|front|upper side|upper face|one side|one face)|(?:one|upper|top|front|visible) (?:side|face|surface))$/u,
    "one face",
  ],
  [/^(?:open (?:at|in|to) the front|(?:the )?front open)$/u, "open front"],
  [/^(?:open (?:at|on) (?:the )?top|(?:the )?top open|open top)$/u, "open"],
  [/^(?:the )?inside (?:as well|also)$|^inside and outside$|^both inside and outside$/u, "inside too"],
];
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
