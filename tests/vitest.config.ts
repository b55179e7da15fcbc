/** Runs all tests but those that need a real editor. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: fileURLToPath(new URL("..", import.meta.url)),
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/editor/**", "**/node_modules/**"],
  },
});
