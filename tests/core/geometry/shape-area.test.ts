/**
 * Areas of shapes: hand calculations written out beside each case, numerical integration for the two curved formulas,
 * and the scaling law as a property.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SHAPES } from "../../../grammar/src/vocabulary.ts";
import { ellipsePerimeter, shapeArea } from "../../../server/src/core/geometry/shape-area.ts";
import { nameOf, shapeOf } from "../measure/quantity-of.ts";

function areaOf(text: string): number {
  const area = shapeArea(shapeOf(text));
  if (!area.ok) throw new Error(area.problems.map((problem) => problem.message).join("\n"));
  return area.areaM2;
}

function workingOf(text: string): string {
  const area = shapeArea(shapeOf(text));
  return area.ok ? area.working : "";
}

function problemsOf(text: string): readonly string[] {
  const area = shapeArea(shapeOf(text));
  if (area.ok) return [];
  return area.problems.map(
    ({ rule, span, message }) =>
      `${rule} at [${text.slice(span.start, span.end)}]: ${message.replaceAll("\n", " / ")}`,
  );
}

describe("hand calculations", () => {
  test.each([
    ["panel 1800 mm x 900 mm", 1.8 * 0.9], // 1.62
    ["panel 1800 mm x 900 mm x 30 mm", 1.782], // 1.62 + 2 · 2.7 · 0.03 = 1.62 + 0.162
    ["panel 1800 mm x 900 mm, both faces", 3.24],
    ["panel 1800 mm x 900 mm x 30 mm, both faces", 3.402], // 3.24 + 0.162
    ["disc 1 m", 0.7853981634], // π / 4
    ["disc 1 m x 25 mm", 0.8639379797], // π / 4 + π · 0.025 = 0.7853981634 + 0.0785398163
    ["disc 1 m x 25 mm, both faces", 1.6493361431], // 2 · 0.7853981634 + 0.0785398163
    ["oval 1600 mm x 1000 mm", 1.2566370614], // π · 1.6 · 1 / 4 = 0.4 π
    ["band 1600 mm x 700 mm x 90 mm", 0.414], // 2 · 2.3 · 0.09
    ["band 1600 mm x 700 mm x 90 mm, inside too", 0.828],
    ["post 50 mm x 700 mm", 0.14], // 4 · 0.05 · 0.7
    // 4 · 0.0625 · √(0.49 + 0.0125²) = 0.25 · √0.49015625 = 0.25 · 0.700111597
    ["post 75 mm to 50 mm x 700 mm", 0.1750278993],
    // Cylinder 2πrh, r 3 cm, h 70 cm: 0.131947 m2.
    ["round 60 mm x 700 mm", 0.131946891],
    // Lateral frustum π(R + r)√(h² + (R − r)²), R 4 cm, r 2.5 cm, h 70 cm:
    // 0.2042035225 · √0.490225 = 0.2042035225 · 0.7001606959
    ["round 80 mm to 50 mm x 700 mm", 0.1429752804],
    ["box 60 cm x 30 cm x 18 cm", 0.684], // 2 (0.18 + 0.108 + 0.054)
    ["box 60 cm x 30 cm x 18 cm, no bottom", 0.504], // 0.684 − 0.18
    ["box 60 cm x 30 cm x 18 cm, no ends", 0.576], // 0.684 − 2 · 0.3 · 0.18
    ["box 60 cm x 30 cm x 18 cm, open", 1.008], // five faces, outside and inside: 2 · 0.504
    ["box 60 cm x 30 cm x 18 cm, open, no bottom", 0.648], // four walls, both sides: 2 · (0.216 + 0.108)
    // Six faces 0.684 without the front 0.6 · 0.18 = 0.108, outside and inside: 2 · 0.576
    ["box 60 cm x 30 cm x 18 cm, open front", 1.152],
    // A chest against the wall: top 0.95 · 0.48, front 0.95 · 0.82, two sides 0.48 · 0.82.
    ["box 95 cm x 48 cm x 82 cm, no bottom, no back", 2.0222],
    // The carcase of drawers: two sides and the back.
    ["box 95 cm x 48 cm x 82 cm, no top, no bottom, no front", 1.5662],
    // Shelves against the wall, seen inside as well: back left out, 2 · (2 · 0.6 · 0.3 + 2 · 0.3 · 0.18).
    ["box 60 cm x 30 cm x 18 cm, open front, no back", 0.936],
    ["panel 1800 mm x 900 mm x 30 mm, one face", 1.782],
    ["area 1.2 m2", 1.2],
    ["4 of post 50 mm x 700 mm", 0.56],
    ["4 of post 75 mm to 50 mm x 700 mm, plus 10 %", 0.7701227568], // 0.1750278993 · 4 · 1.1
    ["panel 6 ft x 3 ft", 1.67225472], // 18 ft2 · 0.09290304
    ["panel 5 ft 6 in x 3 ft", 1.53290016], // 16.5 ft2 · 0.09290304
  ])("%s", (text, expected) => {
    expect(areaOf(text)).toBeCloseTo(expected, 8);
  });
});

describe("curves against numerical integration", () => {
  test.each([
    [0.8, 0.5],
    [1, 1],
    [0.9, 0.3],
  ])("the edge of an oval of half axes %d and %d", (a, b) => {
    // ∫ √(a² sin² + b² cos²) over the whole turn; the midpoint rule is exact to rounding for a smooth periodic function.
    const steps = 4096;
    let perimeter = 0;
    for (let step = 0; step < steps; step++) {
      const angle = (2 * Math.PI * (step + 0.5)) / steps;
      perimeter += Math.hypot(a * Math.sin(angle), b * Math.cos(angle)) * ((2 * Math.PI) / steps);
    }
    // Ramanujan's second formula: relative error about 3 h^5 / 2^17, below 1e-6 up to an axis ratio of 1 : 3.
    expect(Math.abs(ellipsePerimeter(a, b) / perimeter - 1)).toBeLessThan(1e-6);
    const oval = areaOf(`oval ${2 * a} m x ${2 * b} m x 25 mm`);
    expect(oval).toBeCloseTo(Math.PI * a * b + perimeter * 0.025, 6);
  });

  test("a round oval is a disc", () => {
    expect(areaOf("oval 900 mm x 900 mm x 25 mm")).toBeCloseTo(areaOf("disc 900 mm x 25 mm"), 12);
  });
});

describe("the working", () => {
  test.each([
    ["panel 1800 mm x 900 mm x 30 mm", "1.8 m × 0.9 m + 2 × (1.8 m + 0.9 m) × 0.03 m = 1.782 m2"],
    ["panel 1800 mm x 900 mm, both faces", "2 × 1.8 m × 0.9 m = 3.24 m2"],
    ["disc 1 m x 25 mm", "π × (1 m)² / 4 + π × 1 m × 0.025 m = 0.8639 m2"],
    ["band 1600 mm x 700 mm x 90 mm, inside too", "2 × 2 × (1.6 m + 0.7 m) × 0.09 m = 0.828 m2"],
    ["4 of post 50 mm x 700 mm, plus 10 %", "4 × (4 × 0.05 m × 0.7 m) × 1.1 = 0.616 m2"],
    [
      "round 80 mm to 50 mm x 700 mm",
      "π × (0.08 m + 0.05 m) / 2 × √((0.7 m)² + ((0.08 m − 0.05 m) / 2)²) = 0.143 m2",
    ],
    ["box 60 cm x 30 cm x 18 cm, no bottom", "0.6 m × 0.3 m + 2 × (0.6 m + 0.3 m) × 0.18 m = 0.504 m2"],
    ["box 60 cm x 30 cm x 18 cm, open", "2 × (0.6 m × 0.3 m + 2 × (0.6 m + 0.3 m) × 0.18 m) = 1.008 m2"],
    ["area 1.2 m2", "1.2 m2"],
    ["3 of area 1.2 m2", "3 × 1.2 m2 = 3.6 m2"],
  ])("%s", (text, expected) => {
    expect(workingOf(text)).toBe(expected);
  });
});

describe("what is wrong is said at its place", () => {
  test.each([
    ["pannel 1 m x 1 m", ["unknown-word at [pannel]: Unknown shape `pannel`; did you mean `panel`?"]],
    [
      "constructor 1 m x 1 m",
      [
        "not-counted at [constructor]: Nothing is counted of `constructor`: the shapes are `panel`, `disc`, `oval`, `band`, `post`, `round`, `box`, `frame`, `area` / Write what you measured where none fits, such as `shape area 1.2 m2`.",
      ],
    ],
    [
      "panel 1 m x 1 m, both face",
      ["unknown-word at [both face]: `both face` is not said of `panel`; did you mean `both faces`?"],
    ],
    [
      "post 50 mm x 1 m, both faces",
      [
        "unknown-word at [both faces]: `both faces` is not said of `post`, which takes no options but `plus 10 %`.",
      ],
    ],
    [
      "box 1 m x 1 m x 1 m, both faces",
      [
        "unknown-word at [both faces]: `both faces` is not said of `box`; it takes `no bottom`, `no top`, `no back`, `no front`, `no ends`, `open` or `open front`.",
      ],
    ],
    [
      "panel 1 m to 2 m x 1 m",
      [
        "syntax at [1 m to 2 m]: The length of a panel cannot taper; only the first size of `post` and `round` takes `to`.",
      ],
    ],
    [
      "round 50 mm x 700 mm to 600 mm",
      [
        "syntax at [700 mm to 600 mm]: The height of a round cannot taper; only the first size of `post` and `round` takes `to`.",
      ],
    ],
    [
      "panel 1 m",
      [
        "syntax at [panel 1 m]: `panel` also needs its width. / Write, for example, `shape panel 1800 mm x 900 mm x 30 mm`.",
      ],
    ],
    [
      "disc 1 m x 20 mm x 30 mm",
      [
        "syntax at [30 mm]: `disc` takes diameter, thickness and no more. / Write, for example, `shape disc 900 mm x 25 mm`.",
      ],
    ],
    ["panel 0 mm x 900 mm", ["bad-number at [0 mm]: `0 mm` must be more than 0 mm."]],
    ["panel -1 m x 900 mm", ["bad-number at [-1 m]: `-1 m` must be more than 0 mm."]],
    ["panel 3 h x 900 mm", ["wrong-unit at [3 h]: Expected a length such as `30 mm`, found a time (`3 h`)."]],
    ["area 3 m", ["wrong-unit at [3 m]: Expected an area such as `1.2 m2`, found a length (`3 m`)."]],
    ["panel 900 x 900 mm", ["wrong-unit at [900]: `900` has no unit; expected a length such as `30 mm`."]],
    [
      "0 of disc 1 m",
      ["bad-number at [0]: `0 of` says how many there are; expected a whole number from 1 to 100000."],
    ],
    [
      "1.5 of disc 1 m",
      ["bad-number at [1.5]: `1.5 of` says how many there are; expected a whole number from 1 to 100000."],
    ],
    [
      "disc 1 m, plus 10 mm",
      ["wrong-unit at [10 mm]: Expected a share such as `10 %`, found a length (`10 mm`)."],
    ],
    ["disc 1 m, plus -5 %", ["bad-number at [-5 %]: `-5 %` must not be less than 0 %."]],
    ["disc 2 km", ["wrong-unit at [km]: `km` is no unit; expected a length such as `30 mm`."]],
    ["disc 2000 m", ["bad-number at [2000 m]: `2000 m` must not be more than 1000 m."]],
  ])("%s", (text, expected) => {
    expect(problemsOf(text)).toEqual(expected);
  });

  test("all of it at once", () => {
    expect(problemsOf("0 of panel 0 mm x 3 h, open").map((problem) => problem.split(" ")[0])).toEqual([
      "bad-number",
      "bad-number",
      "wrong-unit",
      "unknown-word",
    ]);
  });

  test("a name in place of a size", () => {
    const shape = shapeOf("disc 1 m");
    const named = { ...shape, sizes: [{ ...shape.sizes[0]!, from: nameOf("wide", 5) }] };
    const area = shapeArea(named);
    expect(!area.ok && area.problems[0]!.message).toBe(
      "Expected a length, found the name `wide`; sizes of a piece are stated.\nWrite, for example, `30 mm`.",
    );
  });
});

describe("a frame", () => {
  // Outside 1.6 m x 1.1 m, inside 1.48 m x 0.98 m: 1.76 - 1.4504 = 0.3096 m2 of face.
  test("its face is what lies between the outer and the inner rectangle", () => {
    expect(areaOf("frame 1600 mm x 1100 mm x 60 mm")).toBeCloseTo(0.3096, 9);
    expect(areaOf("frame 1600 mm x 1100 mm x 60 mm, both faces")).toBeCloseTo(0.6192, 9);
  });
  // Edges 20 mm thick: 2 x (1.6 + 1.1) outside and 2 x (1.48 + 0.98) inside = 10.32 m; 0.3096 + 0.2064.
  test("with a thickness its edges outside and inside count", () => {
    expect(areaOf("frame 1600 mm x 1100 mm x 60 mm x 20 mm")).toBeCloseTo(0.516, 9);
  });
  test("borders of half the width leave no opening: it is a panel", () => {
    expect(areaOf("frame 1600 mm x 1100 mm x 550 mm x 20 mm")).toBeCloseTo(
      areaOf("panel 1600 mm x 1100 mm x 20 mm"),
      9,
    );
  });
});

describe("properties", () => {
  /** Shapes with sizes in whole millimetres; `k` scales all lengths. */
  const textOf = (name: string, sizes: readonly number[], k: number, option: string): string => {
    const word = SHAPES[name]!;
    const written = word.sizes.map((size, index) => {
      const length = `${sizes[index]! * k} mm`;
      return size.endsWith("~") ? `${length} to ${sizes[index + 1]! * k} mm` : length;
    });
    return `${name} ${written.join(" x ")}${option === "" ? "" : `, ${option}`}`;
  };
  const shapes = Object.entries(SHAPES).filter(([name]) => name !== "area");
  const cases = shapes.flatMap(([name, word]) => ["", ...word.options].map((option) => ({ name, option })));
  const size = fc.integer({ min: 1, max: 4000 });

  test("k times as long is k² times the area", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        fc.tuple(size, size, size, size),
        fc.integer({ min: 2, max: 20 }),
        ({ name, option }, sizes, k) => {
          const once = areaOf(textOf(name, sizes, 1, option));
          expect(areaOf(textOf(name, sizes, k, option)) / once).toBeCloseTo(k * k, 6);
        },
      ),
    );
  });

  test("a panel cut in two has the same face", () => {
    fc.assert(
      fc.property(size, size, size, (left, right, width) => {
        const whole = areaOf(`panel ${left + right} mm x ${width} mm`);
        const cut = areaOf(`panel ${left} mm x ${width} mm`) + areaOf(`panel ${right} mm x ${width} mm`);
        expect(cut).toBeCloseTo(whole, 9);
      }),
    );
  });

  test("inches and their millimetres give one area", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 150 }), fc.integer({ min: 1, max: 150 }), (l, w) => {
        expect(areaOf(`panel ${l} in x ${w} in`)).toBeCloseTo(
          areaOf(`panel ${l * 25.4} mm x ${w * 25.4} mm`),
          9,
        );
      }),
    );
  });
});
