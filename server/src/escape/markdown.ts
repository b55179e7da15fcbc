/**
 * Text inside Markdown (CommonMark and GitHub's extensions): it is read as it was written and becomes no emphasis, no
 * heading, no link, no picture and no HTML.
 *
 * Addresses are not made into links by themselves either: a reader of somebody else's recipe follows nothing by a slip.
 */
import { type DocBlock, docBlocks, type Inline, spanText } from "./prose.ts";
import { shownText } from "./shown-text.ts";

/** Signs that mean something anywhere in a line. */
const SIGNS = /[\\`*_{}[\]<>|#~!&$]/gu;
/** What is made a link without any sign: `https://…`, `www.…` and `name@host`, as GitHub and editors do it. */
const ADDRESS = /:(?=\/\/)|(?<=[:/])\/(?=\/|[^\s/])|(?<=\bwww)\.|(?<=\S)@(?=\S)|(?<=\b(?:mailto|xmpp)):/giu;

/** Inside a line, behind something else. */
export const markdownText = (text: string): string =>
  shownText(text).replace(SIGNS, "\\$&").replace(ADDRESS, "\\$&");

/** Where it may be the beginning of a line, which the signs of lists and underlines mean something at. */
export const markdownLine = (text: string): string =>
  markdownText(text)
    .replace(/^(\s*)([-+=])/u, "$1\\$2")
    .replace(/^(\s*\d+)([.)])(?=\s|$)/u, "$1\\$2");

/** Fenced by one backtick more than stand in it in a row. */
export function markdownCode(text: string): string {
  const shown = shownText(text);
  const longest = Math.max(0, ...(shown.match(/`+/gu) ?? []).map((run) => run.length));
  const fence = "`".repeat(longest + 1);
  const pad = /^`|`$/u.test(shown) ? " " : "";
  return `${fence}${pad}${shown}${pad}${fence}`;
}

/** Spans in a row. */
export const markdownInline = (spans: Inline): string =>
  spans
    .map((span) => {
      const { kind } = span;
      const text = spanText(span);
      if (kind === "code") return markdownCode(text);
      if (kind === "strong") return `**${markdownLine(text).trim()}**`;
      return kind === "emphasis" ? markdownEmphasis(text) : markdownLine(text);
    })
    .join("");

export const markdownEmphasis = (text: string): string => `*${markdownLine(text).trim()}*`;

/** Lines as a block of code: fenced by one backtick more than stand in them in a row. */
export function markdownFence(lines: readonly string[]): string {
  const shown = lines.map(shownText);
  const longest = Math.max(2, ...shown.flatMap((line) => line.match(/`+/gu) ?? []).map((run) => run.length));
  const fence = "`".repeat(longest + 1);
  return [fence, ...shown, fence].join("\n");
}

/** What of a doc comment is read as Markdown, written anew: paragraphs, lists, emphasis and code. Pictures are words. */
export const markdownDocs = (docs: string): string => docBlocks(docs).map(markdownBlock).join("\n\n");

/** A block of a doc comment. */
export function markdownBlock(block: DocBlock): string {
  switch (block.kind) {
    case "paragraph":
      return markdownInline(block.text);
    case "code":
      return markdownFence(block.lines);
    case "bullets":
      return block.items.map((item) => `- ${markdownInline(item)}`).join("\n");
    case "numbers":
      return block.items.map((item, i) => `${block.start + i}. ${markdownInline(item)}`).join("\n");
  }
}
