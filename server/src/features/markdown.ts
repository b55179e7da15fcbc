/** The small Markdown that hovers, hints and signatures are put together from. */
import { t } from "../../../grammar/src/translate.ts";
import { markdownCode as code, markdownDocs as docText, markdownText as plain } from "../escape/markdown.ts";

export { code, docText, plain };

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
  return items.length > most ? [...shown, t`… and ${items.length - most} more`] : shown;
}
