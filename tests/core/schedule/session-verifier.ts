/**
 * Checks a plan in sessions against its input by looking at every minute; returns what is wrong, one line each.
 *
 * Shares no code with the planner. Works for inputs whose times are whole minutes and openings on five minutes.
 */
import type {
  Chain,
  HandsItem,
  PlannedItem,
  PlannedSession,
  Schedule,
  ScheduleInput,
} from "../../../server/src/core/schedule/types.ts";
import { makeOpenMinute, minuteOf, morningAfter } from "./open-hours.ts";
import { longestSpan } from "./verifier.ts";

// To a hundredth of a second, which the planner's whole milliseconds are nearer than.
const up = (minute: number): number => Math.ceil(minute / 5 - 1e-4 / 5) * 5;
const down = (minute: number): number => Math.floor(minute / 5 + 1e-4 / 5) * 5;

interface Look {
  readonly input: ScheduleInput;
  readonly result: Schedule;
  readonly wrongs: string[];
  readonly isOpen: (minute: number) => boolean;
  readonly at: (hours: number) => number;
  readonly longest: number;
  readonly zero: number;
  /** By task, its minutes to the minute, from the session that it is done in. */
  readonly exact: ReadonlyMap<string, Minutes>;
  readonly check: (isRight: boolean, text: string) => void;
}

interface Minutes {
  readonly start: number;
  readonly end: number;
}

/** Set up, then one task after the other; a single task longer than every opening goes on after closing. */
function exactTimes(input: ScheduleInput, result: Schedule, zero: number): ReadonlyMap<string, Minutes> {
  const minutesOf = new Map(
    input.chains.flatMap(({ items }) =>
      items.flatMap((item) =>
        item.kind === "hands" ? [[item.id, Math.round(item.hours * 60)] as const] : [],
      ),
    ),
  );
  const isOpen = makeOpenMinute(input.calendar!);
  const exact = new Map<string, Minutes>();
  for (const session of result.sessions!) {
    let minute = zero + Math.round(session.start * 60);
    const goOn = (minutes: number): number => {
      for (let done = 0; done < minutes; minute++) if (isOpen(minute)) done++;
      return minute;
    };
    goOn(Math.round(session.fixed * 60));
    for (const id of session.items) {
      const start = minute;
      exact.set(id, { start, end: goOn(minutesOf.get(id)!) });
    }
  }
  return exact;
}

export function sessionWrongsOf(input: ScheduleInput, result: Schedule): readonly string[] {
  const wrongs: string[] = [];
  const zero = minuteOf(result.startAt!);
  const look: Look = {
    input,
    result,
    wrongs,
    isOpen: makeOpenMinute(input.calendar!),
    at: (hours) => zero + Math.round(hours * 60),
    longest: longestSpan(input),
    zero,
    exact: exactTimes(input, result, zero),
    check: (isRight, text) => {
      if (!isRight) wrongs.push(text);
    },
  };
  const items = new Map<string, { readonly item: HandsItem; readonly planned: PlannedItem }>();
  let place = 0;
  const lastWork = new Map<string, number>();
  const ends = new Map<string, number>();
  const begins = new Map<string, number>();
  for (const chain of input.chains) {
    const planned = result.items.slice(place, place + chain.items.length);
    place += chain.items.length;
    checkChain(look, chain, planned);
    for (const [index, item] of chain.items.entries()) {
      const plan = planned[index]!;
      const job = chain.job ?? "";
      const { start, end } = look.exact.get(item.id) ?? {
        start: look.at(plan.start),
        end: look.at(plan.end),
      };
      ends.set(job, Math.max(ends.get(job) ?? 0, end));
      if (item.kind !== "hands") continue;
      begins.set(job, Math.min(begins.get(job) ?? Number.POSITIVE_INFINITY, start));
      items.set(plan.id, { item, planned: plan });
      lastWork.set(job, Math.max(lastWork.get(job) ?? 0, end));
    }
  }
  look.check(place === result.items.length, "items left over");
  checkTogether(look);
  checkSessions(look, items);
  checkJobs(look, begins, ends);
  checkAir(look, items);
  checkDust(look, items);
  const last = up(Math.max(zero, ...lastWork.values()));
  look.check(look.at(result.lastWorkHours!) === last, `last work ${result.lastWorkAt}, not minute ${last}`);
  const finish = up(Math.max(zero, ...ends.values()));
  look.check(
    look.at(result.elapsedHours) === finish,
    `${result.elapsedHours} h elapsed, not to minute ${finish}`,
  );
  look.check(minuteOf(result.finishAt!) === finish, "the date of the finish");
  look.check(minuteOf(result.lastWorkAt!) === last, "the date of the last work");
  look.check(result.lowerBound <= result.lastWorkHours! + 1e-9, "bound above the last work");
  look.check(result.exact === result.lowerBound >= result.lastWorkHours! - 1e-9, "exact without its bound");
  return wrongs;
}

function checkChain(
  { input, check, at, zero, isOpen, exact }: Look,
  chain: Chain,
  planned: readonly PlannedItem[],
): void {
  const endOf = new Map<string, number>();
  const job = input.jobs?.find(({ key }) => key === chain.job);
  let previous = Math.max(zero, job?.start === undefined ? zero : minuteOf(job.start));
  const begin = previous;
  const startOfJob = begin;
  for (const [index, item] of chain.items.entries()) {
    const plan = planned[index]!;
    const { start, end } = exact.get(item.id) ?? { start: previous, end: at(plan.end) };
    // On the grid, rounded so that nothing begins before what comes before has ended.
    check(at(plan.start) % 5 === 0 || at(plan.start) === zero, `${item.id}: not on five minutes`);
    check(
      at(plan.start) <= up(start) && at(plan.start) >= up(previous),
      `${item.id}: starts at ${plan.startAt}`,
    );
    check(at(plan.end) === up(end), `${item.id}: ends at ${plan.endAt}`);
    check(plan.id === item.id && plan.chain === chain.key, `${item.id}: out of place`);
    check(start >= previous, `${item.id}: begins before the item before has ended`);
    check(plan.slack >= 0, `${item.id}: slack ${plan.slack}`);
    if (plan.critical) check(plan.slack === 0, `${item.id}: critical with slack ${plan.slack}`);
    if (item.kind === "hands" && item.maxLag !== undefined) {
      const closes = down(endOf.get(item.maxLag.of)! + item.maxLag.hours * 60);
      check(start <= closes, `${item.id}: ${start - closes} minutes after its window`);
    } else if (item.kind === "wait") {
      const from = up(item.of === undefined ? previous : endOf.get(item.of)!);
      if (index > 0 || job?.after === undefined)
        check(end === Math.max(up(previous), up(from + item.hours * 60)), `${item.id}: ends at ${end}`);
    } else if (item.kind === "overnight") {
      const morning = up(morningAfter(input.calendar!, isOpen, up(previous)));
      check(index === 0 || end === morning, `${item.id}: night ends at ${end}, not ${morning}`);
    }
    endOf.set(item.id, end);
    previous = end;
  }
  check(startOfJob <= previous, "the job ends before it starts");
}

function checkSessions(
  look: Look,
  items: ReadonlyMap<string, { readonly item: HandsItem; readonly planned: PlannedItem }>,
): void {
  const { result, check, input } = look;
  const seen = new Set<string>();
  const byPerson = new Map<number, PlannedSession[]>();
  for (const session of result.sessions!) {
    byPerson.set(session.person, [...(byPerson.get(session.person) ?? []), session]);
    checkSession(look, session, items);
    for (const id of session.items) {
      check(!seen.has(id), `${id}: in two sessions`);
      seen.add(id);
    }
  }
  check(seen.size === items.size, `${items.size - seen.size} tasks in no session`);
  check(byPerson.size <= input.calendar!.crew, "more people than there are");
  for (const [person, sessions] of byPerson) {
    check(person >= 0 && person < input.calendar!.crew, `person ${person}`);
    const sorted = [...sessions].sort((a, b) => a.start - b.start);
    for (const [index, session] of sorted.entries()) {
      const before = sorted[index - 1];
      check(before === undefined || before.end <= session.start + 1e-9, `person ${person} at two sessions`);
    }
  }
}

function checkSession(
  { at, check, isOpen, longest }: Look,
  session: PlannedSession,
  items: ReadonlyMap<string, { readonly item: HandsItem; readonly planned: PlannedItem }>,
): void {
  const name = `${session.kind} at ${session.start} h`;
  const [start, end] = [at(session.start), at(session.end)];
  check(start % 5 === 0 && end % 5 === 0, `${name}: not in steps of five minutes`);
  const tasks = session.items.map((id) => items.get(id)!);
  check(tasks.length > 0, `${name}: empty`);
  const minutes = tasks.map(({ item }) => Math.round(item.hours * 60));
  const fixed = Math.round((tasks[0]!.item.session?.fixedHours ?? 0) * 60);
  check(Math.round(session.fixed * 60) === fixed, `${name}: fixed minutes`);
  const work = minutes.reduce((sum, each) => sum + each, 0);
  const most = tasks[0]!.item.session?.mostHours ?? Number.POSITIVE_INFINITY;
  check(tasks.length === 1 || work <= Math.floor(most * 60), `${name}: ${work} minutes in a session`);
  for (const { item } of tasks)
    check(
      tasks.length === 1 || item.session?.kind === session.kind,
      `${name}: ${item.id} is of another kind`,
    );
  let open = 0;
  for (let minute = start; minute < end; minute++) if (isOpen(minute)) open++;
  check(open === up(fixed + work), `${name}: ${open} open minutes for ${fixed} + ${work}`);
  if (up(fixed + work) > longest) {
    check(tasks.length === 1, `${name}: longer than every opening`);
    return;
  }
  check(open === end - start, `${name}: over a closing`);
  let begin = start + fixed;
  for (const [index, { item, planned }] of tasks.entries()) {
    check(at(planned.end) === up(begin + minutes[index]!), `${item.id}: does not take its time`);
    begin += minutes[index]!;
  }
}

/** What is to be done together is done in one session, and what is to be done apart, one surface a session. */
function checkTogether({ input, result, check }: Look): void {
  const sessionOf = new Map(
    result.sessions!.flatMap(({ items }, at) => items.map((id) => [id, at] as const)),
  );
  const together = new Map<string, Set<number>>();
  const apart = new Map<number, Set<string>>();
  for (const { key, items } of input.chains)
    for (const item of items) {
      if (item.kind !== "hands" || item.session?.batch === undefined) continue;
      const session = sessionOf.get(item.id)!;
      if (item.session.batch === "together")
        together.set(item.session.kind, (together.get(item.session.kind) ?? new Set()).add(session));
      else apart.set(session, (apart.get(session) ?? new Set()).add(key));
    }
  for (const [kind, sessions] of together)
    check(sessions.size === 1, `${kind}: together in ${sessions.size} sessions`);
  for (const [session, chains] of apart)
    check(chains.size === 1, `session ${session}: ${chains.size} that are to be done apart`);
}

/** In a plan that keeps the room's air no stretch holds more vapour than it may, minute by minute. */
function checkAir(
  { input, result, exact, at, check, isOpen }: Look,
  items: ReadonlyMap<string, { readonly item: HandsItem; readonly planned: PlannedItem }>,
): void {
  const stance = result.heldByAir;
  if (stance === undefined) return;
  const begun = new Map(result.sessions!.map(({ items: [first], start }) => [first!, at(start)]));
  for (const [kind, hours] of input.stretches!.entries()) {
    const perMinute = new Map<number, number>();
    for (const [id, { item }] of items) {
      if (item.vapour === undefined) continue;
      const { start, end } = exact.get(id)!;
      const from = begun.get(id) ?? down(start);
      const to = Math.max(from + 1, up(end) + Math.round(item.vapour.afterHours * 60));
      for (let minute = from; minute < to; minute++)
        perMinute.set(minute, (perMinute.get(minute) ?? 0) + item.vapour[stance][kind]! / (to - from));
    }
    const length = Math.round(hours * 60);
    for (const minute of [...perMinute.keys()]) {
      // Nobody breathes before the opening.
      if (!isOpen(minute)) continue;
      let sum = 0;
      for (let each = minute; each < minute + length; each++) sum += perMinute.get(each) ?? 0;
      check(sum <= 1 + 1e-6, `minute ${minute}: ${sum} of what the air may carry in ${hours} h`);
    }
  }
}

/** Dust flies onto no wet coat of another session but where the plan says so, and it says so only where that saves a day. */
function checkDust(
  { input, result, exact, at, check }: Look,
  items: ReadonlyMap<string, { readonly item: HandsItem; readonly planned: PlannedItem }>,
): void {
  if (input.chains.length < 2) return;
  const meetings = result.dust?.meetings ?? [];
  const wetFor = (item: HandsItem): number => Math.round((item.session?.wetHours ?? 0) * 60);
  for (const [dusty, { item }] of items) {
    if (item.session?.makesDust !== true) continue;
    const dust = exact.get(dusty)!;
    for (const [coat, { item: wet }] of items) {
      const { start, end } = exact.get(coat)!;
      if (wetFor(wet) === 0 || dust.start >= end + wetFor(wet) || dust.end <= start) continue;
      if (dust.start === dust.end || dusty === coat) continue;
      check(
        meetings.some((each) => each.dusty.items.includes(dusty) && each.wet.items.includes(coat)),
        `${dusty}: dust on ${coat}, of which nothing is said`,
      );
    }
  }
  for (const { from, to, wetUntil, dusty, wet } of meetings) {
    const sessionOf = ({ items: [id] }: typeof dusty): PlannedSession =>
      result.sessions!.find((session) => session.items.includes(id!))!;
    const [one, other] = [sessionOf(dusty), sessionOf(wet)];
    const name = `${one.kind} at ${one.start} h`;
    check(items.get(dusty.items[0]!)!.item.session?.makesDust === true, `${name}: makes no dust`);
    const until = at(other.end) + wetFor(items.get(wet.items[0]!)!.item);
    check(at(wetUntil) === up(until), `${name}: wet until ${wetUntil} h`);
    check(from < to && from >= Math.max(one.start, other.start) - 1e-9, `${name}: dust from ${from} h`);
    check(at(to) <= Math.min(at(one.end), up(until)), `${name}: dust to ${to} h`);
  }
  const later = result.dust?.laterHours ?? Number.POSITIVE_INFINITY;
  const isDue = input.jobs?.some(({ due }) => due !== undefined);
  check(meetings.length === 0 || later > 24 || isDue === true, `dust for ${later} h`);
}

function checkJobs(
  { input, check, zero }: Look,
  begins: ReadonlyMap<string, number>,
  ends: ReadonlyMap<string, number>,
): void {
  for (const { key, start, after } of input.jobs ?? []) {
    const begin = begins.get(key) ?? Number.POSITIVE_INFINITY;
    check(begin >= Math.max(zero, start === undefined ? zero : minuteOf(start)), `${key}: begins too early`);
    for (const before of [after ?? []].flat())
      if (ends.has(before)) check(begin >= ends.get(before)!, `${key}: begins before ${before} ends`);
  }
}
