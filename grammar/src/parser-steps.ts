/**
 * The rules for what a step says before its tails: the verb, in one of the words that people have for it, the material, the
 * grits as they are written on paper and in speech, and how it is done; and the rule for waits.
 */
import { endOf, type LexToken } from "./lexer.ts";
import {
  eitherWait,
  gritBefore,
  onceOrTwice,
  outsourced,
  twoMaterials,
  twoSteps,
  unquotedHow,
} from "./line-problems.ts";
import { type Draft, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { lookUp } from "./look-up.ts";
import { isOwnVerb, isSaidAlone, isSaidTail } from "./own-words.ts";
import { BehindParser } from "./parser-behind.ts";
import { valueText } from "./parser-parts.ts";
import {
  HOW_PHRASES,
  OWN_WORK,
  STAGE_SPELLINGS,
  TOOLS,
  VERB_SPELLINGS,
  VERB_SPELLINGS_WITH,
  type VerbSpelling,
} from "./spellings.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import type * as tree from "./tree.ts";
import { VERBS, type VerbForm, WAIT_STAGES } from "./vocabulary.ts";
import { keyOf, WORD_SPELLINGS } from "./word-spellings.ts";

/** What a statement says, without keyword, span, documentation and block. */
export type Line<S> = Draft<Omit<S, "kind" | "keyword" | "span" | "docs" | "block" | "fields">>;
export type StepLine = Line<tree.StepStatement>;

/** Where a tail can begin, or what is taken for one. */
export const AT_TAIL: readonly TokenType[] = [Token.Comma, ...Token.TAIL_TYPES, Token.X];

const isAtTail = (next: TokenType): boolean => Token.TAIL_TYPES.has(next);

export class StepParser extends BehindParser {
  protected readonly stepMain = this.part(AT_TAIL, (line: StepLine): void => {
    this.stepBody(line);
    this.oneStep();
    this.timesOf(line);
    if (!this.isSaidNext()) {
      this.endOfPart(undefined, isAtTail);
    }
  });

  /** `x 2`, `x times`, `twice`: how often a step is done. */
  private timesOf(line: StepLine): void {
    if (this.at(Token.X)) {
      this.take(Token.X);
      line.times = this.value("how often");
      if (this.at(Token.To)) {
        const { start } = line.times.span;
        this.skip(2);
        throw this.refused(onceOrTwice({ start, end: endOf(this.peek(0)) }, this.peek(0).text));
      }
      this.leaveOut(TIMES_BEHIND);
    } else if (this.isWordAt("twice", 1)) {
      const { span } = make.makeName(this.take(Token.Word));
      this.respell(span, "x 2");
      const number: tree.NumberLiteral = { kind: "number", text: "2", value: 2, span };
      line.times = { kind: "quantity", parts: [{ number }], span };
    }
  }

  /** Words about the line that need no comma: a text in quotes, `within 30 min`, `60 min` of clamping. */
  protected isSaidNext(): boolean {
    return this.at(Token.StringToken) || this.isWordAt("within", 1) || this.isTimeNext();
  }

  /** `60 min` */
  protected isTimeNext(): boolean {
    return this.isTimeAt(1);
  }

  private isTimeAt(ahead: number): boolean {
    const unit = this.peek(ahead + 1);
    return (
      this.at(Token.NumberToken, ahead) && unit.type === Token.Unit && Token.unitGroup(unit.text) === "time"
    );
  }

  /** Refuses what makes two steps of one. */
  private oneStep(): void {
    const verb = this.peek(2);
    if (this.isWordAt("then", 1) && (lookUp(VERBS, verb.text) ?? lookUp(VERB_SPELLINGS, verb.text))) {
      throw this.refused(twoSteps(this.peek(0), verb));
    }
  }

  protected stepBody(line: StepLine): void {
    if (this.at(Token.StringToken)) {
      line.what = make.makeTitle(this.take(Token.StringToken));
      this.withMaterial(line);
      return;
    }
    const own = this.ownWork();
    if (own !== undefined) {
      line.what = this.ownWords(own, BY_TOOLS.has(own.written));
      this.withMaterial(line);
      if (line.material !== undefined && this.at(Token.And) && this.at(Token.Word, 2)) {
        throw this.refused(twoMaterials(this.peek(1), this.peek(2), quoted(line.what.value)));
      }
      return;
    }
    const how = this.verb(line);
    this.stripByHand(line);
    const verb = line.verb!;
    if (verb.text === "distress" && this.at(Token.Word) && !Token.TAIL_TYPES.has(this.peek(1).type)) {
      line.what = this.ownWords();
      return;
    }
    const known = lookUp(VERBS, verb.text);
    const isForm = (...forms: VerbForm[]) => known === undefined || forms.includes(known.form);
    this.useExample(known?.example);
    if (known !== undefined && isForm("material", "optional-material")) {
      this.whatBefore(line);
    }
    const isToolAlone =
      known?.form === "optional-material" &&
      this.at(Token.With) &&
      TOOL.test(this.peek(2).text) &&
      this.isPartEnd(3);
    if (isForm("material", "optional-material") && this.at(Token.With) && !isToolAlone) {
      this.soapOrWater(line);
      this.tool(line);
    } else if (isForm("what", "what-with") && this.at(Token.StringToken)) {
      line.what = make.makeTitle(this.take(Token.StringToken));
    } else if (
      known !== undefined &&
      isForm("what", "what-with") &&
      (this.at(Token.Word) || (this.at(Token.With) && !this.isEndOfOwnWords()))
    ) {
      line.what = this.ownWords(undefined, known.form === "what");
    } else if (verb.text === "scuff" && this.abrasive(line)) {
      // With wool or a pad, which have no grit on them.
    } else if (
      known === undefined ? !this.isTailNext() && this.atValue() : known.form === "grits" && this.atGrits()
    ) {
      this.grits(line);
    } else if (verb.text === "scuff" && (this.at(Token.StringToken) || how !== undefined)) {
      // With a pad or wool, which have no grit on them.
    } else if (this.at(Token.By) && !isForm("none", "optional-material")) {
      throw this.refused(outsourced(this.context(), this.peek(1)));
    } else if (
      !isForm("none", "optional-material") &&
      !(known?.form === "what-with" && this.at(Token.With))
    ) {
      throw this.mismatch(needOf(known?.form));
    }
    if (known?.form === "what-with") {
      this.withMaterial(line);
    }
    // `unmask` takes all of it off, so a name behind it would promise what is not done.
    const saysHow = known !== undefined && !isForm("what", "what-with") && verb.text !== "unmask";
    if (saysHow) {
      if (verb.text === "dampen") {
        this.leaveOut(WITH_WATER);
      }
      this.how(line, how);
      this.moreWords(line, known.form);
    }
  }

  /** `strip "heat gun and scraper"`, `strip with a heat gun`: what takes it off is no material, so it is scraped. */
  private stripByHand(line: StepLine): void {
    const isSaid = (this.at(Token.StringToken) && !this.at(Token.With, 2)) || BY_HAND.test(this.restOfPart());
    if (line.verb?.text !== "strip" || !isSaid) {
      return;
    }
    const { span } = line.verb;
    this.dropName(span);
    this.respell(span, "scrape");
    line.verb = { ...line.verb, text: "scrape" };
  }

  /** `scrape glue spots`, `sand 240 on soft pad`: where and how, in words, which the plain form quotes. */
  private moreWords(line: StepLine, form: VerbForm): void {
    const text = this.restOfPart();
    const isTool =
      this.at(Token.With) &&
      this.at(Token.Word, 2) &&
      (this.peek(3).kind === "word" || TOOL.test(this.peek(2).text));
    const isOwn =
      isTool && form !== "material" && line.material === undefined
        ? !HAZARDOUS.has(line.verb!.text)
        : HOW_BEGINS.test(text) ||
          (!HAZARDOUS.has(line.verb!.text) && form !== "grits" && OWN_PLACE.test(text));
    if (!isOwn || !isSaidTail(`${text} `, "step")) {
      return;
    }
    const at = line.what?.span.start ?? endOf(this.peek(0));
    const { start } = this.peek(1);
    const span = this.takeText(text);
    if (span === undefined) {
      return;
    }
    const value = [line.what?.value, text].filter((part) => part !== undefined).join(", ");
    const isApart = line.what !== undefined && line.what.span.start < line.what.span.end;
    if (isApart) {
      this.dropRespellings(at);
    }
    const put = isApart ? { start: at, end: span.end } : { start, end: span.end };
    if (!isApart && line.what !== undefined) {
      this.dropRespellings(line.what.span.start);
    }
    this.respell(put, quoted(value));
    line.what = { kind: "title", value, span: put };
  }

  /** Work of no verb; `spot sand` is sanding all the same, and no work that says nothing of the surface. */
  private ownWork(): ReturnType<StepParser["longestIn"]> {
    const found = this.longestIn(OWN_WORK) ?? this.unknownWork();
    const verb = this.longestIn(VERB_SPELLINGS);
    const own = found !== undefined && (verb?.length ?? 0) > found.length ? undefined : found;
    if (own === undefined || !ON_SPOTS.has(own.written)) {
      return own;
    }
    const behind = this.peek(own.length + 1).text.toLowerCase();
    const isVerb = Object.hasOwn(VERBS, behind) || Object.hasOwn(VERB_SPELLINGS, behind);
    return isVerb || Object.hasOwn(VERB_SPELLINGS, `${own.written} ${behind}`) ? undefined : own;
  }

  /** A word that no verb is near to, with more behind it: work in words. */
  private unknownWork(): ReturnType<StepParser["longestIn"]> {
    const first = this.peek(1);
    const next = this.peek(2);
    const isSized = next.kind === "number" && this.peek(3).type === Token.Unit;
    const isMore =
      (next.kind === "word" && next.type !== Token.With) || next.type === Token.StringToken || isSized;
    const isCompound = first.text.includes("_");
    const isWith = next.type === Token.With && first.text.length >= SHORTEST_OWN;
    const isOwn = first.type === Token.Word && (isMore || isCompound || isWith) && isOwnVerb(first.text);
    return isOwn &&
      this.longestIn(VERB_SPELLINGS) === undefined &&
      !Object.hasOwn(VERB_SPELLINGS_WITH, first.text)
      ? { written: first.text, length: 1, span: make.tokenSpan(first) }
      : undefined;
  }

  /** `with hide_glue`, where a step may be done with a material. */
  protected withMaterial(line: StepLine): void {
    if (this.at(Token.With)) {
      this.take(Token.With);
      line.material = this.nameOf(this.take(Token.Word, "a material"));
    }
  }

  /** Words up to the end of the part or `with`, and a text behind them: a title, which the plain form quotes. */
  protected ownWords(
    known?: { readonly written: string; readonly length: number },
    isWithoutMaterial = false,
  ): tree.Title {
    const { start } = this.peek(1);
    const words: string[] = known ? [known.written] : [];
    this.skip(known?.length ?? 0);
    while (
      !this.isPartEnd(1) &&
      !this.at(Token.StringToken) &&
      ((isWithoutMaterial && this.at(Token.With)) || !this.isEndOfOwnWords())
    ) {
      words.push(this.peek(1).text);
      this.skip(1);
    }
    if (this.at(Token.StringToken)) {
      words.push(make.makeTitle(this.take(Token.StringToken)).value);
    }
    const value = words.join(" ");
    const span = { start, end: endOf(this.peek(0)) };
    this.respell(span, quoted(value));
    return { kind: "title", value, span };
  }

  /** Where work in words ends: at a tail without a comma, and before `with` and one name, which is a material. */
  private isEndOfOwnWords(): boolean {
    const { type } = this.peek(1);
    if (type === Token.With) {
      const { kind, type: next } = this.peek(3);
      const isTwo = next === Token.And && this.peek(5).kind !== "word";
      return this.at(Token.Word, 2) && (kind !== "word" || isTwo || STEP_TAILS.has(next));
    }
    return type === Token.X || STEP_TAILS.has(type) || this.isTimeNext() || type === Token.Unknown;
  }

  /** `fill grain with filler`: what is filled stands in quotes behind the material in the plain form. */
  private whatBefore(line: StepLine): void {
    if (this.at(Token.StringToken) && this.at(Token.With, 2)) {
      const title = make.makeTitle(this.take(Token.StringToken));
      this.respell(title.span, "");
      line.what = title;
      return;
    }
    let length = 0;
    while (this.at(Token.Word, length + 1) && length < MOST_WORDS) length += 1;
    if (length === 0 || !this.at(Token.With, length + 1)) {
      return;
    }
    const words = Array.from({ length }, (_, idx) => this.peek(idx + 1));
    const span = { start: words[0]!.start, end: endOf(words.at(-1)!) };
    this.skip(length);
    this.respell(span, "");
    line.what = { kind: "title", value: words.map(({ text }) => text).join(" "), span };
  }

  /** `with bronze wool`: what has no grit on it is named in words, which the plain form quotes. */
  private abrasive(line: StepLine): boolean {
    const said = this.at(Token.With) || this.at(Token.Word) ? WITH_ABRASIVE.exec(this.restOfPart()) : null;
    const span = said && this.takeText(said[0]);
    if (!said || !span) {
      return false;
    }
    this.respell(span, "");
    line.what = { kind: "title", value: said[1]!.replaceAll("_", " "), span };
    return true;
  }

  /** `with mild soap`, `with warm water and a drop of vinegar`: what is built in, with words around it. */
  private soapOrWater(line: StepLine): void {
    if (this.materialInWords(line)) {
      return;
    }
    const said = SOAP_OR_WATER.exec(this.restOfPart());
    if (!said || (said[1] === undefined && said[3] === undefined)) {
      this.withMaterial(line);
      return;
    }
    const [, before, what, behind] = said;
    const span = this.takeText(said[0]);
    if (span === undefined) {
      this.withMaterial(line);
      return;
    }
    const name = /water/iu.test(what!) && !/^soapy/iu.test(before ?? "") ? "water" : "soap";
    const words = [before?.trim(), behind?.trim()].filter((part) => part !== undefined && part !== "");
    this.respell(span, `with ${name}`);
    line.material = { kind: "name", text: name, span };
    if (words.length > 0) {
      const value = [line.what?.value, ...words].filter((part) => part !== undefined).join(", ");
      const at = { start: span.end, end: span.end };
      line.what = { kind: "title", value, span: at };
    }
  }

  /** `with oxalic acid 5 %`: what labels call a family, by the name of its built-in material in the plain form. */
  private materialInWords(line: StepLine): boolean {
    const [first, second] = [this.peek(2), this.peek(3)];
    const plain =
      first.kind === "word" && second.kind === "word"
        ? FAMILY_WORDS?.get(keyOf(`${first.text} ${second.text}`))
        : undefined;
    const said = plain === undefined ? null : WITH_SHARE.exec(this.restOfPart());
    const span = said && this.takeText(said[0]);
    if (plain === undefined || !said || !span) {
      return false;
    }
    const text = plain.replaceAll(" ", "_");
    this.respell(span, `with ${text}`);
    line.material = { kind: "name", text, span };
    const value = [line.what?.value, said[1]!].filter((part) => part !== undefined).join(", ");
    line.what = { kind: "title", value, span: { start: span.end, end: span.end } };
    return true;
  }

  /** `and wire wool` */
  private tool(line: StepLine): void {
    if (!this.at(Token.And)) {
      return;
    }
    const { start } = this.peek(1);
    if (this.apart(() => this.toolWords(line))) {
      this.dropRespellings(start);
      this.respell({ start, end: endOf(this.peek(0)) }, "");
    } else if (this.at(Token.Word, 2) && this.isPartEnd(3)) {
      throw this.refused(twoMaterials(this.peek(1), this.peek(2), line.verb?.text ?? "clean"));
    }
  }

  protected isPartEnd(ahead: number): boolean {
    const { type } = this.peek(ahead);
    return type === Token.End || type === Token.Comma;
  }

  private toolWords(line: StepLine): void {
    const { start } = this.take(Token.And);
    const words = this.wordRun("a tool").map(({ text }) => text);
    const written = words.join(" ");
    if (!TOOLS.includes(written.replace(/^0000 /u, ""))) {
      throw this.mismatch("a tool");
    }
    const value = [line.what?.value, `with ${written}`].filter((part) => part !== undefined).join(", ");
    line.what = { kind: "title", value, span: { start, end: endOf(this.peek(0)) } };
  }

  /** Reads the verb, and says how it is done where the word does so: `vacuum` is `dust "vacuum"`. */
  protected verb(line: StepLine): string | undefined {
    const found = this.longestIn(VERB_SPELLINGS) ?? this.longestIn(VERB_SPELLINGS_WITH);
    if (found === undefined) {
      line.verb = make.makeName(this.take(Token.Word, "a verb or a text in double quotes"));
      return undefined;
    }
    const isWith = this.at(Token.With, found.length + 1);
    if (
      isWith &&
      found.written === "rub" &&
      this.at(Token.Word, 3) &&
      !NO_LIQUID.test(this.restOfPart().slice(3))
    ) {
      this.skip(found.length);
      this.respell(found.span, "clean");
      line.verb = { kind: "name", text: "clean", span: found.span };
      return "rub";
    }
    const hasWith = isWith && Object.hasOwn(VERB_SPELLINGS_WITH, found.written);
    const meant: VerbSpelling =
      (hasWith ? undefined : VERB_SPELLINGS[found.written]) ??
      VERB_SPELLINGS_WITH[found.written] ??
      VERB_SPELLINGS[found.written]!;
    this.skip(found.length);
    this.respell(found.span, meant.isWet ? `${meant.verb} wet` : meant.verb);
    if (meant.isWet) {
      line.wet = { kind: "name", text: "wet", span: { start: found.span.end, end: found.span.end } };
    }
    line.verb = { kind: "name", text: meant.verb, span: found.span };
    return meant.how;
  }

  /** `"heat gun at 300 C"`, `lightly`, or what the verb itself said. */
  private how(line: StepLine, said: string | undefined): void {
    const at = endOf(this.peek(0));
    const written = this.at(Token.StringToken)
      ? make.makeTitle(this.take(Token.StringToken))
      : this.howPhrase();
    const parts = [line.what?.value, said, written?.value].filter((part) => part !== undefined);
    if (parts.length === 0) {
      return;
    }
    if (parts.length === 1 && written !== undefined && written.kind === "title" && line.what === undefined) {
      line.what = written;
      return;
    }
    const value = parts.join(", ");
    const span = { start: written?.span.start ?? at, end: written?.span.end ?? at };
    this.dropRespellings(span.start);
    this.respell(span, quoted(value));
    line.what = { kind: "title", value, span };
  }

  /** `lightly`, `only where rough`: as a title, which the plain form quotes. */
  private howPhrase(): tree.Title | undefined {
    const found = this.longestIn(HOW);
    if (found === undefined) {
      return undefined;
    }
    this.skip(found.length);
    this.respell(found.span, quoted(found.written));
    return { kind: "title", value: found.written, span: found.span };
  }

  // -------------------------------------------------------------------------------------------------------------
  // Waits

  readonly wait = this.line(
    (): Line<tree.WaitStatement> => ({}),
    (line) => {
      if (this.untilNextDay(line)) {
        return;
      }
      if (this.at(Token.Until)) {
        this.take(Token.Until);
        this.useExample("wait until recoat");
        line.until = this.spelling(STAGE_SPELLINGS);
        if (line.until === undefined) {
          this.leaveOut(IT_IS);
        }
        line.until ??=
          this.spelling(STAGE_SPELLINGS) ??
          make.makeName(this.take(Token.Word, "`touch`, `recoat`, `stackable` or `cured`"));
      } else if (this.at(Token.Overnight)) {
        line.overnight = make.makeName(this.take(Token.Overnight));
        this.waitWords(line);
      } else if (this.longestIn(OVERNIGHT) !== undefined) {
        line.overnight = this.spelling(OVERNIGHT)!;
        this.waitWords(line);
      } else {
        this.leaveOut(FOR, Token.NumberToken);
        const about = this.aboutTime();
        const { from, to } = this.lowerLimit(() => this.range("a time, `overnight`, or `until` and a stage"));
        line.time = from;
        if (to !== undefined) {
          line.timeTo = to;
        }
        this.waitWords(line);
        if (about !== undefined) {
          const value = line.what === undefined ? about : `${about}, ${line.what.value}`;
          const at = endOf(this.peek(0));
          const span = line.what?.span ?? { start: at, end: at };
          if (line.what !== undefined) {
            this.dropRespellings(span.start);
          }
          this.respell(span, ` ${quoted(value)}`);
          line.what = { kind: "title", value, span };
        }
      }
    },
  );

  /** `about 2 h`, `up to 24 h`: how exact the time is, which the plain form quotes behind it. */
  private aboutTime(): string | undefined {
    const found = this.longestIn(ABOUT_TIME);
    if (found === undefined || !this.at(Token.NumberToken, found.length + 1)) {
      return undefined;
    }
    const { start } = this.peek(1);
    this.skip(found.length);
    this.respell({ start, end: endOf(this.peek(0)) }, "");
    return found.written;
  }

  /** `until next morning`, `until Sat`: a night at least. */
  private untilNextDay(line: Line<tree.WaitStatement>): boolean {
    const { start } = this.peek(1);
    if (this.keyword !== "wait" || !NEXT_DAY.test(this.rest()) || !this.isTextInWords()) {
      return false;
    }
    const value = this.takeRest();
    const span = { start, end: endOf(this.peek(0)) };
    this.respell(span, `overnight ${quoted(value)}`);
    line.overnight = { kind: "name", text: "overnight", span: { start, end: start } };
    line.what = { kind: "title", value, span };
    return true;
  }

  /** `16 h until stackable`, `4 h or overnight`, `2 h "until it stops soaking in"`: what is waited for, in quotes. */
  private waitWords(line: Line<tree.WaitStatement>): void {
    if (this.at(Token.StringToken)) {
      line.what = make.makeTitle(this.take(Token.StringToken));
      return;
    }
    const rest = this.rest();
    const isOwn = this.keyword === "wait" && WAITED_HOW.test(rest) && this.isWholeLineInWords();
    if (!isOwn && !this.at(Token.Until) && !this.isWordAt("or", 1)) {
      return;
    }
    const { start } = this.peek(1);
    const words: string[] = [];
    if (isOwn) {
      words.push(this.takeRest().replace(/^, ?/u, ""));
    }
    while (this.peek(1).kind === "word" && !this.at(Token.And)) {
      words.push(this.take(this.peek(1).type).text);
    }
    const value = words.join(" ");
    const span = { start, end: endOf(this.peek(0)) };
    const stage = value.replace(/^until (?:it is )?/u, "");
    // How long it takes until pieces can be stacked few labels say, so a time with it says that.
    if (line.time && stage !== "stackable" && (WAIT_STAGES as readonly string[]).includes(stage)) {
      throw this.refused(eitherWait(valueText(line.time!), stage, span));
    }
    this.respell(span, ` ${quoted(value)}`);
    line.what = { kind: "title", value, span };
  }

  // -------------------------------------------------------------------------------------------------------------
  // Grits

  /** Whether what follows a verb with grits can begin them. */
  private atGrits(): boolean {
    return (
      this.atValue() ||
      (this.at(Token.With) && (this.at(Token.NumberToken, 2) || isGritWord(this.peek(2)))) ||
      this.longestIn(HOW) !== undefined
    );
  }

  /** `80, 120, 150`; also `P80, P120`, `120/150/180`, `180-220`, `with 320`, `lightly 320`. */
  private grits(line: StepLine): void {
    const grits: tree.Value[] = [];
    line.grits = grits;
    if (this.at(Token.Wet) && line.wet === undefined) {
      line.wet = make.makeName(this.take(Token.Wet));
    }
    const before = this.longestIn(HOW);
    const behind = this.peek((before?.length ?? 0) + 1);
    if (before !== undefined && !line.wet && (behind.type === Token.End || behind.type === Token.Comma)) {
      throw this.refused(gritBefore(line.verb?.text ?? "sand", before.written, before.span));
    }
    if (before !== undefined && (behind.type === Token.NumberToken || isGritWord(behind))) {
      // What is said before the grits stands behind them in the plain form.
      this.skip(before.length);
      this.respell(before.span, "");
      line.what = { kind: "title", value: before.written, span: before.span };
    }
    this.leaveOut(WITH);
    if (this.at(Token.Word) && this.at(Token.NumberToken, 2) && !isGritWord(this.peek(1))) {
      this.report(unquotedHow(this.peek(1), this.peek(2)));
      this.skip(1);
    }
    this.grit(grits, line);
    while (this.isGritNext()) {
      if (this.at(Token.Comma)) {
        this.take(Token.Comma);
        this.leaveOut(THEN);
      } else {
        this.respell(make.tokenSpan(this.take(Token.Word)), ",");
      }
      this.leaveOut(WITH);
      this.grit(grits, line);
    }
    if (this.at(Token.Wet) && line.wet === undefined && this.isPartEnd(2)) {
      // `sand 180 wet`
      const at = line.verb!.span.end;
      this.respell(make.makeName(this.take(Token.Wet)).span, "");
      this.respell({ start: at, end: at }, " wet");
      line.wet = { kind: "name", text: "wet", span: { start: at, end: at } };
    }
  }

  /** `120 until dull, 180`: how far one of the grits goes, which is told behind them in the plain form. */
  private untilBefore(line: StepLine, grit: string): void {
    const text = this.restOfPart();
    const isOne = /^(?:until|till|only|just) \p{L}{2,20}(?: \p{L}{1,20}){0,4}$/iu.test(text);
    const length = text.split(" ").length;
    if (!isOne || !this.at(Token.Comma, length + 1) || !this.at(Token.NumberToken, length + 2)) {
      return;
    }
    const span = this.takeText(text)!;
    const said = `${grit} ${text}`;
    this.respell(span, "");
    line.what = { kind: "title", value: line.what ? `${line.what.value}, ${said}` : said, span };
  }

  /** One grit, or several that are written together. */
  private grit(grits: tree.Value[], line: StepLine): void {
    const first = this.peek(1);
    const group: LexToken[] = [];
    if (this.isFigureOfGrit(1)) {
      group.push(...this.gritFigures());
      // A stroke without a grit behind it is left for the end of the line to report.
      while (this.peek(1).text === "/" && this.isFigureOfGrit(2)) {
        this.skip(1);
        group.push(...this.gritFigures());
      }
    }
    if (group.length === 0) {
      grits.push(this.value("a grit"));
      return;
    }
    const hyphen = this.peek(1);
    if (
      hyphen.type === Token.NumberToken &&
      hyphen.text.startsWith("-") &&
      hyphen.start === endOf(this.peek(0))
    ) {
      this.skip(1);
      group.push({ ...hyphen, text: hyphen.text.slice(1), start: hyphen.start + 1 });
    }
    const isWritten = group.length === 1 && group[0]!.text === first.text;
    if (!isWritten) {
      const span = { start: first.start, end: endOf(this.peek(0)) };
      this.respell(span, group.map(({ text }) => text).join(", "));
    }
    this.leaveOut(GRIT);
    grits.push(...group.map(gritOf));
    this.untilBefore(line, group.at(-1)!.text);
  }

  /** Whether a token stands for grits alone: `120`, `P120`, `120/150`, `P280-P320`. */
  private isFigureOfGrit(ahead: number): boolean {
    const token = this.peek(ahead);
    const isPlain = token.type === Token.NumberToken && !/[ \t-]/u.test(token.text);
    return isGritWord(token) || (isPlain && this.peek(ahead + 1).type !== Token.Unit && isSplit(token.text));
  }

  /** The figures of the next token, which is one that stands for grits. */
  private gritFigures(): readonly LexToken[] {
    const token = this.peek(1);
    this.skip(1);
    return figuresIn(token);
  }

  /** After the comma (or `then`): a grit, or a name that is the whole part. */
  private isGritNext(): boolean {
    if (!this.at(Token.Comma)) {
      const ahead = this.isWordAt("then", 1) && this.at(Token.With, 2) ? 3 : 2;
      const isJoint = this.isWordAt("then", 1) || this.at(Token.And);
      return (
        isJoint &&
        !this.isTimeAt(ahead) &&
        (this.at(Token.NumberToken, ahead) || isGritWord(this.peek(ahead)))
      );
    }
    const ahead = this.isWordAt("then", 2) ? 3 : 2;
    if (this.isTimeAt(ahead)) {
      return false;
    }
    const [next, after] = [this.peek(ahead), this.peek(ahead + 1).type];
    if (isSaidAlone(next.text)) {
      return false;
    }
    const isAlone = after === Token.Comma || after === Token.End;
    return (
      (next.type === Token.NumberToken && after !== Token.Coats && after !== Token.Of) ||
      isGritWord(next) ||
      (next.type === Token.Word && isAlone)
    );
  }

  private isTailNext(): boolean {
    const { type } = this.peek(1);
    return Token.TAIL_TYPES.has(type) && type !== Token.Wet;
  }
}

/** What takes a coat off and is no material. */
const BY_HAND =
  /^(?:mechanically|dry\b|(?:by|with) (?:an? |the )?(?:hand|machine|heat|hot air|infrared|scraper|card scraper|cabinet scraper|knife|blade|chisel|glass)\b)/iu;
/** What work is rubbed with that is no liquid. */
const NO_LIQUID =
  /wool|pads?\b|paper|fleece|web|grit|cloth|stone|block|brush|sponge|felt|leather|powder|hand|candle|wax|\d/iu;
/** `with oxalic acid`, `with oxalic acid 5 %` */
const WITH_SHARE = /^with (\p{L}{2,20} \p{L}{2,20}(?: \d{1,2}(?:\.\d{1,2})? ?%)?)(?=$| )/iu;
/** A shorter word of which nothing is known may be a slip of the pen. */
const SHORTEST_OWN = 5;
const FAMILY_WORDS = WORD_SPELLINGS.get("family");
/** Soap and water are built in; what stands around them is said of them. */
const SOAP_OR_WATER =
  /^with ((?:a little |some )?(?:mild|soft|warm|hot|cold|lukewarm|soapy|clean|clear|distilled|deionised|deionized|demineralised|tap|rain|neutral|plain) (?:and )?(?:(?:mild|warm|soapy) )?)?(soap|water)( \d{1,2}(?:\.\d)? ?%(?: in (?:\p{L}{3,14} )?water)?| in (?:\p{L}{3,14} )?water| and (?:a (?:drop|little|dash|shot|splash|bit|spoonful)|some|very|vinegar)\b[\p{L} ]{0,40})?(?=$| x \d)/iu;
/** Work that is done with tools alone. */
const BY_TOOLS: ReadonlySet<string> = new Set(
  "clamp,unclamp,lift,rack,stack,pack,unpack,hang,stand,label,photograph,mark,iron,steam,drill,number,brush,brush out,take apart,knock apart,cut out,cramp,cover,uncover,wrap,unwrap,air,air out,ventilate,hang up,lay out,lay down,weigh,write down,write,move,carry,screw,unscrew,cut,plane,ease,chamfer,dismantle,dig out,wax,oil".split(
    ",",
  ),
);
const STEP_TAILS: ReadonlySet<TokenType> = new Set([
  Token.By,
  Token.Takes,
  Token.Uses,
  Token.Together,
  Token.Apart,
]);
/** Work that takes a film or harms who does it: with what it is done must be a material. */
const HAZARDOUS: ReadonlySet<string> = new Set(["strip", "dewax", "bleach", "clean"]);
const TOOL =
  /(?:scraper|brush|cloth|rags?|pad|vacuum|knife|blade|wool|paper|block|sponge|sander|iron|chisel|spatula)$/iu;
/** How what is said of a place, a tool or a measure begins. */
const HOW_BEGINS =
  /^(?:on|at|in|to|under|over|until|for|around|along|inside|outside|near|from|against|between|as|so|or|only|every|all|both|very|just|mostly|by) /iu;
const OWN_PLACE = /^(?!and\b|then\b|with\b|wiht\b|by\b)\p{L}{3,30}(?: \p{L}{1,20}){0,6}$/iu;
const HOW: Readonly<Record<string, true>> = Object.fromEntries(HOW_PHRASES.map((phrase) => [phrase, true]));
/** Work on spots alone, which is told with what is done there. */
const ON_SPOTS: ReadonlySet<string> = new Set(["spot", "dab", "dot"]);
/** `with 0000 steel wool`, `with a grey pad` */
const WITH_ABRASIVE =
  /^(?:with )?(?:an? |the )?((?:(?:0{1,4}|fine|medium|coarse|abrasive|scouring|grey|gray|white|green|red|maroon|brown|bronze|brass|steel|wire)[ _]){0,3}(?:wool|pads?|fleece|web))$/iu;
/** So many words may say what is filled or cleaned. */
const MOST_WORDS = 6;
const WITH = phrases("with");
const FOR = phrases("for");
const NEXT_DAY =
  /^until (?:the )?(?:next (?:morning|day|session|evening|work(?:ing)? ?day|time|week)|tomorrow|(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?)\b/iu;
/** What is said behind the time of a wait, in words without a figure. */
const WAITED_HOW =
  /^(?:, ?(?=\p{L})(?!(?:until|to|or|and)\b)|(?!(?:until|to|or|and|then)\b)\p{L}{2,20}\b|to (?:soak|dry|cure|harden|set|settle|evaporate|act|work|cool|rest|acclimatise|soften|be)\b)[^\d%]*$/iu;
const ABOUT_TIME: Readonly<Record<string, true>> = Object.fromEntries(
  "about|approx|approximately|around|roughly|some|ca|circa|up to|max|maximum|at most|not longer than|no longer than|not more than|no more than|under|over|more than|another"
    .split("|")
    .map((words) => [words, true]),
);
const IT_IS = phrases("it is", "they are", "the coat is");
const OVERNIGHT: Readonly<Record<string, string>> = { "over night": "overnight", "one night": "overnight" };
const THEN = phrases("then");
const TIMES_BEHIND = phrases("times", "applications", "passes", "goes");
const WITH_WATER = phrases("with water", "with warm water", "with hot water", "with a damp cloth");
const GRIT = phrases("grit", "grits");

/** `P240`, `P280-P320` */
function isGritWord(token: LexToken): boolean {
  return token.type === Token.Word && /^[Pp]\d{2,5}(?:-[Pp]?\d{2,5})?$/u.test(token.text);
}

/** A whole grit, or two with a stroke between them: a fraction of less than a grit is none. */
function isSplit(text: string): boolean {
  return text.split("/").every((part) => !text.includes("/") || Number(part) >= 12);
}

function figuresIn(token: LexToken): readonly LexToken[] {
  if (token.type === Token.NumberToken && !/[/-]/u.test(token.text)) {
    return [token];
  }
  return [...token.text.matchAll(/\d+(?:\.\d+)?/gu)].map((match) => ({
    ...token,
    type: Token.NumberToken,
    kind: Token.NumberToken.kind,
    text: match[0],
    start: token.start + match.index,
  }));
}

function gritOf(token: LexToken): tree.Quantity {
  const number = make.makeNumber(token);
  return { kind: "quantity", parts: [{ number }], span: number.span };
}

export function quoted(text: string): string {
  return `"${text.replaceAll("\\", "\\\\").replaceAll('"', '\\"')}"`;
}

/** What must follow a verb. */
function needOf(form: VerbForm | undefined): string {
  switch (form) {
    case "material":
      return "`with` and a material";
    case "grits":
      return "a grit";
    case "what":
    case "what-with":
      return "a text in double quotes";
    default:
      return "the end of the line or a comma";
  }
}
