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
];
