/** Two rows of changes, the second to what the first leaves, as one row of changes to the text itself. */
import type { Span } from "./tree.ts";

/** A piece of the text, and what it becomes. */
export interface TextChange {
  readonly span: Span;
  readonly text: string;
}

/**
 * The changes that do to a text what `first` does to it and then `second` to what that leaves. Both are in order and apart, and
 * so is the result; changes that touch in between become one.
 */
export function composeChanges(
  text: string,
  first: readonly TextChange[],
  second: readonly TextChange[],
): readonly TextChange[] {
  const images = imagesOf(first);
  const changes: TextChange[] = [];
  let [ofFirst, ofSecond, grown] = [0, 0, 0];
  while (ofFirst < images.length || ofSecond < second.length) {
    const from = Math.min(images[ofFirst]?.start ?? Infinity, second[ofSecond]?.span.start ?? Infinity);
    const grownBefore = grown;
    const [mine, theirs] = [ofFirst, ofSecond];
    let end = from;
    for (;;) {
      const image = images[ofFirst];
      const change = second[ofSecond];
      if (image && image.start <= end) {
        end = Math.max(end, image.end);
        grown += image.end - image.start - (image.change.span.end - image.change.span.start);
        ofFirst += 1;
      } else if (change && change.span.start <= end) {
        end = Math.max(end, change.span.end);
        ofSecond += 1;
      } else {
        break;
      }
    }
    const span = { start: from - grownBefore, end: end - grown };
    const before = text.slice(span.start, span.end);
    const inFirst = images.slice(mine, ofFirst).map(({ change }) => movedBy(change, -span.start));
    const inSecond = second.slice(theirs, ofSecond).map((change) => movedBy(change, -from));
    const put = applyChanges(applyChanges(before, inFirst), inSecond);
    if (put !== before) changes.push({ span, text: put });
  }
  return changes;
}

/** Where the text that a change puts in stands afterwards. */
interface Image extends Span {
  readonly change: TextChange;
}

function imagesOf(changes: readonly TextChange[]): readonly Image[] {
  let grown = 0;
  return changes.map((change) => {
    const start = change.span.start + grown;
    grown += change.text.length - (change.span.end - change.span.start);
    return { start, end: start + change.text.length, change };
  });
}

/** A text after changes to it, which are in order and apart. */
export function applyChanges(text: string, changes: readonly TextChange[]): string {
  let end = 0;
  let result = "";
  for (const { span, text: put } of changes) {
    result += text.slice(end, span.start) + put;
    end = span.end;
  }
  return result + text.slice(end);
}

/** The same change to a text that begins so much later. */
export const movedBy = ({ span, text }: TextChange, by: number): TextChange => ({
  span: { start: span.start + by, end: span.end + by },
  text,
});
