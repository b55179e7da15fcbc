/**
 * A job as HTML, for the page beside its text: pure functions from what the server sends, and the moment that is looked
 * at, to text. Whatever a person wrote goes through `htmlText`; nothing here is styled in line, since the page forbids it.
 */
import type { Bench, BenchWork } from "../../../server/src/views/bench/model.ts";
import { data, link, prose, text } from "./html.ts";
import type { L10n } from "./l10n.ts";
import { type Look, listText, momentText } from "./moments.ts";

// ---------------------------------------------------------------------------------------------------------------
// Blocks

export function headHtml(bench: Bench<unknown>): string {
  const facts = bench.facts
    .map(({ name, text: said }) => `<span class="fact">${text(name)}: ${text(said)}</span>`)
    .join(" · ");
  return `<h1>${link(bench.at, text(bench.title), "title")}</h1><p class="second">${facts}</p>`;
}

/** What is to be put right, what is next, and the dates that people ask for. */
export function cardsHtml(bench: Bench<unknown>, l10n: L10n): string {
  const [gravest] = bench.findings;
  const isStop = gravest?.severity === "error";
  const first = isStop
    ? `<div class="card stop"><h2>${text(l10n.t("Put right first"))}</h2><p class="value">${link(gravest.at, prose(gravest.headline), "first")}</p><p>${prose(gravest.lines[0] ?? "")}</p></div>`
    : "";
  const doubt =
    bench.isSound || bench.startAt === undefined
      ? ""
      : `<p>${text(l10n.t("does not hold until the errors are put right"))}</p>`;
  const dates = together(bench.dates).map(
    ({ names, text: said, reason }) =>
      `<div class="card${bench.isSound ? "" : " doubt"}"><h2>${text(
        listText(names, l10n),
      )}</h2><p class="value">${text(said)}</p>${doubt}${reason === "" ? "" : `<p class="second">${prose(reason)}</p>`}</div>`,
  );
  return `${first}${nextHtml(bench, l10n)}${dates.join("")}`;
}

type Dates = Bench<unknown>["dates"];

/** Dates that are the same, for the same reason, are said once. */
const together = (
  dates: Dates,
): readonly { readonly names: readonly string[]; readonly text: string; readonly reason: string }[] => {
  const groups = new Map<string, Dates>();
  for (const date of dates) {
    const key = `${date.text}\n${date.reason}`;
    groups.set(key, [...(groups.get(key) ?? []), date]);
  }
  return [...groups.values()].map((group) => ({ ...group[0]!, names: group.map(({ name }) => name) }));
};

function nextHtml(bench: Bench<unknown>, l10n: L10n): string {
  const { next, lastDone, surfaces, findings } = bench;
  const [now, then] = next;
  const placesText = ({ where }: BenchWork): string => listText(where, l10n);
  const whenText = ({ start }: BenchWork): string =>
    start === undefined ? "" : momentText(bench, start, l10n);
  const briefText = (work: BenchWork): string =>
    [whenText(work), work.where.length === 0 ? work.what : `${work.what} (${placesText(work)})`]
      .filter(Boolean)
      .join(", ");
  const done =
    lastDone === undefined
      ? ""
      : `<p class="second">${text(l10n.t("Done last: {0}", briefText(lastDone)))}</p>`;
  if (now === undefined) {
    if (surfaces.length === 0) return "";
    return `<div class="card next"><h2>${text(l10n.t("Next"))}</h2><p class="value">${text(l10n.t("All steps are done"))}</p>${done}</div>`;
  }
  const heading =
    findings[0]?.severity === "error"
      ? l10n.t("When that is put right")
      : lastDone === undefined
        ? l10n.t("To begin with")
        : l10n.t("Next");
  const when = whenText(now);
  const about = [
    placesText(now),
    now.wear.length === 0 ? "" : l10n.t("Wear: {0}", now.wear.join(", ")),
  ].filter(Boolean);
  const isTogether = then?.start !== undefined && then.start === now.start;
  const after =
    then === undefined
      ? ""
      : `<p class="second">${text(isTogether ? l10n.t("At the same time: {0}", briefText({ what: then.what, where: then.where, wear: [] })) : l10n.t("Then: {0}", briefText(then)))}</p>`;
  const dangers =
    bench.dangers.length === 0
      ? ""
      : `<p class="danger">${text(l10n.t("Dangers of this job: {0}", bench.dangers.join(", ")))}</p>`;
  return `<div class="card next"><h2>${text(when === "" ? heading : `${heading}, ${when}`)}</h2><p class="value">${text(now.what)}</p><p>${text(about.join(". "))}</p>${after}${dangers}${done}</div>`;
}

export const canKey = (job: string, material: string, can: number): string => `${job}\n${material}\n${can}`;

export function shoppingHtml(bench: Bench<unknown>, { ticked, l10n }: Look): string {
  const rows = bench.materials.map(({ title, at, takes, onHand, cans, price, gaps }, i) => {
    const boxes = cans.map((can, n) => {
      const key = canKey(bench.name, title, n);
      return `<label class="whole"><input type="checkbox" data-can="${data(key)}" data-key="can ${i} ${n}"${ticked.has(key) ? " checked" : ""}> ${text(can)}</label>`;
    });
    const bought =
      gaps.length > 0 ? prose(gaps.join(", ")) : boxes.join(" ") || text(l10n.t("enough in stock"));
    return `<tr><th scope="row">${link(at, text(title), `material ${i}`)}</th><td class="whole">${text(takes)}</td><td class="whole">${text(onHand || l10n.t("none"))}</td><td>${bought}</td><td class="figure">${text(price)}</td></tr>`;
  });
  const priceHead = bench.currency ? l10n.t("Price in {0}", bench.currency) : l10n.t("Price");
  const list =
    rows.length === 0
      ? `<p class="empty">${text(l10n.t("Nothing to buy is known."))}</p>`
      : `<table><tr><th scope="col">${text(l10n.t("Material"))}</th><th scope="col">${text(l10n.t("Takes"))}</th><th scope="col">${text(l10n.t("In stock"))}</th><th scope="col">${text(l10n.t("Cans to buy"))}</th><th scope="col" class="figure">${text(priceHead)}</th></tr>${rows.join("")}</table>`;
  const block = (html: string): string => (html === "" ? "" : `<div>${html}</div>`);
  return `<div class="beside-each-other">${block(list)}${block(costsHtml(bench, l10n))}</div>${alsoHtml(bench, l10n)}${worthHtml(bench, l10n)}`;
}

/** What the lines name beside what is in cans; how much of it they do not say. */
function alsoHtml({ alsoNeeded }: Bench<unknown>, l10n: L10n): string {
  const items = alsoNeeded.map(({ name, items }) => `<li>${text(`${name}: ${items.join(", ")}`)}</li>`);
  return items.length === 0
    ? ""
    : `<h3>${text(l10n.t("Also needed, by the lines of the recipes"))}</h3><ul class="also">${items.join("")}</ul>`;
}

/** The parts above a line, under it what they come to, and what stands beside that. */
function costsHtml({ costs, currency }: Bench<unknown>, l10n: L10n): string {
  const rows = costs.map(({ kind, name, text: said, sum, missing }) => {
    const more = sum === "" ? prose(missing.join(", ")) : text(sum);
    return `<tr class="${kind}"><th scope="row">${text(name)}</th><td class="figure">${text(said)}</td><td class="second">${more}</td></tr>`;
  });
  const heading = currency ? l10n.t("What it costs, in {0}", currency) : l10n.t("What it costs");
  return `<h2>${text(heading)}</h2><table class="costs">${rows.join("")}</table>`;
}

/** Each way with the pieces beside the others. */
function worthHtml({ worth }: Bench<unknown>, l10n: L10n): string {
  if (!worth) return "";
  const figure = (said: string): string => `<td class="figure">${text(said)}</td>`;
  const head = worth.columns.map((name) => `<th scope="col" class="figure">${text(name)}</th>`);
  const rows = worth.rows.map(
    ({ name, figures }) => `<tr><th scope="row">${text(name)}</th>${figures.map(figure).join("")}</tr>`,
  );
  const notes = worth.notes.map((note) => `<p class="second">${prose(note)}</p>`);
  return `<h2>${text(l10n.t("Is it worth it?"))} <span class="second">${text(worth.basis)}</span></h2><table><tr><td></td>${head.join("")}</tr>${rows.join("")}</table>${notes.join("")}`;
}
