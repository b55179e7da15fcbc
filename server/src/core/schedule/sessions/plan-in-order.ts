/**
 * Plans the jobs of a shop one after the other, each fixed before the next: for more jobs than a search of all of them
 * together could better. Whoever is due first chooses first; a job goes after those that it comes after. What the jobs
 * before have left of people's hours, and of the room's air, is where the next one fits in; sessions are not shared
 * between jobs.
 */
import { emptyTimes } from "../chain-timing.ts";
import { makeResourceProfile } from "../resource-profile.ts";
import { objectiveOf, type SessionPlan } from "./batch-sequence.ts";
import { searchSessions } from "./local-search.ts";
import { dustSpan, wetSpan, withSpan } from "./room-dust.ts";
import type { Release } from "./room-load.ts";
import { fewestSessions } from "./session-bound.ts";
import { ceilToGrid, type Kind, type SessionProblem, type Span, type Taken } from "./session-problem.ts";
import { emptyWorkshop, type Session } from "./workshop.ts";

/** The plan; undefined when a job fits nowhere. */
export function planInOrder(problem: SessionProblem): SessionPlan | undefined {
  const profile = makeResourceProfile(problem.shop, problem.crew);
  const releases: Release[] = [];
  let dusty: readonly Span[] = [];
  let wet: readonly Span[] = [];
  let until = problem.start;
  const times = problem.chains.map(emptyTimes);
  const byKind = new Map<Kind, Session[]>();
  const jobEnd = problem.jobs.map(({ start }) => start);
  const effort = Math.min(mostEffort, wholeEffort / problem.jobs.length);
  let looks = 0;
  for (const job of inOrder(problem)) {
    const { part, places } = partOf(problem, job, { profile, until, releases, dusty, wet }, jobEnd);
    if (places.length === 0) continue;
    const limits = {
      lastWork: problem.start,
      end: problem.start,
      sessions: fewestSessions(part),
      effort,
    };
    const plan = searchSessions(part, limits);
    if (plan === undefined) return undefined;
    looks += plan.shop.looks;
    releases.push(...plan.shop.releases.slice(part.taken!.releases.length));
    for (const [at, place] of places.entries()) times[place] = plan.shop.times[at]!;
    jobEnd[job] = plan.shop.jobEnd[0]!;
    for (const [kind, sessions] of plan.shop.byKind) {
      const moved = sessions.map((session) => ({
        ...session,
        tasks: session.tasks.map(({ chain, index }) => ({ chain: places[chain]!, index })),
      }));
      byKind.set(kind, [...(byKind.get(kind) ?? []), ...moved]);
      dusty = moved.flatMap((session) => dustSpan(session) ?? []).reduce(withSpan, dusty);
      wet = moved.flatMap((session) => wetSpan(session) ?? []).reduce(withSpan, wet);
      for (const { start, end, work } of moved) {
        profile.take(start, ceilToGrid(kind.fixed + work));
        until = Math.max(until, end);
      }
    }
  }
  const shop = { ...emptyWorkshop(problem), profile, times, byKind, jobEnd, looks };
  return { shop, sequence: [], objective: objectiveOf(shop) };
}

/** How much of the usual search each job gets at most, and all of them together. */
const mostEffort = 0.2;
const wholeEffort = 12;

/** Indexes of the jobs: those due first, then those that begin first, but none before one that it comes after. */
function inOrder({ jobs }: SessionProblem): readonly number[] {
  const wanted = jobs
    .map((_, job) => job)
    .sort((a, b) => compare(jobs[a]!.due, jobs[b]!.due) || jobs[a]!.start - jobs[b]!.start || a - b);
  const order = new Set<number>();
  for (const job of wanted) {
    // Without recursion, because a chain of jobs may be long.
    const ahead = [job];
    while (ahead.length > 0) {
      const next = ahead.at(-1)!;
      const before = jobs[next]!.after.filter((each) => !order.has(each));
      if (before.length > 0) ahead.push(...before);
      else order.add(ahead.pop()!);
    }
  }
  return [...order];
}

const compare = (a: number, b: number): number => (a === b ? 0 : a - b);

/** One job by itself among what others have taken; `places` are the indexes of its chains. */
function partOf(
  problem: SessionProblem,
  job: number,
  taken: Taken,
  jobEnd: readonly number[],
): { readonly part: SessionProblem; readonly places: readonly number[] } {
  const own = problem.groups.filter((group) => group.job === job);
  const places = own.flatMap(({ members }) => members).sort((a, b) => a - b);
  const index = new Map(places.map((place, at) => [place, at]));
  const groups = own.map((group) => ({
    ...group,
    job: 0,
    members: group.members.map((place) => index.get(place)!),
  }));
  const groupOf = places.map(() => 0);
  for (const [group, { members }] of groups.entries()) for (const chain of members) groupOf[chain] = group;
  const { after, ...rest } = problem.jobs[job]!;
  const start = after.reduce((latest, before) => Math.max(latest, jobEnd[before]!), rest.start);
  const chains = places.map((place) => problem.chains[place]!);
  // What has left the room before a stretch that reaches into the job is of no account.
  const since = start - Math.max(0, ...(problem.air?.stretches ?? []));
  const releases = taken.releases.filter(({ to }) => to > since);
  const part = {
    ...problem,
    chains,
    nSteps: chains.reduce((sum, { steps }) => sum + steps.length, 0),
    nHands: chains.reduce((sum, { hands }) => sum + hands.length, 0),
    groups,
    groupOf,
    jobs: [{ ...rest, start, after: [] }],
    jobOf: places.map(() => 0),
    works: places.map((place) => problem.works[place]!),
    air: problem.air && {
      ...problem.air,
      vapours: places.map((place) => problem.air!.vapours[place]!),
    },
    taken: { ...taken, releases },
    kept: problem.kept && places.map((place) => problem.kept![place]!),
  };
  return { part, places };
}
