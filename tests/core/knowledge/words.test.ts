/** The closed vocabularies, the duties, the sources of ignition and the built-in materials. */
import { describe, expect, test } from "vitest";
import { DUTIES as DUTY_WORDS } from "../../../grammar/src/vocabulary.ts";
import {
  builtInFamily,
  builtInMaterialNames,
  isNeverListed,
} from "../../../server/src/core/knowledge/built-in-materials.ts";
import {
  DUTIES,
  dutyByWord,
  materialDuties,
  methodDuties,
  stepDuties,
} from "../../../server/src/core/knowledge/duties.ts";
import { FAMILIES, family } from "../../../server/src/core/knowledge/families.ts";
import { FAMILY_NAMES } from "../../../server/src/core/knowledge/family-names.ts";
import { IGNITION_SOURCES } from "../../../server/src/core/knowledge/ignition.ts";
import {
  docOf,
  familyGroups,
  type VocabularyName,
  vocabulary,
} from "../../../server/src/core/knowledge/vocabularies.ts";
import { SHEENS } from "../../../server/src/core/knowledge/words.ts";
import { wordsOf } from "../../harness/words-of.ts";

describe("vocabularies", () => {
  // The words of the language reference.
  const closed: readonly [VocabularyName, string][] = [
    ["sheen", "dead flat,matte,eggshell,satin,semi-gloss,gloss"],
    ["colour", "clear,amber,white"],
    ["wear", "hard,normal,light"],
    ["meant_for", "adults,children,food"],
    ["ignition", "none,pilot light,heater,welding"],
    ["rags", "self-heating"],
    ["for", "wood,veneer,laminate,metal,any"],
  ];
  test.each(closed)("%s: %s", (name, words) => {
    expect(wordsOf(name)).toEqual(words.split(","));
  });

  test("families are those of the schema; existing takes what leaves a layer, bare and the unknowns", () => {
    expect(wordsOf("family")).toEqual([...FAMILY_NAMES]);
    expect(wordsOf("existing").slice(0, 3)).toEqual(["bare", "unknown clear", "unknown paint"]);
    expect(wordsOf("existing")).toContain("alkyd paint");
    expect(wordsOf("existing")).not.toContain("water");
  });

  test("every word has one sentence", () => {
    for (const name of [
      "family",
      "wood",
      "sheen",
      "colour",
      "wear",
      "meant_for",
      "ignition",
      "rags",
      "for",
      "existing",
      "duty",
    ] as const) {
      for (const { word, doc } of vocabulary(name)) expect(doc, `${name} ${word}`).toMatch(/^[A-Z].+\.$/u);
      expect(new Set(wordsOf(name)).size, name).toBe(wordsOf(name).length);
    }
  });

  test("a word is found however it is capitalised", () => {
    expect(docOf("wood", "Red  Oak")).toBe(docOf("wood", "red oak"));
    expect(docOf("sheen", "shiny")).toBeUndefined();
  });

  test("groups carry the titles of the language reference and hold every family", () => {
    const groups = familyGroups();
    expect(groups.map((group) => group.title)).toEqual([
      "clears",
      "colour",
      "paints",
      "preparatory",
      "auxiliaries",
    ]);
    expect(groups.flatMap((group) => group.words).length).toBe(65);
  });

  test("sheens of every family are sheens; gloss bands rise (MPI, 60°: G1 at most 5, G2 at most 10, G3 10–25, G4 20–35, G5 35–70, G6 from 70)", () => {
    for (const row of FAMILIES.values()) {
      for (const sheen of row.sheens) expect(wordsOf("sheen"), row.name).toContain(sheen);
    }
    const band = (word: string) => SHEENS.find((sheen) => sheen.word === word)!.gloss60;
    expect(band("dead flat")[1]).toBe(5);
    expect(band("matte")[1]).toBe(10);
    expect(band("gloss")[0]).toBe(70);
    expect(band("eggshell")).toEqual([10, 25]);
    expect(band("satin")).toEqual([20, 35]);
    expect(band("semi-gloss")).toEqual([35, 70]);
  });
});

describe("duties", () => {
  test("are the words of the notation, and every family's duty is one of them", () => {
    expect(DUTIES.map((duty) => duty.word)).toEqual([...DUTY_WORDS]);
    for (const row of FAMILIES.values()) {
      for (const brought of materialDuties(row)) {
        expect(dutyByWord(brought.duty), row.name).toBeDefined();
        expect(brought.reason).not.toMatch(/^asks for it/u);
        expect(brought.source.length, row.name).toBeGreaterThan(5);
      }
    }
  });

  test("every duty names a source and defers to label, safety data sheet or local codes", () => {
    for (const duty of DUTIES) {
      expect(duty.source).toMatch(/CFR|NIOSH/u);
      expect(duty.defer, duty.word).toMatch(/label|safety data sheet|local|codes|sheet/u);
      expect(`${duty.doc} ${duty.defer}`).not.toMatch(/is safe|are safe|no risk/u);
    }
  });

  test("dry sanding brings a dust mask, wet sanding and scraping none; spraying brings breath, eyes and air", () => {
    expect(stepDuties("sand").map((it) => it.duty)).toEqual(["dust_mask"]);
    expect(stepDuties("sand", true)).toEqual([]);
    expect(stepDuties("scrape")).toEqual([]);
    expect(methodDuties("hvlp").map((it) => it.duty)).toEqual([
      "vapour_respirator",
      "eye_protection",
      "ventilate",
    ]);
    expect(methodDuties("brush")).toEqual([]);
  });

  test("reasons name what evaporates", () => {
    const ventilate = materialDuties(family("oil varnish")).find((it) => it.duty === "ventilate");
    expect(ventilate?.reason).toBe("gives off the vapour of its mineral spirits");
  });
});

describe("built-in materials", () => {
  test("one for each family, its words joined by _, and soap as a cleaner", () => {
    expect(builtInMaterialNames().length).toBe(66);
    expect(builtInFamily("waterborne_polyurethane")?.name).toBe("waterborne polyurethane");
    expect(builtInFamily("mineral_spirits")?.name).toBe("mineral spirits");
    expect(builtInFamily("soap")?.name).toBe("cleaner");
    expect(builtInFamily("mineral spirits")).toBeUndefined();
    for (const name of builtInMaterialNames()) expect(name).toMatch(/^[a-z]+(_[a-z]+)*$/u);
  });
  test("soap and water are never listed (language reference)", () => {
    expect(builtInMaterialNames().filter(isNeverListed)).toEqual(["water", "soap"]);
  });
});

test("only the source of ignition none lights nothing", () => {
  expect(IGNITION_SOURCES.filter((source) => !source.lights).map((source) => source.word)).toEqual(["none"]);
});
