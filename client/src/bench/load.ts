/** Under the rows of a shop's jobs: the work of all of them on a day beside the hours that its people are there. */
import type { Bench, BenchDay } from "../../../server/src/views/bench/model.ts";
import { text } from "./html.ts";
import type { L10n } from "./l10n.ts";
import { MARK, markClass, markShape } from "./marks.ts";
import { dateAt, dayText, durationText, listText, one, stretchText } from "./moments.ts";
import { GUTTER, type TimeAxis } from "./time-axis.ts";

/** Of the row, and of its bars, px. */
export const LOAD = 58;
const BAR = 24;
/** Narrower days have no words, px. */
const LEAST_WIDTH = 74;

interface Drawn {
  readonly bench: Bench<unknown>;
  readonly l10n: L10n;
}

const isTooMuch = ({ hours, has, clash }: BenchDay): boolean =>
  clash !== undefined || (has !== undefined && hours > has + 1e-6);

/** A bar for each day, from its first hour that is open to its last: outlined what there is, filled what is asked for. */
export function loadSvg(
  { bench, l10n }: Drawn,
  days: readonly BenchDay[],
  axis: TimeAxis,
  top: number,
): readonly string[] {
  const base = top + LOAD - 8;
  const most = Math.max(...days.map(({ hours, has = 0 }) => Math.max(hours, has)), 1e-6);
  const bars = days.map((day) => {
    const [from, to] = openPart(bench, day);
    const x = axis.x(from);
    const wide = Math.max(3, axis.x(to) - x);
    const tall = (hours: number): number => (hours / most) * BAR;
    const outline =
      day.has === undefined
        ? ""
        : `<rect class="room" x="${one(x)}" y="${one(base - tall(day.has))}" width="${one(wide)}" height="${one(tall(day.has))}"/>`;
    const filled = `<rect class="asked" x="${one(x)}" y="${one(base - tall(day.hours))}" width="${one(wide)}" height="${one(tall(day.hours))}"/>`;
    const said = briefText(day, l10n);
    const words =
      wide < LEAST_WIDTH ? "" : `<text x="${one(x)}" y="${one(base - BAR - 4)}">${text(said)}</text>`;
    const sign = isTooMuch(day)
      ? `<g class="${markClass("warning")}" transform="translate(${one(x + wide / 2 - MARK / 2)} ${base - BAR - MARK - 2})">${markShape("warning")}</g>`
      : "";
    return `<g class="load"><title>${text(`${dayOf(bench, day, l10n)}: ${said}`)}</title>${outline}${filled}${isTooMuch(day) ? "" : words}${sign}</g>`;
  });
  const { crew } = days[0]!;
  const people = crew === 1 ? l10n.t("1 person") : l10n.t("{0} people", crew);
  return [
    `<text x="8" y="${base - 14}" class="lane">${text(l10n.t("All work"))}</text><text x="8" y="${base}">${text(people)}</text>`,
    `<path class="rule" d="M${GUTTER} ${base}H${axis.end}"/>`,
    ...bars,
  ];
}

/** The part of a day that is not shut; the whole of it where that is not known. */
function openPart({ shut }: Bench<unknown>, { from, to }: BenchDay): readonly [number, number] {
  const before = shut.find((each) => each.from <= from + 1e-6 && each.to > from && each.to < to);
  const after = shut.findLast((each) => each.from > from && each.from < to);
  const open = before?.to ?? (shut.length > 0 && after !== undefined ? Math.max(from, 0) : from);
  return [open, Math.max(open, after?.from ?? to)];
}

const dayOf = ({ startAt }: Bench<unknown>, { from }: BenchDay, l10n: L10n): string =>
  startAt === undefined ? "" : dayText(dateAt(startAt, from), l10n);

/** `5 h 55 min of 16 h` */
const briefText = ({ hours, has }: BenchDay, l10n: L10n): string =>
  has === undefined
    ? durationText(hours, l10n)
    : l10n.t("{0} of {1}", durationText(hours, l10n), durationText(has, l10n));

/** Under the drawing: the days that ask for more than there is, or that none does, and which is the fullest. */
export function loadHtml({ bench, l10n }: Drawn, days: readonly BenchDay[]): string {
  if (days.length === 0) return "";
  const found = days.filter(isTooMuch).map((day) => tooMuchText(bench, day, l10n));
  const said = found.length > 0 ? found : [fullestText(bench, days, l10n)];
  const sign =
    found.length > 0
      ? `<svg class="${markClass("warning")}" aria-hidden="true" width="${MARK}" height="${MARK}" viewBox="0 0 ${MARK} ${MARK}">${markShape("warning")}</svg> `
      : "";
  const rows = days.map(
    (day) =>
      `<tr><th scope="row">${text(dayOf(bench, day, l10n))}</th><td>${text(briefText(day, l10n))}</td></tr>`,
  );
  return `${said.map((each) => `<p${found.length > 0 ? "" : ' class="second"'}>${sign}${text(each)}</p>`).join("")}<table class="hidden"><caption>${text(l10n.t("The work of all jobs of the shop by the day"))}</caption><tr><th scope="col">${text(l10n.t("Day"))}</th><th scope="col">${text(l10n.t("All work"))}</th></tr>${rows.join("")}</table>`;
}

function tooMuchText(bench: Bench<unknown>, day: BenchDay, l10n: L10n): string {
  const { clash, crew } = day;
  if (clash === undefined)
    return l10n.t(
      "{0}: more work than the shop has hours, {1}.",
      dayOf(bench, day, l10n),
      briefText(day, l10n),
    );
  return l10n.t(
    "{0}: {1} people are needed at once, the shop has {2} ({3}).",
    stretchText(bench, clash.from, clash.to, l10n),
    clash.needs,
    crew,
    listText(clash.jobs, l10n),
  );
}

function fullestText(bench: Bench<unknown>, days: readonly BenchDay[], l10n: L10n): string {
  const share = ({ hours, has }: BenchDay): number => hours / (has ?? 24);
  const fullest = days.reduce((most, day) => (share(day) > share(most) ? day : most));
  return l10n.t(
    "The people of the shop can do all of it; the fullest day is {0}, {1}.",
    dayOf(bench, fullest, l10n),
    briefText(fullest, l10n),
  );
}
