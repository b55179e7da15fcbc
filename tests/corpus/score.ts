/**
 * How well the program agrees with the corpus, per rule and over all, as precision and recall, with every
 * disagreement by file and line. Run by `npm run corpus`. Nothing here fails: it prints, and people judge.
 */
import { type Case, disagreements, isSound, type Mark, readCorpus } from "./cases.ts";

interface Tally {
  hits: number;
  misses: number;
  alarms: number;
}

const nought = (): Tally => ({ hits: 0, misses: 0, alarms: 0 });

const share = (part: number, rest: number): string =>
  part + rest === 0 ? "-" : (part / (part + rest)).toFixed(3);

const row = (name: string, tally: Tally): string =>
  [
    name.padEnd(32),
    String(tally.hits).padStart(5),
    String(tally.misses).padStart(8),
    String(tally.alarms).padStart(8),
    share(tally.hits, tally.alarms).padStart(11),
    share(tally.hits, tally.misses).padStart(8),
  ].join("");

function tallies(cases: readonly Case[]): ReadonlyMap<string, Tally> {
  const byRule = new Map<string, Tally>();
  const of = (mark: Mark): Tally => {
    const tally = byRule.get(mark.rule) ?? nought();
    byRule.set(mark.rule, tally);
    return tally;
  };
  for (const one of cases) {
    const { misses, alarms } = disagreements(one);
    for (const mark of one.expected) of(mark).hits += 1;
    for (const mark of misses) {
      of(mark).misses += 1;
      of(mark).hits -= 1;
    }
    for (const mark of alarms) of(mark).alarms += 1;
  }
  return byRule;
}

const cases = readCorpus();
const byRule = tallies(cases);
const total = nought();
for (const tally of byRule.values()) {
  total.hits += tally.hits;
  total.misses += tally.misses;
  total.alarms += tally.alarms;
}
const silent = cases.filter((one) => one.expected.length === 0).length;
const sound = cases.filter(isSound).length;

console.log(
  `${cases.length} cases, ${sound} of them sound: ${silent} without a mark, the others with hints only\n`,
);
console.log(`${"rule".padEnd(32)} hits  misses  alarms  precision  recall`);
for (const [rule, tally] of [...byRule].sort(([a], [b]) => a.localeCompare(b))) console.log(row(rule, tally));
console.log(row("all", total));
for (const one of cases) {
  const { misses, alarms } = disagreements(one);
  for (const mark of misses) console.log(`\nmissed       ${mark.file}:${mark.line}  ${mark.rule}`);
  for (const mark of alarms)
    console.log(`\nfalse alarm  ${mark.file}:${mark.line}  ${mark.rule}\n             ${mark.message}`);
}
