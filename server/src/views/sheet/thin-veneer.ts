/**
 * Work that may go through a veneer, which nobody can mend: sanding and scraping down to the wood. It stands on its line in a
 * word, and once among the cautions, whether or not the grits go through by calculation (that is the rule `sand-through`).
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { thicknessText } from "../../core/measure/figures.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import { THIN_VENEER } from "./gear.ts";
import type { SheetDuty } from "./model.ts";
import { capital } from "./words.ts";

const TAKES_WOOD: ReadonlySet<string> = new Set(["sand", "scrape", "strip", "distress"]);

/** Whether a step works on a veneer that no new coat covers. */
export function isOnVeneer({ surface, moments }: SurfaceRun, index: number): boolean {
  const { action, before } = moments[index]!;
  if (surface?.substrate?.veneerMm === undefined) return false;
  if (action.op !== "step" || action.between || !TAKES_WOOD.has(action.verb)) return false;
  return before.layers.every(({ origin }) => origin !== "new");
}

/** One for all surfaces, with the thinnest; common practice, no source. */
export function thinVeneer(runs: readonly SurfaceRun[]): readonly SheetDuty[] {
  const thin = runs.filter((run) => run.moments.some((_, index) => isOnVeneer(run, index)));
  if (thin.length === 0) return [];
  const thinnest = Math.min(...thin.map(({ surface }) => surface!.substrate!.veneerMm!));
  return [
    {
      label: `${translated(capital(THIN_VENEER))}, ${thicknessText(thinnest)}`,
      doc: t`Take off little, least at edges, and stop where another colour shows.`,
      defer: t`Measure it where an edge shows: many are thinner than they look.`,
      surfaces: [],
      stated: true,
    },
  ];
}
