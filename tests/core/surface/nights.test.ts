/** What a night brings: the same after `wait overnight` and after a shorter wait that ends while the shop is closed. */
import { describe, expect, test } from "vitest";
import { findingsOf } from "../../harness/check-text.ts";
import { runsOf } from "./run-of.ts";

interface Work {
  readonly wait: string;
  readonly recoat?: string;
  readonly shop?: readonly string[];
  readonly start?: string;
}

const WEEK = "hours Mon to Fri 09:00 to 17:00";

/** Two coats of a varnish that hardens twice as slowly 10 C below the 21 C of its label. */
const textOf = ({
  wait,
  recoat = "8 h",
  shop = ["air 21 C", WEEK],
  start,
}: Work): string => `material varnish {
  family oil varnish
  recoat ${recoat}
  rated  21 C, 50 % RH
}
piece board {
  surface face {
    shape area 1 m2
    wood  beech
  }
}
shop mill {
${shop.join("\n")}
}
recipe work {
  layer varnish, takes 1 h
  wait  ${wait}
  step  sand 320
  step  dust
  layer varnish, takes 1 h
  wait  until cured
}
job boards {
  piece board
  in    mill
${start ? `start ${start}` : ""}
  apply work to face
}
`;

const tooEarly = (work: Work): readonly string[] =>
  findingsOf(textOf(work))
    .filter(({ rule }) => rule === "recoat-too-early")
    .map(({ message }) => message.split("\n")[0]!);

const untilRecoat = (shop: readonly string[], recoat = "8 h"): number | undefined =>
  runsOf(textOf({ wait: "until recoat", recoat, shop })).get("boards face")?.moments[1]?.dries?.time?.hours;

describe("the same night", () => {
  // 16 C: 2^(5/10) = 1.4142 · 8 h = 11.31 h. Nobody works between 17:00 and 09:00.
  const shop = ["air 16 C", WEEK];
  test.each(["overnight", "9 h", "10 h 30 min"])("after `wait %s`", (wait) => {
    expect(tooEarly({ wait, shop })).toEqual([]);
    expect(tooEarly({ wait, shop, start: "2027-03-08 09:00" })).toEqual([]);
  });
  test("is none after a wait that ends while the shop is open, nor without hours", () => {
    expect(
      tooEarly({ wait: "8 h", recoat: "9 h", shop: ["air 21 C", "hours Mon to Fri 07:00 to 20:00"] }),
    ).toEqual(["8 h between coats of `varnish`: needs 9 h"]);
    expect(tooEarly({ wait: "9 h", shop: ["air 16 C"] })).toEqual([
      "9 h between coats of `varnish`: needs 11 h 19 min",
    ]);
  });
  test("is too short for both where it is too short", () => {
    // 17:00 to 09:00 are 16 h, and 9 C makes 2^(12/10) · 8 h = 18.38 h of it.
    const cold = ["air 9 C", WEEK];
    for (const wait of ["overnight", "9 h"]) expect(tooEarly({ wait, shop: cold })).toHaveLength(1);
  });
  test("is as long as the plan has it: coated by 10:00 on a Monday, by 09:00 on Tuesday 23 h have passed", () => {
    const cold = ["air 9 C", WEEK];
    for (const wait of ["overnight", "9 h"])
      expect(tooEarly({ wait, shop: cold, start: "2027-03-08 09:00" })).toEqual([]);
  });
});

describe("the air of the night", () => {
  test("lengthens what does not dry in a night", () => {
    // 12 h by day, 24 h at 11 C: from 17:00 on 16 of 24 h, then a third of 12 h.
    expect(untilRecoat(["air 21 C", "night_air 11 C", WEEK], "12 h")).toBeCloseTo(20, 9);
    expect(
      tooEarly({ wait: "overnight", recoat: "12 h", shop: ["air 21 C", "night_air 11 C", WEEK] }),
    ).toEqual(["16 h between coats of `varnish`: needs 20 h"]);
  });
  test("leaves what a night dries alone at the time of the day", () => {
    // 16 h at 11 C, as long as the night.
    expect(untilRecoat(["air 21 C", "night_air 11 C", WEEK], "8 h")).toBe(8);
  });
  test("shortens nothing, and without hours the worse air counts throughout", () => {
    expect(untilRecoat(["air 11 C", "night_air 21 C", WEEK], "8 h")).toBe(16);
    expect(untilRecoat(["air 21 C", "night_air 11 C"], "8 h")).toBe(16);
  });
});
