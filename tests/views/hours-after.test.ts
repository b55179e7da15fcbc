import { expect, test } from "vitest";
import { hoursAfter, hoursAfterOnStep } from "../../server/src/views/sheet/hours-after.ts";

test("hours after a local time, to the second and on a step of five minutes", () => {
  expect(hoursAfter("2027-03-08T22:50:00", 1.5)).toBe("2027-03-09T00:20:00");
  expect(hoursAfter("2027-03-08T09:00:00", 1 / 60)).toBe("2027-03-08T09:01:00");
  expect(hoursAfterOnStep("2027-03-08T09:00:00", 1 / 60)).toBe("2027-03-08T09:05:00");
  expect(hoursAfterOnStep("2027-03-08T09:00:00", 2)).toBe("2027-03-08T11:00:00");
  // Whoever leaves it for eight thousand years has no date.
  expect(hoursAfter("2027-03-08T09:00:00", 8000 * 8766)).toBeUndefined();
  expect(hoursAfterOnStep("2027-03-08T09:00:00", 1e300)).toBeUndefined();
});
