/**
 * All names in all files with what they mean: the ground on which going to definitions, references, highlights, renaming
 * and call hierarchies stand.
 *
 * A `Names` belongs to one analysis. It works out the names of a file when it is first asked about it.
 */
import { type NameUse, namesOf } from "../../../grammar/src/names.ts";
import type { Span } from "../../../grammar/src/tree.ts";
import { absoluteSpan, locate, touches } from "../../../grammar/src/walk.ts";
import type { Checker } from "../core/check.ts";
import type { Recipe } from "../core/model/model.ts";
import type { Program, ProgramDeclaration, UseLink } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import { calledRecipes, type HandedOnRecipes, handedOnRecipes } from "./names/handed-on.ts";
import type { Referent } from "./names/referent.ts";
import { callerOf, type NameContext, referentsOf } from "./names/resolve.ts";

/** A name where it stands. */
export interface Occurrence {
  readonly file: FileId;
  readonly declaration: ProgramDeclaration;
  readonly use: NameUse;
  readonly span: Span;
  readonly referents: readonly Referent[];
  readonly isDeclaration: boolean;
}

export interface Names {
  readonly checker: Checker;
  readonly program: Program;
  /** In the order of the text. Words of the notation are none, but for `all`, which means surfaces. */
  inFile(file: FileId): readonly Occurrence[];
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
  const context = (file: FileId, declaration: ProgramDeclaration): NameContext => ({
    file,
    scope: checker.scope(file),
    declaration,
    handedOn: (parameter) => handedOn().handedOn(parameter),
  });
  const inFile = (file: FileId): readonly Occurrence[] => {
    const found =
      known.get(file) ??
      (program.files.get(file)?.declarations ?? []).flatMap((declaration) =>
        occurrencesIn(context(file, declaration)),
      );
    known.set(file, found);
    return found;
  };
  return {
    checker,
    program,
    inFile,
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
      const ctx = context(file, declaration);
      return calledRecipes(call, ctx.scope, callerOf(ctx), ctx.handedOn);
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

const DECLARING: ReadonlySet<NameUse["role"]> = new Set(["declaration-name", "surface-name", "parameter"]);

function occurrencesIn(ctx: NameContext): readonly Occurrence[] {
  const { file, declaration } = ctx;
  return namesOf(declaration.tree.body)
    .filter(isName)
    .map((use) => ({
      file,
      declaration,
      use,
      span: absoluteSpan(declaration.tree, use.name.span),
      referents: referentsOf(ctx, use),
      isDeclaration: DECLARING.has(use.role),
    }));
}

function isName({ role, name, statement }: NameUse): boolean {
  if (role === "keyword" || role === "unit") return false;
  return role !== "vocabulary" || (statement?.kind === "apply" && name.text === "all");
}
