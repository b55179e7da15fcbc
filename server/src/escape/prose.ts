/**
 * Texts with names in backticks, and doc comments, as spans and blocks that every renderer can escape in its own way.
 *
 * Doc comments are Markdown by somebody else. Only a plain part of it is read: paragraphs, lists, headings, emphasis,
 * code. Links become their words, and everything else, HTML included, stays the characters that it is,
 * so that nothing written in a recipe becomes markup on somebody's page. A picture is a span of its own: a page that has
 * read the file may show it, and everybody else says its words and its name.
 */
export type Span =
  | { readonly kind: "text" | "code" | "strong" | "emphasis"; readonly text: string }
  | PictureSpan;

export interface PictureSpan {
  readonly kind: "picture";
  /** What it shows. */
  readonly text: string;
  /** Its file, as written: from where the file with the text lies. */
  readonly target: string;
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
  | { readonly kind: "bullets"; readonly items: readonly Inline[] }
  /** `start` is the first number. */
  | { readonly kind: "numbers"; readonly start: number; readonly items: readonly Inline[] }
  /** Fenced: lines that stay as they are. */
  | { readonly kind: "code"; readonly lines: readonly string[] };

const BULLET_MARK = /^[-*+]\s/u;
const NUMBER_MARK = /^\d{1,9}[.)]\s/u;
const FENCE = /^(?:`{3,}|~{3,})/u;
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

interface List {
  readonly kind: "bullets" | "numbers";
  readonly start: number;
  readonly items: string[];
}

/** A doc comment as paragraphs, lists and code. */
export function docBlocks(docs: string): readonly DocBlock[] {
  const blocks: DocBlock[] = [];
  let paragraph: string[] = [];
  let list: List | undefined;
  let fenced: { readonly fence: string; readonly indent: number; readonly lines: string[] } | undefined;
  const close = (): void => {
    if (paragraph.length > 0) blocks.push({ kind: "paragraph", text: markedSpans(paragraph.join(" ")) });
    if (list) blocks.push(listBlock(list));
    if (fenced) blocks.push({ kind: "code", lines: fenced.lines });
    paragraph = [];
    list = undefined;
    fenced = undefined;
  };
  for (const line of docs.split(/\r\n|\r|\n/u)) {
    const text = line.trim();
    if (fenced) {
      if (closesFence(text, fenced.fence)) close();
      else fenced.lines.push(withoutIndent(line, fenced.indent));
      continue;
    }
    const fence = fenceOf(text);
    const title = behindMark(line, HEADING_MARK);
    const item = behindMark(line, BULLET_MARK) ?? behindMark(line, NUMBER_MARK);
    if (text === "") close();
    else if (fence !== undefined) {
      close();
      fenced = { fence, indent: line.length - line.trimStart().length, lines: [] };
    } else if (title !== undefined) {
      close();
      const heading = withoutClosing(title);
      if (heading !== "") blocks.push({ kind: "paragraph", text: markedSpans(heading).map(headed) });
    } else if (item !== undefined) {
      const kind = BULLET_MARK.test(text) ? "bullets" : "numbers";
      if (list?.kind !== kind) close();
      list ??= { kind, start: Number.parseInt(text, 10) || 0, items: [] };
      list.items.push(item);
    } else if (list) list.items.push(`${list.items.pop()} ${text}`);
    else paragraph.push(text);
  }
  close();
  return blocks;
}

function listBlock({ kind, start, items }: List): DocBlock {
  const texts = items.map(markedSpans);
  return kind === "bullets" ? { kind, items: texts } : { kind, start, items: texts };
}

/** The signs that open a block of code; behind backticks stand none, or it is code in a line. */
function fenceOf(text: string): string | undefined {
  const fence = FENCE.exec(text)?.[0];
  return fence?.startsWith("`") && text.includes("`", fence.length) ? undefined : fence;
}

/** At least as many of the same signs, and nothing else. */
const closesFence = (text: string, fence: string): boolean =>
  text.length >= fence.length && text === fence[0]!.repeat(text.length);

/** Without the blanks that stand before the fence, as far as a line has them. */
function withoutIndent(line: string, indent: number): string {
  const own = line.length - line.trimStart().length;
  return line.slice(Math.min(own, indent));
}

const MARKED =
  /(?<!`)(?<ticks>`{1,2})(?!`)(?<code>[^`]+)\k<ticks>(?!`)|\*\*(?<strong>[^\s*](?:[^*]*[^\s*])?)\*\*|(?<![\p{L}\p{N}*_])(?<mark>[*_])(?<emphasis>[^\s*_](?:[^*_]*[^\s*_])?)\k<mark>(?![\p{L}\p{N}*_])|(?<bang>!?)\[(?<label>[^[\]]+)\]\((?<target>[^()\s]+)\)/gu;
/** A picture in the folder of the recipe or below it; what has a colon or begins with a slash lies elsewhere. */
const PICTURE_NAME = /^[^:/\\][^:\\]*\.(?:png|jpe?g)$/iu;

/** A picture in the folder of the recipe or below it, and a link as its text and where it leads; else what is written. */
function linkSpan(written: string, { bang, label, target }: Record<string, string | undefined>): Span {
  if (bang === "!" && PICTURE_NAME.test(target!)) return { kind: "picture", text: label!, target: target! };
  const isSafe = bang !== "!" && target!.startsWith("https://");
  return { kind: "text", text: isSafe ? `${label} (${target})` : written };
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
    else spans.push(linkSpan(match[0], match.groups!));
    end = match.index + match[0].length;
  }
  if (end < text.length) spans.push({ kind: "text", text: text.slice(end) });
  return spans;
}

/** A picture where it is not shown: `Before (picture photos/before.jpg)`, or with the reason. */
export const pictureWords = ({ text, target }: PictureSpan, reason?: string): string =>
  `${text} (picture ${target}${reason === undefined ? "" : `, which ${reason}`})`;

/** The words of a span without its form. */
export const spanText = (span: Span): string => (span.kind === "picture" ? pictureWords(span) : span.text);

/** The characters alone. */
export const bareText = (spans: Inline): string => spans.map(spanText).join("");

/** The pictures that a doc comment names, as written. */
export const picturesIn = (docs: string): readonly string[] =>
  docs.includes("![") ? docBlocks(docs).flatMap(spansOf).flatMap(targetOf) : [];

const spansOf = (block: DocBlock): Inline => {
  if (block.kind === "code") return [];
  return block.kind === "paragraph" ? block.text : block.items.flat();
};

const targetOf = (span: Span): readonly string[] => (span.kind === "picture" ? [span.target] : []);
