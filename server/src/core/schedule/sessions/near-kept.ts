/**
 * A plan that moves as little as possible from one that was kept: repair by right shift.
 *
 * The sessions of the kept plan are put down again in the order in which they began, each when it began then, or as soon
 * after as people, waits, windows and the room's air allow. What is new goes in before what it must come before, and else
 * into the hours that are left when all that was kept has its place. Nothing moves to an earlier hour: whoever has the plan
 * on the wall has arranged the day by it. (Match-up and right-shift repair: Vieira, Herrmann and Lin, "Rescheduling
 * manufacturing systems: a framework of strategies, policies, and methods", Journal of Scheduling 6, 2003; from memory.)
 */

import { momentIn } from "../problem.ts";
import type { ScheduleInput } from "../types.ts";
import {
  availableOf,
  compareObjectives,
  dispatchRest,
  type Gene,
  goesWhole,
  objectiveOf,
  type SessionPlan,
  usualRule,
} from "./batch-sequence.ts";
import type { NearKept } from "./plan-sessions.ts";
import type { Kept, Kind, SessionProblem } from "./session-problem.ts";
import { emptyWorkshop, putDown, timeBatch, type Workshop } from "./workshop.ts";

/** Makes plans near one that was kept. */
export const nearKept: NearKept = {
  plan: planNearKept,
  with: (problem, input) => ({ ...problem, kept: keptOf(problem, input) }),
};

/** Setting up comes before the work of the first task of a session. */
function keptOf(problem: SessionProblem, input: ScheduleInput): SessionProblem["kept"] {
  const kindOf = (chain: number, step: number): Kind => problem.groups[problem.groupOf[chain]!]!.kinds[step]!;
  const all = input.chains.map(({ items }) =>
    items.map((item) => {
      if (item.kind !== "hands" || item.kept === undefined) return undefined;
      const { at, begun, session } = item.kept;
      const [from, since] = [momentIn(problem.shop, at), momentIn(problem.shop, begun)];
      return from === undefined || since === undefined ? undefined : { from, since, session };
    }),
  );
  const firsts = new Map<string, number>();
  for (const each of all.flat())
    if (each) firsts.set(each.session, Math.min(each.from, firsts.get(each.session) ?? each.from));
  if (firsts.size === 0) return undefined;
  return all.map((steps, chain) =>
    steps.map((each, step): Kept | undefined => {
      if (each === undefined) return undefined;
      const { session, from, since } = each;
      return { session, from: from === firsts.get(session) ? since + kindOf(chain, step).fixed : from };
    }),
  );
}

/** Chains that go on together, as they did in the kept plan. */
interface Next {
  readonly group: number;
  readonly block: number;
  /** The last of the blocks. */
  readonly until: number;
  readonly members: readonly number[];
  /** When the first that was kept of what they have before them began. */
  readonly from: number;
}

/**
 * The plan; undefined where none was kept, or something fits nowhere. Coats that windows tie together go in one by one, so
 * that what was in between stays there, or where that would miss a window, or move more, as a whole.
 */
function planNearKept(problem: SessionProblem): SessionPlan | undefined {
  if (problem.kept === undefined) return undefined;
  const plans = [false, true].flatMap((isTied) => repaired(problem, isTied) ?? []);
  const moves = plans.map((plan) => [plan.objective[0]!, movedBy(plan), ...plan.objective]);
  const [first, second] = plans;
  return second && compareObjectives(moves[1]!, moves[0]!) < 0 ? second : first;
}

function repaired(problem: SessionProblem, isTied: boolean): SessionPlan | undefined {
  const shop = emptyWorkshop(problem);
  const done: Gene[] = [];
  for (let next = firstOf(shop, isTied); next !== undefined; next = firstOf(shop, isTied))
    if (!putInParts(shop, next, next.members, done)) return undefined;
  if (!dispatchRest(shop, done, usualRule)) return undefined;
  return { shop, sequence: done, objective: objectiveOf(shop) };
}

/** By how much all that was kept is later, added up. */
function movedBy({ shop: { problem, times } }: SessionPlan): number {
  let sum = 0;
  for (const [chain, kept] of problem.kept!.entries())
    for (const [index, each] of kept.entries())
      if (each !== undefined) sum += Math.max(0, times[chain]!.starts[index]! - each.from);
  return sum;
}

/** All at once, or where that is too much now, in halves; false where not even one fits. */
function putInParts(shop: Workshop, next: Next, members: readonly number[], done: Gene[]): boolean {
  const { group, block, until } = next;
  const batch = timeBatch(shop, shop.problem.groups[group]!, block, members, until);
  if (batch !== undefined) {
    putDown(shop, batch);
    done.push({ group, block, size: members.length, until });
    return true;
  }
  if (members.length === 1) return false;
  const half = members.length >> 1;
  return (
    putInParts(shop, next, members.slice(0, half), done) && putInParts(shop, next, members.slice(half), done)
  );
}

/** What began first of what can be done; undefined where nothing is left that was kept, or that comes before such. */
function firstOf(shop: Workshop, isTied: boolean): Next | undefined {
  const { groups } = shop.problem;
  let first: Next | undefined;
  for (const [group, own] of groups.entries())
    for (let block = 0; block < own.blocks.length; block++) {
      const until = isTied ? own.tiedTo[block]! : block;
      const isWhole = goesWhole(own, { group, block, size: own.members.length, until });
      const chains = availableOf(shop, { group, block }, isWhole);
      // In a session one task comes after the other, in the order that they had.
      const inTurn = chains.toSorted(
        (a, b) => beganAt(shop, group, block, a) - beganAt(shop, group, block, b),
      );
      const parts = isWhole ? [inTurn] : bySessions(shop, { group, block, until }, inTurn);
      for (const members of parts) {
        const from = Math.min(...members.map((chain) => beganAt(shop, group, block, chain)));
        if (Number.isFinite(from) && (first === undefined || from < first.from))
          first = { group, block, until, members, from };
      }
    }
  return first;
}

/** The chains parted by the sessions in which they did these blocks. */
function bySessions(
  { problem }: Workshop,
  { group, block, until }: Pick<Next, "group" | "block" | "until">,
  chains: readonly number[],
): readonly (readonly number[])[] {
  const { blocks } = problem.groups[group]!;
  const parts = new Map<string, number[]>();
  for (const chain of chains) {
    const own = problem.kept![chain]!.slice(blocks[block]![0], blocks[until]![1] + 1);
    const key = JSON.stringify(own.map((each) => each?.session ?? null));
    const others = parts.get(key);
    if (others === undefined) parts.set(key, [chain]);
    else others.push(chain);
  }
  return [...parts.values()];
}

/** When the first of a chain's tasks from a block on began; infinity where none was kept. */
function beganAt({ problem }: Workshop, group: number, block: number, chain: number): number {
  const [first] = problem.groups[group]!.blocks[block]!;
  const froms = problem.kept![chain]!.slice(first).flatMap((each) => each?.from ?? []);
  return Math.min(Number.POSITIVE_INFINITY, ...froms);
}
