/** The totals of jobs for other programs: `{"jobs": […]}`, its fields told in server/docs/json.md. */

import type { JobResult } from "../core/totals/job-totals.ts";
import { printedTotals } from "../core/totals/print.ts";
import { jsonText } from "../escape/json.ts";
import { dateReasons } from "../views/schedule/job-dates.ts";
import { planNotes } from "../views/schedule/plan-notes.ts";

export const totalsJson = (results: readonly JobResult[]): string =>
  jsonText({
    jobs: results.map((result) => ({
      ...printedTotals(result.totals),
      reasons: dateReasons(result),
      notes: planNotes(result),
    })),
  });
