/**
 * Hover on every noun, where it is declared and where it is used: each shows what it comes to with a sum that can be done
 * again. The values below are worked by hand.
 */
import { describe, expect, test } from "vitest";
import { hover } from "./at-cursor.ts";

/**
 * Two tables with a top of 2 m2 and legs of 0.5 m2 each, in air of 11 C, where reaction takes twice as long as at the
 * rated 21 C. As the last coats have to wait for Tuesday anyway, one of four people cleans and sands all on Monday: the
 * tops and the legs are cleaned from 09:00, 09:10, 09:20 and 09:30, sanded half an hour after one another from 09:10, and
 * get their first coat at 09:40, 10:10, 10:40 and 11:10. On Tuesday at 09:00 four people put on the second.
 */
const BENCH = `material trim "Trim" {
  family  alkyd paint
  covers  10 m2/L
  solids  30 %
  touch   8 h
  recoat  6 h to 24 h
  cure    10 days
  rated   21 C, 50 % RH
  voc     300 g/L
  packs   500 mL for 10.00, 1 L for 16.00
  on_hand 0.1 L
}
material spirits {
  family mineral spirits
  covers 20 m2/L
  voc    780 g/L
  packs  1 L for 6.00
}
piece table "Table" {
  built     1990
  bought    30.00
  new_price 200.00
  surface   top {
    shape panel 2 m x 1 m
    wood  beech
  }
  surface   legs {
    shape area 0.5 m2
    wood  beech
  }
}
piece kept {
  built 1990
  surface top {
    shape    panel 2 m x 1 m
    wood     beech
    existing as left by first
  }
}
shop mill "Old mill" {
  air      11 C, 50 % RH
  room     45 m3, 2 air changes/h
  hours    Mon to Fri 09:00 to 17:00, Sat 09:00 to 13:00
  crew     4
  labour   20.00 per h
  currency EUR
}
recipe wiping(liquid: material) {
  step clean with liquid, takes 10 min
}
recipe painted(paint: material, coats: number = 2, pause: duration = 20 h, before: recipe = wiping) {
  follow before(liquid: spirits)
  step   sand 120 "with extraction", takes 30 min
  layer  paint x coats, takes 15 min {
    wait until recoat
  }
  wait   pause
}
recipe once {
  follow wiping(liquid: spirits)
  layer  trim, takes 20 min
}
job first "Two tables" {
  piece    table x 2
  in       mill
  start    2027-03-08 09:00
  apply    painted(paint: trim) to top, legs
  supplies 5.00
}
job second {
  piece kept
  piece table
  after first
  apply once to kept.top
}
`;

/** The card at the first place of a part of the bench, in which `$0` marks the cursor. */
const at = (needle: string): string => {
  const text = needle.replace("$0", "");
  const start = BENCH.indexOf(text);
  if (start < 0) throw new Error(`no ${text}`);
  const offset = start + needle.indexOf("$0");
  return hover(`${BENCH.slice(0, offset)}$0${BENCH.slice(offset)}`);
};

// A coat on both tops 2 m2 × 2 / 10 × 1.1 = 0.44 L, on both pairs of legs 0.11 L; the kept top alone 0.22 L.
const TOP_COATS = "`trim` 2 × (2 m2 × 2 pieces / 10 m2/L × 1.1 = 0.44 L) = 0.88 L";
const LEG_COATS = "`trim` 2 × (0.5 m2 × 2 pieces / 10 m2/L × 1.1 = 0.11 L) = 0.22 L";
// 10 + 30 + 2 × 15 min
const HANDS = "hands-on clean 10 min + sand 30 min + 2 × trim 15 min = 1 h 10 min, × 2 pieces = 2 h 20 min";
const FILM = "dry film 2 × `trim` 30 um = 60 um";

const ON_TOP = [
  "area 2 m2, × 2 pieces = 4 m2",
  // 2 × 2 / 20 × 1.1
  "`spirits` 2 m2 × 2 pieces / 20 m2/L × 1.1 = 0.22 L",
  TOP_COATS,
  FILM,
  HANDS,
];
const ON_LEGS = [
  "area 0.5 m2, × 2 pieces = 1 m2",
  "`spirits` 0.5 m2 × 2 pieces / 20 m2/L × 1.1 = 0.055 L",
  LEG_COATS,
  FILM,
];
const ON_KEPT = [
  "`second`, `kept.top`",
  "`trim` 2 m2 / 10 m2/L × 1.1 = 0.22 L",
  // 10 + 20 min
  "hands-on clean 10 min + trim 20 min = 30 min",
];

const TRIM = [
  "in `first` 1.1 L, buy 1 × 1 L for 16.00 EUR:",
  "2 × (2 m2 × 2 pieces / 10 m2/L × 1.1 = 0.44 L) + 2 × (0.5 m2 × 2 pieces / 10 m2/L × 1.1 = 0.11 L) = 1.1 L",
  "1.1 L − 0.1 L = 1 L to buy",
  "1 × 16.00 = 16.00",
  "VOC 1.1 L × 300 g/L = 330 g",
  // The first job has used up what was on hand.
  "in `second` 0.22 L, buy 1 × 0.5 L for 10.00:",
  "together 1.1 L + 0.22 L = 1.32 L, − 0.1 L = 1.22 L: 1 × 1 L + 1 × 0.5 L for 26.00 EUR",
];
const SPIRITS = [
  "(2 m2 × 2 pieces / 20 m2/L × 1.1 = 0.22 L) + (0.5 m2 × 2 pieces / 20 m2/L × 1.1 = 0.055 L) = 0.275 L",
  // 214.5
  "VOC 0.275 L × 780 g/L = 215 g",
  // 2 / 20 × 1.1 = 0.11
  "together 0.275 L + 0.11 L = 0.385 L: 1 × 1 L for 6.00 EUR",
];

const TABLE = [
  "area 2 + 0.5 = 2.5 m2",
  "in `first`, 2 of it",
  "area (`top` 2 + `legs` 0.5) × 2 = 5 m2",
  // 22.00 / 2, 93.33 / 2, 5.00 / 2, 60.00 / 2: half of 180.33 is 90.16 twice, and a cent.
  "materials 11.00 + labour 46.66 + supplies 2.50 + bought 30.00 = 90.16 EUR (1 of the 2 0.01 more)",
];

const MILL = [
  // e(11) = 0.61094 exp(193.875 / 254.04) = 1.3106 kPa
  "dew point 0.97 C (1.311 kPa at saturation × 50 % = 0.655 kPa",
  "room 45 m3 × 2 air changes/h = 90 m3/h of fresh air",
  "5 × 8 h + 1 × 4 h = 44 h a week",
  // 4 × 1 h 10 min
  "work in `first`: 4 h 40 min, 4.6667 h × 20.00 = 93.33 EUR",
  "its air keeps mineral spirits under 350 mg/m3 up to 90 m3/h × 0.35 g/m3 / 5 = 6.3 g/h, × 8 h = 50 g in a shift",
  // 330 + 214.5; spirits leave within 40 min of each beginning, so in the first hour 2 × 85.8 + 21.45 + 21.45 × 30 / 40
  // = 209.1 g. Sanding takes one pair of hands until 10:40, so no coat is on before 10:25.
  "545 g in all, most 209 g in the hour from the start",
  // The worst 15 min, 09:25 to 09:40: both tops and the first legs all the time, (85.8 × 2 + 21.45) × 15 / 40 = 72.4 g,
  // the second legs for 10 min, 5.4 g; 77.8 / 0.25 / 1.8 × 5 = 864 m3/h, / 45 = 19.2. More than the shift asks for.
  "worst 15 min 78 g, from Mon 8 Mar 2027 09:25: needs 19.2 air changes/h in 45 m3; the room has 2: too little (77.8 g / 1.8 g/m3 (mineral spirits) / 0.25 h × 5 = 864 m3/h, / 45 m3 = 19.2 air changes/h)",
];

const FIRST = [
  "area 5 m2: `top` 2 m2 × 2 + `legs` 0.5 m2 × 2",
  "`trim` 1.1 L, 0.1 L of it on hand; buy 1 × 1 L for 16.00 EUR",
  "= 1.1 L; 1.1 L − 0.1 L = 1 L to buy; 1 × 16.00 = 16.00; VOC 1.1 L × 300 g/L = 330 g",
  "hands-on 4 h 40 min: `top` 1 h 10 min × 2 + `legs` 1 h 10 min × 2",
  // Of the first top: clean and sand to 09:40, first coat 10:25 to 10:40; 12 h to 22:40; second coat at 09:00 the next day;
  // 20 h. 45 min held up and 10 h 20 min of night.
  "elapsed 1 day 20 h: 1.17 h of hands + 32 h of waits + 11.08 h closed or held up = 44.25 h",
  "last work Tue 9 Mar 2027 09:15",
  "light use Wed 10 Mar 2027 09:15: a day after the last coat",
  "is on at Tue 9 Mar 2027 09:15, + cure 10 days × 2 = 20 days",
  "full use Mon 29 Mar 2027 09:15",
  "VOC 545 g: 215 g `spirits` + 330 g `trim`",
  "most fumes in an hour 209 g, from the start",
  "Labour 4.6667 h × 20.00 = 93.33 EUR.",
  "Materials 22.00 + labour 93.33 + supplies 5.00 + pieces 60.00 = 180.33 EUR.",
  "New 2 × 200.00 − 180.33 = 219.67 EUR saved.",
];

const RECIPE = [
  // Nobody has said what paint it is, so only the stated wait is known.
  "2 steps, 2 coats, 2 waits",
  "waits of at least 20 h by the labels",
  "`first`, `top`",
  ...ON_TOP,
  ...ON_LEGS,
];

const LAYER = [
  `2 coats; ${TOP_COATS}, VOC 0.88 L × 300 g/L = 264 g`,
  "wet 1000 / 10 = 100 um, dry 100 × 30 % = 30 um a coat, 60 um in all",
  `2 coats; ${LEG_COATS}, VOC 0.22 L × 300 g/L = 66 g`,
  // 0.55 L × 300, each surface's in 8.25 h, from 10:25, 10:40, 10:55 and 11:10. The 8 h from 10:40 hold of the tops
  // 66 × (8 + 8) / 8.25 = 128 g, of the legs 16.5 × (7.75 + 7.5) / 8.25 = 30.5 g; 158.5 / 8 / 0.35 × 5 = 283, / 45 = 6.29;
  // once all are on, 165 / 8.25 = 20 g/h.
  "fumes in `first`: 165 g a coat, × 2 = 330 g; needs 6.3 air changes/h by itself, the room has 2 (158.5 g / 0.35 g/m3 (mineral spirits) / 8 h × 5 = 283 m3/h, / 45 m3 = 6.3 air changes/h)",
  "most 20 g in the hour from Mon 8 Mar 2027 12:00",
];

const RECOAT = ["`trim` needs 6 h × 2 = 12 h", "times are 2^(10 / 10) = 2 times the label's"];
const PAUSE = [
  "20 h; `trim` needs touch-dry 8 h × 2 = 16 h, recoat 6 h × 2 = 12 h, cured 10 days × 2 = 20 days",
];

const ROWS: readonly (readonly [noun: string, places: readonly string[], sums: readonly string[]])[] = [
  ["material", ["material tr$0im", "painted(paint: tr$0im)", "layer  tr$0im, takes"], TRIM],
  [
    "material of a step",
    ["material spi$0rits", "before(liquid: spi$0rits)", "wiping(liquid: spi$0rits)"],
    SPIRITS,
  ],
  ["piece", ["piece ta$0ble", "piece    ta$0ble x 2", "piece ta$0ble\n  after"], TABLE],
  ["piece before a dot", ["once to ke$0pt.top"], ["in `second`, 1 of it", "area `top` 2 × 1 = 2 m2"]],
  ["surface", ["surface   to$0p", "to to$0p, legs"], ["2 m × 1 m = 2 m2", "`first`, `top`", ...ON_TOP]],
  ["surface of several", ["surface   le$0gs", "to top, le$0gs"], ["`first`, `legs`", ...ON_LEGS]],
  ["surface behind a dot", ["once to kept.to$0p"], ["2 m × 1 m = 2 m2", ...ON_KEPT]],
  ["shop", ["shop mi$0ll", "in       mi$0ll"], MILL],
  ["recipe", ["recipe pain$0ted", "apply    pain$0ted"], RECIPE],
  [
    "recipe that is followed",
    ["recipe wip$0ing", "before: recipe = wip$0ing", "follow wip$0ing"],
    [
      "`spirits` 2 m2 × 2 pieces / 20 m2/L × 1.1 = 0.22 L",
      "hands-on clean 10 min = 10 min, × 2 pieces = 20 min",
    ],
  ],
  ["apply", ["app$0ly    painted"], [...ON_TOP, ...ON_LEGS]],
  ["follow", ["fol$0low before"], ["`first`, `top`", "`spirits` 2 m2 × 2 pieces / 20 m2/L × 1.1 = 0.22 L"]],
  ["job", ["job fir$0st", "after fir$0st", "as left by fir$0st"], FIRST],
  ["layer", ["lay$0er  paint x"], LAYER],
  ["wait until", ["wait un$0til recoat", "wa$0it until recoat", "until rec$0oat\n"], RECOAT],
  ["wait", ["wa$0it   pause"], PAUSE],
  [
    "parameter of a layer",
    ["painted(pai$0nt: material", "layer  pai$0nt x", "painted(pai$0nt: trim)"],
    LAYER.slice(0, 3),
  ],
  ["parameter of a count", ["coa$0ts: number", "paint x coa$0ts"], LAYER.slice(0, 3)],
  ["parameter of a time", ["pau$0se: duration", "wait   pau$0se"], PAUSE],
  [
    "parameter of a recipe",
    ["befo$0re: recipe", "follow befo$0re"],
    ["`first`, `top`", "`spirits` 2 m2 × 2 pieces / 20 m2/L × 1.1 = 0.22 L"],
  ],
  [
    "parameter of a step",
    ["wiping(liq$0uid: material", "with liq$0uid", "before(liq$0uid:"],
    ["`first`, `top`: 10 min for each piece (stated); `spirits` 2 m2 × 2 pieces / 20 m2/L × 1.1 = 0.22 L"],
  ],
];

describe.each(ROWS)("%s", (_, places, sums) => {
  test.each(places)("at %s", (place) => {
    const card = at(place);
    for (const sum of sums) expect(card).toContain(sum);
  });
});

test("a mix shows what each of its liquids is of the whole", () => {
  const mixed = BENCH.replace(
    "layer  trim, takes 20 min",
    "layer  trim, thinned 4:1 with spirits, tinted 5 % with alkyd_primer",
  );
  // 2 / 10 × 1.1 = 0.22 L: 5 % of it is tint, of the rest four parts of five are paint.
  const card = hover(mixed.replace("layer  trim,", "lay$0er  trim,"));
  expect(card).toContain(
    "`trim` 2 m2 / 10 m2/L × 1.1 = 0.22 L × 0.95 × 4/5 = 0.1672 L, VOC 0.1672 L × 300 g/L = 50 g",
  );
  expect(card).toContain(
    "`spirits` 2 m2 / 10 m2/L × 1.1 = 0.22 L × 0.95 × 1/5 = 0.0418 L, VOC 0.0418 L × 780 g/L = 33 g",
  );
  expect(card).toContain("`alkyd_primer` 2 m2 / 10 m2/L × 1.1 = 0.22 L × 5 % = 0.011 L");
});

test("what is not known is said in the place of a sum", () => {
  const bare = "recipe r(clear: material) {\n  layer clear\n}\n";
  const piece = "piece p {\n  surface s {\n    shape area 1 m2\n    wood oak\n  }\n}\n";
  const unknown = `material odd {\n}\n${piece}${bare}job j {\n  piece p\n  apply r(clear: odd) to s\n}\n`;
  expect(hover(unknown.replace("job j", "job $0j"))).toContain(
    "`odd`: litres not known, no `covers` for `odd`",
  );
  expect(hover(unknown.replace("material odd", "material $0odd"))).toContain("in `j` litres not known");
  expect(hover(unknown.replace("  layer clear", "  $0layer clear"))).toContain(
    "`odd` not known: the material states",
  );
});

test("words in quotes and passes on a layer change none of its sums", () => {
  const line = "  layer  trim, takes 20 min\n";
  const card = (layer: string): string => {
    const [before, after] = BENCH.split(line);
    return hover(`${before}  la$0${layer.slice(2)}${after}`);
  };
  const plain = card(line.slice(2));
  // The kept top alone.
  expect(plain).toContain("1 coat; `trim` 2 m2 / 10 m2/L × 1.1 = 0.22 L");
  expect(card('layer  trim, takes 20 min, "with the grain"\n')).toBe(plain);
  expect(card("layer  trim, takes 20 min, passes 2, flash 10 min\n")).toContain(
    "1 coat; `trim` 2 m2 / 10 m2/L × 1.1 = 0.22 L",
  );
});
