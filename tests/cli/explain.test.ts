/** `explain`, and what all commands have in common. */
import { describe, expect, test } from "vitest";
import { runCli } from "./run-cli.ts";

describe("explain", () => {
  test("says what a rule is about", async () => {
    const { status, stdout } = await runCli(["explain", "coat-over-wax"]);
    expect(status).toBe(0);
    expect(stdout).toContain("coat-over-wax");
    expect(stdout).toContain("Take the wax off with `step dewax with mineral_spirits`");
  });

  test("knows near misses, and lists all rules without a name", async () => {
    const near = await runCli(["explain", "coat-over-wx"]);
    expect(near.status).toBe(2);
    expect(near.stderr).toBe(
      "finishwright: There is no rule `coat-over-wx`. Did you mean `coat-over-wax`?\n",
    );
    expect((await runCli(["explain"])).stdout).toContain("grit-jump");
  });
});

describe("the others", () => {
  test("language-server serves, whatever an editor adds", async () => {
    for (const argv of [[], ["--stdio"], ["--pipe=x", "--clientProcessId=1"], ["--node-ipc"]]) {
      expect(await runCli(["language-server", ...argv])).toMatchObject({ status: 0, stdout: "serving\n" });
    }
  });

  test("demo ends well, although it shows mistakes", async () => {
    const { status, stdout } = await runCli(["demo"]);
    expect(stdout).toContain("error coat-over-wax");
    expect(stdout).toContain("full use");
    expect(status).toBe(0);
    expect((await runCli(["--help"])).stdout).not.toContain("demo");
  });
});
