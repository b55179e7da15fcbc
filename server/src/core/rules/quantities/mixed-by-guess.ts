/**
 * Hardener by the glug: words that talk people out of measuring two parts.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import type { Action } from "../../surface/actions.ts";
import { usesOf } from "../material-uses.ts";
import type { TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { reportOnLines } from "../told-lines.ts";
import { isTwoPart } from "../two-part.ts";

export const mixedByGuess: TradeRule = {
  id: "mixed-by-guess",
  group: "quantities",
  severity: "warning",
  docs: {
    summary:
      "A note or a step has the hardener of a two-part material dosed by guess, or more or less of it than the label says.",
    why: "Two parts react in one ratio. Too little stays soft for good; too much turns brittle, bleeds out or heats up in the pot, and what has not reacted harms the skin.",
    remedy: "Measure both parts as the label says, and change the time or the temperature, never the ratio.",
    sources: [
      "technical data sheets of two-part coatings and epoxies in general: common practice, no source",
    ],
  },
  failing: [
    {
      title: "A bit more for luck",
      text: `recipe topped {
  for    wood
  safety gloves, eye_protection, ventilate, dust_mask
  note   "Put in a bit more hardener for luck." #! mixed-by-guess
  layer  epoxy_coating
  wait   until cured
}
`,
    },
    {
      title: "A coat without any hardener",
      text: `recipe topped {
  for    wood
  safety gloves, eye_protection, ventilate, dust_mask
  note   "The last coat goes on without hardener, it levels better." #! mixed-by-guess
  layer  epoxy_coating
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "By the scale, and one part only",
      text: `recipe topped {
  for    wood
  safety gloves, eye_protection, ventilate, dust_mask
  note   "Weigh both parts to the gram; never add more hardener than the label says."
  layer  epoxy_coating
  wait   until cured
}

recipe oiled {
  for   wood
  note  "Measure the water by eye."
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onRun: (ctx) => {
      if (ctx.run.moments.some(({ action }) => isMixed(action)))
        reportOnLines(ctx, GUESSED, {
          headline: t`The hardener is dosed by guess, or not as the label says`,
          why: t`Too little stays soft for good; too much turns brittle or heats up in the pot, and what has not reacted harms the skin.`,
          remedy: t`Measure both parts as the label says; change the time or the warmth, never the ratio.`,
        });
    },
  },
};

/** Of two parts: a coat, or a filler or glue that a step uses. */
const isMixed = (action: Action): boolean =>
  action.op === "layer"
    ? isTwoPart(action)
    : usesOf(action).some(
        ({ material }) => material?.mix !== undefined || material?.family?.twoPart === true,
      );

const HARDENER =
  "second_bottle|second_tin|other_bottle|bottle_b|tin_b|little_bottle|small_bottle|hardening_paste|setter|hardener|catalyst|activator|part_b|component_b|accelerator|crosslinker|curing_agent|second_part|b_part";
const MEASURED = "!weigh !weighed !scale !gram !grams !syringe !as_the_label !label_says !by_the_label";

const GUESSED = phrases(
  `more|extra|additional .. ${HARDENER} !than ${MEASURED}`,
  `${HARDENER} .. extra|more|double|twice|generous* !than ${MEASURED}`,
  `double|twice|triple|two_times|three_times .. ${HARDENER}|dose ${MEASURED} !never`,
  `double|halve|triple|increase|reduce|cut|up .. ${HARDENER}|dose|ratio|amount ${MEASURED}`,
  `half|less|little|fewer .. ${HARDENER} .. gives|will|is|does|makes|keeps|so|enough|than ${MEASURED}`,
  `leave|skimp|save|spare|stint .. ${HARDENER} .. out|off|on|so ${MEASURED}`,
  `leave|skimp|save|spare|go_easy|easy .. of|on .. ${HARDENER} ${MEASURED}`,
  `coat|layer|finish|pass|it .. goes|put|is|brush|spray|roll .. without .. ${HARDENER} ${MEASURED} !first_stir !never !not !no`,
  "mix|measure|dose|gauge|judge|pour|add|estimate ... by .. eye|guess|feel|nose|colour|look|rule_of_thumb",
  "eyeball|eye-ball|guess|guesstimate .. it|ratio|mix|amount|dose|parts|hardener|proportion",
  "just guess|eyeball",
  "splash|glug|slosh|dollop|squirt|dash|drop|shot ... by_eye|by_guess|by_feel",
  `no|not|never|don't .. fuss|bother|mess|faff .. with .. measuring|scale|scales|cups|weighing|syringe|jug|spoons`,
  `still|stays|if .. tacky|soft|sticky ... another|more|extra splash|glug|slosh|dose|drop|squirt|hardener .. on_top|of|to|in ${MEASURED}`,
  "nobody|who|no_one .. weighs|weigh|measures|measure",
  "pour|add|stir|mix .. till|until .. looks|look|feels|feel|seems .. right|good|thick",
  `squirts|squirt|shots|shot|drops|spoons .. of .. ${HARDENER} .. more|extra|never`,
  `extra|another|additional shot|squirt|drop|dash|spoon|dose .. ${HARDENER}`,
  `splash|glug|slosh|dollop|squirt|dash|capful|drop|spoonful|swig|lick|good_measure ... ${HARDENER} ${MEASURED}`,
  `${HARDENER} ... splash|glug|slosh|dollop|squirt|dash|capful|luck|guess|feels_right|roughly|about_right|safe_side ${MEASURED}`,
  "ratio|mix|proportion|amount|it ... isn't|not|never|doesn't .. critical|fussy|important|exact|matter|precise",
  "roughly|about|more_or_less|approximately|around .. one|two|three|four|five|ten|half to|parts .. one|isn't|critical|fine !volume !weight !label",
  `any|other|another|different .. ${HARDENER} ... do|does|shelf|fine|works|well|same ${MEASURED} !number`,
  `generous|liberal|heavy .. with .. ${HARDENER}`,
  `second|another|further|third .. dose|shot|helping|portion .. of .. ${HARDENER}`,
  `no|not|needn't|don't .. need|needed|measure|measuring|weigh|weighing|necessary|scale ... ${HARDENER}|measure|exactly|exact|parts|scale|weigh`,
  `${HARDENER} ... no|not|needn't|don't .. need|measure|measuring|weigh`,
);
