/**
 * Which pictures go into a sheet: PNG and JPEG by their bytes, whatever their name says, whole, of a size that a browser
 * draws without effort, and without metadata. Everything else is refused in words.
 */
import { t } from "../../../grammar/src/translate.ts";
import { cleanJpeg, isJpeg } from "./jpeg.ts";
import type { Picture } from "./picture-bytes.ts";
import { cleanPng, isPng } from "./png.ts";

/** A picture, or why there is none, as the end of a sentence that begins with its name. */
export type ReadPicture = Picture | { readonly reason: string };

/** A photograph of a telephone has 12 to 50 million points; one that claims more is made to fill a memory. */
const MOST_POINTS = 64_000_000;

/** In one file. More make a sheet that nobody can send. */
export const MOST_PICTURES = 24;
const MOST_MEGABYTES = 24;
export const MOST_PICTURE_BYTES_IN_ALL = MOST_MEGABYTES * 1024 * 1024;

export const tooMany = (): string => t`is left out: a file of sheets takes ${MOST_PICTURES} pictures`;
export const tooMuch = (): string =>
  t`is left out: a file of sheets takes ${MOST_MEGABYTES} MB of pictures. Make them smaller`;

export function readPicture(bytes: Uint8Array): ReadPicture {
  if (!isPng(bytes) && !isJpeg(bytes)) {
    return { reason: t`is neither a PNG nor a JPEG by its first bytes. Save it as one of them` };
  }
  const picture = isPng(bytes) ? cleanPng(bytes) : cleanJpeg(bytes);
  if (picture === "cut short") return { reason: t`is cut short. Save it again` };
  if (picture === "damaged") return { reason: t`is damaged. Save it again` };
  const { width, height } = picture;
  if (width === 0 || height === 0) return { reason: t`is damaged. Save it again` };
  if (width * height > MOST_POINTS) {
    return { reason: t`has more than ${MOST_POINTS / 1_000_000} million points. Make it smaller` };
  }
  return picture;
}
