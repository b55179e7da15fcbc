/** What a job needs of a material, with the sums: litres, what is to buy, cans, grams. */
import { t } from "../../../../grammar/src/translate.ts";
import { cansText, exactLitres, moneyText } from "../../core/measure/figures.ts";
import type { ShownFigures } from "../../core/measure/shown-figures.ts";
import type { JobResult, MaterialNeed } from "../../core/totals/job-totals.ts";
import { shoppingList } from "../../views/shopping-list.ts";
import { needSums } from "../../views/sums/need-sums.ts";
import { bullets, code, firstFew, nested } from "../markdown.ts";
import { allJobs, figuresHere, type HoverContext } from "./context.ts";

/** Every job that uses the material, and all of them together where there are several. */
export function materialInJobs(ctx: HoverContext, material: MaterialNeed["material"]): string {
  const uses = allJobs(ctx.checker).flatMap((result) => {
    const need = result.needs.find((each) => each.material === material);
    return need ? [{ result, need }] : [];
  });
  if (uses.length === 0) return "";
  const say = figuresHere(ctx);
  const together = uses.length > 1 ? togetherText(uses, material) : undefined;
  return bullets([
    ...firstFew(uses, ({ result, need }) => nested(`${useText(result, need, say)}:`, needSums(need)), 4),
    together,
  ]);
}

/** `in hall_tables 1.7 L, buy 2 × 0.946 L for 56.00 EUR` */
function useText(result: JobResult, { litres, totals }: MaterialNeed, say: ShownFigures): string {
  const job = code(result.job.name);
  if (litres === undefined) return t`in ${job} litres not known`;
  const buy =
    totals.cost === null
      ? ""
      : totals.containers.length === 0
        ? t`, nothing to buy`
        : t`, buy ${cansText(totals.containers)} for ${moneyText(totals.cost, result.shop?.currency)}`;
  return t`in ${job} ${say.litres(litres)}${buy}`;
}

/** As the shopping list has it: what is on hand is taken off once, and jobs share cans. */
function togetherText(
  uses: readonly { readonly result: JobResult; readonly need: MaterialNeed }[],
  material: MaterialNeed["material"],
): string | undefined {
  const baskets = shoppingList(uses.map(({ result }) => result));
  const [item] = baskets.flatMap(({ items }) => items.filter((each) => each.material === material));
  if (baskets.length !== 1 || !item || item.litres === null || item.cost === null) return undefined;
  const sum = `${uses.map(({ need }) => exactLitres(need.litres!)).join(" + ")} = ${exactLitres(item.litres)}`;
  const left =
    item.onHand > 0
      ? `, − ${exactLitres(item.onHand)} = ${exactLitres(Math.max(0, item.litres - item.onHand))}`
      : "";
  const buy =
    item.containers.length === 0
      ? t`nothing to buy`
      : t`${cansText(item.containers)} for ${moneyText(item.cost, baskets[0]!.currency)}`;
  return t`together ${sum}${left}: ${buy}`;
}
