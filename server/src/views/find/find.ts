/**
 * Which recipes, jobs, pieces and surfaces of some files are what is looked for: `what did I use on oak with a flat clear`.
 *
 * All that is asked for must hold together, of one surface as one job leaves it: its wood, what is put on it, the sheen of
 * its top coat, and the hours and the cost of the job. That job, its recipes, the piece and the surface are then matches.
 * A recipe that no job does is looked at on the surface that it must be meant for, or by itself, and a surface on which
 * nothing is done by what is written of it. What the text does not tell is no match. Plain data in and out.
 */
import { createChecker } from "../../core/check.ts";
import type { Checker } from "../../core/checker.ts";
import type { Job, Material, Named, Piece, Recipe, Surface } from "../../core/model/model.ts";
import { modelsOf } from "../../core/model/program.ts";
import { onceFor, onFirstUse } from "../../core/once.ts";
import type { FileId, Place } from "../../core/place.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { spanOfPlace } from "../places/to-absolute.ts";
import { titleOf } from "../sheet/words.ts";
import { daysOf, keyOf, type RecipeAt, recipesIn, recipesOf, sheenOf } from "./in-runs.ts";
import type {
  Criterion,
  FindQuery,
  Found,
  FoundFigures,
  FoundKind,
  Matched,
  SearchedFiles,
} from "./model.ts";

/** Matches among what these files declare, in the order of the files and of their texts. */
export function findIn(
  searched: SearchedFiles,
  files: readonly FileId[],
  query: FindQuery,
): readonly Found[] {
  const context = createContext(searched, files, query);
  const { found } = context;
  const worked = new Set<string>();
  const done = new Set<string>();
  const look = (candidate: Candidate): void => {
    const { run } = candidate;
    if (run.surface && run.piece) worked.add(surfaceKey(run.piece, run.surface.name));
    const matched = matchOf(candidate, query, context.textOf);
    const recipes = recipesOf(run, context.recipeAt);
    for (const recipe of recipes) done.add(keyOf(recipe));
    if (!matched) return;
    const job = candidate.result?.job;
    if (job) found.add("job", job, job.namePlace, matched, candidate);
    for (const recipe of recipes) found.add("recipe", recipe, recipe.namePlace, matched, candidate);
    if (run.piece) found.add("piece", run.piece, run.piece.namePlace, matched, candidate);
    if (run.piece && run.surface)
      found.add("surface", run.surface, run.surface.namePlace, matched, candidate, run.piece);
  };
  for (const file of files)
    for (const result of searched.jobs(file)) for (const run of result.runs) look({ run, result });
  for (const recipe of context.declared("recipe")) {
    if (done.has(keyOf(recipe))) continue;
    const paired = context.checker().pairedIfSound(recipe);
    const alone = paired.length > 0 ? [] : [context.checker().assumedIfSound(recipe)];
    for (const run of [...paired, ...alone]) if (run) look({ run });
  }
  for (const piece of context.declared("piece")) {
    for (const surface of piece.surfaces) {
      if (worked.has(surfaceKey(piece, surface.name))) continue;
      const candidate: Untouched = { piece, surface };
      const matched = matchOf({ run: { ...candidate, moments: [], applied: [] } }, query, context.textOf);
      if (!matched) continue;
      found.add("piece", piece, piece.namePlace, matched, {});
      found.add("surface", surface, surface.namePlace, matched, {}, piece);
    }
  }
  return found.inOrder();
}

/** What of a run is looked at; a surface on which nothing is done has no more than that. */
type LookedAt = Pick<SurfaceRun, "moments" | "applied"> &
  Partial<Pick<SurfaceRun, "piece" | "surface" | "shop" | "recipe" | "final">>;

interface Candidate {
  readonly run: LookedAt;
  readonly result?: JobResult;
}

interface Untouched {
  readonly piece: Piece;
  readonly surface: Surface;
}

const surfaceKey = (piece: Piece, surface: string): string => `${keyOf(piece)}\0${surface}`;

// ---------------------------------------------------------------------------------------------------------------
// What holds

type TextOf = (of: Recipe) => string;

/** What a candidate has of each thing that was asked for; undefined as soon as one does not hold. */
function matchOf(candidate: Candidate, query: FindQuery, textOf: TextOf): readonly Matched[] | undefined {
  const { run, result } = candidate;
  const materials = onFirstUse(() => materialsOf(run));
  const matched: Matched[] = [];
  const holds = (by: Criterion, what: string | number | null | undefined): boolean => {
    if (what === undefined || what === null) return false;
    matched.push({ by, what });
    return true;
  };
  const { wood, sheen, wear, shop, meantFor } = query;
  const all =
    (wood === undefined || holds("wood", woodLike(run.surface?.substrate.name, wood))) &&
    (query.families ?? []).every((asked) => holds("family", familyAmong(materials(), asked))) &&
    (query.materials ?? []).every((asked) =>
      holds(
        "material",
        materials()
          .map(titleAndName)
          .find((it) => isIn(asked, it.text))?.title,
      ),
    ) &&
    (sheen === undefined || holds("sheen", sheenOf(run) === sheen ? sheen : undefined)) &&
    (wear === undefined || holds("wear", run.surface?.wear.value === wear ? wear : undefined)) &&
    (meantFor === undefined || holds("for", run.piece?.useBy.value === meantFor ? meantFor : undefined)) &&
    (shop === undefined ||
      holds("shop", run.shop && isIn(shop, titleAndName(run.shop).text) ? titleOf(run.shop) : undefined)) &&
    (query.texts ?? []).every((text) =>
      holds("text", isWritten(text, candidate, materials, textOf) ? text : undefined),
    ) &&
    atMost("hours", result?.totals.hands_on_h, query.hoursAtMost) &&
    atMost("days", daysOf(result), query.daysAtMost) &&
    atMost("cost", result?.totals.total_cost, query.costAtMost);
  return all ? matched : undefined;

  function atMost(by: Criterion, value: number | null | undefined, most: number | undefined): boolean {
    return most === undefined || (typeof value === "number" && value <= most && holds(by, value));
  }
}

/** In small letters, with blanks for what joins the words of a name. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\s_-]+/gu, " ")
    .trim();
const isIn = (part: string, text: string): boolean => plain(text).includes(plain(part));

/** `oak` is any oak: the words that are asked for end the name. */
function woodLike(name: string | undefined, asked: string): string | undefined {
  if (name === undefined || name === "") return undefined;
  return ` ${plain(name)}`.endsWith(` ${plain(asked)}`) ? name : undefined;
}

/** A material whose label leaves open which of several it is has each of them. */
function familyAmong(materials: readonly Material[], asked: readonly string[]): string | undefined {
  const names = new Set(asked.map(plain));
  for (const { family, familyName } of materials) {
    const all = [family?.name, familyName, ...(family?.readings ?? [])];
    const name = all.find((each) => each !== undefined && names.has(plain(each)));
    if (name !== undefined) return name;
  }
  return undefined;
}

const titleAndName = onceFor((named: Named): { readonly title: string; readonly text: string } => {
  const title = titleOf(named);
  return { title, text: `${title}\n${named.name}` };
});

function materialsOf({ moments }: LookedAt): readonly Material[] {
  const used = new Set<Material>();
  for (const { action } of moments)
    for (const { material } of usesOf(action)) if (material) used.add(material);
  return [...used];
}

function usesOf(action: Action): readonly { readonly material?: Material }[] {
  if (action.op === "step") return action.use ? [action.use] : [];
  if (action.op !== "layer") return [];
  const { use, thinned, tinted, hardener } = action;
  return [use, thinned?.thinner, tinted?.tint, hardener?.use].flatMap((each) => each ?? []);
}

function isWritten(
  text: string,
  { run, result }: Candidate,
  materials: () => readonly Material[],
  textOf: TextOf,
): boolean {
  const { piece, surface } = run;
  return (
    (result !== undefined && isIn(text, jobWords(result.job))) ||
    (piece !== undefined && isIn(text, pieceWords(piece))) ||
    (surface !== undefined && isIn(text, surfaceWords(surface))) ||
    run.applied.some(({ recipe }) => isIn(text, textOf(recipe))) ||
    (run.applied.length === 0 && run.recipe !== undefined && isIn(text, textOf(run.recipe))) ||
    materials().some((material) => isIn(text, titleAndName(material).text))
  );
}

const jobWords = onceFor((job: Job): string =>
  [
    job.name,
    job.title ?? "",
    job.docs,
    ...job.notes,
    ...job.records.map(({ facts }) => facts.note ?? ""),
  ].join("\n"),
);
const pieceWords = onceFor((piece: Piece): string =>
  [piece.name, piece.title ?? "", piece.docs, ...piece.notes].join("\n"),
);
const surfaceWords = onceFor((surface: Surface): string =>
  [surface.name, surface.title ?? "", surface.docs, ...surface.notes].join("\n"),
);

// ---------------------------------------------------------------------------------------------------------------
// What is found

interface Context {
  readonly found: FoundList;
  readonly textOf: TextOf;
  readonly checker: () => Checker;
  readonly recipeAt: RecipeAt;
  declared<K extends "recipe" | "piece">(kind: K): readonly Extract<Recipe | Piece, { kind: K }>[];
}

function createContext({ program }: SearchedFiles, files: readonly FileId[], query: FindQuery): Context {
  const asked = new Set(files);
  const models = files.flatMap((file) => {
    const known = program.files.get(file);
    return known ? modelsOf(known) : [];
  });
  const offsetAt = (place: Place): number | undefined => spanOfPlace(program, place)?.span.start;
  return {
    found: createFound(asked, new Set(query.kinds ?? []), offsetAt),
    textOf: onceFor((recipe: Recipe): string => {
      const file = program.files.get(recipe.file);
      const tree = file?.byKey.get(recipe.declaration)?.tree;
      return file && tree ? file.tree.text.slice(tree.offset, tree.offset + tree.length) : "";
    }),
    checker: onFirstUse(() => createChecker(program)),
    recipeAt: recipesIn(program),
    declared: <K extends "recipe" | "piece">(kind: K) =>
      models.filter((model): model is Extract<Recipe | Piece, { kind: K }> => model.kind === kind),
  };
}

interface FoundList {
  add(
    kind: FoundKind,
    named: { readonly name: string; readonly title?: string },
    place: Place,
    matched: readonly Matched[],
    by: { readonly result?: JobResult },
    piece?: Piece,
  ): void;
  inOrder(): readonly Found[];
}

/** Each declaration once, with all jobs in which it is what is looked for. */
function createFound(
  asked: ReadonlySet<FileId>,
  kinds: ReadonlySet<FoundKind>,
  offsetAt: (place: Place) => number | undefined,
): FoundList {
  const byPlace = new Map<string, { readonly first: Omit<Found, "jobs">; readonly jobs: Set<string> }>();
  return {
    add(kind, named, place, matched, { result }, piece) {
      if (!asked.has(place.file) || (kinds.size > 0 && !kinds.has(kind))) return;
      const key = `${kind}\0${keyOf(place)}\0${named.name}`;
      const known = byPlace.get(key);
      if (known) {
        if (result) known.jobs.add(result.job.name);
        return;
      }
      const offset = offsetAt(place);
      if (offset === undefined) return;
      const first = {
        kind,
        file: place.file,
        offset,
        name: named.name,
        title: titleOf(named),
        ...(kind === "surface" && piece ? { piece: piece.name } : {}),
        matched,
        ...(kind === "job" && result ? { figures: figuresOf(result) } : {}),
      };
      byPlace.set(key, { first, jobs: new Set(result ? [result.job.name] : []) });
    },
    inOrder() {
      const order = new Map([...asked].map((file, index) => [file, index]));
      return [...byPlace.values()]
        .map(({ first, jobs }) => ({ ...first, jobs: [...jobs] }))
        .toSorted((a, b) => order.get(a.file)! - order.get(b.file)! || a.offset - b.offset);
    },
  };
}

const figuresOf = (result: JobResult): FoundFigures => ({
  hours: result.totals.hands_on_h,
  days: daysOf(result),
  cost: result.totals.total_cost,
  currency: result.shop?.currency ?? null,
  lastWork: result.totals.last_work,
});
