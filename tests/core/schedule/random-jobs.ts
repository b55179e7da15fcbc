/**
 * Random jobs for the schedule's property tests: small ones in whole hours, for brute force, and medium ones.
 *
 * Windows count only from tasks that go on in one go, as layers do: a task that pauses could otherwise be asked to end
 * just after an opening, by less than any grid has.
 */
import fc from "fast-check";
import type { OpeningSpan } from "../../../server/src/core/model/model.ts";
import type { Calendar, Chain, ChainItem, ScheduleInput } from "../../../server/src/core/schedule/types.ts";

const dayPlans: readonly (readonly (readonly [number, number])[])[] = [
  [[9, 17]],
  [[9, 13]],
  [[8, 12]],
  [
    [8, 11],
    [12, 16],
  ],
  [[7, 21]],
];

function hoursArbitrary(): fc.Arbitrary<readonly OpeningSpan[] | undefined> {
  const week = fc.record({
    plan: fc.constantFrom(...dayPlans),
    saturday: fc.boolean(),
    days: fc.subarray([1, 2, 3, 4, 5], { minLength: 2 }),
  });
  const spans = week.map(({ plan, saturday, days }) => {
    const open = days.flatMap((weekday) =>
      plan.map(([opens, closes]) => ({ weekday, opens: opens * 60, closes: closes * 60 })),
    );
    return saturday ? [...open, { weekday: 6, opens: 540, closes: 720 }] : open;
  });
  return fc.oneof({ weight: 6, arbitrary: spans }, { weight: 1, arbitrary: fc.constant(undefined) });
}

function calendarArbitrary(crew: fc.Arbitrary<number>): fc.Arbitrary<Calendar> {
  const closed = fc.constantFrom(
    [],
    [],
    [{ from: "2027-03-10", to: "2027-03-10" }],
    [{ from: "2027-03-09", to: "2027-03-11" }],
  );
  return fc.record({ hours: hoursArbitrary(), closed, crew });
}

interface Shape {
  readonly mostHands: number;
  /** What one unit of the drawn numbers is, in hours. */
  readonly unit: number;
  readonly windows: boolean;
  /** Hours, at most, that a window leaves beyond the waits before it. */
  readonly mostRoom: number;
}

/** Items of a chain, ids within the chain. */
function itemsArbitrary({ mostHands, unit, windows, mostRoom }: Shape): fc.Arbitrary<readonly ChainItem[]> {
  const link = fc.record({
    hours: fc.integer({ min: 1, max: 3 }),
    nonPreemptive: fc.boolean(),
    wait: fc.oneof(
      fc.integer({ min: 0, max: 4 }),
      fc.integer({ min: 0, max: 30 }),
      fc.constant("overnight" as const),
    ),
    fromStart: fc.boolean(),
    room: fc.option(fc.integer({ min: 0, max: mostRoom }), { nil: undefined }),
  });
  return fc.array(link, { minLength: 1, maxLength: mostHands }).map((links) => {
    const items: ChainItem[] = [];
    let last: { id: string; wait: number } | undefined; // the last task in one go, and the waits since
    for (const [place, { hours, nonPreemptive, wait, fromStart, room }] of links.entries()) {
      const id = `h${place}`;
      const maxLag =
        windows && room !== undefined && last !== undefined
          ? { of: last.id, hours: last.wait * unit + room }
          : undefined;
      items.push({ kind: "hands", id, hours: hours * unit, nonPreemptive, ...(maxLag ? { maxLag } : {}) });
      if (nonPreemptive) last = { id, wait: 0 };
      if (wait === "overnight") items.push({ kind: "overnight", id: `n${place}` });
      else if (wait > 0) {
        const of = fromStart && last !== undefined ? last.id : undefined;
        items.push({
          kind: "wait",
          id: `w${place}`,
          hours: wait * unit,
          ...(of === undefined ? {} : { of }),
        });
      }
      if (last !== undefined) last.wait += typeof wait === "number" ? wait : Math.ceil(12 / unit);
    }
    return items;
  });
}

/** Chains, some of them alike. Ids are told apart by the chain's key. */
function chainsArbitrary(shape: Shape, mostChains: number): fc.Arbitrary<readonly Chain[]> {
  const kinds = fc.array(itemsArbitrary(shape), { minLength: 1, maxLength: mostChains });
  return fc.tuple(kinds, fc.integer({ min: 1, max: mostChains }), fc.boolean()).map(([items, count, alike]) =>
    Array.from({ length: alike ? count : items.length }, (_, place) => ({
      key: `c${place}`,
      items: items[alike ? place % Math.max(1, items.length - 1) : place]!,
    })),
  );
}

/** Two or three chains of at most three tasks in whole hours. */
export function smallJob(crew: fc.Arbitrary<number>, windows: boolean): fc.Arbitrary<ScheduleInput> {
  return fc.record({
    calendar: calendarArbitrary(crew),
    start: fc.constantFrom("2027-03-08T09:00", "2027-03-08T06:00", "2027-03-09T15:00", "2027-03-12T10:00"),
    chains: chainsArbitrary({ mostHands: 3, unit: 1, windows, mostRoom: 20 }, 3),
  });
}

/** Up to eight chains of up to eight tasks in quarters of an hour. */
export function mediumJob(crew: fc.Arbitrary<number>, windows: boolean): fc.Arbitrary<ScheduleInput> {
  return fc.record({
    calendar: calendarArbitrary(crew),
    start: fc.constantFrom("2027-03-08", "2027-03-10", "2027-03-12T10:15"),
    chains: chainsArbitrary({ mostHands: 8, unit: 0.25, windows, mostRoom: 120 }, 8),
  });
}

/** Chains of coats, each within a window of the one before, some of them sanded first; in hours that are whole units. */
export function coatsJob(mostChains: number, mostCoats: number, unit: number): fc.Arbitrary<ScheduleInput> {
  const chain = fc.record({
    sanding: fc.integer({ min: 0, max: 3 }),
    coats: fc.integer({ min: 1, max: mostCoats }),
    hours: fc.integer({ min: 1, max: 3 }),
    dry: fc.integer({ min: 0, max: 6 }),
    window: fc.constantFrom(18, 24, 24, 48),
    count: fc.integer({ min: 1, max: mostChains }),
  });
  const hours = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: 540, closes: 1020 }));
  return fc
    .record({
      kinds: fc.array(chain, { minLength: 1, maxLength: 2 }),
      crew: fc.integer({ min: 1, max: 2 }),
      start: fc.constantFrom("2027-03-08T09:00", "2027-03-10T09:00", "2027-03-11T12:00"),
      closed: fc.constantFrom([], [{ from: "2027-03-12", to: "2027-03-12" }]),
    })
    .map(({ kinds, crew, start, closed }) => ({
      calendar: { hours, closed, crew },
      start,
      chains: kinds
        .flatMap((kind) => Array.from({ length: kind.count }, () => kind))
        .slice(0, mostChains)
        .map((kind, place): Chain => ({ key: `c${place}`, items: coatItems(kind, unit) })),
    }));
}

function coatItems(
  kind: {
    readonly sanding: number;
    readonly coats: number;
    readonly hours: number;
    readonly dry: number;
    readonly window: number;
  },
  unit: number,
): readonly ChainItem[] {
  const items: ChainItem[] = [];
  if (kind.sanding > 0)
    items.push({ kind: "hands", id: "s", hours: kind.sanding * unit, nonPreemptive: false });
  for (let coat = 0; coat < kind.coats; coat++) {
    const maxLag = coat > 0 ? { of: `h${coat - 1}`, hours: kind.window } : undefined;
    const hands: ChainItem = { kind: "hands", id: `h${coat}`, hours: kind.hours * unit, nonPreemptive: true };
    items.push(maxLag ? { ...hands, maxLag } : hands);
    if (kind.dry > 0) items.push({ kind: "wait", id: `w${coat}`, hours: kind.dry });
  }
  return items;
}
