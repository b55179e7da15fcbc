/**
 * How work on an old coating goes on wet: the line to write instead, with the grits and all that the recipe's own line has.
 */

import { lookUp } from "../../../../grammar/src/look-up.ts";
import { t } from "../../../../grammar/src/translate.ts";
import { gritsBetween } from "../knowledge/abrasives.ts";
import { sentence } from "../sentence.ts";
import type { Action, StepAction } from "../surface/actions.ts";
import { burnsDry } from "./coat-queries.ts";
import type { LeadMatter } from "./lead-caution.ts";

/** A P100 filter alone keeps back dust, not the vapour of a stripper; many strippers light easily, and so does their sludge. */
const strip = (): string =>
  t`strip it (\`step strip with paint_stripper\`, without methylene chloride or NMP, with fresh air, gloves, goggles, every heater and flame off and cold, and cartridges for its vapour beside the P100 filter; keep sludge and cloths wet in a closed metal can outdoors)`;

/**
 * "Best leave a sound finish on": HUD Guidelines (2012) on paint in sound condition (from memory); a primer's label decides.
 */
export const bestWay = (action: Action, kind: LeadMatter["kind"]): string =>
  kind === "clear"
    ? t`Best leave a sound finish on: clean and wax it, and put no other coat on`
    : action.op === "step" && action.verb === "scuff"
      ? t`Best leave sound paint unbroken: wash it and put a bonding primer on (\`layer bonding_primer\`) whose label asks for no sanding`
      : t`Best leave sound paint on`;

/** The motor of a vacuum cleaner lights dust of nitrocellulose, whatever its filter: common practice, no source. */
export const cleaningUp = (coat: LeadMatter["coat"]): string =>
  coat && burnsDry(coat)
    ? t`Clean up wet, never dry: the motor of a sander or HEPA vacuum can light dust of nitrocellulose`
    : t`Clean up wet and with a HEPA vacuum, never dry`;

/** Dry work by hand has a way that is told whole, in the order in which it is done: 40 CFR 745.85, 29 CFR 1926.62. */
export function wetWorkInOrder(step: StepAction, { kind, coat }: LeadMatter, hasLaboratory: boolean): string {
  const isStated = step.duties.has("lead_safe");
  const steps = [
    t`Ask the local authority who may do this work and where the waste goes`,
    bestWay(step, kind),
    t`Else keep others out, children and pregnant women above all, and lay plastic sheeting`,
    step.duties.has("dust_mask")
      ? t`Wear a P100 respirator (P3 in Europe), gloves and goggles; the \`dust_mask\` stated here is not enough`
      : t`Wear a P100 respirator (P3 in Europe), gloves and goggles; a dust mask is not enough`,
    sentence(wetWork(step, kind) ?? t`work wet`),
    cleaningUp(coat),
    isStated
      ? t`Leave work clothes there, and wash before you eat`
      : t`Leave work clothes there, and wash before you eat; then state \`safety lead_safe\``,
  ];
  return [
    ...(hasLaboratory ? [] : [t`Best wait: ${testIt()}. Else treat it as lead:`]),
    ...steps.map((each, at) => `${at + 1}. ${each}.`),
  ].join("\n");
}

/** Only a laboratory's word is better than what is known. */
export const testIt = (): string =>
  t`have a laboratory test every layer and state at the surface the result and the date from its report (\`lead none_found by laboratory YYYY-MM-DD\`)`;

/** "strip it or sand wet by hand (`step sand wet 60, 100, 180`)": what takes the coating off without dust, the better first. */
export function wetWork(action: Action, kind: LeadMatter["kind"]): string | undefined {
  if (action.op !== "step") return undefined;
  const work = lookUp(WORK, action.verb)?.(action);
  if (!work) return undefined;
  return kind === "clear" && action.verb === "sand" ? t`${strip()} or ${work}` : work;
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
  sand: (step) => t`sand wet by hand (${wetStep(step)})`,
  scuff: (step) => t`scuff wet by hand (${wetStep(step)})`,
  scrape: () => t`keep it misted (\`step scrape "misted with water"\`)`,
  distress: () => t`keep it wet (\`step distress "wet"\`)`,
  strip: () =>
    t`keep fresh air moving (\`safety ventilate\`), with every heater and flame off and cold, and wear cartridges for its vapour too`,
};
