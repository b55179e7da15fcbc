/** What a file says, without layout and comments, a line for every fact: two of these differ where the meaning does. */
import type { FileTree } from "../../../grammar/src/tree.ts";
import { shownText } from "../escape/shown-text.ts";
import { writtenDeclarations } from "../views/changes/written.ts";

export const writtenText = (tree: FileTree): string =>
  writtenDeclarations(tree)
    .map(({ lines: [head = "", ...lines] }) =>
      [shownText(head), ...lines.map((line) => `  ${shownText(line)}`), ""].join("\n"),
    )
    .join("");
