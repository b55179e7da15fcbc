/** How a refusal speaks of things and places. */
import type { FileId } from "../../core/place.ts";
import type { Referent } from "../../core/resolution/reference.ts";
import { relativePath } from "../relative-path.ts";

/** Where somebody reads the message, and the text of any file. */
export interface Reader {
  readonly file: FileId;
  text(file: FileId): string | undefined;
}

/** `line 12`, or `line 12 of stock.finish`. */
export function lineWords(reader: Reader, file: FileId, offset: number): string {
  const line = (reader.text(file) ?? "").slice(0, offset).split(/\r\n|\r|\n/u).length;
  return `line ${line}${file === reader.file ? "" : ` of ${fileWords(reader, file)}`}`;
}

export const fileWords = (reader: Reader, file: FileId): string => relativePath(reader.file, file) ?? file;

/** `the material`, `the built-in material`; `nothing`, or `several things` where there are others than one. */
export function thingWords(referents: readonly Referent[]): string {
  const [first, ...others] = referents;
  if (!first) return "nothing";
  if (others.length > 0) return `one of several ${first.kind}s`;
  return first.place ? `the ${first.kind} \`${first.name}\`` : `the built-in \`${first.name}\``;
}
