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
        "  Last work Mon 8 Mar 2027 12:00: `clear_coat, coat 2 of 2` on `board`; no plan ends it earlier.",
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
    ]);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(3);
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
    ]);
  });

  test("of two jobs for one pair of hands says where they need it at once", async () => {
    // The other begins at 09:15 with half an hour of dusting, when the first has its own from 09:00 to 09:30.
    const other = JOB.slice(JOB.indexOf("job shelf_job"))
      .replace("shelf_job", "later_job")
      .replace("09:00", "09:15");
    const files = { ...FILES, "job.finish": `${JOB}\n${other}` };
    const { stdout } = await runCli(["schedule", "job.finish"], { files });
    expect(stdout).toContain(
      "Planned by itself: from Mon 8 Mar 2027 09:15 `later_job` needs the same people, so one of the two has to begin later.",
    );
    const json = await runCli(["schedule", "job.finish", "--format", "json"], { files });
    const { jobs } = JSON.parse(json.stdout) as { jobs: { double_booked: unknown }[] };
    expect(jobs.map((job) => job.double_booked)).toEqual([
      [{ job: "later_job", at: "2027-03-08T09:15:00" }],
      [{ job: "shelf_job", at: "2027-03-08T09:15:00" }],
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

  test("needs one file", async () => {
    expect((await runCli(["schedule"])).stderr).toContain("missing required argument 'file'");
    expect((await runCli(["schedule", "none.finish"])).status).toBe(2);
  });
});
