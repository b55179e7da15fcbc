/** `schedule`: plans, as text, as JSON and as a calendar. */
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { FILES, JOB } from "./bench.ts";
import { runCli } from "./run-cli.ts";

describe("schedule", () => {
  test("as text is a list in the order of time", async () => {
    const { status, stdout } = await runCli(["schedule", "job.finish"], { files: FILES });
    expect(status).toBe(0);
    expect(stdout).toBe(
      [
        "shelf_job “One shelf”",
        "  Mon 8 Mar 2027",
        "    09:00 to 09:30  board  dust                     critical",
        "    09:30 to 09:45  board  clear_coat, coat 1 of 2  critical",
        "    09:45 to 11:45  board  wait until recoat        critical",
        "    11:45 to 12:00  board  clear_coat, coat 2 of 2  critical",
        "    12:00 to 14:00  board  wait until recoat        critical",
        "  Last work Mon 8 Mar 2027 12:00: `clear_coat, coat 2 of 2` on `board`; no plan in the shop's hours ends it earlier.",
        "  Light use Tue 9 Mar 2027 12:00: a day after the last coat, `clear_coat, coat 2 of 2` on `board`.",
        "  Full use Tue 9 Mar 2027 12:00: cured 1 day after the last coat, `clear_coat, coat 2 of 2` on `board`.",
        "",
      ].join("\n"),
    );
  });

  test("as JSON has the items with their hours", async () => {
    const { stdout } = await runCli(["schedule", "job.finish", "--format", "json"], { files: FILES });
    const { jobs } = JSON.parse(stdout) as { jobs: { items: unknown[] }[] };
    expect(jobs[0]).toMatchObject({ name: "shelf_job", status: "planned", elapsed_h: 5, exact: true });
    expect(jobs[0]!.items[1]).toEqual({
      surface: "board",
      piece: 1,
      kind: "layer",
      what: "clear_coat, coat 1 of 2",
      start: "2027-03-08T09:30:00",
      end: "2027-03-08T09:45:00",
      start_h: 0.5,
      end_h: 0.75,
      slack_h: 0,
      critical: true,
      done: false,
    });
  });

  test("as a calendar is read by a calendar library", async () => {
    const { stdout } = await runCli(["schedule", "job.finish", "--format", "ics"], { files: FILES });
    const calendar = new ICAL.Component(ICAL.parse(stdout) as unknown as string);
    const events = calendar.getAllSubcomponents("vevent").map((each) => new ICAL.Event(each));
    expect(events.map(({ summary, startDate }) => `${startDate.toString()} ${summary}`)).toEqual([
      "2027-03-08T09:00:00 dust (board)",
      "2027-03-08T09:30:00 clear_coat\\, coat 1 of 2 (board)".replace("\\", ""),
      "2027-03-08T11:45:00 clear_coat, coat 2 of 2 (board)",
      "2027-03-09T12:00:00 Light use from now on: One shelf",
      "2027-03-09T12:00:00 Full use from now on: One shelf",
    ]);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(5);
    const alarms = calendar
      .getAllSubcomponents("vevent")
      .flatMap((event) => event.getAllSubcomponents("valarm"))
      .map(
        (alarm) => `${alarm.getFirstPropertyValue("trigger")} ${alarm.getFirstPropertyValue("description")}`,
      );
    // The first coat ends at 09:45 and is closed to the second 24 h later; an hour before that is 21 h after 11:45.
    expect(alarms).toEqual([
      "PT0S The wait is over: clear_coat, coat 2 of 2",
      "PT21H One hour left to put it on: clear_coat, coat 2 of 2",
      "PT0S One shelf: light use from now on",
      "PT0S One shelf: full use from now on",
    ]);
  });

  test("a second calendar after an edit moves the events of the first and doubles none", async () => {
    const eventsOf = async (text: string): Promise<ReadonlyMap<string, string>> => {
      const files = { ...FILES, "job.finish": text };
      const { stdout } = await runCli(["schedule", "job.finish", "--format", "ics"], { files });
      const calendar = new ICAL.Component(ICAL.parse(stdout) as unknown as string);
      const events = calendar.getAllSubcomponents("vevent").map((each) => new ICAL.Event(each));
      return new Map(events.map(({ uid, startDate }) => [uid, startDate.toString()]));
    };
    const first = await eventsOf(JOB);
    const edited = JOB.replace(/^( *step +dust.*)$/mu, "  step clean with soap, takes 1 h\n$1");
    expect(edited).not.toBe(JOB);
    const second = await eventsOf(edited);
    // The washing is new; dusting begins an hour later, and so does all after it.
    expect([...second.keys()].filter((uid) => !first.has(uid))).toHaveLength(1);
    for (const [uid, at] of first) {
      const later = new Date(Date.parse(`${at}Z`) + 3_600_000).toISOString().slice(0, 19);
      expect(second.get(uid)).toBe(later);
    }
  });

  test("what would help comes first where a job is late", async () => {
    const late = JOB.replace(/^( *start .*)$/mu, "$1\n  ready 2027-03-01");
    const { stdout } = await runCli(["schedule", "job.finish"], { files: { ...FILES, "job.finish": late } });
    const [, wanted, list] = stdout.split("\n");
    expect(wanted).toBe("  Wanted by Mon 1 Mar 2027, and not done by then.");
    expect(list).toMatch(/^ {2}(What would help|Nothing was found)/u);
    const asked = await runCli(["schedule", "job.finish", "--what-helps", "--format", "json"], {
      files: FILES,
    });
    const { jobs } = JSON.parse(asked.stdout) as { jobs: { what_helps: unknown }[] };
    expect(Array.isArray(jobs[0]!.what_helps)).toBe(true);
  });

  test("two jobs for one pair of hands have one plan, on one page a week", async () => {
    // The first dusts from 09:00 to 09:30 and coats to 09:45; the other, from 09:15 on, has to wait until then.
    const other = JOB.slice(JOB.indexOf("job shelf_job"))
      .replace("shelf_job", "later_job")
      .replace("09:00", "09:15");
    const files = { ...FILES, "job.finish": `${JOB}\n${other}` };
    const { stdout } = await runCli(["schedule", "job.finish"], { files });
    expect(stdout).toMatchInlineSnapshot(`
      "room: the week of \`shelf_job\` and \`later_job\`
        Last work Mon 8 Mar 2027 12:45; no plan in the shop's hours ends it earlier.

      Week of Mon 8 Mar 2027
        Mon 8 Mar
          09:00 to 09:30  dust                     shelf_job: board
          09:30 to 09:45  clear_coat, coat 1 of 2  shelf_job: board
          09:45 to 10:15  dust                     later_job: board
          10:15 to 10:30  clear_coat, coat 1 of 2  later_job: board
          11:45 to 12:00  clear_coat, coat 2 of 2  shelf_job: board, begin by Tue 09:45
          12:30 to 12:45  clear_coat, coat 2 of 2  later_job: board, begin by Tue 10:30

      shelf_job “One shelf”
        Last work Mon 8 Mar 2027 12:00: \`clear_coat, coat 2 of 2\` on \`board\`; no plan in the shop's hours ends it earlier.
        Light use Tue 9 Mar 2027 12:00: a day after the last coat, \`clear_coat, coat 2 of 2\` on \`board\`.
        Full use Tue 9 Mar 2027 12:00: cured 1 day after the last coat, \`clear_coat, coat 2 of 2\` on \`board\`.
        Planned with \`later_job\`: no later than alone.

      later_job “One shelf”
        Last work Mon 8 Mar 2027 12:45: \`clear_coat, coat 2 of 2\` on \`board\`.
        Light use Tue 9 Mar 2027 12:45: a day after the last coat, \`clear_coat, coat 2 of 2\` on \`board\`.
        Full use Tue 9 Mar 2027 12:45: cured 1 day after the last coat, \`clear_coat, coat 2 of 2\` on \`board\`.
        Planned with \`shelf_job\`: 30 min later than alone, because people are at work on \`shelf_job\` (30 min).
      "
    `);
    const json = await runCli(["schedule", "job.finish", "--format", "json"], { files });
    const { jobs, shops } = JSON.parse(json.stdout) as {
      jobs: { shop_plan: { with: string[] } }[];
      shops: { jobs: string[] }[];
    };
    expect(jobs.map((job) => job.shop_plan.with)).toEqual([["later_job"], ["shelf_job"]]);
    expect(shops.map((shop) => shop.jobs)).toEqual([["shelf_job", "later_job"]]);
  });

  test("of a job by its name looks at it alone, and says what the other does to it", async () => {
    const other = JOB.slice(JOB.indexOf("job shelf_job"))
      .replace("shelf_job", "later_job")
      .replace("09:00", "09:15");
    const files = { ...FILES, "job.finish": `${JOB}\n${other}` };
    const { stdout } = await runCli(["schedule", "job.finish", "--job", "later_job"], { files });
    expect(stdout).toContain("09:15 to 09:45");
    expect(stdout.split("\n").slice(-3).join("\n")).toMatchInlineSnapshot(`
      "  This looks at the job alone.
        Planned with \`shelf_job\`, its last work is Mon 8 Mar 2027 12:45: 30 min later than alone, because people are at work on \`shelf_job\` (30 min).
      "
    `);
  });

  test("of a file has the jobs of its project that are done in the same shop", async () => {
    const job = (name: string, start: string): string =>
      `use "../job.finish"\n\n${JOB.slice(JOB.indexOf("job shelf_job")).replace("shelf_job", name).replace("09:00", start)}`;
    const files = {
      ...FILES,
      "one/late.finish": job("later_job", "09:15"),
      "two/last.finish": job("last_job", "09:30"),
      "two/closed.finish": "job hidden {\n}\n",
    };
    const withOf = async (name: string, more: Readonly<Record<string, string>> = {}) => {
      const { stdout, stderr, status } = await runCli(["schedule", name, "--format", "json"], {
        files: { ...files, ...more },
        forbidden: ["two/closed.finish"],
      });
      const { jobs } = JSON.parse(stdout) as { jobs: { name: string; shop_plan: { with: string[] } }[] };
      return { jobs: jobs.map((each) => [each.name, each.shop_plan.with.toSorted()]), stderr, status };
    };
    // The folder of the file, with what lies below it; what cannot be read is named.
    const all = await withOf("job.finish");
    expect(all.jobs).toEqual([["shelf_job", ["last_job", "later_job"]]]);
    expect(all.stderr).toContain("closed.finish` ");
    expect(all.stderr).toContain("left out of the plan of the shop");
    expect(all.status).toBe(0);
    // From a folder below, where a project file says where the project begins.
    expect((await withOf("one/late.finish", { "finishwright.config.json": "{}" })).jobs).toEqual([
      ["later_job", ["last_job", "shelf_job"]],
    ]);
  });

  test("without dates has hours after the start, and no calendar", async () => {
    const files = { ...FILES, "job.finish": JOB.replace(/ {2}start .*\n/u, "") };
    const text = await runCli(["schedule", "job.finish"], { files });
    expect(text.stdout).toContain("  From the start\n    0 h to 30 min         board  dust  ");
    expect(text.stdout).toContain("  No dates: no `start`.\n");
    const ics = await runCli(["schedule", "job.finish", "--format", "ics"], { files });
    expect(ics.status).toBe(2);
    expect(ics.stdout).toBe("");
    expect(ics.stderr).toContain("The job `shelf_job` has no dates");
  });

  test("proves nothing of a job of which a part is not known", async () => {
    const text = `piece board {
  surface face {
    shape area 1 m2
    wood  beech
  }
}

recipe coated {
  layer nowhere_declared x 2
}

job boards {
  piece board
  start 2027-03-08 09:00
  apply coated to face
}
`;
    const { stdout } = await runCli(["schedule", "a.finish"], { files: { "a.finish": text } });
    expect(stdout).toContain("No dates: no material `nowhere_declared`");
    expect(stdout).toContain("  How long it takes is not known.");
    expect(stdout).not.toContain("no plan");
  });

  test("needs one file", async () => {
    expect((await runCli(["schedule"])).stderr).toContain("missing required argument 'file'");
    expect((await runCli(["schedule", "none.finish"])).status).toBe(2);
  });
});
