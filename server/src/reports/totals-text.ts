/**
 * The totals of jobs as tables for people: every figure with its unit, and in the place of a figure that could not be
 * computed the line of the text that is missing.
 */

import { t, translated } from "../../../grammar/src/translate.ts";
import {
  cansText,
  filmText,
  gramsText,
  gramsThatAddUp,
  momentText,
  moneyText,
} from "../core/measure/figures.ts";
import { formatDuration, formatWork } from "../core/measure/format-amount.ts";
import { roundedParts } from "../core/measure/rounded-parts.ts";
import { figuresIn, type ShownFigures, type UnitSystem } from "../core/measure/shown-figures.ts";
import { earnedPerHour, litresLeftOver } from "../core/totals/earned.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { jobPaper } from "../core/totals/paper.ts";
import { pieceCosts, usedMaterialCost } from "../core/totals/piece-costs.ts";
import { suppliesOf } from "../core/totals/supplies.ts";
import { shownText } from "../escape/shown-text.ts";
import { fumesBasis, lineFumes, worstAir } from "../views/fumes/fumes-facts.ts";
import { fumesDays, hoursBasis, jobPeak } from "../views/fumes/fumes-hours.ts";
import { distinctNames } from "../views/material-names.ts";
import {
  awaitsPlan,
  beingPlannedText,
  type GapField,
  gapsOf,
  materialGaps,
} from "../views/missing-inputs.ts";
import { jobDates } from "../views/schedule/job-dates.ts";
import { planNotes } from "../views/schedule/plan-notes.ts";
import { usedText } from "../views/sums/used-worth.ts";
import { WORTH_COLUMNS, worthTable } from "../views/worth.ts";
import type { Colours } from "./colours.ts";
import { displayWidth, padEnd, padStart, wrap } from "./display-text.ts";

/** A job and the file in which it stands. */
export interface ReportedJob {
  readonly label: string;
  readonly result: JobResult;
  /** What its figures are told in; metric where nothing is said. */
  readonly units?: UnitSystem;
}

/** A table for every job, one after the other. */
export function totalsText(jobs: readonly ReportedJob[], colours: Colours): string {
  return jobs.map((job) => `${jobText(job, colours)}\n`).join("\n");
}

function jobText({ label, result, units = "metric" }: ReportedJob, colours: Colours): string {
  const { job } = result;
  const say = figuresIn(units);
  const title = job.title ? ` “${shownText(job.title)}”` : "";
  return [
    `${colours.bold(`${job.name}${title}`)}${colours.dim(`  ${shownText(label)}`)}`,
    ...table(t`Surfaces`, surfaceRows(result, say)),
    ...table(t`Materials`, materialRows(result, say)),
    ...table(t`Time`, [
      figure(result, "hands_on_h", t`hands-on`, formatWork),
      figure(result, "elapsed_h", t`elapsed`, formatDuration),
      ...jobDates(result).map(({ name, text, reason }) => row(name, text, reason)),
      ...planNotes(result).map((note) => row(t`note`, "", note)),
    ]),
    ...table(result.shop?.room ? t`Fumes (${translated(fumesBasis())})` : t`Fumes`, fumesRows(result)),
    ...table(t`Fumes by the hour (${translated(hoursBasis())})`, hourRows(result)),
    ...table(t`Abrasives (an estimate by common practice, not in the cost)`, paperRows(result, say)),
    ...table(t`Cost`, costRows(result)),
    ...worthLines(result),
    ...recordTables(result, say),
  ].join("\n");
}

/** Of a job that has been begun: what was planned beside what it comes to, and what stands in the shop. */
function recordTables({ record, totals, shop }: JobResult, { litres }: ShownFigures): readonly string[] {
  if (!record) return [];
  const { planned, doneHours, stock } = record;
  const beside = <F extends keyof typeof planned>(
    field: F,
    name: string,
    say: (value: number) => string,
    more = "",
  ): readonly Row[] => {
    const [before, now] = [planned[field], totals[field]];
    if (before === null || now === null) return [];
    return [row(name, say(now), [t`planned ${say(before)}`, more].filter(Boolean).join("; "))];
  };
  const money = (amount: number): string => moneyText(amount, shop?.currency);
  const names = distinctNames(stock.map(({ material }) => material));
  return [
    ...table(t`Planned and actual, by the record up to ${momentText(record.lastAt)}`, [
      ...beside("hands_on_h", t`hands-on`, formatWork, t`${formatWork(doneHours)} of it done`),
      ...beside("material_cost", t`materials`, money),
      ...beside("labour_cost", t`labour`, money),
      ...beside("total_cost", t`total`, money),
    ]),
    ...table(
      t`In the shop now`,
      stock.map(({ usedL, nowL, toBuy }, at) =>
        row(
          names[at]!,
          litres(nowL),
          [t`${litres(usedL)} used`, ...(toBuy.length > 0 ? [t`to buy ${cansText(toBuy)}`] : [])].join("; "),
        ),
      ),
    ),
  ];
}

interface Row {
  readonly name: string;
  readonly figure: string;
  readonly more: string;
}

const row = (name: string, text: string, more = ""): Row => ({
  name: shownText(name),
  figure: shownText(text),
  more: shownText(more),
});

/** A figure of the totals, or what is missing for it. */
function figure<F extends GapField>(
  result: JobResult,
  field: F,
  name: string,
  say: (value: NonNullable<JobResult["totals"][F]>) => string,
): Row {
  const value = result.totals[field];
  if (awaitsPlan(result, field)) return row(name, beingPlannedText());
  if (value === null) return row(name, t`not known`, gapsOf(result, field).join(", "));
  return row(name, say(value as NonNullable<JobResult["totals"][F]>));
}

function surfaceRows(result: JobResult, say: ShownFigures): readonly Row[] {
  const { totals } = result;
  const { surfaces } = totals;
  // Where one is not known, nothing is added up.
  const areas = say.areas(surfaces.map(({ area_m2 }) => area_m2 ?? 0));
  const rows = surfaces.map((surface, index) =>
    row(
      surface.name,
      surface.area_m2 === null ? t`not known` : areas.parts[index]!,
      surface.dry_film_um === null ? t`dry film not known` : t`${filmText(surface.dry_film_um)} dry film`,
    ),
  );
  return surfaces.length > 1 || totals.area_m2 === null
    ? [...rows, figure(result, "area_m2", t`together`, () => areas.total)]
    : rows;
}

/** Litres; less is what clings to the can. */
const LEAST_LEFT = 0.005;

function materialRows(result: JobResult, say: ShownFigures): readonly Row[] {
  const names = distinctNames(result.needs.map(({ material }) => material));
  return result.needs.map((need, index) => {
    const { litres, containers, cost } = need.totals;
    const gaps = materialGaps(need);
    const left = litresLeftOver(need) ?? 0;
    const bought =
      cost === null
        ? gaps.join(", ")
        : containers.length === 0
          ? t`on hand`
          : t`${cansText(containers)} for ${moneyText(cost, result.shop?.currency)}`;
    const over = left < LEAST_LEFT ? "" : t`, ${say.litres(left)} left over`;
    return row(names[index]!, litres === null ? t`not known` : say.litres(litres), `${bought}${over}`);
  });
}

/** All, then line by line where that says more, then the shift that asks for most air. */
function fumesRows(result: JobResult): readonly Row[] {
  const lines = lineFumes(result);
  const worst = worstAir(result);
  const shown = lines.length > 1 || result.shop?.room ? lines : [];
  const { voc_g } = result.totals;
  const all = shown.reduce((sum, { grams }) => sum + grams, 0);
  // Where the lines are all of it, they are printed so that they add up to it.
  const addends = gramsThatAddUp(
    shown.map(({ grams }) => grams),
    voc_g !== null && Math.abs(all - voc_g) < 1e-6 ? voc_g : undefined,
  );
  return [
    figure(result, "voc_g", t`VOC`, (grams) => gramsThatAddUp([grams]).total),
    ...shown.map(({ name, air }, index) => row(shownText(name), addends.parts[index]!, air)),
    ...(worst ? [row(shownText(worst.name), gramsText(worst.grams), worst.air)] : []),
  ];
}

/** A list that is longer is not read; what is left out is told in one line. */
const MOST_DAYS = 14;

/** The hour in which most leaves, then every day with its hours. */
function hourRows(result: JobResult): readonly Row[] {
  const peak = jobPeak(result);
  if (!peak) return [];
  const inPeak = gramsThatAddUp(peak.lines.map(({ grams }) => grams));
  const lines = peak.lines.map(({ name }, index) => `${shownText(name)} ${inPeak.parts[index]!}`);
  const from = t`from ${peak.from}`;
  const days = fumesDays(result);
  const perDay = gramsThatAddUp(days.map(({ grams }) => grams));
  const later = days.slice(MOST_DAYS);
  return [
    row(t`most in an hour`, gramsText(peak.grams), lines.length > 1 ? `${from}: ${lines.join(", ")}` : from),
    ...days.slice(0, MOST_DAYS).map(({ name, from: first, hours }, index) => {
      const text = perDay.parts[index]!;
      const whole = roundedParts(hours, text.includes(".") ? 1 : 0, Number.parseFloat(text));
      return row(name, text, t`hourly from ${first}: ${whole.join(" ")}`);
    }),
    ...(later.length > 0
      ? [row(t`${later.length} more days`, gramsText(later.reduce((sum, { grams }) => sum + grams, 0)))]
      : []),
  ];
}

function paperRows({ runs }: JobResult, say: ShownFigures): readonly Row[] {
  return jobPaper(runs).map(({ grit, sheets, discs, areaM2, hours }) =>
    row(
      t`grit ${grit}`,
      sheets === 1 ? t`${sheets} sheet` : t`${sheets} sheets`,
      discs === 1
        ? t`or ${discs} disc; ${say.area(areaM2)} in ${formatDuration(hours)}`
        : t`or ${discs} discs; ${say.area(areaM2)} in ${formatDuration(hours)}`,
    ),
  );
}

function costRows(result: JobResult): readonly Row[] {
  const { totals, shop, job } = result;
  const money = (amount: number): string => moneyText(amount, shop?.currency);
  const supplies = suppliesOf(job, result.runs);
  const other =
    totals.total_cost === null || totals.material_cost === null
      ? undefined
      : totals.total_cost - totals.material_cost - (totals.labour_cost ?? 0) - supplies;
  const used = usedMaterialCost(result);
  const earned = earnedPerHour(totals);
  return [
    {
      ...figure(result, "material_cost", t`materials`, money),
      ...(used === null ? {} : { more: t`whole cans; ${usedText(used, result)}` }),
    },
    ...(job.supplies || supplies > 0 ? [row(t`supplies`, money(supplies))] : []),
    figure(result, "labour_cost", t`labour`, money),
    ...(other !== undefined && other > 0.005 ? [row(t`pieces`, money(other))] : []),
    {
      ...figure(result, "total_cost", t`total`, money),
      ...(totals.total_cost !== null && totals.labour_cost === null ? { more: t`without labour` } : {}),
    },
    ...(job.budget ? [row(t`budget`, money(job.budget.amount))] : []),
    figure(result, "saving", t`saving`, money),
    ...(earned === null
      ? []
      : [{ ...row(t`an hour earns`, money(earned)), more: t`new ones less all costs but labour` }]),
    ...pieceRows(result, money),
  ];
}

/** What one piece of several costs. */
function pieceRows(result: JobResult, money: (amount: number) => string): readonly Row[] {
  const costs = pieceCosts(result);
  if (costs.length === 1 && costs[0]!.count === 1) return [];
  return costs.flatMap(({ piece, count, centMore, total, newPrice, saving }) => {
    if (total === null) return [];
    const odd = centMore > 0 ? [t`${centMore} of the ${count} 0.01 more`] : [];
    const saved =
      newPrice === undefined || saving === null
        ? []
        : [t`a new one ${money(newPrice)}, saves ${money(saving)}`];
    return [row(t`each ${piece}`, money(total), [...odd, ...saved].join("; "))];
  });
}

/** At most 80 columns wide, but for sums of more than seven digits. */
function worthLines(result: JobResult): readonly string[] {
  const worth = worthTable(result);
  if (!worth) return [];
  const head = ["", ...WORTH_COLUMNS.map(translated)];
  const rows = worth.rows.map(({ name, figures }) => [name, ...figures]);
  const widths = head.map((title, at) =>
    Math.max(displayWidth(title), ...rows.map((cells) => displayWidth(cells[at]!))),
  );
  const line = (cells: readonly string[]): string =>
    `    ${cells.map((cell, at) => (at === 0 ? padEnd : padStart)(shownText(cell), widths[at]!)).join("  ")}`;
  return [
    `  ${t`Is it worth it? (${shownText(worth.basis)})`}`,
    ...[head, ...rows].map(line),
    ...worth.notes.flatMap((note) => wrap(note, WIDTH - 4).map((each) => `    ${each}`)),
  ];
}

const WIDTH = 80;

const NAME_COLUMNS = 16;
const FIGURE_COLUMNS = 20;
/** What stands beside a figure has a line of its own where fewer columns than these are left for it. */
const MORE_COLUMNS = 30;
const MORE_BELOW = 8;

/** No line is wider than a terminal, but for a name or a figure that is. */
function table(title: string, rows: readonly Row[]): readonly string[] {
  if (rows.length === 0) return [];
  const names = Math.max(NAME_COLUMNS, ...rows.map(({ name }) => displayWidth(name)));
  const figures = Math.max(FIGURE_COLUMNS, ...rows.map((each) => displayWidth(each.figure)));
  const beside = 4 + names + 2 + figures + 2;
  return [
    ...wrap(title, WIDTH - 2).map((line) => `  ${line}`),
    ...rows.flatMap(({ name, figure: text, more }) => {
      const start = `    ${padEnd(name, names)}  ${padStart(text, figures)}`.trimEnd();
      if (more === "") return [start];
      if (WIDTH - beside < MORE_COLUMNS && beside + displayWidth(more) > WIDTH)
        return [start, ...wrap(more, WIDTH - MORE_BELOW).map((line) => " ".repeat(MORE_BELOW) + line)];
      const [first = "", ...others] = wrap(more, Math.max(MORE_COLUMNS, WIDTH - beside));
      return [`${padEnd(start, beside)}${first}`, ...others.map((line) => " ".repeat(beside) + line)];
    }),
  ];
}
