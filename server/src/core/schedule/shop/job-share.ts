/**
 * A job's part of the plan of its shop, as if it had been planned by itself: with its own ids, in hours after its own
 * start. What it waits for is told beside it.
 */
import { firstIndex } from "../../../../../grammar/src/binary-search.ts";
import { hoursBetween } from "../../measure/iso-dates.ts";
import { onceFor } from "../../once.ts";
import type { Among, Holdup, PlannedItem, PlannedSession, Schedule } from "../types.ts";
import { keyAt, placeOf, type ShopMember, splitKey } from "./shop-input.ts";

/** The part of one of the members in their plan, by its place among them. */
export function shareOf(plan: Schedule, members: readonly ShopMember[], place: number): Schedule {
  const { alone } = members[place]!;
  const later = hoursBetween(plan.startAt!, alone.startAt!);
  const part = partsOf(plan).get(keyAt(place)) ?? NO_PART;
  const items = part.items.map((item) => itemOfJob(item, later));
  const sessions = part.sessions.map((session) => sessionOfJob(session, later));
  const tasks = new Set(sessions.flatMap((session) => session.items));
  const last = latest(items);
  const lastTask = latest(items.filter(({ id }) => tasks.has(id)));
  const lastWorkHours = lastTask?.end ?? 0;
  const lowerBound = Math.min(alone.lowerBound, lastWorkHours);
  return {
    status: "planned",
    items,
    startAt: alone.startAt,
    finishAt: last?.endAt ?? alone.startAt,
    elapsedHours: last?.end ?? 0,
    lastWorkHours,
    lastWorkAt: lastTask?.endAt ?? alone.startAt,
    lowerBound,
    exact: lowerBound >= lastWorkHours,
    gap: lowerBound > 0 ? (lastWorkHours - lowerBound) / lowerBound : 0,
    conflicts: [],
    sessions,
    ...(plan.heldByAir ? { heldByAir: plan.heldByAir } : {}),
    ...(plan.overAir ? { overAir: plan.overAir } : {}),
    // What it costs to keep dust from wet coats is the shop's, not the job's.
    ...(plan.dust?.meetings.length
      ? { dust: { ...plan.dust, inShop: { place, names: togetherIn(members).names, later } } }
      : {}),
    ...(plan.kept ? { kept: plan.kept } : {}),
    among: amongOf(plan, members, place, lastWorkHours, later),
  };
}

function amongOf(
  plan: Schedule,
  members: readonly ShopMember[],
  place: number,
  lastWorkHours: number,
  later: number,
): Among {
  const member = members[place]!;
  const { names, places } = togetherIn(members);
  const after = member.after.flatMap((key) => (places.has(key) ? keyAt(places.get(key)!) : []));
  const laterHours = Math.max(0, lastWorkHours - (member.alone.lastWorkHours ?? 0));
  return {
    names,
    place,
    laterHours: toMinutes(laterHours),
    heldBy:
      laterHours > 0
        ? holdups(plan, keyAt(place), after, later).map((holdup) => ({
            ...holdup,
            job: names[placeOf(holdup.job)]!,
          }))
        : [],
    ...(plan.inOrder ? { inOrder: true } : {}),
  };
}

/** What all of them have in common, once for as many as there are. */
const togetherIn = onceFor((members: readonly ShopMember[]) => ({
  names: members.map(({ name }) => name),
  places: new Map(members.map(({ key }, place) => [key, place])),
}));

/** Differences of hours leave dust behind. */
const toMinutes = (hours: number): number => Math.round(hours * 60) / 60;

/** For which jobs, by key, a job waits, and for how long; `later`: how much later than the plan it may begin. */
function holdups(plan: Schedule, own: string, after: readonly string[], later: number): readonly Holdup[] {
  const parts = partsOf(plan);
  const found: Holdup[] = [];
  let begin = later;
  for (const key of after) {
    const end = latest(parts.get(key)?.items ?? [])?.end ?? 0;
    if (end > later) found.push({ job: key, hours: toMinutes(end - later), why: "after" });
    begin = Math.max(begin, end);
  }
  const people = new Map<string, number>();
  for (const { from, to } of waitsForPeople(plan, own, begin))
    for (const { key, start, end } of workBetween(plan, from, to))
      if (key !== own) people.set(key, (people.get(key) ?? 0) + Math.min(to, end) - Math.max(from, start));
  for (const [job, hours] of people)
    if (hours > 1e-6) found.push({ job, hours: toMinutes(hours), why: "people" });
  return found.sort((a, b) => b.hours - a.hours).slice(0, MOST_HOLDUPS);
}

/** In a shop of hundreds of jobs a job waits for nearly all others; people are told of three. */
const MOST_HOLDUPS = 10;

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** From when all that a session of the job does could be done until it begins, without what two such waits have in common. */
function waitsForPeople(plan: Schedule, key: string, begin: number): readonly Stretch[] {
  const { items, sessions } = partsOf(plan).get(key) ?? NO_PART;
  const readyAt = new Map<string, number>();
  for (const [place, { id, chain }] of items.entries()) {
    const before = items[place - 1];
    readyAt.set(id, before?.chain === chain ? before.end : begin);
  }
  const stretches: { from: number; to: number }[] = [];
  const waits = sessions
    .map(({ start, items: tasks }) => ({
      from: tasks.reduce((ready, id) => Math.max(ready, readyAt.get(id) ?? begin), begin),
      to: start,
    }))
    .filter(({ from, to }) => to > from)
    .sort((a, b) => a.from - b.from);
  for (const wait of waits) {
    const last = stretches.at(-1);
    if (last !== undefined && wait.from <= last.to) last.to = Math.max(last.to, wait.to);
    else stretches.push({ ...wait });
  }
  return stretches;
}

interface Work {
  readonly key: string;
  readonly start: number;
  readonly end: number;
}

interface Part {
  readonly items: readonly PlannedItem[];
  readonly sessions: readonly PlannedSession[];
}

const NO_PART: Part = { items: [], sessions: [] };

/** By the key of the job; ids and hours are still those of the plan. */
const partsOf = onceFor((plan: Schedule): ReadonlyMap<string, Part> => {
  const parts = new Map<string, { items: PlannedItem[]; sessions: PlannedSession[] }>();
  const byId = new Map<string, PlannedItem>();
  for (const item of plan.items) {
    byId.set(item.id, item);
    const [key] = splitKey(item.chain);
    const part = parts.get(key);
    if (part === undefined) parts.set(key, { items: [item], sessions: [] });
    else part.items.push(item);
  }
  for (const session of plan.sessions ?? [])
    for (const [key, part] of sessionParts(session, byId)) parts.get(key)?.sessions.push(part);
  return parts;
});

/** A session of several jobs in the parts that are each one job's; what is set up counts to the first. */
function sessionParts(
  session: PlannedSession,
  byId: ReadonlyMap<string, PlannedItem>,
): readonly (readonly [string, PlannedSession])[] {
  const runs: { readonly key: string; readonly items: string[] }[] = [];
  for (const id of session.items) {
    const [key] = splitKey(id);
    const last = runs.at(-1);
    if (last?.key === key) last.items.push(id);
    else runs.push({ key, items: [id] });
  }
  if (runs.length === 1) return [[runs[0]!.key, session]];
  let begin = session.start;
  return runs.map(({ key, items }, at) => {
    const [first, last] = [byId.get(items[0]!)!, byId.get(items.at(-1)!)!];
    const worked = last.workEnd ?? last.end;
    const part: PlannedSession = {
      ...session,
      items,
      start: at === 0 ? session.start : first.start,
      end: at === runs.length - 1 ? session.end : last.end,
      hours: worked - begin,
      fixed: at === 0 ? session.fixed : 0,
      ...(at === 0 ? {} : { since: session.start }),
    };
    begin = worked;
    return [key, part];
  });
}

/** All work in the order of its beginning, and how long any of it takes at most. */
const workOf = onceFor((plan: Schedule) => {
  const work: Work[] = [];
  for (const [key, { sessions }] of partsOf(plan))
    for (const { start, end } of sessions) work.push({ key, start, end });
  work.sort((a, b) => a.start - b.start);
  return { work, longest: work.reduce((most, { start, end }) => Math.max(most, end - start), 0) };
});

function workBetween(plan: Schedule, from: number, to: number): readonly Work[] {
  const { work, longest } = workOf(plan);
  const first = firstIndex(work, ({ start }) => start >= from - longest);
  const last = firstIndex(work, ({ start }) => start >= to);
  return work.slice(first, last).filter(({ end }) => end > from);
}

const latest = (items: readonly PlannedItem[]): PlannedItem | undefined =>
  items.reduce<PlannedItem | undefined>(
    (last, item) => (last === undefined || item.end > last.end ? item : last),
    undefined,
  );

const ownIds = (ids: readonly string[]): readonly string[] => ids.map((id) => splitKey(id)[1]);

function itemOfJob(item: PlannedItem, later: number): PlannedItem {
  return {
    ...item,
    id: splitKey(item.id)[1],
    chain: splitKey(item.chain)[1],
    start: item.start - later,
    end: item.end - later,
    ...(item.workEnd === undefined ? {} : { workEnd: item.workEnd - later }),
    pauses: item.pauses.map(({ start, end }) => ({ start: start - later, end: end - later })),
  };
}

const sessionOfJob = (session: PlannedSession, later: number): PlannedSession => ({
  ...session,
  start: session.start - later,
  end: session.end - later,
  ...(session.since === undefined ? {} : { since: session.since - later }),
  items: ownIds(session.items),
});
