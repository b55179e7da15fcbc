/**
 * A job as HTML, for the page beside its text: pure functions from what the server sends, and the moment that is looked
 * at, to text. Whatever a person wrote goes through `htmlText`; nothing here is styled in line, since the page forbids it.
 */
import { sectionScale, sectionSvg } from "../../../server/src/reports/section-svg.ts";
import type { Bench, BenchCoat, BenchSurface } from "../../../server/src/views/bench/model.ts";
import { link, prose, text } from "./html.ts";
import { mark } from "./marks.ts";
import { type Look, momentsOf } from "./moments.ts";

/** How far a step is on all pieces at this moment. */
function isDone(bench: Bench<unknown>, surface: BenchSurface, step: number, moment: number): boolean {
  if (bench.plan !== "planned") return step <= moment;
  return surface.bars.every((bar) => bar.step !== step || bar.end <= moment + 1e-9);
}

export type Dryness = "to come" | "wet" | "touch-dry" | "takes a coat" | "cured" | "on";

/** `on`: put on, and how long it dries is not known. */
export function drynessOf(coat: BenchCoat, moment: number, isOn: boolean, isPlanned: boolean): Dryness {
  if (!isOn) return "to come";
  if (!isPlanned || coat.onAt === undefined) return "on";
  const hours = moment - coat.onAt;
  if (coat.curedH !== undefined && hours >= coat.curedH) return "cured";
  if (coat.recoatH !== undefined && hours >= coat.recoatH) return "takes a coat";
  if (coat.touchH !== undefined && hours >= coat.touchH) return "touch-dry";
  return coat.touchH === undefined ? "on" : "wet";
}

const RUNGS: Readonly<Record<Dryness, number>> = {
  "to come": 0,
  on: 0,
  wet: 1,
  "touch-dry": 2,
  "takes a coat": 3,
  cured: 4,
};

const ladder = (dryness: Dryness): string =>
  `<svg class="ladder" aria-hidden="true" width="34" height="10" viewBox="0 0 34 10">${[0, 1, 2, 3]
    .map(
      (rung) =>
        `<rect x="${rung * 8 + 0.5}" y="0.5" width="6" height="9" class="${rung < RUNGS[dryness] ? "full" : "empty"}"/>`,
    )
    .join("")}</svg>`;

// ---------------------------------------------------------------------------------------------------------------
// Blocks

export function headHtml(bench: Bench<unknown>): string {
  const facts = bench.facts.map(({ name, text: said }) => `${text(name)}: ${text(said)}`).join(" · ");
  const [next] = bench.findings;
  const errors = bench.findings.filter(({ severity }) => severity === "error").length;
  const first =
    next !== undefined && errors > 0
      ? `<div class="card stop"><h2>Put right first</h2><p class="value">${link(next.at, prose(next.headline), "first")}</p><p>${prose(next.remedy)}</p></div>`
      : "";
  const dates = bench.dates.map(
    ({ name, text: said, reason }) =>
      `<div class="card"><h2>${text(name)}</h2><p class="value">${text(said)}</p><p class="second">${prose(reason)}</p></div>`,
  );
  return `<h1>${link(bench.at, text(bench.title), "title")}</h1><p class="second">${facts}</p><div class="cards">${first}${dates.join("")}</div>`;
}

export function sectionsHtml(bench: Bench<unknown>, { moment, width }: Look): string {
  const at = momentsOf(bench)[moment] ?? 0;
  const scale = sectionScale(bench.surfaces.map(({ section }) => section));
  const wide = Math.max(280, Math.min(440, width >= 640 ? (width - 60) / 2 : width - 24));
  return bench.surfaces.map((surface, i) => surfaceHtml(bench, surface, i, at, scale, wide)).join("");
}

function surfaceHtml(
  bench: Bench<unknown>,
  surface: BenchSurface,
  number: number,
  moment: number,
  scale: number,
  width: number,
): string {
  const { section, coats, title, about } = surface;
  const isOn = section.coats.map(({ step }) => isDone(bench, surface, step, moment));
  const now = {
    ...section,
    coats: section.coats.filter((_, i) => isOn[i]),
    old: section.old.map((each) =>
      each.removedBy !== undefined && !isDone(bench, surface, each.removedBy, moment)
        ? { ...each, isKept: true, isAbraded: false }
        : each,
    ),
    filmUm: undefined,
  };
  const rows = section.coats.map((coat, i) => {
    const state = drynessOf(coats[i]!, moment, isOn[i]!, bench.plan === "planned");
    const which = coat.coats > 1 ? `, coat ${coat.coat} of ${coat.coats}` : "";
    const film = coat.dryUm === undefined ? "" : `${Math.round(coat.dryUm)} µm`;
    return `<li class="${state === "to come" ? "later" : ""}">${link(coats[i]!.at, text(coat.title + which), `coat ${number} ${i}`)} ${mark(coats[i]!.gravest)}<span class="state">${ladder(state)} ${text([state, coat.sheen, film].filter(Boolean).join(", "))}</span></li>`;
  });
  return `<figure><figcaption><b>${text(title)}</b> <span class="second">${text(about.join(" · "))}</span></figcaption>${sectionSvg(now, { width: Math.floor(width), scale })}<ol reversed aria-label="Coats of ${text(title)}, the last first">${rows.toReversed().join("")}</ol></figure>`;
}

export const canKey = (job: string, material: string, can: number): string => `${job}\n${material}\n${can}`;

export function shoppingHtml(bench: Bench<unknown>, { ticked }: Look): string {
  const rows = bench.materials.map(({ title, at, takes, onHand, cans, price, gaps }, i) => {
    const boxes = cans.map((can, n) => {
      const key = canKey(bench.name, title, n);
      return `<label><input type="checkbox" data-can="${text(key)}" data-key="can ${i} ${n}"${ticked.has(key) ? " checked" : ""}> ${text(can)}</label>`;
    });
    const bought = gaps.length > 0 ? prose(gaps.join(", ")) : boxes.join(" ") || "enough in stock";
    return `<tr><th scope="row">${link(at, text(title), `material ${i}`)}</th><td>${text(takes)}</td><td>${text(onHand || "none")}</td><td>${bought}</td><td class="figure">${text(price)}</td></tr>`;
  });
  const costs = bench.costs.map(({ name, text: said }) => `<dt>${text(name)}</dt><dd>${prose(said)}</dd>`);
  const list =
    rows.length === 0
      ? '<p class="empty">Nothing to buy is known.</p>'
      : `<table><tr><th>Material</th><th>Takes</th><th>In stock</th><th>Cans to buy</th><th class="figure">Price</th></tr>${rows.join("")}</table>`;
  return `${list}<dl>${costs.join("")}</dl>${worthHtml(bench)}`;
}

/** Each way with the pieces beside the others. */
function worthHtml({ worth }: Bench<unknown>): string {
  if (!worth) return "";
  const figure = (said: string): string => `<td class="figure">${text(said)}</td>`;
  const head = worth.columns.map((name) => `<th scope="col" class="figure">${text(name)}</th>`);
  const rows = worth.rows.map(
    ({ name, figures }) => `<tr><th scope="row">${text(name)}</th>${figures.map(figure).join("")}</tr>`,
  );
  const notes = worth.notes.map((note) => `<p class="second">${prose(note)}</p>`);
  return `<h2>Is it worth it? <span class="second">${text(worth.basis)}</span></h2><table><tr><td></td>${head.join("")}</tr>${rows.join("")}</table>${notes.join("")}`;
}

export function findingsHtml({ findings }: Bench<unknown>): string {
  if (findings.length === 0) return "";
  const rows = findings.map(
    ({ severity, headline, remedy, at }, i) =>
      `<li>${mark(severity)} ${link(at, prose(headline), `finding ${i}`)} <span>${prose(remedy)}</span></li>`,
  );
  return `<h2>What to look at</h2><ul>${rows.join("")}</ul>`;
}
