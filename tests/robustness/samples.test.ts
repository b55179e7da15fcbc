/** The samples check clean, but for the file of classic mistakes, which shows what its lines say. */
import { describe, expect, it } from "vitest";
import { lineOf } from "../harness/check-text.ts";
import { sampleAnalyst, sampleNames } from "../harness/samples.ts";

describe("samples", () => {
  const analysis = sampleAnalyst().analysis();

  it.each(sampleNames.filter((name) => name !== "mistakes.finish"))("%s is clean", (name) => {
    const text = analysis.text(name)!;
    expect(
      analysis.findings(name).map((f) => `${lineOf(text, f.span.start)} ${f.rule}: ${f.message}`),
    ).toEqual([]);
  });

  it("mistakes.finish has at least ten findings of ten rules", () => {
    const rules = new Set(analysis.findings("mistakes.finish").map((finding) => finding.rule));
    expect(rules.size).toBeGreaterThanOrEqual(10);
  });
});
