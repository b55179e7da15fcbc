/** What a line of work comes to: a layer, a step, a wait, or the recipe that it hands over to. */
import type { Statement } from "../../../../grammar/src/tree.ts";
import { applyCard, followCard } from "./apply-card.ts";
import type { HoverContext } from "./context.ts";
import { layerCard } from "./layer-card.ts";
import { stepCard } from "./step-card.ts";
import { waitCard } from "./wait-card.ts";

const WORK = ["layer", "step", "wait", "apply", "follow"] as const;

type WorkStatement = Extract<Statement, { readonly kind: (typeof WORK)[number] }>;

export const isWork = (statement: Statement): statement is WorkStatement =>
  (WORK as readonly string[]).includes(statement.kind);

export function workCard(ctx: HoverContext, statement: WorkStatement): string | undefined {
  switch (statement.kind) {
    case "layer":
      return layerCard(ctx, statement);
    case "step":
      return stepCard(ctx, statement);
    case "wait":
      return waitCard(ctx, statement);
    case "apply":
      return applyCard(ctx, statement);
    case "follow":
      return followCard(ctx, statement);
  }
}
