/** Last work, light use and full use of a job, worked by hand. */
import { expect, test } from "vitest";
import { jobDates } from "../../server/src/views/schedule/job-dates.ts";
import { analyse } from "../harness/check-text.ts";

/** Coated on Monday 8 March 2027 from 09:00 to 09:30, in the air of the label. */
const datesOf = (after: string, recoat = "2 h", cure = "7 days") =>
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
  layer clear, takes 30 min
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
