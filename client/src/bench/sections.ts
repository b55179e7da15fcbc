/**
 * The cut through each surface at a moment: the drawing with a mark where a finding sits, and beside it from the top down
 * what is on it, how dry it is, and what comes off.
 */
import {
  BARE_WIDTH,
  coatNumber,
  filmOf,
  keptText,
  micro,
  oldText,
  type SectionDrawing,
  sectionDrawing,
  sectionScale,
} from "../../../server/src/reports/section-svg.ts";
import type { Bench, BenchCoat, BenchSurface } from "../../../server/src/views/bench/model.ts";
import type { Section } from "../../../server/src/views/section/model.ts";
import { link, plain, text } from "./html.ts";
import { keyHtml, type Sign } from "./keys.ts";
import { type L10n, severityText } from "./l10n.ts";
import { MARK, mark, markClass, markShape } from "./marks.ts";
import { type Look, momentsOf } from "./moments.ts";

/** How far a step is on all pieces at this moment. */
function isDone(bench: Bench<unknown>, surface: BenchSurface, step: number, moment: number): boolean {
  if (bench.plan !== "planned") return step <= moment;
  return surface.bars.every((bar) => bar.step !== step || bar.end <= moment + 1e-9);
}

export type Dryness = "to come" | "wet" | "touch-dry" | "takes a coat" | "cured" | "not cured" | "on";

type Times = Pick<BenchCoat, "onAt" | "touchH" | "recoatH" | "curedH" | "never">;

/** `on`: put on, and how long it dries is not known; `not cured`: by its hours it would be, and something keeps it from that. */
export function drynessOf(coat: Times, moment: number, isOn: boolean, isPlanned: boolean): Dryness {
  const dryness = byHours(coat, moment, isOn, isPlanned);
  const isDry = dryness === "cured" || dryness === "takes a coat";
  return isDry && coat.never !== undefined ? "not cured" : dryness;
}

function byHours(coat: Times, moment: number, isOn: boolean, isPlanned: boolean): Dryness {
  if (!isOn) return "to come";
  if (!isPlanned || coat.onAt === undefined) return "on";
  const hours = moment - coat.onAt;
  if (coat.curedH !== undefined && hours >= coat.curedH) return "cured";
  if (coat.recoatH !== undefined && hours >= coat.recoatH) return "takes a coat";
  if (coat.touchH !== undefined && hours >= coat.touchH) return "touch-dry";
  return coat.touchH === undefined ? "on" : "wet";
}

function drynessText(dryness: Dryness, l10n: L10n): string {
  switch (dryness) {
    case "to come":
      return l10n.t("to come");
    case "wet":
      return l10n.t("wet");
    case "touch-dry":
      return l10n.t("touch-dry");
    case "takes a coat":
      return l10n.t("takes a coat");
    case "cured":
      return l10n.t("cured");
    case "not cured":
      return l10n.t("not cured");
    case "on":
      return l10n.t("on");
  }
}

/** `cured`, or `not cured: too cold to dry`. */
const stateText = (dryness: Dryness, { never }: BenchCoat, l10n: L10n): string =>
  dryness === "not cured" && never !== undefined
    ? l10n.t("not cured: {0}", never)
    : drynessText(dryness, l10n);

const RUNGS: Readonly<Record<Dryness, number>> = {
  "to come": 0,
  on: 0,
  wet: 1,
  "touch-dry": 2,
  "takes a coat": 3,
  cured: 4,
  "not cured": 1,
};

const ladder = (dryness: Dryness): string =>
  `<svg class="ladder" aria-hidden="true" width="34" height="10" viewBox="0 0 34 10">${rungs(dryness, 8)}</svg>`;

const rungs = (dryness: Dryness, apart: number): string =>
  [0, 1, 2, 3]
    .map(
      (rung) =>
        `<rect x="${rung * apart + 0.5}" y="0.5" width="${apart - 2}" height="9" class="${rung < RUNGS[dryness] ? "full" : "empty"}"/>`,
    )
    .join("");

export function sectionsHtml(bench: Bench<unknown>, { moment, l10n }: Look): string {
  const at = momentsOf(bench)[moment] ?? 0;
  const scale = scaleOf(bench.surfaces.map(({ section }) => section));
  const figures = bench.surfaces.map((surface, i) => surfaceHtml({ bench, l10n, scale }, surface, i, at));
  return figures.length === 0 ? "" : `${figures.join("")}${keyHtml(signsOf(bench, l10n), l10n)}`;
}

/** Of a row of the list beside the drawing, and of all films together at most, px. */
const ROW = 38;
const TALLEST = 300;

/** So large that the thinnest film has room for its row, where that does not make the thickest stack too tall. */
function scaleOf(sections: readonly Section[]): number {
  const films = sections.map(({ coats }) => coats.flatMap(({ dryUm }) => (dryUm ? [dryUm] : [])));
  const thinnest = Math.min(...films.flat());
  const thickest = Math.max(1, ...films.map((each) => each.reduce((sum, um) => sum + um, 0)));
  return Math.max(sectionScale(sections), Math.min(ROW / thinnest, TALLEST / thickest));
}

/** The signs that these surfaces have, and what they mean. */
function signsOf({ surfaces }: Bench<unknown>, l10n: L10n): readonly Sign[] {
  const sections = surfaces.map(({ section }) => section);
  const coats = sections.flatMap((section) => section.coats);
  const step = (dryness: Dryness): Sign => ({
    svg: `<g transform="translate(0 2)" class="ladder">${rungs(dryness, 6)}</g>`,
    means: drynessText(dryness, l10n),
  });
  const sign = (isThere: boolean, svg: string, means: string): readonly Sign[] =>
    isThere ? [{ svg, means }] : [];
  return [
    ...(["wet", "touch-dry", "takes a coat", "cured"] as const).map(step),
    {
      svg: '<rect class="outline" x="1" y="1.5" width="24" height="11" stroke-dasharray="4 3"/>',
      means: l10n.t("to come"),
    },
    ...sign(
      coats.some(({ gleam }) => gleam > 0),
      '<rect class="outline" x="1" y="1.5" width="24" height="11"/><rect class="gleam" x="4" y="4" width="8" height="4" rx="2"/>',
      l10n.t("sheen: short for satin, longer for semi-gloss, the whole width for gloss"),
    ),
    ...sign(
      coats.some(({ isFilm, dryUm }) => isFilm && dryUm === undefined),
      '<rect class="outline" x="1" y="1.5" width="24" height="11" stroke-dasharray="2 3"/><text x="13" y="11" text-anchor="middle" font-size="11">?</text>',
      l10n.t("film not known, so not to scale"),
    ),
    ...sign(
      coats[0] !== undefined && sections.some(({ coats: [first] }) => first?.isFilm === false),
      '<rect x="1" y="3" width="24" height="9" fill="#cdb591"/><rect x="1" y="3" width="24" height="4" fill="#5b3a24"/>',
      l10n.t("on the wood and in its pores, too thin to count"),
    ),
    {
      svg: '<path class="zigzag" d="M1 9l3 -4l3 4l3 -4l3 4l3 -4l3 4l3 -4l3 4"/>',
      means: l10n.t("cut short: wood and old coats are not to scale"),
    },
  ];
}

/** What is drawn, in which language, and how large a micrometre is. */
interface Drawn {
  readonly bench: Bench<unknown>;
  readonly l10n: L10n;
  readonly scale: number;
}

function surfaceHtml(
  { bench, l10n, scale }: Drawn,
  surface: BenchSurface,
  number: number,
  moment: number,
): string {
  const { section, coats, title, about } = surface;
  const isOn = section.coats.map(({ step }) => isDone(bench, surface, step, moment));
  const now = {
    ...section,
    old: section.old.map((each) =>
      each.removedBy !== undefined && !isDone(bench, surface, each.removedBy, moment)
        ? { ...each, isKept: true, isAbraded: false }
        : each,
    ),
    filmUm: undefined,
  };
  const drawing = sectionDrawing(now, { width: BARE_WIDTH, scale, isBare: true, isOn, say: l10n.t });
  const rows = section.coats.map((coat, i) => {
    const { at, findings } = coats[i]!;
    const state = drynessOf(coats[i]!, moment, isOn[i]!, bench.plan === "planned");
    const more = [
      coatNumber(coat, l10n.t),
      coats[i]!.takes,
      coat.wetUm === undefined ? "" : l10n.t("wet {0}", micro(coat.wetUm)),
      coat.coat === coat.coats ? (coat.sheen ?? "") : "",
      coat.isOptional ? l10n.t("if needed") : "",
    ];
    const gravest = findings[0] === undefined ? undefined : bench.findings[findings[0]]?.severity;
    return `<li class="coat${state === "to come" ? " later" : ""}" data-coat data-y="${drawing.coats[i]!}"><span>${link(at, text(coat.title), `coat ${number} ${i}`)} ${mark(gravest, l10n)}</span><span class="figure">${text(filmOf(coat, l10n.t))}</span><span class="state${state === "not cured" ? " wrong" : ""}">${ladder(state)} ${together([stateText(state, coats[i]!, l10n), ...more])}</span></li>`;
  });
  const below = section.old.map((each, i) => {
    const isGone = each.removedBy !== undefined && isDone(bench, surface, each.removedBy, moment);
    const said = text(oldText(each, l10n.t));
    const name = isGone ? `<s>${said}</s>` : said;
    const y = drawing.old[i];
    return `<li class="below" data-y="${y ?? drawing.face}"${y === undefined ? " data-gone" : ""}><span>${name}</span><span class="figure second">${text(keptText(each, "", l10n.t))}</span></li>`;
  });
  const list = [
    ...rows.toReversed(),
    ...below.toReversed(),
    `<li class="below" data-y="${drawing.wood}"><span>${text(section.wood.name)}${section.wood.assumed === undefined ? "" : `<span class="second assumed">${text(section.wood.assumed)}</span>`}</span></li>`,
  ];
  return `<figure data-key="surface ${number}"><figcaption><b>${text(title)}</b> <span class="second">${text(about.join(" · "))}</span></figcaption><div class="cut"><div class="drawing">${drawing.svg}${marksSvg({ bench, l10n, scale }, surface, isOn, drawing, number)}</div><svg class="leaders" aria-hidden="true" width="24"><path/></svg><ol aria-label="${text(l10n.t("On {0}, from the top down", title))}">${list.join("")}</ol></div></figure>`;
}

/** A figure and its unit stay on one line. */
const together = (parts: readonly string[]): string =>
  parts
    .filter(Boolean)
    .map((part) => `<span class="whole">${text(part)}</span>`)
    .join(", ");

interface PlacedMark {
  /** Positions of the findings, the gravest first. */
  readonly findings: readonly number[];
  readonly y: number;
  readonly of: string;
}

/** Marks of thin films stand above each other, as far apart as they are tall. */
function marksSvg(
  { bench, l10n }: Drawn,
  surface: BenchSurface,
  isOn: readonly boolean[],
  { width, height, coats, wood, to }: SectionDrawing,
  number: number,
): string {
  const wanted: readonly PlacedMark[] = [
    { findings: surface.findings, y: wood, of: "surface" },
    ...surface.coats.flatMap(({ findings }, i) =>
      isOn[i] ? [{ findings, y: coats[i]!, of: `coat ${i}` }] : [],
    ),
  ].filter(({ findings }) => findings.length > 0);
  if (wanted.length === 0) return "";
  let next = Number.POSITIVE_INFINITY;
  const placed = wanted.map((each) => {
    const y = Math.max(MARK / 2 + 2, Math.min(each.y, next));
    next = y - MARK - 4;
    return { ...each, y };
  });
  const marks = placed.map(({ findings, y, of }) => {
    const found = findings.map((each) => bench.findings[each]!);
    const [first] = found;
    const said = found.map(({ severity, headline }) => `${severityText(severity, l10n)}: ${headline}`);
    const count = found.length > 1 ? `${l10n.t("{0} findings.", found.length)} ` : "";
    const x = to - MARK - 8;
    return `<g role="button" tabindex="0" class="${markClass(first!.severity)} spot" data-at="${first!.at}" data-key="mark ${number} ${of}" transform="translate(${x} ${y - MARK / 2})" aria-label="${plain(count + said.join("; "))}"><title>${plain(said.join("\n"))}</title><circle class="halo" cx="${MARK / 2}" cy="${MARK / 2}" r="${MARK / 2 + 3}"/>${markShape(first!.severity)}</g>`;
  });
  return `<svg class="marks" role="group" aria-label="${plain(l10n.t("Findings on {0}", surface.title))}" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">${marks.join("")}</svg>`;
}
