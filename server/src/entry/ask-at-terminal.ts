/** Questions at the terminal, on standard error, so that what is printed can go into a file. */
import { createInterface, type Interface } from "node:readline";

export interface Terminal {
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream;
}

/** Answers each question with the next line that is typed, also ahead; undefined where the input has ended. */
export function askingAt({ input, output }: Terminal): (question: string) => Promise<string | undefined> {
  const typed: string[] = [];
  let hasEnded = false;
  let waiting: ((answer: string | undefined) => void) | undefined;
  let lines: Interface | undefined;
  const open = (): Interface => {
    const made = createInterface({ input, output });
    made.on("line", (line) => {
      if (waiting) answer(line);
      else typed.push(line);
    });
    made.on("close", () => {
      hasEnded = true;
      answer(undefined);
    });
    return made;
  };
  const answer = (line: string | undefined): void => {
    const wake = waiting;
    waiting = undefined;
    // Nobody reads between two questions, so that the program can end.
    if (!hasEnded) lines?.pause();
    wake?.(line);
  };
  return (question) => {
    lines ??= open();
    output.write(question);
    const next = typed.shift();
    if (next !== undefined || hasEnded) return Promise.resolve(next);
    lines.resume();
    return new Promise((resolve) => {
      waiting = resolve;
    });
  };
}
