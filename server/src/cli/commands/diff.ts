/** `diff`: what changed in meaning between two files, two folders, or revisions of a Git repository. */
import path from "node:path";
import { Option } from "commander";
import { parseFile } from "../../../../grammar/src/parse.ts";
import { changesJson } from "../../reports/changes-json.ts";
import { changesMarkdown } from "../../reports/changes-markdown.ts";
import { changesText } from "../../reports/changes-text.ts";
import { writtenText } from "../../reports/written-text.ts";
import { changesBetween } from "../../views/changes/changes.ts";
import type { Renames } from "../../views/changes/renamed.ts";
import {
  type AddCommand,
  type CommandContext,
  formatOption,
  outputColours,
  readAlsoOption,
  todayOption,
} from "../command-context.ts";
import { type GitTree, type Repository, repositoryOf } from "../git-tree.ts";
import { type CliIo, type ExitStatus, UsageError, warn } from "../io.ts";
import type { LoadOptions } from "../load.ts";
import {
  type LoadedState,
  refuseUnknownPlaces,
  revisionState,
  stateAt,
  textState,
  workingState,
} from "../states.ts";

interface DiffOptions extends LoadOptions {
  readonly format: "text" | "markdown" | "json";
  readonly exitCode?: boolean;
  readonly textconv?: boolean;
  readonly driver?: boolean;
}

export const addDiff: AddCommand = (program, ctx) => {
  program
    .command("diff")
    .summary("what changed in meaning: files, folders, Git revisions")
    .description(
      "Tells what changed for the bench: coats, waits, materials, litres, cans, cost, hours, dates, and findings that " +
        "come and go. Name two files, two folders, or one or two Git revisions and the paths to look at; with nothing " +
        "named, the working tree is compared with HEAD. What a revision uses is read from that revision.",
    )
    .argument("[what...]", "OLD NEW, or [REVISION [REVISION]] [--] [PATH...]")
    .addOption(formatOption(["text", "markdown", "json"]))
    .option("--exit-code", "end with status 1 if something changed in meaning")
    .addOption(
      new Option(
        "--textconv",
        "print what a file says, without layout and comments, for Git's `textconv`",
      ).conflicts(["driver", "exitCode"]),
    )
    .addOption(
      new Option("--driver", "take the seven arguments that Git gives to a diff driver").conflicts(
        "exitCode",
      ),
    )
    .addOption(todayOption())
    .addOption(readAlsoOption())
    .addHelpText(
      "after",
      `
Examples:
  finishwright diff                            the working tree against HEAD
  finishwright diff main -- tables             the working tree against main, in one folder
  finishwright diff main...HEAD --format markdown
  finishwright diff old/table.finish table.finish

Exit status: 0 whatever changed, 1 with --exit-code if something did, 2 wrong use or a file that cannot be read.`,
    )
    .action(async (what: string[], options: DiffOptions) => ctx.finish(await diff(ctx, what, options)));
};

async function diff(ctx: CommandContext, what: readonly string[], options: DiffOptions): Promise<ExitStatus> {
  const { io } = ctx;
  if (options.textconv) return textconv(io, what);
  const { before, after, renames } = await statesOf(ctx, what, options);
  const changes = changesBetween(before, after, renames);
  const labels = { before: before.label, after: after.label };
  switch (options.format) {
    case "json":
      io.stdout.write(changesJson(changes, labels));
      break;
    case "markdown":
      io.stdout.write(changesMarkdown(changes, labels));
      break;
    default:
      io.stdout.write(changesText(changes, labels, outputColours(io)));
  }
  for (const problem of new Set([...before.problems, ...after.problems])) warn(io, problem);
  if (!before.complete || !after.complete) return 2;
  return options.exitCode && changes.files.length > 0 ? 1 : 0;
}

async function textconv(io: CliIo, what: readonly string[]): Promise<ExitStatus> {
  const [file, ...others] = what;
  if (file === undefined || others.length > 0) throw new UsageError("`--textconv` takes one file.");
  const read = await io.files.read(path.resolve(io.cwd, file));
  if ("reason" in read) throw new UsageError(`\`${file}\` ${read.reason}.`);
  io.stdout.write(writtenText(parseFile(read.text)));
  return 0;
}

interface States {
  readonly before: LoadedState;
  readonly after: LoadedState;
  /** What Git says of them. */
  readonly renames?: Renames;
}

async function statesOf(
  { io, argv }: CommandContext,
  what: readonly string[],
  options: DiffOptions,
): Promise<States> {
  if (options.driver) return driverStates(io, what, options);
  const dashes = argv.indexOf("--");
  const paths = dashes < 0 ? undefined : what.slice(what.length - (argv.length - dashes - 1));
  if (paths === undefined && what.length === 2) {
    const kinds = [await kindOf(io, what[0]!), await kindOf(io, what[1]!)];
    if (kinds.every((kind) => kind !== "missing")) {
      if (kinds[0] !== kinds[1]) {
        throw new UsageError(
          "`diff OLD NEW` takes two files or two folders. Put `--` before paths that are to be looked at in Git.",
        );
      }
      const [old, now] = what as [string, string];
      return {
        before: await stateAt(io, old, now, options),
        after: await stateAt(io, now, old, options),
      };
    }
  }
  return revisionStates(io, await repositoryOf(io.git, io.cwd), what, paths, options);
}

async function kindOf(io: CliIo, given: string): Promise<"file" | "folder" | "missing"> {
  const kind = await io.files.kind(path.resolve(io.cwd, given));
  return kind === "file" || kind === "folder" ? kind : "missing";
}

// ---------------------------------------------------------------------------------------------------------------
// Revisions

async function revisionStates(
  io: CliIo,
  repository: Repository,
  what: readonly string[],
  paths: readonly string[] | undefined,
  options: DiffOptions,
): Promise<States> {
  const { commits, places } = await readArguments(io, repository, what, paths);
  const trees: GitTree[] = [];
  for (const commit of commits) trees.push(await repository.tree(commit));
  await refuseUnknownPlaces(io, repository, trees, places);
  const [first, second] = trees as [GitTree, GitTree?];
  const before = await revisionState(io, repository, first, places, options);
  if (!second) return { before, after: await workingState(io, repository, places, options) };
  return {
    before,
    after: await revisionState(io, repository, second, places, options),
    renames: await repository.renames(...(commits as [string, string])),
  };
}

interface Compared {
  /** One for the working tree against it, or two. */
  readonly commits: readonly string[];
  /** Where to look; never empty. */
  readonly places: readonly string[];
}

/** As Git reads them: revisions come first, and what is both a revision and a path is not guessed at. */
async function readArguments(
  io: CliIo,
  repository: Repository,
  what: readonly string[],
  paths: readonly string[] | undefined,
): Promise<Compared> {
  const commits: string[] = [];
  const before = paths === undefined ? what : what.slice(0, what.length - paths.length);
  for (const given of before) {
    const found = await commitsOf(repository, given);
    if (found === undefined) break;
    if (paths === undefined && (await io.files.kind(path.resolve(io.cwd, given))) !== "missing") {
      throw new UsageError(
        `\`${given}\` is both a revision and a path. Put \`--\` behind the revision, or before the path.`,
      );
    }
    commits.push(...found);
    if (commits.length > 2) throw new UsageError("Two revisions can be compared, not more.");
  }
  const named = before.slice(revisionsIn(before, commits));
  if (paths !== undefined && named.length > 0) {
    throw new UsageError(
      `There is no revision \`${named[0]}\`. Name a commit, a branch or a tag; paths go behind \`--\`.`,
    );
  }
  const head = commits.length > 0 ? commits : await headOf(repository);
  const places = paths ?? named;
  return { commits: head, places: places.length > 0 ? places : ["."] };
}

/** How many of the arguments the commits came from: a range names two. */
function revisionsIn(given: readonly string[], commits: readonly string[]): number {
  return commits.length === 2 && given[0]?.includes("..") ? 1 : commits.length;
}

async function headOf(repository: Repository): Promise<readonly string[]> {
  const head = await repository.commit("HEAD");
  if (head !== undefined) return [head];
  throw new UsageError(
    "This repository has no commit yet. Commit something first, or compare two files or folders.",
  );
}

/** `REV`, `A..B`, or `A...B`: B against the best common ancestor of both. */
async function commitsOf(repository: Repository, given: string): Promise<readonly string[] | undefined> {
  const range = /^(.*?)(\.{2,3})(?!\.)(.*)$/su.exec(given);
  if (range === null || (range[1] === "" && range[3] === "")) {
    const commit = await repository.commit(given);
    return commit === undefined ? undefined : [commit];
  }
  const [, from, dots, to] = range;
  const ends = [await repository.commit(from || "HEAD"), await repository.commit(to || "HEAD")];
  const [a, b] = ends;
  if (a === undefined || b === undefined) return undefined;
  return [dots === "..." ? await repository.mergeBase(a, b) : a, b];
}

// ---------------------------------------------------------------------------------------------------------------
// Git's diff driver

/** `path old-file old-hex old-mode new-file new-hex new-mode`, and two more where a file was renamed. */
async function driverStates(io: CliIo, what: readonly string[], options: DiffOptions): Promise<States> {
  const [name, oldFile, , , newFile, , newMode, newName] = what;
  if (name === undefined || oldFile === undefined || newFile === undefined || newMode === undefined) {
    throw new UsageError(
      "`--driver` takes the arguments that Git gives to a diff driver. Set it up as `git config diff.finish.command 'finishwright diff --driver --'`.",
    );
  }
  const now = path.resolve(io.cwd, newName ?? name);
  const given = path.resolve(io.cwd, name);
  // What a file used is looked for beside it where it was; a folder that is gone has moved with all that is in it.
  const old = (await io.files.kind(path.dirname(given))) === "folder" ? given : now;
  const state = async (file: string, from: string): Promise<LoadedState> => {
    // Under its other name it is no file besides.
    const apart = { ...options, isApart: (other: string) => other !== file && [old, now].includes(other) };
    if (from === "/dev/null" || from === "nul") return textState(io, file, undefined, apart);
    const read = await io.files.read(path.resolve(io.cwd, from));
    if ("reason" in read) throw new UsageError(`\`${from}\` ${read.reason}.`);
    return textState(io, file, read.text, apart);
  };
  return {
    before: await state(old, oldFile),
    after: await state(now, newFile),
    renames: new Map([[old, now]]),
  };
}
