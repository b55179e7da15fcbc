/**
 * A recipe of a page as an editor shows it: its words in the colours of what they mean, each line that a finding stands on
 * with a mark at the words, and the finding's headline beside it.
 */
import type { L10n } from "../bench/l10n.ts";
import { mark as sign } from "../bench/marks.ts";
import type { Example, ExampleFinding } from "./examples.ts";
import { inline, text } from "./inline.ts";

/** What a stretch of a text means, at offsets in it. */
export interface Coloured {
  readonly start: number;
  readonly end: number;
  /** A type of the protocol's semantic tokens, such as `keyword`. */
  readonly type: string;
}

/** Findings of another rule than `rule` name theirs. */
export function recipeHtml(
  example: Example,
  coloured: readonly Coloured[],
  rule: string,
  l10n: L10n,
): string {
  const { lines, findings } = example;
  let offset = 0;
  const rows = lines.map((line, i) => {
    const colours = within(coloured, offset, line.length);
    offset += line.length + 1;
    return lineHtml(line, i, colours, { findings, rule, l10n });
  });
  return `<div class="recipe${findings.length > 0 ? " numbered" : ""}">${rows.join("")}</div>${moreHtml(findings, l10n)}`;
}

/** At columns of a line. */
const within = (coloured: readonly Coloured[], offset: number, length: number): readonly Coloured[] =>
  coloured
    .filter(({ start, end }) => start < offset + length && end > offset)
    .map(({ start, end, type }) => ({
      start: Math.max(0, start - offset),
      end: Math.min(length, end - offset),
      type,
    }));

/** What is said of a recipe on the page of a rule, and the language of that. */
interface Said {
  readonly findings: readonly ExampleFinding[];
  readonly rule: string;
  readonly l10n: L10n;
}

/** The gravest first. */
const GRAVITY = ["error", "warning", "information", "hint"];

function lineHtml(
  line: string,
  number: number,
  colours: readonly Coloured[],
  { findings, rule, l10n }: Said,
): string {
  const here = findings.filter(({ marks }) => marks.some((each) => each.line === number));
  const gravest = GRAVITY.find((severity) => here.some((each) => each.severity === severity));
  const marks = here.flatMap((finding) =>
    finding.marks.flatMap((each) => (each.line === number ? { ...each, severity: finding.severity } : [])),
  );
  const said = here.filter((finding) => finding.marks[0]?.line === number);
  const beside = said.map(
    (finding) =>
      `<span class="headline">${sign(finding.severity, l10n)} <span>${inline(finding.headline)}${finding.rule === rule ? "" : ` <span class="second">${text(finding.rule)}</span>`}</span></span>`,
  );
  return `<div class="line${gravest === undefined ? "" : ` at ${gravest}`}"><span class="count" aria-hidden="true">${number + 1}</span><code>${wordsHtml(line, colours, marks)}</code>${beside.length === 0 ? "" : `<span class="said">${beside.join("")}</span>`}</div>`;
}

interface GraveMark {
  readonly from: number;
  readonly to: number;
  readonly severity: string;
}

/** A mark behind the last word takes a blank. */
function wordsHtml(line: string, colours: readonly Coloured[], marks: readonly GraveMark[]): string {
  const end = marks.reduce((most, { to }) => Math.max(most, to), line.length);
  const signs = line.padEnd(end);
  const cuts = [0, end, ...colours.flatMap((each) => [each.start, each.end])];
  const edges = [...new Set([...cuts, ...marks.flatMap(({ from, to }) => [from, to])])].toSorted(
    (a, b) => a - b,
  );
  const pieces = edges.slice(0, -1).map((from, i) => {
    const colour = colours.find(({ start, end: last }) => start <= from && from < last)?.type;
    const grave = GRAVITY.find((severity) =>
      marks.some((each) => each.severity === severity && each.from <= from && from < each.to),
    );
    const written = text(signs.slice(from, edges[i + 1]));
    return {
      grave,
      html: colour === undefined ? written : `<span class="${text(colour)}">${written}</span>`,
    };
  });
  let html = "";
  let open: string | undefined;
  for (const { grave, html: piece } of pieces) {
    if (grave !== open) {
      if (open !== undefined) html += "</mark>";
      if (grave !== undefined) html += `<mark class="${grave}">`;
      open = grave;
    }
    html += piece;
  }
  return open === undefined ? html : `${html}</mark>`;
}

/** Below the recipe, by its line: why, and what to do. */
function moreHtml(findings: readonly ExampleFinding[], l10n: L10n): string {
  const rows = findings.flatMap(({ marks, more }) => {
    const line = (marks[0]?.line ?? 0) + 1;
    return more.length === 0
      ? []
      : [
          `<dt>${text(l10n.t("Line {0}", line))}</dt><dd>${more.map((each) => `<p>${inline(each)}</p>`).join("")}</dd>`,
        ];
  });
  return rows.length === 0 ? "" : `<dl class="more">${rows.join("")}</dl>`;
}
