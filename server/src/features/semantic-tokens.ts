/**
 * Colours by meaning: which word is a field, which a word of the notation, and what a name stands for.
 *
 * An editor's own grammar colours a word by where it stands on its line; here it is known in which block that is, and
 * whether `clear` is a parameter or a material. A name that stands for nothing known has no colour of its own.
 */
import { type NameUse, namesOf } from "../../../grammar/src/names.ts";
import { CONTEXTUAL_WORDS } from "../../../grammar/src/tokens.ts";
import type { DeclarationTree, FilePiece, Span, Token } from "../../../grammar/src/tree.ts";
import type { FileId } from "../core/place.ts";
import type { Referent } from "../core/resolution/reference.ts";
import { tokenSpan, tokensOfPiece } from "./file-tokens.ts";
import type { Names, Occurrence } from "./names.ts";
import type { SemanticToken, TokenModifier, TokenType } from "./types.ts";

type Meaning = Omit<SemanticToken, "span">;

export function semanticTokensOf(
  names: Names,
  file: FileId,
  which: "all" | "words",
  part?: Span,
): readonly SemanticToken[] {
  const pieces = names.program.files.get(file)?.tree.pieces ?? [];
  const meanings = new Map(names.inFile(file).map((name) => [name.span.start, meaningOfName(name)]));
  return pieces
    .filter((piece) => meets(part, { start: piece.offset, end: piece.offset + piece.length }))
    .flatMap((piece) => pieceTokens(piece, meanings, which))
    .filter(({ span }) => meets(part, span));
}

const meets = (part: Span | undefined, span: Span): boolean =>
  part === undefined || (part.start <= span.end && span.start <= part.end);

function pieceTokens(
  piece: FilePiece,
  meanings: ReadonlyMap<number, Meaning | undefined>,
  which: "all" | "words",
): readonly SemanticToken[] {
  const words = piece.kind === "declaration" ? wordMeanings(piece) : undefined;
  return tokensOfPiece(piece).flatMap((token) => {
    const isWord = token.kind === "word";
    if (!isWord && which === "words") return [];
    const named = meanings.get(token.start) ?? words?.get(token.start);
    const isJoint = isWord && words !== undefined && CONTEXTUAL_WORDS.has(token.text);
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

/** What the words of the notation are, by their offsets in the file. */
function wordMeanings({ body, offset }: DeclarationTree): ReadonlyMap<number, Meaning> {
  return new Map(
    namesOf(body).flatMap((use) => {
      const meaning = meaningOfWord(use);
      return meaning ? [[use.name.span.start + offset, meaning] as const] : [];
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
