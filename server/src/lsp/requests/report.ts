/**
 * `finishwright/report`, a request of our own: the plan, the totals or the shopping list of a file's jobs as text, and its
 * bench sheets as Markdown.
 */
import type { CancellationToken } from "vscode-languageserver";
import { t } from "../../../../grammar/src/translate.ts";
import type { FileId } from "../../core/place.ts";
import { markdownText } from "../../escape/markdown.ts";
import { shownText } from "../../escape/shown-text.ts";
import type { Analysis } from "../../features/types.ts";
import type { ReportedJob } from "../../reports/job-reports.ts";
import { regionOf } from "../../reports/reported.ts";
import type { FileSpan } from "../../views/places/file-finding.ts";
import type { ReportParams } from "../custom-requests.ts";
import type { Session } from "../session.ts";
import { fileIdOf, fileNameOf } from "../uri.ts";
import { wholePlans } from "../whole-answers.ts";

export const report = async (
  session: Session,
  params: ReportParams,
  token: CancellationToken,
): Promise<string | null> => {
  const file = fileIdOf(params.textDocument.uri);
  // A plan has all jobs of its shop, and says what it has not: that is known when the folders have been listed and read.
  const isPlan = params.kind === "schedule" || params.kind === "totals";
  await (isPlan ? session.files.complete() : session.files.settled(file));
  await wholePlans(session, file, session.facts.showsReports, token);
  const { analysis } = session.files.snapshot();
  if (analysis.text(file) === undefined) return null;
  if (params.kind === "sheet") return sheetsOf(analysis, file, params.job);
  const jobs = reportedJobs(analysis, file, params.job);
  if (jobs.length === 0) return `${noJobs(file, params.job)}\n`;
  const { JOB_REPORTS, leftOut } = await import("../../reports/job-reports.ts");
  // Who asks for one job sees its own days in the plan of its shop.
  const text = JOB_REPORTS[params.kind](
    jobs,
    params.job === undefined ? analysis : undefined,
    analysis.units,
  );
  const left = params.kind === "shopping" ? [] : leftOut(jobs, (at) => session.files.projectOf(at));
  return [...errorNotes(analysis, jobs), text, ...left].join("\n");
};

function reportedJobs(analysis: Analysis, file: FileId, job: string | undefined): readonly ReportedJob[] {
  const jobsOf = (at: FileId): readonly ReportedJob[] =>
    analysis.jobs(at).map((result) => ({ file: at, label: fileNameOf(at), result }));
  const own = jobsOf(file);
  if (job !== undefined) return own.filter(({ result }) => result.job.name === job);
  if (own.length > 0) return own;
  const users = analysis.files.filter((other) => other !== file && analysis.usedBy(other).includes(file));
  return users.toSorted().flatMap(jobsOf);
}

const shownName = (file: FileId): string => shownText(fileNameOf(file));

const noJobs = (file: FileId, job: string | undefined): string =>
  job === undefined
    ? t`${shownName(file)} has no jobs, and no file that uses it has one. A job says: job NAME {`
    : t`${shownName(file)} has no job ${shownText(job)} any more.`;

/** The sheets say themselves which findings stand open. */
async function sheetsOf(analysis: Analysis, file: FileId, job: string | undefined): Promise<string> {
  const all = analysis.sheets(file);
  const sheets = job === undefined ? all : all.filter(({ kind, name }) => kind === "job" && name === job);
  if (sheets.length === 0) return `${markdownText(job === undefined ? noSheets(file) : noJobs(file, job))}\n`;
  const { sheetsReport } = await import("../../reports/job-reports.ts");
  return sheetsReport(sheets, fileNameOf, (at) => placeText(analysis, at));
}

const noSheets = (file: FileId): string =>
  `${shownName(file)} has neither jobs nor recipes, so there is no sheet. A job says: job NAME {`;

/** `tables.finish:12` */
export function placeText(analysis: Analysis, { file, span }: FileSpan): string {
  const label = fileNameOf(file);
  return `${label}:${regionOf({ label, text: analysis.text(file) ?? "" }, span).line}`;
}

export const errorCount = (analysis: Analysis, file: FileId): number =>
  analysis.findings(file).filter(({ severity }) => severity === "error").length;

/** Figures of a file with errors may be wrong, and are shown all the same. */
function errorNotes(analysis: Analysis, jobs: readonly ReportedJob[]): readonly string[] {
  const notes = [...new Set(jobs.map(({ file }) => file))].flatMap((file) => {
    const errors = errorCount(analysis, file);
    if (errors === 0) return [];
    const name = shownName(file);
    return [
      errors === 1
        ? t`${name} has an error, so what follows may be wrong.`
        : t`${name} has ${errors} errors, so what follows may be wrong.`,
    ];
  });
  return notes.length > 0 ? [...notes, ""] : [];
}
