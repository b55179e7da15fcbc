/** The outline of a file. */
import type { Program } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { DocumentSymbolInfo } from "./types.ts";

export function symbolsOf(_program: Program, _file: FileId): readonly DocumentSymbolInfo[] {
  return [];
}
