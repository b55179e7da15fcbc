/**
 * Calendars by what RFC 5545 and RFC 7986 have, read by ical.js: for the samples, and after edits. `schedule.test.ts` has
 * one calendar event by event.
 */
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { sampleNames, sampleText } from "../harness/samples.ts";
import { FILES, JOB } from "./bench.ts";
import { runCli } from "./run-cli.ts";

/** RFC 5545 sections 3.7 and 3.8, RFC 7986 section 5: the properties that may be used here. */
const STANDARD: ReadonlySet<string> = new Set([
  ..."prodid version calscale method".split(" "),
  ..."attach categories class comment description geo location percent-complete priority resources status summary".split(
    " ",
  ),
  ..."dtend due dtstart duration transp contact organizer related-to url uid created dtstamp last-modified sequence".split(
    " ",
  ),
  ..."action repeat trigger".split(" "),
  ..."name refresh-interval source color image conference".split(" "),
]);

const SAMPLES = Object.fromEntries(sampleNames.map((name) => [name, sampleText(name)]));

async function calendarOf(
  files: Readonly<Record<string, string>>,
  asked: string,
): Promise<{ readonly text: string; readonly calendar: ICAL.Component }> {
  const { stdout } = await runCli(["schedule", asked, "--format", "ics"], { files });
  return { text: stdout, calendar: new ICAL.Component(ICAL.parse(stdout) as unknown as string) };
}

const eventsIn = (calendar: ICAL.Component): readonly ICAL.Component[] =>
  calendar.getAllSubcomponents("vevent");
const uidOf = (event: ICAL.Component): string => String(event.getFirstPropertyValue("uid"));

describe("the calendar of the samples", async () => {
  const { text, calendar } = await calendarOf(SAMPLES, ".");
  const events = eventsIn(calendar);

  test("has properties of the standards alone, and none of a vendor", () => {
    const all = [calendar, ...events, ...events.flatMap((event) => event.getAllSubcomponents("valarm"))];
    const names = new Set(all.flatMap((part) => part.getAllProperties().map(({ name }) => name)));
    expect([...names].filter((name) => !STANDARD.has(name))).toEqual([]);
    expect(text).not.toMatch(/^X-/mu);
    expect(new Set(all.map(({ name }) => name))).toEqual(new Set(["vcalendar", "vevent", "valarm"]));
  });

  test("has whole minutes, and names that are there once", () => {
    for (const event of events) {
      for (const name of ["dtstart", "dtend"]) {
        const time = event.getFirstPropertyValue(name) as ICAL.Time | null;
        if (time) expect(time.second, uidOf(event)).toBe(0);
      }
    }
    expect(events.length).toBeGreaterThan(50);
    expect(new Set(events.map(uidOf)).size).toBe(events.length);
  });

  test("takes up time for work alone: no wait is in it, and a date from which a piece may be used has no length", () => {
    for (const event of events) {
      const { summary, startDate, endDate } = new ICAL.Event(event);
      expect(summary).not.toMatch(/^wait /u);
      const isMoment = event.getFirstPropertyValue("transp") === "TRANSPARENT";
      expect(isMoment).toBe(/^(?:Light|Full) use from now on: /u.test(summary));
      if (isMoment) expect(event.getFirstProperty("dtend")).toBeNull();
      else expect(endDate.compare(startDate)).toBe(1);
    }
    // Of every job that has dates.
    const moments = events.filter((event) => event.getFirstPropertyValue("transp") !== null);
    expect(moments.length % 2).toBe(0);
    expect(moments.length).toBeGreaterThanOrEqual(8);
  });

  test("rings when what was waited for is over, and never before its event begins", () => {
    const alarms = events.flatMap((event) => event.getAllSubcomponents("valarm"));
    expect(alarms.length).toBeGreaterThan(10);
    for (const alarm of alarms) {
      expect(alarm.getFirstPropertyValue("action")).toBe("DISPLAY");
      expect((alarm.getFirstPropertyValue("trigger") as ICAL.Duration).toSeconds()).toBeGreaterThanOrEqual(0);
    }
  });
});

describe("after an edit the events keep their names", async () => {
  const uidsOf = async (job: string): Promise<readonly string[]> =>
    eventsIn((await calendarOf({ ...FILES, "job.finish": job }, "job.finish")).calendar).map(uidOf);
  const first = await uidsOf(JOB);
  test.each<[string, (text: string) => string]>([
    ["a title", (text) => text.replace("One shelf", "The long shelf")],
    ["a later start", (text) => text.replace("2027-03-08", "2027-04-12")],
    ["two more shelves", (text) => text.replace(/^( *piece +shelf)$/mu, "$1 x 3")],
    ["a comment above", (text) => `# Of oak.\n${text}`],
    ["one more coat", (text) => text.replace("number = 2", "number = 3")],
    ["a note", (text) => text.replace(/^( *step +dust.*)$/mu, '  note "mind the edge"\n$1')],
  ])("%s", async (_, edit) => {
    expect(edit(JOB)).not.toBe(JOB);
    const after = await uidsOf(edit(JOB));
    expect(first.filter((uid) => !after.includes(uid))).toEqual([]);
  });
});

test("jobs of one name in two files have names of their own", async () => {
  const files = { ...FILES, "second.finish": JOB };
  const { calendar } = await calendarOf(files, ".");
  const uids = eventsIn(calendar).map(uidOf);
  expect(uids.length).toBe(10);
  expect(new Set(uids).size).toBe(10);
});

test("an hour before a window closes the shop may be closed: then an hour before it closes", async () => {
  // A window of
  // 12 h after a morning closes in the evening, and the last hour to work in it ends when the shop closes.
  const files = {
    "job.finish": `material clear {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 1 h to 12 h
  rated  20 C, 50 % RH
}
piece board {
  surface face {
    shape area 1 m2
    wood  beech
  }
}
shop mill {
  air   20 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}
recipe work {
  layer clear x 2, takes 15 min {
    wait until recoat
  }
  wait  until cured
}
job boards {
  piece board
  in    mill
  start 2027-03-08 09:00
  apply work to face
}
`,
  };
  const { calendar } = await calendarOf(files, "job.finish");
  const second = eventsIn(calendar)[1]!;
  const { startDate } = new ICAL.Event(second);
  const left = second
    .getAllSubcomponents("valarm")
    .find((alarm) => String(alarm.getFirstPropertyValue("description")).startsWith("One hour left"))!;
  const at = startDate.clone();
  at.addDuration(left.getFirstPropertyValue("trigger") as ICAL.Duration);
  // Coated 09:00 to 09:15 and 10:15 on; the window closes at 21:15, the shop at 17:00.
  expect(startDate.toString()).toBe("2027-03-08T10:15:00");
  expect(at.toString()).toBe("2027-03-08T16:00:00");
});
