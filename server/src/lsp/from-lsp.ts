/**
 * From the protocol's positions (line and character, counted in UTF-16 units from 0) to offsets.
 *
 * Positions beyond the end of a line or of the text are brought to that end, as the protocol asks.
 */
import type { Position, Range } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Span } from "../../../grammar/src/tree.ts";

export const offsetOf = (document: TextDocument, position: Position): number => document.offsetAt(position);

export const spanOf = (document: TextDocument, range: Range): Span => ({
  start: document.offsetAt(range.start),
  end: document.offsetAt(range.end),
});

/** Whether two spans share a place; spans that only touch do, since a caret stands between characters. */
export const touches = (a: Span, b: Span): boolean => a.start <= b.end && b.start <= a.end;
