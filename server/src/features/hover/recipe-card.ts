import { t, translated } from "../../../../grammar/src/translate.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import type { Recipe } from "../../core/model/model.ts";
import { andList } from "../../core/model/suggest.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { JobSurface } from "../../core/surface/job-surfaces.ts";
import type { Moment } from "../../core/surface/state.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { parameterText } from "../../views/parameter-text.ts";
import type { Portion } from "../../views/sums/portion-sums.ts";
import { bullets, code, docText, firstFew, heading, paragraphs } from "../markdown.ts";
import { portionBullets } from "./apply-card.ts";
import { allJobs, type HoverContext } from "./context.ts";

export function recipeCard(ctx: HoverContext, recipe: Recipe): string {
  const run = ctx.checker.assumed(recipe);
  const count = (op: string): number => run.moments.filter(({ action }) => action.op === op).length;
  const all = allJobs(ctx.checker);
  const jobs = all.filter(({ runs }) =>
    runs.some((each) => each.applied.some((applied) => applied.recipe === recipe)),
  );
  return paragraphs(
    heading(recipe.name, recipe.title, t`a recipe`),
    `\`\`\`finish\n${signature(recipe)}\n\`\`\``,
    docText(recipe.docs),
    bullets([
      recipe.forKinds.length > 0 ? t`for ${recipe.forKinds.map(translated).join(", ")}` : t`for any`,
      [stepsText(count("step")), coatsText(count("layer")), waitCount(count("wait"))].join(", "),
      waitsText(run.moments),
      jobs.length > 0
        ? t`applied by ${firstFew(jobs, ({ job }) => code(job.name)).join(", ")}`
        : withoutJob(ctx.checker.meantFor(recipe) ?? []),
    ]),
    portionBullets(portionsOf(all, recipe), true),
  );
}

/** Where it is clear what a recipe is for, it is judged there all the same (`core/surface/pairs.ts`). */
const withoutJob = (surfaces: readonly JobSurface[]): string =>
  surfaces.length === 0
    ? t`no job here applies it`
    : t`no job here applies it; it is checked on ${andList(
        firstFew(surfaces, ({ piece, surface }) => t`${code(surface.name)} of ${code(piece.name)}`),
      )}, which it seems to be for`;

/** What the jobs do by this recipe, also where another one follows it. */
const portionsOf = (results: readonly JobResult[], recipe: Recipe): readonly Portion[] =>
  results.flatMap((result) =>
    result.runs.flatMap((run): readonly Portion[] => {
      const moments = run.moments.filter(({ action }) =>
        action.frames.some(
          ({ file, declaration }) => file === recipe.file && declaration === recipe.declaration,
        ),
      );
      return moments.length > 0 ? [{ result, run, moments }] : [];
    }),
  );

/** `waits of 12 h + 20 h = 32 h by the labels`: those whose length is known without a job. */
function waitsText(moments: readonly Moment<Action>[]): string | undefined {
  const waits = moments.flatMap(({ action, before, after }) => {
    const hours = after.clock.hours - before.clock.hours;
    return action.op === "wait" && hours > 0 ? [hours] : [];
  });
  if (waits.length === 0) return undefined;
  const sum = waits.length > 1 ? `${waits.map(formatDuration).join(" + ")} = ` : "";
  const total = formatDuration(waits.reduce((all, hours) => all + hours, 0));
  const isOpen = (moments.at(-1)?.after.clock.unknown ?? 0) > 0;
  return isOpen
    ? t`waits of at least ${sum}${total} by the labels; the rest depends on the arguments`
    : t`waits of ${sum}${total} by the labels`;
}

const stepsText = (count: number): string => (count === 1 ? t`${count} step` : t`${count} steps`);
const coatsText = (count: number): string => (count === 1 ? t`${count} coat` : t`${count} coats`);
const waitCount = (count: number): string => (count === 1 ? t`${count} wait` : t`${count} waits`);

/** `recipe hard_clear(clear: material, coats: number = 3)` */
export function signature(recipe: Recipe): string {
  return `recipe ${recipe.name}(${recipe.parameters.map((p) => parameterText(recipe, p)).join(", ")})`;
}
