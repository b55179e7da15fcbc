/** The page on JSON shows what the commands print: every example on it is run on the files that it shows. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { runCli } from "./run-cli.ts";

const PAGE = readFileSync(new URL("../../server/docs/json.md", import.meta.url), "utf8");

/** `name.finish` in a paragraph of its own, then its text. */
const files = Object.fromEntries(
  [...PAGE.matchAll(/^`(\S+\.finish)`:\n\n```finish\n([\s\S]*?)^```$/gmu)].map(([, name, text]) => [
    name!,
    text!,
  ]),
);
const examples = [...PAGE.matchAll(/^```sh\nfinishwright (.*)\n```\n\n```json\n([\s\S]*?)^```$/gmu)].map(
  ([, command, json]) => [command!, json!] as const,
);

test("the page has an example of every command that prints JSON", () => {
  expect(Object.keys(files)).toEqual(["stock.finish", "job.finish", "thrice.finish"]);
  expect(examples.map(([command]) => command.split(" ")[0])).toEqual([
    "check",
    "totals",
    "schedule",
    "shopping",
    "compare",
    "find",
  ]);
});

test.each(examples)("%s", async (command, json) => {
  const { stdout } = await runCli(command.split(" "), { files });
  // The words of findings are for people, and may be mended without a word here.
  expect(JSON.parse(stdout)).toEqual(withoutMessages(JSON.parse(json)));
});

const withoutMessages = (example: unknown): unknown =>
  Array.isArray(example) ? example.map((each) => ({ ...each, message: expect.any(String) })) : example;
