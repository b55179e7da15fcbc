/**
 * What the tool calculates, part of `core/computations.ts`. Materials, wood, units and numbers.
 */
import { BY_DEFINITION, PRACTICE } from "../knowledge/sources.ts";
import type { Computation } from "./computation.ts";

export const COMPUTATIONS_OF_KNOWLEDGE: readonly Computation[] = [
  {
    topic: "Materials and wood",
    name: "Wood that a grit takes",
    seen: "`sand-through`, hover of the step",
    formula: "10/G mm for each grit G on bare wood; at most 0.8 of a veneer",
    source: BY_DEFINITION,
    file: "knowledge/abrasives.ts",
    functions: ["materialTakenMm"],
    tests: ["core/knowledge/abrasives.test.ts", "rules/examples.test.ts"],
  },
  {
    topic: "Materials and wood",
    name: "Grit ratio",
    seen: "`grit-jump`",
    formula: "median grain of one grit over that of the next; a hint above 2, a warning above 3",
    source:
      "medians of ISO 6344-2 and 6344-3 from memory, confidence medium; thresholds: common practice, no source",
    file: "knowledge/abrasives.ts",
    functions: ["medianUm", "gritRatio", "gradesBetween"],
    tests: ["core/knowledge/abrasives.test.ts"],
  },
  {
    topic: "Materials and wood",
    name: "Category of a flammable liquid",
    seen: "`ignition-near-flammable`, `spraying-flammables-indoors`",
    formula: "by flash and boiling point: 1 to 4",
    source: "29 CFR 1910.106(a)(19)",
    file: "knowledge/flammable.ts",
    functions: ["flammableCategory", "vapourCanIgnite"],
    tests: ["core/knowledge/flammable.test.ts"],
  },
  {
    topic: "Materials and wood",
    name: "Lightness of a colour",
    seen: "`ambering-over-white`, `tannin-bleed`, `haze-over-dark`",
    formula: "CIE L* of the number: 116 ∛Y − 16, Y from linear sRGB; light from 70, dark up to 40",
    source: `CIE 1976 and IEC 61966-2-1; thresholds: ${PRACTICE}`,
    file: "colour.ts",
    functions: ["lightnessOf", "shadeOf"],
    tests: ["core/colour.test.ts"],
  },
  {
    topic: "Materials and wood",
    name: "Dryness of a coat",
    seen: "rules on waits and layers",
    formula: "hours since it went on, by stated times and waits, against the label's time · wait factor",
    source: BY_DEFINITION,
    file: "surface/state.ts",
    functions: ["hasWaited", "hasReached", "stageHours"],
    tests: ["rules/waits.test.ts", "rules/layers-and-wear.test.ts"],
  },

  {
    topic: "Units and numbers",
    name: "Conversion",
    seen: "every quantity",
    formula:
      "exact ratios of whole numbers to one canonical unit a dimension; differences of temperature by themselves",
    source: "NIST SP 811 appendix B.8, NIST Handbook 44 appendix C, 16 CFR 500.19",
    file: "measure/units.ts",
    functions: ["toCanonical", "differenceToCanonical"],
    tests: ["core/measure/units.test.ts", "core/properties/quantities.test.ts"],
  },
  {
    topic: "Units and numbers",
    name: "Weights as volumes",
    seen: "`packs`, `on_hand`, `covers` and `uses` by weight",
    formula: "L = g / density; m2/L = density / (g/m2)",
    source: BY_DEFINITION,
    file: "measure/units.ts",
    functions: ["litresOfGrams", "spreadingRateOfWeight"],
    tests: ["core/measure/units.test.ts", "core/totals/materials.test.ts"],
  },
];
