/** `finishwright/find`: matches at places as the client names them, among all files that are known. */
import { expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { FindAnswer } from "../../server/src/lsp/custom-requests.ts";
import { startClient } from "./harness.ts";

const DESK = "file:///shop/desk.finish";
const TEXT = `# The desk of the reading room.
piece desk "The reading desk" {
  surface top {
    shape area 1 m2
    wood  red oak
  }
}
recipe waxed {
  layer paste_wax
}
job desks "Desks of the hall" {
  piece desk
  apply waxed to top
}
`;

test("leads to what matches, and says what was understood", async () => {
  const client = await startClient({ host: { createAnalyst } });
  const find = (said: string) => client.request<FindAnswer>("finishwright/find", { said });
  await client.open(DESK, TEXT);
  const { understood, found, more } = await find("oak piece");
  expect({ understood, more }).toEqual({ understood: ["wood oak", "only pieces"], more: 0 });
  expect(found).toEqual([
    {
      kind: "piece",
      title: "The reading desk",
      detail: "red oak, in desks",
      uri: DESK,
      file: "desk.finish",
      start: { line: 1, character: 6 },
    },
  ]);
  expect((await find("wax oak")).found.map(({ kind, title }) => `${kind} ${title}`)).toEqual([
    "piece The reading desk",
    "surface top",
    "recipe waxed",
    "job Desks of the hall",
  ]);
  expect((await find("beech")).found).toEqual([]);
  expect(await find("")).toEqual({ understood: [], found: [], more: 0 });
  expect(await find("colour:red")).toEqual({
    understood: [],
    refusal: expect.stringContaining("`colour:` is not known"),
    found: [],
    more: 0,
  });
  await client.change(DESK, 2, TEXT.replace("red oak", "beech"));
  expect((await find("beech piece")).found.map(({ title }) => title)).toEqual(["The reading desk"]);
  await client.end();
});

test("a list that nobody reads to its end is cut short, and says how much is left", async () => {
  const client = await startClient({ host: { createAnalyst } });
  const recipes = Array.from({ length: 230 }, (_, i) => `recipe r${i} {\n  layer paste_wax\n}\n`);
  await client.open(DESK, recipes.join("\n"));
  const { found, more } = await client.request<FindAnswer>("finishwright/find", { said: "recipe wax" });
  expect([found.length, more]).toEqual([200, 30]);
  await client.end();
});
