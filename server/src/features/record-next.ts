/**
 * What is to be done next in a job, each as a line of its record that lacks nothing but the time: when it was done the person
 * says who did it, by the clock beside the editor.
 */
import { t } from "../../../grammar/src/translate.ts";
import type { FileTree, Span } from "../../../grammar/src/tree.ts";
import { newlineOf } from "../../../grammar/src/walk.ts";
import type { Checker } from "../core/check.ts";
import { onceFor } from "../core/once.ts";
import type { FileId } from "../core/place.ts";
import { piecesWords, placeOfRecords, recordWords } from "../core/record/record-lines.ts";
import type { SurfaceRun } from "../core/surface/run.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { itemOf } from "../core/totals/planned-tasks.ts";
import { declarationsAt } from "./declarations-at.ts";
import type { NextRecord } from "./types.ts";

/** More than these are not offered at once. */
const MOST = 4;

/**
 * In the order of the plan; what is next on several surfaces is offered for all of them, and then for each. Undefined where
 * the record is not at hand: see `recordBeside` of `client/bundles.ts`.
 */
export function nextToRecord(checker: Checker, file: FileId, span: Span): readonly NextRecord[] | undefined {
  const found = checker.program.files.get(file);
  // Between two that touch, the caret is at the beginning of the second.
  const declaration = declarationsAt(found?.declarations ?? [], span).at(-1);
  const job = declaration?.lowered.model;
  if (!found || !declaration || job?.kind !== "job") return [];
  const place = placeOfRecords(declaration.tree, newlineIn(found.tree));
  if (!place) return [];
  return nextWork(checker.job(job))
    .slice(0, MOST)
    .map((words) => ({
      title: t`Record as done now: ${words}`,
      offset: place.offset,
      before: place.before,
      after: ` ${words}${place.after}${place.end}`,
    }));
}

/** Asked for every job of a file. */
const newlineIn = onceFor(({ text }: FileTree) => newlineOf(text));

interface Work {
  readonly words: string;
  readonly surfaces: readonly string[];
  readonly pieces: string;
  /** Local ISO; empty where it is not planned. */
  readonly startAt: string;
}

function nextWork(result: JobResult): readonly string[] {
  const groups = new Map<string, Work>();
  for (const run of result.runs) {
    const work = nextOn(result, run);
    if (!work) continue;
    const key = `${work.words}${work.pieces}`;
    const others = groups.get(key);
    groups.set(
      key,
      others
        ? {
            ...others,
            surfaces: [...others.surfaces, ...work.surfaces],
            startAt: [others.startAt, work.startAt].toSorted()[0]!,
          }
        : work,
    );
  }
  return [...groups.values()]
    .toSorted((a, b) => (a.startAt < b.startAt ? -1 : a.startAt > b.startAt ? 1 : 0))
    .flatMap(({ words, surfaces, pieces }) =>
      [surfaces, ...(surfaces.length > 1 ? surfaces.map((each) => [each]) : [])].map(
        (on) => `${words} on ${on.join(" and ")}${pieces}`,
      ),
    );
}

/** For the pieces that are behind the others. */
function nextOn({ schedule }: JobResult, run: SurfaceRun): Work | undefined {
  const all = Array.from({ length: run.pieces }, (_, piece) => run.record?.reached[piece] ?? 0);
  const reached = Math.min(...all);
  const index = run.moments.findIndex(({ action }, at) => at >= reached && recordWords(action) !== undefined);
  const moment = run.moments[index];
  if (!moment) return undefined;
  const pieces = all.flatMap((each, piece) => (each === reached ? [piece + 1] : []));
  const starts = pieces.flatMap((piece) =>
    schedule.status === "planned" ? (itemOf(schedule, run, piece - 1, index)?.startAt ?? []) : [],
  );
  return {
    words: recordWords(moment.action)!,
    surfaces: [run.label],
    pieces: piecesWords(pieces, run.pieces),
    startAt: starts.toSorted()[0] ?? "",
  };
}
