/** The entry rules for what is on a surface already: old layers and their state, and what a lead test came to. */
import { gist } from "./gist.ts";
import { endOf } from "./lexer.ts";
import { testedBy } from "./line-problems.ts";
import { type Draft, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { LabelParser } from "./parser-labels.ts";
import type { TokenType } from "./tokens.ts";
import * as t from "./tokens.ts";
import type * as tree from "./tree.ts";
import { keyOf, WORD_SPELLINGS } from "./word-spellings.ts";

const OVER_IT = phrases("over it", "on top of it", "on top", "above it", "over that");
/** What state an old finish is in. */
const LOOKS =
  "worn|yellowed|yellow|chipping|chipped|cracked|cracking|crazed|crackled|alligatored|peeling|flaking|flaky|loose|faded|dirty|grimy|greasy|sound|sticky|tacky|scratched|stained|bloomed|dull|brittle|thick|thin|patchy|blistered|burnt|burned|weathered|old|damaged|good|bad|poor";
const STATE = new RegExp(
  `^(?:(?:very|mostly|partly|badly|slightly|a bit|a little|still|well|heavily|in places|gone) )?(?:${LOOKS})(?:(?: and|,)? (?:${LOOKS}|colour|condition|shape|in places|at the edges|on the edges|on the seat|on the seats|off|all over)){0,3}$`,
  "iu",
);
/** What is told of an old finish and names none: how many coats there may be, how it came off, which is lowest. */
const TOLD =
  /^(?:(?:at least|about|up to|maybe|perhaps|several|many|some|a few|two or three)(?: \d{1,2})? coats?|\d{1,3} (?:years?|months?) (?:old|ago)|(?:stripped|worn|dipped|sanded|scraped|washed|touched|patched|painted over|lowest|topmost|oldest|newest|first|last|under|over|on|in|at|by|from|with|without|where|only|probably|perhaps|maybe)\b(?!.{0,60}(?:shellac|varnish|lacquer|polyurethane|\bwax|\boil|stain))[^,"{}]{1,60})$/iu;
const COLOURS_OF_OLD =
  "black|brown|red|green|blue|yellow|orange|grey|gray|white|cream|pink|dark|light|pale|old|thick|thin|glossy|matt|gloss";
/** `black paint`, `old dark varnish`: how it looks, and whether it is paint or clear. */
const OLD_LOOK = new RegExp(
  `^((?:(?:${COLOURS_OF_OLD}|${LOOKS}) ){1,4})(paint|enamel|varnish|lacquer|clear|finish|coating)$`,
  "iu",
);

type Value<F> = Draft<Extract<tree.FieldValue, { readonly form: F }>>;

const UNTESTED: Readonly<Record<string, string>> = {
  untested: "not_tested",
  "not tested": "not_tested",
  "not tested yet": "not_tested",
  "not yet tested": "not_tested",
  "never tested": "not_tested",
  "no test": "not_tested",
  suspected: "not_tested",
  probable: "not_tested",
  likely: "not_tested",
  possible: "not_tested",
};

const AT_LAYER: readonly TokenType[] = [t.Comma, t.NumberToken, t.Word];

export class ExistingParser extends LabelParser {
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

  protected asLeftBy(line: Value<"existing">): void {
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
  protected existingState(layers: Draft<tree.ExistingLayer>[]): boolean {
    const layer = layers.at(-1);
    const text = this.restOfPart();
    const comma = this.peek(0);
    if (layer === undefined || comma.type !== t.Comma || !(STATE.test(text) || TOLD.test(text))) {
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
  protected colouredOld(layers: Draft<tree.ExistingLayer>[]): tree.Words | "read" | undefined {
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
  protected overIt(text: string): tree.Words | undefined {
    const said = /^(\p{L}[\p{L} -]{2,40}?) (?:over it|on top|above it|on top of it|over that)$/u.exec(text);
    if (!said) {
      return undefined;
    }
    const words = this.speltIn(said[1]!);
    this.leaveOut(OVER_IT);
    return words;
  }

  /** Some words as the vocabulary of this line has them. */
  protected speltIn(text: string): tree.Words | undefined {
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

  protected keepCoats(layers: Draft<tree.ExistingLayer>[], coats: tree.NumberLiteral, end: number): void {
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

  protected readonly lead = this.line(
    (): Value<"lead"> => ({ form: "lead" }),
    (line) => {
      const untested = this.spelling(UNTESTED);
      line.result = untested ?? make.makeName(this.take(t.Word, "`none_found`, `found` or `not_tested`"));
      if (untested !== undefined || line.result.text === "not_tested") {
        return;
      }
      this.take(t.By, "`by` and the method of the test");
      line.method = make.makeName(this.take(t.Word, "the method of the test"));
      line.date = this.date("the date of the result");
    },
  );
}

/** Words of which the first stands for all that was written. */
function wordsOf(text: string, span: tree.Span): tree.Words {
  const empty = { start: span.end, end: span.end };
  const words = text
    .split(" ")
    .map((word, idx): tree.Name => ({ kind: "name", text: word, span: idx === 0 ? span : empty }));
  return { kind: "words", words, text, span };
}
