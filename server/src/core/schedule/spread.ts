/**
 * Whether a job's work can be spread over the hours of the shop until a finish at all, by prices.
 *
 * Every part of an opening has so much working time of the crew, and nobody is at more than one task when it ends; every
 * opening has so much time for tasks in one go, and room for so many long ones. Each of these gets a price. When even
 * the cheapest ways of all chains together cost more than all there is would, at those prices, there is no plan: a proof
 * that holds for any prices, so that it does not matter how they were found, nor how exactly. They are found by a linear
 * program that mixes ways; where no proof comes of it, its mixture says how many chains of each sort would best go which
 * way.
 */
import { type Column, type Program, startProgram } from "./basis.ts";
import { latestEnds } from "./bounds.ts";
import { dayMs, hourMs, openingsBetween } from "./calendar.ts";
import type { Sort } from "./energy.ts";
import type { Packing } from "./packing.ts";
import type { Problem } from "./problem.ts";
import { makeWays, type Part, type Prices, type Way, type Ways } from "./ways.ts";

/** By step, when the opening opens in which its task is meant to lie, and when the part of it ends. */
export type Meant = ReadonlyMap<number, { readonly opens: number; readonly closes: number }>;

/** How many of a sort's chains, of one, go which way. */
export interface Shares {
  readonly sort: Sort;
  readonly ways: readonly { readonly share: number; readonly meant: Meant }[];
}

export type Spread =
  | { readonly isTooEarly: true }
  /** Without shares when the search ended before it knew. */
  | { readonly isTooEarly: false; readonly shares?: readonly Shares[] };

/** How much may be worked out, in steps of any kind; counts down. */
export interface Budget {
  left: number;
}

/** More rows than this are too many for the program. */
const mostRows = 420;
const mostOpenings = 120;
/** Up to so many openings all of them stand apart. */
const mostApart = 12;
/** No part shorter than this, milliseconds. */
const shortestPart = 2 * hourMs;
const weekMs = 7 * dayMs;

/** By how much prices must exceed what there is before they count as a proof, against rounding. */
const margin = 1e-7;

export interface Fineness {
  /** A mixture is good enough when it fills nothing by more than this share; 1 for a proof, 0 for the best there is. */
  readonly enough: number;
  /** Into how many parts openings are cut, at most. */
  readonly nParts: number;
}

export function spreadWork(
  problem: Problem,
  sorts: readonly Sort[],
  packing: Packing,
  finish: number,
  budget: Budget,
  { enough, nParts }: Fineness,
): Spread {
  const openings = openingsBetween(problem.shop, problem.start, finish, mostOpenings);
  if (openings === undefined) return { isTooEarly: false };
  let parts = cutUp(openings, nParts);
  let rows = makeRows(problem.crew, openings, parts, packing);
  if (rows.count > mostRows) {
    parts = cutUp(openings, 1);
    rows = makeRows(problem.crew, openings, parts, packing);
  }
  if (rows.count > mostRows) return { isTooEarly: false };
  const all: Ways[] = [];
  for (const sort of sorts) {
    const due = latestEnds(problem, sort.track, finish);
    if (due === undefined) return { isTooEarly: true };
    all.push(makeWays(problem, parts, sort, due, packing.counted));
  }
  const ask = (prices: Prices): (Way | undefined)[] => {
    const before = all.reduce((sum, ways) => sum + ways.steps(), 0);
    const found = all.map((ways) => ways.cheapest(prices));
    budget.left -= all.reduce((sum, ways) => sum + ways.steps(), 0) - before;
    return found;
  };
  const toColumn = (way: Way, group: number): WayColumn =>
    columnOf(rows, parts, all[group]!, way, group, sorts[group]!.count);

  const begin = ask(rows.prices(new Float64Array(rows.count).fill(1 / rows.count)));
  if (begin.includes(undefined)) return { isTooEarly: true };
  const columns = begin.map((way, group) => toColumn(way!, group));
  if (columns.every(({ rows: loaded }) => loaded.length === 0)) return { isTooEarly: false };
  const program = startProgram(rows.count, columns);
  while (budget.left > 0) {
    if (program.scale() <= enough + tiny)
      return { isTooEarly: false, shares: sharesOf(program, sorts, all, openings, parts) };
    const { rows: prices } = program.prices();
    const found = ask(rows.prices(prices)) as Way[];
    const cost = found.reduce((sum, way, group) => sum + way.cost * sorts[group]!.count, 0);
    const total = prices.reduce((sum, price) => sum + price, 0);
    if (cost > total * (1 + margin)) return { isTooEarly: true };
    const before = program.scale();
    for (const [group, way] of found.entries()) {
      program.offer(toColumn(way, group));
      budget.left -= (rows.count + sorts.length) ** 2 / 80;
    }
    // Nothing betters it any more, and yet it proves nothing: it hangs on the last digits.
    if (program.scale() >= before - tiny && cost >= total * program.scale() - 1e-6) {
      return program.scale() > 1
        ? { isTooEarly: false }
        : { isTooEarly: false, shares: sharesOf(program, sorts, all, openings, parts) };
    }
  }
  return { isTooEarly: false };
}

const tiny = 1e-9;

interface WayColumn extends Column {
  readonly way: Way;
}

interface Rows {
  readonly count: number;
  /** Prices from prices by row, a full row costing its price. */
  readonly prices: (byRow: Float64Array) => Prices;
  /** By part, the rows of all work in its opening, of work in parts like it, and of work across ends like its own. */
  readonly opening: Int32Array;
  readonly part: Int32Array;
  readonly across: Int32Array;
  /** By opening, the rows of tasks in one go in openings like it. −1: none. */
  readonly whole: Int32Array;
  readonly counted: readonly Int32Array[];
  /** By row, what it holds. */
  readonly room: readonly number[];
}

interface Opening {
  readonly opens: number;
  readonly closes: number;
}

/** Openings cut into equal parts, none of them too short. */
function cutUp(openings: readonly Opening[], most: number): readonly Part[] {
  return openings.flatMap(({ opens, closes }, opening) => {
    const count = Math.max(1, Math.min(most, Math.floor((closes - opens) / shortestPart)));
    const cut = (place: number): number =>
      place === count ? closes : opens + Math.floor(((closes - opens) * place) / count);
    return Array.from(
      { length: count },
      (_, place): Part => ({
        opens: cut(place),
        closes: cut(place + 1),
        opening,
      }),
    );
  });
}

/**
 * One row for everything of which there is only so much. Where there are many openings, what is alike from week to week
 * is put together: how much lies in a part of the day, in all weeks, tells nearly as much as week by week.
 */
function makeRows(
  crew: number,
  openings: readonly Opening[],
  parts: readonly Part[],
  packing: Packing,
): Rows {
  const room: number[] = [];
  const isMany = openings.length > mostApart;
  /** A row for each key; `held` is what one of the keyed holds for one person. */
  const rowsFor = <T>(
    of: readonly T[],
    held: (each: T, place: number) => number,
    key: (each: T) => string,
  ): Int32Array => {
    const known = new Map<string, number>();
    return Int32Array.from(of, (each, place) => {
      const more = held(each, place) * crew;
      if (more <= 0) return -1;
      const name = isMany ? key(each) : `${place}`;
      const row = known.get(name) ?? room.push(0) - 1;
      known.set(name, row);
      room[row]! += more;
      return row;
    });
  };
  const lengthOf = ({ opens, closes }: Opening): number => closes - opens;
  const inWeek = ({ opens, closes }: Opening): string => `${opens % weekMs} ${closes - opens}`;
  const byOpening = Int32Array.from(openings, (each) => room.push(lengthOf(each) * crew) - 1);
  const isCut = parts.length > openings.length;
  const part = rowsFor(parts, (each) => (isCut ? lengthOf(each) : 0), inWeek);
  const across = rowsFor(parts, (_, place) => (place < parts.length - 1 ? 1 : 0), inWeek);
  const whole = rowsFor(
    openings,
    (each) => (packing.most(lengthOf(each)) < lengthOf(each) ? packing.most(lengthOf(each)) : 0),
    inWeek,
  );
  const counted = packing.counted.map((least) =>
    rowsFor(
      openings,
      (each) => {
        const count = Math.floor(lengthOf(each) / least);
        return count * least < 0.95 * lengthOf(each) ? count : 0;
      },
      inWeek,
    ),
  );
  const opening = Int32Array.from(parts, (each) => byOpening[each.opening]!);
  const priced = (rows: Int32Array, byRow: Float64Array): Float64Array =>
    Float64Array.from(rows, (row) => (row < 0 ? 0 : byRow[row]! / room[row]!));
  return {
    count: room.length,
    prices: (byRow) => {
      const inPart = priced(part, byRow);
      return {
        work: priced(opening, byRow).map((price, place) => price + inPart[place]!),
        across: priced(across, byRow),
        whole: priced(whole, byRow),
        counted: counted.map((rows) => priced(rows, byRow)),
      };
    },
    opening,
    part,
    across,
    whole,
    counted,
    room,
  };
}

/** What all chains of a sort load when all go one way, as parts of what the rows hold. */
function columnOf(
  rows: Rows,
  parts: readonly Part[],
  { tasks }: Ways,
  way: Way,
  group: number,
  count: number,
): WayColumn {
  const loads = new Map<number, number>();
  const add = (row: number, load: number): void => {
    if (row >= 0) loads.set(row, (loads.get(row) ?? 0) + (load * count) / rows.room[row]!);
  };
  for (const [place, task] of tasks.entries()) {
    const { first, last, paidAt } = way.stays[place]!;
    add(rows.opening[paidAt]!, task.work);
    add(rows.part[paidAt]!, task.work);
    for (let part = first; part < last; part++) add(rows.across[part]!, 1);
    if (!task.whole) continue;
    const { opening } = parts[first]!;
    add(rows.whole[opening]!, task.work);
    for (let rank = task.rank; rank < rows.counted.length; rank++) add(rows.counted[rank]![opening]!, 1);
  }
  return { group, rows: [...loads.keys()], loads: [...loads.values()], way };
}

function sharesOf(
  program: Program,
  sorts: readonly Sort[],
  all: readonly Ways[],
  openings: readonly Opening[],
  parts: readonly Part[],
): readonly Shares[] {
  const mixture = program.mixture();
  return sorts.map((sort, group) => ({
    sort,
    ways: mixture
      .filter(({ column }) => column.group === group)
      .map(({ column, weight }) => ({
        share: weight,
        meant: new Map(
          all[group]!.tasks.map((task, place) => {
            const part = parts[(column as WayColumn).way.stays[place]!.paidAt]!;
            return [task.index, { opens: openings[part.opening]!.opens, closes: part.closes }];
          }),
        ),
      })),
  }));
}
