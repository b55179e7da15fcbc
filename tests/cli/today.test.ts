/**
 * `--today`: what is left of a job is planned from a given day on, alike in every command.
 *
 * The shelf: 30 min of dust, a coat of 15 min, 2 h, a coat of 15 min; open on weekdays from 09:00. Its coats cure in a day.
 * 2027-03-08 is a Monday. On Monday the last work ends at 12:00; begun on Wednesday, it ends on Wednesday at 12:00. With the
 * first coat recorded on Monday, the second is all that is left, and ends on Wednesday at 09:15.
 */
import { expect, test } from "vitest";
import { plan, totals } from "../../server/src/entry/library.ts";
import { FILES, JOB } from "./bench.ts";
import { runCli } from "./run-cli.ts";

const BEGUN = JOB.replace(
  "  supplies 2.00\n",
  "  supplies 2.00\n  done     2027-03-08 09:45 coat 1 of clear_coat on board\n",
);
const files = { ...FILES, "begun.finish": BEGUN };
const WEDNESDAY = ["--today", "2027-03-10"];

const out = async (argv: readonly string[]): Promise<string> => (await runCli(argv, { files })).stdout;

const lastWork = async (argv: readonly string[]): Promise<unknown> =>
  JSON.parse(await out(["totals", ...argv, "--format", "json"])).jobs[0].last_work;

test("a job that has not begun begins no sooner", async () => {
  expect(await lastWork(["job.finish"])).toBe("2027-03-08T12:00:00");
  expect(await lastWork(["job.finish", ...WEDNESDAY])).toBe("2027-03-10T12:00:00");
  // A day before its start changes nothing.
  expect(await lastWork(["job.finish", "--today", "2027-03-01"])).toBe("2027-03-08T12:00:00");
});

test("a job that has begun goes on from there, and from its last record where that is later", async () => {
  expect(await lastWork(["begun.finish"])).toBe("2027-03-08T12:00:00");
  expect(await lastWork(["begun.finish", ...WEDNESDAY])).toBe("2027-03-10T09:15:00");
  expect(await lastWork(["begun.finish", "--today", "2027-03-01"])).toBe("2027-03-08T12:00:00");
});

test("a time of day counts", async () => {
  expect(await lastWork(["begun.finish", "--today", "2027-03-10T14:00"])).toBe("2027-03-10T14:15:00");
  expect(await lastWork(["begun.finish", "--today", "2027-03-10 14:00"])).toBe("2027-03-10T14:15:00");
});

test("every command that tells dates goes by it", async () => {
  expect(await out(["schedule", "begun.finish", ...WEDNESDAY])).toContain("Last work Wed 10 Mar 2027 09:15");
  expect(await out(["sheet", "begun.finish", ...WEDNESDAY])).toContain("Wed 10 Mar 2027 09:15");
  // Cured a day after.
  expect(await out(["care", "begun.finish", ...WEDNESDAY])).toContain("Thu 11 Mar 2027 09:15");
  const compared = await out(["compare", "begun.finish", "job.finish", ...WEDNESDAY, "--format", "json"]);
  expect(compared).toContain("2027-03-10T09:15:00");
  expect(compared).toContain("2027-03-10T12:00:00");
  expect(await out(["diff", "job.finish", "begun.finish", ...WEDNESDAY])).toContain("10 Mar");
});

test("`check` finds what is late from there", async () => {
  const due = BEGUN.replace("  supplies 2.00\n", "  supplies 2.00\n  ready    2027-03-09\n");
  const check = async (argv: readonly string[]): Promise<string> =>
    (
      await runCli(["check", "due.finish", "--rule", "late", "--format", "lines", ...argv], {
        files: { ...files, "due.finish": due },
      })
    ).stdout;
  expect(await check([])).toBe("");
  expect(await check(WEDNESDAY)).toContain("late");
});

test("`check` finds that the next coat can only go on after its window", async () => {
  // 2 h to 24 h from Monday 09:45 on.
  const check = async (text: string, argv: readonly string[]): Promise<string> =>
    (
      await runCli(["check", "a.finish", "--rule", "record-coat-too-late", "--format", "lines", ...argv], {
        files: { ...files, "a.finish": text },
      })
    ).stdout;
  expect(await check(BEGUN, ["--today", "2027-03-09T09:45"])).toBe("");
  expect(await check(BEGUN, ["--today", "2027-03-09T09:50"])).toContain(
    "The latest time for this coat is over",
  );
  // What is sanded holds the next coat whenever it comes.
  const sanded = BEGUN.replace(
    "    wait until recoat\n",
    "    wait until recoat\n    step sand 220\n    step dust\n",
  );
  expect(await check(sanded, WEDNESDAY)).toBe("");
  // Nothing is begun: the plan keeps the window.
  expect(await check(JOB, WEDNESDAY)).toBe("");
});

test.each(["tomorrow", "2027-02-30", "10.3.2027", "2027-03-10T25:00", "2027-03-10T14", ""])(
  "`--today %s` is wrong use",
  async (today) => {
    const { status, stderr } = await runCli(["totals", "job.finish", "--today", today], { files });
    expect(status).toBe(2);
    expect(stderr).toContain("A day is year-month-day, such as 2027-03-10");
  },
);

test("a library is told the day as well, and what is none is refused", () => {
  const [job] = totals(FILES, { today: "2027-03-10" });
  expect(job?.last_work).toBe("2027-03-10T12:00:00");
  const [begun] = plan({ ...FILES, "job.finish": BEGUN }, { today: "2027-03-10" });
  expect(begun?.items.filter(({ kind }) => kind === "layer").map(({ done }) => done)).toEqual([true, false]);
  for (const today of ["2027-02-30", "Wednesday", "2027-03-10T25:00", "2027-03-10 09:00 h"])
    expect(() => totals(FILES, { today })).toThrow(RangeError);
});

test("for programs, what is done stands beside what was planned", async () => {
  const { jobs } = JSON.parse(await out(["totals", "begun.finish", "--format", "json"]));
  // 30 min of dust and a coat of 15 min of the hour; half of 0.44 L went on.
  expect(jobs[0].record).toMatchObject({
    last_at: "2027-03-08T09:45",
    done_h: 0.75,
    planned: { hands_on_h: 1, total_cost: 37 },
    materials: [{ name: "clear_coat", used_litres: 0.22 }],
  });
  const before = JSON.parse(await out(["totals", "job.finish", "--format", "json"]));
  expect(before.jobs[0].record).toBeNull();
});
