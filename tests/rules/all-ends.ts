/**
 * Walks from every start over all families, surfaces and wears, by the first and by the last remedies, and prints where
 * the walks end. The exit status is 1 where one of them is a dead end. Run by `npm run ends`.
 */
import {
  type Case,
  casesFrom,
  nameOf,
  ORDERS,
  STARTS,
  textOf,
  walkRemedies,
} from "../harness/walk-remedies.ts";

const starts = Object.keys(STARTS) as Case["start"][];
for (const [index, start] of starts.entries()) {
  for (const order of ORDERS) {
    console.log(`start ${index + 1} of ${starts.length}: ${start}, ${order} remedies …`);
    const ends = new Map<string, number>();
    let longest = 0;
    for (const each of casesFrom(start)) {
      const { end, steps, left } = walkRemedies(textOf(each), order);
      ends.set(end, (ends.get(end) ?? 0) + 1);
      longest = Math.max(longest, steps.length);
      if (end === "clean" || end === "unfit") continue;
      process.exitCode = 1;
      console.log(`${nameOf(each)}: ${end} at ${left.map(({ rule }) => rule).join(", ")}`);
      for (const step of steps) console.log(`  ${step}`);
    }
    const counts = [...ends].map(([end, count]) => `${count} ${end}`).join(", ");
    console.log(`${start}, ${order} remedies: ${counts}; ${longest} remedies at most`);
  }
}
