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
    key: "language/allowed-without-a-reason.finish:9 grit-jump",
    kind: "false alarm",
    reason: "The corpus forgot the mark: an allowance without a reason allows nothing, so the finding stays.",
  },
  {
    key: "mixing/pot-life.finish:18 syntax",
    kind: "false alarm",
    reason: "The corpus writes `mix` on the layer; the notation has it in the material.",
  },
  {
    key: "mixing/pot-life.finish:26 syntax",
    kind: "false alarm",
    reason: "The corpus writes `mix` on the layer; the notation has it in the material.",
  },
  {
    key: "preparation/coarse-between-coats.finish:23 grit-too-coarse",
    kind: "miss",
    reason:
      "The corpus puts it on the sanding line; the rule puts it on the layer that suffers, with the sanding as a related place.",
  },
  {
    key: "preparation/coarse-between-coats.finish:21 grit-too-coarse",
    kind: "false alarm",
    reason:
      "The corpus puts it on the sanding line; the rule puts it on the layer that suffers, with the sanding as a related place.",
  },
  {
    key: "preparation/filler-eight-hours.finish:23 grain-not-knocked-down",
    kind: "false alarm",
    reason:
      'The corpus takes a waterborne primer on bare wood as sound without a sanding after it; the rule holds to the letter of "no sanding after the grain rose".',
  },
  {
    key: "preparation/filler-overnight.finish:22 grain-not-knocked-down",
    kind: "false alarm",
    reason:
      'The corpus takes a waterborne primer on bare wood as sound without a sanding after it; the rule holds to the letter of "no sanding after the grain rose".',
  },
  {
    key: "preparation/filler-two-hours.finish:23 grain-not-knocked-down",
    kind: "false alarm",
    reason:
      'The corpus takes a waterborne primer on bare wood as sound without a sanding after it; the rule holds to the letter of "no sanding after the grain rose".',
  },
  {
    key: "preparation/grain-left-standing.finish:9 grain-not-knocked-down",
    kind: "miss",
    reason:
      'The corpus takes a waterborne primer on bare wood as sound without a sanding after it; the rule holds to the letter of "no sanding after the grain rose".',
  },
  {
    key: "preparation/hundred-before-paint.finish:24 grit-too-coarse",
    kind: "miss",
    reason:
      "The corpus puts it on the sanding line; the rule puts it on the layer that suffers, with the sanding as a related place.",
  },
  {
    key: "preparation/hundred-before-paint.finish:26 grit-too-coarse",
    kind: "false alarm",
    reason:
      "The corpus puts it on the sanding line; the rule puts it on the layer that suffers, with the sanding as a related place.",
  },
  {
    key: "preparation/hundred-before-stain.finish:7 grit-too-coarse",
    kind: "miss",
    reason:
      "The corpus puts it on the sanding line; the rule puts it on the layer that suffers, with the sanding as a related place.",
  },
  {
    key: "preparation/hundred-before-stain.finish:9 grit-too-coarse",
    kind: "false alarm",
    reason:
      "The corpus puts it on the sanding line; the rule puts it on the layer that suffers, with the sanding as a related place.",
  },
  {
    key: "safety/spirits-near-welding.finish:30 ignition-near-flammable",
    kind: "false alarm",
    reason:
      "The corpus takes paste wax as no source of vapour; its family has the flash point of mineral spirits.",
  },
  {
    key: "shellac/polyurethane-over-sanding-sealer.finish:9 no-respirator",
    kind: "false alarm",
    reason: "The corpus takes a sanding sealer as mild; its family is carried by lacquer thinner.",
  },
  {
    key: "soft-and-hard/enamel-over-acrylic.finish:19 hard-over-soft",
    kind: "miss",
    reason: "Where brittle begins: the family table gives the corpus' pairs another difference of hardness.",
  },
  {
    key: "soft-and-hard/polyurethane-over-spar.finish:19 hard-over-soft",
    kind: "miss",
    reason: "Where brittle begins: the family table gives the corpus' pairs another difference of hardness.",
  },
  {
    key: "solvents/lacquer-over-new-paint.finish:22 hard-over-soft",
    kind: "false alarm",
    reason: "Where brittle begins: the family table gives the corpus' pairs another difference of hardness.",
  },
  {
    key: "solvents/unknown-paint.finish:19 hard-over-soft",
    kind: "false alarm",
    reason: "Where brittle begins: the family table gives the corpus' pairs another difference of hardness.",
  },
  {
    key: "stain/sanded-too-fine.finish:7 grit-too-fine",
    kind: "miss",
    reason:
      "The corpus puts it on the sanding line; the rule puts it on the layer that suffers, with the sanding as a related place.",
  },
  {
    key: "stain/sanded-too-fine.finish:9 grit-too-fine",
    kind: "false alarm",
    reason:
      "The corpus puts it on the sanding line; the rule puts it on the layer that suffers, with the sanding as a related place.",
  },
  {
    key: "wear/veneer-recipe-on-plywood.finish:39 grain-not-knocked-down",
    kind: "false alarm",
    reason:
      'The corpus takes a waterborne primer on bare wood as sound without a sanding after it; the rule holds to the letter of "no sanding after the grain rose".',
  },
];
