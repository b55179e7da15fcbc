/** Completion: what is offered where, what is not, and what stands in the text when it is taken. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FAMILY_NAMES } from "../../server/src/core/knowledge/family-names.ts";
import { analyse } from "../harness/check-text.ts";
import { accepted, completionEntries, labels } from "./at-cursor.ts";

const BASE = `material hc "Clear" {
  family waterborne polyurethane
}
piece table {
  surface top {
    shape panel 2 m x 1 m
    wood oak
  }
  surface base {
    shape area 1 m2
    wood oak
  }
}
piece chair {
  surface seat {
    shape area 1 m2
    wood oak
  }
}
shop mill {
}
`;

const inRecipe = (line: string): string =>
  `${BASE}recipe own(stain: material, n: number = 3, dry: duration = 2 h, other: recipe) {
  step dust
${line}
}
recipe second {
}
`;
const inJob = (line: string): string =>
  `${BASE}recipe clearing(stain: material, clear: material, coats: number = 3, dry: duration = 2 h) {
}
job one {
  piece table
${line}
}
job before {
}
`;
const inBlock = (head: string, line: string): string => `${head} {\n  ${line}\n}\n`;
const inMaterial = (line: string): string => inBlock("material m", line);
const inSurface = (line: string): string => `piece p {\n  surface s {\n    ${line}\n  }\n}\n`;
const inShop = (line: string): string => inBlock("shop s", line);

describe("the top level", () => {
  test("offers declarations, at the start of a line and while one is typed", () => {
    const words = ["use", "material", "piece", "shop", "recipe", "job"];
    expect(labels("$0")).toEqual(words);
    expect(labels("shop a {\n}\n\nma$0\n\nshop b {\n}")).toEqual(words);
    expect(accepted("ma$0", "material")).toBe(`material \${1:name} "\${2:Title}" {`);
  });

  test("offers nothing for names, titles and comments", () => {
    for (const text of [
      "material $0",
      'material a "b$0"',
      "# com$0",
      "## com$0",
      "material m {\n  covers 1$0",
    ]) {
      expect(labels(text).filter((label) => label === "use" || label === "family")).toEqual([]);
    }
    expect(labels("material $0")).toEqual([]);
    expect(labels("# com$0")).toEqual([]);
  });

  test("offers the paths of known files that are not used yet and do not lead back", () => {
    const others = {
      "stock.finish": "",
      "far/shop.finish": "",
      "used.finish": "",
      "back.finish": 'use "test.finish"\n',
    };
    expect(labels('use "used.finish"\nuse "$0"', others)).toEqual(["far/shop.finish", "stock.finish"]);
    expect(accepted("use $0", "stock.finish", others)).toBe('use "stock.finish"');
    expect(accepted('use "st$0ck"', "stock.finish", others)).toBe('use "stock.finish"');
    expect(labels('use "$0', others)).toContain("stock.finish");
  });

  test("offers types and defaults of parameters", () => {
    expect(labels("recipe r(a: $0")).toEqual([
      "material",
      "number",
      "duration",
      "recipe",
      "method",
      "grits",
      "ratio",
      "sheen",
    ]);
    expect(labels("recipe r($0")).toEqual([]);
    expect(labels("recipe r(a: material = $0) {\n}")).toContain("waterborne_polyurethane");
    expect(labels("recipe r(a: duration = 2 $0) {\n}")[0]).toBe("h");
  });
});

describe("fields", () => {
  test("those not stated yet, the required ones first", () => {
    expect(labels(inMaterial("$0"))[0]).toBe("family");
    expect(labels(inMaterial("family glaze\n  $0\n  covers 3 m2/L"))).not.toContain("family");
    expect(labels(inMaterial("family glaze\n  $0\n  covers 3 m2/L"))).not.toContain("covers");
    expect(labels(inSurface("$0"))).toEqual([
      "shape",
      "wood",
      "existing",
      "tested",
      "lead",
      "wear",
      "outdoors",
      "moisture",
      "note",
    ]);
    expect(labels(inSurface("shape area 1 m2\n    wood oak\n    $0"))).toEqual([
      "shape",
      "existing",
      "tested",
      "lead",
      "wear",
      "outdoors",
      "moisture",
      "note",
    ]);
    expect(labels(inJob("  $0"))[0]).toBe("apply");
    expect(labels(inJob("  apply clearing to top\n  $0"))).toContain("piece");
    expect(labels(inBlock("piece p", "$0"))).toEqual([
      "built",
      "bought",
      "new_price",
      "sell_price",
      "meant_for",
      "outdoors",
      "note",
      "surface",
    ]);
  });

  test("the words of each, several words as one", () => {
    expect(labels(inMaterial("family $0"))).toEqual([...FAMILY_NAMES]);
    expect(labels(inMaterial("family waterborne po$0"))).toEqual([
      "waterborne polyurethane",
      "waterborne acrylic",
      "waterborne lacquer",
      "waterborne two part polyurethane",
      "waterborne stain",
      "waterborne conditioner",
    ]);
    expect(accepted(inMaterial("family waterborne po$0"), "waterborne polyurethane")).toBe(
      "family waterborne polyurethane",
    );
    expect(labels(inMaterial("sheen $0"))).toEqual([
      "dead flat",
      "matte",
      "eggshell",
      "satin",
      "semi-gloss",
      "gloss",
    ]);
    expect(labels(inSurface("lead $0"))).toEqual(["none_found", "found", "not_tested"]);
    expect(labels(inSurface("lead found $0"))).toEqual(["by"]);
    expect(labels(inSurface("lead found by $0"))).toEqual(["laboratory", "xrf", "swab"]);
    expect(labels(inSurface("lead found by swab $0"))).toEqual([]);
    expect(labels(inBlock("shop s", "country $0"))).toEqual(expect.arrayContaining(["US", "CA", "DE"]));
    expect(labels(inMaterial("thin water, $0"))).toEqual(["up to"]);
    expect(labels(inSurface("wood red $0"))).toEqual(["red oak", "red alder"]);
    expect(labels(inSurface("wood red oak, $0"))).toEqual(["veneer"]);
    expect(labels(inSurface("existing alkyd paint, $0"))).toContain("paste wax");
    expect(labels(inSurface("existing as left by $0"))).toEqual([]);
    expect(labels(inSurface("wear $0"))).toEqual(["hard", "normal", "light"]);
    expect(labels(inShop("ignition $0"))).toEqual(["none", "pilot light", "heater", "welding"]);
    expect(labels(inRecipe("  for wood, $0"))).toEqual(["veneer", "laminate", "metal", "any"]);
  });

  test("units of the expected dimension after a number, with a space or without", () => {
    expect(labels(inMaterial("covers 10 $0")).slice(0, 2)).toEqual(["m2/L", "ft2/gal"]);
    expect(labels(inMaterial("covers 10 $0"))).not.toContain("h");
    expect(accepted(inMaterial("covers 10m$0"), "m2/L")).toBe("covers 10m2/L");
    expect(accepted(inMaterial("covers 10 m2/$0"), "m2/L")).toBe("covers 10 m2/L");
    expect(labels(inMaterial("rated 21 C, 50 $0"))).toEqual(["%"]);
    expect(labels(inMaterial("rated 21 C, 50 % $0"))).toEqual(["RH"]);
    expect(labels(inMaterial("packs 946 $0"))[0]).toBe("mL");
    expect(labels(inMaterial("packs 946 mL $0"))).toEqual(["for"]);
    expect(labels(inMaterial("packs 946 mL for 28 $0"))).toEqual([]);
    expect(labels(inMaterial("recoat 2 h $0"))).toEqual(["to"]);
    expect(labels(inShop("room 45 $0"))).toEqual(["m3", "ft3"]);
    expect(accepted(inShop("room 45 m3, 2 air ch$0"), "air changes/h")).toBe("room 45 m3, 2 air changes/h");
    expect(labels(inShop("labour 18.00 $0"))).toEqual(["per h"]);
  });

  test("shapes with their sizes, then what may follow", () => {
    expect(accepted(inSurface("shape $0"), "post")).toBe(`shape post \${1:side} mm x \${2:height} mm$0`);
    expect(labels(inSurface("shape 4 $0"))).toEqual(["of"]);
    expect(labels(inSurface("shape 4 of $0"))).toContain("round");
    expect(labels(inSurface("shape post 75 mm $0"))).toEqual(["x", "to"]);
    expect(labels(inSurface("shape panel 75 mm $0"))).toEqual(["x"]);
    expect(labels(inSurface("shape panel 1 m x 1 m, $0"))).toEqual([
      "both faces",
      "one face",
      "no edges",
      "plus",
    ]);
    expect(labels(inSurface("shape area 1 $0"))).toContain("m2");
    expect(labels(inSurface("shape panel 1 m x 1 m, plus 10 $0"))).toEqual(["%"]);
  });

  test("weekdays and hours", () => {
    expect(labels(inShop("hours $0"))).toEqual(["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]);
    expect(labels(inShop("hours Thu to $0"))).toEqual(["Fri", "Sat", "Sun"]);
    expect(labels(inShop("hours Mon to Fri 09:00 $0"))).toEqual(["to"]);
    expect(labels(inShop("hours Mon to Fri 09:00 to 17:00, $0"))).toContain("Sat");
  });
});

describe("lines of recipes", () => {
  test("statement words, in coat blocks without `for`", () => {
    const words = ["safety", "step", "layer", "wait", "follow", "note"];
    expect(labels(inRecipe("  $0"))).toEqual(["for", ...words]);
    expect(labels(inRecipe("  for wood\n  $0"))).toEqual(words);
    expect(labels(inRecipe("  layer hc x 2 {\n    $0\n  }"))).toEqual(words);
  });

  test("verbs and what they take", () => {
    expect(accepted(inRecipe("  step cl$0"), "clean")).toBe("step clean with ");
    expect(labels(inRecipe("  step clean $0"))).toEqual(["with"]);
    expect(labels(inRecipe("  step clean with $0")).slice(0, 4)).toEqual([
      "stain",
      "cleaner",
      "degreaser",
      "soap",
    ]);
    expect(labels(inRecipe("  step dewax with $0"))).toContain("mineral_spirits");
    expect(labels(inRecipe("  step sand 150, $0"))).toEqual(
      expect.arrayContaining(["180", "220", "n", "takes"]),
    );
    expect(labels(inRecipe("  step sand 150, $0"))).not.toContain("120");
    expect(labels(inRecipe("  step sand $0"))).toContain("wet");
    expect(labels(inRecipe("  step scuff $0"))).not.toContain("wet");
    expect(labels(inRecipe("  step dust $0"))).toEqual([]);
    expect(labels(inRecipe("  step dust, $0"))).toEqual([
      "only",
      "together",
      "apart",
      "takes",
      "costs",
      "leave",
    ]);
    expect(labels(inRecipe("  step fill with wood_filler, $0"))).toEqual([
      "only",
      "together",
      "apart",
      "takes",
      "costs",
      "uses",
      "leave",
    ]);
    expect(labels(inRecipe("  step dust, takes 15 $0"))).toContain("min/m2");
    expect(labels(inRecipe('  step mask "a$0"'))).toEqual([]);
  });

  test("layers take materials that stay, and each tail once", () => {
    expect(labels(inRecipe("  layer $0")).slice(0, 2)).toEqual(["stain", "hc"]);
    expect(labels(inRecipe("  layer $0"))).not.toContain("mineral_spirits");
    expect(labels(inRecipe("  layer $0"))).not.toContain("n");
    expect(labels(inRecipe("  layer hc $0"))).toEqual(["x"]);
    expect(labels(inRecipe("  layer hc x $0"))).toEqual(["n"]);
    expect(labels(inRecipe("  layer hc x 2, by pad, $0"))).toEqual([
      "wiped",
      "buffed",
      "thinned",
      "tinted",
      "as",
      "wet",
      "between",
      "thin",
      "mist",
      "full",
      "flooded",
      "if",
      "only",
      "passes",
      "flash",
      "together",
      "apart",
      "takes",
      "sheen",
      "transfer",
      "wet_on_wet",
    ]);
    expect(labels(inRecipe("  layer hc, by $0"))).toContain("hvlp");
    expect(labels(inRecipe("  layer hc, thinned 1:1 $0"))).toEqual(["with"]);
    expect(labels(inRecipe("  layer hc, thinned 1:1 with $0"))).toContain("water");
    expect(labels(inRecipe("  layer hc, tinted 5 % $0"))).toEqual(["with"]);
    expect(labels(inRecipe("  layer hc, wet 100 $0"))[0]).toBe("um");
    expect(labels(inRecipe("  layer hc,\n    by $0"))).toContain("foam");
  });

  test("waits and duties", () => {
    expect(labels(inRecipe("  wait $0"))).toEqual(["until", "overnight", "dry", "72 h"]);
    expect(labels(inRecipe("  wait until $0"))).toEqual(["touch", "recoat", "stackable", "cured"]);
    expect(labels(inRecipe("  wait 72 $0")).slice(0, 3)).toEqual(["h", "min", "days"]);
    expect(labels(inRecipe("  safety gloves, $0"))).toContain("dust_mask");
    expect(labels(inRecipe("  safety gloves, $0"))).not.toContain("gloves");
    expect(labels(inRecipe("  safety ventilate 4 $0"))).toEqual(["air changes/h"]);
  });

  test("`follow` takes other recipes", () => {
    expect(labels(inRecipe("  follow $0"))).toEqual(["other", "second"]);
  });
});

test("a call of a recipe that is handed on takes what the default takes, whatever else has its name", () => {
  const text = `${BASE}recipe shine(gloss: material, dry: duration = 2 h) {
  layer gloss
}
recipe finish(other: material) {
  layer other
}
recipe own(finish: recipe = shine) {
  follow finish($0)
}
`;
  expect(labels(text)).toEqual(["gloss", "dry"]);
});

describe("jobs", () => {
  test("pieces, shops and other jobs", () => {
    expect(labels(inJob("  piece $0"))).toEqual(["table", "chair"]);
    expect(labels(inJob("  in $0"))).toEqual(["mill"]);
    expect(labels(inJob("  after $0"))).toEqual(["before"]);
  });

  test("a recipe comes with the arguments that it needs", () => {
    expect(accepted(inJob("  apply $0"), "clearing")).toBe(
      `apply clearing(stain: \${1:stain}, clear: \${2:clear})$0`,
    );
    expect(accepted(inJob("  apply cl$0(stain: hc) to top"), "clearing")).toBe(
      "apply clearing(stain: hc) to top",
    );
  });

  test("arguments that are missing, the needed ones first, and values of their type", () => {
    expect(labels(inJob("  apply clearing(coats: 2, $0) to top"))).toEqual(["stain", "clear", "dry"]);
    expect(labels(inJob("  apply clearing($0, clear: hc) to top"))).toEqual(["stain", "coats", "dry"]);
    expect(accepted(inJob("  apply clearing(st$0"), "stain")).toBe("apply clearing(stain: ");
    expect(labels(inJob("  apply clearing(stain: $0)"))[0]).toBe("hc");
    expect(labels(inJob("  apply clearing(dry: 5 $0)"))[0]).toBe("h");
    expect(labels(inJob("  apply clearing(coats: 5 $0)"))).toEqual([]);
  });

  test("surfaces, by the piece where there are several", () => {
    expect(labels(inJob("  apply clearing() $0"))).toEqual(["to"]);
    expect(labels(inJob("  apply clearing() to $0"))).toEqual(["top", "base", "all"]);
    expect(labels(inJob("  apply clearing() to top, $0"))).toEqual(["base"]);
    expect(labels(inJob("  piece chair\n  apply clearing to $0"))).toEqual([
      "table.top",
      "table.base",
      "chair.seat",
      "table",
      "chair",
      "all",
    ]);
    expect(labels(inJob("  piece chair\n  apply clearing to chair.$0"))).toEqual(["seat"]);
  });
});

describe("half-typed and broken text", () => {
  test("a block without its end", () => {
    expect(labels("recipe r {\n  step sand 120\n  wait until $0")).toEqual([
      "touch",
      "recoat",
      "stackable",
      "cured",
    ]);
    expect(labels("recipe r {\n  layer gel_stain {\n    step $0\n\nrecipe s {\n}\n")).toContain("sand");
    expect(labels("material m {\n  $0\n\njob j {\n}\n")[0]).toBe("family");
  });

  test("errors before the cursor change nothing", () => {
    expect(labels("recipe r {\n  strep sand )) 120\n  wait until $0\n}")).toEqual([
      "touch",
      "recoat",
      "stackable",
      "cured",
    ]);
  });

  test("the whole word under the cursor is replaced", () => {
    expect(accepted(inRecipe("  step sa$0nd 120"), "scuff")).toBe("step scuff 120");
    expect(accepted(inJob("  apply clearing(st$0ain: hc)"), "clear")).toBe("apply clearing(clear: hc)");
    expect(accepted(inRecipe("  wait until re$0coat"), "cured")).toBe("wait until cured");
  });

  test("nothing throws, wherever the cursor and whatever is missing; what is replaced holds the cursor", () => {
    const text = inJob("  apply clearing(stain: hc, dry: 2 h) to top, base");
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(40), fc.nat(text.length), (cut, length, at) => {
        const broken = text.slice(0, cut) + text.slice(cut + length);
        const offset = Math.min(at, broken.length);
        return analyse({ "test.finish": broken })
          .completions("test.finish", offset)
          .every(({ replace, label }) => label !== "" && replace.start <= offset && offset <= replace.end);
      }),
      { numRuns: 300 },
    );
  });

  test("a label is offered once", () => {
    const all = completionEntries(inRecipe("  layer $0")).map(({ label }) => label);
    expect(new Set(all).size).toBe(all.length);
  });
});
