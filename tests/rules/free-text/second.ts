/**
 * A second set of sentences, written once the first was found and before anything was mended for it: 38 of its 68 dangers
 * were found at first sight, and 2 of its 40 sound sentences were cried wolf over.
 */
import type { Kind } from "./kinds.ts";

export const SECOND: readonly Kind[] = [
  {
    kind: "a second set, oil",
    base: "oil",
    dangerous: {
      "open-flame": [
        "The caretaker puffs his cigar next to the varnishing table.",
        "A quick fag while you wait for it to tack up is fine.",
        "Melt paraffin and turps together on the kitchen range.",
        "An old oil lamp gives the best light for this.",
      ],
      "heat-near-vapour": [
        "Roll the trolley up to the wood stove, it'll be dry by supper.",
        "The paraffin heater burns all night so that the varnish sets.",
        "We leave the gas heater blazing while the second coat goes on.",
        "Aim the patio heater at the top.",
        "Use your wife's hair dryer to hurry it along.",
      ],
      "rags-in-a-heap": [
        "The oily wads go back into the cigar box till next time.",
        "I keep my oiling rag scrunched up in a coffee can.",
        "Put the soaked towels into the wheelie bin straight after.",
        "Roll the cloths up tight and slip them into a freezer bag.",
      ],
      "sleeping-in-fumes": [
        "The kids can stay and colour at the other end of the table.",
        "Grandpa dozes in the armchair next to the drying cabinet.",
        "Our parrot lives in the workshop and is used to it.",
        "Put the wardrobe straight back and sleep in the room tonight.",
      ],
      "eating-at-work": [
        "Nibble your sandwiches over the work so no time is lost.",
        "Clamp the spare brush in your teeth.",
      ],
      "kept-in-drink-bottle": ["Decant a little into a jam jar and pop it on the pantry shelf."],
      "poured-down-drain": [
        "Whatever is left goes down the plughole.",
        "Tip the dregs on the weeds, it kills them too.",
      ],
      "fuel-as-solvent": ["A rag dampened with petrol lifts the old polish."],
      "waste-burned": [
        "Burn the sticky newspapers in the garden.",
        "The varnished scraps heat the shop all winter.",
      ],
    },
    benign: [
      "We smoke neither inside nor near the shed.",
      "The fireplace wall is where the cabinet will hang.",
      "The cat flap is masked.",
      "Children paint their own box another day, with chalk.",
      "Set the rags to dry on the fence outside, each on its own.",
      "The old oven in the corner is disconnected and empty.",
      "Warm the workshop to 20 C the day before, then switch the heater off and air it.",
      "A cup of tea after work, in the kitchen.",
      "The oil is thin enough at 20 C, no warming.",
      "The stain was bought in a big bottle; decant into a clean labelled tin.",
      "Let the oil soak 15 minutes, then wipe all of it off with clean cloths.",
      "Keep the room at 20 C overnight.",
      "The drawer bottoms get no coat.",
      "Rags go into the lidded steel bucket with water, emptied daily.",
      "The bed stays in the store until the oil is hard.",
    ],
  },
  {
    kind: "a second set, strip",
    base: "strip",
    dangerous: {
      "note-against-protection": [
        "The fumes never did my father any harm.",
        "Nobody here bothers with masks.",
        "Hold your nose and get on with it.",
        "A scarf round the mouth does just as well as a respirator.",
        "Gloves just make you clumsy.",
        "Work the sludge out of the carving with your fingernails.",
        "I do it barehanded, my skin is tough.",
        "It is cosy with everything shut and the stove on.",
        "Keep it all closed up, otherwise the stripper dries too fast.",
        "Do the drawers in the bath, you can rinse them there.",
        "Close up the shed tight, the neighbours complain about the stink.",
        "If your head starts to swim take a short break and carry on.",
        "Safety glasses are for show.",
      ],
      "solvent-on-skin": ["Rinse the goo off your arms with meths."],
      "poured-down-drain": ["The drain in the yard takes the rinsings and the stripper."],
    },
    benign: [
      "Work outdoors in the shade, upwind of the bucket.",
      "Change gloves at every break.",
      "Keep both doors open and the fan in the far doorway blowing out.",
      "Rinse the wood with spirits until the cloth stays clean.",
      "Catch the sludge on newspaper, let it dry outdoors and take it to the depot.",
      "Hands off the wet stripper; use the scraper.",
      "No open windows means no stripping.",
      "With the windows shut this is dangerous.",
      "Ask for the respirator before you start.",
    ],
  },
  {
    kind: "a second set, soap",
    base: "soap",
    dangerous: {
      "incompatible-chemicals": [
        "A mix of bleach and vinegar is the best cleaner there is.",
        "Pour a cup of ammonia into the bleach solution.",
        "Kettle water on the caustic soda gets it going.",
        "Bleach, then ammonia right on top.",
        "Peroxide with a good dash of vinegar whitens best.",
      ],
      "caustic-or-acid-left-in": [
        "The lye can dry in, no rinsing.",
        "When the oxalic has dried, sand the powder off.",
      ],
      "caustic-on-aluminium": ["Stir the caustic in grandma's aluminium pot."],
    },
    benign: [
      "Vinegar in the rinse neutralises the lye.",
      "Rinse twice with clear water, then let it dry for three days.",
      "Do not use bleach here.",
      "The water must be lukewarm.",
    ],
  },
  {
    kind: "a second set, sprayed",
    base: "sprayed",
    dangerous: {
      "mixed-by-guess": [
        "Two squirts of hardener more never hurt.",
        "Nobody weighs it, just pour till it looks right.",
        "In winter give it an extra shot of hardener.",
      ],
      "note-against-protection": [
        "A dust mask is plenty, it is only a small cabinet.",
        "Skip the air line today, the compressor is broken; the charcoal mask will do.",
      ],
    },
    benign: [
      "Weigh hardener and resin on the scale.",
      "Spray in thin passes, gun at 20 cm.",
      "No one else in the booth.",
      "Mix only what you use in two hours.",
    ],
  },
  {
    kind: "a second set, sanded",
    base: "sanded",
    dangerous: {
      "sparks-and-dust": ["Dust yourself down with the air gun before you go home."],
      "note-against-protection": ["Ear muffs are for cowards."],
      "caught-in-machine": ["Keep your gloves on at the drill press, the swarf is sharp."],
    },
    benign: [
      "Vacuum between grits.",
      "Hold the sander flat and keep it moving.",
      "Muffs and mask hang by the door.",
      "Switch the lathe off before you polish by hand.",
    ],
  },
  {
    kind: "a second set, lead",
    base: "lead",
    dangerous: {
      "lead-unsafe-method": [
        "Sand the old white off with the belt sander and open the door for the dust.",
        "Just sweep the chips under the bench.",
        "Crank the hot air gun right up.",
        "Hoover up the old paint with Henry.",
        "Scrape it dry, quicker that way.",
      ],
      "open-flame": ["Burn it off like the old painters did."],
      "sleeping-in-fumes": ["Let the children pick the flakes off, they love it."],
    },
    benign: [
      "Wet the paint, scrape, wet again.",
      "The chips go into the sealed bag at once.",
      "Wash hands and face before lunch.",
      "Nobody sands anything here.",
    ],
  },
];
