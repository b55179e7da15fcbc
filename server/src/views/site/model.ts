/**
 * A library of recipes as plain data: what the pages of a site are made of.
 *
 * Entries name each other by their keys. As on cards and short recipes, owner, people, prices, delivery and photos are in
 * it only where somebody asked for them; notes of the workshop are not.
 */
import type { FileId } from "../../core/place.ts";
import type { CareCard } from "../care-card.ts";
import type { Section } from "../section/model.ts";
import type { Docs, Sheet, SheetFact, SheetFinding } from "../sheet/model.ts";
import type { ShortRecipe } from "../short-recipe.ts";

export interface Library {
  readonly recipes: readonly LibraryRecipe[];
  readonly pieces: readonly LibraryPiece[];
  readonly jobs: readonly LibraryJob[];
}

interface Entry {
  /** Of this declaration alone, in this library. */
  readonly key: string;
  readonly name: string;
  readonly title: string;
  readonly file: FileId;
  readonly docs: Docs;
  readonly traits: Traits;
}

/** By what entries are found again; each list without repetition, in the order of the text. */
export interface Traits {
  /** What it is done on: `red oak`. */
  readonly woods: readonly string[];
  /** Families of the coats that it leaves, from the top down: `waterborne polyurethane`. */
  readonly finishes: readonly string[];
  /** Sheen of the top coat. */
  readonly looks: readonly string[];
  readonly wears: readonly string[];
  /** Who uses the pieces: `children`. */
  readonly users: readonly string[];
  /** Of each job. */
  readonly figures: readonly JobFigures[];
}

/** What the text does not tell is left out. */
export interface JobFigures {
  /** Hands-on hours. */
  readonly hours?: number;
  /** Days of 24 h from the first work to the end of the last wait. */
  readonly days?: number;
  /** Where prices are handed on. */
  readonly cost?: { readonly amount: number; readonly currency: string };
}

/** A drawing of a surface, with a line on it. */
export interface LibrarySection {
  readonly title: string;
  readonly caption: string;
  readonly section: Section;
}

export interface LibraryRecipe extends Entry {
  readonly kind: "recipe";
  /** By itself, without amounts and dates. */
  readonly sheet: Sheet;
  readonly steps: readonly string[];
  /** What is chosen before the work: `clear`, `a material`. */
  readonly choices: readonly SheetFact[];
  /** As a job leaves it, or the surface that the recipe must be meant for; absent where nothing is known of one. */
  readonly section?: LibrarySection;
  /** The text of the declaration, with the comment above it, and where it begins in its file. */
  readonly source: { readonly text: string; readonly offset: number };
  /** Recipes that it follows, and those that follow it. */
  readonly follows: readonly string[];
  readonly followedBy: readonly string[];
  readonly jobs: readonly string[];
  readonly pieces: readonly string[];
}

export interface LibraryPiece extends Entry {
  readonly kind: "piece";
  readonly surfaces: readonly PieceSurface[];
  readonly jobs: readonly string[];
  readonly recipes: readonly string[];
}

export interface PieceSurface {
  readonly title: string;
  readonly docs: Docs;
  /** `red oak`; `not stated`. */
  readonly wood: string;
  readonly wear: string;
}

export interface LibraryJob extends Entry {
  readonly kind: "job";
  readonly short: ShortRecipe;
  readonly sections: readonly LibrarySection[];
  readonly care: readonly CareCard[];
  readonly findings: readonly SheetFinding[];
  readonly recipes: readonly string[];
  readonly pieces: readonly string[];
}

export type LibraryEntry = LibraryRecipe | LibraryPiece | LibraryJob;
