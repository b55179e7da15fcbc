/**
 * The sessions put down so far, and where the next batch fits: serial schedule generation for whole sessions.
 *
 * A batch is some chains of a group with a task, and mostly with those that recoat windows tie to it. It goes in as a
 * whole, at the earliest moment at which each of its tasks finds one person free for the session, in one
 * opening, after all waits and within all windows; where a window would be missed, the session it counts from is
 * pushed later and the batch is timed again. A task may join a session of its kind that ends just when it is ready.
 */
import { closingAfter, dayMs, hourMs, minuteMs } from "../calendar.ts";
import { emptyTimes, endAt, type Times, waitEnd } from "../chain-timing.ts";
import { makeResourceProfile, type ResourceProfile } from "../resource-profile.ts";
import { endOf } from "../task-placement.ts";
import { clearFrom } from "./room-dust.ts";
import { type Release, roomHolds } from "./room-load.ts";
import {
  ceilToGrid,
  floorToGrid,
  type Group,
  gridMs,
  type Kind,
  type SessionProblem,
} from "./session-problem.ts";

/** Work of one person in one go. */
export interface Session {
  readonly kind: Kind;
  readonly start: number;
  /** On the grid. */
  end: number;
  /** When the last task has really ended. */
  workEnd: number;
  /** Milliseconds of work without what is fixed. */
  work: number;
  readonly tasks: { readonly chain: number; readonly index: number }[];
}

/** One task of a batch, timed. */
interface Placed {
  readonly index: number;
  readonly members: readonly number[];
  readonly kind: Kind;
  /** Where the first member's work begins, after setting up. */
  begin: number;
  start: number;
  end: number;
  workEnd: number;
  work: number;
  joins: Session | undefined;
}

export interface Batch {
  readonly members: readonly number[];
  /** How many blocks it takes each of them on. */
  readonly blocks: number;
  /** The last item of the last of them. */
  readonly last: number;
  readonly placed: readonly Placed[];
  readonly start: number;
  readonly firstEnd: number;
}

export interface Workshop {
  readonly problem: SessionProblem;
  readonly profile: ResourceProfile;
  readonly times: readonly Times[];
  readonly byKind: Map<Kind, Session[]>;
  /** By chain, how many of its blocks are done. */
  readonly position: number[];
  /** By group and block, how many chains have it before them. */
  readonly waiting: readonly number[][];
  /** By job, chains that are not done. */
  readonly open: number[];
  /** By job, when its last item ends so far. */
  readonly jobEnd: number[];
  /** What has been put down gives off. */
  readonly releases: Release[];
  /** Tasks timed, the clock of whoever searches. */
  looks: number;
}

export function emptyWorkshop(problem: SessionProblem): Workshop {
  const open = problem.jobs.map(() => 0);
  for (const [place, { steps }] of problem.chains.entries())
    if (steps.length > 0) open[problem.jobOf[place]!]!++;
  return {
    problem,
    profile: problem.taken?.profile.copy() ?? makeResourceProfile(problem.shop, problem.crew),
    times: problem.chains.map(emptyTimes),
    byKind: new Map(),
    position: problem.chains.map(() => 0),
    waiting: problem.groups.map(({ blocks, members }) =>
      blocks.map((_, block) => (block === 0 ? members.length : 0)),
    ),
    open,
    jobEnd: problem.jobs.map(({ start }) => start),
    releases: [...(problem.taken?.releases ?? [])],
    looks: 0,
  };
}

/** The same state once more; what is put down in one is not in the other. */
export function copyOf(shop: Workshop): Workshop {
  const byKind = new Map<Kind, Session[]>();
  for (const [kind, sessions] of shop.byKind)
    byKind.set(
      kind,
      sessions.map((session) => ({ ...session, tasks: session.tasks.slice() })),
    );
  return {
    problem: shop.problem,
    profile: shop.profile.copy(),
    times: shop.times.map(({ starts, ends, holds }) => ({
      starts: starts.slice(),
      ends: ends.slice(),
      holds,
    })),
    byKind,
    position: shop.position.slice(),
    waiting: shop.waiting.map((row) => row.slice()),
    open: shop.open.slice(),
    jobEnd: shop.jobEnd.slice(),
    releases: shop.releases.slice(),
    looks: shop.looks,
  };
}

/** Whether a job may begin: those that it comes after are done. */
export const mayBegin = ({ problem, open }: Workshop, job: number): boolean =>
  problem.jobs[job]!.after.every((before) => open[before] === 0);

/** When blocks of a job may begin at the earliest. */
function jobFloor({ problem, jobEnd }: Workshop, job: number): number {
  const { start, after } = problem.jobs[job]!;
  let floor = start;
  for (const before of after) floor = Math.max(floor, jobEnd[before]!);
  return floor;
}

/** When a block of some chains of a group may begin at the earliest, by what is done of each of them. */
export function readyTimes(
  shop: Workshop,
  { job, blocks }: Group,
  block: number,
  chains: readonly number[],
): readonly number[] {
  const floor = jobFloor(shop, job);
  const before = blocks[block]![0] - 1;
  return chains.map((chain) => (before < 0 ? floor : Math.max(floor, shop.times[chain]!.ends[before]!)));
}

/**
 * The batch at its earliest times, written into the members' times; undefined when it fits nowhere. It goes on to the
 * block `until`, without it to the last one that windows tie to it: what ends before may come too late for the rest.
 */
export function timeBatch(
  shop: Workshop,
  group: Group,
  block: number,
  members: readonly number[],
  until = group.tiedTo[block]!,
): Batch | undefined {
  const { problem } = shop;
  const first = group.blocks[block]![0];
  const last = group.blocks[until]![1];
  const { steps, hasWindows } = group.pattern;
  const ready = readyTimes(shop, group, block, members);
  // From here on every week is the same, and nobody else is at work.
  const settled = hasWindows
    ? Math.max(...ready, problem.shop.settledFrom, lastEnd(shop), problem.taken?.until ?? 0)
    : 0;
  const firstBegun: number[] = [];
  const placed: Placed[] = [];
  const holds: number[] = [];
  for (let index = first; index <= last; index++) {
    if (steps[index]!.kind !== "hands") {
      for (let at = 0; at < members.length; at++) placeWait(shop, members[at]!, index, first, ready[at]!);
      continue;
    }
    shop.looks += members.length + 4;
    const from = index === first ? ready : members.map((chain) => shop.times[chain]!.ends[index - 1]!);
    const kind = group.kinds[index]!;
    const turns = kind.isApart ? members.map((_, at) => [at]) : undefined;
    const before = placed.length;
    for (let turn = 0; turn < (turns?.length ?? 1); turn++) {
      const those = turns?.[turn];
      const one = placeTask(shop, kind, index, those?.map((at) => members[at]!) ?? members, {
        ready: those?.map((at) => from[at]!) ?? from,
        hold: holds[index] ?? 0,
        floor: placed.at(-1)?.end ?? problem.start,
        before: placed,
      });
      if (one === undefined) return undefined;
      placed.push(one);
    }
    if (!hasWindows) continue;
    // What windows keep from going in one settled week goes in none.
    const begun = firstBegun[index];
    const begin = placed[before]!.begin;
    if (begun === undefined) firstBegun[index] = Math.max(settled, begin);
    else if (begin > begun + weekMs) return undefined;
    const late = lateBy(shop, index, members);
    if (late <= 0) continue;
    const step = steps[index]!;
    const of = step.kind === "hands" ? step.window!.of : -1;
    const at = placed.findIndex((other) => other.index === of);
    if (at < 0) return undefined;
    holds[of] = placed[at]!.begin + late;
    placed.length = at;
    index = of - 1;
  }
  const firsts = placed.findLast(({ index }) => index === placed[0]!.index);
  return {
    members,
    blocks: until - block + 1,
    last,
    placed,
    start: placed[0]?.start ?? Math.max(...ready),
    firstEnd: firsts?.end ?? Math.max(...ready),
  };
}

const weekMs = 7 * dayMs;

const lastEnd = ({ jobEnd }: Workshop): number => Math.max(...jobEnd);

/** A wait of one chain; `ready` is where its block begins, at item `first`. */
function placeWait(shop: Workshop, chain: number, index: number, first: number, ready: number): void {
  const { problem } = shop;
  const times = shop.times[chain]!;
  const step = problem.chains[chain]!.steps[index]!;
  // Whoever follows the plan reads ends on the grid, so waits count from there.
  const previous = index === first ? ready : ceilToGrid(endAt(problem, times, index - 1));
  const counted = step.kind === "wait" ? (step.of < 0 ? ready : ceilToGrid(times.ends[step.of]!)) : 0;
  times.starts[index] = previous;
  times.ends[index] = Math.max(previous, ceilToGrid(waitEnd(problem, step, previous, counted)));
}

interface Floors {
  /** By member, when its task may begin. */
  readonly ready: readonly number[];
  /** No task begins before, for the sake of a window. */
  readonly hold: number;
  /** Nobody is at it before. */
  readonly floor: number;
  /** The batch's tasks before it, not put down yet. */
  readonly before: readonly Placed[];
}

/** Times one task of all members in one session; undefined when they are too much for one. */
function placeTask(
  shop: Workshop,
  kind: Kind,
  index: number,
  members: readonly number[],
  { ready, hold, floor, before }: Floors,
): Placed | undefined {
  const { problem, profile } = shop;
  const { works, kept } = problem;
  let work = 0;
  let readyAt = hold;
  let earliest = hold;
  for (let at = 0; at < members.length; at++) {
    const chain = members[at]!;
    readyAt = Math.max(readyAt, ready[at]! - work);
    if (kept !== undefined) earliest = Math.max(earliest, (kept[chain]?.[index]?.from ?? 0) - work);
    work += works[chain]![index]!;
  }
  earliest = Math.max(earliest, readyAt);
  if (work > kind.most && members.length > 1) return undefined;
  const length = ceilToGrid(kind.fixed + work);
  const isWhole = length <= problem.shop.longest;
  if (!isWhole && members.length > 1) return undefined;
  let from = Math.max(floor, earliest - kind.fixed);
  const most = problem.taken === undefined ? mostTries : mostTriesAmongOthers;
  // In steps of an hour after a while; what fits then is looked for again in small ones, from where it did not fit.
  let step = gridMs;
  for (let tries = 0; tries < most; tries++) {
    if (tries === 24) step = hourMs;
    const start = startOnGrid(profile, from, length, isWhole);
    if (!Number.isFinite(start)) return undefined;
    const apart: Placed = {
      index,
      members,
      kind,
      begin: start + kind.fixed,
      start,
      end: isWhole ? start + length : endOf(problem.shop, start, length),
      workEnd: isWhole ? start + kind.fixed + work : endOf(problem.shop, start, kind.fixed + work),
      work,
      joins: undefined,
    };
    const joining =
      isWhole && !kind.isApart && tries === 0
        ? (joinedAgain(shop, apart, Math.max(readyAt, floor)) ??
          joined(shop, apart, Math.max(earliest, floor)))
        : undefined;
    let fits: Placed | undefined;
    let clear: number | undefined;
    for (const one of joining === undefined ? [apart] : [joining, apart]) {
      writeTask(shop, one, isWhole);
      clear = isInAir(shop, one, before) ? freeOfDust(shop, one, before) : start;
      if (clear !== undefined) continue;
      fits = one;
      break;
    }
    if (fits !== undefined && step === gridMs) return fits;
    if (fits !== undefined) {
      step = gridMs;
      from -= hourMs - gridMs;
      continue;
    }
    // Too much at once is too much at any time: fewer may go.
    if (tries === 0 && members.length > 1 && !isInAir({ ...shop, releases: [] }, apart, [])) return undefined;
    from = Math.max(start + step, clear ?? start);
  }
  return undefined;
}

/** Where dust is kept out, the moment until which the members' task waits for others that it meets; undefined: for none. */
function freeOfDust(shop: Workshop, one: Placed, before: readonly Placed[]): number | undefined {
  const { problem, byKind } = shop;
  if (!problem.keepsDustOut) return undefined;
  return clearFrom(one, { sessions: byKind.values(), before, taken: problem.taken });
}

/** How often a session is put off for the sake of the room's air; other jobs may have filled it for weeks. */
const mostTries = 100;
const mostTriesAmongOthers = 600;

/** Whether the room's air carries away what the members' task gives off, with all that has been put down. */
function isInAir(shop: Workshop, one: Placed, before: readonly Placed[]): boolean {
  const { problem, releases } = shop;
  if (problem.air === undefined) return true;
  const added = releasesOf(shop, one);
  if (added.length === 0) return true;
  const own = before.flatMap((other) => releasesOf(shop, other));
  shop.looks += added.length + own.length + releases.length / 4;
  return roomHolds(problem.shop, problem.air.stretches, [...releases, ...own], added);
}

function releasesOf(shop: Workshop, { index, members, start, joins }: Placed): readonly Release[] {
  return members.flatMap((chain, place) =>
    releaseOf(shop, chain, index, place === 0 && joins === undefined ? start : undefined),
  );
}

/** What a task gives off by the times that are written; a session begins with setting up, which counts to the first. */
function releaseOf(
  { problem, times }: Workshop,
  chain: number,
  index: number,
  begin: number | undefined,
): readonly Release[] {
  const vapour = problem.air?.vapours[chain]?.[index];
  if (vapour === undefined) return [];
  const { starts, ends } = times[chain]!;
  const from = begin ?? floorToGrid(starts[index]!);
  return [
    { from, to: Math.max(ceilToGrid(ends[index]!) + vapour.after, from + minuteMs), shares: vapour.shares },
  ];
}

/** The same task at the end of a session of its kind that it can go on with no later. */
function joined(shop: Workshop, one: Placed, earliest: number): Placed | undefined {
  let best: Placed | undefined;
  for (const session of shop.byKind.get(one.kind) ?? []) {
    const begin = session.workEnd;
    if (begin < earliest || begin > (best ?? one).begin) continue;
    best = atEndOf(shop, session, one) ?? best;
  }
  return best;
}

/** The same task at the end of the session in which a plan that was kept has it, though it may be later. */
function joinedAgain(shop: Workshop, one: Placed, readyAt: number): Placed | undefined {
  const { kept } = shop.problem;
  const own = kept?.[one.members[0]!]?.[one.index]?.session;
  if (own === undefined) return undefined;
  const session = shop.byKind
    .get(one.kind)
    ?.find(({ tasks: [first] }) => kept![first!.chain]![first!.index]?.session === own);
  return session && session.workEnd >= readyAt ? atEndOf(shop, session, one) : undefined;
}

/** Undefined where it is too much for the session, or its people are not free for so long. */
function atEndOf({ problem, profile }: Workshop, session: Session, one: Placed): Placed | undefined {
  if (session.work + one.work > one.kind.most) return undefined;
  const begin = session.workEnd;
  const end = ceilToGrid(begin + one.work);
  const more = end - session.end;
  if (more > 0) {
    if (closingAfter(problem.shop, session.start) < end) return undefined;
    if (profile.findStart(session.end, more, true) !== session.end) return undefined;
  }
  return {
    ...one,
    begin,
    start: session.end,
    end: Math.max(end, session.end),
    workEnd: begin + one.work,
    joins: session,
  };
}

function writeTask(
  { problem, times }: Workshop,
  { index, members, begin, start, kind }: Placed,
  isWhole: boolean,
): void {
  let done = begin;
  for (const chain of members) {
    const work = problem.works[chain]![index]!;
    const { starts, ends } = times[chain]!;
    starts[index] = isWhole ? done : start;
    ends[index] = isWhole ? done + work : endOf(problem.shop, start, kind.fixed + work);
    done += work;
  }
}

/** By how much the members' task misses its window, the worst of them; 0 when it is kept. */
function lateBy({ problem, times }: Workshop, index: number, members: readonly number[]): number {
  let late = 0;
  for (const chain of members) {
    const step = problem.chains[chain]!.steps[index]!;
    if (step.kind !== "hands" || step.window === undefined) continue;
    const closes = floorToGrid(endAt(problem, times[chain]!, step.window.of) + step.window.within);
    late = Math.max(late, times[chain]!.starts[index]! - closes);
  }
  return late;
}

function startOnGrid(profile: ResourceProfile, from: number, length: number, isWhole: boolean): number {
  for (let time = ceilToGrid(from); ; ) {
    const start = profile.findStart(time, length, isWhole);
    if (!Number.isFinite(start)) return start;
    const onGrid = ceilToGrid(start);
    if (onGrid === start) return start;
    time = onGrid;
  }
}

/** Puts a timed batch down for good. */
export function putDown(shop: Workshop, { members, blocks, placed, last }: Batch): void {
  const { problem, profile, byKind, times, position, open, jobEnd } = shop;
  for (const one of placed) {
    const { index, members: those, kind, start, end, workEnd, work, joins } = one;
    if (problem.air !== undefined) shop.releases.push(...releasesOf(shop, one));
    const tasks = those.map((chain) => ({ chain, index }));
    if (joins !== undefined) {
      if (end > joins.end) profile.take(joins.end, end - joins.end);
      joins.end = end;
      joins.workEnd = workEnd;
      joins.work += work;
      joins.tasks.push(...tasks);
      continue;
    }
    profile.take(start, ceilToGrid(kind.fixed + work));
    const session: Session = { kind, start, end, workEnd, work, tasks };
    const others = byKind.get(kind);
    if (others === undefined) byKind.set(kind, [session]);
    else others.push(session);
  }
  for (const chain of members) {
    const job = problem.jobOf[chain]!;
    const waitingOf = shop.waiting[problem.groupOf[chain]!]!;
    waitingOf[position[chain]!]!--;
    position[chain]! += blocks;
    if (position[chain]! < waitingOf.length) waitingOf[position[chain]!]!++;
    jobEnd[job] = Math.max(jobEnd[job]!, times[chain]!.ends[last]!);
    if (position[chain] === waitingOf.length) open[job]!--;
  }
}

/** Whether the room's air carries away all that has been put down. */
export function isAired(shop: Workshop): boolean {
  const { problem, byKind } = shop;
  if (problem.air === undefined) return true;
  const releases = [...byKind.values()]
    .flat()
    .flatMap(({ start, tasks }) =>
      tasks.flatMap(({ chain, index }, place) =>
        releaseOf(shop, chain, index, place === 0 ? start : undefined),
      ),
    );
  return roomHolds(problem.shop, problem.air.stretches, [], releases);
}
