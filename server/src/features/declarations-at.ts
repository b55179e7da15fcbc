/** The declarations of a file that a selection or a caret is in. */
import { indexAt } from "../../../grammar/src/binary-search.ts";
import type { Span } from "../../../grammar/src/tree.ts";
import type { ProgramDeclaration } from "../core/model/program.ts";

/**
 * In their order; between two that touch, a caret is at the end of the first and at the beginning of the second. Found by
 * halving, as it is asked for every job of a file.
 */
export function declarationsAt(
  declarations: readonly ProgramDeclaration[],
  { start, end }: Span,
): readonly ProgramDeclaration[] {
  const startOf = ({ tree }: ProgramDeclaration): number => tree.offset;
  // The one before may end where the span begins.
  const from = Math.max(0, indexAt(declarations, start, startOf) - 1);
  return declarations
    .slice(from, indexAt(declarations, end, startOf) + 1)
    .filter(({ tree }) => start <= tree.offset + tree.length && end >= tree.offset);
}
