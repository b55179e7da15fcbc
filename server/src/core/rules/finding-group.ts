/**
 * What is to be known of findings that are told together.
 */
import type { Finding, FindingText, Fix } from "../findings.ts";

export interface FindingGroup {
  /** What its findings are told together for: one recipe, or all the lines that one job leads to. */
  readonly across: "recipe" | "job";
  /** What is said instead of all parts; where they stand is added. */
  readonly text: (parts: readonly Finding[]) => Omit<FindingText, "where">;
  /** What is said at the place of parts on one line, where the finding stands on another. */
  readonly elsewhere: (parts: readonly Finding[]) => string;
  /** What removes all parts at once. */
  readonly fixes: (parts: readonly Finding[]) => readonly Fix[];
}
