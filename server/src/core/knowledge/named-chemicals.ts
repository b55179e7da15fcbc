/**
 * Chemicals that a material's own words name: its title, its documentation or its name. The notation has no field for
 * them, and a label that warns of one is copied into these places. Words such as "without" or "-free" say the opposite,
 * and are heeded (`chemical-words.ts`). Silicone is none of the dangerous ones and has its own reading below: tins that
 * hold none speak of it, removers above all.
 */
import type { Material } from "../model/model.ts";
import type { Hazard } from "./chemical-schema.ts";
import { chemicalsIn, type Mention } from "./chemical-words.ts";
import { type ChemicalName, chemical, isA } from "./chemicals.ts";

export type Chemical = ChemicalName | "silicone";

type Told = Pick<Material, "name" | "title" | "docs">;

/** Whether the material's title, documentation or name says that it holds this. */
export function namesChemical(material: Told, wanted: Chemical): boolean {
  if (wanted === "silicone") return textsOf(material).some(saysSilicone);
  return mentionsOf(material).some((it) => it.chemical === wanted && it.stance === "named");
}

/** All that the material's title, documentation or name says that it holds, and that findings go by. */
export function chemicalsNamed(material: Told): readonly Chemical[] {
  const named = mentionsOf(material).filter(
    ({ chemical: name, stance }) => stance === "named" && !isA(chemical(name), "bleach of any kind"),
  );
  const names = [...new Set(named.map((it) => it.chemical))];
  return namesChemical(material, "silicone") ? [...names, "silicone"] : names;
}

/** The first thing of these hazards that the material says that it holds. */
export function holdsHazard(material: Told, ...hazards: readonly Hazard[]): Mention | undefined {
  return mentionsOf(material).find(
    ({ chemical: name, stance }) => stance === "named" && isA(chemical(name), ...hazards),
  );
}

/** Whether the material says in so many words that it does not hold this. */
export const deniesChemical = (material: Told, wanted: ChemicalName): boolean =>
  mentionsOf(material).some((it) => it.chemical === wanted && it.stance === "denied") &&
  !namesChemical(material, wanted);

/** All that the words of a material mention, in whatever sense. */
export function mentionsOf(material: Told): readonly Mention[] {
  const known = remembered.get(material);
  if (known) return known;
  const mentions = textsOf(material).flatMap((text) => chemicalsIn(text, "label"));
  remembered.set(material, mentions);
  return mentions;
}

/** Materials are immutable, and every rule asks. */
const remembered = new WeakMap<Told, readonly Mention[]>();

const textsOf = (material: Told): readonly string[] => [
  material.title ?? "",
  material.docs,
  material.name.replaceAll("_", " "),
];

// ---------------------------------------------------------------------------------------------------------------
// Silicone

const SILICONE =
  /\bsilicone(?=(?:[ -](?:based|furniture|spray|oil|shine)){0,4}[ -](?:polish|wax|spray|oil|lubricant|fluid|emulsion|shine|dressing)\b)|\bsilicone(?=-based\b)|\bsiliconi[sz]ed\b/giu;

/** What a clause has to say before the bare name, for there are removers of it too. */
const BARE_NAME = /\bsilicones?\b/giu;
const HOLDING: ReadonlySet<string> = new Set(
  "contain contains containing hold holds holding with has includes including".split(" "),
);
/** So many words may stand between: "contains a little silicone". */
const HOLDING_REACHES = 2;

/** Words that make a clause doubtful: it may speak of what the material meets, not of what it holds. */
const SILICONE_DOUBTS =
  /\b(?:remov|strip|dissolv|contaminat|resist|fish[ -]?eye|crater)|\b(?:takes?|taking|cuts?|lifts?|against|old|over|surfaces?|traces?|may|if)\b/iu;

const DENYING_WORDS: ReadonlySet<string> = new Set(["no", "non", "without", "zero"]);
const DENYING_PAIRS: ReadonlySet<string> = new Set(["free of", "free from", "instead of", "not contain"]);
/** So many words may stand between the denial and what it denies: "no added solvents, thinners or silicone". */
const DENIAL_REACHES = 5;
/** Those words and the denial itself stand within so many characters; nothing further back is looked at. */
const DENIAL_WITHIN = 160;
const DENIED_AFTER = /^[ -]?free\b/iu;

const saysSilicone = (text: string): boolean =>
  text
    .split(/[.;:!?\n]/u)
    .map(plainlySpaced)
    .some((clause) => {
      if (SILICONE_DOUBTS.test(clause)) return false;
      return (
        [...clause.matchAll(SILICONE)].some((match) => isAffirmed(clause, match)) ||
        [...clause.matchAll(BARE_NAME)].some(
          (match) => isSaidToBeHeld(before(clause, match)) && isAffirmed(clause, match),
        )
      );
    });

/** One blank or one hyphen between words, however many there are: patterns need not look for more. */
const plainlySpaced = (clause: string): string =>
  clause.replace(/[\s-]+/gu, (gap) => (gap.includes("-") ? "-" : " "));

const before = (clause: string, { index }: RegExpExecArray): string =>
  clause.slice(Math.max(0, index - DENIAL_WITHIN), index);

function isAffirmed(clause: string, match: RegExpExecArray): boolean {
  const end = match.index + match[0].length;
  return !isDenied(before(clause, match)) && !DENIED_AFTER.test(clause.slice(end, end + " free ".length));
}

/** Whether the words that lead up to a name say that it is in there. */
function isSaidToBeHeld(lead: string): boolean {
  if (!lead.endsWith(" ")) return false;
  const words = lead
    .toLowerCase()
    .trimEnd()
    .split(" ")
    .slice(-1 - HOLDING_REACHES);
  const at = words.findLastIndex((word) => HOLDING.has(word.split(/\W/u).at(-1)!));
  return at >= 0 && words.slice(at + 1).every((word) => /^[a-z]+$/u.test(word));
}

/** Whether the words that lead up to a name deny it. Words joined by hyphens count as one. */
function isDenied(lead: string): boolean {
  const words = lead.toLowerCase().match(/[\w-]+|[^\s\w-]/gu) ?? [];
  if (words.at(-1) === ",") return false;
  let passed = 0;
  for (let at = words.length - 1; at >= 0 && passed <= DENIAL_REACHES; at -= 1) {
    const word = words[at]!;
    if (word === ",") continue;
    if (!/^[\w-]/u.test(word)) return false;
    const parts = word.split("-");
    if (parts.some((part) => DENYING_WORDS.has(part))) return true;
    const pair = `${words[at - 1]?.split("-").at(-1)} ${parts[0]}`;
    if (DENYING_PAIRS.has(pair) || (pair === "place of" && words[at - 2]?.split("-").at(-1) === "in"))
      return true;
    if (parts.some((part) => part !== "")) passed += 1;
  }
  return false;
}
