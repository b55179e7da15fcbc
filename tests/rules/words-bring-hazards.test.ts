/**
 * No word of the notation is there without its dangers: every family, verb and way of putting on brings its duties, found
 * where they are not stated and silent where they are; every family has its row in the table of layers, and what it holds
 * is known as a chemical; and whatever people call it, it is as dangerous by that name.
 *
 * The dangers of a group are written here by hand: solvents by their carrier (29 CFR 1910.1000, 1910.106(a)(19)), rags of
 * drying oils (29 CFR 1910.106(e)(9)(iii)), two parts on skin and eyes (29 CFR 1910.138 and 1910.133), spraying and
 * isocyanate mist (29 CFR 1910.94(c), 1910.134; NIOSH Publication 96-111, 1996), dust (29 CFR 1910.134).
 */
import { describe, expect, test } from "vitest";
import { METHOD_SPELLINGS, VERB_SPELLINGS, VERB_SPELLINGS_WITH } from "../../grammar/src/spellings.ts";
import { METHODS, VERBS } from "../../grammar/src/vocabulary.ts";
import { FAMILY_SPELLINGS } from "../../grammar/src/word-spellings.ts";
import { FAMILIES } from "../../server/src/core/knowledge/families.ts";
import type { Family } from "../../server/src/core/knowledge/family-schema.ts";
import { relationMatrix } from "../../server/src/core/knowledge/layer-relation.ts";
import { standInOf } from "../../server/src/core/knowledge/solvents.ts";
import { summary } from "../harness/check-text.ts";

/** The rule that finds that a duty is not stated. */
const RULE_OF: Readonly<Record<string, string>> = {
  dust_mask: "no-dust-mask",
  vapour_respirator: "no-respirator",
  supplied_air: "isocyanate-hardener",
  gloves: "no-gloves",
  eye_protection: "no-eye-protection",
  ventilate: "no-ventilation",
  no_ignition: "flames-not-kept-away",
  wet_rags: "rags-not-wetted",
};
const ALL = `safety ${Object.keys(RULE_OF).join(", ")}`;

const families = [...FAMILIES.values()];
const named = ({ name }: Family): string => name.replaceAll(" ", "_");

/** The line that works with a family. */
function lineOf(family: Family, more = ""): string | undefined {
  const name = named(family);
  switch (family.role) {
    case "hardener":
      return undefined;
    case "glue":
      return `step glue "joint" with ${name}`;
    case "cleaner":
    case "solvent":
      return `step clean with ${name}`;
    case "stripper":
      return `step strip with ${name}`;
    case "bleach":
      return `step bleach with ${name}`;
    default:
      return `layer ${name}${family.penetrating ? ", wiped off" : ""}${more}`;
  }
}

const found = (line: string, safety = "", declared = ""): ReadonlySet<string> =>
  new Set(
    summary(`${declared}recipe work {\n  ${safety}\n  ${line}\n  wait until cured\n}\n`).map(
      (each) => each.split(" ")[1]!,
    ),
  );

/** The duties that a family must bring by what it is, whatever its row says. */
function dangersOf(family: Family): readonly string[] {
  const isFlammable = family.flash !== undefined && family.flash < 60;
  return [
    ...(isFlammable ? ["no_ignition"] : []),
    // A paste wax is rubbed on thin and gives off little; alcohol is no poison to the skin.
    ...(isFlammable && family.role !== "wax" ? ["ventilate"] : []),
    ...(isFlammable && family.role !== "wax" && family.carrier !== "alcohol" ? ["gloves"] : []),
    ...(family.ragsSelfHeat ? ["wet_rags"] : []),
    ...(family.twoPart ? ["gloves", "eye_protection"] : []),
    ...(family.name === "polyurethane glue" || family.role === "hardener"
      ? ["gloves", "eye_protection"]
      : []),
    ...(family.role === "stripper" ? ["gloves", "eye_protection", "ventilate", "vapour_respirator"] : []),
  ];
}

describe("a family", () => {
  test.each(families.map((family) => [family.name, family] as const))("%s", (_, family) => {
    // Its row has what it is dangerous by.
    expect(family.duties).toEqual(expect.arrayContaining([...new Set(dangersOf(family))]));
    const line = lineOf(family);
    if (line === undefined) return;
    const duties = [...new Set([...family.duties, ...dangersOf(family)])];
    const rules = duties.map((duty) => RULE_OF[duty]!);
    // Failing: nothing is stated. Passing: all is.
    expect([...found(line)]).toEqual(expect.arrayContaining(rules));
    const left = found(line, ALL);
    expect(Object.values(RULE_OF).filter((rule) => left.has(rule))).toEqual([]);
    // And each of them by itself: all the others are stated.
    for (const duty of duties) {
      if (duty === "vapour_respirator") continue;
      const others = Object.keys(RULE_OF).filter((each) => each !== duty);
      expect([...found(line, `safety ${others.join(", ")}`)]).toContain(RULE_OF[duty]!);
    }
  });

  test("that stays on the piece has its row and its column in the table of layers", () => {
    const layers = families.filter(({ group }) => group !== "auxiliary").map(({ name }) => name);
    const pairs = new Set(relationMatrix().map(({ over, below }) => `${over} over ${below}`));
    const missing = layers.flatMap((over) =>
      layers.filter((below) => !pairs.has(`${over} over ${below}`)).map((below) => `${over} over ${below}`),
    );
    expect(missing).toEqual([]);
  });

  test("in a solvent has one that its vapour is judged by", () => {
    const solvents = families.filter(({ carrier }) => carrier !== "none" && carrier !== "water");
    expect(
      solvents.filter(({ carrier }) => standInOf(carrier) === undefined).map(({ name }) => name),
    ).toEqual([]);
  });

  test("of two parts of urethane is sprayed with supplied air, or is found", () => {
    const urethanes = families.filter(({ name }) => name.includes("two part polyurethane"));
    expect(urethanes.map(({ name }) => name).sort()).toEqual([
      "two part polyurethane",
      "waterborne two part polyurethane",
    ]);
    for (const family of urethanes) {
      const without = ALL.replace("supplied_air, ", "");
      expect([...found(lineOf(family, ", by spray")!, without)]).toContain("isocyanate-hardener");
      expect([...found(lineOf(family, ", by spray")!, ALL)]).not.toContain("isocyanate-hardener");
    }
  });
});

describe("a name that people give a family", () => {
  const names = Object.entries(FAMILY_SPELLINGS).flatMap(([plain, said]) =>
    said.map((word) => [word, plain] as const),
  );

  test.each(names.filter(([, plain]) => lineOf(FAMILIES.get(plain as Family["name"])!) !== undefined))(
    "%s is as dangerous as %s",
    (word, plain) => {
      const family = FAMILIES.get(plain as Family["name"])!;
      const line = lineOf(family)!.replace(named(family), "it");
      const by = (name: string): readonly string[] => [
        ...found(line, "", `material it {\n  family ${name}\n}\n`),
      ];
      expect(by(word)).toEqual(by(plain));
    },
  );
});

describe("a verb", () => {
  const DUSTY = ["sand", "scuff", "distress"];
  const lineFor = (verb: string): string => `step ${verb}${verb === "distress" ? "" : " 220"}`;

  test.each(DUSTY)("%s throws dust", (verb) => {
    expect([...found(lineFor(verb))]).toContain("no-dust-mask");
    expect([...found(lineFor(verb), "safety dust_mask")]).not.toContain("no-dust-mask");
  });

  test.each(
    Object.entries({ ...VERB_SPELLINGS, ...VERB_SPELLINGS_WITH }).filter(([, { verb }]) =>
      DUSTY.includes(verb),
    ),
  )("%s throws dust as the verb that it stands for", (word, { isWet }) => {
    const isFound = found(`step ${word} 220`).has("no-dust-mask");
    expect(isFound).toBe(isWet !== true);
  });

  test("is one of the notation, whatever people say for it", () => {
    for (const { verb } of Object.values({ ...VERB_SPELLINGS, ...VERB_SPELLINGS_WITH }))
      expect(Object.keys(VERBS)).toContain(verb);
  });

  test("done with a material brings what the material brings", () => {
    const lines = Object.entries(VERBS).flatMap(([verb, { form }]) =>
      form === "material" || form === "optional-material"
        ? [`step ${verb} with mineral_spirits`]
        : form === "what-with"
          ? [`step ${verb} "joint" with mineral_spirits`]
          : [],
    );
    for (const line of [...lines, 'step "rinse the brass" with mineral_spirits'])
      expect([...found(line)], line).toEqual(
        expect.arrayContaining(["no-gloves", "no-ventilation", "flames-not-kept-away"]),
      );
  });
});

describe("a way of putting on", () => {
  const MISTS = ["spray", "hvlp", "airless"];
  const layer = (method: string): string => `layer waterborne_polyurethane, by ${method}`;
  const MIST_RULES = ["no-respirator", "no-eye-protection", "no-ventilation"];

  test.each([...METHODS, ...Object.keys(METHOD_SPELLINGS)])("%s", (word) => {
    const isMist = MISTS.includes(METHOD_SPELLINGS[word] ?? word);
    const rules = found(layer(word));
    expect(MIST_RULES.filter((rule) => rules.has(rule))).toEqual(isMist ? MIST_RULES : []);
    expect(MIST_RULES.filter((rule) => found(layer(word), ALL).has(rule))).toEqual([]);
  });

  test.each(["pad or spray", "brush and hvlp"])("%s makes a mist", (both) => {
    expect([...found(layer(both))]).toEqual(expect.arrayContaining(MIST_RULES));
  });
});
