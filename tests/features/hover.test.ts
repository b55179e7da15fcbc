/** Hover, with sums that were made by hand. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { analyse } from "../harness/check-text.ts";
import { hover } from "./at-cursor.ts";

/**
 * A table top of 2 m2, twice; paint of 10 m2/L and 30 % at 11 C, where its rated air of 21 C makes reaction twice as
 * slow. A coat takes 2 × 2 / 10 × 1.1 = 0.44 L for both tables.
 */
const BENCH = `## Keep off the heater.
material trim "Trim [paint]" {
  family  alkyd paint
  covers  10 m2/L
  solids  30 %
  recoat  6 h to 24 h
  cure    10 days
  rated   21 C, 50 % RH
  voc     300 g/L
  packs   500 mL for 10.00, 1 L for 16.00
  on_hand 0.1 L
}
piece table "Table" {
  built  1936
  bought 30.00
  surface top {
    shape    panel 2 m x 1 m
    wood     red oak, veneer 0.6 mm
    existing paste wax
    wear     hard
  }
}
shop mill "Old mill" {
  air      11 C, 50 % RH
  room     45 m3, 2 air changes/h
  hours    Mon to Fri 09:00 to 17:00
  labour   20.00 per h
  currency EUR
}
## Two coats.
recipe painted(paint: material, coats: number = 2) {
  safety gloves
  step   sand 120, 150
  step   dust, takes 10 min
  layer  paint x coats, by hvlp, takes 15 min {
    wait until recoat
  }
  wait   20 h
}
job two_tables "Two tables" {
  piece table x 2
  in    mill
  start 2027-03-08 09:00
  ready 2027-04-16
  apply painted(paint: trim) to top
}
`;

/** The same without the wax, on which no coat holds and of which no date is promised. */
const BARE = BENCH.replace("    existing paste wax\n", "");

/** Puts the cursor into the first place of `text` in the bench, or behind a part of it that is marked there. */
const at = (needle: string, bench = BENCH): string => {
  const text = needle.replace("$0", "");
  const start = bench.indexOf(text);
  if (start < 0) throw new Error(`no ${text}`);
  const offset = start + needle.indexOf("$0");
  return hover(`${bench.slice(0, offset)}$0${bench.slice(offset)}`);
};

describe("names", () => {
  test("a material shows its figures, where they come from, its film and its price by the litre", () => {
    const card = at("paint: tr$0im");
    expect(card).toContain("[trim] **`trim`** “Trim \\[paint\\]”, alkyd paint");
    expect(card).toContain("Keep off the heater.");
    expect(card).toContain("| covers | 10 m2/L | stated |");
    expect(card).toMatch(/\| touch \| 8 h \| family: .+ \|/u);
    expect(card).toContain("wet film 1000 / 10 m2/L = 100 um; dry 100 um × 30 % = 30 um.");
    expect(card).toContain("500 mL for 10.00 (20.00 a litre); 1 L for 16.00 (16.00 a litre, the cheapest)");
  });

  test("a built-in material says that it is one", () => {
    expect(hover("recipe r {\n  step clean with mineral_sp$0irits\n}")).toContain(
      "the built-in mineral spirits",
    );
  });

  test("a surface shows the sum of its area", () => {
    expect(at("to to$0p")).toContain("- 2 m × 1 m = 2 m2");
    expect(at("surface to$0p")).toContain("veneer 0.6 mm");
    expect(at("sha$0pe    panel")).toContain("2 m × 1 m = 2 m2");
  });

  test("a piece speaks of lead and of what is not stated", () => {
    const card = at("piece ta$0ble x 2");
    expect(card).toContain("Built 1936, when lead was usual in paint: old coatings on it may hold lead.");
    expect(card).toContain("no `new_price`: what it saves is not computed");
  });

  test("a shop shows its dew point and its fresh air", () => {
    const card = at("in    mi$0ll");
    // e = 0.5 × 0.61094 exp(17.625 · 11 / 254.04) = 0.6553 kPa; the dew point by the same formula is 0.97 C.
    expect(card).toContain("air 11 C and 50 % RH; dew point 0.97 C");
    expect(card).toContain("room 45 m3 × 2 air changes/h = 90 m3/h of fresh air");
    expect(card).toContain("open Mon to Fri 09:00 to 17:00");
  });

  test("a recipe shows its parameters, its steps and who applies it", () => {
    const card = at("apply pain$0ted");
    expect(card).toContain("recipe painted(paint: material, coats: number = 2)");
    expect(card).toContain("2 steps, 2 coats, 2 waits");
    expect(card).toContain("applied by `two_tables`");
  });

  test("a job shows its totals with the sum of its cost", () => {
    const card = at("job two_ta$0bles");
    expect(card).toContain("- area 4 m2");
    // Two coats by hvlp: 2 × 2 m2 × 2 / 10 / 0.65 × 1.1 = 1.3538 L; less 0.1 L on hand leaves 1.2538 L.
    expect(card).toContain("`trim` 1.35 L, 0.1 L of it on hand; buy 1 × 1 L + 1 × 0.5 L for 26.00 EUR");
    // 2 × (sand 2 × 24 = 48 min; dust 10; two coats 30), and 2 × 3 min of setting up to sand, once for both:
    // 102 min, so 105, and 80.
    expect(card).toContain(
      "- hands-on 3 h 5 min: `top` 1 h 28 min × 2 + 9 min of setting up and rounding up",
    );
    // 3 h 5 min × 20.00 = 61.67.
    expect(card).toContain("Materials 26.00 + labour 61.67 + pieces 60.00 = 147.67 EUR.");
    expect(card).toContain("saving: not known, no `new_price` for `table`");
  });

  test("a job says which lines are missing for its dates", () => {
    const card = hover(
      "piece p {\n  surface s {\n    shape area 1 m2\n    wood oak\n  }\n}\nrecipe r {\n  step dust\n}\njob j$0 {\n  piece p\n  apply r to s\n}",
    );
    expect(card).toContain("last work, light use and full use not known: no `in` (the shop), no `start`");
  });

  test("parameters and arguments say what the jobs give", () => {
    expect(at("layer  pai$0nt")).toContain("Given: `trim` in `two_tables`.");
    expect(at("painted(pai$0nt: trim")).toContain("A material parameter of `painted`. It must be given.");
    expect(at("x co$0ats")).toContain("coats: number = 2");
  });

  test("a `use` line shows what it brings", () => {
    expect(hover('use "sto$0ck.finish"', { "stock.finish": "shop mill {\n}\n" })).toContain("shops: `mill`");
    const file = "shop mill {\n}\n";
    const withHead = (head: string): string =>
      hover('use "sto$0ck.finish"', { "stock.finish": `${head}${file}` });
    expect(withHead("# What is on the shelf.\r\n#   See the *labels*.\r\n\r\n")).toContain(
      "What is on the shelf.  \nSee the \\*labels\\*.\n\n- shops",
    );
    // A comment right above a declaration is about that alone.
    expect(withHead("# The mill in winter.\n")).not.toContain("winter");
    expect(withHead("# allow unused-name: kept\n\n")).not.toContain("kept");
    expect(hover('use "no$0ne.finish"')).toContain("This file cannot be used: there is no such file");
  });
});

describe("lines", () => {
  test("a layer shows litres and film with their sums", () => {
    const card = at("lay$0er  paint");
    expect(card).toContain("`two_tables`, `top`: 2 coats");
    expect(card).toContain(
      "`trim` 2 × (2 m2 × 2 pieces / 10 m2/L / 0.65 (hvlp) × 1.1 = 0.6769 L) = 1.3538 L, VOC 1.3538 L × 300 g/L = 406 g",
    );
    expect(card).toContain("wet 1000 / 10 = 100 um, dry 100 × 30 % = 30 um a coat, 60 um in all");
  });

  test("a wait shows the label's time in the shop's air, with the reason", () => {
    const card = at("wait un$0til recoat");
    expect(card).toContain("`trim` needs 6 h × 2 = 12 h.");
    expect(card).toContain("twice as slow");
  });

  test("a stated wait is shown beside the label's times", () => {
    expect(at("wa$0it   20 h")).toContain(
      "20 h; `trim` needs touch-dry 8 h × 2 = 16 h, recoat 6 h × 2 = 12 h, cured 10 days × 2 = 20 days",
    );
  });

  test("a step shows its time: stated, or by the tool's own table", () => {
    expect(at("step   du$0st")).toContain("10 min for each piece (stated)");
    expect(at("step   sa$0nd")).toContain("55 min for each piece (estimated: 2 × (3 + 12 × 2 m2) min");
    // 10/120 + 10/150 = 0.15 mm
    expect(at("step   sa$0nd")).toContain("takes about 0.15 mm of bare wood");
  });

  test("the wishes of a job show what comes of them", () => {
    // The first coats are on at 10:20 and 11:40, dry 12 h later and followed next morning at 09:15 and 09:30; then 20 h.
    // Cured 10 days × 2 after the last coat.
    expect(at("rea$0dy", BARE)).toContain(
      "Last work Tue 9 Mar 2027 09:30; light use Wed 10 Mar 2027 09:30; full use Mon 29 Mar 2027 09:30.",
    );
  });

  test("an `apply` line shows its surfaces with their sums", () => {
    expect(at("app$0ly painted")).toContain(
      "- `top`\n  - area 2 m2, × 2 pieces = 4 m2\n  - `trim` 2 × (2 m2 × 2 pieces / 10 m2/L / 0.65 (hvlp) × 1.1 = 0.6769 L) = 1.3538 L\n  - dry film 2 × `trim` 30 um = 60 um\n",
    );
  });
});

describe("words of the notation", () => {
  test.each([
    ["fam$0ily  alkyd", "required"],
    ["alkyd pai$0nt", "**alkyd paint**, paint, bound by alkyd"],
    ["red o$0ak", "**red oak**: Pinkish brown"],
    ["paste w$0ax", "**paste wax**"],
    ["ha$0rd", "three film-forming coats"],
    ["glo$0ves", "Wear gloves of the kind that its safety data sheet names."],
    ["hv$0lp", "65 % of what is sprayed lands on the piece"],
    ["pan$0el 2 m", "Sizes: length, width, thickness (may be left out)."],
    ["tak$0es 15", "takes 40 min"],
    ["mate$0rial, coats", "what is in a can"],
    ["Mo$0n to", "Monday"],
    ["shop$0 mill", "Where and when the work is done."],
  ])("%s", (needle, expected) => {
    expect(at(needle)).toContain(expected);
  });

  test("a quantity is turned into metric units, with the size of its unit", () => {
    const card = hover("material m {\n  family glaze\n  packs 3$0 qt for 5.00\n}");
    // 3 × 0.946352946 L
    expect(card).toContain("[3 qt] **3 qt** = 2.83906 L, a volume");
    expect(card).toContain("1 qt = 0.946353 L (NIST Handbook 44");
    expect(hover("shop s {\n  air 50 $0F\n}")).toContain("**50 F** = 10 C");
    expect(hover("piece p {\n  surface s {\n    shape panel 5 ft 6$0 in x 1 ft\n  }\n}")).toContain(
      "**5 ft 6 in** = 1676.4 mm",
    );
  });
});

describe("elsewhere", () => {
  test("comments, blank lines and unknown names say nothing", () => {
    expect(hover("# some$0thing\n")).toBe("nothing");
    expect(hover("\n$0\n")).toBe("nothing");
    expect(hover("recipe r {\n  step clean with no$0body\n}")).not.toContain("material `nobody`");
  });

  test("nothing throws, wherever the cursor and whatever is missing", () => {
    fc.assert(
      fc.property(fc.nat(BENCH.length), fc.nat(60), fc.nat(BENCH.length), (cut, length, offset) => {
        const text = BENCH.slice(0, cut) + BENCH.slice(cut + length);
        const info = analyse({ "test.finish": text }).hover("test.finish", offset);
        return info === undefined || (info.span.start <= info.span.end && info.span.end <= text.length);
      }),
      { numRuns: 200 },
    );
  });
});

test("a default is what it says, though a parameter has the same name", () => {
  const text = "material oil {\n  family drying oil\n}\nrecipe r(oil: material = o$0il) {\n  layer oil\n}\n";
  expect(hover(text)).toMatch(/^\[oil\] \*\*`oil`\*\*, .*drying oil/u);
});

test("a surface says whether it is taken as bare or said to be", () => {
  const card = (existing: string): string =>
    hover(`piece shelf {
  surface boa$0rd {
    shape area 2 m2
    wood  beech
${existing}  }
}
`);
  expect(card("")).toContain("taken as bare, as nothing says what is on it: say it with `existing`");
  expect(card("    existing bare\n")).toContain("nothing on it");
  expect(card("    existing bare\n")).not.toContain("taken as bare");
});
