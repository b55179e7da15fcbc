/**
 * Words that tell to put oily rags where they catch fire: in a bin, a bag or a heap.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { takesBack } from "../../knowledge/denials.ts";
import { OSHA_RAGS } from "../../knowledge/sources.ts";
import type { Word } from "../../knowledge/text-words.ts";
import type { Action } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { hasSelfHeatingRags } from "../duty-check.ts";
import { usesOf } from "../material-uses.ts";
import type { RunContext, TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { wordsOfLine } from "../spoken-words.ts";
import { fixOf } from "../texts.ts";
import { isDescription, toldLines } from "../told-lines.ts";

export const ragsInAHeap: TradeRule = {
  id: "rags-in-a-heap",
  group: "safety",
  severity: "error",
  docs: {
    summary:
      "A note or a step tells to leave oily rags in a bin, a bag, a pocket or a heap, whatever `safety wet_rags` says.",
    why: "Rags with a drying oil heat up as it hardens. Crumpled together they keep the heat and catch fire hours later, when nobody is there.",
    remedy:
      "Say instead that the rags go into water in a closed metal can, or are spread flat outdoors, at once.",
    sources: [
      OSHA_RAGS,
      "ASTM D6801 on self-heating of oil-based liquids (from memory); bags and piles: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Into the waste paper",
      text: `recipe oiled {
  for    wood
  safety wet_rags
  layer  drying_oil, wiped off
  note   "Throw the rags into the waste basket with the paper." #! rags-in-a-heap
  wait   until cured
}
`,
    },
    {
      title: "In a heap, and in a bag",
      text: `recipe stained {
  for    wood
  safety wet_rags, gloves, ventilate, no_ignition
  layer  oil_stain, wiped off
  note   "Leave the cloths in a heap under the bench until tomorrow." #! rags-in-a-heap
  note   "The oily rags go into a plastic bag." #! rags-in-a-heap
  wait   until cured
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "The cloths of a wet wipe with water hold no oil",
      text: `recipe wiped {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  step   clean with water "wet wipe twice, cloths into the bag"
  wait   24 h
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "As it is done, and what is forbidden",
      text: `recipe oiled {
  for    wood
  safety wet_rags
  layer  drying_oil, wiped off
  note   "Rags go into the metal bin with water and a lid."
  note   "Never leave rags in a heap or in the bin."
  note   "Spread the rags flat on the fence, not in a pile."
  wait   until cured
}
`,
    },
    {
      title: "Rags of a waterborne clear",
      text: `recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  note  "The damp cloths go into the bin."
  wait  until cured
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: { onRun: check },
};

const SHUT =
  "bin|binliner|bin_liner|basket|wastebasket|wastepaper|bag|sack|heap|pile|stack|pocket|drawer|cupboard|locker|corner|trash|rubbish|dustbin|garbage|carton|cardboard|box|crate|hamper|skip|dumpster|bucket|laundry|washing_machine|tumble_drier|tumble_dryer|jar|tin|can|toolbox|tool_box|apron|car|boot|trunk|shed|shavings|sawdust|newspaper|radiator|pipe|boiler";
const LYING =
  "bench|floor|chair|table|window_sill|windowsill|sill|stool|shelf|ground|side|bottom|lying|where_they_are|where_they_fall|each_other|one_another|one_nail|one_hook|one_peg|one_line";
const PUT =
  "throw|toss|chuck|drop|stuff|shove|put|leave|keep|bin|bung|sling|dump|pile|heap|roll|tuck|fold|store|stow|stash|fling|lay|collect|gather|push|squash|cram|save|hide|hang|poke|pop|stick|press|jam|pack|take";
const GO =
  "go|goes|sit|lie|stay|end|land|belong|live|can|may|hang|lying|left|thrown|kept|put|stuffed|tossed|dropped|stored";
const CRUSH =
  "ball|balled|wad|wadded|bundle|bundled|scrunch*|crumpl*|screw*|bunch*|pile|piled|heap|heaped|stuff*|squash*|cram*";

/** Cloths shut in, heaped, or left lying. */
const SHUT_IN = phrases(
  `${PUT} .. RAG ... ${SHUT}|${LYING}`,
  `${PUT} ... RAG ... in|into|on|onto|to|under|behind .. ${SHUT}|${LYING}`,
  `RAG ... ${GO} ... in|into|on|onto|to|under|behind|over .. ${SHUT}|${LYING}`,
  `RAG in|into|on|onto|to|under|behind|over .. ${SHUT}`,
  `${CRUSH} ... RAG`,
  `RAG ... ${CRUSH}|together`,
  "leave|left .. RAG ... overnight|till|until|tomorrow|morning|weekend|lying|about|around|there|as_they_are",
  "RAG .. lie|lying|sit|stay ... overnight|till|until|tomorrow|morning|weekend|about|around",
  "wash|launder|tumble .. RAG ... washing_machine|machine|dryer|drier|laundry",
  "bin RAG",
  "RAG ... bin|pile|trash|rubbish will|does|is .. do|fine|enough|it",
  "leave .. them|it ... in .. pile|heap|ball|bin & RAG",
);

/** "No need to wet the rags", "don't bother with the rags". */
const NOT_WETTED = phrases(
  "no|not|never|don't|needn't|needless|unnecessary|skip .. wet|wetting|soak|soaking|spread|spreading|bother|fuss|drown|water .. RAG !bin_outside",
  "RAG .. need|require|are|do .. no|not|nothing .. water|wet|wetting|special|dangerous|danger|care|fuss",
);

/** Words that make of the same place a safe one, or of the cloth one that was never oily. */
const SAFE = phrases(
  "water|metal|steel_can|steel_bin|steel_bucket|steel_drum|fireproof|flat|spread|spreading|soak|soaking|soaked_in|well_soaked|sealed|lidded|closed|airtight|with_lid|and_lid|tight_lid|clean|fresh|new|unused|dry_rag|dry_cloth|lint|wrung|singly|one_by_one|fill*|dust|drop_cloths|table_cloth|dust_cloth|burned_down|burnt_down|burn_down|doorway|bottom_of_the_door|foot_of_the_door|under_the_door|gap",
);
/** Safe for a cloth by itself, and no help in a bin or on top of others. */
const AIRED = phrases("hang|hung|outdoors|outside|wet|yard|line|fence");
const CROWDED = phrases(
  "bin|skip|dumpster|dustbin|bag|sack|laundry|hamper|heap|heaped|pile|piled|each_other|one_another|one_nail|one_hook|one_peg|drawer|cupboard|pocket|box",
);

/** "Rags? Just sling them in the corner": the second sentence says what to do with the first one's cloths. */
function whatOfThem(action: Action): readonly (readonly Word[])[] {
  const [first, second, ...more] = wordsOfLine(action);
  return first && second && more.length === 0 && THEM.find([second]) !== undefined && first.length <= 4
    ? [[...first, ...second]]
    : [];
}
const THEM = phrases("them");

/** The clause that leaves them so, or undefined. */
function leftSo(action: Action): string | undefined {
  const clauses = wordsOfLine(action);
  for (const words of [...clauses, ...whatOfThem(action)]) {
    if (takesBack(clauses[clauses.indexOf(words) + 1] ?? []) && clauses.includes(words)) continue;
    const clause = [words];
    const said = NOT_WETTED.find(clause) ?? SHUT_IN.find(clause);
    if (said === undefined) continue;
    if (NOT_WETTED.find(clause) !== undefined) return said;
    if (SAFE.find(clause) !== undefined) continue;
    if (AIRED.find(clause) === undefined || CROWDED.find(clause) !== undefined) return said;
  }
  return undefined;
}

const NAMES_OIL = /\b(?:oily|oiled|oil|linseed|tung|varnish|stain)\b/iu;

function check({ run, report }: RunContext): void {
  for (const action of toldLines(run)) {
    const sentence = leftSo(action);
    if (sentence === undefined) continue;
    if (!NAMES_OIL.test(sentence) && (isWetWork(action) || !leavesSuchRags(run))) continue;
    report(action, {
      headline: t`Oily rags left like this catch fire by themselves`,
      why: t`They heat up as the oil hardens, and crumpled together they keep the heat. They burst into flame hours later, when nobody is there.`,
      remedy: t`Take these words out and say: rags into water in a closed metal can, or spread flat outdoors, at once. The label and local codes say how to get rid of them.`,
      fixes: isDescription(run, action)
        ? []
        : [
            fixOf("change", t`Say that the rags go into water in a closed metal can`, [
              {
                place: action.place,
                text: 'note "Rags at once into water in a closed metal can, or flat outdoors."',
              },
            ]),
          ],
    });
  }
}

/** The cloths of washing with water or soap hold no oil. */
const isWetWork = (action: Action): boolean =>
  action.op === "step" && action.use?.material?.family?.carrier === "water";

const leavesSuchRags = (run: SurfaceRun): boolean =>
  run.moments.some(({ action }) =>
    usesOf(action).some(({ material }) => material !== undefined && hasSelfHeatingRags(material)),
  );
