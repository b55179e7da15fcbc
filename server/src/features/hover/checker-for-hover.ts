/**
 * A hover must not wait for all jobs of a long file: it tells of those that are known, and of some more that it works out,
 * those first that name what it is about; and says how many it has left out.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { Checker } from "../../core/check.ts";
import type { JobsAtHand } from "../../core/checker.ts";
import type { Job } from "../../core/model/model.ts";
import type { FileId } from "../../core/place.ts";

/** So many jobs are worked out for one hover. */
export const MOST_WORKED_OUT = 20;

export interface CheckerForHover {
  readonly hovering: Checker;
  /** How many jobs were left out so far. */
  readonly left: () => number;
}

/** `about`: the names that the hover is about. */
export function checkerForHover(checker: Checker, about: readonly (string | undefined)[]): CheckerForHover {
  const names = new Set(about.filter((name) => name !== undefined));
  const wanted = ({ name, pieces, applies, shop }: Job): boolean =>
    names.has(name) ||
    (shop !== undefined && names.has(shop.name)) ||
    pieces.some(({ piece }) => names.has(piece)) ||
    applies.some(({ syntax }) => syntax.call !== undefined && names.has(syntax.call.name.text));
  const asked = new Map<FileId, JobsAtHand>();
  const jobsOf = (file: FileId): JobsAtHand => {
    const found = asked.get(file) ?? checker.jobsAtHand(file, MOST_WORKED_OUT, wanted);
    asked.set(file, found);
    return found;
  };
  return {
    hovering: {
      ...checker,
      assumed: (recipe) => checker.assumedAtHand(recipe) ?? checker.assumed(recipe),
      assumedIfSound: checker.assumedAtHand,
      jobs: (file) => jobsOf(file).results,
      job: (job) => jobsOf(job.file).results.find((result) => result.job === job) ?? checker.job(job),
    },
    left: () => [...asked.values()].reduce((sum, each) => sum + each.left, 0),
  };
}

/** The last words of a hover that has left out so many jobs. */
export const leftText = (left: number): string =>
  left === 0
    ? ""
    : `\n\n${left === 1 ? t`One more job is still being worked out and not counted here.` : t`${left} more jobs are still being worked out and not counted here.`}`;
