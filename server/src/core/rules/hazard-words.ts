/**
 * Sentences of notes and steps that tell to do something dangerous. One that forbids it, or says how it is done safely, is
 * none of them.
 */
import { negates } from "../knowledge/denials.ts";
import type { Action } from "../surface/actions.ts";
import { textOf } from "./spoken-words.ts";

/** Beside plain denials: what is kept away or warned of. */
const WARNS =
  /\b(?:instead|rather|avoid|keep\s+\S+(?:\s+\S+)?\s+(?:off|out|away)|dangerous|forbidden|fires?|warn\w*)\b/iu;

const forbids = (sentence: string): boolean => negates(sentence) || WARNS.test(sentence);

/** The sentences of a line's text that have all of these words, and neither forbid nor warn. */
export function tellingSentences(action: Action, ...words: readonly RegExp[]): readonly string[] {
  return (textOf(action) ?? "")
    .split(/[.;!?]\s|[.;!?]$/u)
    .filter((sentence) => words.every((word) => word.test(sentence)) && !forbids(sentence));
}
