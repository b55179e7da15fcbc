/** The list of what to do on an HTML sheet: a line each with boxes, amount, what to wear and when to leave it alone. */
import { shortMomentText, timeText } from "../core/measure/figures.ts";
import { exactDuration, roundedUpHours } from "../core/measure/format-amount.ts";
import type { ShownFigures } from "../core/measure/shown-figures.ts";
import type { BenchGroup, BenchList, BenchRow } from "../views/sheet/model.ts";
import { html } from "./sheet-html-text.ts";

export function benchHtml(bench: BenchList, sheet: string, say: ShownFigures): string {
  const boxes = Math.max(1, ...bench.groups.flatMap(({ rows }) => rows.map(({ pieces }) => pieces.length)));
  return [
    `<div class="bench boxes-${boxes}">`,
    '<p class="row heads" aria-hidden="true"><span>from</span><span>step</span><span>done</span><span>what</span><span>takes</span><span>with, wear</span><span>on at</span><span>leave alone until</span></p>',
    ...bench.groups.map((group, i) => groupHtml(group, sheet, i, say)),
    "</div>",
  ].join("\n");
}

function groupHtml(
  { title, date, rows }: BenchGroup,
  sheet: string,
  index: number,
  say: ShownFigures,
): string {
  const start = rows[0]?.startAt;
  const end = rows
    .flatMap(({ endAt }) => endAt ?? [])
    .toSorted()
    .at(-1);
  const times = start && end ? ` <span>${timeText(start)} to ${whenText(end, date)}</span>` : "";
  const id = `${sheet}-group-${index + 1}`;
  return [
    `<section class="group" aria-labelledby="${id}">`,
    `<h3 id="${id}">${html(title)}${times}</h3>`,
    '<ol class="steps">',
    ...rows.map((row) => rowHtml(row, sheet, say)),
    "</ol>",
    "</section>",
  ].join("\n");
}

function rowHtml(row: BenchRow, sheet: string, say: ShownFigures): string {
  const { fingerprint, op, startAt, endAt, then, litres } = row;
  const data = [
    `data-step="${fingerprint}"`,
    `data-keys="${row.steps.map(({ key }) => key).join("+")}"`,
    `data-name="${html(`${stepsText(row)}: ${row.title}`)}"`,
    `data-surfaces="${html(row.steps.map(({ surface }) => surface).join("\n"))}"`,
    ...(startAt ? [`data-start="${startAt}"`] : []),
    ...(endAt ? [`data-end="${endAt}"`] : []),
    ...(then?.hours === undefined ? [] : [`data-wait="${then.hours}"`]),
    ...(then?.at === undefined ? [] : [`data-until="${then.at}"`]),
    ...(then?.latestHours === undefined ? [] : [`data-latest="${then.latestHours}"`]),
  ];
  return [
    `<li class="row ${op}" ${data.join(" ")}>`,
    `<span class="time">${startAt ? timeText(startAt) : ""}</span>`,
    `<span class="no">${html(stepsText(row))}</span>`,
    `<span class="ticks">${ticksHtml(row)}</span>`,
    `<span class="what">${whatHtml(row, sheet)}</span>`,
    `<span class="takes">${litres === undefined ? "" : html(say.litres(litres))}</span>`,
    `<span class="wear">${html(mindText(row))}</span>`,
    `<span class="on">${op === "layer" ? "__:__" : ""}</span>`,
    `<span class="then">${html(thenText(row))}</span>`,
    moreHtml(row),
    "</li>",
  ].join("");
}

/** `Top 4`; `Seat 4, Back 3` */
const stepsText = ({ steps }: BenchRow): string =>
  steps.map(({ surface, number }) => `${surface} ${number}`.trim()).join(", ");

function ticksHtml(row: BenchRow): string {
  const { pieces, of, title } = row;
  const labels = pieces.length === 0 || of === 1 ? [0] : pieces;
  return labels
    .map((piece) => {
      const name = piece === 0 ? `Done: ${title}` : `Piece ${piece} done: ${title}`;
      return `<label><input type="checkbox" data-piece="${piece}"${doneHtml(row, piece)} aria-label="${html(name)}"><span>${piece === 0 ? "" : piece}</span></label>`;
    })
    .join("");
}

/** A box that the record ticks; 0 is that of all pieces. */
function doneHtml({ done = [], pieces, of }: BenchRow, piece: number): string {
  const all = piece === 0 ? pieces.length || of : 1;
  const ticked = piece === 0 ? done : done.filter((each) => each.piece === piece);
  if (ticked.length < all) return "";
  const at = ticked
    .map((each) => each.at)
    .toSorted()
    .at(-1);
  return ` data-done="${at}" checked disabled`;
}

function whatHtml({ title, findings, details, notes }: BenchRow, sheet: string): string {
  const links = findings.map((number) => `<a href="#${sheet}-finding-${number}">${number}</a>`);
  const small = [
    ...(links.length > 0 ? [`See finding${links.length > 1 ? "s" : ""} ${links.join(", ")}.`] : []),
    ...notes.map(html),
    ...details.filter((text) => /^(?:Mix|Use the mix) /u.test(text)).map(html),
  ];
  return `<b>${html(title)}</b>${small.map((text) => ` <small>${text}</small>`).join("")}`;
}

/** What begins here is said with its name; the box with the cautions has the whole. */
function mindText({ begins, by, wear }: BenchRow): string {
  const fresh = begins.filter((word) => !wear.includes(word));
  return [by ?? "", wear.join(", "), fresh.length > 0 ? `from here on: ${fresh.join(", ")}` : ""]
    .filter(Boolean)
    .join("; ");
}

const STAGE = { touch: "touch-dry", recoat: "", stackable: "stackable", cured: "cured" } as const;

function thenText({ startAt, then }: BenchRow): string {
  if (!then) return "";
  const stage = then.until ? STAGE[then.until] : "";
  const more = stage === "" ? "" : `, ${stage}`;
  if (then.at) {
    const day = startAt?.slice(0, 10);
    // Piece after piece, on the same day: the first is free while the others still are not.
    const first = then.firstAt?.slice(0, 10) === day ? then.firstAt : undefined;
    const free = first ? `${timeText(first)}, the last ${whenText(then.at, day)}` : whenText(then.at, day);
    return [stage, free].filter(Boolean).join(" ");
  }
  if (then.hours === undefined) return stage === "" ? "the label's time" : stage;
  return `${exactDuration(roundedUpHours(then.hours))} later${more}`;
}

/** The day stands with it where it is another one. */
const whenText = (at: string, date: string | undefined): string =>
  at.slice(0, 10) === date ? timeText(at) : shortMomentText(at);

function moreHtml({ details, cautions, title }: BenchRow): string {
  const lines = [
    ...cautions.map((text) => `<p class="caution">${html(text)}</p>`),
    ...details.map((text) => `<p>${html(text)}</p>`),
  ];
  return `<details class="more"><summary>More</summary>${lines.join("")}<label class="noted">Done at <input type="datetime-local" data-at aria-label="${html(`Done at: ${title}`)}"></label><label class="noted">Note <input type="text" data-note aria-label="${html(`Note: ${title}`)}" maxlength="300" autocomplete="off"></label></details>`;
}
