/**
 * Rule ids are an interface: comments in recipes and settings of projects name them. Every rule stands here with the level
 * that it has unless a project or a finding says otherwise, so neither changes by accident, and an id that was given up
 * is never used again.
 */
import { describe, expect, it } from "vitest";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { RETIRED_RULES } from "../../server/src/core/rules/retired.ts";

const LEVELS: Readonly<Record<string, string>> = {
  "air-outside-limits": "warning",
  "ambering-over-white": "warning",
  "applicator-against-carrier": "warning",
  "bad-number": "error",
  "banned-stripper": "error",
  "bleach-not-neutralised": "warning",
  "bleach-over-finish": "warning",
  "blotchy-stain": "warning",
  "burnished-wood": "hint",
  "caustic-stripper-on-veneer-or-oak": "warning",
  "child-or-food-surface": "warning",
  "coat-block-never-done": "hint",
  "coat-on-unclean-surface": "warning",
  "coat-on-unscuffed-surface": "warning",
  "coat-over-wax": "error",
  "colour-sanded-through": "hint",
  "colour-shows-through": "hint",
  "covered-before-cure": "hint",
  "distressed-left-bare": "hint",
  "duplicate-name": "error",
  "empty-recipe": "hint",
  "filler-not-dry": "warning",
  "filler-takes-no-stain": "warning",
  "film-too-thick": "warning",
  "film-too-thin": "warning",
  "follow-cycle": "error",
  "grain-not-knocked-down": "warning",
  "grit-jump": "warning",
  "grit-too-coarse": "warning",
  "grit-too-fine": "warning",
  "handled-before-dry": "warning",
  "hard-over-soft": "warning",
  "haze-over-dark": "hint",
  "heat-near-vapour": "warning",
  "ignition-near-flammable": "error",
  "in-service-before-cure": "warning",
  "internal-error": "error",
  "isocyanate-hardener": "warning",
  "knots-not-sealed": "hint",
  late: "warning",
  "layer-against-for": "warning",
  "lead-not-tested": "error",
  "lead-unsafe-method": "error",
  "mask-left-on": "warning",
  "masked-before-dry": "warning",
  "material-cannot-be-layer": "warning",
  "mdf-edge-unsealed": "hint",
  "metal-without-degreasing": "hint",
  "milk-paint-on-film": "hint",
  "missing-argument": "error",
  "missing-field": "error",
  "near-dew-point": "warning",
  "nmp-stripper": "warning",
  "no-dust-mask": "warning",
  "no-eye-protection": "warning",
  "no-gloves": "warning",
  "no-hearing-protection": "warning",
  "no-lead-safe-work": "warning",
  "no-respirator": "warning",
  "no-schedule": "error",
  "no-ventilation": "warning",
  "not-checked": "error",
  "not-enough-on-hand": "warning",
  "oil-over-film": "warning",
  "open-flame": "error",
  "over-budget": "warning",
  "paint-only-substrate": "hint",
  "pot-life-overrun": "warning",
  "rags-not-wetted": "error",
  "recipe-not-for-surface": "warning",
  "recoat-too-early": "warning",
  "recoat-too-late": "warning",
  "repeated-field": "error",
  "sand-through": "warning",
  "sanded-back-to-coarser": "hint",
  "sealer-missing": "hint",
  "silicone-below": "warning",
  "slick-surface-without-primer": "hint",
  "sleeping-in-fumes": "warning",
  "solvent-lifts-layer": "error",
  "spraying-flammables-indoors": "warning",
  "stain-on-sealed-surface": "error",
  "stain-over-end-grain": "hint",
  "starts-before-earlier-job": "warning",
  "steel-wool-under-waterborne": "hint",
  "step-material-misfit": "warning",
  "suppression-without-reason": "warning",
  syntax: "error",
  "tannin-bleed": "warning",
  "thinned-too-far": "warning",
  "toner-without-clear": "warning",
  "too-weak-for-wear": "warning",
  "unknown-field": "error",
  "unknown-name": "error",
  "unknown-word": "error",
  "unprotected-layer": "warning",
  "unused-name": "hint",
  "unused-suppression": "hint",
  "use-cycle": "error",
  "use-not-found": "error",
  "veneer-coarse-grit": "hint",
  "ventilation-too-weak": "warning",
  "wait-without-effect": "hint",
  "water-on-veneer": "hint",
  "waterborne-over-uncured-oil": "error",
  "wax-sanded-in": "hint",
  "waxed-shellac-below": "warning",
  "wet-film-too-thick": "warning",
  "wrong-argument": "error",
  "wrong-thinner": "warning",
  "wrong-unit": "error",
};

describe("rule ids", () => {
  it("are these, at these levels", () => {
    expect(Object.fromEntries(RULES.map(({ id, severity }) => [id, severity]))).toEqual(LEVELS);
  });

  it("are kebab-case and used once", () => {
    const ids = RULES.map((rule) => rule.id);
    expect(ids.filter((id) => !/^[a-z]+(-[a-z]+)*$/.test(id))).toEqual([]);
    expect(ids.length).toBe(new Set(ids).size);
  });

  it("that were given up are not used again", () => {
    expect(RETIRED_RULES.filter((id) => Object.hasOwn(LEVELS, id))).toEqual([]);
    expect(RETIRED_RULES.length).toBe(new Set(RETIRED_RULES).size);
  });
});
