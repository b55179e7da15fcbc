/**
 * One plan for the jobs of a shop that need its people at the same time.
 *
 * Jobs that have nothing to do with each other, because the last work of one is done before the other begins, are planned
 * by themselves, so that an edit costs the jobs that it touches. Which do is told by their plans by themselves and by how
 * much work there is; where a plan of several comes to end later than that, those that it then meets join it.
 */
import { hourOf } from "../../measure/iso-dates.ts";
import { onceFor } from "../../once.ts";
import { isBeingPlanned } from "../being-planned.ts";
import { dayMs, hourMs, makeShopTime, startAfterWork, workingTimeBefore } from "../calendar.ts";
import type { Calendar, Schedule, ScheduleInput } from "../types.ts";
import type { ShopMember } from "./shop-input.ts";

/** More jobs, or tasks, than this are not planned together, not even one after the other. */
export const MOST_JOBS_IN_PLAN = 300;
const MOST_TASKS_IN_PLAN = 20_000;

/** What came of the jobs of a shop. */
export interface ShopPlans<M extends ShopMember> {
  /** In the order of time, of two jobs or more each; those that are still being planned among them. */
  readonly plans: readonly SharedPlan<M>[];
  /** Planned by themselves, because nobody else needs the people of the shop then. */
  readonly singles: readonly M[];
  /** Planned by themselves although others may need the same people: too many, or no plan in sessions holds them. */
  readonly leftOut: readonly M[];
  /** Those whose plan is not known before that of others is. */
  readonly pending: ReadonlySet<M>;
}

export interface SharedPlan<M extends ShopMember> {
  readonly members: readonly M[];
  readonly schedule: Schedule;
}

/** `plan` makes the plan of several, or says that it is being planned. Members in any order. */
export function planShop<M extends ShopMember>(
  members: readonly M[],
  plan: (members: readonly M[]) => Schedule,
): ShopPlans<M> {
  const isAble = ({ alone, input }: M): boolean => isBeingPlanned(alone) || isInSessions(alone, input);
  const leftOut = members.filter((member) => !isAble(member) && member.alone.items.length > 0);
  const sorted = members
    .filter(isAble)
    .map((member) => ({ member, begin: beginOf(member) }))
    .sort((a, b) => a.begin - b.begin || (a.member.key < b.member.key ? -1 : 1))
    .map(({ member }) => member);
  const followers = followersOf(sorted);
  const plans: SharedPlan<M>[] = [];
  const singles: M[] = [];
  let from = 0;
  while (from < sorted.length) {
    const group = [sorted[from]!];
    let to = from + 1;
    const reach = createReach(sorted[from]!, followers);
    let end = reach.end();
    let schedule: Schedule | undefined;
    for (;;) {
      const before = to;
      while (to < sorted.length && end !== undefined && beginOf(sorted[to]!) < end) {
        const member = sorted[to]!;
        group.push(member);
        to += 1;
        reach.add(member);
        const own = reach.end();
        end = own && Math.max(own, end);
      }
      if (end === undefined) return { plans, singles, leftOut, pending: new Set(sorted.slice(from)) };
      if (group.length === 1 || (schedule !== undefined && to === before)) break;
      const { planned, tooMany } = withinBounds(group);
      leftOut.push(...tooMany);
      group.splice(0, group.length, ...planned);
      schedule = plan(planned);
      if (isBeingPlanned(schedule)) {
        plans.push({ members: planned, schedule });
        return {
          plans,
          singles,
          leftOut,
          pending: new Set(sorted.slice(from).filter((each) => !leftOut.includes(each))),
        };
      }
      if (schedule.status !== "planned") break;
      end = Math.max(end, hourOf(schedule.startAt!) + schedule.lastWorkHours! + lingering(group));
    }
    if (schedule?.status === "planned") plans.push({ members: [...group], schedule });
    else if (group.length > 1) leftOut.push(...group);
    else singles.push(...group);
    from = to;
  }
  return { plans, singles, leftOut, pending: new Set() };
}

const isInSessions = ({ status, sessions, items, startAt }: Schedule, input: ScheduleInput): boolean =>
  status === "planned" &&
  sessions !== undefined &&
  items.length > 0 &&
  startAt !== undefined &&
  input.calendar !== undefined;

const beginOf = onceFor(({ alone, input }: ShopMember): number =>
  hourOf(alone.startAt ?? input.start ?? "1970-01-01"),
);

type Followers = ReadonlyMap<string, readonly ShopMember[]>;

/** By the key of a job, those that come after it. */
function followersOf(members: readonly ShopMember[]): Followers {
  const followers = new Map<string, ShopMember[]>();
  for (const member of members)
    for (const key of member.after) {
      const others = followers.get(key);
      if (others === undefined) followers.set(key, [member]);
      else others.push(member);
    }
  return followers;
}

/** How far the work of some jobs reaches. */
interface Reach {
  add(member: ShopMember): void;
  /**
   * Who begins before this hour has to do with them: the people of the shop are at work on them, what they give off is in its
   * room, or somebody who comes after one of them would begin before it has ended. Undefined: not known.
   */
  end(): number | undefined;
}

/** Members are added in the order in which they begin. */
function createReach(first: ShopMember, followers: Followers): Reach {
  const begin = beginOf(first);
  let isKnown = true;
  let [apart, stays, held, work] = [begin, 0, begin, 0];
  let count = 0;
  const add = (member: ShopMember): void => {
    const { key, alone } = member;
    count += 1;
    if (isBeingPlanned(alone)) isKnown = false;
    if (!isKnown) return;
    const starts = beginOf(member);
    apart = Math.max(apart, starts + (alone.lastWorkHours ?? 0));
    stays = Math.max(stays, lingering([member]));
    work += workHours(alone);
    for (const follower of followers.get(key) ?? []) {
      const next = beginOf(follower);
      // Just after it begins, so that it joins.
      if (next < starts + alone.elapsedHours) held = Math.max(held, next + MINUTE_H);
    }
  };
  add(first);
  const { calendar } = first.input;
  const byWork = calendar ? endByWork(begin, calendar) : () => begin;
  return {
    add,
    end: () => (isKnown ? Math.max(apart + stays, held, count > 1 ? byWork(work) : begin) : undefined),
  };
}

const MINUTE_H = 1 / 60;

/** When so many hours of work end at the earliest if the people of the shop never wait. */
function endByWork(begin: number, { hours, closed, crew }: Calendar): (work: number) => number {
  const firstDay = Math.floor(begin / 24);
  const shop = makeShopTime({ ...(hours ? { hours } : {}), closed }, firstDay);
  const done = workingTimeBefore(shop, begin * hourMs - firstDay * dayMs);
  return (work) => {
    const end = startAfterWork(shop, done + (work / Math.max(1, crew)) * hourMs);
    return Number.isFinite(end) ? (end + firstDay * dayMs) / hourMs : begin;
  };
}

const workHours = ({ sessions = [] }: Schedule): number =>
  sessions.reduce((sum, { hours }) => sum + hours, 0);

/** How long after its work something is in the air, or what is wet may not be dusted, hours. */
const lingering = (group: readonly ShopMember[]): number =>
  group.reduce(
    (most, { input }) =>
      input.chains.reduce(
        (longest, { items }) =>
          items.reduce(
            (hours, item) =>
              item.kind === "hands"
                ? Math.max(hours, item.vapour?.afterHours ?? 0, item.session?.wetHours ?? 0)
                : hours,
            longest,
          ),
        most,
      ),
    0,
  );

/** Those that are due first, as many as one plan holds. */
function withinBounds<M extends ShopMember>(
  group: readonly M[],
): { readonly planned: readonly M[]; readonly tooMany: readonly M[] } {
  const tasks = ({ input }: M): number => input.chains.reduce((sum, { items }) => sum + items.length, 0);
  if (
    group.length <= MOST_JOBS_IN_PLAN &&
    group.reduce((sum, each) => sum + tasks(each), 0) <= MOST_TASKS_IN_PLAN
  )
    return { planned: group, tooMany: [] };
  const wanted = group.toSorted(
    (a, b) => dueOf(a) - dueOf(b) || beginOf(a) - beginOf(b) || (a.key < b.key ? -1 : 1),
  );
  const taken = new Set<M>();
  let sum = 0;
  for (const member of wanted) {
    sum += tasks(member);
    if (taken.size >= MOST_JOBS_IN_PLAN || sum > MOST_TASKS_IN_PLAN) break;
    taken.add(member);
  }
  return {
    planned: group.filter((member) => taken.has(member)),
    tooMany: group.filter((member) => !taken.has(member)),
  };
}

const dueOf = ({ due }: ShopMember): number => (due === undefined ? Number.MAX_VALUE : hourOf(due));
