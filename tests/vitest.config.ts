/** Runs all tests but those that need a real editor. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { ClosingLine } from "./harness/closing-line.ts";

export default defineConfig({
  test: {
    root: fileURLToPath(new URL("..", import.meta.url)),
    include: ["tests/**/*.test.ts"],
    // A net for hangs, not a measure of speed: machines are as slow as they are.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    exclude: ["tests/editor/**", "**/node_modules/**"],
    reporters: ["default", new ClosingLine()],
  },
});
