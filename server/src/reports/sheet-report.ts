/** Sheets of an analysis in a form that can be read: what the command line and an editor show. */

import type { Analysis } from "../features/types.ts";
import type { FileSpan } from "../views/places/file-finding.ts";
import type { Sheet } from "../views/sheet/model.ts";
import { type OtherFile, regionOf } from "./reported.ts";
import { type SheetDocument, sheetDocument } from "./sheet-document.ts";
import { type PicturesOf, sheetsHtml } from "./sheet-html.ts";
import { sheetsMarkdown } from "./sheet-markdown.ts";
import { sheetsText } from "./sheet-text.ts";

const FORMATS = {
  text: sheetsText,
  markdown: sheetsMarkdown,
  html: sheetsHtml,
} satisfies Readonly<Record<string, (documents: readonly SheetDocument[], pictures?: PicturesOf) => string>>;

export type SheetFormat = keyof typeof FORMATS;

export const SHEET_FORMATS = Object.keys(FORMATS) as readonly SheetFormat[];

/** `label` is how a reader calls a file; `pictures` what was read of those that its texts name, for HTML. */
export function sheetReport(
  analysis: Analysis,
  sheets: readonly Sheet[],
  format: SheetFormat,
  label: (file: string) => string,
  pictures?: PicturesOf,
): string {
  // `tables.finish:12`
  const files = new Map<string, OtherFile>();
  const locate = ({ file, span }: FileSpan): string => {
    const known = files.get(file) ?? { label: file, text: analysis.text(file) ?? "" };
    files.set(file, known);
    return `${label(file)}:${regionOf(known, span).line}`;
  };
  const documents = sheets.map((sheet) => sheetDocument(sheet, label(sheet.file), locate));
  return FORMATS[format](documents, pictures);
}
