/**
 * Whether a job's work can be spread over the hours of the shop until a finish at all: a linear program by column
 * generation.
 *
 * Dantzig and Wolfe, "Decomposition principle for linear programs", 1960: a column is an assignment of one chain's tasks
 * to parts of openings, the master program mixes columns, and pricing finds the cheapest new one of each class of chains.
 * Every part of an opening has so much working time of the crew, and nobody is at more than one task when it ends; every
 * opening has so much time for non-preemptive tasks, and room for so many long ones. Each of these rows has a price. When
 * even the cheapest assignments of all chains together cost more than all there is would, at those prices, there is no
 * plan: a proof by duality (Farkas, "Theorie der einfachen Ungleichungen", 1902) that holds for any prices, so that it does
 * not matter how they were found, nor how exactly. Where no proof comes of it, the mixture says how many chains of each
 * class would best get which assignment.
 */

import { latestEnds } from "../bounds/chain-bounds.ts";
import type { ChainClass } from "../bounds/energetic-bound.ts";
import type { SubsetSums } from "../bounds/subset-sum-bound.ts";
import { dayMs, hourMs, openingsBetween } from "../calendar.ts";
import type { Problem } from "../problem.ts";
import {
  type ChainAssignment,
  type ChainPricing,
  makeChainPricing,
  type Part,
  type Prices,
} from "./chain-pricing.ts";
import { type Column, type Master, startMaster } from "./simplex.ts";

/** By step, when the opening opens in which its task prefers to lie, and when the part of it ends. */
export type PreferredSlots = ReadonlyMap<number, { readonly opens: number; readonly closes: number }>;

/** How many of a class's chains, of one, get which assignment. */
export interface Mixture {
  readonly chainClass: ChainClass;
  readonly assignments: readonly { readonly share: number; readonly preferred: PreferredSlots }[];
}

export type MasterResult =
  | { readonly isTooEarly: true }
  /** Without shares when the search ended before it knew. */
  | { readonly isTooEarly: false; readonly shares?: readonly Mixture[] };

/** How much may be worked out, in steps of any kind; counts down. */
export interface Budget {
  left: number;
}

/** More rows than this are too many for the master. */
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

export function solveMaster(
  problem: Problem,
  classes: readonly ChainClass[],
  sums: SubsetSums,
  finish: number,
  budget: Budget,
  { enough, nParts }: Fineness,
): MasterResult {
  const openings = openingsBetween(problem.shop, problem.start, finish, mostOpenings);
  if (openings === undefined) return { isTooEarly: false };
  let parts = cutUp(openings, nParts);
  let rows = makeRows(problem.crew, openings, parts, sums);
  if (rows.count > mostRows) {
    parts = cutUp(openings, 1);
    rows = makeRows(problem.crew, openings, parts, sums);
  }
  if (rows.count > mostRows) return { isTooEarly: false };
  const all: ChainPricing[] = [];
  for (const chainClass of classes) {
    const due = latestEnds(problem, chainClass.chain, finish);
    if (due === undefined) return { isTooEarly: true };
    all.push(makeChainPricing(problem, parts, chainClass, due, sums.counted));
  }
  const ask = (prices: Prices): (ChainAssignment | undefined)[] => {
    const before = all.reduce((sum, assignments) => sum + assignments.steps(), 0);
    const found = all.map((assignments) => assignments.cheapest(prices));
    budget.left -= all.reduce((sum, assignments) => sum + assignments.steps(), 0) - before;
    return found;
  };
  const toColumn = (assignment: ChainAssignment, group: number): AssignmentColumn =>
    columnOf(rows, parts, all[group]!, assignment, group, classes[group]!.count);

  const begin = ask(rows.prices(new Float64Array(rows.count).fill(1 / rows.count)));
  if (begin.includes(undefined)) return { isTooEarly: true };
  const columns = begin.map((assignment, group) => toColumn(assignment!, group));
  if (columns.every(({ rows: loaded }) => loaded.length === 0)) return { isTooEarly: false };
  const master = startMaster(rows.count, columns);
  while (budget.left > 0) {
    if (master.scale() <= enough + tiny)
      return { isTooEarly: false, shares: mixturesOf(master, classes, all, openings, parts) };
    const { rows: prices } = master.prices();
    const found = ask(rows.prices(prices)) as ChainAssignment[];
    const cost = found.reduce((sum, assignment, group) => sum + assignment.cost * classes[group]!.count, 0);
    const total = prices.reduce((sum, price) => sum + price, 0);
    if (cost > total * (1 + margin)) return { isTooEarly: true };
    const before = master.scale();
    for (const [group, assignment] of found.entries()) {
      master.offer(toColumn(assignment, group));
      budget.left -= (rows.count + classes.length) ** 2 / 80;
    }
    // Nothing betters it any more, and yet it proves nothing: it hangs on the last digits.
    if (master.scale() >= before - tiny && cost >= total * master.scale() - 1e-6) {
      return master.scale() > 1
        ? { isTooEarly: false }
        : { isTooEarly: false, shares: mixturesOf(master, classes, all, openings, parts) };
    }
  }
  return { isTooEarly: false };
}

const tiny = 1e-9;

interface AssignmentColumn extends Column {
  readonly assignment: ChainAssignment;
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
  readonly nonPreemptive: Int32Array;
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
  sums: SubsetSums,
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
  const nonPreemptive = rowsFor(
    openings,
    (each) => (sums.most(lengthOf(each)) < lengthOf(each) ? sums.most(lengthOf(each)) : 0),
    inWeek,
  );
  const counted = sums.counted.map((least) =>
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
        nonPreemptive: priced(nonPreemptive, byRow),
        counted: counted.map((rows) => priced(rows, byRow)),
      };
    },
    opening,
    part,
    across,
    nonPreemptive,
    counted,
    room,
  };
}

/** What all chains of a class load when all get one assignment, as parts of what the rows hold. */
function columnOf(
  rows: Rows,
  parts: readonly Part[],
  { tasks }: ChainPricing,
  assignment: ChainAssignment,
  group: number,
  count: number,
): AssignmentColumn {
  const loads = new Map<number, number>();
  const add = (row: number, load: number): void => {
    if (row >= 0) loads.set(row, (loads.get(row) ?? 0) + (load * count) / rows.room[row]!);
  };
  for (const [place, task] of tasks.entries()) {
    const { first, last, paidAt } = assignment.intervals[place]!;
    add(rows.opening[paidAt]!, task.work);
    add(rows.part[paidAt]!, task.work);
    for (let part = first; part < last; part++) add(rows.across[part]!, 1);
    if (!task.nonPreemptive) continue;
    const { opening } = parts[first]!;
    add(rows.nonPreemptive[opening]!, task.work);
    for (let rank = task.rank; rank < rows.counted.length; rank++) add(rows.counted[rank]![opening]!, 1);
  }
  return { group, rows: [...loads.keys()], loads: [...loads.values()], assignment };
}

function mixturesOf(
  master: Master,
  classes: readonly ChainClass[],
  all: readonly ChainPricing[],
  openings: readonly Opening[],
  parts: readonly Part[],
): readonly Mixture[] {
  const mixture = master.mixture();
  return classes.map((chainClass, group) => ({
    chainClass,
    assignments: mixture
      .filter(({ column }) => column.group === group)
      .map(({ column, weight }) => ({
        share: weight,
        preferred: new Map(
          all[group]!.tasks.map((task, place) => {
            const part = parts[(column as AssignmentColumn).assignment.intervals[place]!.paidAt]!;
            return [task.index, { opens: openings[part.opening]!.opens, closes: part.closes }];
          }),
        ),
      })),
  }));
}
