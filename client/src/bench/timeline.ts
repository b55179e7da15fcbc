/** When things are done: a row for each surface, with bars of work, hatched waits, and the hours at which the shop is shut. */
import type { Bench, BenchBar, BenchSurface } from "../../../server/src/views/bench/model.ts";
import { text } from "./html.ts";
import { MARK, markClass, markShape } from "./marks.ts";
import { type Look, momentsOf, momentText, one } from "./moments.ts";
import { axisOf, GUTTER, type TimeAxis } from "./time-axis.ts";

const LANE = 46;

export function timelineHtml(bench: Bench<unknown>, look: Look): string {
  if (bench.plan === "being planned") return '<p class="empty">The plan is being made.</p>';
  if (bench.plan === "none") {
    const missing = bench.gaps
      .flatMap((gap) => gap.missing)
      .join(", ")
      .replaceAll("`", "");
    return `<p class="empty">There is no plan${missing ? `: ${text(missing)}` : ""}.</p>`;
  }
  const axis = axisOf(bench, look);
  const at = momentsOf(bench)[look.moment] ?? 0;
  const height = 30 + bench.surfaces.length * LANE;
  const shut = bench.shut.map(({ from, to }) => {
    const x = axis.x(Math.max(0, from));
    return `<rect class="shut" x="${one(x)}" y="22" width="${one(Math.max(0, axis.x(to) - x))}" height="${height - 22}"/>`;
  });
  const days = axis.days.map(
    ({ x, name }) =>
      `<path class="rule" d="M${one(x)} 20V${height}"/><text x="${one(x + 3)}" y="14">${text(name)}</text>`,
  );
  const lanes = bench.surfaces.map((surface, i) => laneSvg(bench, surface, i, axis));
  const nowX = one(axis.x(at));
  return [
    `<svg class="timeline" role="group" aria-label="When things are done, by surface" viewBox="0 0 ${axis.width} ${height}" width="${axis.width}" height="${height}">`,
    '<defs><pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V5" class="hatch"/></pattern></defs>',
    ...shut,
    ...days,
    ...lanes,
    `<path class="now" d="M${nowX} 18V${height}"/>`,
    "</svg>",
    planTable(bench),
  ].join("");
}

function laneSvg(
  bench: Bench<unknown>,
  { title, bars, section, steps }: BenchSurface,
  number: number,
  { x, end }: TimeAxis,
): string {
  const base = 30 + number * LANE + 32;
  const bar = (each: BenchBar, i: number): string => {
    const step = steps.find(({ number: own }) => own === each.step);
    const from = x(each.start);
    const wide = Math.max(2, x(each.end) - from);
    const coat = section.coats.find(({ step: own }) => own === each.step);
    const tall = each.kind === "layer" ? 20 : each.kind === "wait" ? 9 : 11;
    const fill =
      each.kind === "wait"
        ? 'fill="url(#hatch)"'
        : coat && each.kind === "layer"
          ? `fill="${coat.fill}"`
          : "";
    const label = barText(bench, each, step?.what ?? "");
    const closes =
      each.closes === undefined || each.kind !== "layer"
        ? ""
        : `<path class="window" d="M${one(from)} ${base + 4}V${base + 8}H${one(Math.min(x(each.closes), end))}V${base + 4}"/>`;
    const sign =
      step?.gravest === "error" || step?.gravest === "warning"
        ? `<g class="${markClass(step.gravest)}" transform="translate(${one(from + wide / 2 - MARK / 2)} ${base - tall - MARK - 1})">${markShape(step.gravest)}</g>`
        : "";
    return `<g role="button" tabindex="${number === 0 && i === 0 ? 0 : -1}" class="bar ${each.kind}" data-at="${step?.at ?? ""}" data-key="bar ${number} ${each.step} ${i}" aria-label="${text(`${title}: ${label}`)}"><title>${text(label)}</title><rect x="${one(from)}" y="${base - tall}" width="${one(wide)}" height="${tall}" ${fill}/>${sign}${closes}</g>`;
  };
  const name = title.length > 15 ? `${title.slice(0, 14)}…` : title;
  return `<g><title>${text(title)}</title><text x="0" y="${base - 4}" class="lane">${text(name)}</text><path class="rule" d="M${GUTTER} ${base}H${end}"/>${bars.map(bar).join("")}</g>`;
}

const barText = (bench: Bench<unknown>, bar: BenchBar, what: string): string =>
  [
    `${bar.step}. ${what}`,
    `${momentText(bench, bar.start)} to ${momentText(bench, bar.end)}`,
    bar.pieces.length > 1 ? `${bar.pieces.length} pieces` : "",
    bar.closes === undefined ? "" : `must be on by ${momentText(bench, bar.closes)}`,
    bar.kind !== "wait" && bar.slack > 0 ? `${one(bar.slack)} h to spare` : "",
  ]
    .filter(Boolean)
    .join("; ");

const planTable = (bench: Bench<unknown>): string =>
  `<table class="hidden"><caption>The plan</caption><tr><th scope="col">From</th><th scope="col">To</th><th scope="col">Surface</th><th scope="col">What</th></tr>${bench.surfaces
    .flatMap(({ title, bars, steps }) =>
      bars.map(
        (bar) =>
          `<tr><td>${text(momentText(bench, bar.start))}</td><td>${text(momentText(bench, bar.end))}</td><td>${text(title)}</td><td>${text(steps.find(({ number }) => number === bar.step)?.what ?? "")}</td></tr>`,
      ),
    )
    .join("")}</table>`;
