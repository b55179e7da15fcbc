/** A line as people say it: what the formatter makes of it, and what the tree says of both. */
import { applyChanges, formatFile } from "../../grammar/src/format.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { declarations } from "../grammar/declarations.ts";
import { BLOCKS } from "./blocks.ts";

export const formatted = (text: string): string => applyChanges(text, formatFile(parseFile(text)).changes);

const SILENT: ReadonlySet<string> = new Set(["span", "headSpan", "isShort", "kept"]);

const inOrder = (value: unknown): unknown =>
  value !== null && typeof value === "object" && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1)))
    : value;

/** All that a text says, wherever it stands. */
export const meaningOf = (text: string): string =>
  JSON.stringify(
    declarations(parseFile(text)).map(({ key, body }) => ({ key, syntax: body.syntax })),
    (name, value: unknown) => (SILENT.has(name) ? undefined : inOrder(value)),
  );

/** The lines of a text that its line became, with the blanks of columns made one. */
export function plainLines(block: string, line: string): string {
  const one = (text: string): readonly string[] =>
    formatted(text)
      .split("\n")
      .map((each) => each.trim().replace(/ +/gu, " "));
  const around = one(BLOCKS[block]!(""));
  const rest = [...around];
  return one(BLOCKS[block]!(line))
    .filter((each) => {
      const at = rest.indexOf(each);
      if (at >= 0) rest.splice(at, 1);
      return at < 0;
    })
    .join("\n");
}

/** All that a finding says, in one line. */
export const textOfFinding = ({ message }: Pick<FileFinding, "message">): string =>
  message.replace(/\s+/gu, " ");

/** A text after a fix of one of its findings. */
export const afterFix = (text: string, { edits }: FileFinding["fixes"][number]): string =>
  edits
    .toSorted((a, b) => b.span.start - a.span.start)
    .reduce((after, { span, text: put }) => after.slice(0, span.start) + put + after.slice(span.end), text);
