/** Last work, light use and full use of a job, worked by hand. */
import { expect, test } from "vitest";
import type { JobResult } from "../../server/src/core/totals/job-totals.ts";
import { fewestCoatJobDates, jobDates } from "../../server/src/views/schedule/job-dates.ts";
import { analyse } from "../harness/check-text.ts";

/** Coated on Monday 8 March 2027 from 09:00 to 09:30, in the air of the label. */
const resultOf = (
  after: string,
  recoat = "2 h",
  cure = "7 days",
  coat = "layer clear, takes 30 min",
  count = 1,
): JobResult =>
  analyse({
    "test.finish": `material clear {
  family waterborne acrylic
  covers 10 m2/L
  recoat ${recoat}
  cure   ${cure}
  rated  21 C, 50 % RH
}
piece board {
  surface face {
    shape area 2 m2
    wood  beech
  }
}
shop mill {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}
recipe work {
  ${coat}
${after}
}
job it {
  piece board x ${count}
  in    mill
  start 2027-03-08 09:00
  apply work to face
}
`,
  }).jobs("test.finish")[0]!;

const datesOf = (...parts: Parameters<typeof resultOf>) => jobDates(resultOf(...parts));

const at = (...dates: readonly string[]) => dates.map((date) => expect.objectContaining({ at: date }));

test("light use begins a day after the last coat, full use when it is cured", () => {
  expect(datesOf("")).toEqual([
    {
      field: "last_work",
      name: "last work",
      at: "2027-03-08T09:30:00",
      text: "Mon 8 Mar 2027 09:30",
      reason: "`clear` on `face`",
    },
    {
      field: "light_use",
      name: "light use",
      at: "2027-03-09T09:30:00",
      text: "Tue 9 Mar 2027 09:30",
      reason: "a day after the last coat, `clear` on `face`",
    },
    {
      field: "full_use",
      name: "full use",
      at: "2027-03-15T09:30:00",
      text: "Mon 15 Mar 2027 09:30",
      reason: "cured 7 days after the last coat, `clear` on `face`",
    },
  ]);
});

test("of several pieces the one that is last is named", () => {
  // Half an hour a piece, one after the other.
  const [lastWork, lightUse] = datesOf("", "2 h", "7 days", undefined, 3);
  expect(lastWork).toMatchObject({
    at: "2027-03-08T10:30:00",
    reason: "`clear` on `face`, piece 3 of 3",
  });
  expect(lightUse).toMatchObject({ at: "2027-03-09T10:30:00" });
});

test("light use waits for the time to the next coat where that is longer", () => {
  // 36 h after Monday 09:30.
  expect(datesOf("", "36 h")[1]).toMatchObject({
    at: "2027-03-09T21:30:00",
    reason: "1 day 12 h after the last coat, its time to the next one: `clear` on `face`",
  });
});

test("what is cured sooner than in a day may be used then", () => {
  expect(datesOf("", "2 h", "12 h")).toEqual(
    at("2027-03-08T09:30:00", "2027-03-08T21:30:00", "2027-03-08T21:30:00"),
  );
});

test("refitting after the cure puts both uses off", () => {
  // Cured on Monday 15 March at 09:30, and half an hour for the handles.
  const dates = datesOf('  wait until cured\n  step refit "handles", takes 30 min');
  expect(dates).toEqual(at("2027-03-15T10:00:00", "2027-03-15T10:00:00", "2027-03-15T10:00:00"));
  expect(dates.map(({ reason }) => reason)).toEqual([
    "`refit handles` on `face`",
    "after the last work, `refit handles` on `face`",
    "after the last work, `refit handles` on `face`",
  ]);
});

test("refitting before the cure puts off light use alone where it is later than a day", () => {
  // Wednesday 10 March from 09:30: 48 h after the coat; then half an hour.
  expect(datesOf('  wait 48 h\n  step refit "handles", takes 30 min')).toEqual(
    at("2027-03-10T10:00:00", "2027-03-10T10:00:00", "2027-03-15T09:30:00"),
  );
});

test("what is missing is said of every date that waits for it, and of no other", () => {
  expect(datesOf("", "2 h", "7 days", "layer varnish_to_be_chosen, takes 30 min")).toMatchObject([
    { at: "2027-03-08T09:30:00" },
    { text: "not known", reason: "no material `varnish_to_be_chosen`" },
    { text: "not known", reason: "no material `varnish_to_be_chosen`" },
  ]);
  expect(datesOf("  wait")).toMatchObject(
    Array.from({ length: 3 }, () => ({ text: "not known", reason: "a `wait` whose length is not known" })),
  );
});

test("a job that puts nothing on is used when its work is done", () => {
  const dates = jobDates(analyse({ "test.finish": DUSTED }).jobs("test.finish")[0]!);
  expect(dates).toEqual(at("2027-03-08T10:00:00", "2027-03-08T10:00:00", "2027-03-08T10:00:00"));
});

test("the last coat of `x 1 to 2` is dated with and without", () => {
  // 09:00 to 09:30, sanded after 2 h from 11:30 to 12:00, coated again until 12:30; cured seven days later.
  const result = resultOf("", "2 h", "7 days", "layer clear x 1 to 2, between sand 220, takes 30 min");
  expect(fewestCoatJobDates(result)).toEqual(
    at("2027-03-08T09:30:00", "2027-03-09T09:30:00", "2027-03-15T09:30:00"),
  );
  expect(jobDates(result)[0]!.at! > "2027-03-08T12:00:00").toBe(true);
});

test("what is done after a coat that may be left out keeps its time", () => {
  const result = resultOf('  layer clear, if needed, takes 30 min\n  step refit "handles", takes 30 min');
  expect(fewestCoatJobDates(result)).toBeUndefined();
});

test("a job without coats that are decided at the bench has one set of dates", () => {
  expect(fewestCoatJobDates(resultOf(""))).toBeUndefined();
});

const DUSTED = `piece board {
  surface face {
    shape area 2 m2
    wood  beech
  }
}
shop mill {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}
recipe work {
  step dust, takes 1 h
}
job it {
  piece board
  in    mill
  start 2027-03-08 09:00
  apply work to face
}
`;
