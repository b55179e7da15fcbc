/** The page on copied ticks shows what a sheet copies: its example is read line by line. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readTicks } from "../../server/src/views/sheet/ticks.ts";

const PAGE = readFileSync(new URL("../../server/docs/ticks.md", import.meta.url), "utf8");

test("the example of the page is read", () => {
  const [, example = ""] = /```text\n([\s\S]*?)```/u.exec(PAGE) ?? [];
  const { sheets, unread } = readTicks(example);
  expect(unread).toEqual([]);
  expect(sheets).toEqual([
    {
      job: "5f0c19aa",
      went: "Rain all week, the shop was at 17 C",
      rows: [
        {
          keys: ["8a31c0de"],
          at: "2027-03-08T09:40",
          pieces: [1, 2],
          name: "Strip with Slow gel stripper",
          note: "",
        },
        {
          keys: ["02b7e914", "9d4e07b3"],
          at: "2027-03-08T11:05",
          pieces: [1],
          name: "Sand with grit 120, then 150",
          note: "piece 2 still damp",
        },
        { keys: ["6c4d70f3"], pieces: [], name: "Walnut gel stain", note: "try it on the back first" },
      ],
    },
  ]);
});
