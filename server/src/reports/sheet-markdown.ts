/**
 * Sheets as GitHub-flavoured Markdown: task lists that can be ticked, tables, alerts for what must not be overlooked.
 *
 * No HTML is written, and what a recipe says is escaped, so that it is shown and never becomes markup.
 */
import { shownText } from "./display-text.ts";
import {
  type Block,
  type Box,
  type DrawnStep,
  type Section,
  type SheetDocument,
  type Steps,
  seeFindings,
  type Table,
  type Tick,
} from "./sheet-document.ts";
import type { Inline } from "./sheet-prose.ts";

/** One file; a rule between sheets. */
export const sheetsMarkdown = (documents: readonly SheetDocument[]): string =>
  documents.map(documentMarkdown).join("\n---\n\n");

function documentMarkdown({ sort, title, origin, head, sections, foot }: SheetDocument): string {
  const blocks = [
    `# ${escaped(title)}`,
    `${escaped(sort)}, ${inline(origin)}`,
    ...head.map(blockMarkdown),
    ...sections.flatMap(sectionMarkdown),
    emphasised(foot),
  ];
  return `${blocks.join("\n\n")}\n`;
}

const sectionMarkdown = ({ title, blocks }: Section): readonly string[] => [
  `## ${escaped(title)}`,
  ...blocks.map(blockMarkdown),
];

/** Signs that mean something anywhere in a line; what means something at its beginning only is seen to there. */
const escaped = (text: string): string =>
  shownText(text)
    .replace(/[\\`*_{}[\]<>|#~!&$]/gu, "\\$&")
    .replace(/^(\s*)([-+=])/u, "$1\\$2")
    .replace(/^(\s*\d+)([.)])(?=\s|$)/u, "$1\\$2");

function inline(spans: Inline): string {
  return spans
    .map(({ kind, text }) => {
      if (kind === "code") return codeSpan(text);
      if (kind === "strong") return `**${escaped(text).trim()}**`;
      return kind === "emphasis" ? emphasised(text) : escaped(text);
    })
    .join("");
}

const emphasised = (text: string): string => `*${escaped(text).trim()}*`;

/** Fenced by one backtick more than stand in it in a row. */
function codeSpan(text: string): string {
  const shown = shownText(text);
  const longest = Math.max(0, ...(shown.match(/`+/gu) ?? []).map((run) => run.length));
  const fence = "`".repeat(longest + 1);
  const pad = /^`|`$/u.test(shown) ? " " : "";
  return `${fence}${pad}${shown}${pad}${fence}`;
}

function blockMarkdown(block: Block): string {
  switch (block.kind) {
    case "paragraph":
      return inline(block.text);
    case "bullets":
      return block.items.map((item) => `- ${inline(item)}`).join("\n");
    case "facts":
      return block.rows.map(({ name, text }) => `- ${escaped(name)}: ${inline(text)}`).join("\n");
    case "part":
      return `### ${escaped(block.title)}`;
    case "table":
      return tableMarkdown(block);
    case "box":
      return boxMarkdown(block);
    case "steps":
      return stepsMarkdown(block);
  }
}

/** The head of a group stands in its first row. */
function tableMarkdown({ caption, columns, groups }: Table): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  const rows = groups.flatMap(({ head, rows: list }) =>
    list.map((cells, i) => line([i === 0 ? inline(head) : "", ...cells.map(cellMarkdown)])),
  );
  return [
    `**${escaped(caption)}**`,
    "",
    line(columns.map(({ title }) => escaped(title))),
    line(columns.map(({ form }) => (form === "figure" ? "---:" : "---"))),
    ...rows,
  ].join("\n");
}

/** In a table even code may not hold a bare `|`. */
const cellMarkdown = (cell: Inline): string => inline(cell).replace(/(?<!\\)\|/gu, "\\|");

const ALERTS: Readonly<Record<Box["tone"], string>> = {
  error: "CAUTION",
  warning: "WARNING",
  safety: "IMPORTANT",
  note: "NOTE",
};

function boxMarkdown({ tone, title, blocks }: Box): string {
  const lines = blocks.flatMap((block) => {
    if (block.kind === "paragraph") return [inline(block.text)];
    return block.items.map((item, i) => `${block.kind === "numbers" ? `${i + 1}.` : "-"} ${inline(item)}`);
  });
  return [`[!${ALERTS[tone]}]`, `**${escaped(title)}**`, "", ...lines]
    .map((line) => `> ${line}`.trimEnd())
    .join("\n");
}

const stepsMarkdown = ({ steps }: Steps): string => steps.map(stepMarkdown).join("\n");

/** A single box stands before the step; boxes of several pieces are tasks below it. */
function stepMarkdown(step: DrawnStep): string {
  const { number, title, details, cautions, findings, wear, ticks } = step;
  const [only] = ticks;
  const single = ticks.length === 1 && only?.labels[0] === "" ? only : undefined;
  const head = `${number}. ${single ? "[ ] " : ""}**${escaped(title)}**`;
  const below = [
    ...(single?.time ? [`- ${escaped(single.time)}`] : []),
    ...(findings.length > 0 ? [`- **${seeFindings(findings)}**`] : []),
    ...cautions.map((caution) => `- **${escaped(caution)}**`),
    ...details.map((detail) => `- ${escaped(detail)}`),
    ...(wear === "" ? [] : [`- ${emphasised(wear)}`]),
    ...(single ? [] : ticks.flatMap(tickMarkdown)),
  ];
  const indent = " ".repeat(`${number}. `.length);
  return [head, ...below.map((line) => `${indent}${line}`)].join("\n");
}

const tickMarkdown = ({ labels, time }: Tick): readonly string[] =>
  labels.map((label) => `- [ ] Piece ${label}${time === "" ? "" : `, ${escaped(time)}`}`);
