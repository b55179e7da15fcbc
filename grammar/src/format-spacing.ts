/**
 * The blanks between the tokens of a line, and the plain form of a token.
 *
 * A unit is brought to its plain form, `sq. ft.` as well as `m²`; only words that are as good as it, such as `hour`, stay.
 */
import { isTrivia, lex } from "./lexer.ts";
import type { Token } from "./tree.ts";
import { formattedUnit } from "./units.ts";

/** What stands before a token of a line. */
export function gapBefore(tokens: readonly Token[], idx: number): "" | " " {
  const [before, token] = [tokens[idx - 1], tokens[idx]!];
  if (before === undefined || isOneOf(token, ",", ")", ":", ".") || isOneOf(before, "(", ".")) {
    return "";
  }
  if (isOneOf(token, "(")) {
    return before.kind === "word" ? "" : " ";
  }
  // `120/150/180` are grits, of which `120/150` is one token.
  if (isStroke(token, before) || (tokens[idx - 2] && isStroke(before, tokens[idx - 2]!))) {
    return "";
  }
  // `10:1` is a ratio, `coats: 3` a name and what it stands for.
  return isOneOf(before, ":") && tokens[idx - 2]?.kind === "number" ? "" : " ";
}

/** A token as it is formatted. */
export function plainTokenText({ kind, text }: Token): string {
  switch (kind) {
    case "unit":
      return formattedUnit(text);
    case "number":
      return text.replace(/\s+/gu, " ");
    case "word":
      return text === "×" ? "x" : text;
    default:
      return text;
  }
}

/** Whether the tokens of a line are still the same tokens once they are formatted. */
export function readsTheSame(tokens: readonly Token[]): boolean {
  const line = tokens.map((token, idx) => gapBefore(tokens, idx) + plainTokenText(token)).join("");
  const read = lex(line).filter((token) => !isTrivia(token));
  return signature(read) === signature(tokens.map((token) => ({ ...token, text: plainTokenText(token) })));
}

/** Tokens in one text. A time such as `4:10` is the same as the ratio `4 : 10`. */
function signature(tokens: readonly Pick<Token, "kind" | "text">[]): string {
  return tokens
    .flatMap(({ kind, text }) =>
      kind === "time" ? text.split(":").flatMap((part, idx) => [...(idx > 0 ? [":"] : []), part]) : [text],
    )
    .join("\n");
}

const isStroke = (token: Token, before: Token): boolean => token.text === "/" && before.kind === "number";

function isOneOf(token: Token, ...signs: readonly string[]): boolean {
  return token.kind === "punctuation" && signs.includes(token.text);
}
