/** Woods whose dust inflames skin, eyes or lungs, and may make them allergic for good. */

export const IRRITATING_WOODS_SOURCE =
  "Health and Safety Executive (UK), Woodworking Information Sheet 30, Toxic woods (from memory, confidence medium)";

const SKIN = "can inflame the skin and make it allergic for good";

/** What the dust does, as the end of a sentence, by the name of the wood. */
const EFFECTS: ReadonlyMap<string, string> = new Map([
  ["cocobolo", SKIN],
  ["ebony", SKIN],
  ["iroko", "can inflame the skin and bring on asthma"],
  ["rosewood", SKIN],
  ["teak", SKIN],
  ["wenge", SKIN],
  ["yew", "can inflame the skin; all of the tree is poisonous but the flesh of its berries"],
]);

/** `can inflame the skin …`, or undefined for a wood that is not known for it. */
export const irritationBy = (wood: string): string | undefined => EFFECTS.get(wood);
