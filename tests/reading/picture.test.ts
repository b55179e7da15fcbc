/** Pictures of sheets: what is taken, what of it stays, and why the rest is refused. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readPicture } from "../../server/src/reading/picture.ts";
import { pathOfPicture, readPictures } from "../../server/src/reading/read-pictures.ts";
import {
  boastingPng,
  chunk,
  exif,
  plainJpeg,
  plainPng,
  tellingJpeg,
  tellingPng,
} from "../harness/pictures.ts";

const bytesOf = (picture: ReturnType<typeof readPicture>): Buffer =>
  "bytes" in picture ? Buffer.from(picture.bytes) : expect.fail(picture.reason);

describe("what a camera or a program left in it goes", () => {
  test("from a JPEG, of which the tables and the scan stay bit for bit", () => {
    const read = readPicture(tellingJpeg());
    expect(read).toMatchObject({ type: "image/jpeg", width: 3, height: 2 });
    expect(bytesOf(read)).toEqual(plainJpeg());
    expect(bytesOf(read).toString("latin1")).not.toContain("secret");
  });

  test.each([3, 6, 8])("but for how it was held (%i), so that it does not lie on its side", (orientation) => {
    for (const isLittle of [true, false]) {
      const read = readPicture(tellingJpeg(orientation, isLittle));
      expect(read).toMatchObject(orientation < 5 ? { width: 3, height: 2 } : { width: 2, height: 3 });
      expect(bytesOf(read).includes("secret")).toBe(false);
      // Read again it says the same, and is the same.
      expect(bytesOf(readPicture(bytesOf(read)))).toEqual(bytesOf(read));
      // Its only entry: tag 0x0112, a short, one of them.
      const entry = bytesOf(read).indexOf(Buffer.of(0x01, 0x12, 0, 3, 0, 0, 0, 1));
      expect(bytesOf(read).readUInt16BE(entry + 8)).toBe(orientation);
    }
  });

  test("from a PNG, of which a still picture stays bit for bit", () => {
    const read = readPicture(tellingPng());
    expect(read).toMatchObject({ type: "image/png", width: 3, height: 2 });
    expect(bytesOf(read)).toEqual(plainPng());
  });

  test("an EXIF that lies about its length or its orientation is as none", () => {
    // The order of bytes and the place of the directory stand at 10 and 14 of the segment.
    const disordered = exif(6, true).fill(0, 10, 12);
    const astray = exif(6, true).fill(0xff, 14, 18);
    for (const segment of [exif(9, true), exif(0, false), disordered, astray]) {
      const jpeg = Buffer.concat([plainJpeg().subarray(0, 2), segment, plainJpeg().subarray(2)]);
      expect(bytesOf(readPicture(jpeg))).toEqual(plainJpeg());
    }
  });
});

describe("is refused with the reason", () => {
  test.each([
    [
      "a drawing that runs scripts",
      Buffer.from("<svg xmlns='http://www.w3.org/2000/svg'><script/></svg>"),
      "neither a PNG nor a JPEG",
    ],
    ["a page", Buffer.from("<!doctype html>"), "neither a PNG nor a JPEG"],
    ["a moving picture", Buffer.from("GIF89a"), "neither a PNG nor a JPEG"],
    ["nothing", Buffer.alloc(0), "neither a PNG nor a JPEG"],
    ["more points than a memory holds", boastingPng(65_535, 65_535), "more than 64 million points"],
    ["none at all", boastingPng(0, 5), "is damaged"],
    ["a wrong checksum", plainPng().fill(1, 30, 31), "is damaged"],
    ["a chunk that nobody knows and everybody needs", withChunk(chunk("EVIL", Buffer.of(1))), "is damaged"],
    ["two headers", withChunk(plainPng().subarray(8, 33)), "is damaged"],
    ["a JPEG without a scan", Buffer.of(0xff, 0xd8, 0xff, 0xd9), "is damaged"],
    [
      "bytes between segments",
      Buffer.concat([plainJpeg().subarray(0, 3), Buffer.of(0xdb, 0, 2, 7)]),
      "is damaged",
    ],
  ])("%s", (_, bytes, reason) => {
    expect(readPicture(bytes)).toEqual({ reason: expect.stringContaining(reason) });
  });

  test.each([
    ["JPEG", plainJpeg()],
    ["PNG", plainPng()],
  ])("a %s that is cut short, wherever it is cut", (_, bytes) => {
    for (let length = 8; length < bytes.length; length++) {
      const read = readPicture(bytes.subarray(0, length));
      expect(read, `${length} of ${bytes.length} bytes`).toEqual({ reason: "is cut short. Save it again" });
    }
  });

  test("whatever the bytes are, it ends and says so", () => {
    const starts = [plainJpeg().subarray(0, 4), plainPng().subarray(0, 33), Buffer.alloc(0)];
    fc.assert(
      fc.property(fc.constantFrom(...starts), fc.uint8Array({ maxLength: 300 }), (start, rest) => {
        const read = readPicture(Buffer.concat([start, rest]));
        expect("reason" in read || read.bytes.length <= start.length + rest.length + 40).toBe(true);
      }),
    );
  });

  test("one byte changed anywhere never lets a text through", () => {
    for (const whole of [tellingJpeg(6), tellingPng()]) {
      fc.assert(
        fc.property(fc.nat(whole.length - 1), fc.nat(255), (at, value) => {
          const read = readPicture(Buffer.from(whole).fill(value, at, at + 1));
          const trailer = "bytes" in read && Buffer.from(read.bytes).includes("secret-trailer");
          expect(trailer).toBe(false);
        }),
      );
    }
  });
});

function withChunk(more: Buffer): Buffer {
  const png = plainPng();
  return Buffer.concat([png.subarray(0, 33), more, png.subarray(33)]);
}

describe("of all pictures of a file", () => {
  const named = (count: number) =>
    Array.from({ length: count }, (_, i) => ({ file: "a.finish", target: `${i}.png` }));

  test("each is read once, and so many are taken; those left out are not read", async () => {
    const asked: string[] = [];
    const of = await readPictures([...named(26), ...named(26)], async ({ target }) => {
      asked.push(target);
      return { bytes: plainPng() };
    });
    expect(asked).toHaveLength(24);
    expect(of("a.finish")("23.png")).toMatchObject({ type: "image/png" });
    expect(of("a.finish")("24.png")).toEqual({
      reason: "is left out: a file of sheets takes 24 pictures",
    });
    expect(of("b.finish")("0.png")).toBeUndefined();
  });

  test("so many bytes are taken", async () => {
    // Eleven of 2.3 MB are more than 24.
    const png = Buffer.concat([
      plainPng().subarray(0, 33),
      chunk("IDAT", Buffer.alloc(2.3 * 1024 * 1024)),
      chunk("IEND", Buffer.alloc(0)),
    ]);
    const of = await readPictures(named(12), async () => ({ bytes: png }));
    expect(of("a.finish")("9.png")).toMatchObject({ width: 3 });
    expect(of("a.finish")("10.png")).toEqual({ reason: expect.stringContaining("24 MB of pictures") });
  });
});

test.each([
  ["photos/before%20work.jpg", "photos/before work.jpg"],
  ["a%ZZ.jpg", "a%ZZ.jpg"],
  ["%5C%5Cnas%5Cx.png", "//nas/x.png"],
])("%s stands for %s", (target, name) => {
  expect(pathOfPicture(target)).toBe(name);
});
