/**
 * What is being read: files, each by one read at a time that starts over when the file changes meanwhile, and
 * configurations that are looked for. Whoever needs a file waits here for those alone that it depends on.
 */
import type { FileId } from "../core/place.ts";
import type { Log } from "./guard.ts";
import type { ReadResult } from "./host.ts";

interface Read {
  /** Changed on disk while it was being read. */
  again: boolean;
  /** A file that is known uses it. */
  wanted: boolean;
  done: Promise<void>;
}

interface LoaderParts {
  read(file: FileId): Promise<ReadResult>;
  /** Takes what was read; the read is over by then. */
  take(file: FileId, result: ReadResult): void;
  /** A file and all that it uses, directly or not. */
  usedBy(file: FileId): readonly FileId[];
  readonly log: Log;
}

export class Loader {
  readonly #parts: LoaderParts;
  readonly #reads = new Map<FileId, Read>();
  /** Configurations that are being looked for, with the file that they are for; undefined where it is all of them. */
  readonly #lookups = new Map<Promise<void>, FileId | undefined>();

  constructor(parts: LoaderParts) {
    this.#parts = parts;
  }

  /** How many files are being read. */
  get size(): number {
    return this.#reads.size;
  }

  isReading(file: FileId): boolean {
    return this.#reads.has(file);
  }

  /** A file that is being read is used. Whether it is being read. */
  want(file: FileId): boolean {
    const running = this.#reads.get(file);
    if (running !== undefined) running.wanted = true;
    return running !== undefined;
  }

  /** A file that is being read has changed. Whether it is being read. */
  again(file: FileId): boolean {
    const running = this.#reads.get(file);
    if (running !== undefined) running.again = true;
    return running !== undefined;
  }

  /** Resolves when the file has been read. */
  start(file: FileId, wanted: boolean): Promise<void> {
    const running = this.#reads.get(file);
    if (running !== undefined) {
      running.again = true;
      running.wanted ||= wanted;
      return running.done;
    }
    const read: Read = { again: false, wanted, done: Promise.resolve() };
    this.#reads.set(file, read);
    read.done = this.#readUntilStill(file, read);
    return read.done;
  }

  async #readUntilStill(file: FileId, read: Read): Promise<void> {
    try {
      let result = await this.#parts.read(file);
      while (read.again) {
        read.again = false;
        result = await this.#parts.read(file);
      }
      this.#reads.delete(file);
      this.#parts.take(file, result);
    } catch (error) {
      this.#parts.log(`Reading ${file} failed: ${error instanceof Error ? error.message : String(error)}`);
    } finally {
      this.#reads.delete(file);
    }
  }

  /** A configuration is being looked for, which concerns a file; without one, any. */
  lookUp(file: FileId | undefined, work: Promise<void>): void {
    const lookup = work
      .catch((error: unknown) => this.#parts.log(`Reading a configuration failed: ${String(error)}`))
      .finally(() => this.#lookups.delete(lookup));
    this.#lookups.set(lookup, file);
  }

  /** Resolves when nothing is being read that the findings of `file` depend on; without it, those of any file. */
  async settled(file?: FileId): Promise<void> {
    for (;;) {
      const waiting = [...this.#readsFor(file), ...this.#lookupsFor(file)];
      if (waiting.length === 0) return;
      await Promise.all(waiting);
    }
  }

  /** Whether nothing is being read that the findings of `file` depend on. */
  isSettled(file: FileId): boolean {
    return this.#readsFor(file).length + this.#lookupsFor(file).length === 0;
  }

  #readsFor(file: FileId | undefined): readonly Promise<void>[] {
    // What follows takes a look at every file that is used, and mostly nothing is being read.
    if (this.#reads.size === 0) return [];
    const used = file === undefined ? undefined : new Set([file, ...this.#parts.usedBy(file)]);
    return [...this.#reads]
      .filter(([id, { wanted }]) => (used === undefined ? wanted : used.has(id)))
      .map(([, { done }]) => done);
  }

  #lookupsFor(file: FileId | undefined): readonly Promise<void>[] {
    return [...this.#lookups]
      .filter(([, concerned]) => file === undefined || concerned === undefined || concerned === file)
      .map(([lookup]) => lookup);
  }
}
