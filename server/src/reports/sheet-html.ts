/**
 * Sheets as one HTML file that needs nothing else: no network, no script, its style inside. For paper first (A4 and
 * Letter), then for a screen, light or dark.
 *
 * Everything of a recipe is escaped; a policy in the head forbids scripts and loading even where that should fail.
 */
import { htmlText } from "../escape/html.ts";
import type { Inline, Span } from "../escape/prose.ts";
import type { Section } from "../views/section/model.ts";
import { inlineLines } from "./inline-lines.ts";
import { sectionScale, sectionSvg } from "./section-svg.ts";
import type {
  Block,
  Box,
  DrawnStep,
  SheetDocument,
  SheetSection,
  Steps,
  Table,
  Tick,
} from "./sheet-document.ts";
import { SHEET_STYLE } from "./sheet-style.ts";

export function sheetsHtml(documents: readonly SheetDocument[]): string {
  const title = documents.map((document) => document.title).join(", ") || "Finish sheet";
  return [
    "<!doctype html>",
    '<html lang="en">',
    "<head>",
    '<meta charset="utf-8">',
    `<title>${html(title)}</title>`,
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    '<meta name="referrer" content="no-referrer">',
    `<style>\n${SHEET_STYLE}</style>`,
    "</head>",
    "<body>",
    ...(documents.length > 1 ? [contents(documents)] : []),
    "<main>",
    ...documents.map(article),
    "</main>",
    "</body>",
    "</html>",
    "",
  ].join("\n");
}

const html = (text: string): string => htmlText(text.replace(BEFORE_UNIT, "\u00a0"));

/** A figure and its unit stay on one line. */
const BEFORE_UNIT =
  /(?<=\d) (?=(?:%|(?:L|mL|m2|m3|m2\/L|mm|um|g|h|min|s|days?|weeks?|C|F|air changes\/h)(?![\p{L}\p{N}])))/gu;

const TAGS: Readonly<Record<Exclude<Span["kind"], "text">, string>> = {
  code: "code",
  strong: "strong",
  emphasis: "em",
};

const inline = (spans: Inline): string =>
  spans
    .map(({ kind, text }) => {
      if (kind === "text") return html(text);
      return `<${TAGS[kind]}>${html(text)}</${TAGS[kind]}>`;
    })
    .join("");

function contents(documents: readonly SheetDocument[]): string {
  const links = documents.map(({ title }, i) => `<li><a href="#sheet-${i + 1}">${html(title)}</a></li>`);
  return `<nav aria-label="Sheets"><ol>\n${links.join("\n")}\n</ol></nav>`;
}

function article(document: SheetDocument, index: number): string {
  const id = `sheet-${index + 1}`;
  return [
    `<article id="${id}" aria-labelledby="${id}-title">`,
    "<header>",
    `<p class="sort">${html(document.sort)}</p>`,
    `<h1 id="${id}-title">${html(document.title)}</h1>`,
    `<p class="origin">${inline(document.origin)}</p>`,
    ...document.head.map((block) => blockHtml(block, id)),
    "</header>",
    ...document.sections.map((section, i) => sectionHtml(section, id, `${id}-section-${i + 1}`)),
    `<footer><p>${html(document.foot)}</p></footer>`,
    "</article>",
  ].join("\n");
}

const sectionHtml = ({ title, blocks }: SheetSection, sheet: string, id: string): string =>
  [
    `<section aria-labelledby="${id}">`,
    `<h2 id="${id}">${html(title)}</h2>`,
    ...blocks.map((block) => blockHtml(block, sheet)),
    "</section>",
  ].join("\n");

function blockHtml(block: Block, sheet: string): string {
  switch (block.kind) {
    case "paragraph":
      return `<p>${inline(block.text)}</p>`;
    case "bullets":
      return listHtml("ul", block.items, block);
    case "facts":
      return `<dl>\n${block.rows.map(({ name, text }) => `<div><dt>${html(name)}</dt><dd>${inline(text)}</dd></div>`).join("\n")}\n</dl>`;
    case "part":
      return `<h3>${html(block.title)}</h3>`;
    case "table":
      return tableHtml(block);
    case "box":
      return boxHtml(block, sheet);
    case "sections":
      return sectionsHtml(block.sections);
    case "steps":
      return stepsHtml(block, sheet);
  }
}

interface ListLook {
  /** Of the items, before their numbers. */
  readonly id?: string;
  readonly isSmall?: true;
}

const listHtml = (tag: "ul" | "ol", items: readonly Inline[], { id, isSmall }: ListLook = {}): string =>
  `<${tag}${isSmall ? ' class="small"' : ""}>\n${items.map((item, i) => `<li${id ? ` id="${id}-${i + 1}"` : ""}>${inlineLines(item).map(inline).join("<br>\n")}</li>`).join("\n")}\n</${tag}>`;

function tableHtml({ caption, columns, groups }: Table): string {
  const classes = columns.map(({ form }) => (form ? ` class="${form}"` : ""));
  const heads = columns.map(({ title }, i) => `<th scope="col"${classes[i]}>${html(title)}</th>`);
  const bodies = groups.map(({ head, rows }) => {
    const scope = rows.length > 1 ? `rowgroup" rowspan="${rows.length}` : "row";
    const lines = rows.map((cells, row) => {
      const first = row === 0 ? `<th scope="${scope}">${inline(head)}</th>` : "";
      return `<tr>${first}${cells.map((cell, i) => `<td${classes[i + 1]}>${inline(cell)}</td>`).join("")}</tr>`;
    });
    // A day of a few lines stays on one page.
    return `<tbody${rows.length > 12 ? "" : ' class="whole"'}>\n${lines.join("\n")}\n</tbody>`;
  });
  return [
    '<div class="table">',
    "<table>",
    `<caption>${html(caption)}</caption>`,
    `<thead><tr>${heads.join("")}</tr></thead>`,
    ...bodies,
    "</table>",
    "</div>",
  ].join("\n");
}

function sectionsHtml(sections: readonly Section[]): string {
  const scale = sectionScale(sections);
  const figures = sections.map(
    (section) =>
      `<figure><figcaption>${html(section.title)}</figcaption>\n${sectionSvg(section, { width: 380, scale })}</figure>`,
  );
  return `<div class="sections">\n${figures.join("\n")}\n</div>`;
}

const boxHtml = ({ tone, title, blocks, isFindings }: Box, sheet: string): string =>
  [
    `<div class="box ${isFindings ? "findings " : ""}${tone}" role="note" aria-label="${html(title)}">`,
    `<p class="title">${html(title)}</p>`,
    ...blocks.map((block) => {
      if (block.kind === "paragraph") return `<p>${inline(block.text)}</p>`;
      if (block.kind === "bullets") return listHtml("ul", block.items);
      return listHtml("ol", block.items, isFindings ? { id: `${sheet}-finding` } : {});
    }),
    "</div>",
  ].join("\n");

const stepsHtml = ({ start, steps }: Steps, sheet: string): string =>
  [
    `<ol class="steps${steps.some(({ ticks }) => ticks.some(({ time }) => time !== "")) ? " dated" : ""}"${start === 1 ? "" : ` start="${start}"`}>`,
    ...steps.map((step) => stepHtml(step, sheet)),
    "</ol>",
  ].join("\n");

function stepHtml(step: DrawnStep, sheet: string): string {
  const { op, title, details, cautions, findings, wear, ticks } = step;
  const links = findings.map((number) => `<a href="#${sheet}-finding-${number}">${number}</a>`);
  return [
    `<li class="${op}">`,
    `<div class="head"><p class="what">${html(title)}</p>`,
    `<p class="ticks">${ticks.map((tick) => tickHtml(tick, title)).join(" ")}</p></div>`,
    ...(links.length > 0
      ? [`<p class="caution">See finding${links.length > 1 ? "s" : ""} ${links.join(", ")}.</p>`]
      : []),
    ...cautions.map((caution) => `<p class="caution">${html(caution)}</p>`),
    ...(details.length > 0 ? [`<p>${details.map(html).join(" ")}</p>`] : []),
    ...(wear === "" ? [] : [`<p class="wear">${html(wear)}</p>`]),
    "</li>",
  ].join("\n");
}

/** A box for every piece, named for those who hear the page instead of seeing it. */
function tickHtml({ labels, time }: Tick, title: string): string {
  const boxes = labels.map((label) => {
    const name = label === "" ? `Done: ${title}` : `Piece ${label} done: ${title}`;
    return `<label><input type="checkbox" aria-label="${html(name)}">${html(label)}</label>`;
  });
  const times = time === "" ? "" : ` <span class="time">${html(time)}</span>`;
  return `<span class="tick">${boxes.join(" ")}${times}</span>`;
}
