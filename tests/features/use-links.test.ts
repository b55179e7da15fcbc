/** The paths of `use` lines: as links, and kept true when files move. */
import { describe, expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { resolveUse } from "../../server/src/lsp/uri.ts";
import { analyse } from "../harness/check-text.ts";
import { type Files, withEdits } from "./navigate.ts";

test("a link lies between the quotes, and says what it leads to", () => {
  const text = '# use "no.finish"\nuse "stock.finish"\nuse "gone.finish"\nuse ""\nuse "half\n';
  const links = analyse({ "test.finish": text, "stock.finish": "" }).useLinks("test.finish");
  expect(
    links.map(({ span, target, tooltip }) => [text.slice(span.start, span.end), target, tooltip]),
  ).toEqual([
    ["stock.finish", "stock.finish", "Open stock.finish"],
    ["gone.finish", "gone.finish", "gone.finish cannot be used: there is no such file"],
    ["half", "half", "half cannot be used: there is no such file"],
  ]);
});

/** The texts, by path from a folder, after files have moved; only those with changes. */
function moved(files: Files, moves: Files): Files {
  const idOf = (path: string): string => resolveUse("file:///shop/-", path);
  const paths = new Map(Object.keys(files).map((path) => [idOf(path), path]));
  const analyst = createAnalyst({ resolve: resolveUse });
  for (const [path, text] of Object.entries(files)) analyst.setFile(idOf(path), text);
  const movedTo = (file: string): string => {
    const to = moves[paths.get(file) ?? ""];
    return to === undefined ? file : idOf(to);
  };
  const edits = analyst.analysis().editsForMoves(movedTo);
  const after = withEdits(
    files,
    edits.map((edit) => ({ ...edit, file: paths.get(edit.file) ?? "" })),
  );
  return Object.fromEntries(Object.entries(after).filter(([path, text]) => text !== files[path]));
}

describe("when files move", () => {
  test("lines that name a renamed file follow", () => {
    expect(
      moved(
        {
          "a.finish": 'use "stock.finish" # ours\nuse "shop.finish"\n',
          "stock.finish": "",
          "shop.finish": "",
        },
        { "stock.finish": "clears.finish" },
      ),
    ).toEqual({ "a.finish": 'use "clears.finish" # ours\nuse "shop.finish"\n' });
  });

  test("lines in a moved file lead where they led", () => {
    expect(
      moved(
        {
          "a.finish": 'use "stock.finish"\nuse "jobs/b.finish"\nuse "gone.finish"\n',
          "stock.finish": "",
          "jobs/b.finish": "",
        },
        { "a.finish": "jobs/a.finish" },
      ),
    ).toEqual({ "a.finish": 'use "../stock.finish"\nuse "b.finish"\nuse "../gone.finish"\n' });
  });

  test("files that move together still find each other, and are still found", () => {
    expect(
      moved(
        {
          "lib/a.finish": 'use "stock.finish"\n',
          "lib/stock.finish": "",
          "job.finish": 'use "./lib/a.finish"\n',
        },
        { "lib/a.finish": "old/lib/a.finish", "lib/stock.finish": "old/lib/stock.finish" },
      ),
    ).toEqual({ "job.finish": 'use "./old/lib/a.finish"\n' });
  });

  test("what needs no other path keeps the one that it has", () => {
    expect(
      moved(
        {
          "a.finish": 'use ".\\\\stock.finish"\n',
          "stock.finish": "",
          "b.finish": 'use "x/../stock.finish"\n',
        },
        { "a.finish": "c.finish" },
      ),
    ).toEqual({});
  });

  test("spaces, accents and quotes are written as they are read", () => {
    const after = moved(
      { "a.finish": 'use "stock.finish"\n', "stock.finish": "" },
      { "stock.finish": 'été/50 % "old".finish' },
    );
    expect(after).toEqual({ "a.finish": 'use "été/50 % \\"old\\".finish"\n' });
    expect(resolveUse("file:///shop/a.finish", 'été/50 % "old".finish')).toBe(
      "file:///shop/%C3%A9t%C3%A9/50%20%25%20%22old%22.finish",
    );
  });

  test("a line without its end is put right, and one to another machine is left", () => {
    expect(
      moved({ "a.finish": 'use "stock.finish\n', "stock.finish": "" }, { "stock.finish": "b.finish" }),
    ).toEqual({
      "a.finish": 'use "b.finish"\n',
    });
    const analyst = createAnalyst({ resolve: resolveUse });
    analyst.setFile("file:///shop/a.finish", 'use "b.finish"\n');
    expect(
      analyst
        .analysis()
        .editsForMoves((file) => (file.endsWith("b.finish") ? "file://other/b.finish" : file)),
    ).toEqual([]);
  });
});
