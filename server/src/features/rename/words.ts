/** How a refusal speaks of things and places. */
import { t, translated } from "../../../../grammar/src/translate.ts";
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
  return file === reader.file ? t`line ${line}` : t`line ${line} of ${fileWords(reader, file)}`;
}

export const fileWords = (reader: Reader, file: FileId): string => relativePath(reader.file, file) ?? file;

/** `the material`, `the built-in material`; `nothing`, or `several things` where there are others than one. */
export function thingWords(referents: readonly Referent[]): string {
  const [first, ...others] = referents;
  if (!first) return t`nothing`;
  if (others.length > 0) return t`one of several ${translated(first.kind)}s`;
  return first.place ? t`the ${translated(first.kind)} \`${first.name}\`` : t`the built-in \`${first.name}\``;
}
