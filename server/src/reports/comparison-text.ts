/**
 * Jobs side by side, for a terminal: every figure of each, and of two what the second has more or less than the first.
 * More jobs than a terminal is wide stand in tables below each other.
 */

import { t } from "../../../grammar/src/translate.ts";
import { areaText, filmText, gramsText, litresText, momentText, moneyText } from "../core/measure/figures.ts";
import { formatDuration, formatWork } from "../core/measure/format-amount.ts";
import { figuresIn, type ShownFigures, type UnitSystem } from "../core/measure/shown-figures.ts";
import { shownText } from "../escape/shown-text.ts";
import {
  COMPARED,
  type ComparedFigure,
  type Comparison,
  type ComparisonSide,
  isComparedDate,
  litresOf,
} from "../views/job-comparison.ts";
import type { Colours } from "./colours.ts";
import { displayWidth, padEnd, padStart } from "./display-text.ts";

export interface SideNames {
  /** The name of the job, where all sides have it. */
  readonly all?: string;
  readonly sides: readonly string[];
}

const COLUMNS = 80;
const BETWEEN = "  ";

export function comparisonText(
  names: SideNames,
  comparison: Comparison,
  colours: Colours,
  units: UnitSystem = "metric",
): string {
  const figures = figuresIn(units);
  const sections = [
    { title: "Figures", rows: figureRows(comparison, figures) },
    { title: "Litres", rows: materialRows(comparison, figures) },
    { title: "Findings", rows: findingRows(comparison) },
  ].filter(({ rows }) => rows.length > 0);
  const isOfTwo = comparison.sides.length === 2;
  const head: Row = {
    name: names.all ?? "",
    cells: [...names.sides, ...(isOfTwo ? ["difference"] : [])],
  };
  const shown = [head, ...sections.flatMap(({ rows }) => rows)];
  const tables = columnsThatFit(shown).map((columns) => {
    const line = lineOf(shown, columns);
    return [
      colours.bold(line(head)),
      ...sections.flatMap(({ title, rows }) => [colours.bold(title), ...rows.map(line)]),
    ].join("\n");
  });
  const hasFindings = comparison.sides.some(({ rules }) => rules.length > 0);
  return [
    tables.join("\n\n"),
    ...(hasFindings ? [] : [isOfTwo ? "No findings in either job." : "No findings in any of the jobs."]),
    ...gapLines(names, comparison),
    "",
  ].join("\n");
}

interface Row {
  readonly name: string;
  /** One for each side; of two sides the difference as well, with its sign, empty where that says nothing. */
  readonly cells: readonly string[];
}

const widthOf = (rows: readonly Row[], say: (row: Row) => string): number =>
  Math.max(...rows.map((row) => displayWidth(shownText(say(row)))));

/** The columns of each table: two sides and their difference stay together, however wide they are. */
function columnsThatFit(rows: readonly Row[]): readonly (readonly number[])[] {
  const count = rows[0]!.cells.length;
  const all = Array.from({ length: count }, (_, column) => column);
  if (rows.length > 0 && rows[0]!.cells.at(-1) === "difference") return [all];
  const names = BETWEEN.length + widthOf(rows, ({ name }) => name);
  const tables: number[][] = [];
  let left = 0;
  for (const column of all) {
    const width = BETWEEN.length + widthOf(rows, ({ cells }) => cells[column]!);
    if (tables.length === 0 || width > left) {
      tables.push([]);
      left = COLUMNS - names;
    }
    tables.at(-1)!.push(column);
    left -= width;
  }
  return tables;
}

/** The columns as wide as their widest cell; figures stand to the right. */
function lineOf(rows: readonly Row[], columns: readonly number[]): (row: Row) => string {
  const name = widthOf(rows, (row) => row.name);
  const widths = columns.map((column) => widthOf(rows, ({ cells }) => cells[column]!));
  return (row) =>
    [
      "",
      padEnd(shownText(row.name), name),
      ...columns.map((column, place) => padStart(shownText(row.cells[column]!), widths[place]!)),
    ]
      .join(BETWEEN)
      .trimEnd();
}

export const NOT_KNOWN = "not known";

/** What each figure is called, and how one is told. */
export const FIGURES: Readonly<Record<ComparedFigure, { readonly name: string; readonly say: Say }>> = {
  area_m2: { name: "area", say: areaText },
  coats: { name: "coats", say: String },
  dry_film_um: { name: "thickest film", say: filmText },
  litres: { name: "litres", say: litresText },
  hands_on_h: { name: "hands-on", say: formatWork },
  elapsed_h: { name: "elapsed", say: formatDuration },
  finish: { name: "end of the last wait", say: formatDuration },
  last_work: { name: "last work", say: formatDuration },
  light_use: { name: "light use", say: formatDuration },
  in_service: { name: "full use", say: formatDuration },
  voc_g: { name: "VOC", say: (grams) => `${gramsText(grams)}` },
  material_cost: { name: "materials", say: moneyText },
  labour_cost: { name: "labour", say: moneyText },
  total_cost: { name: "total", say: moneyText },
  saving: { name: "saving", say: moneyText },
};

/** The dates that people ask for; when the last wait ends is none of them. */
const SHOWN = COMPARED.filter((figure) => figure !== "finish");

type Say = (value: number, currency: string | undefined) => string;

/** The cells of all sides, and of two the difference. */
const cellsOf = (sides: readonly string[], difference: () => string): readonly string[] =>
  sides.length === 2 ? [...sides, difference()] : sides;

/** How a figure is told in the units that were asked for. */
const sayIn = ({ area, litres }: ShownFigures, figure: ComparedFigure): Say =>
  figure === "area_m2" ? area : figure === "litres" ? litres : FIGURES[figure].say;

function figureRows({ sides, differences }: Comparison, figures: ShownFigures): readonly Row[] {
  const currency = sides.find((side) => side.currency !== undefined)?.currency;
  return SHOWN.map((figure) => {
    const { name } = FIGURES[figure];
    const say = sayIn(figures, figure);
    const more = differences[0]!.figures[figure];
    return {
      name,
      cells: cellsOf(
        sides.map((side) => sideText(side, figure, say)),
        () => (more === null ? "" : signed(more, (value) => say(value, currency))),
      ),
    };
  });
}

function sideText(side: ComparisonSide, figure: ComparedFigure, say: Say): string {
  if (isComparedDate(figure)) {
    const at = side.dates[figure];
    return at === null ? NOT_KNOWN : momentText(at);
  }
  const value = side.numbers[figure];
  return value === null ? NOT_KNOWN : say(value, side.currency);
}

/** `+15 min`, `−7.00 EUR`, `same` */
export const signed = (value: number, say: (value: number) => string): string =>
  Math.abs(value) < 1e-9 ? t`same` : `${value > 0 ? "+" : "−"}${say(Math.abs(value))}`;

function materialRows({ sides, differences }: Comparison, { litres: say }: ShownFigures): readonly Row[] {
  const text = (litres: number | null): string =>
    litres === null ? NOT_KNOWN : litres === 0 ? "none" : say(litres);
  const names = [...new Set(differences.flatMap(({ materials }) => materials.map(({ name }) => name)))];
  const more = new Map(differences[0]!.materials.map(({ name, litres }) => [name, litres]));
  return names.map((name) => ({
    name,
    cells: cellsOf(
      sides.map((side) => text(litresOf(side, name))),
      () => {
        const litres = more.get(name) ?? null;
        return litres === null ? "" : signed(litres, say);
      },
    ),
  }));
}

function findingRows({ sides }: Comparison): readonly Row[] {
  const names = sides.flatMap(({ rules }) => rules.map(({ severity, rule }) => `${severity} ${rule}`));
  return [...new Set(names)].map((name) => {
    const counts = sides.map(
      ({ rules }) => rules.find(({ severity, rule }) => `${severity} ${rule}` === name)?.count ?? 0,
    );
    return { name, cells: cellsOf(counts.map(String), () => signed(counts[1]! - counts[0]!, String)) };
  });
}

/** What to write so that a figure becomes known: one line for all figures that lack the same. */
function gapLines(names: SideNames, { sides }: Comparison): readonly string[] {
  return sides.flatMap((side, place) => {
    const byReason = new Map<string, string[]>();
    for (const figure of SHOWN) {
      const reason = side.gaps(figure).join(", ");
      if (reason !== "") byReason.set(reason, [...(byReason.get(reason) ?? []), FIGURES[figure].name]);
    }
    return [...byReason].map(
      ([reason, figures]) =>
        `Not known of ${shownText(names.sides[place]!)}: ${figures.join(", ")} (${shownText(reason)}).`,
    );
  });
}
