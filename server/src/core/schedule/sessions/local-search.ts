/**
 * Betters a sequence of batches: iterated local search from the plans of a few dispatch rules.
 *
 * The first half of the search looks at how early all chains end, not only the last, so that it is led towards plans that
 * can still be bettered; the second half minds the objective alone. All is counted in tasks looked at, never timed, and
 * chance is a fixed sequence of numbers, so the same shop gets the same plan. A single job within five minutes of its
 * bound is not searched to the end, nor are several that have got no better plan for long.
 */
import { lastOpening } from "../calendar.ts";
import { chance } from "../priority-rules.ts";
import {
  compareObjectives,
  createSequencePlanner,
  type DispatchRule,
  endAt,
  type Gene,
  type SessionPlan,
  sessionsAt,
  usualRule,
} from "./batch-sequence.ts";
import { gridMs, type SessionProblem } from "./session-problem.ts";

/** Tasks that may be looked at in all, and for each task of the shop. */
const mostLooks = 800_000;
const looksPerTask = 10_000;
/** Of fewer chains there are fewer ways to join and order their tasks, and the search is shorter by as much. */
const chainsInFull = 4;
/** How often a worse plan is gone on from, which leads out of many dead ends. */
const backward = 0.05;
/** Looks for each task without a better plan after which one within a step of the bound is good enough. */
const looksForAStep = 500;
/** The same where the last wait may end earlier as well. */
const looksForTheEnd = 2500;
/**
 * The same of several jobs, whatever their bound, in each half of the search; and where one is late. Over 58 shops of two to
 * twenty jobs the whole search finds an earlier last work for one, by 12 minutes, and takes 2.7 times as long.
 */
const looksForSeveral = 500;
const looksWhileLate = 2000;
/** Changes without a better plan before the search goes back to the best. */
const patience = 60;

export interface SearchLimits {
  /** A moment before which no last work ends. */
  readonly lastWork: number;
  /** No plan has fewer sessions. */
  readonly sessions: number;
  /** Nothing ends before, once the last work is as early as can be; Infinity: that settles it. */
  readonly end: number;
  /** Whether it is proven that no last work ends by a moment; asked again for each one that is found. */
  readonly isTooEarly?: (lastWork: number) => boolean;
  /** How much of the usual search, 1 for all of it. */
  readonly effort: number;
  /** A sequence to begin with, beside those of the dispatch rules. */
  readonly from?: readonly Gene[];
}

/** The best plan found; undefined when no rule finds any. */
export function searchSessions(problem: SessionProblem, limits: SearchLimits): SessionPlan | undefined {
  const share = Math.min(1, problem.chains.length / chainsInFull);
  const most = limits.effort * share * Math.min(mostLooks, looksPerTask * problem.nHands);
  let looks = 0;
  let best: SessionPlan | undefined;
  /** When the best was found, or the search began to look for something else. */
  let since = 0;
  const sequences = createSequencePlanner(problem);
  const plan = (
    sequence: readonly Gene[],
    rule: DispatchRule,
    base?: readonly Gene[],
  ): SessionPlan | undefined => {
    const found = sequences.plan(sequence, rule, base);
    looks += found?.shop.looks ?? problem.nHands;
    if (
      found !== undefined &&
      (best === undefined || compareObjectives(found.objective, best.objective) < 0)
    ) {
      best = found;
      since = looks;
    }
    return found;
  };
  let { lastWork: bound } = limits;
  let asked = Number.POSITIVE_INFINITY;
  /** Nothing can be earlier. */
  const isEarliest = (): boolean => {
    if (best === undefined || best.objective[0]! > 0) return false;
    const lastWork = best.objective[1]!;
    if (lastWork > bound && lastWork < asked && limits.isTooEarly !== undefined) {
      asked = lastWork;
      if (limits.isTooEarly(lastWork - gridMs)) bound = lastWork;
    }
    return lastWork <= bound;
  };
  /**
   * Of a single job, what may be left to gain is a step of the grid, which the bound may well have lost to rounding. Of
   * several the bound says little; what has not been found for long is seldom found at all.
   */
  const isNearEnough = (): boolean => {
    if (best === undefined) return false;
    const [late, lastWork] = best.objective as readonly [number, number];
    const unbettered = (looks - since) / problem.nHands;
    if (problem.jobs.length > 1) return unbettered > (late > 0 ? looksWhileLate : looksForSeveral);
    const each = best.objective[endAt]! <= limits.end ? looksForAStep : looksForTheEnd;
    return late === 0 && lastWork <= bound + gridMs && unbettered > each;
  };
  /** Nothing can be better, of a single job: changes of material count last and are hardly worth a search. */
  const isBest = (): boolean =>
    // One chain by itself leaves nothing to choose.
    (best !== undefined && problem.chains.length === 1) ||
    (isEarliest() &&
      problem.jobs.length === 1 &&
      best!.objective[endAt]! <= limits.end &&
      best!.objective[sessionsAt]! <= limits.sessions);
  const starts: SessionPlan[] = [];
  const first = limits.from && plan(limits.from, usualRule);
  if (first !== undefined) starts.push(first);
  for (const joined of [1, 1 / 2, 1 / 3, 1 / 4, 1 / 6, 1 / 10, 0]) {
    for (const prefers of ["first blocks", "last blocks"] as const) {
      if (isBest()) return best;
      // A shop too large to be searched gets the plans of the first rules.
      if (looks >= most / 3) break;
      const found = plan([], { share: joined, prefers });
      // Dispatching puts down one chain by itself where it must, so no sequence does better.
      if (found === undefined) return undefined;
      starts.push(found);
    }
  }
  if (best === undefined) return undefined;
  const next = chance();
  const changedPlan = ({ sequence }: SessionPlan): SessionPlan | undefined =>
    plan(changed(sequence, problem, next), usualRule, sequence);
  for (const half of [0.6, 1]) {
    const measure = half < 1 ? smoothed : ({ objective }: SessionPlan) => objective;
    const isDone = half < 1 ? isEarliest : isBest;
    if (problem.jobs.length > 1) since = looks;
    let current = best;
    let value = measure(current);
    let least = value;
    let idle = 0;
    while (looks < most * half && !isDone() && !isNearEnough()) {
      const found = changedPlan(current);
      if (found === undefined) continue;
      const other = measure(found);
      if (compareObjectives(other, value) <= 0 || next() < backward) {
        current = found;
        value = other;
      }
      if (compareObjectives(value, least) < 0) {
        least = value;
        idle = 0;
      } else idle++;
      if (idle < patience) continue;
      // From the best, or now and then from another start, a few changes away.
      current = next() < 0.7 ? best : starts[Math.floor(next() * starts.length)]!;
      for (let turn = 0; turn < 3; turn++) current = changedPlan(current) ?? current;
      value = measure(current);
      least = value;
      idle = 0;
    }
  }
  return best;
}

/**
 * Days late, the opening of the last work, how much work lies in it, then the last work and the sum of all chains' last
 * works, in place of the jobs'.
 */
function smoothed({ shop, objective }: SessionPlan): readonly number[] {
  const { problem, times, byKind } = shop;
  const lastWork = objective[1]!;
  const opened = lastOpening(problem.shop, lastWork - 1) ?? problem.start;
  let rest = 0;
  for (const sessions of byKind.values())
    for (const { start, end } of sessions) if (end > opened) rest += end - Math.max(start, opened);
  let sum = 0;
  for (const [place, { hands }] of problem.chains.entries()) {
    const last = hands.at(-1);
    if (last !== undefined) sum += times[place]!.ends[last]!;
  }
  return [objective[0]!, opened, rest, lastWork, sum];
}

/** The sequence with one batch moved, split, joined with another, or made larger or smaller. */
function changed(sequence: readonly Gene[], problem: SessionProblem, next: () => number): readonly Gene[] {
  const genes = [...sequence];
  if (genes.length === 0) return genes;
  const at = Math.floor(next() * genes.length);
  const gene = genes[at]!;
  const place = (): number => Math.floor(next() * (genes.length + 1));
  const near = (): number => Math.max(0, Math.min(genes.length, at + Math.round((next() - 0.5) * 8)));
  const kind = next();
  if (kind < 0.3) {
    genes.splice(at, 1);
    genes.splice(next() < 0.6 ? Math.min(near(), genes.length) : place() % (genes.length + 1), 0, gene);
  } else if (kind < 0.45) {
    const other = Math.floor(next() * genes.length);
    [genes[at], genes[other]] = [genes[other]!, gene];
  } else if (kind < 0.65 && gene.size > 1) {
    const size = 1 + Math.floor(next() * (gene.size - 1));
    genes[at] = { ...gene, size };
    genes.splice(next() < 0.5 ? at + 1 : place(), 0, { ...gene, size: gene.size - size });
  } else if (kind < 0.8) {
    const same = genes.flatMap((other, index) =>
      index !== at && other.group === gene.group && other.block === gene.block ? [index] : [],
    );
    const other = same[Math.floor(next() * same.length)];
    if (other === undefined) return genes;
    genes[at] = { ...gene, size: gene.size + genes[other]!.size };
    genes.splice(other, 1);
  } else if (kind < 0.88) {
    // The rest of what windows tie together a little later, after others; or no later than that.
    const { tiedTo } = problem.groups[gene.group]!;
    const last = gene.until ?? tiedTo[gene.block]!;
    const { until, ...whole } = gene;
    if (until !== undefined && next() < 0.5) genes[at] = whole;
    else if (last > gene.block) {
      const middle = gene.block + Math.floor(next() * (last - gene.block));
      genes[at] = { ...gene, until: middle };
      const later = Math.min(genes.length, at + 1 + Math.floor(next() * 5));
      genes.splice(later, 0, { ...gene, block: middle + 1 });
    }
  } else if (kind < 0.96) {
    // A few more here, so many fewer in the next of its kind.
    const more = 1 + Math.floor(next() * Math.max(1, gene.size / 2));
    const later = genes.findIndex(
      (other, index) => index > at && other.group === gene.group && other.block === gene.block,
    );
    genes[at] = { ...gene, size: gene.size + more };
    const rest = genes[later];
    if (rest !== undefined) genes[later] = { ...rest, size: Math.max(1, rest.size - more) };
  } else {
    // All blocks of a group in one batch each, from here on.
    const { tiedTo, members } = problem.groups[gene.group]!;
    const size = Math.max(1, Math.floor(next() * members.length));
    const all: Gene[] = [];
    for (let block = gene.block; block < tiedTo.length; block = tiedTo[block]! + 1)
      all.push({ group: gene.group, block, size });
    genes.splice(at, 0, ...all);
  }
  return genes;
}
