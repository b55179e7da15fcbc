/** Last work, light use and full use of a job, worked by hand. */
import { expect, test } from "vitest";
import { jobDates } from "../../server/src/views/schedule/job-dates.ts";
import { analyse } from "../harness/check-text.ts";

/** Coated on Monday 8 March 2027 from 09:00 to 09:30, in the air of the label. */
const datesOf = (after: string, recoat = "2 h", cure = "7 days", coat = "layer clear, takes 30 min") =>
  jobDates(
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
  piece board
  in    mill
  start 2027-03-08 09:00
  apply work to face
}
`,
    }).jobs("test.finish")[0]!,
  );

test("light use begins a day after the last coat, full use when it is cured", () => {
  expect(datesOf("")).toEqual({
    lastWork: "2027-03-08T09:30:00",
    lightUse: "2027-03-09T09:30:00",
    fullUse: "2027-03-15T09:30:00",
  });
});

test("light use waits for the time to the next coat where that is longer", () => {
  // 36 h after Monday 09:30.
  expect(datesOf("", "36 h")?.lightUse).toBe("2027-03-09T21:30:00");
});

test("what is cured sooner than in a day may be used then", () => {
  expect(datesOf("", "2 h", "12 h")).toMatchObject({
    lightUse: "2027-03-08T21:30:00",
    fullUse: "2027-03-08T21:30:00",
  });
});

test("refitting after the cure puts both uses off", () => {
  // Cured on Monday 15 March at 09:30, and half an hour for the handles.
  expect(datesOf('  wait until cured\n  step refit "handles", takes 30 min')).toEqual({
    lastWork: "2027-03-15T10:00:00",
    lightUse: "2027-03-15T10:00:00",
    fullUse: "2027-03-15T10:00:00",
  });
});

test("the last coat of `x 1 to 2` is dated with and without", () => {
  // 09:00 to 09:30, sanded after 2 h from 11:30 to 12:00, coated again until 12:30; cured seven days later.
  const coats = "layer clear x 1 to 2, between sand 220, takes 30 min";
  const dates = datesOf("", "2 h", "7 days", coats);
  expect(dates?.fewest).toEqual({ lastWork: "2027-03-08T09:30:00", fullUse: "2027-03-15T09:30:00" });
  expect(dates!.lastWork > "2027-03-08T12:00:00").toBe(true);
});

test("what is done after a coat that may be left out keeps its time", () => {
  const dates = datesOf('  layer clear, if needed, takes 30 min\n  step refit "handles", takes 30 min');
  expect(dates?.fewest).toBeUndefined();
});

test("a job without coats that are decided at the bench has one date", () => {
  expect(datesOf("")?.fewest).toBeUndefined();
});
