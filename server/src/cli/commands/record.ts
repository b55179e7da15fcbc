/** `record`: writes what was ticked on a sheet into the record of its job. */

import path from "node:path";
import { applyChanges } from "../../../../grammar/src/format.ts";
import { newlineOf } from "../../../../grammar/src/walk.ts";
import { placeOfRecords } from "../../core/record/record-lines.ts";
import { shownText } from "../../escape/shown-text.ts";
import type { Analysis } from "../../features/types.ts";
import {
  type ReadTicks,
  readTicks,
  recordedSteps,
  recordOf,
  type TickedLine,
  type TickedRow,
  type Ticks,
} from "../../views/sheet/ticks.ts";
import { changeText } from "../change-text.ts";
import { type AddCommand, type CommandContext, outputColours, readAlsoOption } from "../command-context.ts";
import { type CliIo, type ExitStatus, UsageError, warn } from "../io.ts";
import { analystOf, type LoadOptions, type ReadFile, readAsked } from "../load.ts";

interface RecordOptions extends LoadOptions {
  readonly ticks: string;
  readonly diff?: true;
}

export const addRecord: AddCommand = (program, ctx) => {
  program
    .command("record")
    .summary("write what was ticked on a sheet into the record of its job")
    .description(
      "Takes the text that *Copy what is done* of an HTML sheet gives, and adds a `done` line to the job for what is not " +
        "recorded yet. Nothing else is changed. Ticks of steps that the job does not have any more are told and left out, " +
        "and the exit status is then 1.",
    )
    .argument("<file>", "the file of the job")
    .requiredOption("--ticks <file>", "the copied text; - is standard input")
    .option("--diff", "print what would be added, and change nothing")
    .addOption(readAlsoOption())
    .action(async (file: string, options: RecordOptions) => ctx.finish(await record(ctx, file, options)));
};

async function record({ io }: CommandContext, file: string, options: RecordOptions): Promise<ExitStatus> {
  const ticks = await ticksIn(io, options.ticks);
  const asked = await readAsked(io, [file], options);
  for (const problem of asked.problems) warn(io, problem);
  const [recipe, ...others] = asked.files;
  if (others.length > 0) throw new UsageError(`\`${file}\` is several files. Name the file of the job.`);
  if (!recipe) return 2;
  const analysisOf = async (text: string): Promise<Analysis> =>
    (await analystOf(asked, [{ ...recipe, text }], [])).analysis();
  const told: string[] = ticks.unread.map((line) => `No line of a sheet: ${line}`);
  let text = recipe.text;
  const added: string[] = [];
  for (const sheet of ticks.sheets) {
    const outcome = await withTicks(text, sheet, recipe.path, analysisOf);
    if (!outcome) {
      told.push(
        `\`${recipe.label}\` has no job with this sheet${sheet.rows.length > 0 ? `: ${sheet.rows.map(rowText).join("; ")}` : ""}`,
      );
      continue;
    }
    ({ text } = outcome);
    added.push(...outcome.added);
    told.push(...outcome.told);
  }
  for (const line of told) warn(io, `Not recorded. ${shownText(line)}`);
  for (const went of ticks.sheets.flatMap((sheet) => (sheet.went === "" ? [] : [sheet.went])))
    io.stderr.write(`As it went, for a note of the job: ${shownText(went)}\n`);
  const failure = await tell(io, { recipe, text, added, isDiff: options.diff === true });
  if (failure !== undefined) warn(io, failure);
  if (failure !== undefined || asked.problems.length > 0) return 2;
  return told.length > 0 ? 1 : 0;
}

async function ticksIn(io: CliIo, from: string): Promise<ReadTicks> {
  const read = from === "-" ? await io.readInput() : await io.files.read(path.resolve(io.cwd, from));
  const name = from === "-" ? "standard input" : `\`${from}\``;
  if ("reason" in read) throw new UsageError(`${name} ${read.reason}. ${WHAT_IT_IS}`);
  const ticks = readTicks(read.text);
  if (ticks.sheets.length === 0)
    throw new UsageError(
      `${name} is not what a sheet copies, which begins with \`finishwright-ticks 2\` and the fingerprint of the job. ${WHAT_IT_IS}`,
    );
  return ticks;
}

const WHAT_IT_IS =
  "Tick what is done on the HTML sheet, press *Copy what is done*, and save what it copied as a file, or give `-` and paste it.";

interface Outcome {
  readonly text: string;
  readonly added: readonly string[];
  /** Why something was left out. */
  readonly told: readonly string[];
}

/** Undefined where the file has no job of this sheet. */
async function withTicks(
  text: string,
  ticks: Ticks,
  file: string,
  analysisOf: (text: string) => Promise<Analysis>,
): Promise<Outcome | undefined> {
  const analysis = await analysisOf(text);
  const before = jobOf(analysis, file, ticks.job);
  if (!before) return undefined;
  const { lines, stale, unticked } = recordOf(ticks, before.sheet, before.result);
  const told = [
    ...stale.map((row) => `The job has no such step now: ${rowText(row)}`),
    ...unticked.map((row) => `A note without a tick: ${rowText(row)}`),
  ];
  // A line is read as the next step of its kind: only what counts for the step that was ticked stays.
  const written = withLines(analysis, file, before.result.job.declaration, lines);
  if (written === undefined)
    return { text, added: [], told: [...told, "The job has no closing brace to write above."] };
  const after = jobOf(await analysisOf(written), file, ticks.job);
  const counts = after ? recordedSteps(after.sheet, after.result) : () => false;
  const kept = lines.filter(({ steps }) => steps.every(counts));
  const lost = lines.filter((line) => !kept.includes(line));
  return {
    text: withLines(analysis, file, before.result.job.declaration, kept) ?? text,
    added: kept.map((line) => line.text),
    told: [...told, ...lost.map((line) => `It would count for another step: ${line.text}`)],
  };
}

function jobOf(analysis: Analysis, file: string, fingerprint: string) {
  const sheet = analysis
    .sheets(file)
    .find(({ kind, bench }) => kind === "job" && bench.fingerprint === fingerprint);
  const result = sheet && analysis.jobs(file).find(({ job }) => job.name === sheet.name);
  return result && { sheet, result };
}

function withLines(
  analysis: Analysis,
  file: string,
  declaration: string,
  lines: readonly TickedLine[],
): string | undefined {
  const found = analysis.program.files.get(file)!;
  const { text } = found.tree;
  if (lines.length === 0) return text;
  const tree = found.byKey.get(declaration)?.tree;
  const place = tree && placeOfRecords(tree, newlineOf(text));
  if (!place) return undefined;
  const { offset, before, after, end } = place;
  const added = lines.map((line) => `${before}${line.text}${after}`).join("") + end;
  return applyChanges(text, [{ span: { start: offset, end: offset }, text: added }]);
}

const rowText = ({ name, at, note }: TickedRow): string =>
  [name === "" ? "a step" : name, at?.replace("T", " ") ?? "", note].filter((part) => part !== "").join(", ");

/** Why the file was not written, as a sentence; undefined when it was, or had not to be. */
async function tell(
  io: CliIo,
  {
    recipe,
    text,
    added,
    isDiff,
  }: {
    readonly recipe: ReadFile;
    readonly text: string;
    readonly added: readonly string[];
    readonly isDiff: boolean;
  },
): Promise<string | undefined> {
  if (added.length === 0) {
    io.stderr.write("Nothing new to record.\n");
    return undefined;
  }
  if (isDiff) {
    io.stdout.write(
      changeText(recipe.label, recipe.text, text, { isTTY: io.stdout.isTTY, colours: outputColours(io) }),
    );
    return undefined;
  }
  const read = await io.files.read(recipe.path);
  if ("reason" in read) return `\`${recipe.label}\` ${read.reason}.`;
  if (read.text !== recipe.text)
    return `\`${recipe.label}\` has changed meanwhile and is left as it is. Try again.`;
  const failure = await io.files.replace(recipe.path, read, text);
  if (failure) return `\`${recipe.label}\` ${failure.reason}.`;
  io.stdout.write(added.map((line) => `done ${shownText(line)}\n`).join(""));
  io.stderr.write(
    `${added.length === 1 ? "1 line" : `${added.length} lines`} added to \`${shownText(recipe.label)}\`.\n`,
  );
  return undefined;
}
