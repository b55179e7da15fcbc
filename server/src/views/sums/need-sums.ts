/** What a job needs of a material, as sums: litres, what is to buy, cans, grams. */
import { t } from "../../../../grammar/src/translate.ts";
import { exactLitres, moneyText } from "../../core/measure/figures.ts";
import type { MaterialNeed } from "../../core/totals/job-totals.ts";
import { litresSum, vocSum } from "./portion-sums.ts";

/** Each sum for itself; what is not known is left out, since the line above says why. */
export function needSums({ material, draws, litres, onHand, totals }: MaterialNeed): readonly string[] {
  if (litres === undefined) return [];
  const short = litres - onHand;
  const left =
    onHand > 0 && short > 1e-9
      ? t`${exactLitres(litres)} − ${exactLitres(onHand)} = ${exactLitres(short)} to buy`
      : "";
  const cans = totals.containers.map(({ count, price }) => `${count} × ${moneyText(price)}`);
  const price =
    totals.cost !== null && cans.length > 0 ? `${cans.join(" + ")} = ${moneyText(totals.cost)}` : "";
  const voc = vocSum(material, litres);
  return [litresSum(draws), left, price, voc ? t`VOC ${voc}` : ""].filter((text) => text !== "");
}
