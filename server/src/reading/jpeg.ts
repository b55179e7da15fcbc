/**
 * A JPEG without what tells of its making: no EXIF, no place, no name, no camera, no thumbnail, no comment, nothing behind
 * its end. What is needed to draw it stays, bit for bit.
 *
 * Markers and segments as in ITU-T T.81 (1992), annex B; EXIF orientation as in JEITA CP-3451 (Exif 2.2), tag 0x0112.
 */
import { asciiAt, concatenated, type Picture, type PictureFault, uint16 } from "./picture-bytes.ts";

/** Frame headers: SOF0 to SOF15 without DHT (C4), JPG (C8) and DAC (CC), which stand among them. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

const SOS = 0xda;
const EOI = 0xd9;
const APP1 = 0xe1;
const APP14 = 0xee;
/** Tables that decoding needs: DHT, DAC, DQT, DNL, DRI. */
const TABLES: ReadonlySet<number> = new Set([0xc4, 0xcc, 0xdb, 0xdc, 0xdd]);

export const isJpeg = (bytes: Uint8Array): boolean =>
  bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;

/** The picture as it may be handed on, or what is wrong with it. */
export function cleanJpeg(bytes: Uint8Array): Picture | PictureFault {
  const kept: Uint8Array[] = [];
  let size: { readonly width: number; readonly height: number } | undefined;
  let orientation = 1;
  let hasScan = false;
  for (let at = 2; ; ) {
    if (bytes[at] !== 0xff) return at < bytes.length ? "damaged" : "cut short";
    // Any number of FF may stand before a marker.
    while (bytes[at + 1] === 0xff) at += 1;
    const marker = bytes[at + 1];
    if (marker === undefined) return "cut short";
    if (marker === EOI) break;
    const length = uint16(bytes, at + 2);
    if (length === undefined) return "cut short";
    if (length < 2 || marker === 0 || (marker >= 0xd0 && marker <= 0xd8)) return "damaged";
    const end = at + 2 + length;
    if (end > bytes.length) return "cut short";
    const segment = bytes.subarray(at, end);
    if (isFrame(marker)) {
      if (size !== undefined || length < 8) return "damaged";
      size = { height: uint16(segment, 5)!, width: uint16(segment, 7)! };
    }
    if (marker === APP1) orientation = orientationOf(segment) ?? orientation;
    if (isFrame(marker) || TABLES.has(marker) || isAdobe(marker, segment)) kept.push(segment);
    at = end;
    if (marker === SOS) {
      if (size === undefined) return "damaged";
      const scanEnd = endOfScan(bytes, end);
      kept.push(segment, bytes.subarray(end, scanEnd));
      hasScan = true;
      at = scanEnd;
    }
  }
  if (size === undefined || !hasScan) return "damaged";
  const data = concatenated([
    START,
    ...(orientation === 1 ? [] : [orientationOnly(orientation)]),
    ...kept,
    END,
  ]);
  const isTurned = orientation >= 5;
  return {
    type: "image/jpeg",
    bytes: data,
    width: isTurned ? size.height : size.width,
    height: isTurned ? size.width : size.height,
  };
}

const START = Uint8Array.of(0xff, 0xd8);
const END = Uint8Array.of(0xff, EOI);

/** Which colours the numbers are: nothing else is in this segment of fixed length. */
const isAdobe = (marker: number, segment: Uint8Array): boolean =>
  marker === APP14 && segment.length === 16 && asciiAt(segment, 4, 5) === "Adobe";

/** Where the next marker stands that is neither a stuffed byte nor a restart. */
function endOfScan(bytes: Uint8Array, start: number): number {
  for (let at = start; ; at += 2) {
    at = bytes.indexOf(0xff, at);
    if (at < 0) return bytes.length;
    const next = bytes[at + 1];
    if (next === 0xff) at -= 1;
    else if (next !== 0 && !(next !== undefined && next >= 0xd0 && next <= 0xd7)) return at;
  }
}

/** How a camera was held, 1 to 8; undefined where the segment does not say. */
function orientationOf(segment: Uint8Array): number | undefined {
  if (asciiAt(segment, 4, 4) !== "Exif") return undefined;
  const tiff = segment.subarray(10);
  const order = asciiAt(tiff, 0, 2);
  if (order !== "II" && order !== "MM") return undefined;
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  const isLittle = order === "II";
  if (tiff.length < 8) return undefined;
  const directory = view.getUint32(4, isLittle);
  if (directory + 2 > tiff.length) return undefined;
  const count = view.getUint16(directory, isLittle);
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + i * 12;
    if (entry + 12 > tiff.length) return undefined;
    if (view.getUint16(entry, isLittle) !== 0x0112) continue;
    const value = view.getUint16(entry + 8, isLittle);
    return value >= 1 && value <= 8 ? value : undefined;
  }
  return undefined;
}

/** An EXIF segment that says how the picture is turned, and nothing else. */
const orientationOnly = (orientation: number): Uint8Array =>
  Uint8Array.of(
    ...[0xff, APP1, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0],
    // Big-endian TIFF, whose directory of one entry stands at 8: tag 0x0112, one short.
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0],
  );
