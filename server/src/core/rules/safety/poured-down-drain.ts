/**
 * Stripper and thinner poured down the drain: they burn in the sewer, and poison what drinks from the river.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { reportOnLines } from "../told-lines.ts";

export const pouredDownDrain: TradeRule = {
  id: "poured-down-drain",
  group: "safety",
  severity: "warning",
  docs: {
    summary: "A note says to pour stripper, solvent, paint, lye or acid down a drain or onto the ground.",
    why: "Solvent vapour in a drain can explode and comes up in the next house; stripper sludge and old paint are hazardous waste in most places.",
    remedy: "Collect it in a closed can with a label, and take it where your local waste service says.",
    sources: ["40 CFR 261, ignitable and toxic waste; local rules decide (from memory, confidence high)"],
  },
  failing: [
    {
      title: "Leftover stripper in the sink",
      text: `recipe washed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with paint_stripper
  step   clean with water
  note   "Pour the leftover stripper down the sink." #! poured-down-drain
}
`,
    },
  ],
  passing: [
    {
      title: "A closed can, and clean water",
      text: `recipe washed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with paint_stripper
  step   clean with water
  note   "Keep the sludge in a closed can. Never pour thinner into the drain."
  note   "Pour the soapy water down the drain."
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onRun: (ctx) =>
      reportOnLines(ctx, POURED, {
        headline: t`This does not belong in the drain, the bin or on the ground`,
        why: t`Solvent vapour in a drain can explode, and stripper, paint and lye are hazardous waste.`,
        remedy: t`Collect it in a closed, labelled can and take it where your local waste service says.`,
      }),
  },
};

const STUFF =
  "SOLVENT|STRIP|varnish*|lacquer*|paint|oil|cleaner|REST|tray|brush|brushes|roller|used_one|dirty|whatever|what_is_left|the_lot|spent|old_thinner|tin|chemicals|solution|dye|stain";
const POUR =
  "pour|tip|flush|empty|dump|swill|slosh|rinse|chuck|throw|wash|hose|drain|get_rid|bury|discard|dispose|let|run|clean|put|sling|discharge|shake";
const DRAIN =
  "plughole|plug_hole|washbasin|bathtub|sink|drain|toilet|lavatory|sewer|gully|ditch|river|stream|brook|pond|lawn|ground|gravel|soil|gutter|grate|hedge|flowerbed|flower_bed|basin|loo|compost|garden|street|fence|storm_drain|septic|weeds|behind_the_shed|bushes|earth|grass|field|manhole|floor_drain|creek|canal|sand_pit|driveway|urinal";
/** Soap and water may go there; what is kept back for the depot does not. */
const HARMLESS =
  "!soapy !soap_water !rinse_water !clear_water !clean_water !tea !depot !waste_service !bench_stands !wash_stand !washstand !garden_bench !garden_table !garden_chair !back_into !until_it_runs";

const POURED = phrases(
  `${POUR} ... ${STUFF} ... down|in|into|on|onto|over|behind|by|to|at .. ${DRAIN} ${HARMLESS}`,
  `${STUFF} ... goes|go|run|flow|poured|tipped|disappears|down ... down|in|into|on|onto|over|behind|by .. ${DRAIN} ${HARMLESS}`,
  `${DRAIN} .. takes|swallows|gets|is|does|will ... ${STUFF} ${HARMLESS} !masked !stands !blocks`,
  `down .. ${DRAIN} .. with|goes|go ... ${STUFF} ${HARMLESS}`,
  `wash|rinse|clean .. brush|brushes|roller|gun|tray ... in|over|under .. ${DRAIN} ... with|using .. SOLVENT`,
  `wash|rinse|clean|swill .. brush|brushes|roller|gun|tray ... over|into|onto|on .. garden|lawn|gravel|gutter|drain|ground|soil`,
  `hose|wash|rinse .. stripper|sludge|goo|paint|lye|remover|acid|bleach ... drive|driveway|street|path|yard|lawn|gutter|drain`,
  `${POUR} ... ${STUFF} ... behind|beside|outside .. shed|barn|garage|house|workshop|back_door ${HARMLESS} !rack !shelf`,
  "bury ... garden|hole|ground|yard|behind",
  `let|leave .. SOLVENT|REST|stripper|lacquer|last|thinner .. evaporate|dry_up|dry_out|steam_off|vanish ... open|tray|yard|sun|outside|air`,
  `put|throw|toss|chuck|drop|bin .. half|full|cans|tins|stripper|thinner|sludge|paint|leftover|REST|SOLVENT .. household_rubbish|household_waste|dustbin|trash|garbage|rubbish|wheelie_bin|skip|kitchen_bin|waste_bin !empty !rag !rags !cloth !cloths !dry_paint !hardened !wipes`,
);
