/** The rule for the lines of a record: when, what on which surface, and what is known of it. */
import { endOf } from "./lexer.ts";
import { type Draft, NO_SPAN } from "./line-reader.ts";
import * as make from "./literals.ts";
import { LayerParser } from "./parser-layers.ts";
import type { Line, StepLine } from "./parser-steps.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import { t } from "./translate.ts";
import type * as tree from "./tree.ts";
import { DONE_FACTS } from "./vocabulary.ts";

type DoneLine = Line<tree.DoneStatement>;
type Fact<K extends tree.DoneFact["kind"]> = Draft<Extract<tree.DoneFact, { readonly kind: K }>>;

const AT_FACT: readonly TokenType[] = [Token.Comma];
const ALL_SURFACES: Readonly<Record<string, string>> = { everything: "all", "all surfaces": "all" };
const FACT = Object.keys(DONE_FACTS).map((word) => `\`${word}\``);
const factWords = (): string => t`${FACT.slice(0, -1).join(", ")} or ${FACT.at(-1)!}`;

export class RecordParser extends LayerParser {
  readonly done = this.line(
    (): DoneLine => ({ targets: [], facts: [] }),
    (line) => {
      const date = this.take(Token.DateToken, "the day on which it was done");
      line.date = { kind: "date", text: date.text, span: make.tokenSpan(date) };
      if (this.at(Token.TimeToken)) {
        const time = this.take(Token.TimeToken);
        line.time = { kind: "time", text: time.text, span: make.tokenSpan(time) };
      }
      this.whatWasDone(line);
      const targets: tree.Target[] = [];
      line.targets = targets;
      if (this.isWordAt("on", 1)) {
        this.skip(1);
        this.surfaceOf(targets);
        while (this.at(Token.And)) {
          this.skip(1);
          this.surfaceOf(targets);
        }
      }
      const facts: tree.DoneFact[] = [];
      line.facts = facts;
      if (!this.at(Token.Comma) && !this.at(Token.End)) {
        throw this.mismatch(targets.length === 0 ? "`on` and a surface" : "the end of the line or a comma");
      }
      while (this.at(Token.Comma)) {
        this.skip(1);
        this.fact(facts);
      }
    },
  );

  private whatWasDone(line: DoneLine): void {
    if (this.at(Token.Coats)) {
      const keyword = make.makeName(this.take(Token.Coats));
      const draft: Draft<NonNullable<tree.DoneStatement["coat"]>> = { keyword, span: keyword.span };
      line.coat = draft;
      if (this.at(Token.NumberToken)) {
        draft.number = make.makeNumber(this.take(Token.NumberToken));
        draft.span = { start: keyword.span.start, end: draft.number.span.end };
      }
      if (this.at(Token.Of)) {
        this.skip(1);
        line.material = this.nameOf(this.take(Token.Word, "a material"));
      }
      return;
    }
    if (this.at(Token.StringToken)) {
      line.what = make.makeTitle(this.take(Token.StringToken));
      return;
    }
    if (!this.at(Token.Word)) {
      throw this.mismatch("a coat, a verb, or a text in double quotes");
    }
    const step: StepLine = { grits: [], tails: [] };
    this.verb(step);
    line.verb = step.verb!;
    this.withMaterial(step);
    if (step.material !== undefined) {
      line.material = step.material;
    }
  }

  /** `top`, `table.top`, `all` */
  protected surfaceOf(targets: tree.Target[]): void {
    const draft: Draft<tree.Target> = { kind: "target", span: NO_SPAN };
    targets.push(draft);
    this.spanned(draft, () => {
      draft.surface = this.spelling(ALL_SURFACES) ?? this.nameOf(this.take(Token.Word, "a surface"));
      if (this.at(Token.Dot)) {
        this.take(Token.Dot);
        draft.piece = draft.surface;
        draft.surface = undefined;
        draft.surface = this.nameOf(this.take(Token.Word, "a surface after the piece"));
      } else if (this.keyword === "apply" && this.at(Token.Word) && !this.at(Token.And)) {
        // `bench slats`
        const start = endOf(this.peek(0));
        draft.piece = draft.surface;
        draft.surface = this.nameOf(this.take(Token.Word));
        this.respell({ start, end: draft.surface.span.start }, ".");
      }
    });
  }

  private readonly fact = this.part(AT_FACT, (facts: tree.DoneFact[]): void => {
    // `by` is no name anywhere, so it is no plain word.
    const isBy = this.at(Token.By);
    const keyword = make.makeName(
      this.take(isBy ? Token.By : Token.Word, () => t`what is known of it: ${factWords()}`),
    );
    const kind = keyword.text === "pieces" ? "piece" : keyword.text;
    if (!Object.hasOwn(DONE_FACTS, kind)) {
      throw this.refused({
        message: t`\`${keyword.text}\` says nothing of work that was done\nWrite ${factWords()}.`,
        span: keyword.span,
      });
    }
    this.useExample(DONE_FACTS[kind]!.example);
    const draft = { kind, keyword, span: NO_SPAN } as Draft<tree.DoneFact>;
    facts.push(draft as tree.DoneFact);
    try {
      this.factValue(draft);
    } finally {
      draft.span = { start: keyword.span.start, end: make.tokenSpan(this.peek(0)).end };
    }
    this.endOfPart();
  });

  private factValue(fact: Draft<tree.DoneFact>): void {
    switch (fact.kind) {
      case "took":
        fact.time = this.quantity("a time");
        break;
      case "used":
        fact.amount = this.quantity("an amount");
        break;
      case "paid":
        fact.amount = make.makeNumber(this.take(Token.NumberToken, "a sum of money"));
        break;
      case "air":
        this.airOf(fact);
        break;
      case "trouble":
        fact.trouble = make.makeName(this.take(Token.Word, "what went wrong"));
        break;
      case "piece":
        this.pieceNumbers(fact);
        break;
      default:
        fact.text = make.makeTitle(this.take(Token.StringToken, "a text in double quotes"));
    }
  }

  /** The comma before the humidity belongs to the air, as in the line of a shop. */
  private airOf(fact: Fact<"air">): void {
    const air: { temperature?: tree.Range; humidity?: tree.Humidity } & { form: "air" } = { form: "air" };
    this.airItem(air);
    if (this.at(Token.Comma) && this.at(Token.NumberToken, 2)) {
      this.skip(1);
      this.airItem(air);
    }
    if (air.temperature) fact.temperature = air.temperature;
    if (air.humidity) fact.humidity = air.humidity;
  }

  private pieceNumbers(fact: Fact<"piece">): void {
    const numbers = [make.makeNumber(this.take(Token.NumberToken, "the number of a piece"))];
    fact.numbers = numbers;
    while (this.at(Token.And) || (this.at(Token.Comma) && this.at(Token.NumberToken, 2))) {
      this.skip(1);
      numbers.push(make.makeNumber(this.take(Token.NumberToken, "the number of a piece")));
    }
  }
}
