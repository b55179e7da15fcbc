/**
 * The findings of files that use no other and are used by none: they hold for as long as the file is the same, whatever
 * happens to others, of which a client may have a thousand open.
 *
 * What awaits a plan or failed is not kept: it may be another the next time that it is asked for.
 */
import { INTERNAL_ERROR } from "../core/internal-error.ts";
import type { Program, ProgramFile } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import type { ProjectConfig } from "./config.ts";
import type { KnownFiles } from "./known-files.ts";

interface Kept {
  readonly read: ProgramFile;
  readonly settings: ProjectConfig;
  readonly findings: readonly FileFinding[];
}

export class LoneFiles {
  readonly #known: KnownFiles;
  readonly #kept = new Map<FileId, Kept>();

  constructor(known: KnownFiles) {
    this.#known = known;
  }

  /** Undefined where nothing is known, or where others have a say. */
  find(program: Program, file: FileId, settings: ProjectConfig): readonly FileFinding[] | undefined {
    const kept = this.#kept.get(file);
    return kept?.settings === settings && kept.read === this.#alone(program, file)
      ? kept.findings
      : undefined;
  }

  keep(program: Program, file: FileId, settings: ProjectConfig, findings: readonly FileFinding[]): void {
    const read = this.#alone(program, file);
    if (read && findings.every(({ rule }) => rule !== INTERNAL_ERROR))
      this.#kept.set(file, { read, settings, findings });
  }

  forget(file: FileId): void {
    this.#kept.delete(file);
  }

  /** The file, where it is alone in this program; of an earlier program that is not known. */
  #alone({ files, absent }: Program, file: FileId): ProgramFile | undefined {
    const now = this.#known.program;
    if (files !== now.files || absent !== now.absent || absent.has(file) || this.#known.isUsed(file))
      return undefined;
    const read = files.get(file);
    return read?.uses.length === 0 ? read : undefined;
  }
}
