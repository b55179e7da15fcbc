/**
 * All texts that the server knows, kept in step with the analyst.
 *
 * Invariant: what the analyst holds for a file is the text of its editor while it is open, and otherwise what was last
 * read from where it lies. Files come in by three ways: opened by the user, named by `use`, or found in the open folders. A
 * file that none of these leads to any more is dropped, and so is one that may not be read any more. Reading never blocks
 * a message, and holds up the findings of those files only that use what is read; what arrives late for a file that was
 * opened meanwhile is thrown away. `documents.ts` has the texts as the client's documents, `loader.ts` what is being read.
 */

import type { FileEvent, TextDocumentContentChangeEvent } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { t } from "../../../grammar/src/translate.ts";
import { errorText } from "../core/error-text.ts";
import type { UnitSystem } from "../core/measure/shown-figures.ts";
import type { FileId } from "../core/place.ts";
import { BEING_PLANNED, isBeingPlanned } from "../core/schedule/being-planned.ts";
import type { Planner } from "../core/schedule/plan-cache.ts";
import { DEFAULT_CONFIG } from "../features/config.ts";
import type { Analysis, Analyst } from "../features/types.ts";
import type { AllowedFolders } from "./allowed-folders.ts";
import type { Changes } from "./changes.ts";
import { Documents } from "./documents.ts";
import type { FileReader } from "./file-reader.ts";
import type { Log } from "./guard.ts";
import type { Host, ReadBytes, ReadResult } from "./host.ts";
import { Loader } from "./loader.ts";
import { createResolve } from "./packages.ts";
import type { Planning } from "./planning.ts";
import type { ProjectConfigs } from "./project-configs.ts";
import { FileChangeType } from "./protocol.ts";
import { reachableFrom, SweepClock } from "./reachability.ts";
import { fileIdOf, isUnsaved, resolveUse } from "./uri.ts";

/** No folder of recipes is larger; a folder that is must not fill the memory. */
export const MAX_FILES = 500;

/** Files of the folders are read so many at a time. */
const BATCH = 16;

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

export interface FilesParts {
  readonly host: Host;
  readonly reader: FileReader;
  readonly changes: Changes;
  readonly configs: ProjectConfigs;
  /** What the person asks for figures to be told in. */
  readonly units?: () => UnitSystem | undefined;
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
  readonly #analyst: Analyst;
  readonly #documents = new Documents();
  readonly #loader: Loader;
  readonly #sweeps = new SweepClock();
  readonly #read = new Map<FileId, string>();
  readonly #absent = new Map<FileId, string>();
  /**
   * Texts that were opened and that the analyst has not read yet, since nobody asked for anything that they have a say in.
   * Until it has, nothing counts as planned, as jobs in them may need the same people and the same air.
   */
  readonly #unread = new Map<FileId, string>();
  /** Files of jobs whose plans were known, and kept back. */
  #kept = new Set<FileId>();
  /** Resolves when the files of the folders have been read; it is about the last listing. */
  #folders: Promise<void> = Promise.resolve();
  #isPartial = false;
  /** The recipes of the open folders; undefined while nobody looks after whole folders. */
  #folderFiles: ReadonlySet<FileId> | undefined;

  constructor({ host, reader, changes, configs, units, allowed, planning, log }: FilesParts) {
    this.#planning = planning;
    this.#allowed = allowed;
    this.#reader = reader;
    this.#changes = changes;
    this.#configs = configs;
    this.#analyst = host.createAnalyst({
      resolve: createResolve(host, allowed),
      config: configs.of,
      ...(units ? { units } : {}),
      plan: this.#plan,
      onFault: ({ part, error }) => log(`${part} failed: ${errorText(error)}`),
    });
    this.#loader = new Loader({
      read: (file) => reader.read(this.uriOf(file), "recipe"),
      take: (file, result) => this.#take(file, result),
      usedBy: (file) => this.#analyst.analysis().usedBy(file),
      log,
    });
    allowed.listen(() => this.#judgeAgain());
  }

  readonly #plan: Planner = (input, owner) => {
    const plan = this.#planning.plan(input, owner);
    if (this.#unread.size === 0 || isBeingPlanned(plan)) return plan;
    for (const file of [owner.file, ...(owner.alsoFor ?? [])]) this.#kept.add(file);
    return BEING_PLANNED;
  };

  /** The bytes of a picture that a text in a file names, from where its recipes may lie, too. */
  readPicture(file: FileId, target: string): Promise<ReadBytes> {
    return this.#reader.readPicture(
      isUnsaved(this.uriOf(file)) ? this.uriOf(file) : resolveUse(file, target),
    );
  }

  /** First the one that a person looks at. */
  get openFiles(): readonly FileId[] {
    return this.#documents.openFiles;
  }

  /** The open file that a person looks at. */
  get visible(): FileId | undefined {
    return this.#documents.visible;
  }

  get openCount(): number {
    return this.#documents.openCount;
  }

  /** A person has this file before them: it is answered for before others. */
  look(uri: string): void {
    const file = fileIdOf(uri);
    if (this.#documents.look(file)) this.#planning.prefer(file);
  }

  /** Jobs of these files have been planned. */
  plansChanged(files: ReadonlySet<FileId>): void {
    this.#analyst.plansChanged();
    this.#changes.bump({ kind: "plans", files });
  }

  /** Nothing more is done before this local ISO date or date-time; without it, jobs go on from their last record. */
  setToday(today: string | undefined): void {
    this.#analyst.setToday(today);
  }

  /** Whether the folders have more recipes than are looked at. */
  get isPartial(): boolean {
    return this.#isPartial;
  }

  /** How much is known of the project that a file belongs to: all its recipes, as many as are looked at, or what is open. */
  projectOf(file: FileId): "all" | "many" | "open" {
    if (this.#folderFiles?.has(file) !== true) return "open";
    return this.#isPartial ? "many" : "all";
  }

  isKnown(file: FileId): boolean {
    return this.#documents.isOpen(file) || this.#read.has(file);
  }

  versionOf(file: FileId): number | undefined {
    return this.#documents.versionOf(file);
  }

  uriOf(file: FileId): string {
    return this.#documents.uriOf(file);
  }

  /** Of all files; or of one and of what it uses, where no other has a say in what is asked, but for what needs plans. */
  snapshot(file?: FileId): Snapshot {
    if (file === undefined) this.#readAll();
    else this.#readNow(file);
    const analysis = this.#analyst.analysis();
    return {
      analysis,
      document: (file) => this.#documents.of(file, analysis.text(file)),
      uriOf: (file) => this.uriOf(file),
      versionOf: (file) => this.versionOf(file),
    };
  }

  /** Resolves when nothing is being read that the findings of `file` depend on; without it, those of any file. */
  settled(file?: FileId): Promise<void> {
    if (file === undefined) this.#readAll();
    else this.#readNow(file);
    return this.#loader.settled(file);
  }

  /** As far as is known: for who reads the file when its turn has come, and looks again then. */
  settledSoFar(file: FileId): Promise<void> {
    return this.#loader.settled(file);
  }

  /** Whether nothing is being read that the findings of `file` depend on, as far as is known. */
  isSettled(file: FileId): boolean {
    return this.#loader.isSettled(file);
  }

  /** Resolves when every file is there that can be known, also those of the folders that nobody has opened. */
  async complete(): Promise<void> {
    this.#readAll();
    let folders: Promise<void> | undefined;
    while (folders !== this.#folders) {
      folders = this.#folders;
      await folders;
    }
    await this.settled();
  }

  open(uri: string, version: number, text: string): void {
    const file = this.#documents.know(uri);
    if (!this.#documents.isOpen(file)) this.#allowed.opened(file);
    this.#documents.open(file, uri, version, text);
    const isNamed = this.#read.delete(file) || this.#absent.delete(file) || this.#analyst.isUsed(file);
    this.#unread.set(file, text);
    this.#lookUpConfig(file);
    // Others must not be told of what it was before.
    if (isNamed) this.#readNow(file);
    this.#changes.bump({ kind: "other" });
  }

  /** Whether opened texts are still to be read. */
  get isReading(): boolean {
    return this.#unread.size > 0;
  }

  /** The files that are known, whether they have been read or not. */
  get all(): Iterable<FileId> {
    return new Set([...this.#analyst.analysis().files, ...this.#unread.keys()]);
  }

  /** Reads what was opened and nobody has asked about, one text a step. */
  *readRest(): Generator<void> {
    for (let next = this.#unread.keys().next(); !next.done; next = this.#unread.keys().next()) {
      this.#readNow(next.value);
      yield;
    }
  }

  /** Reads a text that was opened, and those that it uses. */
  #readNow(file: FileId): void {
    const text = this.#unread.get(file);
    if (text === undefined) return;
    this.#unread.delete(file);
    this.#analyst.setFile(file, text);
    this.#readMissing();
    // What stands by itself changes nothing that was said of others.
    if (this.#analyst.isUsed(file) || this.#analyst.analysis().usedBy(file).length > 1)
      this.#changes.bump({ kind: "other" });
    if (this.#unread.size === 0) this.#release();
  }

  #readAll(): void {
    for (const _ of this.readRest());
  }

  /** All opened texts are read: what was planned may be told. */
  #release(): void {
    const files = this.#kept;
    if (files.size === 0) return;
    this.#kept = new Set();
    this.plansChanged(files);
  }

  change(uri: string, version: number, changes: TextDocumentContentChangeEvent[]): void {
    const file = fileIdOf(uri);
    const edited = this.#documents.change(file, version, changes);
    if (edited === undefined) return;
    if (this.#unread.has(file)) this.#unread.set(file, edited.text);
    else this.#analyst.setFile(file, edited.text, edited.changed);
    this.#changes.bump({ kind: "edit", file });
    this.#readMissing();
  }

  /** The saved text takes the editor's place where something else still leads to the file. */
  close(uri: string): void {
    const file = fileIdOf(uri);
    if (!this.#documents.close(file)) return;
    this.#readAll();
    this.#planning.forget(file);
    this.#allowed.closed(file);
    const roots = this.#documents.openCount + (this.#folderFiles?.size ?? 0);
    const reachable = this.#sweeps.isTimeAfterClosing(roots) ? this.#reachable() : undefined;
    const isLedTo =
      reachable?.has(file) ?? (this.#folderFiles?.has(file) === true || this.#analyst.isUsed(file));
    if (isLedTo && this.#isInReach(file)) this.#loader.start(file, true);
    else this.#analyst.removeFile(file);
    if (reachable) this.#dropAllBut(reachable);
    this.#changes.bump({ kind: "other" });
    this.#readMissing();
  }

  /** A used file that was not there may be there now, also where the client watches nothing. */
  saved(): void {
    for (const file of this.#absent.keys()) if (this.#isInReach(file)) this.#loader.start(file, true);
  }

  changedOnDisk(events: readonly FileEvent[]): void {
    for (const { uri, type } of events) {
      const file = this.#documents.know(uri);
      if (this.#configs.isConfig(file)) this.#rereadConfig(file);
      else if (type === FileChangeType.Deleted) this.#forgetDeleted(file);
      else if (this.#takesUp(file)) this.#loader.start(file, true);
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
    const files = listed.slice(0, MAX_FILES).map((uri) => this.#documents.know(uri));
    const appeared = [...this.#folderFiles].filter((file) => !before.has(file));
    this.#folderFiles = new Set([...files, ...appeared]);
    // What nothing leads to is known only once all is read that was opened, which can wait where there is nothing to drop.
    if (this.#read.size > 0) this.#dropAllBut(this.#reachable());
    const unread = files.filter(
      (file) => this.#isInReach(file) && !this.#documents.isOpen(file) && !this.#read.has(file),
    );
    for (let start = 0; start < unread.length; start += BATCH) {
      await Promise.all(unread.slice(start, start + BATCH).map((file) => this.#loader.start(file, false)));
    }
  }

  #readMissing(): void {
    for (const file of this.#analyst.missingFiles()) {
      if (this.#unread.has(file)) {
        this.#readNow(file);
        continue;
      }
      const outOfReach = this.#reader.outOfReach(file, "recipe");
      if (this.#loader.want(file)) continue;
      if (this.#absent.has(file)) this.#analyst.setAbsent(file, this.#absent.get(file) ?? "");
      else if (outOfReach !== undefined) this.#setAbsent(file, outOfReach);
      else if (this.#read.size + this.#loader.size >= MAX_FILES) {
        this.#setAbsent(file, t`more than ${MAX_FILES} files are in use`);
      } else this.#loader.start(file, true);
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
      else this.#loader.start(file, true);
    }
    this.#configs.forget();
    this.#analyst.settingsChanged();
    for (const file of [...this.#documents.openFiles, ...this.#read.keys()]) this.#lookUpConfig(file);
  }

  #setAbsent(file: FileId, reason: string): void {
    this.#absent.set(file, reason);
    this.#analyst.setAbsent(file, reason);
    this.#changes.bump({ kind: "other" });
  }

  #take(file: FileId, result: ReadResult): void {
    if (this.#documents.isOpen(file)) return;
    if ("text" in result) this.#takeRead(file, result.text);
    else this.#takeAbsent(file, result.reason);
    this.#readMissing();
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
    this.#loader.lookUp(
      file,
      this.#configs.look(file).then(() => {
        if (this.#configs.of(file) === DEFAULT_CONFIG) return;
        this.#analyst.settingsChanged();
        this.#changes.bump({ kind: "other" });
      }),
    );
  }

  /** Where one goes, another further up may hold from now on. */
  #rereadConfig(config: FileId): void {
    const reread = async (): Promise<void> => {
      if (!(await this.#configs.reread(config))) return;
      for (const file of [...this.#documents.openFiles, ...this.#read.keys()]) await this.#configs.look(file);
      this.#analyst.settingsChanged();
      this.#changes.bump({ kind: "other" });
    };
    this.#loader.lookUp(undefined, reread());
  }

  #forgetDeleted(file: FileId): void {
    if (this.#folderFiles?.has(file)) {
      this.#folderFiles = new Set([...this.#folderFiles].filter((other) => other !== file));
    }
    if (this.#documents.isOpen(file)) return;
    if (this.#loader.again(file)) return;
    if (this.#read.delete(file)) {
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
    if (this.#documents.isOpen(file)) return false;
    const known = this.#read.has(file) || this.#absent.has(file) || this.#loader.isReading(file);
    return known || this.#folderFiles?.has(file) === true;
  }

  /** What the open files and the folders' files lead to, themselves included. */
  #reachable(): ReadonlySet<FileId> {
    this.#readAll();
    const analysis = this.#analyst.analysis();
    const roots = [...this.#documents.openFiles, ...(this.#folderFiles ?? [])];
    return reachableFrom(roots, (file) => analysis.usedBy(file));
  }

  #dropAllBut(reachable: ReadonlySet<FileId>): void {
    for (const file of [...this.#read.keys()]) {
      if (reachable.has(file)) continue;
      this.#read.delete(file);
      this.#analyst.removeFile(file);
    }
    this.#documents.keepOnly(reachable);
  }
}
