/**
 * From the syntax of one declaration to its meaning. Depends on the declaration's own text alone, so that the result
 * can be kept as long as that text stays the same.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { Declaration, DeclarationBody } from "../../../../grammar/src/tree.ts";
import { faultMessage, INTERNAL_ERROR } from "../internal-error.ts";
import type { FileId } from "../place.ts";
import { lowerJob } from "./lower-job.ts";
import { lowerMaterial } from "./lower-material.ts";
import { lowerPiece } from "./lower-piece.ts";
import { lowerRecipe } from "./lower-recipe.ts";
import { lowerShop } from "./lower-shop.ts";
import { type Lowering, placeOf } from "./lowering.ts";
import type { LoweredDeclaration, ModelDeclaration, Named } from "./model.ts";

/** Reads one declaration; never throws: of one that cannot be read an `internal-error` is all that comes. `key` is its `DeclarationTree.key`. */
export function lower(file: FileId, key: string, body: DeclarationBody): LoweredDeclaration {
  const ctx: Lowering = { file, declaration: key, findings: [] };
  ctx.findings.push(...body.problems.map((problem) => ({ rule: "syntax", ...problem })));
  const problems = [...ctx.findings];
  try {
    const model = lowerDeclaration(ctx, body.syntax);
    return { syntax: body.syntax, ...(model ? { model } : {}), findings: ctx.findings };
  } catch (error) {
    const message = faultMessage([t`The reading of this declaration`], error);
    const fault = { rule: INTERNAL_ERROR, span: body.syntax.headSpan, message };
    return { syntax: body.syntax, findings: [...problems, fault] };
  }
}

function lowerDeclaration(ctx: Lowering, syntax: Declaration): ModelDeclaration | undefined {
  if (syntax.kind === "use") return undefined;
  const head = placeOf(ctx, syntax.headSpan);
  const named: Named = {
    file: ctx.file,
    declaration: ctx.declaration,
    name: syntax.name?.text ?? "",
    ...(syntax.title ? { title: syntax.title.value } : {}),
    docs: syntax.docs,
    namePlace: syntax.name ? placeOf(ctx, syntax.name.span) : head,
    headPlace: head,
  };
  switch (syntax.kind) {
    case "material":
      return lowerMaterial(ctx, syntax, named);
    case "piece":
      return lowerPiece(ctx, syntax, named);
    case "shop":
      return lowerShop(ctx, syntax, named);
    case "recipe":
      return lowerRecipe(ctx, syntax, named);
    case "job":
      return lowerJob(ctx, syntax, named);
  }
}
