/**
 * Places: where in which text something stands, in terms that survive edits elsewhere.
 *
 * A place names its file, the key of its declaration and a span inside that declaration, so that results computed
 * for one declaration stay valid while text above it grows or shrinks. Absolute offsets are made at the edge only.
 */
import type { Span } from "../../../grammar/src/tree.ts";

/** Identifies a file; the core only ever compares it. Adapters choose it (a path or a URI). */
export type FileId = string;

export interface Place {
  readonly file: FileId;
  /** `DeclarationTree.key`; the empty string for a stray line at the top level (`span` is then absolute). */
  readonly declaration: string;
  readonly span: Span;
}

export const placeKey = (place: Place): string =>
  `${place.file}\u0000${place.declaration}\u0000${place.span.start}\u0000${place.span.end}`;

export const samePlace = (a: Place, b: Place): boolean =>
  a === b ||
  (a.span.start === b.span.start &&
    a.span.end === b.span.end &&
    a.declaration === b.declaration &&
    a.file === b.file);

export const sameDeclaration = (a: Place, b: Place): boolean =>
  a.declaration === b.declaration && a.file === b.file;

/** Whether two places of one declaration have a character or an edge in common. */
export const placesOverlap = (a: Place, b: Place): boolean =>
  sameDeclaration(a, b) && a.span.start <= b.span.end && b.span.start <= a.span.end;
