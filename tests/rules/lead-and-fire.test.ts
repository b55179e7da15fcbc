/** Advice that is followed to the letter where lead, fire and cold meet: nobody is sent from one danger into another. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { TRADE_RULES } from "../../server/src/core/rules/registry.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { findingsOf, lineOf } from "../harness/check-text.ts";

const MISTAKES = readFileSync(new URL("../../samples/mistakes.finish", import.meta.url), "utf8");

/** The same with an old lacquer whose dry dust burns. */
const LACQUERED = MISTAKES.replace("existing oil varnish", "existing nitrocellulose lacquer");

/** What a rule finds on a line of the file of mistakes that holds some words. */
function on(words: string, rule: string, text = MISTAKES): FileFinding {
  const line = lineOf(text, text.indexOf(words));
  const found = findingsOf(text).find((each) => each.rule === rule && lineOf(text, each.span.start) === line);
  if (!found) throw new Error(`No ${rule} on line ${line}.`);
  return found;
}

const STAIN = "layer gel_stain";
const CLEAR = "layer oil_polyurethane";
const WATERBORNE = "layer waterborne_polyurethane x 2";
const ROOM =
  "another room, aired by open windows, where nobody lives, sleeps or eats, and where nothing burns, glows or sparks (no electric heater or fan, and no switch used)";
const NO_LEAD_THERE = "Never sand or strip there what may hold lead.";

/** With the finding on the heater allowed, the one on the air says what it would say by itself. */
const ALLOWED = MISTAKES.replace(
  "  layer gel_stain",
  "  # allow ignition-near-flammable: the heater is off\n  layer gel_stain",
).replace(
  "  layer oil_polyurethane",
  "  # allow ignition-near-flammable: the heater is off\n  layer oil_polyurethane",
);

describe("the warm room", () => {
  it.each([
    ["ignition-near-flammable", MISTAKES],
    ["air-outside-limits", ALLOWED],
  ])("of %s is nobody's home", (rule, text) => expect(on(STAIN, rule, text).remedy).toContain(ROOM));
  it.each([
    ["ignition-near-flammable", MISTAKES],
    ["air-outside-limits", ALLOWED],
  ])("of %s gets the coats alone", (rule, text) => {
    expect(on(STAIN, rule, text).remedy).toContain(NO_LEAD_THERE);
    expect(on(STAIN, rule, text).remedy).toContain(
      "the coats get a recipe and a job of their own, `in` that shop and `after` this job",
    );
  });
  it("is told once: the finding on the air goes on from the one on the heater", () => {
    const { remedy, related } = on(STAIN, "air-outside-limits");
    expect(remedy).toMatch(
      /^Finish in a room without flame, glow or spark, as the finding on the heater says, at 18 to 22 C/u,
    );
    expect(remedy).not.toContain("lives, sleeps or eats");
    const heater = on(STAIN, "ignition-near-flammable");
    expect(related.map(({ span }) => span.start)).toContain(heater.span.start);
  });
  it("gets all of it where no lead is to be thought of", () => {
    const late = MISTAKES.replace("built   1952", "built   2015").replace(
      "air      9 C",
      "country  US\n  air      9 C",
    );
    expect(on(STAIN, "ignition-near-flammable", late).remedy).not.toContain("lead");
    expect(on(STAIN, "ignition-near-flammable", late).remedy).toContain("name it in the job (`in …`)");
    expect(on(STAIN, "air-outside-limits", late).remedy).not.toContain("lead");
  });
  it("is not for a step that takes off what may hold lead", () => {
    const wiped = MISTAKES.replace("step  scuf 220", "step  clean with mineral_spirits");
    const { remedy } = on("step  clean with mineral_spirits", "ignition-near-flammable", wiped);
    expect(remedy).toMatch(/^Switch the heater off and let it cool before a can is opened\./u);
    expect(remedy).toContain("Do not take this work to a room that people use");
  });
});

describe("the fire of the rags", () => {
  it.each([STAIN, CLEAR])("stands in the headline of the heater: %s", (line) => {
    const { headline } = on(line, "ignition-near-flammable");
    expect(headline).toBe("The heater can light vapour; rags can burn; no gloves, no fresh air");
  });
  it.each([["pilot light"], ["heater"], ["welding"]])("beside any source of ignition: %s", (source) => {
    const text = MISTAKES.replace("ignition heater", `ignition ${source}`);
    expect(on(STAIN, "ignition-near-flammable", text).headline).toMatch(
      /; rags can (?:catch fire|burn); (?:2 more duties|no gloves, no fresh air)$/u,
    );
  });
  it("is told each time, and the heater by the name of what told it first", () => {
    const { remedy } = on(CLEAR, "ignition-near-flammable");
    expect(remedy).toContain("as told for `gel_stain`, keep it from the heater as well.");
    expect(remedy).toContain("Lay its oily rags in water as well.");
    expect(remedy).not.toContain("first finding");
  });
  it("says what each of two words is for", () =>
    expect(on(STAIN, "ignition-near-flammable").remedy).toContain(
      "`ignition none` is what the room is, `no_ignition` that you bring no flame, spark or cigarette",
    ));
  it("comes after the advice to take another clear", () =>
    expect(on(CLEAR, "ignition-near-flammable").remedy).toMatch(/^Best use another material here/u));
});

it("no hazard is told below what is none: the editor's list shows the first alone", () => {
  const isHazard = new Map(TRADE_RULES.map(({ id, group }) => [id, group === "safety"]));
  const hidden = TRADE_RULES.filter(({ id }) => isHazard.get(id)).flatMap(({ id, secondaryTo = [] }) =>
    secondaryTo.filter((primary) => !isHazard.get(primary)).map((primary) => `${id} below ${primary}`),
  );
  expect(hidden).toEqual([]);
});

describe("wet or dry", () => {
  it.each([
    ["step  sand 60, 180", "sparks-and-dust"],
    ["step  sand 60, 180", "grit-jump"],
    [STAIN, "coat-over-wax"],
  ])("nitrocellulose is worked on wet whatever the laboratory finds: %s, %s", (line, rule) =>
    expect(on(line, rule, LACQUERED).remedy).toMatch(
      /^Wait for the lead test\. If you then abrade the old finish, do it wet by hand, even where no lead is found\./u,
    ),
  );
  it("and so says the finding on its lead", () => {
    const { remedy } = on("step  sand 60, 180", "lead-not-tested", LACQUERED);
    expect(remedy).toMatch(
      /\nWhere none is found: still work wet, with water and never with spirits, as dry dust of nitrocellulose burns/u,
    );
  });
  it("other coatings if it finds lead", () => {
    expect(on("layer paint", "coat-on-unclean-surface").remedy).toMatch(
      /^Wait for the lead test\. If it finds lead, follow the finding on the lead instead\./u,
    );
  });
});

describe("lead", () => {
  it("asks for a dust mask where none is found, of either coating", () => {
    expect(on("step  sand 60, 180", "lead-not-tested").remedy).toContain(
      "\nWhere none is found: the dust still harms, so wear a dust mask (N95 or P2 at least, `safety dust_mask`).",
    );
    expect(on("step  scuf 220", "lead-not-tested").remedy).toContain(
      "\nWhere none is found, wear a dust mask here too (`safety dust_mask`).",
    );
  });
  it("that is not tested is told as the gist, and what it asks for where it is found in one breath", () => {
    const lines = on("step  sand 60, 180", "lead-not-tested").remedy.split("\n");
    expect(lines[0]).toMatch(
      /^Leave it alone until a laboratory has tested every layer: not tested counts as lead\./u,
    );
    expect(lines).toHaveLength(3);
    // 40 CFR 745.85 and 29 CFR 1926.62, by analogy: who may, wet, a P100 filter, contained, others kept out.
    expect(lines[2]).toMatch(
      /^Where lead is found: ask the local authority first .+ Best leave a sound finish on.+wet work.+P100.+plastic sheeting.+others kept out/u,
    );
  });
  describe("that is found", () => {
    const found = MISTAKES.replace(
      "    existing oil varnish",
      "    lead     found by laboratory 2027-01-04\n    existing oil varnish",
    );
    const { remedy } = on("step  sand 60, 180", "lead-unsafe-method", found);
    it("is told in the order in which it is done", () =>
      expect(remedy.split("\n").map((line) => line.slice(0, 14))).toEqual([
        "1. Ask the loc",
        "2. Best leave ",
        "3. Else keep o",
        "4. Wear a P100",
        "5. Strip it (`",
        "6. Clean up we",
        "7. Leave work ",
      ]));
    it("is stripped before it is sanded wet", () =>
      expect(remedy).toMatch(
        /\n5\. Strip it .+flame off and cold.+sludge and cloths wet.+ or sand wet by hand/u,
      ));
    it("by a laboratory is not sent to a laboratory again", () => {
      expect(remedy).not.toContain("laboratory");
      const swabbed = found.replace("by laboratory", "by swab");
      expect(on("step  sand 60, 180", "lead-unsafe-method", swabbed).remedy).toMatch(
        /^Best wait: have a laboratory test every layer .+ Else treat it as lead:\n1\. /u,
      );
    });
  });
  it("of sound paint is not scuffed at all where a primer can bond", () =>
    expect(on("step  scuf 220", "lead-not-tested").remedy).toContain(
      "put a bonding primer on (`layer bonding_primer`)",
    ));
});

const PAINTED = (layer: string, built = 1952) => `piece table {
  built ${built}
  surface legs {
    shape    4 of post 50 mm x 700 mm
    wood     beech
    existing alkyd paint
  }
}
shop mill {
  country US
}
recipe painted {
  step  clean with soap
  wait  overnight
  ${layer}
  wait  until recoat
  layer acrylic_paint
  wait  until cured
}
job legs {
  piece table
  in    mill
  apply painted to legs
}
`;

describe("paint on old paint that may hold lead", () => {
  const unscuffed = (layer: string, built?: number) =>
    findingsOf(PAINTED(layer, built)).find(({ rule }) => rule === "coat-on-unscuffed-surface");
  it("is offered a primer before the scuffing", () =>
    expect(unscuffed("layer acrylic_paint")?.remedy).toMatch(
      /Best leave the old coat unbroken: wash it and put a bonding primer on first .+ Else scuff wet by hand/u,
    ));
  it.each(["bonding_primer", "shellac_primer"])(
    "%s on the washed coat is a hint, and a warning where no lead is",
    (primer) => {
      expect(unscuffed(`layer ${primer}`)?.severity).toBe("hint");
      expect(unscuffed(`layer ${primer}`, 2015)?.severity).toBe("warning");
    },
  );
});

describe("wax in wood", () => {
  it("comes off by steps that dry and rinse, with their own protection", () => {
    const { remedy } = on(STAIN, "coat-over-wax");
    expect(remedy).toMatch(
      /`step dewax with mineral_spirits`, with gloves, fresh air, .+ Once it is dry: `step clean with soap`, `step clean with water`, `wait overnight`\. Then sand, and take the dust up\./u,
    );
  });
  it("and nothing is told twice about the cleaning", () =>
    expect(on(STAIN, "coat-over-wax").also).toContain(
      "Also: `gel_stain` goes on a used surface that was never cleaned: the steps above do it.",
    ));
});

describe("a heater and dry dust of lacquer", () => {
  it("end with the heater cold, the words for it, and a place to dry", () =>
    expect(on("step  sand 60, 180", "sparks-and-dust", LACQUERED).remedy).toContain(
      "Switch the heater off and let it cool before you sand (`step sand wet 60, 100, 180`), and state `ignition none` in the shop only if it stays off for the whole job. Dry the cleaned piece in the room where you will coat it.",
    ));
});

describe("times", () => {
  it("say how long each cure is", () => {
    const { remedy, also } = on(WATERBORNE, "waterborne-over-uncured-oil");
    expect(remedy).toContain("`wait until cured` (about 3 days) in place of `wait 12 h`");
    expect(also?.join("\n")).toContain("`wait until cured` (about 21 days) at the end");
  });
  it("of a cold shop are those of a warm room", () => {
    for (const line of ["layer paint x 2", WATERBORNE])
      expect(on(line, "recoat-too-early").headline).toMatch(/ in a warm room$/u);
  });
  it("of a misplaced figure are said to count only once they are written", () =>
    expect(on("covers 3 h", "wrong-unit").remedy).toContain(
      "write `recoat 3 h`; until then a typical time counts",
    ));
});
