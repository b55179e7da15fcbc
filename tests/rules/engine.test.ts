/**
 * What holds whatever the job and what a job makes graver is one finding, the graver one: a hint on the recipe's line
 * never hides a job's warning.
 */
import { describe, expect, it } from "vitest";
import type { Severity } from "../../server/src/core/findings.ts";
import type { TradeRule } from "../../server/src/core/rules/rule.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { analyse, lineOf } from "../harness/check-text.ts";

/** By the wood of the surface; `unknown` where there is no job. */
type Levels = Readonly<Record<string, Severity>>;

/** Reports every layer, as gravely as the wood makes it. */
const byWood = (levels: Levels): TradeRule => ({
  id: "made-up",
  group: "layers",
  severity: "hint",
  docs: { summary: "", why: "", remedy: "", sources: [] },
  failing: [],
  passing: [],
  checks: {
    onLayer: ({ run, report }) => {
      const wood = run.surface?.substrate.name ?? "unknown";
      const severity = levels[wood];
      if (severity) report({ severity, headline: `On ${wood}`, why: "", remedy: "" });
    },
  },
});

const RECIPE = `recipe clear {
  for   wood
  layer waterborne_acrylic
  wait  until cured
}
`;
const PIECE = `piece shelf {
  surface top {
    shape area 1 m2
    wood  oak
  }
  surface base {
    shape area 1 m2
    wood  beech
  }
}
`;
const JOB = (name: string, surface: string) => `job ${name} {
  piece shelf
  apply clear to ${surface}
}
`;

/** `3 warning On oak (Job …)`, of a file. */
function told(levels: Levels, files: Readonly<Record<string, string>>, file: string): readonly string[] {
  const analyst = createAnalyst({
    resolve: (from, path) => new URL(path, `file:///${from}`).pathname.slice(1),
    parts: { rules: [byWood(levels)] },
  });
  for (const [name, text] of Object.entries(files)) analyst.setFile(name, text);
  return analyst
    .analysis()
    .findings(file)
    .filter(({ rule }) => rule === "made-up")
    .map(
      ({ span, severity, headline, where }: FileFinding) =>
        `${lineOf(files[file]!, span.start)} ${severity} ${headline}${where ? ` (${where})` : ""}`,
    );
}

const inOneFile = (levels: Levels, ...jobs: readonly string[]): readonly string[] =>
  told(levels, { "a.finish": RECIPE + PIECE + jobs.join("") }, "a.finish");

describe("a rule that is as grave as the wood makes it", () => {
  const oak = JOB("first", "top");
  const beech = JOB("second", "base");

  it("is told once, by the recipe, where the job makes it no graver", () => {
    expect(inOneFile({ unknown: "hint", oak: "hint" }, oak)).toEqual(["3 hint On unknown"]);
    expect(inOneFile({ unknown: "warning", oak: "hint" }, oak)).toEqual(["3 warning On unknown"]);
  });

  it("is told once, for the job, where that makes it graver", () => {
    expect(inOneFile({ unknown: "hint", oak: "warning" }, oak)).toEqual([
      "3 warning On oak (Job `first`, surface `top`.)",
    ]);
    expect(inOneFile({ unknown: "warning", oak: "error" }, oak)).toEqual([
      "3 error On oak (Job `first`, surface `top`.)",
    ]);
  });

  it("is told for the jobs that make it graver alone", () => {
    expect(inOneFile({ unknown: "hint", oak: "warning", beech: "hint" }, oak, beech)).toEqual([
      "3 warning On oak (Job `first`, surface `top`.)",
    ]);
    expect(inOneFile({ unknown: "hint", oak: "warning", beech: "error" }, oak, beech)).toEqual([
      "3 error On beech (Job `second`, surface `base`.)",
      "3 warning On oak (Job `first`, surface `top`.)",
    ]);
  });

  it("stands on the job's line where the recipe is in another file, whose hint stays there", () => {
    const files = { "r.finish": RECIPE, "a.finish": `use "r.finish"\n${PIECE}${oak}` };
    const graver: Levels = { unknown: "hint", oak: "warning" };
    expect(told(graver, files, "r.finish")).toEqual(["3 hint On unknown"]);
    expect(told(graver, files, "a.finish")).toEqual(["14 warning On oak (Job `first`, surface `top`.)"]);
    expect(told({ unknown: "hint", oak: "hint" }, files, "a.finish")).toEqual([]);
  });
});

describe("real rules", () => {
  const found = (text: string, rule: string) =>
    analyse({ "test.finish": text })
      .findings("test.finish")
      .filter((finding) => finding.rule === rule);

  it("warn once of steel wool before a waterborne clear, whatever the job", () => {
    const text = `recipe clear {
  for    wood
  safety dust_mask
  step   sand 120, 180
  note   "Wire wool with the grain."
  step   dust
  layer  waterborne_acrylic
  wait   until cured
}
`;
    const alone = found(text, "steel-wool-under-waterborne");
    expect(alone.map(({ severity, job }) => [severity, job])).toEqual([["warning", undefined]]);
    const inJob = found(text + PIECE + JOB("first", "top"), "steel-wool-under-waterborne");
    expect(inJob.map(({ severity, job }) => [severity, job])).toEqual([["warning", undefined]]);
    expect(lineOf(text, inJob[0]!.span.start)).toBe(7);
  });

  it("say once, with both times, that a wait is too short whatever the job and much too short in a job's air", () => {
    // 2 h on the label; 1 h 55 min are within the margin of 5 %. At 15 C and 60 % RH × 1.82 (`waits.test.ts`): 3 h 39 min.
    const text = `material clear_coat {
  family waterborne acrylic
  recoat 2 h to 24 h
  rated  21 C, 50 % RH
}
recipe clear {
  layer clear_coat
  wait  115 min
  layer clear_coat
  wait  until cured
}
${PIECE}shop cold {
  air 15 C, 60 % RH
}
job first {
  piece shelf
  in    cold
  apply clear to top
}
`;
    const [finding, ...more] = found(text, "recoat-too-early");
    expect(more).toEqual([]);
    expect(finding?.severity).toBe("warning");
    expect(finding?.headline).toContain("needs 3 h 39 min here");
  });
});
