/**
 * Ends a test run with one plain line, `N passed, N failed`, for whoever reads the log by machine. Errors outside of
 * tests count as failures, so that the line never looks better than the run was. Above it stands what the run took.
 */
import type { Reporter, TestModule } from "vitest/node";
import { processorLine } from "./processor-time.ts";

export class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[]): void {
    let passed = 0;
    let failed = unhandled.length;
    for (const module of modules) {
      failed += module.errors().length;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === "passed") passed += 1;
        else if (state === "failed") failed += 1;
      }
    }
    // After the other reporters have had their say.
    process.on("exit", () => process.stdout.write(`${processorLine()}${passed} passed, ${failed} failed\n`));
  }
}
