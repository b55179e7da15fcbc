/** The cut through a surface as data. Films are worked by hand beside what is expected. */
import { expect, test } from "vitest";
import type { Section } from "../../server/src/views/section/model.ts";
import { job, only, PLACES, STOCK } from "../harness/bench-sheets.ts";

const TABLE = `material dark_paint "Dark paint" {
  family acrylic paint
  covers 10 m2/L
  solids 40 %
  colour "#234"
}
piece table {
  surface top {
    shape    panel 1000 mm x 1000 mm
    wood     red oak, veneer 0.6 mm
    existing nitrocellulose lacquer, paste wax
  }
  surface legs {
    shape    panel 500 mm x 500 mm
    wood     pine
    existing alkyd paint, 2 coats
  }
}
recipe stripped {
  step  dewax with mineral_spirits
  step  strip with stripper
  step  clean with mineral_spirits
  layer umber, wiped off
  layer bench_clear x 2, by pad
}
recipe painted {
  step  scuff 220
  layer dark_paint, by brush
}
material stripper { family paint stripper }
job all {
  piece table x 2
  apply stripped to top
  apply painted to legs
}
`;

const section = (text: string, surface: number): Section => only(text).surfaces[surface]!.section;

test("a stripped top has its old coats off by their steps, the stain in the wood, and two films", () => {
  // Steps: 1 dewax, 2 strip, 3 clean, 4 stain, 5 coat 1, 6 coat 2; the wait between coats has no number.
  const top = section(`${STOCK}${TABLE}`, 0);
  expect(top.wood).toEqual({
    name: "red oak, veneer 0.6 mm",
    grain: "ring-porous",
    veneerMm: 0.6,
    fill: "#cfa27c",
  });
  expect(top.old.map(({ title, isKept, removedBy }) => [title, isKept, removedBy])).toEqual([
    ["nitrocellulose lacquer", false, 2],
    ["paste wax", false, 1],
  ]);
  expect(top.coats.map(({ title, coat, coats, step, isFilm }) => [title, coat, coats, step, isFilm])).toEqual(
    [
      ["Umber dye", 1, 1, 4, false],
      ["Bench clear", 1, 2, 5, true],
      ["Bench clear", 2, 2, 6, true],
    ],
  );
  // Wet 1000 / 10 m2/L = 100 um; 40 % solids leave 40 um; two coats 80 um.
  expect(top.coats[1]).toMatchObject({ wetUm: 100, dryUm: 40, isClear: true, fill: "#e6e1d3" });
  expect(top.filmUm).toBeCloseTo(80, 9);
  // 1 m2 × 2 pieces / 10 m2/L × 1.1 spare
  expect(top.coats[1]!.litres).toBeCloseTo(0.22, 9);
});

test("old paint that is scuffed stays below a paint in the colour of its number", () => {
  const legs = section(`${STOCK}${TABLE}`, 1);
  expect(legs.wood.grain).toBe("softwood");
  expect(legs.old).toEqual([
    { title: "alkyd paint", count: 2, isKept: true, isAbraded: true, fill: "#b9b7ae" },
  ]);
  expect(legs.coats).toMatchObject([{ title: "Dark paint", fill: "#223344", isClear: false, gleam: 0 }]);
});

test("a film that is not known leaves the whole unknown", () => {
  const text = `${STOCK}${PLACES}material odd "Odd paint" {
  colour white
}
recipe work {
  layer bench_clear
  layer odd
}
${job("")}`;
  const { coats, filmUm } = section(text, 0);
  expect(coats.map(({ title, dryUm }) => [title, dryUm === undefined])).toEqual([
    ["Bench clear", false],
    ["Odd paint", true],
  ]);
  expect(filmUm).toBeUndefined();
});

test("of wood that nothing is said of the cut says that it is taken as bare, and of wood that is said to be bare nothing", () => {
  const shown = (lines: string): string | undefined =>
    section(
      `${STOCK}piece shelf {
  surface board {
    shape    area 2 m2
    wood     beech
${lines}  }
}
recipe cleared {
  layer bench_clear
}
job shelves {
  piece shelf
  apply cleared to board
}
`,
      0,
    ).wood.assumed;
  expect(shown("")).toBe("taken as bare: nothing is stated");
  expect(shown("    existing bare\n")).toBeUndefined();
  expect(shown("    existing shellac\n")).toBeUndefined();
});
