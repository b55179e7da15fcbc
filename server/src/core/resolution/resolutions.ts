/** The resolutions of one program: each declaration is resolved when it is first asked for. */
import type { Job, Recipe } from "../model/model.ts";
import type { Program, ProgramDeclaration } from "../model/program.ts";
import type { FileId } from "../place.ts";
import type { Resolution, ResolvedJob, ResolvedRecipe } from "./resolve.ts";

export interface Resolutions {
  of(file: FileId, declaration: ProgramDeclaration): Resolution;
  /** Of a recipe that the program does not have, one without lines. */
  recipe(recipe: Recipe): ResolvedRecipe;
  /** Of a job that the program does not have, one without calls. */
  job(job: Job): ResolvedJob;
}

export function createResolutions(
  program: Program,
  resolve: (file: FileId, declaration: ProgramDeclaration) => Resolution,
): Resolutions {
  const known = new Map<ProgramDeclaration, Resolution>();
  const of = (file: FileId, declaration: ProgramDeclaration): Resolution => {
    const before = known.get(declaration);
    if (before) return before;
    const resolution = resolve(file, declaration);
    known.set(declaration, resolution);
    return resolution;
  };
  const ofModel = (model: Recipe | Job): Resolution | undefined => {
    const declaration = program.files.get(model.file)?.byKey.get(model.declaration);
    return declaration?.lowered.model === model ? of(model.file, declaration) : undefined;
  };
  return {
    of,
    recipe: (recipe) => {
      const resolution = ofModel(recipe);
      return resolution?.kind === "recipe"
        ? resolution
        : { kind: "recipe", recipe, references: [], problems: [], lines: [], defaults: new Map() };
    },
    job: (job) => {
      const resolution = ofModel(job);
      return resolution?.kind === "job"
        ? resolution
        : { kind: "job", job, references: [], problems: [], calls: new Map() };
    },
  };
}
