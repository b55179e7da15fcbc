/**
 * All names in all files with what they mean: the ground on which going to definitions, references, highlights, renaming
 * and call hierarchies stand.
 *
 * A `Names` belongs to one analysis. It works out the names of a file when it is first asked about it.
 */
import type { Span } from "../../../../grammar/src/tree.ts";
import { absoluteSpan, locate, touches } from "../../../../grammar/src/walk.ts";
import type { Checker } from "../../core/check.ts";
import type { Recipe } from "../../core/model/model.ts";
import type { Program, ProgramDeclaration, UseLink } from "../../core/model/program.ts";
import type { FileId } from "../../core/place.ts";
import { isDeclaring, type Reference, type Referent, referentsOf } from "../../core/resolution/reference.ts";
import { callMeant, type Resolution } from "../../core/resolution/resolve.ts";
import { calledRecipes, type HandedOn, type HandedOnRecipes, handedOnRecipes } from "./recipe-arguments.ts";

/** A name where it stands. */
export interface Occurrence {
  readonly file: FileId;
  readonly declaration: ProgramDeclaration;
  readonly use: Reference;
  readonly span: Span;
  readonly referents: readonly Referent[];
  readonly isDeclaration: boolean;
}

export interface Names {
  readonly checker: Checker;
  readonly program: Program;
  /** In the order of the text. Words of the notation are none, but for `all`, which means surfaces. */
  inFile(file: FileId): readonly Occurrence[];
  inDeclaration(file: FileId, declaration: ProgramDeclaration): readonly Occurrence[];
  /** Whether all is known that a name may mean; not so where recipes are handed on without measure. */
  readonly isComplete: boolean;
  /** The name that an offset is in or at an end of. */
  at(file: FileId, offset: number): Occurrence | undefined;
  /** In all files, the names that may mean one of these. */
  meaning(referents: readonly Referent[]): readonly Occurrence[];
  /** The recipes that a name in front of a call's arguments may mean; undefined for other names. */
  called(occurrence: Occurrence): readonly Recipe[] | undefined;
}

export function createNames(checker: Checker): Names {
  const { program } = checker;
  let recipes: HandedOnRecipes | undefined;
  const handedOn = (): HandedOnRecipes => {
    recipes ??= handedOnRecipes(checker);
    return recipes;
  };
  const known = new Map<FileId, readonly Occurrence[]>();
  const handedOnTo: HandedOn = (parameter) => handedOn().handedOn(parameter);
  const inDeclaration = (file: FileId, declaration: ProgramDeclaration): readonly Occurrence[] =>
    occurrencesIn(file, declaration, checker.resolution(file, declaration), handedOnTo);
  const inFile = (file: FileId): readonly Occurrence[] => {
    const found =
      known.get(file) ??
      (program.files.get(file)?.declarations ?? []).flatMap((declaration) =>
        inDeclaration(file, declaration),
      );
    known.set(file, found);
    return found;
  };
  return {
    checker,
    program,
    inFile,
    inDeclaration,
    get isComplete() {
      return handedOn().isComplete;
    },
    at: (file, offset) => {
      const found = inFile(file).filter(({ span }) => touches(span, offset));
      return found.find(({ span }) => offset < span.end) ?? found[0];
    },
    meaning: (referents) => {
      const keys = new Set(referents.map(({ key }) => key));
      const files = keys.size === 0 ? [] : [...program.files.keys()];
      return files.flatMap((file) =>
        inFile(file).filter((occurrence) => occurrence.referents.some(({ key }) => keys.has(key))),
      );
    },
    called: ({ file, declaration, use: { name, statement } }) => {
      const call = statement?.kind === "follow" || statement?.kind === "apply" ? statement.call : undefined;
      if (call?.name !== name) return undefined;
      const meant = callMeant(checker.resolution(file, declaration), call);
      return meant ? calledRecipes(meant, handedOnTo) : [];
    },
  };
}

/** The `use` line in whose path an offset is. */
export function usePathAt(
  program: Program,
  file: FileId,
  offset: number,
): (UseLink & { readonly at: Span }) | undefined {
  const found = program.files.get(file);
  const piece = found && locate(found.tree, offset)?.declaration;
  const link = piece && found?.uses.find(({ place }) => place.declaration === piece.key);
  if (!link) return undefined;
  const at = absoluteSpan(piece, link.place.span);
  return touches(at, offset) ? { ...link, at } : undefined;
}

/** What stands in one declaration, kept while it neither changes nor moves and its names mean the same. */
const KNOWN = new WeakMap<
  Resolution,
  { readonly offset: number; readonly occurrences: readonly Occurrence[] }
>();

function occurrencesIn(
  file: FileId,
  declaration: ProgramDeclaration,
  resolution: Resolution,
  handedOn: HandedOn,
): readonly Occurrence[] {
  const { tree } = declaration;
  const known = KNOWN.get(resolution);
  if (known?.offset === tree.offset) return known.occurrences;
  const occurrences = resolution.references.map(
    (use): Occurrence => ({
      file,
      declaration,
      use,
      span: absoluteSpan(tree, use.name.span),
      referents: referentsOf(use, handedOn),
      isDeclaration: isDeclaring(use),
    }),
  );
  // What is handed on to a parameter depends on the whole program.
  if (!resolution.references.some(({ through }) => through))
    KNOWN.set(resolution, { offset: tree.offset, occurrences });
  return occurrences;
}
