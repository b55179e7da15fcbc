/** What changed in meaning, in Markdown for a pull request: nothing in a recipe becomes a link, a mention or a heading. */
import { t, translated } from "../../../grammar/src/translate.ts";
import { markdownCode, markdownFence, markdownText } from "../escape/markdown.ts";
import { isChange } from "../views/changes/line-changes.ts";
import type { Changes, DeclarationChange, FileChange, FilePair } from "../views/changes/model.ts";
import {
  type ChangeRow,
  changeRows,
  fileLabel,
  fileStatus,
  findingText,
  MARKS,
  STATUS_WORDS,
  type StateLabels,
  summaryText,
  withNeighbours,
} from "./changes-rows.ts";

export function changesMarkdown(changes: Changes, labels: StateLabels): string {
  const named = (pair: FilePair): string => markdownCode(fileLabel(labels, pair));
  const blocks = [
    `## ${t`Changes at the bench`}`,
    summaryText(changes),
    ...changes.files.flatMap((file) =>
      fileBlocks(file, `${named(file)}${fileStatus(labels, file, markdownCode)}`),
    ),
    ...(changes.layoutOnly.length === 0
      ? []
      : [t`No change of meaning, only layout and comments: ${changes.layoutOnly.map(named).join(", ")}`]),
    ...(changes.nameOnly.length === 0
      ? []
      : [
          t`No change of meaning, only another name: ${changes.nameOnly
            .map((pair) => t`${named(pair)} (was ${markdownCode(labels.before(pair.before ?? ""))})`)
            .join(", ")}`,
        ]),
  ];
  return `${blocks.join("\n\n")}\n`;
}

function fileBlocks(file: FileChange, heading: string): readonly string[] {
  return [
    `### ${heading}`,
    ...fence(file.uses.map(({ kind, text }) => `${MARKS[kind]} ${text}`)),
    ...findingList(file.findings),
    ...file.declarations.flatMap(declarationBlocks),
  ];
}

function declarationBlocks(change: DeclarationChange): readonly string[] {
  return [
    `**${t`${translated(STATUS_WORDS[change.status])} ${translated(change.kind)}: ${inert(change.title)}`}**`,
    ...table(changeRows(change)),
    ...change.work.flatMap(({ place, lines }) => [
      place === "" ? t`Work:` : t`Work on ${inert(place)}:`,
      ...fence(withNeighbours(lines).map((line) => (line ? `${MARKS[line.kind]} ${line.text}` : "  …"))),
    ]),
    ...(change.written.some(isChange)
      ? [t`Written:`, ...fence(change.written.map(({ kind, text }) => `${MARKS[kind]} ${text}`))]
      : []),
    ...findingList(change.findings),
  ];
}

const table = (rows: readonly ChangeRow[]): readonly string[] =>
  rows.length === 0
    ? []
    : [
        [
          `| | ${t`before`} | ${t`after`} | ${t`difference`} |`,
          "| --- | ---: | ---: | ---: |",
          ...rows.map(
            ({ name, before, after, difference }) =>
              `| ${[name, before, after, difference].map(inert).join(" | ")} |`,
          ),
        ].join("\n"),
      ];

/** Coloured as a diff where that is known. */
const fence = (lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : [markdownFence(lines).replace(/^`+/u, "$&diff")];

export const FINDING_WORDS = { new: "New", gone: "Gone", changed: "Changed" } as const;

const findingList = (findings: FileChange["findings"]): readonly string[] =>
  findings.length === 0
    ? []
    : [
        findings
          .map(
            (finding) =>
              `- ${translated(FINDING_WORDS[finding.kind])} ${inert(findingText(finding))} (${markdownCode(finding.rule)})`,
          )
          .join("\n"),
      ];

/**
 * Hosts look for mentions and for numbers of other requests in what Markdown makes of a text, so that a backslash holds
 * none of them off: an empty comment behind the sign does, and is not seen.
 */
const inert = (text: string): string => markdownText(text).replace(/\\?[@#]/gu, "$&<!-- -->");
