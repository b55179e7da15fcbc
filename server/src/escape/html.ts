/** Text inside HTML, in an element or in a quoted attribute: it can begin no tag, no entity and no other attribute. */
import { shownText } from "./shown-text.ts";

const SIGNS: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

export const htmlText = (text: string): string =>
  shownText(text).replace(/[&<>"']/gu, (sign) => SIGNS[sign]!);
