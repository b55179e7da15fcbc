/** Runs the property tests alone, each with so many times its usual inputs; see `run.ts`. */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { defineConfig, mergeConfig } from "vitest/config";
import usual from "../vitest.config.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

const usesProperties = (file: string): boolean =>
  readFileSync(path.join(ROOT, file), "utf8").includes('import fc from "fast-check"');

export default mergeConfig(
  { ...usual, test: { ...usual.test, include: [] } },
  defineConfig({
    test: { include: globSync("tests/*/**/*.test.ts", { cwd: ROOT }).filter(usesProperties) },
    resolve: {
      alias: [
        { find: /^fast-check$/u, replacement: fileURLToPath(new URL("more-runs.ts", import.meta.url)) },
      ],
    },
  }),
);
