/** Runs the property tests, each with so many times its usual inputs, and what tests leave to the long run; see `run.ts`. */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { defineConfig, mergeConfig } from "vitest/config";
import { usual } from "../vitest.config.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

/** With properties, or with a part of its work left to this run. */
const hasMore = (file: string): boolean =>
  /import fc from "fast-check"|harness\/share\.ts/u.test(readFileSync(path.join(ROOT, file), "utf8"));

export default mergeConfig(
  usual,
  defineConfig({
    test: { include: globSync("tests/*/**/*.test.ts", { cwd: ROOT }).filter(hasMore) },
    resolve: {
      alias: [
        { find: /^fast-check$/u, replacement: fileURLToPath(new URL("more-runs.ts", import.meta.url)) },
      ],
    },
  }),
);
