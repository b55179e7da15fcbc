/**
 * `schedule --keep` and `--near`: a plan on the wall, and what has moved since.
 *
 * One at work from 09:00 on. Kept: the first job dusts 09:00 to 09:30 and coats to 09:45, the second to 10:15 and 10:30; the
 * second coats go on at 11:45 and 12:30, two hours after the first.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { FILES, JOB } from "./bench.ts";
import { runCli } from "./run-cli.ts";

const second = JOB.slice(JOB.indexOf("job shelf_job"))
  .replace("shelf_job", "later_job")
  .replace("09:00", "09:15");
const BOTH = { ...FILES, "job.finish": `${JOB}\n${second}` };

async function keep(): Promise<string> {
  let kept = "";
  const { status } = await runCli(["schedule", "job.finish", "--keep", "plan.json"], {
    files: BOTH,
    look: (home) => {
      kept = readFileSync(path.join(home, "plan.json"), "utf8");
    },
  });
  expect(status).toBe(0);
  return kept;
}

const near = async (text: string, kept: string, more: readonly string[] = []) => {
  const files = { ...BOTH, "job.finish": text, "plan.json": kept };
  return runCli(["schedule", "job.finish", "--near", "plan.json", ...more], { files });
};

const sinceOf = (stdout: string): readonly string[] =>
  stdout.slice(0, stdout.indexOf("\n\n")).split("\n").slice(1);

test("a plan of which nothing has changed has not moved", async () => {
  const kept = await keep();
  expect(JSON.parse(kept)).toMatchObject({ made_by: "finishwright schedule", version: 1 });
  expect(sinceOf((await near(BOTH["job.finish"], kept)).stdout)).toEqual(["  Nothing has moved."]);
});

test("what has moved is told with its reason, what is new and what is gone as well", async () => {
  const kept = await keep();
  // A quarter of an hour more of dusting pushes all of the first job by as much; the second begins as soon as it can, and
  // its dusting then takes as much longer.
  const longer = await near(BOTH["job.finish"].replace("takes 30 min", "takes 45 min"), kept);
  expect(sinceOf(longer.stdout)).toEqual([
    "  Mon 8 Mar 2027 09:45, not Mon 8 Mar 2027 09:30: clear_coat, coat 1 of 2 on board of shelf_job, because `dust` before it ends Mon 8 Mar 2027 09:45",
    "  Mon 8 Mar 2027 10:00, not Mon 8 Mar 2027 09:45: dust on board of later_job, because people are at work on `clear_coat, coat 1 of 2` of `shelf_job` until then",
    "  Mon 8 Mar 2027 10:45, not Mon 8 Mar 2027 10:15: clear_coat, coat 1 of 2 on board of later_job, because `dust` before it ends Mon 8 Mar 2027 10:45",
    "  Mon 8 Mar 2027 12:00, not Mon 8 Mar 2027 11:45: clear_coat, coat 2 of 2 on board of shelf_job, because `wait until recoat` before it ends Mon 8 Mar 2027 12:00",
    "  Mon 8 Mar 2027 13:00, not Mon 8 Mar 2027 12:30: clear_coat, coat 2 of 2 on board of later_job, because `wait until recoat` before it ends Mon 8 Mar 2027 13:00",
  ]);
  const closed = await near(BOTH["job.finish"].replace("Fri 09:00", "Fri 09:30"), kept);
  expect(sinceOf(closed.stdout)[0]).toContain(
    "not Mon 8 Mar 2027 09:00: dust on board of shelf_job, because the shop is closed then",
  );
  // A coat less of the second job, and a third job in the hours that are left.
  const other = second.replace("later_job", "third_job").replace("09:15", "12:45");
  const fewer = await near(
    BOTH["job.finish"].replace(
      /(later_job[\s\S]*)clearing\(clear: clear_coat\)/u,
      "$1clearing(clear: clear_coat, coats: 1)",
    ) + other,
    kept,
  );
  expect(sinceOf(fewer.stdout)).toEqual([
    "  Mon 8 Mar 2027 12:45, new: dust on board of third_job",
    "  Mon 8 Mar 2027 13:15, new: clear_coat, coat 1 of 2 on board of third_job",
    "  Mon 8 Mar 2027 15:30, new: clear_coat, coat 2 of 2 on board of third_job",
    "  not done any more: clear_coat on board of later_job, was Mon 8 Mar 2027 12:30",
  ]);
  const json = await near(BOTH["job.finish"].replace("takes 30 min", "takes 45 min"), kept, [
    "--format",
    "json",
  ]);
  const { since_kept: since } = JSON.parse(json.stdout) as {
    since_kept: { let_go: boolean; moved: unknown[] };
  };
  expect(since).toMatchObject({ let_go: false, new: [], gone: [] });
  expect(since.moved[1]).toEqual({
    job: "later_job",
    what: "dust",
    where: "board",
    start: "2027-03-08T10:00",
    from: "2027-03-08T09:45",
    why: "people are at work on `clear_coat, coat 1 of 2` of `shelf_job` until then",
  });
});

test("what is no kept plan is neither read nor written over", async () => {
  const files = {
    ...BOTH,
    "plan.json": "{}",
    "old.json": '{"made_by":"finishwright schedule","version":2,"jobs":[]}',
  };
  const run = (...argv: string[]) => runCli(["schedule", "job.finish", ...argv], { files });
  for (const file of ["plan.json", "old.json"]) {
    const read = await run("--near", file);
    expect([read.status, read.stdout]).toEqual([2, ""]);
    expect(read.stderr).toContain(`\`${file}\` is not a plan that this version has kept.`);
    const written = await run("--keep", file);
    expect(written.status).toBe(2);
    expect(written.stderr).toContain(`\`${file}\` is not a kept plan and is left as it is.`);
  }
  expect((await run("--near", "none.json")).stderr).toContain("The plan `none.json`");
  expect((await run("--keep", "new.json", "--job", "later_job")).stderr).toContain("Leave one of them out.");
});
