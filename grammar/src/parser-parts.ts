/**
 * The rules that read parts of a line, and the means with which all rules are made.
 *
 * A rule hangs its draft into the result before it reads, so that what was read stays when the rest of the line is broken.
 * Recovery happens at commas and closing parentheses only, in the rules made by `part`; tokens are never invented or
 * dropped singly.
 */
import { EmbeddedActionsParser, EOF, type IToken, type ParserMethod, type TokenType } from "chevrotain";
import { endOf } from "./lexer.ts";
import { expected, extra, hyphenInName, type LineContext, missingComma } from "./line-problems.ts";
import * as make from "./literals.ts";
import * as t from "./tokens.ts";
import type * as tree from "./tree.ts";

/** A tree node while it is being read. */
export type Draft<T> = { -readonly [K in keyof T]: T[K] };

/** An entry rule. It returns nothing of use: the line is kept even when the rule fails. */
export type LineRule<T> = ParserMethod<[], T>;

/** The span of a draft that has not been read to its end. */
export const NO_SPAN: tree.Span = { start: 0, end: 0 };

/** More errors in one line than this help nobody. */
const MAX_PROBLEMS = 20;

const ALL_TYPES = [...new Set([...t.TOKEN_TABLE.map((row) => row.type), ...t.CONTEXTUAL_WORDS.values()])];

export class PartParser extends EmbeddedActionsParser {
  private ctx: LineContext = { tokens: [], example: undefined };
  private kept: unknown;
  private found: tree.SyntaxProblem[] = [];
  private nKnownErrors = 0;
  private recoveredAt: IToken | undefined;

  constructor(options: { readonly validate: boolean }) {
    super(ALL_TYPES, {
      recoveryEnabled: true,
      maxLookahead: 2,
      skipValidations: !options.validate,
      errorMessageProvider: {
        buildMismatchTokenMessage: ({ expected: type }) => type.LABEL ?? "something else",
        buildNotAllInputParsedMessage: () => "the end of the line",
        buildNoViableAltMessage: ({ customUserDescription }) => customUserDescription ?? "something else",
        buildEarlyExitMessage: ({ customUserDescription }) => customUserDescription ?? "something else",
      },
    });
  }

  /** Reads a line whose first token is its keyword. */
  read<T>(
    rule: LineRule<T>,
    ctx: LineContext,
  ): { readonly line: T; readonly problems: readonly tree.SyntaxProblem[] } {
    this.ctx = ctx;
    this.found = [];
    this.input = ctx.tokens.slice(1);
    this.nKnownErrors = 0;
    this.recoveredAt = undefined;
    rule.call(this);
    this.takeErrors();
    return { line: this.kept as T, problems: this.found };
  }

  // -------------------------------------------------------------------------------------------------------------
  // Parts of lines

  protected readonly quantity = this.inner("quantity", (what: string): tree.Quantity => {
    const parts: tree.Measure[] = [];
    const draft: Draft<tree.Quantity> = { kind: "quantity", parts, span: NO_SPAN };
    return this.spanned(draft, () => {
      this.SUBRULE1(this.measure, { ARGS: [parts, what] });
      this.MANY({
        GATE: () => this.goesOnCompound(parts),
        DEF: () => this.SUBRULE2(this.measure, { ARGS: [parts, what] }),
      });
    });
  });

  protected readonly measure = this.inner("measure", (parts: tree.Measure[], what: string): void => {
    const number = make.makeNumber(this.CONSUME(t.NumberToken, { ERR_MSG: what }));
    const draft: Draft<tree.Measure> = { number };
    this.ACTION(() => parts.push(draft));
    this.OPTION({
      GATE: () => this.LA(1).tokenType === t.Unit || this.LA(1).tokenType === t.Word,
      DEF: () => {
        const keep = (unit: IToken) => {
          draft.unit = make.makeUnit(unit);
        };
        this.OR([{ ALT: () => keep(this.CONSUME(t.Unit)) }, { ALT: () => keep(this.CONSUME(t.Word)) }]);
      },
    });
  });

  /** A quantity or a parameter. */
  protected readonly value = this.inner(
    "value",
    (what: string): tree.Value =>
      this.OR({
        DEF: [
          { ALT: () => this.SUBRULE(this.quantity, { ARGS: [what] }) },
          { ALT: () => this.nameOf(this.CONSUME(t.Word)) },
        ],
        ERR_MSG: what,
      }),
  );

  protected readonly range = this.inner("range", (what: string): tree.Range => {
    const draft: Draft<tree.Range> = { kind: "range", from: undefined as never, span: NO_SPAN };
    return this.spanned(draft, () => {
      draft.from = this.SUBRULE1(this.value, { ARGS: [what] });
      this.OPTION1(() => {
        this.CONSUME(t.To);
        const to = this.OPTION2(() => this.SUBRULE2(this.value, { ARGS: [what] }));
        this.ACTION(() => {
          draft.to = to;
          if (to === undefined) {
            this.report(this.expectedNext(`${what} after \`to\``));
          }
        });
      });
    });
  });

  protected readonly ratio = this.inner("ratio", (): tree.Ratio => {
    const what = "a ratio";
    return this.OR({
      DEF: [
        { ALT: () => make.makeRatioOfTime(this.CONSUME(t.TimeToken)) },
        {
          ALT: () => {
            const draft = {
              kind: "ratio",
              a: undefined,
              b: undefined,
              span: NO_SPAN,
            } as never as Draft<tree.Ratio>;
            return this.spanned(draft, () => {
              draft.a = make.makeNumber(this.CONSUME1(t.NumberToken));
              this.CONSUME(t.Colon, { ERR_MSG: what });
              draft.b = make.makeNumber(this.CONSUME2(t.NumberToken, { ERR_MSG: what }));
            });
          },
        },
      ],
      ERR_MSG: what,
    });
  });

  protected readonly call = this.inner("call", (keep: (call: tree.Call) => void): void => {
    const args: tree.Argument[] = [];
    const draft: Draft<tree.Call> = {
      kind: "call",
      name: undefined as never,
      arguments: args,
      span: NO_SPAN,
    };
    this.spanned(draft, () => {
      draft.name = this.nameOf(this.CONSUME(t.Word, { ERR_MSG: "a recipe" }));
      this.ACTION(() => keep(draft));
      this.OPTION1(() => {
        this.CONSUME(t.LeftParen);
        this.OPTION2(() => {
          this.SUBRULE1(this.argument, { ARGS: [args] });
          this.MANY(() => {
            this.CONSUME(t.Comma);
            this.SUBRULE2(this.argument, { ARGS: [args] });
          });
        });
        this.closeParen();
      });
    });
  });

  protected readonly argument = this.part("argument", (args: tree.Argument[]): void => {
    const draft: Draft<tree.Argument> = { kind: "argument", span: NO_SPAN };
    this.ACTION(() => args.push(draft));
    this.spanned(draft, () => {
      this.OPTION(() => {
        const name = this.CONSUME(t.Word);
        this.OR1([
          { ALT: () => this.CONSUME(t.Colon) },
          { ALT: () => this.wrongSign(this.CONSUME(t.Equals), ":") },
        ]);
        draft.name = this.nameOf(name);
      });
      draft.value = this.OR2({
        DEF: [
          { ALT: () => make.makeTitle(this.CONSUME(t.StringToken)) },
          { ALT: () => this.SUBRULE(this.value, { ARGS: ["a value"] }) },
        ],
        ERR_MSG: draft.name === undefined ? "an argument such as `clear: hall_clear`" : "a value",
      });
    });
    this.endOfPart("`,` or `)`");
  });

  protected readonly parameter = this.part("parameter", (parameters: tree.Parameter[]): void => {
    const draft: Draft<tree.Parameter> = { kind: "parameter", name: undefined as never, span: NO_SPAN };
    const typeWords = "the type: material, number, duration or recipe";
    this.spanned(draft, () => {
      draft.name = this.nameOf(this.CONSUME1(t.Word, { ERR_MSG: "a parameter" }));
      this.ACTION(() => parameters.push(draft));
      this.CONSUME(t.Colon, { ERR_MSG: `\`:\` and ${typeWords}` });
      draft.type = make.makeName(this.CONSUME2(t.Word, { ERR_MSG: typeWords }));
      this.OPTION(() => {
        this.CONSUME(t.Equals);
        draft.default = this.SUBRULE(this.value, { ARGS: ["a default value"] });
      });
    });
    this.endOfPart("`,` or `)`");
  });

  // -------------------------------------------------------------------------------------------------------------
  // How rules are made

  /** The entry rule of a line: the draft is kept whatever happens. */
  protected line<T>(name: string, empty: () => T, body: (line: T) => void): LineRule<T> {
    return this.RULE(
      name,
      () => {
        const line = empty();
        this.ACTION(() => {
          this.kept = line;
        });
        body(line);
        this.endOfLine();
        return line;
      },
      { recoveryValueFunc: () => this.kept as T },
    );
  }

  /** A rule that recovers at the next comma or closing parenthesis. */
  protected part<A extends unknown[], R>(name: string, body: (...args: A) => R): ParserMethod<A, R> {
    const recoveryValueFunc = () => {
      this.takeErrors();
      this.recoveredAt = this.LA(1);
      return undefined as R;
    };
    return this.RULE(name, body, { recoveryValueFunc });
  }

  /** A rule that leaves recovery to the part that it belongs to. */
  protected inner<A extends unknown[], R>(name: string, body: (...args: A) => R): ParserMethod<A, R> {
    return this.RULE(name, body, { resyncEnabled: false });
  }

  protected override canTokenTypeBeInsertedInRecovery(): boolean {
    return false;
  }

  protected override canTokenTypeBeDeletedInRecovery(): boolean {
    return false;
  }

  /** Without this, a repetition would look for its separator beyond what a part has to report. */
  protected shouldInRepetitionRecoveryBeTried(): boolean {
    return false;
  }

  /** Parts with commas between them. */
  protected list<A>(item: ParserMethod<[A], void>, into: A): void {
    this.SUBRULE8(item, { ARGS: [into] });
    this.MANY8(() => {
      this.CONSUME8(t.Comma);
      this.SUBRULE9(item, { ARGS: [into] });
    });
  }

  /** One or more words, up to a word that starts something else. */
  protected wordRun(what: string, stop?: TokenType): IToken[] {
    const words: IToken[] = [];
    this.AT_LEAST_ONE({
      GATE: () => words.length === 0 || this.LA(1).tokenType !== stop,
      DEF: () => words.push(this.CONSUME9(t.Word, { ERR_MSG: what })),
      ERR_MSG: what,
    });
    return words;
  }

  /** The comma before a part, which is missed but not needed. */
  protected commaBefore(): void {
    const comma = this.OPTION9(() => this.CONSUME9(t.Comma));
    this.ACTION(() => {
      if (comma === undefined) {
        this.report(missingComma(this.ctx, this.LA(1)));
      }
    });
  }

  /** The `)`, without which the rest of the line is read all the same. */
  protected closeParen(): void {
    const paren = this.OPTION8(() => this.CONSUME(t.RightParen));
    this.ACTION(() => {
      if (paren === undefined) {
        const at = endOf(this.LA(0));
        const mend = { title: "Add the `)`", span: { start: at, end: at }, text: ")" };
        this.report({ ...this.expectedNext("`)`"), mend });
      }
    });
  }

  /** Reports and skips what stands before the next comma (or, within parentheses, `)`, or a word that goes on). */
  protected endOfPart(where?: string, goesOn: (next: TokenType) => boolean = () => false): void {
    this.ACTION(() => {
      const isEnd = () => {
        const type = this.LA(1).tokenType;
        const isParen = where !== undefined && (type === t.RightParen || type === t.To);
        return type === EOF || type === t.Comma || isParen || goesOn(type);
      };
      if (!isEnd() && !this.isReported(this.LA(1))) {
        this.report(extra(this.ctx, this.LA(1), where ?? "the end of the line or a comma"));
      }
      this.skipUntil(isEnd);
    });
  }

  /** Gives a draft the span of what its body read, also when that fails. */
  protected spanned<T extends { span: tree.Span }>(draft: T, body: () => void): T {
    const first = this.LA(1);
    try {
      body();
    } finally {
      const last = this.LA(0);
      const isRead =
        first.tokenType !== EOF && last.tokenType !== EOF && last.startOffset >= first.startOffset;
      draft.span = isRead ? { start: first.startOffset, end: endOf(last) } : this.emptySpan();
    }
    return draft;
  }

  /** A name of someone's choice, which has no hyphen. */
  protected nameOf(token: IToken): tree.Name {
    this.ACTION(() => {
      if (token.image.includes("-")) {
        this.report(hyphenInName(token));
      }
    });
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
    const next = this.LA(1);
    return expected(this.ctx, what, next.tokenType === EOF ? undefined : next);
  }

  /** Sets the example of the line once its verb or shape is known. */
  protected useExample(example: string | undefined): void {
    this.ctx = { ...this.ctx, example };
  }

  /** Words new errors while the example that belongs to them is known. */
  private takeErrors(): void {
    const { errors } = this;
    for (const { message, token } of errors.slice(this.nKnownErrors)) {
      this.report(expected(this.ctx, message, token.tokenType === EOF ? undefined : token));
    }
    this.nKnownErrors = errors.length;
  }

  private endOfLine(): void {
    this.ACTION(() => {
      if (this.LA(1).tokenType !== EOF && !this.isReported(this.LA(1))) {
        const span = { start: this.LA(1).startOffset, end: endOf(this.ctx.tokens.at(-1)!) };
        this.report({ ...extra(this.ctx, this.LA(1), "the end of the line"), span });
      }
      this.skipUntil(() => this.LA(1).tokenType === EOF);
    });
  }

  /** Whether a token is already known to be wrong: one error says it. */
  private isReported(token: IToken): boolean {
    return token === this.recoveredAt || this.found.some(({ span }) => span.start === token.startOffset);
  }

  private skipUntil(isEnd: () => boolean): void {
    while (!isEnd()) {
      this.SKIP_TOKEN();
    }
  }

  private emptySpan(): tree.Span {
    const last = this.LA(0).tokenType === EOF ? this.ctx.tokens[0] : this.LA(0);
    const at = last === undefined ? 0 : endOf(last);
    return { start: at, end: at };
  }

  /** Whether another part of a compound quantity follows: a number with a unit of the same group, `5 ft 6 in`. */
  private goesOnCompound(parts: readonly tree.Measure[]): boolean {
    const [number, unit] = [this.LA(1), this.LA(2)];
    const isUnit = unit.tokenType === t.Unit || unit.tokenType === t.Word;
    if (number.tokenType !== t.NumberToken || !isUnit || number.image.startsWith("-")) {
      return false;
    }
    const [before, next] = [t.unitGroup(parts?.at(-1)?.unit?.text ?? ""), t.unitGroup(unit.image)];
    return before === undefined || next === undefined || before === next;
  }

  private wrongSign(written: IToken, right: string): IToken {
    this.ACTION(() => {
      const span = make.tokenSpan(written);
      const mend = { title: `Write \`${right}\``, span, text: right };
      this.report({ message: `expected \`${right}\` between name and value`, span, mend });
    });
    return written;
  }
}
