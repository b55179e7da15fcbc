/** What is said of a plan's hours where it matters: in words, in every form of the output. */
import { describe, expect, test } from "vitest";
import { planNotes } from "../../server/src/views/schedule/plan-notes.ts";
import { runCli } from "../cli/run-cli.ts";
import { analyse } from "../harness/check-text.ts";

interface Shop {
  readonly hours?: string;
  readonly more?: string;
  readonly start?: string;
}

const WEEK = "hours Mon to Fri 09:00 to 17:00";
const textOf = ({ hours = WEEK, more = "", start = "2027-03-08 09:00" }: Shop): string => `material clear {
  family waterborne acrylic
  covers 10 m2/L
  recoat 4 h
  cure   7 days
}
piece board {
  surface face {
    shape area 2 m2
    wood  beech
  }
}
shop mill {
  ${hours}
  ${more}
}
recipe work {
  layer clear x 2, takes 30 min
  wait  until cured
}
job boards "Boards" {
  piece board
  in    mill
  start ${start}
  apply work to face
}
`;
const notesOf = (shop: Shop): readonly string[] =>
  planNotes(analyse({ "test.finish": textOf(shop) }).jobs("test.finish")[0]!);

describe("the start", () => {
  test("within hours, or before the shop opens that day, needs no word", () => {
    expect(notesOf({})).toEqual([]);
    expect(notesOf({ start: "2027-03-08 07:00" })).toEqual([]);
    expect(notesOf({ start: "2027-03-08" })).toEqual([]);
  });
  test("after closing, on a Sunday and on a closed date", () => {
    // 2027-03-12 is a Friday.
    expect(notesOf({ start: "2027-03-12 17:30" })).toEqual([
      "`start` is Fri 12 Mar 2027 17:30, when `mill` is closed; it opens Mon 15 Mar 2027 09:00.",
    ]);
    expect(notesOf({ start: "2027-03-14" })).toEqual([
      "`start` is Sun 14 Mar 2027, when `mill` is closed; it opens Mon 15 Mar 2027 09:00.",
    ]);
    expect(notesOf({ start: "2027-03-26 10:00", more: "closed 2027-03-26 to 2027-03-29" })).toEqual([
      "`start` is Fri 26 Mar 2027 10:00, when `mill` is closed; it opens Tue 30 Mar 2027 09:00.",
    ]);
    expect(notesOf({ start: "2027-03-26 10:00", hours: "", more: "closed 2027-03-26" })[0]).toBe(
      "`start` is Fri 26 Mar 2027 10:00, when `mill` is closed; it opens Sat 27 Mar 2027 00:00.",
    );
  });
});

test("a shop without hours", () => {
  expect(notesOf({ hours: "" })).toEqual([
    "`mill` states no `hours`, so work is planned at any hour, by night and on Sundays too.",
  ]);
});

describe("spring's missing hour", () => {
  const note =
    "The clocks go forward on Sun 28 Mar 2027: what waits through that night has an hour less than the plan shows.";
  test("where a short wait goes on through that night", () => {
    // Coated on Saturday 22:30 to 23:00, the second coat 4 h later on the clock.
    const night = { hours: "", start: "2027-03-27 22:30" };
    expect(notesOf({ ...night, more: "country DE" })).toContain(note);
    expect(notesOf({ ...night, more: "country US" })).not.toContain(note);
    expect(notesOf(night)).not.toContain(note);
  });
  test("and not of a cure of a week, nor on another day", () => {
    expect(notesOf({ more: "country DE", start: "2027-03-26 09:00" })).toEqual([]);
    expect(notesOf({ more: "country DE" })).toEqual([]);
  });
});

test("stands in schedule and totals, as text and as JSON, and in the calendar", async () => {
  const files = { "job.finish": textOf({ start: "2027-03-14" }) };
  const said = "`start` is Sun 14 Mar 2027, when `mill` is closed; it opens Mon 15 Mar 2027 09:00.";
  for (const command of ["schedule", "totals"]) {
    const text = await runCli([command, "job.finish"], { files });
    // A terminal has it in lines.
    expect(text.stdout.replaceAll(/\s+/gu, " ")).toContain(said);
    const json = await runCli([command, "job.finish", "--format", "json"], { files });
    const { jobs } = JSON.parse(json.stdout) as { jobs: readonly Record<string, unknown>[] };
    expect(jobs[0]).toMatchObject({
      notes: [said],
      reasons: {
        last_work: "`clear, coat 2 of 2` on `face`",
        light_use: "a day after the last coat, `clear, coat 2 of 2` on `face`",
        full_use: "cured 7 days after the last coat, `clear, coat 2 of 2` on `face`",
      },
    });
  }
  const calendar = await runCli(["schedule", "job.finish", "--format", "ics"], { files });
  expect(calendar.stdout.replaceAll("\r\n ", "")).toContain(
    "DESCRIPTION:Boards: start is Sun 14 Mar 2027\\, when mill is closed\\; it opens Mon 15 Mar 2027 09:00.",
  );
});
