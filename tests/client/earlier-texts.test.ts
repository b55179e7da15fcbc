/** What of a repository's changes is handed to the server, told from answers as VS Code's Git gives them. */
import { expect, test } from "vitest";
import { earlierTexts, type GitChange, type GitRepository } from "../../client/src/earlier-texts.ts";

const uriOf = (path: string) =>
  ({ path, fsPath: path, scheme: "file", toString: () => `file://${path}` }) as GitRepository["rootUri"];
const change = (path: string, from = path): GitChange => ({
  uri: uriOf(from),
  originalUri: uriOf(from),
  renameUri: path === from ? undefined : uriOf(path),
});

/** Of this revision, by path. */
const THEN: Readonly<Record<string, string>> = {
  "/mill/a.finish": "a then",
  "/mill/old.finish": "moved",
  "/mill/gone.finish": "gone",
  "/mill/open.finish": "open then",
};

function repository(asked: string[]): GitRepository {
  return {
    rootUri: uriOf("/mill"),
    state: {
      workingTreeChanges: [change("/mill/a.finish"), change("/mill/new.finish")],
      indexChanges: [change("/mill/new name.finish", "/mill/old.finish")],
      untrackedChanges: [change("/mill/notes.txt")],
    },
    diffWith: async (revision) => {
      asked.push(revision);
      return [
        change("/mill/a.finish"),
        change("/mill/gone.finish"),
        change("/mill/new name.finish", "/mill/old.finish"),
        change("/mill/README.md"),
      ];
    },
    show: async (_, path) => {
      const text = THEN[path];
      if (text === undefined) throw new Error("There is none.");
      return text;
    },
  };
}

test("every recipe that differs has its text of then, or none", async () => {
  const asked: string[] = [];
  const { before, renamed } = await earlierTexts(repository(asked), "main", [uriOf("/mill/open.finish")]);
  expect(asked).toEqual(["main"]);
  expect(before.toSorted((a, b) => (a.uri < b.uri ? -1 : 1))).toEqual([
    { uri: "file:///mill/a.finish", text: "a then" },
    { uri: "file:///mill/gone.finish", text: "gone" },
    { uri: "file:///mill/new name.finish", text: null },
    { uri: "file:///mill/new.finish", text: null },
    { uri: "file:///mill/old.finish", text: "moved" },
    { uri: "file:///mill/open.finish", text: "open then" },
  ]);
  expect(renamed).toEqual([{ from: "file:///mill/old.finish", to: "file:///mill/new name.finish" }]);
});
