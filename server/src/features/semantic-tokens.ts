/**
 * Colours by meaning: which word is a field, which a word of the notation, and what a name stands for.
 *
 * An editor's own grammar colours a word by where it stands on its line; here it is known in which block that is, and
 * whether `clear` is a parameter or a material. A name that stands for nothing known has no colour of its own.
 */

import { type NameUse, namesOf } from "../../../grammar/src/names.ts";
import { CONTEXTUAL_WORDS } from "../../../grammar/src/tokens.ts";
import { ownTokens, tokensOfBody } from "../../../grammar/src/tokens-of.ts";
import type { DeclarationTree, FilePiece, Span, Token } from "../../../grammar/src/tree.ts";
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import type { ProgramFile } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { Referent } from "../core/resolution/reference.ts";
import type { Resolution } from "../core/resolution/resolve.ts";
import { tokenSpan } from "./file-tokens.ts";
import type { Names, Occurrence } from "./names/names.ts";
import type { SemanticToken, TokenModifier, TokenPiece, TokenType } from "./types.ts";

type Meaning = Omit<SemanticToken, "span">;

export function semanticTokensOf(
  names: Names,
  file: FileId,
  which: "all" | "words",
  part?: Span,
): readonly SemanticToken[] {
  const found = names.program.files.get(file);
  return (found?.tree.pieces ?? [])
    .filter((piece) => meets(part, { start: piece.offset, end: piece.offset + piece.length }))
    .flatMap((piece) =>
      tokensOf(names, found!, piece, which).map(({ span, ...meaning }) => ({
        span: absoluteSpan(piece, span),
        ...meaning,
      })),
    )
    .filter(({ span }) => meets(part, span));
}

export function tokenPiecesOf(names: Names, file: FileId, which: "all" | "words"): readonly TokenPiece[] {
  const found = names.program.files.get(file);
  return (found?.tree.pieces ?? []).map((piece) => ({
    offset: piece.offset,
    tokens: tokensOf(names, found!, piece, which),
  }));
}

const meets = (part: Span | undefined, span: Span): boolean =>
  part === undefined || (part.start <= span.end && span.start <= part.end);

/** The tokens of a piece, at offsets in it. */
function tokensOf(
  names: Names,
  file: ProgramFile,
  piece: FilePiece,
  which: "all" | "words",
): readonly SemanticToken[] {
  const declaration = piece.kind === "declaration" ? file.byKey.get(piece.key) : undefined;
  if (piece.kind !== "declaration" || declaration?.tree !== piece) return plainTokens(piece, which);
  const resolution = names.checker.resolution(file.id, declaration);
  const known = KNOWN[which].get(resolution);
  if (known?.body === piece.body) return known.tokens;
  const occurrences = names.inDeclaration(file.id, declaration);
  const tokens = declarationTokens(piece, occurrences, which);
  // What is handed on to a parameter depends on the whole program.
  if (!resolution.references.some(({ through }) => through))
    KNOWN[which].set(resolution, { body: piece.body, tokens });
  return tokens;
}

interface Known {
  readonly body: DeclarationTree["body"];
  readonly tokens: readonly SemanticToken[];
}

const KNOWN: Readonly<Record<"all" | "words", WeakMap<Resolution, Known>>> = {
  all: new WeakMap(),
  words: new WeakMap(),
};

/** Outside of declarations no word means anything. */
function plainTokens(piece: FilePiece, which: "all" | "words"): readonly SemanticToken[] {
  if (which === "words") return [];
  return ownTokens(piece).flatMap((token) => {
    const meaning = BY_KIND[token.kind];
    return meaning ? [{ span: tokenSpan(token), ...meaning }] : [];
  });
}

function declarationTokens(
  { body, offset }: DeclarationTree,
  occurrences: readonly Occurrence[],
  which: "all" | "words",
): readonly SemanticToken[] {
  const meanings = new Map(occurrences.map((name) => [name.span.start - offset, meaningOfName(name)]));
  const words = wordMeanings(body);
  return tokensOfBody(body).flatMap((token) => {
    const isWord = token.kind === "word";
    if (!isWord && which === "words") return [];
    const named = meanings.get(token.start) ?? words.get(token.start);
    const isJoint = isWord && CONTEXTUAL_WORDS.has(token.text);
    const meaning = isWord ? (named ?? (isJoint ? as("operator") : undefined)) : BY_KIND[token.kind];
    return meaning ? [{ span: tokenSpan(token), ...meaning }] : [];
  });
}

const as = (type: TokenType, ...modifiers: readonly TokenModifier[]): Meaning => ({ type, modifiers });

/** A unit is part of its quantity: there is no type of its own for it. */
const BY_KIND: Readonly<Partial<Record<Token["kind"], Meaning>>> = {
  comment: as("comment"),
  "doc-comment": as("comment", "documentation"),
  string: as("string"),
  number: as("number"),
  unit: as("number"),
  date: as("number"),
  time: as("number"),
};

/** What the words of the notation are, by their offsets in the declaration. */
function wordMeanings(body: DeclarationTree["body"]): ReadonlyMap<number, Meaning> {
  return new Map(
    namesOf(body).flatMap((use) => {
      const meaning = meaningOfWord(use);
      return meaning ? [[use.name.span.start, meaning] as const] : [];
    }),
  );
}

function meaningOfWord({ name, role, statement }: NameUse): Meaning | undefined {
  switch (role) {
    case "keyword": {
      const isFirst = statement?.keyword === name;
      if (!isFirst || statement.kind !== "field") return as("keyword");
      return statement.value.form === "unknown" ? undefined : as("property");
    }
    case "vocabulary":
      if (statement === undefined) return as("type");
      return statement.kind === "step" && statement.verb === name ? as("method") : as("enumMember");
    case "unit":
      return as("number");
    default:
      return undefined;
  }
}

function meaningOfName({ referents, isDeclaration }: Occurrence): Meaning | undefined {
  const [referent] = referents;
  if (referent === undefined) return undefined;
  const { type, modifiers } = OF_REFERENT[referent.kind];
  return as(
    type,
    ...(isDeclaration ? (["declaration"] as const) : []),
    ...modifiers,
    // What is built in stands nowhere.
    ...(referent.place === undefined ? (["defaultLibrary"] as const) : []),
  );
}

const OF_REFERENT: Readonly<Record<Referent["kind"], Meaning>> = {
  material: as("variable", "readonly"),
  parameter: as("parameter"),
  recipe: as("function"),
  piece: as("class"),
  surface: as("struct"),
  shop: as("namespace"),
  job: as("event"),
};
