/** The rules that read dates, times, hours and money, and words of a closed vocabulary, as people write them. */
import { ambiguous, eitherDay, eitherSum, eitherThinning, otherWeekday, vagueDate } from "./line-problems.ts";
import * as make from "./literals.ts";
import { PartParser } from "./parser-parts.ts";
import {
  isVagueDate,
  type Said,
  saidDate,
  saidHours,
  saidMoney,
  saidTime,
  weekdayOf,
} from "./said-figures.ts";
import * as Token from "./tokens.ts";
import { t } from "./translate.ts";
import type * as tree from "./tree.ts";
import { DAY_SPELLINGS, keyOf, type Spellings, WORD_SPELLINGS } from "./word-spellings.ts";

export class FigureParser extends PartParser {
  /** `2027-03-08`, `8.3.2027`, `Mon 8 March 2027` */
  protected date(what: string): tree.DateLiteral {
    if (this.at(Token.DateToken)) {
      return make.makeDate(this.take(Token.DateToken));
    }
    const rest = this.rest();
    const said = saidDate(rest);
    const span = said && this.takeText(said.written);
    if (said === undefined || span === undefined) {
      if (isVagueDate(rest)) {
        throw this.refused(vagueDate(this.context(), this.peek(1)));
      }
      throw this.mismatch(what);
    }
    if (said.other !== undefined) {
      this.report(eitherDay(span, said.plain, said.other));
    } else if (said.weekday !== undefined && weekdayOf(said.plain) !== said.weekday) {
      this.report(otherWeekday(span, said.plain, weekdayOf(said.plain), said.weekday));
    }
    this.respell(span, said.plain);
    return { kind: "date", text: said.plain, span };
  }

  /** `09:00`, `8am`, `7.30`; undefined where none can begin. */
  protected timeOfDay(): tree.TimeLiteral | undefined {
    const said = saidTime(this.rest());
    if (this.at(Token.TimeToken) && said?.written === this.peek(1).text) {
      return make.makeTime(this.take(Token.TimeToken));
    }
    const span = said && this.takeText(said.written);
    if (said === undefined || span === undefined) {
      return this.at(Token.TimeToken) ? make.makeTime(this.take(Token.TimeToken)) : undefined;
    }
    this.respell(span, said.plain);
    return { kind: "time", text: said.plain, span };
  }

  /** `09:00 to 17:00`, `8-17`, `8am-5pm` */
  protected openingHours(): { readonly opens: tree.TimeLiteral; readonly closes: tree.TimeLiteral } {
    const isPlain = this.at(Token.TimeToken) && this.at(Token.To, 2);
    const said = isPlain ? undefined : saidHours(this.rest());
    const span = said && this.takeText(said.written);
    if (said === undefined || span === undefined) {
      const opens = make.makeTime(this.take(Token.TimeToken, "a time"));
      this.take(Token.To, "`to` and the closing time");
      return { opens, closes: make.makeTime(this.take(Token.TimeToken, "the closing time")) };
    }
    const plain = `${said.opens} to ${said.closes}`;
    if (said.isUnsure) {
      this.report(
        ambiguous(t`the closing time would be before the opening time: write \`${plain}\``, span, plain),
      );
    }
    this.respell(span, plain);
    return {
      opens: { kind: "time", text: said.opens, span },
      closes: { kind: "time", text: said.closes, span },
    };
  }

  /** `Mon`, `Mon to Fri`, `Mon-Fri`, `Sat and Sun`, `weekdays` */
  protected days(): { readonly from: tree.Name; readonly to?: tree.Name } {
    const said = this.spelt(DAY_SPELLINGS);
    if (said !== undefined) {
      const [from, to] = said.plain.split(" to ");
      const { span } = said;
      const day = (text: string): tree.Name => ({ kind: "name", text, span });
      return { from: day(from!), ...(to !== undefined && { to: day(to) }) };
    }
    const from = make.makeName(this.take(Token.Word, "a weekday"));
    if (!this.at(Token.To)) {
      return { from };
    }
    this.take(Token.To);
    return { from, to: make.makeName(this.take(Token.Word, "a weekday")) };
  }

  /** Money, without its sign: prices are in the currency of the shop. `per` is the unit that it is for one of. */
  protected sum(what: string): {
    readonly amount: tree.NumberLiteral;
    readonly span: tree.Span;
    readonly per?: string;
  } {
    const first = this.peek(1);
    const said = saidMoney(this.rest());
    const isRate = this.at(Token.Per, 2) && said?.plain === first.text;
    const isPlain = said === undefined || said.written === first.text || isRate;
    const span = isPlain ? undefined : this.takeText(said.written);
    if (isPlain || span === undefined) {
      const amount = make.makeNumber(this.take(Token.NumberToken, what));
      return { amount, span: amount.span };
    }
    if (said.other !== undefined) {
      this.report(eitherSum(span, said.plain, said.other));
    }
    this.respell(span, said.plain);
    const amount = { kind: "number", text: said.plain, value: Number(said.plain), span } as const;
    return { amount, span, ...(said.per !== undefined && { per: said.per }) };
  }

  /**
   * `4:1`, or the share of thinner that is added to the material: `10 %` is 10:1. A large share may as well be one of the
   * whole mix, and is asked about.
   */
  protected thinning(): tree.Ratio {
    const [number, unit] = [this.peek(1), this.peek(2)];
    if (number.type === Token.NumberToken && unit.type === Token.Unit && unit.text === "%") {
      const { value, span: at } = make.makeNumber(this.take(Token.NumberToken));
      const span = { start: at.start, end: make.tokenSpan(this.take(Token.Unit)).end };
      const [a, b] = partsOfShare(value);
      if (value >= UNSURE_SHARE && value < 100) {
        const [c, d] = partsOfShare((value / (100 - value)) * 100);
        this.report(eitherThinning(span, value, `${a}:${b}`, `${c}:${d}`));
      }
      this.respell(span, `${a}:${b}`);
      return ratioOf(a, b, span);
    }
    if (number.type === Token.NumberToken && /^\d+\/\d+$/u.test(number.text)) {
      const span = make.tokenSpan(this.take(Token.NumberToken));
      const [a, b] = number.text.split("/").map(Number);
      this.respell(span, `${a}:${b}`);
      return ratioOf(a!, b!, span);
    }
    return this.ratio();
  }

  /** What a table spells plainly, in any case and with or without hyphens: all up to the comma, or the longest of it. */
  protected spelt(
    table: Spellings,
    isWhole = false,
  ): (Pick<Said, "plain"> & { readonly span: tree.Span }) | undefined {
    const rest = this.rest();
    const part = rest.split(/[,"{]/u)[0]!.trimEnd();
    for (
      let written = part;
      written !== "";
      written = written.slice(0, Math.max(0, written.lastIndexOf(" ")))
    ) {
      const plain = table.get(keyOf(written));
      if (plain === written || (isWhole && plain === undefined)) {
        return undefined;
      }
      const span = plain === undefined ? undefined : this.takeText(written);
      if (plain !== undefined && span !== undefined) {
        this.respell(span, plain);
        return { plain, span };
      }
    }
    return undefined;
  }

  /** A word of the vocabulary of this line, as it is also called. */
  protected speltWords(): tree.Words | undefined {
    const table = WORD_SPELLINGS.get(this.keyword);
    const said = table && this.spelt(table, true);
    if (said === undefined) {
      return undefined;
    }
    const { plain: text, span } = said;
    // The first word stands for all that was written.
    const empty = { start: span.end, end: span.end };
    const words = text
      .split(" ")
      .map((word, idx): tree.Name => ({ kind: "name", text: word, span: idx === 0 ? span : empty }));
    return { kind: "words", words, text, span };
  }
}

/** From here on a share of thinner may be one of the mix. */
const UNSURE_SHARE = 30;

/** Parts of material to parts of thinner, whole numbers as small as can be: 10 % is 10:1, 15 % is 20:3. */
function partsOfShare(percent: number): readonly [number, number] {
  const [whole, thinner] = [10_000, Math.round(percent * 100)];
  const common = divisor(whole, thinner);
  return [whole / common, thinner / common];
}

function divisor(a: number, b: number): number {
  return b === 0 ? Math.max(1, a) : divisor(b, a % b);
}

function ratioOf(a: number, b: number, span: tree.Span): tree.Ratio {
  const part = (value: number): tree.NumberLiteral => ({ kind: "number", text: String(value), value, span });
  return { kind: "ratio", a: part(a), b: part(b), span };
}
