/** Texts of several lines, such as those of findings, as the lines that every renderer of sheets sets in its own way. */
import type { Inline } from "../escape/prose.ts";

/** At least one; spans are cut at the ends of lines. */
export function inlineLines(text: Inline): readonly Inline[] {
  const lines: Inline[] = [[]];
  for (const span of text) {
    if (span.kind === "picture") {
      lines.push([...lines.pop()!, span]);
      continue;
    }
    span.text.split("\n").forEach((part, index) => {
      if (index > 0) lines.push([]);
      if (part !== "") lines.push([...lines.pop()!, { ...span, text: part }]);
    });
  }
  return lines;
}
