/** The rules for steps with their tails, and layers with what is done between their coats. */
import { gist } from "./gist.ts";
import { endOf } from "./lexer.ts";
import {
  buffedAfter,
  lossByName,
  onSomePieces,
  outsourced,
  thinnedBy,
  waitOnLayer,
  wordsUnquoted,
} from "./line-problems.ts";
import { type Draft, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { lookUp } from "./look-up.ts";
import { valueText } from "./parser-parts.ts";
import { AT_TAIL, type Line, quoted, type StepLine, StepParser } from "./parser-steps.ts";
import { IF_NEEDED, METHOD_SPELLINGS, TOOL_METHODS } from "./spellings.ts";
import type { TokenType } from "./tokens.ts";
import * as t from "./tokens.ts";
import type * as tree from "./tree.ts";
import { plainUnit } from "./units.ts";
import { METHODS, TAILS } from "./vocabulary.ts";
import { SHEENS_SAID } from "./word-spellings.ts";

type LayerLine = Line<tree.LayerStatement>;
type Owner = "step" | "layer";
type BareTail = "thin" | "mist" | "full" | "flooded";
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
  | "said";
type TailOf<K> = Draft<Extract<tree.Tail, { readonly kind: K }>>;

export class LayerParser extends StepParser {
  // -------------------------------------------------------------------------------------------------------------
  // Steps

  readonly step = this.line(
    (): StepLine => ({ grits: [], tails: [] }),
    (line) => {
      const tails: tree.Tail[] = [];
      line.tails = tails;
      this.stepMain(line);
      this.tailList("step", tails);
    },
  );

  // -------------------------------------------------------------------------------------------------------------
  // Layers and tails

  readonly layer = this.line(
    (): LayerLine => ({ tails: [] }),
    (line) => {
      const tails: tree.Tail[] = [];
      line.tails = tails;
      this.layerMain(line, tails);
      this.tailList("layer", tails, line);
    },
  );

  protected readonly layerMain = this.part(AT_TAIL, (line: LayerLine, tails: tree.Tail[]): void => {
    const { start } = this.peek(1);
    const laid = this.laidFirst();
    if (this.at(t.NumberToken)) {
      this.coatsFirst(line);
    } else {
      line.material = this.nameOf(this.take(t.Word, "a material"));
      if (this.at(t.X)) {
        this.take(t.X);
        this.coats(line);
        this.leaveOut(COATS_BEHIND);
      } else if (this.at(t.NumberToken) && !this.isAmount()) {
        this.coatsBehind(line);
      }
    }
    if (laid !== undefined) {
      tails.push(laid);
      const plain = [line.material!.text, coatsText(line)].filter((part) => part !== "").join(" ");
      this.dropRespellings(start);
      this.respell({ start, end: endOf(this.peek(0)) }, `${plain}, ${laid.kind}`);
    }
    if (!this.isTailWithoutComma() && !this.at(t.StringToken)) {
      this.endOfPart(undefined, (next) => t.TAIL_TYPES.has(next));
    }
  });

  /** `mist coat of lacquer`, `thin shellac`: the plain form has it as a tail. */
  private laidFirst(): Extract<tree.Tail, { readonly kind: BareTail }> | undefined {
    const kind = t.BARE_TAILS.get(this.peek(1).type);
    const ahead = this.at(t.Coats, 2) ? (this.at(t.Of, 3) ? 4 : 3) : 2;
    const { type } = this.peek(ahead);
    const isMaterial = this.at(t.Word, ahead) && !t.TAIL_TYPES.has(type) && !t.BARE_TAILS.has(type);
    if (kind === undefined || !isMaterial) {
      return undefined;
    }
    const { span } = make.makeName(this.take(t.Word));
    this.skip(ahead - 2);
    return { kind, keyword: { kind: "name", text: kind, span }, span };
  }

  /** `clear mist coat`, `oil 30 g/m2`: what can be no name here. */
  private isTailWithoutComma(): boolean {
    return t.BARE_TAILS.has(this.peek(1).type) || this.isAmount();
  }

  /** `3`, `2 to 3`, `2-3`, `2 or 3`, `6 to 8 sessions` */
  private coats(line: LayerLine): void {
    const { start } = this.peek(1);
    const { from, to } = this.range("a number of coats");
    line.coats = from;
    if (to === undefined && from.kind === "name") {
      this.coatsMore(line);
    }
    if (to !== undefined) {
      line.coatsTo = to;
    } else if (this.isWordAt("or", 1) && this.at(t.NumberToken, 2)) {
      this.respell(make.tokenSpan(this.take(t.Word)), "to");
      line.coatsTo = this.value("a number of coats");
    }
    this.sessions(line, start);
  }

  /** `coats - 1`, `coats + 1`: the other coats, where the first or the last has a line of its own. */
  private coatsMore(line: LayerLine): void {
    const said = /^(-|\+) ?(\d{1,2})(?![\d.:])/u.exec(this.rest());
    const span = said ? this.takeText(said[0]) : undefined;
    if (!said || span === undefined) {
      return;
    }
    const sign = said[1]!;
    if (said[0] !== `${sign} ${said[2]}`) {
      this.respell(span, `${sign} ${said[2]}`);
    }
    const value = Number(`${sign}${said[2]}`);
    line.coatsMore = { kind: "number", text: `${sign} ${said[2]}`, value, span };
  }

  /** The word behind the number of coats, which is read as its unit. */
  private sessions(line: LayerLine, start: number): void {
    const last = line.coatsTo ?? line.coats;
    const unit = last?.kind === "quantity" ? last.parts[0]?.unit : undefined;
    if (unit === undefined || !SESSIONS.has(unit.text)) {
      return;
    }
    line.sessions = { ...unit, text: "sessions" };
    line.coats = withoutUnit(line.coats);
    if (line.coatsTo !== undefined) {
      line.coatsTo = withoutUnit(line.coatsTo);
    }
    this.dropRespellings(start);
    this.respell({ start, end: endOf(this.peek(0)) }, coatsText(line).slice("x ".length));
  }

  /** `2 x clear`, `2 coats clear`, `2 coats of clear` */
  private coatsFirst(line: LayerLine): void {
    const { start } = this.peek(1);
    const isRead = this.apart(() => {
      this.coats(line);
      if (this.at(t.X)) {
        this.take(t.X);
      } else {
        if (line.sessions === undefined) {
          this.take(t.Coats, "`x` and a material");
        }
        this.leaveOut(OF);
      }
    });
    if (isRead) {
      line.material = this.nameOf(this.take(t.Word, "a material"));
      this.dropRespellings(start);
      this.respell({ start, end: line.material.span.end }, `${line.material.text} ${coatsText(line)}`);
    } else {
      throw this.mismatch("a material");
    }
  }

  /** `clear 2 coats` */
  private coatsBehind(line: LayerLine): void {
    const { start } = this.peek(1);
    if (this.apart(() => this.coatsWithWord(line))) {
      this.respell({ start, end: endOf(this.peek(0)) }, coatsText(line));
    }
  }

  private coatsWithWord(line: LayerLine): void {
    this.coats(line);
    if (line.sessions === undefined) {
      this.take(t.Coats, "`x` and a number of coats");
    }
  }

  private tailList(owner: Owner, tails: tree.Tail[], layer?: LayerLine): void {
    this.many(
      () =>
        this.at(t.Comma) ||
        t.TAIL_TYPES.has(this.peek(1).type) ||
        this.at(t.StringToken) ||
        (layer === undefined && this.isSaidNext()) ||
        (layer !== undefined && this.isTailWithoutComma()),
      () => {
        const isOpen = this.at(t.StringToken) || (layer === undefined && this.isSaidNext());
        if (isOpen || (layer !== undefined && this.isTailWithoutComma())) {
          const at = endOf(this.peek(0));
          this.respell({ start: at, end: at }, ",");
        } else {
          this.commaBefore();
        }
        this.tail(owner, tails, layer);
      },
    );
  }

  protected readonly tail = this.part(
    AT_TAIL,
    (owner: Owner, tails: tree.Tail[], layer: LayerLine | undefined): void => {
      this.useExample(undefined);
      const tail = this.tailsByType.get(this.peek(1).type);
      const bare = owner === "layer" ? t.BARE_TAILS.get(this.peek(1).type) : undefined;
      if (owner === "step" && this.at(t.By)) {
        this.saidWords(tails);
      } else if (this.saidTail(tails) || (owner === "step" && this.leaveTail(tails))) {
        // Read.
      } else if (owner === "layer" && (this.wetOnWet(tails) || this.transferTail(tails))) {
        // Read.
      } else if (tail !== undefined) {
        tail(tails);
      } else if (owner === "layer" && this.sheenTail(tails)) {
        // Read.
      } else if (owner === "step" && this.isWordAt("costs", 1)) {
        this.costs(tails);
      } else if (owner === "step" && this.at(t.NumberToken) && this.at(t.Of, 2)) {
        const first = this.peek(1);
        this.skip(this.at(t.NumberToken, 3) ? 3 : 2);
        this.skip(this.at(t.Word) ? 1 : 0);
        throw this.refused(onSomePieces(first, this.peek(0)));
      } else if (owner === "step" && this.isVolumeOrWeight()) {
        this.stepAmount(tails);
      } else if (bare !== undefined) {
        const keyword = make.makeName(this.take(t.Word));
        tails.push({ kind: bare, keyword, span: keyword.span });
        this.leaveOut(COATS_BEHIND);
      } else if (this.optionalTail(owner, tails) || (layer !== undefined && this.passTail(tails))) {
        // Read.
      } else if (layer !== undefined && this.at(t.BetweenWord)) {
        this.between(layer);
      } else if (layer !== undefined && this.isBetweenSaidLast()) {
        this.betweenLast(layer);
      } else if (layer !== undefined && this.isAmount()) {
        const at = this.peek(1).start;
        this.respell({ start: at, end: at }, "wet");
        this.wetAmount(tails);
      } else if (layer !== undefined && this.thinnedShare(tails)) {
        // Read.
      } else if (layer !== undefined && (this.at(t.X) || this.isCoatsNext())) {
        this.lateCoats(layer);
      } else if (layer !== undefined && this.isWordAt("wait", 1)) {
        this.waitOnLine(layer);
      } else {
        throw this.unknownTail(owner);
      }
      if (owner === "step") {
        this.leaveOut(EACH);
      }
      this.checkOwner(owner, tails.at(-1));
      this.endOfPart(undefined, (next) => t.TAIL_TYPES.has(next));
    },
  );

  /** To be thrown: what stands here is no tail; as words in quotes it may be one. */
  private unknownTail(owner: Owner): Error {
    const text = this.restOfPart();
    const buffed = /^buff(?:ed)?(?: off| out)? (?:after|in) (\d[^,]{0,20})$/u.exec(text);
    const isPlain = /^[\p{L}\d][^"\\{}]{0,59}$/u.test(text) && /[ ]/u.test(text);
    const span = buffed || isPlain ? this.takeText(text) : undefined;
    if (span === undefined) {
      return this.mismatch(tailNames(owner));
    }
    return this.refused(
      buffed ? buffedAfter(span, buffed[1]!.trim()) : wordsUnquoted(tailNames(owner), text, span),
    );
  }

  /** Whether a number of coats can follow: `2 coats`, `2 to 3 coats`, `2 x`. */
  private isCoatsNext(): boolean {
    return /^\d+(?:\.\d+)? ?(?:(?:-|–|to|or) ?\d+ ?)?(?:coats?|sessions?|x|$)/iu.test(this.restOfPart());
  }

  /** `"with the 1.8 mm tip"`, `within 30 min`, `no oil`: words about the line, which the plain form quotes. */
  private saidTail(tails: tree.Tail[]): boolean {
    if (this.at(t.StringToken)) {
      const what = make.makeTitle(this.take(t.StringToken));
      tails.push(saidOf(what));
      return true;
    }
    const text = this.restOfPart();
    return SAID.test(text) && this.saidText(tails, text);
  }

  private saidText(tails: tree.Tail[], text: string): boolean {
    const span = this.takeText(text);
    if (span === undefined) {
      return false;
    }
    this.respell(span, quoted(text));
    tails.push(saidOf({ kind: "title", value: text, span }));
    return true;
  }

  /** `by rubber` on a step. */
  private saidWords(tails: tree.Tail[]): void {
    if (/^by (?:an? |the )?(?:contractor|others|another|somebody|someone)/u.test(this.restOfPart())) {
      throw this.refused(outsourced(this.context(), this.peek(1)));
    }
    if (!this.saidText(tails, this.restOfPart())) {
      throw this.mismatch(tailNames("step"));
    }
  }

  /** `leave 30 min`, `leave on for 20 min`, `60 min` of clamping */
  private leaveTail(tails: tree.Tail[]): boolean {
    const { start } = this.peek(1);
    const found = this.longestIn(LEAVE_WORDS);
    const after = found && this.peek(found.length + 1);
    const isTime =
      after?.type === t.NumberToken || (after !== undefined && this.at(t.Word, found!.length + 1));
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
    tails.push({ kind: "leave", keyword, time, span: { start, end: endOf(this.peek(0)) } });
    return true;
  }

  /** `wet on wet 20 min`, `wet on wet after 30 min` */
  private wetOnWet(tails: tree.Tail[]): boolean {
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
  private transferTail(tails: tree.Tail[]): boolean {
    const { start } = this.peek(1);
    const found = this.longestIn(TRANSFER_WORDS);
    if (
      found === undefined ||
      !(this.at(t.NumberToken, found.length + 1) || this.at(t.Word, found.length + 1))
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
  private sheenTail(tails: tree.Tail[]): boolean {
    const { start } = this.peek(1);
    const isPlain = this.isWordAt("sheen", 1);
    const found = isPlain ? undefined : this.longestIn(SHEENS_SAID);
    if (!isPlain && found === undefined) {
      return false;
    }
    const keyword: tree.Name = isPlain
      ? make.makeName(this.take(t.Word))
      : { kind: "name", text: "sheen", span: { start, end: start } };
    this.useExample(TAILS.sheen!.example);
    const draft: TailOf<"sheen"> = { kind: "sheen", keyword, span: NO_SPAN };
    tails.push(draft as tree.Tail);
    const sheen =
      this.spelling(SHEENS_SAID) ?? this.glossUnits() ?? this.nameOf(this.take(t.Word, "a sheen"));
    draft.sheen = sheen;
    if (!isPlain) {
      this.dropRespellings(start);
      this.respell({ start, end: sheen.span.end }, `sheen ${sheen.text}`);
      this.leaveOut(SHEEN_WORD);
    }
    draft.span = { start, end: endOf(this.peek(0)) };
    return true;
  }

  private glossUnits(): tree.Name | undefined {
    if (!this.at(t.NumberToken)) {
      return undefined;
    }
    const number = make.makeName(this.take(t.NumberToken));
    const unit = this.peek(1);
    if (unit.text === "%" || /^(?:gu|gloss)$/iu.test(unit.text)) {
      this.respell(make.tokenSpan(unit), "");
      this.skip(1);
    }
    return number;
  }

  /** `costs 6.00` */
  private costs(tails: tree.Tail[]): void {
    const keyword = make.makeName(this.take(t.Word));
    this.useExample(TAILS.costs!.example);
    const draft: TailOf<"costs"> = { kind: "costs", keyword, span: keyword.span };
    tails.push(draft as tree.Tail);
    draft.amount = this.sum("an amount of money").amount;
    draft.span = { start: keyword.span.start, end: endOf(this.peek(0)) };
  }

  /** `if needed`, `only where rough` */
  private optionalTail(owner: Owner, tails: tree.Tail[]): boolean {
    if (owner === "layer" && this.ifNeeded(tails)) {
      return true;
    }
    const isOn = this.isWordAt("on", 1) && (this.peek(2).type === t.StringToken || this.at(t.NumberToken, 2));
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
  private ifNeeded(tails: tree.Tail[]): boolean {
    const { start } = this.peek(1);
    const found = this.longestIn(IF_NEEDED);
    const asked = found ?? this.longestIn(IF_SAID);
    if (asked === undefined || (found === undefined && this.peek(asked.length + 1).type !== t.StringToken)) {
      return false;
    }
    this.skip(asked.length);
    const keyword: tree.Name = { kind: "name", text: "if", span: asked.span };
    const said = this.at(t.StringToken) ? make.makeTitle(this.take(t.StringToken)) : undefined;
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
  private stepAmount(tails: tree.Tail[]): void {
    const at = this.peek(1).start;
    this.respell({ start: at, end: at }, "uses");
    const keyword: tree.Name = { kind: "name", text: "uses", span: { start: at, end: at } };
    const amount = this.value("an amount");
    tails.push({ kind: "uses", keyword, amount, span: { start: at, end: amount.span.end } });
  }

  private isVolumeOrWeight(): boolean {
    const unit = this.peek(2);
    const group = unit.type === t.Unit ? t.unitGroup(unit.text) : undefined;
    return this.at(t.NumberToken) && (group === "volume" || group === "mass");
  }

  /** `only edges`, `only 20 % "where it is worn"` */
  private onlyPart(): Extract<tree.Tail, { readonly kind: "only" }> {
    const word = make.makeName(this.take(t.Word));
    const keyword: tree.Name = { ...word, text: "only" };
    if (word.text !== "only") {
      this.respell(word.span, "only");
    }
    const some = this.someOfAll();
    const share =
      some === undefined && this.at(t.NumberToken) ? this.quantity("a share or an area") : undefined;
    if (share !== undefined) {
      this.leaveOut(OF);
    }
    const where = this.at(t.StringToken)
      ? make.makeTitle(this.take(t.StringToken))
      : this.at(t.Word)
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
  private someOfAll(): { readonly some: tree.NumberLiteral; readonly all: tree.NumberLiteral } | undefined {
    if (!(this.at(t.NumberToken) && this.at(t.Of, 2) && this.at(t.NumberToken, 3))) {
      return undefined;
    }
    const some = make.makeNumber(this.take(t.NumberToken));
    this.take(t.Of);
    return { some, all: make.makeNumber(this.take(t.NumberToken)) };
  }

  /** `edges only`, `on the edges only`: so many words, and those that say where. */
  private onlyBehind(words: number, value: string): Extract<tree.Tail, { readonly kind: "only" }> {
    const { start } = this.peek(1);
    this.skip(words);
    const span = { start, end: endOf(this.peek(0)) };
    this.respell(span, `only "${value}"`);
    const keyword: tree.Name = { kind: "name", text: "only", span: { start, end: start } };
    return { kind: "only", keyword, where: { kind: "title", value, span }, span };
  }

  /** `passes 2`, `2 passes`, `in 2 passes`, `flash 10 min`, `flash off 10 min between passes`, `10 min flash` */
  private passTail(tails: tree.Tail[]): boolean {
    const part = this.restOfPart();
    const passes = /^(?:(?:in )?(\d+) pass(?:es)?|passes (\d+))$/iu.exec(part);
    const flash = passes ? null : FLASH.exec(part);
    if (!passes && !flash) {
      return false;
    }
    const { start } = this.peek(1);
    const empty = { start, end: start };
    const isPlain = this.peek(2).type === t.NumberToken && this.peek(1).type !== t.NumberToken;
    while (!this.at(t.NumberToken) && !this.at(t.End)) this.skip(1);
    const value = passes ? this.count() : this.quantity("a time");
    while (!this.at(t.Comma) && !this.at(t.End) && this.peek(1).kind === "word") this.skip(1);
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
  private count(): tree.Quantity {
    const number = make.makeNumber(this.take(t.NumberToken));
    return { kind: "quantity", parts: [{ number }], span: number.span };
  }

  /** `30 g/m2`: how much goes on. */
  private isAmount(): boolean {
    const unit = this.peek(this.peek(2).type === t.NumberToken ? 3 : 2);
    return this.at(t.NumberToken) && unit.type === t.Unit && AMOUNTS.has(plainUnit(unit.text) ?? "");
  }

  /** `5 % water`; a range or another order is refused with the right line. */
  private thinnedShare(tails: tree.Tail[]): boolean {
    const rest = this.restOfPart();
    const said = SHARE_OF_THINNER.exec(rest) ?? THINNER_AND_SHARE.exec(rest);
    if (!said?.groups) {
      return false;
    }
    const { low, high, thinner } = said.groups;
    const { start } = this.peek(1);
    if (low !== undefined || !this.at(t.NumberToken)) {
      const span = this.takeText(said[0]) ?? make.tokenSpan(this.peek(1));
      const name = thinner === "thinner" || thinner === undefined ? "mineral_spirits" : thinner;
      throw this.refused(thinnedBy(high ?? "", name, span));
    }
    const ratio = this.thinning();
    this.leaveOut(OF);
    const named = this.nameOf(this.take(t.Word, "a thinner"));
    const span = { start, end: named.span.end };
    const keyword: tree.Name = { kind: "name", text: "thinned", span: { start, end: start } };
    tails.push({ kind: "thinned", keyword, ratio, thinner: named, span });
    this.dropRespellings(start);
    this.respell(span, `thinned ${ratio.a.text}:${ratio.b.text} with ${named.text}`);
    return true;
  }

  private wetAmount(tails: tree.Tail[]): void {
    const { start } = this.peek(1);
    const { from, to } = this.range("an amount by area");
    const keyword: tree.Name = { kind: "name", text: "wet", span: { start, end: start } };
    const span = { start, end: endOf(this.peek(0)) };
    tails.push({ kind: "wet", keyword, thickness: from, ...(to && { to }), span });
  }

  // -------------------------------------------------------------------------------------------------------------
  // Between coats

  /** `between sand 220`, `between wait 4 h and sand 220` */
  private between(layer: LayerLine): void {
    const draft = { keyword: make.makeName(this.take(t.BetweenWord)), statements: [], span: NO_SPAN };
    this.useExample(TAILS.between!.example);
    this.leaveOut(COATS_WORD);
    this.keepBetween(layer, draft);
    draft.span = { start: draft.keyword.span.start, end: endOf(this.peek(0)) };
  }

  /** Whether this part ends with `between` or `between coats`: `sand 400 between coats`. */
  private isBetweenSaidLast(): boolean {
    let ahead = 1;
    while (![t.Comma, t.End, t.BetweenWord].includes(this.peek(ahead).type)) ahead += 1;
    const behind = this.peek(ahead + 1).type;
    const last = behind === t.Coats ? this.peek(ahead + 2).type : behind;
    return ahead > 1 && this.peek(ahead).type === t.BetweenWord && (last === t.Comma || last === t.End);
  }

  private betweenLast(layer: LayerLine): void {
    const { start } = this.peek(1);
    this.respell({ start, end: start }, "between");
    this.betweenUnsaid(layer, () => this.leaveOut(BETWEEN_COATS));
  }

  /** What is done between coats without the word before it; `behind` reads what stands after it. */
  private betweenUnsaid(layer: LayerLine, behind: () => void): void {
    const { start } = this.peek(1);
    const keyword: tree.Name = { kind: "name", text: "between", span: { start, end: start } };
    const draft = { keyword, statements: [], span: NO_SPAN };
    this.keepBetween(layer, draft);
    behind();
    draft.span = { start, end: endOf(this.peek(0)) };
  }

  /**
   * `layer paint x 2, wait 30 min`: whether between the coats or after the last is not said, so it is refused; of several
   * coats it is read as between them, so that nobody hears that there is no wait at all.
   */
  private waitOnLine(layer: LayerLine): void {
    const { start } = this.peek(1);
    if (layer.coats === undefined) {
      this.betweenItem();
    } else {
      this.betweenUnsaid(layer, () => {});
    }
    this.report(waitOnLayer({ start, end: endOf(this.peek(0)) }, layer.coats !== undefined));
  }

  private keepBetween(layer: LayerLine, draft: Draft<tree.Between>): void {
    const statements: (tree.StepStatement | tree.WaitStatement)[] = [];
    draft.statements = statements;
    const first = this.peek(1);
    if (layer.between === undefined) {
      layer.between = draft;
    } else {
      const span = { start: draft.keyword.span.start, end: endOf(first) };
      this.report({ message: "expected `between` once: put `and` between what is done", span });
    }
    statements.push(this.betweenItem());
    while (this.isWordAt("and", 1) || this.isWordAt("then", 1)) {
      const joint = this.take(t.Word);
      if (joint.text !== "and") {
        this.respell(make.tokenSpan(joint), "and");
      }
      statements.push(this.betweenItem());
    }
  }

  private betweenItem(): tree.StepStatement | tree.WaitStatement {
    const { start } = this.peek(1);
    const empty = { start, end: start };
    const isWait = this.isWordAt("wait", 1);
    if (isWait || this.at(t.NumberToken) || this.at(t.Overnight)) {
      if (isWait) {
        this.skip(1);
      } else {
        this.respell(empty, "wait");
      }
      const line = this.wait.empty();
      this.wait.body(line);
      const span = { start, end: endOf(this.peek(0)) };
      return { kind: "wait", keyword: { kind: "name", text: "wait", span: empty }, span, docs: "", ...line };
    }
    const line = this.step.empty();
    this.stepBody(line);
    const span = { start, end: endOf(this.peek(0)) };
    return { kind: "step", keyword: { kind: "name", text: "step", span: empty }, span, docs: "", ...line };
  }

  /** The same with more words around the method: `hvlp 1.8 tip`, `foam roller and brush`, `white pad and machine`. */
  private byWithWords(tails: tree.Tail[]): boolean {
    const { start } = make.tokenSpan(this.peek(1));
    const text = this.restOfPart();
    const said = methodsIn(text.replace(/^by (?:an? |the )?/u, ""));
    if (said === undefined) {
      return false;
    }
    const keyword = make.makeName(this.take(t.By));
    const span = this.takeText(this.restOfPart());
    if (span === undefined) {
      return false;
    }
    const { first, second, joint, words } = said;
    const name = (method: string): tree.Name => ({ kind: "name", text: method, span });
    const methods = second === undefined ? first : `${first} ${joint} ${second}`;
    this.dropRespellings(start);
    this.respell(span, `${methods}, ${quoted(words)}`);
    tails.push({
      kind: "by",
      keyword,
      method: name(first),
      ...(second !== undefined && { and: name(second), or: joint === "or" }),
      span: { start: keyword.span.start, end: span.end },
    });
    tails.push(saidOf({ kind: "title", value: words, span }));
    return true;
  }

  protected readonly by = (tails: tree.Tail[]): void => {
    if (!this.isPlainBy() && this.byWithWords(tails)) {
      return;
    }
    this.plainBy(tails);
  };

  /** Whether nothing but a method, or two of them, stands behind `by`, or what is none at all. */
  private isPlainBy(): boolean {
    const said = this.restOfPart().replace(/^by (?:an? |the )?/u, "");
    return said.split(/ (?:and|or) (?:an? |the )?/u).every((part) => isMethodWord(part));
  }

  private readonly plainBy = this.tailRule("by", t.By, (draft: TailOf<"by">) => {
    this.leaveOut(ARTICLES, t.Word);
    draft.method =
      this.spelling(METHOD_SPELLINGS) ??
      make.makeName(this.take(t.Word, "a method: brush, roller, pad, spray or another"));
    if ((this.at(t.And) || this.isWordAt("or", 1)) && this.at(t.Word, 2)) {
      // Whichever is meant, the rules take the one that is worse for the work.
      draft.or = this.isWordAt("or", 1);
      this.skip(1);
      this.leaveOut(ARTICLES, t.Word);
      draft.and = this.spelling(METHOD_SPELLINGS) ?? make.makeName(this.take(t.Word, "a method"));
    }
  });

  /** `wiped off`; `wiped` alone could be read as wiped on. */
  protected readonly wiped = this.tailRule("wiped", t.Wiped, (draft: TailOf<"wiped">) => {
    if (this.isWordAt("off", 1)) {
      this.skip(1);
    } else {
      const end = endOf(this.peek(0));
      this.respell({ start: end, end }, "off");
    }
    if (this.at(t.After)) {
      this.take(t.After);
      draft.after = this.value("a time");
    }
  });

  protected readonly thinned = this.tailRule("thinned", t.Thinned, (draft: TailOf<"thinned">) => {
    draft.ratio = this.at(t.Word) && this.at(t.With, 2) ? this.nameOf(this.take(t.Word)) : this.thinning();
    if (draft.ratio.kind === "name" || !this.isPartEnd(1)) {
      this.take(t.With, "`with` and a thinner");
      draft.thinner = this.nameOf(this.take(t.Word, "a thinner"));
    }
  });

  protected readonly tinted = this.tailRule("tinted", t.Tinted, (draft: TailOf<"tinted">) => {
    draft.share = this.value("a share in %");
    this.take(t.With, "`with` and a tint");
    draft.tint = this.nameOf(this.take(t.Word, "a tint"));
  });

  protected readonly as = this.tailRule("as", t.As, (draft: TailOf<"as">) => {
    draft.role = make.makeName(this.take(t.Word, "`toner`"));
  });

  protected readonly wet = this.tailRule("wet", t.Wet, (draft: TailOf<"wet">) => {
    this.leaveOut(FILM, t.NumberToken);
    const { from, to } = this.range("a thickness");
    draft.thickness = from;
    if (to !== undefined) {
      draft.to = to;
    }
  });

  protected readonly takes = this.tailRule("takes", t.Takes, (draft: TailOf<"takes">) => {
    draft.time = this.value("a time");
  });

  protected readonly uses = this.tailRule("uses", t.Uses, (draft: TailOf<"uses">) => {
    draft.amount = this.value("an amount");
  });

  protected readonly inOneGo = this.tailRule("together", t.Together, () => {});

  protected readonly byItself = this.tailRule("apart", t.Apart, () => {});

  private tailRule<K extends Exclude<tree.Tail["kind"], BareTail | OwnTail>>(
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

  private readonly tailsByType: ReadonlyMap<TokenType, (tails: tree.Tail[]) => void> = new Map([
    [t.By, this.by],
    [t.Wiped, this.wiped],
    [t.Thinned, this.thinned],
    [t.Tinted, this.tinted],
    [t.As, this.as],
    [t.Wet, this.wet],
    [t.Takes, this.takes],
    [t.Uses, this.uses],
    [t.Together, this.inOneGo],
    [t.Apart, this.byItself],
  ]);

  /** `layer clear, x 3`, `layer clear, 3 coats`: the plain form has it behind the name. */
  private lateCoats(layer: LayerLine): void {
    const [comma, first] = [this.peek(0), this.peek(1)];
    const late: LayerLine = { tails: [] };
    if (this.at(t.X)) {
      this.take(t.X);
      this.coats(late);
      this.leaveOut(COATS_BEHIND);
    } else {
      this.coatsWithWord(late);
    }
    const end = endOf(this.peek(0));
    const nameEnd = layer.material?.span.end;
    if (nameEnd === undefined || layer.coats !== undefined) {
      const span = { start: first.start, end };
      this.report({
        message: gist((suchAs) => `expected the number of coats once${suchAs("layer clear x 3")}`),
        span,
      });
      return;
    }
    layer.coats = late.coats;
    layer.coatsTo = late.coatsTo;
    if (late.sessions !== undefined) {
      layer.sessions = late.sessions;
    }
    this.dropRespellings(first.start);
    this.respell({ start: nameEnd, end: nameEnd }, coatsText(late));
    this.respell({ start: comma.type === t.Comma ? comma.start : first.start, end }, "");
  }

  private checkOwner(owner: Owner, tail: tree.Tail | undefined): void {
    const on = (tail && TAILS[tail.kind]?.on) ?? "both";
    if (tail !== undefined && on !== "both" && on !== owner) {
      const how =
        tail.kind === "by"
          ? '\nSay how a step is done in the words in quotes, such as `glue "corner, by syringe"`.'
          : "";
      this.report({
        message: `expected ${tailNames(owner)}: \`${tail.kind}\` belongs to a ${on}${how}`,
        span: tail.span,
      });
    }
  }
}

const saidOf = (what: tree.Title): Extract<tree.Tail, { readonly kind: "said" }> => ({
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

const isMethodWord = (word: string): boolean =>
  (METHODS as readonly string[]).includes(word) || Object.hasOwn(METHOD_SPELLINGS, word);

/** What is said of the methods of a coat: the plain ones, and all else in words. */
function methodsIn(
  text: string,
):
  | { readonly first: string; readonly second?: string; readonly joint: "and" | "or"; readonly words: string }
  | undefined {
  if (text.length > LONGEST_METHOD) {
    return undefined;
  }
  const joint = / or /u.test(text) ? "or" : "and";
  const found = text.split(/ (?:and|or) /u).map(methodIn);
  const methods = found.flatMap(({ method }) => method ?? []);
  const words = found.flatMap(({ words: more }) => (more === "" ? [] : [more])).join(", ");
  const [first, second, third] = methods;
  if (first === undefined || third !== undefined || words === "") {
    return undefined;
  }
  return { first, ...(second !== undefined && second !== first && { second }), joint, words };
}

/** The method in some words, and the words that say more than it. */
function methodIn(text: string): { readonly method?: string; readonly words: string } {
  const words = text.split(" ");
  for (let length = Math.min(2, words.length); length > 0; length -= 1) {
    for (let from = words.length - length; from >= 0; from -= 1) {
      const some = words.slice(from, from + length).join(" ");
      const tool = lookUp(TOOL_METHODS, some);
      if (tool !== undefined) {
        return { method: tool, words: text };
      }
      const plain =
        lookUp(METHOD_SPELLINGS, some) ?? ((METHODS as readonly string[]).includes(some) ? some : undefined);
      if (plain !== undefined) {
        return { method: plain, words: words.toSpliced(from, length).join(" ") };
      }
    }
  }
  return { words: text };
}

const LONGEST_METHOD = 60;
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
    "scrape off after",
    "scraped off after",
    "lifted off after",
    "taken off after",
    "washed off after",
    "rinsed off after",
  ].map((words) => [words, true]),
);
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

const AMOUNTS: ReadonlySet<string> = new Set(["g/m2", "mL/m2"]);
const COATS_WORD = phrases("coats");
const BETWEEN_COATS = phrases("between coats", "between");
const COATS_BEHIND = phrases("coats", "coat");
const OF = phrases("of");
const EACH = phrases("each", "a piece", "per piece");
/** With words in quotes behind it, which say when. */
const IF_SAID: Readonly<Record<string, true>> = { if: true, "only if": true, unless: true };
const SHEEN_WORD = phrases("sheen", "finish");
/** `edges only`, `on the edges only` */
const ONLY_BEHIND = /^(?:on )?(?:the )?(\p{L}{1,30}(?: \p{L}{1,30}){0,5}) only$/u;
/** A session of French polishing is many thin passes, and no coat of a label. */
const SESSIONS: ReadonlySet<string> = new Set(["session", "sessions"]);
/** `flash 10 min`, `flash-off 10 min between passes`, `10 min flash`, `10 min between passes` */
const FLASH =
  /^(?:flash(?:[- ]off)? (?:for |after )?\d[^,]{0,30}?(?: between (?:the )?passes)?|\d[^,]{0,15}? (?:flash(?:[- ]off)?|between (?:the )?passes))$/iu;
const SHARE_OF_THINNER =
  /^(?:(?<low>\d+(?:\.\d+)?) ?(?:-|–|to) ?)?(?<high>\d+(?:\.\d+)?) ?% (?:of )?(?<thinner>\p{L}[\p{L}\d_]*)$/u;
const THINNER_AND_SHARE =
  /^(?<thinner>\p{L}[\p{L}\d_]*) (?:(?<low>\d+(?:\.\d+)?) ?(?:-|–|to) ?)?(?<high>\d+(?:\.\d+)?) ?%$/u;
const ARTICLES = phrases("a", "the");

/** `x 2 to 3`, `x 6 to 8 sessions` */
function coatsText({ coats, coatsTo, sessions }: LayerLine): string {
  const to = coatsTo === undefined ? "" : ` to ${valueText(coatsTo)}`;
  return coats === undefined ? "" : `x ${valueText(coats)}${to}${sessions ? " sessions" : ""}`;
}

function withoutUnit(value: tree.Value | undefined): tree.Value | undefined {
  if (value?.kind !== "quantity") {
    return value;
  }
  return { ...value, parts: value.parts.map(({ number }) => ({ number })) };
}

/** The words of the tails that may stand on a line. */
function tailNames(owner: Owner): string {
  const names = Object.keys(TAILS).filter((word) => TAILS[word]!.on === "both" || TAILS[word]!.on === owner);
  const quoted = names.map((name) => `\`${name}\``);
  return `${quoted.slice(0, -1).join(", ")} or ${quoted.at(-1)}`;
}
