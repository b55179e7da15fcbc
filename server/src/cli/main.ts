/**
 * The command line: reads the arguments, runs a command, answers with the exit status.
 *
 * What it means is told in `reports/exit-statuses.ts`; a fault in this program is 2, and is named as one and not laid on the
 * recipe. Nothing but `io` is touched here, and no accident shows its
 * stack to the user.
 */
import { Command, CommanderError } from "commander";
import { type Fault, faultText } from "../core/internal-error.ts";
import { shownLines } from "../escape/shown-text.ts";
import { EXIT_STATUSES } from "../reports/exit-statuses.ts";
import type { AddCommand, CommandContext } from "./command-context.ts";
import { type CliIo, type ExitStatus, UsageError, warn } from "./io.ts";

/** The commands in the order of the help; each is loaded when it is asked for. */
const COMMANDS: Readonly<Record<string, () => Promise<AddCommand>>> = {
  check: async () => (await import("./commands/check.ts")).addCheck,
  format: async () => (await import("./commands/format.ts")).addFormat,
  totals: async () => (await import("./commands/totals.ts")).addTotals,
  schedule: async () => (await import("./commands/schedule.ts")).addSchedule,
  sheet: async () => (await import("./commands/sheet.ts")).addSheet,
  record: async () => (await import("./commands/record.ts")).addRecord,
  repair: async () => (await import("./commands/repair.ts")).addRepair,
  care: async () => (await import("./commands/care.ts")).addCare,
  recipe: async () => (await import("./commands/recipe.ts")).addRecipe,
  find: async () => (await import("./commands/find.ts")).addFind,
  site: async () => (await import("./commands/site.ts")).addSite,
  shopping: async () => (await import("./commands/shopping.ts")).addShopping,
  compare: async () => (await import("./commands/compare.ts")).addCompare,
  diff: async () => (await import("./commands/diff.ts")).addDiff,
  new: async () => (await import("./commands/new.ts")).addNew,
  explain: async () => (await import("./commands/explain.ts")).addExplain,
  "language-server": async () => (await import("./commands/language-server.ts")).addLanguageServer,
  completion: async () => (await import("./commands/completion.ts")).addCompletion,
  manual: async () => (await import("./commands/manual.ts")).addManual,
  demo: async () => (await import("./commands/demo.ts")).addDemo,
};

/** The command that the first word names; all of them where it names none, for the help and for suggestions. */
async function commandsFor([first = ""]: readonly string[]): Promise<readonly AddCommand[]> {
  const loaders = Object.hasOwn(COMMANDS, first) ? [COMMANDS[first]!] : Object.values(COMMANDS);
  return Promise.all(loaders.map((load) => load()));
}

const AFTER_HELP = `
Exit status:
${EXIT_STATUSES.map(([status, meaning]) => `  ${status}  ${meaning.replaceAll("\n", "\n     ")}`).join("\n")}

Examples:
  finishwright new table.finish               a recipe, out of five questions
  finishwright check                          all recipes here and below
  finishwright check table.finish --fail-on warning
  finishwright format samples
  finishwright totals table.finish --format json
  finishwright find --wood oak --sheen flat   what is flat and on oak
  finishwright explain coat-over-wax`;

/** Runs one command; `argv` without the names of Node and of the program. */
export async function run(argv: readonly string[], io: CliIo): Promise<ExitStatus> {
  let status: ExitStatus = 0;
  const faults: Fault[] = [];
  const ctx: CommandContext = {
    argv,
    io: { ...io, onFault: (fault) => faults.push(fault) },
    finish: (ended) => {
      status = ended;
    },
    wholeProgram: async () => programOf(ctx, await commandsFor([])),
  };
  const program = programOf(ctx, await commandsFor(argv));
  try {
    if (argv.length === 0) {
      io.stderr.write(program.helpInformation());
      return 2;
    }
    await program.parseAsync([...argv], { from: "user" });
    return faults.length === 0 ? status : tellFaults(faults, io);
  } catch (error) {
    return failed(error, io);
  }
}

function programOf(ctx: CommandContext, commands: readonly AddCommand[]): Command {
  const { io } = ctx;
  const program = new Command("finishwright")
    .description("Checks written furniture-finish recipes and works out what they take.")
    .version(io.version, "-V, --version", "print the version")
    .helpOption("-h, --help", "show help")
    .helpCommand("help [command]", "show help for a command")
    .showHelpAfterError("(see `finishwright --help`)")
    .addHelpText("after", AFTER_HELP)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => io.stdout.write(text),
      writeErr: (text) => io.stderr.write(shownLines(text)),
      outputError: (text, write) => write(shownLines(text).replace(/^error: /, "finishwright: ")),
      getOutHelpWidth: () => io.stdout.columns ?? 80,
      getErrHelpWidth: () => io.stderr.columns ?? 80,
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    });
  for (const add of commands) add(program, ctx);
  for (const command of program.commands) {
    command.showHelpAfterError(`(see \`finishwright ${command.name()} --help\`)`);
  }
  return program;
}

function failed(error: unknown, io: CliIo): ExitStatus {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (error instanceof UsageError) {
    warn(io, error.message);
    return 2;
  }
  warn(io, `This is a bug in Finishwright, not in your recipe: ${faultText(error)}. Please report it.`);
  return 2;
}

/** What failed in the program, each part once. */
function tellFaults(faults: readonly Fault[], io: CliIo): ExitStatus {
  const texts = new Set(faults.map(({ part, error }) => `${part} failed (${faultText(error)})`));
  for (const text of [...texts].slice(0, MOST_FAULTS)) warn(io, `${text}.`);
  if (texts.size > MOST_FAULTS) warn(io, `And ${texts.size - MOST_FAULTS} more parts failed.`);
  warn(
    io,
    "This is a bug in Finishwright, not in your recipe: not everything was checked. Please report it.",
  );
  return 2;
}

/** Further ones mostly have the same cause. */
const MOST_FAULTS = 5;
