/** What lines say is worn, in a word each. It runs in the page of a sheet as well, and so it knows no table. */

export const GEAR_WORDS = {
  dust_mask: "dust mask",
  vapour_respirator: "respirator",
  supplied_air: "supplied air",
  gloves: "gloves",
  eye_protection: "goggles",
  hearing: "ear protection",
} as const;

/** In place of a mask and a respirator: nobody wears both, and a respirator of the cautions has its particle filter. */
export const FOR_BOTH = "respirator (vapour and dust)";

/** Of a coat that nothing is known for, so that nobody takes bare hands for fine. */
export const BY_ITS_LABEL = "what the can’s label says (gloves? goggles? mask?)";

/** Where a stripper lies on another surface of the room. */
export const STRIPPER_VAPOUR = "stripper’s vapour";

/** Where sanding or scraping may go through. */
export const THIN_VENEER = "thin veneer";

/** What keeps vapour away. */
export const AIR_GEAR: ReadonlySet<string> = new Set([
  GEAR_WORDS.vapour_respirator,
  FOR_BOTH,
  GEAR_WORDS.supplied_air,
]);

const IN_ORDER: readonly string[] = [...AIR_GEAR, ...Object.values(GEAR_WORDS), BY_ITS_LABEL];

/** Each once, in one order, and of what is worn before the mouth only what keeps off most. */
export function wornTogether(gear: readonly string[]): readonly string[] {
  const { dust_mask, vapour_respirator, supplied_air } = GEAR_WORDS;
  const all = new Set(gear);
  if (all.has(vapour_respirator) && all.has(dust_mask)) all.add(FOR_BOTH);
  const mouth = [supplied_air, FOR_BOTH, vapour_respirator, dust_mask].filter((item) => all.has(item));
  for (const weaker of mouth.slice(1)) all.delete(weaker);
  if (all.size > 1) all.delete(BY_ITS_LABEL);
  return [...all].toSorted((a, b) => IN_ORDER.indexOf(a) - IN_ORDER.indexOf(b));
}
