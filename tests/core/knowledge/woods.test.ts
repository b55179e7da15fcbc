/** Woods against table 16-1 of the Wood Handbook FPL-GTR-190 (2010) and the lists of the language reference. */
import { describe, expect, test } from "vitest";
import { woodDoc } from "../../../server/src/core/knowledge/vocabularies.ts";
import { woodSchema } from "../../../server/src/core/knowledge/wood-schema.ts";
import {
  SUBSTRATES,
  substrateByName,
  WOODS,
  woodByName,
  woodNames,
} from "../../../server/src/core/knowledge/woods.ts";

const wood = (name: string) => woodByName(name)!;

test("the table holds only rows that the schema accepts, frozen", () => {
  for (const row of WOODS) {
    expect(woodSchema.safeParse(row).success, row.name).toBe(true);
    expect(Object.isFrozen(row), row.name).toBe(true);
  }
});

describe("Wood Handbook FPL-GTR-190", () => {
  test.each(["ash", "chestnut", "elm", "hickory", "white oak", "red oak"])(
    "%s is ring-porous (table 16-1)",
    (name) => {
      expect(wood(name).pores).toBe("ring");
    },
  );
  test.each(["butternut", "walnut"])("%s is semi-ring-porous (table 16-1)", (name) => {
    expect(wood(name).pores).toBe("semi-ring");
  });
  test.each([
    "red alder",
    "aspen",
    "basswood",
    "beech",
    "birch",
    "cherry",
    "hard maple",
    "sweetgum",
    "sycamore",
    "yellow poplar",
  ])("%s is diffuse-porous (table 16-1)", (name) => {
    expect(wood(name).pores).toBe("diffuse");
  });
  test.each(["yellow pine", "Douglas fir", "redwood", "western red cedar"])(
    "%s has no pores (table 16-1)",
    (name) => {
      expect(wood(name).pores).toBe("none");
      expect(wood(name).kind).toBe("softwood");
    },
  );
  test.each(["ash", "butternut", "chestnut", "elm", "hickory", "red oak", "white oak", "walnut"])(
    "%s wants a filler (filler list of chapter 16)",
    (name) => {
      expect(wood(name).needsFiller).toBe(true);
    },
  );
  test.each([
    "alder",
    "aspen",
    "basswood",
    "beech",
    "birch",
    "cherry",
    "maple",
    "sycamore",
    "poplar",
    "pine",
  ])("%s is finished without a filler (chapter 16: diffuse- and small-vessel woods)", (name) => {
    expect(wood(name).needsFiller).toBe(false);
  });

  // Specific gravity of table 16-1, oven-dry mass; at 12 % moisture a cubic metre weighs 1120 kg times that.
  const gravity: readonly [string, number][] = [
    ["ash", 0.6],
    ["chestnut", 0.43],
    ["elm", 0.5],
    ["hickory", 0.72],
    ["white oak", 0.68],
    ["red oak", 0.63],
    ["butternut", 0.38],
    ["walnut", 0.55],
    ["yellow pine", 0.51],
    ["Douglas fir", 0.48],
    ["redwood", 0.4],
    ["western red cedar", 0.32],
  ];
  test.each(gravity)("%s, specific gravity %d, has about the density that follows", (name, sg) => {
    expect(Math.abs(wood(name).density / (sg * 1120) - 1)).toBeLessThan(0.03);
  });
});

describe("the thresholds of the language reference", () => {
  test("tannin-rich: oaks, walnut, cherry, mahogany, chestnut, cedar, redwood", () => {
    const genera = /oak|walnut|cherry|mahogany|chestnut|cedar|redwood/iu;
    for (const row of WOODS) expect(row.tannin === "rich", row.name).toBe(genera.test(row.name));
  });
  test("blotch-prone: pine, fir, spruce, birch, maple, cherry, alder, aspen, poplar", () => {
    const genera = /pine|fir|spruce|birch|maple|cherry|alder|aspen|poplar/iu;
    for (const row of WOODS) expect(row.blotchProne, row.name).toBe(genera.test(row.name));
  });
  test("every wood of its list and the usual trade names are there", () => {
    const named =
      "red oak,white oak,oak,pine,cherry,maple,hard maple,soft maple,beech,birch,walnut,mahogany,ash,poplar,cedar,fir,spruce,alder,aspen,chestnut,redwood,elm,hickory,teak,rosewood,butternut,basswood,sycamore,larch,yew,linden,olive,ebony,sapele,meranti,rubberwood,bamboo,acacia";
    for (const name of named.split(",")) expect(woodByName(name), name).toBeDefined();
    expect(WOODS.length).toBeGreaterThanOrEqual(45);
  });
});

test("names are unique, sorted, and looked up however they are spaced and capitalised", () => {
  const names = woodNames();
  expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(WOODS.length);
  expect([...names].sort((a, b) => (a.toLowerCase() < b.toLowerCase() ? -1 : 1))).toEqual(names);
  expect(wood(" Red   OAK ").name).toBe("red oak");
  expect(woodByName("plastic")).toBeUndefined();
  expect(woodByName("")).toBeUndefined();
});

test("oily woods are the tropical ones and olive", () => {
  expect(WOODS.filter((row) => row.oily).map((row) => row.name)).toEqual([
    "teak",
    "rosewood",
    "iroko",
    "cocobolo",
    "ebony",
    "olive",
  ]);
});

test("sheet goods, laminate and metal: the slick ones want a scuff and take no stain", () => {
  const ofKind = (...kinds: readonly string[]) =>
    [...SUBSTRATES.values()].filter(({ kind }) => kinds.includes(kind)).map(({ name }) => name);
  expect(ofKind("plywood", "MDF", "particleboard")).toEqual(["plywood", "MDF", "particleboard"]);
  expect(ofKind("laminate")).toEqual(["laminate", "melamine", "foil"]);
  expect(ofKind("metal")).toEqual([
    "metal",
    "brass",
    "bronze",
    "copper",
    "steel",
    "stainless steel",
    "iron",
    "aluminium",
    "aluminum",
    "zinc",
    "pewter",
    "silver",
  ]);
  for (const row of SUBSTRATES.values()) {
    const isSlick = row.kind === "laminate" || row.kind === "metal";
    expect([row.needsScuff, row.kind === "plywood" || !row.canBeStained], row.name).toEqual([isSlick, true]);
  }
  expect(substrateByName("Stainless Steel")?.kind).toBe("metal");
  expect(substrateByName("mdf")?.name).toBe("MDF");
  expect(substrateByName("Laminate")?.canBeStained).toBe(false);
  expect(substrateByName("oak")).toBeUndefined();
});

test("the sentence of a wood says what it asks for", () => {
  expect(woodDoc(wood("red oak"))).toMatch(/grain filler.*tannin/u);
  expect(woodDoc(wood("pine"))).toMatch(/blotches.*knots/u);
  for (const row of WOODS) expect(woodDoc(row)).toMatch(/^[A-Z].*\.$/u);
});
