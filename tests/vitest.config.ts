/** Runs all tests but those that need a real editor. */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { defineConfig, mergeConfig } from "vitest/config";
import { ClosingLine } from "./harness/closing-line.ts";

const ROOT = fileURLToPath(new URL("..", import.meta.url));

/** What all runs of tests have in common. */
export const usual = defineConfig({
  test: {
    root: ROOT,
    // A net for hangs, not a measure of speed. The longest test takes seconds of processor time, so that a machine may
    // have a hundred times as much to do as it has processors before this decides anything.
    testTimeout: 1_800_000,
    hookTimeout: 1_800_000,
    expect: { poll: { timeout: 1_800_000 } },
    exclude: ["tests/editor/**", "**/node_modules/**"],
    reporters: ["default", new ClosingLine()],
  },
});

/**
 * Folders whose tests change nothing outside of themselves, so that they share what is loaded: reading the program anew for
 * each of two hundred files takes minutes of the processor, and so does planning the samples.
 */
const SHARING = [
  "blind",
  "cli",
  "client",
  "core",
  "corpus",
  "escape",
  "features",
  "grammar",
  "lsp",
  "notation",
  "reading",
  "reports",
  "robustness",
  "rules",
  "starter",
  "structure",
  "views",
];

/** What measures, stubs, or has threads has a process of its own. */
const NEEDS_A_PROCESS =
  /harness\/growth\.ts|\bvi\s*\.(?:mock|hoisted|spyOn|stub|useFakeTimers)|worker_threads/u;

const isSharing = (file: string): boolean =>
  SHARING.includes(file.split(path.sep)[1]!) &&
  !NEEDS_A_PROCESS.test(readFileSync(path.join(ROOT, file), "utf8"));

const FILES = globSync("tests/**/*.test.ts", { cwd: ROOT, exclude: ["tests/editor/**"] });

export default mergeConfig(
  usual,
  defineConfig({
    test: {
      projects: [
        { extends: true, test: { name: "sharing", include: FILES.filter(isSharing), isolate: false } },
        { extends: true, test: { name: "apart", include: FILES.filter((file) => !isSharing(file)) } },
      ],
    },
  }),
);
