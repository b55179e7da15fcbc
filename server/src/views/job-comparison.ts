/**
 * Ways of doing a job, or versions of one, figure by figure, with the findings that each brings.
 *
 * Plain numbers, null where something is not known; how they are printed is the reports' business. Findings count that
 * name the job, and those of the recipes it does, wherever these are declared.
 */

import type { Span } from "../../../grammar/src/tree.ts";
import { SEVERITIES, type Severity } from "../core/findings.ts";
import { hoursBetween } from "../core/measure/iso-dates.ts";
import type { FileId } from "../core/place.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { distinctNames } from "./material-names.ts";
import { type GapField, gapsOf, materialGaps } from "./missing-inputs.ts";
import type { FileFinding } from "./places/file-finding.ts";

/** What is asked of the files of a job. */
export interface AnalysedFiles {
  /** Files that `file` uses, directly or not, itself included. */
  usedBy(file: FileId): readonly FileId[];
  findings(file: FileId): readonly FileFinding[];
  /** The declarations of a file. */
  symbols(file: FileId): readonly { readonly kind: string; readonly name: string; readonly span: Span }[];
}

export interface ComparedJob {
  readonly analysis: AnalysedFiles;
  readonly file: FileId;
  readonly result: JobResult;
}

/** The figures that have a difference, in the order in which reports print them. */
export const COMPARED = [
  "area_m2",
  "coats",
  "dry_film_um",
  "litres",
  "hands_on_h",
  "elapsed_h",
  "finish",
  "last_work",
  "light_use",
  "in_service",
  "voc_g",
  "material_cost",
  "labour_cost",
  "total_cost",
  "saving",
] as const;
export type ComparedFigure = (typeof COMPARED)[number];

/** Dates on the sides, and hours in the difference; `in_service` is full use. */
const COMPARED_DATES = ["finish", "last_work", "light_use", "in_service"] as const;
export type ComparedDate = (typeof COMPARED_DATES)[number];
export const isComparedDate = (figure: ComparedFigure): figure is ComparedDate =>
  COMPARED_DATES.some((date) => date === figure);
type ComparedNumber = Exclude<ComparedFigure, ComparedDate>;

export interface ComparedMaterial {
  /** Apart within one side, see `distinctNames`. */
  readonly name: string;
  readonly litres: number | null;
  readonly cost: number | null;
}

export interface ComparisonSide {
  readonly file: FileId;
  readonly job: string;
  readonly title?: string;
  /** Money is in this currency, where the job has a shop that states one. */
  readonly currency?: string;
  readonly numbers: Readonly<Record<ComparedNumber, number | null>>;
  /** Local ISO date-times. */
  readonly dates: Readonly<Record<ComparedDate, string | null>>;
  readonly materials: readonly ComparedMaterial[];
  readonly levels: Readonly<Record<Severity, number>>;
  readonly rules: readonly { readonly rule: string; readonly severity: Severity; readonly count: number }[];
  /** What is missing for a figure that is null. */
  gaps(figure: ComparedFigure): readonly string[];
}

/** The later side less the earlier; null where either is not known, or for money in two currencies. */
export interface ComparisonDifference {
  /** Dates in hours. */
  readonly figures: Readonly<Record<ComparedFigure, number | null>>;
  /** Of every material of either side; one that a side does not use counts as 0 there. */
  readonly materials: readonly { readonly name: string; readonly litres: number | null }[];
  readonly levels: Readonly<Record<Severity, number>>;
}

export interface Comparison {
  /** In the order in which they were asked for, two at least. */
  readonly sides: readonly [ComparisonSide, ComparisonSide, ...ComparisonSide[]];
  /** Of each but the first, from the first. */
  readonly differences: readonly ComparisonDifference[];
}

export function compareJobs(
  first: ComparedJob,
  second: ComparedJob,
  ...rest: readonly ComparedJob[]
): Comparison {
  const side = sideOf(first);
  const others = [sideOf(second), ...rest.map(sideOf)] as const;
  return { sides: [side, ...others], differences: others.map((other) => differenceOf(side, other)) };
}

/** The figures of one job. */
export function sideOf(compared: ComparedJob): ComparisonSide {
  const { file, result } = compared;
  const { job, shop, totals, needs } = result;
  const findings = findingsOf(compared);
  return {
    file,
    job: job.name,
    ...(job.title === undefined ? {} : { title: job.title }),
    ...(shop?.currency === undefined ? {} : { currency: shop.currency }),
    numbers: {
      area_m2: totals.area_m2,
      coats: coats(result),
      dry_film_um: thickest(result),
      litres: sumOrNull(totals.materials.map(({ litres }) => litres)),
      hands_on_h: totals.hands_on_h,
      elapsed_h: totals.elapsed_h,
      voc_g: totals.voc_g,
      material_cost: totals.material_cost,
      labour_cost: totals.labour_cost,
      total_cost: totals.total_cost,
      saving: totals.saving,
    },
    dates: {
      finish: totals.finish,
      last_work: totals.last_work,
      light_use: totals.light_use,
      in_service: totals.in_service,
    },
    materials: distinctNames(needs.map(({ material }) => material)).map((name, index) => {
      const { litres, cost } = needs[index]!.totals;
      return { name, litres, cost };
    }),
    levels: levelsOf(findings),
    rules: rulesOf(findings),
    gaps: (figure) => {
      if (figure === "litres") return [...new Set(needs.flatMap(litreGaps))];
      return isGapField(figure) ? gapsOf(result, figure) : [];
    },
  };
}

const litreGaps = (need: JobResult["needs"][number]): readonly string[] =>
  need.totals.litres === null ? materialGaps(need) : [];

const NO_GAPS: ReadonlySet<ComparedFigure> = new Set([
  "area_m2",
  "coats",
  "dry_film_um",
  "litres",
  "hands_on_h",
]);
const isGapField = (figure: ComparedFigure): figure is ComparedFigure & GapField => !NO_GAPS.has(figure);

const sumOrNull = (values: readonly (number | null)[]): number | null =>
  values.every((value) => value !== null) ? values.reduce((sum: number, value) => sum + value!, 0) : null;

/** Coats on one of each piece. */
const coats = ({ runs }: JobResult): number =>
  runs.reduce((sum, run) => sum + run.moments.filter(({ action }) => action.op === "layer").length, 0);

/** Of the surface whose film is thickest. */
function thickest({ totals }: JobResult): number | null {
  const films = totals.surfaces.map(({ dry_film_um }) => dry_film_um);
  return films.some((film) => film === null) ? null : Math.max(0, ...(films as number[]));
}

// ---------------------------------------------------------------------------------------------------------------
// Differences

const MONEY: ReadonlySet<ComparedFigure> = new Set(["material_cost", "labour_cost", "total_cost", "saving"]);

function differenceOf(a: ComparisonSide, b: ComparisonSide): ComparisonDifference {
  const isOneMoney = a.currency === undefined || b.currency === undefined || a.currency === b.currency;
  const figure = (name: ComparedFigure): number | null => {
    if (isComparedDate(name)) return hoursLater(a.dates[name], b.dates[name]);
    return MONEY.has(name) && !isOneMoney ? null : less(b.numbers[name], a.numbers[name]);
  };
  const names = [...new Set([...a.materials, ...b.materials].map(({ name }) => name))];
  return {
    figures: Object.fromEntries(COMPARED.map((name) => [name, figure(name)])) as Record<
      ComparedFigure,
      number | null
    >,
    materials: names.map((name) => ({ name, litres: less(litresOf(b, name), litresOf(a, name)) })),
    levels: byLevel((level) => b.levels[level] - a.levels[level]),
  };
}

const less = (b: number | null, a: number | null): number | null => (a === null || b === null ? null : b - a);

/** 0 of a material that the side does not use. */
export function litresOf({ materials }: ComparisonSide, name: string): number | null {
  const material = materials.find((each) => each.name === name);
  return material ? material.litres : 0;
}

const hoursLater = (from: string | null, to: string | null): number | null =>
  from === null || to === null ? null : hoursBetween(from, to);

// ---------------------------------------------------------------------------------------------------------------
// Findings

const byLevel = (count: (level: Severity) => number): Readonly<Record<Severity, number>> =>
  Object.fromEntries(SEVERITIES.map((level) => [level, count(level)])) as Record<Severity, number>;

const levelsOf = (findings: readonly FileFinding[]): ComparisonSide["levels"] =>
  byLevel((level) => findings.filter(({ severity }) => severity === level).length);

/** The gravest first, then by name. */
function rulesOf(findings: readonly FileFinding[]): ComparisonSide["rules"] {
  const rules = new Map<string, { rule: string; severity: Severity; count: number }>();
  for (const { rule, severity } of findings) {
    const key = `${SEVERITIES.indexOf(severity)} ${rule}`;
    rules.set(key, { rule, severity, count: (rules.get(key)?.count ?? 0) + 1 });
  }
  return [...rules].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, counted]) => counted);
}

/** Findings of the job, and those that its recipes have whatever the job. */
function findingsOf({ analysis, file, result }: ComparedJob): readonly FileFinding[] {
  const recipes = new Set(
    result.runs.flatMap((run) =>
      run.moments.flatMap(({ action }) =>
        action.frames.map(({ file: at, declaration }) => `${at}\u0000${declaration}`),
      ),
    ),
  );
  return analysis.usedBy(file).flatMap((at) => {
    const spans = analysis
      .symbols(at)
      .filter(({ kind, name }) => kind === "recipe" && recipes.has(`${at}\u0000recipe ${name}`))
      .map(({ span }) => span);
    return analysis
      .findings(at)
      .filter(({ job, span }) =>
        job === undefined
          ? spans.some(({ start, end }) => start <= span.start && span.end <= end)
          : job === result.job.name && at === file,
      );
  });
}
