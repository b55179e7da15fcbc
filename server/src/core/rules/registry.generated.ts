// Written by server/tools/write-rule-registry.ts from the rule files; do not edit.
import { waterborneOverUncuredOil } from "./layers/waterborne-over-uncured-oil.ts";
import type { Rule } from "./rule.ts";
import { bannedStripper } from "./safety/banned-stripper.ts";
import { causticStripperOnVeneerOrOak } from "./safety/caustic-stripper-on-veneer-or-oak.ts";
import { ignitionNearFlammable } from "./safety/ignition-near-flammable.ts";
import { isocyanateHardener } from "./safety/isocyanate-hardener.ts";
import { leadNotTested } from "./safety/lead-not-tested.ts";
import { nmpStripper } from "./safety/nmp-stripper.ts";
import { noDustMask } from "./safety/no-dust-mask.ts";
import { noEyeProtection } from "./safety/no-eye-protection.ts";
import { noGloves } from "./safety/no-gloves.ts";
import { noHearingProtection } from "./safety/no-hearing-protection.ts";
import { noRespirator } from "./safety/no-respirator.ts";
import { noVentilation } from "./safety/no-ventilation.ts";
import { ragsNotWetted } from "./safety/rags-not-wetted.ts";
import { sprayingFlammablesIndoors } from "./safety/spraying-flammables-indoors.ts";
import { inServiceBeforeCure } from "./waits/in-service-before-cure.ts";
import { recoatTooEarly } from "./waits/recoat-too-early.ts";
import { recoatTooLate } from "./waits/recoat-too-late.ts";

/** All rules, by group and id. */
export const RULES: readonly Rule[] = [
  waterborneOverUncuredOil,
  bannedStripper,
  causticStripperOnVeneerOrOak,
  ignitionNearFlammable,
  isocyanateHardener,
  leadNotTested,
  nmpStripper,
  noDustMask,
  noEyeProtection,
  noGloves,
  noHearingProtection,
  noRespirator,
  noVentilation,
  ragsNotWetted,
  sprayingFlammablesIndoors,
  inServiceBeforeCure,
  recoatTooEarly,
  recoatTooLate,
];
