// Written by server/tools/write-rule-registry.ts from the rule files; do not edit.
import { waterborneOverUncuredOil } from "./layers/waterborne-over-uncured-oil.ts";
import type { Rule } from "./rule.ts";
import { noDustMask } from "./safety/no-dust-mask.ts";
import { noEyeProtection } from "./safety/no-eye-protection.ts";
import { noGloves } from "./safety/no-gloves.ts";
import { noHearingProtection } from "./safety/no-hearing-protection.ts";
import { noRespirator } from "./safety/no-respirator.ts";
import { noVentilation } from "./safety/no-ventilation.ts";
import { ragsNotWetted } from "./safety/rags-not-wetted.ts";

/** All rules, by group and id. */
export const RULES: readonly Rule[] = [
  waterborneOverUncuredOil,
  noDustMask,
  noEyeProtection,
  noGloves,
  noHearingProtection,
  noRespirator,
  noVentilation,
  ragsNotWetted,
];
