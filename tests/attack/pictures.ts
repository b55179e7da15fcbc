/** One hostile picture, as a sheet reads it: refused in words, or handed on within bounds, and clean when it is cleaned again. */

import { deflateSync } from "node:zlib";
import fc from "fast-check";
import { readPicture } from "../../server/src/reading/picture.ts";
import { boastingPng, chunk, plainJpeg, plainPng, tellingJpeg, tellingPng } from "../harness/pictures.ts";
import { type Attack, crash, type Flaw } from "./flaws.ts";

/** What is done to a picture's bytes; places and lengths count modulo its length. */
interface Change {
  readonly kind: "set" | "cut" | "copy" | "length" | "end" | "chunk";
  readonly at: number;
  readonly to: number;
  readonly length: number;
  readonly value: number;
}

export interface HostilePicture {
  readonly base: number;
  readonly changes: readonly Change[];
}

/** A long one, so that work that grows too fast shows. */
const MANY_CHUNKS = Buffer.concat([
  plainPng().subarray(0, 33),
  ...Array.from({ length: 20_000 }, () => chunk("tEXt", Buffer.from("a\0b"))),
  plainPng().subarray(33),
]);
const MANY_SEGMENTS = Buffer.concat([
  plainJpeg().subarray(0, 2),
  ...Array.from({ length: 20_000 }, () => Buffer.of(0xff, 0xfe, 0, 3, 65)),
  plainJpeg().subarray(2),
]);

const BASES: readonly Buffer[] = [
  plainPng(),
  tellingPng(),
  boastingPng(60_000, 60_000),
  plainJpeg(),
  tellingJpeg(),
  tellingJpeg(6, false),
  MANY_CHUNKS,
  MANY_SEGMENTS,
];

const input: fc.Arbitrary<HostilePicture> = fc.record({
  base: fc.nat(BASES.length - 1),
  changes: fc.array(
    fc.record({
      kind: fc.constantFrom("set", "cut", "copy", "length", "end", "chunk"),
      at: fc.nat(1_000_000),
      to: fc.nat(1_000_000),
      length: fc.nat(80),
      value: fc.oneof(fc.nat(255), fc.constantFrom(0, 0xff, 0xd8, 0xd9, 0xda, 0xe1)),
    }),
    { maxLength: 6 },
  ),
});

function changed(bytes: Buffer, { kind, at, to, length, value }: Change): Buffer {
  const from = at % (bytes.length + 1);
  const put = to % (bytes.length + 1);
  const [before, after] = [bytes.subarray(0, from), bytes.subarray(from)];
  switch (kind) {
    case "set":
      return Buffer.concat([before, Buffer.of(value), after.subarray(1)]);
    case "cut":
      return Buffer.concat([before, after.subarray(length)]);
    case "copy":
      return Buffer.concat([bytes.subarray(0, put), after.subarray(0, length), bytes.subarray(put)]);
    case "length": {
      // As a length it claims far more than there is, or less than nothing.
      const claimed = Buffer.alloc(4);
      claimed.writeUInt32BE([0, 1, 0x7fffffff, 0xffffffff][value % 4]!);
      return Buffer.concat([before, claimed, after.subarray(4)]);
    }
    case "end":
      return Buffer.from(before);
    case "chunk":
      return Buffer.concat([
        before,
        chunk(["IDAT", "iTXt", "IHDR", "IEND"][value % 4]!, deflateSync(after)),
        after,
      ]);
  }
}

export const pictures: Attack<HostilePicture> = {
  name: "pictures",
  input,
  runs: 500,
  cpuSeconds: 6,
  async check({ base, changes }) {
    const bytes = changes.reduce(changed, BASES[base % BASES.length]!);
    try {
      const picture = readPicture(bytes);
      if ("reason" in picture) return [];
      return [...boundFlaws(picture, bytes), ...cleanFlaws(picture.bytes)];
    } catch (error) {
      return [crash("reading a picture", error)];
    }
  },
};

/** What is left out only makes it shorter; the way a camera was held is written anew in a few bytes. */
const MOST_MORE = 64;

const boundFlaws = (
  picture: { readonly bytes: Uint8Array; readonly width: number; readonly height: number },
  from: Uint8Array,
): readonly Flaw[] =>
  picture.bytes.length <= from.length + MOST_MORE && picture.width > 0 && picture.height > 0
    ? []
    : [{ kind: "leak", detail: "a picture is larger than its file, or has no points" }];

function cleanFlaws(bytes: Uint8Array): readonly Flaw[] {
  const again = readPicture(bytes);
  if ("reason" in again) return [{ kind: "lost", detail: `a cleaned picture ${again.reason}` }];
  return Buffer.compare(again.bytes, bytes) === 0
    ? []
    : [{ kind: "lost", detail: "a cleaned picture is cleaned again" }];
}
