/**
 * Sentences of notes and steps that tell to do something dangerous. One that forbids it, or says how it is done safely, is
 * none of them.
 */
import type { Action } from "../surface/actions.ts";
import { textOf } from "./spoken-words.ts";

const FORBIDS =
  /\b(?:no|not|never|nor|cannot|without|instead|rather|avoid|keep\s+\S+(?:\s+\S+)?\s+(?:off|out|away)|dangerous|forbidden|fires?|warn\w*)\b|n['’]t\b/iu;

/** The sentences of a line's text that have all of these words, and neither forbid nor warn. */
export function tellingSentences(action: Action, ...words: readonly RegExp[]): readonly string[] {
  return (textOf(action) ?? "")
    .split(/[.;!?]\s|[.;!?]$/u)
    .filter((sentence) => words.every((word) => word.test(sentence)) && !FORBIDS.test(sentence));
}
