/** The totals of jobs for other programs: `{"jobs": […]}`, its fields told in server/docs/json.md. */

import { printed } from "../core/measure/figures.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { printedTotals } from "../core/totals/print.ts";
import { jsonText } from "../escape/json.ts";
import { distinctNames } from "../views/material-names.ts";
import { dateReasons } from "../views/schedule/job-dates.ts";
import { planNotes } from "../views/schedule/plan-notes.ts";

export const totalsJson = (results: readonly JobResult[]): string =>
  jsonText({
    jobs: results.map((result) => ({
      ...printedTotals(result.totals),
      reasons: dateReasons(result),
      notes: planNotes(result),
      record: recordJson(result),
    })),
  });

/** What was planned before anything was done, and what is done; null for a job that has not begun. */
function recordJson({ record }: JobResult) {
  if (!record) return null;
  const { lastAt, from, planned, doneHours, stock } = record;
  const names = distinctNames(stock.map(({ material }) => material));
  return {
    last_at: lastAt,
    goes_on_from: from,
    done_h: printed(doneHours),
    planned,
    materials: stock.map(({ usedL, boughtL, nowL, toBuy }, at) => ({
      name: names[at]!,
      used_litres: printed(usedL),
      bought_litres: printed(boughtL),
      in_stock_litres: printed(nowL),
      to_buy: toBuy,
    })),
  };
}
