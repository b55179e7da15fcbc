/**
 * The air of the room hour by hour, under the axis of the timeline: what each hour asks for as a bar, what there is as a
 * line, and over what is too little a hatch and a mark.
 */
import type { Bench, BenchAirHour } from "../../../server/src/views/bench/model.ts";
import { link, plain, prose, text } from "./html.ts";
import { breakMark, keyHtml } from "./keys.ts";
import type { L10n } from "./l10n.ts";
import { MARK, markClass, markShape } from "./marks.ts";
import { figureText as decimal, type Look, momentsOf, momentText, one } from "./moments.ts";
import { axisOf, GUTTER, LEAST_SHUT, type TimeAxis } from "./time-axis.ts";

/** Of the plot, and above it for marks, px. */
const PLOT = 56;
const TOP = 22;
const BASE = TOP + PLOT;

/** More hours say nothing to an eye. */
const MOST_HOURS = 400;

export function airHtml(bench: Bench<unknown>, look: Look): string {
  const { l10n } = look;
  const { state, room, at, worst, missing, said, night } = bench.air;
  const heading = (beside: string): string => `<h2>${text(l10n.t("Air of the room"))} ${beside}</h2>`;
  const uncounted =
    missing.length > 0
      ? `<p class="second">${prose(l10n.t("Not counted: {0}.", missing.join(", ")))}</p>`
      : "";
  if (state === "being planned") {
    return `${heading("")}<p class="empty">${text(l10n.t("It is worked out when the jobs in this room are planned."))}</p>`;
  }
  if (state === "none") {
    if (said.length === 0 && missing.length === 0) return "";
    return `${heading("")}${said.map((each) => `<p class="second">${prose(each)}</p>`).join("")}${uncounted}`;
  }
  const beside =
    state === "known"
      ? link(at, text(room), "room")
      : link(at, text(l10n.t("state the room in the shop to see its limit")), "room");
  const sums =
    said.length === 0
      ? ""
      : `<details data-key="sums"><summary>${text(l10n.t("How it is worked out"))}</summary>${said.map((each) => `<p class="second">${prose(each)}</p>`).join("")}</details>`;
  return [
    heading(`<span class="second">${beside}</span>`),
    `<p class="worst">${markOf(gravestOf(bench.air.hours))}${prose(worst)}</p>`,
    uncounted,
    chart(bench, look),
    state === "known" ? legend(l10n) : "",
    night === undefined ? "" : `<p class="second">${prose(night)}</p>`,
    table(bench, l10n),
    sums,
  ].join("");
}

const legend = (l10n: L10n): string =>
  keyHtml(
    [
      {
        svg: '<rect class="asked" x="8" y="2" width="10" height="12"/>',
        means: l10n.t("asked for in the hour"),
      },
      { svg: '<path class="limit" d="M0 7H26"/>', means: l10n.t("what there is") },
      {
        svg: '<rect class="asked" x="8" y="2" width="10" height="12"/><rect class="beyond" x="8" y="2" width="10" height="7" fill="url(#over)"/>',
        means: l10n.t("more than there is"),
      },
    ],
    l10n,
  );

/** Of an hour, by what its verdict asks of whoever works there. */
const severityOf = ({ verdict }: BenchAirHour): "error" | "warning" | "information" | undefined =>
  verdict === undefined || verdict === "enough"
    ? undefined
    : verdict === "short" || verdict === "masked"
      ? "warning"
      : "information";

const gravestOf = (hours: readonly BenchAirHour[]): "warning" | "information" | undefined =>
  hours.some((hour) => severityOf(hour) === "warning")
    ? "warning"
    : hours.some((hour) => severityOf(hour) === "information")
      ? "information"
      : undefined;

const markOf = (severity: string | undefined): string =>
  severity === undefined
    ? ""
    : `<svg class="${markClass(severity)}" aria-hidden="true" width="${MARK}" height="${MARK}" viewBox="0 0 ${MARK} ${MARK}">${markShape(severity)}</svg> `;

function chart(bench: Bench<unknown>, look: Look): string {
  const { state, hours, worst } = bench.air;
  const drawn = hours.slice(0, MOST_HOURS);
  const axis = axisOf(bench, look);
  const isKnown = state === "known";
  const heightOf = (hour: BenchAirHour): number => (isKnown ? (hour.needs ?? 0) : hour.grams);
  const most = Math.max(...drawn.map((hour) => Math.max(heightOf(hour), hour.has ?? 0)), 1e-6);
  const y = (value: number): number => BASE - (value / most) * PLOT;
  const at = momentsOf(bench)[look.moment] ?? 0;
  const shut = bench.shut.flatMap(({ from, to }) => {
    const x = axis.x(from);
    if (axis.x(to) - x < LEAST_SHUT) return [];
    return `<rect class="shut" x="${one(x)}" y="0" width="${one(Math.max(0, axis.x(to) - x))}" height="${BASE}"/>`;
  });
  const { l10n } = look;
  const unit = isKnown ? l10n.t("changes/h") : l10n.t("grams/h");
  const figure = (value: number): string =>
    `<text x="${GUTTER - 6}" y="${one(y(value) + 4)}" text-anchor="end">${text(figureText(value, l10n))}</text>`;
  const limits = [...new Set(drawn.flatMap(({ has }) => (has === undefined ? [] : [has])))];
  const figures = (isKnown ? limits : [most]).filter((value) => y(value) < BASE - 14);
  const bars = drawn.map((hour, i) => bar({ bench, l10n }, hour, i, axis, y, heightOf(hour)));
  const nowX = one(axis.x(at));
  return [
    `<svg class="timeline air" role="group" aria-label="${plain(`${worst} ${l10n.t("The table behind the drawing has every hour.")}`)}" viewBox="0 0 ${axis.width} ${BASE + 2}" width="${axis.width}" height="${BASE + 2}">`,
    '<defs><pattern id="over" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 0V4" class="over"/></pattern></defs>',
    ...shut,
    `<text x="8" y="${BASE - 20}" class="lane">${text(isKnown ? l10n.t("Asked for") : l10n.t("Leaves"))}</text><text x="8" y="${BASE - 6}">${text(unit)}</text>`,
    ...figures.map(figure),
    `<text x="${GUTTER - 6}" y="${BASE}" text-anchor="end">0</text>`,
    `<path class="rule" d="M${GUTTER} ${BASE}H${axis.end}"/>`,
    ...axis.breaks.map((x) => breakMark(Number(one(x)), BASE - 5)),
    ...bars,
    ...(isKnown ? [limitLine(drawn, axis, y, l10n)] : []),
    `<path class="now" d="M${nowX} 0V${BASE}"/>`,
    "</svg>",
  ].join("");
}

const figureText = (value: number, l10n: L10n): string =>
  decimal(value < 10 ? value : Math.round(value), l10n);

function bar(
  { bench, l10n }: { readonly bench: Bench<unknown>; readonly l10n: L10n },
  hour: BenchAirHour,
  number: number,
  axis: TimeAxis,
  y: (value: number) => number,
  value: number,
): string {
  const from = axis.x(hour.hour);
  const wide = Math.max(2, axis.x(hour.hour + 1) - from - 1);
  const top = Math.min(y(value), BASE - 1.5);
  const severity = severityOf(hour);
  const over =
    severity === undefined || hour.has === undefined
      ? ""
      : `<rect class="beyond" x="${one(from)}" y="${one(top)}" width="${one(wide)}" height="${one(Math.max(1.5, y(hour.has) - top))}" fill="url(#over)"/>`;
  // Marks of hours that are drawn close together would hide each other.
  const sign =
    severity === undefined || wide < 9
      ? severity === undefined
        ? ""
        : `<path class="tick ${severity}" d="M${one(from)} ${one(top - 3)}h${one(wide)}"/>`
      : `<g class="${markClass(severity)}" transform="translate(${one(from + wide / 2 - MARK / 2)} ${one(top - MARK - 3)})">${markShape(severity)}</g>`;
  const label = plain(`${momentText(bench, hour.hour, l10n)}: ${hour.text}`);
  return `<g role="button" tabindex="${number === 0 ? 0 : -1}" class="bar hour" data-at="${hour.at ?? ""}" data-key="hour ${hour.hour}" aria-label="${label}"><title>${label}</title><rect class="hit" x="${one(from)}" y="0" width="${one(wide + 1)}" height="${BASE}"/><rect class="asked" x="${one(from)}" y="${one(top)}" width="${one(wide)}" height="${one(BASE - top)}"/>${over}${sign}</g>`;
}

/** From edge to edge where the air is the same all the time, which it is but for lines that state their own. */
function limitLine(
  hours: readonly BenchAirHour[],
  axis: TimeAxis,
  y: (value: number) => number,
  l10n: L10n,
): string {
  const levels = [...new Set(hours.flatMap(({ has }) => (has === undefined ? [] : [has])))];
  const path =
    levels.length === 1
      ? `M${GUTTER} ${one(y(levels[0]!))}H${axis.end}`
      : hours
          .flatMap(({ hour, has }) =>
            has === undefined ? [] : [`M${one(axis.x(hour))} ${one(y(has))}H${one(axis.x(hour + 1))}`],
          )
          .join("");
  const label =
    levels.length === 1
      ? `<text x="${axis.end - 5}" y="${one(y(levels[0]!) - 4)}" text-anchor="end">${text(l10n.t("there is"))}</text>`
      : "";
  return `<path class="limit" d="${path}"/>${label}`;
}

function table(bench: Bench<unknown>, l10n: L10n): string {
  const { hours, state } = bench.air;
  const rows = hours.slice(0, MOST_HOURS).map((hour) => {
    const figures = state === "known" ? [hour.needs ?? 0, hour.has ?? 0, hour.grams] : [hour.grams];
    return `<tr><th scope="row">${text(momentText(bench, hour.hour, l10n))}</th>${figures.map((figure) => `<td>${text(figureText(figure, l10n))}</td>`).join("")}<td>${prose(hour.text)}</td></tr>`;
  });
  const grams = l10n.t("Grams");
  const heads = state === "known" ? [l10n.t("Air changes/h asked for"), l10n.t("There are"), grams] : [grams];
  return `<table class="hidden"><caption>${text(l10n.t("The air of the room by the hour"))}</caption><tr><th scope="col">${text(l10n.t("Hour from"))}</th>${heads.map((head) => `<th scope="col">${text(head)}</th>`).join("")}<th scope="col">${text(l10n.t("In words"))}</th></tr>${rows.join("")}</table>`;
}
