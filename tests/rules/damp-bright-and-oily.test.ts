/**
 * Borders of time, and lists of names, that an example on a rule's page would be too long for: conditioners, oil on wet
 * oil, wet wood, veneer by its age, metals, slick boards and woods that hold oil.
 *
 * The times are common practice, no source, but for the hour of a second flood of stain: Wood Handbook, FPL-GTR-190
 * (2010), chapter 16.
 */
import { describe, expect, it } from "vitest";
import { findingsOf } from "../harness/check-text.ts";

const SAFETY =
  "safety dust_mask, ventilate, no_ignition, wet_rags, gloves, vapour_respirator, eye_protection";
const END = ["wait until cured"];
const CLEAR = ["wait until recoat", "layer oil_varnish", ...END];

const recipe = (lines: readonly string[]) => `recipe work {\n  ${SAFETY}\n  ${lines.join("\n  ")}\n}\n`;
const onPiece = (wood: string, lines: readonly string[], built = 2015) =>
  `piece box {\n  built ${built}\n  surface lid {\n    shape area 1 m2\n    wood ${wood}\n  }\n}\n${recipe(lines)}job boxes {\n  piece box\n  apply work to lid\n}\n`;

/** `warning tannin-bleed` for every finding. */
const found = (text: string) => findingsOf(text).map(({ severity, rule }) => `${severity} ${rule}`);
const of = (rule: string, text: string) => found(text).filter((it) => it.endsWith(` ${rule}`));

describe("a stain follows its conditioner while that is damp", () => {
  const stained = (conditioner: string, wait: readonly string[], stain = "oil_stain") =>
    found(recipe([`layer ${conditioner}, wiped off`, ...wait, `layer ${stain}, wiped off`, ...CLEAR]));
  it.each([
    ["at once", [], []],
    ["after 5 min", ["wait 5 min"], []],
    ["after 2 h", ["wait 2 h"], []],
    ["after 2 h 5 min", ["wait 125 min"], ["warning conditioner-dried-out"]],
    ["after a night", ["wait overnight"], ["warning conditioner-dried-out"]],
    ["after 5 days", ["wait 5 days"], ["warning conditioner-dried-out"]],
  ] as const)("oil stain on oil conditioner %s", (_, wait, expected) => {
    expect(stained("oil_conditioner", wait)).toEqual(expected);
  });

  it("and a water stain on an oil conditioner waits for its cure instead", () => {
    expect(stained("oil_conditioner", ["wait 1 h"], "waterborne_stain")).toContain(
      "error waterborne-over-uncured-oil",
    );
    expect(stained("oil_conditioner", ["wait 5 days"], "waterborne_stain")).not.toContain(
      "warning conditioner-dried-out",
    );
  });

  it("whatever its label says of the earliest time, a day is the most where it states no end", () => {
    const label = (recoat: string, wait: string) =>
      of(
        "conditioner-dried-out",
        `material even {\n  family oil conditioner\n  recoat ${recoat}\n}\n${recipe(["layer even, wiped off", wait, "layer oil_stain, wiped off", ...CLEAR])}`,
      ).length;
    expect([label("1 h", "wait 24 h"), label("1 h", "wait 25 h")]).toEqual([0, 1]);
    expect([label("15 min to 8 h", "wait 8 h"), label("15 min to 8 h", "wait 9 h")]).toEqual([0, 1]);
  });
});

describe("a second flood of oil within the hour", () => {
  const second = (wait: readonly string[], over = "drying_oil, wiped off", below = "drying_oil") =>
    of("recoat-too-early", recipe([`layer ${below}`, ...wait, `layer ${over}`, ...END]));
  it("is sound where it is wiped off", () => {
    expect(second(["wait 20 min"])).toEqual([]);
    expect(second(["wait 60 min"])).toEqual([]);
    expect(second(["wait 40 min"], "oil_stain, wiped off", "oil_stain")).toEqual([]);
  });
  it("is haste where it is later, not wiped, without any wait, or of a film", () => {
    const early = ["warning recoat-too-early"];
    expect(second(["wait 61 min"])).toEqual(early);
    expect(second(["wait 20 min"], "drying_oil")).toEqual(early);
    expect(second([])).toEqual(early);
    expect(second(["wait 20 min"], "oil_varnish", "oil_varnish")).toEqual(early);
    expect(second(["wait 20 min"], "hardwax_oil, wiped off", "hardwax_oil, wiped off")).toEqual(early);
  });
});

describe("wet wood", () => {
  const coated = (lines: readonly string[], layer: string) =>
    of("wood-still-wet", onPiece("beech", [...lines, `layer ${layer}`, ...END]));
  it.each([
    "oil_varnish",
    "drying_oil, wiped off",
    "dewaxed_shellac",
    "alkyd_paint",
    "epoxy_coating",
    "paste_wax",
  ])("does not bear %s", (layer) => {
    expect(coated(["step dampen"], layer)).toEqual(["warning wood-still-wet"]);
    expect(coated(["step clean with soap", "wait 119 min"], layer)).toEqual(["warning wood-still-wet"]);
    expect(coated(["step clean with water", "wait 2 h"], layer)).toEqual([]);
    expect(coated(["step dampen", "step sand 220", "step dust"], layer)).toEqual([]);
    expect(coated(["step clean with mineral_spirits"], layer)).toEqual([]);
    // It does not say with what, so it may be dry.
    expect(coated(["step clean"], layer)).toEqual([]);
  });
  it.each([
    "water_dye, wiped off",
    "alcohol_dye, wiped off",
    "waterborne_stain, wiped off",
    "milk_paint",
    "acrylic_paint",
  ])("bears %s", (layer) => {
    expect(coated(["step dampen"], layer)).toEqual([]);
  });
});

it("veneer was laid with hide glue until about 1950", () => {
  const dampened = (built: number) =>
    of("water-on-veneer", onPiece("walnut, veneer 0.9 mm", ["step dampen"], built)).length;
  expect([1949, 1950, 1951].map(dampened)).toEqual([1, 0, 0]);
});

it("a tenth of thinner is common practice where the label states no limit, and then a hint at most", () => {
  const thinned = (material: string) =>
    of(
      "thinned-too-far",
      `material clear {\n  family waterborne polyurethane\n${material}}\n${recipe(["layer clear, thinned 1:1 with water", ...END])}`,
    );
  expect(thinned("")).toEqual(["hint thinned-too-far"]);
  expect(thinned("  thin water, up to 10 %\n")).toEqual(["warning thinned-too-far"]);
});

describe("metals by name", () => {
  const METALS = [
    "metal",
    "brass",
    "bronze",
    "copper",
    "steel",
    "stainless steel",
    "iron",
    "aluminium",
    "silver",
  ];
  it.each(METALS)("%s takes oil, wax, shellac and clear lacquer, clean and unscuffed", (name) => {
    for (const layer of [
      "drying_oil, wiped off",
      "paste_wax",
      "dewaxed_shellac",
      "nitrocellulose_lacquer, by hvlp",
    ])
      expect(found(onPiece(name, ["step clean with acetone", `layer ${layer}`, ...END])), layer).toEqual([]);
  });
  it.each(METALS)("%s takes no paint straight on it", (name) => {
    const painted = (lines: readonly string[]) =>
      found(onPiece(name, ["step clean with acetone", ...lines, "layer acrylic_paint", ...END]));
    expect(painted([])).toEqual(["warning slick-surface-without-primer"]);
    expect(painted(["step scuff 220", "step dust"])).toEqual(["hint slick-surface-without-primer"]);
    // Water on bare steel and iron rusts them; an alkyd primer holds none.
    const rusts = name === "steel" || name === "iron";
    expect(painted(["step scuff 220", "step dust", "layer bonding_primer", "wait until recoat"])).toEqual(
      rusts ? ["warning flash-rust"] : [],
    );
    expect(
      painted([
        "step scuff 220",
        "step dust",
        "layer alkyd_primer",
        "wait until cured",
        "step scuff 220",
        "step dust",
      ]),
    ).toEqual([]);
  });
  it.each(["aluminium", "aluminum", "Aluminium"])("%s bears no lye", (name) => {
    const lye = `material lye "Caustic soda" {\n  family paint stripper\n}\n`;
    const text = lye + onPiece(name, ["step strip with lye", "step clean with water"]);
    expect(of("caustic-on-aluminium", text)).toEqual(["error caustic-on-aluminium"]);
    expect(of("caustic-on-aluminium", text.replace(`wood ${name}`, "wood iron"))).toEqual([]);
  });
});

it.each(["laminate", "melamine", "foil"])(
  "paint straight on %s is a warning, and oil and stain are none for it",
  (name) => {
    const on = (...lines: readonly string[]) =>
      found(onPiece(name, ["step clean with soap", ...lines, ...END]));
    expect(on("layer acrylic_paint")).toEqual(["warning slick-surface-without-primer"]);
    expect(on("layer bonding_primer", "wait until recoat", "layer acrylic_paint")).toEqual([
      "warning coat-on-unscuffed-surface",
    ]);
    expect(on("layer drying_oil, wiped off")).toEqual(["warning oil-over-film"]);
    expect(on("layer gel_stain, wiped off", ...CLEAR.slice(0, 2))).toContain("error stain-on-sealed-surface");
  },
);

describe("woods that hold oil or colour", () => {
  it.each(["teak", "iroko", "rosewood", "cocobolo", "ebony", "olive"])(
    "%s is sealed or wiped first",
    (wood) => {
      const coated = (...lines: readonly string[]) => of("sealer-missing", onPiece(wood, [...lines, ...END]));
      for (const layer of ["oil_varnish", "waterborne_polyurethane", "alkyd_paint"])
        expect(coated(`layer ${layer}`), layer).toEqual(["warning sealer-missing"]);
      expect(coated("step clean with acetone", "layer oil_varnish")).toEqual([]);
      expect(coated("step clean with water", "wait overnight", "layer oil_varnish")).toHaveLength(1);
      expect(coated("layer dewaxed_shellac", "wait until recoat", "layer oil_varnish")).toEqual([]);
      expect(coated("layer drying_oil, wiped off")).toEqual([]);
    },
  );
  it.each(["teak", "iroko", "cypress", "sapele", "rosewood", "cocobolo"])("%s bleeds into white", (wood) => {
    const white = `material white {\n  family acrylic paint\n  colour white\n}\n`;
    const painted = (...lines: readonly string[]) =>
      of("tannin-bleed", white + onPiece(wood, [...lines, "layer white", ...END]));
    expect(painted()).toEqual(["warning tannin-bleed"]);
    expect(painted("layer shellac_primer", "wait until recoat")).toEqual([]);
    expect(painted("layer stain_blocking_primer", "wait until recoat")).toEqual([]);
  });
});

it("steel wool on bare oak is a warning under any finish", () => {
  for (const layer of [
    "drying_oil, wiped off",
    "dewaxed_shellac",
    "oil_varnish",
    "paste_wax",
    "waterborne_acrylic",
  ]) {
    const text = onPiece("oak", ['note "Smooth it with 0000 steel wool."', `layer ${layer}`, ...END]);
    expect(
      found(text).filter((it) => it.includes("steel-wool")),
      layer,
    ).toEqual([
      layer.startsWith("water") ? "warning steel-wool-under-waterborne" : "warning steel-wool-on-tannin-wood",
    ]);
  }
});
