/** A line of a record that tells of several pieces: they were worked on in turn, for as long as the line says. */
import { describe, expect, test } from "vitest";
import { analyse } from "../../harness/check-text.ts";

const TEXT = (crew: number, record: string): string => `material clear {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h
}
piece chair {
  surface frame {
    shape area 1 m2
    wood  beech
  }
}
shop room {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
  crew  ${crew}
}
recipe coated {
  step  clean with soap, takes 10 min
  step  scuff 220, takes 20 min
  layer clear
  wait  until cured
}
job chairs {
  piece chair x 6
  in    room
  start 2027-03-08 09:00
  apply coated
  done  ${record}
}
`;

/** From when to when each of the two steps was done, on every chair alike. */
function times(crew: number, record: string): readonly string[] {
  const { schedule } = analyse({ "a.finish": TEXT(crew, record) }).jobs("a.finish")[0]!;
  if (schedule.status !== "planned") throw new Error("There is no plan.");
  const done = schedule.items.filter((item) => item.done);
  expect(new Set(done.map(({ chain }) => chain)).size).toBe(6);
  return [...new Set(done.map(({ startAt, endAt }) => `${startAt!.slice(11, 16)}-${endAt!.slice(11, 16)}`))];
}

describe("six chairs on one line", () => {
  // 3 h, shared as 10 to 20 minutes: an hour of cleaning, then two of scuffing.
  test("take as long as the line says", () => {
    expect(times(1, "2027-03-08 12:00 scuff, took 3 h")).toEqual(["09:00-10:00", "10:00-12:00"]);
  });
  test("take half of it where two work", () => {
    expect(times(2, "2027-03-08 12:00 scuff, took 3 h")).toEqual(["10:30-11:00", "11:00-12:00"]);
  });
  // 6 × 10 min and 6 × 20 min as planned.
  test("take what was planned for all of them where the line says nothing", () => {
    expect(times(1, "2027-03-08 12:00 scuff")).toEqual(["09:00-10:00", "10:00-12:00"]);
  });
});
