/** The rules for the material of a layer and its coats: `clear x 3`, `2 coats of clear`, `polish x 6 to 8 sessions`. */
import { gist } from "./gist.ts";
import { endOf } from "./lexer.ts";
import { phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { isSaidTail } from "./own-words.ts";
import { MethodParser } from "./parser-methods.ts";
import { NUMBER_WORDS, valueText } from "./parser-parts.ts";
import { AT_TAIL, type Line, quoted } from "./parser-steps.ts";
import type { BareTail } from "./parser-tails.ts";
import * as Token from "./tokens.ts";
import { t } from "./translate.ts";
import type * as tree from "./tree.ts";
import { plainUnit } from "./units.ts";

export type LayerLine = Line<tree.LayerStatement>;

/** How words begin that say where a coat goes on. */
const PLACE_BEHIND =
  /^(?:into|in|on|along|around|inside|onto|across|from) (?:the |all |both )?(?!only\b|top of\b)\p{L}/iu;

/** `with grip_powder`: what is stirred in, unless it is a second part or thins. */
const WITH_ADDITIVE =
  /^with (?!.{0,60}(?:harden|catal|activat|accelerat|thinn|part|component|spirit|water|alcohol|turpentine|acetone|solvent|isocyan))\p{L}[\p{L}_ ]{2,40}$/iu;

export class CoatParser extends MethodParser {
  protected readonly layerMain = this.part(AT_TAIL, (line: LayerLine, tails: tree.Tail[]): void => {
    const { start } = this.peek(1);
    const laid = this.laidFirst();
    const counted = this.at(Token.Coats, 2) ? this.countInWords() : undefined;
    if (counted !== undefined) {
      // `two coats of clear`
      line.coats = counted;
      this.skip(1);
      this.leaveOut(OF);
      line.material = this.nameOf(this.take(Token.Word, "a material"));
      this.dropRespellings(start);
      this.respell({ start, end: line.material.span.end }, `${line.material.text} ${coatsText(line)}`);
    } else if (this.at(Token.NumberToken)) {
      this.coatsFirst(line);
    } else {
      line.material = this.nameOf(this.take(Token.Word, "a material"));
      if (this.at(Token.X)) {
        this.take(Token.X);
        this.coats(line);
        this.leaveOut(COATS_BEHIND);
      } else if (this.at(Token.NumberToken) && !this.isAmount()) {
        this.coatsBehind(line);
      } else if (this.isWordAt("twice", 1)) {
        line.coats = this.twice();
      }
    }
    if (laid !== undefined) {
      tails.push(laid);
      const plain = [line.material!.text, coatsText(line)].filter((part) => part !== "").join(" ");
      this.dropRespellings(start);
      this.respell({ start, end: endOf(this.peek(0)) }, `${plain}, ${laid.kind}`);
    }
    this.onPlaces(tails);
    if (!this.isTailWithoutComma() && !this.at(Token.StringToken)) {
      this.endOfPart(undefined, (next) => Token.TAIL_TYPES.has(next));
    }
  });

  /** `twice`, also behind a comma: two coats. */
  protected twice(): tree.Value {
    const { span } = make.makeName(this.take(Token.Word));
    this.respell(span, "x 2");
    return { kind: "quantity", parts: [{ number: { kind: "number", text: "2", value: 2, span } }], span };
  }

  /** `two`, before the word for coats. */
  private countInWords(): tree.Value | undefined {
    const value = NUMBER_WORDS[this.peek(1).text.toLowerCase()];
    if (value === undefined || !Number.isInteger(value)) {
      return undefined;
    }
    const { span } = make.makeName(this.take(Token.Word));
    return {
      kind: "quantity",
      parts: [{ number: { kind: "number", text: String(value), value, span } }],
      span,
    };
  }

  /** `stain on bare places`: a part of the surface, without the comma. */
  private onPlaces(tails: tree.Tail[]): void {
    const said = /^on (?:the )?((?!top)\p{L}{2,20}(?: \p{L}{2,20}){0,4})$/iu.exec(this.restOfPart());
    const at = endOf(this.peek(0));
    const span = said ? this.takeText(said[0]) : undefined;
    if (!said || span === undefined) {
      return;
    }
    const where = said[1]!.replace(/ only$/u, "");
    this.respell({ start: at, end: span.end }, `, only ${quoted(where)}`);
    const keyword: tree.Name = { kind: "name", text: "only", span: { start: at, end: at } };
    tails.push({ kind: "only", keyword, where: { kind: "title", value: where, span }, span });
  }

  /** `mist coat of lacquer`, `thin shellac`: the plain form has it as a tail. */
  protected laidFirst(): Extract<tree.Tail, { readonly kind: BareTail }> | undefined {
    const kind = Token.BARE_TAILS.get(this.peek(1).type);
    const ahead = this.at(Token.Coats, 2) ? (this.at(Token.Of, 3) ? 4 : 3) : 2;
    const { type } = this.peek(ahead);
    const isMaterial =
      this.at(Token.Word, ahead) && !Token.TAIL_TYPES.has(type) && !Token.BARE_TAILS.has(type);
    if (kind === undefined || !isMaterial) {
      return undefined;
    }
    const { span } = make.makeName(this.take(Token.Word));
    this.skip(ahead - 2);
    return { kind, keyword: { kind: "name", text: kind, span }, span };
  }

  /** `clear mist coat`, `oil 30 g/m2`: what can be no name here. */
  /** `into corners`, `along the edges`: where it goes on, in words. */
  protected isPlaceNext(): boolean {
    const text = this.restOfPart();
    return (PLACE_BEHIND.test(text) || WITH_ADDITIVE.test(text)) && isSaidTail(text, "layer");
  }

  protected isTailWithoutComma(): boolean {
    return Token.BARE_TAILS.has(this.peek(1).type) || this.isAmount() || this.isPlaceNext();
  }

  /** `3`, `2 to 3`, `2-3`, `2 or 3`, `6 to 8 sessions` */
  protected coats(line: LayerLine): void {
    const { start } = this.peek(1);
    const { from, to } = this.range("a number of coats");
    line.coats = from;
    if (to === undefined && from.kind === "name") {
      this.coatsMore(line);
    }
    if (to !== undefined) {
      line.coatsTo = to;
    } else if (this.isWordAt("or", 1) && this.at(Token.NumberToken, 2)) {
      this.respell(make.tokenSpan(this.take(Token.Word)), "to");
      line.coatsTo = this.value("a number of coats");
    }
    this.sessions(line, start);
  }

  /** `coats - 1`, `coats + 1`: the other coats, where the first or the last has a line of its own. */
  protected coatsMore(line: LayerLine): void {
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
  protected sessions(line: LayerLine, start: number): void {
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
  protected coatsFirst(line: LayerLine): void {
    const { start } = this.peek(1);
    const isRead = this.apart(() => {
      this.coats(line);
      if (this.at(Token.X)) {
        this.take(Token.X);
      } else {
        if (line.sessions === undefined) {
          this.take(Token.Coats, "`x` and a material");
        }
        this.leaveOut(OF);
      }
    });
    if (isRead) {
      line.material = this.nameOf(this.take(Token.Word, "a material"));
      this.dropRespellings(start);
      this.respell({ start, end: line.material.span.end }, `${line.material.text} ${coatsText(line)}`);
    } else {
      throw this.mismatch("a material");
    }
  }

  /** `clear 2 coats` */
  protected coatsBehind(line: LayerLine): void {
    const { start } = this.peek(1);
    if (this.apart(() => this.coatsWithWord(line))) {
      this.respell({ start, end: endOf(this.peek(0)) }, coatsText(line));
    }
  }

  protected coatsWithWord(line: LayerLine): void {
    this.coats(line);
    if (line.sessions === undefined) {
      this.take(Token.Coats, "`x` and a number of coats");
    }
  }

  /** Whether a number of coats can follow: `2 coats`, `2 to 3 coats`, `2 x`. */
  protected isCoatsNext(): boolean {
    return /^\d+(?:\.\d+)? ?(?:(?:-|–|to|or) ?\d+ ?)?(?:coats?|sessions?|x|$)/iu.test(this.restOfPart());
  }

  /** `30 g/m2`: how much goes on. */
  protected isAmount(): boolean {
    const unit = this.peek(this.peek(2).type === Token.NumberToken ? 3 : 2);
    return this.at(Token.NumberToken) && unit.type === Token.Unit && AMOUNTS.has(plainUnit(unit.text) ?? "");
  }

  /** `layer clear, x 3`, `layer clear, 3 coats`: the plain form has it behind the name. */
  protected lateCoats(layer: LayerLine): void {
    const [comma, first] = [this.peek(0), this.peek(1)];
    const late: LayerLine = { tails: [] };
    if (this.at(Token.X)) {
      this.take(Token.X);
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
        message: gist((suchAs) => t`expected the number of coats once${suchAs("layer clear x 3")}`),
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
    this.respell({ start: comma.type === Token.Comma ? comma.start : first.start, end }, "");
  }
}

const AMOUNTS: ReadonlySet<string> = new Set(["g/m2", "mL/m2"]);

export const COATS_BEHIND = phrases("coats", "coat");

const OF = phrases("of");

/** A session of French polishing is many thin passes, and no coat of a label. */
const SESSIONS: ReadonlySet<string> = new Set(["session", "sessions"]);

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
