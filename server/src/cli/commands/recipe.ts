/** `recipe`: a short recipe to publish. */
import type { SheetFormat } from "../../reports/sheet-report.ts";
import { shortRecipeReport } from "../../reports/short-recipe-report.ts";
import { shortRecipe } from "../../views/short-recipe.ts";
import {
  type AddCommand,
  askedJobs,
  type CommandContext,
  inputNameOption,
  jobOption,
  readAlsoOption,
} from "../command-context.ts";
import { handedOnOf, withOption } from "../handed-on.ts";
import { type ExitStatus, warn } from "../io.ts";
import { type LoadOptions, load } from "../load.ts";
import { withOwnMark } from "../own-mark.ts";
import {
  formatByEnding,
  madeFormatOption,
  outputOption,
  overwriteOption,
  refuseLoneOverwrite,
  writeMade,
} from "../write-made.ts";
import { statusOf } from "./totals.ts";

interface RecipeOptions extends LoadOptions {
  readonly format?: SheetFormat;
  readonly job?: readonly string[];
  readonly with?: string;
  readonly output?: string;
  readonly overwrite?: true;
}

export const addRecipe: AddCommand = (program, ctx) => {
  program
    .command("recipe")
    .summary("a short recipe to publish: with what and how, step by step")
    .description(
      "Prints what the pieces of a job were finished with and how, in a short form to publish beside the care card, as " +
        "Markdown. It has titles only, and no notes or file names; owner, people, prices, delivery and photos stand on it " +
        "only when you ask with `--with`.",
    )
    .argument("<file>", "the file of the job")
    .addOption(jobOption())
    .addOption(withOption())
    .addOption(madeFormatOption("markdown"))
    .addOption(outputOption("write the recipe to this file; over a file made before, but over nothing else"))
    .addOption(overwriteOption())
    .addOption(readAlsoOption())
    .addOption(inputNameOption())
    .action(async (file: string, options: RecipeOptions) => ctx.finish(await recipe(ctx, file, options)));
};

async function recipe({ io }: CommandContext, file: string, options: RecipeOptions): Promise<ExitStatus> {
  refuseLoneOverwrite(options);
  const handedOn = handedOnOf(options.with);
  const loaded = await load(io, [file], { ...options, withProject: true });
  const jobs = askedJobs(loaded, options.job);
  // The sheets of a file are put together anew each time that they are asked for.
  const sheets = new Map(
    [...new Set(jobs.map(({ file: at }) => at))].flatMap((at) =>
      loaded.analysis
        .sheets(at)
        .flatMap((sheet) => (sheet.kind === "job" ? [[`${at}\n${sheet.name}`, sheet] as const] : [])),
    ),
  );
  const recipes = jobs.flatMap(({ file: at, result }) => {
    const sheet = sheets.get(`${at}\n${result.job.name}`);
    return sheet && result.runs.length > 0 ? [shortRecipe(result, sheet, handedOn)] : [];
  });
  const asked = { what: "recipe", jobs: options.job && jobs } as const;
  if (recipes.length === 0) {
    if (loaded.asked.length > 0)
      warn(
        io,
        `\`${file}\` has no job that works on a piece, so there can be no recipe of it. A job says \`job NAME {\`.`,
      );
    return statusOf({ io }, loaded, asked);
  }
  const format = options.format ?? formatByEnding(options.output, "markdown");
  const text = shortRecipeReport(recipes, format);
  if (options.output === undefined) io.stdout.write(text);
  else {
    const { output, overwrite = false } = options;
    await writeMade(io, loaded, { output, overwrite, what: "short recipe" }, withOwnMark(text, format));
  }
  return statusOf({ io }, loaded, asked);
}
