/** When things are done: a row for each surface, with bars of work, hatched waits, and the hours at which the shop is shut. */
import type {
  Bench,
  BenchBar,
  BenchOther,
  BenchOtherBar,
  BenchSurface,
} from "../../../server/src/views/bench/model.ts";
import { data, plain, text } from "./html.ts";
import { breakMark, keyHtml, type Sign } from "./keys.ts";
import type { L10n } from "./l10n.ts";
import { LOAD, loadHtml, loadSvg } from "./load.ts";
import { MARK, markClass, markShape } from "./marks.ts";
import { durationText, type Look, momentsOf, momentText, one, stretchText } from "./moments.ts";
import { axisOf, GUTTER, LEAST_SHUT, type TimeAxis } from "./time-axis.ts";

const LANE = 46;

function signsOf(l10n: L10n, hasBreaks: boolean, hasShut: boolean): readonly Sign[] {
  return [
    { svg: '<rect class="tall" x="9" y="1" width="6" height="12"/>', means: l10n.t("a coat") },
    { svg: '<rect class="low" x="6" y="6" width="13" height="7"/>', means: l10n.t("other work") },
    {
      svg: '<rect x="0" y="4" width="26" height="9" fill="url(#hatch)"/><path class="rule" d="M0 13h26"/>',
      means: l10n.t("waiting: it dries or cures"),
    },
    {
      svg: '<path class="window" d="M4 6v4h18V6"/>',
      means: l10n.t("the coat must be on before its right end"),
    },
    ...(hasShut
      ? [{ svg: '<rect class="shut" x="2" y="0" width="22" height="14"/>', means: l10n.t("shop shut") }]
      : []),
    ...(hasBreaks
      ? [
          {
            svg: `<path class="axis" d="M0 7H26"/>${breakMark(13, 7)}`,
            means: l10n.t("nights and long drying are drawn short here"),
          },
        ]
      : []),
    { svg: '<path class="now" d="M13 0V14"/>', means: l10n.t("the moment chosen above") },
  ];
}

/** What is drawn, and in which language. */
interface Drawn {
  readonly bench: Bench<unknown>;
  readonly l10n: L10n;
}

/** Of the line that names a job, and of a row of another one, px. */
const NAME = 22;
const ROW = 22;
/** Where the line of time is, px. */
const AXIS = 22;

export function timelineHtml(bench: Bench<unknown>, look: Look): string {
  const { l10n } = look;
  if (bench.plan === "being planned")
    return `<p class="empty">${text(l10n.t("The plan is being made."))}</p>`;
  if (bench.plan === "none") {
    const missing = bench.gaps
      .flatMap((gap) => gap.missing)
      .join(", ")
      .replaceAll("`", "");
    const said = missing ? l10n.t("There is no plan: {0}.", missing) : l10n.t("There is no plan.");
    return `<p class="empty">${text(said)}</p>`;
  }
  const axis = axisOf(bench, look);
  const at = momentsOf(bench)[look.moment] ?? 0;
  const others = look.isWholeShop ? bench.others : [];
  const top = 30 + (others.length > 0 ? NAME : 0);
  const below = top + bench.surfaces.length * LANE;
  const loadTop = below + others.reduce((sum, { rows }) => sum + NAME + rows.length * ROW, 0);
  const days = others.length > 0 ? bench.days : [];
  const height = loadTop + (days.length > 0 ? LOAD : 0) + 2;
  const shut = bench.shut.flatMap(({ from, to }) => {
    const x = axis.x(from);
    if (axis.x(to) - x < LEAST_SHUT) return [];
    return `<rect class="shut" x="${one(x)}" y="22" width="${one(Math.max(0, axis.x(to) - x))}" height="${height - 22}"/>`;
  });
  const dayNames = axis.days.map(
    ({ x, name }) =>
      `<path class="rule" d="M${one(x)} 20V${height}"/><text x="${one(x + 3)}" y="14">${text(name)}</text>`,
  );
  const lanes = bench.surfaces.map((surface, i) => laneSvg({ bench, l10n }, surface, i, axis, top));
  const nowX = one(axis.x(at));
  return [
    `<svg class="timeline" role="group" aria-label="${text(l10n.t("When things are done; the table behind the drawing has it in words"))}" viewBox="0 0 ${axis.width} ${height}" width="${axis.width}" height="${height}">`,
    '<defs><pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V5" class="hatch"/></pattern></defs>',
    ...shut,
    ...dayNames,
    `<path class="axis" d="M${GUTTER} ${AXIS}H${axis.end}"/>`,
    ...axis.breaks.map((x) => breakMark(Number(one(x)), AXIS)),
    ...(others.length > 0
      ? [
          `<rect class="mine" x="0" y="${top - NAME + 4}" width="3" height="${below - top + NAME - 8}"/>`,
          jobName({ title: bench.title, at: bench.at, note: "", key: "own" }, top - 7, "mine"),
        ]
      : []),
    ...lanes,
    ...othersSvg({ bench, l10n }, others, axis, below),
    ...(days.length > 0 ? loadSvg({ bench, l10n }, days, axis, loadTop) : []),
    `<path class="now" d="M${nowX} 18V${height}"/>`,
    "</svg>",
    loadHtml({ bench, l10n }, days),
    keyHtml(signsOf(l10n, axis.breaks.length > 0, bench.shut.length > 0), l10n),
    planTable({ bench, l10n }),
    othersTable({ bench, l10n }, others),
  ].join("");
}

function laneSvg(
  drawn: Drawn,
  { title, bars, section, steps }: BenchSurface,
  number: number,
  { x, end }: TimeAxis,
  top: number,
): string {
  const base = top + number * LANE + 32;
  const bar = (each: BenchBar, i: number): string => {
    const step = steps.find(({ index }) => index === each.index);
    const from = x(each.start);
    const wide = Math.max(2, x(each.end) - from);
    const coat = section.coats.find(({ index }) => index === each.index);
    const tall = each.kind === "layer" ? 20 : each.kind === "wait" ? 9 : 11;
    const fill =
      each.kind === "wait"
        ? 'fill="url(#hatch)"'
        : coat && each.kind === "layer"
          ? `fill="${coat.fill}"`
          : "";
    const label = barText(drawn, each, step?.what ?? "");
    const closes =
      each.closes === undefined || each.kind !== "layer"
        ? ""
        : `<path class="window" d="M${one(from)} ${base + 4}V${base + 8}H${one(Math.min(x(each.closes), end))}V${base + 4}"/>`;
    const sign =
      step?.gravest === "error" || step?.gravest === "warning"
        ? `<g class="${markClass(step.gravest)}" transform="translate(${one(from + wide / 2 - MARK / 2)} ${base - tall - MARK - 1})">${markShape(step.gravest)}</g>`
        : "";
    return `<g role="button" tabindex="${number === 0 && i === 0 ? 0 : -1}" class="bar ${each.kind}${step?.gravest === "error" ? " wrong" : ""}" data-at="${step?.at ?? ""}" data-key="bar ${number} ${each.index} ${i}" aria-label="${text(`${title}: ${label}`)}"><title>${text(label)}</title><rect x="${one(from)}" y="${base - tall}" width="${one(wide)}" height="${tall}" ${fill}/>${sign}${closes}</g>`;
  };
  return `<g><title>${text(title)}</title><text x="8" y="${base - 4}" class="lane">${text(shortened(title))}</text><path class="rule" d="M${GUTTER} ${base}H${end}"/>${bars.map(bar).join("")}</g>`;
}

// ---------------------------------------------------------------------------------------------------------------
// Other jobs of the shop

interface JobName {
  readonly title: string;
  readonly at: number | undefined;
  readonly note: string;
  readonly key: string;
}

/** Over the rows of a job; leads to its line. */
const jobName = ({ title, at, note, key }: JobName, y: number, kind: "mine" | "other"): string =>
  `<g role="button" tabindex="-1" class="bar job ${kind}" data-at="${at ?? ""}" data-key="job ${data(key)}" aria-label="${plain([title, note].filter(Boolean).join(" "))}"><text x="8" y="${y}"><tspan class="title">${text(title)}</tspan>${note ? ` <tspan dx="4">${plain(note)}</tspan>` : ""}</text></g>`;

function othersSvg(
  drawn: Drawn,
  others: readonly BenchOther[],
  axis: TimeAxis,
  below: number,
): readonly string[] {
  let y = below;
  return others.map((other, i) => {
    const name = jobName({ ...other, at: other.at, key: `${i} ${other.name}` }, y + NAME - 6, "other");
    y += NAME;
    const rows = other.rows.map((row, n) => {
      const base = y + n * ROW + ROW - 6;
      return `<text x="8" y="${base}" class="lane"><title>${text(row.title)}</title>${text(shortened(row.title))}</text><path class="rule" d="M${GUTTER} ${base}H${axis.end}"/>${row.bars.map((bar, at) => otherBar(drawn, other, bar, `${i} ${n} ${at}`, axis, base)).join("")}`;
    });
    y += other.rows.length * ROW;
    return `<g class="others">${name}${rows.join("")}</g>`;
  });
}

function otherBar(
  { bench, l10n }: Drawn,
  other: BenchOther,
  { kind, start, end, what, at }: BenchOtherBar,
  key: string,
  axis: TimeAxis,
  base: number,
): string {
  const from = axis.x(start);
  const wide = Math.max(2, axis.x(end) - from);
  const tall = kind === "work" ? 11 : 6;
  const label = plain(`${other.title}: ${what}; ${stretchText(bench, start, end, l10n)}`);
  return `<g role="button" tabindex="-1" class="bar ${kind}" data-at="${at ?? ""}" data-key="other ${key}" aria-label="${label}"><title>${label}</title><rect x="${one(from)}" y="${base - tall}" width="${one(wide)}" height="${tall}"${kind === "wait" ? ' fill="url(#hatch)"' : ""}/></g>`;
}

const othersTable = ({ bench, l10n }: Drawn, others: readonly BenchOther[]): string =>
  others.length === 0
    ? ""
    : `<table class="hidden"><caption>${text(l10n.t("Other jobs of the shop"))}</caption><tr>${headsOf([l10n.t("Job"), l10n.t("Piece"), l10n.t("From"), l10n.t("To"), l10n.t("What")])}</tr>${others
        .flatMap(({ title, note, rows }) => [
          `<tr><th scope="row">${text(title)}</th><td colspan="4">${plain(note)}</td></tr>`,
          ...rows.flatMap((row) =>
            row.bars
              .filter(({ kind }) => kind === "work")
              .map(
                ({ start, end, what }) =>
                  `<tr><td>${text(title)}</td><td>${text(row.title)}</td><td>${text(momentText(bench, start, l10n))}</td><td>${text(momentText(bench, end, l10n))}</td><td>${plain(what)}</td></tr>`,
              ),
          ),
        ])
        .join("")}</table>`;

const shortened = (title: string): string =>
  [...title].length > 14 ? `${[...title].slice(0, 13).join("")}…` : title;

/** Lets the person choose, where there are others; more than are drawn are counted. */
export function shopChoiceHtml({ others, othersLeft }: Bench<unknown>, { isWholeShop, l10n }: Look): string {
  if (others.length === 0) return "";
  const count = others.length;
  const said =
    othersLeft > 0
      ? l10n.t("with the other jobs of the shop ({0}, the nearest {0} of {1})", count, count + othersLeft)
      : l10n.t("with the other jobs of the shop ({0})", count);
  return `<label><input type="checkbox" id="whole-shop" data-key="whole shop"${isWholeShop ? " checked" : ""}> ${text(said)}</label>`;
}

const barText = ({ bench, l10n }: Drawn, bar: BenchBar, what: string): string =>
  [
    bar.step === undefined ? what : `${bar.step}. ${what}`,
    stretchText(bench, bar.start, bar.end, l10n),
    bar.pieces.length > 1 ? l10n.t("{0} pieces", bar.pieces.length) : "",
    bar.closes === undefined ? "" : l10n.t("must be on by {0}", momentText(bench, bar.closes, l10n)),
    bar.kind !== "wait" && bar.slack > 0 ? l10n.t("{0} to spare", durationText(bar.slack, l10n)) : "",
  ]
    .filter(Boolean)
    .join("; ");

const headsOf = (heads: readonly string[]): string =>
  heads.map((head) => `<th scope="col">${text(head)}</th>`).join("");

const planTable = ({ bench, l10n }: Drawn): string =>
  `<table class="hidden"><caption>${text(l10n.t("The plan"))}</caption><tr>${headsOf([l10n.t("From"), l10n.t("To"), l10n.t("Surface"), l10n.t("What")])}</tr>${bench.surfaces
    .flatMap(({ title, bars, steps }) =>
      bars.map(
        (bar) =>
          `<tr><td>${text(momentText(bench, bar.start, l10n))}</td><td>${text(momentText(bench, bar.end, l10n))}</td><td>${text(title)}</td><td>${text(steps.find(({ index }) => index === bar.index)?.what ?? "")}</td></tr>`,
      ),
    )
    .join("")}</table>`;
