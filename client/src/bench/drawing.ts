/**
 * A job as HTML, for the page beside its text: pure functions from what the server sends, and the moment that is looked
 * at, to text. Whatever a person wrote goes through `htmlText`; nothing here is styled in line, since the page forbids it.
 */
import { htmlText as text } from "../../../server/src/escape/html.ts";
import { sectionScale, sectionSvg } from "../../../server/src/reports/section-svg.ts";
import type { Bench, BenchBar, BenchCoat, BenchSurface } from "../../../server/src/views/bench/model.ts";

/** What is looked at. `moment`: position in `momentsOf`. */
export interface Look {
  readonly moment: number;
  /** Of the page, px. */
  readonly width: number;
  /** Cans that are bought, as `canKey` names them. */
  readonly ticked: ReadonlySet<string>;
}

/** Stops of the slider in order: hours of the plan, or without one the number of steps that are done on every surface. */
export function momentsOf({ plan, surfaces }: Bench<unknown>): readonly number[] {
  const stops =
    plan === "planned"
      ? surfaces.flatMap(({ bars }) => bars.flatMap(({ start, end }) => [start, end]))
      : surfaces.flatMap(({ steps }) => steps.map(({ number }) => number));
  return [...new Set([0, ...stops])].toSorted((a, b) => a - b);
}

const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const two = (figure: number): string => String(figure).padStart(2, "0");
const one = (figure: number): string => String(Math.round(figure * 10) / 10);

const dateAt = (startAt: string, hours: number): Date =>
  new Date(Date.parse(`${startAt}Z`) + Math.round(hours * 60) * 60_000);

const dayText = (at: Date): string =>
  `${WEEKDAYS[at.getUTCDay()]} ${at.getUTCDate()} ${MONTHS[at.getUTCMonth()]}`;

/** `Mon 8 Mar 10:00`; without dates `3 h after the start`; without a plan `step 3`. */
export function momentText({ plan, startAt }: Bench<unknown>, moment: number): string {
  if (plan !== "planned") return moment === 0 ? "before the work" : `after step ${moment}`;
  if (startAt === undefined) return moment === 0 ? "the start" : `${one(moment)} h after the start`;
  const at = dateAt(startAt, moment);
  return `${dayText(at)} ${two(at.getUTCHours())}:${two(at.getUTCMinutes())}`;
}

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

const mark = (severity: string | undefined): string =>
  severity === "error"
    ? '<span class="mark error" role="img" aria-label="error">⛒</span>'
    : severity === "warning"
      ? '<span class="mark warning" role="img" aria-label="warning">⚠</span>'
      : severity === undefined
        ? ""
        : `<span class="mark" role="img" aria-label="${text(severity)}">ⓘ</span>`;

/** A button that leads to a line. */
const link = (at: number | undefined, html: string, key: string): string =>
  at === undefined
    ? `<span>${html}</span>`
    : `<button type="button" class="link" data-at="${at}" data-key="${text(key)}">${html}</button>`;

// ---------------------------------------------------------------------------------------------------------------
// Blocks

export function headHtml(bench: Bench<unknown>): string {
  const facts = bench.facts.map(({ name, text: said }) => `${text(name)}: ${text(said)}`).join(" · ");
  const [next] = bench.findings;
  const errors = bench.findings.filter(({ severity }) => severity === "error").length;
  const first =
    next !== undefined && errors > 0
      ? `<div class="card stop"><h2>Put right first</h2><p class="value">${link(next.at, text(next.headline), "first")}</p><p>${text(next.remedy)}</p></div>`
      : "";
  const dates = bench.dates.map(
    ({ name, text: said, reason }) =>
      `<div class="card"><h2>${text(name)}</h2><p class="value">${text(said)}</p><p class="second">${text(reason.replaceAll("`", ""))}</p></div>`,
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

const GUTTER = 96;
const LANE = 46;

export function timelineHtml(bench: Bench<unknown>, { moment, width }: Look): string {
  if (bench.plan === "being planned") return '<p class="empty">The plan is being made.</p>';
  if (bench.plan === "none") {
    const missing = bench.gaps
      .flatMap((gap) => gap.missing)
      .join(", ")
      .replaceAll("`", "");
    return `<p class="empty">There is no plan${missing ? `: ${text(missing)}` : ""}.</p>`;
  }
  const axis = axisOf(bench, Math.max(320, width - 24) - GUTTER - 8);
  const at = momentsOf(bench)[moment] ?? 0;
  const height = 30 + bench.surfaces.length * LANE;
  const shut = bench.shut.map(({ from, to }) => {
    const x = axis.x(Math.max(0, from));
    return `<rect class="shut" x="${one(x)}" y="22" width="${one(Math.max(0, axis.x(to) - x))}" height="${height - 22}"/>`;
  });
  const days = axis.days.map(
    ({ x, name }) =>
      `<path class="rule" d="M${one(x)} 20V${height}"/><text x="${one(x + 3)}" y="14">${text(name)}</text>`,
  );
  const lanes = bench.surfaces.map((surface, i) => laneSvg(bench, surface, i, axis.x, width));
  const nowX = one(axis.x(at));
  return [
    `<svg class="timeline" role="group" aria-label="When things are done, by surface" viewBox="0 0 ${Math.floor(Math.max(320, width - 24))} ${height}" width="${Math.floor(Math.max(320, width - 24))}" height="${height}">`,
    '<defs><pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V5" class="hatch"/></pattern></defs>',
    ...shut,
    ...days,
    ...lanes,
    `<path class="now" d="M${nowX} 18V${height}"/>`,
    "</svg>",
    planTable(bench),
  ].join("");
}

/** Hours in which nobody works for long are drawn short: the last drying of weeks would leave no room for the work. */
function axisOf(bench: Bench<unknown>, room: number) {
  const work = bench.surfaces.flatMap(({ bars }) => bars.filter(({ kind }) => kind !== "wait"));
  const stops = [...new Set([0, bench.endHours, ...work.flatMap(({ start, end }) => [start, end])])].toSorted(
    (a, b) => a - b,
  );
  const weights = stops.slice(1).map((stop, i) => {
    const length = stop - stops[i]!;
    return length <= 4 ? length : 4 + Math.log2(length / 4) * 1.5;
  });
  const sum = weights.reduce((all, each) => all + each, 0) || 1;
  const xs = [0];
  for (const weight of weights) xs.push(xs.at(-1)! + (weight / sum) * room);
  const x = (hours: number): number => {
    const next = stops.findIndex((stop) => stop >= hours);
    if (next < 0) return GUTTER + room;
    if (next === 0) return GUTTER;
    const from = stops[next - 1]!;
    const part = (hours - from) / (stops[next]! - from || 1);
    return GUTTER + xs[next - 1]! + part * (xs[next]! - xs[next - 1]!);
  };
  const days: { x: number; name: string }[] = [];
  const { startAt } = bench;
  const first =
    startAt === undefined ? 0 : -(dateAt(startAt, 0).getUTCHours() + dateAt(startAt, 0).getUTCMinutes() / 60);
  for (let day = 0; day < 400 && first + day * 24 < bench.endHours; day += 1) {
    const hour = Math.max(0, first + day * 24);
    const at = x(hour);
    const name = startAt === undefined ? `day ${day + 1}` : dayText(dateAt(startAt, hour));
    const hasRoom = at < GUTTER + room - 56;
    if (days.length === 0 || (hasRoom && at - days.at(-1)!.x > 68)) days.push({ x: at, name });
  }
  return { x, days };
}

function laneSvg(
  bench: Bench<unknown>,
  { title, bars, section, steps }: BenchSurface,
  number: number,
  x: (hours: number) => number,
  width: number,
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
        : `<path class="window" d="M${one(from)} ${base + 4}V${base + 8}H${one(Math.min(x(each.closes), width - 30))}V${base + 4}"/>`;
    return `<g role="button" tabindex="${number === 0 && i === 0 ? 0 : -1}" class="bar ${each.kind}" data-at="${step?.at ?? ""}" data-key="bar ${number} ${each.step} ${i}" aria-label="${text(`${title}: ${label}`)}"><title>${text(label)}</title><rect x="${one(from)}" y="${base - tall}" width="${one(wide)}" height="${tall}" ${fill}/>${step?.gravest === "error" || step?.gravest === "warning" ? `<circle class="${step.gravest}" cx="${one(from + wide / 2)}" cy="${base - tall - 6}" r="4"/>` : ""}${closes}</g>`;
  };
  const name = title.length > 15 ? `${title.slice(0, 14)}…` : title;
  return `<g><title>${text(title)}</title><text x="0" y="${base - 4}" class="lane">${text(name)}</text><path class="rule" d="M${GUTTER} ${base}H${width - 30}"/>${bars.map(bar).join("")}</g>`;
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
  `<table class="hidden"><caption>The plan</caption><tr><th>From</th><th>To</th><th>Surface</th><th>What</th></tr>${bench.surfaces
    .flatMap(({ title, bars, steps }) =>
      bars.map(
        (bar) =>
          `<tr><td>${text(momentText(bench, bar.start))}</td><td>${text(momentText(bench, bar.end))}</td><td>${text(title)}</td><td>${text(steps.find(({ number }) => number === bar.step)?.what ?? "")}</td></tr>`,
      ),
    )
    .join("")}</table>`;

export function airHtml(bench: Bench<unknown>): string {
  const most = Math.max(0, ...bench.air.map(({ grams }) => grams));
  const said = bench.airVerdict
    .map((each) => `<p class="second">${text(each.replaceAll("`", ""))}</p>`)
    .join("");
  if (most < 0.5) return said;
  const hours = bench.air.filter(({ grams }) => grams >= 0.5).slice(0, 200);
  const step = Math.max(3, Math.min(14, Math.floor(360 / hours.length)));
  const bars = hours.map(
    ({ hour, grams }, i) =>
      `<rect class="grams" x="${i * step}" y="${one(48 - (grams / most) * 46)}" width="${step - 1}" height="${one((grams / most) * 46)}"><title>${text(`${momentText(bench, hour)}: ${Math.round(grams)} g`)}</title></rect>`,
  );
  const rows = hours.map(
    ({ hour, grams }) => `<tr><td>${text(momentText(bench, hour))}</td><td>${Math.round(grams)}</td></tr>`,
  );
  return `<h2>Vapour, grams an hour <span class="second">${Math.round(most)} g at most</span></h2><svg role="img" aria-label="Grams that leave in each hour; the table has the figures" width="${hours.length * step}" height="50" viewBox="0 0 ${hours.length * step} 50">${bars.join("")}<path class="rule" d="M0 49H${hours.length * step}"/></svg><table class="hidden"><caption>Grams by the hour</caption>${rows.join("")}</table>${said}`;
}

export const canKey = (job: string, material: string, can: number): string => `${job}\n${material}\n${can}`;

export function shoppingHtml(bench: Bench<unknown>, { ticked }: Look): string {
  const rows = bench.materials.map(({ title, at, takes, onHand, cans, price, gaps }, i) => {
    const boxes = cans.map((can, n) => {
      const key = canKey(bench.name, title, n);
      return `<label><input type="checkbox" data-can="${text(key)}" data-key="can ${i} ${n}"${ticked.has(key) ? " checked" : ""}> ${text(can)}</label>`;
    });
    const bought =
      gaps.length > 0 ? text(gaps.join(", ").replaceAll("`", "")) : boxes.join(" ") || "enough in stock";
    return `<tr><th scope="row">${link(at, text(title), `material ${i}`)}</th><td>${text(takes)}</td><td>${text(onHand || "none")}</td><td>${bought}</td><td class="figure">${text(price)}</td></tr>`;
  });
  const costs = bench.costs.map(
    ({ name, text: said }) => `<dt>${text(name)}</dt><dd>${text(said.replaceAll("`", ""))}</dd>`,
  );
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
  const notes = worth.notes.map((note) => `<p class="second">${text(note.replaceAll("`", ""))}</p>`);
  return `<h2>Is it worth it? <span class="second">${text(worth.basis)}</span></h2><table><tr><td></td>${head.join("")}</tr>${rows.join("")}</table>${notes.join("")}`;
}

export function findingsHtml({ findings }: Bench<unknown>): string {
  if (findings.length === 0) return "";
  const rows = findings.map(
    ({ severity, headline, remedy, at }, i) =>
      `<li>${mark(severity)} ${link(at, text(headline.replaceAll("`", "")), `finding ${i}`)} <span>${text(remedy.replaceAll("`", ""))}</span></li>`,
  );
  return `<h2>What to look at</h2><ul>${rows.join("")}</ul>`;
}
