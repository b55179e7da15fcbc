/**
 * How work on an old coating goes on wet: the line to write instead, with the grits and all that the recipe's own line has.
 */
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { gritsBetween } from "../knowledge/abrasives.ts";
import type { Action, StepAction } from "../surface/actions.ts";
import type { LeadMatter } from "./lead-caution.ts";

/** "sand wet by hand (`step sand wet 60, 100, 180`) or strip it": what takes the coating off without dust. */
export function wetWork(action: Action, kind: LeadMatter["kind"]): string | undefined {
  if (action.op !== "step") return undefined;
  const work = lookUp(WORK, action.verb);
  if (!work) return undefined;
  const isClearSanded = kind === "clear" && action.verb === "sand";
  return `${work(action)}${isClearSanded ? " or strip it (`step strip with paint_stripper`)" : ""}`;
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
  sand: (step) => `sand wet by hand (\`step sand wet ${gritsOf(step)}\`)`,
  scuff: (step) => `scuff wet by hand (\`step scuff wet ${gritsOf(step)}\`)`,
  scrape: () => 'keep it misted (`step scrape "misted with water"`)',
  distress: () => 'keep it wet (`step distress "wet"`)',
  strip: () => "keep fresh air moving (`safety ventilate`)",
};
