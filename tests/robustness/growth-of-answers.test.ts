/** What the server answers about a file with a finding on every line costs its length, and not the square of it. */
import process from "node:process";
import { expect, test } from "vitest";
import { serverAnswers } from "../attack/edited-server.ts";

/** Seconds of the processor for all that an editor asks about one file. */
async function cpuSeconds(text: string): Promise<number> {
  const start = process.cpuUsage();
  await serverAnswers([new Map([["a.finish", text]])], 13);
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}

const unclosed = (recipes: number): string => `material m {\n  colour ${"recipe r {\n".repeat(recipes)}\n}\n`;

test("recipes that are never closed, each of them a finding that may be allowed", async () => {
  const [few, many] = [unclosed(250), unclosed(1000)];
  await cpuSeconds(few);
  // Four times the length; where every finding reads the text again, it is twelve times the work.
  expect((await cpuSeconds(many)) / (await cpuSeconds(few))).toBeLessThan(8);
});
