/** Two jobs side by side, for a terminal: every figure of both, and what B has more or less than A. */

import { areaText, filmText, gramsText, litresText, momentText, moneyText } from "../core/measure/figures.ts";
import { formatDuration, formatWork } from "../core/measure/format-amount.ts";
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
  /** The name of the job, where both sides have it. */
  readonly both?: string;
  readonly a: string;
  readonly b: string;
}

export function comparisonText(names: SideNames, comparison: Comparison, colours: Colours): string {
  const sections = [
    { title: "Figures", rows: figureRows(comparison) },
    { title: "Litres", rows: materialRows(comparison) },
    { title: "Findings", rows: findingRows(comparison) },
  ].filter(({ rows }) => rows.length > 0);
  const head: Row = { name: names.both ?? "", a: names.a, b: names.b, difference: "difference" };
  const line = lineOf([head, ...sections.flatMap(({ rows }) => rows)]);
  return [
    colours.bold(line(head)),
    ...sections.flatMap(({ title, rows }) => [colours.bold(title), ...rows.map(line)]),
    ...(comparison.a.rules.length + comparison.b.rules.length === 0 ? ["No findings in either job."] : []),
    ...gapLines(names, comparison),
    "",
  ].join("\n");
}

interface Row {
  readonly name: string;
  readonly a: string;
  readonly b: string;
  /** B less A, with its sign; empty where that says nothing. */
  readonly difference: string;
}

/** The columns as wide as their widest cell; figures stand to the right. */
function lineOf(rows: readonly Row[]): (row: Row) => string {
  const width = (say: (row: Row) => string): number =>
    Math.max(...rows.map((row) => displayWidth(shownText(say(row)))));
  const name = width((row) => row.name);
  const a = width((row) => row.a);
  const b = width((row) => row.b);
  const difference = width((row) => row.difference);
  return (row) =>
    [
      "",
      padEnd(shownText(row.name), name),
      padStart(shownText(row.a), a),
      padStart(shownText(row.b), b),
      padStart(row.difference, difference),
    ]
      .join("  ")
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

function figureRows({ a, b, difference }: Comparison): readonly Row[] {
  const currency = a.currency ?? b.currency;
  return SHOWN.map((figure) => {
    const { name, say } = FIGURES[figure];
    const more = difference.figures[figure];
    return {
      name,
      a: sideText(a, figure),
      b: sideText(b, figure),
      difference: more === null ? "" : signed(more, (value) => say(value, currency)),
    };
  });
}

function sideText(side: ComparisonSide, figure: ComparedFigure): string {
  if (isComparedDate(figure)) {
    const at = side.dates[figure];
    return at === null ? NOT_KNOWN : momentText(at);
  }
  const value = side.numbers[figure];
  return value === null ? NOT_KNOWN : FIGURES[figure].say(value, side.currency);
}

/** `+15 min`, `−7.00 EUR`, `same` */
export const signed = (value: number, say: (value: number) => string): string =>
  Math.abs(value) < 1e-9 ? "same" : `${value > 0 ? "+" : "−"}${say(Math.abs(value))}`;

function materialRows({ a, b, difference }: Comparison): readonly Row[] {
  const text = (litres: number | null): string =>
    litres === null ? NOT_KNOWN : litres === 0 ? "none" : litresText(litres);
  return difference.materials.map(({ name, litres }) => ({
    name,
    a: text(litresOf(a, name)),
    b: text(litresOf(b, name)),
    difference: litres === null ? "" : signed(litres, litresText),
  }));
}

function findingRows({ a, b }: Comparison): readonly Row[] {
  const names = [...a.rules, ...b.rules].map(({ severity, rule }) => `${severity} ${rule}`);
  return [...new Set(names)].map((name) => {
    const count = ({ rules }: ComparisonSide): number =>
      rules.find(({ severity, rule }) => `${severity} ${rule}` === name)?.count ?? 0;
    return {
      name,
      a: String(count(a)),
      b: String(count(b)),
      difference: signed(count(b) - count(a), String),
    };
  });
}

/** What to write so that a figure becomes known: one line for all figures that lack the same. */
function gapLines(names: SideNames, { a, b }: Comparison): readonly string[] {
  return [
    { name: names.a, side: a },
    { name: names.b, side: b },
  ].flatMap(({ name, side }) => {
    const byReason = new Map<string, string[]>();
    for (const figure of SHOWN) {
      const reason = side.gaps(figure).join(", ");
      if (reason !== "") byReason.set(reason, [...(byReason.get(reason) ?? []), FIGURES[figure].name]);
    }
    return [...byReason].map(
      ([reason, figures]) => `Not known of ${shownText(name)}: ${figures.join(", ")} (${shownText(reason)}).`,
    );
  });
}
