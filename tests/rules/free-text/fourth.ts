/**
 * A fourth set of sentences, written after recipes in people's own words had shown kinds of danger that none of the others
 * names: what goes into a bucket that stands there, compressed air on clothes, draughts shut out, a mix kept for days.
 */
import type { Kind } from "./kinds.ts";

export const FOURTH: readonly Kind[] = [
  {
    kind: "a fourth set, oil",
    base: "oil",
    dangerous: {
      "note-against-protection": [
        "A folded blanket against the door keeps the dust out and the warmth in.",
        "We kept all the windows shut the whole evening.",
        "Stuff an old towel under the door so nothing blows in.",
      ],
      "rags-in-a-heap": [
        "Some say a heap of oily rags is dangerous. We leave the rags in a heap all the same.",
      ],
    },
    benign: [
      "I was told a heap of oily rags can't burn. It can.",
      "My uncle stuffed the oily rags in a sack. We don't do that here.",
      "They say oily rags in the bin are harmless. That's nonsense.",
      "Hang a blanket over the leather seat.",
      "Wipe it in with two strokes along the grain.",
      "Four strokes a side, no more.",
      "Stand the piece clear of the door.",
      "Let the rest of the coat set in the cup out of doors.",
      "Stop long before the paint smokes.",
    ],
  },
  {
    kind: "a fourth set, petrol",
    base: "oil",
    dangerous: { "fuel-as-solvent": ["Wipe the legs with a drop of two-stroke mix."] },
    benign: ["Two strokes with the fine paper.", "The two-stroke pump is next door."],
  },
  {
    kind: "a fourth set, strip",
    base: "strip",
    dangerous: {
      "note-against-protection": [
        "A damp hankie round the face keeps the worst off.",
        "Tie a wet flannel across the mouth.",
        "A tea towel over the nose does me fine.",
        "Lean your head in over the tray and take a sniff.",
        "Put a draught excluder along the door, it is freezing.",
        "Newspaper pushed into the window cracks keeps the warmth in.",
      ],
    },
    benign: [
      "No hankie in place of the respirator.",
      "Wipe the mouth of the tin with a cloth.",
      "Take a breath of fresh air outside every ten minutes.",
      "No blanket against the door, the draught is wanted.",
      "Lay newspaper under the table.",
    ],
  },
  {
    kind: "a fourth set, soap",
    base: "soap",
    dangerous: {
      "incompatible-chemicals": [
        "Lye flakes first. Tip the flakes in the pail and pour the boiling kettle over them.",
        "Shake the flakes of caustic soda into the boiling kettle.",
      ],
    },
    benign: [
      "Soap flakes: pour the boiling kettle over them and stir.",
      "Shake the flakes of caustic soda into cold water, a spoon at a time.",
      "Real fuming needs strong ammonia. We don't do that here.",
    ],
  },
  {
    kind: "a fourth set, sprayed",
    base: "sprayed",
    dangerous: {
      "mixed-by-guess": [
        "A good splash from the second bottle, by eye.",
        "I don't bother with scales for this.",
        "If it stays soft, give it another splash on top.",
        "Cold day: twice the hardener.",
      ],
      "pot-life-overrun": [
        "Mix the whole tin on Friday and spray the last coat on Monday.",
        "The same cup does for tomorrow's coat.",
        "A mixed pot keeps for days with the lid on.",
      ],
    },
    benign: [
      "The scale for both parts stands by the booth.",
      "Mix fresh on Monday, and fresh again on Tuesday.",
      "Unmixed parts keep for a year.",
      "The same cup, washed, for the fresh mix.",
    ],
  },
  {
    kind: "a fourth set, sanded",
    base: "sanded",
    dangerous: {
      "sparks-and-dust": [
        "Air line on, blow the bench down and then your overalls.",
        "Give the whole shop a blast with the air hose.",
        "Blow your hair and jumper clean, the air gun hangs by the door.",
        "A puff from the compressor gets the dust off your apron.",
      ],
    },
    benign: [
      "No air hose on clothes, ever.",
      "The air hose hangs by the door.",
      "Vacuum your overalls with the fine filter.",
      "Blow the benches down with the air line out in the yard.",
    ],
  },
];
