/** Dry film of a job's new layers, worked by hand. Spare and transfer efficiency never enter it. */
import { describe, expect, test } from "vitest";
import { board, clear, job, onlyJob, recipe } from "./job-text.ts";

const filmOf = (materials: string, ...lines: readonly string[]) =>
  onlyJob(materials + board() + recipe(...lines) + job("board x 2", "face")).surfaces[0]?.dry_film_um;

describe("dry film", () => {
  test("coats add up", () => {
    // 1000 / 10 = 100 um wet, 33 % of it dry: 33 um; three of them 99 um.
    expect(filmOf(clear(), "layer clear x 3")).toBe(99);
  });

  test("however it is put on, and whatever is spared", () => {
    expect(filmOf(clear(), "layer clear x 3, by hvlp")).toBe(99);
    const spared = clear() + board() + recipe("layer clear x 3") + job("board", "face", "spare 40 %");
    expect(onlyJob(spared).surfaces[0]?.dry_film_um).toBe(99);
  });

  test("by the stated wet film", () => {
    // 150 · 0.33
    expect(filmOf(clear(), "layer clear, wet 150 um")).toBe(49.5);
  });

  test("thinned", () => {
    // 33 % · 4/5 = 26.4 % of 100 um
    expect(filmOf(clear(), "layer clear, thinned 4:1 with water")).toBe(26.4);
  });

  test("tinted, and tinted and thinned", () => {
    const tint = "material tint {\nfamily dye stain\nsolids 3 %\n}\n";
    // 95 % · 33 + 5 % · 3 = 31.35 + 0.15
    expect(filmOf(clear() + tint, "layer clear, tinted 5 % with tint")).toBe(31.5);
    // The 95 % are 4/5 clear: 95 % · 26.4 + 0.15 = 25.23
    expect(filmOf(clear() + tint, "layer clear, tinted 5 % with tint, thinned 4:1 with water")).toBe(25.23);
  });

  test("of two parts", () => {
    const two = `material two_part {
  family conversion varnish
  covers 10 m2/L
  solids 44 %
  mix    10:1 with hardener
}
material hardener {
  family acetone
  solids 11 %
}
`;
    // (44 · 10 + 11) / 11 = 41 %
    expect(filmOf(two, "layer two_part")).toBe(41);
  });

  test("wiped layers, stains, conditioners, oils, waxes and auxiliaries build none", () => {
    expect(filmOf("", "layer wiping_varnish, wiped off")).toBe(0);
    expect(filmOf("", "layer gel_stain", "layer waterborne_conditioner", "layer drying_oil")).toBe(0);
    expect(filmOf("", "layer hardwax_oil", "layer paste_wax", "layer mineral_spirits")).toBe(0);
  });

  test("a toner is a stain, and a tinted clear as toner is a film", () => {
    expect(filmOf("", "layer gel_stain, as toner")).toBe(0);
    expect(filmOf(clear(), "layer clear, as toner")).toBe(33);
  });

  test("a mix of families", () => {
    // Gel stain 0; shellac 1000 / 10 · 18 % = 18; clear 2 · 33.
    expect(filmOf(clear(), "layer gel_stain, wiped off", "layer dewaxed_shellac", "layer clear x 2")).toBe(
      84,
    );
  });
});
