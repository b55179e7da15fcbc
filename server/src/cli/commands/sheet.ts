/** `sheet`: what a finisher pins above the bench to do a job. */
import { readPictures } from "../../reading/read-pictures.ts";
import type { PicturesOf } from "../../reports/sheet-html.ts";
import { picturesNamed } from "../../reports/sheet-pictures.ts";
import { type SheetFormat, sheetReport } from "../../reports/sheet-report.ts";
import type { Sheet } from "../../views/sheet/model.ts";
import {
  type AddCommand,
  askedJobs,
  type CommandContext,
  inputNameOption,
  jobOption,
  readAlsoOption,
  todayOption,
  unitsOption,
} from "../command-context.ts";
import { type CliIo, type ExitStatus, warn } from "../io.ts";
import { type Loaded, type LoadOptions, load, readNamedPicture } from "../load.ts";
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

interface SheetOptions extends LoadOptions {
  readonly format?: SheetFormat;
  readonly job?: readonly string[];
  readonly output?: string;
  readonly overwrite?: true;
}

export const addSheet: AddCommand = (program, ctx) => {
  program
    .command("sheet")
    .summary("a sheet for the bench: steps, amounts, dates and cautions")
    .description(
      "Prints a sheet to work from: pieces and surfaces, materials with the amounts to mix, every step with a box to " +
        "tick, waits in the shop's air, dates, safety duties, and open findings. Each job of the file gets a sheet; " +
        "recipes that no job uses get a sheet without amounts or dates. The exit status is 1 if there are errors; the " +
        "sheet is printed all the same, with the findings on top.",
    )
    .argument("<file>", "the file of the job or recipe")
    .addOption(jobOption())
    .addOption(madeFormatOption())
    .addOption(outputOption("write the sheet to this file; over a sheet made before, but over nothing else"))
    .addOption(overwriteOption())
    .addOption(todayOption())
    .addOption(unitsOption())
    .addOption(readAlsoOption())
    .addOption(inputNameOption())
    .action(async (file: string, options: SheetOptions) => ctx.finish(await sheet(ctx, file, options)));
};

async function sheet({ io }: CommandContext, file: string, options: SheetOptions): Promise<ExitStatus> {
  refuseLoneOverwrite(options);
  const loaded = await load(io, [file], { ...options, withProject: true });
  const sheets = askedSheets(loaded, options.job);
  if (sheets.length === 0) {
    if (loaded.asked.length > 0) {
      warn(io, `\`${file}\` has neither jobs nor recipes, so there is no sheet. A job says \`job NAME {\`.`);
    }
    return statusOf({ io }, loaded, { what: "sheet" });
  }
  const format = options.format ?? formatByEnding(options.output);
  const pictures = format === "html" ? await picturesOf(io, loaded, sheets) : undefined;
  const text = sheetReport(loaded.analysis, sheets, format, loaded.label, pictures);
  if (options.output === undefined) io.stdout.write(text);
  else {
    const { output, overwrite = false } = options;
    await writeMade(io, loaded, { output, overwrite, what: "sheet" }, withOwnMark(text, format));
  }
  const status = statusOf({ io }, loaded, { what: "sheet" });
  const errors = sheets.some(({ findings }) => findings.some(({ severity }) => severity === "error"));
  return status === 0 && errors ? 1 : status;
}

/** Undefined where no text names a picture: then the page may load none. */
async function picturesOf(
  io: CliIo,
  loaded: Loaded,
  sheets: readonly Sheet[],
): Promise<PicturesOf | undefined> {
  const named = picturesNamed(sheets);
  return named.length === 0
    ? undefined
    : readPictures(named, (picture) => readNamedPicture(io, loaded, picture));
}

/** All sheets of the file, or those of the jobs that are named. */
function askedSheets(loaded: Loaded, names: readonly string[] | undefined): readonly Sheet[] {
  const all = loaded.asked.flatMap((each) => loaded.analysis.sheets(each.path));
  if (!names) return all;
  const jobs = new Set(askedJobs(loaded, names).map(({ result }) => result.job.name));
  return all.filter(({ kind, name }) => kind === "job" && jobs.has(name));
}
