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
  /\bsilicone(?=(?:[\s-]+(?:based|furniture|spray|oil|shine))*[\s-]+(?:polish|wax|spray|oil|lubricant|fluid|emulsion|shine|dressing)\b)|(?<=\b(?:contain(?:s|ing)?|holds?|holding|with|has|includ(?:es|ing))\s+(?:[a-z]+\s+){0,2})silicones?\b|\bsilicone(?=-based\b)|\bsiliconi[sz]ed\b/giu;

/** Words that make a clause doubtful: it may speak of what the material meets, not of what it holds. */
const SILICONE_DOUBTS =
  /\b(?:remov|strip|dissolv|contaminat|resist|fish-?\s?eye|crater)|\b(?:takes?|taking|cuts?|lifts?|against|old|over|surfaces?|traces?|may|if)\b/iu;

const DENIED_BEFORE =
  /(?:\b(?:no|non|without|zero|free\s+of|free\s+from|instead\s+of|in\s+place\s+of|not\s+contain)\b)(?:[\s,-]+[\w-]+){0,5}[\s-]*$/iu;
const DENIED_AFTER = /^[\s-]*free\b/iu;

const saysSilicone = (text: string): boolean =>
  text.split(/[.;:!?\n]/u).some((clause) => {
    if (SILICONE_DOUBTS.test(clause)) return false;
    return [...clause.matchAll(SILICONE)].some((match) => {
      const before = clause.slice(0, match.index);
      const after = clause.slice(match.index + match[0].length);
      return !DENIED_BEFORE.test(before) && !DENIED_AFTER.test(after);
    });
  });
