/**
 * What changed in meaning from one state of some files to another: recipes, jobs and what they are made of, with coats,
 * waits, materials, litres, cans, cost, hours, dates, and the findings that come and go.
 *
 * Plain data from two analyses. A declaration is the same one as long as its kind and its name are. What is written in
 * another layout, in another order of what has none, or with other comments is no change.
 */
import { createChecker } from "../../core/check.ts";
import type { Material } from "../../core/model/model.ts";
import type { FileId } from "../../core/place.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { COMPARED, type ComparedFigure, isComparedDate, sideOf } from "../job-comparison.ts";
import { distinctNames } from "../material-names.ts";
import type { FileFinding } from "../places/file-finding.ts";
import { titleOf, words } from "../sheet/words.ts";
import { findingChanges, findingsByDeclaration } from "./finding-changes.ts";
import { isChange, type LineChange, lineChanges } from "./line-changes.ts";
import type {
  ChangeStatus,
  Changes,
  DeclarationChange,
  FigureChange,
  FileChange,
  FilePair,
  FilesState,
  MaterialAmount,
  MaterialChange,
  StateAnalysis,
  WaitChange,
} from "./model.ts";
import { type Renames, renamedFiles } from "./renamed.ts";
import { untouchedFiles } from "./untouched.ts";
import { coatsOf, type DryingWait, dryingWaits, placeOf, workLines } from "./work.ts";
import { type WrittenDeclaration, writtenDeclarations } from "./written.ts";

/** `known` are renames that somebody else has found, Git for instance. */
export function changesBetween(given: FilesState, after: FilesState, known: Renames = new Map()): Changes {
  const renames = renamedFiles(given, after, known);
  const before = { ...given, keyOf: underNewName(given.keyOf, renames) };
  const states = { before: readState(before), after: readState(after) };
  const untouched = untouchedFiles(before, after);
  const files: FileChange[] = [];
  const layoutOnly: FilePair[] = [];
  const nameOnly: FilePair[] = [];
  const pairs = pairsOf(before, after, new Set(renames.values()));
  for (const [key, pair] of pairs) {
    const change = untouched.has(key) ? undefined : fileChange(states, pair);
    if (change) files.push(change);
    else if (pair.isRenamed) nameOnly.push(pair);
    else if (textOf(before, pair.before) !== textOf(after, pair.after)) layoutOnly.push(pair);
  }
  return { files, layoutOnly, nameOnly, looked: pairs.length };
}

const textOf = ({ analysis }: FilesState, file: FileId | undefined): string | undefined =>
  file === undefined ? undefined : analysis.program.files.get(file)?.tree.text;

const underNewName =
  (keyOf: FilesState["keyOf"], renames: Renames): FilesState["keyOf"] =>
  (file) => {
    const key = keyOf(file);
    return renames.get(key) ?? key;
  };

/** In the order of the alphabet, so that it does not depend on which state has a file. */
function pairsOf(
  before: FilesState,
  after: FilesState,
  renamed: ReadonlySet<string>,
): readonly (readonly [string, FilePair])[] {
  const pairs = new Map<string, FilePair>();
  for (const file of before.asked) {
    const key = before.keyOf(file);
    pairs.set(key, { before: file, isRenamed: renamed.has(key) });
  }
  for (const file of after.asked) {
    const key = after.keyOf(file);
    pairs.set(key, { isRenamed: false, ...pairs.get(key), after: file });
  }
  return [...pairs].toSorted(([a], [b]) => (a < b ? -1 : 1));
}

// ---------------------------------------------------------------------------------------------------------------
// Files

interface ReadState {
  readonly analysis: StateAnalysis;
  /** A recipe by itself, on a surface of which nothing is known. */
  readonly assumed: (file: FileId, key: string) => SurfaceRun | undefined;
}

interface States {
  readonly before: ReadState;
  readonly after: ReadState;
}

function readState({ analysis }: FilesState): ReadState {
  const { program } = analysis;
  const checker = createChecker(program);
  return {
    analysis,
    assumed: (file, key) => {
      const model = program.files.get(file)?.byKey.get(key)?.lowered.model;
      return model?.kind === "recipe" ? checker.assumedIfSound(model) : undefined;
    },
  };
}

/** What a state knows of a declaration. */
interface Known {
  readonly declared: WrittenDeclaration;
  readonly findings: readonly FileFinding[];
  readonly job?: { readonly analysis: StateAnalysis; readonly file: FileId; readonly result: JobResult };
  readonly recipe?: SurfaceRun;
}

function fileChange(states: States, pair: FilePair): FileChange | undefined {
  const before = knownOf(states.before, pair.before);
  const after = knownOf(states.after, pair.after);
  const keys = [...new Set([...after.declarations.keys(), ...before.declarations.keys()])];
  const declarations = keys.flatMap((key): readonly DeclarationChange[] => {
    const change = declarationChange(before.declarations.get(key), after.declarations.get(key));
    return change ? [change] : [];
  });
  const uses = lineChanges(before.uses, after.uses).filter(isChange);
  const findings = findingChanges(before.loose, after.loose);
  const status = statusOf(pair.before, pair.after);
  if (status === "changed" && declarations.length + uses.length + findings.length === 0) return undefined;
  return { ...pair, status, declarations, uses, findings };
}

const statusOf = (before: unknown, after: unknown): ChangeStatus =>
  before === undefined ? "added" : after === undefined ? "removed" : "changed";

interface KnownFile {
  readonly declarations: ReadonlyMap<string, Known>;
  readonly uses: readonly string[];
  readonly loose: Known["findings"];
}

function knownOf({ analysis, assumed }: ReadState, file: FileId | undefined): KnownFile {
  const found = file === undefined ? undefined : analysis.program.files.get(file);
  if (file === undefined || found === undefined) return { declarations: new Map(), uses: [], loose: [] };
  const written = writtenDeclarations(found.tree);
  const { byKey, loose } = findingsByDeclaration(found.tree, analysis.findings(file));
  const jobs = new Map(analysis.jobs(file).map((result) => [result.job.declaration, result]));
  const known = written.flatMap((declared): readonly (readonly [string, Known])[] => {
    if (declared.kind === "use") return [];
    const { key, kind } = declared;
    const result = jobs.get(key);
    const recipe = kind === "recipe" ? assumed(file, key) : undefined;
    return [
      [
        key,
        {
          declared,
          findings: byKey.get(key) ?? [],
          ...(result ? { job: { analysis, file, result } } : {}),
          ...(recipe ? { recipe } : {}),
        },
      ],
    ];
  });
  const uses = written.flatMap(({ kind, lines }) => (kind === "use" ? lines : []));
  return { declarations: new Map(known), uses: uses.toSorted(), loose };
}

// ---------------------------------------------------------------------------------------------------------------
// Declarations

function declarationChange(
  before: Known | undefined,
  after: Known | undefined,
): DeclarationChange | undefined {
  const declared = (after ?? before)!.declared;
  const work = workChanges(runsOf(before), runsOf(after));
  const written = lineChanges(before?.declared.lines ?? [], after?.declared.lines ?? []).filter(isChange);
  const change: DeclarationChange = {
    kind: declared.kind as DeclarationChange["kind"],
    name: declared.name,
    title: declared.title?.trim() ? declared.title.trim() : words(declared.name),
    status: statusOf(before, after),
    figures: figureChanges(before, after),
    materials: materialChanges(before?.job?.result, after?.job?.result),
    waits: waitChanges(runsOf(before), runsOf(after)),
    work,
    written: declared.kind === "recipe" && work.length > 0 ? written.filter(isNoWork) : written,
    findings: findingChanges(before?.findings ?? [], after?.findings ?? []),
    currency: {
      ...currencyOf("before", before?.job?.result),
      ...currencyOf("after", after?.job?.result),
    },
  };
  const { figures, materials, waits, findings } = change;
  const isSame = [figures, materials, waits, work, written, findings].every(({ length }) => length === 0);
  return change.status === "changed" && isSame ? undefined : change;
}

function currencyOf<K extends "before" | "after">(
  key: K,
  result: JobResult | undefined,
): { [P in K]?: string } {
  const currency = result?.shop?.currency;
  return (currency === undefined ? {} : { [key]: currency }) as { [P in K]?: string };
}

const runsOf = (known: Known | undefined): readonly SurfaceRun[] =>
  known?.job?.result.runs ?? (known?.recipe ? [known.recipe] : []);

/** Lines of a recipe that are done, whatever stands around them. */
const isNoWork = ({ text }: LineChange): boolean => !/(?:^|› )(?:step|layer|wait|follow|note) /u.test(text);

function workChanges(before: readonly SurfaceRun[], after: readonly SurfaceRun[]): DeclarationChange["work"] {
  const places = [...new Set([...after, ...before].map(placeOf))];
  const linesAt = (runs: readonly SurfaceRun[], place: string): readonly string[] =>
    runs.filter((run) => placeOf(run) === place).flatMap(workLines);
  return places.flatMap((place) => {
    const lines = lineChanges(linesAt(before, place), linesAt(after, place));
    return lines.some(isChange) ? [{ place, lines }] : [];
  });
}

function figureChanges(before: Known | undefined, after: Known | undefined): readonly FigureChange[] {
  if (before?.recipe || after?.recipe) {
    const coats = (known: Known | undefined): number | undefined => known?.recipe && coatsOf(known.recipe);
    return isSame(coats(before), coats(after))
      ? []
      : [{ figure: "coats", before: coats(before), after: coats(after) }];
  }
  const sides = { before: before?.job && sideOf(before.job), after: after?.job && sideOf(after.job) };
  const valueIn = (of: "before" | "after", figure: ComparedFigure): FigureChange["before"] =>
    isComparedDate(figure) ? sides[of]?.dates[figure] : sides[of]?.numbers[figure];
  return COMPARED.flatMap((figure): readonly FigureChange[] => {
    const change = { figure, before: valueIn("before", figure), after: valueIn("after", figure) };
    // Where a figure is known in neither state there is nothing to compare.
    return isSame(change.before ?? null, change.after ?? null) ? [] : [change];
  });
}

function materialChanges(
  before: JobResult | undefined,
  after: JobResult | undefined,
): readonly MaterialChange[] {
  const [old, now] = [amountsOf(before), amountsOf(after)];
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((name): readonly MaterialChange[] => {
    const [was, is] = [old.get(name), now.get(name)];
    if (isSameAmount(was?.amount, is?.amount)) return [];
    return [{ name, title: (is ?? was)!.title, before: was?.amount, after: is?.amount }];
  });
}

function amountsOf(
  result: JobResult | undefined,
): ReadonlyMap<string, { readonly title: string; readonly amount: MaterialAmount }> {
  const needs = result?.needs ?? [];
  const materials = needs.map(({ material }) => material);
  const names = distinctNames(materials);
  return new Map(
    needs.map(({ material, totals: { litres, containers, cost } }, index) => [
      names[index]!,
      { title: materialTitle(material, materials), amount: { litres, cans: containers, cost } },
    ]),
  );
}

/** With the name, where another material has the same title. */
function materialTitle(material: Material, among: readonly Material[]): string {
  const title = titleOf(material);
  return among.some((each) => each !== material && titleOf(each) === title)
    ? `${title} (${distinctNames(among)[among.indexOf(material)]})`
    : title;
}

function waitChanges(before: readonly SurfaceRun[], after: readonly SurfaceRun[]): readonly WaitChange[] {
  const keyed = (runs: readonly SurfaceRun[]): ReadonlyMap<string, DryingWait> =>
    new Map(dryingWaits(runs).map((wait) => [`${wait.stage} ${wait.material}`, wait]));
  const [old, now] = [keyed(before), keyed(after)];
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((key): readonly WaitChange[] => {
    const [was, is] = [old.get(key), now.get(key)];
    if (isSame(was?.hours, is?.hours)) return [];
    const { material, stage } = (is ?? was)!;
    return [{ material, stage, before: was?.hours, after: is?.hours }];
  });
}

/** Sums of the same parts in another order differ in their last digits. */
const ROUNDING = 1e-9;

function isSame(a: number | string | null | undefined, b: number | string | null | undefined): boolean {
  return typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= ROUNDING * Math.max(1, Math.abs(a))
    : a === b;
}

function isSameAmount(a: MaterialAmount | undefined, b: MaterialAmount | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  const cans = ({ cans: all }: MaterialAmount): string =>
    all.map(({ count, litres }) => `${count} x ${litres}`).join();
  return isSame(a.litres, b.litres) && isSame(a.cost, b.cost) && cans(a) === cans(b);
}
