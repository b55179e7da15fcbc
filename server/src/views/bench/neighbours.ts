/** The other jobs of a job's shop, as far as they are known. */
import type { JobResult } from "../../core/totals/job-totals.ts";
import type { ShopSource } from "../schedule/shop-weeks.ts";

/** Those of all files that have a job with dates in the shop, in the order of the files; those without dates among them. */
export function neighboursOf(result: JobResult, source: ShopSource): readonly JobResult[] {
  const { shop, job } = result;
  if (shop === undefined) return [];
  const { plans, singles, leftOut } = source.shopPlans(shop);
  const members = [...plans.flatMap((plan) => plan.members), ...singles, ...leftOut];
  const files = new Set([job.file, ...members.map((member) => member.job.file)]);
  return [...files]
    .flatMap((file) => source.jobs(file))
    .filter((other) => other.shop === shop && other.job !== job);
}
