/** The pages of recipes, pieces and jobs. */
import { moneyText } from "../../core/measure/figures.ts";
import { formatDuration, formatWork } from "../../core/measure/format-amount.ts";
import { andList } from "../../core/model/suggest.ts";
import { htmlText } from "../../escape/html.ts";
import type { SheetFact } from "../../views/sheet/model.ts";
import { capital } from "../../views/sheet/words.ts";
import type { LibraryJob, LibraryPiece, LibraryRecipe, Traits } from "../../views/site/model.ts";
import { NOT_SAFE } from "../findings-text.ts";
import { html } from "../sheet-html-text.ts";
import {
  bullets,
  docsHtml,
  drawings,
  entryLinks,
  factList,
  findingList,
  linksFrom,
  type Page,
  paragraph,
  part,
} from "./page.ts";
import { sheetPath } from "./paths.ts";
import type { ColouredPart, Site } from "./site-model.ts";

const USUAL =
  "These are the usual cautions, no more: keeping to them does not make the work safe. Read the label and the safety data sheet of every product first, and follow local codes and licensed practice where they ask for more.";

export function recipePage(site: Site, recipe: LibraryRecipe): Page {
  const path = site.pathOf(recipe);
  const { sheet, traits } = recipe;
  const to = linksFrom(path);
  const links = (keys: readonly string[]): readonly string[] => entryLinks(site, path, keys);
  return {
    path,
    title: recipe.title,
    sort: "Recipe",
    main: [
      ...docsHtml(site, recipe.docs),
      ...factList([...sheet.facts, ...traitFacts(traits)]),
      `<p><a href="${to(sheetPath(path))}">The sheet to print and work from</a></p>`,
      ...part("What comes of it", recipe.section ? drawings([recipe.section]) : []),
      ...part("To choose first", factList(recipe.choices)),
      ...part(
        "What it takes",
        factList(sheet.materials.map(({ title, sort }) => ({ name: title, text: sort }))),
      ),
      ...part("Take care", [
        paragraph(USUAL),
        ...factList(sheet.duties.map(({ label, doc, defer }) => ({ name: label, text: `${doc} ${defer}` }))),
      ]),
      ...aroundFindings(sheet.findings, part("Step by step", numbers(recipe.steps))),
      ...part("Done in these jobs", links(recipe.jobs)),
      ...part("Done to these pieces", links(recipe.pieces)),
      ...part("Follows", links(recipe.follows)),
      ...part("Followed by", links(recipe.followedBy)),
      ...part("As it is written", [source(site.coloured(recipe))]),
    ],
  };
}

export function piecePage(site: Site, piece: LibraryPiece): Page {
  const path = site.pathOf(piece);
  return {
    path,
    title: piece.title,
    sort: "Piece",
    main: [
      ...docsHtml(site, piece.docs),
      ...factList(traitFacts(piece.traits)),
      ...part(
        "Surfaces",
        piece.surfaces.flatMap(({ title, docs, wood, wear }) => [
          `<h3>${html(title)}</h3>`,
          ...factList([
            { name: "Wood", text: wood },
            { name: "Use", text: wear },
          ]),
          ...docsHtml(site, docs),
        ]),
      ),
      ...part("Jobs", entryLinks(site, path, piece.jobs)),
      ...part("Recipes", entryLinks(site, path, piece.recipes)),
    ],
  };
}

export function jobPage(site: Site, job: LibraryJob): Page {
  const path = site.pathOf(job);
  const { short, care } = job;
  return {
    path,
    title: job.title,
    sort: "Job",
    main: [
      ...docsHtml(site, job.docs),
      ...factList([...short.handedOn, ...traitFacts(job.traits)]),
      ...part("What comes of it", drawings(job.sections)),
      ...part("What it takes", factList(short.materials)),
      ...part("Take care", [
        paragraph(USUAL),
        ...factList(short.duties),
        ...bullets(short.cautions.map((text) => html(text))),
      ]),
      ...aroundFindings(
        job.findings,
        short.parts.flatMap(({ surfaces, made, steps }, place) =>
          part(surfaces.join(", "), [
            ...(made.length === 1 ? made.map(({ text }) => paragraph(`${capital(text)}.`)) : factList(made)),
            ...(place === 0 && short.air !== undefined
              ? [paragraph(`The waits are for air of ${short.air}.`)]
              : []),
            ...numbers(steps),
          ]),
        ),
      ),
      ...part(
        "Afterwards",
        care.flatMap((card) => [
          ...(care.length > 1 ? [`<h3>${html(card.title)}</h3>`] : []),
          ...card.care.flatMap(({ surfaces, top, clean, avoid, repair }) => [
            paragraph(`${surfaces.join(", ")}, on top ${top}.`),
            ...factList([
              { name: "Clean", text: clean },
              { name: "Keep away", text: avoid },
              { name: "Repair", text: repair },
            ]),
          ]),
        ]),
      ),
      ...part("Recipes", entryLinks(site, path, job.recipes)),
      ...part("Pieces", entryLinks(site, path, job.pieces)),
    ],
  };
}

/** What is wrong stands before the steps, and what is less than that behind them. */
function aroundFindings(found: LibraryJob["findings"], steps: readonly string[]): readonly string[] {
  const title = "What the check finds";
  if (found.length === 0) return [...steps, ...part(title, [paragraph(`Nothing. ${NOT_SAFE}`)])];
  const isWrong = found.some(({ severity }) => severity === "error");
  const list = findingList(found);
  if (!isWrong) return [...steps, ...part(title, list)];
  return [...part(title, [`<p><strong>${html(WRONG)}</strong></p>`, ...list]), ...steps];
}

const WRONG = "Do not follow these steps before what is wrong with them is put right.";

const numbers = (steps: readonly string[]): readonly string[] =>
  steps.length === 0
    ? []
    : [`<ol>\n${steps.map((step) => `<li>${html(`${step}.`)}</li>`).join("\n")}\n</ol>`];

function traitFacts({ woods, finishes, looks, wears, users, figures }: Traits): readonly SheetFact[] {
  const words = (name: string, all: readonly string[]): readonly SheetFact[] =>
    all.length === 0 ? [] : [{ name, text: capital(andList(all)) }];
  const between = (name: string, all: readonly number[], text: (value: number) => string) => {
    const [least, most] = [Math.min(...all), Math.max(...all)];
    if (all.length === 0) return [];
    return [{ name, text: text(least) === text(most) ? text(least) : `${text(least)} to ${text(most)}` }];
  };
  return [
    ...words("Done on", woods),
    ...words("Finish", finishes),
    ...words("Look", looks),
    ...words("Wear", wears),
    ...words("Used by", users),
    ...between(
      "Hands-on",
      figures.flatMap(({ hours }) => hours ?? []),
      formatWork,
    ),
    ...between(
      "From start to finish",
      figures.flatMap(({ days }) => days ?? []),
      (days) => formatDuration(days * 24),
    ),
    ...words(
      "Cost",
      figures.flatMap(({ cost }) => (cost ? [moneyText(cost.amount, cost.currency)] : [])),
    ),
  ];
}

/** Every line by itself, as signs that end a line are made visible elsewhere. */
const source = (parts: readonly ColouredPart[]): string => {
  const lines = parts.map(({ text, as }) =>
    text
      .split(/\r\n|\r|\n/u)
      .map((line) =>
        as === "plain" || line === "" ? htmlText(line) : `<span class="${as}">${htmlText(line)}</span>`,
      )
      .join("\n"),
  );
  return `<pre tabindex="0" role="region" aria-label="Text of the recipe"><code>${lines.join("")}</code></pre>`;
};
