/** What is counted of a surface where a line is done on a part of it. Every expected figure is calculated by hand beside it. */
import { describe, expect, it } from "vitest";
import { analyse, summary } from "../../harness/check-text.ts";

const door = (
  lines: string,
  shape = "panel 2000 mm x 800 mm x 40 mm, both faces",
): string => `material primer {
  family acrylic primer
  covers 10 m2/L
}
piece door {
  surface leaf {
    shape ${shape}
    wood  MDF
  }
}
recipe primed {
  safety dust_mask
  ${lines}
}
job doors {
  piece door x 8
  spare 0 %
  apply primed
}
`;

const litres = (lines: string, shape?: string): number =>
  analyse({ "test.finish": door(lines, shape) }).totals("test.finish")[0]!.materials[0]!.litres!;

describe("litres of a part", () => {
  // Edges of one door: 2 × (2.0 + 0.8) m × 0.04 m = 0.224 m2; of eight 1.792 m2; at 10 m2/L 0.1792 L.
  it.each(["only edges", 'only "the edges"', "edges only", "on the edges only"])("%s", (tail) => {
    expect(litres(`layer primer, ${tail}`)).toBeCloseTo(0.1792, 6);
  });

  // Both faces: 8 × 2 × 2.0 m × 0.8 m = 25.6 m2.
  it("only faces", () => {
    expect(litres("layer primer, only faces")).toBeCloseTo(2.56, 6);
  });

  // Of 8 × (3.2 + 0.224) m2 = 27.392 m2 a quarter is 6.848 m2.
  it("only 25 % where worn", () => {
    expect(litres('layer primer, only 25 % "where worn"')).toBeCloseTo(0.6848, 6);
  });

  // 8 × 0.5 m2.
  it("only 0.5 m2", () => {
    expect(litres("layer primer, only 0.5 m2")).toBeCloseTo(0.4, 6);
  });

  it("counts the whole where nothing tells how much is meant", () => {
    expect(litres('layer primer, only "where worn"')).toBeCloseTo(2.7392, 6);
    // Without a thickness nobody knows the edges: 8 × 1.6 m2.
    expect(litres("layer primer, only edges", "panel 2000 mm x 800 mm")).toBeCloseTo(1.28, 6);
  });
});

it("counts the time and the paper of the part that is sanded", () => {
  const sheet = (tail: string) =>
    analyse({ "test.finish": door(`step sand 120, takes 10 min/m2${tail}\n  layer primer`) }).totals(
      "test.finish",
    )[0]!.hands_on_h!;
  // A tenth of 27.392 m2 at 10 min/m2 takes 24.65 min less nine tenths: 273.92 min − 27.392 min = 4.108800 h.
  expect(sheet("") - sheet(", only 10 %")).toBeCloseTo((273.92 - 27.392) / 60, 4);
});

it("refuses more than all of it", () => {
  expect(summary(door("layer primer, only 120 %"))).toContain("13 bad-number");
});

describe("what is done on a part is still to be done on the rest", () => {
  const over = (step: string): readonly string[] =>
    summary(`piece shelf {
  surface board {
    shape    panel 900 mm x 300 mm
    wood     beech
    existing oil varnish
  }
}
recipe again {
  safety dust_mask, gloves, ventilate, no_ignition
  step   clean with soap
  ${step}
  step   dust
  layer  waterborne_polyurethane x 2, between sand 320
  wait   until cured
}
job shelves {
  piece shelf
  apply again
}
`).filter((line) => line.endsWith("coat-on-unscuffed-surface"));

  it("scuffing all of it, or a part", () => {
    expect(over("step   scuff 220")).toEqual([]);
    expect(over("step   scuff 220, only 30 %")).toEqual(["13 coat-on-unscuffed-surface"]);
  });

  it("a spot of primer leaves the scuffing of the rest as it was", () => {
    expect(
      over("step   scuff 220\n  step   dust\n  layer  bonding_primer, only 10 %\n  wait   until recoat"),
    ).toEqual([]);
  });
});
