/**
 * What the language server needs from the machine it runs on, as an argument instead of an import.
 *
 * The adapter itself reads no disk and knows no Node: the entry gives it these few functions, and the tests give it
 * a folder in memory. A browser has no disk; there the client is asked (see `file-reader.ts`). Nothing here may throw; a
 * file that cannot be read is an answer, not an accident.
 */
import type { AnalystOptions } from "../features/analyst.ts";
import type { Analyst } from "../features/types.ts";
import type { Permit } from "../reading/may-read.ts";
import type { PlanMaker } from "./planning.ts";

/** The text of a file, or why there is none, in words that go into a finding. */
export type ReadResult =
  | { readonly text: string }
  | {
      readonly reason: string;
      /** There is something, but it is not read. */
      readonly isThere?: boolean;
    };

/** The bytes of a file, or why there are none, as the end of a sentence that begins with the file. */
export type ReadBytes = { readonly bytes: Uint8Array } | { readonly reason: string };

export interface Host {
  readonly version: string;
  createAnalyst(options: AnalystOptions): Analyst;
  /** Makes plans in a thread of its own, where there can be one. */
  readonly planMaker?: () => PlanMaker;
  /** Reads a `file:` URI, where there is a disk, if the permit allows the file that it really leads to. */
  readonly readFromDisk?: (uri: string, permit: Permit) => Promise<ReadResult>;
  /** The same for the bytes of a picture. */
  readonly readPicture?: (uri: string, permit: Permit) => Promise<ReadBytes>;
  /** The recipes below an open folder, by their addresses, where there is a disk; patterns as in a `.gitignore` file. */
  readonly listRecipes?: (
    folder: string,
    listing: { readonly limit: number; readonly exclude: readonly string[] },
  ) => Promise<readonly string[]>;
  /** The address of the folder of a package that is installed for files of a folder, where there is a disk and one. */
  readonly findPackage?: (folder: string, name: string) => string | undefined;
  /** The packed table of texts in a language (see `language.ts`), where one lies beside the server. */
  readonly texts?: (tag: string) => unknown;
  /** The address of the page that explains a rule, where there is one beside the server. */
  rulePage(rule: string): string | undefined;
  /** Somebody looks after how long things take; told what begins, it answers with what is to be called at its end. */
  readonly watch?: (what: string) => () => void;
  /** Told the process of the client, with which the server is to end. */
  readonly watchClient?: (pid: number) => void;
}
