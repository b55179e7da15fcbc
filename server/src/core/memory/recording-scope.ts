/**
 * A scope that writes down every name that is looked up in it, and what it meant.
 */
import type { Named } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import type { FileId } from "../place.ts";

export type ScopeKind = keyof Scope;

/** Singular words of declarations, by the part of a scope that holds them. */
export const KIND_IN_SCOPE = {
  material: "materials",
  piece: "pieces",
  shop: "shops",
  recipe: "recipes",
  job: "jobs",
} as const satisfies Record<string, ScopeKind>;

/** What a name meant in a file, or with `names` which names of a kind it could use. */
export interface Lookup {
  readonly file: FileId;
  readonly kind: ScopeKind;
  readonly name: string;
  readonly found: Named | undefined;
  readonly names?: readonly string[];
}

/** By this a look-up is found when what it depends on changes. */
export const lookupKey = ({ kind, name, names }: Lookup): string =>
  names ? allNames(kind) : nameKey(kind, name);

/** The same in one file. */
export const placedKey = (lookup: Lookup): string => `${lookupKey(lookup)}\u0000${lookup.file}`;

export const nameKey = (kind: ScopeKind, name: string): string => `${kind}\u0000${name}`;

/** Of look-ups of all names of a kind; no name is empty. */
export const allNames = (kind: ScopeKind): string => nameKey(kind, "");

export function stillMeans(
  { file, kind, name, found, names }: Lookup,
  scopeOf: (file: FileId) => Scope,
): boolean {
  const known: ReadonlyMap<string, Named> = scopeOf(file)[kind];
  if (!names) return known.get(name) === found;
  let index = 0;
  for (const each of known.keys()) if (each !== names[index++]) return false;
  return index === names.length;
}

/** The same scopes, with every question and its answer written into `lookups`. */
export function recordingScopes(
  scopeOf: (file: FileId) => Scope,
  lookups: Map<string, Lookup>,
): (file: FileId) => Scope {
  const known = new Map<FileId, Scope>();
  return (file) => {
    const before = known.get(file);
    if (before) return before;
    const scope = scopeOf(file);
    const recording: Scope = {
      materials: new RecordingNames(scope.materials, file, "materials", lookups),
      pieces: new RecordingNames(scope.pieces, file, "pieces", lookups),
      shops: new RecordingNames(scope.shops, file, "shops", lookups),
      recipes: new RecordingNames(scope.recipes, file, "recipes", lookups),
      jobs: new RecordingNames(scope.jobs, file, "jobs", lookups),
    };
    known.set(file, recording);
    return recording;
  };
}

class RecordingNames<T extends Named> implements ReadonlyMap<string, T> {
  readonly #names: ReadonlyMap<string, T>;
  readonly #file: FileId;
  readonly #kind: ScopeKind;
  readonly #lookups: Map<string, Lookup>;

  constructor(names: ReadonlyMap<string, T>, file: FileId, kind: ScopeKind, lookups: Map<string, Lookup>) {
    this.#names = names;
    this.#file = file;
    this.#kind = kind;
    this.#lookups = lookups;
  }

  #write(lookup: Pick<Lookup, "name" | "found" | "names">): void {
    const written: Lookup = { file: this.#file, kind: this.#kind, ...lookup };
    this.#lookups.set(placedKey(written), written);
  }

  get(name: string): T | undefined {
    const found = this.#names.get(name);
    this.#write({ name, found });
    return found;
  }

  has(name: string): boolean {
    return this.get(name) !== undefined;
  }

  get size(): number {
    this.#writeAll();
    return this.#names.size;
  }

  #writeAll(): void {
    this.#write({ name: "", found: undefined, names: [...this.#names.keys()] });
  }

  keys(): MapIterator<string> {
    this.#writeAll();
    return this.#names.keys();
  }

  values(): MapIterator<T> {
    this.#writeAll();
    for (const [name, found] of this.#names) this.#write({ name, found });
    return this.#names.values();
  }

  entries(): MapIterator<[string, T]> {
    this.values();
    return this.#names.entries();
  }

  [Symbol.iterator](): MapIterator<[string, T]> {
    return this.entries();
  }

  forEach(take: (value: T, name: string, names: ReadonlyMap<string, T>) => void): void {
    for (const [name, value] of this.entries()) take(value, name, this);
  }
}
