/**
 * Plans in sessions by another way than the planner's: time goes by in steps of five minutes, and whoever is free takes
 * the session with the best random key. Keys are bettered by chance. Shares no code with the planner; minutes since 1970.
 *
 * Only the end of the last work is looked at. Where a window is missed the whole try is thrown away.
 */
import type { Chain, ScheduleInput } from "../../server/src/core/schedule/types.ts";
import { makeOpenMinute, minuteOf, morningAfter } from "../core/schedule/open-hours.ts";

const up = (minute: number): number => Math.ceil(minute / 5) * 5;
const down = (minute: number): number => Math.floor(minute / 5) * 5;

interface Keys {
  /** By step of a chain and kind. */
  readonly kinds: Map<string, number>;
  /** Tasks in a session at most, by kind. */
  readonly caps: Map<string, number>;
  readonly chains: readonly number[];
  /** Minutes that somebody may wait for more to be ready. */
  readonly patience: number;
}

interface State {
  readonly chain: Chain;
  readonly ends: Map<string, number>;
  next: number;
  ready: number;
  due: number;
}

/** The earliest last work found in so many tries; undefined when none kept all windows. */
export function bestLastWork(input: ScheduleInput, tries: number, seed = 1): number | undefined {
  const shop = shopOf(input);
  let state = seed;
  const next = (): number => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
    return (state >>> 8) / 16_777_216;
  };
  const kindNames = [
    ...new Set(input.chains.flatMap(({ items }) => items.flatMap((item, at) => stepKeys(item, at)))),
  ];
  const fresh = (): Keys => ({
    kinds: new Map(kindNames.map((kind) => [kind, next()])),
    caps: new Map(
      kindNames.map((kind) => [
        kind,
        next() < 0.4 ? 1000 : 1 + Math.floor(next() ** 2 * input.chains.length),
      ]),
    ),
    chains: input.chains.map(() => next()),
    patience: next() < 0.7 ? 0 : Math.floor(next() * 90),
  });
  const varied = (keys: Keys): Keys => ({
    kinds: new Map([...keys.kinds].map(([kind, key]) => [kind, next() < 0.2 ? next() : key])),
    caps: new Map(
      [...keys.caps].map(([kind, cap]) => [
        kind,
        next() < 0.2 ? (next() < 0.3 ? 1000 : 1 + Math.floor(next() * input.chains.length)) : cap,
      ]),
    ),
    chains: keys.chains.map((key) => (next() < 0.1 ? next() : key)),
    patience: next() < 0.8 ? keys.patience : Math.floor(next() * 90),
  });
  let best: { readonly keys: Keys; readonly last: number } | undefined;
  for (let turn = 0; turn < tries; turn++) {
    const keys = best === undefined || next() < 0.25 ? fresh() : varied(best.keys);
    const last = simulate(input, shop, keys, best?.last ?? Number.POSITIVE_INFINITY);
    if (last !== undefined && (best === undefined || last <= best.last)) best = { keys, last };
  }
  return best?.last;
}

const stepKeys = (item: Chain["items"][number], at: number): readonly string[] =>
  item.kind === "hands" ? [`${at} ${item.session?.kind ?? item.id}`] : [];

interface Shop {
  readonly zero: number;
  readonly isOpen: (minute: number) => boolean;
  /** By minute / 5 after zero: minutes until the shop closes, 0 while it is closed. */
  readonly left: readonly number[];
}

function shopOf(input: ScheduleInput): Shop {
  const isOpen = makeOpenMinute(input.calendar!);
  let zero = minuteOf(input.start!);
  if (input.start!.length === 10) while (!isOpen(zero)) zero++;
  const slots = 12 * 24 * 70;
  const left: number[] = new Array(slots).fill(0);
  for (let slot = slots - 2; slot >= 0; slot--)
    left[slot] = isOpen(zero + slot * 5) ? left[slot + 1]! + 5 : 0;
  return { zero, isOpen, left };
}

/** The end of the last work; undefined when a window is missed, or nothing better than `limit` comes of it. */
function simulate(input: ScheduleInput, shop: Shop, keys: Keys, limit: number): number | undefined {
  const { zero, left } = shop;
  const crew = input.calendar!.crew;
  const states = input.chains.map(
    (chain): State => ({ chain, ends: new Map(), next: 0, ready: zero, due: Number.POSITIVE_INFINITY }),
  );
  for (const state of states) goOn(input, shop, state, zero);
  const free: number[] = Array.from({ length: crew }, () => zero);
  let open = states.filter(({ chain, next }) => next < chain.items.length).length;
  let last = zero;
  for (let slot = 0; open > 0 && slot < left.length; slot++) {
    const now = zero + slot * 5;
    if (now >= limit) return undefined;
    if (left[slot] === 0) continue;
    for (let person = 0; person < crew; person++) {
      if (free[person]! > now) continue;
      const session = choose(input, states, keys, now, left[slot]!);
      if (session === undefined) break;
      let minute = now + session.fixed;
      for (const state of session.tasks) {
        const item = state.chain.items[state.next]!;
        if (item.kind !== "hands" || minute > state.due) return undefined;
        minute += Math.round(item.hours * 60);
        state.ends.set(item.id, minute);
        state.next++;
        goOn(input, shop, state, minute);
        if (state.next >= state.chain.items.length) open--;
        last = Math.max(last, up(minute));
      }
      free[person] = up(minute);
    }
    if (states.some(({ due, next, chain }) => next < chain.items.length && due < now)) return undefined;
  }
  return open === 0 ? last : undefined;
}

/** Goes over the waits to the next task, and says when it may and must begin. */
function goOn(input: ScheduleInput, { isOpen }: Shop, state: State, from: number): void {
  let time = up(from);
  for (; state.next < state.chain.items.length; state.next++) {
    const item = state.chain.items[state.next]!;
    if (item.kind === "hands") {
      state.ready = time;
      state.due =
        item.maxLag === undefined
          ? Number.POSITIVE_INFINITY
          : down(state.ends.get(item.maxLag.of)! + Math.round(item.maxLag.hours * 60));
      // In order, without rounding between tasks that follow at once.
      const before = state.chain.items[state.next - 1];
      if (before?.kind === "hands") state.ready = state.ends.get(before.id)!;
      return;
    }
    if (item.kind === "wait") {
      const counted = item.of === undefined ? time : up(state.ends.get(item.of)!);
      time = Math.max(time, up(counted + Math.round(item.hours * 60)));
    } else time = up(morningAfter(input.calendar!, isOpen, time));
    state.ends.set(item.id, time);
  }
}

interface Session {
  readonly tasks: readonly State[];
  readonly fixed: number;
}

/** The session with the best key that can begin now, as large as its cap, the closing and what is ready allow. */
function choose(
  input: ScheduleInput,
  states: readonly State[],
  keys: Keys,
  now: number,
  left: number,
): Session | undefined {
  const byStep = new Map<string, { readonly state: State; readonly place: number }[]>();
  for (const [place, state] of states.entries()) {
    const item = state.chain.items[state.next];
    if (item?.kind !== "hands" || state.ready > now + 240) continue;
    const [key] = stepKeys(item, state.next);
    const others = byStep.get(key!);
    if (others === undefined) byStep.set(key!, [{ state, place }]);
    else others.push({ state, place });
  }
  const inOrder = [...byStep].sort(
    ([a, of], [b, others]) =>
      urgency(of, now) - urgency(others, now) || keys.kinds.get(b)! - keys.kinds.get(a)!,
  );
  for (const [key, waiting] of inOrder) {
    const tasks: State[] = [];
    const first = waiting[0]!.state.chain.items[waiting[0]!.state.next]!;
    if (first.kind !== "hands") continue;
    const fixed = Math.round((first.session?.fixedHours ?? 0) * 60);
    const most = Math.floor((first.session?.mostHours ?? Number.POSITIVE_INFINITY) * 60);
    let minute = now + fixed;
    let work = 0;
    const sorted = waiting.sort(
      (a, b) => a.state.due - b.state.due || keys.chains[b.place]! - keys.chains[a.place]!,
    );
    for (const { state } of sorted) {
      const item = state.chain.items[state.next]!;
      if (item.kind !== "hands" || tasks.length >= keys.caps.get(key)!) continue;
      const length = Math.round(item.hours * 60);
      if (state.ready > minute || up(minute + length) > now + left) continue;
      if (tasks.length > 0 && work + length > most) continue;
      if (leadsNowhere(input, state, minute + length)) continue;
      tasks.push(state);
      minute += length;
      work += length;
    }
    if (tasks.length > 0) {
      const isWorthWaiting =
        tasks.length < waiting.length &&
        waiting.some(({ state }) => state.ready > now && state.ready <= now + keys.patience);
      if (!isWorthWaiting) return { tasks, fixed };
    }
  }
  return undefined;
}

/** What has a window that closes within a day goes first. */
const urgency = (waiting: readonly { readonly state: State }[], now: number): number =>
  Math.min(
    ...waiting.map(({ state }) => (state.due < now + 600 ? state.due : Number.POSITIVE_INFINITY)),
    9e15,
  );

const openings = new WeakMap<ScheduleInput, (minute: number) => boolean>();

/** Whether the next tasks that windows tie to one that ends at `end` find the shop closed for all of their windows. */
function leadsNowhere(input: ScheduleInput, { chain, next }: State, end: number): boolean {
  let isOpen = openings.get(input);
  if (isOpen === undefined) {
    isOpen = makeOpenMinute(input.calendar!);
    openings.set(input, isOpen);
  }
  const done = chain.items[next]!;
  let [from, minute] = [done.id, end];
  for (let at = next + 1; at < chain.items.length; at++) {
    const item = chain.items[at]!;
    if (item.kind === "wait") minute = up(minute + Math.round(item.hours * 60));
    if (item.kind !== "hands") continue;
    if (item.maxLag?.of !== from) return false;
    const closes = down(end + Math.round(item.maxLag.hours * 60));
    const length = up(Math.round(item.hours * 60));
    let start = up(minute);
    const fits = (): boolean => {
      for (let each = start; each < start + length; each += 5) if (!isOpen!(each)) return false;
      return true;
    };
    while (start <= closes && !fits()) start += 5;
    if (start > closes) return true;
    end = start + length;
    minute = end;
    from = item.id;
  }
  return false;
}
