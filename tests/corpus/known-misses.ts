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

export const knownMisses: readonly KnownMiss[] = [];
