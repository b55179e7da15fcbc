/** All commands and options as plain data, for what tells about them: shells and the manual page. */

/** What stands behind an option or a command: one of some words, a recipe or folder, any file, or what only a person knows. */
export type Value =
  | { readonly kind: "words"; readonly words: readonly string[] }
  | { readonly kind: "recipes" | "file" | "folder" | "other" };

export interface OptionRow {
  /** As written, `-h` before `--help`. */
  readonly names: readonly string[];
  /** What stands behind it, with the word for it in the help; none for a switch. */
  readonly takes?: { readonly word: string; readonly value: Value };
  readonly text: string;
}

export interface ArgumentRow {
  /** As in the usage: `[paths...]`. */
  readonly usage: string;
  readonly value: Value;
  readonly text: string;
}

export interface CommandRow {
  readonly name: string;
  readonly summary: string;
  readonly text: string;
  readonly arguments: readonly ArgumentRow[];
  readonly options: readonly OptionRow[];
}

export interface CommandTable {
  readonly name: string;
  readonly version: string;
  readonly text: string;
  readonly options: readonly OptionRow[];
  readonly commands: readonly CommandRow[];
}
