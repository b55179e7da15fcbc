/** What an `apply` or a `follow` line comes to: its surfaces, and what the recipe does to each, with the sums. */
import { t } from "../../../../grammar/src/translate.ts";
import type { ApplyStatement, FollowStatement } from "../../../../grammar/src/tree.ts";
import { type Portion, portionSums } from "../../views/sums/portion-sums.ts";
import { bullets, code, firstFew, nested, paragraphs } from "../markdown.ts";
import { allJobs, type HoverContext, isHere } from "./context.ts";

/** Every surface is a long list of its own. */
const MOST_SURFACES = 4;

export function applyCard(ctx: HoverContext, apply: ApplyStatement): string {
  const { model } = ctx.declaration.lowered;
  const results = model?.kind === "job" ? [ctx.checker.job(model)] : [];
  return callCard("apply", apply, portionsThrough(ctx, apply, results));
}

/** In every job that leads there. */
export const followCard = (ctx: HoverContext, follow: FollowStatement): string =>
  callCard("follow", follow, portionsThrough(ctx, follow, allJobs(ctx.checker)));

function callCard(
  word: string,
  { call }: ApplyStatement | FollowStatement,
  portions: readonly Portion[],
): string {
  const name = call ? code(call.name.text) : t`a recipe`;
  return paragraphs(`**${word}** ${name}`, portionBullets(portions, word === "follow"));
}

/** A list for every surface, headed by its name and, where there are several jobs, the job's. */
export const portionBullets = (portions: readonly Portion[], withJobs: boolean): string =>
  bullets(
    firstFew(
      portions,
      (portion) => {
        const { result, run } = portion;
        const job = withJobs ? `${code(result.job.name)}, ` : "";
        return nested(`${job}${code(run.label)}`, portionSums(portion));
      },
      MOST_SURFACES,
    ),
  );

/** What comes about because of this line: it stands among the frames of each action. */
function portionsThrough(
  ctx: HoverContext,
  { span }: ApplyStatement | FollowStatement,
  results: ReturnType<typeof allJobs>,
): readonly Portion[] {
  return results.flatMap((result) =>
    result.runs.flatMap((run): readonly Portion[] => {
      const moments = run.moments.filter(({ action }) =>
        action.frames.some((frame) => isHere(ctx, frame, span)),
      );
      return moments.length > 0 ? [{ result, run, moments }] : [];
    }),
  );
}
