/**
 * One answer everywhere: three jobs of one shop in two files have the same dates by every command and in the editor, from
 * whichever file one looks.
 *
 * One at work, from 09:00 on: a job dusts for 30 min, coats for 15 and 2 h later for 15 again. The first ends at 12:00; the
 * second begins at 09:45, ends its first coat at 10:30 and its last from 12:30 to 12:45; the third begins at 10:30 and ends
 * its last coat from 13:15 to 13:30. Looked at alone the last two begin at 09:15 and end at 12:15.
 */
import { execFileSync } from "node:child_process";
import { rmSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import type { Hover } from "vscode-languageserver";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { startClient, VSCODE } from "../lsp/harness.ts";
import { JOB, STOCK } from "./bench.ts";
import { type CliInput, runCli } from "./run-cli.ts";

const WORDS = JOB.slice(JOB.indexOf("piece shelf"), JOB.indexOf("job shelf_job"));

const job = (name: string, start: string, ready = ""): string => `job ${name} {
  piece shelf
  in    room
  start 2027-03-08 ${start}
${ready && `  ready 2027-03-08 ${ready}\n`}  apply clearing(clear: clear_coat) to board
}
`;

const FILES = {
  "stock.finish": `${STOCK}${WORDS}`,
  "one.finish": `use "stock.finish"\n\n${job("first_job", "09:00")}\n${job("second_job", "09:15", "12:20")}`,
  "two.finish": `use "stock.finish"\n\n${job("third_job", "09:15", "12:30")}`,
};

const LAST_WORK = { first_job: "12:00", second_job: "12:45", third_job: "13:30" };

const cli = async (argv: readonly string[], more: Partial<CliInput> = {}): Promise<string> => {
  const { stdout, stderr } = await runCli(argv, { files: FILES, ...more });
  expect(stderr).not.toContain("left out");
  return stdout;
};

test.each(["one.finish", "two.finish"])(
  "every command dates the jobs of %s by the shop's one plan",
  async (file) => {
    const wanted = Object.entries(LAST_WORK).filter(([name]) =>
      FILES[file as keyof typeof FILES].includes(name),
    );
    const plans = JSON.parse(await cli(["schedule", file, "--format", "json"])) as {
      jobs: { name: string; last_work: string }[];
    };
    expect(plans.jobs.map((each) => [each.name, each.last_work.slice(11, 16)])).toEqual(wanted);
    const totals = JSON.parse(await cli(["totals", file, "--format", "json"])) as {
      jobs: { name: string; last_work: string }[];
    };
    expect(totals.jobs.map((each) => [each.name, each.last_work.slice(11, 16)])).toEqual(wanted);
    for (const [name, time] of wanted) {
      expect(await cli(["sheet", file, "--job", name])).toMatch(
        new RegExp(`Last work +Mon 8 Mar 2027 ${time}`, "u"),
      );
    }
  },
);

test("a finding that needs a plan is found by it, and changes with the other files of the project", async () => {
  // Its last wait ends two hours after its last work: 15:30 beside the others, 14:15 alone.
  expect(await cli(["check", "two.finish"])).toContain("cannot be ready before Mon 8 Mar 2027 15:30");
  const { "one.finish": _, ...without } = FILES;
  expect(await cli(["check", "two.finish"], { files: without })).toContain(
    "cannot be ready before Mon 8 Mar 2027 14:15",
  );
  // Asked for with others, of which one stands for itself.
  const lone = FILES["stock.finish"].replace("clear_coat", "other_clear");
  const all = await cli(["check", ".", "--format", "lines"], { files: { ...FILES, "lone.finish": lone } });
  expect(all).toContain("cannot be ready before Mon 8 Mar 2027 15:30");
});

test("the editor says the same of a file of the open folder, though the others are closed", async () => {
  const uriOf = (name: string): string => `file:///shop/${name}`;
  const disk = new Map(Object.entries(FILES).map(([name, text]) => [uriOf(name), text]));
  const client = await startClient({
    disk,
    folderFiles: [...disk.keys()],
    host: { createAnalyst },
    capabilities: { ...VSCODE, workspace: { ...VSCODE.workspace, diagnostics: { refreshSupport: false } } },
  });
  const uri = uriOf("two.finish");
  await client.open(uri, FILES["two.finish"]);
  // A client that cannot be told to ask again is answered when the plans are there.
  await client.request("workspace/symbol", { query: "third" });
  const findings = await client.findings(uri);
  expect(findings.join("\n")).toContain("cannot be ready before Mon 8 Mar 2027 15:30");
  const textDocument = { uri };
  const position = { line: 2, character: 6 };
  const hover = await client.request<Hover>("textDocument/hover", { textDocument, position });
  expect((hover.contents as { value: string }).value).toContain("13:30");
  await client.end();
});

describe("states that are compared are dated by the plan of their own project", () => {
  const within = (
    folder: string,
    files: Readonly<Record<string, string>>,
  ): Readonly<Record<string, string>> =>
    Object.fromEntries(Object.entries(files).map(([name, text]) => [`${folder}/${name}`, text]));
  const { "one.finish": _, ...without } = FILES;
  const lastWork = async (argv: readonly string[], input: Partial<CliInput>): Promise<unknown> => {
    const { stdout, stderr } = await runCli(["diff", "--format", "json", ...argv], input);
    expect(stderr).toBe("");
    const { files } = JSON.parse(stdout) as {
      files: { changes: { kind: string; figures: Record<string, unknown> }[] }[];
    };
    return files.flatMap(({ changes }) => changes).findLast(({ kind }) => kind === "job")?.figures.last_work;
  };
  // Beside the first two jobs, and by itself.
  const earlier = { before: "2027-03-08T13:30:00", after: "2027-03-08T12:15:00" };

  test("of two folders", async () => {
    const files = { ...within("old", FILES), ...within("new", without) };
    expect(await lastWork(["old/two.finish", "new/two.finish"], { files })).toEqual(earlier);
    expect(await lastWork(["old", "new"], { files })).toEqual(earlier);
  });

  test("of two files beside each other, of which neither is done beside the other", async () => {
    const later = FILES["two.finish"].replace("start 2027-03-08 09:15", "start 2027-03-08 10:15");
    const files = { ...without, "later.finish": later };
    expect(await lastWork(["two.finish", "later.finish"], { files })).toEqual({
      before: "2027-03-08T12:15:00",
      after: "2027-03-08T13:15:00",
    });
  });

  test("of a revision and of what lies here", async () => {
    const git = (folder: string, ...args: readonly string[]): void => {
      const who = ["-c", "user.name=A", "-c", "user.email=a@example.org", "-c", "commit.gpgsign=false"];
      execFileSync("git", [...who, ...args], { cwd: folder, stdio: "ignore" });
    };
    const prepare = (folder: string): void => {
      git(folder, "init", "-q");
      git(folder, "add", "-A");
      git(folder, "commit", "-q", "-m", "all three");
      rmSync(path.join(folder, "one.finish"));
    };
    expect(await lastWork(["HEAD", "--", "two.finish"], { files: FILES, prepare })).toEqual(earlier);
  });
});
