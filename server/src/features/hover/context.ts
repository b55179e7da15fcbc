/**
 * What the parts of hover share: the text around the cursor, the scope, and small Markdown helpers.
 */
import type { NameUse } from "../../../../grammar/src/names.ts";
import type { Location } from "../../../../grammar/src/walk.ts";
import type { Checker } from "../../core/check.ts";
import type { Recipe } from "../../core/model/model.ts";
import type { ProgramDeclaration, Scope } from "../../core/model/program.ts";
import type { FileId, Place } from "../../core/place.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import {
  markdownCode as code,
  markdownDocs as docText,
  markdownText as plain,
} from "../../escape/markdown.ts";

export { code, docText, plain };

export interface HoverContext {
  readonly checker: Checker;
  readonly file: FileId;
  readonly scope: Scope;
  readonly declaration: ProgramDeclaration;
  readonly location: Location;
  /** The name under the cursor, with the part it plays. */
  readonly use?: NameUse;
}

/** The recipe in which the cursor stands. */
export function recipeAround(ctx: HoverContext): Recipe | undefined {
  const { model } = ctx.declaration.lowered;
  return model?.kind === "recipe" ? model : undefined;
}

/** Every job of the open files; hovers show what a line comes to in each. */
export function allJobs(checker: Checker): readonly JobResult[] {
  return [...checker.program.files.keys()].flatMap((file) => checker.jobs(file));
}

/** Whether a place is a statement of the declaration at the cursor. */
export const isHere = (ctx: HoverContext, place: Place, span: { readonly start: number }): boolean =>
  place.file === ctx.file &&
  place.declaration === ctx.declaration.tree.key &&
  place.span.start === span.start;

/** The name as code in bold, its title, and what it is. */
export const heading = (name: string, title: string | undefined, what: string): string =>
  `**${code(name)}**${title ? ` “${plain(title)}”` : ""}, ${what}`;

/** Paragraphs, the empty ones left out. */
export const paragraphs = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part): part is string => part !== undefined && part !== "").join("\n\n");

export const bullets = (items: readonly (string | undefined)[]): string =>
  items.flatMap((item) => (item ? [`- ${item}`] : [])).join("\n");

/** A bullet with bullets below it. */
export const nested = (title: string, items: readonly (string | undefined)[]): string =>
  [title, ...items.flatMap((item) => (item ? [`  - ${item}`] : []))].join("\n");

/** A table with a heading line; cells are Markdown. */
export function table(columns: readonly string[], rows: readonly (readonly string[])[]): string {
  if (rows.length === 0) return "";
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replaceAll(/(?<!\\)\|/gu, "\\|")).join(" | ")} |`;
  return [line(columns), line(columns.map(() => "---")), ...rows.map(line)].join("\n");
}

/** The first few of a list, and how many more there are. */
export function firstFew<T>(items: readonly T[], say: (item: T) => string, most = 6): readonly string[] {
  const shown = items.slice(0, most).map(say);
  return items.length > most ? [...shown, `… and ${items.length - most} more`] : shown;
}
