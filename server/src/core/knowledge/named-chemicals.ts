/**
 * Chemicals that a material's own words name: its title, its documentation or its name. The notation has no field for
 * them, and a label that warns of one is copied into these places. Words such as "without" or "-free" say the opposite,
 * and are heeded (`denials.ts`). Silicone is not among the dangerous ones and has its own reading below: tins that
 * hold none speak of it, removers above all.
 */

import type { Material } from "../model/model.ts";
import { onceFor } from "../once.ts";
import type { Hazard } from "./chemical-schema.ts";
import { chemicalsIn, type Mention } from "./chemical-words.ts";
import { type ChemicalName, chemical, isA } from "./chemicals.ts";
import { isDenied } from "./denials.ts";
import { clausesOf, startsWithAny, type Word, wordSet } from "./text-words.ts";

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
export const mentionsOf = onceFor((material: Told): readonly Mention[] =>
  textsOf(material).flatMap((text) => chemicalsIn(text, "label")),
);

const textsOf = (material: Told): readonly string[] => [
  material.title ?? "",
  material.docs,
  material.name.replaceAll("_", " "),
];

// ---------------------------------------------------------------------------------------------------------------
// Silicone

/** What a silicone is sold as, with so many words between: "silicone furniture spray polish". */
const SOLD_AS = wordSet("polish wax spray oil lubricant fluid emulsion shine dressing");
const BETWEEN = wordSet("based furniture spray oil shine");
const MOST_BETWEEN = 4;

/** What a clause has to say before the bare name, for there are removers of it too. */
const HOLDING = wordSet("contain containing hold holding with ha has include including");
/** So many words may stand between: "contains a little silicone". */
const HOLDING_REACHES = 2;

/** Words that make a clause doubtful: it may speak of what the material meets, not of what it holds. */
const DOUBTS = wordSet("take taking cut lift against old over surface trace may if eye fisheye");
const DOUBT_STEMS = ["remov", "strip", "dissolv", "contaminat", "resist", "crater"];

const saysSilicone = (text: string): boolean =>
  clausesOf(text).some((words) => {
    if (words.some(({ key }) => DOUBTS.has(key) || startsWithAny(key, DOUBT_STEMS))) return false;
    return words.some(
      ({ key }, at) =>
        (startsWithAny(key, ["siliconis", "siliconiz"]) ||
          (key === "silicone" && (isSoldAs(words, at) || isSaidToBeHeld(words, at)))) &&
        !isDenied({ words, from: at, to: at, reading: "label" }),
    );
  });

function isSoldAs(words: readonly Word[], at: number): boolean {
  for (let next = at + 1; next <= at + 1 + MOST_BETWEEN; next += 1) {
    const word = words[next];
    if (!word || word.breaks) return false;
    if (SOLD_AS.has(word.key) || (next === at + 1 && word.key === "based")) return true;
    if (!BETWEEN.has(word.key)) return false;
  }
  return false;
}

/** Whether the words that lead up to a name say that it is in there. */
function isSaidToBeHeld(words: readonly Word[], at: number): boolean {
  for (let from = at - 1; from >= Math.max(0, at - 1 - HOLDING_REACHES); from -= 1) {
    if (words[from + 1]!.breaks) return false;
    if (HOLDING.has(words[from]!.key)) return true;
  }
  return false;
}
