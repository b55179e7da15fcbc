/** What runs tell of recipes and of the finish that they leave. */
import type { Recipe } from "../../core/model/model.ts";
import type { Program } from "../../core/model/program.ts";
import type { FileId, Place } from "../../core/place.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import { topCoat } from "../../core/surface/state.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";

/** Of a declaration, among those of all files. */
export const keyOf = ({
  file,
  declaration,
}: {
  readonly file: FileId;
  readonly declaration: string;
}): string => `${file}\0${declaration}`;

/** The recipe in which a line stands. */
export type RecipeAt = (place: Pick<Place, "file" | "declaration">) => Recipe | undefined;

export const recipesIn =
  (program: Program): RecipeAt =>
  ({ file, declaration }) => {
    const model = program.files.get(file)?.byKey.get(declaration)?.lowered.model;
    return model?.kind === "recipe" ? model : undefined;
  };

type Lines = Pick<SurfaceRun, "applied" | "moments"> & Partial<Pick<SurfaceRun, "recipe">>;

/** The recipes whose lines are done in a run, those that others follow among them. */
export function recipesOf(run: Lines, recipeAt: RecipeAt): ReadonlySet<Recipe> {
  const recipes = new Set(run.applied.map(({ recipe }) => recipe));
  if (run.recipe) recipes.add(run.recipe);
  for (const { action } of run.moments) {
    const recipe = recipeAt(action.place);
    if (recipe) recipes.add(recipe);
  }
  return recipes;
}

/** Of the top coat, by the line that puts it on, else by its material. */
export function sheenOf({ final }: Partial<Pick<SurfaceRun, "final">>): string | undefined {
  const coat = final?.certain ? topCoat(final) : undefined;
  return coat?.action?.sheen ?? coat?.material?.sheen?.value;
}

/** Days of 24 h from the first work to the end of the last wait; null where the text does not tell it. */
export const daysOf = (result: Pick<JobResult, "totals"> | undefined): number | null => {
  const hours = result?.totals.elapsed_h ?? null;
  return hours === null ? null : hours / 24;
};
