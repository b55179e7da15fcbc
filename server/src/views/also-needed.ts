/**
 * What a job needs beside what is in cans, as its lines name it: sandpaper, what puts coats on, what is worn, and where oily
 * rags go. It has no amounts, as the lines have none.
 */

import { lookUp } from "../../../grammar/src/look-up.ts";
import { t, translated } from "../../../grammar/src/translate.ts";
import type { SurfaceRun } from "../core/surface/run.ts";
import { jobPaper } from "../core/totals/paper.ts";
import { GEAR_WORDS, wornTogether } from "./sheet/gear.ts";
import { methodOf } from "./sheet/words.ts";

export interface AlsoNeeded {
  /** `to wear` */
  readonly name: string;
  readonly items: readonly string[];
}

/** By grit, the coarsest first. */
export const sandpaperNeeded = (runs: readonly SurfaceRun[]): readonly AlsoNeeded[] =>
  filled(
    t`sandpaper`,
    jobPaper(runs).map(({ grit }) => t`grit ${grit}`),
  );

/** What is not sandpaper, of which a shopping list says the sheets. */
export function alsoNeeded(runs: readonly SurfaceRun[]): readonly AlsoNeeded[] {
  const actions = runs.flatMap(({ moments }) => moments.map(({ action }) => action));
  const methods = actions.flatMap((action) => (action.op === "layer" ? (methodOf(action) ?? []) : []));
  const duties = new Set(actions.flatMap((action) => [...action.duties.keys()]));
  const gear = [...duties].flatMap((duty) => lookUp<string>(GEAR_WORDS, duty) ?? []);
  return [
    ...filled(t`to put it on`, [...new Set(methods)].map(translated)),
    ...filled(t`to wear`, wornTogether(gear).map(translated)),
    ...filled(t`for oily rags`, duties.has("wet_rags") ? [t`a metal can with a lid, and water`] : []),
  ];
}

const filled = (name: string, items: readonly string[]): readonly AlsoNeeded[] =>
  items.length > 0 ? [{ name, items }] : [];
