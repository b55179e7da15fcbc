/**
 * One cause, one finding: missing duties of a recipe are told together, what follows from another finding becomes its
 * related place, and each part is still allowed, set and explained by its own rule.
 */
import { describe, expect, it } from "vitest";
import type { Finding } from "../../server/src/core/findings.ts";
import { groupFindings } from "../../server/src/core/rules/grouping.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { partsOf } from "../../server/src/features/finding-parts.ts";
import type { FileFinding } from "../../server/src/features/types.ts";
import { findingsOf, lineOf } from "../harness/check-text.ts";
import { sampleAnalyst } from "../harness/samples.ts";
import { applied } from "../harness/show-findings.ts";

const OILED = (...lines: readonly string[]) => `recipe oiled {
  for    wood
  safety no_ignition
  step   sand 120, 180
  step   dust
${lines.map((line) => `${line}\n`).join("")}  layer  oil_varnish, wiped
  wait   until cured
}
`;

const shown = (text: string, findings: readonly FileFinding[] = findingsOf(text)) =>
  findings.map((finding) => ({
    at: lineOf(text, finding.span.start),
    severity: finding.severity,
    headline: finding.headline,
    parts: partsOf(finding).map(({ rule, span }) => `${lineOf(text, span.start)} ${rule}`),
  }));

describe("missing duties of one recipe", () => {
  it("are one finding, of the gravest level, where the gravest stands", () => {
    const text = OILED();
    expect(shown(text)).toEqual([
      {
        at: 6,
        severity: "error",
        headline: "3 safety duties are missing: `wet_rags`, `dust_mask`, `ventilate`",
        parts: ["6 rags-not-wetted", "4 no-dust-mask", "6 no-ventilation"],
      },
    ]);
    const [finding] = findingsOf(text);
    expect(finding!.why.split("\n").length).toBe(3);
    expect(finding!.related.map(({ span, message }) => [lineOf(text, span.start), message])).toEqual([
      [4, "`dust_mask` is missing here"],
    ]);
  });

  it("are stated by one fix above the first line that needs one", () => {
    const text = OILED();
    const [fix, ...others] = findingsOf(text)[0]!.fixes;
    expect(others).toEqual([]);
    expect(fix).toMatchObject({
      kind: "undertaking",
      title: "Undertake to see to 3 safety duties: `wet_rags`, `dust_mask` and `ventilate`",
    });
    const fixed = applied(text, "test.finish", fix!);
    expect(fixed.split("\n")[3]).toBe("  safety wet_rags, dust_mask, ventilate");
    expect(findingsOf(fixed)).toEqual([]);
  });

  it("are allowed by part", () => {
    const text = OILED("  # allow rags-not-wetted: the cloths are burnt in the stove at once");
    expect(shown(text).map(({ severity, parts }) => [severity, parts])).toEqual([
      ["warning", ["4 no-dust-mask", "7 no-ventilation"]],
    ]);
    const one = OILED(
      "  # allow rags-not-wetted: the cloths are burnt in the stove at once",
      "  # allow no-ventilation: done in the yard",
    );
    // One alone reads as itself.
    expect(shown(one)).toEqual([
      {
        at: 4,
        severity: "warning",
        headline: "Nothing above this line states `dust_mask`",
        parts: ["4 no-dust-mask"],
      },
    ]);
  });

  it("are set by part in a project", () => {
    const text = OILED();
    const analyst = createAnalyst({
      resolve: (_, path) => path,
      config: () => ({ rules: { "rags-not-wetted": "off", "no-ventilation": "hint" }, complaints: [] }),
    });
    analyst.setFile("test.finish", text);
    expect(shown(text, analyst.analysis().findings("test.finish"))).toMatchObject([
      { severity: "warning", parts: ["4 no-dust-mask", "6 no-ventilation"] },
    ]);
  });

  it("of two recipes are two findings", () => {
    const text = OILED() + OILED().replace("oiled", "oiled_again");
    expect(shown(text).map(({ at }) => at)).toEqual([6, 14]);
  });
});

describe("consequences", () => {
  const at = (start: number, file = "a") => ({
    file,
    declaration: "recipe r",
    span: { start, end: start + 5 },
  });
  const finding = (rule: string, start: number, more: Partial<Finding> = {}): Finding => ({
    rule,
    severity: "warning",
    place: at(start),
    headline: `What ${rule} says`,
    why: "Why.",
    remedy: "Do this.",
    related: [],
    fixes: [],
    ...more,
  });
  const toCause = (rule: string) => (rule === "effect" ? ["cause"] : []);
  const rules = (findings: readonly Finding[]) => findings.map(({ rule }) => rule);

  it("on the line of the cause are its related places", () => {
    const grouped = groupFindings(
      [finding("effect", 0, { severity: "error" }), finding("cause", 2)],
      toCause,
    );
    expect(grouped).toHaveLength(1);
    expect(grouped[0]).toMatchObject({
      rule: "cause",
      severity: "error",
      headline: "What cause says",
      related: [{ place: at(0), message: "What effect says" }],
    });
    expect(grouped[0]!.parts?.map(({ rule }) => rule)).toEqual(["cause", "effect"]);
  });

  it("elsewhere are told apart, unless both name one cause", () => {
    expect(rules(groupFindings([finding("cause", 0), finding("effect", 40)], toCause))).toEqual([
      "cause",
      "effect",
    ]);
    const named = [finding("cause", 0, { cause: "damp air" }), finding("effect", 40, { cause: "damp air" })];
    expect(rules(groupFindings(named, toCause))).toEqual(["cause"]);
    const others = [finding("cause", 0, { cause: "damp air" }), finding("effect", 2, { cause: "dust" })];
    expect(rules(groupFindings(others, toCause))).toEqual(["cause", "effect"]);
  });

  it("stand alone where the cause is allowed", () => {
    expect(rules(groupFindings([finding("effect", 0)], toCause))).toEqual(["effect"]);
  });

  it("of rules that are secondary to each other are not lost", () => {
    const round = (rule: string) => (rule === "effect" ? ["cause"] : ["effect"]);
    expect(rules(groupFindings([finding("effect", 0), finding("cause", 2)], round)).length).toBeGreaterThan(
      0,
    );
  });

  it("lead through others to the first cause", () => {
    const chain = (rule: string) => ({ third: ["second"], second: ["first"] })[rule] ?? [];
    const grouped = groupFindings([finding("third", 0), finding("second", 1), finding("first", 2)], chain);
    expect(rules(grouped)).toEqual(["first"]);
    expect(grouped[0]!.parts?.map(({ rule }) => rule).sort()).toEqual(["first", "second", "third"]);
  });
});

it("no line of the file of mistakes carries more findings than it may", () => {
  const file = "mistakes.finish";
  const analysis = sampleAnalyst().analysis();
  const perLine = new Map<number, number>();
  for (const { span } of analysis.findings(file)) {
    const line = lineOf(analysis.text(file)!, span.start);
    perLine.set(line, (perLine.get(line) ?? 0) + 1);
  }
  // To come down to three; whoever brings it down lowers the bound.
  expect(Math.max(...perLine.values())).toBeLessThanOrEqual(6);
});
