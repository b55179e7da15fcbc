/**
 * Substances that a material's own words name: its title, its documentation or its name. The notation has no field for
 * them, and a label that warns of one is copied into these places. A word such as "without" or "-free" beside it says
 * the opposite, and is heeded. Silicone and lye are spoken of on tins that hold none, removers above all, so for these a
 * clause counts only where it leaves no doubt.
 */
import type { Material } from "../model/model.ts";

export type Chemical = "methylene chloride" | "NMP" | "caustic" | "isocyanate" | "silicone";

const WORDS: Readonly<Record<Chemical, RegExp>> = {
  silicone:
    /\bsilicone(?=(?:[\s-]+(?:based|furniture|spray|oil|shine))*[\s-]+(?:polish|wax|spray|oil|lubricant|fluid|emulsion|shine|dressing)\b)|(?<=\b(?:contain(?:s|ing)?|holds?|holding|with|has|includ(?:es|ing))\s+(?:[a-z]+\s+){0,2})silicones?\b|\bsilicone(?=-based\b)|\bsiliconi[sz]ed\b/giu,
  "methylene chloride": /methylene\s+(?:di)?chloride|dichloromethane/giu,
  NMP: /\bNMP\b|\bN-?\s?methyl-?\s?(?:2-?\s?)?pyrrolidone/giu,
  caustic: /\bcaustic\b|\blye\b|\b(?:sodium|potassium)\s+hydroxide\b/giu,
  isocyanate: /\b(?:poly|di)?isocyanates?\b/giu,
};

/** Words that make a clause doubtful: it may speak of what the material meets, not of what it holds. */
const DOUBTFUL: Partial<Readonly<Record<Chemical, RegExp>>> = {
  caustic: /\bneutrali[sz]|\b(?:after|against|from)\b/iu,
  silicone:
    /\b(?:remov|strip|dissolv|contaminat|resist|fish-?\s?eye|crater)|\b(?:takes?|taking|cuts?|lifts?|against|old|over|surfaces?|traces?|may|if)\b/iu,
};

const DENIED_BEFORE =
  /(?:\b(?:no|non|without|zero|free\s+of|free\s+from|instead\s+of|in\s+place\s+of|not\s+contain)\b)(?:[\s,-]+[\w-]+){0,5}[\s-]*$/iu;
const DENIED_AFTER = /^[\s-]*free\b/iu;

/** Whether the material's title, documentation or name says that it holds this. */
export function namesChemical(
  material: Pick<Material, "name" | "title" | "docs">,
  chemical: Chemical,
): boolean {
  return [material.title ?? "", material.docs, material.name.replaceAll("_", " ")]
    .flatMap((text) => text.split(/[.;:!?\n]/u))
    .some((clause) => clauseNames(clause, chemical));
}

/** All that the material's title, documentation or name says that it holds. */
export function chemicalsNamed(material: Pick<Material, "name" | "title" | "docs">): readonly Chemical[] {
  return (Object.keys(WORDS) as Chemical[]).filter((chemical) => namesChemical(material, chemical));
}

function clauseNames(clause: string, chemical: Chemical): boolean {
  if (DOUBTFUL[chemical]?.test(clause)) return false;
  return [...clause.matchAll(WORDS[chemical])].some((match) => {
    const before = clause.slice(0, match.index);
    const after = clause.slice(match.index + match[0].length);
    return !DENIED_BEFORE.test(before) && !DENIED_AFTER.test(after);
  });
}
