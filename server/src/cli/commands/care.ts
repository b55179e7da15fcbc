/** `care`: a card that goes with a piece. */
import { careReport } from "../../reports/care-report.ts";
import type { SheetFormat } from "../../reports/sheet-report.ts";
import { careCards } from "../../views/care-card.ts";
import {
  type AddCommand,
  askedJobs,
  type CommandContext,
  inputNameOption,
  jobOption,
  readAlsoOption,
  todayOption,
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

interface CareOptions extends LoadOptions {
  readonly format?: SheetFormat;
  readonly job?: readonly string[];
  readonly with?: string;
  readonly output?: string;
  readonly overwrite?: true;
}

export const addCare: AddCommand = (program, ctx) => {
  program
    .command("care")
    .summary("a card that goes with a piece: dates, cleaning, repair")
    .description(
      "Prints a card for whoever takes a piece home: from when it may be used, how to clean and repair it, and what it " +
        "was finished with. Each piece of each job gets a card. It has no notes and no file names; owner, people, prices, " +
        "delivery and photos stand on it only when you ask with `--with`.",
    )
    .argument("<file>", "the file of the job")
    .addOption(jobOption())
    .addOption(withOption())
    .addOption(madeFormatOption())
    .addOption(outputOption("write the cards to this file; over a file made before, but over nothing else"))
    .addOption(overwriteOption())
    .addOption(todayOption())
    .addOption(readAlsoOption())
    .addOption(inputNameOption())
    .action(async (file: string, options: CareOptions) => ctx.finish(await care(ctx, file, options)));
};

async function care({ io }: CommandContext, file: string, options: CareOptions): Promise<ExitStatus> {
  refuseLoneOverwrite(options);
  const handedOn = handedOnOf(options.with);
  const loaded = await load(io, [file], { ...options, withProject: true });
  const jobs = askedJobs(loaded, options.job);
  const cards = jobs.flatMap(({ result }) => careCards(result, handedOn));
  const asked = { what: "card", jobs: options.job && jobs } as const;
  if (cards.length === 0) {
    if (loaded.asked.length > 0) {
      warn(
        io,
        `\`${file}\` has no job that works on a piece, so there is no card. A job says \`job NAME {\`.`,
      );
    }
    return statusOf({ io }, loaded, asked);
  }
  const format = options.format ?? formatByEnding(options.output);
  const text = careReport(cards, format);
  if (options.output === undefined) io.stdout.write(text);
  else {
    const { output, overwrite = false } = options;
    await writeMade(io, loaded, { output, overwrite, what: "care card" }, withOwnMark(text, format));
  }
  return statusOf({ io }, loaded, asked);
}
