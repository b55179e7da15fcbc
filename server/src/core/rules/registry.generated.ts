// Written by server/tools/write-rule-registry.ts from the rule files; do not edit.
import { amberingOverWhite } from "./colour/ambering-over-white.ts";
import { blotchyStain } from "./colour/blotchy-stain.ts";
import { colourSandedThrough } from "./colour/colour-sanded-through.ts";
import { colourShowsThrough } from "./colour/colour-shows-through.ts";
import { hazeOverDark } from "./colour/haze-over-dark.ts";
import { knotsNotSealed } from "./colour/knots-not-sealed.ts";
import { sheenNotOfMaterial } from "./colour/sheen-not-of-material.ts";
import { stainOverEndGrain } from "./colour/stain-over-end-grain.ts";
import { tanninBleed } from "./colour/tannin-bleed.ts";
import { filmTooThick } from "./film/film-too-thick.ts";
import { filmTooThin } from "./film/film-too-thin.ts";
import { wetFilmTooThick } from "./film/wet-film-too-thick.ts";
import { coatBlockNeverDone } from "./hygiene/coat-block-never-done.ts";
import { emptyRecipe } from "./hygiene/empty-recipe.ts";
import { materialCannotBeLayer } from "./hygiene/material-cannot-be-layer.ts";
import { stepMaterialMisfit } from "./hygiene/step-material-misfit.ts";
import { waitWithoutEffect } from "./hygiene/wait-without-effect.ts";
import { badNumber } from "./language/bad-number.ts";
import { duplicateName } from "./language/duplicate-name.ts";
import { followCycle } from "./language/follow-cycle.ts";
import { internalError } from "./language/internal-error.ts";
import { keptAsNote } from "./language/kept-as-note.ts";
import { materialNotKnown } from "./language/material-not-known.ts";
import { mayBeSeveral } from "./language/may-be-several.ts";
import { missingArgument } from "./language/missing-argument.ts";
import { missingField } from "./language/missing-field.ts";
import { notChecked } from "./language/not-checked.ts";
import { notCounted } from "./language/not-counted.ts";
import { recipeWithoutJob } from "./language/recipe-without-job.ts";
import { repeatedField } from "./language/repeated-field.ts";
import { sizeNotStated } from "./language/size-not-stated.ts";
import { suppressionWithoutReason } from "./language/suppression-without-reason.ts";
import { syntax } from "./language/syntax.ts";
import { unknownField } from "./language/unknown-field.ts";
import { unknownName } from "./language/unknown-name.ts";
import { unknownWord } from "./language/unknown-word.ts";
import { unusedName } from "./language/unused-name.ts";
import { unusedSuppression } from "./language/unused-suppression.ts";
import { useCycle } from "./language/use-cycle.ts";
import { useNotFound } from "./language/use-not-found.ts";
import { woodNotStated } from "./language/wood-not-stated.ts";
import { wrongArgument } from "./language/wrong-argument.ts";
import { wrongUnit } from "./language/wrong-unit.ts";
import { applicatorAgainstCarrier } from "./layers/applicator-against-carrier.ts";
import { coatOnUncleanSurface } from "./layers/coat-on-unclean-surface.ts";
import { coatOnUnscuffedSurface } from "./layers/coat-on-unscuffed-surface.ts";
import { coatOverWax } from "./layers/coat-over-wax.ts";
import { glueOverFinish } from "./layers/glue-over-finish.ts";
import { hardOverSoft } from "./layers/hard-over-soft.ts";
import { layerAgainstFor } from "./layers/layer-against-for.ts";
import { layersAtOdds } from "./layers/layers-at-odds.ts";
import { milkPaintOnFilm } from "./layers/milk-paint-on-film.ts";
import { oilOverFilm } from "./layers/oil-over-film.ts";
import { paintOnlySubstrate } from "./layers/paint-only-substrate.ts";
import { sealerMissing } from "./layers/sealer-missing.ts";
import { siliconeBelow } from "./layers/silicone-below.ts";
import { slickSurfaceWithoutPrimer } from "./layers/slick-surface-without-primer.ts";
import { solventLiftsLayer } from "./layers/solvent-lifts-layer.ts";
import { stainLeftOn } from "./layers/stain-left-on.ts";
import { stainOnSealedSurface } from "./layers/stain-on-sealed-surface.ts";
import { waterborneOverUncuredOil } from "./layers/waterborne-over-uncured-oil.ts";
import { waxedShellacBelow } from "./layers/waxed-shellac-below.ts";
import { bleachNotNeutralised } from "./preparation/bleach-not-neutralised.ts";
import { bleachOverFinish } from "./preparation/bleach-over-finish.ts";
import { burnishedWood } from "./preparation/burnished-wood.ts";
import { dampTimber } from "./preparation/damp-timber.ts";
import { fillerNotDry } from "./preparation/filler-not-dry.ts";
import { fillerTakesNoStain } from "./preparation/filler-takes-no-stain.ts";
import { flashRust } from "./preparation/flash-rust.ts";
import { glueNotSet } from "./preparation/glue-not-set.ts";
import { grainNotKnockedDown } from "./preparation/grain-not-knocked-down.ts";
import { gritJump } from "./preparation/grit-jump.ts";
import { gritTooCoarse } from "./preparation/grit-too-coarse.ts";
import { gritTooFine } from "./preparation/grit-too-fine.ts";
import { maskLeftOn } from "./preparation/mask-left-on.ts";
import { maskedBeforeDry } from "./preparation/masked-before-dry.ts";
import { mdfEdgeUnsealed } from "./preparation/mdf-edge-unsealed.ts";
import { metalWithoutDegreasing } from "./preparation/metal-without-degreasing.ts";
import { sandThrough } from "./preparation/sand-through.ts";
import { sandedBackToCoarser } from "./preparation/sanded-back-to-coarser.ts";
import { steelWoolOnTanninWood } from "./preparation/steel-wool-on-tannin-wood.ts";
import { steelWoolUnderWaterborne } from "./preparation/steel-wool-under-waterborne.ts";
import { testContradictsExisting } from "./preparation/test-contradicts-existing.ts";
import { veneerCoarseGrit } from "./preparation/veneer-coarse-grit.ts";
import { waterOnVeneer } from "./preparation/water-on-veneer.ts";
import { waxSandedIn } from "./preparation/wax-sanded-in.ts";
import { woodStillWet } from "./preparation/wood-still-wet.ts";
import { mixNotAsLabelled } from "./quantities/mix-not-as-labelled.ts";
import { mixedByGuess } from "./quantities/mixed-by-guess.ts";
import { notEnoughOnHand } from "./quantities/not-enough-on-hand.ts";
import { oneFaceCounted } from "./quantities/one-face-counted.ts";
import { overBudget } from "./quantities/over-budget.ts";
import { potLifeOverrun } from "./quantities/pot-life-overrun.ts";
import { thinnedTooFar } from "./quantities/thinned-too-far.ts";
import { wrongThinner } from "./quantities/wrong-thinner.ts";
import { recordAirOutsideLimits } from "./record/record-air-outside-limits.ts";
import { recordCoatTooLate } from "./record/record-coat-too-late.ts";
import { recordCoatTooSoon } from "./record/record-coat-too-soon.ts";
import { recordDiffers } from "./record/record-differs.ts";
import { recordNotInRecipe } from "./record/record-not-in-recipe.ts";
import { recordSkipsCoat } from "./record/record-skips-coat.ts";
import { recordTrouble } from "./record/record-trouble.ts";
import type { Rule } from "./rule.ts";
import { asbestosNamed } from "./safety/asbestos-named.ts";
import { bannedStripper } from "./safety/banned-stripper.ts";
import { caughtInMachine } from "./safety/caught-in-machine.ts";
import { causticOnAluminium } from "./safety/caustic-on-aluminium.ts";
import { causticOrAcidLeftIn } from "./safety/caustic-or-acid-left-in.ts";
import { causticStripperOnVeneerOrOak } from "./safety/caustic-stripper-on-veneer-or-oak.ts";
import { eatingAtWork } from "./safety/eating-at-work.ts";
import { flamesNotKeptAway } from "./safety/flames-not-kept-away.ts";
import { flammablesStored } from "./safety/flammables-stored.ts";
import { fuelAsSolvent } from "./safety/fuel-as-solvent.ts";
import { heatNearVapour } from "./safety/heat-near-vapour.ts";
import { ignitionNearFlammable } from "./safety/ignition-near-flammable.ts";
import { incompatibleChemicals } from "./safety/incompatible-chemicals.ts";
import { irritatingWoodDust } from "./safety/irritating-wood-dust.ts";
import { isocyanateHardener } from "./safety/isocyanate-hardener.ts";
import { keptInDrinkBottle } from "./safety/kept-in-drink-bottle.ts";
import { leadNotTested } from "./safety/lead-not-tested.ts";
import { leadUnsafeMethod } from "./safety/lead-unsafe-method.ts";
import { nmpStripper } from "./safety/nmp-stripper.ts";
import { noDustMask } from "./safety/no-dust-mask.ts";
import { noEyeProtection } from "./safety/no-eye-protection.ts";
import { noGloves } from "./safety/no-gloves.ts";
import { noHearingProtection } from "./safety/no-hearing-protection.ts";
import { noLeadSafeWork } from "./safety/no-lead-safe-work.ts";
import { noRespirator } from "./safety/no-respirator.ts";
import { noVentilation } from "./safety/no-ventilation.ts";
import { noteAgainstProtection } from "./safety/note-against-protection.ts";
import { oldFinishNotStated } from "./safety/old-finish-not-stated.ts";
import { openFlame } from "./safety/open-flame.ts";
import { paintHeatedToSmoke } from "./safety/paint-heated-to-smoke.ts";
import { poisonousIngredient } from "./safety/poisonous-ingredient.ts";
import { poisonousSolvent } from "./safety/poisonous-solvent.ts";
import { pouredDownDrain } from "./safety/poured-down-drain.ts";
import { ragsInAHeap } from "./safety/rags-in-a-heap.ts";
import { ragsNotWetted } from "./safety/rags-not-wetted.ts";
import { sleepingInFumes } from "./safety/sleeping-in-fumes.ts";
import { solventOnSkin } from "./safety/solvent-on-skin.ts";
import { sparksAndDust } from "./safety/sparks-and-dust.ts";
import { sprayingFlammablesIndoors } from "./safety/spraying-flammables-indoors.ts";
import { ventilationTooWeak } from "./safety/ventilation-too-weak.ts";
import { wasteBurned } from "./safety/waste-burned.ts";
import { hoursNotStated } from "./schedule/hours-not-stated.ts";
import { late } from "./schedule/late.ts";
import { noSchedule } from "./schedule/no-schedule.ts";
import { startsBeforeEarlierJob } from "./schedule/starts-before-earlier-job.ts";
import { airOutsideLimits } from "./waits/air-outside-limits.ts";
import { conditionerDriedOut } from "./waits/conditioner-dried-out.ts";
import { coveredBeforeCure } from "./waits/covered-before-cure.ts";
import { handledBeforeDry } from "./waits/handled-before-dry.ts";
import { inServiceBeforeCure } from "./waits/in-service-before-cure.ts";
import { nearDewPoint } from "./waits/near-dew-point.ts";
import { recoatTooEarly } from "./waits/recoat-too-early.ts";
import { recoatTooLate } from "./waits/recoat-too-late.ts";
import { weatherOnCoat } from "./waits/weather-on-coat.ts";
import { childOrFoodSurface } from "./wear/child-or-food-surface.ts";
import { distressedLeftBare } from "./wear/distressed-left-bare.ts";
import { notForThisUse } from "./wear/not-for-this-use.ts";
import { recipeNotForSurface } from "./wear/recipe-not-for-surface.ts";
import { tonerWithoutClear } from "./wear/toner-without-clear.ts";
import { tooWeakForWear } from "./wear/too-weak-for-wear.ts";
import { unprotectedLayer } from "./wear/unprotected-layer.ts";

/** All rules, by group and id. */
export const RULES: readonly Rule[] = [
  amberingOverWhite,
  blotchyStain,
  colourSandedThrough,
  colourShowsThrough,
  hazeOverDark,
  knotsNotSealed,
  sheenNotOfMaterial,
  stainOverEndGrain,
  tanninBleed,
  filmTooThick,
  filmTooThin,
  wetFilmTooThick,
  coatBlockNeverDone,
  emptyRecipe,
  materialCannotBeLayer,
  stepMaterialMisfit,
  waitWithoutEffect,
  badNumber,
  duplicateName,
  followCycle,
  internalError,
  keptAsNote,
  materialNotKnown,
  mayBeSeveral,
  missingArgument,
  missingField,
  notChecked,
  notCounted,
  recipeWithoutJob,
  repeatedField,
  sizeNotStated,
  suppressionWithoutReason,
  syntax,
  unknownField,
  unknownName,
  unknownWord,
  unusedName,
  unusedSuppression,
  useCycle,
  useNotFound,
  woodNotStated,
  wrongArgument,
  wrongUnit,
  applicatorAgainstCarrier,
  coatOnUncleanSurface,
  coatOnUnscuffedSurface,
  coatOverWax,
  glueOverFinish,
  hardOverSoft,
  layerAgainstFor,
  layersAtOdds,
  milkPaintOnFilm,
  oilOverFilm,
  paintOnlySubstrate,
  sealerMissing,
  siliconeBelow,
  slickSurfaceWithoutPrimer,
  solventLiftsLayer,
  stainLeftOn,
  stainOnSealedSurface,
  waterborneOverUncuredOil,
  waxedShellacBelow,
  bleachNotNeutralised,
  bleachOverFinish,
  burnishedWood,
  dampTimber,
  fillerNotDry,
  fillerTakesNoStain,
  flashRust,
  glueNotSet,
  grainNotKnockedDown,
  gritJump,
  gritTooCoarse,
  gritTooFine,
  maskLeftOn,
  maskedBeforeDry,
  mdfEdgeUnsealed,
  metalWithoutDegreasing,
  sandThrough,
  sandedBackToCoarser,
  steelWoolOnTanninWood,
  steelWoolUnderWaterborne,
  testContradictsExisting,
  veneerCoarseGrit,
  waterOnVeneer,
  waxSandedIn,
  woodStillWet,
  mixNotAsLabelled,
  mixedByGuess,
  notEnoughOnHand,
  oneFaceCounted,
  overBudget,
  potLifeOverrun,
  thinnedTooFar,
  wrongThinner,
  recordAirOutsideLimits,
  recordCoatTooLate,
  recordCoatTooSoon,
  recordDiffers,
  recordNotInRecipe,
  recordSkipsCoat,
  recordTrouble,
  asbestosNamed,
  bannedStripper,
  caughtInMachine,
  causticOnAluminium,
  causticOrAcidLeftIn,
  causticStripperOnVeneerOrOak,
  eatingAtWork,
  flamesNotKeptAway,
  flammablesStored,
  fuelAsSolvent,
  heatNearVapour,
  ignitionNearFlammable,
  incompatibleChemicals,
  irritatingWoodDust,
  isocyanateHardener,
  keptInDrinkBottle,
  leadNotTested,
  leadUnsafeMethod,
  nmpStripper,
  noDustMask,
  noEyeProtection,
  noGloves,
  noHearingProtection,
  noLeadSafeWork,
  noRespirator,
  noVentilation,
  noteAgainstProtection,
  oldFinishNotStated,
  openFlame,
  paintHeatedToSmoke,
  poisonousIngredient,
  poisonousSolvent,
  pouredDownDrain,
  ragsInAHeap,
  ragsNotWetted,
  sleepingInFumes,
  solventOnSkin,
  sparksAndDust,
  sprayingFlammablesIndoors,
  ventilationTooWeak,
  wasteBurned,
  hoursNotStated,
  late,
  noSchedule,
  startsBeforeEarlierJob,
  airOutsideLimits,
  conditionerDriedOut,
  coveredBeforeCure,
  handledBeforeDry,
  inServiceBeforeCure,
  nearDewPoint,
  recoatTooEarly,
  recoatTooLate,
  weatherOnCoat,
  childOrFoodSurface,
  distressedLeftBare,
  notForThisUse,
  recipeNotForSurface,
  tonerWithoutClear,
  tooWeakForWear,
  unprotectedLayer,
];
