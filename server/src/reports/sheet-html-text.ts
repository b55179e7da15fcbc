/** Texts of a sheet in HTML. */
import { htmlText } from "../escape/html.ts";
import type { Inline, Span } from "../escape/prose.ts";

/** A text inside an element or a quoted attribute, with its units as print has them. */
export const html = (text: string): string =>
  htmlText(
    text
      .replace(BEFORE_UNIT, "\u00a0")
      .replace(/(?<=\d\u00a0)um(?![\p{L}\p{N}])/gu, "µm")
      .replace(/(?<=\d\u00a0)m([23])(?![\p{L}\p{N}])/gu, (_, power) => (power === "2" ? "m²" : "m³")),
  );

/** A figure and its unit stay on one line. */
const BEFORE_UNIT =
  /(?<=\d) (?=(?:%|(?:L|mL|m2|m3|m2\/L|mm|um|g|h|min|s|days?|weeks?|C|F|air changes\/h)(?![\p{L}\p{N}])))/gu;

const TAGS: Readonly<Record<Exclude<Span["kind"], "text">, string>> = {
  code: "code",
  strong: "strong",
  emphasis: "em",
};

export const inline = (spans: Inline): string =>
  spans
    .map(({ kind, text }) => {
      if (kind === "text") return html(text);
      return `<${TAGS[kind]}>${html(text)}</${TAGS[kind]}>`;
    })
    .join("");
