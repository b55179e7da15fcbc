/** What `-o` of `sheet`, `care` and `recipe` writes: over what such a command made before, and over nothing else. */
import path from "node:path";
import { Option } from "commander";
import { SHEET_FORMATS, type SheetFormat } from "../reports/sheet-report.ts";
import { type CliIo, UsageError } from "./io.ts";
import type { Loaded } from "./load.ts";
import { originOf } from "./own-mark.ts";

/** What is written already is replaced where a command made it and nobody has touched it since; of an empty file nothing is lost. */
export function mayReplaceMade(before: string, what: string, command: string): true | string {
  const origin = before === "" ? "own" : originOf(before);
  if (origin === "own") return true;
  const why =
    origin === "changed"
      ? `is a ${what} that has been edited since it was made`
      : `already exists and was not made by \`${command}\``;
  return `${why}, so it was not changed. Give another name, or add \`--overwrite\` to replace it`;
}

const ENDINGS: Readonly<Record<string, SheetFormat>> = {
  ".html": "html",
  ".htm": "html",
  ".md": "markdown",
  ".markdown": "markdown",
};

/** `--format` of what may go into a file. */
export const madeFormatOption = (fallback: SheetFormat = "text"): Option =>
  new Option(
    "--format <format>",
    `form of the output; by default that of the output file's ending, else ${fallback}`,
  ).choices([...SHEET_FORMATS]);

/** `-o`, with what it says in the help. */
export const outputOption = (help: string): Option => new Option("-o, --output <file>", help);

export const overwriteOption = (): Option =>
  new Option("--overwrite", "with -o: replace the file whatever is in it, unless it is a recipe");

/** The form that the ending of a file asks for. */
export const formatByEnding = (output: string | undefined, fallback: SheetFormat = "text"): SheetFormat =>
  ENDINGS[path.extname(output ?? "").toLowerCase()] ?? fallback;

/** `--overwrite` without a file to replace is a slip. */
export function refuseLoneOverwrite({
  output,
  overwrite,
}: {
  readonly output?: string;
  readonly overwrite?: true;
}): void {
  if (overwrite && output === undefined) {
    throw new UsageError("`--overwrite` goes with `-o FILE`: it says that FILE may be replaced.");
  }
}

/** What is made, with the command that makes it and a name for its file. */
const MADE = {
  sheet: { command: "sheet", file: "sheet.html" },
  "care card": { command: "care", file: "card.html" },
  "short recipe": { command: "recipe", file: "recipe.md" },
} as const;

export interface MadeFile {
  readonly output: string;
  readonly overwrite: boolean;
  /** What is written, for messages. */
  readonly what: keyof typeof MADE;
}

/** Never over a recipe, whatever is asked for: the names are too easily mixed up. */
export async function writeMade(
  io: CliIo,
  loaded: Loaded,
  { output, overwrite, what }: MadeFile,
  text: string,
): Promise<void> {
  if (output === "")
    throw new UsageError(`\`-o\` needs the name of a file, such as \`-o ${MADE[what].file}\`.`);
  const target = path.resolve(io.cwd, output);
  const isRead = loaded.analysis.files.includes(await io.files.realPath(target));
  if (isRead || loaded.analysis.files.includes(target) || path.extname(target).toLowerCase() === ".finish") {
    throw new UsageError(
      `\`${output}\` is a recipe, and the ${what} would overwrite it. Give another name after \`-o\`.`,
    );
  }
  const failed = await io.files.write(target, text, overwrite ? () => true : mayReplace(what));
  if (failed) throw new UsageError(`\`${output}\` ${failed.reason}.`);
}

const mayReplace =
  (what: MadeFile["what"]) =>
  (before: string): true | string =>
    mayReplaceMade(before, what, MADE[what].command);
