/**
 * `format`: brings files to the one layout, where they stand.
 *
 * Names of files go to standard output, for other programs, and everything that is said about them to standard error.
 */
import { applyChanges, formatFile } from "../../../../grammar/src/format.ts";
import { parseFile } from "../../../../grammar/src/parse.ts";
import { shownLines, shownText } from "../../escape/shown-text.ts";
import type { ReadText } from "../../reading/decode-text.ts";
import type { AddCommand, CommandContext } from "../command-context.ts";
import { type AskedFile, findFiles } from "../find-files.ts";
import { type CliIo, type ExitStatus, UsageError, warn } from "../io.ts";
import { permitFor, recipesIn } from "../permits.ts";

interface FormatOptions {
  readonly check?: true;
}

/** How a file fared. */
interface Outcome {
  /** Whether its layout was another. */
  readonly isChanged: boolean;
  /** Whether lines with syntax errors were left. */
  readonly isWhole: boolean;
  /** Whether it could be read, and written where it had to be. */
  readonly isDone: boolean;
}

const FAILED: Outcome = { isChanged: false, isWhole: true, isDone: false };

export const addFormat: AddCommand = (program, ctx) => {
  program
    .command("format")
    .summary("format recipes")
    .description(
      "Formats recipes in place: indentation, columns, blanks, the plain forms of units. Their meaning does not " +
        "change. Lines with syntax errors are left as they are, and the exit status is then 1.",
    )
    .argument(
      "[paths...]",
      "files, folders or patterns; the current folder if none is given; - is standard input, written to standard output",
    )
    .option("--check", "change nothing; list the files that would change, and end with 1 if there are any")
    .action(async (paths: string[], options: FormatOptions) => ctx.finish(await format(ctx, paths, options)));
};

export async function format(
  { io }: Pick<CommandContext, "io">,
  paths: readonly string[],
  options: FormatOptions,
): Promise<ExitStatus> {
  const isCheck = options.check === true;
  if (paths.includes("-")) {
    if (paths.length > 1) throw new UsageError("`-` is standard input and stands alone, without files.");
    return statusOf([await formatInput(io, isCheck)], isCheck);
  }
  const { files, problems } = await findFiles(io.files, io.cwd, paths);
  for (const problem of problems) warn(io, problem);
  const outcomes: Outcome[] = [];
  for (const file of files) outcomes.push(await formatOne(io, file, isCheck));
  const done = outcomes.filter(({ isDone }) => isDone);
  if (done.length > 0) io.stderr.write(`${summary(done, isCheck)}\n`);
  return problems.length > 0 ? 2 : statusOf(outcomes, isCheck);
}

async function formatOne(io: CliIo, file: AskedFile, isCheck: boolean): Promise<Outcome> {
  const { path, label } = file;
  const read = await io.files.read(
    path,
    permitFor(file, recipesIn(file.foundIn === undefined ? [] : [file.foundIn])),
  );
  const laidOut = layOut(io, read, isCheck, { name: `\`${label}\``, path: ` ${label}` });
  if (laidOut === undefined || "reason" in read) return FAILED;
  if (!laidOut.isChanged) return laidOut;
  const failure = isCheck ? undefined : await io.files.replace(path, read, laidOut.text);
  if (failure !== undefined) {
    warn(io, `\`${label}\` ${failure.reason}.`);
    return FAILED;
  }
  io.stdout.write(`${shownText(label)}\n`);
  return laidOut;
}

async function formatInput(io: CliIo, isCheck: boolean): Promise<Outcome> {
  const read = await io.readInput();
  const laidOut = layOut(io, read, isCheck, { name: "standard input", path: "" });
  if (laidOut === undefined || "reason" in read) return FAILED;
  // A person looks at a terminal; a file or another program gets every byte.
  if (!isCheck && io.stdout.isTTY) io.stdout.write(shownLines(laidOut.text));
  else if (!isCheck) io.stdout.write((read.mark ?? "") + laidOut.text);
  else if (laidOut.isChanged) io.stdout.write("-\n");
  return laidOut;
}

/** The text in its layout; says what could not be read, and why. */
function layOut(
  io: CliIo,
  read: ReadText,
  isCheck: boolean,
  { name, path }: { readonly name: string; readonly path: string },
): (Outcome & { readonly text: string }) | undefined {
  if ("reason" in read) {
    warn(io, `${name} ${read.reason}.`);
    return undefined;
  }
  const { changes, leftLines } = formatFile(parseFile(read.text));
  const text = applyChanges(read.text, changes);
  if (leftLines.length > 0) {
    // They are named by where they stand when the reader looks.
    const lines = linesText(isCheck ? leftLines : formatFile(parseFile(text)).leftLines);
    const are = leftLines.length === 1 ? "is left as it is" : "are left as they are";
    const check = `\`finishwright check${path}\``;
    warn(io, `${lines} of ${name} ${are}, because of syntax errors. ${check} says what is wrong.`);
  }
  return { text, isChanged: changes.length > 0, isWhole: leftLines.length === 0, isDone: true };
}

/** `Line 3`, `Lines 3, 7 to 9 and 12`; counted from 1. */
function linesText(lines: readonly number[]): string {
  const runs: { first: number; last: number }[] = [];
  for (const line of lines) {
    const run = runs.at(-1);
    if (run?.last === line - 1) run.last = line;
    else runs.push({ first: line, last: line });
  }
  const parts = runs.map(({ first, last }) =>
    first === last ? `${first + 1}` : `${first + 1} to ${last + 1}`,
  );
  const list = parts.length === 1 ? parts[0] : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;
  return `${lines.length === 1 ? "Line" : "Lines"} ${list}`;
}

function summary(done: readonly Outcome[], isCheck: boolean): string {
  const nChanged = done.filter(({ isChanged }) => isChanged).length;
  const files = `${done.length} ${done.length === 1 ? "file" : "files"}`;
  if (nChanged === 0) return `${files}, nothing to format.`;
  if (!isCheck) return `Formatted ${nChanged} of ${files}.`;
  return `${nChanged} of ${files} would change. \`finishwright format\` formats them.`;
}

function statusOf(outcomes: readonly Outcome[], isCheck: boolean): ExitStatus {
  if (outcomes.some(({ isDone }) => !isDone)) return 2;
  return outcomes.some(({ isChanged, isWhole }) => !isWhole || (isCheck && isChanged)) ? 1 : 0;
}
