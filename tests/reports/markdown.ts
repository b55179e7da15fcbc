/**
 * Markdown read by a library that knows nothing of ours, with HTML switched on, so that what becomes HTML is seen.
 */
// @ts-expect-error The library comes without types.
import MarkdownIt from "markdown-it";

interface LibraryToken {
  readonly type: string;
  readonly tag: string;
  readonly level: number;
  readonly content: string;
  readonly children: readonly LibraryToken[] | null;
  attrGet(name: string): string | null;
}

export interface MarkdownToken {
  readonly type: string;
  readonly tag: string;
  readonly level: number;
  /** Of `inline`: as it reads, without marks. */
  readonly text: string;
  /** Of an ordered list. */
  readonly start: number;
}

interface Library {
  parse(text: string, env: object): readonly LibraryToken[];
  readonly linkify: { set(options: { readonly fuzzyLink: boolean }): void };
}

const newLibrary = (): Library => new MarkdownIt({ html: true, linkify: true });

/** Blocks and the spans in them, in order. */
export const markdownTokens = (markdown: string): readonly MarkdownToken[] =>
  tokensOf(newLibrary(), markdown);

/** As the preview of VS Code reads it: of addresses without a sign only those with a scheme, and mail, become links. */
export function readMarkdownAsEditors(markdown: string): readonly MarkdownToken[] {
  const library = newLibrary();
  library.linkify.set({ fuzzyLink: false });
  return tokensOf(library, markdown);
}

function tokensOf(library: Library, markdown: string): readonly MarkdownToken[] {
  return library
    .parse(markdown, {})
    .flatMap((token) => [token, ...(token.children ?? [])])
    .map((token) => ({
      type: token.type,
      tag: token.tag,
      level: token.level,
      text: (token.children ?? []).map(({ content }) => content).join(""),
      start: Number(token.attrGet("start") ?? 1),
    }));
}
