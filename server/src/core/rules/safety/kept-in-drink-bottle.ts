/**
 * Solvent in a lemonade bottle: somebody drinks it.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { Action } from "../../surface/actions.ts";
import type { TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine } from "../spoken-words.ts";
import { toldLines } from "../told-lines.ts";

export const keptInDrinkBottle: TradeRule = {
  id: "kept-in-drink-bottle",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A note says to keep or pour something into a bottle or cup that people drink from, or into a container without a label, or within children's reach.",
    why: "Solvents, lyes and finishes in bottles for drinks are swallowed by children and by those who work beside you. A container must say what it holds (29 CFR 1910.1200(f)).",
    remedy: "Keep it in its own can with its own label, closed and locked away from children.",
    sources: ["29 CFR 1910.1200(f): containers at work are labelled"],
  },
  failing: [
    {
      title: "Thinner in a lemonade bottle",
      text: `recipe oiled {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "Keep the rest of the spirits in a lemonade bottle." #! kept-in-drink-bottle
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Its own can, and a warning",
      text: `recipe oiled {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "Keep the rest in its own can, never in a lemonade bottle."
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onRun: ({ run, report }) => {
      for (const action of toldLines(run)) {
        if (!isKeptForDrinking(action)) continue;
        report(action, {
          headline: t`Somebody may drink what is kept like this, or take it for another`,
          why: t`Solvents and lyes in bottles for drinks are swallowed by mistake, mostly by children.`,
          remedy: t`Keep it in its own can with its own label, closed and out of children's reach.`,
        });
      }
    },
  },
};

const DRINKING =
  "lemonade|drink|drinking|beer|wine|juice|soda|soda_pop|pop|milk|cola|coke|cordial|cider|rum|vodka|brandy|sherry|ale|lager|schnapps|whisky|whiskey|gin|soft_drink|water|mineral_water|coffee|tea|squash|sauce|ketchup|vinegar|syrup|sports_drink|baby|thermos|oil_and_vinegar|honey|jam|mustard|pickle|marmalade|yoghurt|yogurt|margarine|ice_cream";
const VESSEL = "bottle|cup|mug|flask|carton|glass|jar|tub|pot|box|jug";
const CUPS =
  "teacup|tea_cup|coffee_mug|coffee_cup|wineglass|tumbler|saucepan|thermos|jam_jar|baby_bottle|mug|drinking_glass|kitchen_jug|soup_bowl|cereal_bowl|salad_bowl";
const SOME = "SOLVENT|LIQUID|REST|it|mix|mixture|some|little|bit|what";
const KEEP =
  "keep|store|pour|decant|save|put|fill|tip|stand|use|used|transfer|mix|measure|collect|goes|go|left|syphon|siphon|stash|empty";
/** A cup of water for the air, what is drunk, what is marked or locked away. */
const NO_HARM =
  "!label !labelled !labeled !mark !marked !locked !rings !ring !rack !mist !spray_bottle !rinse !holds_twelve !crate !damp !shelf_against";

const KEPT_SO = phrases(
  `${KEEP} ... ${SOME} ... ${DRINKING} ${VESSEL} ${NO_HARM} !warm_water`,
  `${DRINKING} ${VESSEL} ... handy|do|does|good|ideal|fine|holds|perfect|makes|useful|right|serves|for ... ${SOME} ${NO_HARM}`,
  `${KEEP} .. ${DRINKING} bottle|carton|flask ... for .. ${SOME} ${NO_HARM}`,
  `${KEEP} ... ${SOME} ... in|into .. ${CUPS} ${NO_HARM} !warm_water`,
  `SOLVENT|REST|stripper|remover|lye|oil|varnish .. goes|go|is|kept|live|stays .. in|into .. ${DRINKING} ${VESSEL} ${NO_HARM}`,
  `SOLVENT|REST|stripper|remover|lye|varnish .. goes|go|is|kept|live|stays .. in|into .. ${CUPS} ${NO_HARM}`,
  "keep|store|put|save|pour|goes|go|leave|mix|decant ... unlabelled|unlabeled|unmarked|nameless|anonymous bottle|jar|can|tin|pot|squeeze_bottle|container|tub|squeeze|glass",
  "bottle|jar|can|tin|pot|container|tub ... no|without .. label|name|marking !never",
  "no|never|don't|needn't|not .. need|bother|label|write|mark .. label|labelling|jars|bottles|cans|tins|name",
  "peel|take|soak|tear|scrape|wash|remove .. label .. off|from .. can|tin|bottle|jar|they|it|before_you",
  "take|peel|soak|tear .. label off !old_label !book !spine !drawer !piece !furniture",
  "kitchen measuring_cup|measuring_jug|jug|spoon|bowl|whisk|scales ... back|again|after|rinse|wash !never",
  "leave|keep|put|stand|store ... can|tin|bottle|jar|stripper|thinner|SOLVENT ... within ... reach !out !locked",
);

const isKeptForDrinking = (action: Action): boolean => saidOnLine(action, KEPT_SO) !== undefined;
