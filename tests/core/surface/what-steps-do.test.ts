/** What steps and layers do to a surface, sentence by sentence of the language reference, "What steps do". */
import { describe, expect, test } from "vitest";
import { leftAfter, stackOf } from "./run-of.ts";

const WAXED = { existing: "oil varnish, paste wax" };

describe("clean", () => {
  test("takes grease, dust and what a stripping left, not wax", () => {
    const state = leftAfter(
      ["step strip with paint_stripper", "step sand 120", "step clean with soap"],
      WAXED,
    );
    expect([state.grease, state.dust, state.residue]).toEqual([undefined, undefined, undefined]);
    expect(leftAfter(["step clean with soap"], WAXED).wax).toBeDefined();
    expect(leftAfter(["step clean with soap"], WAXED).grease).toBeUndefined();
  });

  test("raises the grain of bare wood with water, not with a solvent, and not under a finish", () => {
    expect(leftAfter(["step clean with soap"]).raised).toBeDefined();
    expect(leftAfter(["step clean with mineral_spirits"]).raised).toBeUndefined();
    expect(leftAfter(["step clean with soap"], WAXED).raised).toBeUndefined();
  });
});

describe("dewax, strip and scrape", () => {
  test("dewax with a solvent takes wax and grease and leaves the film", () => {
    const state = leftAfter(["step dewax with mineral_spirits"], WAXED);
    expect(stackOf(state)).toEqual(["oil varnish"]);
    expect(state.wax).toBeUndefined();
    expect(state.grease).toBeUndefined();
  });

  test.each(["step strip with paint_stripper", "step scrape"])(
    "%s takes every film and wax, and leaves the surface to be cleaned",
    (line) => {
      const state = leftAfter([line], WAXED);
      expect(stackOf(state)).toEqual([]);
      expect(state.wax).toBeUndefined();
      expect(state.residue).toBeDefined();
    },
  );
});

describe("sand", () => {
  test("whose coarsest grit is 100 takes every old film, but only drives wax in", () => {
    const state = leftAfter(["step sand 100, 150"], WAXED);
    expect(stackOf(state)).toEqual([]);
    expect(state.wax?.drivenIn).toBe(true);
  });

  test("finer, and scuff, only abrade, the film below the wax as well", () => {
    for (const line of ["step sand 120, 180", "step scuff 80"]) {
      const state = leftAfter([line], WAXED);
      expect(stackOf(state), line).toEqual(["oil varnish", "paste wax"]);
      expect(state.layers[0]?.abrasions.length, line).toBe(1);
      expect(state.wax?.drivenIn, line).toBe(false);
    }
  });

  test("takes 10/G mm of bare wood: 80, 120 and 150 take 0.125 + 0.0833 + 0.0667 = 0.275 mm", () => {
    expect(leftAfter(["step sand 80, 120, 150"]).woodTakenMm).toBeCloseTo(0.275, 4);
    expect(leftAfter(["step sand 150"], { existing: "oil varnish" }).woodTakenMm).toBe(0);
  });

  test("leaves dust, which dust or clean takes", () => {
    expect(leftAfter(["step sand 120"]).dust).toBeDefined();
    expect(leftAfter(["step sand 120", "step dust"]).dust).toBeUndefined();
    expect(leftAfter(["step sand 120", "step clean with soap"]).dust).toBeUndefined();
  });

  test("knocks raised grain down for good", () => {
    const state = leftAfter(["step dampen", "step sand 220", "step dampen"]);
    expect(state.settled).toBe(true);
    expect(state.raised).toBeUndefined();
  });
});

describe("water", () => {
  test("dampen and waterborne layers raise the grain of bare wood, an oil does not", () => {
    expect(leftAfter(["step dampen"]).raised).toBeDefined();
    expect(leftAfter(["layer acrylic_primer"]).raised).toBeDefined();
    expect(leftAfter(["layer oil_varnish"]).raised).toBeUndefined();
    expect(
      leftAfter(["layer oil_varnish", "wait until cured", "layer acrylic_paint"]).raised,
    ).toBeUndefined();
  });

  test("until counts from the last layer or filling; wax that is buffed on is none", () => {
    // The waterborne clear is coated again after the family's 2 h or more; the filler of 3 h is the later of the two.
    const filler = "material putty {\n  family wood filler\n  recoat 3 h\n}\n";
    const state = leftAfter(["layer waterborne_acrylic", "step fill with putty", "wait until recoat"], {
      materials: filler,
    });
    expect(state.clock.hours).toBe(3);
    expect(leftAfter(["step buff with paste_wax", "wait until cured"]).clock.hours).toBe(0);
  });
});

describe("distress", () => {
  test("opens the wood in places until something goes over them; a stain does not close it", () => {
    const worn = ["layer acrylic_paint", "wait until cured", "step distress"];
    expect(leftAfter(worn).distressed).toBeDefined();
    expect(leftAfter(worn).dust).toBeDefined();
    expect(leftAfter([...worn, "layer oil_stain, wiped off"]).distressed).toBeDefined();
    for (const line of [
      "layer oil_varnish",
      "layer paste_wax",
      "step buff with paste_wax",
      "layer drying_oil",
    ]) {
      expect(leftAfter([...worn, line]).distressed, line).toBeUndefined();
    }
    expect(leftAfter([...worn, "step strip with paint_stripper"]).distressed).toBeUndefined();
  });
});

describe("mask", () => {
  test("a coat knows what was masked when it went on", () => {
    const { layers } = leftAfter([
      "layer acrylic_paint",
      'step mask "the panel"',
      "layer acrylic_paint",
      "step unmask",
      "layer acrylic_paint",
    ]);
    expect(layers.map((coat) => coat.masked)).toEqual([[], ["the panel"], []]);
  });
});

describe("silicone of a polish", () => {
  const materials = 'material shine "Silicone polish" {\n  family cleaner\n}\n';
  const silicone = (existing: string, ...lines: readonly string[]) =>
    leftAfter(["step buff with shine", ...lines], { existing, materials }).silicone;

  test("lies on a film until a solvent or a stripper takes it", () => {
    expect(silicone("oil varnish")).toMatchObject({ inWood: false });
    expect(silicone("oil varnish", "step clean with soap", "step scuff 220")).toMatchObject({
      inWood: false,
    });
    expect(silicone("oil varnish", "step clean with mineral_spirits")).toBeUndefined();
    expect(silicone("oil varnish", "step strip with paint_stripper")).toBeUndefined();
  });

  test("gets into bare wood, by itself or by sanding, and stays there until a film is over it", () => {
    expect(silicone("bare")).toMatchObject({ inWood: true });
    expect(silicone("oil varnish", "step sand 80", "step clean with mineral_spirits")).toMatchObject({
      inWood: true,
    });
    expect(silicone("bare", "layer oil_stain, wiped off")).toBeDefined();
    expect(silicone("bare", "layer dewaxed_shellac")).toBeUndefined();
  });
});
