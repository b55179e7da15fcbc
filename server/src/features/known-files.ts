/**
 * The files that an analyst holds, those that cannot be had, and those that are used and neither.
 *
 * Every change costs what the changed file's own `use` lines cost, however many files there are.
 */
import type { Program, ProgramFile } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import { VersionedMap } from "./versioned-map.ts";

export class KnownFiles {
  #files = new VersionedMap<FileId, ProgramFile>();
  #absent = new VersionedMap<FileId, string>();
  /** How many `use` lines name a file. */
  readonly #uses = new Map<FileId, number>();
  readonly #missing = new Set<FileId>();

  /** The state of this moment, which does not change any more. */
  get program(): Program {
    return { files: this.#files, absent: this.#absent };
  }

  /** Used files that are neither there nor known to be absent. */
  get missing(): readonly FileId[] {
    return [...this.#missing];
  }

  get(file: FileId): ProgramFile | undefined {
    return this.#files.get(file);
  }

  isAbsent(file: FileId): boolean {
    return this.#absent.has(file);
  }

  /** Whether a `use` line of a file that is there names it. */
  isUsed(file: FileId): boolean {
    return this.#uses.has(file);
  }

  /** `reason` says why a file that is there has nothing that others could use. */
  set(file: FileId, read: ProgramFile, reason?: string): void {
    const before = this.#files.get(file);
    this.#files = this.#files.with(file, read);
    this.#absent = reason === undefined ? this.#absent.without(file) : this.#absent.with(file, reason);
    this.#count(read, 1);
    this.#count(before, -1);
    this.#lookAfter(file);
  }

  remove(file: FileId, reason?: string): void {
    const before = this.#files.get(file);
    this.#files = this.#files.without(file);
    this.#absent = reason === undefined ? this.#absent.without(file) : this.#absent.with(file, reason);
    this.#count(before, -1);
    this.#lookAfter(file);
  }

  #count(file: ProgramFile | undefined, change: 1 | -1): void {
    for (const { target } of file?.uses ?? []) {
      const uses = (this.#uses.get(target) ?? 0) + change;
      if (uses > 0) this.#uses.set(target, uses);
      else this.#uses.delete(target);
      this.#lookAfter(target);
    }
  }

  #lookAfter(file: FileId): void {
    if (this.#uses.has(file) && !this.#files.has(file) && !this.#absent.has(file)) this.#missing.add(file);
    else this.#missing.delete(file);
  }
}
