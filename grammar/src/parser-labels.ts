/** The entry rules for what a label states: figures, windows, air, thinner, packs and the parts of a mix. */
import { gist } from "./gist.ts";
import { endOf } from "./lexer.ts";
import { eitherLoss, filmOfLabel, placeOutdoors, weatherInWords, windowOrEarliest } from "./line-problems.ts";
import { AT_COMMA, type Draft, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { valueText } from "./parser-parts.ts";
import { WordsParser } from "./parser-words.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import { t } from "./translate.ts";
import type * as tree from "./tree.ts";
import { plainUnit } from "./units.ts";

const OF = phrases("of");
const WET = phrases("wet film", "wet");
/** `or after 24 h sand`, `or sand after 24 h`, `or after 24 h with sanding` */
const OR_SAND = /^or (sand(?:ing)? )?after \d/u;
const SANDED = phrases("sand", "sand first", "sanded", "with sanding", "after sanding");
/** `, or after 24 h with sanding` behind a window */
const OTHERWISE =
  /^,? ?((?:or |and |then )?(?:else |otherwise )?(?:after|from|within|later) (?!\d{1,4} ?[a-z]{1,10} sand$)[^,"{}]{1,40})$/u;
/** `up to 1 h, or after 48 h`, `within 1 hour or after 48 hours` */
const WITHIN_OR_AFTER =
  /^(?:up to|within|in) \d+(?:\.\d+)? ?\p{L}{1,7} ?,? or (?:after|from) \d+(?:\.\d+)? ?\p{L}{1,7}$/u;
const UPPER_LIMIT = phrases("under", "below", "max", "maximum", "at most", "up to", "not over", "not above");
const NO_LIMIT: ReadonlySet<string> = new Set(["none", "any", "unlimited", "open"]);
const CONTAINERS = phrases(
  "cans",
  "tins",
  "bottles",
  "buckets",
  "can",
  "tin",
  "bottle",
  "jar",
  "tub",
  "drum",
  "bucket",
  "spray can",
  "aerosol can",
  "aerosol",
);
/** `50 g to 0.5 L water`, `250 g flakes to 1 L meths`, `1 qt to 1 gal water`, `precat with 5 % dye`. */
const EACH = phrases("each", "a piece", "apiece");
const TOLERANCE = /^(?:\+ ?\/ ?- ?|± ?|plus minus |give or take )\d[\d.]{0,4} ?(?:%|°?[CFK])?(?=$|[ ,])/u;
const MADE_UP =
  /^\d[\d./ ]{0,8}(?!parts?\b)\p{L}{1,9} (?:[\p{L}_]{1,30} ){0,4}?(?:(?:to|in|per) \d[\d./ ]{0,8}|per )\p{L}{1,9}(?: |$)|^[\p{L}_]{1,40} with \d[\d.]{0,6} ?%? [\p{L}_]{2,40}$/u;

/** `80 g/L warm water`, `3 parts oil, 1 part turpentine`, `equal parts of oil and varnish`: no ratio to a hardener. */
const IN_WORDS =
  /^(?!.*harden)(?:\d[\d./ ]{0,8}(?:g|kg|mL|ml|oz|lb)\/\p{L}{1,4} |\d+ parts? [^,]{2,40}, ?\d|(?:equal|half|stir|shake|a little|one part) |as |by |fresh|to taste|[\p{L}_]{3,20} \d[\d.]{0,5} ?g\/L\b|(?!\d+(?:\.\d+)? ?:)[^,:]{2,60}, ?[^,:]{2,60}$)/iu;

const NIGHT: Readonly<Record<string, true>> = { overnight: true, "over night": true, "one night": true };
/** Hours of a night on a label, as `wait overnight` takes them at least: common practice, no source. */
const LABEL_NIGHT_H = 12;
/** Times that a longer night makes safer. */
const OF_A_NIGHT: ReadonlySet<string> = new Set(["touch", "sandable", "stackable", "cure"]);
const WITH_OR_OF = phrases("with", "of", "in");
/** `1 to 10`, which is no share. */
const RATIO_IN_WORDS = /^\d+ to \d+(?! ?%)(?![\d.])/u;
/** How a ratio of parts begins. */
const PARTS = /^\d+(?:\.\d+)? ?(?::|parts? )/u;

type Value<F> = Draft<Extract<tree.FieldValue, { readonly form: F }>>;
type PackSize = Value<"packs">["sizes"][number];

/** A range whose end is so many times its beginning is a window; no label is so vague about the earliest time. */
const WINDOW_FROM = 4;

/** More than this stays in no pot, brush and can, in percent. */
const MOST_SPARE = 25;

/** Where what follows a part can begin, besides at a comma. */
const AT_AIR: readonly TokenType[] = [Token.Comma, Token.NumberToken, Token.Word];
const AT_UP: readonly TokenType[] = [Token.Comma, Token.Up];

export class LabelParser extends WordsParser {
  protected readonly quantityField = this.line(
    (): Value<"quantity"> => ({ form: "quantity" }),
    (line) => {
      const night = OF_A_NIGHT.has(this.keyword) ? this.night() : undefined;
      if (night !== undefined) {
        line.quantity = { kind: "quantity", parts: [night], span: night.span };
        this.respell(night.span, valueText(line.quantity));
        return;
      }
      const counted = this.keyword === "on_hand" ? this.countedStock() : undefined;
      if (counted !== undefined) {
        line.quantity = counted;
        return;
      }
      const { from, to } = this.range("a quantity");
      if (this.keyword === "spare" && this.written !== "spare") {
        this.lossOfJob(from);
      }
      if (this.written === "film") {
        this.wetFilm(line, from, to);
        return;
      }
      line.quantity = this.keyword === "cut" ? this.cut(from) : from;
      if (to !== undefined) {
        line.to = to;
      }
    },
  );

  /** `2 x 2.5 L` */
  private countedStock(): tree.Quantity | undefined {
    if (!this.at(Token.NumberToken) || !this.at(Token.X, 2)) {
      return undefined;
    }
    const { start } = this.peek(1);
    const count = make.makeNumber(this.take(Token.NumberToken)).value;
    this.take(Token.X);
    const one = this.quantity("a volume or a weight");
    const parts = one.parts.map((part) => {
      const value = Math.round(part.number.value * count * 1000) / 1000;
      return { ...part, number: { ...part.number, value, text: String(value) } };
    });
    const all = { ...one, parts, span: { start, end: one.span.end } };
    this.dropRespellings(start);
    this.respell(all.span, valueText(all));
    return all;
  }

  /** `loss 60 %`: so much stays in no pot; it may be what a gun sprays past the piece. */
  protected lossOfJob(value: tree.Value): void {
    const percent = value.kind === "quantity" ? value.parts[0]!.number.value : 0;
    if (percent > MOST_SPARE && percent < 100) {
      this.report(eitherLoss(value.span, percent));
    }
  }

  /** `film 130 um wet`: a micrometre over a square metre is a millilitre. */
  private wetFilm(line: Value<"quantity">, from: tree.Value, to: tree.Value | undefined): void {
    const values = [from, ...(to ? [to] : [])];
    const isWet = this.isWordAt("wet", 1);
    if (
      !isWet ||
      values.some((value) => value.kind === "name" || value.parts.some(({ unit }) => unit?.text !== "um"))
    ) {
      throw this.refused(filmOfLabel(values[0]!.span));
    }
    this.leaveOut(WET);
    const { end } = make.tokenSpan(this.peek(0));
    const [low, high] = values.map((value) => this.asAmount(value as tree.Quantity));
    this.respell({ start: values.at(-1)!.span.end, end }, "");
    line.quantity = low!;
    if (high !== undefined) {
      line.to = high;
    }
  }

  private asAmount(value: tree.Quantity): tree.Quantity {
    const parts = value.parts.map(({ number, unit }) => ({ number, unit: { ...unit!, text: "mL/m2" } }));
    const amount = { ...value, parts };
    this.dropRespellings(value.span.start);
    this.respell(value.span, valueText(amount));
    return amount;
  }

  /** `2 lb`: a two-pound cut is of a gallon. */
  protected cut(value: tree.Value): tree.Value {
    const only = value.kind === "quantity" && value.parts.length === 1 ? value.parts[0] : undefined;
    const unit = only?.unit;
    if (value.kind !== "quantity" || unit?.text !== "lb") {
      return value;
    }
    this.respell(value.span, `${only!.number.text} lb/gal`);
    return { ...value, parts: [{ ...only!, unit: { ...unit, text: "lb/gal" } }] };
  }

  protected readonly rangeField = this.line(
    (): Value<"range"> => ({ form: "range" }),
    (line) => {
      if (this.withinOrAfter(line) || this.overnight(line)) {
        return;
      }
      const range = this.lowerLimit(() => this.range("a quantity"));
      line.range = this.orAfter(range);
      this.askForWindow(line.range);
      this.otherwise(line);
    },
  );

  /** `recoat overnight` */
  private overnight(line: Value<"range">): boolean {
    const night = this.night();
    if (night === undefined) {
      return false;
    }
    const { span } = night;
    const from: tree.Quantity = { kind: "quantity", parts: [night], span };
    this.respell(span, `${valueText(from)} "overnight"`);
    line.range = { kind: "range", from, span };
    line.what = { kind: "title", value: "overnight", span };
    return true;
  }

  /** A night as a label means it: so long at least. */
  private night(): (tree.Measure & { readonly span: tree.Span }) | undefined {
    const found = this.longestIn(NIGHT);
    if (found === undefined) {
      return undefined;
    }
    this.skip(found.length);
    const { span } = found;
    const unit: tree.Name = { kind: "name", text: "h", span };
    return {
      number: { kind: "number", text: String(LABEL_NIGHT_H), value: LABEL_NIGHT_H, span },
      unit,
      span,
    };
  }

  /** `4 h to 6 h, or after 24 h with sanding`: what the label says beside the window, which the plain form quotes. */
  protected otherwise(line: Value<"range">): void {
    if (this.at(Token.StringToken)) {
      line.what = make.makeTitle(this.take(Token.StringToken));
      return;
    }
    const said = OTHERWISE.exec(this.rest());
    const { start } = this.peek(1);
    const span = said && line.range !== undefined ? this.takeText(said[0]) : undefined;
    if (said && span !== undefined) {
      this.respell({ start, end: span.end }, ` "${said[1]!}"`);
      line.what = { kind: "title", value: said[1]!, span };
    }
  }

  /** `up to 1 h, or after 48 h`: sooner is wet on wet, so the later time is the earliest. */
  protected withinOrAfter(line: Value<"range">): boolean {
    const said = WITHIN_OR_AFTER.exec(this.rest());
    if (!said) {
      return false;
    }
    const { start } = this.peek(1);
    while (!this.at(Token.NumberToken)) this.skip(1);
    const within = this.quantity("a time");
    while (!this.at(Token.NumberToken)) this.skip(1);
    const after = this.quantity("a time");
    const span = { start, end: endOf(this.peek(0)) };
    const value = `or within ${valueText(within)}`;
    this.dropRespellings(start);
    this.respell(span, `${valueText(after)} "${value}"`);
    line.range = { kind: "range", from: after, span };
    line.what = { kind: "title", value, span };
    return true;
  }

  /** `4 h or after 24 h sand`: the end of the window. */
  protected orAfter(range: tree.Range): tree.Range {
    const said = range.to === undefined ? OR_SAND.exec(this.rest()) : null;
    if (!said) {
      return range;
    }
    const { start } = this.peek(1);
    this.skip(said[1] === undefined ? 2 : 3);
    const to = this.quantity("the end of the window");
    this.leaveOut(SANDED);
    const end = endOf(this.peek(0));
    this.dropRespellings(start);
    this.respell({ start, end }, `to ${valueText(to)}`);
    return { ...range, to, span: { start: range.span.start, end } };
  }

  /** `recoat 2-3 h` may be the earliest time of the label, or from when to when the next coat holds. */
  protected askForWindow({ from, to, isShort, span }: tree.Range): void {
    if (isShort && from.kind === "quantity" && to?.kind === "quantity") {
      const [low, high] = [from.parts[0]!.number.value, to.parts[0]!.number.value];
      if (from.parts[0]!.unit?.text === to.parts[0]!.unit?.text && high < WINDOW_FROM * low) {
        this.report(windowOrEarliest(span, valueText(from), valueText(to)));
      }
    }
  }

  protected readonly air = this.line(
    (): Value<"air"> => ({ form: "air" }),
    (line) => {
      this.airItem(line);
      this.many(
        () =>
          this.isNext(Token.Comma, Token.NumberToken) ||
          (this.at(Token.And) && this.at(Token.NumberToken, 2)),
        () => {
          if (this.at(Token.And)) {
            this.respell(make.tokenSpan(this.take(Token.And)), ",");
          } else {
            this.commaBefore();
          }
          this.airItem(line);
        },
      );
    },
  );

  protected readonly airItem = this.part(AT_AIR, (line: Value<"air">): void => {
    if (this.isWordAt("no", 1) || this.isWordAt("not", 1)) {
      throw this.refused(weatherInWords(make.tokenSpan(this.peek(1)), this.restOfPart()));
    }
    if (this.isWordAt("outdoors", 1) || this.isWordAt("outside", 1)) {
      throw this.refused(placeOutdoors(make.tokenSpan(this.take(Token.Word))));
    }
    if (this.isShareBehindLimit()) {
      this.leaveOut(UPPER_LIMIT, Token.NumberToken);
    }
    const range = this.openRange(this.lowerLimit(() => this.range("a temperature or a humidity")));
    const mark = this.at(Token.Rh) ? this.take(Token.Rh) : undefined;
    if (mark !== undefined && mark.text !== "RH") {
      this.respell(make.tokenSpan(mark), "RH");
    }
    this.keepAir(line, range, mark === undefined ? undefined : endOf(mark));
    this.tolerance();
    this.endOfPart(undefined, (next) => next === Token.NumberToken || next === Token.And);
  });

  /** `+/- 3 %`: how much it wanders, in words; the figure before it is the middle. */
  private tolerance(): void {
    const said = TOLERANCE.exec(this.rest());
    const span = said && this.takeText(said[0]);
    if (said && span) {
      this.respell(span, "");
      this.saidBefore = this.saidBefore === undefined ? said[0] : `${this.saidBefore}, ${said[0]}`;
    }
  }

  /** `15 C to none`: no upper limit. */
  private openRange(range: tree.Range): tree.Range {
    const { from, to } = range;
    if (to?.kind !== "name" || !NO_LIMIT.has(to.text.toLowerCase())) {
      return range;
    }
    this.respell({ start: from.span.end, end: to.span.end }, "");
    return { kind: "range", from, span: range.span };
  }

  /** `under 60 % RH`: of a humidity the highest is what is stated. */
  protected isShareBehindLimit(): boolean {
    let ahead = 1;
    while (this.at(Token.Word, ahead) && ahead < 4) ahead += 1;
    return ahead > 1 && this.at(Token.NumberToken, ahead) && this.peek(ahead + 1).text === "%";
  }

  /** `markEnd`: where `RH` ends, when it is there. */
  protected keepAir(line: Value<"air">, range: tree.Range, markEnd: number | undefined): void {
    const { from, span } = range;
    const isShare = from.kind === "quantity" && from.parts[0]?.unit?.text === "%";
    if (markEnd === undefined && !isShare) {
      if (line.temperature === undefined) {
        line.temperature = range;
      } else {
        this.report({ message: gist((suchAs) => t`expected the humidity${suchAs("60 % RH")}`), span });
      }
      return;
    }
    const end = markEnd ?? span.end;
    if (from.kind === "quantity" && range.to?.kind !== "name") {
      const { to } = range;
      line.humidity = { kind: "humidity", value: from, ...(to && { to }), span: { start: span.start, end } };
    } else {
      this.report({ message: gist((suchAs) => t`expected one humidity${suchAs("60 % RH")}`), span });
    }
    if (markEnd === undefined) {
      // `55 %`, `55 % humidity`: of air a share is nothing else.
      const word = this.isWordAt("humidity", 1) ? make.tokenSpan(this.take(Token.Word)) : { start: end, end };
      this.respell(word, " RH");
    }
  }

  protected readonly thin = this.line(
    (): Value<"thin"> => ({ form: "thin" }),
    (line) => {
      if (this.isRatioNext()) {
        this.ratioBefore(line);
        return;
      }
      if (this.at(Token.NumberToken)) {
        this.thinnerBehind(line);
        return;
      }
      if (this.at(Token.Up) && this.at(Token.To, 2) && this.at(Token.NumberToken, 3)) {
        // `up to 10 % water`
        this.respell({ start: this.peek(1).start, end: endOf(this.peek(2)) }, "");
        this.skip(2);
        this.thinnerBehind(line);
        return;
      }
      this.leaveOut(WITH_OR_OF);
      this.thinner(line);
      if (this.isRatioNext() || this.at(Token.NumberToken) || this.at(Token.Up)) {
        const end = endOf(this.peek(0));
        this.respell({ start: end, end }, ",");
      } else if (this.at(Token.Comma)) {
        this.take(Token.Comma);
      }
      if (!this.at(Token.End)) {
        if (this.isRatioNext() || RATIO_IN_WORDS.test(this.rest())) {
          line.ratio = this.partsOf();
          return;
        }
        if (this.at(Token.NumberToken)) {
          this.shareOfThinner(line);
          return;
        }
        this.take(Token.Up, "`up to` and a share");
        this.take(Token.To, "`to` and a share");
        line.upTo = this.value("a share");
      }
    },
  );

  /** `1:20`, `1 part to 20 parts` */
  private isRatioNext(): boolean {
    return this.at(Token.TimeToken) || PARTS.test(this.rest());
  }

  /** `1:20 water`, `1 part to 20 parts of water`: the thinner stands in front in the plain form. */
  private ratioBefore(line: Value<"thin">): void {
    const { start } = this.peek(1);
    line.ratio = this.partsOf();
    this.leaveOut(WITH_OR_OF);
    this.thinner(line);
    if (line.thinner !== undefined) {
      this.dropRespellings(start);
      this.respell({ start, end: line.thinner.span.end }, `${line.thinner.text}, ${ratioText(line.ratio)}`);
    }
  }

  /** `water, 5-10 %`; one share alone is the most, `water, 10 %`. */
  protected shareOfThinner(line: Value<"thin">): void {
    const { from, to } = this.range("a share");
    line.upTo = to ?? from;
    if (to === undefined) {
      this.respell({ start: from.span.start, end: from.span.start }, "up to");
    } else {
      line.from = from;
    }
  }

  /** `5-10 % water`: the thinner stands in front in the plain form. */
  protected thinnerBehind(line: Value<"thin">): void {
    const { start } = this.peek(1);
    const { from, to } = this.range("a share");
    this.thinner(line);
    line.upTo = to ?? from;
    if (to !== undefined) {
      line.from = from;
    }
    if (line.thinner === undefined) {
      return;
    }
    const share = to === undefined ? `up to ${valueText(from)}` : `${valueText(from)} to ${valueText(to)}`;
    this.dropRespellings(start);
    this.respell({ start, end: line.thinner.span.end }, `${line.thinner.text}, ${share}`);
  }

  protected readonly thinner = this.part(AT_UP, (line: Value<"thin">): void => {
    const thinner = this.speltWords() ?? make.makeWords(this.wordRun("a thinner", Token.Up));
    line.thinner = thinner;
    this.endOfPart(
      undefined,
      (next) => next === Token.Up || next === Token.NumberToken || next === Token.TimeToken,
    );
  });

  protected readonly packs = this.line(
    (): Value<"packs"> => ({ form: "packs", sizes: [] }),
    (line) => {
      const sizes: PackSize[] = [];
      line.sizes = sizes;
      this.list(this.packSize, sizes);
    },
  );

  protected readonly packSize = this.part(AT_COMMA, (sizes: PackSize[]): void => {
    const draft: Draft<PackSize> = { span: NO_SPAN };
    sizes.push(draft);
    this.spanned(draft, () => {
      const { start } = this.peek(1);
      const many = this.at(Token.NumberToken) && this.at(Token.X, 2) ? Number(this.peek(1).text) : 1;
      this.skip(many > 1 ? 2 : 0);
      const amount = this.quantity("a quantity");
      draft.amount = amount;
      this.leaveOut(CONTAINERS);
      if (this.at(Token.End) || this.at(Token.Comma)) {
        // What it costs is not known.
        return;
      }
      if (this.isWordAt("at", 1)) {
        this.respell(make.tokenSpan(this.take(Token.Word)), "for");
      } else if (this.at(Token.NumberToken) && /^\d+[.,]\d{2}$/u.test(this.peek(1).text)) {
        const end = endOf(this.peek(0));
        this.respell({ start: end, end }, "for");
      } else {
        this.take(Token.For, "`for` and the price");
      }
      const { amount: price, per, span } = this.sum("the price");
      draft.price = per === undefined ? price : this.priceOf(amount, price, per, span);
      if (many > 1) {
        // `2 x 1 L for 56.00`: what one costs, unless that is what is said.
        const isEach = this.leaveOut(EACH);
        const one = isEach ? draft.price.value : Math.round((draft.price.value / many) * 100) / 100;
        this.dropRespellings(start);
        this.respell({ start, end: endOf(this.peek(0)) }, `${valueText(amount)} for ${one}`);
        draft.price = { ...draft.price, text: String(one), value: one };
      }
    });
    this.endOfPart();
  });

  /** `5 kg for 32 EUR/kg` */
  protected priceOf(
    { parts }: tree.Quantity,
    price: tree.NumberLiteral,
    per: string,
    span: tree.Span,
  ): tree.NumberLiteral {
    const [only] = parts;
    const unit = only?.unit?.text;
    if (only === undefined || parts.length > 1 || unit === undefined || unit !== plainUnit(per)) {
      const message = gist(
        (suchAs) =>
          t`expected the price of the whole container, or by its own unit${suchAs("5 kg for 32.00/kg")}`,
      );
      this.report({ message, span });
      return price;
    }
    const text = String(Math.round(only.number.value * price.value * 100) / 100);
    this.dropRespellings(span.start);
    this.respell(span, text);
    return { ...price, text, value: Number(text) };
  }

  protected readonly mix = this.line(
    (): Value<"mix"> => ({ form: "mix" }),
    (line) => {
      const { start } = this.peek(1);
      if (this.madeUp(line)) {
        return;
      }
      const first = this.at(Token.Word) ? this.nameOf(this.take(Token.Word)) : undefined;
      line.ratio = this.mixRatio();
      this.mixBasis(line);
      const isPlain = this.at(Token.With);
      if (first === undefined && this.at(Token.End)) {
        // Both parts come in one pack.
        return;
      }
      if (first !== undefined) {
        // `mix hardener 10:1`
        line.hardener = first;
      } else if (this.at(Token.Word) && !isPlain && !this.at(Token.By)) {
        // `mix 10:1 catalyst`
        this.leaveOut(OF);
        line.hardener = this.nameOf(this.take(Token.Word, "a name"));
      } else {
        this.take(Token.With, "`with` and the other part");
        line.hardener = this.nameOf(this.take(Token.Word, "a name"));
      }
      const isBehind = this.mixBasis(line);
      if (!isPlain || isBehind) {
        const { ratio, by, hardener } = line;
        const end = endOf(this.peek(0));
        this.dropRespellings(start);
        this.respell(
          { start, end },
          `${ratioText(ratio)}${by ? ` by ${by.text}` : ""} with ${hardener.text}`,
        );
      }
    },
  );

  /** `10:1`, `4 parts to 1 part`, `10 to 1`, `1 %` */
  protected mixRatio(): tree.Ratio {
    const isShare = this.at(Token.NumberToken) && this.peek(2).text === "%";
    return isShare ? this.thinning() : this.partsOf();
  }

  /** `10:1`, `4 parts to 1 part`, `10 to 1` */
  private partsOf(): tree.Ratio {
    const said = /^(\d+(?:\.\d+)?) (?:parts? (?:\p{L}+ )?)?to (\d+(?:\.\d+)?)(?: parts?)?(?![\d:])/u.exec(
      this.rest(),
    );
    const span = said ? this.takeText(said[0]) : undefined;
    if (!said || span === undefined) {
      return this.ratio();
    }
    this.respell(span, `${said[1]}:${said[2]}`);
    const part = (text: string): tree.NumberLiteral => ({ kind: "number", text, value: Number(text), span });
    return { kind: "ratio", a: part(said[1]!), b: part(said[2]!), span };
  }

  /** `by weight`, `by volume` */
  protected mixBasis(line: Value<"mix">): boolean {
    if (this.at(Token.Comma) && this.at(Token.By, 2) && line.by === undefined) {
      this.respell(make.tokenSpan(this.take(Token.Comma)), "");
    }
    if (!this.at(Token.By) || line.by !== undefined) {
      return false;
    }
    this.take(Token.By);
    line.by = make.makeName(this.take(Token.Word, "`weight` or `volume`"));
    return true;
  }

  /** `"250 g flakes to 1 L alcohol"`, `50 g to 0.5 L water`: how it is made up, which the plain form quotes. */
  protected madeUp(line: Value<"mix">): boolean {
    if (this.at(Token.StringToken)) {
      line.made = make.makeTitle(this.take(Token.StringToken));
      return true;
    }
    const rest = this.rest();
    if (!(MADE_UP.test(rest) || IN_WORDS.test(rest)) || /["{}#]/u.test(rest)) {
      return false;
    }
    const { start } = this.peek(1);
    const value = this.takeRest();
    const span = { start, end: endOf(this.peek(0)) };
    this.respell(span, `"${value.replaceAll("\\", "\\\\")}"`);
    line.made = { kind: "title", value, span };
    return true;
  }
}

const ratioText = ({ a, b }: tree.Ratio): string => `${a.text}:${b.text}`;
