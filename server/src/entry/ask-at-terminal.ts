/** Questions at the terminal, on standard error, so that what is printed can go into a file. */
import process from "node:process";
import { createInterface } from "node:readline";

/** The line that is typed; undefined where the input ends instead. */
export const askAtTerminal = (question: string): Promise<string | undefined> =>
  new Promise((resolve) => {
    const lines = createInterface({ input: process.stdin, output: process.stderr });
    lines.once("close", () => resolve(undefined));
    lines.question(question, (answer) => {
      resolve(answer);
      lines.close();
    });
  });
