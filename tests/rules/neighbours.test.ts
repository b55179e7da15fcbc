/**
 * What stands next to a finding: the same matter in other words and other work, where a reader is warned, and where the
 * trade does it so and nothing is said. Common practice, no source, where the rule names none.
 */
import { describe, expect, it } from "vitest";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { findingsOf } from "../harness/check-text.ts";

/** `warning rule` of all that is said of a text, one for each rule. */
const said = (text: string): readonly string[] =>
  [
    ...new Set(
      findingsOf(text)
        .flatMap(partsOf)
        .map(({ rule, severity }) => `${severity} ${rule}`),
    ),
  ].sort();
const saidOf = (rule: string, text: string) => said(text).filter((each) => each.endsWith(` ${rule}`));

describe("handed over before the full cure", () => {
  const handedOver = (
    end: string,
    ready: string,
    { wear = "normal", cure = "" }: { readonly wear?: string; readonly cure?: string } = {},
  ): string => `material paint {
  family acrylic paint
  recoat 4 h
${cure}}
piece bookcase {
  built 2027
  surface sides {
    shape panel 900 mm x 300 mm
    wood  birch
    wear  ${wear}
  }
}
shop garage {
  air   21 C, 50 % RH
  hours Mon to Sat 09:00 to 18:00
}
recipe painted {
  for    wood
  safety dust_mask
  step   sand 120, 150
  step   dust
  layer  paint x 2, between wait overnight and scuff 240
${end}}
job white {
  piece bookcase
  in    garage
  start 2027-06-07 09:00
  ready ${ready}
  apply painted to sides
}
`;
  const level = (text: string) => saidOf("in-service-before-cure", text).map((each) => each.split(" ")[0]);

  // Done on 8 June; a week of hardening ends on the 15th, the typical cure of 30 days on 8 July.
  it.each([
    ["a week of its own hardening, normal wear", "  wait 7 days\n", "2027-06-18"],
    ["a week by the date alone, by a typical figure", "  wait overnight\n", "2027-06-16"],
    [
      "a note on gentle use",
      '  wait 3 days\n  note "Nothing heavy on the shelves for a month."\n',
      "2027-06-14",
    ],
  ])("is information after %s", (_, end, ready) => {
    expect(level(handedOver(end, ready))).toEqual(["information"]);
  });

  it.each([
    ["four days", "  wait overnight\n", "2027-06-12", {}],
    [
      "ten days of 21 that the label states",
      "  wait overnight\n",
      "2027-06-18",
      { cure: "  cure 21 days\n" },
    ],
    ["a week, with hard wear", "  wait 7 days\n", "2027-06-18", { wear: "hard" }],
    ["two days, whatever a note says", '  note "Handle it gently for a month."\n', "2027-06-10", {}],
  ])("is a warning after %s", (_, end, ready, more) => {
    expect(level(handedOver(end, ready, more))).toContain("warning");
  });

  it("on hard wear a note on gentle use is what the remedy asks for", () => {
    const end = '  wait 7 days\n  note "Soft shoes only until it has had its month."\n';
    expect(level(handedOver(end, "2027-06-18", { wear: "hard" }))).toEqual(["information"]);
  });
});

describe("chemicals that lines one below another put together", () => {
  const lines = (...steps: readonly string[]) => `recipe washed {
  for    wood
  safety dust_mask, gloves, eye_protection, vapour_respirator, ventilate, no_ignition
${steps.map((step) => `  ${step}\n`).join("")}  wait   3 days
  layer  waterborne_acrylic
  wait   until cured
}
`;
  const dangers = (...steps: readonly string[]) => saidOf("incompatible-chemicals", lines(...steps));

  it.each([
    [['step "brush chlorine bleach over the mould"', 'step "wash down with ammonia while it is still wet"']],
    [['note "Brush household bleach over the mould."', 'note "Wash it down with ammonia."']],
    [['step "sponge on chlorine bleach"', 'step "go over it with vinegar"']],
    [['step "wipe it with ammonia"', 'note "Then brush on chlorine bleach against the stains."']],
    [['step clean "with chlorine bleach"', 'step clean "with ammonia"']],
  ])("%s", (steps) => {
    expect(dangers(...steps)).toEqual(["error incompatible-chemicals"]);
  });

  it.each([
    [['step "brush chlorine bleach over the mould"', "step clean with water", 'step "wash with ammonia"']],
    [['step "brush chlorine bleach on"', 'step "rinse twice"', 'step "wash down with ammonia"']],
    [['note "Never use chlorine bleach here."', 'step "wash down with ammonia"']],
    [['step "brush on oxalic acid"', 'step "wash with soap and water"']],
    [['step "wipe it with ammonia"', 'note "No bleach on this one."']],
  ])("not %s", (steps) => {
    expect(dangers(...steps)).toEqual([]);
  });
});

describe("a two-part clear mixed for all its coats", () => {
  const bar = (words: string, wait = "wait 5 h") => `material hard {
  family hardener
}
material clear {
  family   waterborne two part polyurethane
  mix      10:1 with hard
  pot_life 2 h
  recoat   4 h to 24 h
}
recipe bar_top {
  for    wood
  safety dust_mask, gloves, eye_protection, ventilate
  step   "${words}"
  layer  clear, by roller
  ${wait}
  step   scuff 320
  step   dust
  layer  clear, by roller
  wait   until cured
}
`;
  it.each([
    "mix lacquer and hardener for both coats at once, early in the morning",
    "stir up enough for all coats in one go",
    "catalyse the lot for the two coats beforehand",
    "both coats come from one batch",
    "the second coat is rolled from the morning's mix",
    "mix the whole amount at eight: half goes on now, the other half after lunch",
  ])("%s", (words) => {
    expect(saidOf("pot-life-overrun", bar(words))).toEqual(["warning pot-life-overrun"]);
  });

  it.each([
    "mix fresh for each of the two coats",
    "mix lacquer and hardener for the first coat",
    "stir before each coat, for both coats alike",
    "roll both coats in one direction",
  ])("not: %s", (words) => {
    expect(saidOf("pot-life-overrun", bar(words))).toEqual([]);
  });

  it("not where both coats go on within the pot life", () => {
    const words = "mix lacquer and hardener for both coats at once";
    expect(saidOf("pot-life-overrun", bar(words, "wait 1 h"))).toEqual([]);
  });
});

describe("a poison against mould where children eat", () => {
  const tray = (title: string, docs = "", use = "children") => `${docs}material oil "${title}" {
  family exterior oil
}
piece chair {
  built     2027
  meant_for ${use}
  surface tray {
    shape panel 450 mm x 300 mm
    wood  beech
  }
}
recipe oiled {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  oil, wiped off
  wait   until cured
}
job trays {
  piece chair
  apply oiled to tray
}
`;
  it.each([
    ["Decking oil with fungicide"],
    ["Garden oil", "## Holds a biocide against blue stain.\n"],
    ["Oil and wood preservative"],
    ["Oil with anti-mould agent", "", "food"],
  ])("%s", (title, docs = "", use = "children") => {
    expect(saidOf("child-or-food-surface", tray(title, docs, use))).toEqual([
      "warning child-or-food-surface",
    ]);
  });
  it.each([
    ["Garden oil"],
    ["Garden oil without fungicide"],
    ["Decking oil", "## Holds no biocide.\n"],
    ["Decking oil with fungicide", "", "adults"],
  ])("not: %s", (title, docs = "", use = "children") => {
    expect(saidOf("child-or-food-surface", tray(title, docs, use))).toEqual([]);
  });
});

it("fresh air is not asked for in the open air, nor of a recipe that is only done there", () => {
  const oiled = (...shops: readonly string[]) => `recipe oiled {
  for    wood
  safety dust_mask, gloves, no_ignition, wet_rags
  step   sand 80, 120
  step   dust
  layer  exterior_oil, wiped off
  wait   until cured
}
piece bench {
  built 2020
  surface slats {
    shape    panel 1500 mm x 60 mm
    wood     larch
    outdoors rain, sun
  }
}
shop yard {
  outdoors sheltered
  air      20 C, 55 % RH
}
shop cellar {
  air 20 C, 55 % RH
}
${shops.map((shop, at) => `job bench_${at} {\n  piece bench\n  in    ${shop}\n  apply oiled to slats\n}\n`).join("")}`;
  const asked = (...shops: readonly string[]) => saidOf("no-ventilation", oiled(...shops));
  expect(asked("yard")).toEqual([]);
  expect(asked("yard", "yard")).toEqual([]);
  expect(asked()).toEqual(["warning no-ventilation"]);
  expect(asked("cellar")).toEqual(["warning no-ventilation"]);
  expect(asked("yard", "cellar")).toEqual(["warning no-ventilation"]);
});

describe("holes filled after the stain and sanded flush", () => {
  const filled = (sanding: string, filling = "step fill with wood_filler, uses 20 mL") => `recipe shelf {
  for    wood
  safety dust_mask, gloves, ventilate
  step   sand 120, 180
  step   dust
  layer  waterborne_stain, wiped off
  wait   overnight
  ${filling}
  wait   overnight
  ${sanding}
  step   dust
  layer  waterborne_acrylic
  wait   until cured
}
`;
  it.each([["step sand 150, 180"], ["step sand 180"], ["step sand 120, 220"]])("%s", (sanding) => {
    expect(saidOf("colour-sanded-through", filled(sanding))).toEqual(["warning colour-sanded-through"]);
  });
  it.each([
    ["step sand 320", "step fill with wood_filler, uses 20 mL"],
    ["step scuff 320", "step fill with wood_filler, uses 20 mL"],
  ])("not %s", (sanding, filling) => {
    expect(saidOf("colour-sanded-through", filled(sanding, filling))).toEqual([]);
  });
});

describe("lye that a note leaves to dry in the wood", () => {
  const stripped = (note: string, ...below: readonly string[]) => `recipe stripped {
  for    wood
  safety dust_mask, gloves, eye_protection, ventilate, no_ignition, wet_rags
  note   "${note}"
${below.map((line) => `  ${line}\n`).join("")}  wait   3 days
  layer  oil_varnish
  wait   until cured
}
`;
  it.each([
    "Strip with lye then let dry.",
    "Strip the chair with caustic soda and leave it to dry.",
    "Bleach with oxalic acid and let it dry overnight.",
    "Scrub it with lye, let it dry for two days.",
    "Lay on the lye, strip, and dry it in the sun.",
  ])("%s", (note) => {
    expect(saidOf("caustic-or-acid-left-in", stripped(note))).toEqual(["warning caustic-or-acid-left-in"]);
  });
  it.each([
    ["Strip with lye, rinse well and let dry.", []],
    ["Strip with lye, then let dry after a vinegar wash.", []],
    ["Strip with lye then let dry.", ["step clean with water", "wait overnight"]],
    ["Strip with lye then let dry.", ['note "Neutralise it and rinse twice."']],
    ["Never strip with lye; wash with soap and let dry.", []],
  ])("not: %s %s", (note, below) => {
    expect(saidOf("caustic-or-acid-left-in", stripped(note, ...below))).toEqual([]);
  });
});

describe("the dirt of an old floor", () => {
  const floor = (sanding: string, existing = "oil varnish, 2 coats") => `piece floor {
  built 2001
  surface boards {
    shape    area 13 m2
    wood     beech
    existing ${existing}
  }
}
recipe floor_clear {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand ${sanding}
  step   dust
  layer  oil_polyurethane x 2, between wait overnight and sand 220
  wait   until cured
}
job floors {
  piece floor
  apply floor_clear
}
`;
  const dirty = (text: string) => saidOf("coat-on-unclean-surface", text).length > 0;
  it("goes with the wood that coarse paper takes, and not with finer, nor under wax", () => {
    expect(dirty(floor("40, 60, 80, 120"))).toBe(false);
    expect(dirty(floor("60, 80, 120"))).toBe(false);
    expect(dirty(floor("80, 120"))).toBe(true);
    expect(dirty(floor("40, 60, 80, 120", "oil varnish, paste wax"))).toBe(true);
  });
});

describe("a stain and paper", () => {
  const stained = (before: string, after: string) => `recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate
${before}  step   dust
  layer  waterborne_stain, wiped off
  wait   overnight
  step   sand ${after}
  step   dust
  layer  waterborne_acrylic
  wait   until cured
}
`;
  const levels = (before: string, after: string) => saidOf("colour-sanded-through", stained(before, after));
  it("sanding that comes after the stain only is out of order", () => {
    expect(levels("", "120, 150, 180")).toEqual(["warning colour-sanded-through"]);
    expect(levels("", "120, 180, 220")).toEqual(["warning colour-sanded-through"]);
    // Sanded back once more, perhaps on purpose.
    expect(levels("  step   sand 120, 180\n", "120, 150, 180")).toEqual(["hint colour-sanded-through"]);
    expect(levels("", "220")).toEqual([]);
    expect(levels("", "320")).toEqual([]);
  });
});

it("one material is stirred into another on its own line", () => {
  const bleached = (words: string) => `material chlorine "Household chlorine bleach" {
  family wood bleach
}
recipe bleached {
  for    wood
  safety dust_mask, gloves, eye_protection, ventilate
  step   bleach with chlorine "${words}"
  step   clean with water "twice"
  wait   48 h
}
`;
  const said = (words: string) => saidOf("incompatible-chemicals", bleached(words)).length > 0;
  expect(said("stir the oxalic acid into it, it works faster")).toBe(true);
  expect(said("stir a splash of vinegar into it")).toBe(true);
  expect(said("brush it on evenly")).toBe(false);
});
