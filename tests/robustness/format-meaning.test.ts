/**
 * Formatting changes nothing that is worked out: the samples and the whole corpus, in disorder and laid out, have the same
 * findings and the same totals.
 */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, it } from "vitest";
import { applyChanges, formatFile } from "../../grammar/src/format.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import { inDisorder } from "../grammar/any-text.ts";
import { analyse } from "../harness/check-text.ts";
import { expectSame } from "../harness/same.ts";
import { sampleNames, sampleText } from "../harness/samples.ts";
import { shareOf } from "../harness/share.ts";

type Texts = Readonly<Record<string, string>>;

const CORPUS = new URL("../corpus/", import.meta.url);

const corpusTexts = (): Texts =>
  Object.fromEntries(
    readdirSync(CORPUS, { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".finish"))
      .toSorted()
      .filter((_, place, all) => shareOf(all, 12).includes(all[place]!))
      .map((name) => [name, readFileSync(new URL(name, CORPUS), "utf8")]),
  );

const format = (text: string): string => applyChanges(text, formatFile(parseFile(text)).changes);

/** Everything but places. Messages quote what was written, so signs of units are plain in them. */
function workedOut(texts: Texts): unknown {
  const analysis = analyse(texts);
  const plain = (text: string): string =>
    text.replace(/[µμ]m/gu, "um").replaceAll("²", "2").replaceAll("³", "3").replaceAll("°", "");
  return Object.keys(texts).map((file) => ({
    file,
    findings: analysis.findings(file).map(({ rule, severity, message, related, fixes, job }) => ({
      rule,
      severity,
      message: plain(message),
      related: related.map((other) => plain(other.message)),
      fixes: fixes.map(({ title }) => plain(title)),
      job,
    })),
    totals: analysis.totals(file),
  }));
}

const mapped = (texts: Texts, change: (text: string) => string): Texts =>
  Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, change(text)]));

describe("what is worked out stays the same", () => {
  it("for the samples in any disorder", () => {
    const samples = Object.fromEntries(sampleNames.map((name) => [name, sampleText(name)]));
    const expected = workedOut(samples);
    const disorder = fc.tuple(...sampleNames.map((name) => inDisorder(sampleText(name))));
    fc.assert(
      fc.property(disorder, (texts) => {
        const messy = Object.fromEntries(sampleNames.map((name, idx) => [name, texts[idx]!]));
        expectSame(workedOut(messy), expected);
        expectSame(workedOut(mapped(messy, format)), expected);
      }),
      { numRuns: 1, seed: 20270308 },
    );
  });

  it("for the corpus", () => {
    const texts = corpusTexts();
    expectSame(workedOut(mapped(texts, format)), workedOut(texts));
  });
});
