/**
 * Countries as a shop names them: an ISO 3166-1 alpha-2 code or the English name. The list is the platform's own
 * (Unicode CLDR by way of `Intl`), less what CLDR lists without being a country.
 */
import { spokenLanguage } from "../../../../grammar/src/translate.ts";

/** Reserved, user-assigned and summary codes: ISO 3166-1:2020, clauses on reserved and user-assigned code elements. */
const NO_COUNTRY = /^(?:AA|Q[M-Z]|X[A-Z]|ZZ|EU|EZ|UN)$/u;

let names: Intl.DisplayNames | undefined;

const nameOf = (code: string): string | undefined => {
  names ??= new Intl.DisplayNames("en", { type: "region", fallback: "none" });
  return names.of(code);
};

/** `us`, `UK`, `United States`: the alpha-2 code, or undefined where no country of that code or name is known. */
export function countryCode(text: string): string | undefined {
  const words = text.trim().replace(/\s+/gu, " ");
  if (/^[A-Za-z]{2}$/u.test(words)) return canonical(words.toUpperCase());
  return codeByName().get(plainName(words));
}

/** The name of a code in the language of the process, such as `United States`; the code itself where it has none. */
export function countryName(code: string): string {
  const language = spokenLanguage();
  const name =
    language === "en"
      ? nameOf(code)
      : new Intl.DisplayNames(language, { type: "region", fallback: "none" }).of(code);
  return name ?? code;
}

/** All codes, each once, in alphabetical order. */
export function countryCodes(): readonly string[] {
  return [...new Set(codeByName().values())].sort();
}

/** Today's code for one that was replaced, such as `GB` for `UK`. */
function canonical(code: string): string | undefined {
  if (NO_COUNTRY.test(code) || nameOf(code) === undefined) return undefined;
  return new Intl.Locale(`und-${code}`).region ?? code;
}

/** Names in daily use beside the ones that CLDR gives. */
const OTHER_NAMES: readonly (readonly [string, string])[] = [
  ["usa", "US"],
  ["united states of america", "US"],
  ["great britain", "GB"],
  ["england", "GB"],
  ["scotland", "GB"],
  ["wales", "GB"],
  ["northern ireland", "GB"],
  ["holland", "NL"],
  ["the netherlands", "NL"],
  ["czech republic", "CZ"],
  ["turkey", "TR"],
];

const LETTERS = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ"];

const letterPairs = (): readonly string[] => LETTERS.flatMap((a) => LETTERS.map((b) => a + b));

/** Without accents and marks, `&` as `and`, in lower case. */
const plainName = (name: string): string =>
  name
    .normalize("NFD")
    .replace(/\p{Diacritic}/gu, "")
    .replaceAll("&", " and ")
    .replace(/[^A-Za-z]+/gu, " ")
    .trim()
    .toLowerCase();

let codes: ReadonlyMap<string, string> | undefined;

/** About 260 names; made when the first is asked for, as few files name a country. */
function codeByName(): ReadonlyMap<string, string> {
  codes ??= new Map([
    ...letterPairs().flatMap((pair) => {
      const code = canonical(pair);
      return code === pair ? [[plainName(nameOf(code)!), code] as const] : [];
    }),
    ...OTHER_NAMES,
  ]);
  return codes;
}
