/**
 * The means with which the rules for lines are made: the tokens of a line, what is expected and reported, where reading
 * goes on after a mistake, and what was written in words of its own.
 *
 * A rule hangs its draft into the result before it reads, so that what was read stays when the rest of the line is broken.
 * Recovery happens at commas, closing parentheses and words that begin another part only, in the rules made by `part`;
 * tokens are never invented or dropped singly.
 */
import type { Told } from "./gist.ts";
import { END_TOKEN, endOf, type LexToken } from "./lexer.ts";
import { expected, extra, hyphenInName, type LineContext, missingComma } from "./line-problems.ts";
import * as make from "./literals.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import { t } from "./translate.ts";
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

/** More errors in one line than this help nobody. */
const MAX_PROBLEMS = 20;

/** Ends a rule that cannot go on; what is wrong has been reported. */
const MISMATCH = new Error("This line does not go on as its rule does.");

/** Where what follows a part can begin. */
export const AT_COMMA: readonly TokenType[] = [Token.Comma];
export const AFTER_ARGUMENT: readonly TokenType[] = [Token.Comma, Token.RightParen];
export const AFTER_PARAMETER: readonly TokenType[] = [Token.Comma, Token.RightParen, Token.StringToken];

export class LineReader {
  /** All tokens of the line, its keyword included. */
  private tokens: readonly LexToken[] = [];
  private next = 0;
  private plainKeyword: string | undefined;
  private example: string | undefined;
  private found: tree.SyntaxProblem[] = [];
  private respelt: tree.Respelling[] = [];
  private recoveredAt: LexToken | undefined;
  /** What `rest` is, and where: rules ask for it over and over before they go on. */
  private restFrom = -1;
  private restText = "";
  /** What may follow the call that is read: what its arguments leave to the rule around it. */
  protected afterCall: readonly TokenType[] = [];

  /** Reads a line whose first token is its keyword. */
  read<T>(
    rule: LineRule<T>,
    { tokens, example, keyword }: LineContext,
  ): {
    readonly line: T;
    readonly problems: readonly tree.SyntaxProblem[];
    readonly respellings: readonly tree.Respelling[];
  } {
    this.tokens = tokens;
    this.plainKeyword = keyword;
    this.next = 1;
    this.example = example;
    this.found = [];
    this.respelt = [];
    this.recoveredAt = undefined;
    this.restFrom = -1;
    const line = rule.empty();
    try {
      rule.body(line);
      this.endOfLine();
    } catch (error) {
      if (error !== MISMATCH) throw error;
    }
    return { line, problems: this.found, respellings: this.respelt };
  }

  /** Reads one of the phrases, which the plain form leaves out; only where `before` follows it, when that is given. */
  protected leaveOut(phrases: readonly (readonly string[])[], before?: TokenType): boolean {
    if (this.peek(1).kind !== "word") {
      return false;
    }
    const first = this.peek(1).text.toLowerCase();
    for (const phrase of phrases) {
      if (phrase[0] === first && phrase.every((word, idx) => this.isWordAt(word, idx + 1))) {
        const hasPoint = this.at(Token.Dot, phrase.length + 1);
        const length = phrase.length + (hasPoint ? 1 : 0);
        if (before === undefined || this.at(before, length + 1)) {
          this.respell({ start: this.peek(1).start, end: endOf(this.peek(length)) }, "");
          this.next += length;
          return true;
        }
      }
    }
    return false;
  }

  /** Reads the longest run of words that a table spells plainly, up to four of them. */
  protected spelling(table: Readonly<Record<string, string>>): tree.Name | undefined {
    const found = this.longestIn(table);
    if (found === undefined) {
      return undefined;
    }
    const text = table[found.written]!;
    this.respell(found.span, text);
    this.next += found.length;
    return { kind: "name", text, span: found.span };
  }

  /** The longest run of words, up to four, that a table has; also with `_` for blanks, and `written` as the table has it. */
  protected longestIn(
    table: Readonly<Record<string, unknown>>,
  ): { readonly written: string; readonly length: number; readonly span: tree.Span } | undefined {
    const first = this.peek(1);
    if (first.kind !== "word" || !beginsPhrase(table, first.text)) {
      return undefined;
    }
    const words: string[] = [];
    while (words.length < LONGEST_PHRASE && this.peek(words.length + 1).kind === "word") {
      words.push(this.peek(words.length + 1).text);
    }
    for (let length = words.length; length > 0; length -= 1) {
      const joined = words.slice(0, length).join(" ");
      const written = Object.hasOwn(table, joined) ? joined : joined.replaceAll("_", " ");
      if (Object.hasOwn(table, written)) {
        const span = { start: this.peek(1).start, end: endOf(this.peek(length)) };
        return { written, length, span };
      }
    }
    return undefined;
  }

  /** The word that the line starts with, as it is written. */
  protected get written(): string {
    return this.tokens[0]?.text ?? "";
  }

  /** The word that the line starts with. */
  protected get keyword(): string {
    return this.plainKeyword ?? this.tokens[0]?.text ?? "";
  }

  /** What follows on the line, as far as a figure can reach, with one blank where there are any. */
  protected rest(): string {
    if (this.restFrom !== this.next) {
      let text = "";
      for (let ahead = 1; text.length < LONGEST_FIGURE && this.peek(ahead) !== END_TOKEN; ahead += 1) {
        text += (ahead > 1 && this.hasBlankBefore(ahead) ? " " : "") + this.peek(ahead).text;
      }
      this.restFrom = this.next;
      this.restText = text;
    }
    return this.restText;
  }

  /** Whether a text without quotes stands here: it begins with a word, and nothing on the line could end or open a title. */
  protected isTextInWords(): boolean {
    return this.peek(1).kind === "word" && this.isWholeLineInWords();
  }

  /** Whether nothing on the rest of the line could end or open a title. */
  protected isWholeLineInWords(): boolean {
    let ahead = 1;
    while (this.peek(ahead) !== END_TOKEN && !/["{}#]/u.test(this.peek(ahead).text)) ahead += 1;
    return this.peek(ahead) === END_TOKEN;
  }

  /** Reads all that follows on the line, with one blank where there are any. */
  protected takeRest(): string {
    let text = "";
    for (let isFirst = true; this.peek(1) !== END_TOKEN; isFirst = false) {
      text += (!isFirst && this.hasBlankBefore(1) ? " " : "") + this.peek(1).text;
      this.next += 1;
    }
    return text;
  }

  /** The same up to what ends a part of the line: a comma, a quotation mark or a brace. */
  protected restOfPart(): string {
    const rest = this.rest();
    const end = rest.search(/[,"{]/u);
    return (end < 0 ? rest : rest.slice(0, end)).trimEnd();
  }

  /** What follows the comma that comes next, up to what ends that part. */
  protected restBehindComma(): string {
    this.next += 1;
    const text = this.restOfPart();
    this.next -= 1;
    return text;
  }

  /** Reads the tokens that make up this beginning of `rest`; nothing where it ends within one. */
  protected takeText(written: string): tree.Span | undefined {
    let length = 0;
    for (let ahead = 1; this.peek(ahead) !== END_TOKEN; ahead += 1) {
      length += (ahead > 1 && this.hasBlankBefore(ahead) ? 1 : 0) + this.peek(ahead).text.length;
      if (length >= written.trimEnd().length) {
        if (length > written.trimEnd().length) {
          return undefined;
        }
        const span = { start: this.peek(1).start, end: endOf(this.peek(ahead)) };
        this.next += ahead;
        return span;
      }
    }
    return undefined;
  }

  private hasBlankBefore(ahead: number): boolean {
    return this.peek(ahead).start > endOf(this.peek(ahead - 1));
  }

  /** Goes over so many tokens that have been looked at. */
  protected skip(count: number): void {
    this.next += count;
  }

  protected isWordAt(word: string, ahead: number): boolean {
    const token = this.peek(ahead);
    return token.kind === "word" && token.text.toLowerCase() === word;
  }

  /** Takes back what was kept from here on, for a plain form that covers all of it. */
  protected dropRespellings(from: number): void {
    this.respelt = this.respelt.filter(({ span }) => span.start < from);
  }

  /** Takes back what was kept for just this span. */
  protected dropName({ start, end }: tree.Span): void {
    this.respelt = this.respelt.filter(({ span }) => span.start !== start || span.end !== end);
  }

  /** Tries a rule; where it does not go on, nothing of it is read or reported. */
  protected apart(body: () => void): boolean {
    const [next, found, respelt] = [this.next, [...this.found], [...this.respelt]];
    try {
      body();
      return true;
    } catch (error) {
      if (error !== MISMATCH) throw error;
      this.next = next;
      this.found = found;
      this.respelt = respelt;
      return false;
    }
  }

  /** Keeps what the formatter puts in the place of what was written. */
  protected respell(span: tree.Span, text: string): void {
    this.respelt.push({ span, text });
  }

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
      if (token === END_TOKEN || outer.some((type) => Token.matches(token, type))) {
        return false;
      }
      if (follow.some((type) => Token.matches(token, type))) {
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
    return Token.matches(this.peek(ahead), type);
  }

  /** Reads a token of the type, or ends the rule: `what` was expected. */
  protected take(type: TokenType, what: Told = type.label): LexToken {
    const token = this.peek(1);
    if (!Token.matches(token, type)) {
      throw this.mismatch(what);
    }
    this.next += 1;
    return token;
  }

  /** To be thrown: reports that `what` was expected here. */
  protected mismatch(what: Told): Error {
    this.report(this.expectedNext(what));
    return MISMATCH;
  }

  /** To be thrown: reports what is wrong here. */
  protected refused(problem: tree.SyntaxProblem): Error {
    this.report(problem);
    return MISMATCH;
  }

  /** Parts with commas between them. */
  protected list<A>(item: (into: A) => void, into: A): void {
    item(into);
    while (!this.isWordsBehind() && (this.at(Token.Comma) || this.at(Token.And))) {
      if (this.at(Token.Comma)) {
        this.take(Token.Comma);
      } else {
        this.respell(make.tokenSpan(this.take(Token.And)), ",");
      }
      item(into);
    }
  }

  /** Parts one after the other, as long as one can begin and each reads something. */
  protected many(isNext: () => boolean, item: () => void): void {
    for (let before = -1; before !== this.next && !this.isWordsBehind() && isNext(); ) {
      before = this.next;
      item();
    }
  }

  /** One or more words, up to a word that starts something else. */
  protected wordRun(what: Told, stop?: TokenType): LexToken[] {
    const words = [this.take(Token.Word, what)];
    while (this.at(Token.Word) && this.peek(1).type !== stop) {
      words.push(this.take(Token.Word));
    }
    return words;
  }

  /** The comma before a part, which is missed but not needed. */
  protected commaBefore(): void {
    if (this.at(Token.Comma)) {
      this.take(Token.Comma);
    } else {
      this.report(missingComma(this.context(), this.peek(1)));
    }
  }

  /** The `)`, without which the rest of the line is read all the same. */
  protected closeParen(): void {
    if (this.at(Token.RightParen)) {
      this.take(Token.RightParen);
    } else {
      const at = endOf(this.peek(0));
      const fix = { title: t`Add the \`)\``, span: { start: at, end: at }, text: ")" };
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

  /** Whether what comes next are words about the line, which its own rule reads. */
  protected isWordsBehind(): boolean {
    return false;
  }

  private isEndOfPart(
    where: string | undefined,
    goesOn: ((next: TokenType) => boolean) | undefined,
  ): boolean {
    const { type } = this.peek(1);
    if (where === undefined && this.isWordsBehind()) {
      return true;
    }
    const isParen = where !== undefined && (type === Token.RightParen || type === Token.To);
    return type === Token.End || type === Token.Comma || isParen || (goesOn?.(type) ?? false);
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
  protected expectedNext(what: Told): tree.SyntaxProblem {
    const next = this.peek(1);
    return expected(this.context(), what, next === END_TOKEN ? undefined : next);
  }

  /** Sets the example of the line once its verb or shape is known. */
  protected useExample(example: string | undefined): void {
    this.example = example;
  }

  protected context(): LineContext {
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
}

const LONGEST_PHRASE = 4;

/** Whether a phrase of a table begins with a word, or with what stands before its `_`. */
function beginsPhrase(table: Readonly<Record<string, unknown>>, word: string): boolean {
  const joint = word.indexOf("_");
  return firstWords(table).has(joint < 0 ? word : word.slice(0, joint));
}

/** The first words of a table's phrases, which part nearly all calls from those that find something. */
function firstWords(table: Readonly<Record<string, unknown>>): ReadonlySet<string> {
  const known = FIRST_WORDS.get(table);
  if (known !== undefined) {
    return known;
  }
  const first = new Set(Object.keys(table).map((phrase) => phrase.split(/[ _]/u)[0]!));
  FIRST_WORDS.set(table, first);
  return first;
}

const FIRST_WORDS = new WeakMap<Readonly<Record<string, unknown>>, ReadonlySet<string>>();

/** No date, time, sum of money or kind of material is longer. */
const LONGEST_FIGURE = 60;

/** Phrases by their words. */
export function phrases(...texts: readonly string[]): readonly (readonly string[])[] {
  return texts.map((text) => text.split(" "));
}
