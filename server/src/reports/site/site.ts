/** A library of recipes as a site: pages that work from a disk and from any host, without a server and without a network. */
import { jsonText } from "../../escape/json.ts";
import { bareText, docBlocks } from "../../escape/prose.ts";
import type { LibraryEntry, LibraryRecipe } from "../../views/site/model.ts";
import { counted } from "../findings-text.ts";
import { BARE_WIDTH, sectionScale, sectionSvg } from "../section-svg.ts";
import { html } from "../sheet-html-text.ts";
import { jobPage, piecePage, recipePage } from "./entry-pages.ts";
import { siteFeeds } from "./feeds.ts";
import { siteIndexes } from "./indexes.ts";
import { bullets, gistOf, HOME, linksFrom, type Page, pageHtml, paragraph, part } from "./page.ts";
import { pagePaths, sheetPath } from "./paths.ts";
import type { SearchText } from "./search-text.ts";
import type { Site, SiteFile, SiteIndex, SiteParts } from "./site-model.ts";
import { SITE_SCRIPT, SITE_SCRIPT_HASH } from "./site-script.generated.ts";

/** All files of the site. */
export function siteFiles(parts: SiteParts): readonly SiteFile[] {
  const { library } = parts;
  const paths = pagePaths(library, parts.label);
  const entries = [...library.recipes, ...library.pieces, ...library.jobs];
  const site: Site = {
    ...parts,
    entries: new Map(entries.map((entry) => [entry.key, entry])),
    pathOf: ({ key }) => paths.get(key)!,
    indexes: siteIndexes(library),
  };
  const pages = [
    homePage(site),
    ...site.indexes.map((index) => indexPage(site, index)),
    ...library.recipes.map((recipe) => recipePage(site, recipe)),
    ...library.pieces.map((piece) => piecePage(site, piece)),
    ...library.jobs.map((job) => jobPage(site, job)),
  ];
  return [
    ...pages.map((page) => ({ path: page.path, text: pageHtml(site, page) })),
    ...library.recipes.map((recipe) => ({
      path: sheetPath(site.pathOf(recipe)),
      text: parts.sheetOf(recipe),
    })),
    ...siteFeeds(site),
  ];
}

function homePage(site: Site): Page {
  const { recipes, pieces, jobs } = site.library;
  const to = linksFrom(HOME);
  const list = (entries: readonly LibraryEntry[]): readonly string[] =>
    bullets(
      entries.map((entry) => {
        const more = [entry.traits.woods, entry.traits.finishes.slice(0, 1), entry.traits.looks]
          .flat()
          .join(", ");
        return `<a href="${to(site.pathOf(entry))}">${html(entry.title)}</a>${more === "" ? "" : ` <span class="sort">${html(more)}</span>`}`;
      }),
    );
  return {
    path: HOME,
    title: site.title,
    sort: `${counted(recipes.length, "recipe")}, ${counted(pieces.length, "piece")}, ${counted(jobs.length, "job")}`,
    main: [
      '<search class="search" hidden>',
      '<label for="words">Search all texts</label>',
      '<input id="words" type="search" autocomplete="off" spellcheck="false" aria-describedby="found">',
      '<p id="found" role="status"></p>',
      '<ol id="results"></ol>',
      "</search>",
      ...part(
        "Recipes",
        recipes.length === 0
          ? []
          : ['<ul class="cards">', ...recipes.map((recipe) => card(site, recipe)), "</ul>"],
      ),
      ...part("Pieces", list(pieces)),
      ...part("Jobs", list(jobs)),
      ...(recipes.length + pieces.length + jobs.length === 0
        ? [paragraph("There is no recipe, piece or job here yet.")]
        : []),
      `<script type="application/json" id="texts">${searchData(site)}</script>`,
    ],
    script: { text: SITE_SCRIPT, hash: SITE_SCRIPT_HASH },
  };
}

function card(site: Site, recipe: LibraryRecipe): string {
  const { traits, section } = recipe;
  const words = [...traits.finishes.slice(0, 1), ...traits.looks, ...traits.woods].join(", ");
  const drawing = section
    ? `<span aria-hidden="true">${sectionSvg(section.section, { width: BARE_WIDTH, scale: sectionScale([section.section]), isBare: true })}</span>`
    : "";
  return `<li><div><a href="${linksFrom(HOME)(site.pathOf(recipe))}">${html(recipe.title)}</a><p>${html(gistOf(recipe) === recipe.title ? "" : gistOf(recipe))}</p>${words === "" ? "" : `<p class="sort">${html(words)}</p>`}</div>${drawing}</li>`;
}

function indexPage(site: Site, { path, title, groups }: SiteIndex): Page {
  const to = linksFrom(path);
  return {
    path,
    title,
    main: groups.flatMap((group) =>
      part(
        group.title,
        bullets(
          group.rows.map(
            ({ entry, more }) =>
              `<a href="${to(site.pathOf(entry))}">${html(entry.title)}</a> <span class="sort">${html(more)}</span>`,
          ),
        ),
      ),
    ),
  };
}

/** What the search looks through. In it no `<` can end the element. */
function searchData(site: Site): string {
  const texts = [...site.entries.values()].map(
    (entry): SearchText => ({
      path: site.pathOf(entry),
      title: entry.title,
      kind: entry.kind,
      text: [...new Set(wordsOf(entry))].join(" · "),
    }),
  );
  return jsonText(texts).trim().replaceAll("<", "\\u003c");
}

function wordsOf(entry: LibraryEntry): readonly string[] {
  const { woods, finishes, looks, wears, users } = entry.traits;
  const traits = [...woods, ...finishes, ...looks, ...wears, ...users];
  const docs = docBlocks(entry.docs.text).flatMap((block) =>
    block.kind === "paragraph"
      ? [bareText(block.text)]
      : block.kind === "code"
        ? block.lines
        : block.items.map(bareText),
  );
  const own = (): readonly string[] => {
    switch (entry.kind) {
      case "recipe":
        return [...entry.steps, ...entry.sheet.materials.flatMap(({ title, sort }) => [title, sort])];
      case "piece":
        return entry.surfaces.flatMap(({ title, docs: { text }, wood }) => [title, text, wood]);
      case "job":
        return [
          ...entry.short.parts.flatMap(({ steps }) => steps),
          ...entry.short.materials.flatMap(({ name, text }) => [name, text]),
        ];
    }
  };
  return [entry.name, ...docs, ...traits, ...own()].filter((text) => text !== "");
}
