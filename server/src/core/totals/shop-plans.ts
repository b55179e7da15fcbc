/** Joins the jobs of a program to the plans of the shops that they share, and remembers these from one program to the next. */

import { endOfDateWanted } from "../measure/iso-dates.ts";
import type { ProgramView, Remembered } from "../memory/memory.ts";
import { jobGraph } from "../model/job-graph.ts";
import type { Job, Shop } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import { memo } from "../once.ts";
import type { FileId } from "../place.ts";
import { BEING_PLANNED, isBeingPlanned } from "../schedule/being-planned.ts";
import type { Planner } from "../schedule/plan-cache.ts";
import { shareOf } from "../schedule/shop/job-share.ts";
import { planShop, type ShopPlans } from "../schedule/shop/plan-shop.ts";
import { type ShopMember, sharedInput } from "../schedule/shop/shop-input.ts";
import type { Schedule, ScheduleInput } from "../schedule/types.ts";

/** A job that may share its shop. */
export interface JobInShop extends ShopMember {
  readonly job: Job;
}

interface ShopParts {
  readonly remembered: Remembered<ProgramView>;
  readonly plan: Planner;
  readonly scopeOf: (file: FileId) => Scope;
  /** The jobs that are done in a shop on known dates, with their plans by themselves. */
  readonly members: (
    shop: Shop,
  ) => readonly { readonly job: Job; readonly input: ScheduleInput; readonly alone: Schedule }[];
}

export interface Shops {
  readonly plansOf: (shop: Shop) => ShopPlans<JobInShop>;
  /** Whether `plansOf` has been asked for this shop. */
  readonly isKnown: (shop: Shop) => boolean;
  /** The job's part of its shop's plan; undefined where it is planned by itself. */
  readonly scheduleOf: (unplanned: { readonly job: Job; readonly shop?: Shop }) => Schedule | undefined;
}

/** The shops of one program. */
export function createShops({ remembered, plan, scopeOf, members }: ShopParts): Shops {
  const known = new Set<Shop>();
  const planTogether = (together: readonly JobInShop[]): Schedule => {
    const [{ job: first }] = together as readonly [JobInShop, ...JobInShop[]];
    const places = new Map(together.map(({ key }, place) => [key, place]));
    const given = together.flatMap(({ input, alone, due, after }) => [
      input,
      alone.startAt,
      due,
      after.map((key) => places.get(key)).join(),
    ]);
    const input = remembered.recall("shared input", first, given, () => sharedInput(together));
    // Beside what the job asks for itself.
    const owner = {
      file: first.file,
      declaration: `${first.declaration}\u0000and others`,
      alsoFor: together.map(({ job }) => job.file),
    };
    const before = remembered.recall("shared plan", first, [input], () => plan(input, owner));
    return isBeingPlanned(before) ? plan(input, owner) : before;
  };
  const plansOf = memo((shop: Shop): ShopPlans<JobInShop> => {
    known.add(shop);
    const jobs = members(shop);
    if (jobs.length < 2) return NONE;
    return planShop(withKeys(jobs, scopeOf), planTogether);
  });
  const schedulesIn = memo((shop: Shop): ReadonlyMap<Job, Schedule> => {
    const { plans, pending } = plansOf(shop);
    const schedules = new Map<Job, Schedule>();
    for (const { members: together, schedule } of plans)
      if (!isBeingPlanned(schedule))
        for (const [place, member] of together.entries()) {
          const names = together.map(({ name }) => name).join();
          const share = remembered.recall(
            "share",
            member.job,
            [schedule, member.alone, place, names],
            () => shareOf(schedule, together, place),
            isSameSchedule,
          );
          schedules.set(member.job, share);
        }
    for (const { job } of pending) schedules.set(job, BEING_PLANNED);
    return schedules;
  });
  return {
    plansOf,
    isKnown: (shop) => known.has(shop),
    scheduleOf: ({ job, shop }) => shop && schedulesIn(shop).get(job),
  };
}

const NONE: ShopPlans<JobInShop> = { plans: [], singles: [], leftOut: [], pending: new Set() };

const isSameSchedule = (a: Schedule, b: Schedule): boolean => JSON.stringify(a) === JSON.stringify(b);

function withKeys(
  jobs: ReturnType<ShopParts["members"]>,
  scopeOf: (file: FileId) => Scope,
): readonly JobInShop[] {
  const keyOf = ({ file, declaration }: Job): string => `${file}\u0000${declaration}`;
  const inShop = new Set(jobs.map(({ job }) => job));
  return jobs.map(({ job, input, alone }) => {
    const scope = scopeOf(job.file);
    const after = jobGraph(scope)
      .earlier(job)
      .flatMap((name) => {
        const earlier = scope.jobs.get(name);
        return earlier && inShop.has(earlier) ? [keyOf(earlier)] : [];
      });
    return {
      job,
      key: keyOf(job),
      name: job.name,
      input,
      alone,
      ...(job.ready ? { due: endOfDateWanted(job.ready) } : {}),
      after,
    };
  });
}
