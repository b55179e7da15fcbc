/** Asks an analysis everything that there is to ask about a file, and says of every question how it went. */

import type { Span } from "../../grammar/src/tree.ts";
import type { Analysis } from "../../server/src/features/types.ts";
import { INLAY_HINT_KINDS } from "../../server/src/features/types.ts";
import type { FileSpan } from "../../server/src/views/places/file-finding.ts";
import { crash, type Flaw } from "./flaws.ts";

export interface Answer {
  readonly question: string;
  readonly answer: unknown;
}

export interface Asked {
  readonly answers: readonly Answer[];
  readonly flaws: readonly Flaw[];
}

const LEVELS = ["error", "warning", "information", "hint"] as const;

/** Questions about the whole file, then those about every offset. */
export function askEverything(analysis: Analysis, file: string, offsets: readonly number[]): Asked {
  const text = analysis.text(file) ?? "";
  const whole: Span = { start: 0, end: text.length };
  const questions: [string, () => unknown][] = [
    ["findings", () => analysis.findings(file)],
    ["symbols", () => analysis.symbols(file)],
    ["inlayHints", () => analysis.inlayHints(file, whole, INLAY_HINT_KINDS)],
    ["jobLenses", () => analysis.jobLenses(file, LEVELS)],
    ["formatting", () => analysis.formatting(file)],
    ["totals", () => analysis.totals(file)],
    ["jobs", () => analysis.jobs(file).length],
    ["sheets", () => analysis.sheets(file)],
    ["usedBy", () => analysis.usedBy(file)],
    ["semanticTokens", () => analysis.semanticTokens(file, "all")],
    ["foldings", () => analysis.foldings(file)],
    ["useLinks", () => analysis.useLinks(file)],
    ["workspaceSymbols", () => analysis.workspaceSymbols(text.slice(0, 3))],
    ["editsForMoves", () => analysis.editsForMoves((each) => `moved/${each}`)],
    ...offsets.flatMap((offset): [string, () => unknown][] => [
      [`hover ${offset}`, () => analysis.hover(file, offset)],
      [`completions ${offset}`, () => analysis.completions(file, offset)],
      [`selections ${offset}`, () => analysis.selections(file, offset)],
      [`signatures ${offset}`, () => analysis.signatures(file, offset)],
      [`definition ${offset}`, () => analysis.definition(file, offset)],
      [`references ${offset}`, () => analysis.references(file, offset, true)],
      [`highlights ${offset}`, () => analysis.highlights(file, offset)],
      [`renameTarget ${offset}`, () => analysis.renameTarget(file, offset)],
      [`rename ${offset}`, () => analysis.rename(file, offset, "other_name")],
      [`callItems ${offset}`, () => analysis.callItems(file, offset)],
      [`incomingCalls ${offset}`, () => analysis.incomingCalls(file, offset)],
      [`outgoingCalls ${offset}`, () => analysis.outgoingCalls(file, offset)],
    ]),
  ];
  const flaws: Flaw[] = [];
  const answers = questions.map(([question, ask]): Answer => {
    try {
      return { question, answer: ask() };
    } catch (error) {
      flaws.push(crash(question.replace(/ \d+$/, ""), error));
      return { question, answer: undefined };
    }
  });
  return { answers, flaws: [...flaws, ...internalErrors(answers), ...outOfBounds(analysis, file, answers)] };
}

/** A rule that failed costs only its own findings, and says so. Here it has to say it louder. */
function internalErrors(answers: readonly Answer[]): readonly Flaw[] {
  const findings = answers.find(({ question }) => question === "findings")?.answer;
  if (!Array.isArray(findings)) return [];
  return findings
    .filter(({ rule }) => rule === "internal-error")
    .map(({ message }): Flaw => ({ kind: "crash", detail: `internal-error: ${message}` }));
}

/** Every place in an answer must be one of its file's text. */
function outOfBounds(analysis: Analysis, file: string, answers: readonly Answer[]): readonly Flaw[] {
  const flaws = new Map<string, Flaw>();
  for (const { question, answer } of answers) {
    eachSpan(answer, file, ({ file: of, span }) => {
      const length = analysis.text(of)?.length;
      if (length !== undefined && 0 <= span.start && span.start <= span.end && span.end <= length) return;
      const what = question.replace(/ \d+$/, "");
      flaws.set(what, { kind: "crash", detail: `${what}: a place outside of the text of ${of}` });
    });
  }
  return [...flaws.values()];
}

/** Spans by the file that stands beside them, or the one that was asked about. Labels have spans of their own. */
function eachSpan(value: unknown, file: string, visit: (place: FileSpan) => void, key = ""): void {
  if (Array.isArray(value)) {
    for (const each of value) eachSpan(each, file, visit, key);
  } else if (typeof value === "object" && value !== null && key !== "parameters") {
    const of = "file" in value && typeof value.file === "string" ? value.file : file;
    for (const [name, inner] of Object.entries(value)) {
      const isSpan = typeof inner === "object" && inner !== null && "start" in inner && "end" in inner;
      if (isSpan && /span/i.test(name) && typeof inner.start === "number")
        visit({ file: of, span: inner as Span });
      else eachSpan(inner, of, visit, name);
    }
  }
}
