/**
 * Sheets as one HTML file that needs nothing else: no network, its style and its script inside. On paper (A4 and Letter)
 * the first page has what to know and to buy and the second what to do, in the order of time; on a telephone it says
 * what is now and next.
 *
 * Everything of a recipe is escaped; a policy in the head allows this very script and forbids all other scripts and all
 * loading even where that should fail.
 */
import { keyedText, spokenLanguage, t } from "../../../grammar/src/translate.ts";
import { shortDayText, timeText } from "../core/measure/figures.ts";
import { dayAfter } from "../core/measure/iso-dates.ts";
import { figuresIn } from "../core/measure/shown-figures.ts";
import type { FileId } from "../core/place.ts";
import { docBlocks, type Inline } from "../escape/prose.ts";
import type { Docs, Sheet } from "../views/sheet/model.ts";
import { coatsOfDay } from "./coats-of-day.ts";
import { inlineLines } from "./inline-lines.ts";
import { sectionScale, sectionSvg } from "./section-svg.ts";
import {
  amountTitles,
  type Box,
  cautions,
  handedOnFindings,
  type SheetDocument,
  serviceTitle,
  spareText,
} from "./sheet-document.ts";
import { docBlockHtml, html, inline, type PictureOf } from "./sheet-html-text.ts";
import { benchHtml, stepNumbers } from "./sheet-rows.ts";
import { SHEET_SCRIPT, SHEET_SCRIPT_HASH, SHEET_SCRIPT_TEXTS } from "./sheet-script.generated.ts";
import { SHEET_STYLE } from "./sheet-style.ts";
import { surfaceLetters } from "./surface-letters.ts";

/** What was read of the pictures that the texts of a file name. */
export type PicturesOf = (file: FileId) => PictureOf;

/** Without pictures, texts name them. Each stands in the file once, where it is named first. */
export function sheetsHtml(documents: readonly SheetDocument[], pictures?: PicturesOf): string {
  const shown = pictures ? eachOnce(pictures) : NO_PICTURES;
  const title = documents.map((document) => document.title).join(", ") || t`Finish sheet`;
  return [
    "<!doctype html>",
    `<html lang="${spokenLanguage()}">`,
    "<head>",
    '<meta charset="utf-8">',
    `<title>${html(title)}</title>`,
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src '${SHEET_SCRIPT_HASH}';${pictures ? " img-src data:;" : ""} base-uri 'none'; form-action 'none'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    '<meta name="referrer" content="no-referrer">',
    `<style>\n${SHEET_STYLE}</style>`,
    "</head>",
    "<body>",
    ...(documents.length > 1 ? [contents(documents)] : []),
    "<main>",
    ...documents.map((document, i) => article(document, i, shown)),
    "</main>",
    ...scriptTexts(),
    `<script>${SHEET_SCRIPT}</script>`,
    "</body>",
    "</html>",
    "",
  ].join("\n");
}

/** What the script says, in the language of the sheet; the script itself has it in English. No data ends its own element. */
function scriptTexts(): readonly string[] {
  if (spokenLanguage() === "en") return [];
  const texts = SHEET_SCRIPT_TEXTS.split(" ").flatMap((key) => {
    const text = keyedText(key);
    return text === undefined ? [] : [[key, text] as const];
  });
  const data = JSON.stringify(Object.fromEntries(texts)).replaceAll("<", "\\u003c");
  return [`<script type="application/json" data-texts>${data}</script>`];
}

function contents(documents: readonly SheetDocument[]): string {
  const links = documents.map(({ title }, i) => `<li><a href="#sheet-${i + 1}">${html(title)}</a></li>`);
  return `<nav aria-label="${html(t`Sheets`)}"><ol>\n${links.join("\n")}\n</ol></nav>`;
}

function article(document: SheetDocument, index: number, pictures: PicturesOf): string {
  const { sheet } = document;
  const letters = surfaceLetters(sheet.procedures.map(({ title }) => title));
  const id = `sheet-${index + 1}`;
  const part = (name: string, title: string, content: readonly string[]): readonly string[] =>
    content.length === 0
      ? []
      : [
          `<section class="${name}" aria-labelledby="${id}-${name}">`,
          `<h2 id="${id}-${name}">${html(title)}</h2>`,
          ...content,
          "</section>",
        ];
  return [
    `<article id="${id}" aria-labelledby="${id}-title" data-job="${sheet.bench.fingerprint}"${openingData(sheet)}>`,
    "<header>",
    `<h1 id="${id}-title">${html(document.title)}</h1>`,
    `<p class="sort">${html(t`${document.sort}, from ${document.file}`)}</p>`,
    "</header>",
    '<div class="live" hidden></div>',
    '<div class="head">',
    ...docs(sheet.docs, pictures),
    ...boxes(document).map((box) => boxHtml(box, id)),
    "</div>",
    '<div class="facts">',
    ...facts([...aboutPieces(sheet), ...sheet.facts]),
    "</div>",
    ...part("choose", t`Choose before starting`, facts(sheet.choices)),
    `<section class="safety" aria-labelledby="${id}-safety">`,
    // It is met once, before the first tick; then the page folds it away, so that the steps come early.
    `<details data-before open><summary><h2 id="${id}-safety">${html(t`Before you start`)}</h2></summary>`,
    ...safety(sheet),
    "</details>",
    "</section>",
    ...part("cuts", t`What goes on`, cuts(sheet, letters)),
    ...part("days", t`Days`, days(sheet, letters)),
    ...part("ready", t`What to have ready`, ready(sheet)),
    ...part("work", t`Steps`, [
      benchHtml(sheet.bench, { id, findings: sheet.findings, say: figuresIn(sheet.units), letters }),
    ]),
    ...notes(id, sheet, pictures),
    ...part("service", serviceTitle(), service(document)),
    `<section class="went"><h2>${html(t`As it went`)}</h2><textarea data-note-all aria-label="${html(t`As it went`)}" rows="4" maxlength="4000"></textarea>`,
    `<div class="tools" hidden><button type="button" data-copy>${html(t`Copy what is done`)}</button> <button type="button" data-print>${html(t`Print`)}</button> <button type="button" data-forget>${html(t`Clear all ticks and notes`)}</button><output></output><textarea data-copied aria-label="${html(t`What is done, as text`)}" readonly rows="6" hidden></textarea></div></section>`,
    `<footer><p>${html(document.foot)}</p></footer>`,
    "</article>",
  ].join("\n");
}

/** For the page, which sends nobody to a shop that is closed. */
function openingData({ opening }: Sheet): string {
  if (opening === undefined) return "";
  const spans = opening.spans.map(({ weekday, opens, closes }) => `${weekday} ${opens} ${closes}`);
  const closed = opening.closed.map(({ from, to }) => `${from} ${to}`);
  return ` data-open="${spans.join(";")}" data-closed="${closed.join(";")}"`;
}

/** What is found first; the other boxes are those of every form. */
const boxes = ({ sheet, head }: SheetDocument): readonly Box[] => [
  ...(sheet.findings.length > 0 ? [handedOnFindings(sheet.findings)] : []),
  ...head.filter((block) => block.kind === "box").filter(({ isFindings }) => !isFindings),
];

function eachOnce(pictures: PicturesOf): PicturesOf {
  const seen = new Set<string>();
  return (file) => {
    const pictureOf = pictures(file);
    return (target) => {
      const key = `${file}\0${target}`;
      const picture = pictureOf(target);
      if (picture === undefined || "reason" in picture) return picture;
      if (seen.has(key)) return { reason: t`is shown above` };
      seen.add(key);
      return picture;
    };
  };
}

const NO_PICTURES: PicturesOf = () => () => undefined;

const docs = ({ text, file }: Docs, pictures: PicturesOf): readonly string[] =>
  docBlocks(text).map((block) => docBlockHtml(block, pictures(file)));

function blockHtml(
  block:
    | { readonly kind: "paragraph"; readonly text: Inline }
    | { readonly kind: "bullets"; readonly items: readonly Inline[] },
): string {
  return block.kind === "paragraph" ? `<p>${inline(block.text)}</p>` : listHtml("ul", block.items);
}

const listHtml = (tag: "ul" | "ol", items: readonly Inline[], id?: string): string =>
  `<${tag}>\n${items
    .map(
      (item, i) =>
        `<li${id ? ` id="${id}-${i + 1}"` : ""}>${inlineLines(item)
          .map((line) => inline(line))
          .join("<br>\n")}</li>`,
    )
    .join("\n")}\n</${tag}>`;

const boxHtml = ({ tone, title, blocks, isFindings }: Box, sheet: string): string =>
  [
    `<div class="box ${isFindings ? "findings " : ""}${tone}" role="note" aria-label="${html(title)}">`,
    `<p class="title">${html(title)}</p>`,
    ...blocks.map((block) =>
      block.kind === "numbers"
        ? listHtml("ol", block.items, isFindings ? `${sheet}-finding` : undefined)
        : blockHtml(block),
    ),
    "</div>",
  ].join("\n");

const facts = (rows: Sheet["facts"]): readonly string[] =>
  rows.length === 0
    ? []
    : [
        `<dl>\n${rows.map(({ name, text }) => `<div><dt>${html(name)}</dt><dd>${html(text)}</dd></div>`).join("\n")}\n</dl>`,
      ];

const aboutPieces = ({ pieces }: Sheet): Sheet["facts"] =>
  pieces.map(({ title, count, facts: more }) => ({
    name: pieces.length === 1 && count > 1 ? t`Pieces` : t`Piece`,
    text: [count > 1 ? `${count} × ${title}` : title, ...more].join(", "),
  }));

// ---------------------------------------------------------------------------------------------------------------
// Page 1

const defer = (): string =>
  t`These are the usual cautions, no more: keeping to them does not make the work safe. The label and the safety data sheet of every product, local codes and licensed practice come first, and say which glove, filter and air are right.`;

function safety(sheet: Sheet): readonly string[] {
  const items = cautions(sheet, () => "", "nowhere");
  return [...(items.length > 0 ? [listHtml("ul", items)] : []), `<p class="defer">${html(defer())}</p>`];
}

function cuts({ surfaces, units }: Sheet, letters: ReadonlyMap<string, string>): readonly string[] {
  if (surfaces.length === 0) return [];
  const scale = sectionScale(surfaces.map(({ section }) => section));
  const figures = surfaces.map(({ title, area, wear, film, section }) => {
    const more = [
      area === t`not known` ? t`area not known` : area,
      ...(wear ? [t`${wear} wear`] : []),
      t`film ${film}`,
    ];
    const letter = letters.get(title) ?? "";
    return `<figure><figcaption><b>${html(letter === "" ? title : `${letter}: ${title}`)}</b> ${html(more.join(", "))}</figcaption>\n${sectionSvg(section, { width: 400, scale, letter, litres: figuresIn(units).litres })}</figure>`;
  });
  return ['<div class="sections">', ...figures, "</div>"];
}

/** A line a day: from when to when, what is done first, and which coats go on; one for the days between, which have no work. */
function days({ bench, keptAt }: Sheet, letters: ReadonlyMap<string, string>): readonly string[] {
  let before: string | undefined;
  const rows = bench.groups.flatMap(({ date, rows: list }) => {
    const [first] = list;
    if (date === undefined || first?.startAt === undefined) return [];
    const end = list
      .flatMap(({ endAt }) => endAt ?? [])
      .toSorted()
      .at(-1)!;
    const cells = [
      t`${timeText(first.startAt)} to ${end.slice(0, 10) === date ? timeText(end) : t`the next day`}`,
      `${stepNumbers(first, letters)} ${first.title}`,
      coatsOfDay(list, letters),
    ];
    const rest = before === undefined ? [] : restDays(before, date, keptAt);
    before = date;
    return [
      ...rest,
      `<tbody><tr><th scope="row">${html(shortDayText(date))}</th>${cells.map((text) => `<td>${html(text)}</td>`).join("")}</tr></tbody>`,
    ];
  });
  if (rows.length === 0) return [];
  const heads = [t`Day`, t`Time`, t`Begins with`, t`Coats`];
  return [
    `<table><caption class="unseen">${html(t`Days of work`)}</caption>`,
    `<thead><tr>${heads.map((head) => `<th scope="col">${html(head)}</th>`).join("")}</tr></thead>`,
    ...rows,
    "</table>",
  ];
}

/** The days between two of work, in a line; none where the one follows the other. */
function restDays(before: string, date: string, keptAt: string | undefined): readonly string[] {
  const first = dayAfter(before);
  if (first >= date) return [];
  let last = first;
  while (dayAfter(last) < date) last = dayAfter(last);
  const [from, to] = [shortDayText(first), shortDayText(last)];
  const what = keptAt === undefined ? t`nothing to do, it dries` : t`nothing to do, keep it at ${keptAt}`;
  return [
    `<tbody><tr class="rest"><th scope="row">${html(first === last ? from : t`${from} to ${to}`)}</th><td colspan="3">${html(what)}</td></tr></tbody>`,
  ];
}

function ready({ kind, materials, paper, sparePercent }: Sheet): readonly string[] {
  const isJob = kind === "job";
  const box = (name: string): string =>
    `<td class="got"><label><input type="checkbox" data-got="${html(name)}" aria-label="${html(t`Ready: ${name}`)}"></label></td>`;
  const rows = materials.map(
    ({ title, sort, takes, onHand, open }) =>
      `<tbody><tr><th scope="row">${html(title)}</th><td>${html(sort)}</td>${isJob ? `<td class="figure">${html(takes)}</td><td class="figure">${html(onHand)}</td><td>${html(open)}</td>` : ""}${box(title)}</tr></tbody>`,
  );
  const [need = "", have = "", cans = ""] = amountTitles();
  // Columns of figures stand at the right.
  const figures = new Set([need, have]);
  const heads = [t`Material`, t`What it is`, ...(isJob ? [need, have, cans] : []), t`Ready`];
  const sheets = paper.map(({ name, text }) => `${name} ${text}`).join("; ");
  return [
    ...(rows.length === 0
      ? []
      : [
          '<div class="table"><table>',
          `<caption>${isJob ? html(spareText(sparePercent)) : html(t`Materials`)}</caption>`,
          `<thead><tr>${heads.map((head) => `<th scope="col"${figures.has(head) ? ' class="figure"' : ""}>${html(head)}</th>`).join("")}</tr></thead>`,
          ...rows,
          "</table></div>",
        ]),
    ...(sheets === ""
      ? []
      : [
          `<p><strong>${html(t`Abrasive paper`)}</strong>${html(t`, an estimate by common practice: ${sheets}.`)}</p>`,
        ]),
  ];
}

/**
 * What is written of pieces, surfaces, the shop, recipes and materials. Labels' figures are for the screen: where nothing
 * else is written, paper has no heading for them.
 */
function notes(
  sheet: string,
  { pieces, surfaces, shopDocs, procedures, materials }: Sheet,
  pictures: PicturesOf,
): readonly string[] {
  const item = (title: string, text: Docs): readonly string[] => {
    const [first, ...rest] = docBlocks(text.text);
    if (first === undefined) return [];
    const heading = `<strong>${html(title)}</strong>:`;
    const pictureOf = pictures(text.file);
    const more = rest.map((block) => docBlockHtml(block, pictureOf)).join("\n");
    // What begins with a sentence goes on behind its title.
    if (first.kind !== "paragraph")
      return [`<li>${heading}\n${docBlockHtml(first, pictureOf)}\n${more}</li>`];
    return [`<li>${heading} ${inline(first.text, pictureOf)}${more === "" ? "" : `\n${more}`}</li>`];
  };
  const parts = procedures.flatMap(({ entries }) =>
    entries.flatMap((entry) => (entry.kind === "part" ? [entry] : [])),
  );
  const seen = new Set<string>();
  const items = [
    ...pieces.flatMap(({ title, docs: text }) => item(title, text)),
    ...surfaces.flatMap(({ title, docs: text }) => item(title, text)),
    ...item(t`Shop`, shopDocs),
    ...[...parts, ...materials].flatMap(({ title, docs: text }) => item(title, text)),
  ].filter((text) => !seen.has(text) && seen.add(text));
  const labels = materials.flatMap(({ title, notes }) =>
    notes.length > 0 ? [`<li><strong>${html(title)}</strong>: ${html(notes.join(" "))}</li>`] : [],
  );
  if (items.length === 0 && labels.length === 0) return [];
  return [
    `<section class="about${items.length > 0 ? "" : " unprinted"}" aria-labelledby="${sheet}-about">`,
    `<h2 id="${sheet}-about">${html(t`Notes`)}</h2>`,
    ...(items.length > 0 ? [`<ul>\n${items.join("\n")}\n</ul>`] : []),
    ...(labels.length > 0
      ? [
          `<details class="labels"><summary>${html(t`What the labels say`)}</summary><ul>\n${labels.join("\n")}\n</ul></details>`,
        ]
      : []),
    "</section>",
  ];
}

// ---------------------------------------------------------------------------------------------------------------
// Page 2

function service({ sections }: SheetDocument): readonly string[] {
  const found = sections.find(({ title }) => title === serviceTitle());
  return (found?.blocks ?? []).flatMap((block) =>
    block.kind === "paragraph" || block.kind === "bullets" ? [blockHtml(block)] : [],
  );
}
