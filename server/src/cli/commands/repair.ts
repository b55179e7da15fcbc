/** `repair`: the recipes that put right what the record of a job says went wrong. */

import { applyChanges } from "../../../../grammar/src/format.ts";
import { shownText } from "../../escape/shown-text.ts";
import { placeOfRepairs, type Repair, repairsOf } from "../../features/repair-to-write.ts";
import {
  type AddCommand,
  type AskedJob,
  askedJobs,
  type CommandContext,
  inputNameOption,
  jobOption,
  readAlsoOption,
} from "../command-context.ts";
import { type CliIo, type ExitStatus, UsageError, warn } from "../io.ts";
import { type Loaded, type LoadOptions, load } from "../load.ts";

interface RepairOptions extends LoadOptions {
  readonly job?: readonly string[];
  readonly write?: true;
}

export const addRepair: AddCommand = (program, ctx) => {
  program
    .command("repair")
    .summary("recipes that put right what went wrong by the record")
    .description(
      "Prints a recipe for each trouble that the record of a job names, such as `trouble blush`: the one that the " +
        "editor offers on that line. Read it, change it, and apply it where it belongs. With `--write` it is added below its " +
        "job; a recipe that the file has already is left as it is.",
    )
    .argument("<file>", "the file of the job")
    .addOption(jobOption())
    .option("--write", "add the recipes to the file, each below its job")
    .addOption(readAlsoOption())
    .addOption(inputNameOption())
    .action(async (file: string, options: RepairOptions) => ctx.finish(await repair(ctx, file, options)));
};

async function repair({ io }: CommandContext, file: string, options: RepairOptions): Promise<ExitStatus> {
  if (options.write && file === "-")
    throw new UsageError("`--write` needs a file: standard input cannot be written to.");
  const loaded = await load(io, [file], { ...options, withProject: true });
  if (loaded.asked.length > 1)
    throw new UsageError(`\`${file}\` is several files. Name the file of the job.`);
  const jobs = askedJobs(loaded, options.job);
  const names = new Set(loaded.asked.flatMap(({ path }) => recipesIn(loaded, path)));
  const found = jobs.map((job) => ({ job, repairs: repairsFor(job, names) }));
  const known = found.flatMap(({ repairs }) => repairs.filter(({ isThere }) => isThere));
  for (const { name } of options.write ? known : [])
    io.stderr.write(`\`${shownText(name)}\` is in the file already and is left as it is.\n`);
  const all = found.flatMap(({ repairs }) => repairs);
  if (all.length === 0) {
    if (loaded.asked.length > 0)
      warn(
        io,
        `No coat of \`${file}\` has a trouble in its record. A line of the record says \`trouble blush\`.`,
      );
    return loaded.complete ? 0 : 2;
  }
  if (!options.write) {
    io.stdout.write(all.map(({ lines }) => `${lines.map(shownText).join("\n")}\n`).join("\n"));
    return loaded.complete ? 0 : 2;
  }
  const failure = await write(io, loaded, found);
  if (failure !== undefined) warn(io, failure);
  return failure === undefined && loaded.complete ? 0 : 2;
}

interface Named extends Repair {
  readonly name: string;
  /** The file has a recipe of this name. */
  readonly isThere: boolean;
}

const recipesIn = ({ analysis }: Loaded, file: string): readonly string[] =>
  analysis.symbols(file).flatMap(({ kind, name }) => (kind === "recipe" ? [name] : []));

/** Those of one job, each name once; `names` are those of the recipes in the file. */
function repairsFor({ result }: AskedJob, names: ReadonlySet<string>): readonly Named[] {
  const byName = new Map(
    repairsOf(result.runs).map((each) => {
      const name = /^recipe (\S+)/u.exec(each.lines[0]!)![1]!;
      return [name, { ...each, name, isThere: names.has(name) }] as const;
    }),
  );
  return [...byName.values()];
}

/** Why the file was not written, as a sentence; undefined when it was, or had not to be. */
async function write(
  io: CliIo,
  { analysis, asked }: Loaded,
  found: readonly { readonly job: AskedJob; readonly repairs: readonly Named[] }[],
): Promise<string | undefined> {
  const [{ path, label }] = asked as readonly [Loaded["asked"][number]];
  const { tree, byKey } = analysis.program.files.get(path)!;
  const fresh = found.flatMap(({ job, repairs }) =>
    repairs.flatMap((each) => (each.isThere ? [] : [{ ...each, job }])),
  );
  // Two jobs may need the same one.
  const seen = new Set<string>();
  const once = fresh.filter(({ name }) => {
    const isFirst = !seen.has(name);
    seen.add(name);
    return isFirst;
  });
  if (once.length === 0) return undefined;
  const changes = once.map(({ job, lines }) => {
    const { offset, written } = placeOfRepairs(tree, byKey.get(job.result.job.declaration)!.tree);
    return { span: { start: offset, end: offset }, text: written(lines) };
  });
  const read = await io.files.read(path);
  if ("reason" in read) return `\`${label}\` ${read.reason}.`;
  if (read.text !== tree.text) return `\`${label}\` has changed meanwhile and is left as it is. Try again.`;
  const failure = await io.files.replace(path, read, applyChanges(tree.text, changes));
  if (failure) return `\`${label}\` ${failure.reason}.`;
  io.stdout.write(once.map(({ name }) => `${shownText(name)}\n`).join(""));
  const [many, apply] =
    once.length === 1
      ? ["1 recipe", "Apply it where it belongs"]
      : [`${once.length} recipes`, "Apply them where they belong"];
  io.stderr.write(`${many} added to \`${shownText(label)}\`. ${apply}.\n`);
  return undefined;
}
