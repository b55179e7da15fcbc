/**
 * Where the program does not agree with the corpus yet, each with its reason. The list is meant to shrink: a
 * disagreement that is mended must leave it.
 */
export interface KnownMiss {
  /** As `file:line rule`. */
  readonly key: string;
  readonly kind: "miss" | "false alarm";
  readonly reason: string;
}

export const knownMisses: readonly KnownMiss[] = [
  {
    key: "published/06-fpl-semitransparent-stain-warned.finish:20 rags-in-a-heap",
    kind: "miss",
    reason:
      "the note says cloths where the rule knows rags and heaps in other words; `rags-not-wetted` stands on the line above",
  },
  {
    key: "published/23-tm-runs-and-sags-warned.finish:18 thinned-too-far",
    kind: "miss",
    reason:
      "oil varnish let down one to one is a wiping varnish by common practice, and no label limit is stated; that it runs on an upright is not known of a recipe",
  },
  {
    key: "published/25-tb-clean-and-dry-warned.finish:20 rags-in-a-heap",
    kind: "miss",
    reason: "a note that leaves oily cloths on a bench speaks of no heap",
  },
  {
    key: "published/34-better-homes-lye-neutralized.finish:26 caustic-or-acid-left-in",
    kind: "false alarm",
    reason:
      "the vinegar wash stands in a note, since there is no material for it, and notes are not read for it",
  },
  {
    key: "blind-a/a-129-bleach-left-in.finish:11 caustic-or-acid-left-in",
    kind: "miss",
    reason:
      "bleach that was never rinsed is sanded: the built-in wood bleach is lye and peroxide or oxalic acid, and the dust of either burns; the rule knows only what a title or comment names",
  },
  {
    key: "blind-a/a-009-sprayed-lacquer-chest.finish:40 ventilation-too-weak",
    kind: "false alarm",
    reason:
      "a hint to keep others out while the respirator covers who sprays, in a recipe that states `keep_out` and a respirator, in a booth with 100 air changes an hour",
  },
  {
    key: "blind-a/a-109-lacquer-over-varnish.finish:33 ventilation-too-weak",
    kind: "false alarm",
    reason: "the same hint to keep others out, where the recipe states `keep_out` and a respirator",
  },
  {
    key: "blind-b/b-111-pot-gone-hard.finish:41 ventilation-too-weak",
    kind: "false alarm",
    reason: "the same hint to keep others out, where the recipe states `keep_out` and a respirator",
  },
  {
    key: "sound/false-grain-over-paint.finish:27 stain-on-sealed-surface",
    kind: "false alarm",
    reason:
      "graining draws gel stain over a scuffed, dry paint ground and varnishes it: it is meant to lie on top, `as toner` or not",
  },
  {
    key: "sound/oil-sanded-in-wet.finish:15 coat-on-unclean-surface",
    kind: "false alarm",
    reason:
      "the wet oil is sanded in, which makes a slurry that is wiped into the pores and no dust; wet sanding counts as dust here",
  },
  {
    key: "sound/words-that-only-sound-bad.finish:31 poisonous-ingredient",
    kind: "false alarm",
    reason: "a bust of Mercury is a statue of the god and holds no metal of that name",
  },
  {
    key: "sound/words-that-only-sound-bad.finish:51 fuel-as-solvent",
    kind: "false alarm",
    reason: "petrol blue is the name of a colour, as emerald and vermilion are",
  },
  {
    key: "safety/rags-in-other-words.finish:12 rags-in-a-heap",
    kind: "miss",
    reason: "a laundry basket is a heap like a bin; the rule does not know towels nor baskets",
  },
  {
    key: "safety/rags-in-other-words.finish:13 rags-in-a-heap",
    kind: "miss",
    reason: "a skip is a bin in British English",
  },
  {
    key: "safety/rags-in-other-words.finish:14 rags-in-a-heap",
    kind: "miss",
    reason: "several oily cloths on one nail lie in folds on each other and warm each other",
  },
  {
    key: "safety/rags-in-other-words.finish:15 rags-in-a-heap",
    kind: "miss",
    reason: "a rag kept dry in a jar for the next time is neither wet nor flat",
  },
  {
    key: "safety/fire-in-other-words.finish:14 open-flame",
    kind: "miss",
    reason: "smoking beside a wet coat is a flame and a glow that no shop states",
  },
  {
    key: "safety/fire-in-other-words.finish:15 heat-near-vapour",
    kind: "miss",
    reason: "a wood burner is a stove by another name",
  },
  {
    key: "safety/fire-in-other-words.finish:16 heat-near-vapour",
    kind: "miss",
    reason: "a hair dryer has a glowing wire in its air",
  },
  {
    key: "safety/poured-in-other-words.finish:14 poured-down-drain",
    kind: "miss",
    reason: "a gully is a drain, and `swill` pours",
  },
  {
    key: "safety/poured-in-other-words.finish:15 poured-down-drain",
    kind: "miss",
    reason: "gravel is ground, and `tip` pours",
  },
  {
    key: "safety/poured-in-other-words.finish:16 solvent-on-skin",
    kind: "miss",
    reason: "fingers are skin, and `get off` wipes",
  },
  {
    key: "safety/lead-by-its-old-names.finish:9 poisonous-ingredient",
    kind: "miss",
    reason: "litharge is lead monoxide",
  },
  {
    key: "safety/lead-by-its-old-names.finish:10 poisonous-ingredient",
    kind: "miss",
    reason: "sugar of lead is lead acetate",
  },
  {
    key: "safety/lead-by-its-old-names.finish:11 poisonous-ingredient",
    kind: "miss",
    reason: "minium is red lead",
  },
  {
    key: "safety/lead-by-its-old-names.finish:12 poisonous-ingredient",
    kind: "miss",
    reason: "genuine flake white is white lead",
  },
  {
    key: "safety/talked-out-of-it-in-other-words.finish:7 note-against-protection",
    kind: "miss",
    reason: "to leave the respirator off is to work without it",
  },
  {
    key: "solvents/trade-names-of-poisons-and-fuel.finish:7 poisonous-solvent",
    kind: "miss",
    reason: "trike is what British garages call trichloroethylene",
  },
  {
    key: "solvents/trade-names-of-poisons-and-fuel.finish:8 fuel-as-solvent",
    kind: "miss",
    reason: "unleaded is petrol by its pump",
  },
  {
    key: "colour/alcohol-dye-under-brushed-shellac.finish:11 layers-at-odds",
    kind: "miss",
    reason:
      "a brush with shellac drags an alcohol dye about, as the family itself says; no relation of the two families says so",
  },
  {
    key: "colour/water-dye-under-brushed-waterborne.finish:15 layers-at-odds",
    kind: "miss",
    reason:
      "a brush with a waterborne clear moves a water dye, as the family itself says; no relation of the two families says so",
  },
  {
    key: "stain/oil-stain-on-wet-waterborne-conditioner.finish:10 recoat-too-early",
    kind: "miss",
    reason:
      "damp conditioner is right under a stain of the same carrier; oil does not go into wood that is wet with water",
  },
  {
    key: "sound/radiator-cover-varnished.finish:25 heat-near-vapour",
    kind: "false alarm",
    reason: "the note says where the cover goes when it is cured, not where it dries",
  },
  {
    key: "sound/warnings-in-plain-words.finish:15 note-against-protection",
    kind: "false alarm",
    reason: "`without goggles nobody opens the stripper` asks for goggles",
  },
];
