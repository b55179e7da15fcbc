/**
 * The texts as the client's documents: those that are open, with their versions, and for every other file that is asked
 * about one that converts offsets to positions. A file has the name that the client writes it with.
 */
import type { TextDocumentContentChangeEvent } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { ChangedPart } from "../../../grammar/src/parse.ts";
import type { FileId } from "../core/place.ts";
import { fileIdOf } from "./uri.ts";

const LANGUAGE = "finish";

/** A text after an edit, and where it differs from the one before, unless all of it was sent. */
export interface EditedText {
  readonly text: string;
  readonly changed?: ChangedPart;
}

export class Documents {
  readonly #open = new Map<FileId, TextDocument>();
  readonly #closed = new Map<FileId, TextDocument>();
  readonly #clientUris = new Map<FileId, string>();
  #visible: FileId | undefined;

  /** The file of an address, from now on called as the client writes it here. */
  know(uri: string): FileId {
    const file = fileIdOf(uri);
    this.#clientUris.set(file, uri);
    return file;
  }

  /** The file's name as the client writes it. */
  uriOf(file: FileId): string {
    return this.#clientUris.get(file) ?? file;
  }

  /** The open file that a person looks at. */
  get visible(): FileId | undefined {
    return this.#visible !== undefined && this.#open.has(this.#visible) ? this.#visible : undefined;
  }

  /** The open files, and first the one that a person looks at. */
  get openFiles(): readonly FileId[] {
    const open = [...this.#open.keys()];
    const visible = this.visible;
    return visible !== undefined ? [visible, ...open.filter((file) => file !== visible)] : open;
  }

  get openCount(): number {
    return this.#open.size;
  }

  isOpen(file: FileId): boolean {
    return this.#open.has(file);
  }

  /** The version of an open document. */
  versionOf(file: FileId): number | undefined {
    return this.#open.get(file)?.version;
  }

  /** A person has this file before them. Whether it was another before. */
  look(file: FileId): boolean {
    const isNews = file !== this.#visible;
    this.#visible = file;
    return isNews;
  }

  open(file: FileId, uri: string, version: number, text: string): void {
    this.#open.set(file, TextDocument.create(uri, LANGUAGE, version, text));
  }

  /** The text after an edit; undefined where the file is not open. */
  change(
    file: FileId,
    version: number,
    changes: readonly TextDocumentContentChangeEvent[],
  ): EditedText | undefined {
    let document = this.#open.get(file);
    if (document === undefined) return undefined;
    let changed: ChangedPart | undefined;
    let isKnown = true;
    for (const change of changes) {
      const before = document.getText().length;
      const range = "range" in change ? change.range : undefined;
      const ends = range && [document.offsetAt(range.start), document.offsetAt(range.end)];
      document = TextDocument.update(document, [change], version);
      const by = document.getText().length - before;
      isKnown &&= ends !== undefined;
      if (ends) changed = joined(changed, Math.min(...ends), Math.max(...ends), by);
    }
    // Without any change there is still a new version.
    if (changes.length === 0) document = TextDocument.update(document, [], version);
    this.#open.set(file, document);
    return { text: document.getText(), ...(isKnown && changed ? { changed } : {}) };
  }

  /** Whether it was open. */
  close(file: FileId): boolean {
    return this.#open.delete(file);
  }

  /** A text of a file in a form that converts offsets to positions; the same one while the text is the same. */
  of(file: FileId, text: string | undefined): TextDocument | undefined {
    if (text === undefined) return undefined;
    const open = this.#open.get(file);
    if (open?.getText() === text) return open;
    const closed = this.#closed.get(file);
    if (closed?.getText() === text) return closed;
    const document = TextDocument.create(this.uriOf(file), LANGUAGE, 0, text);
    this.#closed.set(file, document);
    return document;
  }

  /** Lets go of the documents of files that nothing leads to. */
  keepOnly(files: ReadonlySet<FileId>): void {
    for (const file of [...this.#closed.keys()]) if (!files.has(file)) this.#closed.delete(file);
  }
}

/** One part around what had changed before and what changes now, from `start` to `end`, by so many letters. */
function joined(earlier: ChangedPart | undefined, start: number, end: number, by: number): ChangedPart {
  if (earlier === undefined) return { start, oldEnd: end, newEnd: end + by };
  return {
    start: Math.min(earlier.start, start),
    oldEnd: earlier.oldEnd + Math.max(0, end - earlier.newEnd),
    newEnd: Math.max(earlier.newEnd, end) + by,
  };
}
