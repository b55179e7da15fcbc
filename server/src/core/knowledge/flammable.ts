/**
 * The category of a flammable liquid by 29 CFR 1910.106(a)(19), from its flash point and boiling point.
 *
 * Temperatures in °C. A liquid without a known flash point, or with one above 93 °C, has no category here, which
 * does not say that it cannot burn. The safety data sheet of the product decides.
 */

export type FlammableCategory = 1 | 2 | 3 | 4;

/** Flash point, °C, below which a liquid is category 1 or 2 (73.4 °F). */
export const LOW_FLASH_C = 23;
/** Boiling point, °C, up to which a liquid of low flash point is category 1 (95 °F). */
export const LOW_BOILING_C = 35;
/** Flash point, °C, up to which a liquid is category 3 (140 °F). */
export const CATEGORY_3_FLASH_C = 60;
/** Flash point, °C, up to which a liquid is category 4, and flammable at all (199.4 °F). */
export const CATEGORY_4_FLASH_C = 93;

/**
 * The category of a liquid with this flash point and boiling point, °C.
 * Without a boiling point a liquid of low flash point counts as category 2: few liquids of the trade boil at 35 °C.
 */
export function flammableCategory(
  flashC: number | undefined,
  boilsC?: number,
): FlammableCategory | undefined {
  if (flashC === undefined || Number.isNaN(flashC) || flashC > CATEGORY_4_FLASH_C) return undefined;
  if (flashC < LOW_FLASH_C) return boilsC !== undefined && boilsC <= LOW_BOILING_C ? 1 : 2;
  return flashC <= CATEGORY_3_FLASH_C ? 3 : 4;
}

/** Whether its vapour can be lit at the air of a shop: categories 1 to 3. */
export function vapourCanIgnite(flashC: number | undefined, boilsC?: number): boolean {
  const category = flammableCategory(flashC, boilsC);
  return category !== undefined && category <= 3;
}
