/** Questions at a terminal: in turn, with lines that are typed ahead, and to the end of the input. */
import { PassThrough } from "node:stream";
import { expect, test } from "vitest";
import { askingAt } from "../../server/src/entry/ask-at-terminal.ts";

const terminal = () => {
  const [input, output] = [new PassThrough(), new PassThrough()];
  const shown: string[] = [];
  output.on("data", (chunk) => shown.push(String(chunk)));
  return { input, shown, ask: askingAt({ input, output }) };
};

test("each question gets the next line", async () => {
  const { input, shown, ask } = terminal();
  const first = ask("One? ");
  input.write("1\n");
  expect(await first).toBe("1");
  const second = ask("Two? ");
  input.write("2\r\n");
  expect(await second).toBe("2");
  expect(shown.join("")).toContain("One? ");
});

test("what was typed ahead is not lost", async () => {
  const { input, ask } = terminal();
  const first = ask("One? ");
  input.write("1\n\n3\n");
  expect([await first, await ask("Two? "), await ask("Three? ")]).toEqual(["1", "", "3"]);
});

test("an input that ends answers with nothing, now and later", async () => {
  const { input, ask } = terminal();
  const first = ask("One? ");
  input.end();
  expect(await first).toBeUndefined();
  expect(await ask("Two? ")).toBeUndefined();
});
