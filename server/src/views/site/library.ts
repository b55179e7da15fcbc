/**
 * Puts a library together from what the analysis of some files knows: their recipes, pieces and jobs, each with what it
 * has to do with the others. Plain data in and out; nothing is calculated here.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { createChecker } from "../../core/check.ts";
import type { Piece, Recipe, Surface } from "../../core/model/model.ts";
import { modelsOf } from "../../core/model/program.ts";
import { onceFor } from "../../core/once.ts";
import type { FileId } from "../../core/place.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { careCards } from "../care-card.ts";
import { daysOf, keyOf, recipesIn, recipesOf, sheenOf } from "../find/in-runs.ts";
import type { SearchedFiles } from "../find/model.ts";
import type { HandedOn } from "../handed-on.ts";
import { outdoorsText } from "../outdoors-text.ts";
import { choiceText } from "../parameter-text.ts";
import type { FileFinding } from "../places/file-finding.ts";
import { sectionOf } from "../section/section.ts";
import type { Sheet } from "../sheet/model.ts";
import { recipeSheets } from "../sheet/sheet.ts";
import { capital, docsOf, titleOf, words } from "../sheet/words.ts";
import { shortRecipe, stepsOf } from "../short-recipe.ts";
import type {
  JobFigures,
  Library,
  LibraryJob,
  LibraryPiece,
  LibraryRecipe,
  LibrarySection,
  PieceSurface,
  Traits,
} from "./model.ts";

/** What is asked of an analysis. */
export interface LibraryFiles extends SearchedFiles {
  findings(file: FileId): readonly FileFinding[];
  sheets(file: FileId): readonly Sheet[];
}

/** A run with the job that it is of. */
interface Done {
  readonly run: SurfaceRun;
  readonly result?: JobResult;
}

/** What these files declare, in the order of the files and of their texts. */
export function libraryOf(
  analysis: LibraryFiles,
  files: readonly FileId[],
  handedOn: readonly HandedOn[] = [],
): Library {
  const { program } = analysis;
  const checker = createChecker(program);
  const recipeAt = recipesIn(program);
  const models = files.flatMap((file) => modelsOf(program.files.get(file)!));
  const recipes = models.filter((model): model is Recipe => model.kind === "recipe");
  const pieces = models.filter((model): model is Piece => model.kind === "piece");
  const results = files.flatMap((file) => analysis.jobs(file)).filter(({ runs }) => runs.length > 0);
  const listed = new Set([...recipes, ...pieces].map(keyOf));
  const keysOf = (
    declared: Iterable<{ readonly file: FileId; readonly declaration: string }>,
  ): readonly string[] => eachOnce([...declared].map(keyOf)).filter((key) => listed.has(key));

  const byRecipe = new Map<string, Done[]>();
  for (const result of results)
    for (const run of result.runs)
      for (const recipe of recipesOf(run, recipeAt)) {
        const known = byRecipe.get(keyOf(recipe));
        if (known) known.push({ run, result });
        else byRecipe.set(keyOf(recipe), [{ run, result }]);
      }
  const doneOf = (recipe: Recipe): readonly Done[] =>
    byRecipe.get(keyOf(recipe)) ?? checker.pairedIfSound(recipe).map((run) => ({ run }));
  const followedBy = new Map<string, string[]>();
  const follows = new Map(
    recipes.map((recipe) => {
      const all = [...recipesOf(checker.assumed(recipe), recipeAt)].filter((other) => other !== recipe);
      for (const other of all)
        followedBy.set(keyOf(other), [...(followedBy.get(keyOf(other)) ?? []), keyOf(recipe)]);
      return [recipe, keysOf(all)] as const;
    }),
  );
  const figures = (result: JobResult): JobFigures => figuresOf(result, handedOn.includes("prices"));
  const traits = (done: readonly Done[], surfaces: readonly Surface[] = []): Traits =>
    traitsOf(done, surfaces, figures);

  const sheetOfRecipe = recipeSheets(checker, analysis.findings);
  const recipeEntry = (recipe: Recipe): LibraryRecipe => {
    const done = doneOf(recipe);
    const assumed = checker.assumed(recipe);
    const [first] = done.filter(({ run }) => run.surface !== undefined);
    return {
      kind: "recipe",
      ...entryOf(recipe),
      traits: traits(done.length > 0 ? done : [{ run: assumed }]),
      sheet: sheetOfRecipe(recipe),
      steps: stepsOf(assumed),
      choices: recipe.parameters.map((parameter) => ({
        name: words(parameter.name),
        text: choiceText(recipe, parameter, (value) => t`${value}, unless another is chosen`),
      })),
      ...(first ? { section: sectionFor(first.run, true) } : {}),
      source: sourceOf(recipe),
      follows: follows.get(recipe)!,
      followedBy: followedBy.get(keyOf(recipe)) ?? [],
      jobs: eachOnce(done.flatMap(({ result }) => (result ? [keyOf(result.job)] : []))),
      pieces: keysOf(done.flatMap(({ run }) => run.piece ?? [])),
    };
  };
  const sourceOf = ({ file, declaration }: Recipe): LibraryRecipe["source"] => {
    const found = program.files.get(file)!;
    const { offset, length } = found.byKey.get(declaration)!.tree;
    const written = found.tree.text.slice(offset, offset + length);
    const text = written.trimStart();
    return { text: text.trimEnd(), offset: offset + written.length - text.length };
  };

  const byPiece = new Map<Piece, Done[]>();
  for (const result of results)
    for (const run of result.runs)
      if (run.piece) byPiece.set(run.piece, [...(byPiece.get(run.piece) ?? []), { run, result }]);
  const pieceEntry = (piece: Piece): LibraryPiece => {
    const done = byPiece.get(piece) ?? [];
    return {
      kind: "piece",
      ...entryOf(piece),
      traits: {
        ...traits(done, piece.surfaces),
        users: piece.useBy.origin === "stated" ? [piece.useBy.value] : [],
      },
      surfaces: piece.surfaces.map((surface) => pieceSurface(piece, surface)),
      jobs: eachOnce(done.flatMap(({ result }) => (result ? [keyOf(result.job)] : []))),
      recipes: keysOf(done.flatMap(({ run }) => [...recipesOf(run, recipeAt)])),
    };
  };

  const sheetsAt = onceFor(
    (at: { readonly file: FileId }): ReadonlyMap<string, Sheet> =>
      new Map(
        analysis.sheets(at.file).flatMap((sheet) => (sheet.kind === "job" ? [[sheet.name, sheet]] : [])),
      ),
  );
  const places = new Map(files.map((file) => [file, { file }]));
  const jobEntry = (result: JobResult): readonly LibraryJob[] => {
    const { job, runs } = result;
    const sheet = sheetsAt(places.get(job.file)!).get(job.name);
    // It failed for a fault in this program, which has been told.
    if (!sheet) return [];
    const done = runs.map((run) => ({ run, result }));
    const isSeveral = new Set(runs.map(({ piece }) => piece)).size > 1;
    return [
      {
        kind: "job",
        ...entryOf(job),
        traits: traits(done),
        short: shortRecipe(result, sheet, handedOn),
        sections: runs.map((run) => sectionFor(run, isSeveral)),
        care: careCards(result, handedOn),
        findings: sheet.findings,
        recipes: keysOf(runs.flatMap((run) => [...recipesOf(run, recipeAt)])),
        pieces: keysOf(runs.flatMap(({ piece }) => piece ?? [])),
      },
    ];
  };

  return {
    recipes: recipes.map(recipeEntry),
    pieces: pieces.map(pieceEntry),
    jobs: results.flatMap(jobEntry),
  };
}

const eachOnce = <T>(all: Iterable<T>): readonly T[] => [...new Set(all)];

type Declared = Pick<Recipe, "name" | "title" | "file" | "declaration" | "docs">;

const entryOf = (declared: Declared) => ({
  key: keyOf(declared),
  name: declared.name,
  title: capital(titleOf(declared)),
  file: declared.file,
  docs: docsOf(declared),
});

function traitsOf(
  done: readonly Done[],
  surfaces: readonly Surface[],
  figures: (result: JobResult) => JobFigures,
): Traits {
  const of = <T>(each: (run: SurfaceRun) => T | undefined): readonly T[] =>
    eachOnce(done.flatMap(({ run }) => each(run) ?? []));
  const worked = [...surfaces, ...done.flatMap(({ run }) => run.surface ?? [])];
  return {
    woods: eachOnce(worked.map(({ substrate }) => substrate.name).filter((name) => name !== "")),
    finishes: eachOnce(done.flatMap(({ run }) => finishesOf(run))),
    looks: of(sheenOf),
    wears: eachOnce(worked.map(({ wear }) => wear.value)),
    users: of(({ piece }) => (piece?.useBy.origin === "stated" ? piece.useBy.value : undefined)),
    figures: eachOnce(done.flatMap(({ result }) => result ?? [])).map(figures),
  };
}

/** Of the coats that a run puts on and leaves. */
const finishesOf = ({ final }: SurfaceRun): readonly string[] =>
  final.certain
    ? final.layers
        .filter(({ action }) => action !== undefined)
        .flatMap(({ family }) => family?.name ?? [])
        .toReversed()
    : [];

function figuresOf({ totals, shop }: JobResult, withPrices: boolean): JobFigures {
  const days = daysOf({ totals });
  const currency = shop?.currency;
  return {
    ...(totals.hands_on_h === null ? {} : { hours: totals.hands_on_h }),
    ...(days === null ? {} : { days }),
    ...(withPrices && totals.total_cost !== null && currency !== undefined
      ? { cost: { amount: totals.total_cost, currency } }
      : {}),
  };
}

const surfaceTitle = (piece: Piece | undefined, surface: Surface, withPiece: boolean): string =>
  capital(withPiece && piece ? `${titleOf(piece)}: ${titleOf(surface)}` : titleOf(surface));

function sectionFor(run: SurfaceRun, withPiece: boolean): LibrarySection {
  const { surface, piece, label } = run;
  const title = surface ? surfaceTitle(piece, surface, withPiece) : capital(label);
  const wear = surface ? wearText(surface) : "";
  return {
    title,
    caption: [translated(surface?.substrate.name || "wood not stated"), ...(wear ? [wear] : [])].join(", "),
    section: sectionOf(run, title),
  };
}

const wearText = ({ wear, outdoors }: Surface): string =>
  [t`${translated(wear.value)} wear`, ...(outdoors ? [outdoorsText(outdoors.value)] : [])].join(", ");

const pieceSurface = (piece: Piece, surface: Surface): PieceSurface => ({
  title: surfaceTitle(piece, surface, false),
  docs: { text: surface.docs, file: piece.file },
  wood: translated(surface.substrate.name || "not stated"),
  wear: wearText(surface),
});
