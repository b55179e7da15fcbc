/**
 * What a label says, as a material's title and description copy it: not for food, not for toys, holds an oil whose rags
 * heat up, highly flammable, contains lead. Chemicals by name are `chemical-words.ts`'s.
 *
 * A label is read clause by clause, and a clause that denies ("non-flammable", "contains no lead") says nothing.
 */
import type { Material } from "../model/model.ts";
import { onceFor } from "../once.ts";
import { isNegatedJustBefore, negates, withoutOrders } from "./denials.ts";

export type LabelWarning =
  | "not for food"
  | "not for children"
  | "self-heating rags"
  | "flammable"
  | "holds lead";
export type LabelFitness = "fit for food" | "fit for children";

type Labelled = Pick<Material, "title" | "docs">;

const FOOD =
  "(?:food|foodstuffs?|kitchen\\s+utensils?|cutting\\s+boards?|chopping\\s+boards?|salad\\s+bowls?|eating)";
const CHILD = "(?:toys?|children['’]?s?|child|babies|baby|cots?|cribs?|nursery|chew\\w*|mouth\\w*)";
const UNFIT =
  "(?:not|never|un(?:fit|suitable|safe)|isn['’]t|mustn['’]t|don['’]t|do\\s+not|may\\s+not|must\\s+not|should\\s+not|avoid)";

const WARNINGS: Readonly<Record<LabelWarning, RegExp>> = {
  "not for food": new RegExp(`\\b${UNFIT}\\b[^,]{0,60}?\\b${FOOD}\\b`, "iu"),
  "not for children": new RegExp(`\\b${UNFIT}\\b[^,]{0,60}?\\b${CHILD}\\b`, "iu"),
  "self-heating rags":
    /\b(?:contain(?:s|ing)?|hold(?:s|ing)?|made\s+(?:from|of|with)|based\s+on|includes?|including)\s+(?:[\w-]+\s+){0,4}?(?:linseed|tung|perilla|drying|dehydrated\s+castor)(?:[\s-]+\w+){0,1}?\s+oils?\b|\b(?:rags?|cloths?|waste|wipes)\b.{0,60}\b(?:self-?\s?heat\w*|spontaneous\w*|catch\s+fire|ignite|burst\s+into\s+flames?)\b|\b(?:self-?\s?heat\w*|spontaneous(?:ly)?\s+(?:combust\w*|ignit\w*|heat\w*))\b/iu,
  flammable:
    /\b(?:highly|extremely|very)\s+(?:in)?flammable\b|\b(?:in)?flammable\s+(?:liquid|vapou?rs?|mixture)\b|\bkeep\s+(?:well\s+|far\s+)?(?:away\s+)?from\s+(?:[\w-]+\s+){0,2}?(?:heat|sparks?|(?:open\s+|naked\s+)?flames?|fire|ignition|sources?\s+of\s+ignition|hot\s+surfaces?)\b|\bH22[456]\b/iu,
  "holds lead":
    /\b(?:contain(?:s|ing)?|hold(?:s|ing)?|with|has)\s+(?:[\w-]+\s+){0,2}?lead\b(?![\s-]*free)|\bleaded\b|\blead[\s-]+(?:based|bearing|content|driers?|pigments?|paint)\b/iu,
};

/** Whether a clause denies what it seems to warn of; what is only spoken of ("over linseed oil") counts as denied. */
const DENIED: Readonly<Record<LabelWarning, ((clause: string) => boolean) | undefined>> = {
  "not for food": undefined,
  "not for children": (clause) => /\bout\s+of\s+(?:the\s+)?reach\b/iu.test(clause),
  "self-heating rags": (clause) =>
    negates(withoutOrders(clause)) || /\b(?:over|on\s+top\s+of|against)\b/iu.test(clause),
  flammable: (clause) =>
    [...clause.matchAll(/\b(?:in)?flammable\b/giu)].some(({ index }) =>
      isNegatedJustBefore(clause.slice(0, index)),
    ),
  "holds lead": (clause) => negates(clause) || /\b(?:non|zero)\b|\blead[\s-]*free\b/iu.test(clause),
};

/** The clause with which a label says this, or undefined. */
export function labelSays(material: Labelled, warning: LabelWarning): string | undefined {
  return clausesOf(material).find((clause) => WARNINGS[warning].test(clause) && !DENIED[warning]?.(clause));
}

const FITNESS: Readonly<Record<LabelFitness, RegExp>> = {
  "fit for food": new RegExp(
    `\\b(?:fit|safe|suitable|approved|made|meant|sold)\\b[^,]{0,40}?\\b(?:for|with|touch\\w*|contact)\\b[^,]{0,30}?\\b${FOOD}\\b|\\bfood[\\s-]*(?:safe|grade|contact)\\b`,
    "iu",
  ),
  "fit for children": new RegExp(
    `\\b(?:fit|safe|suitable|approved|made|meant|sold)\\b[^,]{0,40}?\\bfor\\b[^,]{0,30}?\\b${CHILD}\\b|\\b(?:toy|child)[\\s-]*safe\\b|\\bEN\\s*71\\b`,
    "iu",
  ),
};

/** Whether a label says that it is meant for this; a denial in the same clause takes it back. */
export const labelAllows = (material: Labelled, fitness: LabelFitness): boolean =>
  clausesOf(material).some(
    (clause) => FITNESS[fitness].test(clause) && !new RegExp(`\\b${UNFIT}\\b`, "iu").test(clause),
  );

/** Every duty asks of every layer. */
const clausesOf = onceFor(({ title, docs }: Labelled): readonly string[] =>
  [title ?? "", docs]
    .flatMap((text) => text.split(/[;:!?\n]|\.(?=\s|$)|,\s*(?=but\b)/u))
    .filter((clause) => clause.trim() !== ""),
);
