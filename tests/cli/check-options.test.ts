/** `check` as people script it: which findings count, safe fixes, baselines, the forms that code hosts read. */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parse } from "parse5";
import { describe, expect, test } from "vitest";
import { runCli } from "./run-cli.ts";

/** An error at 2:10, a hint on the first line: nothing in it is used. */
const WRONG = 'use "clean.finish"\nmaterial a {\n  covers 3 h\n  family glaze\n}\n';
const CLEAN = "shop mill {\n}\n";
/** A comment that allows what is not found, which can be taken out safely. */
const ALLOWS = "# allow grit-jump: it is not there\nshop mill {\n}\n";
const files = { "wrong.finish": WRONG, "clean.finish": CLEAN };

const rulesOf = (stdout: string): readonly string[] =>
  (JSON.parse(stdout) as readonly { rule: string }[]).map(({ rule }) => rule);

describe("which findings count", () => {
  test("only errors are reported when asked to be quiet", async () => {
    const { stdout } = await runCli(["check", "wrong.finish", "--quiet", "--format", "lines"], { files });
    expect(stdout.match(/: \w+: /gu)).toEqual([": error: "]);
  });

  test("only what was asked for by name is reported", async () => {
    const all = await runCli(["check", "wrong.finish", "--format", "json"], { files });
    const hint = rulesOf(all.stdout).find((rule) => rule.startsWith("unused"))!;
    const one = await runCli(["check", "wrong.finish", "--rule", hint, "--format", "json"], { files });
    expect(rulesOf(one.stdout)).toEqual([hint]);
    expect(one.status).toBe(0);
  });

  test("a rule that does not exist is wrong use, with the nearest name", async () => {
    const { status, stderr } = await runCli(["check", "--rule", "grit-jmp"], { files });
    expect(status).toBe(2);
    expect(stderr).toContain("Did you mean grit-jump?");
  });

  const warned = {
    "w.finish": readFileSync(path.join(import.meta.dirname, "../../samples/mistakes.finish"), "utf8"),
  };
  test("more warnings than are allowed end with 1", async () => {
    const argv = ["check", "w.finish", "--rule", "dust-left-on-surface", "--format", "json"];
    const { stdout } = await runCli(["check", "w.finish", "--format", "json"], { files: warned });
    const all = JSON.parse(stdout) as readonly { rule: string; severity: string }[];
    const warning = all.find(({ severity }) => severity === "warning")!;
    argv[3] = warning.rule;
    const count = all.filter(({ rule }) => rule === warning.rule).length;
    expect((await runCli([...argv, "--max-warnings", String(count)], { files: warned })).status).toBe(0);
    expect((await runCli([...argv, "--max-warnings", String(count - 1)], { files: warned })).status).toBe(1);
    expect((await runCli([...argv, "--max-warnings", "-1"], { files: warned })).status).toBe(2);
  });
});

describe("standard input", () => {
  test("is checked under its name, with what it uses from there", async () => {
    const argv = ["check", "-", "--input-name", "sub/wrong.finish", "--format", "lines"];
    const beside = { "sub/clean.finish": CLEAN };
    const { stdout, status } = await runCli(argv, { files: beside, input: WRONG });
    expect(stdout).toContain("sub/wrong.finish:3:10: error: ");
    expect(stdout).not.toContain("use-not-found");
    expect(status).toBe(1);
  });

  test.each([["totals"], ["shopping"], ["sheet"]])("%s takes it as well", async (command) => {
    const sample = readFileSync(path.join(import.meta.dirname, "../../samples/chairs.finish"), "utf8");
    const input = sample.replace(/^use .*$/gmu, (line) => line);
    const samples = path.join(import.meta.dirname, "../../samples");
    const argv = [command, "-", "--input-name", path.join(samples, "chairs.finish")];
    const { stdout, stderr, status } = await runCli(argv, { input });
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout.length).toBeGreaterThan(100);
  });

  test("stands alone", async () => {
    expect((await runCli(["check", "-", "wrong.finish"], { files })).status).toBe(2);
    expect((await runCli(["check", "wrong.finish", "--input-name", "a.finish"], { files })).stderr).toContain(
      "Give `-` as the only path with it.",
    );
  });
});

describe("safe fixes", () => {
  test("are written, and what is left is reported", async () => {
    let after = "";
    const { status, stderr } = await runCli(["check", "a.finish", "--fix"], {
      files: { "a.finish": ALLOWS },
      look: (folder) => {
        after = readFileSync(path.join(folder, "a.finish"), "utf8");
      },
    });
    expect(after).toBe(CLEAN);
    expect(stderr).toBe("Fixed `a.finish`.\n");
    expect(status).toBe(0);
  });

  test("are shown as a change that git reads, and nothing is written", async () => {
    let after = "";
    const { status, stdout } = await runCli(["check", "a.finish", "--diff"], {
      files: { "a.finish": ALLOWS },
      look: (folder) => {
        after = readFileSync(path.join(folder, "a.finish"), "utf8");
      },
    });
    expect(after).toBe(ALLOWS);
    expect(stdout).toBe(
      "--- a/a.finish\n+++ b/a.finish\n@@ -1,3 +1,2 @@\n-# allow grit-jump: it is not there\n shop mill {\n }\n",
    );
    expect(status).toBe(1);
  });

  test("of standard input are shown and cannot be written", async () => {
    const input = ALLOWS;
    expect((await runCli(["check", "-", "--diff"], { input })).stdout).toContain("\n-# allow grit-jump");
    expect((await runCli(["check", "-", "--fix"], { input })).status).toBe(2);
  });

  test("name what cannot be read once", async () => {
    const input = { files: { "a.finish": ALLOWS } };
    for (const how of ["--fix", "--diff"]) {
      const { status, stderr } = await runCli(["check", "a.finish", "none.finish", how], input);
      expect(stderr.match(/none\.finish/gu)?.length).toBe(1);
      expect(status).toBe(2);
    }
  });

  test("leave a file that has changed since it was read", async () => {
    const { status, stderr } = await runCli(["check", "a.finish", "--fix"], {
      files: { "a.finish": ALLOWS },
      beforeWriting: (file) => writeFileSync(file, CLEAN),
    });
    expect(stderr).toContain("`a.finish` has changed");
    expect(status).toBe(2);
  });

  test("never state a duty: one click makes no danger disappear", async () => {
    const mistakes = readFileSync(path.join(import.meta.dirname, "../../samples/mistakes.finish"), "utf8");
    const { stdout } = await runCli(["check", "m.finish", "--diff"], { files: { "m.finish": mistakes } });
    expect(stdout).toBe("");
  });
});

describe("a baseline", () => {
  test("lists what is known, and only what is new counts, wherever it stands now", async () => {
    let written = "";
    const first = await runCli(["check", "wrong.finish", "--write-baseline", "known.json"], {
      files,
      look: (folder) => {
        written = readFileSync(path.join(folder, "known.json"), "utf8");
      },
    });
    expect(first.status).toBe(0);
    const moved = { ...files, "known.json": written, "wrong.finish": `\n# above\n${WRONG}` };
    const again = await runCli(["check", "wrong.finish", "--baseline", "known.json"], { files: moved });
    expect(again.status).toBe(0);
    expect(again.stderr).toMatch(/^finishwright: \d+ findings of the baseline left out\.\n$/u);
    const more = { ...moved, "wrong.finish": `${WRONG}material b {\n  covers 4 h\n  family glaze\n}\n` };
    const worse = await runCli(["check", "wrong.finish", "--baseline", "known.json", "--format", "lines"], {
      files: more,
    });
    expect(worse.status).toBe(1);
    expect(worse.stdout).toContain("wrong.finish:7:10: error: ");
    expect(worse.stdout).not.toContain("wrong.finish:3:10: error: ");
  });

  test("is the same from another folder", async () => {
    let written = "";
    await runCli(["check", "wrong.finish", "--write-baseline", "known.json"], {
      files,
      look: (folder) => {
        written = readFileSync(path.join(folder, "known.json"), "utf8");
      },
    });
    const { status } = await runCli(["check", "../wrong.finish", "--baseline", "../known.json"], {
      files: { ...files, "known.json": written, "sub/x.finish": CLEAN },
      cwd: "sub",
    });
    expect(status).toBe(0);
  });

  test("never takes the place of another file, and must be one", async () => {
    const other = { ...files, "other.json": "{}" };
    const write = await runCli(["check", "wrong.finish", "--write-baseline", "other.json"], { files: other });
    expect([write.status, write.stderr]).toEqual([
      2,
      "finishwright: `other.json` is not a baseline and is left as it is. Give another name.\n",
    ]);
    expect(
      (await runCli(["check", "wrong.finish", "--baseline", "other.json"], { files: other })).status,
    ).toBe(2);
    expect((await runCli(["check", "wrong.finish", "--baseline", "none.json"], { files })).stderr).toContain(
      "`--write-baseline none.json` makes one.",
    );
  });
});

describe("forms that code hosts read", () => {
  test("workflow commands: one a finding, with its place", async () => {
    const { stdout } = await runCli(["check", "wrong.finish", "--quiet", "--format", "github"], { files });
    expect(stdout).toMatch(
      /^::error file=wrong\.finish,line=3,endLine=3,col=10,endColumn=13,title=[^\n:,]+::[^\n]+\n$/u,
    );
  });

  test("a code quality report: the fields that the host requires, each fingerprint once", async () => {
    const { stdout } = await runCli(["check", "wrong.finish", "--format", "gitlab"], { files });
    const issues = JSON.parse(stdout) as readonly Record<string, unknown>[];
    expect(issues.length).toBeGreaterThan(1);
    expect(new Set(issues.map(({ fingerprint }) => fingerprint)).size).toBe(issues.length);
    for (const issue of issues) {
      expect(Object.keys(issue)).toEqual([
        "description",
        "check_name",
        "fingerprint",
        "severity",
        "location",
      ]);
      expect(["info", "minor", "major", "critical", "blocker"]).toContain(issue.severity);
    }
  });

  test("JUnit: a suite a file, counts that agree with what is in it", async () => {
    const hostile = 'a"<&b.finish';
    const { stdout } = await runCli(["check", hostile, "clean.finish", "--format", "junit"], {
      files: { ...files, [hostile]: WRONG },
    });
    const count = (of: RegExp): number => stdout.match(of)?.length ?? 0;
    expect(stdout).toContain(`<testsuites name="finishwright" tests="${count(/<testcase /gu)}" `);
    expect(stdout).toContain(
      `failures="${count(/<failure /gu)}" errors="0">\n  <testsuite name="a&quot;&lt;&amp;b`,
    );
    expect(count(/<testsuite /gu)).toBe(2);
    // An HTML reader takes XML elements as unknown ones: what it finds inside shows that nothing broke out.
    expect(
      JSON.stringify(parse(stdout), (key, value) => (key === "parentNode" ? undefined : value)),
    ).toContain('"value":"a\\"<&b.finish"');
  });
});

test("how often each rule has something to say stands below the findings", async () => {
  const { stdout } = await runCli(["check", "wrong.finish", "--statistics"], { files });
  expect(stdout).toMatch(/\n\nFindings by rule:\n1 {2}unused-name {2}hint 1\n1 {2}wrong-unit {3}error 1\n$/u);
});

test("colours come when they are asked for, whatever the environment says", async () => {
  const coloured = await runCli(["check", "wrong.finish", "--colour", "always"], {
    files,
    env: { NO_COLOR: "1" },
  });
  expect(coloured.stdout).toContain("\u001b[31m");
  const plain = await runCli(["check", "wrong.finish", "--colour", "never"], { files, isTTY: true });
  expect(plain.stdout).not.toContain("\u001b");
});
