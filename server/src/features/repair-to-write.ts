/**
 * The recipe that repairs a trouble which a record names, written below its job: who repairs applies it where it belongs, as the
 * job's own recipe has the coats that are still to come.
 */
import type { Span } from "../../../grammar/src/tree.ts";
import { absoluteSpan, newlineOf } from "../../../grammar/src/walk.ts";
import type { Checker } from "../core/check.ts";
import { materialDuties } from "../core/knowledge/duties.ts";
import { type Trouble, troubleOf } from "../core/knowledge/troubles.ts";
import type { FileId } from "../core/place.ts";
import { repairRecipe } from "../core/record/repair-recipe.ts";
import { dutiesOf } from "../core/rules/coat-queries.ts";
import { type RecordedCoat, recordedCoats } from "../core/rules/recorded-coats.ts";
import type { FileFix } from "../views/places/file-finding.ts";
import { declarationsAt } from "./declarations-at.ts";

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
  const coat = recordedCoats(checker.job(job).runs).find(({ record }) => {
    const { start, end } = absoluteSpan(tree, record.syntax.span);
    return record.facts.trouble !== undefined && span.start <= end && span.end >= start;
  });
  const trouble = coat && troubleOf(coat.record.facts.trouble!.word);
  if (!trouble) return undefined;
  const newline = newlineOf(found.tree.text);
  const whole = absoluteSpan(tree, { start: 0, end: tree.length });
  const brace = found.tree.text.lastIndexOf("}", whole.end - 1);
  // Of a job that is not closed yet, its end.
  const end = brace < whole.start ? whole.end : brace + 1;
  const lines = recipeFor(trouble, coat);
  return {
    title: `Write a recipe that repairs the ${trouble.word}`,
    kind: "change",
    edits: [
      {
        file,
        span: { start: end, end },
        text: ["", "", ...lines].join(newline),
      },
    ],
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
