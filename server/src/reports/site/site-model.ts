/** What a site is made of, beside the library: how it is called, and what only its maker can look up. */
import type { FileId } from "../../core/place.ts";
import type { Library, LibraryEntry, LibraryRecipe } from "../../views/site/model.ts";
import type { PicturesOf } from "../sheet-html.ts";

export interface SiteFile {
  /** From the folder of the site, with `/`. */
  readonly path: string;
  readonly text: string;
}

export interface SiteParts {
  readonly library: Library;
  readonly title: string;
  /** Where the site will stand, ending in `/`; its feeds then name whole addresses. */
  readonly address?: string;
  /** When a file was changed last, an ISO date-time with its offset from UTC; undefined where nobody knows. */
  readonly changedAt: (file: FileId) => string | undefined;
  /** How a reader calls a file. */
  readonly label: (file: FileId) => string;
  /** The printable sheet of a recipe, a page of its own. */
  readonly sheetOf: (recipe: LibraryRecipe) => string;
  /** The text of a recipe in the order of its characters, with what each part is; `plain` for the rest. */
  readonly coloured: (recipe: LibraryRecipe) => readonly ColouredPart[];
  /** A UUID of a text, always the same. */
  readonly idOf: (text: string) => string;
  readonly pictures?: PicturesOf;
  /** Whose recipes they are and under which licence, as their package says it; a sentence without its point. */
  readonly origin?: string;
}

export interface ColouredPart {
  readonly text: string;
  readonly as: "plain" | "word" | "figure" | "text" | "comment" | "name";
}

/** A site as its pages see it. */
export interface Site extends SiteParts {
  readonly entries: ReadonlyMap<string, LibraryEntry>;
  /** The path of the page of an entry. */
  readonly pathOf: (entry: LibraryEntry) => string;
  readonly indexes: readonly SiteIndex[];
}

/** A page on which entries are found by one thing that they have. */
export interface SiteIndex {
  readonly path: string;
  /** `By wood` */
  readonly title: string;
  readonly groups: readonly IndexGroup[];
}

export interface IndexGroup {
  readonly title: string;
  readonly rows: readonly IndexRow[];
}

export interface IndexRow {
  readonly entry: LibraryEntry;
  /** Behind its title; empty for nothing. */
  readonly more: string;
}
