/** `totals`: what jobs take and cost. */

import { totalsJson } from "../../reports/totals-json.ts";
import { totalsText } from "../../reports/totals-text.ts";
import {
  type AddCommand,
  type AskedJob,
  askedJobs,
  type CommandContext,
  filesWithErrors,
  formatOption,
  inputNameOption,
  jobOption,
  outputColours,
  PATHS,
  readAlsoOption,
  todayOption,
  unitsOption,
} from "../command-context.ts";
import { type ExitStatus, warn } from "../io.ts";
import { type Loaded, type LoadOptions, load } from "../load.ts";

interface TotalsOptions extends LoadOptions {
  readonly format: "text" | "json";
  readonly job?: readonly string[];
}

export const addTotals: AddCommand = (program, ctx) => {
  program
    .command("totals")
    .summary("areas, litres, containers, hours, dates, fumes and cost")
    .description(
      "Adds up jobs: areas, litres, containers, hands-on and elapsed time, dates, fumes and cost. The exit status is 1 " +
        "when a file has errors, because its totals may then be wrong.",
    )
    .argument("[paths...]", PATHS)
    .addOption(jobOption())
    .addOption(formatOption(["text", "json"]))
    .addOption(todayOption())
    .addOption(unitsOption())
    .addOption(readAlsoOption())
    .addOption(inputNameOption())
    .action(async (paths: string[], options: TotalsOptions) => ctx.finish(await totals(ctx, paths, options)));
};

export async function totals(
  { io }: Pick<CommandContext, "io">,
  paths: readonly string[],
  options: TotalsOptions,
): Promise<ExitStatus> {
  const loaded = await load(io, paths, { ...options, withProject: true });
  const jobs = askedJobs(loaded, options.job);
  if (options.format === "json") {
    io.stdout.write(totalsJson(jobs.map(({ result }) => result)));
  } else {
    const shown = jobs.map((job) => ({
      ...job,
      units: loaded.analysis.units(job.result.job.file),
    }));
    io.stdout.write(totalsText(shown, outputColours(io)));
    if (jobs.length === 0 && loaded.asked.length > 0) {
      warn(io, "These files have no jobs to add up. A job begins with `job NAME {`.");
    }
  }
  return statusOf({ io }, loaded, { what: "totals", jobs: options.job && jobs });
}

type Asked = "totals" | "figures" | "plan" | "sheet" | "card" | "recipe" | "list";

/**
 * The status of a command that calculates: 2 for files that could not be read, 1 for errors in the files of its jobs, and in
 * files that these use, as far as these errors reach the figures. Each of these files is named on stderr.
 */
export function statusOf(
  { io }: Pick<CommandContext, "io">,
  loaded: Loaded,
  { what, jobs }: { readonly what: Asked; readonly jobs?: readonly AskedJob[] | undefined },
): ExitStatus {
  const files = jobs ? jobs.map(({ file }) => file) : loaded.asked.map(({ path }) => path);
  const wrong = filesWithErrors(loaded, [...new Set(files)]);
  const own = what === "totals" || what === "figures" ? "its" : "the";
  for (const { label, count, isUsed } of wrong) {
    const errors = count === 1 ? "an error" : `${count} errors`;
    const so = isUsed ? `is used here and has ${errors}, so the ${what}` : `has ${errors}, so ${own} ${what}`;
    warn(io, `\`${label}\` ${so} may be wrong: see \`finishwright check ${label}\`.`);
  }
  if (!loaded.complete) return 2;
  return wrong.length > 0 ? 1 : 0;
}
