/**
 * Ids of rules that are gone. Comments in recipes and settings of projects still name them, so an id that once meant
 * something never means something else: a rule that is taken out leaves its id here, and a new one takes another.
 */
export const RETIRED_RULES: readonly string[] = [];
