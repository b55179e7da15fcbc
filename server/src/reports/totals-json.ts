/** The totals of jobs for other programs: `{"jobs": […]}`, its fields fixed by the language reference. */
import type { JobTotals } from "../core/totals/types.ts";

export const totalsJson = (jobs: readonly JobTotals[]): string => `${JSON.stringify({ jobs }, null, 2)}\n`;
