/**
 * The iCalendar file: by RFC 5545's own words where it is text, and read back by ical.js.
 */
import fc from "fast-check";
import ICAL from "ical.js";
import { expect, test } from "vitest";
import { planToIcs } from "../../server/src/reports/ics.ts";

const item = {
  uid: "top-3@hall_tables",
  title: "Layer 1; satin, by pad",
  startAt: "2027-03-08T09:00",
  endAt: "2027-03-08T10:15:30",
  description: "Mask first.\nKeep it off the heater \\ stove.",
};

function eventsOf(text: string): readonly ICAL.Event[] {
  return new ICAL.Component(ICAL.parse(text))
    .getAllSubcomponents("vevent")
    .map((part) => new ICAL.Event(part));
}

test("writes floating times, escaped text and CRLF", () => {
  const text = planToIcs({ name: "Reading tables", items: [item], stamp: "2027-03-01T08:00:00.123Z" });
  expect(text.split("\r\n")).toEqual([
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Finishwright//Finishwright//EN",
    "CALSCALE:GREGORIAN",
    "NAME:Reading tables",
    "BEGIN:VEVENT",
    "UID:top-3@hall_tables",
    "DTSTAMP:20270301T080000Z",
    "DTSTART:20270308T090000",
    "DTEND:20270308T101600",
    "SUMMARY:Layer 1\\; satin\\, by pad",
    "DESCRIPTION:Mask first.\\nKeep it off the heater \\\\ stove.",
    "END:VEVENT",
    "END:VCALENDAR",
    "",
  ]);
});

test("ical.js reads back what was written, as local time", () => {
  const [event] = eventsOf(planToIcs({ name: "Tables", items: [item], stamp: "2027-03-01T08:00" }));
  expect(event!.summary).toBe(item.title);
  expect(event!.description).toBe(item.description);
  expect(event!.startDate.toString()).toBe("2027-03-08T09:00:00");
  expect(event!.startDate.zone).toBe(ICAL.Timezone.localTimezone);
  expect(event!.endDate.toString()).toBe("2027-03-08T10:16:00");
});

test("leaves out items without times", () => {
  const items = [{ uid: "a", title: "Sand", startAt: undefined, endAt: undefined }];
  expect(planToIcs({ name: "", items, stamp: "2027-03-01T08:00" })).not.toContain("VEVENT");
});

test("any text survives, in lines of at most 75 octets", () => {
  const text = fc
    .string({ unit: "grapheme", maxLength: 120 })
    .map((value) => value.replace(/[\p{Cc}\p{Cs}]/gu, "").trim());
  fc.assert(
    fc.property(text, text, (title, description) => {
      const file = planToIcs({
        name: title,
        items: [{ ...item, title, description }],
        stamp: "2027-03-01T08:00",
      });
      const lines = file.split("\r\n");
      expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
      expect(file).not.toContain("\uFFFD".repeat(2));
      const [event] = eventsOf(file);
      expect(event!.summary).toBe(title);
      expect(event!.description ?? "").toBe(description);
    }),
    { numRuns: 300, seed: 1 },
  );
});
