/** Which lines of a list come and go, the others in their order: the shortest way from one list to the other. */
import { diffArrays } from "diff";

export interface LineChange {
  readonly kind: "same" | "added" | "removed";
  readonly text: string;
}

/** The work grows with the lines times the changes; two lists with more are nothing alike to a reader either. */
const MOST_CHANGES = 1000;

/** Removed lines stand before those that take their place. */
export function lineChanges(before: readonly string[], after: readonly string[]): readonly LineChange[] {
  const changes = diffArrays([...before], [...after], { maxEditLength: MOST_CHANGES });
  if (changes === undefined) {
    return [
      ...before.map((text): LineChange => ({ kind: "removed", text })),
      ...after.map((text): LineChange => ({ kind: "added", text })),
    ];
  }
  return changes.flatMap(({ added, removed, value }) =>
    value.map((text): LineChange => ({ kind: added ? "added" : removed ? "removed" : "same", text })),
  );
}

export const isChange = ({ kind }: LineChange): boolean => kind !== "same";
