/** The cards of a recipe and of its parameters. */
import type { Value } from "../../../../grammar/src/tree.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { quantityText } from "../../core/measure/read-quantity.ts";
import type { Recipe, RecipeParameter } from "../../core/model/model.ts";
import { allJobs, bullets, code, firstFew, type HoverContext, heading, paragraphs } from "./context.ts";

export function recipeCard(ctx: HoverContext, recipe: Recipe): string {
  const run = ctx.checker.assumed(recipe);
  const count = (op: string): number => run.moments.filter(({ action }) => action.op === op).length;
  const known = run.final.clock;
  const jobs = allJobs(ctx.checker).filter(({ runs }) =>
    runs.some((each) => each.applied.some((applied) => applied.recipe === recipe)),
  );
  return paragraphs(
    heading(recipe.name, recipe.title, "a recipe"),
    `\`\`\`finish\n${signature(recipe)}\n\`\`\``,
    recipe.docs,
    bullets([
      `for ${recipe.forKinds.join(", ") || "any"}`,
      [number(count("step"), "step"), number(count("layer"), "coat"), number(count("wait"), "wait")].join(
        ", ",
      ),
      known.hours > 0
        ? `waits of ${known.unknown > 0 ? "at least " : ""}${formatDuration(known.hours)} by the labels${known.unknown > 0 ? "; the rest depends on the arguments" : ""}`
        : undefined,
      jobs.length > 0
        ? `applied by ${firstFew(jobs, ({ job }) => code(job.name)).join(", ")}`
        : "no job here applies it",
    ]),
  );
}

const number = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? "" : "s"}`;

/** `recipe hard_clear(clear: material, coats: number = 3)` */
export function signature(recipe: Recipe): string {
  return `recipe ${recipe.name}(${recipe.parameters.map((p) => parameterText(recipe, p)).join(", ")})`;
}

export function parameterText(recipe: Recipe, { name, type }: RecipeParameter): string {
  const value = recipe.parameterSyntax.find((syntax) => syntax.name.text === name)?.default;
  return `${name}: ${type}${value ? ` = ${valueText(value)}` : ""}`;
}

const valueText = (value: Value): string => (value.kind === "name" ? value.text : quantityText(value));

/** A parameter: its type, its default, and what the jobs give it. */
export function parameterCard(ctx: HoverContext, recipe: Recipe, parameter: RecipeParameter): string {
  const given = allJobs(ctx.checker).flatMap(({ job }) =>
    job.applies.flatMap(({ syntax }) => {
      if (syntax.call?.name.text !== recipe.name) return [];
      const target = ctx.checker.scope(job.file).recipes.get(recipe.name);
      const argument = syntax.call.arguments.find(({ name }) => name?.text === parameter.name);
      if (target !== recipe || !argument?.value || argument.value.kind === "title") return [];
      return [`${code(valueText(argument.value))} in ${code(job.name)}`];
    }),
  );
  const missing = parameter.hasDefault ? "" : " It must be given.";
  return paragraphs(
    `\`\`\`finish\n${parameterText(recipe, parameter)}\n\`\`\``,
    `A ${parameter.type} parameter of ${code(recipe.name)}.${missing}`,
    given.length > 0 ? `Given: ${firstFew([...new Set(given)], (text) => text).join(", ")}.` : "",
  );
}
