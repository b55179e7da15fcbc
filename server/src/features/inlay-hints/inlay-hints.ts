/**
 * Inlay hints: small figures at the end of a recipe's lines, which nobody has to write: the litres that a line takes,
 * what a wait has to be, and when its turn comes. What is to be said of one line is one hint, short enough to be shown
 * whole; the sums are in its tooltips.
 *
 * They speak of the jobs of the same file. A recipe that none of these comes to has the litres and waits of the jobs
 * of other files, as hover has; dates of other files would say little there, so it shows the waits that it states. Where
 * nothing is known nothing is shown. A block that is done several times shows its first time.
 */
import { firstIndex } from "../../../../grammar/src/binary-search.ts";
import { innerStatements } from "../../../../grammar/src/names.ts";
import { tokensOfBody } from "../../../../grammar/src/tokens-of.ts";
import type { RecipeStatement, Span, Statement, Token } from "../../../../grammar/src/tree.ts";
import { absoluteOffset } from "../../../../grammar/src/walk.ts";
import type { Checker } from "../../core/check.ts";
import { figuresIn, type ShownFigures } from "../../core/measure/shown-figures.ts";
import type { ProgramDeclaration } from "../../core/model/program.ts";
import type { FileId, Place } from "../../core/place.ts";
import { isItsLine } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { unitsFor } from "../../core/units-told.ts";
import type { LineRun } from "../../views/sums/line-run.ts";
import type { InlayHintInfo, InlayHintKind, InlayHintPart } from "../types.ts";
import { elapsedHint } from "./elapsed.ts";
import { HINT_SEPARATOR, type HintText, MOST_CHARACTERS } from "./hint-text.ts";
import { litresHint } from "./litres.ts";
import { waitHint } from "./waits.ts";

export function inlayHintsOf(
  checker: Checker,
  file: FileId,
  span: Span,
  kinds: readonly InlayHintKind[],
): readonly InlayHintInfo[] {
  const found = checker.program.files.get(file);
  const asked = (found?.declarations ?? []).filter(
    ({ tree }) =>
      tree.body.syntax.kind === "recipe" &&
      tree.offset <= span.end &&
      span.start <= tree.offset + tree.length,
  );
  if (asked.length === 0 || kinds.length === 0) return [];
  const linesIn = (files: readonly FileId[]): Lines =>
    linesOf(
      file,
      files.flatMap(checker.jobs).flatMap((result) => result.runs.map((run) => ({ run, result }))),
    );
  const own = linesIn([file]);
  let foreign: Lines | undefined;
  const elsewhere = (): Lines => {
    foreign ??= linesIn([...checker.program.files.keys()].filter((other) => other !== file));
    return foreign;
  };
  return asked
    .flatMap((declaration) => recipeHints(file, declaration, { own, elsewhere, checker }, kinds))
    .filter(({ offset }) => span.start <= offset && offset <= span.end);
}

type Lines = ReadonlyMap<string, readonly LineRun[]>;

const lineKey = (declaration: string, start: number): string => `${declaration}\u0000${start}`;

/** Every line of this file that these runs come by, with the times that it is done on each surface. */
function linesOf(
  file: FileId,
  runs: readonly { readonly run: SurfaceRun; readonly result?: JobResult }[],
): Lines {
  const lines = new Map<string, LineRun[]>();
  for (const { run, result } of runs) {
    const times = new Map<string, LineRun["times"][number][]>();
    run.moments.forEach((moment, index) => {
      const { place }: { readonly place: Place } = moment.action;
      if (place.file !== file || !isItsLine(moment.action)) return;
      const key = lineKey(place.declaration, place.span.start);
      const list = times.get(key) ?? [];
      times.set(key, list);
      list.push({ ...moment, index });
    });
    for (const [key, list] of times) {
      const line: LineRun = { run, times: list, ...(result ? { result } : {}) };
      lines.set(key, [...(lines.get(key) ?? []), line]);
    }
  }
  return lines;
}

interface Sources {
  readonly checker: Checker;
  readonly own: Lines;
  readonly elsewhere: () => Lines;
}

function recipeHints(
  file: FileId,
  { tree, lowered }: ProgramDeclaration,
  { checker, own, elsewhere }: Sources,
  kinds: readonly InlayHintKind[],
): readonly InlayHintInfo[] {
  const { syntax } = tree.body;
  const { model } = lowered;
  if (syntax.kind !== "recipe" || model?.kind !== "recipe") return [];
  const statements = allStatements(syntax.statements);
  const runsFor = (lines: Lines, { span }: Statement): readonly LineRun[] =>
    lines.get(lineKey(tree.key, span.start)) ?? [];
  const reach = (lines: Lines): boolean =>
    statements.some((statement) => runsFor(lines, statement).length > 0);
  const assumed = (): Lines => {
    const run = checker.assumedIfSound(model);
    return linesOf(file, run ? [{ run }] : []);
  };
  const isInJob = reach(own);
  const dates = isInJob ? own : assumed();
  const say = figuresIn(unitsFor(checker, file));
  const amounts = isInJob ? own : reach(elsewhere()) ? elsewhere() : dates;
  const told = statements.flatMap((statement) => {
    const parts = kinds.flatMap((kind): readonly InlayHintPart[] => {
      const runs = runsFor(kind === "elapsed" ? dates : amounts, statement);
      const hint = runs.length > 0 ? hintOf(kind, statement, runs, say) : undefined;
      return hint ? [{ kind, ...hint }] : [];
    });
    return parts.length === 0 ? [] : [{ statement, parts }];
  });
  return told.flatMap(({ statement, parts }, index): readonly InlayHintInfo[] => {
    const above = told[index - 1]?.parts ?? [];
    const fresh = parts.filter((part) => !isRepeated(part, above));
    if (fresh.length === 0) return [];
    return [
      {
        offset: absoluteOffset(tree, contentEnd(tokensOfBody(tree.body), statement.span.end)),
        parts: fitting(fresh),
      },
    ];
  });
}

/** Litres are those of their line; of a time or a wait the line above has said it. */
const isRepeated = ({ kind, text }: InlayHintPart, above: readonly InlayHintPart[]): boolean =>
  kind !== "litres" && above.some((each) => each.kind === kind && each.text === text);

/** Without the last parts where all of them cannot be shown: the turn of a line is in the tooltip of the others, too. */
function fitting(parts: readonly InlayHintPart[]): readonly InlayHintPart[] {
  const length = parts.map(({ text }) => text).join(HINT_SEPARATOR).length;
  return parts.length === 1 || length <= MOST_CHARACTERS ? parts : fitting(parts.slice(0, -1));
}

function allStatements(statements: readonly RecipeStatement[]): readonly Statement[] {
  return statements.flatMap((statement): readonly Statement[] => [
    statement,
    ...allStatements(innerStatements(statement) as readonly RecipeStatement[]),
  ]);
}

function hintOf(
  kind: InlayHintKind,
  statement: Statement,
  runs: readonly LineRun[],
  say: ShownFigures,
): HintText | undefined {
  switch (kind) {
    case "elapsed":
      return elapsedHint(runs);
    case "litres":
      return statement.kind === "layer" ? litresHint(runs, say.litres) : undefined;
    case "waits":
      return statement.kind === "wait" ? waitHint(statement, runs) : undefined;
  }
}

/** The end of what stands on the line, a brace too, before its comment. */
function contentEnd(tokens: readonly Token[], offset: number): number {
  let end = offset;
  for (let i = firstIndex(tokens, ({ start }) => start >= offset); i < tokens.length; i += 1) {
    const { kind, start, text } = tokens[i]!;
    if (kind === "newline" || kind === "comment" || kind === "doc-comment") break;
    if (kind !== "space") end = start + text.length;
  }
  return end;
}
