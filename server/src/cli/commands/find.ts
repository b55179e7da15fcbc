/** `find`: which recipes, jobs, pieces and surfaces are what is looked for. */
import path from "node:path";
import { InvalidArgumentError, Option } from "commander";
import { createLineIndex, positionAt } from "../../../../grammar/src/line-index.ts";
import type { ProgramFile } from "../../core/model/program.ts";
import { onceFor } from "../../core/once.ts";
import { foundJson } from "../../reports/found-json.ts";
import { foundText } from "../../reports/found-text.ts";
import { pathOf } from "../../reports/reported.ts";
import { findIn } from "../../views/find/find.ts";
import {
  type FamilyAsked,
  type FindQuery,
  FOUND_KINDS,
  type Found,
  type FoundKind,
} from "../../views/find/model.ts";
import {
  familyAsked,
  meantForAsked,
  type ReadWord,
  sheenAsked,
  wearAsked,
  woodAsked,
  woodNear,
} from "../../views/find/words.ts";
import {
  type AddCommand,
  type CommandContext,
  formatOption,
  inputNameOption,
  PATHS,
  readAlsoOption,
  todayOption,
} from "../command-context.ts";
import { type CliIo, type ExitStatus, UsageError, warn } from "../io.ts";
import { type Loaded, type LoadOptions, load } from "../load.ts";
import { outputOption, overwriteOption, refuseLoneOverwrite } from "../write-made.ts";

interface FindOptions extends LoadOptions {
  readonly wood?: string;
  readonly sheen?: string;
  readonly family?: readonly FamilyAsked[];
  readonly material?: readonly string[];
  readonly wear?: string;
  readonly shop?: string;
  readonly for?: string;
  readonly text?: readonly string[];
  readonly hoursAtMost?: number;
  readonly daysAtMost?: number;
  readonly costAtMost?: number;
  readonly kind?: readonly FoundKind[];
  readonly format: "text" | "json";
  readonly output?: string;
  readonly overwrite?: true;
}

export const addFind: AddCommand = (program, ctx) => {
  program
    .command("find")
    .summary("which recipes, jobs, pieces and surfaces are what you look for")
    .description(
      "Finds recipes, jobs, pieces and surfaces by what they are: `--wood oak --sheen flat` is all that was done on any oak " +
        "with a flat top coat. All that you ask for must hold together, on one surface as one job leaves it; what a text " +
        "does not tell never matches.",
    )
    .argument("[paths...]", PATHS)
    .addOption(wordOption("--wood <wood>", "the wood, or what else it is; `oak` is any oak", woodAsked))
    .addOption(
      wordOption("--sheen <sheen>", "the sheen of the top coat, in words or gloss units", sheenAsked),
    )
    .addOption(
      eachOption("--family <family>", "a kind of material that is used; `clear` is any clear", (text) =>
        wordOf(familyAsked(text)),
      ),
    )
    .addOption(
      eachOption("--material <text>", "part of the name or title of a material that is used", saidIn),
    )
    .addOption(wordOption("--wear <wear>", "the wear that it gets: hard, normal or light", wearAsked))
    .addOption(new Option("--shop <text>", "part of the name or title of the shop or room").argParser(saidIn))
    .addOption(wordOption("--for <who>", "who uses the piece: adults, children, or food", meantForAsked))
    .addOption(eachOption("--text <text>", "words in what is written of it", saidIn))
    .addOption(mostOption("--hours-at-most <hours>", "hands-on hours of the job"))
    .addOption(mostOption("--days-at-most <days>", "days from the first work to the end of the last wait"))
    .addOption(mostOption("--cost-at-most <money>", "what the job costs, in the currency of its shop"))
    .addOption(
      new Option("--kind <kind>", "only matches of this kind; may be given several times")
        .choices([...FOUND_KINDS])
        .argParser(kindsOf),
    )
    .addOption(formatOption(["text", "json"]))
    .addOption(outputOption("write the matches to this new file"))
    .addOption(overwriteOption())
    .addOption(todayOption())
    .addOption(readAlsoOption())
    .addOption(inputNameOption())
    .addHelpText(
      "after",
      `
Examples:
  finishwright find --wood oak --sheen flat
  finishwright find --family wax --hours-at-most 4 --kind recipe

Exit status: 0 something was found, 1 nothing was, 2 wrong use or a file that cannot be read.`,
    )
    .action(async (paths: string[], options: FindOptions) => ctx.finish(await find(ctx, paths, options)));
};

async function find(
  { io }: CommandContext,
  paths: readonly string[],
  options: FindOptions,
): Promise<ExitStatus> {
  refuseLoneOverwrite(options);
  const query = queryOf(options);
  if (!asksForSomething(query))
    throw new UsageError("Say what you look for, such as `--wood oak --sheen flat`.");
  const loaded = await load(io, paths, { ...options, withProject: true });
  const files = loaded.asked.map(({ path: file }) => file);
  const found = findIn(loaded.analysis, files, query);
  const place = placing(loaded);
  const text =
    options.format === "json"
      ? foundJson(found, place)
      : foundText(found, (each) => {
          const { file, line } = place(each);
          return `${file}:${line}`;
        });
  if (options.output === undefined) io.stdout.write(text);
  else await write(io, loaded, options.output, options.overwrite === true, text);
  if (!loaded.complete) return 2;
  if (found.length > 0) return 0;
  const near = woodNear(query.wood ?? "");
  warn(
    io,
    near
      ? `Nothing matches all of that, and no wood is called \`${query.wood}\`. Did you mean \`${near}\`?`
      : "Nothing matches all of that. Ask for less, or in other words.",
  );
  return 1;
}

const queryOf = ({ family, material, text, kind, for: meantFor, ...options }: FindOptions): FindQuery => {
  const { wood, sheen, wear, shop, hoursAtMost, daysAtMost, costAtMost } = options;
  const given = { wood, sheen, families: family, materials: material, wear, shop, meantFor, texts: text };
  const all = { ...given, hoursAtMost, daysAtMost, costAtMost, kinds: kind };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
};

const asksForSomething = ({ kinds: _, ...asked }: FindQuery): boolean => Object.keys(asked).length > 0;

function placing({
  analysis,
  label,
}: Loaded): (found: Found) => { readonly file: string; readonly line: number } {
  const indexOf = onceFor((file: ProgramFile) => createLineIndex(file.tree.text));
  return ({ file, offset }) => ({
    file: pathOf(label(file)),
    line: positionAt(indexOf(analysis.program.files.get(file)!), offset).line + 1,
  });
}

/** Into a new or an empty file; into another only when asked to, and never into a recipe. */
async function write(
  io: CliIo,
  { analysis }: Loaded,
  output: string,
  overwrite: boolean,
  text: string,
): Promise<void> {
  if (output === "") throw new UsageError("`-o` needs the name of a file, such as `-o found.txt`.");
  const target = path.resolve(io.cwd, output);
  const isRead = [target, await io.files.realPath(target)].some((file) => analysis.files.includes(file));
  if (isRead || path.extname(target).toLowerCase() === ".finish") {
    throw new UsageError(
      `\`${output}\` is a recipe, and the matches would overwrite it. Give another name after \`-o\`.`,
    );
  }
  const failed = await io.files.write(target, text, (before) =>
    overwrite || before === ""
      ? true
      : "already exists, so it was not changed. Give another name, or add `--overwrite` to replace it",
  );
  if (failed) throw new UsageError(`\`${output}\` ${failed.reason}.`);
}

// ---------------------------------------------------------------------------------------------------------------
// Options

function wordOf<T>(read: ReadWord<T>): T {
  if ("refusal" in read) throw new InvalidArgumentError(read.refusal);
  return read.word;
}

const wordOption = (flags: string, help: string, read: (text: string) => ReadWord<string>): Option =>
  new Option(flags, help).argParser((text: string) => wordOf(read(text)));

const eachOption = <T>(flags: string, help: string, read: (text: string) => T): Option =>
  new Option(flags, `${help}; may be given several times`).argParser(
    (text: string, before: readonly T[] | undefined) => [...(before ?? []), read(text)],
  );

function saidIn(text: string): string {
  if (text.trim() === "") throw new InvalidArgumentError("Write at least a letter of it.");
  return text;
}

const mostOption = (flags: string, help: string): Option =>
  new Option(flags, `at most: ${help}`).argParser((text: string): number => {
    if (!/^\d{1,12}(?:\.\d{1,6})?$/u.test(text.trim()))
      throw new InvalidArgumentError("Write a number, such as 10 or 7.5.");
    return Number(text);
  });

function kindsOf(text: string, before: readonly FoundKind[] | undefined): readonly FoundKind[] {
  const kind = FOUND_KINDS.find((each) => each === text);
  if (kind === undefined) throw new InvalidArgumentError(`Allowed choices are ${FOUND_KINDS.join(", ")}.`);
  return [...(before ?? []), kind];
}
