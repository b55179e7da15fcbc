/** The rule for the duties of a recipe, with what is said of them and what is worn besides: `gloves "butyl", "suit"`. */
import { AT_COMMA, type Draft, NO_SPAN } from "./line-reader.ts";
import * as make from "./literals.ts";
import { isNear } from "./own-words.ts";
import { RecordParser } from "./parser-records.ts";
import { type Line, quoted } from "./parser-steps.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import type * as tree from "./tree.ts";
import { DUTIES } from "./vocabulary.ts";
import { DUTY_SPELLINGS, keyOf } from "./word-spellings.ts";

type SafetyLine = Line<tree.SafetyStatement>;
type Duty = tree.SafetyStatement["duties"][number];

const isAnd = (next: TokenType): boolean => next === Token.And;

export class SafetyParser extends RecordParser {
  readonly safety = this.line(
    (): SafetyLine => ({ duties: [] }),
    (line) => {
      const duties: Duty[] = [];
      line.duties = duties;
      this.list((into) => this.duty(into, line), duties);
    },
  );

  protected readonly duty = this.part(AT_COMMA, (duties: Duty[], line: SafetyLine): void => {
    const worn = this.wornBesides() ?? this.wordsOfOwn();
    if (worn !== undefined) {
      line.said = [...(line.said ?? []), worn];
    } else {
      this.dutyWord(duties);
    }
    this.endOfPart(undefined, isAnd);
  });

  private dutyWord(duties: Duty[]): void {
    const draft = { name: undefined as never, span: NO_SPAN } as Draft<Duty>;
    this.spanned(draft, () => {
      if (this.glovesOfKind(draft)) {
        duties.push(draft);
        return;
      }
      const said = this.spelt(DUTY_SPELLINGS);
      draft.name = said
        ? { kind: "name", text: said.plain, span: said.span }
        : make.makeName(this.take(Token.Word, "a duty"));
      duties.push(draft);
      if (this.at(Token.NumberToken)) {
        draft.airChanges = this.quantity("the air changes");
      }
      this.kind(draft);
    });
  }

  /** `"suit"`, `suit`, `dust_extraction`: what is worn or done besides, which the plain form quotes. */
  private wornBesides(): tree.Title | undefined {
    if (this.at(Token.StringToken)) {
      return make.makeTitle(this.take(Token.StringToken));
    }
    const text = this.restOfPart();
    const said = WORN_BESIDES.exec(text.replaceAll("_", " "));
    const span = said ? this.takeText(text.slice(0, said[0].length)) : undefined;
    return said && span ? this.quotedWords(said[0], span) : undefined;
  }

  /** `no_food`, `waste to the lidded bin`: words that no duty is near to; none of them stands for one. */
  private wordsOfOwn(): tree.Title | undefined {
    const text = this.restOfPart();
    const words = text.replaceAll("_", " ");
    const first = text.split(" ")[0]!;
    const isOwn = /^\p{L}[^"\\{}]{2,79}$/u.test(words) && (words.includes(" ") || /^\p{L}{4,}$/u.test(words));
    if (
      !isOwn ||
      NOT_WORN.test(words) ||
      KIND_OF_GLOVES.test(text) ||
      isDuty(text) ||
      (first !== "no" && isNear(first, DUTIES))
    ) {
      return undefined;
    }
    const span = this.takeText(text);
    return span && this.quotedWords(words, span);
  }

  /** `gloves butyl`, `gloves "butyl"` */
  private kind(draft: Draft<Duty>): void {
    if (this.at(Token.StringToken)) {
      draft.what = make.makeTitle(this.take(Token.StringToken));
      return;
    }
    const rest = this.restOfPart();
    const said = GLOVE_KIND.exec(rest);
    const span = said && draft.name.text === "gloves" ? this.takeText(said[0]) : undefined;
    if (said && span) {
      draft.what = this.quotedWords(said[0].replaceAll("_", " "), span);
    } else if (SAID_OF_DUTY.test(rest)) {
      const all = this.takeText(rest);
      draft.what = all && this.quotedWords(rest.replaceAll("_", " "), all);
    }
  }

  /** `butyl gloves`, `long_nitrile_gloves` */
  private glovesOfKind(draft: Draft<Duty>): boolean {
    const said = KIND_OF_GLOVES.exec(this.restOfPart());
    const span = said ? this.takeText(said[0]) : undefined;
    if (!said || !span) {
      return false;
    }
    const value = said[1]!.replaceAll("_", " ");
    this.respell(span, `gloves ${quoted(value)}`);
    draft.name = { kind: "name", text: "gloves", span };
    draft.what = { kind: "title", value, span };
    return true;
  }

  private quotedWords(value: string, span: tree.Span): tree.Title {
    this.respell(span, quoted(value));
    return { kind: "title", value, span };
  }
}

/** Whether a text begins with a duty in some spelling. */
const isDuty = (text: string): boolean =>
  text.split(" ").some((_, idx, words) => DUTY_SPELLINGS.has(keyOf(words.slice(0, idx + 1).join(" "))));

/** What stands for no duty, and is asked about. */
const NOT_WORN =
  /^(?:mask|face mask|breathing|lead|food)\b|^no (?:dust|gloves|vent|eye|goggles|glasses|hearing|extraction|ignition|fresh|open flame|smoking|sparks|flames|naked)|lead|respirator|\bmask$|dry sanding|heat gun|floor sheet|food safe/iu;
/** When, where and how a duty is done, in words. */
const SAID_OF_DUTY =
  /^(?:first|while|when|whenever|with|for|at|in|on|if|during|once|until|by|against|under|full|fully|full-face|windows?|doors?|both|all|always|stays?|change[ds]?) ?[^"\\{}\d]{0,60}$/iu;
const KINDS_OF_GLOVES =
  "(?:butyl|nitrile|neoprene|latex|rubber|vinyl|leather|cotton|chemical|long|thick|thin|disposable|household|work|resistant)";
/** `butyl`, `long nitrile` */
const GLOVE_KIND = new RegExp(`^(?:${KINDS_OF_GLOVES}[ _]){0,2}${KINDS_OF_GLOVES}(?=$| and )`, "iu");
const KIND_OF_GLOVES = new RegExp(
  `^((?:${KINDS_OF_GLOVES}[ _]){0,2}${KINDS_OF_GLOVES})[ _]gloves(?=$| and )`,
  "iu",
);
/** Clothes, and what takes dust away where it is made; none of it is a duty, and none stands for one. */
const WORN_BESIDES =
  /^(?:(?:disposable|spray|painting|protective|full|body|long|leather|rubber|safety) ){0,2}(?:suit|overalls?|coveralls?|apron|boots|shoes|hood|long sleeves|face shield|visor|clothing|clothes|dust extraction|(?:dust )?extractor|outdoors|open air|barrier cream|hair net|cap)(?=$| and )/iu;
