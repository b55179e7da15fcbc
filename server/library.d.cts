/**
 * Finishwright as a library: findings, totals and plans of recipe texts, as plain data.
 *
 * Nothing is read but the texts that you give, and nothing is written. The shapes are those of the command line's JSON
 * (server/docs/json.md): fields may be added, and those that are there keep their names and meanings. Areas are in m2,
 * amounts in L, films in um, fumes in g, times in hours, dates and times local ISO 8601 without an offset, money in the
 * currency of the job's shop. What the texts do not state enough for is null.
 *
 * No finding and no figure certifies a finish, a room or a plan as safe: labels, safety data sheets and local rules come
 * first.
 */

/**
 * One text, or several by their names. `use "stock.finish"` means the text with that name, seen from the folder of the one
 * that says it; names have `/` between folders.
 */
export type Recipes = string | Readonly<Record<string, string>>;

export interface Options {
  /**
   * A day such as `2027-03-10`, or `2027-03-10T14:00`: what is left of a job is planned from then on. Without it, from the
   * last record on; the clock of the machine is never asked. Anything else is a `RangeError`.
   */
  readonly today?: string;
}

export type Severity = "error" | "warning" | "information" | "hint";

export interface Finding {
  /** The name of the text; `recipe.finish` for a text without one. */
  readonly file: string;
  /** From 1, as the columns, which count UTF-16 units; the end is behind the last character. */
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  /** The id of the rule; its page is `server/docs/rules/<rule>.md`. */
  readonly rule: string;
  readonly severity: Severity;
  /** The gist in one line, why it matters, and what to do. */
  readonly headline: string;
  readonly why: string;
  readonly remedy: string;
  /** The job and its surfaces. */
  readonly where: string | null;
  /** All of these, a line each. */
  readonly message: string;
  /** The findings that this one stands for, itself among them. */
  readonly parts: readonly {
    readonly rule: string;
    readonly severity: Severity;
    readonly line: number;
    readonly column: number;
    readonly headline: string;
  }[];
}

export interface JobTotals {
  readonly file: string;
  readonly name: string;
  readonly area_m2: number | null;
  readonly surfaces: readonly {
    readonly name: string;
    readonly area_m2: number | null;
    readonly dry_film_um: number | null;
  }[];
  readonly materials: readonly {
    readonly name: string;
    readonly litres: number | null;
    readonly containers: readonly {
      readonly litres: number;
      readonly count: number;
      readonly price: number;
    }[];
    readonly cost: number | null;
  }[];
  readonly hands_on_h: number | null;
  readonly elapsed_h: number | null;
  readonly finish: string | null;
  readonly last_work: string | null;
  readonly light_use: string | null;
  readonly full_use: string | null;
  readonly in_service: string | null;
  readonly voc_g: number | null;
  readonly material_cost: number | null;
  readonly labour_cost: number | null;
  readonly total_cost: number | null;
  readonly saving: number | null;
}

/** When something is done; `start` and `end` are null in a job without a shop or a start. */
export interface PlannedItem {
  readonly surface: string;
  /** From 1. */
  readonly piece: number;
  readonly kind: "step" | "layer" | "wait";
  readonly what: string;
  readonly start: string | null;
  readonly end: string | null;
  /** Hours after the start of the job. */
  readonly start_h: number;
  readonly end_h: number;
  /** How far it can slip without delaying the end. */
  readonly slack_h: number;
  readonly critical: boolean;
  /** By the record of the job, and then at the times that it has. */
  readonly done: boolean;
}

export interface JobPlan {
  readonly file: string;
  readonly name: string;
  /** `impossible` says why in `conflicts`. */
  readonly status: "planned" | "impossible";
  readonly start: string | null;
  readonly finish: string | null;
  readonly in_service: string | null;
  readonly elapsed_h: number | null;
  readonly last_work: string | null;
  readonly light_use: string | null;
  readonly full_use: string | null;
  /** In the order of time. */
  readonly items: readonly PlannedItem[];
  readonly conflicts: readonly string[];
}

/** The findings of all texts, in their order, at the levels that rules have of themselves. Never throws for any text. */
export function check(recipes: Recipes, options?: Options): readonly Finding[];

/** What every job takes and costs, in the order of the texts and of their lines. */
export function totals(recipes: Recipes, options?: Options): readonly JobTotals[];

/** The plan of every job; jobs that share a shop are planned together. */
export function plan(recipes: Recipes, options?: Options): readonly JobPlan[];

/** A text in the standard layout, with the plain form of everything. What cannot be read stays as it is. */
export function format(text: string): string;
