/** *Record as done now* for a client that knows the time: its command with the line of the record that only lacks it. */
import type { Command } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { NextRecord } from "../features/types.ts";
import { RECORD_COMMAND, type RecordTarget } from "./custom-requests.ts";

/** `version` is that of the document that the client has. */
export const recordCommand = (
  { title, offset, before, after }: NextRecord,
  uri: string,
  document: TextDocument,
  version: number | undefined,
): Command => ({
  title,
  command: RECORD_COMMAND,
  arguments: [
    { uri, version: version ?? null, at: document.positionAt(offset), before, after } satisfies RecordTarget,
  ],
});
