/**
 * Care cards as text, Markdown and HTML. They are laid out once, as sheets are, and every form escapes what a recipe says.
 * The HTML is one file without a script: it loads nothing, and every card begins a page of paper.
 */
import { spokenLanguage, t } from "../../../grammar/src/translate.ts";
import { type Inline, plain, strong } from "../escape/prose.ts";
import type { CareCard, CareFact, SurfaceCare } from "../views/care-card.ts";
import type { Block, LaidOut } from "./sheet-document.ts";
import { html, inline } from "./sheet-html-text.ts";
import { sheetsMarkdown } from "./sheet-markdown.ts";
import type { SheetFormat } from "./sheet-report.ts";
import { SHEET_COLOURS } from "./sheet-style.ts";
import { sheetsText } from "./sheet-text.ts";

const FORMATS = {
  text: sheetsText,
  markdown: sheetsMarkdown,
  html: cardsHtml,
} satisfies Readonly<Record<SheetFormat, (cards: readonly LaidOut[]) => string>>;

export const careReport = (cards: readonly CareCard[], format: SheetFormat): string =>
  cardsReport(cards.map(laidOut), format);

/** Whatever is laid out as a card is. */
export const cardsReport = (cards: readonly LaidOut[], format: SheetFormat): string => FORMATS[format](cards);

const ofThePlan = (): string =>
  t`These dates are those of the plan, for the air that was planned with. If the work ended later, each of them moves by as much.`;
const foot = (): string =>
  t`This card was calculated from the text of a recipe. It gives the usual advice and certifies nothing as safe: the labels and safety data sheets of the products, local codes and licensed practice come first.`;

function laidOut({ title, count, handedOn, dates, dated, care, surfaces, cautions }: CareCard): LaidOut {
  return {
    sort: t`Care card`,
    title,
    origin: plain(count > 1 ? t`one for each of the ${count} pieces` : t`to keep with the piece`),
    head: handedOn.length > 0 ? [facts(handedOn)] : [],
    sections: [
      {
        title: t`When it may be used`,
        blocks: [facts(dates), ...(dated ? [paragraph(plain(ofThePlan()))] : [])],
      },
      { title: t`How to look after it`, blocks: care.flatMap(careBlocks) },
      { title: t`What it was finished with`, blocks: [facts(surfaces)] },
      { title: t`Take care`, blocks: cautions.length > 0 ? [bullets(cautions.map(plain))] : [] },
    ].filter(({ blocks }) => blocks.length > 0),
    foot: foot(),
  };
}

const paragraph = (text: Inline): Block => ({ kind: "paragraph", text });
const bullets = (items: readonly Inline[]): Block => ({ kind: "bullets", items });
const facts = (rows: readonly CareFact[]): Block => ({
  kind: "facts",
  rows: rows.map(({ name, text }) => ({ name, text: plain(text) })),
});

const careBlocks = ({ surfaces, top, clean, avoid, repair }: SurfaceCare): readonly Block[] => [
  paragraph([...strong(surfaces.join(", ")), ...plain(t`. On top: ${top}.`)]),
  facts([
    { name: t`Clean`, text: clean },
    { name: t`Keep away`, text: avoid },
    { name: t`Repair`, text: repair },
  ]),
];

// ---------------------------------------------------------------------------------------------------------------
// HTML

const { light } = SHEET_COLOURS;

const STYLE = `:root { color-scheme: light; }
body { margin: 0 auto; padding: 0 1rem 2rem; max-width: 42rem; background: ${light.paper}; color: ${light.ink};
  font: 1.0625rem/1.45 system-ui, "Segoe UI", "Helvetica Neue", "DejaVu Sans", Arial, sans-serif; overflow-wrap: anywhere; }
h1 { margin: 0.7em 0 0; font-size: 1.8rem; line-height: 1.15; }
h2 { margin: 1.2em 0 0.4em; border-bottom: 2px solid ${light.ink}; font-size: 1.2rem; }
dl { margin: 0.3em 0; }
dl div { display: grid; grid-template-columns: 9.5rem 1fr; gap: 0 1rem; padding: 0.2em 0; border-bottom: 1px solid ${light.rule}; }
dt { font-weight: 600; }
dd { margin: 0; }
.sort, footer { color: ${light.soft}; }
article + article { margin-top: 3rem; border-top: 6px double ${light.ink}; }
@media (max-width: 30rem) { dl div { grid-template-columns: 1fr; } }
@media print { @page { margin: 15mm; } body { padding: 0; font-size: 10.5pt; }
  article + article { margin-top: 0; border-top: none; break-before: page; } section, dl div { break-inside: avoid; } }
`;

function cardsHtml(cards: readonly LaidOut[]): string {
  return [
    "<!doctype html>",
    `<html lang="${spokenLanguage()}">`,
    "<head>",
    '<meta charset="utf-8">',
    `<title>${html(cards.map(({ title }) => title).join(", ") || t`Care card`)}</title>`,
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    `<style>\n${STYLE}</style>`,
    "</head>",
    "<body>",
    "<main>",
    ...cards.map(cardHtml),
    "</main>",
    "</body>",
    "</html>",
    "",
  ].join("\n");
}

const cardHtml = ({ sort, title, origin, head, sections, foot }: LaidOut): string =>
  [
    "<article>",
    `<header><h1>${html(title)}</h1>`,
    `<p class="sort">${html(sort)}, ${inline(origin)}</p></header>`,
    ...head.map(blockHtml),
    ...sections.flatMap((section) => [
      `<section><h2>${html(section.title)}</h2>`,
      ...section.blocks.map(blockHtml),
      "</section>",
    ]),
    `<footer><p>${html(foot)}</p></footer>`,
    "</article>",
  ].join("\n");

/** The kinds of blocks that a card is laid out in. */
function blockHtml(block: Block): string {
  switch (block.kind) {
    case "paragraph":
      return `<p>${inline(block.text)}</p>`;
    case "bullets":
      return `<ul>\n${block.items.map((item) => `<li>${inline(item)}</li>`).join("\n")}\n</ul>`;
    case "numbers":
      return `<ol start="${block.start}">\n${block.items.map((item) => `<li>${inline(item)}</li>`).join("\n")}\n</ol>`;
    case "facts":
      return `<dl>\n${block.rows.map(({ name, text }) => `<div><dt>${html(name)}</dt><dd>${inline(text)}</dd></div>`).join("\n")}\n</dl>`;
    default:
      throw new Error(`a care card has no ${block.kind}`);
  }
}
