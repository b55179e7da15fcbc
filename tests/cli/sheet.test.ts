/** The command `sheet`: which sheets, in which form, where to, and how it ends. */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { FILES, JOB } from "./bench.ts";
import { runCli } from "./run-cli.ts";

const TWO = `${JOB}job again "Once more" {
  piece    shelf
  apply    clearing(clear: clear_coat, coats: 1) to board
}
recipe alone "Left alone" {
  step dust
}
`;
const files = { ...FILES, "two.finish": TWO };

const away = mkdtempSync(path.join(tmpdir(), "finishwright-sheet-"));
afterAll(() => rmSync(away, { recursive: true, force: true }));

describe("sheet", () => {
  test("is text where nothing is said: jobs first, then recipes without one", async () => {
    const { status, stdout, stderr } = await runCli(["sheet", "two.finish"], { files });
    expect(stderr).toBe("");
    expect(status).toBe(0);
    const heads = [...stdout.matchAll(/^(.+)\n=+$/gmu)].map(([, title]) => title);
    expect(heads).toEqual(["One shelf", "Once more", "Left alone"]);
    expect(stdout).toContain("Job sheet, `shelf_job` in two.finish");
    expect(stdout).toContain("Recipe sheet, `alone` in two.finish");
    // 2 m2 / 10 m2/L × 1.1
    expect(stdout).toContain("0.22 L.");
  });

  test("is of the jobs that are named", async () => {
    const { stdout } = await runCli(["sheet", "two.finish", "--job", "again"], { files });
    expect(stdout).toMatch(/^Once more\n/u);
    expect(stdout).not.toContain("One shelf");
    expect(stdout).not.toContain("Left alone");
  });

  test("of a job that is not there is wrong use, and says which there are", async () => {
    const wrong = await runCli(["sheet", "two.finish", "--job", "agian"], { files });
    expect(wrong).toMatchObject({
      status: 2,
      stdout: "",
      stderr: "finishwright: There is no job `agian`. Did you mean `again`?\n",
    });
    const other = await runCli(["sheet", "two.finish", "--job", "kitchen"], { files });
    expect(other.stderr).toBe(
      "finishwright: There is no job `kitchen`. The files have `shelf_job`, `again`.\n",
    );
    const recipe = await runCli(["sheet", "two.finish", "--format", "pdf"], { files });
    expect(recipe.status).toBe(2);
    expect(recipe.stderr).toContain("Allowed choices are text, markdown, html");
  });

  test("in other forms", async () => {
    const html = await runCli(["sheet", "job.finish", "--format", "html"], { files });
    expect(html.status).toBe(0);
    expect(html.stdout).toMatch(/^<!doctype html>\n<html lang="en">/u);
    const markdown = await runCli(["sheet", "job.finish", "--format", "markdown"], { files });
    expect(markdown.stdout).toMatch(/^# One shelf\n/u);
  });

  test("goes to a file, in the form that its name ends in unless another is said", async () => {
    const at = (name: string): string => path.join(away, name);
    const written = await runCli(["sheet", "job.finish", "-o", at("a.html")], { files });
    expect(written).toMatchObject({ status: 0, stdout: "", stderr: "" });
    expect(readFileSync(at("a.html"), "utf8")).toMatch(/^<!doctype html>/u);
    await runCli(["sheet", "job.finish", "-o", at("a.md")], { files });
    expect(readFileSync(at("a.md"), "utf8")).toMatch(/^# One shelf\n/u);
    await runCli(["sheet", "job.finish", "--output", at("a.txt")], { files });
    expect(readFileSync(at("a.txt"), "utf8")).toMatch(/^One shelf\n=/u);
    await runCli(["sheet", "job.finish", "-o", at("b.html"), "--format", "text"], { files });
    expect(readFileSync(at("b.html"), "utf8")).toMatch(/^One shelf\n=/u);
  });

  test("never goes over a recipe, nor where it cannot", async () => {
    const over = await runCli(["sheet", "job.finish", "-o", "job.finish"], { files });
    expect(over.status).toBe(2);
    expect(over.stderr).toBe(
      "finishwright: `job.finish` is a recipe, and the sheet would overwrite it. Give another name after `-o`.\n",
    );
    const nowhere = await runCli(["sheet", "job.finish", "-o", "gone/sheet.html"], { files });
    expect(nowhere.status).toBe(2);
    expect(nowhere.stderr).toBe(
      `finishwright: \`gone/sheet.html\` cannot be written: there is no folder \`${nowhere.folder}/gone\`. Make it first, or give another place.\n`,
    );
    const folder = await runCli(["sheet", "job.finish", "-o", away], { files });
    expect(folder.stderr).toBe(
      `finishwright: \`${away}\` is a folder, not a file. Give the name of a file in it.\n`,
    );
  });

  test("with errors is printed all the same, the findings on top, with status 1", async () => {
    const wrong = { ...FILES, "job.finish": JOB.replace("takes 30 min", "takes 30 m2") };
    const { status, stdout, stderr } = await runCli(["sheet", "job.finish"], { files: wrong });
    expect(status).toBe(1);
    expect(stdout).toContain("!!! Resolve before starting: 1 error, 1 warning\n");
    expect(stdout).toMatch(/!!! {2}1\. error wrong-unit \(job\.finish:22\): /u);
    expect(stdout.indexOf("wrong-unit")).toBeLessThan(stdout.indexOf("Safety"));
    expect(stderr).toContain("`job.finish` has an error, so the sheet may be wrong");
  });

  test("with errors of a used file ends with status 1 as well", async () => {
    const wrong = { ...FILES, "stock.finish": FILES["stock.finish"].replace("10 m2/L", "10 h") };
    const { status, stdout } = await runCli(["sheet", "job.finish"], { files: wrong });
    expect(status).toBe(1);
    expect(stdout).toContain("(stock.finish:3)");
  });

  test("of what cannot be read is none", async () => {
    expect(await runCli(["sheet", "gone.finish"], { files })).toMatchObject({ status: 2, stdout: "" });
    const none = await runCli(["sheet", "stock.finish"], { files });
    expect(none).toMatchObject({
      status: 0,
      stdout: "",
      stderr:
        "finishwright: `stock.finish` has neither jobs nor recipes, so there is no sheet. A job says `job NAME {`.\n",
    });
    expect((await runCli(["sheet"], { files })).stderr).toContain("missing required argument 'file'");
  });
});
