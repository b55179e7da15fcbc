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
import { figuresIn, type ShownFigures, type UnitSystem } from "../../core/measure/shown-figures.ts";
import type { Recipe } from "../../core/model/model.ts";
import type { ProgramDeclaration } from "../../core/model/program.ts";
import { isSameList, onceFor } from "../../core/once.ts";
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
  const comingBy = (files: readonly FileId[]): ComingBy => runsComingBy(file, files.flatMap(checker.jobs));
  const own = comingBy([file]);
  let foreign: ComingBy | undefined;
  const elsewhere = (): ComingBy => {
    foreign ??= comingBy([...checker.program.files.keys()].filter((other) => other !== file));
    return foreign;
  };
  const units = unitsFor(checker, file);
  return asked
    .flatMap((declaration) => {
      const { tree, lowered } = declaration;
      if (lowered.model?.kind !== "recipe") return [];
      const runs = runsOf(checker, lowered.model, own.get(tree.key), () => elsewhere().get(tree.key));
      return hintsAgain(lowered.model, { file, declaration, runs, kinds, units }).map(
        ({ at, parts }): InlayHintInfo => ({ offset: absoluteOffset(tree, at), parts }),
      );
    })
    .filter(({ offset }) => span.start <= offset && offset <= span.end);
}

/** A run of a job, or of a recipe by itself. */
type Done = Pick<LineRun, "run" | "result">;

/** By declarations of a file, the runs that come by their lines. */
type ComingBy = ReadonlyMap<string, readonly Done[]>;

function runsComingBy(file: FileId, results: readonly JobResult[]): ComingBy {
  const found = new Map<string, Done[]>();
  for (const result of results)
    for (const run of result.runs)
      for (const declaration of declarationsOn(run).get(file) ?? []) {
        const known = found.get(declaration);
        if (known) known.push({ run, result });
        else found.set(declaration, [{ run, result }]);
      }
  return found;
}

/** The declarations whose lines a run does, by file. */
const declarationsOn = onceFor(({ moments }: SurfaceRun): ReadonlyMap<FileId, ReadonlySet<string>> => {
  const found = new Map<FileId, Set<string>>();
  for (const { action } of moments) {
    if (!isItsLine(action)) continue;
    const { file, declaration } = action.place;
    const known = found.get(file);
    if (known) known.add(declaration);
    else found.set(file, new Set([declaration]));
  }
  return found;
});

/** What the hints of a recipe are told by: dates and waits by some runs, litres and waits by others or the same. */
interface RecipeRuns {
  readonly dates: readonly Done[];
  readonly amounts: readonly Done[];
}

function runsOf(
  checker: Checker,
  recipe: Recipe,
  own: readonly Done[] | undefined,
  elsewhere: () => readonly Done[] | undefined,
): RecipeRuns {
  if (own) return { dates: own, amounts: own };
  const run = checker.assumedIfSound(recipe);
  const dates = run ? [{ run }] : [];
  return { dates, amounts: elsewhere() ?? dates };
}

interface HintsGiven {
  readonly file: FileId;
  readonly declaration: ProgramDeclaration;
  readonly runs: RecipeRuns;
  readonly kinds: readonly InlayHintKind[];
  readonly units: UnitSystem;
}

/** At an offset inside the declaration. */
interface RecipeHint {
  readonly at: number;
  readonly parts: readonly InlayHintPart[];
}

/** They are kept with the recipe, since an edit leaves the runs of most recipes alone. */
function hintsAgain(recipe: Recipe, given: HintsGiven): readonly RecipeHint[] {
  const { runs, kinds, units } = given;
  const by = [
    units,
    ...kinds,
    ...runs.dates.flatMap(({ run, result }) => [run, result]),
    "amounts",
    ...runs.amounts.flatMap(({ run, result }) => [run, result]),
  ];
  const before = KEPT_HINTS.get(recipe);
  if (before && isSameList(before.by, by)) return before.hints;
  const hints = recipeHints(given);
  KEPT_HINTS.set(recipe, { by, hints });
  return hints;
}

const KEPT_HINTS = new WeakMap<
  Recipe,
  { readonly by: readonly unknown[]; readonly hints: readonly RecipeHint[] }
>();

/** By the start of a line, on which surfaces it is done, and when on each. */
type Lines = ReadonlyMap<number, readonly LineRun[]>;

/** Every line of a declaration that these runs come by, with the times that it is done on each surface. */
function linesOf(file: FileId, declaration: string, runs: readonly Done[]): Lines {
  const lines = new Map<number, LineRun[]>();
  for (const { run, result } of runs) {
    const times = new Map<number, LineRun["times"][number][]>();
    run.moments.forEach((moment, index) => {
      const { place }: { readonly place: Place } = moment.action;
      if (place.file !== file || place.declaration !== declaration || !isItsLine(moment.action)) return;
      const list = times.get(place.span.start) ?? [];
      times.set(place.span.start, list);
      list.push({ ...moment, index });
    });
    for (const [start, list] of times) {
      const line: LineRun = { run, times: list, ...(result ? { result } : {}) };
      lines.set(start, [...(lines.get(start) ?? []), line]);
    }
  }
  return lines;
}

function recipeHints({ file, declaration: { tree }, runs, kinds, units }: HintsGiven): readonly RecipeHint[] {
  const { syntax } = tree.body;
  if (syntax.kind !== "recipe") return [];
  const dates = linesOf(file, tree.key, runs.dates);
  const amounts = runs.amounts === runs.dates ? dates : linesOf(file, tree.key, runs.amounts);
  const say = figuresIn(units);
  const told = allStatements(syntax.statements).flatMap((statement) => {
    const parts = kinds.flatMap((kind): readonly InlayHintPart[] => {
      const lines = (kind === "elapsed" ? dates : amounts).get(statement.span.start) ?? [];
      const hint = lines.length > 0 ? hintOf(kind, statement, lines, say) : undefined;
      return hint ? [{ kind, ...hint }] : [];
    });
    return parts.length === 0 ? [] : [{ statement, parts }];
  });
  return told.flatMap(({ statement, parts }, index): readonly RecipeHint[] => {
    const above = told[index - 1]?.parts ?? [];
    const fresh = parts.filter((part) => !isRepeated(part, above));
    if (fresh.length === 0) return [];
    return [{ at: contentEnd(tokensOfBody(tree.body), statement.span.end), parts: fitting(fresh) }];
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
