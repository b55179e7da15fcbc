/** The card of a parameter: its type, its default, what the jobs give it, and what the lines that name it come to. */
import { t } from "../../../../grammar/src/translate.ts";
import type { Statement } from "../../../../grammar/src/tree.ts";
import type { Recipe, RecipeParameter } from "../../core/model/model.ts";
import { callsOf } from "../../core/resolution/resolve.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { parameterText, valueText } from "../../views/parameter-text.ts";
import { lineText } from "../../views/places/statement-extent.ts";
import { layerRunText } from "../../views/sums/layer-run.ts";
import type { LineRun } from "../../views/sums/line-run.ts";
import { waitRunText } from "../../views/sums/wait-run.ts";
import { bullets, code, firstFew, nested, paragraphs } from "../markdown.ts";
import { followCard } from "./apply-card.ts";
import { allJobs, type HoverContext } from "./context.ts";
import { runsOfLine } from "./runs-of-line.ts";
import { stepRunText } from "./step-card.ts";

/** `of` is the job at hand, where the cursor is in one: then only its own lines count. */
export function parameterCard(
  ctx: HoverContext,
  recipe: Recipe,
  parameter: RecipeParameter,
  of?: JobResult,
): string {
  const given = allJobs(ctx.checker).flatMap(({ job }) => {
    const declaration = ctx.checker.program.files.get(job.file)?.byKey.get(job.declaration);
    const calls = declaration ? callsOf(ctx.checker.resolution(job.file, declaration)) : [];
    return calls.flatMap((call) => {
      const argument = call.syntax.arguments.find(({ name }) => name?.text === parameter.name);
      if (call.recipe !== recipe || !argument?.value || argument.value.kind === "title") return [];
      return [t`${code(valueText(argument.value))} in ${code(job.name)}`];
    });
  });
  return paragraphs(
    `\`\`\`finish\n${parameterText(recipe, parameter)}\n\`\`\``,
    parameter.hasDefault
      ? t`A ${parameter.type} parameter of ${code(recipe.name)}.`
      : t`A ${parameter.type} parameter of ${code(recipe.name)}. It must be given.`,
    given.length > 0 ? t`Given: ${firstFew([...new Set(given)], (text) => text).join(", ")}.` : "",
    linesText(ctx, recipe, parameter, of),
  );
}

/** Lines and the surfaces of each that fit into a hover. */
const MOST_LINES = 4;
const MOST_SURFACES = 3;

/** Every line of the recipe that names the parameter, with its sums. */
function linesText(
  ctx: HoverContext,
  recipe: Recipe,
  parameter: RecipeParameter,
  of: JobResult | undefined,
): string {
  const declaration = ctx.checker.program.files.get(recipe.file)?.byKey.get(recipe.declaration);
  if (!declaration) return "";
  const { body } = declaration.tree;
  const inRecipe: HoverContext = { ...ctx, file: recipe.file, declaration };
  const { references } = ctx.checker.resolution(recipe.file, declaration);
  const statements = references.flatMap(({ role, statement, referents: [meant] }) =>
    // The name of an argument is the called recipe's, which may be this one.
    statement && role !== "argument-name" && meant?.kind === "parameter" && meant.parameter === parameter
      ? [statement]
      : [],
  );
  const lines = [...new Set(statements)].flatMap((statement) => {
    if (statement.kind === "follow") return [followCard(inRecipe, statement)];
    const runs = runsOfLine(inRecipe, statement).filter(({ result }) => !of || result === of);
    const texts = runTexts(statement, runs);
    return texts.length > 0 ? [bullets([nested(code(lineText(body, statement.span)), texts)])] : [];
  });
  return paragraphs(...firstFew(lines, (line) => line, MOST_LINES));
}

function runTexts({ kind }: Statement, runs: readonly LineRun[]): readonly string[] {
  switch (kind) {
    case "layer":
      return firstFew(runs, layerRunText, MOST_SURFACES);
    case "step":
      return firstFew(
        runs.filter(({ result }) => result),
        stepRunText,
        MOST_SURFACES,
      );
    case "wait":
      return firstFew(runs, waitRunText, MOST_SURFACES);
    default:
      return [];
  }
}
