/** Fails where a text that goes out would still do something to the one who looks at it. */
import { expect } from "vitest";
import { readMarkdownAsEditors } from "../reports/markdown.ts";

/** Written out anew and not taken from the product: categories of Unicode and the list of Bidi_Control (PropList.txt). */
const DRIVING =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: They are what is looked for.
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f]|[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]|[\u2028\u2029]|\p{Cs}/u;

/** For a person's screen: line feeds, and where lines end so, carriage returns before them, and no other control. */
export function expectInert(text: string, { ends = "\n" }: { readonly ends?: "\n" | "\r\n" } = {}): void {
  const found = DRIVING.exec(ends === "\r\n" ? text.replaceAll("\r\n", "\n") : text);
  expect(found && JSON.stringify(text.slice(Math.max(0, found.index - 40), found.index + 10))).toBe(null);
}

/** Markdown that leads nowhere and loads nothing, however eagerly an editor reads it. */
export function expectInertMarkdown(markdown: string): void {
  expectInert(markdown);
  expect(readMarkdownAsEditors(markdown).filter(({ type }) => LIVE.has(type))).toEqual([]);
}

const LIVE: ReadonlySet<string> = new Set(["link_open", "image", "html_inline", "html_block"]);
