/**
 * Whole jobs as strangers write them, in metric and US units, each figure worked out beside it from the definitions
 * alone: 1 ft = 0.3048 m, 1 gal = 231 in3 = 3.785411784 L, 1 lb = 453.59237 g.
 */
import { describe, expect, test } from "vitest";
import { onlyJob, totalsOf } from "./job-text.ts";

const FT = 0.3048;
const IN = 0.0254;
const GAL = 3.785411784;
const LB = 453.59237;
/** Totals are rounded to six decimals. */
const PLACES = 5;

describe("a door in US units", () => {
  const text = `material clear "Oil clear" {
\tfamily  oil polyurethane
\tcovers  500 ft²/gal   # one coat
\tsolids  45%
\tsold    1 qt for 21.99, 1 gal for 64.50,   # and small
\t        1 pt for 12.49
\ton_hand 8 floz
\tvoc     3.8 lb/gal
}
piece door "Door" {
\tsurface both {
\t\tshape panel 6 ft x 3 ft x 1 1/4 in, both faces
\t\twood  white oak
\t}
\tnew    900
\tbought 12.50
}
recipe three {
\tlayer clear x 3
}
job doors {
\tpiece    door x 2
\tsupplies 31.40
\tapply    three to all
}
`.replaceAll("\n", "\r\n");
  const totals = onlyJob(text);
  const area = 2 * (2 * 6 * FT * 3 * FT + 2 * (6 * FT + 3 * FT) * 1.25 * IN);
  const rate = (500 * FT * FT) / GAL; // m2/L
  const litres = ((area * 3) / rate) * 1.1;

  test("areas, litres, film and vapour", () => {
    expect(totals.area_m2).toBeCloseTo(area, PLACES); // 7.0375 m2
    expect(totals.materials[0]!.litres).toBeCloseTo(litres, PLACES); // 1.8925 L
    expect(totals.surfaces[0]!.dry_film_um).toBeCloseTo((3 * 1000 * 0.45) / rate, PLACES);
    expect(totals.voc_g).toBeCloseTo(((3.8 * LB) / GAL) * litres, PLACES);
  });

  test("cans and money", () => {
    // 1.8925 − 8/128 · 3.7854 = 1.6559 L. Two quarts hold 1.8927 L for 43.98; a quart and two pints as much for 46.97;
    // four pints for 49.96; a gallon costs 64.50.
    expect(totals.materials[0]!.containers).toEqual([{ litres: 0.946353, count: 2, price: 21.99 }]);
    expect(totals).toMatchObject({ material_cost: 43.98, labour_cost: null });
    expect(totals.total_cost).toBeCloseTo(43.98 + 31.4 + 2 * 12.5, PLACES); // 100.38
    expect(totals.saving).toBeCloseTo(2 * 900 - 100.38, PLACES);
  });
});

test("two parts, thinned and tinted, through a spray gun", () => {
  const totals = onlyJob(`material clear "Two-part" {
  family conversion varnish
  covers 8 m2/L
  solids 40 %
  mix    10:1 with kick
  voc    400 g/L
  packs  1 L for 30
}
material kick {
  family conversion varnish
  solids 60 %
  voc    600 g/L
  packs  100 mL for 9.00
}
material fast {
  family acetone
  solids 0 %
  voc    700 g/L
  packs  1 L for 5.55
}
material dye {
  family dye stain
  solids 5 %
  voc    0 g/L
  packs  50 mL for 4
}
piece board {
  surface face {
    shape area 2 m2
    wood  maple
  }
}
recipe spray {
  layer clear x 2, thinned 3:1 with fast, by hvlp,   # at the booth
        tinted 4% with dye
}
job it {
  piece board x 3
  spare 5 %
  apply spray to face
}
`);
  const mix = ((6 * 2) / 8 / 0.65) * 1.05; // 2.423 L
  const rest = 0.96 * mix;
  const varnish = (rest * 3) / 4;
  const litres = Object.fromEntries(totals.materials.map(({ name, litres: own }) => [name, own]));
  expect(litres.clear).toBeCloseTo((varnish * 10) / 11, PLACES); // 1.586 L: two litres
  expect(litres.kick).toBeCloseTo(varnish / 11, PLACES); // 159 mL: two bottles
  expect(litres.fast).toBeCloseTo(rest / 4, PLACES); // 0.582 L: one litre
  expect(litres.dye).toBeCloseTo(0.04 * mix, PLACES); // 97 mL: two bottles
  expect(totals.material_cost).toBeCloseTo(2 * 30 + 2 * 9 + 5.55 + 2 * 4, PLACES);
  // Solids: (40 · 10 + 60) / 11 of the varnish, three quarters of it, 96 % of that and 4 % of 5 %.
  const solids = 0.96 * 0.75 * (460 / 11) + 0.04 * 5;
  expect(totals.surfaces[0]!.dry_film_um).toBeCloseTo((2 * 125 * solids) / 100, PLACES);
  expect(totals.voc_g).toBeCloseTo((varnish * 4000) / 11 + (varnish * 600) / 11 + (rest * 700) / 4, PLACES);
});

test("recipes handed on through two others, on twelve stools", () => {
  const totals = onlyJob(`material clear {
  family waterborne polyurethane
  covers 10 m2/L
  solids 33 %
  voc    180 g/L
  packs  750 mL for 22.50, 2.5 L for 62
}
material farbe {
  family  acrylic paint
  covers  110 ft2/qt
  solids  38 %
  voc     50 g/L
  packs   1 qt for 31.00, 1 gal for 89.00
  on_hand 1 pt
}
piece stool {
  surface   seat {
    shape disc 13 in x 1 1/4 in, both faces
    wood  pine
  }
  surface   legs {
    shape 4 of round 1 1/2 in to 1 in x 2 ft 1 in, plus 12 1/2 %
    shape 4 of round 3/4 in x 1 ft
    wood  beech
  }
  bought    4.00
  new_price 35
}
recipe coats(m: material, n: number = 2, dry: duration = 4 h) {
  layer m x n, by foam, takes 6 min/m2 {
    wait dry
  }
}
recipe outer(inner: recipe, m: material = farbe) {
  follow inner(m: m, n: 3)
}
recipe top(via: recipe) {
  follow via(inner: coats)
  follow coats(m: clear, dry: 2 h)
}
job stools {
  piece stool x 12
  spare 15%
  supplies 7.25
  apply top(via: outer) to all
}
`);
  const seat = 12 * (2 * (Math.PI / 4) * (13 * IN) ** 2 + Math.PI * 13 * IN * 1.25 * IN);
  const tapered = ((Math.PI * 2.5 * IN) / 2) * Math.hypot(25 * IN, 0.25 * IN);
  const legs = 12 * (4 * tapered * 1.125 + 4 * Math.PI * 0.75 * IN * FT);
  const rate = (110 * FT * FT) / (GAL / 4);
  const paint = ((seat + legs) * 3 * 1.15) / rate;
  const clear = ((seat + legs) * 2 * 1.15) / 10;
  expect(totals.area_m2).toBeCloseTo(seat + legs, PLACES);
  expect(totals.materials.map(({ name, litres }) => [name, litres])).toEqual([
    ["farbe", expect.closeTo(paint, PLACES)], // 2.155 L less a pint, 1.682 L: two quarts
    ["clear", expect.closeTo(clear, PLACES)], // 1.552 L: three of 750 mL cost 67.50, one of 2.5 L 62.00
  ]);
  expect(totals.material_cost).toBe(2 * 31 + 62);
  const film = (3 * 1000 * 0.38) / rate + 2 * 33;
  expect(totals.surfaces.map((surface) => surface.dry_film_um)).toEqual([
    expect.closeTo(film, PLACES),
    expect.closeTo(film, PLACES),
  ]);
  expect(totals.hands_on_h).toBeCloseTo((seat + legs) * 5 * 0.1, PLACES);
  // One stool at a time does not matter without a shop: the larger surface of one, two waits of 4 h and one of 2 h.
  expect(totals.elapsed_h).toBeCloseTo(2 * 4 + 2 + (5 * 0.1 * Math.max(seat, legs)) / 12, PLACES);
  expect(totals.total_cost).toBeCloseTo(124 + 7.25 + 48, PLACES);
  expect(totals.saving).toBeCloseTo(12 * 35 - 179.25, PLACES);
});

test("what one job leaves, the next one starts from", () => {
  const [first, second] = totalsOf(`material clear {
  family  waterborne polyurethane
  covers  10 m2/L
  solids  33 %
  packs   1 L for 10.00
  on_hand 0.1 L
}
piece board {
  bought    40
  new_price 100
  surface   face {
    shape area 2 m2
    wood  beech
  }
}
recipe coats(n: number = 3) {
  layer clear x n
}
job once {
  piece board
  apply coats to face
}
job again {
  piece board
  after once
  apply coats(n: 2) to all
}
`);
  // 0.66 L, of which 0.1 L is there: one litre more; 0.44 L are left.
  expect(first).toMatchObject({ material_cost: 10, total_cost: 50, saving: 50 });
  // 0.44 L are what is left, and the piece has been paid for.
  expect(second).toMatchObject({ material_cost: 0, total_cost: 0, saving: 100 });
  expect(second!.materials[0]).toMatchObject({ containers: [], cost: 0 });
  expect(second!.surfaces[0]!.dry_film_um).toBeCloseTo(66, PLACES);
});

test("a filler laid on and not wiped off has a thickness; stains, oils and waxes have none", () => {
  const film = (family: string) =>
    onlyJob(
      `material m {\n family ${family}\n covers 10 m2/L\n solids 40 %\n}\npiece board {\n surface face {\n  shape area 2 m2\n  wood oak\n }\n}\nrecipe r {\n layer m x 2\n}\njob it {\n piece board\n apply r to face\n}\n`,
    ).surfaces[0]!.dry_film_um;
  for (const family of ["wood filler", "grain filler", "glaze", "sanding sealer", "milk paint"])
    expect(film(family), family).toBeCloseTo(80, PLACES); // 2 · 100 µm · 40 %
  for (const family of ["oil stain", "gel stain", "oil conditioner", "hardwax oil", "paste wax", "alcohol"])
    expect(film(family), family).toBe(0);
});
