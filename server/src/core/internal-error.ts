/**
 * What stands in the place of findings that a fault in this program has cost.
 *
 * Silence would read as "nothing wrong here", so a part that fails is named where it failed. Such a finding cannot be
 * allowed by a comment nor switched off.
 */
import { lowerFirst, t } from "../../../grammar/src/translate.ts";
import { type Finding, textOf } from "./findings.ts";
import { andList } from "./model/suggest.ts";
import { type FileId, type Place, placeKey } from "./place.ts";

export const INTERNAL_ERROR = "internal-error";

/** One part that threw. */
export interface Fault {
  /** What failed, as it begins a sentence: "The rule `coat-over-wax`". */
  readonly part: string;
  /** Where its findings would have stood; the start of the file where no declaration is to be named. */
  readonly place: Place;
  readonly error: unknown;
}

/** Told of every fault with all that helps whoever mends it; must not throw. */
export type FaultListener = (fault: Fault) => void;

/** The start of a file, for what belongs to no declaration. */
export const fileStart = (file: FileId): Place => ({ file, declaration: "", span: { start: 0, end: 0 } });

/** Does a part; where it throws, adds to `faults` and answers with `fallback`. */
export function attempt<T>(
  faults: Fault[],
  { part, place }: Pick<Fault, "part" | "place">,
  work: () => T,
  fallback: T,
): T {
  try {
    return work();
  } catch (error) {
    faults.push({ part, place, error });
    return fallback;
  }
}

/** One finding for every place at which something failed, naming each failed part once. */
export function internalErrors(faults: readonly Fault[]): readonly Finding[] {
  const places = new Map<string, Fault[]>();
  for (const fault of faults) {
    const key = placeKey(fault.place);
    const known = places.get(key);
    if (known) known.push(fault);
    else places.set(key, [fault]);
  }
  return [...places.values()].map((group): Finding => {
    const parts = [...new Set(group.map(({ part }) => part))];
    return {
      rule: INTERNAL_ERROR,
      severity: "error",
      place: group[0]!.place,
      ...textOf(faultMessage(parts, group[0]!.error)),
      related: [],
      fixes: [],
    };
  });
}

/** The lines of an `internal-error`: headline, why and remedy. */
export function faultMessage(parts: readonly string[], error: unknown): string {
  const named = parts.map((part, index) => (index === 0 ? part : lowerFirst(part)));
  return [
    t`${andList(named)} failed`,
    t`This is a bug in Finishwright, not in your recipe: what should have been checked here was not, so "nothing found" means nothing here. (${faultText(error)})`,
    t`Check this part by hand, and report the bug with the recipe.`,
  ].join("\n");
}

/** A fault in a few words, without line ends. */
export function faultText(error: unknown): string {
  return wordsOf(error).slice(0, MOST_CHARACTERS).replaceAll(/\s/gu, " ");
}

/** Anything can be thrown, even what cannot be made a text. */
function wordsOf(error: unknown): string {
  try {
    return error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  } catch {
    return t`no message`;
  }
}

/** Enough to recognise a fault by. */
const MOST_CHARACTERS = 200;
