/**
 * Looks after the frames of a stream of messages (`Content-Length: N`, a blank line, N bytes).
 *
 * A stream that has lost its frames cannot find them again: whatever follows would be waited for without end, or read as
 * something else. So the first thing that is wrong ends it.
 */

/** Far above any file that is analysed. */
export const MOST_BYTES = 256 * 1024 * 1024;
const MOST_HEADER_BYTES = 4096;

const CR = 13;
const LF = 10;

/**
 * A check to be called with every chunk in order; it says in a sentence what is wrong with the stream, or nothing. After
 * that it is not to be called again.
 */
export const createFraming = (): ((chunk: Uint8Array) => string | undefined) => {
  let header: number[] = [];
  let bodyLeft = 0;
  return (chunk) => {
    let at = 0;
    while (at < chunk.length) {
      if (bodyLeft > 0) {
        const taken = Math.min(bodyLeft, chunk.length - at);
        bodyLeft -= taken;
        at += taken;
        continue;
      }
      header.push(chunk[at]!);
      at += 1;
      if (header.length > MOST_HEADER_BYTES) return "A message has no end of its header.";
      if (!endsHeader(header)) continue;
      const length = bodyLength(String.fromCharCode(...header));
      if (typeof length === "string") return length;
      bodyLeft = length;
      header = [];
    }
    return undefined;
  };
};

const endsHeader = (header: readonly number[]): boolean =>
  header.length >= 4 &&
  header.at(-1) === LF &&
  header.at(-2) === CR &&
  header.at(-3) === LF &&
  header.at(-4) === CR;

/** Bytes of the body that follows a header, or what is wrong with the header. */
function bodyLength(header: string): number | string {
  const lines = header.split("\r\n").filter((line) => line !== "");
  const fields = lines.map((line) => line.split(":"));
  if (fields.some(({ length }) => length < 2))
    return "A line in the header of a message is not a header field.";
  const lengths = fields.filter(([name]) => name!.trim().toLowerCase() === "content-length");
  if (lengths.length !== 1) return "The header of a message must state `Content-Length`, once.";
  const value = lengths[0]!.slice(1).join(":").trim();
  if (!DIGITS.test(value)) return "The `Content-Length` of a message is not a whole number.";
  if (Number(value) > MOST_BYTES) return `A message is longer than ${MOST_BYTES} bytes.`;
  return Number(value);
}

const DIGITS = /^\d{1,15}$/u;
