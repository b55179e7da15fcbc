/**
 * A program: a set of parsed files, what each declares and uses, and the scope that a file sees.
 *
 * Built from plain data; which file a `use` path means is decided by the adapter, which passes `resolve`. Used files
 * that were not supplied are edges all the same (`UseLink.target`), so that supplying them later mends the scope.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { DeclarationTree, FileTree, UseDeclaration } from "../../../../grammar/src/tree.ts";
import { attempt, type Fault } from "../internal-error.ts";
import { builtInFamily, builtInMaterialNames } from "../knowledge/built-in-materials.ts";
import { onceFor } from "../once.ts";
import type { FileId, Place } from "../place.ts";
import { lower } from "./lower.ts";
import { builtInMaterial } from "./lower-material.ts";
import type { Job, LoweredDeclaration, Material, ModelDeclaration, Piece, Recipe, Shop } from "./model.ts";
import { useGraph } from "./use-graph.ts";

export interface UseLink {
  readonly path: string;
  readonly place: Place;
  readonly target: FileId;
}

export interface ProgramDeclaration {
  readonly tree: DeclarationTree;
  readonly lowered: LoweredDeclaration;
}

export interface ProgramFile {
  readonly id: FileId;
  readonly tree: FileTree;
  readonly declarations: readonly ProgramDeclaration[];
  readonly byKey: DeclarationsByKey;
  readonly uses: readonly UseLink[];
  /** What could not be read for a fault in this program. */
  readonly faults: readonly Fault[];
}

/** The declarations of a file by their keys. */
export interface DeclarationsByKey {
  get(key: string): ProgramDeclaration | undefined;
}

/** Files by their names; a map that knows can tell what changed, so that not all have to be looked at. */
export interface ProgramFiles extends ReadonlyMap<FileId, ProgramFile> {
  /** Those that came, went or changed since an earlier state; undefined where that is not known. */
  changedSince?(earlier: ReadonlyMap<FileId, ProgramFile>): readonly FileId[] | undefined;
}

export interface Program {
  readonly files: ProgramFiles;
  /** Used files that cannot be had, with the reason. */
  readonly absent: ReadonlyMap<FileId, string>;
}

/** Everything a file can name. The first declaration of a name counts; `check-names` reports the others. */
export interface Scope {
  readonly materials: ReadonlyMap<string, Material>;
  readonly pieces: ReadonlyMap<string, Piece>;
  readonly shops: ReadonlyMap<string, Shop>;
  readonly recipes: ReadonlyMap<string, Recipe>;
  readonly jobs: ReadonlyMap<string, Job>;
}

/** Lowers the declarations of one file. Bodies that were lowered before under the same key are taken from `previous`. */
export function programFile(
  id: FileId,
  tree: FileTree,
  resolve: (from: FileId, path: string) => FileId,
  previous?: ProgramFile,
): ProgramFile {
  const declarations: ProgramDeclaration[] = [];
  const uses: UseLink[] = [];
  const faults: Fault[] = [];
  let hasSameKeys = previous !== undefined;
  for (const piece of tree.pieces) {
    if (piece.kind !== "declaration") continue;
    // Most often it stands at the same place.
    const there = previous?.declarations[declarations.length];
    const isThere = there?.tree.key === piece.key;
    hasSameKeys &&= isThere;
    const before = isThere ? there : previous?.byKey.get(piece.key);
    if (before?.tree === piece) declarations.push(before);
    else {
      const lowered = before?.tree.body === piece.body ? before.lowered : lower(id, piece.key, piece.body);
      declarations.push({ tree: piece, lowered });
    }
    const { syntax } = piece.body;
    if (syntax.kind !== "use" || !syntax.path) continue;
    const { value } = syntax.path;
    const part = { part: t`The search for this file`, place: pathPlace(id, piece.key, syntax) };
    uses.push(...attempt(faults, part, () => [useLink(id, piece.key, syntax, value, resolve)], []));
  }
  hasSameKeys &&= previous?.declarations.length === declarations.length;
  const byKey =
    hasSameKeys && previous?.byKey instanceof ByKey
      ? previous.byKey.withThe(declarations)
      : ByKey.of(declarations);
  return { id, tree, declarations, byKey, uses, faults };
}

/** Where the keys stand is found once for all states of a file that have the same ones. */
class ByKey implements DeclarationsByKey {
  readonly #declarations: readonly ProgramDeclaration[];
  readonly #places: ReadonlyMap<string, number>;

  private constructor(declarations: readonly ProgramDeclaration[], places: ReadonlyMap<string, number>) {
    this.#declarations = declarations;
    this.#places = places;
  }

  static of(declarations: readonly ProgramDeclaration[]): ByKey {
    return new ByKey(declarations, new Map(declarations.map(({ tree }, place) => [tree.key, place])));
  }

  /** Of declarations that have the same keys in the same order. */
  withThe(declarations: readonly ProgramDeclaration[]): ByKey {
    return new ByKey(declarations, this.#places);
  }

  get(key: string): ProgramDeclaration | undefined {
    const place = this.#places.get(key);
    return place === undefined ? undefined : this.#declarations[place];
  }
}

function useLink(
  file: FileId,
  declaration: string,
  syntax: UseDeclaration,
  path: string,
  resolve: (from: FileId, path: string) => FileId,
): UseLink {
  return { path, place: pathPlace(file, declaration, syntax), target: resolve(file, path) };
}

const pathPlace = (file: FileId, declaration: string, syntax: UseDeclaration): Place => ({
  file,
  declaration,
  span: syntax.path!.span,
});

/** What a file declares, those without a name left out; gathered once, since every file that sees it asks. */
export const modelsOf = onceFor((file: ProgramFile): readonly ModelDeclaration[] => {
  const models: ModelDeclaration[] = [];
  for (const { lowered } of file.declarations)
    if (lowered.model && lowered.model.name !== "") models.push(lowered.model);
  return models;
});

/** The file itself and all it uses, directly or not, each once, those that it mentions itself first. */
export const reachableFiles = (program: Program, from: FileId): readonly FileId[] =>
  useGraph(program).reachable(from);

/** Whether `target` can be reached from `from` by at least one `use`. */
export const usesTransitively = (program: Program, from: FileId, target: FileId): boolean =>
  useGraph(program).reaches(from, target);

const BUILT_INS: ReadonlyMap<string, Material> = new Map(
  builtInMaterialNames().map((name) => [name, builtInMaterial(name, builtInFamily(name)!)]),
);

/** What a file can name that sees these files: what they declare, the first of a name, and the built-in materials. */
export function scopeOf(program: Program, files: readonly FileId[]): Scope {
  const materials = new Map<string, Material>();
  const pieces = new Map<string, Piece>();
  const shops = new Map<string, Shop>();
  const recipes = new Map<string, Recipe>();
  const jobs = new Map<string, Job>();
  const add = <T>(map: Map<string, T>, name: string, value: T) => {
    if (!map.has(name)) map.set(name, value);
  };
  for (const id of files) {
    const declared = program.files.get(id);
    for (const model of declared ? modelsOf(declared) : []) {
      if (model.kind === "material") add(materials, model.name, model);
      else if (model.kind === "piece") add(pieces, model.name, model);
      else if (model.kind === "shop") add(shops, model.name, model);
      else if (model.kind === "recipe") add(recipes, model.name, model);
      else add(jobs, model.name, model);
    }
  }
  for (const [name, material] of BUILT_INS) add(materials, name, material);
  return { materials, pieces, shops, recipes, jobs };
}
