/** How many findings there are of each level, in words. */

/** From the gravest, as VS Code numbers them from 0. */
const LEVELS: readonly (readonly [one: string, several: string])[] = [
  ["error", "errors"],
  ["warning", "warnings"],
  ["information", "information"],
  ["hint", "hints"],
];

/** Instead of a count. */
const NONE = "No findings";

/** Said beside the count. */
export const NOT_SAFE = "No findings does not mean safe";

/** `2 errors, 1 hint`, of the levels of all findings; `say` tells a word in another language. */
export const findingsCount = (
  levels: readonly number[],
  say: (text: string) => string = (text) => text,
): string => {
  const counts = LEVELS.flatMap(([one, several], level) => {
    const count = levels.filter((each) => each === level).length;
    return count === 0 ? [] : [`${count} ${say(count === 1 ? one : several)}`];
  });
  return counts.length === 0 ? say(NONE) : counts.join(", ");
};
