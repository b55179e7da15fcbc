/**
 * Rule ids are an interface: every name that the language reference fixes exists, at the level that it states.
 */
import { describe, expect, it } from "vitest";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { ruleById } from "../../server/src/core/rules/registry.ts";

const ERRORS = [
  "syntax",
  "unknown-name",
  "duplicate-name",
  "wrong-unit",
  "bad-number",
  "unknown-field",
  "missing-field",
  "repeated-field",
  "unknown-word",
  "wrong-argument",
  "missing-argument",
  "use-not-found",
  "use-cycle",
  "follow-cycle",
  "waterborne-over-uncured-oil",
  "coat-over-wax",
  "solvent-lifts-layer",
  "stain-on-sealed-surface",
  "lead-not-tested",
  "ignition-near-flammable",
  "rags-not-wetted",
  "banned-stripper",
  "no-schedule",
];

const HINTS = ["haze-over-dark", "unused-name", "unused-suppression"];

const WARNINGS = [
  "waxed-shellac-below",
  "hard-over-soft",
  "coat-on-unscuffed-surface",
  "coat-on-unclean-surface",
  "tannin-bleed",
  "blotchy-stain",
  "ambering-over-white",
  "unprotected-layer",
  "too-weak-for-wear",
  "grain-not-knocked-down",
  // A hint at a jump of more than twice, said so at the finding.
  "grit-jump",
  "grit-too-coarse",
  "grit-too-fine",
  "sand-through",
  "filler-not-dry",
  "filler-takes-no-stain",
  "mask-left-on",
  "recoat-too-early",
  "recoat-too-late",
  "in-service-before-cure",
  "air-outside-limits",
  "near-dew-point",
  "thinned-too-far",
  "wrong-thinner",
  "pot-life-overrun",
  "film-too-thick",
  "film-too-thin",
  "no-ventilation",
  "no-respirator",
  "no-gloves",
  "no-eye-protection",
  "no-dust-mask",
  "no-hearing-protection",
  "child-or-food-surface",
  "not-enough-on-hand",
  "late",
  "over-budget",
  "recipe-not-for-surface",
  "suppression-without-reason",
];

const fixed = [
  ...ERRORS.map((id) => [id, "error"] as const),
  ...WARNINGS.map((id) => [id, "warning"] as const),
  ...HINTS.map((id) => [id, "hint"] as const),
];

describe("fixed rule ids", () => {
  it.each(fixed)("%s: %s", (id, level) => {
    expect(ruleById(id)?.severity).toBe(level);
  });
});

it("ids are kebab-case and used once", () => {
  const ids = RULES.map((rule) => rule.id);
  expect(ids.filter((id) => !/^[a-z]+(-[a-z]+)*$/.test(id))).toEqual([]);
  expect(ids.length).toBe(new Set(ids).size);
});
