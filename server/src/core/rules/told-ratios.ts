/**
 * Ratios of two parts in free text: "ten parts A to one part B", "mix 4:1", "2 to 1 by volume". Other ratios and ranges
 * ("thin 1:10", "4 to 6 hours") are none.
 */

export interface ToldRatio {
  readonly a: number;
  readonly b: number;
  /** Undefined where the words do not say. */
  readonly by: "volume" | "weight" | undefined;
}

const WORDS = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];
const BEYOND_TEN: Readonly<Record<string, number>> = { fifteen: 15, twenty: 20, hundred: 100 };

/** Up to two words may stand behind "parts", such as "parts of resin". */
const RATIO =
  /\b(\d{1,3}(?:\.\d{1,2})?|one|two|three|four|five|six|seven|eight|nine|ten|fifteen|twenty|hundred)\s?(?:parts?(?:\s[\w-]{1,20}){0,2}\s?)?(?::|to)\s?(\d{1,3}(?:\.\d{1,2})?|one|two|three|four|five|six|seven|eight|nine|ten|fifteen|twenty|hundred)\b/giu;
/** What makes two numbers a range of something else. */
const UNIT_BEHIND =
  /^\s?(?:%|°|h|hrs?|hours?|min|minutes?|days?|weeks?|months?|coats?|times|mm|cm|m2?|l|ml|g|kg|c|f|grit)(?![a-z])/iu;
/** A sentence that speaks of two parts. */
const OF_PARTS = /\b(?:parts?|mix|mixed|mixing|ratio|hardener|catalyst|activator|component|two-part)\b/iu;
const OF_THINNING =
  /\b(?:thin|thins|thinned|thinning|dilute|diluted|reduce|reduced|water|flakes|alcohol)\b/iu;

/** All ratios of two parts that a text names, in its order. */
export function toldRatios(text: string): readonly ToldRatio[] {
  return text.split(/[.;\n]\s|,\s(?:or|and)\s/u).flatMap((sentence) => {
    if (!OF_PARTS.test(sentence) || OF_THINNING.test(sentence)) return [];
    const by = /\bby\s(?:volume|vol)\b/iu.test(sentence)
      ? "volume"
      : /\bby\sweight\b/iu.test(sentence)
        ? "weight"
        : undefined;
    return [...sentence.matchAll(RATIO)]
      .filter(({ index, 0: { length } }) => !UNIT_BEHIND.test(sentence.slice(index + length)))
      .map(([, a, b]) => ({ a: numberOf(a!), b: numberOf(b!), by }));
  });
}

function numberOf(said: string): number {
  const word = said.toLowerCase();
  const index = WORDS.indexOf(word);
  return index >= 0 ? index + 1 : (BEYOND_TEN[word] ?? Number(said));
}

/** To a hundredth; whichever part is named first. */
export const sameRatio = (one: Ratio, other: Ratio): boolean =>
  isNear(one.a * other.b, one.b * other.a) || isNear(one.a * other.a, one.b * other.b);

type Ratio = Pick<ToldRatio, "a" | "b">;

const isNear = (x: number, y: number): boolean => Math.abs(x - y) <= 0.01 * Math.max(x, y);
