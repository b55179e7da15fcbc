/**
 * Families for a word that is none: the one that was mistyped, or those of its kind. Nearness
 * of spelling alone never crosses from one kind to another: `shellac flakes` is no `shellac primer`.
 */
import { editDistance } from "../../../../grammar/src/closest-word.ts";
import { FAMILIES } from "./families.ts";
import { FAMILY_NAMES, type FamilyName } from "./family-names.ts";

export interface FamiliesNear {
  /** The one that was mistyped. */
  readonly near?: FamilyName;
  /** Five at most of its kind. */
  readonly kin: readonly FamilyName[];
}

const MOST_KIN = 5;
/** A text longer than any name is not compared. */
const LONGEST = 60;

/** What comes near to a word that is no family. */
export function familiesNear(text: string): FamiliesNear {
  const written = wordsIn(text);
  if (text.length > LONGEST) return { kin: [] };
  const near = FAMILY_NAMES.find((name) => isMistyped(written, wordsIn(name)));
  return { ...(near ? { near } : {}), kin: kinOf(written) };
}

const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");

/** Every word is the other's but for a letter, or two in a long one. */
const isMistyped = (written: readonly string[], name: readonly string[]): boolean =>
  written.length === name.length &&
  written.every((word, idx) => editDistance(word, name[idx]!) <= (name[idx]!.length > 6 ? 2 : 1)) &&
  written.some((word, idx) => word.length > 3 || word === name[idx]);

/** Words of labels that say what kind of thing it is, and the group that it belongs to. */
const KINDS: readonly (readonly [RegExp, (name: FamilyName) => boolean])[] = [
  [/primer|undercoat/u, (name) => name.endsWith("primer")],
  [/paint|enamel|emulsion/u, (name) => name.endsWith("paint")],
  [/stain|dye|tint/u, (name) => /stain|dye/u.test(name)],
  [/fill|putty|stopp/u, (name) => name.endsWith("filler")],
  [/lacquer/u, (name) => /lacquer|conversion/u.test(name)],
  [/shellac|polish/u, (name) => name.includes("shellac")],
  [/poly|pu\b|urethane/u, (name) => /polyurethane|wiping/u.test(name)],
  [/varnish|glaze|clear|sealer|coat/u, (name) => FAMILIES.get(name)?.role === "clear"],
  [/oil/u, (name) => /\boil\b/u.test(name) && FAMILIES.get(name)?.role !== "stain"],
  [/wax/u, (name) => /wax/u.test(name)],
  [/spirit|solvent|thinner|meths|turp/u, (name) => FAMILIES.get(name)?.role === "solvent"],
];

function kinOf(written: readonly string[]): readonly FamilyName[] {
  const text = written.join(" ");
  const kind = KINDS.find(([pattern]) => pattern.test(text));
  return kind ? FAMILY_NAMES.filter(kind[1]).slice(0, MOST_KIN) : [];
}
