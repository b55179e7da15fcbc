/**
 * The rules that read parts of a line, and the means with which all rules are made.
 *
 * A rule hangs its draft into the result before it reads, so that what was read stays when the rest of the line is broken.
 * Recovery happens at commas, closing parentheses and words that begin another part only, in the rules made by `part`;
 * tokens are never invented or dropped singly.
 */
import { END_TOKEN, endOf, type LexToken } from "./lexer.ts";
import { expected, extra, hyphenInName, type LineContext, missingComma } from "./line-problems.ts";
import * as make from "./literals.ts";
import type { TokenType } from "./tokens.ts";
import * as t from "./tokens.ts";
import type * as tree from "./tree.ts";

/** A tree node while it is being read. */
export type Draft<T> = { -readonly [K in keyof T]: T[K] };

/** An entry rule: what a line is before it is read, and how it is. The line is kept even when the rule fails. */
export interface LineRule<T> {
  readonly empty: () => T;
  readonly body: (line: T) => void;
}

/** The span of a draft that has not been read to its end. */
export const NO_SPAN: tree.Span = { start: 0, end: 0 };

const NO_PARTS: readonly tree.Measure[] = [];

/** More errors in one line than this help nobody. */
const MAX_PROBLEMS = 20;

/** Ends a rule that cannot go on; what is wrong has been reported. */
const MISMATCH = new Error("This line does not go on as its rule does.");

/** Where what follows a part can begin. */
export const AT_COMMA: readonly TokenType[] = [t.Comma];
const AFTER_ARGUMENT: readonly TokenType[] = [t.Comma, t.RightParen];
const AFTER_PARAMETER: readonly TokenType[] = [t.Comma, t.RightParen, t.StringToken];

export class PartParser {
  /** All tokens of the line, its keyword included. */
  private tokens: readonly LexToken[] = [];
  private next = 0;
  private example: string | undefined;
  private found: tree.SyntaxProblem[] = [];
  private recoveredAt: LexToken | undefined;
  /** What may follow the call that is read: what its arguments leave to the rule around it. */
  private afterCall: readonly TokenType[] = [];

  /** Reads a line whose first token is its keyword. */
  read<T>(
    rule: LineRule<T>,
    { tokens, example }: LineContext,
  ): { readonly line: T; readonly problems: readonly tree.SyntaxProblem[] } {
    this.tokens = tokens;
    this.next = 1;
    this.example = example;
    this.found = [];
    this.recoveredAt = undefined;
    const line = rule.empty();
    try {
      rule.body(line);
      this.endOfLine();
    } catch (error) {
      if (error !== MISMATCH) throw error;
    }
    return { line, problems: this.found };
  }

  // -------------------------------------------------------------------------------------------------------------
  // Parts of lines

  protected readonly quantity = (what: string): tree.Quantity => {
    const draft: Draft<tree.Quantity> = { kind: "quantity", parts: NO_PARTS, span: NO_SPAN };
    return this.spanned(draft, () => {
      draft.parts = [this.measure(what)];
      while (this.at(t.NumberToken) && this.goesOnCompound(draft.parts)) {
        draft.parts = [...draft.parts, this.measure(what)];
      }
    });
  };

  private measure(what: string): tree.Measure {
    const number = make.makeNumber(this.take(t.NumberToken, what));
    const { type } = this.peek(1);
    return type === t.Unit || type === t.Word ? { number, unit: make.makeUnit(this.take(type)) } : { number };
  }

  /** A quantity or a parameter. */
  protected readonly value = (what: string): tree.Value => {
    if (this.at(t.NumberToken)) {
      return this.quantity(what);
    }
    return this.nameOf(this.take(t.Word, what));
  };

  /** Whether a value can begin here. */
  protected atValue(): boolean {
    return this.at(t.NumberToken) || this.at(t.Word);
  }

  protected readonly range = (what: string): tree.Range => {
    const draft: Draft<tree.Range> = { kind: "range", from: undefined as never, span: NO_SPAN };
    return this.spanned(draft, () => {
      draft.from = this.value(what);
      if (this.at(t.To)) {
        this.take(t.To);
        draft.to = this.atValue() ? this.value(what) : undefined;
        if (draft.to === undefined) {
          this.report(this.expectedNext(`${what} after \`to\``));
        }
      }
    });
  };

  protected readonly ratio = (): tree.Ratio => {
    const what = "a ratio";
    if (this.at(t.TimeToken)) {
      return make.makeRatioOfTime(this.take(t.TimeToken));
    }
    if (!this.at(t.NumberToken)) {
      throw this.mismatch(what);
    }
    const draft = {
      kind: "ratio",
      a: undefined,
      b: undefined,
      span: NO_SPAN,
    } as never as Draft<tree.Ratio>;
    return this.spanned(draft, () => {
      draft.a = make.makeNumber(this.take(t.NumberToken));
      this.take(t.Colon, what);
      draft.b = make.makeNumber(this.take(t.NumberToken, what));
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
      draft.name = this.nameOf(this.take(t.Word, "a recipe"));
      keep(draft);
      if (this.at(t.LeftParen)) {
        this.take(t.LeftParen);
        if (this.atValue() || this.at(t.StringToken)) {
          this.argument(args);
          while (this.at(t.Comma)) {
            this.take(t.Comma);
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
      if (this.at(t.Word) && (this.at(t.Colon, 2) || this.at(t.Equals, 2))) {
        const name = this.take(t.Word);
        if (this.at(t.Colon)) {
          this.take(t.Colon);
        } else {
          this.wrongSign(this.take(t.Equals), ":");
        }
        draft.name = this.nameOf(name);
      }
      if (this.at(t.StringToken)) {
        draft.value = make.makeTitle(this.take(t.StringToken));
      } else if (this.atValue()) {
        draft.value = this.value("a value");
      } else {
        throw this.mismatch(draft.name === undefined ? "an argument such as `clear: hall_clear`" : "a value");
      }
    });
    this.endOfPart("`,` or `)`");
  });

  protected readonly parameter = this.part(AFTER_PARAMETER, (parameters: tree.Parameter[]): void => {
    const draft: Draft<tree.Parameter> = { kind: "parameter", name: undefined as never, span: NO_SPAN };
    const typeWords = "the type: material, number, duration or recipe";
    this.spanned(draft, () => {
      draft.name = this.nameOf(this.take(t.Word, "a parameter"));
      parameters.push(draft);
      this.take(t.Colon, `\`:\` and ${typeWords}`);
      draft.type = make.makeName(this.take(t.Word, typeWords));
      if (this.at(t.Equals)) {
        this.take(t.Equals);
        draft.default = this.value("a default value");
      }
    });
    this.endOfPart("`,` or `)`");
  });

  // -------------------------------------------------------------------------------------------------------------
  // How rules are made

  /** The entry rule of a line. */
  protected line<T>(empty: () => T, body: (line: T) => void): LineRule<T> {
    return { empty, body };
  }

  /** A rule that recovers where `follow` begins; the line goes on there. */
  protected part<A extends unknown[]>(
    follow: readonly TokenType[],
    body: (...args: A) => void,
  ): (...args: A) => void {
    return (...args) => {
      try {
        body(...args);
      } catch (error) {
        if (error !== MISMATCH || !this.skipTo(follow)) {
          throw error;
        }
        this.recoveredAt = this.peek(1);
      }
    };
  }

  /** Goes to the next token that can follow the part; not beyond one that the rule around it waits for. */
  private skipTo(follow: readonly TokenType[]): boolean {
    const outer: readonly TokenType[] = follow === AFTER_ARGUMENT ? this.afterCall : [];
    for (let ahead = 1; ; ahead += 1) {
      const token = this.peek(ahead);
      if (token === END_TOKEN || outer.some((type) => t.matches(token, type))) {
        return false;
      }
      if (follow.some((type) => t.matches(token, type))) {
        this.next += ahead - 1;
        return true;
      }
    }
  }

  /** The token so many ahead, from 1; 0 is the one that was read last. */
  protected peek(ahead: number): LexToken {
    return this.tokens[this.next + ahead - 1] ?? END_TOKEN;
  }

  /** Whether a token of the type stands so many ahead. */
  protected at(type: TokenType, ahead = 1): boolean {
    return t.matches(this.peek(ahead), type);
  }

  /** Reads a token of the type, or ends the rule: `what` was expected. */
  protected take(type: TokenType, what = type.label): LexToken {
    const token = this.peek(1);
    if (!t.matches(token, type)) {
      throw this.mismatch(what);
    }
    this.next += 1;
    return token;
  }

  /** To be thrown: reports that `what` was expected here. */
  protected mismatch(what: string): Error {
    this.report(this.expectedNext(what));
    return MISMATCH;
  }

  /** Parts with commas between them. */
  protected list<A>(item: (into: A) => void, into: A): void {
    item(into);
    while (this.at(t.Comma)) {
      this.take(t.Comma);
      item(into);
    }
  }

  /** Parts one after the other, as long as one can begin and each reads something. */
  protected many(isNext: () => boolean, item: () => void): void {
    for (let before = -1; before !== this.next && isNext(); ) {
      before = this.next;
      item();
    }
  }

  /** One or more words, up to a word that starts something else. */
  protected wordRun(what: string, stop?: TokenType): LexToken[] {
    const words = [this.take(t.Word, what)];
    while (this.at(t.Word) && this.peek(1).type !== stop) {
      words.push(this.take(t.Word));
    }
    return words;
  }

  /** The comma before a part, which is missed but not needed. */
  protected commaBefore(): void {
    if (this.at(t.Comma)) {
      this.take(t.Comma);
    } else {
      this.report(missingComma(this.context(), this.peek(1)));
    }
  }

  /** The `)`, without which the rest of the line is read all the same. */
  protected closeParen(): void {
    if (this.at(t.RightParen)) {
      this.take(t.RightParen);
    } else {
      const at = endOf(this.peek(0));
      const fix = { title: "Add the `)`", span: { start: at, end: at }, text: ")" };
      this.report({ ...this.expectedNext("`)`"), fix });
    }
  }

  /** Reports and skips what stands before the next comma (or, within parentheses, `)`, or a word that goes on). */
  protected endOfPart(where?: string, goesOn?: (next: TokenType) => boolean): void {
    if (this.isEndOfPart(where, goesOn)) {
      return;
    }
    if (!this.isReported(this.peek(1))) {
      this.report(extra(this.context(), this.peek(1), where ?? "the end of the line or a comma"));
    }
    while (!this.isEndOfPart(where, goesOn)) {
      this.next += 1;
    }
  }

  private isEndOfPart(
    where: string | undefined,
    goesOn: ((next: TokenType) => boolean) | undefined,
  ): boolean {
    const { type } = this.peek(1);
    const isParen = where !== undefined && (type === t.RightParen || type === t.To);
    return type === t.End || type === t.Comma || isParen || (goesOn?.(type) ?? false);
  }

  /** Gives a draft the span of what its body read, also when that fails. */
  protected spanned<T extends { span: tree.Span }>(draft: T, body: () => void): T {
    const first = this.peek(1);
    try {
      body();
    } finally {
      const last = this.peek(0);
      const isRead = first !== END_TOKEN && last.start >= first.start;
      draft.span = isRead ? { start: first.start, end: endOf(last) } : this.emptySpan();
    }
    return draft;
  }

  /** A name of someone's choice, which has no hyphen. */
  protected nameOf(token: LexToken): tree.Name {
    if (token.text.includes("-")) {
      this.report(hyphenInName(token));
    }
    return make.makeName(token);
  }

  /** Keeps a problem, unless one is known at the same place: one error says it. */
  protected report(problem: tree.SyntaxProblem): void {
    const { start, end } = problem.span;
    if (
      this.found.length < MAX_PROBLEMS &&
      !this.found.some((known) => known.span.start === start && known.span.end === end)
    ) {
      this.found.push(problem);
    }
  }

  /** Something is missing at the next token. */
  protected expectedNext(what: string): tree.SyntaxProblem {
    const next = this.peek(1);
    return expected(this.context(), what, next === END_TOKEN ? undefined : next);
  }

  /** Sets the example of the line once its verb or shape is known. */
  protected useExample(example: string | undefined): void {
    this.example = example;
  }

  private context(): LineContext {
    return { tokens: this.tokens, example: this.example };
  }

  private endOfLine(): void {
    const next = this.peek(1);
    if (next !== END_TOKEN && !this.isReported(next)) {
      const span = { start: next.start, end: endOf(this.tokens.at(-1)!) };
      this.report({ ...extra(this.context(), next, "the end of the line"), span });
    }
  }

  /** Whether a token is already known to be wrong: one error says it. */
  private isReported(token: LexToken): boolean {
    return token === this.recoveredAt || this.found.some(({ span }) => span.start === token.start);
  }

  private emptySpan(): tree.Span {
    const at = endOf(this.tokens[this.next - 1]!);
    return { start: at, end: at };
  }

  /** Whether another part of a compound quantity follows: a number with a unit of the same group, `5 ft 6 in`. */
  private goesOnCompound(parts: readonly tree.Measure[]): boolean {
    const [number, unit] = [this.peek(1), this.peek(2)];
    const isUnit = unit.type === t.Unit || unit.type === t.Word;
    if (number.type !== t.NumberToken || !isUnit || number.text.startsWith("-")) {
      return false;
    }
    const [before, next] = [t.unitGroup(parts?.at(-1)?.unit?.text ?? ""), t.unitGroup(unit.text)];
    return before === undefined || next === undefined || before === next;
  }

  private wrongSign(written: LexToken, right: string): LexToken {
    const span = make.tokenSpan(written);
    const fix = { title: `Write \`${right}\``, span, text: right };
    this.report({ message: `expected \`${right}\` between name and value`, span, fix });
    return written;
  }
}
