/** The totals of jobs for other programs: `{"jobs": […]}`, its fields fixed by the language reference. */

import type { JobTotals } from "../core/totals/types.ts";
import { jsonText } from "../escape/json.ts";

export const totalsJson = (jobs: readonly JobTotals[]): string => jsonText({ jobs });
