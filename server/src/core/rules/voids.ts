/**
 * Why no date of a job can be promised: a coat that never dries where it is put on, one that does not hold on what lies
 * below, old paint that nobody has tested. Whoever works by dates of such a job waits for nothing.
 *
 * The rules say so (`voids`), where they find an error or their report says it itself. What is done already, by the record of
 * the job, is past mending, and what a comment allows is answered for.
 */
import { translated } from "../../../../grammar/src/translate.ts";
import { onceFor } from "../once.ts";
import type { Place } from "../place.ts";
import { samePlace } from "../place.ts";
import type { SurfaceRun } from "../surface/run.ts";
import type { Draft, Judge, Judgement } from "./engine.ts";
import { rankOf } from "./registry.ts";
import type { VoidedBy } from "./rule.ts";

export interface DateVoid extends VoidedBy {
  readonly rule: string;
  /** The lines that suffer, and on which surface. */
  readonly causes: readonly { readonly surface: string; readonly place: Place }[];
}

/** Each reason once, lead first, then the rest of what harms people, else in the order of the surfaces and rules; `isAllowed` tells of a rule at a place. */
export function dateVoids(
  runs: readonly SurfaceRun[],
  judge: Pick<Judge, "run">,
  isAllowed: (rule: string, place: Place) => boolean,
): readonly DateVoid[] {
  const voids = new Map<string, DateVoid & { readonly causes: DateVoid["causes"][number][] }>();
  for (const run of runs)
    for (const { draft, voided } of voidingIn(judge.run(run))) {
      if (isDone(run, draft.cause) || isAllowed(draft.rule.id, draft.place)) continue;
      const cause = { surface: run.label, place: draft.cause };
      const known = voids.get(voided.reason);
      if (known) known.causes.push(cause);
      else voids.set(voided.reason, { rule: draft.rule.id, ...voided, causes: [cause] });
    }
  return [...voids.values()].sort((a, b) => rankOf(a.rule) - rankOf(b.rule));
}

/** Looked for once, since every edit asks it of all jobs, and most have none. */
const voidingIn = onceFor(({ drafts }: Judgement) =>
  drafts.flatMap((draft) => {
    const voided = voidedBy(draft);
    return voided ? [{ draft, voided }] : [];
  }),
);

function voidedBy({ rule, report }: Draft): VoidedBy | undefined {
  if (report.voids) return report.voids;
  const isError = (report.severity ?? rule.severity) === "error";
  if (!isError || rule.voids === undefined) return undefined;
  const reason = translated(rule.voids);
  return { reason, brief: reason };
}

/** Whether all that a run does at a place is done on every piece. */
function isDone({ moments, record }: SurfaceRun, place: Place): boolean {
  if (!record) return false;
  return moments.every(
    ({ action }, index) =>
      !samePlace(action.place, place) || record.done.every((ofPiece) => ofPiece.has(index)),
  );
}
