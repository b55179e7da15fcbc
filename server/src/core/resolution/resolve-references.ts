/**
 * What every name of a declaration stands for, by its part in the line and by what can be named there.
 *
 * Parameters hide materials and recipes in the lines of their recipe, but not in its head. A name in a line that is wrong
 * otherwise is understood as far as it goes, so that one can find one's way in a file that is half typed.
 */
import { type NameUse, namesOf } from "../../../../grammar/src/names.ts";
import type {
  ApplyStatement,
  Call,
  DoneStatement,
  Parameter,
  Statement,
  Target,
} from "../../../../grammar/src/tree.ts";
import type { ModelDeclaration, Recipe, RecipeParameter, Surface } from "../model/model.ts";
import { parameterNamed } from "../model/parameters.ts";
import type { ProgramDeclaration, Scope } from "../model/program.ts";
import { onceFor } from "../once.ts";
import { type FileId, type Place, placeKey } from "../place.ts";
import { jobSurfaces, jobSurfacesNamed } from "../surface/job-surfaces.ts";
import {
  distinct,
  modelReferent,
  parameterReferent,
  type Reference,
  type Referent,
  surfaceReferent,
} from "./reference.ts";

interface Names {
  readonly file: FileId;
  readonly declaration: ProgramDeclaration;
  readonly scope: Scope;
  /** The recipe whose names they are. */
  readonly recipe?: Recipe;
}

/**
 * In the order of the text. Words of the notation are none, but for `all` behind `to`, which means surfaces.
 */
export function referencesIn(
  file: FileId,
  declaration: ProgramDeclaration,
  scope: Scope,
): readonly Reference[] {
  const { model } = declaration.lowered;
  const ctx: Names = { file, declaration, scope, ...(model?.kind === "recipe" ? { recipe: model } : {}) };
  return namesOf(declaration.tree.body)
    .filter(isName)
    .map((use): Reference => ({ ...use, ...meaningOf(ctx, use) }));
}

function isName({ role, name, statement }: NameUse): boolean {
  if (role === "keyword" || role === "unit") return false;
  return role !== "vocabulary" || (hasTargets(statement) && name.text === "all");
}

const hasTargets = (statement: Statement | undefined): statement is ApplyStatement | DoneStatement =>
  statement?.kind === "apply" || statement?.kind === "done";

type Meaning = Pick<Reference, "referents" | "through">;

function meaningOf(ctx: Names, use: NameUse): Meaning {
  const { role } = use;
  return role === "argument-name" || role === "argument-value"
    ? argumentMeaning(ctx, use)
    : { referents: referentsOf(ctx, use) };
}

function referentsOf(ctx: Names, use: NameUse): readonly Referent[] {
  const { scope } = ctx;
  const { text } = use.name;
  switch (use.role) {
    case "declaration-name":
    case "surface-name":
    case "parameter":
      return [ownReferent(ctx, use)].flatMap((referent) => referent ?? []);
    case "parameter-ref":
      return ownParameter(ctx, use);
    case "material-ref":
      return parameterElse(ctx, use, () => scope.materials.get(text));
    case "recipe-ref":
      return parameterElse(ctx, use, () => scope.recipes.get(text));
    case "piece-ref":
      return asReferents(scope.pieces.get(text));
    case "shop-ref":
      return asReferents(scope.shops.get(text));
    case "job-ref":
      return asReferents(scope.jobs.get(text));
    case "surface-ref":
    case "vocabulary":
      return surfacesMeant(ctx, use);
    default:
      return [];
  }
}

const asReferents = (model: ModelDeclaration | undefined): readonly Referent[] =>
  model ? [modelReferent(model)] : [];

/** What is declared by this name. */
function ownReferent({ file, declaration }: Names, { name, role }: NameUse): Referent | undefined {
  const place: Place = { file, declaration: declaration.tree.key, span: name.span };
  const meant = { name: name.text, key: placeKey(place), place };
  const { model, syntax } = declaration.lowered;
  if (role === "surface-name") {
    const piece = model?.kind === "piece" ? model : undefined;
    const surface = piece && surfacesByPlace(piece.surfaces).get(name.span.start);
    return { kind: "surface", ...meant, ...(piece ? { piece } : {}), ...(surface ? { surface } : {}) };
  }
  if (role === "parameter") {
    const recipe = model?.kind === "recipe" ? model : undefined;
    const named = recipe && parameterNamed(recipe.parameters, name.text);
    const parameter = named?.place.span.start === name.span.start ? named : undefined;
    return {
      kind: "parameter",
      ...meant,
      ...(recipe ? { recipe } : {}),
      ...(parameter ? { parameter } : {}),
    };
  }
  if (syntax.kind === "use") return undefined;
  return { kind: syntax.kind, ...meant, ...(model ? { model } : {}) };
}

/** The parameter of this name, in the lines of a recipe. One that still lacks its type counts as well. */
function ownParameter({ recipe }: Names, { name, statement }: NameUse): readonly Referent[] {
  if (!recipe || !statement) return [];
  const known = parameterNamed(recipe.parameters, name.text);
  if (known) return [parameterReferent(known, recipe)];
  const written = parametersByWord(recipe.parameterSyntax).get(name.text);
  if (!written) return [];
  const place: Place = { file: recipe.file, declaration: recipe.declaration, span: written.name.span };
  return [{ kind: "parameter", name: name.text, key: placeKey(place), place, recipe }];
}

function parameterElse(
  ctx: Names,
  use: NameUse,
  model: () => ModelDeclaration | undefined,
): readonly Referent[] {
  const parameter = ownParameter(ctx, use);
  return parameter.length > 0 ? parameter : asReferents(model());
}

/** What a word behind `to` means: surfaces, `all` of them, unless one is called so, or a piece with all that it has. */
function surfacesMeant({ declaration, scope }: Names, { name, statement }: NameUse): readonly Referent[] {
  const { model } = declaration.lowered;
  if (model?.kind !== "job" || !hasTargets(statement)) return [];
  const target = targetsByPlace(statement.targets).get(name.span.start);
  if (!target) return [];
  if (target.piece) {
    const piece = scope.pieces.get(target.piece.text);
    const named = piece?.surfaces.filter((surface) => surface.name === name.text) ?? [];
    return distinct(named.map((surface) => surfaceReferent(surface, piece!)));
  }
  const named = jobSurfacesNamed(model, scope, name.text);
  const piece = named.length === 0 ? model.pieces.find((each) => each.piece === name.text) : undefined;
  if (piece) return asReferents(scope.pieces.get(piece.piece));
  const meant = named.length === 0 && name.text === "all" ? jobSurfaces(model, scope) : named;
  return distinct(meant.map(({ surface, piece }) => surfaceReferent(surface, piece)));
}

function callOf({ statement }: NameUse): Call | undefined {
  return statement?.kind === "follow" || statement?.kind === "apply" ? statement.call : undefined;
}

/**
 * A value is a parameter of the recipe at hand; else it goes by the type of the parameter that it is given to, and where
 * that is not known, it is a material sooner than a recipe.
 */
function argumentMeaning(ctx: Names, use: NameUse): Meaning {
  const { role, name, statement } = use;
  const isValue = role === "argument-value";
  const own = isValue ? ownParameter(ctx, use) : [];
  if (own.length > 0) return { referents: own };
  const call = callOf(use);
  const argument = isValue ? call && argumentsByValue(call).get(name.span.start) : name.text;
  const [called] =
    call && statement ? ownParameter(ctx, { name: call.name, role: "recipe-ref", statement }) : [];
  const parameter = called?.kind === "parameter" ? called.parameter : undefined;
  if (parameter) {
    const candidates = isValue ? valueCandidates(ctx, name.text, undefined) : [];
    return { referents: candidates.slice(0, 1), through: { parameter, argument, candidates } };
  }
  const recipe = call && !called ? ctx.scope.recipes.get(call.name.text) : undefined;
  const given = recipe && argument !== undefined ? parameterNamed(recipe.parameters, argument) : undefined;
  if (isValue) return { referents: valueCandidates(ctx, name.text, given).slice(0, 1) };
  return { referents: recipe && given ? [parameterReferent(given, recipe)] : [] };
}

/** What a value may be that is given to a parameter; of an unknown one, either. */
function valueCandidates(
  { scope }: Names,
  name: string,
  parameter: RecipeParameter | undefined,
): readonly Referent[] {
  const isOpen = parameter === undefined;
  return [
    ...(isOpen || parameter.type === "material" ? asReferents(scope.materials.get(name)) : []),
    ...(isOpen || parameter.type === "recipe" ? asReferents(scope.recipes.get(name)) : []),
  ];
}

// By place or word, since a line may name as many things as somebody likes.

const surfacesByPlace = onceFor(
  (surfaces: readonly Surface[]): ReadonlyMap<number, Surface> =>
    new Map(surfaces.map((surface) => [surface.namePlace.span.start, surface])),
);

const parametersByWord = onceFor(
  (parameters: readonly Parameter[]): ReadonlyMap<string, Parameter> =>
    new Map(parameters.toReversed().map((parameter) => [parameter.name.text, parameter])),
);

const targetsByPlace = onceFor(
  (targets: readonly Target[]): ReadonlyMap<number, Target> =>
    new Map(targets.flatMap((target) => (target.surface ? [[target.surface.span.start, target]] : []))),
);

/** The names of the arguments, by where their values begin. */
const argumentsByValue = onceFor(
  (call: Call): ReadonlyMap<number, string> =>
    new Map(
      call.arguments.flatMap(({ name, value }) => (name && value ? [[value.span.start, name.text]] : [])),
    ),
);
