/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/** The lines of the list of an HTML sheet, read from the attributes that `sheet-rows.ts` wrote. */
import { t } from "../../../../grammar/src/translate.ts";
import { type PageStep, withLabel } from "./bench-now.ts";
import type { Opening } from "./opening.ts";

export interface Row {
  readonly element: HTMLElement;
  readonly is: PageStep;
  /** Its fingerprint. */
  readonly step: string;
  readonly name: string;
  readonly boxes: readonly HTMLInputElement[];
  readonly note: HTMLInputElement;
  /** When it was done, to be put right by hand. */
  readonly at: HTMLInputElement;
  /** What is to be known while it is done, such as how it is mixed. */
  readonly careful: string;
}

export const rowsIn = (article: HTMLElement): readonly Row[] =>
  [...article.querySelectorAll<HTMLElement>("li.row[data-step]")].map(rowOf);

/** A row with what was read on its label, in hours. */
export const labelled = (row: Row, hours: string | undefined): Row => ({
  ...row,
  is: withLabel(row.is, numberOf(hours)),
});

function rowOf(element: HTMLElement): Row {
  const { dataset } = element;
  const boxes = [...element.querySelectorAll<HTMLInputElement>("input[data-piece]")];
  const texts = (selector: string): readonly string[] =>
    [...element.querySelectorAll(selector)].map(({ textContent }) => textContent ?? "");
  const use = [...texts(".takes").map((litres) => t`Use ${litres}`), ...texts(".by")].join(", ");
  return {
    element,
    step: dataset.step ?? "",
    name: dataset.name ?? "",
    boxes,
    note: element.querySelector<HTMLInputElement>("input[data-note]")!,
    at: element.querySelector<HTMLInputElement>("input[data-at]")!,
    careful: [...texts(".what small:not(.part, .see)"), ...texts(".caution")].join(" "),
    is: {
      title: dataset.title ?? "",
      where: dataset.where ?? "",
      surfaces: (dataset.surfaces ?? "").split("\n"),
      pieces: boxes.map((box) => box.dataset.piece!),
      isCoat: element.classList.contains("layer"),
      use: use === "" ? "" : `${use}.`,
      wear: partsOf(dataset.wear, "\n"),
      dangers: partsOf(dataset.dangers, ", "),
      checks: checksIn(dataset.checks),
      start: dataset.start?.slice(0, 16),
      end: dataset.end?.slice(0, 16),
      waitH: numberOf(dataset.wait),
      until: dataset.until?.slice(0, 16),
      leastH: numberOf(dataset.least),
      isCured: dataset.cured !== undefined,
      isUnknown: dataset.unknown !== undefined,
      isLeftOn: dataset.leave !== undefined,
      leaveH: numberOf(dataset.leave || undefined),
      latestH: numberOf(dataset.latest),
      lightH: numberOf(dataset.light),
      fullH: numberOf(dataset.full),
    },
  };
}

/** Order and reason in turn, a line each; a reason may be empty. */
function checksIn(text: string | undefined): PageStep["checks"] {
  const lines = text === undefined ? [] : text.split("\n");
  return lines.flatMap((order, i) => (i % 2 === 0 ? [{ order, why: lines[i + 1] ?? "" }] : []));
}

const numberOf = (text: string | undefined): number | undefined =>
  text === undefined ? undefined : Number(text);

const partsOf = (text: string | undefined, between: string): readonly string[] =>
  (text ?? "").split(between).filter((part) => part !== "");

/** `data-open="1 09:00 17:00;…"` and `data-closed="2027-03-26 2027-03-26;…"`; undefined where no hours are stated. */
export function openingOf({ dataset }: HTMLElement): Opening | undefined {
  if (dataset.open === undefined) return undefined;
  return {
    spans: partsOf(dataset.open, ";").map((span) => {
      const [weekday = "", opens = "", closes = ""] = span.split(" ");
      return { weekday: Number(weekday), opens, closes };
    }),
    closed: partsOf(dataset.closed, ";").map((days) => {
      const [from = "", to = from] = days.split(" ");
      return { from, to };
    }),
  };
}
