/** What is known of work that was done: each fact is read by itself and beside others, and keeps what it says. */
import { expect, test } from "vitest";
import { DONE_FACTS } from "../../grammar/src/vocabulary.ts";
import { analyse, findingsOf } from "../harness/check-text.ts";

const JOB = (done: string): string => `material clear {
  family waterborne polyurethane
  covers 10 m2/L
}
piece table {
  surface top {
    shape area 1 m2
    wood  beech
  }
}
recipe coated {
  layer clear x 2
}
job tables {
  piece table x 2
  apply coated to top
  done  ${done}
}
`;

const LINE = "2027-03-10 14:00 coat 1 of clear on top";
const FACTS = Object.values(DONE_FACTS).map(({ example }) => example);

const unread = (text: string): readonly string[] =>
  findingsOf(text).flatMap(({ rule, message }) => (rule === "syntax" ? [message] : []));

test.each(FACTS)("%s", (fact) => {
  expect(unread(JOB(`${LINE}, ${fact}`))).toEqual([]);
});

test("all of them on one line", () => {
  const text = JOB([LINE, ...FACTS].join(", "));
  expect(unread(text)).toEqual([]);
  const [result] = analyse({ "a.finish": text }).jobs("a.finish");
  expect(result!.job.records[0]!.facts).toMatchObject({
    // 25 min
    tookHours: expect.closeTo(25 / 60, 9),
    paid: 28,
    air: { temperature: 17, humidity: 60 },
    pieces: [1, 2],
    trouble: { word: "blush" },
    by: "M.",
    photo: "top-1.jpg",
    note: "a little thin at the edge",
  });
});
