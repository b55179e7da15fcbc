/**
 * Where in a run something happens. Rules ask it at every step, so each answer is found once a run and remembered for
 * as long as the run is there: a long recipe costs its steps, not their square.
 */
import { firstIndex } from "../../../../grammar/src/binary-search.ts";
import { memo, onceFor } from "../once.ts";
import type { Action } from "./actions.ts";
import type { SurfaceRun } from "./run.ts";
import type { Coat } from "./state.ts";

/** Remembers answers about a run. Questions are told apart as objects, so each should be made only once. */
export function rememberedByRun<Q extends object, A>(
  answer: (run: SurfaceRun, question: Q) => A,
): (run: SurfaceRun, question: Q) => A {
  const ofRun = onceFor((run: SurfaceRun) => memo((question: Q) => answer(run, question)));
  return (run, question) => ofRun(run)(question);
}

type IsWanted = (action: Action) => boolean;

/** Index of the first action of a sort; the number of moments when there is none. */
export const firstIndexOf = rememberedByRun((run, isWanted: IsWanted): number => {
  const index = run.moments.findIndex(({ action }) => isWanted(action));
  return index < 0 ? run.moments.length : index;
});

/** Index of the last action of a sort; -1 when there is none. */
export const lastIndexOf = rememberedByRun((run, isWanted: IsWanted): number =>
  run.moments.findLastIndex(({ action }) => isWanted(action)),
);

export const isLayer = (action: Action): boolean => action.op === "layer";

export const isSanding = (action: Action): boolean =>
  action.op === "step" && (action.verb === "sand" || action.verb === "scuff");

/** Index of the moment that put a coat of this run on. */
export const putOnAt = ({ moments }: SurfaceRun, coat: Coat): number =>
  firstIndex(moments, ({ after }) => after.nextSerial > coat.serial);
