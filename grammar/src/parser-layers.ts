/** The rules for steps with their tails, and layers with what is done between their coats. */
import { endOf } from "./lexer.ts";
import { onSomePieces, waitOnLayer, wordsUnquoted } from "./line-problems.ts";
import { type Draft, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { isOwnTail, isSaidTail } from "./own-words.ts";
import { COATS_BEHIND, CoatParser, type LayerLine } from "./parser-coats.ts";
import { AT_TAIL, type StepLine } from "./parser-steps.ts";
import { type Owner, tailNames } from "./parser-tails.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import { t } from "./translate.ts";
import type * as tree from "./tree.ts";
import { TAILS } from "./vocabulary.ts";

const FLOODED_ON = phrases("on", "coat");

export class LayerParser extends CoatParser {
  readonly step = this.line(
    (): StepLine => ({ grits: [], tails: [] }),
    (line) => {
      const tails: tree.Tail[] = [];
      line.tails = tails;
      this.stepMain(line);
      this.tailList("step", tails, undefined, line.verb?.text);
    },
  );

  readonly layer = this.line(
    (): LayerLine => ({ tails: [] }),
    (line) => {
      const tails: tree.Tail[] = [];
      line.tails = tails;
      this.layerMain(line, tails);
      this.tailList("layer", tails, line);
    },
  );

  /** The tails of a layer, or of a step with this verb. */
  private tailList(owner: Owner, tails: tree.Tail[], layer?: LayerLine, verb?: string): void {
    this.many(
      () =>
        this.at(Token.Comma) ||
        Token.TAIL_TYPES.has(this.peek(1).type) ||
        this.at(Token.StringToken) ||
        (layer === undefined && this.isSaidNext()) ||
        (layer !== undefined && this.isTailWithoutComma()),
      () => {
        const isOpen =
          this.at(Token.StringToken) ||
          (layer === undefined ? this.isSaidNext() || this.at(Token.By) : this.at(Token.Thinned));
        if (isOpen || (layer !== undefined && this.isTailWithoutComma())) {
          const at = endOf(this.peek(0));
          this.respell({ start: at, end: at }, ",");
        } else {
          this.commaBefore();
        }
        this.tail(owner, tails, layer, verb);
      },
    );
  }

  protected readonly tail = this.part(
    AT_TAIL,
    (owner: Owner, tails: tree.Tail[], layer: LayerLine | undefined, verb: string | undefined): void => {
      this.useExample(undefined);
      const tail = this.tailsByType.get(this.peek(1).type);
      const bare = owner === "layer" ? Token.BARE_TAILS.get(this.peek(1).type) : undefined;
      if (owner === "step" && this.at(Token.By)) {
        this.saidWords(tails);
      } else if (this.saidTail(tails)) {
        // Read.
      } else if (owner === "step" && (this.handTime(tails, verb) || this.leaveTail(tails))) {
        // Read.
      } else if (layer !== undefined && layer.coats === undefined && this.isTwiceAlone()) {
        const { start } = this.peek(0);
        const coats = this.twice();
        this.dropRespellings(start);
        this.respell({ start, end: coats.span.end }, "x 2");
        layer.coats = coats;
      } else if (
        owner === "layer" &&
        (this.wetOnWet(tails) ||
          this.transferTail(tails) ||
          this.buffed(tails) ||
          this.wipedInWords(tails) ||
          this.thinnedInWords(tails) ||
          this.ownAsTail(tails))
      ) {
        // Read.
      } else if (owner === "layer" && this.timePerPiece(tails)) {
        // Read.
      } else if (owner === "step" && this.isWordAlone()) {
        this.saidText(tails, this.restOfPart());
      } else if (tail !== undefined) {
        tail(tails);
      } else if (owner === "layer" && this.sheenTail(tails)) {
        // Read.
      } else if (owner === "step" && this.isWordAt("costs", 1)) {
        this.costs(tails);
      } else if (owner === "step" && this.at(Token.NumberToken) && this.at(Token.Of, 2)) {
        const first = this.peek(1);
        this.skip(this.at(Token.NumberToken, 3) ? 3 : 2);
        this.skip(this.at(Token.Word) ? 1 : 0);
        throw this.refused(onSomePieces(first, this.peek(0)));
      } else if (owner === "step" && this.isVolumeOrWeight()) {
        this.stepAmount(tails);
      } else if (bare !== undefined) {
        const keyword = make.makeName(this.take(Token.Word));
        tails.push({ kind: bare, keyword, span: keyword.span });
        this.leaveOut(bare === "flooded" ? FLOODED_ON : COATS_BEHIND);
      } else if (this.optionalTail(owner, tails) || (layer !== undefined && this.passTail(tails))) {
        // Read.
      } else if (layer !== undefined && this.at(Token.BetweenWord)) {
        this.between(layer);
      } else if (layer !== undefined && this.isBetweenSaidLast()) {
        this.betweenLast(layer);
      } else if (layer !== undefined && this.isAmount()) {
        const at = this.peek(1).start;
        this.respell({ start: at, end: at }, "wet");
        this.wetAmount(tails);
      } else if (layer !== undefined && this.thinnedShare(tails)) {
        // Read.
      } else if (layer !== undefined && (this.at(Token.X) || this.isCoatsNext())) {
        this.lateCoats(layer);
      } else if (layer !== undefined && this.isWordAt("wait", 1)) {
        this.waitOnLine(layer);
      } else if (!this.ownTail(owner, tails)) {
        throw this.unknownTail(owner);
      }
      this.eachOne(tails);
      this.checkOwner(owner, tails.at(-1));
      // Words in quotes need no comma: `by roller "short nap"`.
      this.endOfPart(undefined, (next) => next === Token.StringToken || Token.TAIL_TYPES.has(next));
    },
  );

  /** `scrape, wet`, `clean with water, soap`: one word that is near to none of a tail. */
  private isWordAlone(): boolean {
    const { text, kind } = this.peek(1);
    return kind === "word" && this.isPartEnd(2) && (text === "wet" || isOwnTail(text));
  }

  private isTwiceAlone(): boolean {
    return this.isWordAt("twice", 1) && this.isPartEnd(2) && this.at(Token.Comma, 0);
  }

  /** `30 min per chair`: how long the hands take. */
  private timePerPiece(tails: tree.Tail[]): boolean {
    if (!this.isTimeNext() || !/ (?:each|(?:per|an?) \p{L}{3,20})$/iu.test(this.restOfPart())) {
      return false;
    }
    const { start } = this.peek(1);
    const at = { start, end: start };
    this.respell(at, "takes");
    const time = this.value("a time");
    tails.push({ kind: "takes", keyword: { kind: "name", text: "takes", span: at }, time, span: time.span });
    return true;
  }

  /** `each`, `per chair`: times are of each piece anyway; which one is kept in words. */
  private eachOne(tails: tree.Tail[]): void {
    this.leaveOut(EACH);
    const said = /^(?:per|an?) \p{L}{3,20}$/iu.exec(this.restOfPart());
    const kind = tails.at(-1)?.kind;
    if (!said || (kind !== "takes" && kind !== "leave")) {
      return;
    }
    const at = endOf(this.peek(0));
    this.respell({ start: at, end: at }, ",");
    this.saidText(tails, said[0]);
  }

  /** `lid by foam roller`, `whole surface`: what no tail is near to, in words, which the plain form quotes. */
  private ownTail(owner: Owner, tails: tree.Tail[]): boolean {
    const text = this.restOfPart();
    return isSaidTail(text, owner) && this.saidText(tails, text);
  }

  /** To be thrown: what stands here is no tail; as words in quotes it may be one. */
  private unknownTail(owner: Owner): Error {
    const text = this.restOfPart();
    const isPlain = /^[\p{L}\d][^"\\{}]{0,59}$/u.test(text) && /[ ]/u.test(text);
    const span = isPlain ? this.takeText(text) : undefined;
    return span === undefined
      ? this.mismatch(() => tailNames(owner))
      : this.refused(wordsUnquoted(tailNames(owner), text, span));
  }

  /** `between sand 220`, `between wait 4 h and sand 220` */
  private between(layer: LayerLine): void {
    const draft = { keyword: make.makeName(this.take(Token.BetweenWord)), statements: [], span: NO_SPAN };
    this.useExample(TAILS.between!.example);
    this.leaveOut(COATS_WORD);
    this.keepBetween(layer, draft);
    draft.span = { start: draft.keyword.span.start, end: endOf(this.peek(0)) };
  }

  /** Whether this part ends with `between` or `between coats`: `sand 400 between coats`. */
  private isBetweenSaidLast(): boolean {
    let ahead = 1;
    while (![Token.Comma, Token.End, Token.BetweenWord].includes(this.peek(ahead).type)) ahead += 1;
    const behind = this.peek(ahead + 1).type;
    const last = behind === Token.Coats ? this.peek(ahead + 2).type : behind;
    return (
      ahead > 1 && this.peek(ahead).type === Token.BetweenWord && (last === Token.Comma || last === Token.End)
    );
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
      this.report({ message: t`expected \`between\` once: put \`and\` between what is done`, span });
    }
    statements.push(this.betweenItem());
    while (this.isWordAt("and", 1) || this.isWordAt("then", 1)) {
      const joint = this.take(Token.Word);
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
    if (isWait || this.at(Token.NumberToken) || this.at(Token.Overnight)) {
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

  private readonly tailsByType: ReadonlyMap<TokenType, (tails: tree.Tail[]) => void> = new Map([
    [Token.By, this.by],
    [Token.Wiped, this.wiped],
    [Token.Thinned, this.thinned],
    [Token.Tinted, this.tinted],
    [Token.As, this.as],
    [Token.Wet, this.wet],
    [Token.Takes, this.takes],
    [Token.Uses, this.uses],
    [Token.Together, this.inOneGo],
    [Token.Apart, this.byItself],
  ]);

  private checkOwner(owner: Owner, tail: tree.Tail | undefined): void {
    const on = (tail && TAILS[tail.kind]?.on) ?? "both";
    if (tail !== undefined && on !== "both" && on !== owner) {
      const how =
        tail.kind === "by"
          ? t`\nSay how a step is done in the words in quotes, such as \`glue "corner, by syringe"\`.`
          : "";
      this.report({
        message:
          on === "step"
            ? t`expected ${tailNames(owner)}: \`${tail.kind}\` belongs to a step${how}`
            : t`expected ${tailNames(owner)}: \`${tail.kind}\` belongs to a layer${how}`,
        span: tail.span,
      });
    }
  }
}

const COATS_WORD = phrases("coats");
const BETWEEN_COATS = phrases("between coats", "between");
const EACH = phrases("each", "a piece", "per piece");
