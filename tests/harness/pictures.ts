/** Pictures made here, with everything in them that a camera or a program leaves behind. */
import { crc32, deflateSync } from "node:zlib";

/** A browser's JPEG of 3 x 2 points, its tables and its scan alone. */
const PLAIN_JPEG = Buffer.from(
  "/9j/2wBDABALDA4MChAODQ4SERATGCgaGBYWGDEjJR0oOjM9PDkzODdASFxOQERXRTc4UG1RV19iZ2hnPk1xeXBkeFxlZ2P/2wBDARESEhgVGC8aGi9jQjhCY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2P/wAARCAACAAMDASIAAhEBAxEB/8QAFQABAQAAAAAAAAAAAAAAAAAAAAT/xAAXEAEBAQEAAAAAAAAAAAAAAAABABEx/8QAFAEBAAAAAAAAAAAAAAAAAAAABf/EABYRAAMAAAAAAAAAAAAAAAAAAAABMf/aAAwDAQACEQMRAD8AjAOGSSNdFVD/2Q==",
  "base64",
);

export const plainJpeg = (): Buffer => Buffer.from(PLAIN_JPEG);

const segment = (marker: number, content: Uint8Array): Buffer =>
  Buffer.concat([Buffer.of(0xff, marker, (content.length + 2) >> 8, (content.length + 2) & 0xff), content]);

/** EXIF with how the camera was held (0x0112) behind its maker (0x010f), in either order of bytes. */
export function exif(orientation: number, isLittle: boolean): Buffer {
  const tiff = Buffer.alloc(8 + 2 + 2 * 12 + 4 + 16);
  const u16 = (value: number, at: number) =>
    isLittle ? tiff.writeUInt16LE(value, at) : tiff.writeUInt16BE(value, at);
  const u32 = (value: number, at: number) =>
    isLittle ? tiff.writeUInt32LE(value, at) : tiff.writeUInt32BE(value, at);
  tiff.write(isLittle ? "II" : "MM");
  u16(42, 2);
  u32(8, 4);
  u16(2, 8);
  for (const [at, tag, type, count] of [
    [10, 0x010f, 2, 16],
    [22, 0x0112, 3, 1],
  ] as const) {
    u16(tag, at);
    u16(type, at + 2);
    u32(count, at + 4);
  }
  u32(38, 18);
  u16(orientation, 30);
  tiff.write("secret-camera", 38);
  return segment(0xe1, Buffer.concat([Buffer.from("Exif\0\0"), tiff]));
}

/** A JPEG as a telephone writes it: EXIF, XMP, a profile, a comment, and a second picture behind its end. */
export const tellingJpeg = (orientation = 1, isLittle = true): Buffer =>
  Buffer.concat([
    PLAIN_JPEG.subarray(0, 2),
    segment(0xe0, Buffer.from("JFIF\0\x01\x01\0\0\x01\0\x01\0\0", "latin1")),
    exif(orientation, isLittle),
    segment(0xe1, Buffer.from("http://ns.adobe.com/xap/1.0/\0<x>secret-xmp</x>")),
    segment(0xe2, Buffer.from("ICC_PROFILE\0\x01\x01secret-profile")),
    segment(0xed, Buffer.from("Photoshop 3.0\0secret-caption")),
    segment(0xfe, Buffer.from("secret-comment")),
    PLAIN_JPEG.subarray(2),
    Buffer.from("secret-trailer"),
  ]);

export const chunk = (type: string, content: Uint8Array): Buffer => {
  const body = Buffer.concat([Buffer.from(type, "latin1"), content]);
  const ends = Buffer.alloc(8);
  ends.writeUInt32BE(content.length, 0);
  ends.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
};

const SIGNATURE = Buffer.from("\x89PNG\r\n\x1a\n", "latin1");

const header = (width: number, height: number): Buffer => {
  const content = Buffer.alloc(13);
  content.writeUInt32BE(width, 0);
  content.writeUInt32BE(height, 4);
  // Eight bits of grey.
  content[8] = 8;
  return chunk("IHDR", content);
};

/** Rows of grey points, each behind its filter byte. */
const data = (width: number, height: number): Buffer =>
  chunk("IDAT", deflateSync(Buffer.alloc((width + 1) * height, 0x40)));

export const plainPng = (width = 3, height = 2): Buffer =>
  Buffer.concat([SIGNATURE, header(width, height), data(width, height), chunk("IEND", Buffer.alloc(0))]);

/** One that says it has so many points, and has six. */
export const boastingPng = (width: number, height: number): Buffer =>
  Buffer.concat([SIGNATURE, header(width, height), data(3, 2), chunk("IEND", Buffer.alloc(0))]);

/** A PNG with texts, a time, EXIF, a profile, an animation and something behind its end. */
export const tellingPng = (): Buffer =>
  Buffer.concat([
    SIGNATURE,
    header(3, 2),
    chunk("iCCP", Buffer.from("secret-profile\0\0")),
    chunk("tEXt", Buffer.from("Author\0secret-author")),
    chunk("zTXt", Buffer.concat([Buffer.from("Comment\0\0"), deflateSync(Buffer.from("secret-comment"))])),
    chunk("iTXt", Buffer.from("XML:com.adobe.xmp\0\0\0\0\0secret-xmp")),
    chunk("tIME", Buffer.of(7, 235, 3, 8, 9, 0, 0)),
    chunk("eXIf", Buffer.from("MM\0*secret-exif")),
    chunk("acTL", Buffer.alloc(8)),
    data(3, 2),
    chunk("fdAT", Buffer.from("secret-frame")),
    chunk("IEND", Buffer.alloc(0)),
    Buffer.from("secret-trailer"),
  ]);
