/**
 * Speed as ratios measured in one run, so that the figures mean the same on any machine: how much cheaper an edit is
 * than a first reading, how cost grows with length, and how far from proven best a large schedule is.
 *
 * The last part of `npm run bench`. Nothing here fails: it prints, and people judge.
 */
import process from "node:process";
import { parseFile } from "../../grammar/src/parse.ts";
import { schedule } from "../../server/src/core/schedule/schedule.ts";
import type { Chain, ChainItem, Schedule } from "../../server/src/core/schedule/types.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";

/** Milliseconds of work by the processor, the least of several runs: others at work on the machine hardly count. */
function best(runs: number, work: () => void): number {
  let least = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run += 1) {
    const start = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(start);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

function fileOf(declarations: number): string {
  const parts: string[] = [
    "shop room {\n  air 20 C, 50 % RH\n  hours Mon to Fri 09:00 to 17:00\n}\n",
    "piece table {\n  surface top {\n    shape panel 1800 mm x 900 mm x 30 mm\n    wood red oak\n  }\n}\n",
  ];
  for (let i = 0; i < declarations; i += 1) {
    parts.push(
      `recipe way_${i}(clear: material = waterborne_polyurethane) {\n  for wood\n  safety dust_mask\n  step sand 120, 150\n  step dust\n  layer clear x 3 {\n    wait until recoat\n    step sand 220\n    step dust\n  }\n  wait until cured\n}\n`,
    );
    if (i % 10 === 0)
      parts.push(
        `job job_${i} {\n  piece table x 2\n  in room\n  start 2027-03-08\n  apply way_${i} to top\n}\n`,
      );
  }
  return parts.join("\n");
}

const line = (label: string, figure: string) => console.log(`${label.padEnd(76)}${figure}`);
const times = (ratio: number) => `${ratio.toFixed(ratio < 10 ? 2 : 0)} ×`;

function reading(): void {
  const small = fileOf(100);
  const large = fileOf(1000);
  const tree = parseFile(large);
  const edited = large.replace("way_500(clear", "way_500(clearer");
  const first = best(5, () => parseFile(large));
  line(
    "Reading 1000 recipes against 100 (10 × is in proportion)",
    times(first / best(5, () => parseFile(small))),
  );
  line(
    "Reading a file of 1000 recipes against reading it after one edit",
    times(first / best(5, () => parseFile(edited, tree))),
  );
}

function checking(): void {
  const check = (text: string) => {
    const analyst = createAnalyst({ resolve: (_, path) => path });
    analyst.setFile("a.finish", text);
    return { analyst, findings: analyst.analysis().findings("a.finish").length };
  };
  const small = fileOf(50);
  const large = fileOf(500);
  const first = best(3, () => check(large));
  line("Checking 500 recipes and 50 jobs against 50 and 5", times(first / best(3, () => check(small))));
  const { analyst } = check(large);
  let turn = 0;
  const edit = best(5, () => {
    turn += 1;
    analyst.setFile(
      "a.finish",
      large.replace("step sand 120, 150", `step sand ${turn % 2 === 0 ? 100 : 80}, 120, 150`),
    );
    analyst.analysis().findings("a.finish");
  });
  line("The same from scratch against after one edit", times(first / edit));
}

/** Recipes that unroll to about so many steps each: coats with waiting, sanding and dusting between them. */
function longRecipes(recipes: number, steps: number): string {
  const parts = Array.from(
    { length: Math.round(steps / 80) },
    (_, i) =>
      `recipe coats_${i} {\n  safety dust_mask\n  layer waterborne_polyurethane x 20 {\n    wait until recoat\n    step sand 220\n    step dust\n  }\n  wait until recoat\n  step sand 220\n  step dust\n}\n`,
  );
  const follows = parts.map((_, i) => `  follow coats_${i}\n`).join("");
  const long = Array.from({ length: recipes }, (_, i) => `recipe long_${i} {\n${follows}}\n`);
  return [...parts, ...long].join("");
}

function unrolling(): void {
  const check = (steps: number): number => {
    const text = longRecipes(10, steps);
    return best(3, () => {
      const analyst = createAnalyst({ resolve: (_, path) => path });
      analyst.setFile("a.finish", text);
      analyst.analysis().findings("a.finish");
    });
  };
  check(400);
  line(
    "Checking 10 recipes of 4000 steps against of 2000 (2 × is in proportion)",
    times(check(4000) / check(2000)),
  );
}

function chains(count: number, steps: number): readonly Chain[] {
  return Array.from({ length: count }, (_, chain): Chain => {
    const items = Array.from({ length: steps }, (_, step): readonly ChainItem[] => [
      { kind: "hands", id: `${chain}:${step}`, hours: 0.25 + (chain % 3) * 0.25, nonPreemptive: true },
      { kind: "wait", id: `${chain}:${step}w`, hours: 2 + (step % 3) },
    ]).flat();
    return { key: `chain ${chain}`, items };
  });
}

/** Sanding and coats with a window of so many hours from one to the next. */
function coats(
  prefix: string,
  count: number,
  hours: number,
  dry: number,
  window: number,
): readonly ChainItem[] {
  return Array.from({ length: count }, (_, coat): readonly ChainItem[] => [
    {
      kind: "hands",
      id: `${prefix}${coat}`,
      hours,
      nonPreemptive: true,
      ...(coat > 0 ? { maxLag: { of: `${prefix}${coat - 1}`, hours: window } } : {}),
    },
    { kind: "wait", id: `${prefix}${coat}w`, hours: dry },
  ]).flat();
}

const sanding = (id: string, hours: number): ChainItem => ({
  kind: "hands",
  id,
  hours,
  nonPreemptive: false,
});

const surfaces = (count: number, itemsOf: (place: number) => readonly ChainItem[]): readonly Chain[] =>
  Array.from({ length: count }, (_, place) => ({ key: `chain ${place}`, items: itemsOf(place) }));

/** Jobs in which every coat must follow the one before within 24 h. */
const TIED: readonly (readonly [string, number, readonly Chain[]])[] = [
  [
    "30 pieces × 3 surfaces × 12 steps, coats within 24 h, two at work",
    2,
    surfaces(90, (place) => [
      sanding("s", 0.5 + (place % 3) * 0.25),
      sanding("d", 0.1),
      ...coats("a", 4, 0.25 + (place % 3) * 0.15, 2, 24),
      sanding("t", 0.5),
      sanding("e", 0.1),
      ...coats("b", 4, 0.25, 3, 24),
    ]),
  ],
  [
    "24 surfaces × 3 coats of 3 h within 24 h",
    1,
    surfaces(24, () => [sanding("s", 1), ...coats("a", 3, 3, 4, 24)]),
  ],
  [
    "90 surfaces × 3 coats of 1.5 to 2.5 h within 24 h, two at work",
    2,
    surfaces(90, (place) => coats("a", 3, 1.5 + (place % 3) * 0.5, 4, 24)),
  ],
  [
    "9 surfaces × 12 steps, coats within 24 h",
    1,
    surfaces(9, (place) => [
      sanding("s", 0.5 + (place % 3) * 0.25),
      sanding("d", 0.1),
      ...coats("a", 4, 0.25 + (place % 3) * 0.15, 2, 24),
      sanding("t", 0.5),
      sanding("e", 0.1),
      ...coats("b", 4, 0.25, 3, 24),
    ]),
  ],
];

function planning(): void {
  const hours = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: 540, closes: 1020 }));
  const calendar = { hours, closed: [], crew: 2 };
  const plan = (count: number, steps: number) =>
    schedule({ calendar, start: "2027-03-08", chains: chains(count, steps) });
  const small = best(3, () => plan(9, 12));
  const start = performance.now();
  const large = plan(90, 12);
  const took = performance.now() - start;
  line("Planning 30 pieces × 3 surfaces × 12 steps against 3 pieces", times(took / small));
  line("  this once, on this machine", `${(took / 1000).toFixed(2)} s`);
  line("  its gap to the proven lower bound", gapText(large));
  for (const [label, crew, tied] of TIED) {
    const began = process.cpuUsage();
    const result = schedule({ calendar: { ...calendar, crew }, start: "2027-03-08", chains: tied });
    const { user, system } = process.cpuUsage(began);
    line(label, `${gapText(result)}, ${((user + system) / 1e6).toFixed(2)} s`);
  }
}

const gapText = ({ gap, exact }: Schedule): string =>
  `gap ${(gap * 100).toFixed(2)} %${exact ? ", proven best" : ""}`;

export function printRatios(): void {
  reading();
  checking();
  unrolling();
  planning();
}
