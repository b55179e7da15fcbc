/**
 * The earliest last work of a small shop by integer programming, for comparison with the planner, with which it shares no
 * code: HiGHS finds it, and proves it.
 *
 * Time goes in slots (time-indexed formulation: Sousa and Wolsey, "A time indexed formulation of non-preemptive single
 * machine scheduling problems", 1992). People flow from slot to slot: idle, or by a set-up into a session of some kind, from
 * task to task of it without a break, and back to idle; in which slots a session may lie follows from the hours of the
 * shop. All times of the shop must be whole slots: then every start in an earliest plan is a sum of such times, so nothing
 * is lost. One job; no vapour. Minutes since 1970.
 */
import type { Highs } from "highs";
import type { Chain, HandsItem, ScheduleInput } from "../../server/src/core/schedule/types.ts";
import { makeOpenMinute, minuteOf, morningAfter } from "../core/schedule/open-hours.ts";

export type Earliest =
  /** `minute` is the earliest end of the last work. */
  | { readonly status: "optimal"; readonly minute: number }
  /** No plan ends its last work by the limit. */
  | { readonly status: "infeasible" }
  /** `minute` is the best found in time, if any. */
  | { readonly status: "stopped"; readonly minute?: number };

interface Task {
  readonly name: string;
  readonly item: HandsItem;
  readonly length: number;
  /** Slots in which it may begin. */
  readonly starts: readonly number[];
}

/** The earliest last work by `limit` at the latest. `step` is the length of a slot in minutes; without `seconds` it is proven. */
export function earliestLastWork(
  highs: Highs,
  input: ScheduleInput,
  limit: number,
  { step, seconds }: { readonly step: number; readonly seconds?: number },
): Earliest {
  const zero = minuteOf(input.start!);
  const rows = rowsOf(input, { zero, step, slots: Math.floor((limit - zero) / step) });
  if (rows === undefined) return { status: "infeasible" };
  const solution = highs.solve(rows, {
    ...(seconds === undefined ? {} : { time_limit: seconds }),
    mip_rel_gap: 0,
    mip_abs_gap: 0.5,
  });
  const minute = zero + Math.round(solution.ObjectiveValue) * step;
  if (solution.Status === "Optimal") return { status: "optimal", minute };
  if (solution.Status === "Infeasible") return { status: "infeasible" };
  return Number.isFinite(solution.ObjectiveValue) && Object.keys(solution.Columns).length > 0
    ? { status: "stopped", minute }
    : { status: "stopped" };
}

interface Slots {
  /** The minute in which the first begins. */
  readonly zero: number;
  /** Minutes. */
  readonly step: number;
  readonly slots: number;
}

/** The program as text; undefined where some task has no slot to begin in. */
function rowsOf(input: ScheduleInput, { zero, step, slots }: Slots): string | undefined {
  const isOpen = makeOpenMinute(input.calendar!);
  const inSlots = (hours: number): number => {
    const length = (hours * 60) / step;
    if (Math.abs(length - Math.round(length)) > 1e-6)
      throw new Error(`${hours} h is no whole number of slots`);
    return Math.round(length);
  };
  const fits = (from: number, length: number): boolean => {
    if (from < 0 || from + length > slots) return false;
    for (let slot = from; slot < from + length; slot++) if (!isOpen(zero + slot * step)) return false;
    return true;
  };
  /** When the task after these items may begin at the earliest, by the slot in which the one before has ended. */
  const readyAfter = (between: Chain["items"], end: number): number =>
    between.reduce(
      (slot, item) =>
        item.kind === "wait"
          ? slot + inSlots(item.hours)
          : Math.ceil((morningAfter(input.calendar!, isOpen, zero + slot * step) - zero) / step),
      end,
    );

  const constraints: string[] = [];
  const binaries: string[] = [];
  const generals: string[] = [];
  const flow = new Map<string, string[]>();
  const arc = (name: string, from: string, to: string): void => {
    flow.set(from, [...(flow.get(from) ?? []), `- ${name}`]);
    flow.set(to, [...(flow.get(to) ?? []), `+ ${name}`]);
  };
  const idle = (slot: number): string => `idle${slot}`;
  const kinds = new Map<
    string,
    { readonly fixed: number; readonly most: number; readonly isApart: boolean }
  >();
  const kindOf = ({ id, session }: HandsItem): string => session?.kind ?? id;
  const numbers = new Map<string, number>();
  const numberOf = (kind: string): number => {
    if (!numbers.has(kind)) numbers.set(kind, numbers.size);
    return numbers.get(kind)!;
  };
  const nodes = new Set<string>();
  const node = (kind: string, slot: number, work: number): string => {
    const name = `in${numberOf(kind)}x${slot}x${work}`;
    if (!nodes.has(name)) {
      nodes.add(name);
      arc(`end_${name}`, name, idle(slot));
    }
    return name;
  };

  for (const [place, { items }] of input.chains.entries()) {
    const tasks: (Task & { readonly at: number })[] = [];
    for (const [at, item] of items.entries()) {
      if (item.kind !== "hands") continue;
      const length = inSlots(item.hours);
      const before = tasks.at(-1);
      const earliest = before
        ? readyAfter(items.slice(before.at + 1, at), before.starts[0]! + before.length)
        : 0;
      const fixed = inSlots(item.session?.fixedHours ?? 0);
      const starts = Array.from({ length: slots }, (_, slot) => slot).filter(
        (slot) => slot >= earliest && fits(slot, length) && slot >= fixed,
      );
      if (starts.length === 0) return undefined;
      tasks.push({ name: `c${place}i${at}`, item, length, starts, at });
      kinds.set(kindOf(item), {
        fixed,
        most:
          item.session?.mostHours === undefined ? Number.POSITIVE_INFINITY : inSlots(item.session.mostHours),
        isApart: item.session?.batch === "apart",
      });
    }
    const begun = ({ name, starts }: Task, when: (slot: number) => boolean): string =>
      starts
        .filter(when)
        .map((slot) => `${name}s${slot}`)
        .join(" + ");
    for (const [order, task] of tasks.entries()) {
      constraints.push(`${begun(task, () => true)} = 1`);
      const before = tasks[order - 1];
      if (before !== undefined) {
        const ready = new Map(
          before.starts.map((slot) => [
            slot,
            readyAfter(items.slice(before.at + 1, task.at), slot + before.length),
          ]),
        );
        for (const slot of task.starts) {
          const done = begun(before, (each) => ready.get(each)! <= slot);
          constraints.push(
            `${begun(task, (each) => each <= slot)}${done ? ` - ${done.replaceAll("+", "-")}` : ""} <= 0`,
          );
        }
      }
      const { maxLag } = task.item;
      const of = tasks.find(({ item }) => item.id === maxLag?.of);
      if (maxLag !== undefined && of !== undefined)
        for (const slot of of.starts) {
          // What has begun by then must be gone on with within the window.
          const due = slot + of.length + inSlots(maxLag.hours);
          if (due >= slots) continue;
          const gone = begun(task, (each) => each <= due);
          constraints.push(
            `${begun(of, (each) => each <= slot)}${gone ? ` - ${gone.replaceAll("+", "-")}` : ""} <= 0`,
          );
        }
      if (order === tasks.length - 1)
        constraints.push(
          `last - ${task.starts.map((slot) => `${slot + task.length} ${task.name}s${slot}`).join(" - ")} >= 0`,
        );
      // Ways through the task: from what has been done in its session so far.
      const kind = kindOf(task.item);
      const { most, isApart } = kinds.get(kind)!;
      const sums = Number.isFinite(most) ? Array.from({ length: most }, (_, sum) => sum) : [0];
      for (const slot of task.starts) {
        const ways: string[] = [];
        for (const sum of sums) {
          if (sum > 0 && sum + task.length > most) continue;
          const way = `w${task.name}s${slot}x${sum}`;
          const next = Number.isFinite(most) ? sum + task.length : 0;
          const to = isApart ? idle(slot + task.length) : node(kind, slot + task.length, next);
          arc(way, node(kind, slot, sum), to);
          ways.push(way);
          binaries.push(way);
        }
        binaries.push(`${task.name}s${slot}`);
        constraints.push(`${ways.join(" + ")} - ${task.name}s${slot} = 0`);
      }
    }
  }
  for (const [kind, { fixed }] of kinds) {
    const setUps: string[] = [];
    for (let slot = 0; slot + fixed <= slots; slot++) {
      if (!fits(slot, fixed)) continue;
      const name = `z${numberOf(kind)}s${slot}`;
      arc(name, idle(slot), node(kind, slot + fixed, 0));
      setUps.push(name);
      generals.push(name);
    }
    const isWhole = input.chains.some(({ items }) =>
      items.some(
        (item) => item.kind === "hands" && kindOf(item) === kind && item.session?.batch === "together",
      ),
    );
    if (isWhole) constraints.push(`${setUps.join(" + ")} = 1`);
  }
  for (let slot = 0; slot < slots; slot++) arc(`i${slot}`, idle(slot), idle(slot + 1));
  for (const [name, terms] of flow) {
    if (name === idle(slots)) continue;
    constraints.push(`${terms.join(" ")} = ${name === idle(0) ? -input.calendar!.crew : 0}`);
  }
  return [
    "Minimize",
    " obj: last",
    "Subject To",
    ...constraints.map((row, at) => ` r${at}: ${wrapped(row)}`),
    "Bounds",
    ` last <= ${slots}`,
    "General",
    ` ${wrapped(generals.join(" "))}`,
    "Binary",
    ` ${wrapped(binaries.join(" "))}`,
    "End",
  ].join("\n");
}

/** The format's lines are of limited length. */
const wrapped = (text: string): string => text.replace(/(.{200}\S*) /gu, "$1\n ");
