/**
 * A test runner small enough for an extension host: runs tests in a row, and says how each went.
 *
 * The lines carry a mark, because they come out of the editor among everything else that its extension host says.
 */
export const SUITE_MARK = "finishwright-test: ";

export interface Test {
  readonly name: string;
  readonly run: () => Promise<void>;
}

type Say = (line: string) => void;

const sayMarked: Say = (line) => console.log(SUITE_MARK + line);

/** Rejects if a test failed, which is how VS Code learns of it. */
export const runTests = async (tests: readonly Test[], say = sayMarked): Promise<void> => {
  let failed = 0;
  for (const test of tests) {
    try {
      await test.run();
      say(`ok   ${test.name}`);
    } catch (error) {
      failed += 1;
      say(`FAIL ${test.name}`);
      const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
      for (const line of text.split("\n")) say(`     ${line}`);
    }
  }
  say(`${tests.length - failed} passed, ${failed} failed`);
  if (failed > 0) throw new Error(`${failed} of ${tests.length} editor tests failed`);
};
