/**
 * What rules say in another language: the same rules at the same places with the same changes to the recipe, byte for byte, and
 * no words that are left English. The language is made up: every letter of a text is another, and names, words of the notation
 * and figures stay.
 */
import { describe, expect, test } from "vitest";
import { type Language, speak } from "../../grammar/src/translate.ts";
import { PARAMETER_TYPES, VERBS, WAIT_STAGES } from "../../grammar/src/vocabulary.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { analyse } from "../harness/check-text.ts";
import { sampleAnalyst, sampleNames } from "../harness/samples.ts";

/** Letters as wide as an ideograph, which have small and capital ones as ours do, outside of backticks and `{0}`. */
const wide = (english: string): string =>
  english.replaceAll(/`[^`]*`|\{\d+\}|[A-Za-z]/gu, (part) =>
    part.length > 1 ? part : String.fromCharCode(part.charCodeAt(0) + 0xfee0),
  );

/** `D MMM` says where the day and the month of a date stand. */
const MADE_UP: Language = {
  tag: "xx",
  template: (english) => (english === "D MMM" ? undefined : wide(english)),
};

const examples = RULES.flatMap(({ id, group, failing }) =>
  failing.map(({ title, text }) => ({ id, group, title, text })),
);

/** Each time anew, as `findingsOf` of the harness keeps what it found. */
const findingsOf = (text: string) => analyse({ "test.finish": text }).findings("test.finish");
type Findings = ReturnType<typeof findingsOf>;

/** What does not depend on the language. */
const meant = (findings: Findings) =>
  findings.map(({ rule, severity, span, related, fixes }) => ({
    rule,
    severity,
    span,
    related: related.map(({ message: _, ...place }) => place),
    fixes: fixes.map(({ kind, edits }) => ({ kind, edits })),
  }));

/** Words of a text that are no name, word of the notation or figure, and so are to be told in the language. */
const englishIn = (text: string): readonly string[] =>
  text
    .replaceAll(/`[^`]*`|"[^"]*"|“[^”]*”/gu, "")
    .match(/[A-Za-z]{3,}/gu)
    ?.filter((word) => !UNITS.has(word)) ?? [];

/** `min` is a unit as `h` and `mL` are, the same in every language. */
const UNITS: ReadonlySet<string> = new Set(["min"]);

/** Not told in the language: what people wrote themselves, words that are typed, and what the reading of files says. */
const AS_IT_IS: Readonly<Record<string, readonly string[]>> = {
  "child-or-food-surface": ["film preservative"],
  "incompatible-chemicals": ["caustic soda", "household bleach", "ammonia"],
  "missing-argument": PARAMETER_TYPES,
  "unknown-word": [...Object.keys(VERBS), ...WAIT_STAGES],
  "use-not-found": ["there is no such file"],
  "wrong-argument": PARAMETER_TYPES,
};

const withoutThose = (rule: string, text: string): string =>
  (AS_IT_IS[rule] ?? []).reduce((rest, words) => rest.replaceAll(words, ""), text);

/** What is worked out while the made-up language is spoken. */
function toldIn<T>(work: () => T): T {
  speak(MADE_UP);
  try {
    return work();
  } finally {
    speak(undefined);
  }
}

/** What is left English in findings. */
const leftEnglish = (findings: Findings): readonly string[] =>
  findings
    .flatMap(({ rule, message, related, fixes }) =>
      [message, ...related.map((place) => place.message), ...fixes.map(({ title }) => title)].map((each) =>
        withoutThose(rule, each),
      ),
    )
    .filter((each) => englishIn(each).length > 0);

describe("in a made-up language", () => {
  test.each(examples)("$group/$id: $title", ({ text }) => {
    const findings = toldIn(() => findingsOf(text));
    expect(meant(findings)).toEqual(meant(findingsOf(text)));
    expect(leftEnglish(findings)).toEqual([]);
  });

  // Of many jobs, so that findings are told together, or whole once and short elsewhere.
  test.each(sampleNames)(
    "the sample %s",
    (name) => {
      const findings = toldIn(() => sampleAnalyst().analysis().findings(name));
      expect(meant(findings)).toEqual(meant(sampleAnalyst().analysis().findings(name)));
      expect(leftEnglish(findings)).toEqual([]);
    },
    30_000,
  );
});
