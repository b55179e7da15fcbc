/** Opening hours on the page of a sheet. 2027-03-08 is a Monday. */
import { expect, test } from "vitest";
import { type Opening, openAt } from "../../server/src/reports/sheet-page/opening.ts";

const MILL: Opening = {
  spans: [
    ...[1, 2, 3, 4, 5].flatMap((weekday) => [
      { weekday, opens: "09:00", closes: "12:00" },
      { weekday, opens: "13:00", closes: "17:00" },
    ]),
    { weekday: 6, opens: "09:00", closes: "13:00" },
  ],
  closed: [{ from: "2027-03-26", to: "2027-03-29" }],
};

test.each([
  ["while it is open", "2027-03-08T10:15", "2027-03-08T10:15"],
  ["before it opens", "2027-03-08T06:00", "2027-03-08T09:00"],
  ["at noon", "2027-03-08T12:00", "2027-03-08T13:00"],
  ["in the evening", "2027-03-08T17:00", "2027-03-09T09:00"],
  ["on Saturday afternoon", "2027-03-13T13:30", "2027-03-15T09:00"],
  ["on Sunday", "2027-03-14T10:00", "2027-03-15T09:00"],
  ["on the evening before four days without work", "2027-03-25T18:00", "2027-03-30T09:00"],
])("%s", (_, time, opens) => {
  expect(openAt(MILL, time)).toBe(opens);
});

test("a shop that never opens leaves the time as it is", () => {
  expect(openAt({ spans: [], closed: [] }, "2027-03-08T10:15")).toBe("2027-03-08T10:15");
});
