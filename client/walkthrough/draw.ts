/**
 * Writes the pictures of the walkthrough from one small job: its recipe, a finding in it when a wait is too short, its
 * plan and its sheet, as the program itself gives them. Colours are those of the editor's theme.
 *
 * Run by `npm run generate`; a test fails when a picture shows something else than the program.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { shortMomentText } from "../../server/src/core/measure/figures.ts";
import { htmlText } from "../../server/src/escape/html.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import type { SheetStep } from "../../server/src/views/sheet/model.ts";

export const FOLDER = new URL("./", import.meta.url);

const RECIPE = `## Stained, then three coats of clear.
recipe stained_top {
  safety dust_mask, wet_rags, no_ignition
  safety gloves, ventilate 16 air changes/h
  step   sand 120, 150
  step   dust
  layer  gel_stain, wiped off
  wait   until cured
  layer  waterborne_polyurethane x 3
  wait   until cured
}`;

const JOB = `
piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm x 25 mm
    wood  oak
    wear  normal
  }
}
shop bench "Bench" {
  air   20 C, 50 % RH
  room  150 m3, 8 air changes/h
  hours Mon to Fri 09:00 to 17:00
}
job first_table "First table" {
  piece table
  in    bench
  start 2027-03-08 09:00
  apply stained_top
}
`;

const LINES = RECIPE.split("\n");

/** What the pictures show, by file name. */
export function pictures(): Readonly<Record<string, string>> {
  const sound = analysed(RECIPE + JOB);
  const short = RECIPE.replace("wait   until cured\n  layer", "wait   8 h\n  layer");
  const [finding] = analysed(short + JOB).findings(FILE);
  const [sheet] = sound.sheets(FILE);
  if (finding === undefined || sheet === undefined) throw new Error("There is nothing to draw.");
  const steps = sheet.procedures.flatMap(({ entries }) =>
    entries.flatMap((entry) => (entry.kind === "step" ? [entry] : [])),
  );
  return {
    "recipe.svg": recipePicture(),
    "finding.svg": findingPicture(short, finding),
    "schedule.svg": schedulePicture(steps),
    "sheet.svg": sheetPicture(sheet.title, steps),
  };
}

const FILE = "table.finish";

function analysed(text: string) {
  const analyst = createAnalyst({ resolve: (_, path) => path });
  analyst.setFile(FILE, text);
  return analyst.analysis();
}

// ---------------------------------------------------------------------------------------------------------------
// What all of them share

const COLOURS = {
  text: "var(--vscode-editor-foreground)",
  soft: "var(--vscode-descriptionForeground)",
  word: "var(--vscode-charts-purple)",
  name: "var(--vscode-charts-blue)",
  figure: "var(--vscode-charts-green)",
  wrong: "var(--vscode-editorError-foreground)",
  rule: "var(--vscode-editorWidget-border, var(--vscode-contrastBorder, #8884))",
} as const;
const SANS = "var(--vscode-font-family, sans-serif)";

const picture = (title: string, parts: readonly string[]): string =>
  [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 480 320" font-family="var(--vscode-editor-font-family, monospace)" font-size="15">`,
    `  <title>${htmlText(title)}</title>`,
    `  <rect x="10" y="10" width="460" height="300" rx="8" fill="var(--vscode-editor-background)" stroke="${COLOURS.rule}"/>`,
    ...parts.map((part) => `  ${part}`),
    "</svg>",
    "",
  ].join("\n");

const said = (x: number, y: number, text: string, more = ""): string =>
  `<text x="${x}" y="${y}" font-family="${SANS}" fill="${COLOURS.text}"${more}>${htmlText(text)}</text>`;

const small = (x: number, y: number, text: string, more = ""): string =>
  `<text x="${x}" y="${y}" font-family="${SANS}" font-size="13" fill="${COLOURS.soft}"${more}>${htmlText(text)}</text>`;

/** A line of a recipe, its first word and its figures coloured. */
function written(y: number, line: string): string {
  const spans = line.startsWith("##")
    ? [coloured("soft", line)]
    : [...line.matchAll(/^\s*[a-z]+(?= )|\d+|[^\d]+/gu)].map(([part], i) =>
        coloured(
          i === 0 && /^\s*[a-z]+$/u.test(part) ? "word" : /^\d+$/u.test(part) ? "figure" : "text",
          part,
        ),
      );
  return `<text x="28" y="${y}" xml:space="preserve">${spans.join("")}</text>`;
}

const coloured = (colour: keyof typeof COLOURS, text: string): string =>
  `<tspan fill="${COLOURS[colour]}">${htmlText(text)}</tspan>`;

// ---------------------------------------------------------------------------------------------------------------
// The pictures

const recipePicture = (): string =>
  picture(
    "A recipe, one fact a line",
    LINES.map((line, i) => written(42 + i * 25, line)),
  );

/** Monospaced letters of 15 pixels are about 9 wide. */
const LETTER = 9;

function findingPicture(text: string, { span, rule, message }: FileFinding): string {
  const before = text.slice(0, span.start);
  const line = before.split("\n").length - 1;
  const from = 28 + (before.length - before.lastIndexOf("\n") - 1) * LETTER;
  const shown = text.split("\n").slice(line - 2, line + 1);
  const [headline = "", why = ""] = message.split("\n");
  const lines = [...wrapped(headline, 52), ...wrapped(why, 54)].slice(0, 6);
  const height = 52 + lines.length * 20;
  return picture(`A finding under the line that suffers: ${headline.replaceAll("`", "")}`, [
    ...shown.map((each, i) => written(52 + i * 26, each)),
    wave(from, 110, Math.min(440, from + (span.end - span.start) * LETTER)),
    `<rect x="28" y="122" width="424" height="${height}" rx="4" fill="var(--vscode-editorHoverWidget-background)" stroke="var(--vscode-editorHoverWidget-border)"/>`,
    ...lines.map((each, i) =>
      said(
        40,
        146 + i * 20,
        each,
        i < wrapped(headline, 52).length ? ' font-size="14" font-weight="bold"' : ' font-size="14"',
      ),
    ),
    `<text x="40" y="${154 + lines.length * 20}" font-family="${SANS}" font-size="14" fill="var(--vscode-textLink-foreground)">${htmlText(rule)}</text>`,
  ]);
}

function wave(from: number, y: number, to: number): string {
  const bows = Math.max(1, Math.floor((to - from) / 8));
  return `<path d="M${from} ${y}${"q2 -4 4 0q2 4 4 0".repeat(bows)}" fill="none" stroke="${COLOURS.wrong}" stroke-width="1.6"/>`;
}

function wrapped(text: string, letters: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.replaceAll("`", "").split(" ")) {
    const last = lines.at(-1);
    if (last === undefined || last.length + word.length + 1 > letters) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}

const DAY_MS = 24 * 3600 * 1000;
const FIRST_DAY = Date.parse("2027-03-08T00:00Z");
const DAYS = 7;
const LEFT = 150;
const WIDE = (470 - 14 - LEFT) / DAYS;
const NAMES = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

/** Bars of work and thin ones of waits along the days of the first week. */
function schedulePicture(steps: readonly SheetStep[]): string {
  const at = (iso: string): number =>
    LEFT + Math.min(DAYS, (Date.parse(`${iso.slice(0, 16)}Z`) - FIRST_DAY) / DAY_MS) * WIDE;
  const rows = steps
    .flatMap((step) => {
      const time = step.planned[0];
      return time?.startAt && time.endAt && at(time.startAt) < at("2027-03-15T00:00")
        ? [{ step, from: at(time.startAt), to: at(time.endAt) }]
        : [];
    })
    .slice(0, 9);
  return picture("Work and waits along the days of a week", [
    ...NAMES.flatMap((name, i) => [
      small(LEFT + (i + 0.5) * WIDE, 38, name, ' text-anchor="middle"'),
      `<path d="M${(LEFT + i * WIDE).toFixed(1)} 46V300" stroke="${COLOURS.rule}"/>`,
    ]),
    ...rows.flatMap(({ step, from, to }, i) => {
      const y = 54 + i * 27;
      const width = Math.max(4, to - from).toFixed(1);
      return [
        said(24, y + 15, step.title.split(/:| with | until /u)[0]!, ' font-size="13"'),
        step.op === "wait"
          ? `<rect x="${from.toFixed(1)}" y="${y + 6}" width="${width}" height="8" rx="4" fill="${COLOURS.soft}" opacity="0.55"/>`
          : `<rect x="${from.toFixed(1)}" y="${y}" width="${width}" height="20" rx="3" fill="${step.op === "layer" ? COLOURS.name : COLOURS.word}"/>`,
      ];
    }),
  ]);
}

const clipped = (text: string, letters: number): string =>
  text.length > letters ? `${text.slice(0, letters - 1).trimEnd()}…` : text;

function sheetPicture(title: string, steps: readonly SheetStep[]): string {
  const rows = steps.slice(0, 6);
  return picture("A sheet for the bench with steps to tick", [
    `<text x="40" y="54" font-family="${SANS}" font-size="20" font-weight="bold" fill="${COLOURS.text}">${htmlText(title)}</text>`,
    `<path d="M40 66H440" stroke="${COLOURS.rule}"/>`,
    ...rows.flatMap((step, i) => {
      const y = 92 + i * 36;
      const start = step.planned[0]?.startAt;
      return [
        `<rect x="40" y="${y - 14}" width="18" height="18" rx="3" fill="none" stroke="${COLOURS.text}" stroke-width="1.5"/>`,
        ...(i < 2
          ? [
              `<path d="M44 ${y - 5}l4 5l7-10" fill="none" stroke="${COLOURS.figure}" stroke-width="2.5" stroke-linecap="round"/>`,
            ]
          : []),
        said(70, y, clipped(step.title, 34)),
        ...(start ? [small(440, y, shortMomentText(start), ' text-anchor="end"')] : []),
      ];
    }),
  ]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [name, text] of Object.entries(pictures())) writeFileSync(new URL(name, FOLDER), text);
}
