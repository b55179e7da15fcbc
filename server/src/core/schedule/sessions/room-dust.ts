/**
 * Dust and wet coats in one room: no session that makes dust while another's coat is not yet dust-free.
 *
 * A coat is wet from the beginning of its session until the last task of it is dry to the touch, which counts as free of
 * dust (common practice, no source); dust flies while somebody makes it and has settled when the session has ended.
 */
import { firstIndex } from "../../../../../grammar/src/binary-search.ts";
import type { DustMeeting } from "../types.ts";
import { ceilToGrid, type Kind, type SessionProblem, type Span } from "./session-problem.ts";

/** What is known of a session, put down or not yet. */
interface Work {
  readonly kind: Kind;
  readonly start: number;
  /** On the grid. */
  readonly end: number;
}

/** Whether there is work that makes dust and work that others' dust spoils, so that their order matters. */
export const isDustLikely = ({ chains, groups }: SessionProblem): boolean =>
  chains.length > 1 && has(groups, ({ makesDust }) => makesDust) && has(groups, ({ wet }) => wet > 0);

const has = (groups: SessionProblem["groups"], is: (kind: Kind) => boolean): boolean =>
  groups.some(({ kinds }) => kinds.some((kind) => kind !== undefined && is(kind)));

/** From when until when it is wet; undefined for what is not. */
export const wetSpan = ({ kind, start, end }: Work): Span | undefined =>
  kind.wet > 0 ? { from: start, to: ceilToGrid(end + kind.wet) } : undefined;

/** From when until when it makes dust; undefined for what makes none. */
export const dustSpan = ({ kind, start, end }: Work): Span | undefined =>
  kind.makesDust && end > start ? { from: start, to: end } : undefined;

/** Spans that lie apart in the order of time, with one more, which takes in those that it touches. */
export function withSpan(spans: readonly Span[], { from, to }: Span): readonly Span[] {
  const first = firstIndex(spans, (other) => other.to >= from);
  const after = firstIndex(spans, (other) => other.from > to);
  const touched = spans.slice(first, after);
  const whole = {
    from: Math.min(from, ...touched.map((other) => other.from)),
    to: Math.max(to, ...touched.map((other) => other.to)),
  };
  return [...spans.slice(0, first), whole, ...spans.slice(after)];
}

/** What work meets that is in the room: dust what is wet, and what is wet dust. */
interface Room {
  readonly sessions: Iterable<readonly Work[]>;
  /** Of the same batch, not put down yet. */
  readonly before: readonly Work[];
  /** Of other jobs, planned before; apart, in the order of time. */
  readonly taken: { readonly dusty: readonly Span[]; readonly wet: readonly Span[] } | undefined;
}

/** The moment from which this work meets nothing that it meets now; undefined where it meets nothing. */
export function clearFrom(work: Work, { sessions, before, taken }: Room): number | undefined {
  const [dust, wet] = [dustSpan(work), wetSpan(work)];
  if (dust === undefined && wet === undefined) return undefined;
  let clear = Number.NEGATIVE_INFINITY;
  const meet = (own: Span | undefined, other: Span | undefined): void => {
    if (own !== undefined && other !== undefined && areAtOnce(own, other)) clear = Math.max(clear, other.to);
  };
  const meetAll = (others: readonly Work[]): void => {
    // One look at the kind for all of its sessions.
    const [first] = others;
    if (first === undefined) return;
    if (dust !== undefined && first.kind.wet > 0) for (const other of others) meet(dust, wetSpan(other));
    if (wet !== undefined && first.kind.makesDust) for (const other of others) meet(wet, dustSpan(other));
  };
  for (const others of sessions) meetAll(others);
  for (const other of before) meetAll([other]);
  if (taken !== undefined) {
    meet(dust, dust && lastBefore(taken.wet, dust.to));
    meet(wet, wet && lastBefore(taken.dusty, wet.to));
  }
  return Number.isFinite(clear) ? clear : undefined;
}

/** Of spans apart from each other the last that begins before a moment: if any reaches into what ends then, this does. */
const lastBefore = (spans: readonly Span[], moment: number): Span | undefined =>
  spans[firstIndex(spans, ({ from }) => from >= moment) - 1];

const areAtOnce = (a: Span, b: Span): boolean => a.from < b.to && b.from < a.to;

/** Of all sessions, those that make dust with the wet ones that they meet. */
function* meetings<S extends Work>(
  byKind: ReadonlyMap<Kind, readonly S[]>,
): Generator<{ readonly dusty: S; readonly wet: S; readonly from: number; readonly to: number }> {
  for (const [kind, dusties] of byKind) {
    if (!kind.makesDust) continue;
    for (const [other, wets] of byKind) {
      if (other.wet <= 0) continue;
      for (const dusty of dusties)
        for (const wet of wets) {
          const [a, b] = [dustSpan(dusty), wetSpan(wet)];
          if (a === undefined || b === undefined || !areAtOnce(a, b)) continue;
          yield { dusty, wet, from: Math.max(a.from, b.from), to: Math.min(a.to, b.to) };
        }
    }
  }
}

/** How long dust flies onto wet coats, added up over every pair of sessions, milliseconds. */
export function dustOf(byKind: ReadonlyMap<Kind, readonly Work[]>): number {
  let sum = 0;
  for (const { from, to } of meetings(byKind)) sum += to - from;
  return sum;
}

/** A session and its tasks. */
interface Done extends Work {
  readonly tasks: readonly { readonly chain: number; readonly index: number }[];
}

/** Where dust flies onto wet coats, in the order of time. */
export function dustMeetings(
  { chains }: SessionProblem,
  byKind: ReadonlyMap<Kind, readonly Done[]>,
  inHours: (time: number) => number,
): readonly DustMeeting[] {
  const idsOf = ({ tasks }: Done): readonly string[] =>
    tasks.map(({ chain, index }) => chains[chain]!.steps[index]!.id);
  return [...meetings(byKind)]
    .sort((a, b) => a.from - b.from || a.to - b.to)
    .map(({ dusty, wet, from, to }) => ({
      from: inHours(from),
      to: inHours(to),
      wetUntil: inHours(wetSpan(wet)!.to),
      dusty: { items: idsOf(dusty) },
      wet: { items: idsOf(wet) },
    }));
}
