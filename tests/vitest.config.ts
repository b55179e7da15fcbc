/** Runs all tests but those that need a real editor. */
import { fileURLToPath } from "node:url";
import { defineConfig, mergeConfig } from "vitest/config";
import { ClosingLine } from "./harness/closing-line.ts";

/** What all runs of tests have in common. */
export const usual = defineConfig({
  test: {
    root: fileURLToPath(new URL("..", import.meta.url)),
    // A net for hangs, not a measure of speed. The longest test takes seconds of processor time, so that a machine may
    // have a hundred times as much to do as it has processors before this decides anything.
    testTimeout: 1_800_000,
    hookTimeout: 1_800_000,
    exclude: ["tests/editor/**", "**/node_modules/**"],
    reporters: ["default", new ClosingLine()],
  },
});

/**
 * Folders whose tests change nothing outside of themselves, so that they share what is loaded: reading the program anew for
 * each of two hundred files takes minutes of the processor. What starts programs, stubs or measures has a process of its own.
 */
const SHARING = [
  "blind",
  "core",
  "corpus",
  "escape",
  "grammar",
  "notation",
  "oracles",
  "reading",
  "reports",
  "rules",
  "starter",
  "structure",
  "views",
];

const sharing = SHARING.map((folder) => `tests/${folder}/**/*.test.ts`);

export default mergeConfig(
  usual,
  defineConfig({
    test: {
      projects: [
        { extends: true, test: { name: "sharing", include: sharing, isolate: false } },
        {
          extends: true,
          test: {
            name: "apart",
            include: ["tests/**/*.test.ts"],
            exclude: [...sharing, "tests/editor/**", "**/node_modules/**"],
          },
        },
      ],
    },
  }),
);
