/**
 * What can go wrong with a finish: what each trouble comes of, the likeliest cause first, and how it is put right. What of
 * it is seen in a recipe is found by `rules/record/trouble-causes.ts`.
 *
 * The words are those of ISO 4618, Paints and varnishes, terms and definitions (from memory); a bench without a
 * laboratory names what it sees, so each trouble is a plain word.
 */
import type { TroubleWord } from "../model/model.ts";
import { COMPATIBILITY_LIST, HANDBOOK_16, MEMORY_HIGH, PRACTICE, UFC_PAINTING } from "./sources.ts";

/** What a cause looks for in the record and the recipe. */
export type CauseId =
  | "damp air"
  | "cold air"
  | "warm air"
  | "a coat put on too soon"
  | "a coat put on too late"
  | "too thick a coat"
  | "wax below"
  | "silicone below"
  | "grease below"
  | "dust below"
  | "residue below"
  | "raised grain"
  | "uncured oil below"
  | "solvent on a soft coat"
  | "rolling or spraying"
  | "another product";

export interface Trouble {
  readonly word: TroubleWord;
  /** What it looks like. */
  readonly looks: string;
  /** The likeliest first. */
  readonly causes: readonly CauseId[];
  /** What to do, as an imperative. */
  readonly remedy: string;
  /** The same as lines of a recipe; `COAT` stands for the layer that goes on again. */
  readonly lines: readonly string[];
  readonly source: string;
}

const TROUBLES_KNOWN: readonly Trouble[] = [
  {
    word: "blush",
    looks: "a milky film",
    causes: ["damp air", "cold air", "a coat put on too soon", "too thick a coat"],
    remedy:
      "Let it stand in warm, dry air for a night; where it stays white, scuff it and put a thin coat on at less than 60 % RH",
    lines: ["wait  overnight", "step  scuff 320", "step  dust", "COAT"],
    source: `ISO 4618 (blushing), ${MEMORY_HIGH}; ${PRACTICE}`,
  },
  {
    word: "peeling",
    looks: "a film that comes off",
    causes: [
      "wax below",
      "silicone below",
      "grease below",
      "a coat put on too late",
      "uncured oil below",
      "residue below",
      "dust below",
      "another product",
    ],
    remedy:
      "Take off all that is loose, clean what is below, sand it until the edges are even, and coat again",
    lines: [
      "step  clean with mineral_spirits",
      "wait  overnight",
      "step  sand 150, 220",
      "step  dust",
      "COAT",
    ],
    source: `${UFC_PAINTING}; ${HANDBOOK_16}`,
  },
  {
    word: "fish-eyes",
    looks: "round craters that the coat draws back from",
    causes: ["silicone below", "wax below", "grease below", "uncured oil below", "another product"],
    remedy:
      "Let it harden, wash it with mineral spirits and clean cloths, scuff it, and lay dewaxed shellac between before you coat again",
    lines: [
      "step  clean with mineral_spirits",
      "wait  overnight",
      "step  scuff 220",
      "step  dust",
      "layer dewaxed_shellac",
      "wait  until recoat",
      "step  scuff 320",
      "step  dust",
      "COAT",
    ],
    source: `ISO 4618 (cissing), ${MEMORY_HIGH}; ${COMPATIBILITY_LIST}`,
  },
  {
    word: "runs",
    looks: "drops and curtains",
    causes: ["too thick a coat", "cold air", "rolling or spraying", "damp air"],
    remedy: "Let it cure through, sand the runs level, and put on a thinner coat",
    lines: ["wait  until cured", "step  sand 320", "step  dust", "COAT"],
    source: `ISO 4618 (sagging), ${MEMORY_HIGH}; ${PRACTICE}`,
  },
  {
    word: "clouds",
    looks: "a haze within the film",
    causes: [
      "a coat put on too soon",
      "uncured oil below",
      "damp air",
      "cold air",
      "too thick a coat",
      "another product",
    ],
    remedy:
      "Let it dry in warm air until it has cured; where it stays, sand back to the clear part and coat again in thin coats",
    lines: ["wait  until cured", "step  sand 320", "step  dust", "COAT"],
    source: PRACTICE,
  },
  {
    word: "wrinkles",
    looks: "a skin in folds",
    causes: [
      "solvent on a soft coat",
      "a coat put on too soon",
      "too thick a coat",
      "warm air",
      "uncured oil below",
    ],
    remedy:
      "Let it cure through, sand the folds off, and coat again in thin coats with their full time between",
    lines: ["wait  until cured", "step  sand 180, 220", "step  dust", "COAT"],
    source: `ISO 4618 (wrinkling), ${MEMORY_HIGH}; ${UFC_PAINTING}`,
  },
  {
    word: "bubbles",
    looks: "bubbles that dried in",
    causes: ["rolling or spraying", "warm air", "too thick a coat", "a coat put on too soon", "raised grain"],
    remedy:
      "Sand the bubbles off, and put on a thin coat with a soft brush out of a can that was stirred and not shaken",
    lines: ["wait  until recoat", "step  sand 220", "step  dust", "COAT"],
    source: PRACTICE,
  },
  {
    word: "nibs",
    looks: "grains in the film",
    causes: ["dust below", "raised grain", "cold air", "damp air"],
    remedy: "Rub the coat down, take the dust with a damp cloth, and strain what you put on next",
    lines: ["wait  until recoat", "step  scuff 320", "step  dust", "COAT"],
    source: PRACTICE,
  },
  {
    word: "tacky",
    looks: "a film that stays soft",
    causes: [
      "cold air",
      "damp air",
      "too thick a coat",
      "a coat put on too soon",
      "wax below",
      "uncured oil below",
      "another product",
    ],
    remedy:
      "Give it warm, moving air and twice its time; where it is still soft then, take it off and begin again with a thin coat",
    lines: ["wait  until cured", "step  scuff 320", "step  dust", "COAT"],
    source: `${HANDBOOK_16}; ${PRACTICE}`,
  },
];

/** What is known of a trouble; undefined where the table is not at hand: see `recordBeside` of `client/bundles.ts`. */
export const troubleOf = (word: TroubleWord): Trouble | undefined =>
  TROUBLES_KNOWN.find((each) => each.word === word);
