/** What holds for any text whatsoever, tried on texts put together from pieces of the language and on noise. */
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { createLineIndex, positionAt } from "../../grammar/src/line-index.ts";
import { namesOf } from "../../grammar/src/names.ts";
import { fileProblems, parseDeclaration, parseFile } from "../../grammar/src/parse.ts";
import { splitFile } from "../../grammar/src/pieces.ts";
import { sectionsOf } from "../../grammar/src/sections.ts";
import type { FileTree, Span } from "../../grammar/src/tree.ts";
import { allNodes, locate } from "../../grammar/src/walk.ts";
import { expectSame } from "../harness/same.ts";
import { offsetAt } from "../oracles/offset-at.ts";
import { anyText, edited, NOTATION } from "./any-text.ts";
import { declarations } from "./declarations.ts";
import { problemsWithBounds, textOfTokens } from "./show.ts";

vi.setConfig({ testTimeout: 60_000 });

const LINES = NOTATION.split("\n");
const RUNS = { numRuns: 80, seed: 20270308 };

/** What is wrong with a tree, in words; nothing for any text. */
function flawsOf(tree: FileTree): string[] {
  const flaws: string[] = [];
  const check = (isRight: boolean, flaw: string) => {
    if (!isRight) {
      flaws.push(flaw);
    }
  };
  const checkSpan = (span: Span, length: number, what: string) =>
    check(0 <= span.start && span.start <= span.end && span.end <= length, `span of ${what}`);
  check(textOfTokens(tree) === tree.text, "tokens are not the text");
  const end = tree.pieces.reduce(
    (offset, piece) => (piece.offset === offset ? offset + piece.length : -1),
    0,
  );
  check(end === tree.text.length, "pieces are not the text");
  for (const { problem, length } of problemsWithBounds(tree)) {
    checkSpan(problem.span, length, problem.message);
    checkSpan(problem.fix?.span ?? problem.span, length, `fix of ${problem.message}`);
    check(!/undefined|Word_|Token|something else/u.test(problem.message), problem.message);
    check(problem.message !== "expected the end of the declaration", "declaration does not end");
  }
  for (const { body } of declarations(tree)) {
    for (const node of allNodes(body.syntax)) {
      checkSpan(node.span, body.text.length, node.kind ?? "part");
    }
    for (const { name, role } of namesOf(body)) {
      const written = body.text.slice(name.span.start, name.span.end);
      // What is written in words of its own has the plain word in the tree, and the formatter puts it there.
      const isRespelt = body.respellings.some(
        ({ span, text }) =>
          span.start <= name.span.start && name.span.end <= span.end && text.includes(name.text),
      );
      // A line that may be a fact stays as it is written until its writer decides, and is a note meanwhile.
      const isKept = role === "keyword" && name.text === "note";
      check(role === "unit" || written === name.text || isRespelt || isKept, `name ${name.text}`);
    }
  }
  return flaws;
}

describe("any text", () => {
  it("is parsed without a loss, with every span inside", () => {
    fc.assert(
      fc.property(fc.oneof(anyText, edited), (text) => {
        expect(flawsOf(parseFile(text))).toEqual([]);
      }),
      RUNS,
    );
  });

  it("is read alike however it is indented, where it is well formed", () => {
    const indents = fc.infiniteStream(fc.constantFrom("", "  ", "    ", "\t"));
    fc.assert(
      fc.property(indents, (draws) => {
        const text = NOTATION.replace(/^ */gmu, () => draws.next().value!);
        expect(fileProblems(parseFile(text))).toEqual([]);
      }),
      { ...RUNS, numRuns: 40 },
    );
  });

  it("has the same tree whatever was parsed before", () => {
    fc.assert(
      fc.property(fc.oneof(anyText, edited), edited, (before, after) => {
        expectSame(parseFile(after, parseFile(before)), parseFile(after));
      }),
      { ...RUNS, numRuns: 40 },
    );
  });

  it("has the same tree after any edits, one after the other", () => {
    const change = fc.tuple(
      fc.nat(),
      fc.nat(80),
      fc.oneof(fc.constant(""), fc.string({ maxLength: 3 }), anyText),
    );
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 5 }), fc.boolean(), (changes, isTwice) => {
        const first = parseFile(isTwice ? NOTATION + NOTATION : NOTATION);
        let [tree, told] = [first, first];
        for (const [where, length, inserted] of changes) {
          const start = where % (tree.text.length + 1);
          const oldEnd = Math.min(start + length, tree.text.length);
          const text = tree.text.slice(0, start) + inserted + tree.text.slice(oldEnd);
          tree = parseFile(text, tree);
          // The same, where it is known what has changed.
          told = parseFile(text, told, { start, oldEnd, newEnd: start + inserted.length });
        }
        const anew = parseFile(tree.text);
        expectSame(tree, anew);
        expectSame(told, anew);
      }),
      { ...RUNS, numRuns: 80 },
    );
  });

  it("has the pieces of its sections", () => {
    const pieces = (part: string, start = 0) =>
      splitFile(part).pieces.map(({ kind, start: from, end, problems }) => ({
        kind,
        start: from + start,
        end: end + start,
        messages: problems.map((problem) => problem.message),
      }));
    fc.assert(
      fc.property(fc.oneof(anyText, edited), (text) => {
        let start = 0;
        const inSections = sectionsOf(text).flatMap((section) => {
          start += section.length;
          return pieces(section, start - section.length);
        });
        expect(inSections).toEqual(pieces(text));
      }),
      { ...RUNS, numRuns: 300 },
    );
  });

  it("has declarations that depend on their own text alone", () => {
    fc.assert(
      fc.property(fc.oneof(anyText, edited), (text) => {
        for (const { body } of declarations(parseFile(text))) {
          expectSame(parseDeclaration(body.text), body);
          expect(declarations(parseFile(body.text)).map((again) => again.body.text)).toEqual([body.text]);
        }
      }),
      { ...RUNS, numRuns: 80 },
    );
  });

  it("can be located at every offset", () => {
    fc.assert(
      fc.property(anyText, fc.nat(200), (text, at) => {
        const offset = Math.min(at, text.length);
        const location = locate(parseFile(text), offset);
        expect(text === "" || location?.token !== undefined || location?.piece.length === 0).toBe(true);
        const index = createLineIndex(text);
        const position = positionAt(index, offset);
        const isInsideLineEnd = text[offset - 1] === "\r" && text[offset] === "\n";
        expect(isInsideLineEnd || offsetAt(index, position) === offset).toBe(true);
      }),
      RUNS,
    );
  });

  it("may be any text for a declaration, too", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(parseDeclaration(text).text).toBe(text);
      }),
      RUNS,
    );
  });
});

describe("a lost line", () => {
  const before = parseFile(NOTATION);
  const starts = createLineIndex(NOTATION).starts;

  it.each(LINES.slice(0, -1).map((line, idx) => [idx + 1, line] as const))(
    "%i %s: leaves the other declarations alone",
    (number) => {
      const offset = starts[number - 1]!;
      const after = parseFile(LINES.filter((_, idx) => idx !== number - 1).join("\n"), before);
      const others = declarations(before).filter(
        (declaration) => offset < declaration.offset || offset >= declaration.offset + declaration.length,
      );
      const bodies = new Set(declarations(after).map((declaration) => declaration.body));
      for (const other of others) {
        expect(bodies.has(other.body), other.key).toBe(true);
      }
      expect(fileProblems(after).length).toBeLessThanOrEqual(1);
    },
  );
});
