/**
 * All texts that the server knows, kept in step with the analyst.
 *
 * Invariant: what the analyst holds for a file is the text of its editor while it is open, and otherwise what was last
 * read from where it lies. Files come in by three ways: opened by the user, named by `use`, or found in the open folders. A
 * file that none of these leads to any more is dropped, and so is one that may not be read any more. Reading never blocks
 * a message, and holds up the findings of those files only that use what is read; what arrives late for a file that was
 * opened meanwhile is thrown away.
 */
import type { FileEvent, TextDocumentContentChangeEvent } from "vscode-languageserver";
import { FileChangeType } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { FileId } from "../core/place.ts";
import { DEFAULT_CONFIG } from "../features/config.ts";
import type { Analysis, Analyst } from "../features/types.ts";
import type { AllowedFolders } from "./allowed-folders.ts";
import type { Changes } from "./changes.ts";
import type { FileReader } from "./file-reader.ts";
import { describe, type Log } from "./guard.ts";
import type { Host } from "./host.ts";
import type { Planning } from "./planning.ts";
import type { ProjectConfigs } from "./project-configs.ts";
import { fileIdOf, resolveUse } from "./uri.ts";

/** No folder of recipes is larger; a folder that is must not fill the memory. */
export const MAX_FILES = 500;

/** Files of the folders are read so many at a time. */
const BATCH = 16;

const LANGUAGE = "finish";

/** The state of one moment. The analysis is immutable, and positions are worked out on its texts. */
export interface Snapshot {
  readonly analysis: Analysis;
  /** The text of a file in a form that converts offsets to positions. */
  document(file: FileId): TextDocument | undefined;
  /** The file's name as the client writes it. */
  uriOf(file: FileId): string;
  /** The version of an open document. */
  versionOf(file: FileId): number | undefined;
}

/** So many are looked at whenever one is closed. */
const FEW_FILES = 100;

interface Read {
  /** Changed on disk while it was being read. */
  again: boolean;
  /** A file that is known uses it. */
  wanted: boolean;
  done: Promise<void>;
}

export interface FilesParts {
  readonly host: Host;
  readonly reader: FileReader;
  readonly changes: Changes;
  readonly configs: ProjectConfigs;
  readonly allowed: AllowedFolders;
  readonly planning: Planning;
  readonly log: Log;
}

export class Files {
  readonly #allowed: AllowedFolders;
  readonly #reader: FileReader;
  readonly #changes: Changes;
  readonly #configs: ProjectConfigs;
  readonly #planning: Planning;
  readonly #log: Log;
  readonly #analyst: Analyst;
  readonly #open = new Map<FileId, TextDocument>();
  readonly #read = new Map<FileId, string>();
  readonly #absent = new Map<FileId, string>();
  readonly #reads = new Map<FileId, Read>();
  /** Configurations that are being looked for, with the file that they are for; undefined where it is all of them. */
  readonly #lookups = new Map<Promise<void>, FileId | undefined>();
  readonly #documents = new Map<FileId, TextDocument>();
  readonly #clientUris = new Map<FileId, string>();
  /** Resolves when the files of the folders have been read; it is about the last listing. */
  #folders: Promise<void> = Promise.resolve();
  #isPartial = false;
  #visible: FileId | undefined;
  /** Files that were closed since it was last looked what nothing leads to. */
  #closedUnswept = 0;
  /** The recipes of the open folders; undefined while nobody looks after whole folders. */
  #folderFiles: ReadonlySet<FileId> | undefined;

  constructor({ host, reader, changes, configs, allowed, planning, log }: FilesParts) {
    this.#planning = planning;
    this.#allowed = allowed;
    this.#reader = reader;
    this.#changes = changes;
    this.#configs = configs;
    this.#log = log;
    this.#analyst = host.createAnalyst({
      resolve: resolveUse,
      config: configs.of,
      plan: planning.plan,
      onFault: ({ part, error }) => log(`${part} failed: ${describe(error)}`),
    });
    allowed.listen(() => this.#judgeAgain());
  }

  /** Those that a person looks at first. */
  get openFiles(): readonly FileId[] {
    const open = [...this.#open.keys()];
    const visible = this.#visible;
    return visible !== undefined && this.#open.has(visible)
      ? [visible, ...open.filter((file) => file !== visible)]
      : open;
  }

  /** A person has this file before them: it is answered for before others. */
  look(uri: string): void {
    const file = fileIdOf(uri);
    if (file === this.#visible) return;
    this.#visible = file;
    this.#planning.prefer(file);
  }

  plansChanged(): void {
    this.#analyst.plansChanged();
    this.#changes.bump({ kind: "plans" });
  }

  /** Whether the folders have more recipes than are looked at. */
  get isPartial(): boolean {
    return this.#isPartial;
  }

  isKnown(file: FileId): boolean {
    return this.#open.has(file) || this.#read.has(file);
  }

  versionOf(file: FileId): number | undefined {
    return this.#open.get(file)?.version;
  }

  uriOf(file: FileId): string {
    return this.#clientUris.get(file) ?? file;
  }

  snapshot(): Snapshot {
    const analysis = this.#analyst.analysis();
    return {
      analysis,
      document: (file) => this.#document(file, analysis.text(file)),
      uriOf: (file) => this.uriOf(file),
      versionOf: (file) => this.versionOf(file),
    };
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
    const used = file === undefined ? undefined : new Set([file, ...this.#analyst.analysis().usedBy(file)]);
    return [...this.#reads]
      .filter(([id, { wanted }]) => (used === undefined ? wanted : used.has(id)))
      .map(([, { done }]) => done);
  }

  #lookupsFor(file: FileId | undefined): readonly Promise<void>[] {
    return [...this.#lookups]
      .filter(([, concerned]) => file === undefined || concerned === undefined || concerned === file)
      .map(([lookup]) => lookup);
  }

  /** Resolves when every file is there that can be known, also those of the folders that nobody has opened. */
  async complete(): Promise<void> {
    let folders: Promise<void> | undefined;
    while (folders !== this.#folders) {
      folders = this.#folders;
      await folders;
    }
    await this.settled();
  }

  open(uri: string, version: number, text: string): void {
    const file = this.#know(uri);
    if (!this.#open.has(file)) this.#allowed.opened(file);
    this.#open.set(file, TextDocument.create(uri, LANGUAGE, version, text));
    this.#read.delete(file);
    this.#absent.delete(file);
    this.#analyst.setFile(file, text);
    this.#lookUpConfig(file);
    this.#changes.bump({ kind: "other" });
    this.#readMissing();
  }

  change(uri: string, version: number, changes: TextDocumentContentChangeEvent[]): void {
    const file = fileIdOf(uri);
    const document = this.#open.get(file);
    if (document === undefined) return;
    this.#open.set(file, TextDocument.update(document, changes, version));
    this.#analyst.setFile(file, document.getText());
    this.#changes.bump({ kind: "edit", file });
    this.#readMissing();
  }

  /** The saved text takes the editor's place where something else still leads to the file. */
  close(uri: string): void {
    const file = fileIdOf(uri);
    if (!this.#open.delete(file)) return;
    this.#planning.forget(file);
    this.#allowed.closed(file);
    const reachable = this.#isTimeToSweep() ? this.#reachable() : undefined;
    const isLedTo =
      reachable?.has(file) ?? (this.#folderFiles?.has(file) === true || this.#analyst.isUsed(file));
    if (isLedTo && this.#isInReach(file)) this.#startReading(file, true);
    else this.#analyst.removeFile(file);
    if (reachable) this.#dropAllBut(reachable);
    this.#changes.bump({ kind: "other" });
    this.#readMissing();
  }

  /** A used file that was not there may be there now, also where the client watches nothing. */
  saved(): void {
    for (const file of this.#absent.keys()) if (this.#isInReach(file)) this.#startReading(file, true);
  }

  changedOnDisk(events: readonly FileEvent[]): void {
    for (const { uri, type } of events) {
      const file = this.#know(uri);
      if (this.#configs.isConfig(file)) this.#rereadConfig(file);
      else if (type === FileChangeType.Deleted) this.#forgetDeleted(file);
      else if (this.#takesUp(file)) this.#startReading(file, true);
    }
    this.#readMissing();
  }

  /**
   * The recipes in the open folders are being listed by `listing`. What appears in them meanwhile is taken up as well,
   * whether the list already has it or not.
   */
  setFolderFiles(listing: Promise<readonly string[]>): Promise<void> {
    const taken = this.#takeFolderFiles(listing);
    this.#folders = taken.catch(() => {});
    return taken;
  }

  async #takeFolderFiles(listing: Promise<readonly string[]>): Promise<void> {
    const before = this.#folderFiles ?? new Set();
    this.#folderFiles = before;
    const listed = await listing;
    this.#isPartial = listed.length > MAX_FILES;
    const files = listed.slice(0, MAX_FILES).map((uri) => this.#know(uri));
    const appeared = [...this.#folderFiles].filter((file) => !before.has(file));
    this.#folderFiles = new Set([...files, ...appeared]);
    this.#dropAllBut(this.#reachable());
    const unread = files.filter(
      (file) => this.#isInReach(file) && !this.#open.has(file) && !this.#read.has(file),
    );
    for (let start = 0; start < unread.length; start += BATCH) {
      await Promise.all(unread.slice(start, start + BATCH).map((file) => this.#startReading(file, false)));
    }
  }

  #know(uri: string): FileId {
    const file = fileIdOf(uri);
    this.#clientUris.set(file, uri);
    return file;
  }

  #readMissing(): void {
    for (const file of this.#analyst.missingFiles()) {
      const running = this.#reads.get(file);
      const outOfReach = this.#reader.outOfReach(file, "recipe");
      if (running !== undefined) running.wanted = true;
      else if (this.#absent.has(file)) this.#analyst.setAbsent(file, this.#absent.get(file) ?? "");
      else if (outOfReach !== undefined) this.#setAbsent(file, outOfReach);
      else if (this.#read.size + this.#reads.size >= MAX_FILES) {
        this.#setAbsent(file, `more than ${MAX_FILES} files are in use`);
      } else this.#startReading(file, true);
    }
  }

  #isInReach(file: FileId): boolean {
    return this.#reader.outOfReach(file, "recipe") === undefined;
  }

  /** Other folders may be read than before: what lies in them is read, and what lies elsewhere is forgotten. */
  #judgeAgain(): void {
    for (const file of [...this.#read.keys()]) {
      const reason = this.#reader.outOfReach(file, "recipe");
      if (reason !== undefined) this.#takeAbsent(file, reason);
    }
    for (const [file, reason] of [...this.#absent]) {
      const now = this.#reader.outOfReach(file, "recipe");
      if (now === reason) continue;
      if (now !== undefined) this.#setAbsent(file, now);
      else this.#startReading(file, true);
    }
    this.#configs.forget();
    for (const file of [...this.#open.keys(), ...this.#read.keys()]) this.#lookUpConfig(file);
  }

  #setAbsent(file: FileId, reason: string): void {
    this.#absent.set(file, reason);
    this.#analyst.setAbsent(file, reason);
    this.#changes.bump({ kind: "other" });
  }

  #startReading(file: FileId, wanted: boolean): Promise<void> {
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
      let result = await this.#reader.read(this.uriOf(file), "recipe");
      while (read.again) {
        read.again = false;
        result = await this.#reader.read(this.uriOf(file), "recipe");
      }
      this.#reads.delete(file);
      if (this.#open.has(file)) return;
      if ("text" in result) this.#takeRead(file, result.text);
      else this.#takeAbsent(file, result.reason);
      this.#readMissing();
    } catch (error) {
      this.#log(`Reading ${file} failed: ${error instanceof Error ? error.message : String(error)}`);
    } finally {
      this.#reads.delete(file);
    }
  }

  #takeRead(file: FileId, text: string): void {
    if (this.#read.get(file) === text) return;
    this.#absent.delete(file);
    this.#read.set(file, text);
    this.#analyst.setFile(file, text);
    this.#lookUpConfig(file);
    this.#changes.bump({ kind: "other" });
  }

  #takeAbsent(file: FileId, reason: string): void {
    if (this.#absent.get(file) === reason) return;
    this.#read.delete(file);
    this.#analyst.removeFile(file);
    this.#setAbsent(file, reason);
  }

  #lookUpConfig(file: FileId): void {
    this.#untilSettled(
      file,
      this.#configs.look(file).then(() => {
        if (this.#configs.of(file) !== DEFAULT_CONFIG) this.#changes.bump({ kind: "other" });
      }),
    );
  }

  /** Where one goes, another further up may hold from now on. */
  #rereadConfig(config: FileId): void {
    const reread = async (): Promise<void> => {
      if (!(await this.#configs.reread(config))) return;
      for (const file of [...this.#open.keys(), ...this.#read.keys()]) await this.#configs.look(file);
      this.#changes.bump({ kind: "other" });
    };
    this.#untilSettled(undefined, reread());
  }

  #untilSettled(file: FileId | undefined, work: Promise<void>): void {
    const lookup = work
      .catch((error: unknown) => this.#log(`Reading a configuration failed: ${String(error)}`))
      .finally(() => this.#lookups.delete(lookup));
    this.#lookups.set(lookup, file);
  }

  #forgetDeleted(file: FileId): void {
    if (this.#folderFiles?.has(file)) {
      this.#folderFiles = new Set([...this.#folderFiles].filter((other) => other !== file));
    }
    if (this.#open.has(file)) return;
    const running = this.#reads.get(file);
    if (running !== undefined) running.again = true;
    else if (this.#read.delete(file)) {
      this.#analyst.removeFile(file);
      this.#dropAllBut(this.#reachable());
      this.#changes.bump({ kind: "other" });
    }
  }

  /** Whether news of this file on disk matters. A new one in the folders, if they are looked after, does. */
  #takesUp(file: FileId): boolean {
    if (!this.#isInReach(file)) return false;
    if (this.#folderFiles !== undefined && this.#folderFiles.size < MAX_FILES) {
      this.#folderFiles = new Set([...this.#folderFiles, file]);
    }
    if (this.#open.has(file)) return false;
    const known = this.#read.has(file) || this.#absent.has(file) || this.#reads.has(file);
    return known || this.#folderFiles?.has(file) === true;
  }

  /**
   * Whether what nothing leads to any more is looked for after a file was closed. That takes a look at all files, so of
   * very many only an eighth of them later: closing them all costs their number and not its square.
   */
  #isTimeToSweep(): boolean {
    const roots = this.#open.size + (this.#folderFiles?.size ?? 0);
    this.#closedUnswept += 1;
    if (roots > FEW_FILES && this.#closedUnswept * 8 < roots) return false;
    this.#closedUnswept = 0;
    return true;
  }

  /** What the open files and the folders' files lead to, themselves included. */
  #reachable(): ReadonlySet<FileId> {
    const analysis = this.#analyst.analysis();
    const reachable = new Set<FileId>();
    for (const root of [...this.#open.keys(), ...(this.#folderFiles ?? [])]) {
      // What is reached already leads to nothing that is not.
      if (!reachable.has(root)) for (const file of [root, ...analysis.usedBy(root)]) reachable.add(file);
    }
    return reachable;
  }

  #dropAllBut(reachable: ReadonlySet<FileId>): void {
    for (const file of [...this.#read.keys()]) {
      if (reachable.has(file)) continue;
      this.#read.delete(file);
      this.#analyst.removeFile(file);
    }
    for (const file of [...this.#documents.keys()]) if (!reachable.has(file)) this.#documents.delete(file);
  }

  #document(file: FileId, text: string | undefined): TextDocument | undefined {
    if (text === undefined) return undefined;
    const open = this.#open.get(file);
    if (open?.getText() === text) return open;
    const cached = this.#documents.get(file);
    if (cached?.getText() === text) return cached;
    const document = TextDocument.create(this.uriOf(file), LANGUAGE, 0, text);
    this.#documents.set(file, document);
    return document;
  }
}
