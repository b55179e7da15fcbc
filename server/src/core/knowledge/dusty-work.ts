/**
 * Which steps throw dust that settles on whatever is wet in the room: dry work with grit or a blade, and dust that is
 * blown off. Common practice, no source. What is wet, or caught at the tool, does not fly.
 */

/** A step, as far as its dust goes. */
export interface DustyStep {
  readonly verb: string;
  readonly wet: boolean;
  /** How it is done, in the recipe's own words. */
  readonly what?: string;
  /** The liquid that it is done with, which binds it. */
  readonly use?: unknown;
}

export function makesDust({ verb, wet, what = "", use }: DustyStep): boolean {
  if (wet || use !== undefined || CAUGHT.test(what)) return false;
  return DRY_WORK.has(verb) || (verb === "dust" && /\bblow/iu.test(what));
}

const DRY_WORK: ReadonlySet<string> = new Set(["sand", "scuff", "scrape", "strip", "distress"]);

const CAUGHT = /\b(?:vacuum|extract|shroud|mist|damp|moist|wet)/iu;
