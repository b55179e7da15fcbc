/**
 * The job costs more than it may: materials by whole containers, labour, supplies and the pieces as bought.
 * Where a price is not stated nothing is calculated and nothing is said.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { moneyText } from "../../measure/figures.ts";
import { sentence } from "../../sentence.ts";
import type { TradeRule } from "../rule.ts";

export const overBudget: TradeRule = {
  id: "over-budget",
  group: "quantities",
  severity: "warning",
  docs: {
    summary: "The job's total cost is above its budget.",
    why: "Materials are bought by whole containers, and with labour, supplies and the pieces themselves the money runs out before the job is done.",
    remedy: "Take a cheaper way or fewer coats, use what is on hand, or agree on a larger budget.",
    sources: ["arithmetic with the job's own figures"],
  },
  failing: [
    {
      title: "A can costs more than the budget",
      text: `material hall_clear {
  family waterborne polyurethane
  covers 10 m2/L
  packs  946 mL for 28.00
}

piece shelf {
  surface top {
    shape area 1.2 m2
    wood  beech
  }
}

recipe one_coat {
  layer hall_clear
  wait  until cured
}

job shelves {
  piece  shelf
  budget 27.99 #! over-budget
  apply  one_coat to top
}
`,
    },
  ],
  passing: [
    {
      title: "To the cent",
      text: `material hall_clear {
  family waterborne polyurethane
  covers 10 m2/L
  packs  946 mL for 28.00
}

piece shelf {
  surface top {
    shape area 1.2 m2
    wood  beech
  }
}

recipe one_coat {
  layer hall_clear
  wait  until cured
}

job shelves {
  piece  shelf
  budget 28.00
  apply  one_coat to top
}
`,
    },
    {
      title: "A price that is not stated",
      text: `piece shelf {
  bought 50.00
  surface top {
    shape area 1.2 m2
    wood  beech
  }
}

recipe one_coat {
  layer waterborne_polyurethane
  wait  until cured
}

job shelves {
  piece  shelf
  budget 20.00
  apply  one_coat to top
}
`,
    },
  ],
  readsPlan: true,
  checks: {
    onJob: ({ job, totals, reportAt }) => {
      const total = totals.total_cost;
      if (!job.budget || total === null || cents(total) <= cents(job.budget.amount)) return;
      reportAt(job.budget.place, {
        headline: t`The job costs ${moneyText(total)}, ${moneyText(total - job.budget.amount)} over its budget`,
        why: t`${sentence(parts(totals, total))}; the budget is ${moneyText(job.budget.amount)}.`,
        remedy: t`Use cheaper materials or what is on hand, or agree on a larger budget.`,
      });
    },
  },
};

const cents = (amount: number): number => Math.round(amount * 100);

function parts(
  totals: { readonly material_cost: number | null; readonly labour_cost: number | null },
  total: number,
): string {
  const materials = totals.material_cost ?? 0;
  const labour = totals.labour_cost ?? 0;
  return [
    t`materials ${moneyText(materials)}`,
    ...(labour > 0 ? [t`labour ${moneyText(labour)}`] : []),
    ...(total - materials - labour >= 0.005
      ? [t`pieces and supplies ${moneyText(total - materials - labour)}`]
      : []),
  ].join(", ");
}
