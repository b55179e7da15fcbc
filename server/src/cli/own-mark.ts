/**
 * The last line of a file that a command has made: it says so, and holds a sum of all lines above it, so that a file that
 * somebody has written in since is told from one that nobody has.
 */
import { createHash } from "node:crypto";
import type { SheetFormat } from "../reports/sheet-report.ts";

/** Comments, where the form has any that no reader shows. */
const LINES: Readonly<Record<SheetFormat, (mark: string) => string>> = {
  text: (mark) => `\n(${mark})\n`,
  markdown: (mark) => `\n[//]: # (${mark})\n`,
  html: (mark) => `<!-- ${mark} -->\n`,
};

const MARK = /Made by finishwright, sum ([0-9a-f]{32})/u;

const sumOf = (text: string): string =>
  createHash("sha256").update(text.trimEnd()).digest("hex").slice(0, 32);

export const withOwnMark = (text: string, format: SheetFormat): string =>
  text + LINES[format](`Made by finishwright, sum ${sumOf(text)}`);

/** The same for a JSON text of one object, with the mark as its last field. */
export function withOwnMarkInJson(text: string): string {
  const open = `${text.trimEnd().replace(/\}$/u, "").trimEnd()},`;
  const about = JSON.stringify(`Made by finishwright, sum ${sumOf(open)}`);
  return `${open}\n  "_finishwright": { "about": ${about} } }\n`;
}

/** `own`: made by a command and not touched since; `changed`: made by one and touched since; else `other`. */
export function originOf(text: string): "own" | "changed" | "other" {
  const lines = text.trimEnd();
  const start = lines.lastIndexOf("\n") + 1;
  const sum = MARK.exec(lines.slice(start))?.[1];
  if (sum === undefined) return MARK.test(text) ? "changed" : "other";
  return sum === sumOf(text.slice(0, start)) ? "own" : "changed";
}
