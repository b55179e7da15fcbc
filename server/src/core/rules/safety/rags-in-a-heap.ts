/**
 * Words that tell to put oily rags where they catch fire: in a bin, a bag or a heap.
 */
import { OSHA_RAGS } from "../../knowledge/sources.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { hasSelfHeatingRags } from "../duty-check.ts";
import { tellingSentences } from "../hazard-words.ts";
import { usesOf } from "../material-uses.ts";
import type { RunContext, TradeRule } from "../rule.ts";
import { fixOf } from "../texts.ts";

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
  layer  drying_oil, wiped
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
  layer  oil_stain, wiped
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
      title: "As it is done, and what is forbidden",
      text: `recipe oiled {
  for    wood
  safety wet_rags
  layer  drying_oil, wiped
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
  checks: { onRun: check },
};

const RAGS = /\b(?:rags?|cloths?|wipes|wadding|cotton\s+waste|towels?|applicator\s+pads?)\b/iu;
const HEAPED =
  /\b(?:bins?|basket|bag|bags|sack|heap(?:ed)?|piles?|piled|pocket|drawer|cupboard|corner|trash|rubbish|dustbin|garbage|crumpl\w*|bunch\w*|ball(?:ed)?|stuff\w*|wad|carton|cardboard|hamper|skip|dumpster|bucket|laundry|wash(?:ing)?\s+machine|tumble\s+dr[iy]er|jar|tin|(?:on|over)\s+the\s+(?:bench|floor|chair|table|window\s?sill)|(?:on|over|onto|under)\s+(?:each\s+other|one\s+another|one\s+(?:nail|hook|peg|line)))\b/iu;
const SAFE =
  /\b(?:metal|steel|water|soak(?:ed|ing)?\s+(?:them|it|in)|flat|spread|lid|lidded|closed|clean|fresh|new|dry\s+rags?|fill\w*)\b/iu;
/** Safe for a cloth by itself, and no help in a bin or on top of others. */
const AIRED = /\b(?:hang|hung|outdoors|outside|wet)\b/iu;
const SHUT_IN =
  /\b(?:bins?|skip|dumpster|dustbin|bags?|sack|laundry|hamper|heap(?:ed)?|piles?|piled|(?:on|over|onto|under)\s+(?:each\s+other|one\s+another|one\s+(?:nail|hook|peg)))\b/iu;

const isSafe = (sentence: string): boolean =>
  SAFE.test(sentence) || (AIRED.test(sentence) && !SHUT_IN.test(sentence));

const NAMES_OIL = /\b(?:oily|oiled|oil|linseed|tung|varnish|stain)\b/iu;

function check({ run, report }: RunContext): void {
  for (const { action } of run.moments) {
    const sentence = tellingSentences(action, RAGS, HEAPED).find((each) => !isSafe(each));
    if (sentence === undefined || !(NAMES_OIL.test(sentence) || leavesSuchRags(run))) continue;
    report(action, {
      headline: "Oily rags left like this catch fire by themselves",
      why: "They heat up as the oil hardens, and crumpled together they keep the heat. They burst into flame hours later, when nobody is there.",
      remedy:
        "Take these words out and say: rags into water in a closed metal can, or spread flat outdoors, at once. The label and local codes say how to get rid of them.",
      fixes: [
        fixOf("change", "Say that the rags go into water in a closed metal can", [
          {
            place: action.place,
            text: 'note "Rags at once into water in a closed metal can, or flat outdoors."',
          },
        ]),
      ],
    });
  }
}

const leavesSuchRags = (run: SurfaceRun): boolean =>
  run.moments.some(({ action }) =>
    usesOf(action).some(({ material }) => material !== undefined && hasSelfHeatingRags(material)),
  );
