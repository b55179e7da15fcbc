/** Sheets as plain text of 80 columns, for a terminal, a label printer or a mail. */

import { type Inline, spanText } from "../escape/prose.ts";
import { shownText } from "../escape/shown-text.ts";
import { displayWidth, padEnd, padStart, wrap } from "./display-text.ts";
import { inlineLines } from "./inline-lines.ts";
import {
  type Block,
  type Box,
  boxOf,
  type DrawnStep,
  type LaidOut,
  type SheetSection,
  type Steps,
  seeFindings,
  type Table,
  type Tick,
} from "./sheet-document.ts";

export const SHEET_COLUMNS = 80;

export const sheetsText = (documents: readonly LaidOut[]): string =>
  documents.map(documentText).join(`\n${"#".repeat(SHEET_COLUMNS)}\n\n`);

function documentText({ sort, title, origin, head, sections, foot }: LaidOut): string {
  const blocks = [
    underlined(title, "="),
    wrap(`${sort}, ${spoken(origin)}`, SHEET_COLUMNS),
    ...head.map(blockText),
    ...sections.flatMap(sectionText),
    wrap(foot, SHEET_COLUMNS),
  ];
  return `${blocks.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

const sectionText = ({ title, blocks }: SheetSection): readonly (readonly string[])[] => [
  underlined(title, "-"),
  ...blocks.map(blockText),
];

function underlined(title: string, sign: string): readonly string[] {
  const lines = wrap(title, SHEET_COLUMNS);
  return [...lines, sign.repeat(Math.max(1, ...lines.map(displayWidth)))];
}

/** Names keep their backticks: they tell them from the words around. */
const spoken = (spans: Inline): string =>
  spans.map((span) => (span.kind === "code" ? `\`${span.text}\`` : spanText(span))).join("");

function blockText(block: Block): readonly string[] {
  switch (block.kind) {
    case "paragraph":
      return wrap(spoken(block.text), SHEET_COLUMNS);
    case "bullets":
    case "sections":
      return block.items.flatMap((item) => hanging("- ", spoken(item), SHEET_COLUMNS));
    case "numbers":
      return block.items.flatMap((item, i) => hanging(`${block.start + i}. `, spoken(item), SHEET_COLUMNS));
    case "code":
      return block.lines.map((line) => `    ${shownText(line)}`.trimEnd());
    case "facts":
      return factsText(block.rows);
    case "part":
      return [`* ${shownText(block.title)} *`];
    case "table":
      return tableText(block);
    case "box":
      return boxText(block);
    case "steps":
      return stepsText(block);
  }
}

/** Wrapped behind a mark, the following lines under the first word. */
function hanging(mark: string, text: string, columns: number): readonly string[] {
  const width = displayWidth(mark);
  const lines = wrap(text, columns - width);
  return (lines.length > 0 ? lines : [""]).map((line, i) =>
    `${i === 0 ? mark : " ".repeat(width)}${line}`.trimEnd(),
  );
}

function factsText(rows: readonly { readonly name: string; readonly text: Inline }[]): readonly string[] {
  const width = Math.max(...rows.map(({ name }) => displayWidth(shownText(name))));
  return rows.flatMap(({ name, text }) =>
    hanging(`${padEnd(shownText(name), width)}  `, spoken(text), SHEET_COLUMNS),
  );
}

// ---------------------------------------------------------------------------------------------------------------
// Tables

const GUTTER = 2;
const NARROWEST = 8;

function tableText({ caption, columns, groups }: Table): readonly string[] {
  const rows = groups.flatMap(({ head, rows: list }) =>
    list.map((cells, i) => [i === 0 ? spoken(head) : "", ...cells.map(spoken)].map(shownText)),
  );
  const heads = columns.map(({ title }) => shownText(title));
  const widths = fitting([heads, ...rows]);
  const line = (cells: readonly string[]): readonly string[] => {
    const wrapped = cells.map((cell, i) => wrap(cell, widths[i]!));
    const height = Math.max(1, ...wrapped.map(({ length }) => length));
    return Array.from({ length: height }, (_, row) =>
      wrapped
        .map((lines, i) => (columns[i]?.form === "figure" ? padStart : padEnd)(lines[row] ?? "", widths[i]!))
        .join(" ".repeat(GUTTER))
        .trimEnd(),
    );
  };
  const rule = widths.map((width) => "-".repeat(width)).join(" ".repeat(GUTTER));
  return [...wrap(caption, SHEET_COLUMNS), ...line(heads), rule, ...rows.flatMap(line)];
}

/** Widths that fit the page: the widest columns give way, and their cells are wrapped. */
function fitting(rows: readonly (readonly string[])[]): readonly number[] {
  const widths = rows[0]!.map((_, i) => Math.max(1, ...rows.map((row) => displayWidth(row[i] ?? ""))));
  const room = SHEET_COLUMNS - GUTTER * (widths.length - 1);
  for (let over = widths.reduce((sum, width) => sum + width, 0) - room; over > 0; over -= 1) {
    const widest = widths.indexOf(Math.max(...widths));
    if (widths[widest]! <= NARROWEST) break;
    widths[widest]! -= 1;
  }
  return widths;
}

// ---------------------------------------------------------------------------------------------------------------
// Boxes and steps

const MARKS: Readonly<Record<Box["tone"], string>> = {
  error: "!!! ",
  warning: "! ",
  note: "| ",
};

function boxText({ tone, title, blocks }: Box): readonly string[] {
  const mark = MARKS[tone];
  const columns = SHEET_COLUMNS - mark.length;
  const lines = [
    ...wrap(title, columns),
    ...blocks.flatMap((block) => {
      if (block.kind === "paragraph") return wrap(spoken(block.text), columns);
      return block.items.flatMap((item, i) => {
        const mark = block.kind === "numbers" ? `${padStart(String(i + 1), 2)}. ` : "- ";
        return inlineLines(item).flatMap((text, line) =>
          hanging(line === 0 ? mark : " ".repeat(mark.length), spoken(text), columns),
        );
      });
    }),
  ];
  return lines.map((line) => `${mark}${line}`);
}

const stepsText = ({ steps }: Steps): readonly string[] =>
  steps.flatMap((step, i) => [...(i > 0 ? [""] : []), ...stepText(step)]);

/** Behind the box and the number. */
const INDENT = " ".repeat(9);

function stepText(step: DrawnStep): readonly string[] {
  const { number, title, details, cautions, findings, wear, piece, ticks } = step;
  const [only] = ticks;
  const single = ticks.length === 1 && only?.labels[0] === "" ? only : undefined;
  const room = SHEET_COLUMNS - INDENT.length;
  const below = (text: string, mark = ""): readonly string[] =>
    hanging(`${INDENT}${mark}`, text, SHEET_COLUMNS);
  return [
    ...hanging(
      `${single ? boxOf(single, "") : "   "} ${number === undefined ? " ".repeat(5) : `${padStart(String(number), 3)}. `}`,
      title,
      SHEET_COLUMNS,
    ),
    ...(single?.time ? below(single.time) : []),
    ...(single
      ? []
      : ticks.flatMap((tick) => tickLines(tick, piece, room).map((line) => `${INDENT}${line}`))),
    ...(findings.length > 0 ? below(seeFindings(findings), "! ") : []),
    ...cautions.flatMap((caution) => below(caution, "! ")),
    ...details.flatMap((detail) => below(detail)),
    ...(wear === "" ? [] : below(wear)),
  ];
}

/** Boxes side by side, the time behind them; never broken inside a box. */
function tickLines(tick: Tick, piece: string, columns: number): readonly string[] {
  const { labels, time } = tick;
  const name = displayWidth(shownText(piece)) > columns / 2 ? "piece" : shownText(piece);
  const parts = [
    ...labels.map((label) => [boxOf(tick, label), name, label].join(" ")),
    ...(time === "" ? [] : [shownText(time)]),
  ];
  const lines: string[] = [];
  for (const part of parts) {
    const line = lines.at(-1);
    if (line !== undefined && displayWidth(line) + 2 + displayWidth(part) <= columns) {
      lines[lines.length - 1] = `${line}  ${part}`;
    } else lines.push(part);
  }
  return lines;
}
