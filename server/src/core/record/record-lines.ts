/**
 * Writes lines of the record of a job: what a line says of a step or coat, and where in the job it stands.
 */
import type { DeclarationTree } from "../../../../grammar/src/tree.ts";
import { type Action, OTHER_WORK } from "../surface/actions.ts";

/**
 * What a line of the record says of an action: `coat 2 of hall_clear`, `strip with stripper`, `"lift the veneer"`. Undefined
 * for what is no work, and for a coat of which nobody knows the material.
 */
export function recordWords(action: Action): string | undefined {
  if (action.op === "layer") {
    const { material } = action.use;
    return material && `coat ${action.coat} of ${material.name}`;
  }
  if (action.op !== "step") return undefined;
  const { verb, what, use } = action;
  if (verb === OTHER_WORK) return what === undefined ? undefined : inQuotes(what);
  return use?.material ? `${verb} with ${use.material.name}` : verb;
}

/** A text as the notation quotes it. */
export const inQuotes = (text: string): string => `"${text.replaceAll(/["\\]/gu, "\\$&")}"`;

/** `, piece 2`, `, pieces 1 and 3`; nothing where all of them are meant. `pieces` from 1. */
export function piecesWords(pieces: readonly number[], all: number): string {
  if (pieces.length >= all) return "";
  return `, ${pieces.length === 1 ? "piece" : "pieces"} ${pieces.join(" and ")}`;
}

/** Where lines of the record go into a text: each is written between `before` and `after`, and `end` behind the last. */
export interface RecordPlace {
  /** In the file. */
  readonly offset: number;
  readonly before: string;
  readonly after: string;
  readonly end: string;
}

/**
 * Behind the last line of the record, else at the end of the job, laid out as the lines of the job are. `newline`: that of
 * the text. Undefined where the job has no end that can be trusted.
 */
export function placeOfRecords(tree: DeclarationTree, newline: string): RecordPlace | undefined {
  const { body, offset } = tree;
  const { text, syntax } = body;
  if (syntax.kind !== "job" || !body.bracesMatch) return undefined;
  const lineOf = (at: number): string => text.slice(text.lastIndexOf("\n", at - 1) + 1);
  const last = syntax.fields.findLast(({ kind }) => kind === "done");
  if (last) {
    const rest = text.slice(last.span.end).search(/[\r\n}]/u);
    const [start = "  done "] = /^[ \t]*done[ \t]+/u.exec(lineOf(last.span.start)) ?? [];
    if (rest >= 0)
      return { offset: offset + last.span.end + rest, before: newline + start, after: "", end: "" };
  }
  const brace = text.lastIndexOf("}");
  if (brace < 0) return undefined;
  const line = text.lastIndexOf("\n", brace - 1) + 1;
  const [first] = syntax.fields;
  const [, indent = "  ", values = " "] =
    (first && /^([ \t]*)(\S+[ \t]+)\S/u.exec(lineOf(first.span.start))) ?? [];
  const start = `${indent}${"done".padEnd(values.length - 1)} `;
  if (text.slice(line, brace).trim() === "")
    return { offset: offset + line, before: start, after: newline, end: "" };
  return { offset: offset + brace, before: `${newline}  done `, after: "", end: newline };
}
