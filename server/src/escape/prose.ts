/**
 * Texts with names in backticks, and doc comments, as spans and blocks that every renderer can escape in its own way.
 *
 * Doc comments are Markdown by somebody else. Only a plain part of it is read: paragraphs, list items, headings, emphasis
 * and code. Links and pictures become their words, and everything else, HTML included, stays the characters that it is,
 * so that nothing written in a recipe becomes markup on somebody's page.
 */
export interface Span {
  readonly kind: "text" | "code" | "strong" | "emphasis";
  readonly text: string;
}

export type Inline = readonly Span[];

export const plain = (text: string): Inline => (text === "" ? [] : [{ kind: "text", text }]);
export const strong = (text: string): Inline => [{ kind: "strong", text }];
export const code = (text: string): Inline => [{ kind: "code", text }];

/** Names in backticks become code. */
export const prose = (text: string): Inline =>
  text.split("`").flatMap((part, i, parts): Inline => {
    if (part === "") return [];
    // A backtick without its partner is a backtick.
    const isOpen = i % 2 === 1 && i === parts.length - 1;
    if (isOpen) return [{ kind: "text", text: `\`${part}` }];
    return [{ kind: i % 2 === 1 ? "code" : "text", text: part }];
  });

export type DocBlock =
  | { readonly kind: "paragraph"; readonly text: Inline }
  | { readonly kind: "bullets"; readonly items: readonly Inline[] };

const ITEM_MARK = /^(?:[-*+]|\d{1,9}[.)])\s/u;
const HEADING_MARK = /^#{1,6}\s/u;

/** What stands behind a mark at the start of a line; undefined without one. */
function behindMark(line: string, mark: RegExp): string | undefined {
  const text = line.trimStart();
  const length = mark.exec(text)?.[0].length;
  return length === undefined ? undefined : text.slice(length).trimStart();
}

/** A heading may be closed by `#` signs. */
function withoutClosing(heading: string): string {
  let end = heading.length;
  while (heading[end - 1] === "#") end -= 1;
  return heading.slice(0, end).trimEnd();
}

/** A doc comment as paragraphs and lists. */
export function docBlocks(docs: string): readonly DocBlock[] {
  const blocks: DocBlock[] = [];
  let lines: string[] = [];
  let items: string[] = [];
  const close = (): void => {
    if (lines.length > 0) blocks.push({ kind: "paragraph", text: markedSpans(lines.join(" ")) });
    if (items.length > 0) blocks.push({ kind: "bullets", items: items.map(markedSpans) });
    lines = [];
    items = [];
  };
  for (const line of docs.split(/\r\n|\r|\n/u)) {
    const item = behindMark(line, ITEM_MARK);
    const title = behindMark(line, HEADING_MARK);
    if (line.trim() === "") close();
    else if (title !== undefined) {
      close();
      const heading = withoutClosing(title);
      if (heading !== "") blocks.push({ kind: "paragraph", text: markedSpans(heading).map(headed) });
    } else if (item !== undefined) {
      if (lines.length > 0) close();
      items.push(item);
    } else if (items.length > 0) items.push(`${items.pop()} ${line.trim()}`);
    else lines.push(line.trim());
  }
  close();
  return blocks;
}

const MARKED =
  /(?<!`)(?<ticks>`{1,2})(?!`)(?<code>[^`]+)\k<ticks>(?!`)|\*\*(?<strong>[^\s*](?:[^*]*[^\s*])?)\*\*|(?<![\p{L}\p{N}*_])(?<mark>[*_])(?<emphasis>[^\s*_](?:[^*_]*[^\s*_])?)\k<mark>(?![\p{L}\p{N}*_])|(?<bang>!?)\[(?<label>[^[\]]+)\]\((?<target>[^()\s]+)\)/gu;
/** A picture in the folder of the recipe or below it; what has a colon or begins with a slash lies elsewhere. */
const PICTURE_NAME = /^[^:/\\][^:\\]*\.(?:png|jpe?g)$/iu;

/** What a link or a picture is read as: its text and where it leads, which nobody follows by a slip; else as it stands. */
function inertLink(written: string, { bang, label, target }: Record<string, string | undefined>): string {
  if (bang === "!") return PICTURE_NAME.test(target!) ? `${label} (picture ${target})` : written;
  return target!.startsWith("https://") ? `${label} (${target})` : written;
}

const headed = (span: Span): Span => (span.kind === "text" ? { ...span, kind: "strong" } : span);

function markedSpans(text: string): Inline {
  const spans: Span[] = [];
  let end = 0;
  for (const match of text.matchAll(MARKED)) {
    if (match.index > end) spans.push({ kind: "text", text: text.slice(end, match.index) });
    const { code: inCode, strong: inStrong, emphasis } = match.groups!;
    if (inCode !== undefined) spans.push({ kind: "code", text: inCode.trim() || inCode });
    else if (inStrong !== undefined) spans.push({ kind: "strong", text: inStrong });
    else if (emphasis !== undefined) spans.push({ kind: "emphasis", text: emphasis });
    else spans.push({ kind: "text", text: inertLink(match[0], match.groups!) });
    end = match.index + match[0].length;
  }
  if (end < text.length) spans.push({ kind: "text", text: text.slice(end) });
  return spans;
}

/** The characters alone. */
export const bareText = (spans: Inline): string => spans.map(({ text }) => text).join("");
