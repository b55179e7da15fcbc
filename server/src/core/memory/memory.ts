/**
 * Work that is remembered from one program to the next, because most keystrokes change one declaration.
 *
 * Each piece of work belongs to a declaration (or to a file) and is a pure function of what it is given and of what it
 * asks: what names mean, and other questions about the program. Questions and answers are written down. What was worked
 * out holds as long as it is given the same, names mean the same declarations, and the other questions have the same
 * answers. A declaration with unchanged text is the same object, so all of this is compared by identity.
 *
 * When the program changes, only the work that asked for the name of a changed declaration is looked into; the rest holds
 * without a look (build systems call this a verifying trace: A. Mokhov, N. Mitchell, S. Peyton Jones, Build systems à la
 * carte, Proc. ACM Program. Lang. 2 (2018), ICFP). What belongs to a declaration is forgotten with it, so a memory is as
 * large as its program. Each analyst has its own.
 */

import type { ModelDeclaration, Named } from "../model/model.ts";
import type { Program, ProgramFile, ProgramFiles, Scope } from "../model/program.ts";
import { MAX_SEEN_FILES } from "../model/use-graph.ts";
import { isSameList } from "../once.ts";
import { type Outcome, outcomeOf } from "../outcome.ts";
import type { FileId } from "../place.ts";
import { again, type Columns, carriedOver, carry, type Kept, NOT_YET, sameOutcome } from "./again.ts";
import { changesBetween, type Replaced } from "./changes.ts";
import {
  KIND_IN_SCOPE,
  type Lookup,
  lookupKey,
  placedKey,
  recordingScopes,
  stillMeans,
} from "./recording-scope.ts";

/** The declaration that work is about; of a file as a whole the declaration is empty. */
export interface Owner {
  readonly file: FileId;
  readonly declaration: string;
}

/** What can be asked about a program, beyond the meaning of names. */
export interface ProgramView {
  readonly scopeOf: (file: FileId) => Scope;
}

type AboutOf<F> = F extends (...about: infer A) => unknown ? A : never;
type AnswerOf<F> = F extends (...about: never) => infer A ? A : never;

/** How work asks, so that its questions are written down. */
export interface Asking<View extends ProgramView> {
  readonly scopeOf: (file: FileId) => Scope;
  /**
   * Any other question that the view answers; must have the same answer whenever it is put to the same view. It is kept by
   * its name, so that what is remembered holds on to nothing of the program for which it was worked out.
   */
  ask<Q extends keyof View>(
    question: Q,
    about: AboutOf<View[Q]>,
    isSame?: (a: AnswerOf<View[Q]>, b: AnswerOf<View[Q]>) => boolean,
  ): AnswerOf<View[Q]>;
  /**
   * Other work that this work builds on, remembered by itself. What it asked counts as asked by this work as well, so that
   * this holds only while that does; it may be given nothing but what is told by what this work is given and asks.
   */
  recall<T>(query: string, owner: Owner, given: readonly unknown[], work: (asking: Asking<View>) => T): T;
}

/** Work of one kind on many declarations of one file. */
export interface Each<T> {
  /** As in `recall`. */
  readonly query: string;
  /** Of each row, in their order. */
  readonly ownerOf: (row: number) => Owner;
  /** With the columns all that the work is given. */
  readonly columns: Columns;
  /** The same for all rows. */
  readonly shared?: readonly unknown[];
  /**
   * Recalls the query of a row's owner, and answers with what that came to or with what follows from it and from what the row
   * is given. What it throws is the outcome, and not remembered.
   */
  readonly ask: (row: number) => T;
  /** Told of the list before any row is asked: where one has to be, `NOT_YET` stands. */
  readonly onCarried?: (values: readonly Outcome<T>[]) => void;
  /** A row with which the rows come to more than one of these together is left out, and so is all behind it. */
  readonly bounds?: readonly Bound<T>[];
  /** Whether a row is to be asked in any case, being given more than is told here; told by what the columns say of it. */
  readonly isOpen?: (row: number) => boolean;
}

/** What rows may come to together. */
export interface Bound<T> {
  readonly most: number;
  /** Of one row, told by what it came to and by what the columns say of it. */
  readonly weigh: (outcome: Outcome<T>, row: number) => number;
}

/** The memory as one program sees it. */
export interface Remembered<View extends ProgramView> {
  /**
   * Does a piece of work, or gives what came of it before. `query` names the kind of work; work of one kind and owner may
   * only depend on what it is `given` and on what it asks. What throws is not remembered. Where the work has to be done
   * again and comes to the same (`isSame`), the former object is given again, so that work on it holds.
   */
  recall<T>(
    query: string,
    owner: Owner,
    given: readonly unknown[],
    work: (asking: Asking<View>) => T,
    isSame?: (before: T, now: T) => boolean,
  ): T;
  /**
   * What a piece of work came to when it was last done, whether or not that still holds: for what may stand until it can be
   * worked out again. The caller says by its own means what it is still true of.
   */
  last<T>(query: string, owner: Owner): T | undefined;
  /**
   * What recalled work comes to for each of a file's declarations, with a step after each that was asked. Those of which
   * what is remembered surely holds are not asked; while all of it is as it was, the list is the same object.
   */
  each<T>(file: FileId, work: Each<T>): Generator<void, readonly Outcome<T>[]>;
  /**
   * What pure functions of rows come to, those that throw among them, with a step after each that was worked out: those of rows that are about the same
   * as the last time are kept, unless `mayKeep` says no, and so is the list. `list` names it among those of its owner.
   */
  rows<T>(
    list: string,
    owner: Owner,
    columns: Columns,
    work: (row: number) => T,
    mayKeep?: (value: T) => boolean,
  ): Generator<void, readonly Outcome<T>[]>;
  /** The scope of a file, kept while nothing in it changes; `make` makes it. */
  scopeOf(file: FileId, make: () => Scope): Scope;
  /** To be given to work that depends only on how the declarations of these files name each other. */
  outlines(files: readonly FileId[]): readonly unknown[];
  /** The file and all that use it, directly or not, in no order; undefined where that is not known. */
  leadingTo(file: FileId): ReadonlySet<FileId> | undefined;
}

export interface Memory<View extends ProgramView> {
  /**
   * The memory for one program. Programs are opened in the order of their edits; once a newer one has been asked, what is
   * asked of an older one is worked out anew.
   */
  open(program: Program, view: View): Remembered<View>;
}

interface Question<View> {
  readonly question: keyof View;
  readonly about: readonly unknown[];
  readonly answer: unknown;
  isSame(a: unknown, b: unknown): boolean;
}

/** The view has an answer for each of its questions. */
const answerOf = <View>(view: View, question: keyof View, about: readonly unknown[]): unknown =>
  (view[question] as (...about: readonly unknown[]) => unknown)(...about);

interface Entry<View> {
  readonly given: readonly unknown[];
  readonly lookups: readonly Lookup[];
  readonly questions: readonly Question<View>[];
  readonly value: unknown;
  /** A name that was looked up is that of a changed declaration. */
  isDoubtful: boolean;
  /** Which uses of files it was last compared with. */
  uses: number;
  /** All its questions are about how declarations are arranged, which they were like this when they were last put. */
  readonly isArranged: boolean;
  arrangement: number;
  /** The program for which it was last found to hold. */
  program: number;
  /** Those that have become doubtful of the list that it is in. */
  doubted: Set<Entry<View>> | undefined;
}

/** What belongs to one declaration, by the kind of work. */
class Slot<View> extends Map<string, Entry<View>> {
  /** See `Remembered.rows` and `each`; most have none. */
  lists: Map<string, Kept<unknown>> | undefined;
  /** Its declaration is gone; should it come back, it begins anew. */
  isForgotten = false;
}

/** What recalled work came to, with the entries by which it holds. */
interface KeptEach<View, T> extends Kept<T> {
  readonly entries: readonly (Entry<View> | undefined)[];
  readonly shared: readonly unknown[];
  /** Of each bound, by row. */
  readonly weights: readonly (readonly number[])[];
  /** Which uses of files and which arrangement all its entries were last compared with, but for those that are doubted or open. */
  readonly uses: number;
  readonly arrangement: number;
  /** Those of its entries, and perhaps of former ones, that have become doubtful since. */
  readonly doubted: Set<Entry<View>>;
}

/** Without a memory all is worked out anew. */
export function anew<View extends ProgramView>(view: View): Remembered<View> {
  const asking: Asking<View> = {
    scopeOf: view.scopeOf,
    ask: (question, about) => answerOf(view, question, about) as AnswerOf<View[typeof question]>,
    recall: (_query, _owner, _given, work) => work(asking),
  };
  return {
    recall: asking.recall,
    last: () => undefined,
    *each(_file, { columns, ask, bounds = [] }) {
      const found: Outcome<ReturnType<typeof ask>>[] = [];
      const left = bounds.map(({ most }) => most);
      for (let row = 0; row < columns[0]!.length && left.every((each) => each >= 0); row += 1) {
        const outcome = outcomeOf(() => ask(row));
        for (const [which, { weigh }] of bounds.entries()) left[which]! -= weigh(outcome, row);
        if (left.every((each) => each >= 0)) found.push(outcome);
        yield;
      }
      return found;
    },
    *rows(_list, _owner, columns, work) {
      return (yield* again(undefined, columns, work)).values;
    },
    scopeOf: (_file, make) => make(),
    outlines: () => [],
    leadingTo: () => undefined,
  };
}

/**
 * `outlineOf` tells all of a declaration by which the declarations of a scope are arranged: see `outlines`. The questions
 * `byOutlines` have the same answer as long as no outline and no use of a file changes.
 */
export function createMemory<View extends ProgramView>(
  outlineOf: (model: ModelDeclaration) => string,
  byOutlines: ReadonlySet<keyof View> = new Set(),
): Memory<View> {
  const store = new Store<View>(outlineOf, byOutlines);
  let opened = 0;
  /** The newest program that was asked anything. */
  let current = -1;
  return {
    open: (program, view) => {
      const number = opened++;
      const isCurrent = (): boolean => {
        if (number > current) {
          current = number;
          store.moveTo(program, number);
        }
        return number === current;
      };
      const without = anew(view);
      return {
        recall: (query, owner, given, work, isSame) => {
          if (!isCurrent()) return without.recall(query, owner, given, work);
          const before = store.find(query, owner, given, view);
          // The kind of work and its owner stand for the type of what comes of it.
          const same = isSame as Parameters<typeof store.work>[5];
          return (before ?? store.work(query, owner, given, view, work, same)).value as ReturnType<
            typeof work
          >;
        },
        each: (file, work) => store.each(file, work, isCurrent),
        *rows<T>(
          list: string,
          owner: Owner,
          columns: Columns,
          work: (row: number) => T,
          mayKeep?: (value: T) => boolean,
        ) {
          const before = isCurrent() ? (store.lists(owner).get(list) as Kept<T> | undefined) : undefined;
          const kept = yield* again(before, columns, work, mayKeep);
          if (isCurrent()) store.lists(owner).set(list, kept);
          return kept.values;
        },
        last: <T>(query: string, owner: Owner) => (isCurrent() ? (store.last(query, owner) as T) : undefined),
        scopeOf: (file, make) => (isCurrent() ? store.scopeOf(file, make) : make()),
        leadingTo: (file) => (isCurrent() ? store.leadingTo(file) : undefined),
        outlines: (files) => (isCurrent() ? files.flatMap((file) => [file, store.outline(file)]) : []),
      };
    },
  };
}

class Store<View extends ProgramView> {
  readonly #outlineOf: (model: ModelDeclaration) => string;
  readonly #byOutlines: ReadonlySet<keyof View>;
  /** The program that it stands at, by its number. */
  #program = -1;
  /** Changes when files come to use others, or when used files come and go. */
  #uses = 0;
  #last: ProgramFiles | undefined;
  readonly #files = new Map<FileId, ProgramFile>();
  /** Those with `use` lines for a file, and how many each has. */
  readonly #users = new Map<FileId, Map<FileId, number>>();
  readonly #outlines = new Map<FileId, number>();
  #outlinesSeen = 0;
  readonly #scopes = new Map<FileId, Scope>();
  readonly #slots = new Map<FileId, Map<string, Slot<View>>>();
  /** The same by the declaration itself, which is quicker to find. */
  readonly #slotOf = new WeakMap<Owner, Slot<View>>();
  /** Work by the names that it asked for, and by the files in whose scopes it asked. */
  readonly #askers = new Map<string, Map<FileId, Set<Entry<View>>>>();

  constructor(outlineOf: (model: ModelDeclaration) => string, byOutlines: ReadonlySet<keyof View>) {
    this.#outlineOf = outlineOf;
    this.#byOutlines = byOutlines;
  }

  /** The lists that belong to a declaration or a file, by their names. */
  lists(owner: Owner): Map<string, Kept<unknown>> {
    const slot = this.#slot(owner);
    slot.lists ??= new Map();
    return slot.lists;
  }

  *each<T>(
    file: FileId,
    { query, ownerOf, columns, shared = [], ask, onCarried, bounds = [], isOpen }: Each<T>,
    isCurrent: () => boolean,
  ): Generator<void, readonly Outcome<T>[]> {
    const whole = { file, declaration: "" };
    const known = isCurrent() ? (this.lists(whole).get(query) as KeptEach<View, T> | undefined) : undefined;
    const before = known && isSameList(known.shared, shared) ? known : undefined;
    const { from, rows } = carriedOver(before, columns, before ? this.#doubtfulRows(before) : []);
    const values = carry<Outcome<T>>(before?.values, from, NOT_YET);
    for (const row of rows) values[row] = NOT_YET;
    onCarried?.(values);
    const entries = carry(before?.entries, from, undefined);
    const weights = bounds.map((_, which) => carry(before?.weights[which], from, 0));
    const open: number[] = [];
    const left = bounds.map(({ most }) => most);
    let weighed = 0;
    /** Whether the rows before this one are within all bounds; they are counted up to the first with which they are not. */
    const reaches = (row: number): boolean => {
      for (; weighed < row && left.every((each) => each >= 0); weighed += 1)
        for (let which = 0; which < left.length; which += 1) left[which]! -= weights[which]![weighed]!;
      return left.every((each) => each >= 0);
    };
    for (const row of rows) {
      if (!reaches(row)) break;
      const outcome = outcomeOf(() => ask(row));
      values[row] = sameOutcome(known?.values[row], outcome);
      const asked = isCurrent() && "value" in outcome ? this.#slot(ownerOf(row)).get(query) : undefined;
      entries[row] = asked?.program === this.#program ? asked : undefined;
      for (let which = 0; which < left.length; which += 1)
        weights[which]![row] = bounds[which]!.weigh(outcome, row);
      if (entries[row] === undefined || this.#isOpen(entries[row]) || isOpen?.(row)) open.push(row);
      yield;
    }
    const count = reaches(columns[0]!.length) ? values.length : weighed - 1;
    for (const list of [values, entries, ...weights]) list.length = count;
    const doubted = known?.doubted ?? new Set();
    for (const row of rows) if (entries[row]) entries[row].doubted = doubted;
    for (const entry of doubted) if (!entry.isDoubtful || !entries.includes(entry)) doubted.delete(entry);
    const isAsBefore = (row: number): boolean => values[row] === known!.values[row];
    const isSame =
      count === known?.values.length &&
      // Where nothing has moved, only what was asked can have come to something else.
      (from ? values.every((_, row) => isAsBefore(row)) : rows.every(isAsBefore));
    const kept: KeptEach<View, T> = {
      columns,
      shared,
      entries,
      weights,
      doubted,
      uses: this.#uses,
      arrangement: this.#arrangement(),
      values: isSame ? known.values : values,
      open: open.filter((row) => row < count),
    };
    if (isCurrent()) this.lists(whole).set(query, kept);
    return kept.values;
  }

  /** Those of which a look is needed whether they still hold; next to none of them need be looked at for that. */
  #doubtfulRows({ entries, doubted, uses, arrangement }: KeptEach<View, unknown>): readonly number[] {
    const rows: number[] = [];
    const isSameAround = uses === this.#uses && arrangement === this.#arrangement();
    if (isSameAround && doubted.size <= FEW) {
      for (const entry of doubted) {
        const row = entries.indexOf(entry);
        if (row >= 0) rows.push(row);
      }
      return rows;
    }
    for (let row = 0; row < entries.length; row += 1) {
      const entry = entries[row];
      if (entry && !this.#surelyHolds(entry)) rows.push(row);
    }
    return rows;
  }

  /** Without another look: no name that it looked up and no arrangement has changed, and it asked nothing else. */
  #surelyHolds(entry: Entry<View>): boolean {
    if (entry.isDoubtful || entry.uses !== this.#uses || this.#isOpen(entry)) return false;
    return entry.questions.length === 0 || entry.arrangement === this.#arrangement();
  }

  /** It asked what may have another answer after any edit. */
  #isOpen({ questions, isArranged }: Entry<View>): boolean {
    return questions.length > 0 && !isArranged;
  }

  #doubt(entry: Entry<View>): void {
    entry.isDoubtful = true;
    entry.doubted?.add(entry);
  }

  /** A file may see no more files than this, so that an outline of another may count where more are used. */
  #arrangement(): number {
    return this.#users.size + 1 < MAX_SEEN_FILES ? this.#outlinesSeen : Number.NaN;
  }

  outline(file: FileId): number | undefined {
    return this.#outlines.get(file);
  }

  last(query: string, owner: Owner): unknown {
    return this.#slot(owner).get(query)?.value;
  }

  find(query: string, owner: Owner, given: readonly unknown[], view: View): Entry<View> | undefined {
    const entry = this.#slot(owner).get(query);
    return entry && this.#holds(entry, given, view) ? entry : undefined;
  }

  work(
    query: string,
    owner: Owner,
    given: readonly unknown[],
    view: View,
    work: (asking: Asking<View>) => unknown,
    isSame?: (before: unknown, now: unknown) => boolean,
  ): Entry<View> {
    const lookups = new Map<string, Lookup>();
    const questions: Question<View>[] = [];
    const value = work({
      scopeOf: recordingScopes(view.scopeOf, lookups),
      recall: (query, owner, given, work) => {
        const within = this.find(query, owner, given, view) ?? this.work(query, owner, given, view, work);
        for (const lookup of within.lookups) lookups.set(placedKey(lookup), lookup);
        questions.push(...within.questions);
        return within.value as ReturnType<typeof work>;
      },
      ask: (question, about, isSame = Object.is) => {
        const answer = answerOf(view, question, about);
        questions.push({ question, about, answer, isSame: isSame as Question<View>["isSame"] });
        return answer as AnswerOf<View[typeof question]>;
      },
    });
    const slot = this.#slot(owner);
    const before = slot.get(query);
    const entry: Entry<View> = {
      given,
      lookups: [...lookups.values()],
      questions,
      value: before && isSame?.(before.value, value) ? before.value : value,
      isDoubtful: false,
      uses: this.#uses,
      isArranged: questions.every(({ question }) => this.#byOutlines.has(question)),
      arrangement: this.#outlinesSeen,
      program: this.#program,
      doubted: undefined,
    };
    if (before) this.#forget(before);
    slot.set(query, entry);
    for (const lookup of entry.lookups) {
      const key = lookupKey(lookup);
      const byFile = this.#askers.get(key) ?? new Map<FileId, Set<Entry<View>>>();
      this.#askers.set(key, byFile);
      const askers = byFile.get(lookup.file);
      if (askers) askers.add(entry);
      else byFile.set(lookup.file, new Set([entry]));
    }
    return entry;
  }

  #holds(entry: Entry<View>, given: readonly unknown[], view: View): boolean {
    if (!isSameList(entry.given, given)) return false;
    if (entry.program === this.#program) return true;
    if (entry.isDoubtful || entry.uses !== this.#uses) {
      if (!entry.lookups.every((lookup) => stillMeans(lookup, view.scopeOf))) return false;
      entry.isDoubtful = false;
      entry.uses = this.#uses;
    }
    for (const { question, about, answer, isSame } of entry.questions)
      if (!isSame(answer, answerOf(view, question, about))) return false;
    entry.program = this.#program;
    entry.arrangement = this.#outlinesSeen;
    return true;
  }

  #slot(owner: Owner): Slot<View> {
    const known = this.#slotOf.get(owner);
    if (known && !known.isForgotten) return known;
    const { file, declaration } = owner;
    const ofFile = this.#slots.get(file) ?? new Map<string, Slot<View>>();
    this.#slots.set(file, ofFile);
    const slot = ofFile.get(declaration) ?? new Slot<View>();
    ofFile.set(declaration, slot);
    this.#slotOf.set(owner, slot);
    return slot;
  }

  #forget(entry: Entry<View>): void {
    // Nobody tells it any more when a name changes.
    this.#doubt(entry);
    for (const lookup of entry.lookups) {
      const key = lookupKey(lookup);
      const byFile = this.#askers.get(key);
      const askers = byFile?.get(lookup.file);
      askers?.delete(entry);
      if (askers?.size === 0) byFile?.delete(lookup.file);
      if (byFile?.size === 0) this.#askers.delete(key);
    }
  }

  #forgetAll(file: FileId, declaration: string): void {
    const ofFile = this.#slots.get(file);
    const slot = ofFile?.get(declaration);
    if (!slot) return;
    slot.isForgotten = true;
    for (const entry of slot.values()) this.#forget(entry);
    ofFile?.delete(declaration);
  }

  moveTo({ files }: Program, number: number): void {
    this.#program = number;
    const changed = this.#last && files.changedSince?.(this.#last);
    this.#last = files;
    for (const id of changed ?? new Set([...files.keys(), ...this.#files.keys()])) {
      const before = this.#files.get(id);
      const now = files.get(id);
      if (before !== now) this.#change(id, before, now);
    }
  }

  #change(id: FileId, before: ProgramFile | undefined, now: ProgramFile | undefined): void {
    const isUsed = this.#users.has(id);
    const isSameUse = before && now ? hasSameUses(before, now) : !isUsed;
    if (!isSameUse) this.#uses += 1;
    if (before) this.#countUses(before, -1);
    if (now) this.#countUses(now, 1);
    const { names, gone, isRearranged, replaced } = changesBetween(before, now, this.#outlineOf);
    const isReplaced = replaced !== undefined && isSameUse;
    // What nobody uses is in no scope but its own.
    if (!isUsed) {
      const own = this.#scopes.get(id);
      if (own && isReplaced) this.#scopes.set(id, replaced.reduce(withReplaced, own));
      else this.#scopes.delete(id);
    } else if (isReplaced && this.#scopes.size <= MOST_SCOPES) this.#replace(replaced);
    else this.#scopes.clear();
    for (const key of names) {
      const byFile = this.#askers.get(key);
      const askers = isUsed ? [...(byFile?.values() ?? [])] : [byFile?.get(id) ?? []];
      for (const each of askers) for (const entry of each) this.#doubt(entry);
    }
    for (const declaration of gone) this.#forgetAll(id, declaration);
    if (isRearranged) this.#outlines.set(id, ++this.#outlinesSeen);
    if (now) this.#files.set(id, now);
    else {
      this.#forgetAll(id, "");
      this.#files.delete(id);
      this.#slots.delete(id);
      this.#outlines.delete(id);
    }
  }

  scopeOf(file: FileId, make: () => Scope): Scope {
    const known = this.#scopes.get(file) ?? make();
    this.#scopes.set(file, known);
    return known;
  }

  /** Puts what declarations mean now into the scopes that have them. */
  #replace(replaced: readonly Replaced[]): void {
    for (const [file, scope] of this.#scopes) {
      const changed = replaced.reduce(withReplaced, scope);
      if (changed !== scope) this.#scopes.set(file, changed);
    }
  }

  #countUses(file: ProgramFile, change: 1 | -1): void {
    for (const { target } of file.uses) {
      const users = this.#users.get(target) ?? new Map<FileId, number>();
      this.#users.set(target, users);
      const times = (users.get(file.id) ?? 0) + change;
      if (times > 0) users.set(file.id, times);
      else users.delete(file.id);
      if (users.size === 0) this.#users.delete(target);
    }
  }

  leadingTo(file: FileId): ReadonlySet<FileId> {
    const leading = new Set([file]);
    for (const each of leading) for (const user of this.#users.get(each)?.keys() ?? []) leading.add(user);
    return leading;
  }
}

/** So many entries are looked for in a list one by one; for more all of it is gone through. */
const FEW = 8;

/** So many scopes are brought up to date; more are made anew as they are asked for. */
const MOST_SCOPES = 64;

function withReplaced(scope: Scope, { before, now }: Replaced): Scope {
  const kind = KIND_IN_SCOPE[before.kind];
  const names: ReadonlyMap<string, Named> = scope[kind];
  return names.get(before.name) === before
    ? { ...scope, [kind]: new Map<string, Named>(names).set(now.name, now) }
    : scope;
}

const hasSameUses = (a: ProgramFile, b: ProgramFile): boolean =>
  isSameList(
    a.uses.map(({ target }) => target),
    b.uses.map(({ target }) => target),
  );
