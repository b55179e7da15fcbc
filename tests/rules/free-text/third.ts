/**
 * A third set of sentences, written once the second was found and before anything was mended for it: 35 of its 45 dangers
 * were found at first sight, and 1 of its 36 sound sentences was cried wolf over.
 */
import type { Kind } from "./kinds.ts";

export const THIRD: readonly Kind[] = [
  {
    kind: "a third set, oil",
    base: "oil",
    dangerous: {
      "open-flame waste-burned": ["Put the tin on the tiled stove for a bit, warm oil soaks in better."],
      "open-flame": [
        "The boiler's flame is only two metres off, it has never bothered anybody.",
        "A cigar goes well with this part of the work.",
        "Set a candle on the bench to see by when the light goes.",
      ],
      "heat-near-vapour": ["In the evening we light the stove and dry the boards around it."],
      "rags-in-a-heap": [
        "Throw the oily cloths into the paper basket when you leave.",
        "The rags are stuffed behind the cupboard until the next coat.",
        "Leave the soaked rags in the bucket over the weekend, they can be used again.",
        "The rags can be left folded on the work table.",
      ],
      "sleeping-in-fumes": [
        "The shop cat sleeps under the bench while the coats dry.",
        "The reading group meets in the room while it dries.",
        "The nursery children nap there at noon as always.",
      ],
      "kept-in-drink-bottle": ["Keep the thinner in an old cider bottle beside the sink."],
      "poured-down-drain": ["Pour the turps you cleaned the brushes with into the flower bed."],
      "fuel-as-solvent": ["Clean the top with petrol, it evaporates quicker than spirits."],
      "eating-at-work": ["Have your coffee beside the open can."],
      "waste-burned": ["The scraps with old varnish on them go in the stove."],
    },
    benign: [
      "Cloths are laid out flat on the lawn until stiff.",
      "Keep the tin shut between coats.",
      "It was kept next to the stove, so the left side has dried out.",
      "Store the rest in the original tin, tightly closed.",
      "Readers may use the table after two weeks.",
      "The room stays locked until the smell has gone.",
      "The heating runs on hot water, no flame.",
      "Take a fresh rag for every board.",
      "Wipe all excess off after 20 minutes, or it turns sticky.",
      "Brush along the grain and tip off with the dry brush.",
      "The cat scratches on the leg are steamed out.",
      "Put the used rags under water in the yard bin with a lid.",
      "Hold the lamp low to find the wet spots.",
    ],
  },
  {
    kind: "a third set, strip",
    base: "strip",
    dangerous: {
      "note-against-protection": [
        "No gloves, it only smarts a little.",
        "A cloth tied round the mouth is protection enough.",
        "Keep the cellar window closed, it is January.",
        "The windows are nailed shut in winter, work quickly.",
        "Goggles are not worth the bother for so small a piece.",
        "The paper mask from the sanding is good for this too.",
        "Take off the respirator whenever it gets stuffy.",
      ],
      "heat-near-vapour note-against-protection": [
        "We do it in the boiler room, it has no window but it is warm.",
      ],
      "solvent-on-skin": ["Wash your hands in the thinner tray afterwards."],
      "poured-down-drain": ["Empty the used stripper into the yard drain."],
    },
    benign: [
      "Open the big door and put the fan behind you.",
      "Fresh cartridges for the respirator, dated today.",
      "Scoop the sludge off with a plastic spatula.",
      "Wear the long gloves and the apron.",
      "Keep a bucket of water and the eye-wash bottle at hand.",
      "Do not let the stripper dry.",
      "The stripper tin stays closed except to pour.",
      "Close the can tightly.",
    ],
  },
  {
    kind: "a third set, soap",
    base: "soap",
    dangerous: {
      "incompatible-chemicals": [
        "Stir bleach and household ammonia together in the pail.",
        "First the bleach, and while it is wet wipe vinegar over it.",
        "Put the lye into the bucket and pour hot water on it.",
      ],
      "caustic-or-acid-left-in": ["Let the bleach dry and go straight on to the oil."],
    },
    benign: [
      "Three rinses with clear water.",
      "Dissolve the soap flakes in hot water and let it cool.",
      "Use a plastic bucket, never metal.",
      "The bleach is only dabbed on the ring.",
    ],
  },
  {
    kind: "a third set, sprayed",
    base: "sprayed",
    dangerous: {
      "note-against-protection": [
        "An ordinary half mask is good enough for one coat.",
        "The booth fan is off so the mist stays on the work.",
      ],
      "mixed-by-guess": [
        "Measure the hardener by the look of it.",
        "A third more hardener and it is hard by noon.",
      ],
    },
    benign: [
      "Check the ratio on the scale before every batch.",
      "Flush the gun at once.",
      "The visitors' door is locked and a sign hung out.",
    ],
  },
  {
    kind: "a third set, sanded",
    base: "sanded",
    dangerous: {
      "sparks-and-dust": ["Blow the room clean with the compressor at the end of the day."],
      "caught-in-machine": ["Wear gloves when you hold the leg against the belt."],
      "note-against-protection": ["No muffs, you must hear the machine."],
    },
    benign: [
      "Blow the dust out of the sander outside.",
      "Ear muffs hang at the machine.",
      "Brush the dust out of the carving and vacuum it.",
    ],
  },
  {
    kind: "a third set, lead",
    base: "lead",
    dangerous: {
      "lead-unsafe-method": [
        "Dry-scrape the loose paint and sweep it up after.",
        "Sand it back to bare wood with the random orbit.",
        "Heat it till it bubbles and smokes, then scrape.",
        "The dust is brushed off the legs with a soft brush.",
        "The old paint is sanded dry, wet takes too long.",
      ],
      "open-flame": ["Use the blowlamp on the mouldings."],
    },
    benign: [
      "The plastic sheet is folded inwards and bagged.",
      "HEPA vacuum, then a wet wipe, then the vacuum again.",
      "Keep it damp at all times.",
      "The paint stays on where it is sound.",
      "Children stay away until the wipe test is back.",
    ],
  },
];
