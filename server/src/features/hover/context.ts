/**
 * What the cards of hover share: the text around the cursor, its scope, and the jobs of the open files.
 */
import type { NameUse } from "../../../../grammar/src/names.ts";
import type { Location } from "../../../../grammar/src/walk.ts";
import type { Checker } from "../../core/check.ts";
import { figuresIn, type ShownFigures } from "../../core/measure/shown-figures.ts";
import type { Recipe } from "../../core/model/model.ts";
import type { ProgramDeclaration, Scope } from "../../core/model/program.ts";
import type { FileId, Place } from "../../core/place.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { unitsFor } from "../../core/units-told.ts";
import type { FileFinding } from "../../views/places/file-finding.ts";

export interface HoverContext {
  readonly checker: Checker;
  readonly file: FileId;
  readonly scope: Scope;
  readonly declaration: ProgramDeclaration;
  readonly location: Location;
  /** The name under the cursor, with the part it plays. */
  readonly use?: NameUse;
  /** The findings of a file where they have been worked out: a hover waits for none. */
  readonly findingsAtHand: (file: FileId) => readonly FileFinding[] | undefined;
}

/** Figures as they are told in the file at the cursor. Workings stay in the units that they are worked out in. */
export const figuresHere = ({ checker, file }: HoverContext): ShownFigures =>
  figuresIn(unitsFor(checker, file));

/** The recipe in which the cursor stands. */
export function recipeAround(ctx: HoverContext): Recipe | undefined {
  const { model } = ctx.declaration.lowered;
  return model?.kind === "recipe" ? model : undefined;
}

/** Every job of the open files; hovers show what a line comes to in each. */
export function allJobs(checker: Checker): readonly JobResult[] {
  return [...checker.program.files.keys()].flatMap((file) => checker.jobs(file));
}

/** Whether a place is a statement of the declaration at the cursor. */
export const isHere = (ctx: HoverContext, place: Place, span: { readonly start: number }): boolean =>
  place.file === ctx.file &&
  place.declaration === ctx.declaration.tree.key &&
  place.span.start === span.start;
