/** What the output channel says of versions, files and time. */
import { expect, test } from "vitest";
import { durationText, listedText, slowText, startedText } from "../../client/src/timings.ts";

test("a start tells the versions, the folders and how long it took", () => {
  const started = { version: "0.1.0", editor: "An Editor", editorVersion: "1.100.0", folders: 1, ms: 420.4 };
  expect(startedText(started)).toBe(
    "Finishwright 0.1.0 in An Editor 1.100.0, 1 open folder; started in 420 ms.",
  );
  expect(startedText({ ...started, folders: 2, ms: 1340 })).toMatch(/2 open folders; started in 1\.3 s\.$/u);
});

test("a listing tells how many recipes there are", () => {
  expect(listedText(12, 34)).toBe("12 recipes in the open folders, listed in 34 ms.");
  expect(listedText(1, 2.6)).toBe("1 recipe in the open folders, listed in 3 ms.");
});

test("only answers that took long have a line, and none that is kept back until there is news", () => {
  expect(slowText("textDocument/hover", 999)).toBeUndefined();
  expect(slowText("textDocument/hover", 1500)).toBe("textDocument/hover took 1.5 s.");
  expect(slowText("workspace/diagnostic", 90_000)).toBeUndefined();
  expect(durationText(999)).toBe("999 ms");
});
