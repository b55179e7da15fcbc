/** What the material that a job uses up is worth, where whole cans of it are bought. */
import { t } from "../../../../grammar/src/translate.ts";
import { moneyText } from "../../core/measure/figures.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";

/**
 * `8.80 EUR worth is used`, of materials bought in whole cans. Where some of it was there already, that may be more than
 * what is bought, so it is said.
 */
export function usedText(used: number, { needs, shop }: JobResult): string {
  const stock = needs.some(({ onHand }) => onHand > 0) ? t`, stock on hand included` : "";
  return t`${moneyText(used, shop?.currency)} worth is used${stock}`;
}
