/** The rules for what follows the commas of steps and layers, each tail by itself. */
import { endOf } from "./lexer.ts";
import { lossByName, outsourced, thinnedBy } from "./line-problems.ts";
import { type Draft, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { valueText } from "./parser-parts.ts";
import { quoted, StepParser } from "./parser-steps.ts";
import { IF_NEEDED } from "./spellings.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import { t } from "./translate.ts";
import type * as tree from "./tree.ts";
import { plainUnit } from "./units.ts";
import { TAILS } from "./vocabulary.ts";
import { SHEENS_SAID } from "./word-spellings.ts";

export type Owner = "step" | "layer";
export type BareTail = "thin" | "mist" | "full" | "flooded";
type OwnTail =
  | "if"
  | "only"
  | "passes"
  | "flash"
  | "sheen"
  | "costs"
  | "leave"
  | "transfer"
  | "wet_on_wet"
  | "buffed"
  | "said";
export type TailOf<K> = Draft<Extract<tree.Tail, { readonly kind: K }>>;

export class TailParser extends StepParser {
  /** `"with the 1.8 mm tip"`, `within 30 min`, `no oil`: words about the line, which the plain form quotes. */
  protected saidTail(tails: tree.Tail[]): boolean {
    if (this.at(Token.StringToken)) {
      const what = make.makeTitle(this.take(Token.StringToken));
      tails.push(saidOf(what));
      return true;
    }
    const text = this.restOfPart();
    return SAID.test(text) && this.saidText(tails, text);
  }

  protected saidText(tails: tree.Tail[], text: string): boolean {
    const span = this.takeText(text);
    if (span === undefined) {
      return false;
    }
    this.respell(span, quoted(text));
    tails.push(saidOf({ kind: "title", value: text, span }));
    return true;
  }

  /** `by rubber` on a step. */
  protected saidWords(tails: tree.Tail[]): void {
    if (/^by (?:an? |the )?(?:contractor|others|another|somebody|someone)/u.test(this.restOfPart())) {
      throw this.refused(outsourced(this.context(), this.peek(1)));
    }
    if (!this.saidText(tails, this.restOfPart())) {
      throw this.mismatch(() => tailNames("step"));
    }
  }

  /** `40 min each`, `1.5 h` of sanding: nothing is left to act there, so it is how long the hands take. */
  protected handTime(tails: tree.Tail[], verb: string | undefined): boolean {
    if (verb === undefined || !BY_HAND_ALONE.has(verb) || !this.isTimeNext()) {
      return false;
    }
    const { start } = this.peek(1);
    const at = { start, end: start };
    this.respell(at, "takes");
    const time = this.value("a time");
    tails.push({ kind: "takes", keyword: { kind: "name", text: "takes", span: at }, time, span: time.span });
    return true;
  }

  /** `leave 30 min`, `leave on for 20 min`, `60 min` of clamping, `45 min under film` */
  protected leaveTail(tails: tree.Tail[]): boolean {
    const { start } = this.peek(1);
    const night = this.longestIn(NIGHTS);
    if (night !== undefined) {
      this.skip(night.length);
      const { span } = night;
      const number: tree.NumberLiteral = { kind: "number", text: "12", value: 12, span };
      const unit: tree.Name = { kind: "name", text: "h", span };
      this.respell(span, `leave 12 h, "overnight"`);
      const leave: tree.Name = { kind: "name", text: "leave", span: { start, end: start } };
      tails.push({
        kind: "leave",
        keyword: leave,
        time: { kind: "quantity", parts: [{ number, unit }], span },
        span,
      });
      tails.push(saidOf({ kind: "title", value: "overnight", span }));
      return true;
    }
    const found = this.longestIn(LEAVE_WORDS);
    const after = found && this.peek(found.length + 1);
    const isTime =
      after?.type === Token.NumberToken || (after !== undefined && this.at(Token.Word, found!.length + 1));
    if (found === undefined ? !this.isTimeNext() : !isTime) {
      return false;
    }
    this.skip(found?.length ?? 0);
    if (found === undefined) {
      this.respell({ start, end: start }, "leave");
    } else if (found.written !== "leave") {
      this.respell(found.span, "leave");
    }
    const keyword: tree.Name = { kind: "name", text: "leave", span: found?.span ?? { start, end: start } };
    const time = this.value("a time");
    const end = endOf(this.peek(0));
    tails.push({ kind: "leave", keyword, time, span: { start, end } });
    const words = this.restOfPart();
    if (LEFT_HOW.test(words)) {
      this.respell({ start: end, end }, ",");
      this.saidText(tails, words);
    }
    return true;
  }

  /** `buffed after 20 min`, `buff off after 30 min with a horsehair brush` */
  protected buffed(tails: tree.Tail[]): boolean {
    const words = BUFFED.exec(this.restOfPart());
    const span = words ? this.takeText(words[0]) : undefined;
    if (!words || span === undefined) {
      return false;
    }
    const isAfter = words[1] !== undefined;
    const plain = isAfter ? "buffed after" : "buffed";
    if (words[0] !== plain) {
      this.respell(span, plain);
    }
    this.useExample(TAILS.buffed!.example);
    const draft: TailOf<"buffed"> = { kind: "buffed", keyword: { kind: "name", text: "buffed", span }, span };
    tails.push(draft as tree.Tail);
    if (isAfter) {
      draft.after = this.value("a time");
    }
    const end = endOf(this.peek(0));
    draft.span = { start: span.start, end };
    const how = this.restOfPart();
    if (BUFFED_HOW.test(how)) {
      this.respell({ start: end, end }, ",");
      this.saidText(tails, how);
    }
    return true;
  }

  /** `excess wiped off after 15 to 20 min`, `wipe off with a rag`, `wiped dry at once` */
  protected wipedInWords(tails: tree.Tail[]): boolean {
    const text = this.restOfPart();
    const said = WIPED.exec(text);
    if (!said || IS_PLAIN_WIPED.test(text)) {
      return false;
    }
    const span = this.takeText(text);
    if (span === undefined) {
      return false;
    }
    const time = said[1];
    const keyword: tree.Name = { kind: "name", text: "wiped", span };
    const words = text.replace(WIPED_PLAINLY, "").trim();
    const after = time === undefined ? undefined : lastTime(time, span);
    const plain = after === undefined ? "wiped off" : `wiped off after ${valueText(after)}`;
    const isSaid = words !== "" && words !== `after ${after && valueText(after)}`;
    this.respell(span, isSaid ? `${plain}, ${quoted(text)}` : plain);
    tails.push({ kind: "wiped", keyword, ...(after && { after }), span });
    if (isSaid) {
      tails.push(saidOf({ kind: "title", value: text, span }));
    }
    return true;
  }

  /** `thinned with 10 % water`, `thinned half and half with alcohol`, `thinned with a little water` */
  protected thinnedInWords(tails: tree.Tail[]): boolean {
    const text = this.restOfPart();
    const said = THINNED.exec(text);
    if (!said?.groups) {
      return false;
    }
    const { share, half, thinner, behind } = said.groups;
    const name = thinner ?? behind;
    const span = this.takeText(text);
    if (span === undefined) {
      return false;
    }
    const a = half === undefined ? Number(share) : 1;
    const parts = Math.round(10_000 / a) / 100;
    const [first, second] = half === undefined ? [String(parts), "1"] : ["1", "1"];
    if (share === undefined && half === undefined) {
      this.respell(span, quoted(text));
      tails.push(saidOf({ kind: "title", value: text, span }));
      return true;
    }
    const number = (figure: string): tree.NumberLiteral => ({
      kind: "number",
      text: figure,
      value: Number(figure),
      span,
    });
    const ratio: tree.Ratio = { kind: "ratio", a: number(first!), b: number(second!), span };
    const keyword: tree.Name = { kind: "name", text: "thinned", span };
    this.respell(span, `thinned ${first}:${second}${name === undefined ? "" : ` with ${name}`}`);
    tails.push({
      kind: "thinned",
      keyword,
      ratio,
      ...(name === undefined ? {} : { thinner: { kind: "name" as const, text: name, span } }),
      span,
    });
    return true;
  }

  /** `as thin as possible`, `wet sand 400`, `by hand`: what begins like a tail and is none. */
  protected ownAsTail(tails: tree.Tail[]): boolean {
    const text = this.restOfPart();
    return OWN_AS_TAIL.test(text) && this.saidText(tails, text);
  }

  /** `wet on wet 20 min`, `wet on wet after 30 min` */
  protected wetOnWet(tails: tree.Tail[]): boolean {
    const { start } = this.peek(1);
    const words = /^(?:wet[ _-]on[ _-]wet)(?: (?:after|with|flash|in))?(?= |$)/iu.exec(this.restOfPart());
    const span = words ? this.takeText(words[0]) : undefined;
    if (!words || span === undefined) {
      return false;
    }
    if (words[0] !== "wet_on_wet") {
      this.respell(span, "wet_on_wet");
    }
    const keyword: tree.Name = { kind: "name", text: "wet_on_wet", span };
    const draft: TailOf<"wet_on_wet"> = { kind: "wet_on_wet", keyword, span };
    tails.push(draft as tree.Tail);
    if (this.atValue()) {
      draft.time = this.value("a time");
      this.leaveOut(FLASH_BEHIND);
    }
    draft.span = { start, end: endOf(this.peek(0)) };
    return true;
  }

  /** `transfer 65 %`; `loss 33 %` is what does not land. */
  protected transferTail(tails: tree.Tail[]): boolean {
    const { start } = this.peek(1);
    const found = this.longestIn(TRANSFER_WORDS);
    if (
      found === undefined ||
      !(this.at(Token.NumberToken, found.length + 1) || this.at(Token.Word, found.length + 1))
    ) {
      return false;
    }
    this.skip(found.length);
    const keyword: tree.Name = { kind: "name", text: "transfer", span: found.span };
    const written = this.value("a share in %");
    const isSign = written.kind === "name" && this.peek(1).text === "%";
    if (isSign) {
      // The parameter is a number of percent.
      this.respell(make.tokenSpan(this.peek(1)), "");
      this.skip(1);
    }
    const isLoss = TRANSFER_WORDS[found.written] === "loss";
    if (isLoss && written.kind === "name") {
      throw this.refused(lossByName(written));
    }
    const share = isLoss ? restOfShare(written) : written;
    const span = { start, end: endOf(this.peek(0)) };
    if (isLoss || found.written !== "transfer") {
      this.dropRespellings(start);
      this.respell(span, `transfer ${valueText(share)}`);
    }
    tails.push({ kind: "transfer", keyword, share, span });
    return true;
  }

  /** `sheen satin`, `sheen 20 %`, `satin` */
  protected sheenTail(tails: tree.Tail[]): boolean {
    const { start } = this.peek(1);
    const isPlain = this.isWordAt("sheen", 1);
    if (!isPlain && this.longestIn(SHEENS_SAID) === undefined) {
      return false;
    }
    const keyword: tree.Name = isPlain
      ? make.makeName(this.take(Token.Word))
      : { kind: "name", text: "sheen", span: { start, end: start } };
    this.useExample(TAILS.sheen!.example);
    const draft: TailOf<"sheen"> = { kind: "sheen", keyword, span: NO_SPAN };
    tails.push(draft as tree.Tail);
    const sheen =
      this.glossUnits() ?? this.spelling(SHEENS_SAID) ?? this.nameOf(this.take(Token.Word, "a sheen"));
    draft.sheen = sheen;
    if (!isPlain) {
      this.dropRespellings(start);
      this.respell({ start, end: sheen.span.end }, `sheen ${sheen.text}`);
      this.leaveOut(SHEEN_WORD);
    }
    draft.span = { start, end: endOf(this.peek(0)) };
    return true;
  }

  /** `costs 6.00` */
  protected costs(tails: tree.Tail[]): void {
    const keyword = make.makeName(this.take(Token.Word));
    this.useExample(TAILS.costs!.example);
    const draft: TailOf<"costs"> = { kind: "costs", keyword, span: keyword.span };
    tails.push(draft as tree.Tail);
    draft.amount = this.sum("an amount of money").amount;
    draft.span = { start: keyword.span.start, end: endOf(this.peek(0)) };
  }

  /** `if needed`, `only where rough` */
  protected optionalTail(owner: Owner, tails: tree.Tail[]): boolean {
    if (owner === "layer" && this.ifNeeded(tails)) {
      return true;
    }
    const isOn =
      this.isWordAt("on", 1) && (this.peek(2).type === Token.StringToken || this.at(Token.NumberToken, 2));
    if (this.isWordAt("only", 1) || isOn) {
      tails.push(this.onlyPart());
      return true;
    }
    const said = ONLY_BEHIND.exec(this.restOfPart());
    if (said === null) {
      return false;
    }
    tails.push(this.onlyBehind(said[0].split(" ").length, said[1]!));
    return true;
  }

  /** `if needed`, `if needed "it still drinks"`, `only if "it still drinks"`, `unless "the first coat covers"` */
  protected ifNeeded(tails: tree.Tail[]): boolean {
    const { start } = this.peek(1);
    const found = this.longestIn(IF_NEEDED);
    const asked = found ?? this.longestIn(IF_SAID);
    if (
      asked === undefined ||
      (found === undefined && this.peek(asked.length + 1).type !== Token.StringToken)
    ) {
      return false;
    }
    this.skip(asked.length);
    const keyword: tree.Name = { kind: "name", text: "if", span: asked.span };
    const said = this.at(Token.StringToken) ? make.makeTitle(this.take(Token.StringToken)) : undefined;
    const span = { start, end: endOf(this.peek(0)) };
    const isUnless = asked.written === "unless";
    const what = said && isUnless ? { ...said, value: `unless ${said.value}` } : said;
    if (isUnless) {
      this.respell(span, `if needed ${quoted(what!.value)}`);
    } else if (asked.written !== "if needed") {
      this.respell(asked.span, "if needed");
    }
    tails.push({ kind: "if", keyword, ...(what && { what }), span });
    return true;
  }

  /** `20 mL`, `30 mL each`: how much a step uses. */
  protected stepAmount(tails: tree.Tail[]): void {
    const at = this.peek(1).start;
    this.respell({ start: at, end: at }, "uses");
    const keyword: tree.Name = { kind: "name", text: "uses", span: { start: at, end: at } };
    const amount = this.value("an amount");
    tails.push({ kind: "uses", keyword, amount, span: { start: at, end: amount.span.end } });
  }

  protected isVolumeOrWeight(): boolean {
    const unit = this.peek(2);
    const group = unit.type === Token.Unit ? Token.unitGroup(unit.text) : undefined;
    return this.at(Token.NumberToken) && (group === "volume" || group === "mass");
  }

  /** `only edges`, `only 20 % "where it is worn"` */
  protected onlyPart(): Extract<tree.Tail, { readonly kind: "only" }> {
    const word = make.makeName(this.take(Token.Word));
    const keyword: tree.Name = { ...word, text: "only" };
    if (word.text !== "only") {
      this.respell(word.span, "only");
    }
    const some = this.someOfAll();
    const share =
      some === undefined && this.at(Token.NumberToken) ? this.quantity("a share or an area") : undefined;
    if (share !== undefined) {
      this.leaveOut(OF);
    }
    const where = this.at(Token.StringToken)
      ? make.makeTitle(this.take(Token.StringToken))
      : this.at(Token.Word)
        ? this.ownWords()
        : undefined;
    if (share === undefined && where === undefined && some === undefined) {
      throw this.mismatch('a share or a text in double quotes, such as `only "edges"`');
    }
    const span = { start: keyword.span.start, end: endOf(this.peek(0)) };
    return {
      kind: "only",
      keyword,
      ...(share && { share }),
      ...(some && { of: some }),
      ...(where && { where }),
      span,
    };
  }

  /** `5 of 18` */
  protected someOfAll(): { readonly some: tree.NumberLiteral; readonly all: tree.NumberLiteral } | undefined {
    if (!(this.at(Token.NumberToken) && this.at(Token.Of, 2) && this.at(Token.NumberToken, 3))) {
      return undefined;
    }
    const some = make.makeNumber(this.take(Token.NumberToken));
    this.take(Token.Of);
    return { some, all: make.makeNumber(this.take(Token.NumberToken)) };
  }

  /** `edges only`, `on the edges only`: so many words, and those that say where. */
  protected onlyBehind(words: number, value: string): Extract<tree.Tail, { readonly kind: "only" }> {
    const { start } = this.peek(1);
    this.skip(words);
    const span = { start, end: endOf(this.peek(0)) };
    this.respell(span, `only "${value}"`);
    const keyword: tree.Name = { kind: "name", text: "only", span: { start, end: start } };
    return { kind: "only", keyword, where: { kind: "title", value, span }, span };
  }

  /** `passes 2`, `2 passes`, `in 2 passes`, `flash 10 min`, `flash off 10 min between passes`, `10 min flash` */
  protected passTail(tails: tree.Tail[]): boolean {
    const part = this.restOfPart();
    const passes = /^(?:(?:in )?(\d+) pass(?:es)?|passes (\d+))$/iu.exec(part);
    const flash = passes ? null : FLASH.exec(part);
    if (!passes && !flash) {
      return false;
    }
    const { start } = this.peek(1);
    const empty = { start, end: start };
    const isPlain = this.peek(2).type === Token.NumberToken && this.peek(1).type !== Token.NumberToken;
    while (!this.at(Token.NumberToken) && !this.at(Token.End)) this.skip(1);
    const value = passes ? this.count() : this.quantity("a time");
    while (!this.at(Token.Comma) && !this.at(Token.End) && this.peek(1).kind === "word") this.skip(1);
    const kind = passes ? "passes" : "flash";
    const span = { start, end: endOf(this.peek(0)) };
    const plain = `${kind} ${valueText(value)}`;
    if (!isPlain || part !== plain) {
      this.dropRespellings(start);
      this.respell(span, plain);
    }
    const keyword: tree.Name = { kind: "name", text: kind, span: empty };
    tails.push(
      passes
        ? { kind: "passes", keyword, count: value, span }
        : { kind: "flash", keyword, time: value, span },
    );
    return true;
  }

  /** A number, whose word behind it is none of its units. */
  protected count(): tree.Quantity {
    const number = make.makeNumber(this.take(Token.NumberToken));
    return { kind: "quantity", parts: [{ number }], span: number.span };
  }

  /** `5 % water`; a range or another order is refused with the right line. */
  protected thinnedShare(tails: tree.Tail[]): boolean {
    const rest = this.restOfPart();
    const said = SHARE_OF_THINNER.exec(rest) ?? THINNER_AND_SHARE.exec(rest);
    if (!said?.groups) {
      return false;
    }
    const { low, high, thinner } = said.groups;
    const { start } = this.peek(1);
    if (low !== undefined || !this.at(Token.NumberToken)) {
      const span = this.takeText(said[0]) ?? make.tokenSpan(this.peek(1));
      const name = thinner === "thinner" || thinner === undefined ? "mineral_spirits" : thinner;
      throw this.refused(thinnedBy(high ?? "", name, span));
    }
    const ratio = this.thinning();
    this.leaveOut(OF);
    const named = this.nameOf(this.take(Token.Word, "a thinner"));
    const span = { start, end: named.span.end };
    const keyword: tree.Name = { kind: "name", text: "thinned", span: { start, end: start } };
    tails.push({ kind: "thinned", keyword, ratio, thinner: named, span });
    this.dropRespellings(start);
    this.respell(span, `thinned ${ratio.a.text}:${ratio.b.text} with ${named.text}`);
    return true;
  }

  protected wetAmount(tails: tree.Tail[]): void {
    const { start } = this.peek(1);
    const { from, to } = this.range("an amount by area");
    const keyword: tree.Name = { kind: "name", text: "wet", span: { start, end: start } };
    const span = { start, end: endOf(this.peek(0)) };
    tails.push({ kind: "wet", keyword, thickness: from, ...(to && { to }), span });
  }

  /** `wiped off`; `wiped` alone could be read as wiped on. */
  protected readonly wiped = this.tailRule("wiped", Token.Wiped, (draft: TailOf<"wiped">) => {
    if (this.isWordAt("off", 1)) {
      this.skip(1);
    } else {
      const end = endOf(this.peek(0));
      this.respell({ start: end, end }, "off");
    }
    if (this.at(Token.After)) {
      this.take(Token.After);
      draft.after = this.value("a time");
    }
  });

  protected readonly thinned = this.tailRule("thinned", Token.Thinned, (draft: TailOf<"thinned">) => {
    draft.ratio =
      this.at(Token.Word) && this.at(Token.With, 2) ? this.nameOf(this.take(Token.Word)) : this.thinning();
    if (draft.ratio.kind === "name" || !this.isPartEnd(1)) {
      this.take(Token.With, "`with` and a thinner");
      draft.thinner = this.nameOf(this.take(Token.Word, "a thinner"));
    }
  });

  protected readonly tinted = this.tailRule("tinted", Token.Tinted, (draft: TailOf<"tinted">) => {
    draft.share = this.value("a share in %");
    this.take(Token.With, "`with` and a tint");
    draft.tint = this.nameOf(this.take(Token.Word, "a tint"));
  });

  protected readonly as = this.tailRule("as", Token.As, (draft: TailOf<"as">) => {
    draft.role = make.makeName(this.take(Token.Word, "`toner`"));
  });

  protected readonly wet = this.tailRule("wet", Token.Wet, (draft: TailOf<"wet">) => {
    this.leaveOut(FILM, Token.NumberToken);
    const { from, to } = this.range("a thickness");
    draft.thickness = from;
    if (to !== undefined) {
      draft.to = to;
    }
  });

  protected readonly takes = this.tailRule("takes", Token.Takes, (draft: TailOf<"takes">) => {
    draft.time = this.value("a time");
  });

  protected readonly uses = this.tailRule("uses", Token.Uses, (draft: TailOf<"uses">) => {
    draft.amount = this.value("an amount");
  });

  protected readonly inOneGo = this.tailRule("together", Token.Together, () => {});

  protected readonly byItself = this.tailRule("apart", Token.Apart, () => {});

  protected tailRule<K extends Exclude<tree.Tail["kind"], BareTail | OwnTail>>(
    kind: K,
    type: TokenType,
    body: (draft: TailOf<K>) => void,
  ) {
    return (tails: tree.Tail[]): void => {
      const draft = { kind, keyword: undefined, span: NO_SPAN } as never as TailOf<K>;
      tails.push(draft as tree.Tail);
      this.spanned(draft as { span: tree.Span }, () => {
        (draft as { keyword: tree.Name }).keyword = make.makeName(this.take(type));
        this.useExample(TAILS[kind]!.example);
        body(draft);
      });
    };
  }
}

export const saidOf = (what: tree.Title): Extract<tree.Tail, { readonly kind: "said" }> => ({
  kind: "said",
  keyword: { kind: "name", text: "said", span: { start: what.span.start, end: what.span.start } },
  what,
  span: what.span,
});

/** `loss 33 %` as what lands. */
function restOfShare(value: tree.Value): tree.Value {
  if (value.kind === "name") {
    return value;
  }
  const parts = value.parts.map(({ number, unit }) => {
    const rest = Math.round((100 - number.value) * 100) / 100;
    return { number: { ...number, text: String(rest), value: rest }, ...(unit && { unit }) };
  });
  return { ...value, parts };
}

/** The later of two times, `15 to 20 min`. */
function lastTime(text: string, span: tree.Span): tree.Quantity {
  const [, figure, unit] = /^(?:.{0,12}(?:-|to) ?)?(\d{1,4}(?:\.\d{1,2})?) ?(\p{L}{1,8})$/u.exec(text)!;
  return {
    kind: "quantity",
    parts: [
      {
        number: { kind: "number", text: figure!, value: Number(figure), span },
        unit: { kind: "name", text: plainUnit(unit!) ?? unit!, span },
      },
    ],
    span,
  };
}

const WIPING =
  "(?:then )?(?:(?:the )?(?:excess|surplus|rest) )?(?:wiped?|wiping|taken|rubbed)?(?: (?:the )?(?:excess|surplus|rest))? ?(?:off|away|dry|down)";
const WIPED = new RegExp(
  `^${WIPING}(?: (?:(?:after|in) ((?:\\d+(?:\\.\\d+)? ?(?:min|mins|minutes|h|hours?)? ?(?:-|to) ?)?\\d+(?:\\.\\d+)? ?(?:min|mins|minutes|h|hours?))|at once|immediately|straight away|right away|with [^\\d,]{2,40}|along [^\\d,]{2,40}|across [^\\d,]{2,40}|thoroughly|completely|well|back))?$`,
  "iu",
);
const IS_PLAIN_WIPED = /^wiped(?: off)?(?: after \d+(?:\.\d+)? ?\p{L}+)?$/iu;
const WIPED_PLAINLY = /^wiped? off/iu;
const THINNED =
  /^(?:thinned|diluted|thin|dilute) (?:(?:with|by) (?<share>\d+(?:\.\d+)?) ?% (?:of )?(?<thinner>[\p{L}_][\p{L}\d_]*)|(?<half>half and half|by half|fifty fifty)(?: with (?<behind>[\p{L}_][\p{L}\d_]*))?|with (?:a little|some|a drop of|a few drops of) [^\d,]{2,40}|(?:a little|slightly|as needed|if needed)|to .{2,40})$/iu;
const OWN_AS_TAIL =
  /^(?:as .{2,40} as .{2,40}|wet[ -]?sand(?:ed|ing)?(?: .{1,40})?|by (?:hand|dipping|dip|pouring|trowel|spatula|syringe|knife|fingers?|immersion|needle)(?: .{1,30})?)$/iu;

/** A night is left to act for 12 h, as on a label. */
const NIGHTS: Readonly<Record<string, true>> = {
  overnight: true,
  "over night": true,
  "leave overnight": true,
  "left overnight": true,
  "for one night": true,
  "clamp overnight": true,
  "clamped overnight": true,
  "in clamps overnight": true,
  "let dry overnight": true,
  "dry overnight": true,
};

const LEAVE_WORDS: Readonly<Record<string, true>> = Object.fromEntries(
  [
    "leave",
    "leave on",
    "leave for",
    "leave on for",
    "leave it",
    "leave it for",
    "leave it on for",
    "left",
    "left on",
    "left for",
    "let act",
    "let stand",
    "let it act",
    "let it act for",
    "let it stand",
    "let it stand for",
    "let soak",
    "let it soak",
    "dwell",
    "dwell time",
    "soak",
    "soak for",
    "stand",
    "stand for",
    "wait",
    "for",
    "clamp",
    "clamp for",
    "clamped",
    "clamped for",
    "cramp",
    "in clamps",
    "in the clamps",
    "in the clamps for",
    "scrape off after",
    "scraped off after",
    "lifted off after",
    "taken off after",
    "washed off after",
    "rinsed off after",
  ].map((words) => [words, true]),
);

const BUFFED = /^buff(?:ed)?(?: (?:off|out|up))?( (?:after|in))?(?= |$)/iu;
/** `with a horsehair brush`, `by cloth`: how a coat is buffed. */
const BUFFED_HOW = /^(?:with|by) \p{L}[\p{L}\d _-]{1,40}$/iu;
/** `under film`, `covered with foil`: how it is left. */
const LEFT_HOW = /^(?:under|beneath|covered|wrapped)(?: \p{L}{1,20}){0,4}$/iu;
/** Verbs of work with the hands alone. */
const BY_HAND_ALONE: ReadonlySet<string> = new Set([
  "sand",
  "scuff",
  "scrape",
  "dust",
  "buff",
  "mask",
  "unmask",
  "remove",
  "refit",
  "distress",
  "turn",
  "inspect",
]);

const TRANSFER_WORDS: Readonly<Record<string, "transfer" | "loss">> = {
  transfer: "transfer",
  "transfer efficiency": "transfer",
  efficiency: "transfer",
  loss: "loss",
  losses: "loss",
  lost: "loss",
  overspray: "loss",
  waste: "loss",
};

const FLASH_BEHIND = phrases("flash", "flash off", "between", "between coats");

const FILM = phrases("film");

/** What is said of a line in words that can be nothing else; who goes without protection must say so in quotes. */
const SAID =
  /^(?:within \d[^,]{0,20}|no (?!comma|mask|glove|goggles|glasses|respirator|ventilation|extraction|fan|fresh|ignition)\p{L}{2,20}|(?:very |quite )?(?:lightly|gently|evenly|sparingly|quickly|slowly|carefully|generously|wetly)|(?:with|across|along) the grain|one (?:side|face|surface) at a time|both (?:sides|faces)|top to bottom|spirited off|off the gun|by eye|as little as it takes|until it stops soaking in|until it is even|wiped (?:even|level)|turned(?: over)?(?: after \d[^,]{0,15})?)$/iu;

/** With words in quotes behind it, which say when. */
const IF_SAID: Readonly<Record<string, true>> = { if: true, "only if": true, unless: true };

const SHEEN_WORD = phrases("sheen", "finish");

/** `edges only`, `on the edges only` */
const ONLY_BEHIND = /^(?:on )?(?:the )?(\p{L}{1,30}(?: \p{L}{1,30}){0,5}) only$/u;

/** `flash 10 min`, `flash-off 10 min between passes`, `10 min flash`, `10 min between passes` */
const FLASH =
  /^(?:flash(?:[- ]off)? (?:for |after )?\d[^,]{0,30}?(?: between (?:the )?passes)?|\d[^,]{0,15}? (?:flash(?:[- ]off)?|between (?:the )?passes))$/iu;

const SHARE_OF_THINNER =
  /^(?:(?<low>\d+(?:\.\d+)?) ?(?:-|–|to) ?)?(?<high>\d+(?:\.\d+)?) ?% (?:of )?(?<thinner>\p{L}[\p{L}\d_]*)$/u;

const THINNER_AND_SHARE =
  /^(?<thinner>\p{L}[\p{L}\d_]*) (?:(?<low>\d+(?:\.\d+)?) ?(?:-|–|to) ?)?(?<high>\d+(?:\.\d+)?) ?%$/u;

/** The words of the tails that may stand on a line. */
export function tailNames(owner: Owner): string {
  const names = Object.keys(TAILS).filter((word) => TAILS[word]!.on === "both" || TAILS[word]!.on === owner);
  const quoted = names.map((name) => `\`${name}\``);
  return t`${quoted.slice(0, -1).join(", ")} or ${quoted.at(-1)!}`;
}

const OF = phrases("of");
