/** Joins the jobs of a program to the plans of the shops that they share, and remembers these from one program to the next. */

import { endOfDateWanted } from "../measure/iso-dates.ts";
import { drained } from "../memory/again.ts";
import type { ProgramView, Remembered } from "../memory/memory.ts";
import { jobGraph } from "../model/job-graph.ts";
import type { Job, Shop } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import { memo, onceFor, onFirstUse } from "../once.ts";
import { type Outcome, valueIn } from "../outcome.ts";
import type { FileId } from "../place.ts";
import { isSameData } from "../same-data.ts";
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
  readonly members: (shop: Shop) => readonly {
    readonly job: Job;
    readonly input: ScheduleInput;
    readonly alone: Schedule;
    readonly startsFromOthers: boolean;
  }[];
}

export interface Shops {
  readonly plansOf: (shop: Shop) => ShopPlans<JobInShop>;
  /** Whether `plansOf` has been asked for this shop. */
  readonly isKnown: (shop: Shop) => boolean;
  /** Of each job its part of its shop's plan; of those that are planned by themselves none. */
  readonly schedulesIn: (shop: Shop) => ReadonlyMap<Job, Schedule>;
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
    const joined = membersOf(shop, jobs);
    // What is being planned may have been planned meanwhile.
    const made = remembered.rows(
      "shop plans",
      shop,
      [[joined]],
      () => planShop(joined, planTogether),
      isPlanned,
    );
    return valueIn(drained(made)[0]!);
  });
  /** The same objects and the same list while all is the same. */
  const membersOf = (shop: Shop, jobs: ReturnType<typeof members>): readonly JobInShop[] => {
    const inShop = onFirstUse(() => new Set(jobs.map(({ job }) => job)));
    const columns: [Job[], ScheduleInput[], Schedule[], string[]] = [[], [], [], []];
    const after: (readonly string[])[] = [];
    for (const { job, input, alone, startsFromOthers } of jobs) {
      const keys = startsFromOthers ? earlierIn(job, scopeOf(job.file), inShop()) : NOBODY;
      after.push(keys);
      columns[0].push(job);
      columns[1].push(input);
      columns[2].push(alone);
      // By what it says, since the jobs that it comes after may change without it.
      columns[3].push(keys === NOBODY ? "" : keys.join("\n"));
    }
    const member = (row: number): JobInShop => memberOf(jobs[row]!, after[row]!);
    return valuesIn(drained(remembered.rows("members", shop, columns, member)));
  };
  const schedulesIn = memo((shop: Shop): ReadonlyMap<Job, Schedule> => {
    const found = plansOf(shop);
    const shared = remembered.rows("shares", shop, [[found]], () => sharesOf(found));
    return valueIn(drained(shared)[0]!);
  });
  const sharesOf = ({ plans, pending }: ShopPlans<JobInShop>): ReadonlyMap<Job, Schedule> => {
    const schedules = new Map<Job, Schedule>();
    for (const { members: together, schedule } of plans) {
      if (isBeingPlanned(schedule)) continue;
      const names = together.map(({ name }) => name).join();
      for (const [place, member] of together.entries()) {
        const share = remembered.recall(
          "share",
          member.job,
          [schedule, member.alone, place, names],
          () => shareOf(schedule, together, place),
          isSameData,
        );
        schedules.set(member.job, share);
      }
    }
    for (const { job } of pending) schedules.set(job, BEING_PLANNED);
    return schedules;
  };
  return {
    plansOf,
    isKnown: (shop) => known.has(shop),
    schedulesIn,
    scheduleOf: ({ job, shop }) => shop && schedulesIn(shop).get(job),
  };
}

const NOBODY: readonly string[] = [];

const NONE: ShopPlans<JobInShop> = { plans: [], singles: [], leftOut: [], pending: new Set() };

const isPlanned = ({ plans, pending }: ShopPlans<JobInShop>): boolean =>
  pending.size === 0 && plans.every(({ schedule }) => !isBeingPlanned(schedule));

const valuesIn = onceFor(<T>(all: readonly Outcome<T>[]): readonly T[] => all.map(valueIn)) as <T>(
  all: readonly Outcome<T>[],
) => readonly T[];

const keyOf = ({ file, declaration }: Job): string => `${file}\u0000${declaration}`;

/** The keys of the jobs in the same shop that end before this one begins. */
function earlierIn(job: Job, scope: Scope, inShop: ReadonlySet<Job>): readonly string[] {
  return jobGraph(scope)
    .earlier(job)
    .flatMap((name) => {
      const earlier = scope.jobs.get(name);
      return earlier && inShop.has(earlier) ? [keyOf(earlier)] : [];
    });
}

const memberOf = (
  { job, input, alone }: ReturnType<ShopParts["members"]>[number],
  after: readonly string[],
): JobInShop => ({
  job,
  key: keyOf(job),
  name: job.name,
  input,
  alone,
  ...(job.ready ? { due: endOfDateWanted(job.ready) } : {}),
  after,
});
