/** Changes of texts as unified diffs, as `git apply` and `patch` read them. */
import { createTwoFilesPatch } from "diff";
import { shownLines, shownText } from "../escape/shown-text.ts";
import type { Colours } from "../reports/colours.ts";

/** The change of one file; on a terminal made inert and coloured, else byte by byte. */
export function changeText(
  label: string,
  before: string,
  after: string,
  { isTTY, colours }: { readonly isTTY: boolean; readonly colours: Colours },
): string {
  const name = shownText(label.replaceAll("\\", "/"));
  const patch = createTwoFilesPatch(`a/${name}`, `b/${name}`, before, after, undefined, undefined, {
    context: 3,
    headerOptions: { includeIndex: false, includeUnderline: false, includeFileHeaders: true },
  });
  if (!isTTY) return patch;
  return shownLines(patch)
    .split("\n")
    .map((line) => painted(line, colours))
    .join("\n");
}

function painted(line: string, colours: Colours): string {
  if (line.startsWith("+++") || line.startsWith("---")) return colours.bold(line);
  if (line.startsWith("@@")) return colours.cyan(line);
  if (line.startsWith("+")) return colours.green(line);
  return line.startsWith("-") ? colours.red(line) : line;
}
