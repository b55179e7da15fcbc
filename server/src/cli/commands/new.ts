/** `new`: a recipe to start from, out of five answers or a classic way. */
import path from "node:path";
import { InvalidArgumentError, Option } from "commander";
import { isDate } from "../../core/measure/iso-dates.ts";
import {
  type Answers,
  type Choice,
  coatingsOn,
  looksOf,
  PIECES,
  PLACES,
  type UnitSystem,
  WOODS,
} from "../../starter/answers.ts";
import { readSize, sizeExample, sizeText } from "../../starter/size-text.ts";
import { starterText } from "../../starter/starter-text.ts";
import { TEMPLATES } from "../../starter/templates.ts";
import type { AddCommand, CommandContext } from "../command-context.ts";
import { type CliIo, type ExitStatus, UsageError } from "../io.ts";

interface NewOptions {
  readonly template?: string;
  readonly piece?: string;
  readonly size?: string;
  readonly wood?: string;
  readonly now?: string;
  readonly look?: string;
  readonly place?: string;
  readonly units?: UnitSystem;
  readonly start?: string;
}

export const addNew: AddCommand = (program, ctx) => {
  program
    .command("new")
    .summary("a recipe to start from: five questions, or a classic way")
    .description(
      "Writes a recipe that is complete and checked, to put your own names and figures in: what piece it is, what wood, " +
        "what is on it now, what it should look like and bear, and where the work is done. What no option says is asked " +
        "in a terminal. Without a file it is printed. A file that is already there is left alone.",
    )
    .argument("[file]", "the file to make, such as table.finish")
    .option("--template <name>", `a classic way, without questions: ${wordsOf(TEMPLATES)}`)
    .option("--piece <piece>", wordsOf(PIECES))
    .option(
      "--size <size>",
      "length x width x height in your units, such as 1200 x 700 x 740 mm or 48 x 28 x 29 in",
    )
    .option("--wood <wood>", wordsOf(WOODS))
    .option("--now <coating>", `what is on it now: ${wordsOf(coatingsOn("unknown"))}`)
    .option("--look <look>", `what it should look like and bear: ${wordsOf(ALL_LOOKS)}`)
    .option("--place <place>", `where the work is done: ${wordsOf(PLACES)}`)
    .addOption(
      new Option("--units <units>", "units of a usual size; those of --size count").choices([
        "metric",
        "inches",
      ]),
    )
    .option("--start <date>", "the day on which the work begins, such as 2027-03-08", readDay)
    .action(async (file: string | undefined, options: NewOptions) =>
      ctx.finish(await makeRecipe(ctx, file, options)),
    );
};

function readDay(text: string): string {
  if (!isDate(text)) throw new InvalidArgumentError("A day is year-month-day, such as 2027-03-08.");
  return text;
}

/** Everything that some piece can come to. */
const ALL_LOOKS = looksOf("oak", "wax");

const wordsOf = (list: readonly Choice[]): string => list.map(({ word }) => word).join(", ");

async function makeRecipe(
  { io }: CommandContext,
  file: string | undefined,
  { start, ...options }: NewOptions,
): Promise<ExitStatus> {
  if (file !== undefined) await refuseTaken(io, file);
  const text = starterText(
    options.template === undefined ? await answersOf(io, options) : fromTemplate(options, usualUnits(io.env)),
    start,
  );
  if (file === undefined) {
    io.stdout.write(text);
    return 0;
  }
  const failed = await io.files.write(path.resolve(io.cwd, file), text, () => TAKEN);
  if (failed) throw new UsageError(`\`${file}\` ${failed.reason}.`);
  io.stderr.write(`Wrote \`${file}\`. Next: finishwright check ${file}, then finishwright sheet ${file}.\n`);
  return 0;
}

const TAKEN = "is already there, so it was not changed. Give another name";

/** Said before anything is asked. */
async function refuseTaken(io: CliIo, file: string): Promise<void> {
  if (!/[^/\\]\.finish$/iu.test(file)) {
    throw new UsageError(
      `A recipe's name ends in \`.finish\`, and \`${file}\` does not. Try \`${file}.finish\`.`,
    );
  }
  const kind = await io.files.kind(path.resolve(io.cwd, file));
  if (kind !== "missing") throw new UsageError(`\`${file}\` ${TAKEN}.`);
}

function fromTemplate({ template, units, ...others }: NewOptions, usual: UnitSystem): Answers {
  const [other] = Object.keys(others);
  if (other !== undefined) {
    throw new UsageError(
      `\`--template\` answers every question, so leave out \`--${other}\`, or the template.`,
    );
  }
  return { ...pickedFrom(TEMPLATES, "template", template!).answers, units: units ?? usual };
}

async function answersOf(io: CliIo, options: NewOptions): Promise<Answers> {
  const ask = async <Word extends string>(
    name: "piece" | "wood" | "now" | "look" | "place",
    question: string,
    list: readonly Choice<Word>[],
  ): Promise<Word> => {
    const given = options[name];
    return given === undefined ? asked(io, name, question, list) : pickedFrom(list, name, given).word;
  };
  const piece = await ask("piece", "What piece is it?", PIECES);
  const { size, units } = await sizeOf(io, options, piece);
  const wood = await ask("wood", "What is it made of?", WOODS);
  const now = await ask("now", "What is on it now?", coatingsOn(wood));
  const look = await ask("look", "What should it look like, and bear?", looksOf(wood, now));
  const place = await ask("place", "Where is the work done?", PLACES);
  return { piece, ...(size ? { size } : {}), units, wood, now, look, place };
}

async function sizeOf(
  io: CliIo,
  { size, units = usualUnits(io.env) }: NewOptions,
  piece: Answers["piece"],
): Promise<Pick<Answers, "size" | "units">> {
  if (size !== undefined) {
    const read = readSize(size, piece);
    if ("problem" in read) throw new UsageError(`\`--size ${size}\`: ${read.problem}`);
    return read;
  }
  if (io.ask === undefined) return { units };
  for (;;) {
    const answer = await answered(
      io,
      `\nHow large is it? Write ${sizeExample(piece)}.\nNothing means ${sizeText(piece, units)} > `,
    );
    if (answer === "") return { units };
    const read = readSize(answer, piece);
    if (!("problem" in read)) return read;
    io.stderr.write(`${read.problem}\n`);
  }
}

/** Countries where furniture is measured in inches. */
const WITH_INCHES = /_(?:US|LR|MM)(?:[.@]|$)/u;

/** By the locale that a shell sets. */
const usualUnits = ({ LC_ALL, LC_MEASUREMENT, LANG }: CliIo["env"]): UnitSystem =>
  WITH_INCHES.test(LC_ALL || LC_MEASUREMENT || LANG || "") ? "inches" : "metric";

/** Asks until the answer is one of the list, by its number or its word. */
async function asked<Word extends string>(
  io: CliIo,
  name: string,
  question: string,
  list: readonly Choice<Word>[],
): Promise<Word> {
  if (io.ask === undefined) {
    throw new UsageError(
      `\`--${name}\` is missing: ${question} One of ${wordsOf(list)}. Where no terminal is, all of \`--piece\`, \`--wood\`, \`--now\`, \`--look\` and \`--place\` are needed, or \`--template\`, one of ${wordsOf(TEMPLATES)}.`,
    );
  }
  const width = Math.max(...list.map(({ word }) => word.length));
  const lines = list.map(
    ({ word, label, detail }, i) => `${String(i + 1).padStart(4)} ${word.padEnd(width)}  ${label}: ${detail}`,
  );
  for (;;) {
    const answer = await answered(io, `\n${question}\n${lines.join("\n")}\nNumber or word > `);
    const picked = list[Number(answer) - 1] ?? list.find(({ word }) => word === answer.toLowerCase());
    if (picked) return picked.word;
    io.stderr.write(`\`${answer}\` is not one of them.\n`);
  }
}

async function answered(io: CliIo, question: string): Promise<string> {
  const answer = await io.ask?.(question);
  if (answer === undefined) throw new UsageError("The questions were not answered, so nothing was written.");
  return answer.trim();
}

function pickedFrom<Picked extends Choice>(list: readonly Picked[], name: string, word: string): Picked {
  const picked = list.find((choice) => choice.word === word.toLowerCase());
  if (picked) return picked;
  throw new UsageError(`\`--${name} ${word}\` is not possible here. It takes ${wordsOf(list)}.`);
}
