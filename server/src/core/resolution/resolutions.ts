/** The resolutions of one program: each declaration is resolved when it is first asked for, by whoever works with it. */
import type { Asking, Owner, ProgramView } from "../memory/memory.ts";
import type { Job, Recipe } from "../model/model.ts";
import type { Program, ProgramDeclaration } from "../model/program.ts";
import type { FileId } from "../place.ts";
import { type Resolution, type ResolvedJob, type ResolvedRecipe, resolve } from "./resolve.ts";

type Recalling = Pick<Asking<ProgramView>, "recall">;

export interface Resolutions {
  of(file: FileId, declaration: ProgramDeclaration, asking: Recalling): Resolution;
  /** Of a recipe that the program does not have, one without lines. */
  recipe(recipe: Recipe, asking: Recalling): ResolvedRecipe;
  /** Of a job that the program does not have, one without calls. */
  job(job: Job, asking: Recalling): ResolvedJob;
}

/** `isKept`: whether those who ask remember what they recalled; else it is kept here, for this program. */
export function createResolutions(program: Program, isKept: boolean): Resolutions {
  const known = new Map<ProgramDeclaration, Resolution>();
  const of: Resolutions["of"] = (file, declaration, asking) => {
    const before = known.get(declaration);
    if (before) return before;
    const owner = ownerOf(file, declaration);
    const resolution = asking.recall("resolution", owner, [declaration.lowered], ({ scopeOf }) =>
      resolve(file, declaration, scopeOf(file)),
    );
    if (!isKept) known.set(declaration, resolution);
    return resolution;
  };
  const ofModel = (model: Recipe | Job, asking: Recalling): Resolution | undefined => {
    const declaration = program.files.get(model.file)?.byKey.get(model.declaration);
    return declaration?.lowered.model === model ? of(model.file, declaration, asking) : undefined;
  };
  return {
    of,
    recipe: (recipe, asking) => {
      const resolution = ofModel(recipe, asking);
      return resolution?.kind === "recipe"
        ? resolution
        : { kind: "recipe", recipe, references: [], problems: [], lines: [], defaults: new Map() };
    },
    job: (job, asking) => {
      const resolution = ofModel(job, asking);
      return resolution?.kind === "job"
        ? resolution
        : { kind: "job", job, references: [], problems: [], calls: new Map() };
    },
  };
}

/** The declaration that work is about. */
export const ownerOf = (file: FileId, { tree, lowered }: ProgramDeclaration): Owner =>
  lowered.model ?? { file, declaration: tree.key };
