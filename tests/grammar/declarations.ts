import type { DeclarationTree, FileTree } from "../../grammar/src/tree.ts";

/** The declarations of a file. */
export function declarations(tree: FileTree): DeclarationTree[] {
  return tree.pieces.filter((piece) => piece.kind === "declaration");
}
