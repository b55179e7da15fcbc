/** What a job gives off, worked by hand. The air that it needs is in `job-air.test.ts`. */
import { describe, expect, test } from "vitest";
import { hourlyFumes, type JobFumes, jobFumes } from "../../../server/src/core/fumes/job-fumes.ts";
import type { JobResult } from "../../../server/src/core/totals/job-totals.ts";
import { analyse } from "../../harness/check-text.ts";

const SHOP = `shop room {
  air  21 C, 50 % RH
  room 50 m3, 2 air changes/h
  crew 2
}
`;

/** Three boards of 2 m2 under a varnish of 10 m2/L and 400 g/L that is dry to the touch in 8 h. */
function result(recipe: readonly string[], shop = SHOP, more = ""): JobResult {
  const text = `material varnish {
  family oil varnish
  covers 10 m2/L
  voc    400 g/L
  touch  8 h
  recoat 12 h
  rated  21 C, 50 % RH
}
${more}piece board {
  surface face {
    shape area 2 m2
    wood  beech
  }
}
${shop}recipe work {
${recipe.map((line) => `  ${line}`).join("\n")}
}
job it {
  piece board x 3
  in    room
  start 2027-03-08 09:00
  apply work to face
  spare 0 %
}
`;
  return analyse({ "test.finish": text }).jobs("test.finish")[0]!;
}

const fumesOf = (...args: Parameters<typeof result>): JobFumes => jobFumes(result(...args));

describe("a coat", () => {
  const { coats } = fumesOf(["layer varnish x 2, takes 1 h"]);

  test("is put on all pieces: litres, grams, hours", () => {
    // 2 · 3 / 10 = 0.6 L · 400 = 240 g; 3 · 1 h by two people; half of 8 h.
    expect(coats).toHaveLength(2);
    expect(coats[1]!.grams).toBeCloseTo(240, 9);
    expect(coats[1]).toMatchObject({ applicationH: 1.5, dryingH: 4 });
    expect(coats[1]!.liquids).toMatchObject([{ vapourGPerL: 400, solvent: { name: "mineral spirits" } }]);
  });

  test("in cold air releases more slowly: 11 C doubles the 4 h", () => {
    const cold = SHOP.replace("21 C", "11 C");
    expect(fumesOf(["layer varnish, takes 1 h"], cold).coats[0]).toMatchObject({ dryingH: 8 });
  });

  test("with its thinner, and without tap water", () => {
    const spirits = "material spirits {\n  family mineral spirits\n  voc    780 g/L\n}\n";
    const [coat] = fumesOf(["layer varnish, thinned 3:1 with spirits"], SHOP, spirits).coats;
    // 0.45 L · 400 + 0.15 L · 780
    expect(coat!.grams).toBeCloseTo(180 + 117, 9);
    expect(fumesOf(["step clean with water"]).coats).toEqual([]);
  });

  test("of acetone, which is no VOC by rule, is vapour all the same", () => {
    const wipe = "material wipe {\n  family acetone\n  covers 10 m2/L\n}\n";
    const acetone = result(["step clean with wipe"], SHOP, wipe);
    expect(acetone.totals.voc_g).toBe(0);
    // 2 · 3 / 10 = 0.6 L at a specific gravity of 0.79 (NIOSH Pocket Guide, from memory).
    expect(jobFumes(acetone).coats[0]!.grams).toBeCloseTo(474, 9);
  });
});

describe("hour by hour", () => {
  test("grams leave evenly from the first stroke to half of the touch time", () => {
    // Two boards from 0 to 5 h, 16 g/h each; the third from 1 to 6 h.
    const { byHour } = fumesOf(["layer varnish, takes 1 h"]);
    expect(byHour!.map(({ grams }) => Math.round(grams * 1e6) / 1e6)).toEqual([32, 48, 48, 48, 48, 16]);
    expect(byHour!.map(({ hour }) => hour)).toEqual([0, 1, 2, 3, 4, 5]);
  });

  test("nothing is lost", () => {
    const job = result(["layer varnish x 3, takes 70 min {", "  wait until recoat", "}", "wait 3 days"]);
    const sum = jobFumes(job).byHour!.reduce((grams, hour) => grams + hour.grams, 0);
    expect(sum).toBeCloseTo(job.totals.voc_g!, 6);
  });

  test("of one line alone", () => {
    // The first coat as above, 48 g an hour at most; the second line is another's.
    const job = result(["layer varnish, takes 1 h", "layer varnish, takes 1 h"]);
    const [first] = job.runs[0]!.moments;
    const draws = job.draws.filter(({ action }) => action === first!.action);
    expect(Math.max(...hourlyFumes(draws, job.schedule)!.map(({ grams }) => grams))).toBeCloseTo(48, 9);
    expect(jobFumes(job).byHour!.some(({ grams }) => grams > 49)).toBe(true);
  });
});
