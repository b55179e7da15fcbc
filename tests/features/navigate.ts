/**
 * A text with the cursor in it, `$0`, and ways that lead from there. The text itself is `test.finish`; other files may be
 * given by name. Places are drawn as `file line: text of the line`, with the name in brackets.
 */
import type { Analysis, CallInfo } from "../../server/src/features/types.ts";
import type { FileEdit, FileSpan } from "../../server/src/views/places/file-finding.ts";
import { analyse, lineOf } from "../harness/check-text.ts";

export type Files = Readonly<Record<string, string>>;

export interface Cursor {
  readonly analysis: Analysis;
  readonly files: Files;
  readonly offset: number;
}

export const HERE = "test.finish";

export function cursorIn(marked: string, others: Files = {}): Cursor {
  const offset = marked.indexOf("$0");
  if (offset < 0) throw new Error("the text has no `$0`");
  const files = { ...others, [HERE]: marked.slice(0, offset) + marked.slice(offset + 2) };
  return { analysis: analyse(files), files, offset };
}

function draw(files: Files, { file, span }: FileSpan): string {
  const text = files[file] ?? "";
  const start = text.lastIndexOf("\n", span.start - 1) + 1;
  const end = text.indexOf("\n", span.end);
  const line = [
    text.slice(start, span.start),
    `[${text.slice(span.start, span.end)}]`,
    text.slice(span.end, end < 0 ? text.length : end),
  ];
  return `${file} ${lineOf(text, span.start)}: ${line.join("").trim()}`;
}

export function definition(marked: string, others?: Files): readonly string[] {
  const { analysis, files, offset } = cursorIn(marked, others);
  const targets = analysis.definition(HERE, offset)?.targets ?? [];
  return targets.map(({ file, nameSpan }) => draw(files, { file, span: nameSpan }));
}

/** The text that is underlined at the cursor and the whole of what it leads to. */
export function definitionSpans(marked: string, others?: Files): readonly string[] {
  const { analysis, files, offset } = cursorIn(marked, others);
  const found = analysis.definition(HERE, offset);
  if (!found) return [];
  const cut = ({ file, span }: FileSpan): string => (files[file] ?? "").slice(span.start, span.end);
  return [cut({ file: HERE, span: found.origin }), ...found.targets.map(cut)];
}

export function references(marked: string, others?: Files): readonly string[] {
  const { analysis, files, offset } = cursorIn(marked, others);
  return analysis.references(HERE, offset, true).map((place) => draw(files, place));
}

export function highlights(marked: string): readonly string[] {
  const { analysis, files, offset } = cursorIn(marked);
  return analysis
    .highlights(HERE, offset)
    .map(({ span, kind }) => `${kind} ${draw(files, { file: HERE, span }).replace(`${HERE} `, "")}`);
}

/** The texts after edits that were made for them. */
export function withEdits(files: Files, edits: readonly FileEdit[]): Files {
  const result: Record<string, string> = { ...files };
  for (const { file, span, text } of edits.toSorted((a, b) => b.span.start - a.span.start)) {
    const before = result[file] ?? "";
    result[file] = before.slice(0, span.start) + text + before.slice(span.end);
  }
  return result;
}

/** The lines that change, as they read afterwards; or why nothing does. */
export function renamed(marked: string, newName: string, others?: Files): readonly string[] | string {
  const { analysis, files, offset } = cursorIn(marked, others);
  const renaming = analysis.rename(HERE, offset, newName);
  if ("refusal" in renaming) return renaming.refusal;
  const after = withEdits(files, renaming.edits);
  return Object.keys(files)
    .toSorted()
    .flatMap((file) => {
      const before = (files[file] ?? "").split("\n");
      return (after[file] ?? "")
        .split("\n")
        .flatMap((line, index) => (line === before[index] ? [] : [`${file} ${index + 1}: ${line.trim()}`]));
    });
}

export function renameTarget(marked: string, others?: Files): string {
  const { analysis, files, offset } = cursorIn(marked, others);
  const target = analysis.renameTarget(HERE, offset);
  return "refusal" in target ? target.refusal : draw(files, { file: HERE, span: target.span });
}

/** `recipe hard_clear (test.finish): [hard_clear](…)` for every other end of the calls. */
export function calls(direction: "incoming" | "outgoing", marked: string, others?: Files): readonly string[] {
  const { analysis, files, offset } = cursorIn(marked, others);
  const [item] = analysis.callItems(HERE, offset);
  if (!item) return [];
  const found: readonly CallInfo[] =
    direction === "incoming"
      ? analysis.incomingCalls(item.file, item.nameSpan.start)
      : analysis.outgoingCalls(item.file, item.nameSpan.start);
  return found.map(({ item: { kind, name, file }, spans }) => {
    const caller = direction === "incoming" ? file : item.file;
    return `${kind} ${name} (${file}) by ${spans.map((span) => draw(files, { file: caller, span })).join("; ")}`;
  });
}
