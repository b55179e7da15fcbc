/**
 * Whether any plan in sessions at all ends its last work by a given minute: tries every choice at every half hour.
 *
 * Shares no code with the planner. In each half hour of the shop everybody who is free begins any session that can be
 * begun, or none: any tasks of one kind that are ready in time, in any order. Only for small shops all of whose times are
 * half hours: then the plans that begin something at other times are no earlier, as every start is a sum of such times.
 */
import type { Chain, HandsItem, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { makeOpenMinute, minuteOf, morningAfter } from "./open-hours.ts";

const STEP = 30;

interface ChainState {
  /** The next task. */
  readonly next: number;
  /** When it may begin. */
  readonly ready: number;
  /** By when it must. */
  readonly due: number;
}

interface State {
  readonly chains: readonly ChainState[];
  /** Of those at work, when they are free. */
  readonly busy: readonly number[];
}

/** `limit` in minutes since 1970, of half hours; `input` has a calendar, a date-time to start and one job. */
export function canWorkEndBy(input: ScheduleInput, limit: number): boolean {
  const isOpen = makeOpenMinute(input.calendar!);
  const zero = minuteOf(input.start!);
  const seen = new Set<string>();
  const minutes = (hours: number): number => Math.round(hours * 60);

  const handsAt = (place: number, { next }: ChainState): HandsItem | undefined => {
    const item = input.chains[place]!.items[next];
    return item?.kind === "hands" ? item : undefined;
  };

  /** The chain after its task ended at `end`, or before its first one. */
  const goOn = (chain: Chain, from: number, end: number): ChainState => {
    let ready = end;
    for (let next = from; next < chain.items.length; next++) {
      const item = chain.items[next]!;
      if (item.kind === "hands") {
        const due = item.maxLag === undefined ? Number.POSITIVE_INFINITY : end + minutes(item.maxLag.hours);
        return { next, ready, due };
      }
      ready =
        item.kind === "wait" ? ready + minutes(item.hours) : morningAfter(input.calendar!, isOpen, ready);
    }
    return { next: chain.items.length, ready, due: Number.POSITIVE_INFINITY };
  };

  /** Minutes from the beginning of each task until the chain's last one has ended, nights aside. */
  const leastLeft = input.chains.map(({ items }) =>
    items.map((_, from) => {
      const last = items.findLastIndex(({ kind }) => kind === "hands");
      return items
        .slice(from, last + 1)
        .reduce((sum, item) => sum + (item.kind === "overnight" ? 0 : minutes(item.hours)), 0);
    }),
  );

  const isHopeless = ({ chains }: State, now: number): boolean =>
    chains.some(
      (chain, place) =>
        handsAt(place, chain) !== undefined &&
        (chain.due < now || Math.max(now, chain.ready) + leastLeft[place]![chain.next]! > limit),
    );

  const explore = (now: number, state: State): boolean => {
    if (state.chains.every((chain, place) => handsAt(place, chain) === undefined)) return true;
    if (now >= limit || isHopeless(state, now)) return false;
    if (!isOpen(now)) return explore(now + STEP, state);
    const key = keyOf(now, state);
    if (seen.has(key)) return false;
    seen.add(key);
    const busy = state.busy.filter((until) => until > now);
    return begin(now, { ...state, busy }, input.calendar!.crew - busy.length);
  };

  /** Chains that are alike may be exchanged. */
  const looks = input.chains.map(({ items }) =>
    JSON.stringify(items.map(({ id: _, ...item }) => ({ ...item, maxLag: "maxLag" in item }))),
  );
  const keyOf = (now: number, { chains, busy }: State): string => {
    const ofChains = chains.map(({ next, ready, due }, place) =>
      [looks[place], next, Math.max(ready, now), due].join(),
    );
    return `${now}|${ofChains.sort().join("|")}|${busy.filter((until) => until > now).sort((a, b) => a - b)}`;
  };

  /** Whether it ends in time after any sessions that begin now, by so many people at most. */
  const begin = (now: number, state: State, free: number): boolean => {
    if (explore(now + STEP, state)) return true;
    if (free === 0) return false;
    const kinds = new Set(state.chains.flatMap((chain, place) => handsAt(place, chain)?.session?.kind ?? []));
    for (const kind of kinds)
      if (fill(now, state, { kind, minute: now, work: 0, done: [] }, free)) return true;
    return false;
  };

  interface Filling {
    readonly kind: string;
    /** When its last task so far ends. */
    readonly minute: number;
    readonly work: number;
    readonly done: readonly number[];
  }

  const isOpenUntil = (from: number, to: number): boolean => {
    for (let minute = from; minute < to; minute += STEP) if (!isOpen(minute)) return false;
    return true;
  };

  /** Goes on with a session by each task that can be the next in it. */
  const fill = (now: number, state: State, session: Filling, free: number): boolean => {
    for (const [place, chain] of state.chains.entries()) {
      const item = handsAt(place, chain);
      if (item?.session?.kind !== session.kind || session.done.includes(place)) continue;
      const from = session.done.length === 0 ? now + minutes(item.session.fixedHours) : session.minute;
      const end = from + minutes(item.hours);
      const work = session.work + minutes(item.hours);
      if (chain.ready > from || chain.due < from || end > limit || !isOpenUntil(now, end)) continue;
      if (session.done.length > 0 && work > minutes(item.session.mostHours ?? 1000)) continue;
      const chains = state.chains.with(place, goOn(input.chains[place]!, chain.next + 1, end));
      const longer = { ...session, minute: end, work, done: [...session.done, place] };
      const isWhole = item.session.batch !== "together" || longer.done.length === wholeSize(session.kind);
      const begun = { chains, busy: [...state.busy, end] };
      if (isWhole && begin(now, begun, free - 1)) return true;
      if (fill(now, { ...state, chains }, longer, free)) return true;
    }
    return false;
  };

  const wholeSize = (kind: string): number =>
    input.chains.filter(({ items }) =>
      items.some((item) => item.kind === "hands" && item.session?.kind === kind),
    ).length;

  return explore(zero, { chains: input.chains.map((chain) => goOn(chain, 0, zero)), busy: [] });
}
