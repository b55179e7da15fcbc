/**
 * The entry rules for fields, one for each form of a value.
 *
 * A rule reads what follows the field's word, up to the end of the line; which form a field has says `vocabulary.ts`.
 * Whether a word, a unit or a size fits the field is left to the analysis core, except for the number of sizes of a shape,
 * since a shape with too few of them is a line that ends too early.
 */
import { endOf } from "./lexer.ts";
import { afterPart, openEnd } from "./line-problems.ts";
import { AT_COMMA, type Draft, type LineRule, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { ExistingParser } from "./parser-existing.ts";
import { DASHES } from "./parser-parts.ts";
import { isDateInWords, saidTime } from "./said-figures.ts";
import * as Token from "./tokens.ts";
import type * as tree from "./tree.ts";
import { plainUnit } from "./units.ts";
import type { FieldForm } from "./vocabulary.ts";

const CONJUNCTIONS = phrases("at", "from", "by");
const NOON: Readonly<Record<string, true>> = { noon: true, midday: true, "by noon": true, "by midday": true };
const PARTS_OF_DAY: Readonly<Record<string, true>> = {
  morning: true,
  "in the morning": true,
  afternoon: true,
  "in the afternoon": true,
  evening: true,
  "in the evening": true,
};

/** The day from which it may be ready, and none on which it is wanted. */
const NOT_BEFORE = /^(?:not (?:before|earlier than)|no (?:sooner|earlier) than|after|from) /iu;

type Value<F> = Draft<Extract<tree.FieldValue, { readonly form: F }>>;
type HoursSpan = Value<"hours">["spans"][number];
type DateRange = Value<"dates">["ranges"][number];

const DAY = /^(?:mon|tue|wed|thu|fri|sat|sun)/iu;

export class FieldParser extends ExistingParser {
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
      } else if (this.at(Token.Per)) {
        this.take(Token.Per);
        line.per = make.makeUnit(this.take(Token.Word, "`h`"));
      }
    },
  );

  protected readonly number = this.line(
    (): Value<"number"> => ({ form: "number" }),
    (line) => {
      line.number = make.makeNumber(this.take(Token.NumberToken, "a number"));
      if (this.keyword === "built" && this.peek(1).text === "s") {
        // Of a decade the first year is the one that the rules on lead go by.
        const rest = make.tokenSpan(this.peek(1));
        this.skip(1);
        this.respell(rest, "");
        this.saidBefore = `${line.number.text}s`;
      }
    },
  );

  protected readonly room = this.line(
    (): Value<"room"> => ({ form: "room" }),
    (line) => {
      this.roomVolume(line);
      if (this.at(Token.Comma) && !this.isWordsBehind()) {
        this.take(Token.Comma);
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
      this.hoursOfAll(spans);
    },
  );

  /** Days whose hours come later; others without hours are broken, and take nobody else's. */
  private readonly daysAlone = new WeakSet<HoursSpan>();

  /** `Tue and Thu 15:30 to 17:30`: the hours of the last day are those of the days before it, of which none are told. */
  private hoursOfAll(spans: Draft<HoursSpan>[]): void {
    for (let idx = spans.length - 2; idx >= 0; idx -= 1) {
      const [span, next] = [spans[idx]!, spans[idx + 1]!];
      if (this.daysAlone.has(span) && next.opens !== undefined && next.closes !== undefined) {
        const { end } = span.span;
        this.respell({ start: end, end }, `${next.opens.text} to ${next.closes.text}`);
        span.opens = next.opens;
        span.closes = next.closes;
      }
    }
  }

  /** Whether a day stands behind this one, whose hours come later. */
  private isDayNext(): boolean {
    return (
      (this.at(Token.Comma) || this.at(Token.And)) && this.at(Token.Word, 2) && DAY.test(this.peek(2).text)
    );
  }

  protected readonly hoursSpan = this.part(AT_COMMA, (spans: HoursSpan[]): void => {
    const draft: Draft<HoursSpan> = { span: NO_SPAN };
    spans.push(draft);
    this.spanned(draft, () => {
      const before = spans.at(-2);
      const { start } = this.peek(1);
      const isMore = before?.from !== undefined && !this.at(Token.Word);
      const { from, to } = isMore ? before : this.days();
      draft.from = from;
      if (to !== undefined) {
        draft.to = to;
      }
      if (isMore) {
        // More hours of the same days: the plain form names the days again.
        this.respell({ start, end: start }, `${from!.text}${to === undefined ? "" : ` to ${to.text}`}`);
      }
      if (this.isDayNext()) {
        this.daysAlone.add(draft);
        return;
      }
      if (this.at(Token.End) || this.at(Token.Comma)) {
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
    this.endOfPart(undefined, (next) => next === Token.And);
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
      if (this.at(Token.To)) {
        this.take(Token.To);
        draft.to = this.date("the last date");
      } else if (dash.type === Token.Unknown && DASHES.has(dash.text)) {
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
      if (this.dateInWords(line)) {
        return;
      }
      line.date = this.date("a date");
      if (this.at(Token.Comma) && this.at(Token.NumberToken, 2)) {
        this.respell(make.tokenSpan(this.take(Token.Comma)), "");
      }
      this.leaveOut(CONJUNCTIONS);
      const noon = this.longestIn(NOON);
      const time = noon === undefined ? this.timeOfDay() : this.noon(noon);
      if (time !== undefined) {
        line.time = time;
      }
      this.momentWords(line);
    },
  );

  /** `before June, if possible`, `"end of May"`: a day that only its writer can place, kept in words. */
  private dateInWords(line: Value<"moment">): boolean {
    if (this.at(Token.StringToken)) {
      line.what = make.makeTitle(this.take(Token.StringToken));
      return true;
    }
    const rest = this.rest();
    const isOpen = this.keyword === "ready" && NOT_BEFORE.test(rest);
    if (this.at(Token.DateToken) || !(isOpen || isDateInWords(rest)) || !this.isWholeLineInWords()) {
      return false;
    }
    const { start } = this.peek(1);
    const value = this.takeRest();
    const span = { start, end: endOf(this.peek(0)) };
    this.respell(span, `"${value.replaceAll("\\", "\\\\")}"`);
    line.what = { kind: "title", value, span };
    return true;
  }

  protected noon({ length, span }: { readonly length: number; readonly span: tree.Span }): tree.TimeLiteral {
    this.skip(length);
    this.respell(span, "12:00");
    return { kind: "time", text: "12:00", span };
  }

  /** `for light use`: what is meant by it, in quotes; a part of the day is an hour. */
  protected momentWords(line: Value<"moment">): void {
    if (this.at(Token.StringToken)) {
      line.what = make.makeTitle(this.take(Token.StringToken));
    } else if (this.longestIn(PARTS_OF_DAY) !== undefined) {
      const { length, written, span } = this.longestIn(PARTS_OF_DAY)!;
      this.skip(length);
      this.respell(span, `"${written}"`);
      line.what = { kind: "title", value: written, span };
    } else if (this.at(Token.For) && this.isTextBehind()) {
      const { start } = this.peek(1);
      const value = this.takeRest();
      const span = { start, end: endOf(this.peek(0)) };
      this.respell(span, `"${value}"`);
      line.what = { kind: "title", value, span };
    }
  }

  protected isTextBehind(): boolean {
    return this.at(Token.Word, 2) && !/["{}#\\]/u.test(this.rest());
  }

  protected readonly name = this.line(
    (): Value<"name"> => ({ form: "name" }),
    (line) => {
      line.name = this.nameOf(this.take(Token.Word, "a name"));
      if (this.keyword === "after" && !this.at(Token.End)) {
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
    if (this.at(Token.StringToken) || this.at(Token.End) || !this.isWholeLineInWords()) {
      return make.makeTitle(this.take(Token.StringToken, "a text in double quotes"));
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
      line.name = this.nameOf(this.take(Token.Word, "a name"));
      if (this.at(Token.X)) {
        this.take(Token.X);
        line.count = this.value("a number");
      }
    },
  );

  /** The value for each form of a field. */
  protected readonly valueRules: { readonly [F in FieldForm]: LineRule<Value<F>> } = {
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
}
