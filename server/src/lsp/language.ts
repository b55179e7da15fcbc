/**
 * The language of the client: what it says in `initialize`, and the table of texts that came with the server or from the client.
 *
 * A table has the keys of its texts (`textKey`) in one text, as a zip then takes least, and the texts in the same order. What is
 * not in it stays English; so does everything for a language without a table.
 */
import * as z from "zod/mini";
import { KEY_LENGTH, type Language, languageByKeys } from "../../../grammar/src/translate.ts";

/** A packed table as it is read from a file or sent by a client. */
export const TEXTS = z.object({ keys: z.string(), texts: z.array(z.string()) });

/** `de` of `de-AT`; `undefined` where nothing or no language is said. */
export const tagOf = (locale: unknown): string | undefined =>
  typeof locale === "string" ? /^[a-z]{2,3}(?![a-z])/u.exec(locale.toLowerCase())?.[0] : undefined;

/** The language of a table; `undefined` for what is none. */
export function languageOf(tag: string, table: unknown): Language | undefined {
  const packed = TEXTS.safeParse(table).data;
  if (packed === undefined) return undefined;
  const texts = new Map(
    packed.texts.map((text, at) => [packed.keys.slice(KEY_LENGTH * at, KEY_LENGTH * (at + 1)), text]),
  );
  return languageByKeys(tag, (key) => texts.get(key));
}
