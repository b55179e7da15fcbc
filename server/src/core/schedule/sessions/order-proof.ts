/**
 * Whether one person can end the last work earlier at all, by every order in which a few chains' tasks can be done.
 *
 * Tasks are put down one after the other, each as early as it goes: in the session at hand where it is of the same kind,
 * else after setting up for it. Times only come out earlier than in any plan: what windows, pot life and the room's air
 * forbid is allowed, and a session that goes on waits for its next task where a plan would begin all of it later. What is
 * behind its latest end is given up, and of states with the same tasks done those that are no earlier in anything than
 * another: dynamic programming over sets of tasks with dominance (Held and Karp, "A dynamic programming approach to
 * sequencing problems", 1962; Carraway and Morin, "Theory and applications of generalized dynamic programming: an
 * overview", 1988). What is left after all is a finish that cannot be ruled out; where nothing is left, none is earlier.
 */
import { closingAfter, workingTimeBefore } from "../calendar.ts";
import { latestBeforeNight, waitEnd } from "../chain-timing.ts";
import { earliestStart, latestStartByEnd } from "../task-placement.ts";
import { ceilToGrid, floorToGrid, gridMs, type Kind, type SessionProblem } from "./session-problem.ts";

/** More chains than this have too many orders. */
const mostChains = 6;
/** States that are looked at. */
const mostStates = 1000;

interface Task {
  readonly kind: Kind;
  readonly work: number;
  /** When it must have ended. */
  readonly due: number;
  /** When the next task of its chain may begin, by when this one ends. */
  readonly nextReady: (end: number) => number;
}

/** The tasks of a chain, one after the other. */
interface Line {
  readonly tasks: readonly Task[];
  /** When the first of them may begin. */
  readonly ready: number;
  /** Lines of a number are alike. */
  readonly alike: number;
}

interface State {
  /** By line, how many of its tasks are done, and when the next may begin. */
  readonly done: readonly number[];
  readonly ready: readonly number[];
  /** When the last task ended; where no session can go on, when its person is free. */
  readonly time: number;
  /** Of the session that can go on. */
  readonly kind: Kind | undefined;
  readonly closes: number;
  /** Whether its tasks lie as far from the grid as those of any such session in a plan. */
  readonly isOnGrid: boolean;
  /** No dust is made before, where it is kept out. */
  readonly wetUntil: number;
  /** Milliseconds of work. */
  readonly left: number;
}

/** Whether no plan's last work ends by `finish`, on the grid; false where that is not known. */
export function isTooEarlyForOrders(problem: SessionProblem, finish: number): boolean {
  const { crew, chains, taken, shop } = problem;
  if (crew !== 1 || chains.length > mostChains || taken !== undefined) return false;
  const lines: Line[] = [];
  for (const chain of chains.keys()) {
    const line = lineOf(problem, chain, finish);
    if (line === "too early") return true;
    if (line === undefined) return false;
    if (line.tasks.length > 0) lines.push(line);
  }
  lines.sort((a, b) => a.alike - b.alike);
  const worked = workingTimeBefore(shop, finish);
  let states: readonly State[] = [firstState(problem, lines)];
  let looked = 0;
  const nTasks = lines.reduce((sum, { tasks }) => sum + tasks.length, 0);
  for (let count = 0; count < nTasks; count++) {
    const next = new Map<string, State[]>();
    for (const state of states)
      for (const line of lines.keys()) {
        if (isRepeated(lines, state, line)) continue;
        for (const follower of followersOf(problem, lines, state, line)) {
          if (follower.left > worked - workingTimeBefore(shop, follower.time)) continue;
          if (++looked > mostStates) return false;
          keep(next, lines, follower);
        }
      }
    states = [...next.values()].flat();
  }
  return states.length === 0;
}

/** Undefined where its times are not known by its last task alone, or a task fits no opening. */
function lineOf(problem: SessionProblem, chain: number, finish: number): Line | "too early" | undefined {
  const { shop } = problem;
  const group = problem.groupOf[chain]!;
  const { kinds, members } = problem.groups[group]!;
  const { steps, hands, chainClass } = problem.chains[chain]!;
  const begin = problem.jobs[problem.jobOf[chain]!]!.start;
  const ready = (from: number, to: number, end: number): number => {
    let time = end;
    for (let index = from + 1; index < to; index++) {
      const step = steps[index]!;
      if (index > 0) time = ceilToGrid(time);
      const counted = step.kind === "wait" && step.of >= 0 ? ceilToGrid(end) : begin;
      time = Math.max(time, ceilToGrid(waitEnd(problem, step, time, counted)));
    }
    return time;
  };
  const tasks: Task[] = [];
  let due = finish;
  for (let place = hands.length - 1; place >= 0; place--) {
    const index = hands[place]!;
    const next = hands[place + 1] ?? index;
    for (let wait = next - 1; wait > index; wait--) {
      const step = steps[wait]!;
      if (step.kind === "overnight") due = floorToGrid(latestBeforeNight(problem, due));
      else if (step.kind === "wait") {
        if (step.of >= 0 && step.of !== index) return undefined;
        if (step.of >= 0) due = Math.min(due, floorToGrid(floorToGrid(due) - step.time));
      }
    }
    const kind = kinds[index]!;
    const work = problem.works[chain]![index]!;
    if (ceilToGrid(kind.fixed + work) > shop.longest) return undefined;
    tasks.unshift({ kind, work, due, nextReady: (end) => ready(index, next, end) });
    due = latestStartByEnd(shop, due, work, true);
    if (due < begin) return "too early";
  }
  const first = hands[0];
  if (steps.slice(0, first ?? 0).some((step) => step.kind === "wait" && step.of >= 0)) return undefined;
  // Chains of a group that are of one class differ in nothing.
  const alike = members.find((other) => problem.chains[other]!.chainClass === chainClass)!;
  return { tasks, ready: first === undefined ? begin : ready(-1, first, begin), alike };
}

function firstState(problem: SessionProblem, lines: readonly Line[]): State {
  return {
    done: lines.map(() => 0),
    ready: lines.map(({ ready }) => ready),
    time: problem.start,
    kind: undefined,
    closes: 0,
    isOnGrid: true,
    wetUntil: Number.NEGATIVE_INFINITY,
    left: lines.reduce((sum, { tasks }) => tasks.reduce((all, { work }) => all + work, sum), 0),
  };
}

/** Whether a line before it is alike and as far. */
function isRepeated(lines: readonly Line[], { done, ready }: State, line: number): boolean {
  for (let other = 0; other < line; other++)
    if (
      lines[other]!.alike === lines[line]!.alike &&
      done[other] === done[line] &&
      ready[other] === ready[line]
    )
      return true;
  return false;
}

/** The states after the next task of a line. */
function followersOf(
  problem: SessionProblem,
  lines: readonly Line[],
  state: State,
  line: number,
): readonly State[] {
  const { shop, keepsDustOut } = problem;
  const task = lines[line]!.tasks[state.done[line]!];
  if (task === undefined) return [];
  const { kind, work } = task;
  const ready = state.ready[line]!;
  const { time } = state;
  if (kind === state.kind) {
    const wait = Math.max(0, ready - time);
    const start = time + (state.isOnGrid ? ceilToGrid(wait) : wait);
    if (start + work <= state.closes) {
      const { closes, isOnGrid } = state;
      return [...after(problem, lines, state, line, { start, closes, isOnGrid }), ...apart()];
    }
    // All of the session may lie in a later opening, and its tasks then anywhere on the grid.
    const opens = earliestStart(shop, Math.max(time, ready - kind.fixed), kind.fixed + work, true);
    return after(problem, lines, state, line, {
      start: opens + kind.fixed,
      closes: closingAfter(shop, opens),
      isOnGrid: false,
    });
  }
  return apart();

  function apart(): readonly State[] {
    let from = Math.max(ceilToGrid(time), ceilToGrid(ready - kind.fixed));
    if (keepsDustOut && kind.makesDust) from = Math.max(from, ceilToGrid(state.wetUntil));
    for (;;) {
      const begun = earliestStart(shop, from, kind.fixed + work, true);
      from = ceilToGrid(begun);
      if (from === begun || !Number.isFinite(begun)) break;
    }
    return after(problem, lines, state, line, {
      start: from + kind.fixed,
      closes: closingAfter(shop, from),
      isOnGrid: true,
    });
  }
}

/** The state after a task of a line that starts then, or none where it ends too late. */
function after(
  problem: SessionProblem,
  lines: readonly Line[],
  state: State,
  line: number,
  {
    start,
    closes,
    isOnGrid,
  }: { readonly start: number; readonly closes: number; readonly isOnGrid: boolean },
): readonly State[] {
  const { kind, work, due, nextReady } = lines[line]!.tasks[state.done[line]!]!;
  const end = start + work;
  if (!(end <= due)) return [];
  const done = state.done.with(line, state.done[line]! + 1);
  const ready = state.ready.with(line, nextReady(end));
  for (const [other, { tasks }] of lines.entries()) {
    const next = tasks[done[other]!];
    // Nothing of it lies before this task any more.
    if (next !== undefined && Math.max(end, ready[other]!) + next.work > next.due) return [];
  }
  const goesOn = lines.some(({ tasks }, other) => tasks[done[other]!]?.kind === kind);
  const wet = problem.keepsDustOut && kind.wet > 0 ? ceilToGrid(ceilToGrid(end) + kind.wet) : 0;
  return [
    {
      done,
      ready,
      time: goesOn ? end : ceilToGrid(end),
      kind: goesOn ? kind : undefined,
      closes: goesOn ? closes : 0,
      isOnGrid: !goesOn || isOnGrid,
      wetUntil: Math.max(state.wetUntil, wet),
      left: state.left - work,
    },
  ];
}

/** Keeps a state with those that have the same done, unless one of them is as good; lets go of those that are no better. */
function keep(states: Map<string, State[]>, lines: readonly Line[], found: State): void {
  const state = inOrder(lines, found);
  const key = `${state.done.join()} ${state.kind?.name ?? ""}`;
  const others = states.get(key);
  if (others === undefined) {
    states.set(key, [state]);
    return;
  }
  if (others.some((other) => isAsGood(other, state))) return;
  const left = others.filter((other) => !isAsGood(state, other));
  left.push(state);
  states.set(key, left);
}

/** Lines that are alike in the order of what is done of them. */
function inOrder(lines: readonly Line[], state: State): State {
  const done = [...state.done];
  const ready = [...state.ready];
  for (let at = 1; at < lines.length; at++)
    for (let place = at; place > 0 && lines[place - 1]!.alike === lines[place]!.alike; place--) {
      const [a, b] = [place - 1, place];
      if (done[a]! > done[b]! || (done[a] === done[b] && ready[a]! <= ready[b]!)) break;
      [done[a], done[b]] = [done[b]!, done[a]!];
      [ready[a], ready[b]] = [ready[b]!, ready[a]!];
    }
  return { ...state, done, ready };
}

/** Whether nothing can be done earlier after `b` than after `a`; the same is done of both. */
const isAsGood = (a: State, b: State): boolean =>
  a.time <= b.time &&
  a.wetUntil <= b.wetUntil &&
  (a.kind === undefined || !a.isOnGrid || (b.isOnGrid && (b.time - a.time) % gridMs === 0)) &&
  a.ready.every((time, line) => time <= b.ready[line]!);
