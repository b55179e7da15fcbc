/**
 * The outline of a file: its declarations, the surfaces of pieces, and the lines of recipes as they are done.
 *
 * Half-typed text gives symbols all the same. A name that is not there yet is shown as such, because an outline entry
 * without a name is refused by editors.
 */

import { t, translated } from "../../../grammar/src/translate.ts";
import type {
  Declaration,
  DeclarationTree,
  RecipeStatement,
  Span,
  Statement,
  SurfaceStatement,
} from "../../../grammar/src/tree.ts";
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import { areaText } from "../core/measure/figures.ts";
import type { ModelDeclaration } from "../core/model/model.ts";
import type { Program, ProgramDeclaration } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import { extentOf, lineText } from "../views/places/statement-extent.ts";
import type { DocumentSymbolInfo, SymbolKind } from "./types.ts";

export function symbolsOf(program: Program, file: FileId): readonly DocumentSymbolInfo[] {
  return program.files.get(file)?.declarations.map(declarationSymbol) ?? [];
}

function declarationSymbol({ tree, lowered }: ProgramDeclaration): DocumentSymbolInfo {
  const { syntax } = tree.body;
  const notation = syntax.kind === "use" && syntax.notation ? `notation ${syntax.notation.text}` : undefined;
  const name = syntax.kind === "use" ? (syntax.path?.value ?? notation) : syntax.name?.text;
  const nameSpan = (syntax.kind === "use" ? syntax.path?.span : syntax.name?.span) ?? syntax.keyword.span;
  return {
    name: name || t`(${translated(syntax.kind)} without a name)`,
    detail: detailOf(syntax, lowered.model),
    kind: syntax.kind,
    ...spans(tree, syntax.span, nameSpan),
    children: childrenOf(tree, syntax, lowered.model),
  };
}

function detailOf(syntax: Declaration, model: ModelDeclaration | undefined): string {
  const more =
    model?.kind === "material"
      ? model.familyName && translated(model.familyName)
      : model?.kind === "recipe"
        ? model.parameters.map((parameter) => parameter.name).join(", ")
        : model?.kind === "job"
          ? model.pieces.map(({ piece, count }) => (count === 1 ? piece : `${piece} x ${count}`)).join(", ")
          : undefined;
  return syntax.title?.value || more || "";
}

function childrenOf(
  tree: DeclarationTree,
  syntax: Declaration,
  model: ModelDeclaration | undefined,
): readonly DocumentSymbolInfo[] {
  if (syntax.kind === "piece") {
    return syntax.fields.flatMap((field) =>
      field.kind === "surface" ? [surfaceSymbol(tree, field, model)] : [],
    );
  }
  return syntax.kind === "recipe" ? recipeSymbols(tree, syntax.statements) : [];
}

function surfaceSymbol(
  tree: DeclarationTree,
  statement: SurfaceStatement,
  model: ModelDeclaration | undefined,
): DocumentSymbolInfo {
  const surface =
    model?.kind === "piece" ? model.surfaces.find(({ name }) => name === statement.name?.text) : undefined;
  const facts = [
    ...(surface && !surface.areaGap && surface.areaM2 > 0 ? [areaText(surface.areaM2)] : []),
    ...(surface?.substrate.name ? [translated(surface.substrate.name)] : []),
  ];
  return {
    name: statement.name?.text || t`(surface without a name)`,
    detail: facts.join(", "),
    kind: "surface",
    ...spans(tree, extentOf(tree.body, statement), (statement.name ?? statement.keyword).span),
    children: [],
  };
}

function recipeSymbols(
  tree: DeclarationTree,
  statements: readonly RecipeStatement[],
): readonly DocumentSymbolInfo[] {
  return statements.flatMap((statement): readonly DocumentSymbolInfo[] => {
    const kind = kindOf(statement);
    if (!kind) return [];
    const { body } = tree;
    const afterWord = { start: statement.keyword.span.end, end: statement.span.end };
    const says = lineText(body, afterWord).replace(/,$/u, "");
    return [
      {
        name: statement.kind === "follow" ? `follow ${says}`.trim() : says || `(${statement.kind})`,
        detail: statement.kind,
        kind,
        ...spans(tree, extentOf(body, statement), nameSpanOf(statement, afterWord)),
        children: statement.kind === "layer" ? recipeSymbols(tree, statement.block ?? []) : [],
      },
    ];
  });
}

/** `follow` does another recipe's steps, so it stands among the steps. */
function kindOf(statement: Statement): SymbolKind | undefined {
  switch (statement.kind) {
    case "layer":
    case "step":
    case "wait":
      return statement.kind;
    case "follow":
      return "step";
    default:
      return undefined;
  }
}

function nameSpanOf(statement: RecipeStatement, afterWord: Span): Span {
  if (statement.kind === "layer" && statement.material) return statement.material.span;
  if (statement.kind === "step" && statement.verb) return statement.verb.span;
  if (statement.kind === "follow" && statement.call) return statement.call.name.span;
  return afterWord.end > afterWord.start
    ? { start: statement.keyword.span.start, end: afterWord.end }
    : statement.keyword.span;
}

/** Absolute, with the name inside the whole, as editors demand. */
function spans(tree: DeclarationTree, whole: Span, name: Span): { span: Span; nameSpan: Span } {
  const both = { start: Math.min(whole.start, name.start), end: Math.max(whole.end, name.end) };
  return { span: absoluteSpan(tree, both), nameSpan: absoluteSpan(tree, name) };
}
