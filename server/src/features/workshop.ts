/**
 * What there is in some files, as a workshop has it: jobs with what they come to, pieces, recipes, and what is in stock. Each
 * declaration is one entry; its detail is what tells it from its neighbours.
 */
import { t } from "../../../grammar/src/translate.ts";
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import type { Severity } from "../core/findings.ts";
import { dayText, monthDayText, roundMoneyText } from "../core/measure/figures.ts";
import { formatDuration } from "../core/measure/format-amount.ts";
import { figuresIn } from "../core/measure/shown-figures.ts";
import type { Material, Piece } from "../core/model/model.ts";
import { modelsOf, type ProgramFile } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { type DayClash, dayClashes } from "../views/bench/day-clashes.ts";
import { uncheckedText, unpromised } from "../views/missing-inputs.ts";
import { amongSentences } from "../views/schedule/among.ts";
import { jobDates } from "../views/schedule/job-dates.ts";
import { titleOf } from "../views/sheet/words.ts";
import type { Analysis, JobLens, WorkshopEntry } from "./types.ts";

/** The part of an analysis that this looks at. */
type Seen = Pick<Analysis, "program" | "jobLenses" | "jobs" | "findings" | "units" | "shopPlans">;

/**
 * Jobs in the order of their last work, those without a date behind them; all else in the order of the files and of their
 * texts. Findings of other levels than these are not counted.
 */
export function workshopOf(
  seen: Seen,
  files: readonly FileId[],
  levels: readonly Severity[],
): readonly WorkshopEntry[] {
  const results = new Map(
    files.flatMap((file) => seen.jobs(file).map((result) => [keyOf(result.job), result] as const)),
  );
  const told = neighboursTold(seen, [...results.values()]);
  const entries = entriesIn(seen, files, levels, results, told);
  const isJob = ({ entry }: Listed): boolean => entry.kind === "job";
  return [
    ...entries.filter(isJob).toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0)),
    ...entries.filter((each) => !isJob(each)),
  ].map(({ entry }) => entry);
}

interface Listed {
  readonly entry: WorkshopEntry;
  /** Of a job the day of its last work; behind all days where it has none. */
  readonly at: string;
}

function entriesIn(
  seen: Seen,
  files: readonly FileId[],
  levels: readonly Severity[],
  results: ReadonlyMap<string, JobResult>,
  told: ReadonlyMap<JobResult, readonly string[]>,
): readonly Listed[] {
  const jobsOfRecipe = countJobs(seen, files);
  const plain = (entry: WorkshopEntry): Listed => ({ entry, at: "" });
  return files.flatMap((id) => {
    const file = seen.program.files.get(id);
    if (!file) return [];
    const lenses = new Map(seen.jobLenses(id, levels).map((lens) => [lens.job, lens]));
    return modelsOf(file).flatMap((model): readonly Listed[] => {
      const span = nameSpan(file, model);
      if (span === undefined || model.name === "") return [];
      const entry = { name: model.name, title: titleOf(model), file: id, span };
      if (model.kind === "job") {
        const lens = lenses.get(model.name);
        const result = results.get(keyOf(model));
        const facts = lens ? jobFacts(seen, id, lens) : { detail: "" };
        const notes = (result && told.get(result)) ?? [];
        return [
          {
            entry: {
              kind: "job",
              ...entry,
              ...facts,
              ...(result ? { brief: briefText(result, facts.detail) } : {}),
              ...(notes.length > 0 ? { notes } : {}),
            },
            at: result?.totals.last_work ?? NO_DAY,
          },
        ];
      }
      if (model.kind === "piece") return [plain({ kind: "piece", ...entry, detail: pieceText(model) })];
      if (model.kind === "recipe")
        return [plain({ kind: "recipe", ...entry, detail: useText(jobsOfRecipe.get(keyOf(model)) ?? 0) })];
      if (model.kind === "material" && model.onHandPlace)
        return [plain({ kind: "stock", ...entry, detail: stockText(seen, model) })];
      return [];
    });
  });
}

/** Behind all days. */
const NO_DAY = "~";

/**
 * `ends 8 Mar · 84 EUR · use 30 Mar`, or why there is no date: a narrow tree cuts off what comes last, so the cost is short and
 * stands second; what points at the entry is told it to the cent. What has neither is told as it is.
 */
function briefText(result: JobResult, detail: string): string {
  const { total_cost } = result.totals;
  const cost = total_cost === null ? [] : [roundMoneyText(total_cost, result.shop?.currency)];
  const kept = unpromised(result);
  if (kept) return [kept.brief, ...cost].join(" · ");
  const dates = jobDates(result).flatMap(({ field, at }) => {
    if (at === undefined || field === "light_use") return [];
    return [field === "last_work" ? t`ends ${monthDayText(at)}` : t`use ${monthDayText(at)}`];
  });
  const unchecked = [uncheckedText(result)].filter(Boolean);
  const [ends, ...later] = dates;
  return ends === undefined ? detail : [ends, ...unchecked, ...cost, ...later].join(" · ");
}

/** What the other jobs of its shop do to each job, by the plan of the shop, and on which days they need more than there is. */
function neighboursTold(
  seen: Seen,
  results: readonly JobResult[],
): ReadonlyMap<JobResult, readonly string[]> {
  const told = new Map<JobResult, string[]>(
    results.map((result) => [result, unpromised(result) ? [] : [...amongSentences(result.schedule)]]),
  );
  const shops = new Set(results.flatMap(({ shop, job }) => (shop && job.start ? [shop] : [])));
  for (const shop of shops)
    for (const clash of dayClashes(
      results.filter((result) => result.shop === shop),
      seen,
    ))
      for (const result of clash.of) told.get(result)!.push(clashText(clash));
  return told;
}

function clashText({ date, isOver, hours, has, crew, clash, of }: DayClash): string {
  const day = dayText(date);
  return isOver
    ? t`On ${day} ${of.length} jobs need ${formatDuration(hours)} of ${formatDuration(has!)}.`
    : t`On ${day} ${clash!.needs} people are needed at once, and the shop has ${crew}.`;
}

interface Declared {
  readonly file: FileId;
  readonly declaration: string;
}

const keyOf = ({ file, declaration }: Declared): string => `${file}\0${declaration}`;

/** How many jobs go through each recipe, those that others follow among them. */
function countJobs(seen: Seen, files: readonly FileId[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const file of files)
    for (const { runs } of seen.jobs(file)) {
      const lines = runs.flatMap(({ moments }) => moments.map(({ action }) => keyOf(action.place)));
      const applied = runs.flatMap((run) => run.applied.map(({ recipe }) => keyOf(recipe)));
      for (const key of new Set([...lines, ...applied])) counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  return counts;
}

function nameSpan({ byKey }: ProgramFile, { declaration }: Declared): WorkshopEntry["span"] | undefined {
  const tree = byKey.get(declaration)?.tree;
  const name = tree?.body.syntax.name;
  return tree && name && absoluteSpan(tree, name.span);
}

/** `last work 8 Mar, full use 30 Mar 2027 · 84.00 EUR` */
function jobFacts(seen: Seen, file: FileId, { parts }: JobLens): Pick<WorkshopEntry, "detail" | "findings"> {
  const detail = parts
    .filter(({ kind }) => kind !== "findings")
    .map(({ text }) => text)
    .join(" · ");
  const findings = parts.find(({ kind }) => kind === "findings");
  const first = findings?.first;
  const gravest = first && seen.findings(file).find(({ span }) => span.start === first.start);
  return findings && gravest
    ? { detail, findings: { text: findings.text, severity: gravest.severity, first: gravest.span } }
    : { detail };
}

const pieceText = ({ surfaces }: Piece): string =>
  surfaces.length === 1 ? t`${surfaces.length} surface` : t`${surfaces.length} surfaces`;
const useText = (jobs: number): string =>
  jobs === 0 ? t`in no job` : jobs === 1 ? t`in ${jobs} job` : t`in ${jobs} jobs`;

function stockText(seen: Seen, { file, onHand, weighed }: Material): string {
  if (weighed.includes("counted")) return t`by weight`;
  return onHand === 0 ? t`used up` : t`${figuresIn(seen.units(file)).litres(onHand)} on hand`;
}
