/** Runs all tests but those that need a real editor. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { ClosingLine } from "./harness/closing-line.ts";

export default defineConfig({
  test: {
    root: fileURLToPath(new URL("..", import.meta.url)),
    include: ["tests/**/*.test.ts"],
    // A net for hangs, not a measure of speed. The longest test takes seconds of processor time, so that a machine may
    // have a hundred times as much to do as it has processors before this decides anything.
    testTimeout: 1_800_000,
    hookTimeout: 1_800_000,
    exclude: ["tests/editor/**", "**/node_modules/**"],
    reporters: ["default", new ClosingLine()],
  },
});
