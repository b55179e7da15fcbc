/**
 * Gloves, sleeves and cloths at machines that turn, and guards taken off.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { reportOnLines } from "../told-lines.ts";

export const caughtInMachine: TradeRule = {
  id: "caught-in-machine",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A note or a step has gloves, loose sleeves or a wrapped cloth at a machine that turns, or its guard taken off.",
    why: "What turns takes hold of a glove, a sleeve or a cloth and pulls the hand in faster than it can be let go.",
    remedy:
      "Work at it without gloves and with tight sleeves, hold cloths loose, and leave guards where they are.",
    sources: [
      "29 CFR 1910.212 on guards, 1910.213 on woodworking machines (from memory, confidence high)",
      "gloves and loose clothing at lathes, drills and routers: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Gloves at the lathe, and the guard off",
      text: `recipe turned {
  for    wood
  safety dust_mask, hearing
  note   "Wear thick gloves at the lathe." #! caught-in-machine
  note   "Take the guard off the grinder, it gets in the way." #! caught-in-machine
  step   sand 120, 150
  step   dust
}
`,
    },
  ],
  passing: [
    {
      title: "Forbidden, and gloves for another job",
      text: `recipe turned {
  for    wood
  safety dust_mask, hearing
  note   "No gloves and no loose sleeves at the lathe."
  note   "The fire guard is masked."
  step   sand 120, 150
  step   dust
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onRun: (ctx) =>
      reportOnLines(ctx, CAUGHT, {
        headline: t`A machine that turns catches what hangs or is wrapped`,
        why: t`It takes hold of a glove, a sleeve or a cloth and pulls the hand in before it can be let go.`,
        remedy: t`Work at it without gloves and with tight sleeves, hold cloths loose, and leave guards where they are.`,
      }),
  },
};

const TURNING =
  "lathe|router|drill_press|pillar_drill|bench_drill|table_saw|circular_saw|band_saw|bandsaw|spindle|spindle_moulder|planer|thicknesser|jointer|belt|belt_sander|disc_sander|drum_sander|bench_grinder|grinder|buffing_wheel|polishing_wheel|wheel|mop|mandrel|chuck|saw|shaper|mitre_saw|chop_saw";
const AT_REST = "!off !still !stopped !switched_off !after !before !never !unplugged";

const CAUGHT = phrases(
  `glove|mitts ... at|on|by|with|against|when|while ... ${TURNING} ${AT_REST}`,
  `${TURNING} ... glove|gloved|mitts ${AT_REST} !no`,
  `glove|gloved ... ${TURNING}|turns|spins ... turns|spinning|running|spins ${AT_REST}`,
  `wrap|wind|wound|wrapped .. cloth|rag|paper|sandpaper|string|wire_wool|steel_wool ... finger|hand|work|piece|spindle|round|around ... lathe|spinning|turning|turns|running|mandrel|chuck|piece ${AT_REST} !block`,
  `rag|cloth|steel_wool|sandpaper wound|wrapped .. round|around .. spinning|turning|fingers|hand|work|spindle`,
  `sleeve|scarf|tie|necklace|hair|apron_strings|cuffs|shirt_tails .. loose|hang|hanging|dangle|open|warm|flap ... ${TURNING} ${AT_REST}`,
  `loose .. sleeve|scarf|tie|clothes|clothing|shirt|hair ... ${TURNING} ${AT_REST}`,
  `take|remove|pull|unscrew|wedge|tie|tape|lift|swing|leave|prop .. guard|blade_guard|riving_knife|safety_cover ... off|up|back|out|away|open !fire_guard !fireguard !mud_guard`,
  `without|no .. guard|riving_knife ... ${TURNING}|quicker|easier|better|see`,
);
