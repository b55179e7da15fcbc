/**
 * Text in the workflow commands that a code host reads from a log (`::error file=…::message`). Percent signs, line ends
 * and, in a property, colons and commas are written by their number, as the host's own toolkit does, so that nothing a
 * recipe says can end the command or begin another.
 */
import { shownText } from "./shown-text.ts";

const numbered = (text: string, signs: RegExp): string =>
  text.replace(signs, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase().padStart(2, "0")}`);

/** The message of a command; its line breaks are kept. */
export const commandMessage = (text: string): string =>
  text
    .split("\n")
    .map((line) => numbered(shownText(line), /%/gu))
    .join("%0A");

/** The value of a property of a command. */
export const commandProperty = (text: string): string => numbered(shownText(text), /[%:,]/gu);
