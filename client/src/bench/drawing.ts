/**
 * A job as HTML, for the page beside its text: pure functions from what the server sends, and the moment that is looked
 * at, to text. Whatever a person wrote goes through `htmlText`; nothing here is styled in line, since the page forbids it.
 */
import type { Bench } from "../../../server/src/views/bench/model.ts";
import { link, prose, text } from "./html.ts";
import { type L10n, labelOf } from "./l10n.ts";
import type { Look } from "./moments.ts";

// ---------------------------------------------------------------------------------------------------------------
// Blocks

export function headHtml(bench: Bench<unknown>, l10n: L10n): string {
  const facts = bench.facts
    .map(({ name, text: said }) => `${text(labelOf(name, l10n))}: ${text(said)}`)
    .join(" · ");
  const [next] = bench.findings;
  const errors = bench.findings.filter(({ severity }) => severity === "error").length;
  const first =
    next !== undefined && errors > 0
      ? `<div class="card stop"><h2>${text(l10n.t("Put right first"))}</h2><p class="value">${link(next.at, prose(next.headline), "first")}</p><p>${prose(next.lines[0] ?? "")}</p></div>`
      : "";
  const dates = bench.dates.map(
    ({ name, text: said, reason }) =>
      `<div class="card"><h2>${text(labelOf(name, l10n))}</h2><p class="value">${text(labelOf(said, l10n))}</p>${reason === "" ? "" : `<p class="second">${prose(reason)}</p>`}</div>`,
  );
  return `<h1>${link(bench.at, text(bench.title), "title")}</h1><p class="second">${facts}</p><div class="cards">${first}${dates.join("")}</div>`;
}

export const canKey = (job: string, material: string, can: number): string => `${job}\n${material}\n${can}`;

export function shoppingHtml(bench: Bench<unknown>, { ticked, l10n }: Look): string {
  const rows = bench.materials.map(({ title, at, takes, onHand, cans, price, gaps }, i) => {
    const boxes = cans.map((can, n) => {
      const key = canKey(bench.name, title, n);
      return `<label><input type="checkbox" data-can="${text(key)}" data-key="can ${i} ${n}"${ticked.has(key) ? " checked" : ""}> ${text(can)}</label>`;
    });
    const bought =
      gaps.length > 0 ? prose(gaps.join(", ")) : boxes.join(" ") || text(l10n.t("enough in stock"));
    return `<tr><th scope="row">${link(at, text(title), `material ${i}`)}</th><td>${text(labelOf(takes, l10n))}</td><td>${text(onHand || l10n.t("none"))}</td><td>${bought}</td><td class="figure">${text(price)}</td></tr>`;
  });
  const costs = bench.costs.map(
    ({ name, text: said }) => `<dt>${text(labelOf(name, l10n))}</dt><dd>${prose(said)}</dd>`,
  );
  const list =
    rows.length === 0
      ? `<p class="empty">${text(l10n.t("Nothing to buy is known."))}</p>`
      : `<table><tr><th scope="col">${text(l10n.t("Material"))}</th><th scope="col">${text(l10n.t("Takes"))}</th><th scope="col">${text(l10n.t("In stock"))}</th><th scope="col">${text(l10n.t("Cans to buy"))}</th><th scope="col" class="figure">${text(l10n.t("Price"))}</th></tr>${rows.join("")}</table>`;
  return `${list}<dl>${costs.join("")}</dl>${worthHtml(bench, l10n)}`;
}

/** Each way with the pieces beside the others. */
function worthHtml({ worth }: Bench<unknown>, l10n: L10n): string {
  if (!worth) return "";
  const figure = (said: string): string => `<td class="figure">${text(labelOf(said, l10n))}</td>`;
  const head = worth.columns.map(
    (name) => `<th scope="col" class="figure">${text(labelOf(name, l10n))}</th>`,
  );
  const rows = worth.rows.map(
    ({ name, figures }) =>
      `<tr><th scope="row">${text(labelOf(name, l10n))}</th>${figures.map(figure).join("")}</tr>`,
  );
  const notes = worth.notes.map((note) => `<p class="second">${prose(note)}</p>`);
  return `<h2>${text(l10n.t("Is it worth it?"))} <span class="second">${text(worth.basis)}</span></h2><table><tr><td></td>${head.join("")}</tr>${rows.join("")}</table>${notes.join("")}`;
}
