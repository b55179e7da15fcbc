/**
 * Hover: what the word under the cursor stands for, with the figures that follow from it.
 *
 * The word is found by its part in the tree, never by its spelling; where no word is meant, the line speaks for itself.
 * Figures come with their sums, so that a reader can do them again. Each kind of thing has its card in this folder.
 */
import { type NameUse, namesOf } from "../../../../grammar/src/names.ts";
import type { Span, Statement } from "../../../../grammar/src/tree.ts";
import { absoluteSpan, locate, touches } from "../../../../grammar/src/walk.ts";
import type { Checker } from "../../core/check.ts";
import { isPackagePath } from "../../core/model/package-path.ts";
import type { FileId } from "../../core/place.ts";
import type { HoverInfo } from "../types.ts";
import { checkerForHover, leftText } from "./checker-for-hover.ts";
import type { HoverContext } from "./context.ts";
import { keywordCard } from "./keyword-card.ts";
import { quantityCard } from "./quantity-card.ts";
import { referenceCard } from "./reference-card.ts";
import { sectionHere } from "./section-here.ts";
import { useCard } from "./use-card.ts";
import { vocabularyCard } from "./vocabulary-card.ts";
import { isWork, workCard } from "./work-card.ts";

export function hoverAt(
  checker: Checker,
  file: FileId,
  offset: number,
  findingsAtHand: HoverContext["findingsAtHand"],
): HoverInfo | undefined {
  const found = checker.program.files.get(file);
  const location = found && locate(found.tree, offset);
  const declaration = location?.declaration && found?.byKey.get(location.declaration.key);
  if (!found || !location || !declaration || isInComment(location)) return undefined;
  const use = nameAt(namesOf(declaration.tree.body), location.offset);
  const { hovering, left } = checkerForHover(checker, [declaration.lowered.model?.name, use?.name.text]);
  const ctx: HoverContext = {
    checker: hovering,
    file,
    scope: checker.scope(file),
    declaration,
    location,
    findingsAtHand,
    ...(use ? { use } : {}),
  };
  const said = (use && nameHover(ctx, use)) ?? nodeHover(ctx);
  const section = said && sectionHere(ctx);
  return (
    said && {
      span: absoluteSpan(declaration.tree, said.span),
      markdown: `${said.markdown}${leftText(left())}`,
      ...(section ? { section } : {}),
      ...packageOf(ctx),
    }
  );
}

function packageOf({ checker, file, location }: HoverContext): Pick<HoverInfo, "fromPackage"> {
  const syntax = location.declaration?.body.syntax;
  const path = syntax?.kind === "use" ? syntax.path?.value : undefined;
  if (path === undefined || !isPackagePath(path)) return {};
  const target = checker.program.files.get(file)?.uses.find((use) => use.path === path)?.target;
  return target !== undefined && checker.program.files.has(target) ? { fromPackage: { target, path } } : {};
}

interface Said {
  readonly span: Span;
  readonly markdown: string;
}

const said = (span: Span, markdown: string | undefined): Said | undefined =>
  markdown === undefined || markdown === "" ? undefined : { span, markdown };

/** The name that an offset is in; at its end only if no other begins there. */
function nameAt(names: readonly NameUse[], offset: number): NameUse | undefined {
  const touching = names.filter(({ name }) => touches(name.span, offset));
  return touching.find(({ name }) => name.span.start === offset || offset < name.span.end) ?? touching[0];
}

function isInComment({ token }: HoverContext["location"]): boolean {
  return token?.kind === "comment" || token?.kind === "doc-comment";
}

function nameHover(ctx: HoverContext, use: NameUse): Said | undefined {
  switch (use.role) {
    case "keyword":
      return said(use.name.span, keywordCard(ctx, use));
    case "vocabulary":
      return vocabularyCard(ctx, use);
    case "unit":
      return undefined;
    default:
      return said(use.name.span, referenceCard(ctx, use));
  }
}

/** No word, or one that says nothing by itself: the quantity, the path of a `use`, else the line. */
function nodeHover(ctx: HoverContext): Said | undefined {
  const { path, statement, declaration } = ctx.location;
  const quantity = path.findLast((node) => node.kind === "quantity");
  if (quantity && "parts" in quantity) {
    const card = quantityCard(quantity as Parameters<typeof quantityCard>[0]);
    if (card) return said(quantity.span, card);
  }
  const syntax = declaration?.body.syntax;
  if (syntax?.kind === "use" && syntax.path && touches(syntax.path.span, ctx.location.offset)) {
    return said(syntax.path.span, useCard(ctx, syntax.path.value));
  }
  return statement && touches(statement.span, ctx.location.offset)
    ? said(statement.span, lineCard(ctx, statement))
    : undefined;
}

function lineCard(ctx: HoverContext, statement: Statement): string | undefined {
  if (statement.kind === "broken") return undefined;
  return isWork(statement)
    ? workCard(ctx, statement)
    : keywordCard(ctx, { name: statement.keyword, role: "keyword", statement });
}
