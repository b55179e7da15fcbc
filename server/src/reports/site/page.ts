/**
 * The frame of every page of a site, and what several pages have.
 *
 * Each page is one file that needs no other: its style stands in it, and no page but the first runs a script. Everything
 * of a recipe is escaped; a policy in the head forbids all loading even where that should fail.
 */
import { bareText, docBlocks, plain, prose } from "../../escape/prose.ts";
import type { Docs, SheetFact, SheetFinding } from "../../views/sheet/model.ts";
import { capital } from "../../views/sheet/words.ts";
import type { LibraryEntry, LibrarySection } from "../../views/site/model.ts";
import { sectionScale, sectionSvg } from "../section-svg.ts";
import { docBlockHtml, html, inline } from "../sheet-html-text.ts";
import type { Site } from "./site-model.ts";
import { SITE_STYLE } from "./site-style.ts";

export interface Page {
  readonly path: string;
  readonly title: string;
  /** Below the title. */
  readonly sort?: string;
  readonly main: readonly string[];
  readonly script?: { readonly text: string; readonly hash: string };
}

const FOOT =
  "These recipes tell how work was planned or done. They advise, and certify nothing as safe: the labels and safety data sheets of the products, local codes and licensed practice come first.";

export function pageHtml(site: Site, { path, title, sort, main, script }: Page): string {
  const to = linksFrom(path);
  const isHome = path === HOME;
  const nav = [
    { path: HOME, title: "All recipes" },
    ...site.indexes.map((index) => ({ path: index.path, title: index.title })),
  ];
  return [
    "<!doctype html>",
    '<html lang="en">',
    "<head>",
    '<meta charset="utf-8">',
    `<title>${html(isHome ? title : `${title} – ${site.title}`)}</title>`,
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline';${script ? ` script-src '${script.hash}';` : ""} img-src data:; base-uri 'none'; form-action 'none'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    '<meta name="referrer" content="no-referrer">',
    `<link rel="alternate" type="application/atom+xml" title="${html(site.title)}" href="${to("feed.xml")}">`,
    `<link rel="alternate" type="application/feed+json" title="${html(site.title)}" href="${to("feed.json")}">`,
    `<style>\n${SITE_STYLE}</style>`,
    "</head>",
    "<body>",
    '<a class="skip" href="#main">To the content</a>',
    '<header class="top">',
    `<p class="name"><a href="${to(HOME)}">${html(site.title)}</a></p>`,
    `<nav aria-label="Ways to look through"><ul>${nav
      .map(
        (item) =>
          `<li><a href="${to(item.path)}"${item.path === path ? ' aria-current="page"' : ""}>${html(item.title)}</a></li>`,
      )
      .join("")}</ul></nav>`,
    "</header>",
    '<main id="main">',
    `<h1>${html(title)}</h1>`,
    ...(sort === undefined ? [] : [`<p class="sort">${html(sort)}</p>`]),
    ...main,
    "</main>",
    `<footer>${site.origin === undefined ? "" : `<p>${html(capital(site.origin))}.</p>`}<p>${html(FOOT)}</p></footer>`,
    ...(script ? [`<script>${script.text}</script>`] : []),
    "</body>",
    "</html>",
    "",
  ].join("\n");
}

export const HOME = "index.html";

/** Links from a page to others, both named from the folder of the site. */
export const linksFrom = (path: string): ((to: string) => string) => {
  const up = "../".repeat(path.split("/").length - 1);
  return (to) => html(`${up}${to}`);
};

/** A part of a page under a heading; nothing where it has no content. */
export const part = (title: string, content: readonly string[]): readonly string[] =>
  content.length === 0 ? [] : [`<section><h2>${html(title)}</h2>`, ...content, "</section>"];

export const factList = (rows: readonly SheetFact[]): readonly string[] =>
  rows.length === 0
    ? []
    : [
        `<dl>\n${rows.map(({ name, text }) => `<div><dt>${html(name)}</dt><dd>${html(text)}</dd></div>`).join("\n")}\n</dl>`,
      ];

export const bullets = (items: readonly string[]): readonly string[] =>
  items.length === 0 ? [] : [`<ul>\n${items.map((item) => `<li>${item}</li>`).join("\n")}\n</ul>`];

export const docsHtml = (site: Site, { text, file }: Docs): readonly string[] =>
  docBlocks(text).map((block) => docBlockHtml(block, site.pictures?.(file)));

/** Surfaces side by side, to one scale. */
export function drawings(sections: readonly LibrarySection[]): readonly string[] {
  if (sections.length === 0) return [];
  const scale = sectionScale(sections.map(({ section }) => section));
  return [
    '<div class="sections">',
    ...sections.map(
      ({ title, caption, section }) =>
        `<figure><figcaption><b>${html(title)}</b> ${html(caption)}</figcaption>\n${sectionSvg(section, { width: 400, scale })}</figure>`,
    ),
    "</div>",
  ];
}

/** The gravest first, without where they stand: that is the workshop's text. */
export const findingList = (findings: readonly SheetFinding[]): readonly string[] =>
  bullets(
    findings.map(
      ({ severity, message }) => `<b class="${severity}">${capital(severity)}:</b> ${inline(prose(message))}`,
    ),
  );

/** The pages of entries, each on a line. */
export function entryLinks(site: Site, path: string, keys: readonly string[]): readonly string[] {
  const to = linksFrom(path);
  return bullets(
    keys.flatMap((key) => {
      const entry = site.entries.get(key);
      if (entry === undefined) return [];
      return [`<a href="${to(site.pathOf(entry))}">${html(entry.title)}</a>`];
    }),
  );
}

/** As much as fits on a line or two: the first sentence of what is written above it. */
export function gistOf({ docs, title }: LibraryEntry): string {
  const first = docBlocks(docs.text).find((block) => block.kind === "paragraph");
  const text = first?.kind === "paragraph" ? bareText(first.text) : "";
  const sentence = /^.{1,160}?[.!?](?=\s|$)/u.exec(text)?.[0] ?? text.slice(0, 160);
  return sentence === "" ? title : sentence;
}

export const paragraph = (text: string): string => `<p>${inline(plain(text))}</p>`;
