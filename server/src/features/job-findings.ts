/** The findings that concern a job: those that name it, stand in it, or hold of a recipe of its file that it goes through. */
import { firstIndex } from "../../../grammar/src/binary-search.ts";
import type { ProgramDeclaration } from "../core/model/program.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import type { FileFinding } from "../views/places/file-finding.ts";

/** The keys of the declarations whose findings are those of the job, its own last. */
export function declarationsOf({ job, runs }: JobResult): readonly string[] {
  const places = runs.flatMap(({ moments }) => moments.flatMap(({ action }) => action.frames));
  const through = places.flatMap(({ file, declaration }) => (file === job.file ? [declaration] : []));
  return [...new Set([...through, job.declaration])];
}

/** The key of the declaration, of those of a file in its order, that an offset of the file lies in. */
export function declarationAt(
  declarations: readonly ProgramDeclaration[],
  offset: number,
): string | undefined {
  const next = firstIndex(declarations, ({ tree }) => tree.offset > offset);
  const tree = declarations[next - 1]?.tree;
  return tree !== undefined && offset < tree.offset + tree.length ? tree.key : undefined;
}

/** Of the findings of its file. */
export function findingsOfJob(
  declarations: readonly ProgramDeclaration[],
  findings: readonly FileFinding[],
  result: JobResult,
): readonly FileFinding[] {
  const keys = new Set(declarationsOf(result));
  return findings.filter(({ job, span }) =>
    job === undefined ? keys.has(declarationAt(declarations, span.start) ?? "") : job === result.job.name,
  );
}
