/**
 * Writes `server/docs/computations.md` from the table of computations, and `server/docs/hands-on-times.md` from the
 * tool's own table of times.
 *
 * Run by `npm run generate`; a test fails when a page is stale.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { COMPUTATIONS, type Computation, TOPICS } from "../src/core/computations.ts";
import {
  LAYER_TIMES,
  m2PerSheet,
  STEP_TIMES,
  type TaskTime,
  WIPING,
} from "../src/core/quantities/abrasives.ts";

export const DOCS_FOLDER = new URL("../docs/", import.meta.url);

const WRITTEN_BY = "<!-- Written by server/tools/write-computations.ts; do not edit. -->";

export function computationsPage(): string {
  const topics = TOPICS.flatMap((topic) => [
    `## ${topic}`,
    "",
    ...markdownTable(
      ["what", "formula", "where you see it", "source", "code", "tests"],
      COMPUTATIONS.filter((row) => row.topic === topic).map(computationCells),
    ),
    "",
  ]);
  return [
    WRITTEN_BY,
    "",
    "# Calculations",
    "",
    "Every number that Finishwright calculates comes from one of these.",
    "A formula of the trade without a published source says so. Where a recipe states too little, nothing is calculated.",
    "No calculation can show that a job is safe: the label, the safety data sheet and local codes decide.",
    "",
    ...topics,
  ].join("\n");
}

const computationCells = (row: Computation): readonly string[] => [
  row.name,
  row.formula,
  row.seen,
  row.source,
  `[${row.file}](../src/core/${row.file})`,
  row.tests
    .map((test) => `[${test.replace(/^.*\//, "").replace(".test.ts", "")}](../../tests/${test})`)
    .join(", "),
];

export function handsOnPage(): string {
  const rows = (times: Readonly<Record<string, TaskTime>>): readonly (readonly string[])[] =>
    Object.entries(times).map(([word, time]) => [`\`${word}\``, ...timeCells(time)]);
  const head = ["", "fixed", "by area", "a surface of 1 m2"];
  return [
    WRITTEN_BY,
    "",
    "# Hands-on times",
    "",
    "What a task takes where the text does not say `takes`: minutes whatever the size, and minutes by square metre, for one piece's surface and one coat.",
    "All figures are common practice, no source; they are set so that a wooden chair, cleaned, sanded through three grits and given three brushed coats, takes about two hours of hands.",
    "An estimate is rounded up to five minutes; a stated time stands as it is.",
    "",
    "## Layers, by method",
    "",
    ...markdownTable(head.with(0, "method"), [
      ...rows(LAYER_TIMES),
      ["wiped off again, added", ...timeCells(WIPING)],
    ]),
    "",
    "## Steps, by verb",
    "",
    "`sand` and `scuff` count once for every grit.",
    "",
    ...markdownTable(head.with(0, "verb"), rows(STEP_TIMES)),
    "",
    "## Paper",
    "",
    "Bare hardwood that a hand sheet of 230 mm × 280 mm sands before it is dull: common practice, no source, and a factor of two either way.",
    "",
    ...markdownTable(["grit", "m2 a sheet"], paperRows()),
    "",
  ].join("\n");
}

const timeCells = ({ fixedMin, minPerM2 }: TaskTime): readonly string[] => [
  `${fixedMin} min`,
  minPerM2 === 0 ? "" : `${minPerM2} min/m2`,
  `${fixedMin + minPerM2} min`,
];

/** One row for every stretch of grits that share a figure. */
function paperRows(): readonly (readonly string[])[] {
  const grits = [40, 60, 80, 100, 120, 150, 180, 220, 240, 320, 400];
  const figures = [...new Set(grits.map(m2PerSheet))];
  return figures.map((figure) => {
    const alike = grits.filter((grit) => m2PerSheet(grit) === figure);
    return [`${alike[0]} to ${alike.at(-1)}`, String(figure)];
  });
}

export function markdownTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(head), line(head.map(() => "---")), ...rows.map(line)];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(DOCS_FOLDER, { recursive: true });
  writeFileSync(new URL("computations.md", DOCS_FOLDER), computationsPage());
  writeFileSync(new URL("hands-on-times.md", DOCS_FOLDER), handsOnPage());
}
