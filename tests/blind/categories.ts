/**
 * What the writers of the blind recipes call a mistake or a hazard, and the rules that answer it.
 *
 * The writers knew the notation and the trade, not the rules, so a mark names a kind of mistake in plain words. A mark
 * counts as found where a rule of its kind reports at the level of a warning or above.
 */
export const CATEGORIES = [
  "adhesion",
  "wait",
  "order",
  "wax",
  "grit",
  "blotch",
  "bleed",
  "yellowing",
  "window",
  "air",
  "wear",
  "thinning",
  "potlife",
  "stock",
  "date",
  "budget",
  "dust",
  "lead",
  "solvent-air",
  "fire",
  "rags",
  "mask",
  "gloves",
  "eyes",
  "chemical",
  "mixing-chemicals",
  "two-part",
  "child-food",
  "caustic",
  "noise",
  "other",
] as const;

export type Category = (typeof CATEGORIES)[number];

export const isCategory = (word: string): word is Category =>
  (CATEGORIES as readonly string[]).includes(word);
