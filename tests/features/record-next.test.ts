/** The next line of a record: offered in the order of the plan, laid out as the job is, and read for what it was offered. */
import { expect, test } from "vitest";
import { analyse } from "../harness/check-text.ts";

const HEAD = `material hall_clear {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h
  cure   7 days
}

piece table {
  surface top {
    shape area 1 m2
    wood  beech
  }
  surface base {
    shape area 1 m2
    wood  beech
  }
}

shop room {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}

recipe coated(clear: material) {
  for    wood
  safety dust_mask
  step   sand 120, takes 30 min
  step   "ease the edges", takes 10 min
  layer  clear x 2, takes 30 min
  wait   until cured
}

`;
const JOB = `job tables {
  piece table x 2
  in    room
  start 2027-03-08 09:00
  apply coated(clear: hall_clear) to top
  apply coated(clear: hall_clear) to base
}
`;

const offered = (text: string, word = "job tables") => {
  const at = text.indexOf(word);
  return analyse({ "a.finish": text }).nextToRecord("a.finish", { start: at, end: at });
};

/** The text with what is offered first, done at a time. */
function recorded(text: string, time: string): string {
  const [first] = offered(text);
  const { offset, before, after } = first!;
  return `${text.slice(0, offset)}${before}${time}${after}${text.slice(offset)}`;
}

const titles = (text: string): readonly string[] => offered(text).map(({ title }) => title);

test("step by step, as the job goes on; the layout and the record are in order", () => {
  let text = HEAD + JOB;
  expect(titles(text)).toEqual([
    "Record as done now: sand on top and base",
    "Record as done now: sand on top",
    "Record as done now: sand on base",
  ]);
  const told: string[] = [];
  for (const time of ["08 10:00", "08 11:00", "08 13:00", "09 10:00"]) {
    text = recorded(text, `2027-03-${time}`);
    told.push(offered(text)[0]?.title ?? "nothing");
  }
  expect(told).toEqual([
    'Record as done now: "ease the edges" on top and base',
    "Record as done now: coat 1 of hall_clear on top and base",
    "Record as done now: coat 2 of hall_clear on top and base",
    "nothing",
  ]);
  expect(text.slice(HEAD.length)).toBe(`job tables {
  piece table x 2
  in    room
  start 2027-03-08 09:00
  apply coated(clear: hall_clear) to top
  apply coated(clear: hall_clear) to base
  done  2027-03-08 10:00 sand on top and base
  done  2027-03-08 11:00 "ease the edges" on top and base
  done  2027-03-08 13:00 coat 1 of hall_clear on top and base
  done  2027-03-09 10:00 coat 2 of hall_clear on top and base
}
`);
  const analysis = analyse({ "a.finish": text });
  expect(analysis.formatting("a.finish")).toEqual([]);
  expect(analysis.jobs("a.finish")[0]!.runs.map(({ record }) => record!.differences)).toEqual([[], []]);
});

test("the piece that is behind the others comes first", () => {
  const text = HEAD + JOB.replace("}\n", "  done  2027-03-08 10:00 sand on top, piece 1 # at last\n}\n");
  expect(titles(text)).toContain("Record as done now: sand on top, piece 2");
  // A comment stays on the line that it is about.
  expect(recorded(text, "2027-03-08 10:30")).toMatch(
    /piece 1 # at last\n {2}done {2}2027-03-08 10:30 sand on \w+.*\n\}\n$/u,
  );
});

test("what lies first in the plan is offered first", () => {
  const text = HEAD + JOB.replace("}\n", "  done  2027-03-08 10:00 coat 1 of hall_clear on base\n}\n");
  // The base rests for two hours.
  expect(titles(text)).toEqual([
    "Record as done now: sand on top",
    "Record as done now: coat 2 of hall_clear on base",
  ]);
});

test("Windows line ends stay", () => {
  const text = (HEAD + JOB).replaceAll("\n", "\r\n");
  const once = recorded(text, "2027-03-08 10:00");
  expect(once).toContain("\r\n  done  2027-03-08 10:00 sand on top and base\r\n}");
  expect(recorded(once, "2027-03-08 11:00")).toContain(
    '10:00 sand on top and base\r\n  done  2027-03-08 11:00 "ease the edges" on top and base\r\n}',
  );
});

test("nothing is offered outside of jobs, nor in one without its brace", () => {
  expect(titles(HEAD + JOB)).toHaveLength(3);
  expect(offered(HEAD + JOB, "recipe coated")).toEqual([]);
  // Not even a blank line lies between.
  expect(titles(`${HEAD.trimEnd()}\n${JOB}`)).toHaveLength(3);
  expect(offered(HEAD + JOB.slice(0, -2))).toEqual([]);
});

test("words with quotes and backslashes come back as they were", () => {
  const text = (HEAD + JOB).replaceAll('"ease the edges"', String.raw`"ease \"all\" edges \\ sides"`);
  const once = recorded(recorded(text, "2027-03-08 10:00"), "2027-03-08 11:00");
  expect(once).toContain(String.raw`11:00 "ease \"all\" edges \\ sides" on top and base`);
  expect(offered(once)[0]!.title).toBe("Record as done now: coat 1 of hall_clear on top and base");
});
