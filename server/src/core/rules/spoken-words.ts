/**
 * What the free text of a recipe speaks of: notes, and the quoted words of steps. A text is only ever read for a word
 * that leaves no doubt, and one that forbids, warns or postpones says nothing.
 */
import { negates } from "../knowledge/denials.ts";
import type { Phrases } from "../knowledge/phrases.ts";
import { clausesOf, type Word } from "../knowledge/text-words.ts";
import { onceFor } from "../once.ts";
import type { Action } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { rememberedByRun } from "../surface/run-index.ts";

/** Words that put off or take back, beside plain denials. */
const TAKEN_BACK =
  /\b(?:instead|rather|avoid|except|unless|until|till|before|once|after|when|later|only if)\b/iu;

/** The free text of a line, if it has any. */
export function textOf(action: Action): string | undefined {
  if (action.op === "note") return action.text;
  if (action.op === "wait") return action.syntax.what?.value;
  return action.op === "step" ? action.what : undefined;
}

/** The lines of a run that have some; most have none, and the rules that read them look at these alone. */
export const spokenLines = onceFor((run: SurfaceRun): readonly Action[] =>
  run.moments.flatMap(({ action }) => (textOf(action) ? action : [])),
);

/** The words of each clause of a line's text. */
export const wordsOfLine = (action: Action): readonly (readonly Word[])[] => clausesOf(textOf(action) ?? "");

/** The clause of a line's text that tells to do what the patterns say, or undefined. */
export const saidOnLine = (action: Action, phrases: Phrases): string | undefined =>
  textOf(action) === undefined ? undefined : phrases.find(wordsOfLine(action));

/** Parts of their own, on which masking tape lies beside the coat and not on it. */
const OTHER_PART =
  /\b(?:brass|hardware|hinges?|locks?|plates?|handles?|knobs?|pulls?|glass|mirrors?|floor|leather|cloth|upholstery|cushions?|castors?|casters?|labels?|metal|screws?|escutcheons?|runners?|holes?)\b/iu;

/** Whether what is masked is plainly no part of the surface itself. */
export const isOtherPart = (what: string): boolean => OTHER_PART.test(what);

/** Whether a text plainly says to do or use something: it names it and does not forbid, warn or postpone. */
export const plainlySays = (text: string, words: RegExp): boolean =>
  words.test(text) && !negates(text) && !TAKEN_BACK.test(text);

/** Whether any line above this one speaks of something at all, in whatever sense. */
export const isSpokenOf = (run: SurfaceRun, index: number, words: RegExp): boolean =>
  firstSpeaking(run, words) < index;

const firstSpeaking = rememberedByRun((run, words: RegExp): number => {
  const first = spokenLines(run).find((action) => words.test(textOf(action)!));
  return first?.index ?? run.moments.length;
});
