/**
 * What each stage of the planner brings, in finish, proven gap and processor time: over all jobs of the samples and the
 * corpus, and over large jobs made up to be hard. `npm run bench -- --only plans` prints the table.
 *
 * The stages add up: priority rules; random variations of them; branch and bound; column generation
 * before these, which is what is planned.
 */

import process from "node:process";
import { earliestByClass } from "../../server/src/core/schedule/bounds/chain-bounds.ts";
import { energeticBound } from "../../server/src/core/schedule/bounds/energetic-bound.ts";
import { hourMs } from "../../server/src/core/schedule/calendar.ts";
import { optimise, search } from "../../server/src/core/schedule/optimise/optimise.ts";
import { scheduleByPriorityRules } from "../../server/src/core/schedule/priority-rules.ts";
import { makeProblem } from "../../server/src/core/schedule/problem.ts";
import { bestPlan, type CrewPlanner, schedule } from "../../server/src/core/schedule/schedule.ts";
import type { Calendar, Chain, ChainItem, ScheduleInput } from "../../server/src/core/schedule/types.ts";
import { writtenJobs } from "../core/schedule/written-jobs.ts";

const ruled =
  (placements?: number): CrewPlanner =>
  (problem, alone) => {
    const bound = energeticBound(problem, alone);
    return { plan: scheduleByPriorityRules(problem, bound, placements), bound };
  };

const STAGES: readonly (readonly [string, CrewPlanner])[] = [
  ["priority rules", ruled(0)],
  ["+ random variation", ruled()],
  [
    "+ branch and bound",
    (problem, alone) => {
      const { plan, bound } = ruled()(problem, alone);
      const isProven = plan !== undefined && plan.finish <= bound;
      return isProven ? { plan, bound } : search(problem, plan, bound);
    },
  ],
  [
    "+ column generation",
    (problem, alone) => {
      const { plan, bound } = ruled()(problem, alone);
      return optimise(problem, plan, bound);
    },
  ],
];

interface Figure {
  /** Hours after the start; undefined where no plan was found. */
  readonly finish?: number;
  readonly bound: number;
  readonly cpuMs: number;
}

function figureOf(input: ScheduleInput, planForCrew: CrewPlanner): Figure {
  const began = process.cpuUsage();
  const problem = makeProblem(input)!;
  const { plan, bound } = bestPlan(problem, earliestByClass(problem), planForCrew);
  const { user, system } = process.cpuUsage(began);
  return {
    ...(plan === undefined ? {} : { finish: (plan.finish - problem.start) / hourMs }),
    bound: (bound - problem.start) / hourMs,
    cpuMs: (user + system) / 1000,
  };
}

/** Every job of the samples and the corpus that can be planned. */
const plannedJobs = (): readonly ScheduleInput[] =>
  writtenJobs(["../../../samples/", "../../corpus/"]).flatMap(([, input]) =>
    schedule(input).status === "planned" ? [input] : [],
  );

const week = (first: number, last: number, opens: number, closes: number) =>
  Array.from({ length: last - first + 1 }, (_, day) => ({
    weekday: first + day,
    opens: opens * 60,
    closes: closes * 60,
  }));

const officeHours: Calendar = { hours: week(1, 5, 9, 17), closed: [], crew: 1 };
const fourDays: Calendar = { hours: week(2, 5, 9, 18), closed: [], crew: 1 };

const sand = (id: string, hours: number): ChainItem => ({ kind: "hands", id, hours, nonPreemptive: false });

/** Coats of so many hours; from one to the next at least `dry` and at most `window` hours. */
function coats(count: number, hours: number, dry: number, window?: number): readonly ChainItem[] {
  return Array.from({ length: count }, (_, coat): readonly ChainItem[] => [
    {
      kind: "hands",
      id: `coat ${coat}`,
      hours,
      nonPreemptive: true,
      ...(coat > 0 && window !== undefined ? { maxLag: { of: `coat ${coat - 1}`, hours: window } } : {}),
    },
    { kind: "wait", id: `dry ${coat}`, hours: dry },
  ]).flat();
}

const alike = (count: number, itemsOf: (place: number) => readonly ChainItem[]): readonly Chain[] =>
  Array.from({ length: count }, (_, place) => ({ key: `surface ${place}`, items: itemsOf(place) }));

/** Jobs made up to be hard. */
const INVENTED: readonly (readonly [string, Calendar, readonly Chain[]])[] = [
  [
    "12 chairs of 2 surfaces",
    officeHours,
    alike(24, (at) => [
      sand("sand", at % 2 ? 0.5 : 1),
      sand("dust", 0.1),
      ...coats(3, at % 2 ? 0.25 : 0.75, 6),
    ]),
  ],
  ["24 doors, one at work", officeHours, alike(24, () => [sand("sand", 1), ...coats(3, 0.5, 4, 48)])],
  [
    "24 doors, two at work",
    { ...officeHours, crew: 2 },
    alike(24, () => [sand("sand", 1), ...coats(3, 0.5, 4, 48)]),
  ],
  [
    "6 tables of 3 surfaces",
    officeHours,
    alike(18, (at) => [sand("strip", 2), sand("sand", 1 + (at % 3) * 0.5), ...coats(4, 0.5, 12, 72)]),
  ],
  [
    "a kitchen of 84 surfaces",
    { ...officeHours, crew: 2 },
    alike(84, (at) => [
      sand("sand", 0.25 + (at % 4) * 0.1),
      sand("dust", 0.1),
      ...coats(2, 0.2, 3),
      sand("sand again", 0.2),
      sand("dust again", 0.1),
      ...coats(3, 0.25 + (at % 3) * 0.1, 4, 96),
    ]),
  ],
  [
    "8 surfaces, coats of 3 h within 24 h",
    officeHours,
    alike(8, () => [sand("sand", 1), ...coats(3, 3, 4, 24)]),
  ],
  [
    "24 surfaces, coats of 3 h within 24 h",
    officeHours,
    alike(24, () => [sand("sand", 1), ...coats(3, 3, 4, 24)]),
  ],
  [
    "30 pieces of 2 surfaces, Tue to Fri, coats after 12 to 48 h",
    fourDays,
    alike(60, (at) => [sand("sand", at % 2 ? 0.25 : 0.4), ...coats(3, at % 2 ? 0.15 : 0.25, 12, 48)]),
  ],
  [
    "5 pieces, three at work",
    { ...officeHours, crew: 3 },
    alike(5, () => [sand("sand", 1.5), sand("dust", 0.25), ...coats(3, 0.75, 6)]),
  ],
  [
    "10 pieces, three at work, coats after 2 to 12 h",
    { ...officeHours, crew: 3 },
    alike(10, () => [sand("sand", 1), ...coats(3, 1, 2, 12)]),
  ],
];

const hoursText = (hours: number | undefined): string =>
  hours === undefined ? "none" : `${Math.round(hours * 100) / 100} h`;

const row = (cells: readonly string[]): void => console.log(`| ${cells.join(" | ")} |`);

function cellOf({ finish, bound, cpuMs }: Figure): string {
  const gap =
    finish === undefined ? "" : `, gap ${(((finish - bound) / Math.max(bound, 1e-9)) * 100).toFixed(1)} %`;
  return `${hoursText(finish)}${gap}, ${cpuMs.toFixed(0)} ms`;
}

export function printPlans(): void {
  row(["Job", ...STAGES.map(([name]) => name)]);
  row(["---", ...STAGES.map(() => "---:")]);
  for (const [name, calendar, chains] of INVENTED) {
    const input: ScheduleInput = { calendar, start: "2027-03-08", chains };
    row([name, ...STAGES.map(([, stage]) => cellOf(figureOf(input, stage)))]);
  }
  const jobs = plannedJobs();
  let before: readonly Figure[] | undefined;
  const cells = STAGES.map(([, stage]) => {
    const figures = jobs.map((job) => figureOf(job, stage));
    const earlier = figures.filter(({ finish }, at) => finish !== before?.[at]?.finish).length;
    const open = figures.filter(({ finish, bound }) => finish === undefined || finish > bound + 1e-9).length;
    const cpuMs = figures.reduce((sum, figure) => sum + figure.cpuMs, 0);
    const change = before === undefined ? "" : `${earlier} earlier, `;
    before = figures;
    return `${change}${open} unproven, ${cpuMs.toFixed(0)} ms`;
  });
  row([`${jobs.length} jobs of samples and corpus`, ...cells]);
}
