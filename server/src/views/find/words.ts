/** Words of a search as the notation reads them: every spelling of a wood, a family or a sheen is the plain word for it. */
import { t } from "../../../../grammar/src/translate.ts";
import { keyOf, WORD_SPELLINGS } from "../../../../grammar/src/word-spellings.ts";
import { FAMILIES } from "../../core/knowledge/families.ts";
import { familiesNear } from "../../core/knowledge/families-near.ts";
import { familiesOpen, familySaid } from "../../core/knowledge/open-families.ts";
import { substrateByName, woodByName, woodNames } from "../../core/knowledge/woods.ts";
import { MEANT_FOR, SHEENS, sheenOfGloss, WEAR, wordList } from "../../core/knowledge/words.ts";
import { closest, orList } from "../../core/model/suggest.ts";
import type { FamilyAsked } from "./model.ts";

/** The plain word, or why there is none, in one or two sentences. */
export type ReadWord<T> = { readonly word: T } | { readonly refusal: string };

const plainOf = (field: string, text: string): string => {
  const written = text.trim();
  return WORD_SPELLINGS.get(field)?.get(keyOf(written)) ?? written;
};

/** A wood that is not known stays as it is written: a recipe may have it. */
export function woodAsked(text: string): ReadWord<string> {
  const plain = plainOf("wood", text);
  if (plain === "") return { refusal: t`A wood has a name, such as \`oak\`.` };
  if (plain === "unknown")
    return { refusal: t`\`${text}\` may be several woods. Name one, such as \`oak\`.` };
  return { word: woodKnown(text) ?? plain };
}

/** A wood or another ground that the notation has a name for. */
export function woodKnown(text: string): string | undefined {
  const plain = plainOf("wood", text);
  return woodByName(plain)?.name ?? substrateByName(plain)?.name;
}

/** The wood that a word that is none was probably meant for. */
export const woodNear = (text: string): string | undefined =>
  text === "" || woodKnown(text) !== undefined ? undefined : closest(text, woodNames());

/** A word of a label that may be several families asks for any of them; `clear` and other groups for all of the group. */
export function familyAsked(text: string): ReadWord<FamilyAsked> {
  const plain = plainOf("family", text);
  if (plain === "") return { refusal: t`A family has a name, such as \`waterborne polyurethane\`.` };
  const known = familyKnown(text);
  if (known) return { word: known };
  const { near } = familiesNear(plain);
  return near ? { refusal: t`There is no family \`${text}\`. Did you mean \`${near}\`?` } : { word: [plain] };
}

/** What the notation knows a word of a label for: a group, a family, or those that it may be. */
export function familyKnown(text: string): FamilyAsked | undefined {
  const plain = plainOf("family", text);
  const group = [...FAMILIES.values()].filter((row) => row.group === plain.toLowerCase());
  if (group.length > 0) return group.map(({ name }) => name);
  const said = familySaid(plain);
  return said ? [said.name] : familiesOpen(plain);
}

/** Also by gloss units: `30`. */
export function sheenAsked(text: string): ReadWord<string> {
  const units = /^\d{1,3}$/u.test(text.trim()) ? Number(text) : undefined;
  if (units !== undefined && units <= 100) return { word: sheenOfGloss(units) };
  return oneOf("sheen", plainOf("sheen", text), wordList(SHEENS), text);
}

export const wearAsked = (text: string): ReadWord<string> =>
  oneOf(t`degree of wear`, plainOf("wear", text), wordList(WEAR), text);

export const meantForAsked = (text: string): ReadWord<string> =>
  oneOf(t`kind of user`, plainOf("meant_for", text), wordList(MEANT_FOR), text);

function oneOf<W extends string>(
  what: string,
  plain: string,
  words: readonly W[],
  written: string,
): ReadWord<W> {
  const word = words.find((each) => keyOf(each) === keyOf(plain));
  return word === undefined
    ? { refusal: t`\`${written}\` is not a ${what}. Write ${orList(words.map((each) => `\`${each}\``))}.` }
    : { word };
}
