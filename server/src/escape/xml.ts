/**
 * Text inside XML 1.0, in an element or in a quoted attribute: it can begin no tag, no entity and no other attribute, and
 * holds only characters that XML 1.0 allows (section 2.2); others are shown as `shownText` shows them, or as U+FFFD.
 */
import { shownText } from "./shown-text.ts";

const SIGNS: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&apos;",
};

export const xmlText = (text: string): string =>
  shownText(text)
    .replace(/[^\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, "\ufffd")
    .replace(/[&<>"']/gu, (sign) => SIGNS[sign]!);
