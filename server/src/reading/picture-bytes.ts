/** What reading pictures of either kind shares. */

/** A picture that may be handed on: its bytes without what tells of its making. */
export interface Picture {
  readonly type: "image/png" | "image/jpeg";
  readonly bytes: Uint8Array;
  /** Points. */
  readonly width: number;
  readonly height: number;
}

/** `cut short`: it ends before its end. `damaged`: it is not built as its kind is. */
export type PictureFault = "cut short" | "damaged";

/** Big-endian, as both kinds have it; undefined where the bytes end before. */
export const uint16 = (bytes: Uint8Array, at: number): number | undefined =>
  at + 2 > bytes.length ? undefined : bytes[at]! * 256 + bytes[at + 1]!;

export const uint32 = (bytes: Uint8Array, at: number): number | undefined =>
  at + 4 > bytes.length ? undefined : uint16(bytes, at)! * 65536 + uint16(bytes, at + 2)!;

export const asciiAt = (bytes: Uint8Array, at: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + length));

export function concatenated(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
