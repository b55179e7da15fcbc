/**
 * `npm run test:long`: what `npm test` has no time for, one after the other: all properties with many more inputs and
 * another seed, the walk along the remedies from every start, every new recipe, and an attack.
 *
 * `--times 10` is how many times its usual inputs a property gets, `--seed 1` where they begin, `--minutes 10` how long the
 * attack takes. A failure of one part does not keep the others from running. It ends with 1 if any has failed. With what is usual here it takes about an hour.
 */
import { spawnSync } from "node:child_process";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

const { values } = parseArgs({
  options: {
    times: { type: "string", default: "10" },
    seed: { type: "string", default: "1" },
    minutes: { type: "string", default: "10" },
  },
});
const { times, seed, minutes } = values;
for (const [name, value] of Object.entries(values))
  if (!(Number(value) > 0)) throw new Error(`--${name} takes a number above 0, and got "${value}".`);

const VITEST = "node_modules/vitest/vitest.mjs";
const PARTS: Readonly<Record<string, readonly string[]>> = {
  [`properties, ${times} times their inputs, seed ${seed}`]: [
    VITEST,
    "run",
    "--config",
    "tests/long/vitest.config.ts",
  ],
  "where the remedies end, from every start": ["tests/rules/all-ends.ts"],
  "new recipes, for every combination of answers": ["tests/starter/all-answers.ts"],
  [`an attack of ${minutes} min, seed ${seed}`]: [
    "tests/attack/attack.ts",
    "--minutes",
    minutes,
    "--seed",
    seed,
  ],
};

const results = Object.entries(PARTS).map(([what, command]) => {
  console.log(`\n${what} …`);
  const { status } = spawnSync(process.execPath, command, {
    cwd: ROOT,
    stdio: "inherit",
    env: { ...process.env, LONG_TIMES: times, LONG_SEED: seed },
  });
  return { what, isPassed: status === 0 };
});

console.log("");
for (const { what, isPassed } of results) console.log(`${isPassed ? "passed" : "FAILED"}: ${what}`);
if (results.some(({ isPassed }) => !isPassed)) process.exitCode = 1;
