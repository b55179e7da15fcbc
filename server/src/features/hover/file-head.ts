/** What stands at the head of a file: the comment before anything else, apart from what follows by a blank line. */

/** Longer heads are cut short. */
const MOST_LINES = 12;

/** Its lines without their signs; empty where there is none, or where it belongs to what stands below it. */
export function fileHead(text: string): readonly string[] {
  const lines = text.split(/\r?\n/u, MOST_LINES + 2);
  const end = lines.findIndex((line) => !/^[ \t]*#(?!#)/u.test(line));
  const isApart = end < 0 || (lines[end] ?? "").trim() === "";
  if (!isApart) return [];
  return (end < 0 ? lines : lines.slice(0, end))
    .map((line) => line.trim().slice(1).trim())
    .filter((line) => !/^allow\s/u.test(line))
    .slice(0, MOST_LINES);
}
