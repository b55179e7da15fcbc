/**
 * Comments that allow a finding: `# allow RULE: reason`, on a line of its own directly above the line of the finding.
 *
 * Several may stand above one line. A comment without a reason allows nothing and is itself a finding, as is one that
 * allows nothing that is there. Prose that happens to begin with "allow" is left alone.
 */
import type { Span } from "../../../../grammar/src/tree.ts";
import { type Finding, type Fix, textOf } from "../findings.ts";
import type { ProgramFile } from "../model/program.ts";
import { closest } from "../model/suggest.ts";
import type { Place } from "../place.ts";
import { languageSeverity, ruleById, ruleIds } from "./registry.ts";

export interface Suppression {
  readonly rule: string;
  /** Where `RULE` stands, and the comment from its `#` to its end. */
  readonly ruleSpan: Span;
  readonly span: Span;
  /** The whole line with its line end. */
  readonly lineSpan: Span;
  readonly hasReason: boolean;
  /** The lines that it covers, counted from 0: the next line of code and those on which that goes on. */
  readonly covers: readonly number[];
}

const FORM = /^(\s*)#(?!#)\s*allow\s+([A-Za-z][\w-]*)\s*(?:(:)\s*(.*?))?\s*$/u;
const FORGOTTEN_COLON = /^(\s*)#(?!#)\s*allow\s+([a-z][a-z0-9]*(?:-[a-z0-9]+)*)\s+.*$/u;

/** The suppressions of a text, in order. */
export function suppressionsIn(text: string): readonly Suppression[] {
  // Most texts have none; splitting them into lines would be for nothing.
  if (!/^\s*#\s*allow\b/mu.test(text)) return [];
  const lines = linesOf(text);
  return lines.flatMap((line, index) => {
    const found = readLine(line.text);
    if (!found) return [];
    const hash = line.start + line.text.indexOf("#");
    const start = line.start + line.text.indexOf(found.rule, line.text.indexOf("allow") + "allow".length);
    return [
      {
        rule: found.rule,
        ruleSpan: { start, end: start + found.rule.length },
        span: { start: hash, end: line.start + line.text.trimEnd().length },
        lineSpan: { start: line.start, end: line.end },
        hasReason: found.hasReason,
        covers: coveredLines(lines, index),
      },
    ];
  });
}

/** Prose is no suppression: one word stands for a rule where it is one, or looks like one and has a colon. */
function readLine(line: string): { readonly rule: string; readonly hasReason: boolean } | undefined {
  const form = FORM.exec(line);
  if (form) {
    const rule = form[2]!;
    const isMeant = ruleById(rule) !== undefined || (rule.includes("-") && form[3] !== undefined);
    return isMeant ? { rule, hasReason: (form[4] ?? "").length > 0 } : undefined;
  }
  const rule = FORGOTTEN_COLON.exec(line)?.[2];
  return rule !== undefined && ruleById(rule) ? { rule, hasReason: false } : undefined;
}

interface Line {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

function linesOf(text: string): readonly Line[] {
  let start = 0;
  return text.split(/(?<=\r\n|\n|\r(?!\n))/u).map((raw) => {
    const line = { start, end: start + raw.length, text: raw.replace(/[\r\n]+$/u, "") };
    start = line.end;
    return line;
  });
}

function coveredLines(lines: readonly Line[], from: number): readonly number[] {
  let line = from + 1;
  while (line < lines.length && /^\s*#/u.test(lines[line]!.text)) line += 1;
  const covered: number[] = [];
  for (; line < lines.length && lines[line]!.text.trim() !== ""; line += 1) {
    covered.push(line);
    if (!codeOf(lines[line]!.text).endsWith(",")) break;
  }
  return covered;
}

/** A line without its comment; a `#` inside a title starts none. */
const codeOf = (line: string): string => /^(?:[^"#]|"(?:[^"\\]|\\.)*"?)*/u.exec(line)![0].trimEnd();

/** Takes out what the comments of the file allow, and adds findings about comments that do not do their work. */
export function applySuppressions(file: ProgramFile, findings: readonly Finding[]): readonly Finding[] {
  const suppressions = suppressionsIn(file.tree.text);
  if (suppressions.length === 0) return findings;
  const lineStarts = linesOf(file.tree.text).map((line) => line.start);
  const used = new Set<Suppression>();
  const kept = findings.filter((finding) => {
    const line = lineAt(lineStarts, startOf(file, finding.place));
    const allowing = suppressions.filter(
      (it) => it.hasReason && it.rule === finding.rule && it.covers.includes(line),
    );
    for (const suppression of allowing) used.add(suppression);
    return allowing.length === 0;
  });
  const added = suppressions.flatMap((it): readonly Finding[] => {
    if (!it.hasReason) return [withoutReason(file, it)];
    return used.has(it) ? [] : [unused(file, it)];
  });
  return [...kept, ...added];
}

function startOf(file: ProgramFile, place: Place): number {
  const offset = place.declaration === "" ? 0 : (file.byKey.get(place.declaration)?.tree.offset ?? 0);
  return offset + place.span.start;
}

function lineAt(lineStarts: readonly number[], offset: number): number {
  const after = lineStarts.findIndex((start) => start > offset);
  return after < 0 ? lineStarts.length - 1 : after - 1;
}

const absolute = (file: ProgramFile, span: Span): Place => ({ file: file.id, declaration: "", span });

const about = (
  file: ProgramFile,
  id: string,
  span: Span,
  message: string,
  fixes: readonly Fix[],
): Finding => ({
  rule: id,
  severity: languageSeverity(id),
  place: absolute(file, span),
  ...textOf(message),
  related: [],
  fixes,
});

const withoutReason = (file: ProgramFile, { rule, span }: Suppression): Finding =>
  about(
    file,
    "suppression-without-reason",
    span,
    `This comment gives no reason, so it allows nothing.\nWhoever reads the recipe next could not tell whether the reason still holds.\nWrite it after a colon, such as \`# allow ${rule}: tried on a sample board\`.`,
    [],
  );

function unused(file: ProgramFile, { rule, ruleSpan, span, lineSpan }: Suppression): Finding {
  const takeOut: Fix = {
    title: "Take the comment out",
    kind: "safe",
    edits: [{ place: absolute(file, lineSpan), text: "" }],
  };
  if (ruleById(rule)) {
    const message = `\`${rule}\` finds nothing on the line below.\nA comment that allows nothing may hide a finding later on.\nTake it out.`;
    return about(file, "unused-suppression", span, message, [takeOut]);
  }
  const near = closest(rule, ruleIds());
  const message = `There is no rule \`${rule}\`, so this comment allows nothing.\n${near ? `Perhaps \`${near}\` is meant` : "The list of rules has their names"}; else take it out.`;
  const change: readonly Fix[] = near
    ? [
        {
          title: `Change to \`${near}\``,
          kind: "change",
          edits: [{ place: absolute(file, ruleSpan), text: near }],
        },
      ]
    : [];
  return about(file, "unused-suppression", span, message, [...change, takeOut]);
}
