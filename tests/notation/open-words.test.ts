/**
 * Words that may be several things: they are asked about by a warning that writes out the right lines, what is a danger
 * with one of them counts until then, and rules that go by the kind of a material are silent about it.
 */
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { FAMILY_CHOICES } from "../../server/src/core/knowledge/choices.ts";
import { family } from "../../server/src/core/knowledge/families.ts";
import { FAMILY_NAMES } from "../../server/src/core/knowledge/family-names.ts";
import { relation } from "../../server/src/core/knowledge/layer-relation.ts";
import { familiesOpen, openFamily } from "../../server/src/core/knowledge/open-families.ts";
import { findingsOf } from "../harness/check-text.ts";
import { BLOCKS, languageFindings } from "./blocks.ts";
import { formatted, textOfFinding } from "./said.ts";

const rulesOf = (text: string): readonly string[] => findingsOf(text).map(({ rule }) => rule);

describe("families", () => {
  test("danish oil: its rags count as self-heating, and each reading is offered", () => {
    const [finding, ...more] = languageFindings(BLOCKS.family!("family danish oil"));
    expect(more).toEqual([]);
    expect(finding!.severity).toBe("warning");
    expect(textOfFinding(finding!)).toMatch(/`family drying oil` or `family wiping varnish`/u);
    expect(finding!.fixes.map(({ edits }) => edits[0]!.text)).toEqual(["drying oil", "wiping varnish"]);
    const oiled = `material o {\n family danish oil\n}\nrecipe r {\n layer o, wiped off\n wait until cured\n}\n`;
    expect(rulesOf(oiled)).toContain("rags-not-wetted");
    expect(languageFindings(oiled).filter(({ severity }) => severity === "error")).toEqual([]);
  });

  test.each([
    ["worktop oil", FAMILY_CHOICES.oil],
    ["thermal primer", FAMILY_CHOICES.primer],
    ["2K hardwax oil", ["hardwax oil", "two part polyurethane"]],
    ["two-pack primer", ["two part primer", "epoxy coating"]],
    ["satin clear varnish", FAMILY_CHOICES.varnish],
    ["gloop", undefined],
    ["waterborne polyuretane", undefined],
  ])("%s", (written, readings) => {
    expect(familiesOpen(written)).toEqual(readings);
  });

  it.each([
    ["family pure linseed oil", "linseed oil"],
    ["family matt water-based polyurethane", "waterborne polyurethane"],
    ["family shellac, dewaxed", "dewaxed shellac"],
    ["family balsam turpentine", "turpentine"],
  ])("%s is one family and needs no question", (line) => {
    expect(languageFindings(BLOCKS.family!(line))).toEqual([]);
  });

  test("a slip of the pen is still one", () => {
    const [finding] = languageFindings(BLOCKS.family!("family waterborne polyuretane"));
    expect([finding!.rule, finding!.severity]).toEqual(["unknown-word", "error"]);
  });

  test("words of a label that name a chemical are read for it, and stay", () => {
    const text = "material b {\n family chlorine bleach\n}\nrecipe r {\n step clean with b\n}\n";
    expect(formatted(text)).toContain("family chlorine bleach");
    expect(textOfFinding(findingsOf(text)[0]!)).toMatch(/gloves|goggles|eye/iu);
  });

  const readings = fc.uniqueArray(fc.constantFrom(...FAMILY_NAMES), { minLength: 2, maxLength: 5 });

  test("no reading has a danger that the row of all does not have", () => {
    fc.assert(
      fc.property(readings, (names) => {
        const open = openFamily(names);
        for (const row of names.map(family)) {
          expect(open.duties).toEqual(expect.arrayContaining([...row.duties]));
          expect(open.voc).toBeGreaterThanOrEqual(row.voc);
          expect(open.ragsSelfHeat || !row.ragsSelfHeat).toBe(true);
          expect(open.flash ?? -Infinity).toBeLessThanOrEqual(row.flash ?? Infinity);
          expect(open.cure ?? 0).toBeGreaterThanOrEqual(row.cure ?? 0);
          expect(open.unfitFor ?? []).toEqual(expect.arrayContaining([...(row.unfitFor ?? [])]));
        }
      }),
      { numRuns: 300 },
    );
  });

  test("what may go over what is no graver than with the mildest reading", () => {
    fc.assert(
      fc.property(readings, readings, (overs, belows) => {
        const order = ["fine", "fine if abraded", "fine after cure", "needs a barrier", "no"];
        const said = order.indexOf(relation(openFamily(overs), openFamily(belows)).verdict);
        for (const over of overs) {
          for (const below of belows) {
            expect(said).toBeLessThanOrEqual(order.indexOf(relation(family(over), family(below)).verdict));
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  test("a shop with a danish oil hears nothing of layers that only one of its readings forbids", () => {
    const text = (name: string): string =>
      `material o {\n family ${name}\n recoat 24 h\n}\nmaterial c {\n family nitrocellulose lacquer\n}\nrecipe r {\n safety ventilate, no_ignition, gloves, wet_rags, vapour_respirator, eye_protection\n layer o, wiped off\n wait 48 h\n layer c x 2, by hvlp, between wait 2 h\n wait until cured\n}\n`;
    const ofLayers = (name: string): readonly string[] =>
      findingsOf(text(name))
        .filter(({ rule }) => !["may-be-several", "recipe-without-job"].includes(rule))
        .map(({ rule }) => rule);
    expect(ofLayers("drying oil").length).toBeGreaterThan(0);
    expect(ofLayers("danish oil")).not.toContain("sealer-missing");
  });
});

describe("turpentine", () => {
  test("has the figures of the NIOSH Pocket Guide: 95 F, 309 F, 0.86 kg/L", () => {
    const row = family("turpentine");
    expect(row.flash).toBe(Math.round(((95 - 32) * 5) / 9));
    expect(row.boils).toBe(Math.round(((309 - 32) * 5) / 9));
    expect(row.voc).toBe(860);
  });

  test("thins oils", () => {
    const text = "material o {\n family drying oil\n thin turpentine, up to 20 %\n}\n";
    expect(languageFindings(text)).toEqual([]);
  });
});

describe("other words", () => {
  it.each([
    ["surface", "wear every summer", "hard"],
    ["piece", "meant_for books", "children"],
    ["surface", "existing wallpaper", "unknown paint"],
    ["surface", "existing factory primer", "unknown paint"],
    ["shop", "ignition wood stove", "heater"],
    ["material", "rags dangerous", "self-heating"],
  ])("%s: %s counts as the graver: %s", (block, line, counts) => {
    const [finding, ...more] = languageFindings(BLOCKS[block]!(line));
    expect(more).toEqual([]);
    expect([finding!.rule, finding!.severity]).toEqual(["may-be-several", "warning"]);
    expect(textOfFinding(finding!)).toContain(`counts as ${counts}`);
  });

  it.each([
    ["safety mask", "dust_mask"],
    ["safety lead", "lead_test"],
  ])("%s states no duty, and is told which there are", (line, duty) => {
    const [finding] = languageFindings(BLOCKS.recipe!(line));
    expect([finding!.rule, finding!.severity]).toEqual(["may-be-several", "warning"]);
    expect(textOfFinding(finding!)).toContain(duty);
  });

  test("lead that was found counts however it is told, and none only by method and day", () => {
    const board = (lead: string): string =>
      `piece p {\n built 1950\n surface s {\n  shape area 1 m2\n  wood pine\n  existing alkyd paint\n  ${lead}\n }\n}\nrecipe r {\n step sand 120\n}\njob j {\n piece p\n apply r to s\n}\n`;
    expect(rulesOf(board("lead found"))).toContain("no-lead-safe-work");
    const none = languageFindings(board("lead none"));
    expect(none.map(({ rule }) => rule)).toEqual(["not-counted"]);
    expect(textOfFinding(none[0]!)).toContain("`lead none_found by laboratory 2026-11-03`");
  });
});

describe("lines that are kept", () => {
  test("one hint for all notes of a block, and one warning for what may be facts", () => {
    const text =
      "material a {\n family oil varnish\n shelf_life 6 months\n supplier the shop in town\n price 4.20\n article 12\n}\n";
    const kept = findingsOf(text).filter(({ rule }) => rule === "kept-as-note" || rule === "not-counted");
    expect(kept.map(({ rule, severity }) => [rule, severity])).toEqual([
      ["kept-as-note", "hint"],
      ["not-counted", "warning"],
    ]);
    expect(textOfFinding(kept[0]!)).toMatch(/kept as a note.*1 more line/u);
    expect(textOfFinding(kept[1]!)).toContain("`packs 1 L for 28.00`");
  });

  test("the formatter quotes what is said, and leaves what may be a fact to its writer", () => {
    const text = "material a {\n family oil varnish\n shelf_life 6 months\n price 4.20\n}\n";
    expect(formatted(text)).toContain('note   "shelf life 6 months"');
    expect(formatted(text)).toMatch(/^ {2}price +4\.20$/mu);
  });
});
