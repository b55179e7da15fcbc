/**
 * What a job costs, as rows that a person can add up: what is paid, the sum of it, and beside it a new piece and the
 * budget. A row is rounded to whole cents such that the rows come to the total.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { cents, moneyText } from "../../core/measure/figures.ts";
import { formatWork } from "../../core/measure/format-amount.ts";
import { roundedParts } from "../../core/measure/rounded-parts.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { suppliesOf } from "../../core/totals/supplies.ts";
import { awaitsPlan, beingPlannedText, type GapField, gapsOf } from "../missing-inputs.ts";
import type { BenchCost } from "./model.ts";

export function costsOf(result: JobResult): readonly BenchCost[] {
  const { totals, prices, job, shop } = result;
  const { total_cost: total, saving } = totals;
  const supplies = suppliesOf(job, result.runs);
  const parts: readonly Part[] = [
    ...(prices.bought > 0 ? [{ name: t`Pieces, as bought`, amount: prices.bought }] : []),
    { name: t`Materials`, field: "material_cost", amount: totals.material_cost },
    ...(job.supplies || supplies > 0 ? [{ name: t`Supplies`, amount: supplies }] : []),
    { name: t`Labour`, field: "labour_cost", amount: totals.labour_cost, sum: labourSum(result) },
  ];
  const shown = roundedParts(
    parts.map(({ amount }) => amount ?? 0),
    2,
    total ?? undefined,
  );
  const row = (kind: BenchCost["kind"], name: string, amount: number, sum = ""): BenchCost => ({
    kind,
    name,
    text: moneyText(amount),
    sum,
    missing: [],
  });
  const unknown = (kind: BenchCost["kind"], name: string, field: GapField): BenchCost => ({
    kind,
    name,
    text: awaitsPlan(result, field) ? beingPlannedText() : t`not known`,
    sum: "",
    missing: gapsOf(result, field),
  });
  const budget = job.budget?.amount;
  const rows: readonly BenchCost[] = [
    ...parts.map(({ name, field, amount, sum }, i) => {
      if (amount !== null || field === undefined) return row("part", name, shown[i]!, sum);
      // Without a rate nobody is paid.
      const isLeftOut = field === "labour_cost" && shop?.labourPerH === undefined && total !== null;
      return { ...unknown("part", name, field), ...(isLeftOut ? { text: t`not counted` } : {}) };
    }),
    total === null ? unknown("total", t`Total`, "total_cost") : row("total", t`Total`, total),
    ...(saving === null || total === null
      ? [unknown("beside", t`Saved against new`, "saving")]
      : [
          saving < 0
            ? row("beside", t`More than new`, -saving, `${moneyText(total)} − ${moneyText(total + saving)}`)
            : row(
                "beside",
                t`Saved against new`,
                saving,
                `${moneyText(total + saving)} − ${moneyText(total)}`,
              ),
        ]),
    ...(budget === undefined || total === null
      ? []
      : [
          total > budget
            ? row("beside", t`Over the budget`, total - budget, `${moneyText(total)} − ${moneyText(budget)}`)
            : row(
                "beside",
                t`Left of the budget`,
                budget - total,
                `${moneyText(budget)} − ${moneyText(total)}`,
              ),
        ]),
  ];
  // What a part lacks, all that is made of it lacks as well; it is said once.
  const said = new Set(rows.flatMap((each) => (each.kind === "part" ? each.missing : [])));
  return rows.map((each) =>
    each.kind === "part" ? each : { ...each, missing: each.missing.filter((gap) => !said.has(gap)) },
  );
}

interface Part {
  readonly name: string;
  /** Whose line is missing where it is not known. */
  readonly field?: GapField;
  readonly amount: number | null;
  readonly sum?: string;
}

/** `16 h 40 min × 16.00`; empty where what is shown does not come to the labour, as with hours of odd seconds. */
function labourSum({ totals: { hands_on_h, labour_cost }, shop }: JobResult): string {
  const rate = shop?.labourPerH;
  if (hands_on_h === null || labour_cost === null || rate === undefined) return "";
  const shown = Math.round(hands_on_h * 60) / 60;
  return cents(shown * rate) === labour_cost ? `${formatWork(hands_on_h)} × ${moneyText(rate)}` : "";
}
