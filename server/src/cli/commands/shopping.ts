/** `shopping`: what to buy for several jobs together. */

import { jobPaper } from "../../core/totals/paper.ts";
import { unitsForAll } from "../../core/units-told.ts";
import {
  type ShoppingReport,
  shoppingCsv,
  shoppingJson,
  shoppingMarkdown,
  shoppingText,
} from "../../reports/shopping-report.ts";
import { alsoNeeded } from "../../views/also-needed.ts";
import { shoppingList } from "../../views/shopping-list.ts";
import {
  type AddCommand,
  askedJobs,
  type CommandContext,
  formatOption,
  inputNameOption,
  jobOption,
  PATHS,
  readAlsoOption,
  todayOption,
  unitsOption,
} from "../command-context.ts";
import { type ExitStatus, warn } from "../io.ts";
import { type LoadOptions, load } from "../load.ts";
import { statusOf } from "./totals.ts";

const FORMATS = {
  text: shoppingText,
  json: shoppingJson,
  csv: shoppingCsv,
  markdown: shoppingMarkdown,
} satisfies Readonly<Record<string, (report: ShoppingReport) => string>>;

interface ShoppingOptions extends LoadOptions {
  readonly format: keyof typeof FORMATS;
  readonly job?: readonly string[];
}

export const addShopping: AddCommand = (program, ctx) => {
  program
    .command("shopping")
    .summary("what to buy for several jobs together")
    .description(
      "Adds up the litres of all jobs by material, takes off what is on hand, and chooses the cheapest cans for all of " +
        "them together. Abrasive paper is added as an estimate, in the text and the checklist.",
    )
    .argument("[paths...]", PATHS)
    .addOption(jobOption())
    .addOption(formatOption(Object.keys(FORMATS)))
    .addOption(todayOption())
    .addOption(unitsOption())
    .addOption(readAlsoOption())
    .addOption(inputNameOption())
    .action(async (paths: string[], options: ShoppingOptions) =>
      ctx.finish(await shopping(ctx, paths, options)),
    );
};

async function shopping(
  { io }: CommandContext,
  paths: readonly string[],
  options: ShoppingOptions,
): Promise<ExitStatus> {
  const loaded = await load(io, paths, { ...options, withProject: true });
  const jobs = askedJobs(loaded, options.job);
  const results = jobs.map(({ result }) => result);
  if (results.length === 0 && loaded.asked.length > 0) {
    warn(io, "These files have no jobs to buy for. A job begins with `job NAME {`.");
  }
  const baskets = shoppingList(results);
  if (baskets.length > 1) {
    const names = baskets.map(({ currency }) => currency ?? "one that is not stated");
    warn(io, `The shops have several currencies, so there is a list for each: ${names.join(", ")}.`);
  }
  const runs = results.flatMap((result) => result.runs);
  const report: ShoppingReport = {
    baskets,
    paper: jobPaper(runs),
    also: alsoNeeded(runs),
    label: loaded.label,
    units: unitsForAll(
      loaded.analysis.units,
      results.map(({ job }) => job.file),
    ),
  };
  // A sum over nothing tells people nothing; other programs get their empty list.
  if (results.length > 0 || options.format !== "text") io.stdout.write(FORMATS[options.format](report));
  return statusOf({ io }, loaded, { what: "list", jobs: options.job && jobs });
}
