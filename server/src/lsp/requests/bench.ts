/** `finishwright/bench` and `finishwright/benchExport`, requests of our own: a job as it is drawn beside its text. */
import type { CancellationToken } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { t } from "../../../../grammar/src/translate.ts";
import type { FileId } from "../../core/place.ts";
import { shownText } from "../../escape/shown-text.ts";
import type { Analysis } from "../../features/types.ts";
import { pathOfPicture, readPictures } from "../../reading/read-pictures.ts";
import { titleOf } from "../../views/sheet/words.ts";
import type { BenchAnswer, BenchExportParams, BenchParams, BenchPlace } from "../custom-requests.ts";
import type { Session } from "../session.ts";
import { toLocation } from "../to-lsp.ts";
import { fileIdOf, fileNameOf } from "../uri.ts";
import { wholePlans } from "../whole-answers.ts";
import { errorCount, placeText } from "./report.ts";

export const bench = async (session: Session, params: BenchParams): Promise<BenchAnswer | null> => {
  const { uri } = params.textDocument;
  const file = fileIdOf(uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot();
  const { analysis } = snapshot;
  if (analysis.text(file) === undefined) return null;
  const jobs = analysis.jobs(file).map(({ job }) => ({ name: job.name, title: titleOf(job) }));
  const name =
    jobs.find((each) => each.name === params.job)?.name ??
    jobAtLine(analysis, file, snapshot.document(file), params.line) ??
    jobs.find((each) => each.name === params.before)?.name ??
    jobs[0]?.name;
  const drawn = name === undefined ? undefined : analysis.bench(file, name);
  if (drawn === undefined) return { jobs, notes: [noJob(file)] };
  const places = drawn.places.map(({ file: of, span }): BenchPlace => {
    const location = toLocation(snapshot, { file: of, span });
    const { start, end } = location?.range ?? { start: TOP, end: TOP };
    return { uri: snapshot.uriOf(of), ...start, endLine: end.line };
  });
  return { jobs, bench: { ...drawn, places }, notes: notesOf(analysis, file) };
};

/** Of a text that is not there. */
const TOP = { line: 0, character: 0 };

const noJob = (file: FileId): string =>
  t`${shownText(fileNameOf(file))} has no job that can be drawn. A job says which piece gets which recipe: job NAME {`;

function notesOf(analysis: Analysis, file: FileId): readonly string[] {
  const errors = errorCount(analysis, file);
  if (errors === 0) return [];
  return [
    errors === 1
      ? t`1 error in this file: do not work by this yet.`
      : t`${errors} errors in this file: do not work by this yet.`,
  ];
}

/** The job whose text the line is in. */
function jobAtLine(
  analysis: Analysis,
  file: FileId,
  document: TextDocument | undefined,
  line: number | undefined,
): string | undefined {
  if (line === undefined || document === undefined) return undefined;
  const from = document.offsetAt({ line, character: 0 });
  const symbol = analysis
    .symbols(file)
    .find(({ span }) => document.positionAt(span.start).line <= line && from <= span.end);
  return symbol && analysis.jobs(file).some(({ job }) => job.name === symbol.name) ? symbol.name : undefined;
}

/** Null where there is no such job any more, or a card, a short recipe or a calendar of it would be empty. */
export const benchExport = async (
  session: Session,
  { textDocument, job, as, with: handedOn = [] }: BenchExportParams,
  token: CancellationToken,
): Promise<string | null> => {
  const file = fileIdOf(textDocument.uri);
  await session.files.settled(file);
  await wholePlans(session, file, false, token);
  const { analysis } = session.files.snapshot();
  const sheet = analysis.sheets(file).find(({ kind, name }) => kind === "job" && name === job);
  const result = analysis.jobs(file).find((each) => each.job.name === job);
  if (sheet === undefined || result === undefined) return null;
  if ((as === "care" || as === "recipe") && result.runs.length === 0) return null;
  // A calendar has nothing of a job without dates, or without a plan.
  if (as === "ics" && !result.schedule.items.some(({ startAt }) => startAt)) return null;
  const { BENCH_REPORTS, picturesNamed } = await import("../../reports/job-reports.ts");
  const named = as === "html" ? picturesNamed([sheet]) : [];
  const pictures =
    named.length === 0
      ? undefined
      : await readPictures(named, (picture) =>
          session.files.readPicture(picture.file, pathOfPicture(picture.target)),
        );
  return BENCH_REPORTS[as]({
    sheet,
    ...(pictures ? { pictures } : {}),
    result,
    label: fileNameOf(file),
    handedOn,
    made: new Date().toISOString(),
    place: (at) => placeText(analysis, at),
  });
};
