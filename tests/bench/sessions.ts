/**
 * How far plans in sessions are from the best that is found otherwise, in open hours, over random shops; and what single
 * hard shops come to. `npm run bench -- --only sessions` prints it; `--shops 200 --tries 2000 --seconds 60` say how many, how
 * hard the independent search looks, and for how long the integer programs.
 */
import process from "node:process";
import fc from "fast-check";
import highsLoader from "highs";
import { planSessions } from "../../server/src/core/schedule/sessions/plan-sessions.ts";
import type { Chain, ChainItem, HandsItem, ScheduleInput } from "../../server/src/core/schedule/types.ts";
import { makeOpenMinute, minuteOf } from "../core/schedule/open-hours.ts";
import { halfHourShop, randomShop } from "../core/schedule/random-shops.ts";
import { earliestLastWork } from "../oracles/session-milp.ts";
import { bestLastWork } from "../oracles/session-search.ts";

const cpuMs = (since: NodeJS.CpuUsage): number => {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1000;
};

const week = (first: number, last: number, opens: number, closes: number) =>
  Array.from({ length: last - first + 1 }, (_, day) => ({
    weekday: first + day,
    opens: opens * 60,
    closes: closes * 60,
  }));

/** Minutes of one task; `fixed` minutes once a session. */
const task = (id: string, minutes: number, kind: string, fixed: number): HandsItem => ({
  kind: "hands",
  id,
  hours: minutes / 60,
  nonPreemptive: true,
  session: { kind, fixedHours: fixed / 60 },
});

function coated(key: string, sand: number, coat: number, coats: number, dry: number, window: number): Chain {
  const items: ChainItem[] = [task(`${key} sand`, sand, "sand", 3)];
  for (let place = 0; place < coats; place++) {
    const id = `${key} coat ${place}`;
    const one = task(id, coat, "coat", 5);
    items.push(
      place > 0 && window > 0 ? { ...one, maxLag: { of: `${key} coat ${place - 1}`, hours: window } } : one,
      { kind: "wait", id: `${key} dry ${place}`, hours: dry },
    );
  }
  return { key, items };
}

const alike = (count: number, of: (place: number) => Chain): readonly Chain[] =>
  Array.from({ length: count }, (_, place) => of(place));

/** Shops made up to be hard. */
export const HARD: readonly (readonly [string, ScheduleInput])[] = [
  [
    "30 pieces of 2 surfaces, one at work, Tue to Fri 09:00 to 18:00, 3 coats after 12 to 48 h",
    {
      calendar: { hours: week(2, 5, 9, 18), closed: [], crew: 1 },
      start: "2027-03-08",
      chains: alike(60, (at) => coated(`s${at}`, at % 2 ? 15 : 25, at % 2 ? 10 : 15, 3, 12, 48)),
    },
  ],
  [
    "5 pieces, three at work",
    {
      calendar: { hours: week(1, 5, 9, 17), closed: [], crew: 3 },
      start: "2027-03-08",
      chains: alike(5, (at) => coated(`s${at}`, 90, 45, 3, 6, 0)),
    },
  ],
  [
    "10 pieces, three at work, coats after 2 to 12 h",
    {
      calendar: { hours: week(1, 5, 9, 17), closed: [], crew: 3 },
      start: "2027-03-08",
      chains: alike(10, (at) => coated(`s${at}`, 60, 60, 3, 2, 12)),
    },
  ],
  [
    "24 doors, one at work, coats after 4 to 48 h",
    {
      calendar: { hours: week(1, 5, 9, 17), closed: [], crew: 1 },
      start: "2027-03-08",
      chains: alike(24, (at) => coated(`s${at}`, 60, 30, 3, 4, 48)),
    },
  ],
  [
    "12 jobs of 40 pieces, two at work",
    {
      calendar: { hours: week(1, 5, 9, 17), closed: [], crew: 2 },
      start: "2027-03-08",
      jobs: alike(12, (at) => ({ key: `j${at}`, items: [] })).map(({ key }) => ({ key })),
      chains: alike(40, (at) => ({
        ...coated(`s${at}`, 20 + (at % 3) * 10, 15 + (at % 4) * 5, 2 + (at % 2), 6, 0),
        job: `j${at % 12}`,
      })),
    },
  ],
];

function printHard(): void {
  console.log("| Shop | last work | bound | gap | sessions | CPU |");
  console.log("| --- | ---: | ---: | ---: | ---: | ---: |");
  for (const [name, input] of HARD) {
    const began = process.cpuUsage();
    const plan = planSessions(input);
    const took = cpuMs(began);
    const cells = plan
      ? [
          `${plan.lastWorkHours!.toFixed(2)} h`,
          `${plan.lowerBound.toFixed(2)} h`,
          `${(plan.gap * 100).toFixed(1)} %`,
          `${plan.sessions!.length}`,
        ]
      : ["none", "", "", ""];
    console.log(`| ${name} | ${cells.join(" | ")} | ${took.toFixed(0)} ms |`);
  }
}

/** Open minutes, and closings, between two moments. */
function between(
  input: ScheduleInput,
  from: number,
  to: number,
): { readonly open: number; readonly closings: number } {
  const isOpen = makeOpenMinute(input.calendar!);
  let [open, closings] = [0, 0];
  for (let minute = from; minute < to; minute++) {
    if (isOpen(minute)) open++;
    else if (isOpen(minute - 1)) closings++;
  }
  return { open, closings };
}

function printShops(count: number, tries: number): void {
  const shops = fc.sample(randomShop(30), { numRuns: count, seed: 2027 });
  const cpu: number[] = [];
  const gaps: number[] = [];
  let [planned, withinSession, laterByOpenings, earlier, proven, none] = [0, 0, 0, 0, 0, 0];
  for (const input of shops) {
    const began = process.cpuUsage();
    const plan = planSessions(input);
    cpu.push(cpuMs(began));
    const best = bestLastWork(input, tries);
    if (plan === undefined) {
      if (best !== undefined) none++;
      continue;
    }
    planned++;
    gaps.push(plan.gap * 100);
    if (plan.exact) proven++;
    const ours = minuteOf(plan.lastWorkAt!);
    if (best === undefined || best > ours) earlier++;
    const { open, closings } = between(input, best ?? ours, ours);
    if (open <= Math.max(...plan.sessions!.map(({ hours }) => hours * 60)) && closings <= 1) withinSession++;
    if (closings > 1) laterByOpenings++;
  }
  const at = (values: readonly number[], share: number): string =>
    values
      .toSorted((a, b) => a - b)
      [Math.min(values.length - 1, Math.floor(values.length * share))]!.toFixed(0);
  console.log(
    `\n${count} random shops of up to 30 surfaces, beside ${tries} tries of an independent search:`,
  );
  console.log(
    `- ${planned} planned, ${count - planned} with windows that cannot be kept (${none} of them planned by the other)`,
  );
  console.log(
    `- ${withinSession} within one session of the best found, ${laterByOpenings} later by more than one opening`,
  );
  console.log(
    `- ${earlier} earlier than the other search, ${proven} proven best; gap ${at(gaps, 0.5)} % in the middle, ${at(gaps, 0.9)} % at nine of ten`,
  );
  console.log(
    `- CPU ${at(cpu, 0.5)} ms in the middle, ${at(cpu, 0.9)} ms at nine of ten, ${at(cpu, 1)} ms at most`,
  );
}

/** Small shops on half hours beside integer programs, each of which HiGHS gets so many seconds for. */
async function printSmall(count: number, seconds: number): Promise<void> {
  let highs = await highsLoader();
  const cpu: number[] = [];
  let [planned, none, proven, same, withinSession, laterByOpenings, open] = [0, 0, 0, 0, 0, 0, 0];
  for (const input of fc.sample(halfHourShop, { numRuns: count, seed: 2027 })) {
    const began = process.cpuUsage();
    const plan = planSessions(input);
    cpu.push(cpuMs(began));
    if (plan?.status !== "planned") {
      none++;
      continue;
    }
    planned++;
    if (plan.exact) proven++;
    const ours = minuteOf(plan.lastWorkAt!);
    // Whether any is earlier is told sooner than which is the earliest.
    const earlier = Math.ceil(ours / HALF_HOUR - 1) * HALF_HOUR;
    let best: number | undefined;
    try {
      const found = earliestLastWork(highs, input, earlier, { step: HALF_HOUR, seconds });
      if (found.status === "stopped") open++;
      else if (found.status === "infeasible") same++;
      best = "minute" in found ? found.minute : undefined;
    } catch {
      // It may run out of the memory that it has in WebAssembly, and then its instance is of no more use.
      highs = await highsLoader();
      open++;
    }
    const apart = between(input, Math.min(best ?? ours, ours), ours);
    if (apart.open <= Math.max(...plan.sessions!.map(({ hours }) => hours * 60)) && apart.closings <= 1)
      withinSession++;
    if (apart.closings > 1) laterByOpenings++;
  }
  console.log(`\n${count} random shops of three to six surfaces, beside ${seconds} s of HiGHS each:`);
  console.log(
    `- ${planned} planned, ${none} with windows that cannot be kept; ${proven} proven best by their bound`,
  );
  console.log(`- ${same} as early as any plan by HiGHS, which did not end for ${open}`);
  console.log(
    `- ${withinSession} within one session of the best found, ${laterByOpenings} later by more than one opening`,
  );
  console.log(`- CPU ${Math.max(...cpu).toFixed(0)} ms at most`);
}

/** Minutes. */
const HALF_HOUR = 30;

export async function printSessions(shops: number, tries: number, seconds: number): Promise<void> {
  printHard();
  printShops(shops, tries);
  await printSmall(shops, seconds);
}
