/**
 * Text inside XML 1.0, in an element or in a quoted attribute: as for HTML, and of the characters that are left all that
 * XML 1.0 does not allow (section 2.2) as U+FFFD.
 */
import { htmlText } from "./html.ts";

export const xmlText = (text: string): string => htmlText(text).replace(/[\ufffe\uffff]/gu, "\ufffd");
