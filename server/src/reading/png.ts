/**
 * A PNG without its texts, its time, its EXIF, its profile and what stands behind its end. Only the chunks that are needed
 * to draw a still picture stay, bit for bit, each with its checksum checked.
 *
 * Chunks and their checksum as in ISO/IEC 15948:2004 (the PNG specification), clauses 5 and 11 and annex D.
 */
import { asciiAt, concatenated, type Picture, type PictureFault, uint32 } from "./picture-bytes.ts";

const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);

/** What a decoder draws with; texts, dates, profiles with names, and further pictures of an animation are left out. */
const DRAWN: ReadonlySet<string> = new Set([
  "IHDR",
  "PLTE",
  "IDAT",
  "IEND",
  "tRNS",
  "gAMA",
  "cHRM",
  "sRGB",
  "sBIT",
  "pHYs",
]);

export const isPng = (bytes: Uint8Array): boolean => SIGNATURE.every((byte, i) => bytes[i] === byte);

/** The picture as it may be handed on, or what is wrong with it. */
export function cleanPng(bytes: Uint8Array): Picture | PictureFault {
  const kept: Uint8Array[] = [SIGNATURE];
  let size: { readonly width: number; readonly height: number } | undefined;
  let hasData = false;
  for (let at = SIGNATURE.length; ; ) {
    const length = uint32(bytes, at);
    if (length === undefined || at + 12 + length > bytes.length) return "cut short";
    const type = asciiAt(bytes, at + 4, 4);
    const chunk = bytes.subarray(at, at + 12 + length);
    if (!/^[A-Za-z]{4}$/u.test(type) || uint32(chunk, 8 + length) !== crc32(chunk.subarray(4, 8 + length))) {
      return "damaged";
    }
    if ((size === undefined) !== (type === "IHDR")) return "damaged";
    if (type === "IHDR") {
      if (length !== 13) return "damaged";
      size = { width: uint32(chunk, 8)!, height: uint32(chunk, 12)! };
    }
    hasData ||= type === "IDAT";
    if (DRAWN.has(type)) kept.push(chunk);
    else if (/^[A-Z]/u.test(type)) return "damaged";
    at += chunk.length;
    if (type === "IEND") break;
  }
  if (size === undefined || !hasData) return "damaged";
  return { type: "image/png", bytes: concatenated(kept), ...size };
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let value = n;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = CRC_TABLE[(crc ^ byte) & 0xff]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
