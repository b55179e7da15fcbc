/**
 * Food and drink at the work, and what is put into the mouth.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { usesOf } from "../material-uses.ts";
import type { TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { reportOnLines } from "../told-lines.ts";

export const eatingAtWork: TradeRule = {
  id: "eating-at-work",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A note or a step has people eat or drink where they finish, or put a brush, a finger, a hose or a gun to the mouth.",
    why: "Dust of old paint, pigments, solvent and lye are swallowed with the sandwich or off the fingers, and nobody notices.",
    remedy: "Eat and drink elsewhere, with washed hands, and put nothing into your mouth.",
    sources: [
      "29 CFR 1910.141(g)(2): no food or drink where toxic material is used (from memory, confidence high)",
      "29 CFR 1926.62(i) on eating at work with lead (from memory, confidence high)",
    ],
  },
  failing: [
    {
      title: "Lunch at the bench, and a brush between the teeth",
      text: `recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "Eat your sandwich at the bench while it soaks." #! eating-at-work
  note   "Hold the brush between your teeth." #! eating-at-work
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Elsewhere, and a table to eat at",
      text: `recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "No food or drink at the bench; wash before you eat."
  note   "The tea table stands in the hall."
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onRun: (ctx) => {
      if (isFinished(ctx.run))
        reportOnLines(ctx, SWALLOWED, {
          headline: t`What is on the bench is swallowed this way`,
          why: t`Dust of old paint, pigments and solvents get into the mouth with food, off fingers, brushes and hoses.`,
          remedy: t`Eat and drink elsewhere, with washed hands, and put nothing into your mouth.`,
        });
    },
  },
};

/** Some coating, solvent or cleaner is used at all. */
const isFinished = ({ moments }: SurfaceRun): boolean =>
  moments.some(({ action }) => action.op === "layer" || usesOf(action).length > 0);

const FOOD =
  "sandwich|sandwiches|lunch|breakfast|supper|dinner|snack|apple|biscuit|cake|meal|food|bread|crisps";
const DRINK = "coffee|tea|beer|drink|mug|cup|lemonade|cocoa|wine|water_bottle|flask";
const AT_WORK =
  "over_the_work|bench|workbench|beside|shop|workshop|while|next_to|work_table|hand|reach|here|booth|between_coats|tins|dries|soaks|spraying|sanding";
const APART = "!elsewhere !outside !yard !kitchen !away !canteen !wash !after_work !before !finished";

const SWALLOWED = phrases(
  `eat|eating|have|has|having|take|munch|nibble|enjoy|finish|chew .. ${FOOD} ... ${AT_WORK} ${APART}`,
  `drink|drinking|sip|have|has|enjoy|keep|stand|put|set .. ${DRINK} ... ${AT_WORK} ${APART} !mist* !water !ring* !damp* !mix* !measure* !stain*`,
  `eat|eating|snack|snacking ... ${AT_WORK} ${APART} !table`,
  "lick|licked|licking .. finger|brush|thumb|tip|it|lips !envelope",
  "hold|carry|grip|keep|take|put|clamp .. brush|brushes|screw|nail|pencil|nozzle|tip|lid|cap .. between|in .. teeth|mouth|lips",
  "suck|sucking ... through|on|at|with .. straw|tube|hose|pipe|mouth !vacuum !hoover !extract* !collector",
  "siphon|syphon ... mouth|suck*",
  "blow|blowing .. through|into|down .. tip|nozzle|gun|hose|tube|straw|jet|needle ... clear|clean|free|mouth|unblock",
  "taste|tasting .. drop|it|little|bit|whether|if|crystals|powder|water",
);
