/** The rules that read parts of a line: quantities and ranges, ratios, calls and parameters. */
import { endOf, type LexToken } from "./lexer.ts";
import { AFTER_ARGUMENT, AFTER_PARAMETER, type Draft, LineReader, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import { t, translated } from "./translate.ts";
import type * as tree from "./tree.ts";
import { plainUnit } from "./units.ts";
import { SHEENS_SAID } from "./word-spellings.ts";

const NO_PARTS: readonly tree.Measure[] = [];

export class PartParser extends LineReader {
  // -------------------------------------------------------------------------------------------------------------
  // Parts of lines

  protected readonly quantity = (what: string): tree.Quantity => {
    const draft: Draft<tree.Quantity> = { kind: "quantity", parts: NO_PARTS, span: NO_SPAN };
    return this.spanned(draft, () => {
      draft.parts = [this.measure(what)];
      while (this.at(Token.NumberToken) && this.goesOnCompound(draft.parts)) {
        draft.parts = [...draft.parts, this.measure(what)];
      }
    });
  };

  private measure(what: string): tree.Measure {
    return this.withUnit(
      this.decimalComma() ??
        this.hyphenFraction() ??
        this.numberInWords() ??
        make.makeNumber(this.take(Token.NumberToken, what)),
    );
  }

  /** `a`, `one`, `half an` before a unit of time: `wait half an hour`. */
  private numberInWords(): tree.NumberLiteral | undefined {
    const length = this.wordsOfNumber();
    if (length === 0) {
      return undefined;
    }
    const value = NUMBER_WORDS[this.peek(1).text.toLowerCase()]!;
    const span = { start: this.peek(1).start, end: endOf(this.peek(length)) };
    const text = value === 0.5 ? "1/2" : String(value);
    this.skip(length);
    this.respell(span, text);
    return { kind: "number", text, value, span };
  }

  /** How many words make up a number before a unit of time. */
  private wordsOfNumber(): number {
    const first = this.peek(1).text.toLowerCase();
    const length = first === "half" && /^an?$/iu.test(this.peek(2).text) ? 2 : 1;
    const unit = this.peek(length + 1);
    return Object.hasOwn(NUMBER_WORDS, first) &&
      unit.kind === "word" &&
      Token.unitGroup(plainUnit(unit.text) ?? unit.text) === "time"
      ? length
      : 0;
  }

  /** `1-1/4 in`: a whole and a part of it, since no range goes down to a fraction. */
  private hyphenFraction(): tree.NumberLiteral | undefined {
    const [whole, part] = [this.peek(1), this.peek(2)];
    const isApart = part.start > endOf(whole);
    if (
      !this.at(Token.NumberToken) ||
      isApart ||
      !/^\d+$/u.test(whole.text) ||
      !/^-\d+\/\d+$/u.test(part.text)
    ) {
      return undefined;
    }
    const text = `${whole.text} ${part.text.slice(1)}`;
    const span = { start: whole.start, end: endOf(part) };
    this.skip(2);
    this.respell(span, text);
    return { ...make.makeNumber({ ...whole, text }), span };
  }

  /** `2,5 l`: with three digits it might be thousands. */
  private decimalComma(): tree.NumberLiteral | undefined {
    const [whole, comma, part, unit] = [1, 2, 3, 4].map((ahead) => this.peek(ahead));
    const isOne =
      whole!.type === Token.NumberToken &&
      comma!.type === Token.Comma &&
      part!.type === Token.NumberToken &&
      unit!.type === Token.Unit &&
      /^\d+$/u.test(whole!.text) &&
      /^\d{1,2}$/u.test(part!.text) &&
      endOf(whole!) === comma!.start &&
      endOf(comma!) === part!.start;
    if (!isOne) {
      return undefined;
    }
    this.skip(3);
    const text = `${whole!.text}.${part!.text}`;
    const span = { start: whole!.start, end: endOf(part!) };
    this.respell(span, text);
    return { kind: "number", text, value: Number(text), span };
  }

  private withUnit(number: tree.NumberLiteral): tree.Measure {
    const { type, text } = this.peek(1);
    return type === Token.Unit || (type === Token.Word && !NO_UNIT.has(text))
      ? { number, unit: make.makeUnit(this.take(type)) }
      : { number };
  }

  /** A quantity or a parameter. */
  protected readonly value = (what: string): tree.Value => {
    if (this.at(Token.NumberToken) || this.wordsOfNumber() > 0) {
      return this.quantity(what);
    }
    return this.nameOf(this.take(Token.Word, what));
  };

  /** What a parameter may be given: a value, a ratio such as `4:1`, or grits, `120/150/180`. */
  protected readonly givenValue = (what: string): tree.Value | tree.Ratio | tree.Grits => {
    if (this.at(Token.TimeToken) || (this.at(Token.NumberToken) && this.at(Token.Colon, 2))) {
      return this.ratio();
    }
    const sheen = this.sheenOfWords();
    if (sheen !== undefined) {
      return sheen;
    }
    const grits = this.at(Token.NumberToken) ? GRITS.exec(this.rest())?.[0] : undefined;
    const span = grits === undefined ? undefined : this.takeText(grits);
    if (grits === undefined || span === undefined) {
      return this.value(what);
    }
    return { kind: "grits", grits: grits.split("/").map(Number), span };
  };

  /** `dead flat`, `semi-gloss`: a sheen that can be no name. */
  private sheenOfWords(): tree.Name | undefined {
    const found = this.longestIn(SHEENS_SAID);
    const plain = found && SHEENS_SAID[found.written]!;
    const isName = found?.length === 1 && !this.peek(1).text.includes("-");
    if (found === undefined || plain === undefined || isName) {
      return undefined;
    }
    this.skip(found.length);
    if (plain !== found.written) {
      this.respell(found.span, plain);
    }
    return { kind: "name", text: plain, span: found.span };
  }

  /** Whether a value can begin here. */
  protected atValue(): boolean {
    return this.at(Token.NumberToken) || this.at(Token.Word);
  }

  /** `2 h to 24 h`; also with the unit once, `2-3 h` and `2 to 3 h`. */
  protected readonly range = (what: string): tree.Range => {
    const draft: Draft<tree.Range> = { kind: "range", from: undefined as never, span: NO_SPAN };
    let isShort = false;
    this.spanned(draft, () => {
      const from = this.value(what);
      draft.from = from;
      if (this.at(Token.To)) {
        this.take(Token.To);
        draft.to = this.atValue() ? this.value(what) : undefined;
        if (draft.to === undefined) {
          this.report(this.expectedNext(() => t`${translated(what)} after \`to\``));
        }
      } else if (this.isHyphenNext(from)) {
        isShort = true;
        draft.to = this.afterHyphen(what);
      }
      const shared = withUnitOf(from, draft.to);
      isShort ||= shared !== from;
      draft.from = shared;
    });
    if (isShort && draft.to !== undefined) {
      draft.isShort = true;
      this.respell(draft.span, `${valueText(draft.from)} to ${valueText(draft.to)}`);
    }
    return draft;
  };

  /** Whether a hyphen or a dash follows that makes a range of this value and the next. */
  private isHyphenNext(from: tree.Value): boolean {
    const next = this.peek(1);
    if (from.kind === "name") {
      return false;
    }
    if (next.type === Token.NumberToken && next.text.startsWith("-")) {
      return next.start === endOf(this.peek(0)) || from.parts.at(-1)?.unit === undefined;
    }
    return next.type === Token.Unknown && DASHES.has(next.text) && this.peek(2).type === Token.NumberToken;
  }

  private afterHyphen(what: string): tree.Value {
    const next = this.peek(1);
    if (next.type !== Token.NumberToken) {
      this.skip(1);
      return this.value(what);
    }
    const draft: Draft<tree.Quantity> = { kind: "quantity", parts: NO_PARTS, span: NO_SPAN };
    this.spanned(draft, () => {
      const written = this.take(Token.NumberToken);
      const number = make.makeNumber({ ...written, text: written.text.slice(1), start: written.start + 1 });
      draft.parts = [this.withUnit(number)];
    });
    return { ...draft, span: { ...draft.span, start: draft.span.start + 1 } };
  }

  /** `min 3 h`, `at least 8 C`, `50 F and up`: a lower limit, where a figure alone is one. */
  protected lowerLimit<T>(read: () => T): T {
    this.leaveOut(LOWER_LIMIT_BEFORE, Token.NumberToken);
    const value = read();
    this.leaveOut(LOWER_LIMIT_BEHIND);
    return value;
  }

  protected readonly ratio = (): tree.Ratio => {
    if (this.at(Token.TimeToken)) {
      return make.makeRatioOfTime(this.take(Token.TimeToken));
    }
    if (!this.at(Token.NumberToken)) {
      throw this.mismatch("a ratio");
    }
    const draft = {
      kind: "ratio",
      a: undefined,
      b: undefined,
      span: NO_SPAN,
    } as never as Draft<tree.Ratio>;
    return this.spanned(draft, () => {
      draft.a = make.makeNumber(this.take(Token.NumberToken));
      this.take(Token.Colon, "a ratio");
      draft.b = make.makeNumber(this.take(Token.NumberToken, "a ratio"));
    });
  };

  protected readonly call = (keep: (call: tree.Call) => void, after: readonly TokenType[]): void => {
    const args: tree.Argument[] = [];
    const draft: Draft<tree.Call> = {
      kind: "call",
      name: undefined as never,
      arguments: args,
      span: NO_SPAN,
    };
    this.afterCall = after;
    this.spanned(draft, () => {
      draft.name = this.nameOf(this.take(Token.Word, "a recipe"));
      keep(draft);
      if (this.at(Token.LeftParen)) {
        this.take(Token.LeftParen);
        if (this.atValue() || this.at(Token.StringToken) || this.at(Token.TimeToken)) {
          this.argument(args);
          while (this.at(Token.Comma)) {
            this.take(Token.Comma);
            this.argument(args);
          }
        }
        this.closeParen();
      }
    });
  };

  private readonly argument = this.part(AFTER_ARGUMENT, (args: tree.Argument[]): void => {
    const draft: Draft<tree.Argument> = { kind: "argument", span: NO_SPAN };
    args.push(draft);
    this.spanned(draft, () => {
      if (this.at(Token.Word) && (this.at(Token.Colon, 2) || this.at(Token.Equals, 2))) {
        const name = this.take(Token.Word);
        if (this.at(Token.Colon)) {
          this.take(Token.Colon);
        } else {
          this.wrongSign(this.take(Token.Equals), ":");
        }
        draft.name = this.nameOf(name);
      }
      if (this.at(Token.StringToken)) {
        draft.value = make.makeTitle(this.take(Token.StringToken));
      } else if (this.atValue() || this.at(Token.TimeToken)) {
        draft.value = this.givenValue("a value");
      } else {
        throw this.mismatch(
          draft.name === undefined ? (suchAs) => t`an argument${suchAs("clear: hall_clear", "")}` : "a value",
        );
      }
    });
    const [before, next] = [this.peek(0), this.peek(1)];
    const isTwoWords = before.kind === "word" && next.kind === "word" && next.type !== Token.To;
    this.endOfPart(isTwoWords ? t`\`,\` or \`)\` after one word, such as \`${before.text}\`` : "`,` or `)`");
  });

  protected readonly parameter = this.part(AFTER_PARAMETER, (parameters: tree.Parameter[]): void => {
    const draft: Draft<tree.Parameter> = { kind: "parameter", name: undefined as never, span: NO_SPAN };
    this.spanned(draft, () => {
      draft.name = this.nameOf(this.take(Token.Word, "a parameter"));
      parameters.push(draft);
      this.take(
        Token.Colon,
        "`:` and the type: material, number, duration, recipe, method, grits, ratio or sheen",
      );
      const type = make.makeName(
        this.take(Token.Word, "the type: material, number, duration, recipe, method, grits, ratio or sheen"),
      );
      draft.type = type.text === "tool" ? { ...type, text: "method" } : type;
      if (draft.type !== type) {
        this.respell(type.span, "method");
      }
      if (this.at(Token.Equals)) {
        this.take(Token.Equals);
        draft.default = this.givenValue("a default value");
      }
    });
    this.endOfPart("`,` or `)`");
  });

  /** Whether another part of a compound quantity follows: a number with a unit of the same group, `5 ft 6 in`. */
  private goesOnCompound(parts: readonly tree.Measure[]): boolean {
    const [number, unit] = [this.peek(1), this.peek(2)];
    const isUnit = unit.type === Token.Unit || unit.type === Token.Word;
    if (number.type !== Token.NumberToken || !isUnit || number.text.startsWith("-")) {
      return false;
    }
    const last = parts.at(-1)?.unit?.text;
    if (last !== undefined && last === (plainUnit(unit.text) ?? unit.text)) {
      // The same unit again is another quantity.
      return false;
    }
    const [before, next] = [Token.unitGroup(parts?.at(-1)?.unit?.text ?? ""), Token.unitGroup(unit.text)];
    return before === undefined || next === undefined || before === next;
  }

  private wrongSign(written: LexToken, right: string): LexToken {
    const span = make.tokenSpan(written);
    const fix = { title: t`Write \`${right}\``, span, text: right };
    this.report({ message: t`expected \`${right}\` between name and value`, span, fix });
    return written;
  }
}

/** What begins something else behind a figure. */
const NO_UNIT: ReadonlySet<string> = new Set(
  "or,on,only,at,over,under,around,until,before,after,again".split(","),
);

export const NUMBER_WORDS: Readonly<Record<string, number>> = Object.fromEntries([
  ["a", 1],
  ["an", 1],
  ["half", 0.5],
  ..."one,two,three,four,five,six,seven,eight,nine,ten,eleven,twelve"
    .split(",")
    .map((word, idx) => [word, idx + 1] as const),
]);

/** What stands between the ends of a range, besides a hyphen that belongs to a number. */
export const DASHES: ReadonlySet<string> = new Set(["-", "–", "—", "‒", "−"]);

/** Two grits at least: one alone is a number. No grit is coarser than 12. */
const GRITS = /^(?:1[2-9]|[2-9]\d|\d{3,4})(?:\/(?:1[2-9]|[2-9]\d|\d{3,4}))+(?![\d.])/u;

const LOWER_LIMIT_BEFORE = phrases("min", "minimum", "at least", "from", "above", "not under", "not below");
const LOWER_LIMIT_BEHIND = phrases(
  "min",
  "minimum",
  "at least",
  "or more",
  "or above",
  "and up",
  "and above",
);

/** A value with the unit of a later one, when it has none of its own: the 2 of `2-3 h`. */
export function withUnitOf(value: tree.Value, later: tree.Value | undefined): tree.Value {
  const unit = later?.kind === "quantity" ? later.parts.at(-1)?.unit : undefined;
  if (value.kind === "name" || value.parts.length !== 1 || unit === undefined) {
    return value;
  }
  const { number, unit: own } = value.parts[0]!;
  if (own !== undefined) {
    return value;
  }
  const at = number.span.end;
  return { ...value, parts: [{ number, unit: { ...unit, span: { start: at, end: at } } }] };
}

/** A value as it is written plainly. */
export function valueText(value: tree.Value): string {
  if (value.kind === "name") {
    return value.text;
  }
  return value.parts
    .map(({ number, unit }) => (unit === undefined ? number.text : `${number.text} ${unit.text}`))
    .join(" ");
}
