/** Text and lines of iCalendar (RFC 5545). */
import { shownLines } from "./shown-text.ts";

const OCTETS_PER_LINE = 75;

/** A value of type TEXT, as section 3.3.11 asks: no character of it can end its line or begin another property. */
export const icsText = (text: string): string =>
  shownLines(text)
    .replace(/[\\;,]/gu, "\\$&")
    .replaceAll("\n", "\\n");

/** Breaks a line so that none has more than 75 octets, the leading space of what goes on counted in; with its end. */
export function icsLine(line: string): string {
  let folded = "";
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character.codePointAt(0)!);
    if (octets + size > OCTETS_PER_LINE) {
      folded += "\r\n ";
      octets = 1;
    }
    folded += character;
    octets += size;
  }
  return `${folded}\r\n`;
}

function octetsOf(codePoint: number): number {
  if (codePoint < 0x80) return 1;
  if (codePoint < 0x800) return 2;
  return codePoint < 0x10000 ? 3 : 4;
}
