/** What a search through recipes asks for and what it answers, as plain data. */

import type { Program } from "../../core/model/program.ts";
import type { FileId } from "../../core/place.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";

/** What is looked for, in plain words of the notation (`find/words.ts` reads them); all that is given must hold together. */
export interface FindQuery {
  /** A wood or another ground; `oak` is any oak. */
  readonly wood?: string;
  /** The sheen of the top coat. */
  readonly sheen?: string;
  /** Names of families, or words of one's own; each is put on or worked with. */
  readonly families?: readonly FamilyAsked[];
  /** Parts of names or titles of materials; each is put on or worked with. */
  readonly materials?: readonly string[];
  readonly wear?: string;
  /** Part of the name or title of a shop. */
  readonly shop?: string;
  readonly meantFor?: string;
  /** Texts that are each found in what is written of the job, recipe, piece or surface, or in the title of a material. */
  readonly texts?: readonly string[];
  /** Hands-on hours. */
  readonly hoursAtMost?: number;
  /** Days of 24 h from the first work to the end of the last wait. */
  readonly daysAtMost?: number;
  /** In the currency of the shop. */
  readonly costAtMost?: number;
  readonly kinds?: readonly FoundKind[];
}

/** One of several families will do, where a word of a label may be any of them. */
export type FamilyAsked = readonly string[];

export const FOUND_KINDS = ["recipe", "job", "piece", "surface"] as const;
export type FoundKind = (typeof FOUND_KINDS)[number];

export type Criterion =
  | "wood"
  | "sheen"
  | "family"
  | "material"
  | "wear"
  | "shop"
  | "for"
  | "text"
  | "hours"
  | "days"
  | "cost";

/** What a match has of what was asked for: `wood`, `red oak`. */
export interface Matched {
  readonly by: Criterion;
  /** A number of hours, days or money. */
  readonly what: string | number;
}

export interface Found {
  readonly kind: FoundKind;
  readonly file: FileId;
  /** Of the name, in UTF-16 units from the beginning of the file. */
  readonly offset: number;
  readonly name: string;
  readonly title: string;
  /** The piece of a surface. */
  readonly piece?: string;
  /** In the order of the criteria; of a match in several jobs, what holds in the first. */
  readonly matched: readonly Matched[];
  /** In which it holds, in their order, by their names; of a job itself its own. */
  readonly jobs: readonly string[];
  /** Of a job; absent where nothing is planned or added up. `null` is what the text does not tell. */
  readonly figures?: FoundFigures;
}

export interface FoundFigures {
  /** Hands-on hours. */
  readonly hours: number | null;
  /** Days of 24 h. */
  readonly days: number | null;
  readonly cost: number | null;
  readonly currency: string | null;
  /** When the last work is done, a local ISO date-time. */
  readonly lastWork: string | null;
}

/** What is asked of an analysis. */
export interface SearchedFiles {
  readonly program: Program;
  jobs(file: FileId): readonly JobResult[];
}
