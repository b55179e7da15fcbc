/**
 * Plans the jobs of a shop in sessions: equal steps over surfaces and pieces are done in one go.
 *
 * What a session is. Tasks of one kind, the same step with the same grits or the same material by the same method, by
 * one person, one after the other. What is fixed, stirring, setting up and cleaning, is done once, before the first
 * task. A session that fits some opening lies in one; only a single task longer than every opening goes on after closing.
 * What is to be done `together` is one session; what is to be done `apart` has a kind of its own for each chain.
 * A session starts and ends on a grid of five minutes; waits end on it, rounded up, and windows close on it, rounded
 * down. It is no longer than its kind allows (`SessionRule.mostHours`: pot life, rounded down).
 *
 * What is best. Lexicographic: days late, last work, dust on wet coats, the sum of the jobs' last works, the end of the last
 * wait, sessions, changes of material. A plan without such dust goes before an earlier last work where it makes no job
 * late and costs no more than a day (`room-dust.ts`). The bound is one on the last work, whatever the dust
 * (`session-bound.ts`); `gap` and `exact` are about it.
 *
 * How. Scheduling of batches with incompatible families on identical parallel machines, on a calendar and with maximum
 * time lags (Potts and Kovalyov, "Scheduling with batching: A review", 2000). A plan is a sequence of batches
 * (`batch-sequence.ts`), each put down at its earliest times (`workshop.ts`: serial schedule generation); blocks that
 * windows tie together go in as a whole, so no window is missed for want of hands, or in parts where the search finds
 * that others fit in between. Dispatch rules make the first
 * sequences, iterated local search betters them (`local-search.ts`; Lourenço, Martin and Stützle, "Iterated local
 * search", 2003). A plan with fewer people is also a plan with more, so smaller crews are tried while they could do
 * better.
 *
 * Where a plan was kept (`HandsItem.kept`), one near it is made first (`near-kept.ts`), and taken unless it makes a job
 * late that need not be.
 *
 * Several jobs of a shop are searched together, and may share sessions; more than 60 of them are planned one after the
 * other (`plan-in-order.ts`).
 */
import { dayMs, endAfterWork, hourMs, pausesBetween, workingTimeBefore } from "../calendar.ts";
import { localDateTime } from "../problem.ts";
import type { Conflict, PlannedItem, PlannedSession, Schedule, ScheduleInput } from "../types.ts";
import { compareObjectives, inTurn, type SessionPlan } from "./batch-sequence.ts";
import { searchSessions } from "./local-search.ts";
import { isTooEarlyForOrders } from "./order-proof.ts";
import { planInOrder } from "./plan-in-order.ts";
import { dustMeetings, isDustLikely } from "./room-dust.ts";
import { roomHolds } from "./room-load.ts";
import { boundSessions, fewestSessions } from "./session-bound.ts";
import { floatOfSessions } from "./session-float.ts";
import {
  ceilToGrid,
  floorToGrid,
  gridMs,
  type Kind,
  makeSessionProblem,
  type RoomLimit,
  roomLimit,
  type SessionProblem,
} from "./session-problem.ts";
import { isAired, type Session } from "./workshop.ts";

/** What makes plans near one that was kept; it is an argument, as only the command line has plans kept. */
export interface NearKept {
  /** The problem with what the input says of a kept plan. */
  readonly with: (problem: SessionProblem, input: ScheduleInput) => SessionProblem;
  /** Undefined where no plan was kept, or none near it can be made. */
  readonly plan: (problem: SessionProblem) => SessionPlan | undefined;
}

export interface PlanOptions {
  readonly nearKept?: NearKept | undefined;
  /** How much of the usual search, above 0 and at most 1 for all of it. */
  readonly effort?: number;
}

/** The plan; undefined without a shop and a start, or where no plan in sessions keeps all windows. */
export function planSessions(
  input: ScheduleInput,
  { nearKept, effort = 1 }: PlanOptions = {},
): Schedule | undefined {
  const made = makeSessionProblem(input);
  if (made === undefined) return undefined;
  const problem = nearKept?.with(made, input) ?? made;
  const conflicts = batchConflicts(problem);
  if (conflicts.length > 0) return impossible(problem, conflicts);
  if (isTooMuchTogether(problem)) return inOrder(problem, input);
  const bound = boundSessions(problem, input);
  let proven = bound.lastWork;
  const isProven = ({ objective }: SessionPlan): boolean => objective[0] === 0 && objective[1]! <= proven;
  const isTooEarly = (lastWork: number): boolean => {
    const isSo = isTooEarlyForOrders(made, lastWork);
    if (isSo) proven = Math.max(proven, lastWork + gridMs);
    return isSo;
  };
  const limits = { lastWork: bound.lastWork, end: bound.end, sessions: fewestSessions(problem) };
  const near = nearKept?.plan(problem);
  const nearPlan = (): Schedule | undefined => {
    const held = inRoom(problem, input, near!, nearKept!.plan);
    return { ...scheduleOf(problem, held.plan, bound.lastWork), ...held.said, kept: "near" };
  };
  if (near?.objective[0] === 0) return nearPlan();
  const free = { ...problem, kept: undefined };
  let best = searchSessions(free, { ...limits, isTooEarly, effort });
  if (near !== undefined && (best === undefined || near.objective[0]! <= best.objective[0]!))
    return nearPlan();
  if (best === undefined) {
    if (problem.jobs.length > 1) return inOrder(problem, input);
    const items = wholeBatches(problem).flatMap((batch) => batch.items);
    return items.length > 0
      ? impossible(problem, [{ items, isBatch: true, reason: { why: "batch" } }])
      : undefined;
  }
  for (let crew = Math.min(problem.crew, problem.chains.length) - 1; crew > 0 && !isProven(best); crew--) {
    const fewer = { ...free, crew };
    if (best.objective[0] === 0 && lastWorkWith(fewer, input) > best.objective[1]!) break;
    const other = searchSessions(fewer, { ...limits, effort: effort * lessEffort });
    if (other !== undefined && compareObjectives(other.objective, best.objective) < 0) best = other;
  }
  const held = inRoom(free, input, best, (within, { objective: [, lastWork], sequence }) =>
    searchSessions(within, {
      ...limits,
      lastWork: within.keepsDustOut ? Math.max(limits.lastWork, lastWork!) : limits.lastWork,
      isTooEarly: (moment) => isTooEarlyForOrders(within, moment),
      effort: effort * roomEffort,
      ...(within.keepsDustOut ? { from: sequence } : {}),
    }),
  );
  // One chain by itself leaves nothing to choose: each task goes as early as it can.
  const isOnly = problem.chains.length === 1 && held.plan === best;
  const lastWork = held.plan.objective[1]!;
  const freely = Math.min(lastWork, best.objective[1]!);
  const lowest = isOnly ? lastWork : proven >= freely ? proven : Math.max(proven, bound.raisedTo(freely));
  return {
    ...scheduleOf(problem, held.plan, lowest),
    ...held.said,
    ...(problem.kept === undefined ? {} : { kept: "let go" }),
  };
}

/** No plan of these people ends its last work before, who may be fewer than the shop has. */
const lastWorkWith = (problem: SessionProblem, input: ScheduleInput): number =>
  boundSessions(problem, { ...input, calendar: { ...input.calendar!, crew: problem.crew } }).lastWork;

const impossible = (problem: SessionProblem, conflicts: readonly Conflict[]): Schedule => ({
  status: "impossible",
  items: [],
  startAt: localDateTime(problem, problem.start),
  elapsedHours: 0,
  lowerBound: 0,
  exact: true,
  gap: 0,
  conflicts,
});

/** What is to be done in one session, of more than one chain. */
interface WholeBatch {
  readonly kind: Kind;
  readonly items: readonly string[];
  readonly work: number;
}

const wholeBatches = ({ groups, chains, works }: SessionProblem): readonly WholeBatch[] =>
  groups.flatMap(({ kinds, members }) =>
    kinds.flatMap((kind, index): readonly WholeBatch[] => {
      if (!kind?.isWhole || members.length < 2) return [];
      const steps = members.map((chain) => chains[chain]!.steps[index]!);
      const work = members.reduce((sum, chain) => sum + works[chain]![index]!, 0);
      return [{ kind, items: steps.map(({ id }) => id), work }];
    }),
  );

/** Those that no session holds. */
function batchConflicts(problem: SessionProblem): readonly Conflict[] {
  return wholeBatches(problem).flatMap(({ kind, items, work }): readonly Conflict[] => {
    const taken = (kind.fixed + work) / hourMs;
    const conflict = (why: "opening" | "mix", within: number): Conflict => ({
      items,
      isBatch: true,
      reason: { why, pieces: items.length, taken, within: within / hourMs },
    });
    if (ceilToGrid(kind.fixed + work) > problem.shop.longest)
      return [conflict("opening", problem.shop.longest)];
    return work > kind.most ? [conflict("mix", kind.most)] : [];
  });
}

/** So many jobs, and tasks of theirs, are searched together. */
export const MOST_JOBS_TOGETHER = 60;
const MOST_TASKS_TOGETHER = 3000;

const isTooMuchTogether = ({ jobs, nHands }: SessionProblem): boolean =>
  jobs.length > MOST_JOBS_TOGETHER || (jobs.length > 1 && nHands > MOST_TASKS_TOGETHER);

/** Job by job. */
function inOrder(problem: SessionProblem, input: ScheduleInput): Schedule | undefined {
  const free = planInOrder(problem);
  if (free === undefined) return undefined;
  const { plan, said } = inRoom(problem, input, free, planInOrder);
  // Nobody is at work on more than one thing, and only within opening hours.
  const begin = problem.jobs.reduce((first, { start }) => Math.min(first, start), Number.POSITIVE_INFINITY);
  const work = problem.works.flat().reduce((sum, each) => sum + each, 0);
  const opened = workingTimeBefore(problem.shop, begin);
  const bound = floorToGrid(endAfterWork(problem.shop, opened + work / problem.crew));
  return { ...scheduleOf(problem, plan, Math.max(problem.start, bound)), inOrder: true, ...said };
}

/** A plan for the room, and what is to be said of its air and of its dust. */
interface InRoom {
  readonly plan: SessionPlan;
  readonly said: Pick<Schedule, "heldByAir" | "overAir" | "dust">;
}

/** Makes a plan within a limit of the room in the place of another. */
type SearchWithin = (within: SessionProblem, other: SessionPlan) => SessionPlan | undefined;

/** `plan`, or one that the room can bear: first for its air's sake, which people breathe, then for that of its dust. */
function inRoom(
  problem: SessionProblem,
  input: ScheduleInput,
  plan: SessionPlan,
  search: SearchWithin,
): InRoom {
  const aired = inAir(problem, input, plan, search);
  const air = aired.said.heldByAir && roomLimit(input, aired.said.heldByAir);
  const clean = withoutDust({ ...problem, air }, aired.plan, search);
  return { plan: clean.plan, said: { ...aired.said, ...clean.said } };
}

/**
 * A plan whose vapour the room's air carries away, where `plan` gives off too much at a time: by the strictest solvents
 * that may be meant, else by the usual ones. None where it would put off the last work for longer than is worth it: then
 * more air is the remedy, as the rule on the air says.
 */
function inAir(
  problem: SessionProblem,
  input: ScheduleInput,
  plan: SessionPlan,
  search: SearchWithin,
): InRoom {
  let later: number | undefined;
  for (const by of ["cautious", "usual"] as const) {
    const air = roomLimit(input, by);
    if (air === undefined || isAired({ ...plan.shop, problem: { ...problem, air } }))
      return { plan, said: {} };
    if (!isPossible(problem, air)) continue;
    const other = search({ ...problem, air }, plan);
    if (other === undefined) continue;
    const [late, lastWork] = plan.objective as readonly [number, number];
    const most = by === "cautious" ? lastWork + hourMs : 2 * lastWork - problem.start + dayMs;
    if (other.objective[0]! <= late && other.objective[1]! <= most)
      return { plan: other, said: { heldByAir: by } };
    if (by === "usual") later = Math.max(0, other.objective[1]! - lastWork);
  }
  return { plan, said: { overAir: later === undefined ? {} : { laterHours: later / hourMs } } };
}

/**
 * A plan that makes no dust while coats are wet, in the place of one that does. None where it would make a job late or put
 * off the last work for longer than is worth it: then what is wet can be covered.
 */
function withoutDust(problem: SessionProblem, plan: SessionPlan, search: SearchWithin): InRoom {
  if (!isDustLikely(problem)) return { plan, said: {} };
  const inHours = hoursOf(problem);
  const meetings = dustMeetings(problem, plan.shop.byKind, inHours);
  if (meetings.length === 0) return { plan, said: {} };
  const other = search({ ...problem, keepsDustOut: true }, plan);
  if (other === undefined) return { plan, said: { dust: { meetings } } };
  const [late, lastWork] = plan.objective as readonly [number, number];
  const later = Math.max(0, other.objective[1]! - lastWork);
  const laterHours = later / hourMs;
  if (other.objective[0]! > late || later > mostForDust)
    return { plan, said: { dust: { meetings, laterHours } } };
  return { plan: other, said: later > 0 ? { dust: { meetings: [], laterHours } } : {} };
}

/** How much later the last work may be for the sake of coats without dust. */
const mostForDust = dayMs;

/** Whether each task by itself can be done in the room's air. */
const isPossible = (problem: SessionProblem, { stretches, vapours }: RoomLimit): boolean =>
  problem.chains.every(({ steps }, chain) => {
    const { kinds } = problem.groups[problem.groupOf[chain]!]!;
    return steps.every((step, index) => {
      const vapour = vapours[chain]![index];
      if (vapour === undefined || step.kind !== "hands") return true;
      const from = problem.start;
      const to = from + ceilToGrid(kinds[index]!.fixed + step.work) + vapour.after;
      return roomHolds(problem.shop, stretches, [], [{ from, to, shares: vapour.shares }]);
    });
  });

/** How much of the search is made within the room's air, and again without dust. */
const roomEffort = 0.3;

/** How much of the search is made with fewer people. */
const lessEffort = 0.15;

/** Hours after the start of the plan. */
const hoursOf =
  ({ start }: SessionProblem) =>
  (time: number): number =>
    (time - start) / hourMs;

function scheduleOf(problem: SessionProblem, plan: SessionPlan, bound: number): Schedule {
  const inHours = hoursOf(problem);
  const sessions = [...plan.shop.byKind.values()].flat();
  const people = inTurn(sessions, problem.crew);
  const lastWork = plan.objective[1]!;
  const ends = plan.shop.times.map((times) => ceilToGrid(times.ends.at(-1) ?? problem.start));
  const finish = ends.reduce((latest, end) => Math.max(latest, end), problem.start);
  const finishes = problem.jobs.map(() => problem.start);
  for (const [chain, end] of ends.entries()) {
    const job = problem.jobOf[chain]!;
    finishes[job] = Math.max(finishes[job]!, end);
  }
  return {
    status: "planned",
    items: plannedItems(problem, plan, people, finishes),
    startAt: localDateTime(problem, problem.start),
    finishAt: localDateTime(problem, finish),
    elapsedHours: inHours(finish),
    lastWorkHours: inHours(lastWork),
    lastWorkAt: localDateTime(problem, lastWork),
    // A bound above the plan would be wrong, and is left to be seen.
    lowerBound: inHours(bound),
    exact: bound >= lastWork,
    gap: bound > problem.start ? (lastWork - bound) / (bound - problem.start) : 0,
    conflicts: [],
    sessions: plannedSessions(problem, people),
  };
}

function plannedItems(
  problem: SessionProblem,
  plan: SessionPlan,
  people: readonly (readonly Session[])[],
  finishes: readonly number[],
): readonly PlannedItem[] {
  const { times } = plan.shop;
  const { slack, critical } = floatOfSessions(plan.shop, people, finishes);
  const inHours = hoursOf(problem);
  const begun = new Map(
    people.flat().map(({ start, tasks: [first] }) => [`${first!.chain} ${first!.index}`, start]),
  );
  return problem.chains.flatMap((chain, place) =>
    chain.steps.map((step, index): PlannedItem => {
      const { starts, ends } = times[place]!;
      const end = ceilToGrid(ends[index]!);
      // Setting up belongs to the first task; on the grid a task begins no earlier than the one before has ended.
      const begin = begun.get(`${place} ${index}`) ?? floorToGrid(starts[index]!);
      const start = Math.max(begin, index > 0 ? ceilToGrid(ends[index - 1]!) : problem.start);
      const pauses = step.kind === "hands" ? pausesBetween(problem.shop, start, end) : [];
      return {
        id: step.id,
        chain: chain.key,
        start: inHours(start),
        end: inHours(end),
        workEnd: inHours(ends[index]!),
        startAt: localDateTime(problem, start),
        endAt: localDateTime(problem, end),
        slack: Math.floor((slack[place]![index]! / hourMs) * 12) / 12,
        critical: critical[place]![index]!,
        pauses: pauses.map((pause) => ({ start: inHours(pause.start), end: inHours(pause.end) })),
      };
    }),
  );
}

function plannedSessions(
  problem: SessionProblem,
  people: readonly (readonly Session[])[],
): readonly PlannedSession[] {
  const inHours = hoursOf(problem);
  return people
    .flatMap((done, person) =>
      done.map(
        ({ kind, start, end, work, tasks }): PlannedSession => ({
          kind: kind.name,
          start: inHours(start),
          end: inHours(end),
          hours: ceilToGrid(kind.fixed + work) / hourMs,
          fixed: kind.fixed / hourMs,
          person,
          items: tasks.map(({ chain, index }) => problem.chains[chain]!.steps[index]!.id),
        }),
      ),
    )
    .sort((a, b) => a.start - b.start || a.person - b.person);
}
