/**
 * The recipe that repairs a trouble which a record names, written below its job: who repairs applies it where it belongs, as the
 * job's own recipe has the coats that are still to come.
 */
import { t, translated } from "../../../grammar/src/translate.ts";
import type { DeclarationTree, FileTree, Span } from "../../../grammar/src/tree.ts";
import { absoluteSpan, newlineOf } from "../../../grammar/src/walk.ts";
import type { Checker } from "../core/check.ts";
import { materialDuties } from "../core/knowledge/duties.ts";
import { type Trouble, troubleOf } from "../core/knowledge/troubles.ts";
import type { JobRecord, TroubleWord } from "../core/model/model.ts";
import type { FileId } from "../core/place.ts";
import { repairRecipe } from "../core/record/repair-recipe.ts";
import { dutiesOf } from "../core/rules/coat-queries.ts";
import { type RecordedCoat, recordedCoats } from "../core/rules/recorded-coats.ts";
import type { SurfaceRun } from "../core/surface/run.ts";
import type { FileFix } from "../views/places/file-finding.ts";
import { declarationsAt } from "./declarations-at.ts";

/** A recipe for one trouble of a record. */
export interface Repair {
  readonly trouble: TroubleWord;
  /** Its declaration, line by line. */
  readonly lines: readonly string[];
  /** The line of the record that names the trouble. */
  readonly record: JobRecord;
}

/** For each trouble that the record of a job names of a coat, in the order of surfaces. */
export function repairsOf(runs: readonly SurfaceRun[]): readonly Repair[] {
  return recordedCoats(runs).flatMap((coat) => {
    const { record } = coat;
    const trouble = record.facts.trouble && troubleOf(record.facts.trouble.word);
    return trouble ? [{ trouble: trouble.word, lines: recipeFor(trouble, coat), record }] : [];
  });
}

/**
 * For the trouble on the line of a span; undefined where there is none, or the record is not at hand: see `recordBeside` of
 * `client/bundles.ts`.
 */
export function repairToWrite(checker: Checker, file: FileId, span: Span): FileFix | undefined {
  const found = checker.program.files.get(file);
  const declaration = declarationsAt(found?.declarations ?? [], span)[0];
  const job = declaration?.lowered.model;
  if (!found || !declaration || job?.kind !== "job" || job.records.length === 0) return undefined;
  const { tree } = declaration;
  const repair = repairsOf(checker.job(job).runs).find(({ record }) => {
    const { start, end } = absoluteSpan(tree, record.syntax.span);
    return span.start <= end && span.end >= start;
  });
  if (!repair) return undefined;
  const place = placeOfRepairs(found.tree, tree);
  return {
    title: t`Write a recipe that repairs the ${translated(repair.trouble)}`,
    kind: "change",
    edits: [{ file, span: { start: place.offset, end: place.offset }, text: place.written(repair.lines) }],
  };
}

/** Below the job, or at its end where it is not closed yet; how a declaration is written there. */
export function placeOfRepairs(
  { text }: FileTree,
  job: DeclarationTree,
): { readonly offset: number; written(lines: readonly string[]): string } {
  const newline = newlineOf(text);
  const whole = absoluteSpan(job, { start: 0, end: job.length });
  const brace = text.lastIndexOf("}", whole.end - 1);
  return {
    offset: brace < whole.start ? whole.end : brace + 1,
    written: (lines) => ["", "", ...lines].join(newline),
  };
}

function recipeFor(trouble: Trouble, { run, moment: { action } }: RecordedCoat): readonly string[] {
  const { use, method, duties } = action;
  const helpers = (["mineral spirits", "dewaxed shellac"] as const).filter((name) =>
    trouble.lines.some((line) => line.includes(name.replaceAll(" ", "_"))),
  );
  return repairRecipe({
    trouble,
    material: use.material?.name ?? use.name,
    method,
    surface: run.label,
    duties: [
      ...duties.keys(),
      ...helpers.flatMap(dutiesOf),
      ...(use.material?.family ? materialDuties(use.material.family).map(({ duty }) => duty) : []),
    ],
  });
}
