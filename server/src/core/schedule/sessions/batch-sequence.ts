/**
 * Plans as sequences of batches: what is put down one after the other, each at its earliest times.
 *
 * A sequence need not be complete or fit: what is named before it is ready waits until it is, what is too much for one
 * session is halved, and what is left over is dispatched by priority. So every change of a sequence is a plan again,
 * which is what a local search needs. Whatever is measured here follows the objective, lexicographically.
 */
import { closingAfter, dayMs } from "../calendar.ts";
import { dustOf } from "./room-dust.ts";
import { ceilToGrid, type Group, type Kind, type SessionProblem } from "./session-problem.ts";
import {
  type Batch,
  copyOf,
  emptyWorkshop,
  mayBegin,
  putDown,
  readyTimes,
  type Session,
  timeBatch,
  type Workshop,
} from "./workshop.ts";

/** So many chains of a group, with this block. */
export interface Gene {
  readonly group: number;
  readonly block: number;
  readonly size: number;
  /** The last of its blocks, where windows tie more of them to it that come later in the sequence. */
  readonly until?: number;
}

export interface SessionPlan {
  readonly shop: Workshop;
  /** What was put down, in turn. */
  readonly sequence: readonly Gene[];
  /** See `objectiveOf`. */
  readonly objective: readonly number[];
}

/** How batches are chosen where no sequence says it. */
export interface DispatchRule {
  /** Which share of a group goes into a batch at most. */
  readonly share: number;
  /** Blocks with most work after them first, or those nearest to the end. */
  readonly prefers: "first blocks" | "last blocks";
}

export const usualRule: DispatchRule = { share: 1, prefers: "first blocks" };

/** Plans sequences one after the other, most of which begin like one that it knows. */
export interface SequencePlanner {
  /**
   * The plan of a sequence; undefined when something fits nowhere. What it has in common with the beginning of `base` is
   * put down once for many.
   */
  readonly plan: (
    sequence: readonly Gene[],
    rule: DispatchRule,
    base?: readonly Gene[],
  ) => SessionPlan | undefined;
}

/** What is put down and what waits, before the gene at a place of a sequence. */
interface Progress {
  readonly at: number;
  readonly shop: Workshop;
  readonly done: readonly Gene[];
  readonly pending: readonly Gene[];
}

/** So many states of a sequence are kept at most, at equal distances. */
const mostKept = 12;

export function createSequencePlanner(problem: SessionProblem): SequencePlanner {
  /** Of which sequence states are kept. */
  let known: readonly Gene[] = [];
  /** In the order of their places. */
  let kept: Progress[] = [];
  return {
    plan: (sequence, rule, base = []) => {
      const shared = sharedLength(known, base);
      kept = kept.filter(({ at }) => at <= shared);
      known = base;
      const common = sharedLength(sequence, base);
      const from = kept.findLast(({ at }) => at <= common);
      const stride = Math.max(2, Math.ceil(base.length / mostKept));
      return planFrom(problem, sequence, rule, from, (progress) => {
        if (progress.at <= common && progress.at % stride === 0 && progress.at > (kept.at(-1)?.at ?? 0))
          kept.push(copyOfProgress(progress));
      });
    },
  };
}

const copyOfProgress = ({ at, shop, done, pending }: Progress): Progress => ({
  at,
  shop: copyOf(shop),
  done: [...done],
  pending: [...pending],
});

/** How many genes two sequences have in common at the beginning. */
function sharedLength(a: readonly Gene[], b: readonly Gene[]): number {
  const most = Math.min(a.length, b.length);
  let length = 0;
  while (length < most && a[length] === b[length]) length++;
  return length;
}

/** Goes on with a sequence from some progress, without it from nothing; `passes` is told of each gene before it is put down. */
function planFrom(
  problem: SessionProblem,
  sequence: readonly Gene[],
  rule: DispatchRule,
  from: Progress | undefined,
  passes: (progress: Progress) => void,
): SessionPlan | undefined {
  const shop = from === undefined ? emptyWorkshop(problem) : copyOf(from.shop);
  const done: Gene[] = [...(from?.done ?? [])];
  let pending: Gene[] = [...(from?.pending ?? [])];
  const tryOne = (gene: Gene): boolean | undefined => {
    const group = problem.groups[gene.group]!;
    const isWhole = goesWhole(group, gene);
    const chains = availableOf(shop, gene, isWhole);
    if (chains.length === 0) return false;
    const batch = isWhole
      ? timeBatch(shop, group, gene.block, chains, gene.until)
      : largestBatch(shop, gene, chains.slice(0, gene.size));
    if (batch === undefined) return undefined;
    putDown(shop, batch);
    const { length } = batch.members;
    done.push(length === gene.size ? gene : { ...gene, size: length });
    const left = gene.size - length;
    return left <= 0 || chains.length <= length ? true : tryOne({ ...gene, size: left });
  };
  for (let at = from?.at ?? 0; at < sequence.length; at++) {
    passes({ at, shop, done, pending });
    const gene = sequence[at]!;
    const tried = tryOne(gene);
    if (tried === undefined) return undefined;
    if (!tried) pending.push(gene);
    else if (pending.length > 0) {
      const waiting = pending;
      pending = [];
      for (const other of waiting) {
        const again = tryOne(other);
        if (again === undefined) return undefined;
        if (!again) pending.push(other);
      }
    }
  }
  if (!dispatchRest(shop, done, rule)) return undefined;
  return { shop, sequence: done, objective: objectiveOf(shop) };
}

/** Whether some task of it is done by all chains of the group together. */
export const goesWhole = ({ isWhole, tiedTo }: Group, { block, until = tiedTo[block]! }: Gene): boolean =>
  isWhole.some((whole, at) => whole && block <= at && at <= until);

/** Chains of a group whose next block this is, the one that is ready first at the front; all of them, or none. */
export function availableOf(
  shop: Workshop,
  { group, block }: Pick<Gene, "group" | "block">,
  isWhole: boolean,
): number[] {
  if (!shop.waiting[group]![block]) return [];
  const own = shop.problem.groups[group]!;
  const { members, job } = own;
  if (!mayBegin(shop, job)) return [];
  if (isWhole && shop.waiting[group]![block]! < members.length) return [];
  shop.looks += members.length / 8;
  const chains = members.filter((chain) => shop.position[chain] === block);
  const ready = readyTimes(shop, own, block, chains);
  // Mostly they are in order as they stand.
  if (ready.every((time, at) => at === 0 || ready[at - 1]! <= time)) return chains;
  const order = chains.map((_, at) => at).sort((a, b) => ready[a]! - ready[b]! || a - b);
  return order.map((at) => chains[at]!);
}

/** The batch, or a smaller one where it is too much for one session; undefined where not even one chain goes. */
function largestBatch(
  shop: Workshop,
  { group, block, until }: Gene,
  chains: readonly number[],
): Batch | undefined {
  for (
    let size = chains.length;
    size > 0;
    size = size === 1 ? 0 : Math.ceil(size * 0.8) - (size < 5 ? 1 : 0)
  ) {
    const batch = timeBatch(shop, shop.problem.groups[group]!, block, chains.slice(0, size), until);
    if (batch !== undefined) return batch;
  }
  return undefined;
}

/** Puts down all that is left, by priority; false when something fits nowhere. */
export function dispatchRest(shop: Workshop, done: Gene[], rule: DispatchRule): boolean {
  const { groups } = shop.problem;
  for (;;) {
    const choices: {
      readonly gene: Gene;
      readonly batch: Batch;
      readonly weight: number;
      readonly isTied: boolean;
    }[] = [];
    for (const [group, own] of groups.entries()) {
      const { blocks, tiedTo, members } = own;
      for (let block = 0; block < blocks.length; block++) {
        const isWhole = goesWhole(own, { group, block, size: members.length });
        const chains = availableOf(shop, { group, block }, isWhole);
        if (chains.length === 0) continue;
        const most = Math.max(1, Math.ceil(members.length * rule.share));
        const batch = isWhole
          ? timeBatch(shop, groups[group]!, block, chains)
          : fillingBatch(shop, group, block, chains.slice(0, most));
        if (batch === undefined) return false;
        const left = blocks.length - block;
        choices.push({
          gene: { group, block, size: batch.members.length },
          batch,
          weight: rule.prefers === "first blocks" ? left : -left,
          isTied: block > 0 && tiedTo[block - 1]! >= block,
        });
      }
    }
    // What is to be done together may wait for ever for one that went on by itself.
    if (choices.length === 0) return shop.open.every((count) => count === 0);
    const firstEnd = Math.min(...choices.map(({ batch }) => batch.firstEnd));
    let best = choices.find(({ batch }) => batch.firstEnd === firstEnd)!;
    for (const choice of choices)
      if (choice.batch.start < firstEnd && choice.weight > best.weight) best = choice;
    // A window of it is open already.
    best = choices.find(({ isTied }) => isTied) ?? best;
    // Times are shared by what was tried for the same chains, so what is chosen is timed last.
    const again = timeBatch(shop, groups[best.gene.group]!, best.gene.block, best.batch.members);
    if (again === undefined) return false;
    putDown(shop, again);
    done.push(best.gene);
  }
}

/** As many chains as go in before the closing before which the first of them begins, with no wait for the others. */
function fillingBatch(
  shop: Workshop,
  group: number,
  block: number,
  chains: readonly number[],
): Batch | undefined {
  const { groups, shop: hours } = shop.problem;
  const one = timeBatch(shop, groups[group]!, block, chains.slice(0, 1));
  if (one === undefined || chains.length === 1) return one;
  const closes = closingAfter(hours, one.start);
  let [fits, tooMany] = [one, chains.length + 1];
  for (let size = chains.length; size > fits.members.length; size = (fits.members.length + tooMany) >> 1) {
    const batch = timeBatch(shop, groups[group]!, block, chains.slice(0, size));
    if (batch !== undefined && batch.firstEnd <= closes && batch.start <= one.start + waitMs) fits = batch;
    else tooMany = size;
    if (tooMany - fits.members.length <= 1) break;
  }
  return fits;
}

/** How long a session may be put off so that more can share it. */
const waitMs = 3_600_000;

/** Where the last item's end and the sessions stand in an objective. */
export const endAt = 4;
export const sessionsAt = 5;

/**
 * Lexicographic: days late, last work, dust on wet coats, the sum of the jobs' last works, the last item's end, sessions,
 * changes of material. Milliseconds, days and counts.
 */
export function objectiveOf(shop: Workshop): readonly number[] {
  const { problem, jobEnd, times } = shop;
  // Of a job without tasks nothing is late, whenever it may begin.
  const lastWork = problem.jobs.map(() => problem.start);
  for (const [place, { hands }] of problem.chains.entries()) {
    const last = hands.at(-1);
    const job = problem.jobOf[place]!;
    if (last !== undefined) lastWork[job] = Math.max(lastWork[job]!, times[place]!.ends[last]!);
  }
  const daysLate = problem.jobs.reduce(
    (sum, { due }, job) => sum + Math.max(0, Math.ceil((jobEnd[job]! - due) / dayMs)),
    0,
  );
  const sessions = [...shop.byKind.values()].flat();
  return [
    daysLate,
    ceilToGrid(Math.max(...lastWork)),
    dustOf(shop.byKind),
    lastWork.reduce((sum, time) => sum + time, 0),
    Math.max(...jobEnd),
    sessions.length,
    changesOf(inTurn(sessions, problem.crew)),
  ];
}

/** Who does which session: by person, in order. Whoever did the same material last and is free goes first. */
export function inTurn(sessions: readonly Session[], crew: number): readonly (readonly Session[])[] {
  const people: Session[][] = Array.from({ length: Math.min(crew, sessions.length) }, () => []);
  for (const session of [...sessions].sort((a, b) => a.start - b.start || a.end - b.end)) {
    const free = people.filter((done) => (done.at(-1)?.end ?? Number.NEGATIVE_INFINITY) <= session.start);
    const same = free.find((done) => materialOf(done.at(-1)?.kind) === materialOf(session.kind));
    (same ?? free[0] ?? people[0])?.push(session);
  }
  return people;
}

const materialOf = (kind: Kind | undefined): string | undefined => kind?.material ?? kind?.name;

function changesOf(people: readonly (readonly Session[])[]): number {
  let changes = 0;
  for (const done of people) {
    let last: string | undefined;
    for (const { kind } of done) {
      if (kind.material === undefined) continue;
      if (last !== undefined && last !== kind.material) changes++;
      last = kind.material;
    }
  }
  return changes;
}

/** Whether one objective is better than another: −1, 0 or 1 as for sorting. */
export function compareObjectives(a: readonly number[], b: readonly number[]): number {
  for (let place = 0; place < a.length; place++) {
    if (a[place]! < b[place]!) return -1;
    if (a[place]! > b[place]!) return 1;
  }
  return 0;
}
