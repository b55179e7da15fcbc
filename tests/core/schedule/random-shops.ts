/**
 * Random shops for plans in sessions: pieces of one to three surfaces, sanded, dusted and coated, in calendars with
 * short and long weeks; coats within windows of 2 to 48 h or without.
 */
import fc from "fast-check";
import type { OpeningSpan } from "../../../server/src/core/model/model.ts";
import type {
  Calendar,
  Chain,
  ChainItem,
  HandsItem,
  ScheduleInput,
  SessionRule,
  ShopJob,
} from "../../../server/src/core/schedule/types.ts";

const days = (from: number, to: number, ...spans: readonly (readonly [number, number])[]): OpeningSpan[] =>
  Array.from({ length: to - from + 1 }, (_, day) =>
    spans.map(([opens, closes]) => ({ weekday: from + day, opens: opens * 60, closes: closes * 60 })),
  ).flat();

const WEEKS: readonly (readonly OpeningSpan[])[] = [
  days(1, 5, [9, 17]),
  days(2, 5, [9, 18]),
  days(1, 5, [8, 12], [13, 17]),
  [...days(1, 5, [9, 17]), ...days(6, 6, [9, 13])],
  days(1, 6, [7, 15]),
];

interface Recipe {
  readonly sand: number;
  readonly dust: number;
  readonly coat: number;
  readonly coats: number;
  readonly dry: number;
  readonly window: number | undefined;
  readonly between: boolean;
  readonly night: boolean;
  readonly most: number | undefined;
}

const recipe: fc.Arbitrary<Recipe> = fc.record({
  sand: fc.integer({ min: 1, max: 12 }),
  dust: fc.integer({ min: 0, max: 2 }),
  coat: fc.integer({ min: 1, max: 6 }),
  coats: fc.integer({ min: 1, max: 4 }),
  dry: fc.constantFrom(1, 2, 4, 6, 12, 16),
  window: fc.constantFrom(undefined, undefined, 6, 12, 24, 36, 48),
  between: fc.boolean(),
  night: fc.boolean(),
  most: fc.constantFrom(undefined, undefined, 2, 4),
});

const hands = (id: string, minutes: number, session: SessionRule, isCoat = false): ChainItem => ({
  kind: "hands",
  id,
  hours: minutes / 60,
  nonPreemptive: isCoat,
  session,
});

/** `factor` is the size of the surface. */
function chainOf(
  key: string,
  of: Recipe,
  name: string,
  factor: number,
  fixed: boolean,
): readonly ChainItem[] {
  const min = (units: number): number => units * 5 * factor;
  const rule = (kind: string, minutes: number, material?: string, mostHours?: number): SessionRule => ({
    kind: `${name} ${kind}`,
    fixedHours: fixed ? minutes / 60 : 0,
    ...(material === undefined ? {} : { material }),
    ...(mostHours === undefined ? {} : { mostHours }),
  });
  const items: ChainItem[] = [hands(`${key} sand`, min(of.sand), rule("sand", 3))];
  if (of.dust > 0) items.push(hands(`${key} dust`, min(of.dust), rule("dust", 2)));
  for (let coat = 0; coat < of.coats; coat++) {
    const item = hands(`${key} coat ${coat}`, min(of.coat), rule("coat", 5, name, of.most), true);
    const isTied = coat > 0 && of.window !== undefined && of.window >= of.dry && !of.between;
    items.push(
      isTied
        ? ({ ...item, maxLag: { of: `${key} coat ${coat - 1}`, hours: of.window! } } as ChainItem)
        : item,
    );
    items.push(
      of.night && of.window === undefined
        ? { kind: "overnight", id: `${key} dry ${coat}` }
        : { kind: "wait", id: `${key} dry ${coat}`, hours: of.dry },
    );
    if (of.between && coat < of.coats - 1)
      items.push(hands(`${key} scuff ${coat}`, min(1), rule("scuff", 2)));
  }
  return items;
}

/** Shops with one job of up to `most` surfaces. */
export const randomShop = (most: number, fixed = true): fc.Arbitrary<ScheduleInput> =>
  fc
    .record({
      week: fc.constantFrom(...WEEKS),
      crew: fc.integer({ min: 1, max: 3 }),
      pieces: fc.integer({ min: 2, max: most }),
      surfaces: fc.integer({ min: 1, max: 3 }),
      recipes: fc.tuple(recipe, recipe),
      same: fc.boolean(),
      start: fc.constantFrom("2027-03-08", "2027-03-10", "2027-03-12T10:00"),
      closed: fc.constantFrom([], [], [{ from: "2027-03-11", to: "2027-03-11" }]),
    })
    .map(({ week, crew, pieces, surfaces, recipes, same, start, closed }): ScheduleInput => {
      const calendar: Calendar = { hours: week, closed, crew };
      const chains = Array.from({ length: Math.max(1, Math.floor(pieces / surfaces)) }, (_, piece) =>
        Array.from({ length: surfaces }, (_, surface): Chain => {
          const which = same ? 0 : surface % 2;
          const key = `p${piece}s${surface}`;
          return { key, items: chainOf(key, recipes[which]!, `recipe ${which}`, 1 + (surface % 2), fixed) };
        }),
      ).flat();
      return { calendar, start, chains };
    });

/** The same with two to five jobs, some after another or no earlier than a day. */
export const randomShopOfJobs = (most: number): fc.Arbitrary<ScheduleInput> =>
  fc
    .record({
      shop: randomShop(most),
      count: fc.integer({ min: 2, max: 5 }),
      after: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
      starts: fc.array(fc.constantFrom(undefined, "2027-03-15T09:00", "2027-03-16T09:00"), {
        minLength: 5,
        maxLength: 5,
      }),
    })
    .map(({ shop, count, after, starts }) => {
      const jobs = Array.from({ length: count }, (_, job): ShopJob => {
        const start = starts[job];
        return {
          key: `j${job}`,
          ...(start === undefined ? {} : { start }),
          ...(job > 0 && after[job] ? { after: `j${job - 1}` } : {}),
          due: "2027-03-19T17:00",
        };
      });
      return { ...shop, jobs, chains: shop.chains.map((chain, at) => ({ ...chain, job: `j${at % count}` })) };
    });

/** The same with coats that give off vapour: parts of what the room carries away in 8 h and in 15 min. */
export const withVapour = (shop: ScheduleInput, shift: number, short: number): ScheduleInput => ({
  ...shop,
  stretches: [8, 0.25],
  chains: shop.chains.map((chain) => ({
    ...chain,
    items: chain.items.map((item) =>
      item.kind === "hands" && item.session?.material !== undefined
        ? { ...item, vapour: { afterHours: 0.5, usual: [shift, short], cautious: [2 * shift, 2 * short] } }
        : item,
    ),
  })),
});

/** The same with sanding and scuffing that make dust, and coats that are wet for so many hours. */
export const withDust = (shop: ScheduleInput, wetHours: number): ScheduleInput => ({
  ...shop,
  chains: shop.chains.map((chain) => ({
    ...chain,
    items: chain.items.map((item): ChainItem => {
      if (item.kind !== "hands" || item.session === undefined) return item;
      const { session } = item;
      if (session.material !== undefined) return { ...item, session: { ...session, wetHours } };
      return / (?:sand|scuff)$/u.test(session.kind)
        ? { ...item, session: { ...session, makesDust: true } }
        : item;
    }),
  })),
});

/**
 * The same with kinds of work that are done together, by all surfaces with the same steps of a job, or apart, each by
 * itself: every `nth` kind. As in the notation, the kind is then one of its own.
 */
export function withBatches(
  shop: ScheduleInput,
  nth: number,
  batches: readonly ("together" | "apart")[],
): ScheduleInput {
  const looks = (chain: Chain): string =>
    JSON.stringify([
      chain.job,
      chain.items.map((item) => ("session" in item ? item.session?.kind : item.kind)),
    ]);
  return {
    ...shop,
    chains: shop.chains.map((chain) => ({
      ...chain,
      items: chain.items.map((item, index): ChainItem => {
        if (item.kind !== "hands" || item.session === undefined || index % nth !== 0) return item;
        const batch = batches[index % batches.length]!;
        const whose = batch === "together" ? looks(chain) : chain.key;
        const kind = JSON.stringify([batch, whose, index, item.session.kind]);
        return { ...item, session: { ...item.session, kind, batch } };
      }),
    })),
  };
}

/** The same jobs over and over, until there are more than are searched together. */
export function manyJobs(shop: ScheduleInput): ScheduleInput {
  const turns = Array.from({ length: Math.ceil(61 / shop.jobs!.length) }, (_, turn) => turn);
  return {
    ...shop,
    jobs: turns.flatMap((turn) =>
      shop.jobs!.map(({ after, ...job }) => ({
        ...job,
        key: `${turn}${job.key}`,
        ...(typeof after === "string" ? { after: `${turn}${after}` } : {}),
      })),
    ),
    chains: turns.flatMap((turn) =>
      shop.chains.map((chain) => ({
        key: `${turn}${chain.key}`,
        job: `${turn}${chain.job}`,
        items: chain.items.map((item): ChainItem => {
          const id = `${turn}${item.id}`;
          if (item.kind !== "hands" || item.maxLag === undefined) return { ...item, id };
          return { ...item, id, maxLag: { ...item.maxLag, of: `${turn}${item.maxLag.of}` } };
        }),
      })),
    ),
  };
}

/**
 * Three to six surfaces with up to three coats, within windows of a day or two or without: all times are half hours, for
 * integer programs.
 */
export const halfHourShop: fc.Arbitrary<ScheduleInput> = fc
  .record({
    week: fc.constantFrom(
      days(2, 5, [9, 18]),
      days(1, 5, [9, 17]),
      days(1, 5, [8, 12], [13, 17]),
      days(1, 5, [9, 13]),
    ),
    crew: fc.integer({ min: 1, max: 2 }),
    count: fc.integer({ min: 3, max: 6 }),
    alike: fc.boolean(),
    start: fc.constantFrom("2027-03-09T09:00", "2027-03-11T09:00"),
    recipes: fc.array(
      fc.record({
        sand: fc.integer({ min: 1, max: 3 }),
        coat: fc.integer({ min: 1, max: 2 }),
        coats: fc.integer({ min: 1, max: 3 }),
        dry: fc.constantFrom(2, 4, 12, 16, undefined),
        window: fc.constantFrom(undefined, 24, 36, 48),
      }),
      { minLength: 2, maxLength: 2 },
    ),
    fixed: fc.constantFrom(0, 0.5),
    most: fc.constantFrom(undefined, undefined, 2),
  })
  .map(({ week, crew, count, alike, start, recipes, fixed, most }): ScheduleInput => {
    const chains = Array.from({ length: count }, (_, place): Chain => {
      const key = `c${place}`;
      const which = alike ? 0 : place % 2;
      const { sand, coat, coats, dry, window } = recipes[which]!;
      const layer = (at: number): readonly ChainItem[] => {
        const isTied = at > 0 && window !== undefined && dry !== undefined;
        const item: HandsItem = {
          kind: "hands",
          id: `${key} coat ${at}`,
          hours: coat / 2,
          nonPreemptive: true,
          session: {
            kind: `coat ${which}`,
            fixedHours: fixed,
            ...(most === undefined ? {} : { mostHours: most }),
          },
        };
        return [
          isTied ? { ...item, maxLag: { of: `${key} coat ${at - 1}`, hours: window } } : item,
          dry === undefined
            ? { kind: "overnight", id: `${key} dry ${at}` }
            : { kind: "wait", id: `${key} dry ${at}`, hours: dry },
        ];
      };
      const sanded = hands(`${key} sand`, 30 * sand, { kind: "sand", fixedHours: 0 });
      return { key, items: [sanded, ...Array.from({ length: coats }, (_, at) => layer(at)).flat()] };
    });
    return { calendar: { hours: week, closed: [], crew }, start, chains };
  });

/** Two to four surfaces and one or two people, for the enumerator: all times are half hours. */
export const tinyShop: fc.Arbitrary<ScheduleInput> = fc
  .record({
    week: fc.constantFrom(days(1, 5, [9, 17]), days(1, 5, [9, 12]), days(1, 5, [8, 12], [13, 16])),
    crew: fc.integer({ min: 1, max: 2 }),
    alike: fc.boolean(),
    count: fc.integer({ min: 2, max: 4 }),
    recipes: fc.array(
      fc.record({
        sand: fc.integer({ min: 1, max: 5 }),
        coat: fc.integer({ min: 1, max: 3 }),
        coats: fc.integer({ min: 1, max: 2 }),
        dry: fc.constantFrom(1, 2, 4, 16, undefined),
        window: fc.constantFrom(undefined, 4, 20, 26),
      }),
      { minLength: 2, maxLength: 2 },
    ),
    fixed: fc.constantFrom(0, 0.5),
    most: fc.constantFrom(undefined, 2),
    batch: fc.constantFrom(undefined, undefined, "together" as const, "apart" as const),
  })
  .map(({ week, crew, alike, count, recipes, fixed, most, batch }): ScheduleInput => {
    const chains = Array.from({ length: count }, (_, place): Chain => {
      const key = `c${place}`;
      const which = alike ? 0 : place % 2;
      const { sand, coat, coats, dry, window } = recipes[which]!;
      const task = (id: string, units: number, kind: string): HandsItem => ({
        kind: "hands",
        id: `${key} ${id}`,
        hours: units / 2,
        nonPreemptive: true,
        session: { kind, fixedHours: kind === "sand" ? 0 : fixed },
      });
      const layer = (at: number): readonly ChainItem[] => {
        const { session, ...rest } = task(`coat ${at}`, coat, `coat ${which}`);
        const own = batch === undefined || at > 0 ? "" : `${batch} ${batch === "apart" ? key : which} `;
        const isTied = at > 0 && window !== undefined && dry !== undefined && window >= dry;
        return [
          {
            ...rest,
            session: {
              ...session!,
              kind: `${own}${session!.kind}`,
              ...(most === undefined ? {} : { mostHours: most }),
              ...(batch === undefined || at > 0 ? {} : { batch }),
            },
            ...(isTied ? { maxLag: { of: `${key} coat ${at - 1}`, hours: window } } : {}),
          },
          dry === undefined
            ? { kind: "overnight", id: `${key} dry ${at}` }
            : { kind: "wait", id: `${key} dry ${at}`, hours: dry },
        ];
      };
      return {
        key,
        items: [task("sand", sand, "sand"), ...Array.from({ length: coats }, (_, at) => layer(at)).flat()],
      };
    });
    return { calendar: { hours: week, closed: [], crew }, start: "2027-03-08T09:00", chains };
  });
