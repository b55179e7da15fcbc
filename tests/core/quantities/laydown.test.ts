/** What a way of working lays of a brushed coat: hand calculations of litres, film and vapour. */
import { describe, expect, test } from "vitest";
import { coatFumes } from "../../../server/src/core/fumes/job-fumes.ts";
import { LAYDOWNS } from "../../../server/src/core/quantities/laydown.ts";
import { analyse } from "../../harness/check-text.ts";
import { board, job, onlyJob, recipe } from "../totals/job-text.ts";

const polish = `material polish {
  family dewaxed shellac
  covers 10 m2/L
  solids 18 %
  voc    700 g/L
}
`;
const varnish = `material gloss {
  family oil varnish
  covers 10 m2/L
  solids 40 %
}
`;
const oil = `material oil {
  family drying oil
  covers 15 m2/L
}
`;
const totalsOf = (materials: string, line: string) =>
  onlyJob(materials + board() + recipe(line) + job("board", "face", "spare 0 %"));

/** Litres on a face of 2 m2. */
const litresFor = (materials: string, line: string) => totalsOf(materials, line).materials[0]!.litres;

describe("litres", () => {
  test("twenty padded coats of shellac come to five that are brushed", () => {
    // 2 m2 / 10 m2/L · 0.25 · 20 = 1 L; brushed 2 / 10 · 20 = 4 L
    expect(litresFor(polish, "layer polish x 20, by pad")).toBeCloseTo(1, 9);
    expect(litresFor(polish, "layer polish x 20, by rubber")).toBeCloseTo(1, 9);
    expect(litresFor(polish, "layer polish x 20, by brush")).toBeCloseTo(4, 9);
  });
  test("varnish wiped on with a cloth is half of a brushed coat", () => {
    // 2 / 10 · 0.5 · 2
    expect(litresFor(varnish, "layer gloss x 2, by cloth")).toBeCloseTo(0.2, 9);
  });
  test("varnish wiped off again has been put on at the label's rate", () => {
    // 2 / 10
    expect(litresFor(varnish, "layer gloss, by cloth, wiped off")).toBeCloseTo(0.2, 9);
  });
  test("an applicator's pad with varnish, and a cloth with oil, lay what the label says", () => {
    // 2 / 10, 2 / 15
    expect(litresFor(varnish, "layer gloss, by pad")).toBeCloseTo(0.2, 9);
    expect(litresFor(oil, "layer oil, by cloth, wiped off")).toBeCloseTo(2 / 15, 6);
  });
  test("a flood coat takes twice as much", () => {
    // 2 / 15 · 2
    expect(litresFor(oil, "layer oil, flooded, wiped off")).toBeCloseTo(4 / 15, 6);
  });
});

describe("film", () => {
  const filmOf = (materials: string, line: string) => totalsOf(materials, line).surfaces[0]!.dry_film_um;
  test("twenty padded coats of shellac", () => {
    // 1000 / 10 · 0.25 = 25 um wet, 18 % of it dry: 4.5 um; twenty of them 90 um.
    expect(filmOf(polish, "layer polish x 20, by pad")).toBe(90);
  });
  test("a stated wet film stands", () => {
    // 40 · 0.18
    expect(filmOf(polish, "layer polish, by pad, wet 40 um")).toBe(7.2);
  });
  test("varnish by cloth", () => {
    // 1000 / 10 · 0.5 = 50 um wet, 40 % of it dry.
    expect(filmOf(varnish, "layer gloss, by cloth")).toBe(20);
  });
});

describe("all that leaves the can evaporates, in the job's grams and in those of its coats", () => {
  const gramsOf = (materials: string, line: string) => {
    const text = materials + board() + recipe(line) + job("board", "face", "spare 0 %");
    const { draws, totals } = analyse({ "test.finish": text }).jobs("test.finish")[0]!;
    const coats = coatFumes(draws).map(({ grams }) => grams!);
    expect(coats.reduce((sum, grams) => sum + grams, 0)).toBeCloseTo(totals.voc_g!, 6);
    return coats;
  };
  const clear = `material clear {
  family oil varnish
  covers 10 m2/L
  voc    400 g/L
}
`;
  test("of a padded coat, no more than the pad has drawn", () => {
    // 2 m2 / 10 m2/L · 0.25 = 0.05 L of 700 g/L
    const coats = gramsOf(polish, "layer polish x 20, by pad");
    expect(coats).toHaveLength(20);
    for (const grams of coats) expect(grams).toBeCloseTo(35, 6);
  });
  test("of a gun, its overspray as well", () => {
    // 2 / 10 / 0.65 · 400
    expect(gramsOf(clear, "layer clear, by hvlp")[0]).toBeCloseTo(123.0769, 3);
  });
  test("of what is wiped off, and of a flood coat, all of it", () => {
    // 2 / 10 · 400 = 80 g; flooded twice as much
    expect(gramsOf(clear, "layer clear, by cloth, wiped off")[0]).toBeCloseTo(80, 6);
    expect(gramsOf(clear, "layer clear, by brush, flooded, wiped off")[0]).toBeCloseTo(160, 6);
  });
});

test("every laydown has its source", () => {
  for (const { share, name, source } of Object.values(LAYDOWNS)) {
    expect(share).toBeGreaterThan(0);
    expect(name).not.toBe("");
    expect(source).toBe("common practice, no source");
  }
});
