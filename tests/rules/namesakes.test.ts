/**
 * Two materials of one name in one job: a declared one and the built-in one that it shadows in its own file, while the
 * recipes of another file still mean the built-in one. Each is needed, priced and judged by itself.
 */
import { describe, expect, it } from "vitest";
import { coloursFor } from "../../server/src/reports/colours.ts";
import { totalsText } from "../../server/src/reports/totals-text.ts";
import { compareJobs } from "../../server/src/views/job-comparison.ts";
import { analyse, lineOf } from "../harness/check-text.ts";

const SHARED = `recipe cleaned_elsewhere {
  for    wood
  safety gloves, no_ignition, ventilate 1 air changes/h
  step   clean with mineral_spirits, uses ELSEWHERE
}
`;
const SHELVES = `use "shared.finish"

material mineral_spirits {
  family  mineral spirits
  on_hand 200 mL
}

recipe cleaned {
  for    wood
  safety gloves, no_ignition, ventilate 1 air changes/h
  step   clean with mineral_spirits, uses HERE
}

piece shelf {
  built 2015
  surface boards {
    shape area 4 m2
    wood  beech
    wear  light
  }
}

shop shed {
  air  21 C, 50 % RH
  room 45 m3, 1 air changes/h
}

job shelves {
  piece shelf
  in    shed
  apply FIRST to boards
  apply SECOND to boards
}
`;

interface Amounts {
  readonly here: string;
  readonly elsewhere: string;
}

function job({ here, elsewhere }: Amounts, isDeclaredFirst: boolean) {
  const order = isDeclaredFirst ? ["cleaned", "cleaned_elsewhere"] : ["cleaned_elsewhere", "cleaned"];
  const text = SHELVES.replace("HERE", here).replace("FIRST", order[0]!).replace("SECOND", order[1]!);
  const analysis = analyse({
    "shared.finish": SHARED.replace("ELSEWHERE", elsewhere),
    "shelves.finish": text,
  });
  const found = analysis
    .findings("shelves.finish")
    .map((each) => `${lineOf(text, each.span.start)} ${each.rule}`);
  return { analysis, found, result: analysis.jobs("shelves.finish")[0]! };
}

describe.each([
  ["the declared one is used first", true],
  ["the built-in one is used first", false],
])("%s", (_, isDeclaredFirst) => {
  it("what is on hand of the declared one is held against what is used of it", () => {
    // 300 mL of the 200 mL on hand; the 20 mL of the other change nothing.
    expect(job({ here: "300 mL", elsewhere: "20 mL" }, isDeclaredFirst).found).toContain(
      "11 not-enough-on-hand",
    );
    expect(job({ here: "20 mL", elsewhere: "300 mL" }, isDeclaredFirst).found).toEqual(
      expect.not.arrayContaining([expect.stringContaining("not-enough-on-hand")]),
    );
  });

  it("the vapour of either is found", () => {
    const weak = (amounts: Amounts) =>
      job(amounts, isDeclaredFirst).found.filter((each) => each.endsWith("ventilation-too-weak"));
    const applied = isDeclaredFirst ? 32 : 31;
    expect(weak({ here: "1.5 L", elsewhere: "1 mL" })).toEqual(["11 ventilation-too-weak"]);
    expect(weak({ here: "1 mL", elsewhere: "1.5 L" })).toEqual([`${applied} ventilation-too-weak`]);
    // Both share one room and its air, which is one matter.
    expect(weak({ here: "1.5 L", elsewhere: "1.5 L" }).length).toBe(1);
  });
});

describe("views tell them apart", () => {
  const { analysis, result } = job({ here: "300 mL", elsewhere: "20 mL" }, true);

  it("totals", () => {
    const text = totalsText([{ label: "shelves.finish", result }], coloursFor({ isTTY: false, env: {} }));
    expect(text).toMatch(/mineral_spirits +\d/u);
    // 20 mL are used and nothing is spilt in reserve: under 0.1 L figures are in millilitres.
    expect(text).toMatch(/mineral_spirits \(built in\) +20 mL/u);
  });

  it("a comparison", () => {
    const side = { analysis, file: "shelves.finish", result };
    const litres = compareJobs(side, side).sides[0].materials.map(({ name, litres }) => [name, litres]);
    expect(litres).toEqual([
      ["mineral_spirits", expect.closeTo(0.3, 9)],
      ["mineral_spirits (built in)", expect.closeTo(0.02, 9)],
    ]);
  });
});
