/**
 * The entry rules for fields, one for each form of a value.
 *
 * A rule reads what follows the field's word, up to the end of the line; which form a field has says `vocabulary.ts`.
 * Whether a word, a unit or a size fits the field is left to the analysis core, except for the number of sizes of a shape,
 * since a shape with too few of them is a line that ends too early.
 */
import { gist } from "./gist.ts";
import { endOf } from "./lexer.ts";
import {
  afterPart,
  decade,
  eitherLoss,
  openEnd,
  partOfDay,
  placeOutdoors,
  testedBy,
  weatherInWords,
  windowOrEarliest,
} from "./line-problems.ts";
import { AT_COMMA, type Draft, type LineRule, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { DASHES, valueText } from "./parser-parts.ts";
import { WordsParser } from "./parser-words.ts";
import { saidTime } from "./said-figures.ts";
import type { TokenType } from "./tokens.ts";
import * as t from "./tokens.ts";
import type * as tree from "./tree.ts";
import { plainUnit } from "./units.ts";
import type { FieldForm } from "./vocabulary.ts";
import { keyOf, WORD_SPELLINGS } from "./word-spellings.ts";

const OF = phrases("of");
/** `or after 24 h sand`, `or sand after 24 h`, `or after 24 h with sanding` */
const OR_SAND = /^or (sand(?:ing)? )?after \d/u;
const SANDED = phrases("sand", "sand first", "sanded", "with sanding", "after sanding");
/** `, or after 24 h with sanding` behind a window */
const OTHERWISE =
  /^,? ?((?:or |and |then )?(?:else |otherwise )?(?:after|from|within|later) (?!\d{1,4} ?[a-z]{1,10} sand$)[^,"{}]{1,40})$/u;
/** `up to 1 h, or after 48 h`, `within 1 hour or after 48 hours` */
const WITHIN_OR_AFTER =
  /^(?:up to|within|in) \d+(?:\.\d+)? ?\p{L}{1,7},? or (?:after|from) \d+(?:\.\d+)? ?\p{L}{1,7}$/u;
const CONJUNCTIONS = phrases("at", "from", "by");
const UPPER_LIMIT = phrases("under", "below", "max", "maximum", "at most", "up to", "not over", "not above");
const CONTAINERS = phrases(
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
const OVER_IT = phrases("over it", "on top of it", "on top", "above it", "over that");
const NOON: Readonly<Record<string, true>> = { noon: true, midday: true, "by noon": true, "by midday": true };
const PARTS_OF_DAY: Readonly<Record<string, true>> = {
  morning: true,
  "in the morning": true,
  afternoon: true,
  "in the afternoon": true,
  evening: true,
  "in the evening": true,
};
/** `50 g to 0.5 L water`, `250 g flakes to 1 L meths`, `1 qt to 1 gal water`, `precat with 5 % dye`. */
const MADE_UP =
  /^\d[\d./ ]{0,8}(?!parts?\b)\p{L}{1,9} (?:[\p{L}_]{1,30} ){0,4}?(?:to|in|per) \d[\d./ ]{0,8}\p{L}{1,9}(?: |$)|^[\p{L}_]{1,40} with \d[\d.]{0,6} ?%? [\p{L}_]{2,40}$/u;
/** What state an old finish is in. */
const LOOKS =
  "worn|yellowed|yellow|chipping|chipped|cracked|cracking|crazed|crackled|alligatored|peeling|flaking|flaky|loose|faded|dirty|grimy|greasy|sound|sticky|tacky|scratched|stained|bloomed|dull|brittle|thick|thin|patchy|blistered|burnt|burned|weathered|old|damaged|good|bad|poor";
const STATE = new RegExp(
  `^(?:(?:very|mostly|partly|badly|slightly|a bit|a little|still|well|heavily|in places|gone) )?(?:${LOOKS})(?:(?: and|,)? (?:${LOOKS}|colour|condition|shape|in places|at the edges|on the edges|on the seat|on the seats|off|all over)){0,3}$`,
  "iu",
);
const COLOURS_OF_OLD =
  "black|brown|red|green|blue|yellow|orange|grey|gray|white|cream|pink|dark|light|pale|old|thick|thin|glossy|matt|gloss";
/** `black paint`, `old dark varnish`: how it looks, and whether it is paint or clear. */
const OLD_LOOK = new RegExp(
  `^((?:(?:${COLOURS_OF_OLD}|${LOOKS}) ){1,4})(paint|enamel|varnish|lacquer|clear|finish|coating)$`,
  "iu",
);

type Value<F> = Draft<Extract<tree.FieldValue, { readonly form: F }>>;
type PackSize = Value<"packs">["sizes"][number];
type HoursSpan = Value<"hours">["spans"][number];
type DateRange = Value<"dates">["ranges"][number];

/** A range whose end is so many times its beginning is a window; no label is so vague about the earliest time. */
const WINDOW_FROM = 4;

/** More than this stays in no pot, brush and can, in percent. */
const MOST_SPARE = 25;

/** Where what follows a part can begin, besides at a comma. */
const AT_AIR: readonly TokenType[] = [t.Comma, t.NumberToken, t.Word];
const AT_UP: readonly TokenType[] = [t.Comma, t.Up];
const AT_LAYER: readonly TokenType[] = [t.Comma, t.NumberToken, t.Word];

export class FieldParser extends WordsParser {
  protected readonly quantityField = this.line(
    (): Value<"quantity"> => ({ form: "quantity" }),
    (line) => {
      const { from, to } = this.range("a quantity");
      if (this.keyword === "spare" && this.written !== "spare") {
        this.lossOfJob(from);
      }
      line.quantity = this.keyword === "cut" ? this.cut(from) : from;
      if (to !== undefined) {
        line.to = to;
      }
    },
  );

  /** `loss 60 %`: so much stays in no pot; it may be what a gun sprays past the piece. */
  private lossOfJob(value: tree.Value): void {
    const percent = value.kind === "quantity" ? value.parts[0]!.number.value : 0;
    if (percent > MOST_SPARE && percent < 100) {
      this.report(eitherLoss(value.span, percent));
    }
  }

  /** `2 lb`: a two-pound cut is of a gallon. */
  private cut(value: tree.Value): tree.Value {
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
      if (this.withinOrAfter(line)) {
        return;
      }
      const range = this.lowerLimit(() => this.range("a quantity"));
      line.range = this.orAfter(range);
      this.askForWindow(line.range);
      this.otherwise(line);
    },
  );

  /** `4 h to 6 h, or after 24 h with sanding`: what the label says beside the window, which the plain form quotes. */
  private otherwise(line: Value<"range">): void {
    if (this.at(t.StringToken)) {
      line.what = make.makeTitle(this.take(t.StringToken));
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
  private withinOrAfter(line: Value<"range">): boolean {
    const said = WITHIN_OR_AFTER.exec(this.rest());
    if (!said) {
      return false;
    }
    const { start } = this.peek(1);
    while (!this.at(t.NumberToken)) this.skip(1);
    const within = this.quantity("a time");
    while (!this.at(t.NumberToken)) this.skip(1);
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
  private orAfter(range: tree.Range): tree.Range {
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

  protected readonly air = this.line(
    (): Value<"air"> => ({ form: "air" }),
    (line) => {
      this.airItem(line);
      this.many(
        () => this.isNext(t.Comma, t.NumberToken),
        () => {
          this.commaBefore();
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
      throw this.refused(placeOutdoors(make.tokenSpan(this.take(t.Word))));
    }
    if (this.isShareBehindLimit()) {
      this.leaveOut(UPPER_LIMIT, t.NumberToken);
    }
    const range = this.lowerLimit(() => this.range("a temperature or a humidity"));
    const mark = this.at(t.Rh) ? this.take(t.Rh) : undefined;
    if (mark !== undefined && mark.text !== "RH") {
      this.respell(make.tokenSpan(mark), "RH");
    }
    this.keepAir(line, range, mark === undefined ? undefined : endOf(mark));
    this.endOfPart(undefined, (next) => next === t.NumberToken);
  });

  /** `under 60 % RH`: of a humidity the highest is what is stated. */
  private isShareBehindLimit(): boolean {
    let ahead = 1;
    while (this.at(t.Word, ahead) && ahead < 4) ahead += 1;
    return ahead > 1 && this.at(t.NumberToken, ahead) && this.peek(ahead + 1).text === "%";
  }

  protected readonly thin = this.line(
    (): Value<"thin"> => ({ form: "thin" }),
    (line) => {
      if (this.at(t.NumberToken)) {
        this.thinnerBehind(line);
        return;
      }
      this.thinner(line);
      if (this.at(t.Comma) || this.at(t.Up)) {
        this.commaBefore();
        if (this.at(t.NumberToken)) {
          this.shareOfThinner(line);
          return;
        }
        this.take(t.Up, "`up to` and a share");
        this.take(t.To, "`to` and a share");
        line.upTo = this.value("a share");
      }
    },
  );

  /** `water, 5-10 %`; one share alone is the most, `water, 10 %`. */
  private shareOfThinner(line: Value<"thin">): void {
    const { from, to } = this.range("a share");
    line.upTo = to ?? from;
    if (to === undefined) {
      this.respell({ start: from.span.start, end: from.span.start }, "up to");
    } else {
      line.from = from;
    }
  }

  /** `5-10 % water`: the thinner stands in front in the plain form. */
  private thinnerBehind(line: Value<"thin">): void {
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
    const thinner = this.speltWords() ?? make.makeWords(this.wordRun("a thinner", t.Up));
    line.thinner = thinner;
    this.endOfPart(undefined, (next) => next === t.Up);
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
      const amount = this.quantity("a quantity");
      draft.amount = amount;
      this.leaveOut(CONTAINERS);
      if (this.isWordAt("at", 1)) {
        this.respell(make.tokenSpan(this.take(t.Word)), "for");
      } else {
        this.take(t.For, "`for` and the price");
      }
      const { amount: price, per, span } = this.sum("the price");
      draft.price = per === undefined ? price : this.priceOf(amount, price, per, span);
    });
    this.endOfPart();
  });

  /** `10:1`, `4 parts to 1 part`, `10 to 1`, `1 %` */
  private mixRatio(): tree.Ratio {
    const said = /^(\d+(?:\.\d+)?) (?:parts? (?:\p{L}+ )?)?to (\d+(?:\.\d+)?)(?: parts?)?(?![\d:])/u.exec(
      this.rest(),
    );
    const span = said ? this.takeText(said[0]) : undefined;
    if (!said || span === undefined) {
      const isShare = this.at(t.NumberToken) && this.peek(2).text === "%";
      return isShare ? this.thinning() : this.ratio();
    }
    this.respell(span, `${said[1]}:${said[2]}`);
    const part = (text: string): tree.NumberLiteral => ({ kind: "number", text, value: Number(text), span });
    return { kind: "ratio", a: part(said[1]!), b: part(said[2]!), span };
  }

  /** `by weight`, `by volume` */
  private mixBasis(line: Value<"mix">): boolean {
    if (!this.at(t.By) || line.by !== undefined) {
      return false;
    }
    this.take(t.By);
    line.by = make.makeName(this.take(t.Word, "`weight` or `volume`"));
    return true;
  }

  /** `5 kg for 32 EUR/kg` */
  private priceOf(
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
          `expected the price of the whole container, or by its own unit${suchAs("5 kg for 32.00/kg")}`,
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
      const first = this.at(t.Word) ? this.nameOf(this.take(t.Word)) : undefined;
      line.ratio = this.mixRatio();
      this.mixBasis(line);
      const isPlain = this.at(t.With);
      if (first === undefined && this.at(t.End)) {
        // Both parts come in one pack.
        return;
      }
      if (first !== undefined) {
        // `mix hardener 10:1`
        line.hardener = first;
      } else if (this.at(t.Word) && !isPlain && !this.at(t.By)) {
        // `mix 10:1 catalyst`
        this.leaveOut(OF);
        line.hardener = this.nameOf(this.take(t.Word, "a name"));
      } else {
        this.take(t.With, "`with` and the other part");
        line.hardener = this.nameOf(this.take(t.Word, "a name"));
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

  /** `"250 g flakes to 1 L alcohol"`, `50 g to 0.5 L water`: how it is made up, which the plain form quotes. */
  private madeUp(line: Value<"mix">): boolean {
    if (this.at(t.StringToken)) {
      line.made = make.makeTitle(this.take(t.StringToken));
      return true;
    }
    const rest = this.rest();
    if (!MADE_UP.test(rest) || /["{}#]/u.test(rest)) {
      return false;
    }
    const { start } = this.peek(1);
    const value = this.takeRest();
    const span = { start, end: endOf(this.peek(0)) };
    this.respell(span, `"${value.replaceAll("\\", "\\\\")}"`);
    line.made = { kind: "title", value, span };
    return true;
  }

  protected readonly money = this.line(
    (): Value<"money"> => ({ form: "money" }),
    (line) => {
      const { amount, per, span } = this.sum("an amount of money");
      line.amount = amount;
      if (per !== undefined) {
        const unit = plainUnit(per) ?? per;
        line.per = { kind: "name", text: unit, span };
        this.dropRespellings(span.start);
        this.respell(span, `${amount.text} per ${unit}`);
      } else if (this.at(t.Per)) {
        this.take(t.Per);
        line.per = make.makeUnit(this.take(t.Word, "`h`"));
      }
    },
  );

  protected readonly number = this.line(
    (): Value<"number"> => ({ form: "number" }),
    (line) => {
      line.number = make.makeNumber(this.take(t.NumberToken, "a number"));
      if (this.keyword === "built" && this.peek(1).text === "s") {
        throw this.refused(
          decade(line.number.text, { start: line.number.span.start, end: endOf(this.peek(1)) }),
        );
      }
    },
  );

  protected readonly room = this.line(
    (): Value<"room"> => ({ form: "room" }),
    (line) => {
      this.roomVolume(line);
      if (this.at(t.Comma)) {
        this.take(t.Comma);
        line.airChanges = this.quantity("the air changes");
      }
    },
  );

  protected readonly roomVolume = this.part(AT_COMMA, (line: Value<"room">): void => {
    const volume = this.quantity("a volume");
    line.volume = volume;
    this.endOfPart();
  });

  protected readonly hours = this.line(
    (): Value<"hours"> => ({ form: "hours", spans: [] }),
    (line) => {
      const spans: HoursSpan[] = [];
      line.spans = spans;
      this.list(this.hoursSpan, spans);
    },
  );

  protected readonly hoursSpan = this.part(AT_COMMA, (spans: HoursSpan[]): void => {
    const draft: Draft<HoursSpan> = { span: NO_SPAN };
    spans.push(draft);
    this.spanned(draft, () => {
      const before = spans.at(-2);
      const { start } = this.peek(1);
      const isMore = before?.from !== undefined && !this.at(t.Word);
      const { from, to } = isMore ? before : this.days();
      draft.from = from;
      if (to !== undefined) {
        draft.to = to;
      }
      if (isMore) {
        // More hours of the same days: the plain form names the days again.
        this.respell({ start, end: start }, `${from!.text}${to === undefined ? "" : ` to ${to.text}`}`);
      }
      if (this.at(t.End) || this.at(t.Comma)) {
        this.useExample(
          `hours ${from?.text ?? "Mon"}${to === undefined ? "" : ` to ${to.text}`} 09:00 to 17:00`,
        );
      }
      if (this.isWordAt("from", 1) || this.isWordAt("after", 1)) {
        const opens = saidTime(this.rest().replace(/^(?:from|after) /iu, ""))?.plain ?? "16:00";
        const days = `${from?.text ?? "Mon"}${to === undefined ? "" : ` to ${to.text}`}`;
        throw this.refused(openEnd(this.context(), this.peek(1), `hours ${days} ${opens} to 20:00`));
      }
      const { opens, closes } = this.openingHours();
      draft.opens = opens;
      draft.closes = closes;
    });
    this.endOfPart(undefined, (next) => next === t.And);
  });

  protected readonly dates = this.line(
    (): Value<"dates"> => ({ form: "dates", ranges: [] }),
    (line) => {
      const ranges: DateRange[] = [];
      line.ranges = ranges;
      this.list(this.dateRange, ranges);
    },
  );

  protected readonly dateRange = this.part(AT_COMMA, (ranges: DateRange[]): void => {
    const draft: Draft<DateRange> = { span: NO_SPAN };
    ranges.push(draft);
    this.spanned(draft, () => {
      draft.from = this.date("a date");
      const dash = this.peek(1);
      if (this.at(t.To)) {
        this.take(t.To);
        draft.to = this.date("the last date");
      } else if (dash.type === t.Unknown && DASHES.has(dash.text)) {
        this.respell(make.tokenSpan(dash), "to");
        this.skip(1);
        draft.to = this.date("the last date");
      }
    });
    this.endOfPart();
  });

  protected readonly moment = this.line(
    (): Value<"moment"> => ({ form: "moment" }),
    (line) => {
      line.date = this.date("a date");
      this.leaveOut(CONJUNCTIONS);
      const noon = this.longestIn(NOON);
      const time = noon === undefined ? this.timeOfDay() : this.noon(noon);
      if (time !== undefined) {
        line.time = time;
      }
      this.momentWords(line);
    },
  );

  private noon({ length, span }: { readonly length: number; readonly span: tree.Span }): tree.TimeLiteral {
    this.skip(length);
    this.respell(span, "12:00");
    return { kind: "time", text: "12:00", span };
  }

  /** `for light use`: what is meant by it, in quotes; a part of the day is an hour. */
  private momentWords(line: Value<"moment">): void {
    if (this.at(t.StringToken)) {
      line.what = make.makeTitle(this.take(t.StringToken));
    } else if (this.longestIn(PARTS_OF_DAY) !== undefined) {
      throw this.refused(partOfDay(this.context(), this.peek(1), `${this.keyword} ${line.date?.text ?? ""}`));
    } else if (this.at(t.For) && this.isTextBehind()) {
      const { start } = this.peek(1);
      const value = this.takeRest();
      const span = { start, end: endOf(this.peek(0)) };
      this.respell(span, `"${value}"`);
      line.what = { kind: "title", value, span };
    }
  }

  private isTextBehind(): boolean {
    return this.at(t.Word, 2) && !/["{}#\\]/u.test(this.rest());
  }

  protected readonly name = this.line(
    (): Value<"name"> => ({ form: "name" }),
    (line) => {
      line.name = this.nameOf(this.take(t.Word, "a name"));
      if (this.keyword === "after" && !this.at(t.End)) {
        const { text } = line.name;
        delete line.name;
        throw this.refused(afterPart(this.context(), this.peek(1), text));
      }
    },
  );

  protected readonly text = this.line(
    (): Value<"text"> => ({ form: "text" }),
    (line) => {
      line.text = this.textOfLine();
    },
  );

  /** A text in quotes, or all words of the line, which the plain form quotes. */
  protected textOfLine(): tree.Title {
    if (this.at(t.StringToken) || this.at(t.End) || !this.isTextInWords()) {
      return make.makeTitle(this.take(t.StringToken, "a text in double quotes"));
    }
    const { start } = this.peek(1);
    const value = this.takeRest();
    const span = { start, end: endOf(this.peek(0)) };
    this.respell(span, `"${value.replaceAll("\\", "\\\\")}"`);
    return { kind: "title", value, span };
  }

  protected readonly pieces = this.line(
    (): Value<"pieces"> => ({ form: "pieces" }),
    (line) => {
      line.name = this.nameOf(this.take(t.Word, "a name"));
      if (this.at(t.X)) {
        this.take(t.X);
        line.count = this.value("a number");
      }
    },
  );

  protected readonly lead = this.line(
    (): Value<"lead"> => ({ form: "lead" }),
    (line) => {
      line.result = make.makeName(this.take(t.Word, "`none_found` or `found`"));
      this.take(t.By, "`by` and the method of the test");
      line.method = make.makeName(this.take(t.Word, "the method of the test"));
      line.date = this.date("the date of the result");
    },
  );

  protected readonly existing = this.line(
    (): Value<"existing"> => ({ form: "existing", layers: [] }),
    (line) => {
      const layers: Draft<tree.ExistingLayer>[] = [];
      line.layers = layers;
      if (this.at(t.As) && this.peek(2).type === t.Left) {
        this.asLeftBy(line);
        return;
      }
      if (!this.atValue()) {
        throw this.mismatch("what is on it");
      }
      this.existingItem(layers);
      this.many(
        () => this.isNext(t.Comma, t.NumberToken),
        () => {
          this.commaBefore();
          this.existingItem(layers);
        },
      );
    },
  );

  private asLeftBy(line: Value<"existing">): void {
    const draft: Draft<NonNullable<Value<"existing">["asLeftBy"]>> = { span: NO_SPAN };
    line.asLeftBy = draft;
    this.useExample("existing as left by hall_tables");
    this.spanned(draft, () => {
      this.take(t.As);
      this.take(t.Left);
      this.take(t.By, "`by` and a job");
      draft.job = this.nameOf(this.take(t.Word, "a job"));
    });
  }

  protected readonly existingItem = this.part(AT_LAYER, (layers: Draft<tree.ExistingLayer>[]): void => {
    if (this.existingState(layers)) {
      return;
    }
    // Some kinds begin with a number: `2K polyurethane`.
    const spelt = this.speltWords() ?? this.colouredOld(layers);
    if (spelt === "read") {
      return;
    }
    if (spelt === undefined && this.at(t.NumberToken)) {
      const coats = this.take(t.NumberToken);
      const word = this.take(t.Coats, "`coats` after their number");
      this.keepCoats(layers, make.makeNumber(coats), endOf(word));
    } else {
      const material = spelt ?? make.makeWords(this.wordRun("a layer"));
      layers.push({ material, span: material.span });
    }
    if (this.at(t.StringToken)) {
      layers.at(-1)!.state = make.makeTitle(this.take(t.StringToken));
    }
    if (this.at(t.By)) {
      layers.pop();
      throw this.refused(testedBy({ start: this.peek(1).start, end: endOf(this.peek(2)) }));
    }
    this.endOfPart(undefined, (next) => next === t.NumberToken);
  });

  /** `shellac, worn`, `alkyd paint, chipping`: what state the layer before is in, which the plain form quotes. */
  private existingState(layers: Draft<tree.ExistingLayer>[]): boolean {
    const layer = layers.at(-1);
    const text = this.restOfPart();
    const comma = this.peek(0);
    if (layer === undefined || comma.type !== t.Comma || !STATE.test(text)) {
      return false;
    }
    const span = this.takeText(text);
    if (span === undefined) {
      return false;
    }
    const before = layer.state;
    const value = before === undefined ? text : `${before.value}, ${text}`;
    const start = before?.span.start ?? comma.start;
    if (before !== undefined) {
      this.dropRespellings(start);
    }
    const isApart = before !== undefined && before.span.start < before.span.end;
    this.respell({ start, end: span.end }, `${isApart ? "" : " "}"${value}"`);
    layer.state = { kind: "title", value, span: { start, end: span.end } };
    this.endOfPart(undefined, (next) => next === t.NumberToken);
    return true;
  }

  /** `black paint`, `cracked brown varnish`, `oil varnish over it`: a kind that is told by how it looks. */
  private colouredOld(layers: Draft<tree.ExistingLayer>[]): tree.Words | "read" | undefined {
    const text = this.restOfPart();
    const said = OLD_LOOK.exec(text);
    if (!said) {
      return this.overIt(text);
    }
    const plain = /paint|enamel/iu.test(said[2]!) ? "unknown paint" : "unknown clear";
    const span = this.takeText(text);
    if (span === undefined) {
      return undefined;
    }
    const behind = { start: span.end, end: span.end };
    const value = said[1]!.trim();
    this.respell(span, plain);
    this.respell(behind, `"${value}"`);
    layers.push({ material: wordsOf(plain, span), state: { kind: "title", value, span: behind }, span });
    this.endOfPart(undefined, (next) => next === t.NumberToken);
    return "read";
  }

  /** `shellac, oil varnish over it`: the order says so already. */
  private overIt(text: string): tree.Words | undefined {
    const said = /^(\p{L}[\p{L} -]{2,40}?) (?:over it|on top|above it|on top of it|over that)$/u.exec(text);
    if (!said) {
      return undefined;
    }
    const words = this.speltIn(said[1]!);
    this.leaveOut(OVER_IT);
    return words;
  }

  /** Some words as the vocabulary of this line has them. */
  private speltIn(text: string): tree.Words | undefined {
    const plain = WORD_SPELLINGS.get(this.keyword)?.get(keyOf(text)) ?? text;
    const span = this.takeText(text);
    if (span === undefined) {
      return undefined;
    }
    if (plain !== text) {
      this.respell(span, plain);
    }
    return wordsOf(plain, span);
  }

  /** `recoat 2-3 h` may be the earliest time of the label, or from when to when the next coat holds. */
  private askForWindow({ from, to, isShort, span }: tree.Range): void {
    if (isShort && from.kind === "quantity" && to?.kind === "quantity") {
      const [low, high] = [from.parts[0]!.number.value, to.parts[0]!.number.value];
      if (from.parts[0]!.unit?.text === to.parts[0]!.unit?.text && high < WINDOW_FROM * low) {
        this.report(windowOrEarliest(span, valueText(from), valueText(to)));
      }
    }
  }

  /** The entry rule for each form of a field. */
  readonly fieldRules: { readonly [F in FieldForm]: LineRule<Value<F>> } = {
    words: this.words,
    quantity: this.quantityField,
    range: this.rangeField,
    air: this.air,
    thin: this.thin,
    packs: this.packs,
    mix: this.mix,
    money: this.money,
    number: this.number,
    room: this.room,
    hours: this.hours,
    dates: this.dates,
    moment: this.moment,
    name: this.name,
    text: this.text,
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
        this.report({ message: gist((suchAs) => `expected the humidity${suchAs("60 % RH")}`), span });
      }
      return;
    }
    const end = markEnd ?? span.end;
    if (from.kind === "quantity" && range.to?.kind !== "name") {
      const { to } = range;
      line.humidity = { kind: "humidity", value: from, ...(to && { to }), span: { start: span.start, end } };
    } else {
      this.report({ message: gist((suchAs) => `expected one humidity${suchAs("60 % RH")}`), span });
    }
    if (markEnd === undefined) {
      const fix = { title: "Add `RH`", span: { start: end, end }, text: " RH" };
      this.report({ message: "expected `RH` after the humidity", span, fix });
    }
  }

  private keepCoats(layers: Draft<tree.ExistingLayer>[], coats: tree.NumberLiteral, end: number): void {
    const layer = layers.at(-1);
    if (layer === undefined) {
      const message = gist(
        (suchAs) => `expected a layer before the number of its coats${suchAs("alkyd paint, 2 coats")}`,
      );
      this.report({ message, span: { start: coats.span.start, end } });
    } else {
      layer.coats = coats;
      layer.span = { start: layer.span.start, end };
    }
  }
}

/** Words of which the first stands for all that was written. */
function wordsOf(text: string, span: tree.Span): tree.Words {
  const empty = { start: span.end, end: span.end };
  const words = text
    .split(" ")
    .map((word, idx): tree.Name => ({ kind: "name", text: word, span: idx === 0 ? span : empty }));
  return { kind: "words", words, text, span };
}

const ratioText = ({ a, b }: tree.Ratio): string => `${a.text}:${b.text}`;
