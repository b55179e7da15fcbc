/** The totals of jobs for other programs: `{"jobs": […]}`, its fields told in server/docs/json.md. */

import { cents, printed } from "../core/measure/figures.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { printedTotals } from "../core/totals/print.ts";
import { soldPerHour, waysOf } from "../core/totals/worth.ts";
import { jsonText } from "../escape/json.ts";
import { distinctNames } from "../views/material-names.ts";
import { dateReasons } from "../views/schedule/job-dates.ts";
import { planNotes } from "../views/schedule/plan-notes.ts";
import { wayGaps } from "../views/worth.ts";

export const totalsJson = (results: readonly JobResult[]): string =>
  jsonText({
    jobs: results.map((result) => ({
      ...printedTotals(result.totals),
      worth: worthJson(result),
      reasons: dateReasons(result),
      notes: planNotes(result),
      record: recordJson(result),
    })),
  });

/** Each way with the pieces, and what is missing for one that is not known. */
function worthJson(result: JobResult) {
  const ways = waysOf(result);
  const sold = soldPerHour(ways.find(({ way }) => way === "sell")!);
  return {
    hour: result.shop?.labourPerH ?? null,
    ways: ways.map((way) => ({
      way: way.way,
      money_out: way.moneyOut,
      hours: way.hours === null ? null : printed(way.hours),
      hours_worth: way.hoursWorth,
      money_in: way.moneyIn,
      left: way.left,
      missing: wayGaps(way, result),
    })),
    sold_hour: sold === null ? null : cents(sold),
  };
}

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
