/** When a late job can be ready is told on a step of five minutes, as every date is. */
import { expect, test } from "vitest";
import { findingsOf } from "../harness/check-text.ts";

test("the earliest end is rounded up to what people plan with", () => {
  // Dusted from 09:00 to 09:10 on Monday 8 March 2027, then 22 h 37 min: 07:47 on Tuesday.
  const [late] = findingsOf(`piece board {
  surface face {
    shape area 2 m2
    wood  beech
  }
}
shop mill {
  hours Mon to Fri 09:00 to 17:00
}
recipe work {
  step dust, takes 10 min
  wait 22 h 37 min
}
job it {
  piece board
  in    mill
  start 2027-03-08 09:00
  ready 2027-03-08
  apply work to face
}
`).filter(({ rule }) => rule === "late");
  expect(late!.headline).toBe("The job cannot be ready before Tue 9 Mar 2027 07:50");
  expect(late!.why).toContain("the earliest end is Tue 9 Mar 2027 07:50");
});
