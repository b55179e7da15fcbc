/**
 * Dangerous chemicals in whole recipes: found wherever a person names them, by any of their names; answered by one right
 * protection; and never mixed.
 */
import { describe, expect, it, test } from "vitest";
import { CHEMICALS } from "../../server/src/core/knowledge/chemicals.ts";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { findingsOf } from "../harness/check-text.ts";

const rulesOf = (text: string): readonly string[] =>
  findingsOf(text)
    .flatMap(partsOf)
    .map(({ rule }) => rule);

const ALL = "safety dust_mask, vapour_respirator, gloves, eye_protection, ventilate, no_ignition, wet_rags";

const stripped = (material: string, safety = ALL, name = "tin"): string =>
  `${material}

recipe take_off {
  for    wood
  ${safety}
  step   strip with ${name}
  step   clean with water
}
`;

/** The rule that answers a hazard of the table, where one answers by itself. */
const ANSWERS: Readonly<Record<string, string>> = {
  "banned solvent": "poisonous-solvent",
  "poisonous solvent": "poisonous-solvent",
  "motor fuel": "fuel-as-solvent",
  "poisonous ingredient": "poisonous-ingredient",
  asbestos: "asbestos-named",
};
const BY_NAME: Readonly<Record<string, string>> = {
  "methylene chloride": "banned-stripper",
  NMP: "nmp-stripper",
  methanol: "poisonous-solvent",
};

const answered = CHEMICALS.flatMap((row) => {
  const rule =
    BY_NAME[row.name] ?? row.hazards.map((hazard) => ANSWERS[hazard]).find((it) => it !== undefined);
  return rule ? [{ ...row, rule }] : [];
});

describe.each(answered.map((row) => [row.name, row] as const))("%s", (_, { rule, words, cas }) => {
  const names = [...words, ...cas];
  it("is found in a title, in documentation and in a note, by every name and number", () => {
    for (const name of names) {
      const titled = stripped(`material tin "Remover, ${name} 80 %" {\n  family paint stripper\n}`);
      const documented = stripped(`## Holds ${name}.\nmaterial tin {\n  family paint stripper\n}`);
      const noted = `recipe plain {\n  for   wood\n  ${ALL}\n  note  "Wipe it down with ${name} first."\n  step  clean with soap\n}\n`;
      for (const text of [titled, documented, noted]) expect(rulesOf(text), text).toContain(rule);
    }
  });

  it("is quiet where the words deny or forbid it", () => {
    for (const name of names) {
      const text = `## Free of ${name}.
material tin "Remover without ${name}" {
  family paint stripper
}

recipe take_off {
  for    wood
  ${ALL}
  note   "Never use ${name} here."
  note   "Use mineral spirits instead of ${name}."
  step   strip with tin
  step   clean with water
}
`;
      expect(rulesOf(text), text).toEqual([]);
    }
  });
});

describe("other places", () => {
  test("the name of a material, with underscores", () => {
    const text = stripped(`material old_dcm_gel {\n  family paint stripper\n}`, ALL, "old_dcm_gel");
    expect(rulesOf(text)).toEqual(["banned-stripper"]);
  });

  test("a thinner, and the words of a step", () => {
    const text = `material thinner "Benzol" {
  family mineral spirits
}

recipe oiled {
  for    wood
  ${ALL}
  step   repair "wipe the crack with petrol"
  layer  oil_varnish, thinned 10:1 with thinner
  wait   until cured
}
`;
    expect(rulesOf(text)).toEqual(["fuel-as-solvent", "poisonous-solvent"]);
  });

  test("the title and the documentation of the recipe itself, once", () => {
    const text = `## Stripped with methylene chloride.\nrecipe quick {\n  for  wood\n  step clean with soap\n}\n`;
    expect(rulesOf(text)).toEqual(["banned-stripper"]);
  });

  test("the documentation of a job, a piece and a surface", () => {
    const text = `## The seat was filled with an old paste of asbestos.
piece stool {
  built 2015
  ## Painted with Scheele's green.
  surface seat {
    shape    panel 300 mm x 300 mm
    wood     beech
    existing oil varnish
  }
}

recipe washed {
  for    wood
  safety gloves
  step   clean with soap
}

## Wiped with petrol first.
job stools {
  piece stool
  apply washed to seat
}
`;
    expect([...rulesOf(text)].sort()).toEqual(["asbestos-named", "fuel-as-solvent", "poisonous-ingredient"]);
  });

  test("a piece that was once stripped with something banned needs nothing now", () => {
    const text = `## Stripped with methylene chloride in 1970.
piece stool {
  built 2015
  surface seat {
    shape    panel 300 mm x 300 mm
    wood     beech
    existing oil varnish
  }
}

recipe washed {
  for    wood
  safety gloves
  step   clean with soap
}

job stools {
  piece stool
  apply washed to seat
}
`;
    expect(rulesOf(text)).toEqual([]);
  });

  test("a material that several lines use is told of once", () => {
    const text = stripped(`material tin "DCM gel" {\n  family paint stripper\n}`).replace(
      "  step   strip with tin\n",
      "  step   strip with tin\n  step   strip with tin\n",
    );
    expect(rulesOf(text)).toEqual(["banned-stripper"]);
  });

  test("what is only tested for is not used", () => {
    const text = `recipe looked_at {\n  for  wood\n  step test "old filler for asbestos"\n  step clean with soap\n}\n`;
    expect(rulesOf(text)).toEqual([]);
  });
});

// 29 CFR 1910.1052, by way of appendix E of the NIOSH Pocket Guide: for methylene chloride only air from outside.
test("for what may not be used, no respirator is asked for and none is offered", () => {
  const text = stripped(
    `material tin "DCM gel" {\n  family paint stripper\n}`,
    "safety gloves, eye_protection, ventilate",
  );
  const found = findingsOf(text);
  expect(found.map(({ rule }) => rule)).toEqual(["banned-stripper"]);
  expect(found[0]!.remedy).not.toMatch(/mask|respirator|cartridge/u);
  expect(found[0]!.fixes).toEqual([]);
});

describe("two parts from the spray gun", () => {
  const sprayed = (
    hardener: string,
    family = "waterborne polyurethane",
    method = "hvlp",
    safety = ALL,
  ): string =>
    `${hardener}

material clear {
  family   ${family}
  mix      10:1 with hardener
  pot_life 4 h
}

recipe sprayed {
  for    wood
  ${safety}
  layer  clear, by ${method}
  wait   until cured
}
`;
  const part = (title: string, family = "waterborne polyurethane"): string =>
    `material hardener "${title}" {\n  family ${family}\n}`;

  // NIOSH Publication 96-111 (1996) names HDI, MDI and TDI; 29 CFR 1910.134 for supplied air.
  test.each([
    "Hardener",
    "Activator",
    "HDI hardener",
    "Part B, NCO 21 %",
    "Urethane activator",
    "CAS 822-06-0",
  ])("%s asks for supplied air", (title) => {
    expect(rulesOf(sprayed(part(title)))).toEqual(["isocyanate-hardener"]);
    expect(rulesOf(sprayed(part(title), undefined, "airless", `${ALL}, hearing`))).toEqual([
      "isocyanate-hardener",
    ]);
  });

  test.each([
    "Hardener, free of isocyanate",
    "Isocyanate-free hardener",
    "Crosslinker without isocyanates",
    "No NCO",
  ])("%s asks for none", (title) => {
    expect(rulesOf(sprayed(part(title)))).toEqual([]);
  });

  test("supplied air, brush and roller are quiet; acid-cured varnish is, unless its words name isocyanate", () => {
    expect(rulesOf(sprayed(part("Hardener"), undefined, "hvlp", `${ALL}, supplied_air`))).toEqual([]);
    expect(rulesOf(sprayed(part("Hardener"), undefined, "brush"))).toEqual([]);
    expect(rulesOf(sprayed(part("Hardener"), undefined, "roller"))).toEqual([]);
    const acid = part("Acid catalyst", "conversion varnish");
    expect(rulesOf(sprayed(acid, "conversion varnish"))).toEqual([]);
    const isocyanate = part("HDI hardener", "conversion varnish");
    expect(rulesOf(sprayed(isocyanate, "conversion varnish"))).toEqual(["isocyanate-hardener"]);
  });

  test.each(["Two-component clear", "2-part clear", "2K clear", "Two pack clear"])(
    "%s without a mix is two parts by its words",
    (title) => {
      const text = `material clear "${title}" {
  family waterborne polyurethane
}

recipe sprayed {
  for    wood
  ${ALL}
  layer  clear, by hvlp
  wait   until cured
}
`;
      expect(rulesOf(text)).toEqual(["isocyanate-hardener"]);
      expect(rulesOf(text.replace(title, `${title}, free of isocyanate`))).toEqual([]);
    },
  );

  test("one finding on breathing, not two: no cartridge is asked for beside supplied air", () => {
    const found = rulesOf(
      sprayed(part("Hardener"), undefined, "hvlp", "safety gloves, eye_protection, ventilate"),
    );
    expect(found).toEqual(["isocyanate-hardener"]);
  });

  test("a powder that is mixed with water is no coating of two parts", () => {
    const text = `material powder_paint {
  family   milk paint
  mix      1:1 with water
  pot_life 8 h
}

recipe painted {
  for    wood
  layer  powder_paint, by brush
  wait   until recoat
  layer  waterborne_acrylic
  wait   until cured
}
`;
    expect(rulesOf(text)).toEqual([]);
  });
});

describe("chemicals that must not meet", () => {
  const MATERIALS = `material chlorine "Household bleach" {
  family wood bleach
}
material ammonia "Ammonia in water" {
  family cleaner
}
material sour "Vinegar in water" {
  family cleaner
}
material oxalic "Oxalic acid in water" {
  family wood bleach
}
material peroxide "Hydrogen peroxide, 35 %" {
  family wood bleach
}
material lye "Caustic soda solution" {
  family cleaner
}
material muriatic "Muriatic acid" {
  family cleaner
}
`;
  const steps = (...lines: readonly string[]): readonly string[] =>
    rulesOf(`${MATERIALS}
recipe treated {
  for    wood
  ${ALL}
  ${lines.join("\n  ")}
  step   clean with water
  wait   72 h
}
`);
  const DANGER = ["incompatible-chemicals"];

  test.each([
    [["step bleach with chlorine", "step clean with ammonia"], DANGER],
    [["step bleach with chlorine", "wait 2 h", "step clean with ammonia"], DANGER],
    [["step clean with ammonia", "step bleach with chlorine"], DANGER],
    [["step bleach with chlorine", "step clean with sour"], DANGER],
    [["step bleach with oxalic", "step bleach with chlorine"], DANGER],
    [["step bleach with chlorine", "step clean with water", "step clean with sour"], DANGER],
    [["step bleach with chlorine", "step clean with water", "wait 24 h", "step clean with sour"], []],
    [["step bleach with peroxide", "step clean with sour"], DANGER],
    [["step bleach with peroxide", "wait overnight", "step clean with sour"], []],
    [["step clean with lye", "step clean with muriatic"], DANGER],
    [["step clean with lye", "step clean with water", "step clean with sour"], []],
    [["step clean with lye", "wait 10 min", "step bleach with peroxide"], []],
  ] as const)("%j", (lines, expected) => {
    expect(steps(...lines)).toEqual(expected);
  });

  test.each([
    "Pour bleach and ammonia into one bucket.",
    "Add a dash of vinegar to the household bleach.",
    "Household bleach with vinegar works faster.",
    "Mix the sodium hypochlorite with muriatic acid.",
    "Stir vinegar into the peroxide.",
    "A capful of bleach in the ammonia water brightens it.",
    "Bleach and vinegar, half and half, take out black spots.",
  ])("%s", (note) => {
    expect(steps(`note "${note}"`)).toEqual(DANGER);
  });

  test.each([
    "Never pour bleach and ammonia into one bucket.",
    "Do not mix household bleach with vinegar.",
    "Nothing else is mixed into the bleach, no ammonia and no acid.",
    "Keep the bleach and the ammonia on separate shelves.",
    "Wash with household bleach, rinse, let it dry and use vinegar the next day.",
    "Clean with ammonia and bleach the top a week later.",
    "The sun has bleached the top; vinegar takes the lime off.",
  ])("%s is quiet", (note) => {
    expect(steps(`note "${note}"`)).toEqual([]);
  });
});

describe("notes against protection", () => {
  const noted = (note: string, ...lines: readonly string[]): readonly string[] =>
    rulesOf(`recipe work {
  for    wood
  ${ALL}
  note   "${note}"
  ${lines.join("\n  ")}
}
`);
  const STRIPPING = ["step   strip with paint_stripper", "step   clean with water"];

  test.each([
    "Rub the stripper in with bare fingers.",
    "It works best without gloves.",
    "No goggles are needed for a small patch.",
    "A mask is not needed with the window open.",
    "A paper mask is enough.",
    "Hold your breath and be quick.",
    "A scarf over your nose will do.",
    "Gloves only get in the way here.",
  ])("%s", (note) => {
    expect(noted(note, ...STRIPPING)).toEqual(["note-against-protection"]);
    expect(noted(note, "step   clean with soap")).toEqual([]);
  });

  test.each([
    "Never with bare hands.",
    "Not even a drop without gloves.",
    "No mask stops it for ever: change the cartridge.",
    "A paper mask is not enough.",
    "For the sanding a dust mask will do.",
    "Feel with the bare hand whether it is smooth.",
  ])("%s is quiet", (note) => {
    expect(noted(note, ...STRIPPING)).toEqual([]);
  });
});

describe("further words that hurt", () => {
  const told = (note: string, safety: string): readonly string[] =>
    rulesOf(`recipe work {\n  for    wood\n  ${safety}\n  note   "${note}"\n  step   clean with soap\n}\n`);

  test("fuming with ammonia asks for a respirator, gloves and goggles", () => {
    const note = "Fume the oak over night with 26 % ammonia in a tent.";
    expect([...told(note, "safety ventilate")].sort()).toEqual([
      "no-eye-protection",
      "no-gloves",
      "no-respirator",
    ]);
    expect(told(note, "safety vapour_respirator, gloves, eye_protection")).toEqual([]);
  });

  // 29 CFR 1910.242(b): compressed air for cleaning.
  test("compressed air asks for goggles", () => {
    expect(told("Blow the pores out with compressed air.", "safety dust_mask")).toEqual([
      "no-eye-protection",
    ]);
    expect(told("Blow the pores out with compressed air.", "safety eye_protection")).toEqual([]);
    expect(told("Never blow the dust off with compressed air.", "safety dust_mask")).toEqual([]);
  });

  test("water onto lye or strong acid, and not the other way round", () => {
    expect(told("Pour cold water onto the lye.", ALL)).toEqual(["incompatible-chemicals"]);
    expect(told("Add water to the sulphuric acid.", ALL)).toEqual(["incompatible-chemicals"]);
    expect(told("Add the lye to water, slowly.", ALL)).toEqual([]);
    expect(told("Tip the caustic soda into the pail first and pour boiling water on it.", ALL)).toHaveLength(
      1,
    );
    expect(told("Pour the cold water into the pail first and stir the caustic soda into it.", ALL)).toEqual(
      [],
    );
    expect(told("Never pour water onto the lye.", ALL)).toEqual([]);
  });
});
