/** Words that start a line, a tail or a declaration: what they mean, and what this line comes to. */

import type { NameUse } from "../../../../grammar/src/names.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Statement } from "../../../../grammar/src/tree.ts";
import { moneyText } from "../../core/measure/figures.ts";
import type { Job } from "../../core/model/model.ts";
import { sentence } from "../../core/sentence.ts";
import { noDateText, unpromised } from "../../views/missing-inputs.ts";
import { jobDates } from "../../views/schedule/job-dates.ts";
import { coldNote } from "../../views/schedule/plan-notes.ts";
import { paragraphs, plain } from "../markdown.ts";
import { type HoverContext, isHere } from "./context.ts";
import { figure } from "./job-card.ts";
import { surfaceCard } from "./place-cards.ts";
import { doneResult, factCard } from "./record-cards.ts";
import { declarationCard } from "./reference-card.ts";
import { useCard } from "./use-card.ts";
import { declarationWordCard, lineWordCard, tailCard, type WordBlock } from "./word-cards.ts";
import { isWork, workCard } from "./work-card.ts";

export function keywordCard(ctx: HoverContext, { name, statement }: NameUse): string | undefined {
  if (!statement) {
    const { syntax } = ctx.declaration.lowered;
    const card =
      syntax.kind === "use" ? syntax.path && useCard(ctx, syntax.path.value) : declarationCard(ctx);
    return paragraphs(declarationWordCard(name.text), card);
  }
  if (name.span.start !== statement.keyword.span.start)
    return statement.kind === "done" ? factCard(name.text) : tailCard(name.text);
  const word = lineWordCard(blockOf(ctx, statement), name.text);
  const line = lineResult(ctx, statement);
  return paragraphs(word, line) || undefined;
}

/** The block in which a statement stands. */
export function blockOf(ctx: HoverContext, statement: Statement): WordBlock {
  const kind = ctx.declaration.lowered.syntax.kind;
  const inner = ctx.location.path.findLast(
    (node) => (node.kind === "surface" || node.kind === "layer") && node !== statement,
  );
  if (inner?.kind === "surface") return "surface";
  if (inner?.kind === "layer") return "layer";
  return kind === "use" ? "recipe" : kind;
}

function lineResult(ctx: HoverContext, statement: Statement): string | undefined {
  if (isWork(statement)) return workCard(ctx, statement);
  switch (statement.kind) {
    case "done":
      return doneResult(ctx, statement);
    case "field":
      return fieldResult(ctx, statement);
    case "surface": {
      const { model } = ctx.declaration.lowered;
      const surface =
        model?.kind === "piece" && model.surfaces.find(({ name }) => name === statement.name?.text);
      return surface && model?.kind === "piece" ? surfaceCard(ctx, surface, model) : undefined;
    }
    default:
      return undefined;
  }
}

/** What follows from one field: the area of a shape, the date or the sum beside a wish. */
function fieldResult(ctx: HoverContext, statement: Statement): string | undefined {
  const { model } = ctx.declaration.lowered;
  if (model?.kind === "piece") {
    const shape = model.surfaces
      .flatMap(({ shapes }) => shapes)
      .find(({ place }) => isHere(ctx, place, statement.span));
    return shape && plain(shape.working);
  }
  return model?.kind === "job" ? wishResult(ctx, model, statement.keyword.text) : undefined;
}

function wishResult(ctx: HoverContext, job: Job, word: string): string | undefined {
  const result = ctx.checker.job(job);
  if (word === "ready" || word === "start") {
    const kept = unpromised(result);
    if (kept) return `${sentence(noDateText())}: ${kept.reasons.join(", ")}.`;
    const cold = coldNote(result)
      .map((note) => `\n\n${note}`)
      .join("");
    return `${sentence(
      jobDates(result)
        .map(
          ({ name, text, reason, at }) =>
            `${translated(name)} ${text}${at === undefined && reason ? `, ${reason}` : ""}`,
        )
        .join("; "),
    )}.${cold}`;
  }
  if (word !== "budget") return undefined;
  return `${figure(result, "total_cost", t`Cost`, (amount) => moneyText(amount, result.shop?.currency))}.`;
}
