/** What an edit of the client's has changed of a text: of several changes one part around all of them. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { Documents } from "../../server/src/lsp/documents.ts";

const URI = "file:///shop/a.finish";

const opened = (text: string) => {
  const documents = new Documents();
  const file = documents.know(URI);
  documents.open(file, URI, 1, text);
  return { documents, file };
};

const change = fc.record({
  from: fc.nat(40),
  to: fc.nat(40),
  text: fc.string({ unit: fc.constantFrom("a", "b", "\n", "\r\n", "é"), maxLength: 5 }),
});
const text = fc.string({ unit: fc.constantFrom("x", "y", " ", "\n", "\r\n"), maxLength: 30 });

test("the rest of the text is as it was", () => {
  fc.assert(
    fc.property(text, fc.array(change, { minLength: 1, maxLength: 4 }), (before, places) => {
      const { documents, file } = opened(before);
      // The library by itself, one change after the other.
      const wanted = TextDocument.create(URI, "finish", 1, before);
      const changes = places.map(({ from, to, text: inserted }) => {
        const range = { start: wanted.positionAt(from), end: wanted.positionAt(to) };
        TextDocument.update(wanted, [{ range, text: inserted }], 2);
        return { range, text: inserted };
      });
      const edited = documents.change(file, 2, changes)!;
      expect(edited.text).toBe(wanted.getText());
      const { start, oldEnd, newEnd } = edited.changed!;
      const own = edited.text.slice(start, newEnd);
      expect(before.slice(0, start) + own + before.slice(oldEnd)).toBe(edited.text);
    }),
    { numRuns: 500 },
  );
});

test("a digit typed is one letter, and a text sent as a whole may be any other", () => {
  const { documents, file } = opened("wait 2 h\nwait 3 h\n");
  const range = { start: { line: 1, character: 6 }, end: { line: 1, character: 6 } };
  expect(documents.change(file, 2, [{ range, text: "0" }])).toEqual({
    text: "wait 2 h\nwait 30 h\n",
    changed: { start: 15, oldEnd: 15, newEnd: 16 },
  });
  expect(documents.change(file, 3, [{ range, text: "1" }, { text: "wait" }])).toEqual({ text: "wait" });
  expect(documents.versionOf(file)).toBe(3);
});
