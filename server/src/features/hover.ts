/** Hover. */
import type { Checker } from "../core/check.ts";
import type { FileId } from "../core/place.ts";
import type { HoverInfo } from "./types.ts";

export function hoverAt(_checker: Checker, _file: FileId, _offset: number): HoverInfo | undefined {
  return undefined;
}
