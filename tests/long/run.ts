/**
 * `npm run test:long`: what `npm test` has no time for, one after the other: all properties with many more inputs and
 * another seed, the walk along the remedies from every start, every new recipe, and an attack.
 *
 * `--times 15` is how many times its usual inputs a property gets, `--seed 1` where they begin, `--minutes 10` how long the
 * attack takes. `-- 2/5` does the second of five parts, so that it can be done bit by bit: a fifth of the files with
 * properties, and of the rest what falls to it. A failure does not keep the others from running. It says what it begins with, how
 * many there are, and what each has taken processors; it ends with 1 if any has failed.
 */
import { spawnSync } from "node:child_process";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { processorSeconds } from "../harness/processor-time.ts";
import { partOf, readPart } from "./parts.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

const { values, positionals } = parseArgs({
  options: {
    times: { type: "string", default: "15" },
    seed: { type: "string", default: "1" },
    minutes: { type: "string", default: "10" },
  },
  allowPositionals: true,
});
const { times, seed, minutes } = values;
for (const [name, value] of Object.entries(values))
  if (!(Number(value) > 0)) throw new Error(`--${name} takes a number above 0, and got "${value}".`);
const { part, of } = readPart(positionals);

interface Task {
  readonly what: string;
  readonly command: readonly string[];
}

const PROPERTIES: Task = {
  what: `properties, ${times} times their inputs, seed ${seed}`,
  command: [
    "node_modules/vitest/vitest.mjs",
    "run",
    "--config",
    "tests/long/vitest.config.ts",
    "--shard",
    `${part}/${of}`,
  ],
};
const OTHERS: readonly Task[] = [
  { what: "where the remedies end, from every start", command: ["tests/rules/all-ends.ts"] },
  { what: "new recipes, for every combination of answers", command: ["tests/starter/all-answers.ts"] },
  {
    what: `an attack of ${minutes} min, seed ${seed}`,
    command: ["tests/attack/attack.ts", "--minutes", minutes, "--seed", seed],
  },
];

const tasks = [PROPERTIES, ...partOf(OTHERS, { part, of })];
const results = tasks.map(({ what, command }, index) => {
  console.log(`\n${index + 1} of ${tasks.length}, part ${part} of ${of}: ${what} …`);
  const before = processorSeconds();
  const { status } = spawnSync(process.execPath, command, {
    cwd: ROOT,
    stdio: "inherit",
    env: { ...process.env, LONG_TIMES: times, LONG_SEED: seed },
  });
  const after = processorSeconds();
  const took =
    before === undefined || after === undefined
      ? ""
      : `, ${((after - before) / 60).toFixed(1)} minutes of the processor`;
  return `${status === 0 ? "passed" : "FAILED"}: ${what}${took}`;
});

console.log("");
for (const result of results) console.log(result);
if (results.some((result) => result.startsWith("FAILED"))) process.exitCode = 1;
