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
    key: "published/23-tm-runs-and-sags-warned.finish:18 thinned-too-far",
    kind: "miss",
    reason:
      "oil varnish let down one to one is a wiping varnish by common practice, and no label limit is stated; that it runs on an upright is not known of a recipe",
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
];
