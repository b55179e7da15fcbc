/** What is told of a calculation, see `core/computations.ts`. */
export interface Computation {
  readonly topic: Topic;
  readonly name: string;
  /** Where a reader meets it. */
  readonly seen: string;
  readonly formula: string;
  /** Published source, `by definition, no outside source`, or `common practice, no source`. */
  readonly source: string;
  /** Under `server/src/core/`. */
  readonly file: string;
  /** Exported there. */
  readonly functions: readonly string[];
  /** Under `tests/`. */
  readonly tests: readonly string[];
}

export const TOPICS = [
  "Areas",
  "Amounts and cans",
  "Film",
  "Air and waits",
  "Hands and paper",
  "Schedule",
  "Money",
  "Fumes",
  "Materials and wood",
  "Units and numbers",
] as const;
export type Topic = (typeof TOPICS)[number];
