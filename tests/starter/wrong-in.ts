/** What no new recipe may have. */
import { formatFile } from "../../grammar/src/format.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import { findingsOf } from "../harness/check-text.ts";

/** Findings and lines that are not laid out; a hint on the air is right, as nobody has said what the cans hold. */
export const wrongIn = (text: string): readonly string[] => [
  ...findingsOf(text)
    .filter(({ severity, rule }) => severity !== "hint" || rule !== "ventilation-too-weak")
    .map(({ rule, message }) => `${rule}: ${message.split("\n")[0]}`),
  ...formatFile(parseFile(text)).changes.map(({ text: changed }) => `layout: ${changed}`),
];
