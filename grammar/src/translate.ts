/**
 * The language that texts for people are told in: English as it stands in the source, or another by a table of templates.
 *
 * A text is written as t`${n} coats`; its template, `{0} coats`, is what a table is asked for. So a text costs nothing more to
 * write, is whole in one place, and a translator may turn the order of its parts. Words of the notation are never translated.
 *
 * Which language is spoken is a fact of the process, like its time zone: told once, when a client says it, before the first
 * text is made. It stands on the global object, since one process runs several bundles that each have a copy of this module.
 */

/** The texts of a language by their English templates: `{0}`, `{1}` stand for the parts. */
export interface Language {
  /** As in BCP 47, `de`. */
  readonly tag: string;
  /** The template in this language; `undefined` where it has none, which leaves the text English. */
  readonly template: (english: string) => string | undefined;
  /** The same by the short name of a template, see `textKey`. */
  readonly keyed?: (key: string) => string | undefined;
}

const PLACE = Symbol.for("finishwright.language");
const process = globalThis as { [PLACE]?: Language | undefined };

/** From now on texts are told in this language; `undefined` is English. */
export function speak(language: Language | undefined): void {
  process[PLACE] = language;
}

/** The tag of the language that texts are told in. */
export const spokenLanguage = (): string => process[PLACE]?.tag ?? "en";

/** What is made of texts in English whatever language is spoken, such as a name that has to stay the same in all of them. */
export function inEnglish<T>(make: () => T): T {
  const spoken = process[PLACE];
  process[PLACE] = undefined;
  try {
    return make();
  } finally {
    process[PLACE] = spoken;
  }
}

/** A text in the language of the process: a tag of a template, whose parts are texts, names and figures as they are shown. */
export function t(strings: TemplateStringsArray, ...parts: readonly (string | number)[]): string {
  const language = process[PLACE];
  const said = language?.template(templateOf(strings));
  return said === undefined ? joined(strings, parts) : filled(said, parts);
}

/** The same for a text that stands in a table: a template without parts. */
export const translated = (text: string): string => process[PLACE]?.template(text) ?? text;

/** A template of the language by its short name, to be handed on to where the language is spoken without its whole table. */
export const keyedText = (key: string): string | undefined => process[PLACE]?.keyed?.(key);

/** The first letter small, as within a sentence; German has capitals that stay. Texts in other languages are left alone. */
export const lowerFirst = (text: string): string =>
  process[PLACE] === undefined ? text.charAt(0).toLowerCase() + text.slice(1) : text;

/**
 * A short name of a template, under which a packed table keeps it, so that the table need not hold both languages: the lower
 * 30 bits of FNV-1a of 32 bits over the UTF-16 units, as five signs of six bits each, the lowest first. That no two templates
 * share one is seen to when the table is packed.
 * Source: Fowler, Noll and Vo, the FNV hash, its offset and prime from memory; the tests hold both against published values.
 */
export function textKey(template: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < template.length; at += 1)
    hash = Math.imul(hash ^ template.charCodeAt(at), 0x01000193);
  let key = "";
  for (let at = 0; at < KEY_LENGTH; at += 1) key += SIGNS[(hash >>> (6 * at)) & 63]!;
  return key;
}

export const KEY_LENGTH = 5;
const SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/**
 * A language by what a table has for the short name of a template. What was asked for is remembered, but not more than all
 * templates there are: texts that come from elsewhere must not pile up.
 */
export function languageByKeys(tag: string, keyed: (key: string) => string | undefined): Language {
  const known = new Map<string, string | undefined>();
  return {
    tag,
    keyed,
    template(english) {
      if (!known.has(english)) {
        if (known.size === MOST_KNOWN) known.clear();
        known.set(english, keyed(textKey(english)));
      }
      return known.get(english);
    },
  };
}

const MOST_KNOWN = 10_000;

const joined = (strings: readonly string[], parts: readonly (string | number)[]): string => {
  let text = strings[0]!;
  for (let at = 0; at < parts.length; at += 1) text += parts[at]! + strings[at + 1]!;
  return text;
};

/** The template of the strings of a template: `{0} of {1}`. */
const templateOf = (strings: readonly string[]): string =>
  strings.reduce((template, string, at) => `${template}{${at - 1}}${string}`);

/** A template with its parts in their places. What the parts hold is not looked through: a name may look like a place. */
const filled = (template: string, parts: readonly (string | number)[]): string =>
  template.replaceAll(/\{(\d+)\}/gu, (place, index: string) => String(parts[Number(index)] ?? place));
