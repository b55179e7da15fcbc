/**
 * References: every name of a declaration with what it stands for.
 *
 * They are made in one place (`resolve-references.ts`). What is wrong with a line, what a recipe does, hover, colours and
 * all ways through the files go by them, so that a name never means two things.
 */
import type { NameRole } from "../../../../grammar/src/names.ts";
import type { Name, Statement } from "../../../../grammar/src/tree.ts";
import type { Material, ModelDeclaration, Piece, Recipe, RecipeParameter, Surface } from "../model/model.ts";
import { parameterNamed } from "../model/parameters.ts";
import { type Place, placeKey } from "../place.ts";

interface Meant {
  readonly name: string;
  /** Two names mean the same thing if their referents have the same key. */
  readonly key: string;
  /** Where its name is declared; absent for built-in materials. */
  readonly place?: Place;
}

export interface ModelReferent extends Meant {
  readonly kind: ModelDeclaration["kind"];
  /** Absent where a fault in this program kept the declaration from being read. */
  readonly model?: ModelDeclaration;
}

export interface SurfaceReferent extends Meant {
  readonly kind: "surface";
  readonly piece?: Piece;
  readonly surface?: Surface;
}

export interface ParameterReferent extends Meant {
  readonly kind: "parameter";
  readonly recipe?: Recipe;
  /** Absent while it lacks its type. */
  readonly parameter?: RecipeParameter;
}

/** What a name stands for. */
export type Referent = ModelReferent | SurfaceReferent | ParameterReferent;

/** A name where it stands. */
export interface Reference {
  readonly name: Name;
  readonly role: NameRole;
  /** The statement in which it stands; absent in the head of the declaration. */
  readonly statement?: Statement;
  /** Nothing where it is not known, several where a word means several things, as `all` does. */
  readonly referents: readonly Referent[];
  readonly through?: ThroughParameter;
}

/**
 * Set where a name stands in a call of a parameter and is no parameter itself: what it means depends on the recipes that
 * are handed on to the parameter. `referentsOf` says what, once these are known.
 */
export interface ThroughParameter {
  readonly parameter: RecipeParameter;
  /** The name of the argument that it is, or is given to. */
  readonly argument?: string;
  /** What a value may mean, by the type of what it is given to. */
  readonly candidates: readonly Referent[];
}

/** Everything that a name may mean, with the recipes that a parameter of type `recipe` may stand for. */
export function referentsOf(
  { role, referents, through }: Pick<Reference, "role" | "referents" | "through">,
  handedOn: (parameter: RecipeParameter) => readonly Recipe[],
): readonly Referent[] {
  if (!through) return referents;
  const { argument } = through;
  const meant = handedOn(through.parameter).flatMap((recipe) => {
    const parameter = argument === undefined ? undefined : parameterNamed(recipe.parameters, argument);
    return parameter ? [parameterReferent(parameter, recipe)] : [];
  });
  if (role === "argument-name") return distinct(meant);
  const types = meant.map(({ parameter }) => parameter.type as string);
  return types.length === 0 ? referents : through.candidates.filter(({ kind }) => types.includes(kind));
}

export function modelReferent(model: ModelDeclaration): ModelReferent {
  const { kind, name, namePlace } = model;
  // Only built-in materials stand in no declaration.
  return model.declaration === ""
    ? { kind, name, key: `built-in ${name}`, model }
    : { kind, name, key: placeKey(namePlace), place: namePlace, model };
}

export const surfaceReferent = (surface: Surface, piece: Piece): SurfaceReferent => ({
  kind: "surface",
  name: surface.name,
  key: placeKey(surface.namePlace),
  place: surface.namePlace,
  piece,
  surface,
});

export const parameterReferent = (
  parameter: RecipeParameter,
  recipe: Recipe,
): ParameterReferent & { readonly parameter: RecipeParameter } => ({
  kind: "parameter",
  name: parameter.name,
  key: placeKey(parameter.place),
  place: parameter.place,
  recipe,
  parameter,
});

/** The material that is meant, if it is one. */
export const materialOf = (referent: Referent | undefined): Material | undefined =>
  referent?.kind === "material" && referent.model?.kind === "material" ? referent.model : undefined;

/** The recipe that is meant, if it is one. */
export const recipeOf = (referent: Referent | undefined): Recipe | undefined =>
  referent?.kind === "recipe" && referent.model?.kind === "recipe" ? referent.model : undefined;

/** Without repetitions, in the order of first mention. */
export const distinct = <T extends Referent>(referents: readonly T[]): readonly T[] => [
  ...new Map(referents.map((referent) => [referent.key, referent])).values(),
];

/** Roles of names that declare something. */
const DECLARING: ReadonlySet<NameRole> = new Set<NameRole>(["declaration-name", "surface-name", "parameter"]);

export const isDeclaring = ({ role }: Pick<Reference, "role">): boolean => DECLARING.has(role);
