/** The list of what to do on an HTML sheet: a line each with boxes, amount, what to wear and when to leave it alone. */
import { t, translated } from "../../../grammar/src/translate.ts";
import { shortMomentText, timeText } from "../core/measure/figures.ts";
import { exactDuration, roundedUpHours } from "../core/measure/format-amount.ts";
import type { ShownFigures } from "../core/measure/shown-figures.ts";
import { andList } from "../core/model/suggest.ts";
import { beforeCoat } from "../core/rules/texts.ts";
import { hoursAfter } from "../views/sheet/hours-after.ts";
import type {
  BenchGroup,
  BenchList,
  BenchPlace,
  BenchRow,
  SheetFinding,
  UseFrom,
} from "../views/sheet/model.ts";
import { capital } from "../views/sheet/words.ts";
import { html } from "./sheet-html-text.ts";

/** What the rows of a sheet are told with. */
interface OfSheet {
  readonly id: string;
  readonly findings: readonly SheetFinding[];
  readonly say: ShownFigures;
  /** See `surface-letters.ts`. */
  readonly letters: ReadonlyMap<string, string>;
}

export function benchHtml(bench: BenchList, sheet: OfSheet): string {
  const rows = bench.groups.flatMap((group) => group.rows);
  const boxes = Math.max(1, ...rows.map(({ pieces }) => pieces.length));
  return [
    `<div class="bench boxes-${boxes} where-${whereWidth(rows)}">`,
    `<p class="row heads" aria-hidden="true">${headTitles()
      .map((title) => `<span>${html(title)}</span>`)
      .join("")}</p>`,
    ...bench.groups.map((group, i) => groupHtml(group, sheet, i)),
    "</div>",
  ].join("\n");
}

const headTitles = (): readonly string[] => [
  t`From`,
  t`Step`,
  t`Of`,
  t`Done`,
  t`What`,
  t`Put on`,
  t`Don’t touch until`,
];

/** How much room the longest place takes on paper. */
function whereWidth(rows: readonly BenchRow[]): "short" | "middle" | "long" {
  const longest = Math.max(0, ...rows.map((row) => placesText(row.places).length));
  if (longest <= 9) return "short";
  return longest <= 17 ? "middle" : "long";
}

function groupHtml({ title, date, rows }: BenchGroup, sheet: OfSheet, index: number): string {
  const start = rows[0]?.startAt;
  const end = rows
    .flatMap(({ endAt }) => endAt ?? [])
    .toSorted()
    .at(-1);
  const times = start && end ? ` <span>${html(t`${timeText(start)} to ${whenText(end, date)}`)}</span>` : "";
  const id = `${sheet.id}-group-${index + 1}`;
  return [
    `<section class="group" aria-labelledby="${id}">`,
    `<h3 id="${id}">${html(title)}${times}</h3>`,
    '<ol class="steps">',
    ...inLines(rows, sheet),
    "</ol>",
    "</section>",
  ].join("\n");
}

/** What was said on the line before is said again, but with less weight: what is new stands out. A day begins anew. */
function inLines(rows: readonly BenchRow[], sheet: OfSheet): readonly string[] {
  let before: readonly string[] = [];
  return withTakingOff(rows).map((line) => {
    const row = "off" in line ? line.off : line;
    const standing = new Set(before);
    before = row.dangers;
    return "off" in line ? offHtml(row, sheet, standing) : rowHtml(row, sheet, standing);
  });
}

/**
 * On paper what is laid on is taken off on a line of its own: at its time among the others, or right below where the label
 * alone knows it. The page has it in its headlines.
 */
function withTakingOff(rows: readonly BenchRow[]): readonly (BenchRow | { readonly off: BenchRow })[] {
  const lines: (BenchRow | { readonly off: BenchRow })[] = [...rows];
  for (const row of rows) {
    if (!row.strip?.takesOff) continue;
    const { offFrom } = row.strip;
    const below = lines.indexOf(row) + 1;
    const later = lines.findIndex(
      (line, i) => i >= below && !("off" in line) && offFrom !== undefined && (line.startAt ?? "") >= offFrom,
    );
    const atEnd = offFrom === undefined ? below : lines.length;
    lines.splice(later < 0 ? atEnd : later, 0, { off: row });
  }
  return lines;
}

function offHtml(row: BenchRow, { letters }: OfSheet, standing: ReadonlySet<string>): string {
  const { pieces, of, wear, dangers, strip, startAt } = row;
  const boxes = pieces.length === 0 || of === 1 ? [""] : pieces;
  const at = strip?.offFrom === undefined ? "__:__" : whenText(strip.offFrom, startAt?.slice(0, 10));
  return [
    '<li class="row off">',
    `<span class="time">${html(at)}</span>`,
    `<span class="no">${html(stepNumbers(row, letters))}</span>`,
    `<span class="where">${html(placesText(row.places))}</span>`,
    `<span class="ticks">${boxes.map((piece) => `<span class="blank">${piece}</span>`).join("")}</span>`,
    `<span class="what"><b>${html(t`Take the stripper off`)}</b>${strip?.offFrom === undefined ? html(t`, when its label time is up`) : ""}${wornHtml(
      wear,
      dangers,
      standing,
    )
      .map((text) => ` ${text}`)
      .join("")}</span>`,
    '<span class="on"></span><span class="then"></span>',
    "</li>",
  ].join("");
}

function rowHtml(row: BenchRow, sheet: OfSheet, standing: ReadonlySet<string>): string {
  const { op, startAt, strip } = row;
  return [
    `<li class="row ${op}" ${rowData(row, sheet.findings).join(" ")}>`,
    `<span class="time">${startAt ? timeText(startAt) : ""}</span>`,
    `<span class="no">${html(stepNumbers(row, sheet.letters))}</span>`,
    `<span class="where">${html(placesText(row.places))}</span>`,
    `<span class="ticks">${ticksHtml(row)}</span>`,
    `<span class="what">${whatHtml(row, sheet, standing)}</span>`,
    `<span class="on">${op === "layer" || strip ? "__:__" : ""}</span>`,
    `<span class="then">${thenHtml(row)}</span>`,
    '<span class="may"></span>',
    moreHtml(row),
    "</li>",
  ].join("");
}

/** What the page reads of a line, see `sheet-page/page-rows.ts`. */
function rowData(row: BenchRow, findings: readonly SheetFinding[]): readonly string[] {
  const { fingerprint, title, steps, startAt, endAt, then, light, full, wear, dangers, strip } = row;
  const isUnknown = then && [then.hours, then.at, then.leastHours].every((known) => known === undefined);
  const where = placesText(row.places, t` and `);
  const checks = checksOf(row, findings);
  const data = (name: string, value: string | number | undefined): readonly string[] =>
    value === undefined ? [] : [`data-${name}="${value}"`];
  return [
    ...data("step", fingerprint),
    ...data("keys", steps.map(({ key }) => key).join("+")),
    ...data("name", html(where === "" ? title : `${where}: ${title}`)),
    ...data("title", html(title)),
    ...data("where", html(where)),
    ...data("surfaces", listData(steps.map(({ surface }) => surface))),
    ...data("start", startAt),
    ...data("end", endAt),
    ...data("wait", then?.hours),
    ...data("least", then?.leastHours),
    ...data("unknown", isUnknown ? "" : undefined),
    ...data("cured", then?.until === "cured" ? "" : undefined),
    ...data("until", then?.at),
    ...data("latest", then?.latestHours),
    ...data("light", light?.hours),
    ...data("full", full?.hours),
    ...data("leave", strip?.takesOff ? (strip.hours ?? "") : undefined),
    ...data("checks", checks.length > 0 ? listData(checks) : undefined),
    ...data("wear", wear.length > 0 ? listData(wear) : undefined),
    ...data("dangers", dangers.length > 0 ? html(dangers.join(", ")) : undefined),
  ];
}

/** A line each in an attribute: what is escaped has no lines of its own. */
const listData = (texts: readonly string[]): string => texts.map(html).join("&#10;");

/** In turn `order` and `why` of what was found on its line, but for what is said of another coat of it. */
function checksOf(
  { findings: numbers, coat, coats }: BenchRow,
  findings: readonly SheetFinding[],
): readonly string[] {
  const orders = numbers.flatMap((number) => findings.find((each) => each.number === number) ?? []);
  return orders.flatMap(({ order, why }) => {
    const others = Array.from({ length: coats?.count ?? 0 }, (_, i) => i + 1).filter((each) => each !== coat);
    return others.some((other) => order.includes(beforeCoat(other))) ? [] : [order, why];
  });
}

/** `4`; `A4, B3` where there are several surfaces. */
export const stepNumbers = ({ steps }: BenchRow, letters: ReadonlyMap<string, string>): string =>
  [...new Set(steps.map(({ surface, number }) => `${letters.get(surface) ?? ""}${number}`))].join(", ");

/** `Reading table 1, 2: top`; `Chair 1 to 6: seat, back`; `Top` where there is a single piece. */
function placesText(places: readonly BenchPlace[], between = ", "): string {
  const surfaces = new Map<string, string[]>();
  for (const { piece, pieces, surface } of places) {
    const head = [piece ?? "", numbersText(pieces, between)].filter(Boolean).join(" ");
    surfaces.set(head, [...(surfaces.get(head) ?? []), surface]);
  }
  return [...surfaces]
    .map(([head, list]) => {
      const names = [...new Set(list)].join(", ");
      if (head === "") return capital(names);
      // Where figures stand with commas between, another comma would not tell them from the surface.
      return names === "" ? head : `${head}${between === ", " ? ": " : ", "}${names}`;
    })
    .join("; ");
}

function numbersText(numbers: readonly number[], between: string): string {
  const [first = 0] = numbers;
  if (numbers.length > 2 && numbers.every((number, i) => number === first + i))
    return t`${first} to ${numbers.at(-1)!}`;
  return between === ", " ? numbers.join(", ") : andList(numbers.map(String));
}

function ticksHtml(row: BenchRow): string {
  const { pieces, of, title } = row;
  const labels = pieces.length === 0 || of === 1 ? [0] : pieces;
  return labels
    .map((piece) => {
      const name = piece === 0 ? t`Done: ${title}` : t`Piece ${piece} done: ${title}`;
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

/** What is done with what, and on the same line what to have on and what can hurt. */
function whatHtml(row: BenchRow, { id, say }: OfSheet, standing: ReadonlySet<string>): string {
  const { title, litres, by, findings, atHand = [], notes, wear, dangers, strip } = row;
  const links = findings.map((number) => `<a href="#${id}-finding-${number}">${number}</a>`);
  const small = [...notes.map(html), ...atHand.map(html), ...useText(row).map(html)];
  return [
    [
      `<b>${html(title)}</b>`,
      ...(litres === undefined ? [] : [`<span class="takes">${html(say.litres(litres))}</span>`]),
      ...(by === undefined ? [] : [`<span class="by">${html(translated(`by ${by}`))}</span>`]),
    ].join(", "),
    ...wornHtml(wear, dangers, standing),
    ...(strip?.lines ?? []).map(
      (text, i) => `<small class="part${strip?.takesOff && i > 0 ? " unprinted" : ""}">${html(text)}</small>`,
    ),
    ...(links.length > 0
      ? [
          `<small class="see">${links.length > 1 ? t`See findings ${links.join(", ")}.` : t`See finding ${links.join(", ")}.`}</small>`,
        ]
      : []),
    ...small.map((text) => `<small>${text}</small>`),
  ].join(" ");
}

function wornHtml(
  wear: readonly string[],
  dangers: readonly string[],
  standing: ReadonlySet<string>,
): readonly string[] {
  const named = dangers.map((danger) => {
    const said = html(translated(danger));
    return standing.has(danger) ? said : `<strong>${said}</strong>`;
  });
  return [
    ...(wear.length > 0
      ? [`<span class="wear">${html(t`Wear: ${wear.map(translated).join(", ")}.`)}</span>`]
      : []),
    ...(dangers.length > 0 ? [`<span class="danger">${t`Caution: ${named.join(", ")}.`}</span>`] : []),
  ];
}

/** From when what has its last coat may be used, which is not until when nobody touches it. */
function useText({ light, full }: BenchRow): readonly string[] {
  const when = (
    use: UseFrom | undefined,
    later: (long: string) => string,
    on: (moment: string) => string,
  ): readonly string[] => {
    if (use === undefined) return [];
    return [
      use.at === undefined ? later(exactDuration(roundedUpHours(use.hours))) : on(shortMomentText(use.at)),
    ];
  };
  const both = [
    ...when(
      light,
      (long) => t`light use ${long} later`,
      (moment) => t`light use ${moment}`,
    ),
    ...when(
      full,
      (long) => t`full use ${long} later`,
      (moment) => t`full use ${moment}`,
    ),
  ].join(", ");
  return both === "" ? [] : [t`Last coat: ${both}.`];
}

const stageText = (stage: NonNullable<NonNullable<BenchRow["then"]>["until"]>): string =>
  stage === "touch" ? t`touch-dry` : stage === "stackable" ? t`stackable` : "";

/** Until when nobody touches it, how long that is for what went on late, and how late the next coat may be; a line each. */
function thenHtml(row: BenchRow): string {
  const { then, strip } = row;
  const lines =
    strip?.takesOff && !then ? offLines(row) : [...untilLines(row), ...longLines(row), ...latestLines(row)];
  return lines.map((line) => `<span>${line}</span>`).join(" ");
}

/** Of what is laid on and taken off. */
function offLines({ startAt, strip }: BenchRow): readonly string[] {
  if (strip?.hours === undefined) return ["__:__", `<small>${html(t`by its label`)}</small>`];
  const long = t`${exactDuration(roundedUpHours(strip.hours))} after it is on`;
  if (strip.offFrom === undefined) return [html(long)];
  return [html(whenText(strip.offFrom, startAt?.slice(0, 10))), `<small>${html(long)}</small>`];
}

function untilLines({ startAt, then, pieces }: BenchRow): readonly string[] {
  if (!then) return [];
  const stage = then.until ? stageText(then.until) : "";
  if (then.at) {
    const day = startAt?.slice(0, 10);
    const free = html(whenText(then.at, day));
    const stageHtml = stage === "" ? "" : `${html(stage)} `;
    // Piece after piece, on the same day: the first is free while the others still are not.
    if (then.firstAt === undefined || then.firstAt.slice(0, 10) !== day) return [`${stageHtml}${free}`];
    const first = html(timeText(then.firstAt));
    const other = pieces.length === 2 ? pieces.find((piece) => piece !== then.firstPiece) : undefined;
    const [one, two] =
      other === undefined ? [t`first`, t`last`] : [t`piece ${then.firstPiece ?? 0}`, `${other}`];
    return [`<small>${one}</small> ${first}, <small>${two}</small> ${free}`];
  }
  if (then.hours !== undefined || then.leastHours !== undefined) return stage === "" ? [] : [html(stage)];
  if (then.until === "cured") return [html(t`it has cured, by the label`)];
  return [html(stage === "" ? t`the label’s time` : stage)];
}

/** `2 h after it is on`: what counts for what went on at another time than planned. */
function longLines({ then, op }: BenchRow): readonly string[] {
  const hours = then?.hours ?? then?.leastHours;
  if (hours === undefined) return [];
  const long = exactDuration(roundedUpHours(inFives(hours)));
  const least = then?.hours === undefined;
  const said =
    op === "layer"
      ? least
        ? t`at least ${long} after it is on`
        : t`${long} after it is on`
      : least
        ? t`at least ${long} after it`
        : t`${long} after it`;
  const text = html(said);
  return [then?.at === undefined ? text : `<small>${text}</small>`];
}

/** Nobody waits to the minute: from an hour on the next five minutes. */
const inFives = (hours: number): number => (hours < 1 ? hours : Math.ceil(hours * 12 - 1e-6) / 12);

/** The next coat needs sanding first after that; counted from the beginning, as nobody knows when which piece is done. */
function latestLines({ then, startAt }: BenchRow): readonly string[] {
  if (then?.latestHours === undefined) return [];
  if (startAt === undefined) return [html(t`next coat within ${exactDuration(then.latestHours)}, or sand`)];
  const latest = hoursAfter(startAt, then.latestHours);
  return latest === undefined ? [] : [html(t`next coat by ${shortMomentText(latest)}, or sand`)];
}

/** The day stands with it where it is another one. */
const whenText = (at: string, date: string | undefined): string =>
  at.slice(0, 10) === date ? timeText(at) : shortMomentText(at);

function moreHtml({ details, cautions, title }: BenchRow): string {
  const lines = [
    ...cautions.map((text) => `<p class="caution">${html(text)}</p>`),
    ...details.map((text) => `<p>${html(text)}</p>`),
  ];
  return `<details class="more"><summary>${html(t`More`)}</summary>${lines.join("")}<label class="noted">${html(t`Done at`)} <input type="datetime-local" data-at aria-label="${html(t`Done at: ${title}`)}"></label><label class="noted">${html(t`Note`)} <input type="text" data-note aria-label="${html(t`Note: ${title}`)}" maxlength="300" autocomplete="off"></label></details>`;
}
