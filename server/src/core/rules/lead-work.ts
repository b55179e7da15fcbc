/**
 * How work on an old coating goes on wet: the line to write instead, with the grits and all that the recipe's own line has.
 */
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { gritsBetween } from "../knowledge/abrasives.ts";
import type { Action, StepAction } from "../surface/actions.ts";
import type { LeadMatter } from "./lead-caution.ts";

/** A P100 filter alone keeps back dust, not the vapour of a stripper; many strippers light easily, and so does their sludge. */
const STRIP =
  "strip it (`step strip with paint_stripper`, without methylene chloride or NMP, with fresh air, gloves, goggles, every heater and flame off and cold, and cartridges for its vapour beside the P100 filter; keep sludge and cloths wet in a closed metal can outdoors)";

/** "strip it or sand wet by hand (`step sand wet 60, 100, 180`)": what takes the coating off without dust, the better first. */
export function wetWork(action: Action, kind: LeadMatter["kind"]): string | undefined {
  if (action.op !== "step") return undefined;
  const work = lookUp(WORK, action.verb)?.(action);
  if (!work) return undefined;
  return kind === "clear" && action.verb === "sand" ? `${STRIP} or ${work}` : work;
}

/** The line to write for a step that sands or scuffs: "`step sand wet 60, 100, 180`". */
export const wetStep = (step: StepAction): string => `\`step ${step.verb} wet ${gritsOf(step)}\``;

/**
 * Without grits the finest paper that cuts old paint wet: common practice, no source. What the line's own grits skip is put
 * between them, so that no other rule objects to the line.
 */
const gritsOf = ({ grits }: StepAction): string =>
  grits.length === 0
    ? "180"
    : grits
        .flatMap((grit, at) => (at === 0 ? [grit] : [...gritsBetween(grits[at - 1]!, grit), grit]))
        .join(", ");

const WORK: Readonly<Record<string, (step: StepAction) => string>> = {
  sand: (step) => `sand wet by hand (${wetStep(step)})`,
  scuff: (step) => `scuff wet by hand (${wetStep(step)})`,
  scrape: () => 'keep it misted (`step scrape "misted with water"`)',
  distress: () => 'keep it wet (`step distress "wet"`)',
  strip: () =>
    "keep fresh air moving (`safety ventilate`), with every heater and flame off and cold, and wear cartridges for its vapour too",
};
