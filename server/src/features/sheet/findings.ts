/**
 * The findings that concern a sheet, and the steps on whose lines they stand.
 *
 * A sheet leaves the editor where findings are seen, so it carries them along: those of its job, and those of every
 * declaration that it draws on, in whatever file. What names another job is left to that job's sheet.
 */
import type { Checker } from "../../core/check.ts";
import type { Severity } from "../../core/findings.ts";
import { type FileId, type Place, placeKey } from "../../core/place.ts";
import { ruleById } from "../../core/rules/registry.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import { absoluteSpan } from "../edges.ts";
import type { FileFinding, FileSpan } from "../types.ts";
import type { SheetFinding } from "./model.ts";

/** A declaration, by the file and the key in it. */
export type DeclarationId = Pick<Place, "file" | "declaration">;

export interface Concern {
  readonly file: FileId;
  readonly job?: string;
  /** What the sheet draws on. */
  readonly declarations: readonly DeclarationId[];
}

/** The findings of every file, as the project's settings leave them. */
export type FindingsOf = (file: FileId) => readonly FileFinding[];

const GRAVITY: readonly Severity[] = ["error", "warning", "information", "hint"];

/** The gravest first; within one gravity in the order of the files and their lines. */
export function concerning(
  checker: Checker,
  files: readonly FileId[],
  findingsOf: FindingsOf,
  concern: Concern,
): readonly FileFinding[] {
  const drawnOn = new Set(concern.declarations.map(keyOf));
  const found = files.flatMap((file) =>
    findingsOf(file).filter((finding) => {
      // Whether a name is of use is a matter of the text, not of the work.
      if (finding.severity === "hint" && ruleById(finding.rule)?.group === "language") return false;
      if (finding.job !== undefined) return finding.job === concern.job && file === concern.file;
      const declaration = declarationAt(checker, finding);
      return declaration === undefined || drawnOn.has(keyOf({ file, declaration }));
    }),
  );
  return found.toSorted((a, b) => GRAVITY.indexOf(a.severity) - GRAVITY.indexOf(b.severity));
}

const keyOf = ({ file, declaration }: DeclarationId): string => `${file}\u0000${declaration}`;

/** The key of the declaration that a finding stands in; undefined for stray lines and for `use`, which all depends on. */
function declarationAt(checker: Checker, { file, span }: FileSpan): string | undefined {
  const found = checker.program.files
    .get(file)
    ?.declarations.find(({ tree }) => tree.offset <= span.start && span.start < tree.offset + tree.length);
  return found?.tree.body.syntax.kind === "use" ? undefined : found?.tree.key;
}

export const numbered = (findings: readonly FileFinding[]): readonly SheetFinding[] =>
  findings.map(({ rule, severity, message, file, span }, i) => ({
    number: i + 1,
    rule,
    severity,
    message,
    at: { file, span },
  }));

/** Which findings stand on the line of an action of this run, by their numbers. */
export function findingsAtLines(
  checker: Checker,
  findings: readonly FileFinding[],
  run: SurfaceRun,
): (action: Action) => readonly number[] {
  const here = findings.flatMap((finding, i) =>
    finding.surfaces === undefined || finding.surfaces.includes(run.label)
      ? [{ number: i + 1, places: linesOf(finding) }]
      : [],
  );
  const known = new Map<string, readonly number[]>();
  return ({ place }) => {
    const key = placeKey(place);
    const before = known.get(key);
    if (before) return before;
    const line = absoluteSpan(checker.program, place);
    const numbers = line
      ? here.flatMap(({ number, places }) => (places.some((each) => isOn(each, line)) ? [number] : []))
      : [];
    known.set(key, numbers);
    return numbers;
  };
}

/** The finding's own place; where it stands on the line that leads to a recipe of another file, that recipe's line. */
const linesOf = (finding: FileFinding): readonly FileSpan[] => [
  finding,
  ...finding.related.filter(({ message }) => message === "The line of the recipe"),
];

const isOn = (at: FileSpan, line: FileSpan): boolean =>
  at.file === line.file && line.span.start <= at.span.start && at.span.start < line.span.end;
