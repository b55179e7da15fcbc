/** What changed in meaning, for a terminal: file by file and declaration by declaration. */
import { shownText } from "../escape/shown-text.ts";
import { isChange, type LineChange } from "../views/changes/line-changes.ts";
import type { Changes, DeclarationChange, FileChange } from "../views/changes/model.ts";
import {
  changeRows,
  FINDING_MARKS,
  fileLabel,
  fileStatus,
  findingText,
  MARKS,
  rowText,
  STATUS_WORDS,
  type StateLabels,
  summaryText,
  withNeighbours,
} from "./changes-rows.ts";
import type { Colours } from "./colours.ts";
import { displayWidth, padEnd } from "./display-text.ts";

export function changesText(changes: Changes, labels: StateLabels, colours: Colours): string {
  const label = (pair: Parameters<typeof fileLabel>[1]): string => shownText(fileLabel(labels, pair));
  return [
    ...changes.files.flatMap((file) => [
      ...fileLines(file, `${label(file)}${fileStatus(labels, file, shownText)}`, colours),
      "",
    ]),
    ...changes.layoutOnly.map((pair) => `${label(pair)}: no change of meaning (layout and comments)`),
    ...changes.nameOnly.map(
      (pair) =>
        `${label(pair)}: no change of meaning (renamed from ${shownText(labels.before(pair.before ?? ""))})`,
    ),
    summaryText(changes),
    "",
  ].join("\n");
}

function fileLines(file: FileChange, label: string, colours: Colours): readonly string[] {
  const paint = painter(colours);
  return [
    colours.bold(label),
    ...file.uses.map((line) => `  ${paint(MARKS[line.kind], line.text)}`),
    ...file.findings.map((finding) => `  ${paint(FINDING_MARKS[finding.kind], findingText(finding))}`),
    ...file.declarations.flatMap((change) => declarationLines(change, colours)),
  ];
}

function declarationLines(change: DeclarationChange, colours: Colours): readonly string[] {
  const paint = painter(colours);
  const rows = changeRows(change);
  const width = Math.max(0, ...rows.map(({ name }) => displayWidth(shownText(name))));
  const section = (title: string, lines: readonly string[]): readonly string[] =>
    lines.length === 0 ? [] : [`    ${title}`, ...lines.map((line) => `      ${line}`)];
  const said = (lines: readonly LineChange[]): readonly string[] =>
    lines.map(({ kind, text }) => paint(MARKS[kind], text));
  return [
    `  ${STATUS_WORDS[change.status]} ${change.kind}: ${colours.bold(shownText(change.title))}`,
    ...rows.map((row) => `    ${padEnd(shownText(row.name), width)}  ${shownText(rowText(row))}`),
    ...change.work.flatMap(({ place, lines }) =>
      section(
        place === "" ? "Work" : `Work on ${shownText(place)}`,
        withNeighbours(lines).map((line) => (line ? paint(MARKS[line.kind], line.text) : "  …")),
      ),
    ),
    ...section("Written", said(change.written.filter(isChange))),
    ...section(
      "Findings",
      change.findings.map((finding) => paint(FINDING_MARKS[finding.kind], findingText(finding))),
    ),
  ];
}

/** A line behind its mark, in the colour of the mark. */
const painter =
  (colours: Colours) =>
  (mark: string, text: string): string => {
    const line = `${mark} ${shownText(text)}`;
    if (mark === "+") return colours.green(line);
    if (mark === "-") return colours.red(line);
    return mark === "~" ? colours.yellow(line) : line;
  };
