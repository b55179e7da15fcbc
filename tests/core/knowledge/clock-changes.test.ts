/** When the clocks go forward, against the time zone database that the platform brings (IANA, by way of `Intl`). */
import { expect, test } from "vitest";
import { CLOCK_RULES, clocksForward } from "../../../server/src/core/knowledge/clock-changes.ts";

/** Whether the zone's clock skips 02:30 of that day: an hour after 01:30 it shows 03:30. */
function skipsHour(zone: string, date: string, beforeUtcH: number): boolean {
  const hour = (utc: number): string =>
    new Date(utc).toLocaleTimeString("en-GB", { timeZone: zone, hour: "2-digit", minute: "2-digit" });
  const before = Date.parse(`${date}T01:30:00Z`) - beforeUtcH * 3_600_000;
  return hour(before) === "01:30" && hour(before + 3_600_000) === "03:30";
}

test.each([
  ["DE", "Europe/Berlin", 1],
  ["SE", "Europe/Stockholm", 1],
  ["CH", "Europe/Zurich", 1],
  ["NO", "Europe/Oslo", 1],
  ["US", "America/New_York", -5],
  ["CA", "America/Toronto", -5],
] as const)("%s, %s", (country, zone, offset) => {
  for (let year = 2024; year <= 2037; year++) {
    const at = clocksForward(country, year)!;
    expect(skipsHour(zone, at.slice(0, 10), offset), at).toBe(true);
  }
});

test("is not known of other countries", () => {
  expect(clocksForward("JP", 2027)).toBeUndefined();
  expect(clocksForward("AU", 2027)).toBeUndefined();
});

test("every rule has its source and no country two", () => {
  const all = CLOCK_RULES.flatMap(({ countries }) => [...countries]);
  expect(new Set(all).size).toBe(all.length);
  for (const { source } of CLOCK_RULES) expect(source).not.toBe("");
});
