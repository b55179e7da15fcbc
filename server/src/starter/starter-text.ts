/** The text that *New Recipe* and `finishwright new` write from five answers. */
import type { Answers, PlaceWord, UnitSystem } from "./answers.ts";
import { block } from "./block-text.ts";
import { pieceText, starterPiece } from "./piece-text.ts";
import { recipeText, starterRecipe } from "./steps-text.ts";

/**
 * A whole file in the standard layout, without a finding of the rules that is an error or a warning. With a day, as
 * `2027-03-08`, on which the work begins every step has its date.
 */
export function starterText(answers: Answers, start?: string): string {
  const piece = starterPiece(answers);
  const recipe = starterRecipe(answers);
  return `${[
    HEAD,
    `# What is finished: surfaces, wood, and what is on it now.${answers.now === "bare" ? "" : OLD}\n${pieceText(answers, piece)}`,
    `# Where and when the work is done. Waits are calculated for this air.\n${shopText(answers)}`,
    recipeText(recipe),
    `# The recipe on the piece. ${start === undefined ? "With a line `start 2027-03-08 09:00` every step gets its date." : "Every step has its date; begin another day and they follow."}\n${block(
      `job my_job "My first job"`,
      [
        ["piece", piece.name],
        ["in", "my_shop"],
        ...(start === undefined ? [] : [["start", `${start} ${OPENS}`] as const]),
        ["apply", `${recipe.name}${piece.surfaces.length > 1 ? " to all" : ""}`],
      ],
    )}`,
  ].join("\n\n")}\n`;
}

const HEAD = `# The first word of each line belongs to the notation; names, titles and figures are yours.
# Hover over a word to read what it means, and over a layer, a wait or the job for what follows from it.
# What goes on is of the usual kind: say in a \`material\` what your own label says.`;

const OLD = "\n# If you know the year it was made, say it: `built 1985`.";

const AIR: Readonly<Record<PlaceWord, Readonly<Record<UnitSystem, readonly [air: string, room: string]>>>> = {
  room: {
    metric: ["20 C, 50 % RH", "60 m3, 4 air changes/h"],
    inches: ["68 F, 50 % RH", "2100 ft3, 4 air changes/h"],
  },
  garage: {
    metric: ["14 C, 65 % RH", "60 m3, 4 air changes/h"],
    inches: ["57 F, 65 % RH", "2100 ft3, 4 air changes/h"],
  },
  workshop: {
    metric: ["18 C, 55 % RH", "150 m3, 8 air changes/h"],
    inches: ["64 F, 55 % RH", "5300 ft3, 8 air changes/h"],
  },
};

function shopText({ place, units }: Answers): string {
  const [air, room] = AIR[place][units];
  return block('shop my_shop "My shop"', [
    ["air", air],
    ["room", room],
    ["hours", `Mon to Fri ${OPENS} to 17:00`],
  ]);
}

const OPENS = "09:00";

/** The first day after another, as `2027-03-08`, on which a new shop is open: Monday to Friday. Throws a RangeError for no day. */
export function nextOpenDay(today: string): string {
  const day = new Date(`${today}T12:00:00Z`);
  do day.setUTCDate(day.getUTCDate() + 1);
  while ([SATURDAY, SUNDAY].includes(day.getUTCDay()));
  return day.toISOString().slice(0, 10);
}

const SATURDAY = 6;
const SUNDAY = 0;
