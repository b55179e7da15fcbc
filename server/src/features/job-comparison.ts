/**
 * Two ways of doing a job, figure by figure, with the findings that each brings.
 *
 * Findings count that name the job, and those of the recipes it does, wherever these are declared.
 */
import type { FileId } from "../core/place.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { type GapField, gapsOf } from "./job-gaps.ts";
import { areaText, filmText, hoursText, litresText, momentText, moneyText } from "./spoken.ts";
import type { Analysis, FileFinding } from "./types.ts";

export interface ComparedJob {
  readonly analysis: Analysis;
  readonly file: FileId;
  readonly result: JobResult;
}

export interface ComparisonRow {
  readonly name: string;
  readonly a: string;
  readonly b: string;
  /** B less A, with its sign; empty where that says nothing. */
  readonly difference: string;
}

export interface Comparison {
  readonly figures: readonly ComparisonRow[];
  readonly materials: readonly ComparisonRow[];
  readonly findings: readonly ComparisonRow[];
}

export function compareJobs(a: ComparedJob, b: ComparedJob): Comparison {
  return { figures: figureRows(a, b), materials: materialRows(a, b), findings: findingRows(a, b) };
}

/** A figure of both; null is not known, with the reason in its place. */
interface Figure {
  readonly value: number | null;
  readonly gap?: string;
}

function numberRow(name: string, a: Figure, b: Figure, say: (value: number) => string): ComparisonRow {
  const text = ({ value, gap }: Figure): string =>
    value === null ? `not known${gap ? ` (${gap})` : ""}` : say(value);
  return { name, a: text(a), b: text(b), difference: differenceText(a.value, b.value, say) };
}

function differenceText(a: number | null, b: number | null, say: (value: number) => string): string {
  if (a === null || b === null) return "";
  const difference = b - a;
  if (Math.abs(difference) < 1e-9) return "same";
  return `${difference > 0 ? "+" : "−"}${say(Math.abs(difference))}`;
}

const known = (value: number | null): Figure => ({ value });

function figureRows(a: ComparedJob, b: ComparedJob): readonly ComparisonRow[] {
  const ta = a.result.totals;
  const tb = b.result.totals;
  const gap = (job: ComparedJob, field: GapField): Figure => ({
    value: job.result.totals[field] as number | null,
    gap: gapsOf(job.result, field)[0],
  });
  const both = (name: string, field: GapField, say: (value: number) => string): ComparisonRow =>
    numberRow(name, gap(a, field), gap(b, field), say);
  const currency = a.result.shop?.currency ?? b.result.shop?.currency;
  const money = (amount: number): string => moneyText(amount, currency);
  const moment = (name: string, field: "finish" | "in_service"): ComparisonRow => {
    const text = ({ result }: ComparedJob): string => {
      const at = result.totals[field];
      return at === null ? `not known (${gapsOf(result, field)[0] ?? ""})` : momentText(at);
    };
    const hours = ta[field] && tb[field] ? hoursBetween(ta[field], tb[field]) : null;
    return { name, a: text(a), b: text(b), difference: differenceText(0, hours, hoursText) };
  };
  return [
    numberRow("area", known(ta.area_m2), known(tb.area_m2), areaText),
    numberRow("coats", known(coats(a.result)), known(coats(b.result)), String),
    numberRow("thickest film", known(thickest(a.result)), known(thickest(b.result)), filmText),
    numberRow("hands-on", known(ta.hands_on_h), known(tb.hands_on_h), hoursText),
    both("elapsed", "elapsed_h", hoursText),
    moment("finish", "finish"),
    moment("in service", "in_service"),
    both("VOC", "voc_g", (grams) => `${Math.round(grams)} g`),
    both("materials", "material_cost", money),
    both("labour", "labour_cost", money),
    both("total", "total_cost", money),
    both("saving", "saving", money),
  ];
}

const hoursBetween = (from: string, to: string): number =>
  (Date.parse(`${to}Z`) - Date.parse(`${from}Z`)) / 3_600_000;

/** Coats on one of each piece. */
const coats = ({ runs }: JobResult): number =>
  runs.reduce((sum, run) => sum + run.moments.filter(({ action }) => action.op === "layer").length, 0);

function thickest({ totals }: JobResult): number | null {
  const films = totals.surfaces.map(({ dry_film_um }) => dry_film_um);
  return films.some((film) => film === null) ? null : Math.max(0, ...(films as number[]));
}

function materialRows(a: ComparedJob, b: ComparedJob): readonly ComparisonRow[] {
  const litres = ({ result }: ComparedJob, name: string): number | null => {
    const material = result.totals.materials.find((each) => each.name === name);
    return material ? material.litres : 0;
  };
  const names = [a, b].flatMap(({ result }) => result.totals.materials.map(({ name }) => name));
  return [...new Set(names)].map((name) => {
    const row = numberRow(name, known(litres(a, name)), known(litres(b, name)), litresText);
    return { ...row, a: row.a === "0 L" ? "none" : row.a, b: row.b === "0 L" ? "none" : row.b };
  });
}

function findingRows(a: ComparedJob, b: ComparedJob): readonly ComparisonRow[] {
  const [fa, fb] = [findingsOf(a), findingsOf(b)];
  const count = (findings: readonly FileFinding[], rule: string): number =>
    findings.filter((finding) => finding.rule === rule).length;
  const rules = [...new Set([...fa, ...fb].map(({ rule }) => rule))].toSorted();
  return rules.map((rule) => {
    const severity = [...fa, ...fb].find((finding) => finding.rule === rule)!.severity;
    return numberRow(`${severity} ${rule}`, known(count(fa, rule)), known(count(fb, rule)), String);
  });
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
