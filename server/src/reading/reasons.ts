/**
 * Why a file cannot be read, in the words that a user sees: the same for a file on disk and for one that an editor
 * hands out, in a finding and on the command line.
 */

/** What stands in the way. `link` leads nowhere or back to itself; `special` is a pipe or a device; `silent` an editor that does not answer. */
export type ReadFailure =
  | "missing"
  | "link"
  | "folder"
  | "special"
  | "too-large"
  | "forbidden"
  | "unavailable"
  | "silent"
  | "other";

const MAX_MEGABYTES = 4;

/** A recipe of a whole workshop has some hundred kilobytes. */
export const MAX_FILE_BYTES = MAX_MEGABYTES * 1024 * 1024;

/** The end of a sentence that begins with the file. `detail` is what the system said, for what has no words here. */
export function reasonOf(failure: ReadFailure, detail = "nobody says why"): string {
  switch (failure) {
    case "missing":
      return "does not exist";
    case "link":
      return "is a link that leads nowhere. Mend the link, or name the file that is meant";
    case "folder":
      return "is a folder, not a file";
    case "special":
      return "is not a plain file";
    case "too-large":
      return `is larger than ${MAX_MEGABYTES} MB, which no recipe is`;
    case "forbidden":
      return "may not be read: you have no permission for it. Ask for it, or leave the file out";
    case "unavailable":
      return "cannot be reached just now. It is asked for again when this file is saved";
    case "silent":
      return "was not handed out by the editor in time. It is asked for again when this file is saved";
    case "other":
      return `cannot be read: ${detail}`;
  }
}
