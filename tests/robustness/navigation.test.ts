/**
 * Navigation over all samples, whole and spoilt: renaming changes no finding and can be taken back, a name leads to what
 * finds it, and no text and offset is too much for any way of going about.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Analysis, Analyst } from "../../server/src/features/types.ts";
import type { FileFinding, FileSpan } from "../../server/src/views/places/file-finding.ts";
import { withEdits } from "../features/navigate.ts";
import { analyse } from "../harness/check-text.ts";
import { sampleAnalyst, sampleNames, sampleText } from "../harness/samples.ts";
import { shareOf } from "../harness/share.ts";

const SAMPLES: Readonly<Record<string, string>> = Object.fromEntries(
  sampleNames.map((name) => [name, sampleText(name)]),
);

const fileText = (analysis: Analysis, file: string): string => analysis.text(file) ?? "";

const lineOf = (analysis: Analysis, { file, span }: FileSpan): string =>
  `${file}:${fileText(analysis, file).slice(0, span.start).split("\n").length}`;

/**
 * A misspelt argument is told as one finding and else as two, one of them the argument that is missing. What is near
 * enough for a slip of the pen depends on the spelling, which is just what a renaming changes.
 */
const drawFindings = (analysis: Analysis): readonly string[] =>
  drawAllFindings(analysis).filter((line) => !line.includes(" missing-argument "));

/**
 * Everything of a finding but its message, which has names in it and may propose one that is close, with a fix; places as
 * lines, since names differ in length.
 */
function drawAllFindings(analysis: Analysis): readonly string[] {
  const draw = (finding: FileFinding): string =>
    [
      lineOf(analysis, finding),
      finding.rule,
      finding.severity,
      ...finding.related.map((place) => lineOf(analysis, place)),
    ].join(" ");
  return analysis.files.flatMap((file) => analysis.findings(file).map(draw));
}

/** Where a name of the samples is declared that can be renamed, each once. */
function renameable(
  analysis: Analysis,
): readonly { readonly file: string; readonly offset: number; readonly name: string }[] {
  return sampleNames.flatMap((file) =>
    [...fileText(analysis, file).matchAll(/\p{L}[\p{L}\p{N}_]*/gu)].flatMap(({ index, 0: name }) => {
      const target = analysis.renameTarget(file, index);
      const isDeclared = analysis
        .highlights(file, index)
        .some(({ span, kind }) => span.start === index && kind === "write");
      return isDeclared && !("refusal" in target) ? [{ file, offset: index, name }] : [];
    }),
  );
}

function applyTo(analyst: Analyst, file: string, offset: number, newName: string): void {
  const analysis = analyst.analysis();
  const renaming = analysis.rename(file, offset, newName);
  if ("refusal" in renaming) throw new Error(`${file} ${offset} to ${newName}: ${renaming.refusal}`);
  const texts = Object.fromEntries(analysis.files.map((each) => [each, fileText(analysis, each)]));
  for (const [each, text] of Object.entries(withEdits(texts, renaming.edits))) analyst.setFile(each, text);
}

describe("renaming any name of the samples", () => {
  const analyst = sampleAnalyst();
  const before = drawFindings(analyst.analysis());
  const names = renameable(analyst.analysis());

  test("there are names of every kind", () => {
    const declared = names.map(({ name }) => name);
    expect(declared).toEqual(
      expect.arrayContaining([
        "hall_clear",
        "reading_table",
        "top",
        "mill_room",
        "refreshed",
        "coats",
        "six_chairs",
      ]),
    );
  });

  test.each(shareOf(names, 9))("$name of $file", ({ file, offset, name }) => {
    for (const each of sampleNames) analyst.setFile(each, sampleText(each));
    applyTo(analyst, file, offset, "some_name_of_ours");
    // A misspelt argument stands for the parameter that it is near to, and is near to the new name no more.
    if (name === "paint" && file === "mistakes.finish") return;
    expect(drawFindings(analyst.analysis())).toEqual(before);
    // Nothing before the name in its own file changes length but what is renamed itself.
    const now = fileText(analyst.analysis(), file).indexOf("some_name_of_ours");
    applyTo(analyst, file, now, name);
    for (const each of sampleNames) expect(fileText(analyst.analysis(), each)).toBe(SAMPLES[each]);
  });
});

test("a new name that is in use for something else, or means something to the notation, is refused or changes no finding", () => {
  const analyst = sampleAnalyst();
  const before = drawFindings(analyst.analysis());
  const names = renameable(analyst.analysis());
  const newNames = [
    ...new Set([
      ...names.map(({ name }) => name),
      ...Object.values(SAMPLES).flatMap((text) => text.match(/\p{L}[\p{L}\p{N}_]*/gu) ?? []),
    ]),
  ];
  fc.assert(
    fc.property(
      fc.constantFrom(...names),
      fc.constantFrom(...newNames),
      ({ file, offset, name }, newName) => {
        for (const each of sampleNames) analyst.setFile(each, sampleText(each));
        if (file === "mistakes.finish" && name === "paint") return;
        if ("refusal" in analyst.analysis().rename(file, offset, newName)) return;
        applyTo(analyst, file, offset, newName);
        expect(drawFindings(analyst.analysis())).toEqual(before);
      },
    ),
    { numRuns: 6 },
  );
});

test("every name of the samples is among the references of what it leads to", () => {
  const analysis = sampleAnalyst().analysis();
  for (const file of sampleNames) {
    for (const { index } of fileText(analysis, file).matchAll(/\p{L}[\p{L}\p{N}_]*/gu)) {
      for (const target of analysis.definition(file, index)?.targets ?? []) {
        const places = analysis
          .references(target.file, target.nameSpan.start, true)
          .map((place) => place.file + place.span.start);
        if (places.length > 0) expect(places).toContain(file + index);
      }
    }
  }
});

describe("spoilt texts", () => {
  const SCRAPS = [
    "{",
    "}",
    "(",
    ")",
    ",",
    ":",
    '"',
    "\n",
    "=",
    ".",
    "x ",
    "#",
    "all",
    "use ",
    "existing as left by ",
    "\uD800",
    "é",
  ];

  /** A sample with pieces cut out and put elsewhere, and scraps thrown in. */
  const spoilt = fc
    .record({
      name: fc.constantFrom(...sampleNames),
      cuts: fc.array(
        fc.record({
          from: fc.nat(),
          length: fc.nat(60),
          to: fc.nat(),
          scrap: fc.constantFrom("", ...SCRAPS),
        }),
        {
          minLength: 1,
          maxLength: 6,
        },
      ),
    })
    .map(({ name, cuts }) => ({
      name,
      text: cuts.reduce((text, { from, length, to, scrap }) => {
        const start = from % (text.length + 1);
        const rest = text.slice(0, start) + text.slice(start + length);
        const put = to % (rest.length + 1);
        return rest.slice(0, put) + scrap + text.slice(start, start + length) + rest.slice(put);
      }, SAMPLES[name]!),
    }));

  const isIn = (analysis: Analysis, { file, span }: FileSpan): boolean =>
    0 <= span.start && span.start <= span.end && span.end <= fileText(analysis, file).length;

  test("lead somewhere in a text or nowhere, and are never too much", () => {
    fc.assert(
      fc.property(
        spoilt,
        fc.array(fc.nat(), { minLength: 1, maxLength: 12 }),
        ({ name: file, text }, places) => {
          const analysis = analyse({ ...SAMPLES, [file]: text });
          const expectIn = (place: FileSpan): void =>
            expect(isIn(analysis, place), `${file} ${place.span.start}`).toBe(true);
          for (const link of analysis.useLinks(file)) expectIn({ file, span: link.span });
          for (const symbol of analysis.workspaceSymbols(""))
            expectIn({ file: symbol.file, span: symbol.nameSpan });
          for (const edit of analysis.editsForMoves((each) => `moved/${each}`)) expectIn(edit);
          for (const place of places) {
            const offset = place % (text.length + 2);
            for (const target of analysis.definition(file, offset)?.targets ?? []) {
              expectIn(target);
              expectIn({ file: target.file, span: target.nameSpan });
            }
            for (const reference of analysis.references(file, offset, true)) expectIn(reference);
            for (const { span } of analysis.highlights(file, offset)) expectIn({ file, span });
            for (const item of analysis.callItems(file, offset)) {
              expectIn(item);
              analysis.incomingCalls(item.file, item.nameSpan.start);
              analysis.outgoingCalls(item.file, item.nameSpan.start);
            }
            analysis.renameTarget(file, offset);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  test("are renamed so that it can be taken back, or not at all", () => {
    fc.assert(
      fc.property(spoilt, fc.nat(), ({ name: file, text }, place) => {
        const texts = { ...SAMPLES, [file]: text };
        const words = [...text.matchAll(/\p{L}[\p{L}\p{N}_]*/gu)];
        const word = words[place % Math.max(words.length, 1)];
        const analysis = analyse(texts);
        const renaming = word && analysis.rename(file, word.index, "some_name_of_ours");
        if (!renaming || "refusal" in renaming) return;
        const after = withEdits(texts, renaming.edits);
        const back = analyse(after).rename(file, after[file]!.indexOf("some_name_of_ours"), word[0]);
        // Where two things had one name, there is no way back to it.
        if (!("refusal" in back)) expect(withEdits(after, back.edits)).toEqual(texts);
      }),
      { numRuns: 30 },
    );
  });
});
