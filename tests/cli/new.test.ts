/** `new`: by options, by questions, by a template, and that no file is written over. */
import { existsSync, readFileSync, symlinkSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { starterText } from "../../server/src/starter/starter-text.ts";
import { TEMPLATES } from "../../server/src/starter/templates.ts";
import { runCli } from "./run-cli.ts";

const OPTIONS = "--piece bench --wood teak --now bare --look outdoors --place garage".split(" ");
const BENCH = { piece: "bench", wood: "teak", now: "bare", look: "outdoors", place: "garage" } as const;

/** What a person types, line by line, and what was asked. */
const typing = (answers: readonly string[]) => {
  const asked: string[] = [];
  const ask = async (question: string): Promise<string | undefined> => {
    asked.push(question);
    return answers[asked.length - 1];
  };
  return { asked, ask };
};

describe("by options", () => {
  test("prints the recipe, in the units that are asked for", async () => {
    const run = await runCli(["new", ...OPTIONS, "--units", "inches"]);
    expect(run).toMatchObject({
      status: 0,
      stderr: "",
      stdout: starterText({ ...BENCH, units: "inches" }),
    });
  });

  test.each([
    [{ LANG: "en_US.UTF-8" }, "inches"],
    [{ LANG: "en_US.UTF-8", LC_MEASUREMENT: "de_DE.UTF-8" }, "metric"],
    [{ LANG: "C" }, "metric"],
  ] as const)("takes the units of %j where nobody says which", async (env, units) => {
    const { stdout } = await runCli(["new", ...OPTIONS], { env });
    expect(stdout).toBe(starterText({ ...BENCH, units }));
    const { stdout: desk } = await runCli(["new", "--template", "oiled-desk"], { env });
    expect(desk).toContain(units === "inches" ? " in\n" : " mm\n");
  });

  test("takes the units of the size", async () => {
    const { stdout } = await runCli(["new", ...OPTIONS, "--size", "60 x 16 x 18 in"]);
    expect(stdout).toBe(starterText({ ...BENCH, size: [60, 16, 18], units: "inches" }));
  });

  test("makes a file that `check` finds nothing wrong with", async () => {
    const made = await runCli(["new", "bench.finish", ...OPTIONS], {
      look: (folder) =>
        expect(readFileSync(path.join(folder, "bench.finish"), "utf8")).toBe(
          starterText({ ...BENCH, units: "metric" }),
        ),
    });
    expect(made).toMatchObject({ status: 0, stdout: "" });
    expect(made.stderr).toBe(
      "Wrote `bench.finish`. Next: finishwright check bench.finish, then finishwright sheet bench.finish.\n",
    );
    const checked = await runCli(["check", "bench.finish"], {
      files: { "bench.finish": starterText({ ...BENCH, units: "metric" }) },
    });
    expect(checked.status).toBe(0);
  });

  test.each([
    [["--wood", "mahogony"], "`--wood mahogony` is not possible here. It takes oak, ash"],
    [["--size", "2 x 3 m"], "`--size 2 x 3 m`: Write length x depth x height, such as"],
    [["--now", "unknown", "--look", "kept"], "`--look kept` is not possible here. It takes clear, warm"],
  ])("%j is answered with what is possible", async (more, text) => {
    const { status, stdout, stderr } = await runCli(["new", ...OPTIONS, ...more]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(text);
  });

  test("what is missing is named where nobody can be asked", async () => {
    const { status, stderr } = await runCli(["new", "--piece", "table"]);
    expect(status).toBe(2);
    expect(stderr).toMatch(/`--wood` is missing: What is it made of\? One of oak, ash/u);
  });
});

describe("by questions", () => {
  test("asks the same, takes numbers and words, and asks again what it cannot read", async () => {
    const { asked, ask } = typing(["3", "long", "60 x 16 x 18 in", "10", "1", "outdoors", "2"]);
    const { status, stdout, stderr } = await runCli(["new"], { ask });
    expect(status).toBe(0);
    expect(stdout).toBe(starterText({ ...BENCH, wood: "pine", size: [60, 16, 18], units: "inches" }));
    expect(stderr).toMatch(/^Write length x depth x height, such as/u);
    expect(asked[0]).toContain("\nWhat piece is it?\n   1 table     Table or desk: a top and a base\n");
  });

  test("writes what was answered", async () => {
    const { asked, ask } = typing(["3", "", "ebony", "Teak", "1", "outdoors", "2"]);
    const { status, stdout, stderr } = await runCli(["new"], { ask });
    expect(status).toBe(0);
    expect(stdout).toBe(starterText({ ...BENCH, units: "metric" }));
    expect(stderr).toBe("`ebony` is not one of them.\n");
    expect(asked).toHaveLength(7);
  });

  test("asks only what no option says, and nothing is written where the input ends", async () => {
    const { asked, ask } = typing(["", "oak"]);
    const { status, stderr } = await runCli(["new", "a.finish", "--piece", "table"], {
      ask,
      look: (folder) => expect(existsSync(path.join(folder, "a.finish"))).toBe(false),
    });
    expect(status).toBe(2);
    expect(stderr).toContain("The questions were not answered, so nothing was written.");
    expect(asked[0]).toContain("How large is it?");
    expect(asked[1]).toContain("What is it made of?");
  });
});

describe("by a template", () => {
  test.each(TEMPLATES)("$word", async ({ word, answers }) => {
    const { status, stdout } = await runCli(["new", "--template", word]);
    expect(status).toBe(0);
    expect(stdout).toBe(starterText({ ...answers, units: "metric" }));
  });

  test("goes with no other answer", async () => {
    const { status, stderr } = await runCli(["new", "--template", "oiled-desk", "--wood", "oak"]);
    expect(status).toBe(2);
    expect(stderr).toContain("`--template` answers every question, so leave out `--wood`, or the template.");
  });
});

describe("a file that is there", () => {
  test.each(["", "# Mine.\n"])("is never written over, nor is anything asked (%j)", async (text) => {
    const { asked, ask } = typing([]);
    const { status, stderr } = await runCli(["new", "a.finish"], {
      files: { "a.finish": text },
      ask,
      look: (folder) => expect(readFileSync(path.join(folder, "a.finish"), "utf8")).toBe(text),
    });
    expect(status).toBe(2);
    expect(stderr).toContain("`a.finish` is already there, so it was not changed. Give another name.");
    expect(asked).toEqual([]);
  });

  test("nor is what a broken link stands for, a folder, or a name that no recipe has", async () => {
    const link = await runCli(["new", "a.finish", ...OPTIONS], {
      prepare: (folder) => symlinkSync(path.join(folder, "gone.finish"), path.join(folder, "a.finish")),
      look: (folder) => expect(existsSync(path.join(folder, "gone.finish"))).toBe(false),
    });
    expect(link).toMatchObject({ status: 2, stderr: expect.stringContaining("is already there") });
    const { status, stderr } = await runCli(["new", "table.txt", ...OPTIONS]);
    expect(status).toBe(2);
    expect(stderr).toContain("A recipe's name ends in `.finish`");
    const missing = await runCli(["new", "no/such/a.finish", ...OPTIONS]);
    expect(missing).toMatchObject({ status: 2, stderr: expect.stringContaining("there is no folder") });
  });
});
