/**
 * Recipes that no job applies, and the surfaces of their file that such a recipe must be meant for.
 *
 * A recipe and a piece without a job are only judged together where nothing else can be meant: a surface takes the recipe
 * that names it, else the one that names its piece, else the only one whose `for` fits it; where two are left, none. A
 * recipe that names other surfaces is not for those that it leaves out.
 */
import type { Piece, Recipe } from "../model/model.ts";
import type { JobSurface } from "./job-surfaces.ts";
import { suits } from "./suits.ts";

/** Every recipe that was asked about, with its surfaces: none where it is not clear which are meant. */
export type Pairing = ReadonlyMap<Recipe, readonly JobSurface[]>;

/** More recipes or surfaces than this in one file are a collection, of which nobody means one for another. */
const MOST_PAIRED = 60;

/** Pairs recipes that no job applies with pieces of the same file that no job names. */
export function pairUp(recipes: readonly Recipe[], pieces: readonly Piece[]): Pairing {
  const several = pieces.length > 1;
  const free = pieces
    // What an earlier job left is known where a job goes on from it.
    .filter((piece) => piece.surfaces.every(({ asLeftBy }) => asLeftBy === undefined))
    .flatMap((piece) =>
      piece.surfaces.map((surface): JobSurface => {
        const label = several ? `${piece.name}.${surface.name}` : surface.name;
        return { label, piece, pieces: 1, surface };
      }),
    );
  const found = new Map<Recipe, JobSurface[]>(recipes.map((recipe) => [recipe, []]));
  if (recipes.length > MOST_PAIRED || free.length > MOST_PAIRED) return found;
  const isLeftOut = (recipe: Recipe, { piece, surface }: JobSurface): boolean =>
    !shareWord(recipe.name, piece.name) &&
    !shareWord(recipe.name, surface.name) &&
    free.some((other) => shareWord(recipe.name, other.surface.name));
  for (const each of free) {
    const recipe = recipeFor(
      each,
      recipes.filter((some) => !isLeftOut(some, each)),
    );
    if (recipe) found.get(recipe)!.push(each);
  }
  return found;
}

function recipeFor({ piece, surface }: JobSurface, recipes: readonly Recipe[]): Recipe | undefined {
  const fitting = recipes.filter(
    ({ forKinds }) => forKinds.length === 0 || forKinds.some((kind) => suits(kind, surface.substrate)),
  );
  const naming = ({ name }: { readonly name: string }): readonly Recipe[] =>
    fitting.filter((recipe) => shareWord(recipe.name, name));
  const meant = [naming(surface), naming(piece), fitting].find((some) => some.length > 0) ?? [];
  return meant.length === 1 ? meant[0] : undefined;
}

/** `brown_boards` and `board` do. */
function shareWord(one: string, other: string): boolean {
  const words = new Set(wordsOf(one));
  return wordsOf(other).some((word) => words.has(word));
}

const wordsOf = (name: string): readonly string[] =>
  name
    .split("_")
    .map((word) => word.replace(/s$/u, ""))
    .filter((word) => word.length >= 3);
