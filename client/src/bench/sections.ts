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
import { link, plain, text } from "./html.ts";
import { MARK, mark, markClass, markShape } from "./marks.ts";
import { type Look, momentsOf } from "./moments.ts";

/** How far a step is on all pieces at this moment. */
function isDone(bench: Bench<unknown>, surface: BenchSurface, step: number, moment: number): boolean {
  if (bench.plan !== "planned") return step <= moment;
  return surface.bars.every((bar) => bar.step !== step || bar.end <= moment + 1e-9);
}

export type Dryness = "to come" | "wet" | "touch-dry" | "takes a coat" | "cured" | "on";

type Times = Pick<BenchCoat, "onAt" | "touchH" | "recoatH" | "curedH">;

/** `on`: put on, and how long it dries is not known. */
export function drynessOf(coat: Times, moment: number, isOn: boolean, isPlanned: boolean): Dryness {
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

export function sectionsHtml(bench: Bench<unknown>, { moment }: Look): string {
  const at = momentsOf(bench)[moment] ?? 0;
  const scale = sectionScale(bench.surfaces.map(({ section }) => section));
  return bench.surfaces.map((surface, i) => surfaceHtml(bench, surface, i, at, scale)).join("");
}

function surfaceHtml(
  bench: Bench<unknown>,
  surface: BenchSurface,
  number: number,
  moment: number,
  scale: number,
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
  const drawing = sectionDrawing(now, { width: BARE_WIDTH, scale, isBare: true });
  const drawn = coats.filter((_, i) => isOn[i]);
  const rows = section.coats.map((coat, i) => {
    const { at, findings } = coats[i]!;
    const state = drynessOf(coats[i]!, moment, isOn[i]!, bench.plan === "planned");
    const more = [
      coatNumber(coat),
      coats[i]!.takes,
      coat.wetUm === undefined ? "" : `wet ${micro(coat.wetUm)}`,
      coat.coat === coat.coats ? (coat.sheen ?? "") : "",
      coat.isOptional ? "if needed" : "",
    ];
    const gravest = findings[0] === undefined ? undefined : bench.findings[findings[0]]?.severity;
    return `<li class="coat${state === "to come" ? " later" : ""}"><span>${link(at, text(coat.title), `coat ${number} ${i}`)} ${mark(gravest)}</span><span class="figure">${text(filmOf(coat))}</span><span class="state">${ladder(state)} ${together([state, ...more])}</span></li>`;
  });
  const below = section.old.map((each) => {
    const isGone = each.removedBy !== undefined && isDone(bench, surface, each.removedBy, moment);
    const name = isGone ? `<s>${text(oldText(each))}</s>` : text(oldText(each));
    return `<li class="below"><span>${name}</span><span class="figure second">${text(keptText(each))}</span></li>`;
  });
  const list = [
    ...rows.toReversed(),
    ...below.toReversed(),
    `<li class="below"><span>${text(section.wood.name)}</span></li>`,
  ];
  return `<figure data-key="surface ${number}"><figcaption><b>${text(title)}</b> <span class="second">${text(about.join(" · "))}</span></figcaption><div class="cut"><div class="drawing">${drawing.svg}${marksSvg(bench, surface, drawn, drawing, number)}</div><ol aria-label="${text(`On ${title}, from the top down`)}">${list.join("")}</ol></div></figure>`;
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
  bench: Bench<unknown>,
  surface: BenchSurface,
  drawn: readonly BenchCoat[],
  { width, height, coats, wood, to }: SectionDrawing,
  number: number,
): string {
  const wanted: readonly PlacedMark[] = [
    { findings: surface.findings, y: wood, of: "surface" },
    ...drawn.map(({ findings }, i) => ({ findings, y: coats[i]!, of: `coat ${i}` })),
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
    const said = found.map(({ severity, headline }) => `${severity}: ${headline}`);
    const count = found.length > 1 ? `${found.length} findings. ` : "";
    const x = to - MARK - 8;
    return `<g role="button" tabindex="0" class="${markClass(first!.severity)} spot" data-at="${first!.at}" data-key="mark ${number} ${of}" transform="translate(${x} ${y - MARK / 2})" aria-label="${plain(count + said.join("; "))}"><title>${plain(said.join("\n"))}</title><circle class="halo" cx="${MARK / 2}" cy="${MARK / 2}" r="${MARK / 2 + 3}"/>${markShape(first!.severity)}</g>`;
  });
  return `<svg class="marks" role="group" aria-label="${plain(`Findings on ${surface.title}`)}" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">${marks.join("")}</svg>`;
}
