/**
 * The problem of a shop's sessions: the chains as the scheduler has them, and beside them what may be done in one go.
 *
 * Chains whose steps are alike in all but their lengths form a group; tasks are planned for several members of a group
 * at once. In sessions no task that fits an opening pauses at closing, so all are non-preemptive here.
 */

import { hourMs } from "../calendar.ts";
import { makeProblem, momentIn, type Problem, type ProblemChain } from "../problem.ts";
import type { ResourceProfile } from "../resource-profile.ts";
import type { HandsItem, ScheduleInput, SessionRule, Stance } from "../types.ts";
import type { Release } from "./room-load.ts";

/** Plans come in steps of five minutes. */
export const gridMs = 300_000;

export const ceilToGrid = (time: number): number => Math.ceil(time / gridMs) * gridMs;
export const floorToGrid = (time: number): number => Math.floor(time / gridMs) * gridMs;

/** What a session of one kind is, milliseconds. */
export interface Kind {
  readonly name: string;
  readonly fixed: number;
  readonly most: number;
  readonly material: string | undefined;
  /** Until what is put on is free of dust, after the end of the session; 0: nothing is wet. */
  readonly wet: number;
  readonly makesDust: boolean;
  /** All tasks of it are done in one session. */
  readonly isWhole: boolean;
  /** Each task of it is a session by itself. */
  readonly isApart: boolean;
}

export interface Group {
  /** Any of its chains: all have the same steps but for their lengths. */
  readonly pattern: ProblemChain;
  /** Indexes of chains. */
  readonly members: readonly number[];
  readonly job: number;
  /** By step; undefined for waits. */
  readonly kinds: readonly (Kind | undefined)[];
  /** First and last item of each task with the waits after it; before the first task as well. */
  readonly blocks: readonly (readonly [number, number])[];
  /** By block, the last one that windows tie to it. */
  readonly tiedTo: readonly number[];
  /** By block: all members go in at once. */
  readonly isWhole: readonly boolean[];
}

export interface Job {
  readonly key: string;
  readonly start: number;
  /** Infinity: none. */
  readonly due: number;
  /** Indexes of the jobs before. */
  readonly after: readonly number[];
}

export interface SessionProblem extends Problem {
  readonly groups: readonly Group[];
  readonly jobs: readonly Job[];
  /** By chain. */
  readonly jobOf: readonly number[];
  readonly groupOf: readonly number[];
  /** By chain and step, milliseconds of work; 0 for waits. */
  readonly works: readonly (readonly number[])[];
  /** What the air of the room must carry away; undefined: it is not asked for. */
  readonly air: RoomLimit | undefined;
  /** Whether nothing makes dust while a coat of another session is wet; see `room-dust.ts`. */
  readonly keepsDustOut: boolean;
  /** What other jobs have taken before; undefined: nothing. */
  readonly taken: Taken | undefined;
  /** By chain and step, where a plan that was kept has it; undefined: none was. */
  readonly kept: readonly (readonly (Kept | undefined)[])[] | undefined;
}

/** Where a plan that was kept has a task. */
export interface Kept {
  /** No work on it begins before, as it did not then. */
  readonly from: number;
  /** Equal for those that were done in one session. */
  readonly session: string;
}

/** What others have taken already. */
export interface Taken {
  /** Of people's hours. */
  readonly profile: ResourceProfile;
  /** When the last of them is free again. */
  readonly until: number;
  /** Of the room's air. */
  readonly releases: readonly Release[];
  /** When they make dust, and when their coats are wet: apart from each other, in the order of time. */
  readonly dusty: readonly Span[];
  readonly wet: readonly Span[];
}

/** Two moments, the first of them earlier. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** What tasks give off, and in which stretches it adds up. */
export interface RoomLimit {
  /** Milliseconds. */
  readonly stretches: readonly number[];
  /** By chain and step; `after` in milliseconds. */
  readonly vapours: readonly (readonly (Vapour | undefined)[])[];
}

export interface Vapour {
  readonly after: number;
  readonly shares: readonly number[];
}

/** The limit that the room's air sets; undefined where nothing is given off. */
export function roomLimit({ chains, stretches }: ScheduleInput, stance: Stance): RoomLimit | undefined {
  const vapours = chains.map(({ items }) =>
    items.map((item): Vapour | undefined =>
      item.kind === "hands" && item.vapour !== undefined
        ? { after: Math.max(0, item.vapour.afterHours) * hourMs, shares: item.vapour[stance] }
        : undefined,
    ),
  );
  if (stretches === undefined || vapours.every((row) => row.every((each) => each === undefined)))
    return undefined;
  return { stretches: stretches.map((hours) => hours * hourMs), vapours };
}

/** The problem; undefined when the start is no date, or without a shop, where nobody has to share hands. */
export function makeSessionProblem(input: ScheduleInput): SessionProblem | undefined {
  const chains = input.chains.map((chain) => ({
    ...chain,
    items: chain.items.map((item) => (item.kind === "hands" ? { ...item, nonPreemptive: true } : item)),
  }));
  const problem = makeProblem({ ...input, chains });
  if (problem === undefined || !problem.inShop) return undefined;
  const jobs = jobsOf(problem, input);
  const index = new Map(jobs.map(({ key }, place) => [key, place]));
  const jobOf = input.chains.map(({ job }) => (job === undefined ? undefined : index.get(job)) ?? 0);
  const groups = groupsOf(problem, input, jobOf);
  const groupOf = input.chains.map(() => 0);
  for (const [group, { members }] of groups.entries()) for (const chain of members) groupOf[chain] = group;
  return {
    ...problem,
    jobs,
    jobOf,
    groups,
    groupOf,
    works: problem.chains.map(({ steps }) => steps.map((step) => (step.kind === "hands" ? step.work : 0))),
    air: undefined,
    keepsDustOut: false,
    taken: undefined,
    kept: undefined,
  };
}

function jobsOf(problem: Problem, { jobs }: ScheduleInput): readonly Job[] {
  if (jobs === undefined || jobs.length === 0)
    return [{ key: "", start: problem.start, due: Number.POSITIVE_INFINITY, after: [] }];
  const index = new Map(jobs.map(({ key }, place) => [key, place]));
  const moment = (text: string | undefined): number | undefined =>
    text === undefined ? undefined : momentIn(problem.shop, text);
  const before = jobs.map(({ after = [] }) =>
    (typeof after === "string" ? [after] : after).flatMap((key) => index.get(key) ?? []),
  );
  // A job after itself, by whatever way, waits for nothing.
  const leadsBack = (place: number): boolean => {
    const seen = new Set<number>();
    const ahead = [...before[place]!];
    for (let at = ahead.pop(); at !== undefined; at = ahead.pop()) {
      if (at === place) return true;
      if (seen.has(at)) continue;
      seen.add(at);
      ahead.push(...before[at]!);
    }
    return false;
  };
  return jobs.map(({ key, start, due }, place) => ({
    key,
    start: Math.max(problem.start, moment(start) ?? problem.start),
    due: moment(due) ?? Number.POSITIVE_INFINITY,
    after: leadsBack(place) ? [] : before[place]!,
  }));
}

function groupsOf(problem: Problem, input: ScheduleInput, jobOf: readonly number[]): readonly Group[] {
  const kinds = new Map<string, Kind>();
  const kindOf = ({ id, session }: HandsItem, chain: string): Kind => {
    const name = session?.kind ?? `${chain} ${id}`;
    const known = kinds.get(name);
    if (known !== undefined) return known;
    const kind = makeKind(name, session);
    kinds.set(name, kind);
    return kind;
  };
  // What is done apart has a kind of its own for each chain; that alone makes chains no less alike.
  const lookOf = (item: HandsItem, chain: string): unknown =>
    item.session?.batch === "apart" ? { ...item.session, kind: "" } : kindOf(item, chain).name;
  const groups = new Map<string, { -readonly [K in keyof Group]: Group[K] } & { members: number[] }>();
  for (const [place, pattern] of problem.chains.entries()) {
    const { items, key } = input.chains[place]!;
    const signature = JSON.stringify([
      jobOf[place],
      pattern.steps.map((step, at) =>
        step.kind === "hands"
          ? [lookOf(items[at] as HandsItem, key), step.window, step.nonPreemptive]
          : { ...step, id: "" },
      ),
    ]);
    const group = groups.get(signature);
    if (group === undefined) {
      const ofSteps = items.map((item) => (item.kind === "hands" ? kindOf(item, key) : undefined));
      groups.set(signature, {
        pattern,
        members: [place],
        job: jobOf[place]!,
        kinds: ofSteps,
        ...blocksOf(pattern, ofSteps),
      });
    } else group.members.push(place);
  }
  return [...groups.values()];
}

function blocksOf(
  { steps, hands, blocks: tied }: ProblemChain,
  kinds: readonly (Kind | undefined)[],
): Pick<Group, "blocks" | "tiedTo" | "isWhole"> {
  if (steps.length === 0) return { blocks: [], tiedTo: [], isWhole: [] };
  const begins = [0, ...hands.slice(1)];
  const blocks = begins.map((first, at) => [first, (begins[at + 1] ?? steps.length) - 1] as const);
  const ties = blocks.map(([first]) => tied.find(([from, to]) => from <= first && first <= to)!);
  return {
    blocks,
    tiedTo: ties.map(([, to]) => blocks.findIndex(([, last]) => last === to)),
    isWhole: blocks.map(([from, to]) => kinds.slice(from, to + 1).some((kind) => kind?.isWhole === true)),
  };
}

function makeKind(name: string, session: SessionRule | undefined): Kind {
  const most = session?.mostHours;
  return {
    name,
    fixed: Math.round(Math.max(0, session?.fixedHours ?? 0) * hourMs),
    // Round down, but a single task must be possible: whoever states less is told by a rule.
    most: most === undefined ? Number.POSITIVE_INFINITY : Math.floor(most * hourMs),
    material: session?.material,
    wet: Math.round(Math.max(0, session?.wetHours ?? 0) * hourMs),
    makesDust: session?.makesDust === true,
    isWhole: session?.batch === "together",
    isApart: session?.batch === "apart",
  };
}
