/** The pictures that texts name, read within what a file of sheets takes in all. */
import {
  MOST_PICTURE_BYTES_IN_ALL,
  MOST_PICTURES,
  type ReadPicture,
  readPicture,
  tooMany,
  tooMuch,
} from "./picture.ts";

/** A picture as a text names it. */
export interface NamedPicture {
  /** The file with the text. */
  readonly file: string;
  /** From there. */
  readonly target: string;
}

type ReadBytes = { readonly bytes: Uint8Array } | { readonly reason: string };

/** In the order in which they are named; what is too much is left out with the reason, and not read. */
export async function readPictures(
  named: readonly NamedPicture[],
  read: (picture: NamedPicture) => Promise<ReadBytes>,
): Promise<(file: string) => (target: string) => ReadPicture | undefined> {
  const found = new Map<string, ReadPicture>();
  let [count, size] = [0, 0];
  const next = async (picture: NamedPicture): Promise<ReadPicture> => {
    if (count >= MOST_PICTURES) return { reason: tooMany() };
    const bytes = await read(picture);
    const result = "bytes" in bytes ? readPicture(bytes.bytes) : bytes;
    if ("reason" in result) return result;
    if (size + result.bytes.length > MOST_PICTURE_BYTES_IN_ALL) return { reason: tooMuch() };
    count += 1;
    size += result.bytes.length;
    return result;
  };
  for (const picture of named) {
    const key = keyOf(picture);
    if (!found.has(key)) found.set(key, await next(picture));
  }
  return (file) => (target) => found.get(keyOf({ file, target }));
}

const keyOf = ({ file, target }: NamedPicture): string => `${file}\0${target}`;

/** Blanks and other signs of a name may be written as a link has them: `before%20work.jpg`. */
export function pathOfPicture(target: string): string {
  try {
    return decodeURIComponent(target).replaceAll("\\", "/");
  } catch {
    return target;
  }
}
