/**
 * Faults in the program itself: parts that throw are put in, and everything that does not depend on them still stands.
 */
import { describe, expect, it } from "vitest";
import { TRADE_RULES } from "../../server/src/core/rules/registry.ts";
import type { RuleChecks, TradeRule } from "../../server/src/core/rules/rule.ts";
import { planWork } from "../../server/src/core/schedule/plan.ts";
import { runAssumed } from "../../server/src/core/surface/run.ts";
import { type AnalystOptions, createAnalyst } from "../../server/src/features/analyst.ts";
import { readConfig } from "../../server/src/features/config.ts";
import type { Analysis } from "../../server/src/features/types.ts";
import { runCli } from "../cli/run-cli.ts";
import { lineOf } from "../harness/check-text.ts";

const FILE = "test.finish";

/** Two recipes and two jobs; sanding and dusting bring no findings but that a mask is not asked for. */
const TEXT = `piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

shop mill {
  open 09:00 to 17:00
}

recipe smooth {
  for  wood
  step sand 150
  step dust
}

recipe smoother {
  for  wood
  step sand 180
  step dust
}

job first {
  piece box
  in    mill
  start 2027-03-01
  apply smooth to lid
}

job second {
  piece box
  in    mill
  start 2027-03-08
  apply smoother to lid
}
`;

const boom = (): never => {
  throw new TypeError("on\npurpose");
};

const throwing = (checks: RuleChecks): TradeRule => ({
  ...TRADE_RULES[0]!,
  id: "throws-on-purpose",
  looksAt: undefined,
  checks,
});

interface Faulty {
  readonly analysis: Analysis;
  readonly told: string[];
}

function analyse(text: string, parts: AnalystOptions["parts"], config?: string): Faulty {
  const told: string[] = [];
  const analyst = createAnalyst({
    resolve: (_, path) => path,
    parts: parts ?? {},
    onFault: ({ part }) => told.push(part),
    ...(config ? { config: () => readConfig(config).config } : {}),
  });
  analyst.setFile(FILE, text);
  return { analysis: analyst.analysis(), told };
}

const drawn = (analysis: Analysis, text: string): readonly string[] =>
  analysis
    .findings(FILE)
    .map(({ rule, severity, span }) => `${lineOf(text, span.start)} ${rule} ${severity}`);

const sound = drawn(analyse(TEXT, {}).analysis, TEXT);

describe("a rule that throws", () => {
  const lines = (text: string): readonly number[] =>
    text.split("\n").flatMap((line, index) => (/^(recipe|job) /.test(line) ? [index + 1] : []));
  const [smooth, smoother, first, second] = lines(TEXT);
  it.each([
    ["at a step", { onStep: boom }, [smooth, smoother, first, second]],
    ["at the end of a run", { onRun: boom }, [smooth, smoother, first, second]],
    ["at a job", { onJob: boom }, [first, second]],
    ["at one recipe", { onRun: ({ run }) => (run.recipe?.name === "smooth" ? boom() : undefined) }, [smooth]],
  ] satisfies [string, RuleChecks, unknown][])("%s costs its own findings alone", (_, checks, at) => {
    const { analysis, told } = analyse(TEXT, { rules: [throwing(checks), ...TRADE_RULES] });
    const expected = [...sound, ...at.map((line) => `${line} internal-error error`)];
    expect([...drawn(analysis, TEXT)].sort()).toEqual([...expected].sort());
    expect(sound.length).toBeGreaterThan(0);
    expect(new Set(told)).toEqual(new Set(["The rule `throws-on-purpose`"]));
  });

  it("is named with what it said, on the name of what it was looking at", () => {
    const { analysis } = analyse(TEXT, { rules: [throwing({ onRun: boom })] });
    const found = analysis.findings(FILE).filter(({ rule }) => rule === "internal-error");
    expect(found.map(({ span }) => TEXT.slice(span.start, span.end))).toEqual([
      "smooth",
      "smoother",
      "first",
      "second",
    ]);
    expect(found[0]!.message).toBe(
      [
        "The rule `throws-on-purpose` failed",
        'This is a bug in Finishwright, not in your recipe: what should have been checked here was not, so "nothing found" means nothing here. (TypeError: on purpose)',
        "Check this part by hand, and report the bug with the recipe.",
      ].join("\n"),
    );
  });

  it("keeps what it had found before", () => {
    const once = throwing({
      onStep: ({ report, index }) => {
        if (index === 1) boom();
        report({ headline: "Found", why: "Why.", remedy: "Do." });
      },
    });
    const { analysis } = analyse(TEXT, { rules: [once] });
    expect(analysis.findings(FILE).filter(({ rule }) => rule === once.id)).toHaveLength(2);
  });

  it("can be neither allowed nor switched off", () => {
    const text = TEXT.replace("recipe smooth {", "# allow internal-error: quiet, please\nrecipe smooth {");
    const config = JSON.stringify({ rules: { "internal-error": "off" } });
    const { analysis } = analyse(text, { rules: [throwing({ onRun: boom })] }, config);
    expect(analysis.findings(FILE).filter(({ rule }) => rule === "internal-error")).toHaveLength(4);
    expect(readConfig(config).complaints).toEqual([
      "`internal-error` cannot be set: it says that something was not checked.",
    ]);
  });

  it("several at one place are one finding", () => {
    const other = { ...throwing({ onRun: boom }), id: "throws-as-well" };
    const { analysis } = analyse(TEXT, { rules: [throwing({ onRun: boom }), other] });
    const [found] = analysis.findings(FILE).filter(({ rule }) => rule === "internal-error");
    expect(found!.message).toContain("The rule `throws-on-purpose` and the rule `throws-as-well` failed");
  });
});

describe("other parts that throw", () => {
  it("a plan costs its job alone", () => {
    const { analysis } = analyse(TEXT, {
      plan: (input) => (input.start?.startsWith("2027-03-01") ? boom() : planWork(input)),
    });
    expect(analysis.jobs(FILE).map(({ job }) => job.name)).toEqual(["second"]);
    expect(analysis.totals(FILE).map(({ name }) => name)).toEqual(["second"]);
    expect(analysis.jobLenses(FILE, ["error"]).map(({ job }) => job)).toEqual(["second"]);
    expect(analysis.sheets(FILE).map(({ name }) => name)).toContain("second");
    const fault = analysis.findings(FILE).filter(({ rule }) => rule === "internal-error");
    expect(fault.map(({ span }) => TEXT.slice(span.start, span.end))).toEqual(["first"]);
    expect(fault[0]!.message).toMatch(/^The job `first` failed/);
    expect(analysis.hover(FILE, TEXT.indexOf("second"))?.markdown).toContain("second");
  });

  it("a recipe that cannot be run costs its own findings alone", () => {
    const { analysis } = analyse(TEXT, {
      assumed: (recipe, ...rest) => (recipe.name === "smooth" ? boom() : runAssumed(recipe, ...rest)),
    });
    const found = drawn(analysis, TEXT);
    expect(found.filter((line) => line.includes("internal-error"))).toHaveLength(1);
    expect(found).toContain(`${lineOf(TEXT, TEXT.indexOf("step sand 180"))} no-dust-mask warning`);
  });

  it("a check that fails as a whole answers with the syntax problems", () => {
    const text = `${TEXT}\nrecipe broken {\n  wait\n}\n`;
    // Not even the list of rules can be gone through.
    const rules = new Proxy([], { get: boom });
    const { analysis, told } = analyse(text, { rules });
    expect(drawn(analysis, text)).toEqual([
      "1 internal-error error",
      `${lineOf(text, text.indexOf("wait"))} syntax error`,
    ]);
    expect(told).toEqual(["The check of this file"]);
    expect(analysis.symbols(FILE).length).toBeGreaterThan(0);
  });

  it("a project's settings that fail answer with the syntax problems", () => {
    const text = `${TEXT}\nrecipe broken {\n  wait\n}\n`;
    const analyst = createAnalyst({ resolve: (_, path) => path, config: boom });
    analyst.setFile(FILE, text);
    expect(drawn(analyst.analysis(), text)).toEqual([
      "1 internal-error error",
      `${lineOf(text, text.indexOf("wait"))} syntax error`,
    ]);
  });

  it("a `use` line that cannot be followed is named, and the rest of the file is checked", () => {
    const text = `use "other.finish"\n${TEXT}`;
    const analyst = createAnalyst({ resolve: boom });
    analyst.setFile(FILE, text);
    const found = drawn(analyst.analysis(), text);
    expect(found).toContain("1 internal-error error");
    expect(found.filter((line) => line.includes("no-dust-mask")).length).toBeGreaterThan(0);
  });
});

describe("the command line", () => {
  const parts = { rules: [throwing({ onRun: boom }), ...TRADE_RULES] };
  it.each([["check"], ["totals"], ["schedule"], ["sheet"], ["shopping"]])(
    "%s ends with 2 and says that the recipe is not to blame",
    async (command) => {
      const { status, stderr } = await runCli([command, FILE], { files: { [FILE]: TEXT }, parts });
      expect(status).toBe(2);
      expect(stderr).toContain(
        "finishwright: The rule `throws-on-purpose` failed (TypeError: on purpose).\n",
      );
      expect(stderr).toContain("This is a bug in Finishwright, not in your recipe");
    },
  );

  it("prints what was found all the same", async () => {
    const { stdout } = await runCli(["check", FILE], { files: { [FILE]: TEXT }, parts });
    expect(stdout).toContain("no-dust-mask");
    expect(stdout).toContain("internal-error");
  });
});
