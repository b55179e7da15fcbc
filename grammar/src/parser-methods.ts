/** The rule for how a coat is put on: `by brush`, `by foam roller and brush`, `by hvlp 1.8 tip`. */

import { phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { lookUp } from "./look-up.ts";
import { quoted } from "./parser-steps.ts";
import { saidOf, type TailOf, TailParser } from "./parser-tails.ts";
import { METHOD_SPELLINGS, TOOL_METHODS } from "./spellings.ts";
import * as Token from "./tokens.ts";
import type * as tree from "./tree.ts";
import { METHODS } from "./vocabulary.ts";

export class MethodParser extends TailParser {
  /** The same with more words around the method: `hvlp 1.8 tip`, `foam roller and brush`, `white pad and machine`. */
  protected byWithWords(tails: tree.Tail[]): boolean {
    const { start } = make.tokenSpan(this.peek(1));
    const text = this.restOfPart();
    const said = methodsIn(text.replace(/^by (?:an? |the )?/u, ""));
    if (said === undefined) {
      return false;
    }
    const keyword = make.makeName(this.take(Token.By));
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
  protected isPlainBy(): boolean {
    const said = this.restOfPart().replace(/^by (?:an? |the )?/u, "");
    return said.split(/ (?:and|or) (?:an? |the )?/u).every((part) => isMethodWord(part));
  }

  protected readonly plainBy = this.tailRule("by", Token.By, (draft: TailOf<"by">) => {
    this.leaveOut(ARTICLES, Token.Word);
    draft.method =
      this.spelling(METHOD_SPELLINGS) ??
      make.makeName(this.take(Token.Word, "a method: brush, roller, pad, spray or another"));
    if ((this.at(Token.And) || this.isWordAt("or", 1)) && this.at(Token.Word, 2)) {
      // Whichever is meant, the rules take the one that is worse for the work.
      draft.or = this.isWordAt("or", 1);
      this.skip(1);
      this.leaveOut(ARTICLES, Token.Word);
      draft.and = this.spelling(METHOD_SPELLINGS) ?? make.makeName(this.take(Token.Word, "a method"));
    }
  });
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

const ARTICLES = phrases("a", "the");
