/**
 * `npm run attack -- --minutes 20`: everything that a stranger's text, folder or client may do, for as long as there is
 * time, with a table at the end. The exit status is 1 when anything was found. See `options.ts` for the words behind it.
 */
import process from "node:process";
import { ATTACKS } from "./attacks.ts";
import { type Growth, measureGrowth } from "./growth.ts";
import { SHAPES } from "./growth-shapes.ts";
import { type Options, PARTS, type Part, readOptions, USAGE } from "./options.ts";
import { attackInRounds, type PartOutcome } from "./rounds.ts";
import { closingTable } from "./table.ts";

/** Shares of the time; what one part leaves over the next ones have. */
const SHARES: Readonly<Record<Part, number>> = {
  growth: 40,
  protocol: 10,
  files: 13,
  pictures: 2,
  texts: 15,
  edits: 12,
  soak: 8,
};
const ORDER: readonly Part[] = ["growth", "protocol", "files", "pictures", "texts", "edits", "soak"];

async function attack({ minutes, seed, parts }: Options): Promise<boolean> {
  console.log(`attack: ${parts.join(", ")} for ${minutes} min, seed ${seed}`);
  const end = performance.now() + minutes * 60_000;
  const outcomes: PartOutcome[] = [];
  let growth: readonly Growth[] = [];
  const wanted = ORDER.filter((part) => parts.includes(part));
  for (const [idx, part] of wanted.entries()) {
    const left = wanted.slice(idx).reduce((sum, each) => sum + SHARES[each], 0);
    const share = ((end - performance.now()) * SHARES[part]) / left;
    const until = performance.now() + share;
    const isOver = (): boolean => performance.now() > until;
    if (part === "growth") growth = await measureGrowth([...SHAPES.keys()], isOver);
    else outcomes.push(await attackInRounds(ATTACKS[part]!, seed, isOver));
  }
  const { text, isClean } = closingTable(
    outcomes.toSorted((a, b) => PARTS.indexOf(a.part as Part) - PARTS.indexOf(b.part as Part)),
    growth,
  );
  console.log(text);
  return isClean;
}

try {
  process.exitCode = (await attack(readOptions(process.argv.slice(2)))) ? 0 : 1;
} catch (error) {
  console.error(`attack: ${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`);
  process.exitCode = 2;
}
