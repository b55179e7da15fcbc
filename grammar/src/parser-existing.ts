/** The entry rules for what is on a surface already: old layers and their state, and what a lead test came to. */
import { gist } from "./gist.ts";
import { endOf } from "./lexer.ts";
import { testedBy } from "./line-problems.ts";
import { type Draft, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { LabelParser } from "./parser-labels.ts";
import { NUMBER_WORDS } from "./parser-parts.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import { t } from "./translate.ts";
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
  /^(?:\d{1,2} ?(?:to|or|-) ?\d{1,2} coats?|(?:at least|about|up to|maybe|perhaps|several|many|some|a few|two or three)(?: \d{1,2})? coats?|\d{1,3} (?:years?|months?) (?:old|ago)|(?:(?:about|around|ca|in) )?(?:1[6-9]|20)\d\ds?|(?:stripped|worn|dipped|sanded|scraped|washed|touched|patched|painted over|lowest|topmost|oldest|newest|first|last|under|over|on|in|at|by|from|with|without|where|only|probably|perhaps|maybe)\b(?!.{0,60}(?:shellac|varnish|lacquer|polyurethane|\bwax|\boil|stain))[^,"{}]{1,60})$/iu;
/** Words of which none is a kind of finish. */
const IS_NO_KIND =
  /^(?!\d)(?!.{0,80}(?:paint|enamel|varnish|lacquer|\bwax|\boil|shellac|stain|primer|glaze|poly|soap|epoxy|polish|finish|coat|\bclear|\bunknown|laquer|vernish|dye|milk))[\p{L}][^,"{}\\]{1,60}$/iu;
/** What an unknown finish may be. */
const PERHAPS = /^(?:maybe|perhaps|probably|possibly|likely|could be|looks like|or) [^,"{}\\]{2,60}$/iu;
const TWO_LAYERS =
  /^([^,"{}\d]{2,40}?) (over|on top of|on|under|and|with) (?!(?:top|it|that)\b)([^,"{}\d]{2,40})$/iu;
const COATS_OF =
  /^(?:(\d{1,2})|(several|many|some|a few|two or three|countless)) coats? of ([^,"{}\d]{2,40})$/iu;
const COLOURS_OF_OLD =
  "black|brown|red|green|blue|yellow|orange|grey|gray|white|cream|pink|dark|light|pale|old|thick|thin|glossy|matt|gloss";
/** `black paint`, `old dark varnish`: how it looks, and whether it is paint or clear. */
const OLD_LOOK = new RegExp(
  `^((?:(?:${COLOURS_OF_OLD}|${LOOKS}) ){1,4})(paint|enamel|varnish|lacquer|clear|finish|coating)$`,
  "iu",
);

type Value<F> = Draft<Extract<tree.FieldValue, { readonly form: F }>>;

const RESULTS: Readonly<Record<string, string>> = {
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
  unknown: "not_tested",
  assumed: "not_tested",
  presumed: "not_tested",
  "to be tested": "not_tested",
  yes: "found",
  positive: "found",
  no: "none_found",
  none: "none_found",
  negative: "none_found",
  free: "none_found",
  "not found": "none_found",
  "none found": "none_found",
};
/** `6,000 ppm`, behind the method. */
const LEAD_CONTENT = /^[\d.,]{1,9} ?(?:ppm|%)(?=$|[ ,])/iu;
/** `0.8 %`, `4200 ppm`, before the method. */
const LEAD_SHARE = /^[\d.,]{1,9} ?(?:ppm|%|mg\/\p{L}{1,2}\d?) (?=by )/iu;
/** How it was tested: what is no laboratory counts as a kit. */
const LEAD_TESTS: Readonly<Record<string, string>> = {
  lab: "laboratory",
  "a laboratory": "laboratory",
  test: "swab",
  "home test": "swab",
  "test kit": "swab",
  "test stick": "swab",
  "test swab": "swab",
  "swab test": "swab",
  "a swab": "swab",
};

const AT_LAYER: readonly TokenType[] = [Token.Comma, Token.NumberToken, Token.Word];

export class ExistingParser extends LabelParser {
  protected readonly existing = this.line(
    (): Value<"existing"> => ({ form: "existing", layers: [] }),
    (line) => {
      const layers: Draft<tree.ExistingLayer>[] = [];
      line.layers = layers;
      if (this.at(Token.As) && this.peek(2).type === Token.Left) {
        this.asLeftBy(line);
        return;
      }
      if (!this.atValue()) {
        throw this.mismatch("what is on it");
      }
      this.existingItem(layers);
      this.many(
        () => this.isNext(Token.Comma, Token.NumberToken),
        () => {
          if (this.at(Token.NumberToken)) {
            // `white paint 2 coats`
            const at = endOf(this.peek(0));
            this.respell({ start: at, end: at }, ",");
          } else {
            this.commaBefore();
          }
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
      this.take(Token.As);
      this.take(Token.Left);
      this.take(Token.By, "`by` and a job");
      draft.job = this.nameOf(this.take(Token.Word, "a job"));
    });
  }

  protected readonly existingItem = this.part(AT_LAYER, (layers: Draft<tree.ExistingLayer>[]): void => {
    if (this.existingState(layers) || this.twoLayers(layers) || this.coatsOf(layers)) {
      return;
    }
    // Some kinds begin with a number: `2K polyurethane`.
    const spelt = this.speltWords() ?? this.colouredOld(layers);
    if (spelt === "read") {
      return;
    }
    const inWords = this.at(Token.Coats, 2) ? NUMBER_WORDS[this.peek(1).text.toLowerCase()] : undefined;
    if (spelt === undefined && inWords !== undefined) {
      // `two coats`
      const { span } = make.makeName(this.take(Token.Word));
      this.respell(span, String(inWords));
      this.skip(1);
      this.keepCoats(
        layers,
        { kind: "number", text: String(inWords), value: inWords, span },
        endOf(this.peek(0)),
      );
    } else if (spelt === undefined && this.at(Token.NumberToken)) {
      const coats = this.take(Token.NumberToken);
      const word = this.take(Token.Coats, "`coats` after their number");
      this.keepCoats(layers, make.makeNumber(coats), endOf(word));
    } else {
      const material = spelt ?? make.makeWords(this.wordRun("a layer"));
      layers.push({ material, span: material.span });
    }
    if (this.at(Token.StringToken) && layers.length > 0) {
      layers.at(-1)!.state = make.makeTitle(this.take(Token.StringToken));
    }
    if (this.at(Token.By)) {
      layers.pop();
      throw this.refused(testedBy({ start: this.peek(1).start, end: endOf(this.peek(2)) }));
    }
    this.endOfPart(undefined, (next) => next === Token.NumberToken);
  });

  /** `wax over shellac`, `stain and lacquer`, `walnut stain under shellac`: two layers, which the plain form has from the wood up. */
  private twoLayers(layers: Draft<tree.ExistingLayer>[]): boolean {
    const text = this.restOfPart();
    const said = TWO_LAYERS.exec(text);
    // `oil with three parts of varnish` is one.
    if (!said || / of /u.test(text) || this.speltLength() === text.split(" ").length) {
      return false;
    }
    const [, first, joint, second] = said;
    const span = this.takeText(text);
    if (span === undefined) {
      return false;
    }
    const order = /^(?:over|on top of|on)$/iu.test(joint!) ? [second!, first!] : [first!, second!];
    const plain = order.map((words) => WORD_SPELLINGS.get(this.keyword)?.get(keyOf(words)) ?? words);
    this.respell(span, plain.join(", "));
    layers.push(...plain.map((words) => ({ material: wordsOf(words, span), span })));
    this.endOfPart(undefined, (next) => next === Token.NumberToken);
    return true;
  }

  /** How many words the longest kind that begins here has. */
  private speltLength(): number {
    const words = this.restOfPart().split(" ");
    for (let length = words.length; length > 0; length -= 1) {
      if (WORD_SPELLINGS.get(this.keyword)?.has(keyOf(words.slice(0, length).join(" ")))) return length;
    }
    return 0;
  }

  /** `3 coats of paint`, `several coats of paint`: the coats stand behind in the plain form, or in words. */
  private coatsOf(layers: Draft<tree.ExistingLayer>[]): boolean {
    const said = COATS_OF.exec(this.restOfPart());
    const span = said && this.takeText(said[0]);
    if (!said || !span) {
      return false;
    }
    const [, count, many, words] = said;
    const plain = WORD_SPELLINGS.get(this.keyword)?.get(keyOf(words!)) ?? words!;
    const layer: Draft<tree.ExistingLayer> = { material: wordsOf(plain, span), span };
    if (count === undefined) {
      const value = `${many} coats`;
      this.respell(span, `${plain} "${value}"`);
      layer.state = { kind: "title", value, span };
    } else {
      this.respell(span, `${plain}, ${count} coats`);
      layer.coats = { kind: "number", text: count, value: Number(count), span };
    }
    layers.push(layer);
    this.endOfPart(undefined, (next) => next === Token.NumberToken);
    return true;
  }

  /** `shellac, worn`, `alkyd paint, chipping`: what state the layer before is in, which the plain form quotes. */
  protected existingState(layers: Draft<tree.ExistingLayer>[]): boolean {
    const layer = layers.at(-1);
    const text = this.restOfPart();
    const comma = this.peek(0);
    const isOpen = layer !== undefined && /^unknown|^bare$/u.test(layer.material.text);
    const isState =
      STATE.test(text) || TOLD.test(text) || IS_NO_KIND.test(text) || (isOpen && PERHAPS.test(text));
    if (layer === undefined || comma.type !== Token.Comma || !isState) {
      return false;
    }
    const span = this.takeText(text);
    if (span === undefined) {
      return false;
    }
    const before = layer.state;
    // `2 to 3 coats "brown"`
    const behind = this.at(Token.StringToken)
      ? `, ${make.makeTitle(this.take(Token.StringToken)).value}`
      : "";
    const value = (before === undefined ? text : `${before.value}, ${text}`) + behind;
    const start = before?.span.start ?? comma.start;
    if (before !== undefined) {
      this.dropRespellings(start);
    }
    const isApart = before !== undefined && before.span.start < before.span.end;
    const end = endOf(this.peek(0));
    this.respell(
      { start, end },
      `${isApart ? "" : " "}"${value.replaceAll("\\", "\\\\").replaceAll('"', '\\"')}"`,
    );
    layer.state = { kind: "title", value, span: { start, end } };
    this.endOfPart(undefined, (next) => next === Token.NumberToken);
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
    this.endOfPart(undefined, (next) => next === Token.NumberToken);
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

  /** `found by laboratory 6,000 ppm` */
  private leadContent(): void {
    const said = LEAD_CONTENT.exec(this.rest());
    const span = said && this.takeText(said[0]);
    if (said && span) {
      this.respell(span, "");
      this.saidBefore = said[0];
    }
  }

  protected keepCoats(layers: Draft<tree.ExistingLayer>[], coats: tree.NumberLiteral, end: number): void {
    const layer = layers.at(-1);
    if (layer === undefined) {
      const message = gist(
        (suchAs) => t`expected a layer before the number of its coats${suchAs("alkyd paint, 2 coats")}`,
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
      const said = this.spelling(RESULTS);
      line.result = said ?? make.makeName(this.take(Token.Word, "`none_found`, `found` or `not_tested`"));
      if (this.at(Token.End) || this.isWordsBehind() || line.result.text === "not_tested") {
        return;
      }
      const share = LEAD_SHARE.exec(this.rest());
      if (share) {
        const span = this.takeText(share[0].trimEnd())!;
        this.respell(span, "");
        this.saidBefore = share[0].trimEnd();
      }
      this.take(Token.By, "`by` and the method of the test");
      line.method =
        this.spelling(LEAD_TESTS) ?? make.makeName(this.take(Token.Word, "the method of the test"));
      this.leadContent();
      if (this.at(Token.End) || this.isWordsBehind()) {
        return;
      }
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
