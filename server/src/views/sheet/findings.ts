/**
 * The findings that concern a sheet, and the steps on whose lines they stand.
 *
 * A sheet leaves the editor where findings are seen, so it carries them along: those of its job, and those of every
 * declaration that it draws on, in whatever file. What names another job is left to that job's sheet.
 */
import { firstIndex } from "../../../../grammar/src/binary-search.ts";
import type { Checker } from "../../core/check.ts";
import type { Material } from "../../core/model/model.ts";
import { type FileId, type Place, placeKey } from "../../core/place.ts";
import { byDanger, ruleById } from "../../core/rules/registry.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { FileFinding, FileSpan } from "../places/file-finding.ts";
import { partsOf } from "../places/finding-parts.ts";
import { spanOfPlace } from "../places/to-absolute.ts";
import { benchOrder, inTitles } from "./bench-order.ts";
import type { SheetFinding } from "./model.ts";

/** A declaration, by the file and the key in it. */
export type DeclarationId = Pick<Place, "file" | "declaration">;

export interface Concern {
  readonly file: FileId;
  readonly job?: string;
  /** What the sheet draws on. */
  readonly declarations: readonly DeclarationId[];
}

/** The findings of a file, as the project's settings leave them, by what they concern. */
export interface ConcernedFindings {
  /** Of stray lines and `use` lines, which all depends on. */
  readonly everywhere: readonly OrderedFinding[];
  readonly byJob: ReadonlyMap<string, readonly OrderedFinding[]>;
  readonly byDeclaration: ReadonlyMap<string, readonly OrderedFinding[]>;
}

interface OrderedFinding {
  readonly finding: FileFinding;
  /** Its place among the findings of the file. */
  readonly order: number;
}

export type ConcernedFindingsOf = (file: FileId) => ConcernedFindings;

/** Sorts the findings of a file once, so that not every one of many sheets looks through them all. */
export function concernedFindings(
  checker: Checker,
  file: FileId,
  findings: readonly FileFinding[],
): ConcernedFindings {
  const everywhere: OrderedFinding[] = [];
  const byJob = new Map<string, OrderedFinding[]>();
  const byDeclaration = new Map<string, OrderedFinding[]>();
  const declarationAt = declarationFinder(checker, file);
  for (const [order, finding] of findings.entries()) {
    // Whether a name is of use is a matter of the text, not of the work.
    if (finding.severity === "hint" && ruleById(finding.rule)?.group === "language") continue;
    const declaration = finding.job === undefined ? declarationAt(finding.span.start) : undefined;
    if (finding.job !== undefined) add(byJob, finding.job, { finding, order });
    else if (declaration !== undefined) add(byDeclaration, declaration, { finding, order });
    else everywhere.push({ finding, order });
  }
  return { everywhere, byJob, byDeclaration };
}

function add<V>(map: Map<string, V[]>, key: string, value: V): void {
  const values = map.get(key);
  if (values) values.push(value);
  else map.set(key, [value]);
}

/** The gravest first; within one gravity what harms people, lead before all, and then in the order of the files and their lines. */
export function concerning(
  files: readonly FileId[],
  findingsOf: ConcernedFindingsOf,
  concern: Concern,
): readonly FileFinding[] {
  const found = files.flatMap((file) => {
    const { everywhere, byJob, byDeclaration } = findingsOf(file);
    const drawnOn = new Set(
      concern.declarations.flatMap((each) => (each.file === file ? [each.declaration] : [])),
    );
    const own = concern.job !== undefined && file === concern.file ? (byJob.get(concern.job) ?? []) : [];
    return [...everywhere, ...own, ...[...drawnOn].flatMap((key) => byDeclaration.get(key) ?? [])]
      .toSorted((a, b) => a.order - b.order)
      .map(({ finding }) => finding);
  });
  return found.toSorted(byDanger);
}

/** The key of the declaration that an offset is in; undefined for stray lines and for `use`. */
function declarationFinder(checker: Checker, file: FileId): (offset: number) => string | undefined {
  const trees = (checker.program.files.get(file)?.declarations ?? []).map(({ tree }) => tree);
  return (offset) => {
    const tree = trees[firstIndex(trees, (each) => each.offset > offset) - 1];
    if (!tree || offset >= tree.offset + tree.length || tree.body.syntax.kind === "use") return undefined;
    return tree.key;
  };
}

/** `materials`: those of the sheet, which it calls by their titles. */
export function numbered(
  findings: readonly FileFinding[],
  materials: readonly Material[],
): readonly SheetFinding[] {
  const byName = new Map(materials.map((material) => [material.name, material]));
  return findings.map((finding, i) => {
    const { rule, severity, message, headline, file, span, surfaces, job } = finding;
    // The last line of a finding on a job names it and its surfaces.
    const lines = message.split("\n").slice(0, job === undefined ? undefined : -1);
    return {
      number: i + 1,
      rule,
      severity,
      message,
      headline,
      ...benchOrder(finding, byName),
      rest: inTitles(message.slice(message.indexOf("\n") + 1 || message.length), byName),
      lines: lines.map((line) => inTitles(line, byName)),
      at: { file, span },
      ...(surfaces === undefined ? {} : { surfaces }),
    };
  });
}

/** Which findings stand on the line of an action of this run, by their numbers. */
export function findingsAtLines(
  checker: Checker,
  findings: readonly FileFinding[],
  run: SurfaceRun,
): (action: Action) => readonly number[] {
  // By file and in the order of the text, so that a line finds its own without a look at all others.
  const byFile = new Map<string, { readonly number: number; readonly start: number }[]>();
  for (const [i, finding] of findings.entries()) {
    if (finding.surfaces !== undefined && !finding.surfaces.includes(run.label)) continue;
    for (const { file, span } of linesOf(finding)) {
      const there = byFile.get(file) ?? [];
      byFile.set(file, there);
      there.push({ number: i + 1, start: span.start });
    }
  }
  for (const there of byFile.values()) there.sort((a, b) => a.start - b.start);
  const numbersOn = ({ file, span }: FileSpan): readonly number[] => {
    const there = byFile.get(file) ?? [];
    const first = firstIndex(there, ({ start }) => start >= span.start);
    const behind = firstIndex(there, ({ start }) => start >= span.end);
    return [...new Set(there.slice(first, behind).map(({ number }) => number))].sort((a, b) => a - b);
  };
  const known = new Map<string, readonly number[]>();
  return ({ place }) => {
    const key = placeKey(place);
    const before = known.get(key);
    if (before) return before;
    const line = spanOfPlace(checker.program, place);
    const numbers = line ? numbersOn(line) : [];
    known.set(key, numbers);
    return numbers;
  };
}

/** The places of all that the finding stands for; where it stands on the line that leads to a recipe of another file, that recipe's line. */
const linesOf = (finding: FileFinding): readonly FileSpan[] => [
  ...partsOf(finding),
  ...finding.related.filter(({ isCause }) => isCause),
];
