/**
 * Fingerprints of jobs and steps, eight hexadecimal digits: 32-bit FNV-1a over the UTF-8 bytes of their words, each
 * ended by a zero (RFC 9923). They tell steps of one job apart, and guard against nobody.
 */
export function fingerprintOf(words: readonly string[]): string {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(words.map((word) => `${word}\u0000`).join("")))
    hash = Math.imul(hash ^ byte, 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, "0");
}
