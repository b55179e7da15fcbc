/**
 * Hands washed in solvent: it takes the fat out of the skin, and goes through it.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { reportOnLines } from "../told-lines.ts";

export const solventOnSkin: TradeRule = {
  id: "solvent-on-skin",
  group: "safety",
  severity: "warning",
  docs: {
    summary: "A note or the words of a step say to wash or wipe hands or skin with a solvent or bleach.",
    why: "Solvent takes the fat out of the skin, carries paint and resin into it, and is taken up by the body. Cracked skin becomes dermatitis.",
    remedy: "Wash skin with soap and water, or with a hand cleaner that is made for it.",
    sources: ["29 CFR 1910.141(d) on washing; solvents and dermatitis, from memory, confidence high"],
  },
  failing: [
    {
      title: "Drips off the fingers",
      text: `recipe oiled {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "Wipe drips off your hands with acetone." #! solvent-on-skin
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "The face of a board",
      text: `recipe bench {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  step   clean with acetone
  wait   15 min
  layer  drying_oil, by cloth, wiped off after 15 min
  wait   until cured
  note   "The wipe with solvent takes the wood's own oil from the face."
}
`,
    },
    {
      title: "Soap and water",
      text: `recipe oiled {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "Wash your hands with soap after work with thinner. Never clean skin with acetone."
  note   "Wipe the hand rail with mineral spirits."
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onRun: (ctx) =>
      reportOnLines(ctx, ON_SKIN, {
        headline: t`These words put solvent on the skin`,
        why: t`Solvent goes through the skin and takes the fat out of it, and carries resin in with it.`,
        remedy: t`Write \`wash with soap and water\` instead, or name a hand cleaner that is made for skin.`,
      }),
  },
};

const SKIN = "hand|skin|finger|arm|knuckles|palm|face|nails|fingernails|wrists|hair";
/** "Hand rail", "finger joint", "the hands of the clock": parts of the piece. */
const NO_PART =
  "!with_soap !wood's !hand_rail !handrail !hand_hold !hand_grip !hand_plane !hand_wheel !hand_rest !hand_cut !hand_carved !finger_joint !finger_joints !finger_pull !finger_plate !arm_rest !arm_rests !armrest !hands_of !arms_of !face_of !face_frame !show_face !second_hand !by_hand !at_hand !hand_pad !hand_block !hand_sand*";
const STRONG = "SOLVENT|stripper|bleach|lye|remover|caustic";

const ON_SKIN = phrases(
  `wash|washes|wipe|clean|scrub|rub|rinse|dip|get|take|remove|bathe|dab|swab|degrease ... ${SKIN} ... with|in|using|by .. ${STRONG} ${NO_PART}`,
  `wash|wipe|clean|scrub|rub|rinse|dip|dab|splash|pour|put .. ${STRONG} ... on|over|onto|to .. ${SKIN} ${NO_PART}`,
  `use|splash|drop|dab|bit|little|drip|rag ... ${STRONG} ... off|from|on|clean .. ${SKIN} ${NO_PART} !never`,
  `${STRONG} ... takes|gets|cleans|removes|washes|shifts|lifts|loosens ... ${SKIN} ${NO_PART} !gloves !sink !burns`,
  `${SKIN} .. come|get|are|go|goes|best .. clean|cleaned|washed|off|white|into ... with|in|by .. ${STRONG} ${NO_PART}`,
  `get|take|remove|clean ... off|from .. ${SKIN} ... with|by|using .. ${STRONG} ${NO_PART}`,
  `${STRONG} ... for ... ${SKIN} ${NO_PART} !soap_for !bad_for !safe`,
  `dip|soak|bathe .. ${SKIN} .. in|into .. ${STRONG} ${NO_PART} !gloved`,
);
