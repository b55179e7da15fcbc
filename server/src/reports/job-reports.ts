/**
 * What an editor shows of jobs beside their text, behind one module: the language server loads it when the first is asked
 * for. Sheets and the drawing of a job come out of it by a detour of `bundles.ts`.
 */
import { t } from "../../../grammar/src/translate.ts";
import type { UnitSystem } from "../core/measure/shown-figures.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { jobPaper } from "../core/totals/paper.ts";
import { unitsForAll } from "../core/units-told.ts";
import { alsoNeeded } from "../views/also-needed.ts";
import { careCards } from "../views/care-card.ts";
import type { HandedOn } from "../views/handed-on.ts";
import type { FileSpan } from "../views/places/file-finding.ts";
import { plannedShops, type ShopSource } from "../views/schedule/shop-weeks.ts";
import type { Sheet } from "../views/sheet/model.ts";
import { shoppingList } from "../views/shopping-list.ts";
import { shortRecipe } from "../views/short-recipe.ts";
import { calendarReport } from "./calendar-report.ts";
import { careReport } from "./care-report.ts";
import { coloursFor } from "./colours.ts";
import { scheduleText } from "./schedule-text.ts";
import { sheetDocument } from "./sheet-document.ts";
import { type PicturesOf, sheetsHtml } from "./sheet-html.ts";
import { sheetsMarkdown } from "./sheet-markdown.ts";
import { shoppingCsv, shoppingText } from "./shopping-report.ts";
import { shortRecipeReport } from "./short-recipe-report.ts";
import { totalsText } from "./totals-text.ts";

export { benchOf } from "../views/bench/bench.ts";
export { sheetsOf } from "../views/sheet/sheet.ts";

export interface ReportedJob {
  readonly file: string;
  /** The file's own name. */
  readonly label: string;
  readonly result: JobResult;
}

const PLAIN = coloursFor({ isTTY: false, env: {} });

/** Plan, totals or shopping list of jobs, as text without colours. */
export const JOB_REPORTS = {
  /** `source`: where jobs of one shop are to be shown week by week. */
  schedule: (jobs: readonly ReportedJob[], source?: ShopSource): string => {
    const results = jobs.map(({ result }) => result);
    return scheduleText(results, PLAIN, source ? { shops: plannedShops(source, results) } : {});
  },
  totals: (jobs: readonly ReportedJob[], _: unknown, unitsOf: UnitsOfFile): string =>
    totalsText(
      jobs.map((job) => ({ ...job, units: unitsOf(job.file) })),
      PLAIN,
    ),
  shopping: (jobs: readonly ReportedJob[], _: unknown, unitsOf: UnitsOfFile): string => {
    const results = jobs.map(({ result }) => result);
    const runs = results.flatMap((result) => result.runs);
    const names = results.map(({ job }) => job.name).join(", ");
    const units = unitsForAll(
      unitsOf,
      jobs.map(({ file }) => file),
    );
    return `${t`Shopping list for ${names}`}\n\n${shoppingText({ baskets: shoppingList(results), paper: jobPaper(runs), also: alsoNeeded(runs), units })}`;
  },
} as const;

type UnitsOfFile = (file: string) => UnitSystem;

/**
 * What the plans of shops have nothing of, because the server was not told of it. `projectOf`: how much it knows of the project
 * of a file, all its recipes, as many as it looks at, or what is open.
 */
export function leftOut(
  jobs: readonly ReportedJob[],
  projectOf: (file: string) => "all" | "many" | "open",
): readonly string[] {
  const inShops = jobs.filter(({ result }) => result.schedule.sessions !== undefined);
  const known = new Set(inShops.map(({ file }) => projectOf(file)));
  if (known.has("open"))
    return [
      t`The plan has the jobs of open files and of what they use. Open the folder to plan with all its jobs.\n`,
    ];
  return known.has("many")
    ? [t`The folder has more recipes than are looked at. The jobs of the rest are left out of the plan.\n`]
    : [];
}

/** Bench sheets as Markdown; `place` is how a finding's place is named. */
export const sheetsReport = (
  sheets: readonly Sheet[],
  nameOf: (file: string) => string,
  place: (at: FileSpan) => string,
): string => sheetsMarkdown(sheets.map((sheet) => sheetDocument(sheet, nameOf(sheet.file), place)));

interface BenchReported {
  readonly sheet: Sheet;
  readonly result: JobResult;
  readonly label: string;
  readonly place: (at: FileSpan) => string;
  /** What was read of the pictures that the sheet's texts name, for a page. */
  readonly pictures?: PicturesOf;
  /** What a card or a short recipe tells besides. */
  readonly handedOn: readonly HandedOn[];
  /** When it is made, an ISO date-time in UTC, for a calendar. */
  readonly made: string;
}

export { picturesNamed } from "./sheet-pictures.ts";

/**
 * What can be taken along of a job: its sheet as a page or as Markdown, its shopping list for a spreadsheet, its plan for
 * a calendar, the care cards of its pieces as a page, and a short recipe as Markdown.
 */
export const BENCH_REPORTS = {
  html: ({ sheet, label, place, pictures }: BenchReported): string =>
    sheetsHtml([sheetDocument(sheet, label, place)], pictures),
  markdown: ({ sheet, label, place }: BenchReported): string =>
    sheetsMarkdown([sheetDocument(sheet, label, place)]),
  csv: ({ result }: BenchReported): string => shoppingCsv({ baskets: shoppingList([result]) }),
  ics: ({ result, made }: BenchReported): string => calendarReport([result], made),
  care: ({ result, handedOn }: BenchReported): string => careReport(careCards(result, handedOn), "html"),
  recipe: ({ result, sheet, handedOn }: BenchReported): string =>
    shortRecipeReport([shortRecipe(result, sheet, handedOn)], "markdown"),
} as const;
