/** What sharing a shop does to a job, in words. */
import { t } from "../../../../grammar/src/translate.ts";
import { momentText } from "../../core/measure/figures.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { andList } from "../../core/model/suggest.ts";
import type { Among, Holdup, Schedule } from "../../core/schedule/types.ts";
import { markdownCode as code } from "../../escape/markdown.ts";

/** More are no help to whoever reads it. */
const MOST_NAMED = 3;

/** The names of the other jobs in the plan. */
export const othersAmong = ({ names, place }: Among): readonly string[] => names.toSpliced(place, 1);

/** Sentences with names in backticks, about a job in its shop's plan; empty for one that is planned by itself. */
export function amongSentences({ among, heldByAir }: Schedule): readonly string[] {
  if (among === undefined) return [];
  const names = namesText(among);
  const with_ = among.inOrder
    ? t`Planned with ${names}, job by job in the order of \`ready\``
    : t`Planned with ${names}`;
  return [`${with_}: ${effectText(among, heldByAir !== undefined)}.`];
}

/** Sentences about a job that is looked at alone: what its shop's other jobs do to it by the plan `inShop`. */
export function aloneSentences(inShop: Schedule): readonly string[] {
  const { among, lastWorkAt, heldByAir } = inShop;
  // Where nobody else needs the people of the shop, there is nothing to be said.
  if (among === undefined || lastWorkAt === undefined) return [];
  const beside = t`Planned with ${namesText(among)}, its last work is ${momentText(lastWorkAt)}`;
  return [t`This looks at the job alone.`, `${beside}: ${effectText(among, heldByAir !== undefined)}.`];
}

function effectText({ laterHours, heldBy }: Among, isHeldByAir: boolean): string {
  if (laterHours === 0) return t`no later than alone`;
  const later = t`${formatDuration(laterHours)} later than alone`;
  const named = heldBy.slice(0, MOST_NAMED);
  const listOf = (reason: Holdup["why"]): string =>
    andList(
      named
        .filter(({ why }) => why === reason)
        .map(({ job, hours }) => `${code(job)} (${formatDuration(hours)})`),
    );
  const [after, people] = [listOf("after"), listOf("people")];
  const reasons = [
    ...(after ? [t`it comes after ${after}`] : []),
    ...(people ? [t`people are at work on ${people}`] : []),
  ];
  if (isHeldByAir) reasons.push(t`the room's air has to carry away what all of them give off`);
  return reasons.length > 0 ? t`${later}, because ${andList(reasons)}` : later;
}

/** The first three, and how many more there are. */
function namesText({ names, place }: Among): string {
  const others = names.slice(0, MOST_NAMED + 1).filter((_, at) => at !== place);
  const named = others.slice(0, MOST_NAMED).map(code);
  const left = names.length - 1 - named.length;
  return andList(left > 0 ? [...named, t`${left} more`] : named);
}
