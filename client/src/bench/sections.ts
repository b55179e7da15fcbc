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
import { type L10n, severityText } from "./l10n.ts";
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
    case "on":
      return l10n.t("on");
  }
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

export function sectionsHtml(bench: Bench<unknown>, { moment, l10n }: Look): string {
  const at = momentsOf(bench)[moment] ?? 0;
  const scale = sectionScale(bench.surfaces.map(({ section }) => section));
  return bench.surfaces.map((surface, i) => surfaceHtml({ bench, l10n, scale }, surface, i, at)).join("");
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
    coats: section.coats.filter((_, i) => isOn[i]),
    old: section.old.map((each) =>
      each.removedBy !== undefined && !isDone(bench, surface, each.removedBy, moment)
        ? { ...each, isKept: true, isAbraded: false }
        : each,
    ),
    filmUm: undefined,
  };
  const drawing = sectionDrawing(now, { width: BARE_WIDTH, scale, isBare: true, say: l10n.t });
  const drawn = coats.filter((_, i) => isOn[i]);
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
    return `<li class="coat${state === "to come" ? " later" : ""}"><span>${link(at, text(coat.title), `coat ${number} ${i}`)} ${mark(gravest, l10n)}</span><span class="figure">${text(filmOf(coat, l10n.t))}</span><span class="state">${ladder(state)} ${together([drynessText(state, l10n), ...more])}</span></li>`;
  });
  const below = section.old.map((each) => {
    const isGone = each.removedBy !== undefined && isDone(bench, surface, each.removedBy, moment);
    const said = text(oldText(each, l10n.t));
    const name = isGone ? `<s>${said}</s>` : said;
    return `<li class="below"><span>${name}</span><span class="figure second">${text(keptText(each, "", l10n.t))}</span></li>`;
  });
  const list = [
    ...rows.toReversed(),
    ...below.toReversed(),
    `<li class="below"><span>${text(section.wood.name)}</span></li>`,
  ];
  return `<figure data-key="surface ${number}"><figcaption><b>${text(title)}</b> <span class="second">${text(about.join(" · "))}</span></figcaption><div class="cut"><div class="drawing">${drawing.svg}${marksSvg({ bench, l10n, scale }, surface, drawn, drawing, number)}</div><ol aria-label="${text(l10n.t("On {0}, from the top down", title))}">${list.join("")}</ol></div></figure>`;
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
    const said = found.map(({ severity, headline }) => `${severityText(severity, l10n)}: ${headline}`);
    const count = found.length > 1 ? `${l10n.t("{0} findings.", found.length)} ` : "";
    const x = to - MARK - 8;
    return `<g role="button" tabindex="0" class="${markClass(first!.severity)} spot" data-at="${first!.at}" data-key="mark ${number} ${of}" transform="translate(${x} ${y - MARK / 2})" aria-label="${plain(count + said.join("; "))}"><title>${plain(said.join("\n"))}</title><circle class="halo" cx="${MARK / 2}" cy="${MARK / 2}" r="${MARK / 2 + 3}"/>${markShape(first!.severity)}</g>`;
  });
  return `<svg class="marks" role="group" aria-label="${plain(l10n.t("Findings on {0}", surface.title))}" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">${marks.join("")}</svg>`;
}
