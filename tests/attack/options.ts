/** The words after `npm run attack --`. */

export const PARTS = ["growth", "texts", "edits", "protocol", "files", "pictures", "soak"] as const;
export type Part = (typeof PARTS)[number];

export interface Options {
  /** How long it may go on, by the clock on the wall. */
  readonly minutes: number;
  /** The first seed; every round of a part has the next one. */
  readonly seed: number;
  readonly parts: readonly Part[];
}

export const USAGE = `usage: npm run attack -- [--minutes N] [--seed N] [--only ${PARTS.join("|")}]

  --minutes N   how long to go on, 20 if not said
  --seed N      begin with this seed; the one that a failure prints does the failure again
  --only PART   only this part; may be given several times`;

/** Throws an `Error` with a message to the person on a word that is none. */
export function readOptions(args: readonly string[]): Options {
  let minutes = 20;
  let seed: number | undefined;
  const parts: Part[] = [];
  for (let at = 0; at < args.length; at += 2) {
    const [word, value] = [args[at], args[at + 1]];
    if (word === "--minutes") minutes = numberOf(word, value, Number.MIN_VALUE);
    else if (word === "--seed") seed = Math.floor(numberOf(word, value, 0));
    else if (word === "--only") parts.push(partOf(value));
    else throw new Error(`\`${word}\` is no option of this command.`);
  }
  return {
    minutes,
    seed: seed ?? Math.floor(Date.now() / 1000) % 1_000_000_000,
    parts: parts.length > 0 ? PARTS.filter((part) => parts.includes(part)) : PARTS,
  };
}

function numberOf(word: string, value: string | undefined, least: number): number {
  const number = Number(value);
  if (value === undefined || !Number.isFinite(number) || number < least) {
    throw new Error(`\`${word}\` needs a number behind it.`);
  }
  return number;
}

function partOf(value: string | undefined): Part {
  const part = PARTS.find((each) => each === value);
  if (!part) throw new Error(`\`--only\` needs one of ${PARTS.join(", ")} behind it.`);
  return part;
}
