/** What is said of dust and wet coats in one room. */
import { expect, test } from "vitest";
import { planNotes } from "../../server/src/views/schedule/plan-notes.ts";
import { runCli } from "../cli/run-cli.ts";
import { analyse } from "../harness/check-text.ts";

/** `slow` is wet for as long as it dries, so that nobody sands between its coats. */
const textOf = (dry: string, sanding: string, how = "", isOneJob = true): string => `material slow {
  family oil varnish
  covers 10 m2/L
  touch  ${dry}
  recoat ${dry}
  cure   7 days
}
piece stool {
  surface seat {
    shape area 0.5 m2
    wood  beech
  }
}
piece chair {
  surface frame {
    shape area 0.5 m2
    wood  beech
  }
}
shop mill {
  hours Mon to Fri 09:00 to 17:00
}
recipe coated {
  layer slow x 3, takes 30 min
}
recipe sanded {
  step sand 120${how}, takes ${sanding}
}
job stools {
  piece stool
${isOneJob ? "  piece chair x 3\n" : ""}  in    mill
  start 2027-03-08
  apply coated to stool.seat
${
  isOneJob
    ? ""
    : `}
job chairs {
  piece chair x 3
  in    mill
  start 2027-03-08
`
}  apply sanded to chair.frame
}
`;

const notesOf = (text: string): readonly (readonly string[])[] =>
  analyse({ "test.finish": text }).jobs("test.finish").map(planNotes);

const ADVICE =
  "Cover what is wet, do it in another room or with dust extraction, and wipe down damp before the next coat.";

/**
 * Coated on Mon 09:00 to 09:30, on Tue at 15:30 and on Thu at 09:00; a frame of 6 h on Mon, Tue and Wed, all of them while a
 * coat is wet. Kept apart, a frame and then a coat would be done on Mon, Wed and Fri, more than a day later.
 */
const MET = textOf("30 h", "6 h");

test("which work falls on which wet coat, and what to do", () => {
  const [[note]] = notesOf(MET) as [[string]];
  expect(note).toBe(
    "Dust on Mon 8 Mar 09:30: `sand 120` (chair.frame 1 of 3), while `slow, coat 1 of 3` (stool.seat) is wet until Tue 15:30, " +
      `and at 2 more times. ${ADVICE}`,
  );
});

test("of two jobs, whose work it is", () => {
  expect(notesOf(textOf("30 h", "6 h", "", false))).toEqual([
    [
      "Dust on Mon 8 Mar 09:30: work of `chairs`, while `slow, coat 1 of 3` (seat) is wet until Tue 15:30, and at 2 more times. " +
        ADVICE,
    ],
    [
      "Dust on Mon 8 Mar 09:30: `sand 120` (frame 1 of 3), while a coat of `stools` is wet until Tue 15:30, and at 2 more times. " +
        ADVICE,
    ],
  ]);
});

test("that it is kept apart, and what that costs", () => {
  // Three frames of an hour first, where they could be done while the first coat dries.
  expect(notesOf(textOf("24 h", "1 h"))).toEqual([
    [
      "Dusty work waits until wet coats are dry to the touch, which puts off the last work by 3 h. " +
        'With dust extraction at the tool it need not: say `"with extraction"` behind the step.',
    ],
  ]);
});

test("nothing of what extraction catches", () => {
  expect(notesOf(textOf("30 h", "6 h", ' "with extraction"'))).toEqual([[]]);
});

test("stands in the schedule of the command line, and of what is kept apart in that of a shop", async () => {
  const files = { "test.finish": MET, "apart.finish": textOf("24 h", "1 h", "", false) };
  const { stdout } = await runCli(["schedule", "test.finish"], { files });
  expect(stdout).toContain("  Dust on Mon 8 Mar 09:30: ");
  const shop = await runCli(["schedule", "apart.finish"], { files });
  expect(shop.stdout).toContain("  Dusty work waits until wet coats are dry to the touch, ");
});
