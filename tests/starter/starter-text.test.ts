/** What New Recipe writes: sound for every answer, laid out, and with the tests first where nobody knows what is there. */
import { describe, expect, test } from "vitest";
import {
  type Answers,
  areAnswers,
  coatingsOn,
  looksOf,
  PIECES,
  PLACES,
  WOODS,
} from "../../server/src/starter/answers.ts";
import { readSize, sizeText } from "../../server/src/starter/size-text.ts";
import { nextOpenDay, starterText } from "../../server/src/starter/starter-text.ts";
import { TEMPLATES } from "../../server/src/starter/templates.ts";
import { analyse } from "../harness/check-text.ts";
import { IS_LONG_RUN } from "../harness/share.ts";
import { wrongIn } from "./wrong-in.ts";

const TABLE: Answers = {
  piece: "table",
  wood: "beech",
  now: "bare",
  look: "warm",
  place: "workshop",
  units: "metric",
};

describe("no answer leads to a text with an error or a warning", () => {
  const places = PLACES.map(({ word }) => word);
  const pieces = PIECES.map(({ word }) => word);
  const units = ["metric", "inches"] as const;

  // Wood, coating and look decide what is done; piece, place and units take turns, each with every look.
  test.each(WOODS)("$label, with everything that may be on it and become of it", ({ word: wood }) => {
    let turn = 0;
    for (const { word: now } of coatingsOn(wood)) {
      for (const { word: look } of looksOf(wood, now)) {
        const answers: Answers = {
          piece: pieces[turn % pieces.length]!,
          wood,
          now,
          look,
          place: places[turn % places.length]!,
          units: units[turn % 2]!,
        };
        if (IS_LONG_RUN || turn % 5 === 0)
          expect(wrongIn(starterText(answers)), JSON.stringify(answers)).toEqual([]);
        expect(areAnswers(answers)).toBe(true);
        turn += 1;
      }
    }
  });

  // The largest piece, the worst air and the strongest vapour.
  test.each(PIECES)(
    "$label, in every place and unit, with the finish that gives off most",
    ({ word: piece }) => {
      for (const place of places) {
        for (const system of units) {
          const answers: Answers = { piece, wood: "oak", now: "bare", look: "warm", place, units: system };
          expect(wrongIn(starterText(answers)), JSON.stringify(answers)).toEqual([]);
        }
      }
    },
  );

  test.each(TEMPLATES)("the template $word, whose answers go together", ({ answers }) => {
    for (const system of units) {
      expect(areAnswers({ ...answers, units: system })).toBe(true);
      expect(wrongIn(starterText({ ...answers, units: system }))).toEqual([]);
    }
  });
});

test("where nobody knows what is on it, lead is tested before all, then what it is, and only then is it touched", () => {
  for (const { word: look } of looksOf("unknown", "unknown")) {
    const text = starterText({ ...TABLE, wood: "unknown", now: "unknown", look });
    const steps = [...text.matchAll(/^ {2}step +(\S+)(?: "(.*)")?/gmu)].map(([, verb, said]) => [verb, said]);
    expect(steps.slice(0, 3)).toEqual([
      ["test", "lead, by a laboratory"],
      ["test", "a drop of alcohol on a hidden spot"],
      ["test", "a drop of lacquer thinner on a hidden spot"],
    ]);
    expect(text).toMatch(/^ {2}safety lead_test, lead_safe, gloves, eye_protection/mu);
  }
});

test.each(["varnish", "lacquer", "shellac", "oil", "paint"] as const)(
  "%s of unknown age is tested for lead first",
  (now) => {
    const [first] = /^ {2}step.*$/mu.exec(starterText({ ...TABLE, now })) ?? [];
    expect(first).toBe('  step   test "lead, by a laboratory"');
  },
);

test("the sizes are those that were said", () => {
  // 1.2 m x 0.7 m and the edges, 2 (1.2 + 0.7) 0.025; the apron 2 (1.02 + 0.525) 0.09; four legs of 4 x 0.06 x 0.715.
  const usual = analyse({ "new.finish": starterText(TABLE) }).jobs("new.finish")[0]!.totals.surfaces;
  expect(usual.map(({ area_m2: area }) => area)).toEqual([
    expect.closeTo(1.2 * 0.7 + 2 * 1.9 * 0.025, 6),
    expect.closeTo(2 * (1.02 + 0.525) * 0.09 + 4 * 4 * 0.06 * 0.715, 6),
  ]);
  expect(starterText({ ...TABLE, piece: "board", units: "inches" })).toContain(
    "shape    panel 40 in x 12 in x 0.75 in, both faces",
  );
});

describe("a size", () => {
  test.each([
    ["1200 x 700 x 740 mm", [1200, 700, 740], "metric"],
    ["120x70x74cm", [1200, 700, 740], "metric"],
    ["1,2 m × 70 cm × 74 cm", [1200, 700, 740], "metric"],
    ["48 x 28 x 29 in", [48, 28, 29], "inches"],
    ['4 ft x 28" x 29"', [48, 28, 29], "inches"],
  ])("%s is read", (text, size, units) => {
    const read = readSize(text, "table");
    expect(read).toEqual({ size: size.map((each) => expect.closeTo(each, 6)), units });
  });

  test.each([
    "",
    "2 x 3 m",
    "1200 x 700 x 740",
    "a x b x c mm",
    "1 x 2 x 3 furlong",
    "0 x 2 x 3 mm",
    "1 x 1 x 21 m",
  ])("%s is answered with what is expected and an example", (text) => {
    expect(readSize(text, "table")).toEqual({
      problem: expect.stringContaining(
        "length x depth x height, such as 1200 x 700 x 740 mm or 48 x 28 x 29 in",
      ),
    });
  });

  test.each(PIECES)("the usual one of a $word is one of them", ({ word }) => {
    for (const units of ["metric", "inches"] as const)
      expect(readSize(sizeText(word, units), word)).toMatchObject({ units });
  });
});

test.each([
  undefined,
  "table",
  {},
  { ...TABLE, units: "cubits" },
  { ...TABLE, wood: "mdf" },
  { ...TABLE, now: "unknown", look: "kept" },
])("%j are no answers", (value) => {
  expect(areAnswers(value)).toBe(false);
});

describe("the day on which the work begins", () => {
  // 2027-03-08 is a Monday by the calendar.
  test.each([
    ["2027-03-04", "2027-03-05"],
    ["2027-03-05", "2027-03-08"],
    ["2027-03-06", "2027-03-08"],
    ["2027-03-07", "2027-03-08"],
    ["2027-12-31", "2028-01-03"],
  ])("after %s is %s", (today, day) => {
    expect(nextOpenDay(today)).toBe(day);
  });

  test("stands in the job, and leaves it sound", () => {
    const text = starterText(TABLE, "2027-03-08");
    expect(text).toContain("  start 2027-03-08 09:00\n");
    expect(wrongIn(text)).toEqual([]);
  });
});
