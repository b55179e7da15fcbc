/**
 * Sheets as GitHub-flavoured Markdown: task lists that can be ticked, tables, alerts for what must not be overlooked.
 *
 * No HTML is written, and what a recipe says is escaped, so that it is shown and never becomes markup.
 */
import { markdownBlock, markdownEmphasis, markdownInline, markdownLine } from "../escape/markdown.ts";
import type { Inline } from "../escape/prose.ts";
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

/** One file; a rule between sheets. */
export const sheetsMarkdown = (documents: readonly LaidOut[]): string =>
  documents.map(documentMarkdown).join("\n---\n\n");

function documentMarkdown({ sort, title, origin, head, sections, foot }: LaidOut): string {
  const blocks = [
    `# ${markdownLine(title)}`,
    `${markdownLine(sort)}, ${markdownInline(origin)}`,
    ...head.map(blockMarkdown),
    ...sections.flatMap(sectionMarkdown),
    markdownEmphasis(foot),
  ];
  return `${blocks.join("\n\n")}\n`;
}

const sectionMarkdown = ({ title, blocks }: SheetSection): readonly string[] => [
  `## ${markdownLine(title)}`,
  ...blocks.map(blockMarkdown),
];

function blockMarkdown(block: Block): string {
  switch (block.kind) {
    case "paragraph":
    case "numbers":
    case "code":
      return markdownBlock(block);
    case "bullets":
    case "sections":
      return block.items.map((item) => `- ${markdownInline(item)}`).join("\n");
    case "facts":
      return block.rows
        .map(({ name, text }) => `- ${markdownLine(name)}: ${markdownInline(text)}`)
        .join("\n");
    case "part":
      return `### ${markdownLine(block.title)}`;
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
    list.map((cells, i) => line([i === 0 ? markdownInline(head) : "", ...cells.map(cellMarkdown)])),
  );
  return [
    `**${markdownLine(caption)}**`,
    "",
    line(columns.map(({ title }) => markdownLine(title))),
    line(columns.map(({ form }) => (form === "figure" ? "---:" : "---"))),
    ...rows,
  ].join("\n");
}

/** In a table even code may not hold a bare `|`. */
const cellMarkdown = (cell: Inline): string => markdownInline(cell).replace(/(?<!\\)\|/gu, "\\|");

const ALERTS: Readonly<Record<Box["tone"], string>> = {
  error: "CAUTION",
  warning: "WARNING",
  note: "NOTE",
};

function boxMarkdown({ tone, title, blocks }: Box): string {
  const lines = blocks.flatMap((block) => {
    if (block.kind === "paragraph") return [markdownInline(block.text)];
    return block.items.flatMap((item, i) => {
      const mark = block.kind === "numbers" ? `${i + 1}.` : "-";
      const texts = inlineLines(item).map(markdownInline);
      // A backslash at the end of a line breaks it there.
      return texts.map((text, line) =>
        [line === 0 ? mark : " ".repeat(mark.length), line < texts.length - 1 ? `${text}\\` : text].join(" "),
      );
    });
  });
  return [`[!${ALERTS[tone]}]`, `**${markdownLine(title)}**`, "", ...lines]
    .map((line) => `> ${line}`.trimEnd())
    .join("\n");
}

const stepsMarkdown = ({ steps }: Steps): string => steps.map(stepMarkdown).join("\n");

/** A single box stands before the step; boxes of several pieces are tasks below it. A wait has a dot for a number. */
function stepMarkdown(step: DrawnStep): string {
  const { number, title, details, cautions, findings, wear, piece, ticks } = step;
  const [only] = ticks;
  const single = ticks.length === 1 && only?.labels[0] === "" ? only : undefined;
  const mark = number === undefined ? "- " : `${number}. `;
  const head = `${mark}${single ? `${boxOf(single, "")} ` : ""}**${markdownLine(title)}**`;
  const below = [
    ...(single?.time ? [`- ${markdownLine(single.time)}`] : []),
    ...(findings.length > 0 ? [`- **${seeFindings(findings)}**`] : []),
    ...cautions.map((caution) => `- **${markdownLine(caution)}**`),
    ...details.map((detail) => `- ${markdownLine(detail)}`),
    ...(wear === "" ? [] : [`- ${markdownEmphasis(wear)}`]),
    ...(single ? [] : ticks.flatMap((tick) => tickMarkdown(tick, piece))),
  ];
  const indent = " ".repeat(mark.length);
  return [head, ...below.map((line) => `${indent}${line}`)].join("\n");
}

const tickMarkdown = (tick: Tick, piece: string): readonly string[] =>
  tick.labels.map(
    (label) =>
      `- ${boxOf(tick, label)} ${markdownLine(piece)} ${label}${tick.time === "" ? "" : `, ${markdownLine(tick.time)}`}`,
  );
