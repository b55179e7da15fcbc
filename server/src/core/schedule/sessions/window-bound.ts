/**
 * A moment before which no plan's last work ends, by what closings leave of the openings for coats that short windows
 * tie together.
 *
 * Where a window closes before the shop opens again, all coats that it ties lie in one day: the first of them begins
 * early enough for the last to end before closing. Nobody begins more of them one after the other than fit into that time,
 * so a day takes so many pieces, and the last piece goes into the day that the count leads to. Drying times and work
 * that leave hours empty in between are seen by this alone: what it takes is not hours, but beginnings.
 */
import { closingAfter, hourMs, nextOpening, type ShopTime } from "../calendar.ts";
import { ceilToGrid, type Group, type SessionProblem } from "./session-problem.ts";

/** Days that are looked at for one group. */
const mostDays = 2_000;

/** Moment of the problem; its start where windows say nothing. */
export function boundByWindows(problem: SessionProblem): number {
  let bound = problem.start;
  for (const group of problem.groups)
    for (const block of group.tiedTo.keys())
      if (block === 0 || group.tiedTo[block - 1]! < block)
        bound = Math.max(bound, ceilToGrid(boundOfBlock(problem, group, block)));
  return bound;
}

/** Of the last of the group's chains, by the block of tied tasks that begins with this one. */
function boundOfBlock(problem: SessionProblem, group: Group, block: number): number {
  const { start, shop, crew, jobs } = problem;
  const last = group.blocks[group.tiedTo[block]!]![1];
  const tasks = group.pattern.hands.filter((index) => index >= group.blocks[block]![0] && index <= last);
  const [first] = tasks;
  if (first === undefined || tasks.length < 2) return start;
  const within = longestWindow(group, tasks);
  const { head, length, tail, firstWork } = leastTimes(problem, group, tasks);
  const { fixed } = group.kinds[first]!;
  // What is longer than every opening goes on after closing.
  const isInOne = tasks.every((index) =>
    group.members.every((chain) => {
      const step = problem.chains[chain]!.steps[index]!;
      return step.kind === "hands" && group.kinds[index]!.fixed + step.work <= shop.longest;
    }),
  );
  if (!isInOne) return start;
  const begin = jobs[group.job]!.start;
  let done = 0;
  for (const day of daysOf(shop, begin, within)) {
    const from = Math.max(day.opens + fixed, begin + head);
    const to = day.closes - length;
    if (to < from) continue;
    const each = firstWork > 0 ? Math.floor((to - from) / firstWork) + 1 : Number.POSITIVE_INFINITY;
    const left = group.members.length - done;
    if (left <= crew * each)
      return from + (firstWork > 0 ? (Math.ceil(left / crew) - 1) * firstWork : 0) + length + tail;
    done += crew * each;
  }
  return start;
}

const longestWindow = ({ pattern }: Group, tasks: readonly number[]): number =>
  tasks.reduce((longest, index) => {
    const step = pattern.steps[index]!;
    return step.kind === "hands" && step.window !== undefined && step.window.of >= tasks[0]!
      ? Math.max(longest, step.window.within)
      : longest;
  }, 0);

/** Milliseconds that no chain of the group does without, whatever the hours of the shop. */
interface LeastTimes {
  /** From the start of the job until the first of the tasks. */
  readonly head: number;
  /** From its beginning until the last of them ends. */
  readonly length: number;
  /** From then until the last work of the chain ends. */
  readonly tail: number;
  readonly firstWork: number;
}

function leastTimes(problem: SessionProblem, group: Group, tasks: readonly number[]): LeastTimes {
  const [first, last] = [tasks[0]!, tasks.at(-1)!];
  const { hands } = group.pattern;
  const setUp = hands[0]! < first ? group.kinds[hands[0]!]!.fixed : 0;
  const each = group.members.map((chain): LeastTimes => {
    const { steps } = problem.chains[chain]!;
    const until = (from: number, to: number): number => {
      const ends: number[] = [];
      let time = 0;
      for (let index = from; index <= to; index++) {
        const step = steps[index]!;
        if (step.kind === "hands") time += step.work;
        else if (step.kind === "overnight") time += nightMs;
        else if (step.of >= from) time = Math.max(time, ends[step.of]! + step.time);
        else if (step.of < 0 && from === 0) time = Math.max(time, step.time);
        ends[index] = time;
      }
      return time;
    };
    const step = steps[first]!;
    return {
      head: setUp + until(0, first - 1),
      length: until(first, last),
      tail: until(last + 1, hands.at(-1)!),
      firstWork: step.kind === "hands" ? step.work : 0,
    };
  });
  const least = (of: keyof LeastTimes): number => Math.min(...each.map((times) => times[of]));
  return { head: least("head"), length: least("length"), tail: least("tail"), firstWork: least("firstWork") };
}

/** `wait overnight` lasts so long at least. */
const nightMs = 12 * hourMs;

interface Day {
  readonly opens: number;
  readonly closes: number;
}

/** Openings, those joined between which the shop is closed for no longer than `within`. */
function* daysOf(shop: ShopTime, from: number, within: number): Generator<Day> {
  let opens = nextOpening(shop, from);
  for (let count = 0; count < mostDays && Number.isFinite(opens); count++) {
    let closes = closingAfter(shop, opens);
    let next = nextOpening(shop, closes);
    for (; Number.isFinite(next) && next - closes <= within; next = nextOpening(shop, closes)) {
      if (++count >= mostDays) return;
      closes = closingAfter(shop, next);
    }
    if (!Number.isFinite(closes)) return;
    yield { opens, closes };
    opens = next;
  }
}
