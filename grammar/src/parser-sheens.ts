/** The rule for a sheen that is told in gloss units, with or without a word for it: `20`, `20 %`, `matt 10`, `10 matt`. */
import { endOf } from "./lexer.ts";
import { eitherSheen } from "./line-problems.ts";
import * as make from "./literals.ts";
import { FigureParser } from "./parser-figures.ts";
import * as Token from "./tokens.ts";
import type * as tree from "./tree.ts";
import { isSoldAs, SHEENS_SAID } from "./word-spellings.ts";

export class SheenParser extends FigureParser {
  /** The units, which say more than a word beside them; nothing where there are none. */
  protected glossUnits(): tree.Name | undefined {
    const { start } = this.peek(1);
    const before = this.sheenWord();
    if (!this.at(Token.NumberToken, (before?.length ?? 0) + 1)) {
      return undefined;
    }
    this.skip(before?.length ?? 0);
    const units = make.makeName(this.take(Token.NumberToken));
    const sign = this.peek(1);
    if (sign.text === "%" || /^(?:gu|gloss)$/iu.test(sign.text)) {
      this.respell(make.tokenSpan(sign), "");
      this.skip(1);
    }
    const word = before ?? this.sheenWord();
    if (word === undefined) {
      return units;
    }
    this.skip(before === undefined ? word.length : 0);
    const span = { start, end: endOf(this.peek(0)) };
    this.dropRespellings(start);
    this.respell(span, units.text);
    if (!isSoldAs(word.plain, Number(units.text))) {
      this.report(eitherSheen(span, word.plain, units.text));
    }
    return { ...units, span };
  }

  private sheenWord(): { readonly plain: string; readonly length: number } | undefined {
    const found = this.longestIn(SHEENS_SAID);
    const plain = found && SHEENS_SAID[found.written];
    return found && plain !== undefined ? { plain, length: found.length } : undefined;
  }
}
