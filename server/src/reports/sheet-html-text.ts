/** Texts of a sheet in HTML. */
import { htmlText } from "../escape/html.ts";
import { printedUnits } from "../escape/printed-units.ts";
import { type DocBlock, type Inline, type PictureSpan, pictureWords, type Span } from "../escape/prose.ts";

/** A text inside an element or a quoted attribute, with its units as print has them. */
export const html = (text: string): string => htmlText(printedUnits(text.replace(BEFORE_UNIT, "\u00a0")));

/** A figure and its unit stay on one line. */
const BEFORE_UNIT =
  /(?<=\d) (?=(?:%|(?:L|mL|qt|gal|floz|m2|m3|m2\/L|ft2|ft2\/qt|mm|um|g|h|min|s|days?|weeks?|C|F|air changes\/h)(?![\p{L}\p{N}])))/gu;

const TAGS: Readonly<Record<Exclude<Span["kind"], "text" | "picture">, string>> = {
  code: "code",
  strong: "strong",
  emphasis: "em",
};

/** A picture that was read and may be shown, or why not, as the end of a sentence. */
export type ShownPicture =
  | {
      readonly type: "image/png" | "image/jpeg";
      readonly bytes: Uint8Array;
      readonly width: number;
      readonly height: number;
    }
  | { readonly reason: string };

/** What was read of the pictures that a text names; undefined where nobody looked. */
export type PictureOf = (target: string) => ShownPicture | undefined;

const NO_PICTURES: PictureOf = () => undefined;

export const inline = (spans: Inline, pictureOf: PictureOf = NO_PICTURES): string =>
  spans
    .map((span) => {
      if (span.kind === "picture") return pictureHtml(span, pictureOf(span.target));
      const { kind, text } = span;
      if (kind === "text") return html(text);
      return `<${TAGS[kind]}>${html(text)}</${TAGS[kind]}>`;
    })
    .join("");

function pictureHtml(span: PictureSpan, picture: ShownPicture | undefined): string {
  if (picture === undefined || "reason" in picture) return htmlText(pictureWords(span, picture?.reason));
  const { type, bytes, width, height } = picture;
  return `<img src="data:${type};base64,${base64(bytes)}" alt="${htmlText(span.text)}" width="${width}" height="${height}">`;
}

/** As many bytes as can be arguments of one call. */
const CHUNK = 0x8000;

function base64(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += CHUNK) {
    text += String.fromCharCode(...bytes.subarray(at, at + CHUNK));
  }
  return btoa(text);
}

/** A block of a doc comment. */
export function docBlockHtml(block: DocBlock, pictureOf: PictureOf = NO_PICTURES): string {
  const items = (list: readonly Inline[]): string =>
    list.map((item) => `<li>${inline(item, pictureOf)}</li>`).join("\n");
  switch (block.kind) {
    case "paragraph":
      return `<p>${inline(block.text, pictureOf)}</p>`;
    case "code":
      return `<pre><code>${block.lines.map(htmlText).join("\n")}</code></pre>`;
    case "bullets":
      return `<ul>\n${items(block.items)}\n</ul>`;
    case "numbers":
      return `<ol${block.start === 1 ? "" : ` start="${block.start}"`}>\n${items(block.items)}\n</ol>`;
  }
}
