/**
 * How work on an old coating goes on wet: the line to write instead, with the grits and all that the recipe's own line has.
 */
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { gritsBetween } from "../knowledge/abrasives.ts";
import type { Action, StepAction } from "../surface/actions.ts";
import type { LeadMatter } from "./lead-caution.ts";

/** A P100 filter alone keeps back dust, not the vapour of a stripper. */
const STRIP =
  " or strip it (`step strip with paint_stripper`, without methylene chloride, with fresh air, gloves, goggles, every heater and flame off and cold, and cartridges for its vapour beside the P100 filter)";

/** "sand wet by hand, with water (`step sand wet 60, 100, 180`) or strip it": what takes the coating off without dust. */
export function wetWork(action: Action, kind: LeadMatter["kind"]): string | undefined {
  if (action.op !== "step") return undefined;
  const work = lookUp(WORK, action.verb);
  if (!work) return undefined;
  const isClearSanded = kind === "clear" && action.verb === "sand";
  return `${work(action)}${isClearSanded ? STRIP : ""}`;
}

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
  sand: (step) => `sand wet by hand, with water (\`step sand wet ${gritsOf(step)}\`)`,
  scuff: (step) => `scuff wet by hand, with water (\`step scuff wet ${gritsOf(step)}\`)`,
  scrape: () => 'keep it misted (`step scrape "misted with water"`)',
  distress: () => 'keep it wet (`step distress "wet"`)',
  strip: () => "keep fresh air moving (`safety ventilate`)",
};
