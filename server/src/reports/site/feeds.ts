/**
 * Feeds of the recipes, the one that was changed last at the top: Atom (RFC 4287) and JSON Feed 1.1.
 *
 * Where nobody said where the site will stand, links are relative, which Atom allows (section 2), and the JSON feed names
 * no addresses. A recipe keeps its id wherever the site stands.
 */
import { htmlText } from "../../escape/html.ts";
import { jsonText } from "../../escape/json.ts";
import type { LibraryRecipe } from "../../views/site/model.ts";
import { gistOf } from "./page.ts";
import type { Site, SiteFile } from "./site-model.ts";

/** Where a date is not known: a feed must have one, and readers sort by it. */
const NOBODY_KNOWS = "1970-01-01T00:00:00Z";

export function siteFeeds(site: Site): readonly SiteFile[] {
  const items = site.library.recipes
    .map((recipe) => ({ recipe, changed: site.changedAt(recipe.file) ?? NOBODY_KNOWS }))
    .toSorted((a, b) => Date.parse(b.changed) - Date.parse(a.changed));
  return [
    { path: "feed.xml", text: atom(site, items) },
    { path: "feed.json", text: json(site, items) },
  ];
}

interface Item {
  readonly recipe: LibraryRecipe;
  readonly changed: string;
}

/** The same as long as recipe and file keep their names. */
const idOf = (site: Site, { file, name }: LibraryRecipe): string =>
  `urn:uuid:${site.idOf(`${site.title}\0${site.label(file)}\0${name}`)}`;

const atom = (site: Site, items: readonly Item[]): string => {
  const at = (path: string): string => htmlText(`${site.address ?? ""}${path}`);
  return [
    '<?xml version="1.0" encoding="utf-8"?>',
    '<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="en">',
    `<id>urn:uuid:${site.idOf(site.title)}</id>`,
    `<title>${htmlText(site.title)}</title>`,
    `<author><name>${htmlText(site.title)}</name></author>`,
    `<updated>${items[0]?.changed ?? NOBODY_KNOWS}</updated>`,
    ...(site.address === undefined ? [] : [`<link rel="self" href="${at("feed.xml")}"/>`]),
    `<link rel="alternate" type="text/html" href="${at("index.html")}"/>`,
    ...items.flatMap(({ recipe, changed }) => [
      "<entry>",
      `<id>${idOf(site, recipe)}</id>`,
      `<title>${htmlText(recipe.title)}</title>`,
      `<updated>${changed}</updated>`,
      `<link rel="alternate" type="text/html" href="${at(site.pathOf(recipe))}"/>`,
      `<summary>${htmlText(gistOf(recipe))}</summary>`,
      "</entry>",
    ]),
    "</feed>",
    "",
  ].join("\n");
};

function json(site: Site, items: readonly Item[]): string {
  const { address } = site;
  const feed = {
    version: "https://jsonfeed.org/version/1.1",
    title: site.title,
    language: "en",
    ...(address === undefined ? {} : { home_page_url: address, feed_url: `${address}feed.json` }),
    items: items.map(({ recipe, changed }) => ({
      id: idOf(site, recipe),
      ...(address === undefined ? {} : { url: `${address}${site.pathOf(recipe)}` }),
      title: recipe.title,
      content_text: gistOf(recipe),
      date_modified: changed,
      tags: [...recipe.traits.woods, ...recipe.traits.finishes, ...recipe.traits.looks],
    })),
  };
  return jsonText(feed);
}
