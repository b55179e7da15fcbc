/**
 * The entry rules for fields, one for each form of a value.
 *
 * A rule reads what follows the field's word, up to the end of the line; which form a field has says `vocabulary.ts`.
 * Whether a word, a unit or a size fits the field is left to the analysis core, except for the number of sizes of a shape,
 * since a shape with too few of them is a line that ends too early.
 */
import type { TokenType } from "chevrotain";
import { endOf } from "./lexer.ts";
import * as make from "./literals.ts";
import { type Draft, type LineRule, NO_SPAN, PartParser } from "./parser-parts.ts";
import * as t from "./tokens.ts";
import type * as tree from "./tree.ts";
import { type FieldForm, SHAPES } from "./vocabulary.ts";

type Value<F> = Draft<Extract<tree.FieldValue, { readonly form: F }>>;
type SoldSize = Value<"sold">["sizes"][number];
type HoursSpan = Value<"hours">["spans"][number];
type DateRange = Value<"dates">["ranges"][number];

export class FieldParser extends PartParser {
  protected readonly words = this.line(
    "words",
    (): Value<"words"> => ({ form: "words", items: [] }),
    (line) => {
      const items: (tree.Words | tree.Title)[] = [];
      line.items = items;
      this.list(this.wordsItem, items);
    },
  );

  protected readonly wordsItem = this.part("wordsItem", (items: (tree.Words | tree.Title)[]): void => {
    const item = this.OR({
      DEF: [
        { ALT: () => make.makeTitle(this.CONSUME(t.StringToken)) },
        { ALT: () => make.makeWords(this.wordRun("a word")) },
      ],
      ERR_MSG: "a word",
    });
    this.ACTION(() => items.push(item));
    this.endOfPart();
  });

  protected readonly quantityField = this.line(
    "quantityField",
    (): Value<"quantity"> => ({ form: "quantity" }),
    (line) => {
      line.quantity = this.SUBRULE(this.value, { ARGS: ["a quantity"] });
    },
  );

  protected readonly rangeField = this.line(
    "rangeField",
    (): Value<"range"> => ({ form: "range" }),
    (line) => {
      line.range = this.SUBRULE(this.range, { ARGS: ["a quantity"] });
    },
  );

  protected readonly air = this.line(
    "air",
    (): Value<"air"> => ({ form: "air" }),
    (line) => {
      this.SUBRULE1(this.airItem, { ARGS: [line] });
      this.MANY({
        GATE: () => this.isNext(t.Comma, t.NumberToken),
        DEF: () => {
          this.commaBefore();
          this.SUBRULE2(this.airItem, { ARGS: [line] });
        },
      });
    },
  );

  protected readonly airItem = this.part("airItem", (line: Value<"air">): void => {
    const range = this.SUBRULE(this.range, { ARGS: ["a temperature or a humidity"] });
    const mark = this.OPTION(() => this.CONSUME(t.Rh));
    this.ACTION(() => this.keepAir(line, range, mark === undefined ? undefined : endOf(mark)));
    this.endOfPart(undefined, (next) => next === t.NumberToken);
  });

  protected readonly thin = this.line(
    "thin",
    (): Value<"thin"> => ({ form: "thin" }),
    (line) => {
      this.SUBRULE(this.thinner, { ARGS: [line] });
      this.OPTION(() => {
        this.commaBefore();
        this.CONSUME(t.Up, { ERR_MSG: "`up to` and a share" });
        this.CONSUME(t.To, { ERR_MSG: "`to` and a share" });
        line.upTo = this.SUBRULE(this.value, { ARGS: ["a share"] });
      });
    },
  );

  protected readonly thinner = this.part("thinner", (line: Value<"thin">): void => {
    const thinner = make.makeWords(this.wordRun("a thinner", t.Up));
    this.ACTION(() => {
      line.thinner = thinner;
    });
    this.endOfPart(undefined, (next) => next === t.Up);
  });

  protected readonly sold = this.line(
    "sold",
    (): Value<"sold"> => ({ form: "sold", sizes: [] }),
    (line) => {
      const sizes: SoldSize[] = [];
      line.sizes = sizes;
      this.list(this.soldSize, sizes);
    },
  );

  protected readonly soldSize = this.part("soldSize", (sizes: SoldSize[]): void => {
    const draft: Draft<SoldSize> = { span: NO_SPAN };
    this.ACTION(() => sizes.push(draft));
    this.spanned(draft, () => {
      draft.amount = this.SUBRULE(this.quantity, { ARGS: ["a quantity"] });
      this.CONSUME(t.For, { ERR_MSG: "`for` and the price" });
      draft.price = make.makeNumber(this.CONSUME(t.NumberToken, { ERR_MSG: "the price" }));
    });
    this.endOfPart();
  });

  protected readonly mix = this.line(
    "mix",
    (): Value<"mix"> => ({ form: "mix" }),
    (line) => {
      line.ratio = this.SUBRULE(this.ratio);
      this.CONSUME(t.With, { ERR_MSG: "`with` and the other part" });
      line.hardener = this.nameOf(this.CONSUME(t.Word, { ERR_MSG: "a name" }));
    },
  );

  protected readonly money = this.line(
    "money",
    (): Value<"money"> => ({ form: "money" }),
    (line) => {
      line.amount = make.makeNumber(this.CONSUME(t.NumberToken, { ERR_MSG: "an amount of money" }));
      this.OPTION(() => {
        this.CONSUME(t.Per);
        line.per = make.makeUnit(this.CONSUME(t.Word, { ERR_MSG: "`h`" }));
      });
    },
  );

  protected readonly number = this.line(
    "number",
    (): Value<"number"> => ({ form: "number" }),
    (line) => {
      line.number = make.makeNumber(this.CONSUME(t.NumberToken, { ERR_MSG: "a number" }));
    },
  );

  protected readonly room = this.line(
    "room",
    (): Value<"room"> => ({ form: "room" }),
    (line) => {
      this.SUBRULE(this.roomVolume, { ARGS: [line] });
      this.OPTION(() => {
        this.CONSUME(t.Comma);
        line.airChanges = this.SUBRULE2(this.quantity, { ARGS: ["the air changes"] });
      });
    },
  );

  protected readonly roomVolume = this.part("roomVolume", (line: Value<"room">): void => {
    const volume = this.SUBRULE1(this.quantity, { ARGS: ["a volume"] });
    this.ACTION(() => {
      line.volume = volume;
    });
    this.endOfPart();
  });

  protected readonly hours = this.line(
    "hours",
    (): Value<"hours"> => ({ form: "hours", spans: [] }),
    (line) => {
      const spans: HoursSpan[] = [];
      line.spans = spans;
      this.list(this.hoursSpan, spans);
    },
  );

  protected readonly hoursSpan = this.part("hoursSpan", (spans: HoursSpan[]): void => {
    const draft: Draft<HoursSpan> = { span: NO_SPAN };
    this.ACTION(() => spans.push(draft));
    this.spanned(draft, () => {
      draft.from = make.makeName(this.CONSUME1(t.Word, { ERR_MSG: "a weekday" }));
      this.OPTION(() => {
        this.CONSUME1(t.To);
        draft.to = make.makeName(this.CONSUME2(t.Word, { ERR_MSG: "a weekday" }));
      });
      draft.opens = make.makeTime(this.CONSUME1(t.TimeToken, { ERR_MSG: "a time" }));
      this.CONSUME2(t.To, { ERR_MSG: "`to` and the closing time" });
      draft.closes = make.makeTime(this.CONSUME2(t.TimeToken, { ERR_MSG: "the closing time" }));
    });
    this.endOfPart();
  });

  protected readonly dates = this.line(
    "dates",
    (): Value<"dates"> => ({ form: "dates", ranges: [] }),
    (line) => {
      const ranges: DateRange[] = [];
      line.ranges = ranges;
      this.list(this.dateRange, ranges);
    },
  );

  protected readonly dateRange = this.part("dateRange", (ranges: DateRange[]): void => {
    const draft: Draft<DateRange> = { span: NO_SPAN };
    this.ACTION(() => ranges.push(draft));
    this.spanned(draft, () => {
      draft.from = make.makeDate(this.CONSUME1(t.DateToken, { ERR_MSG: "a date" }));
      this.OPTION(() => {
        this.CONSUME(t.To);
        draft.to = make.makeDate(this.CONSUME2(t.DateToken, { ERR_MSG: "the last date" }));
      });
    });
    this.endOfPart();
  });

  protected readonly moment = this.line(
    "moment",
    (): Value<"moment"> => ({ form: "moment" }),
    (line) => {
      line.date = make.makeDate(this.CONSUME(t.DateToken, { ERR_MSG: "a date" }));
      this.OPTION(() => {
        line.time = make.makeTime(this.CONSUME(t.TimeToken));
      });
    },
  );

  protected readonly name = this.line(
    "name",
    (): Value<"name"> => ({ form: "name" }),
    (line) => {
      line.name = this.nameOf(this.CONSUME(t.Word, { ERR_MSG: "a name" }));
    },
  );

  protected readonly pieces = this.line(
    "pieces",
    (): Value<"pieces"> => ({ form: "pieces" }),
    (line) => {
      line.name = this.nameOf(this.CONSUME(t.Word, { ERR_MSG: "a name" }));
      this.OPTION(() => {
        this.CONSUME(t.X);
        line.count = this.SUBRULE(this.value, { ARGS: ["a number"] });
      });
    },
  );

  protected readonly wood = this.line(
    "wood",
    (): Value<"wood"> => ({ form: "wood" }),
    (line) => {
      this.SUBRULE(this.species, { ARGS: [line] });
      this.OPTION(() => {
        this.commaBefore();
        const veneer: Draft<NonNullable<Value<"wood">["veneer"]>> = { span: NO_SPAN };
        this.spanned(veneer, () => {
          this.CONSUME(t.Veneer, { ERR_MSG: "`veneer` and its thickness" });
          line.veneer = veneer;
          veneer.thickness = this.SUBRULE(this.quantity, { ARGS: ["the thickness of the veneer"] });
        });
      });
    },
  );

  protected readonly species = this.part("species", (line: Value<"wood">): void => {
    const wood = make.makeWords(this.wordRun("a wood", t.Veneer));
    this.ACTION(() => {
      line.wood = wood;
    });
    this.endOfPart(undefined, (next) => next === t.Veneer);
  });

  protected readonly lead = this.line(
    "lead",
    (): Value<"lead"> => ({ form: "lead" }),
    (line) => {
      line.result = make.makeName(this.CONSUME1(t.Word, { ERR_MSG: "`none_found` or `found`" }));
      this.CONSUME(t.By, { ERR_MSG: "`by` and the method of the test" });
      line.method = make.makeName(this.CONSUME2(t.Word, { ERR_MSG: "the method of the test" }));
      line.date = make.makeDate(this.CONSUME(t.DateToken, { ERR_MSG: "the date of the result" }));
    },
  );

  protected readonly existing = this.line(
    "existing",
    (): Value<"existing"> => ({ form: "existing", layers: [] }),
    (line) => {
      const layers: Draft<tree.ExistingLayer>[] = [];
      line.layers = layers;
      this.OR({
        DEF: [
          {
            GATE: () => this.LA(2).tokenType === t.Left,
            ALT: () => this.SUBRULE(this.asLeftBy, { ARGS: [line] }),
          },
          {
            ALT: () => {
              this.SUBRULE1(this.existingItem, { ARGS: [layers] });
              this.MANY({
                GATE: () => this.isNext(t.Comma, t.NumberToken),
                DEF: () => {
                  this.commaBefore();
                  this.SUBRULE2(this.existingItem, { ARGS: [layers] });
                },
              });
            },
          },
        ],
        MAX_LOOKAHEAD: 1,
        IGNORE_AMBIGUITIES: true,
        ERR_MSG: "what is on it",
      });
    },
  );

  protected readonly asLeftBy = this.inner("asLeftBy", (line: Value<"existing">): void => {
    const draft: Draft<NonNullable<Value<"existing">["asLeftBy"]>> = { span: NO_SPAN };
    this.ACTION(() => {
      line.asLeftBy = draft;
      this.useExample("existing as left by hall_tables");
    });
    this.spanned(draft, () => {
      this.CONSUME(t.As);
      this.CONSUME(t.Left);
      this.CONSUME(t.By, { ERR_MSG: "`by` and a job" });
      draft.job = this.nameOf(this.CONSUME(t.Word, { ERR_MSG: "a job" }));
    });
  });

  protected readonly existingItem = this.part("existingItem", (layers: Draft<tree.ExistingLayer>[]): void => {
    this.OR({
      DEF: [
        {
          ALT: () => {
            const coats = this.CONSUME(t.NumberToken);
            const word = this.CONSUME(t.Coats, { ERR_MSG: "`coats` after their number" });
            this.ACTION(() => this.keepCoats(layers, make.makeNumber(coats), endOf(word)));
          },
        },
        {
          ALT: () => {
            const material = make.makeWords(this.wordRun("a layer"));
            this.ACTION(() => layers.push({ material, span: material.span }));
          },
        },
      ],
      ERR_MSG: "a layer",
    });
    this.endOfPart(undefined, (next) => next === t.NumberToken);
  });

  protected readonly shape = this.line(
    "shape",
    (): Value<"shape"> => ({ form: "shape" }),
    (line) => {
      const sizes: tree.Range[] = [];
      const options: tree.Words[] = [];
      const shape: Draft<tree.ShapeSyntax> = { name: undefined as never, sizes, options, span: NO_SPAN };
      this.spanned(shape, () => {
        this.SUBRULE(this.shapeSizes, { ARGS: [shape, sizes, line] });
        this.MANY({
          GATE: () => this.isNext(t.Comma, t.Plus),
          DEF: () => {
            this.commaBefore();
            this.SUBRULE(this.shapeOption, { ARGS: [shape, options] });
          },
        });
      });
    },
  );

  protected readonly shapeSizes = this.part(
    "shapeSizes",
    (shape: Draft<tree.ShapeSyntax>, sizes: tree.Range[], line: Value<"shape">): void => {
      this.OPTION1(() => {
        const count = make.makeNumber(this.CONSUME(t.NumberToken));
        this.CONSUME(t.Of, { ERR_MSG: "`of` and a shape" });
        this.ACTION(() => {
          shape.count = count;
        });
      });
      const name = this.CONSUME(t.Word, { ERR_MSG: "a shape" });
      this.ACTION(() => {
        shape.name = make.makeName(name);
        line.shape = shape;
        this.useExample(Object.hasOwn(SHAPES, name.image) ? SHAPES[name.image]!.example : undefined);
      });
      const first = this.SUBRULE1(this.range, { ARGS: [sizeName(name.image, 0)] });
      this.ACTION(() => sizes.push(first));
      this.MANY(() => {
        this.CONSUME(t.X);
        const next = this.SUBRULE2(this.range, { ARGS: [sizeName(name.image, sizes?.length ?? 0)] });
        this.ACTION(() => sizes.push(next));
      });
      this.ACTION(() => this.checkSizes(shape));
      this.endOfPart(undefined, (next) => next === t.Plus);
    },
  );

  protected readonly shapeOption = this.part(
    "shapeOption",
    (shape: Draft<tree.ShapeSyntax>, options: tree.Words[]): void => {
      this.OR({
        DEF: [
          {
            ALT: () => {
              const word = this.CONSUME(t.Plus);
              const plus = this.SUBRULE(this.quantity, { ARGS: ["a share in %"] });
              this.ACTION(() => this.keepPlus(shape, plus, word.startOffset));
            },
          },
          {
            ALT: () => {
              const option = make.makeWords(this.wordRun("an option", t.Plus));
              this.ACTION(() => options.push(option));
            },
          },
        ],
        MAX_LOOKAHEAD: 1,
        IGNORE_AMBIGUITIES: true,
        ERR_MSG: "`plus` and a share, or an option such as `both faces`",
      });
      this.endOfPart(undefined, (next) => next === t.Plus);
    },
  );

  private isNext(...types: readonly TokenType[]): boolean {
    return types.includes(this.LA(1).tokenType);
  }

  /** The entry rule for each form of a field. */
  readonly fieldRules: { readonly [F in FieldForm]: LineRule<Value<F>> } = {
    words: this.words,
    quantity: this.quantityField,
    range: this.rangeField,
    air: this.air,
    thin: this.thin,
    sold: this.sold,
    mix: this.mix,
    money: this.money,
    number: this.number,
    room: this.room,
    hours: this.hours,
    dates: this.dates,
    moment: this.moment,
    name: this.name,
    pieces: this.pieces,
    shape: this.shape,
    wood: this.wood,
    existing: this.existing,
    lead: this.lead,
  };

  // -------------------------------------------------------------------------------------------------------------
  // What is kept of a part

  /** `markEnd`: where `RH` ends, when it is there. */
  private keepAir(line: Value<"air">, range: tree.Range, markEnd: number | undefined): void {
    const { from, span } = range;
    const isShare = from.kind === "quantity" && from.parts[0]?.unit?.text === "%";
    if (markEnd === undefined && !isShare) {
      if (line.temperature === undefined) {
        line.temperature = range;
      } else {
        this.report({ message: "expected the humidity, such as `60 % RH`", span });
      }
      return;
    }
    const end = markEnd ?? span.end;
    if (from.kind === "quantity" && range.to === undefined) {
      line.humidity = { kind: "humidity", value: from, span: { start: span.start, end } };
    } else {
      this.report({ message: "expected one humidity, such as `60 % RH`", span });
    }
    if (markEnd === undefined) {
      const mend = { title: "Add `RH`", span: { start: end, end }, text: " RH" };
      this.report({ message: "expected `RH` after the humidity", span, mend });
    }
  }

  private keepCoats(layers: Draft<tree.ExistingLayer>[], coats: tree.NumberLiteral, end: number): void {
    const layer = layers.at(-1);
    if (layer === undefined) {
      const message = "expected a layer before the number of its coats, such as `alkyd paint, 2 coats`";
      this.report({ message, span: { start: coats.span.start, end } });
    } else {
      layer.coats = coats;
      layer.span = { start: layer.span.start, end };
    }
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
    const known = Object.hasOwn(SHAPES, name) ? SHAPES[name] : undefined;
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

function sizeName(shape: string, idx: number): string {
  const size = Object.hasOwn(SHAPES, shape) ? SHAPES[shape]!.sizes[idx] : undefined;
  return size === undefined ? "a size" : `the ${plainSize(size)}`;
}

function plainSize(size: string): string {
  return size.replace(/[?~]$/u, "");
}
